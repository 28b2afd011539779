"""Readings of a step between two relations: side by side, or with the whole relation scaled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction as Rational
from math import lcm

from checker.slips.explanations import SIDES
from checker.slips.leaves import Edit, Leaf, Place, leaves_of
from checker.slips.matching import matching_proposals
from checker.slips.partials import Partial, partials_of, scaled
from checker.slips.proposals import Proposal
from checker.slips.reading import Reading
from checker.slips.values import (
    Value,
    as_constant,
    divide,
    multiply,
    negate,
    power,
    subtract,
    term_value,
    total,
    value_of,
)
from checker.slips.writing import Style, write_value
from checker.syntax.shapes import bare
from checker.syntax.tree import Bracket, Fraction, Line, Node, Product, Relation, Root, Sum, Term

__all__ = ["relation_proposals", "scales"]

TURNED = {"<": ">", ">": "<", "\\le": "\\ge", "\\ge": "\\le", "\\leq": "\\geq", "\\geq": "\\leq"}
MOST_SCALES = 10


def relation_proposals(
    before: Relation, before_text: str, written: Relation, line: Line, style: Style,
) -> Iterator[Proposal]:
    """Changes of one term (or two) of a relation that make it a multiple of the one before."""
    parts: list[Partial] = []
    leaves: list[Leaf] = []
    places: list[Place] = []
    for side, (old, new) in enumerate(((before.left, written.left), (before.right, written.right))):
        parts += partials_of(old, before_text, side=side)
        found, sums = leaves_of(new, line.text, side=side)
        leaves += found
        places += sums
    yield from _direction(before, written)
    yield from _beside_brackets(before, before_text, written, line, style)
    yield from _over_denominators(before, before_text, written, line, style)
    yield from _raised_on_one_side(before, written, style)
    # A side that did not change speaks against the whole relation having changed its sign.
    kept = any(
        _total(parts, side) == _total(leaves, side) != {} for side in (0, 1)
    )
    for factor in scales(parts, leaves):
        number = as_constant(factor)
        broken = False
        if number is None and next(iter(factor.values())) < 0:
            continue
        if number is None:
            shown = write_value(factor, style) or "the same"
            new_parts = [_by_letter(part, factor, shown) for part in parts]
        else:
            whole = all(part.coefficient.denominator == 1 for part in parts)
            broken = whole and any((part.coefficient * number).denominator > 1 for part in parts)
            divisor = write_value({(): 1 / number}, style) if abs(number) < 1 else write_value({(): number}, style)
            new_parts = [scaled(part, number, divisor or "") for part in parts]
        reading = Reading(tuple(new_parts), tuple(leaves), tuple(places), line.text, style, True, True)
        if number != 1 and len(reading.gap()) > 2:
            continue
        extra = _unlikeliness(factor, parts) + (0.6 if kept and number == -1 else 0.0)
        extra += 0.3 if broken else 0.0
        for proposal in matching_proposals(reading):
            turned = 0.5 if number == -1 and len(proposal.edits) > 1 else 0.0
            yield replace(proposal, cost=proposal.cost + extra + turned)


def _beside_brackets(
    before: Relation, before_text: str, written: Relation, line: Line, style: Style,
) -> Iterator[Proposal]:
    """The step with brackets that both lines share left out, such as (k-5)^2 on the left of both."""
    parts: list[Partial] = []
    leaves: list[Leaf] = []
    places: list[Place] = []
    struck = False
    for side, (old, new) in enumerate(((before.left, written.left), (before.right, written.right))):
        kept_old, kept_new = _terms(old), _terms(new)
        for term in _terms(old):
            value = term_value(term)
            equal = next((twin for twin in kept_new if term_value(twin) == value), None)
            if equal is not None and len(value) > 1:
                struck = True
                kept_old = [kept for kept in kept_old if kept is not term]
                kept_new = [kept for kept in kept_new if kept is not equal]
        if kept_old:
            parts += partials_of(Sum(old.span, tuple(kept_old)), before_text, side=side)
        found, sums = leaves_of(Sum(new.span, tuple(kept_new)), line.text, side=side)
        leaves += found
        places += sums
    if struck:
        yield from matching_proposals(Reading(tuple(parts), tuple(leaves), tuple(places), line.text, style, True, True))


def _over_denominators(
    before: Relation, before_text: str, written: Relation, line: Line, style: Style,
) -> Iterator[Proposal]:
    """Both sides multiplied by the sums below the bars, so that 2 becomes 2(x+1)."""
    bottoms: list[Node] = []
    for expression in (before.left, before.right):
        for term in _terms(expression):
            body = bare(term.body)
            if isinstance(body, Fraction) and isinstance(bare(body.denominator), Sum):
                value = value_of(body.denominator)
                if all(value != value_of(bottom) for bottom in bottoms):
                    bottoms.append(body.denominator)
    if not 1 <= len(bottoms) <= 2:
        return
    parts: list[Partial] = []
    leaves: list[Leaf] = []
    places: list[Place] = []
    for side, (old, new) in enumerate(((before.left, written.left), (before.right, written.right))):
        terms = tuple(Term(term.span, term.sign, _multiplied(term.body, bottoms)) for term in _terms(old))
        parts += partials_of(Sum(old.span, terms), before_text, side=side)
        found, sums = leaves_of(new, line.text, side=side)
        leaves += found
        places += sums
    yield from matching_proposals(Reading(tuple(parts), tuple(leaves), tuple(places), line.text, style, True, True))


def _multiplied(node: Node, bottoms: Sequence[Node]) -> Node:
    """A term times the sums, the one below its own bar cancelled."""
    inner = bare(node)
    rest = list(bottoms)
    if isinstance(inner, Fraction):
        own = value_of(inner.denominator)
        if any(value_of(bottom) == own for bottom in rest):
            rest = [bottom for bottom in rest if value_of(bottom) != own]
            node = inner.numerator
    factors: list[Node] = [Bracket(bottom.span, bottom, "(") for bottom in rest]
    if not factors:
        return node
    whole = node if not isinstance(bare(node), Sum) else Bracket(node.span, node, "(")
    return Product(node.span, (whole, *factors), ("",) * len(factors))


def _raised_on_one_side(before: Relation, written: Relation, style: Style) -> Iterator[Proposal]:
    """One side squared or cubed, the other not."""
    old, new = (before.left, before.right), (written.left, written.right)
    for exponent, done in ((2, "squared"), (3, "cubed")):
        for side in (0, 1):
            raised = _raised(old[side], exponent)
            right = _raised(old[1 - side], exponent)
            other = new[1 - side]
            if raised != value_of(new[side]) or raised == value_of(old[side]) or right == value_of(other):
                continue
            text = write_value(right, style)
            if text is not None:
                because = f"the {SIDES[side]} was {done}, so the {SIDES[1 - side]} is {done} too, as a whole"
                kind = _raised_kind(old[side], old[1 - side], other, exponent)
                if kind is None:
                    continue
                yield Proposal(1.1, kind, other.span, text, because, (Edit(other.span, text),))


def _raised_kind(raised: Node, old: Node, new: Node, exponent: int) -> str | None:
    """What happened to the side that was not raised as a whole: nothing, or each of its terms was raised."""
    if isinstance(bare(raised), Product):
        return None
    if value_of(new) == value_of(old):
        return "one-side-only"
    each = total(power(term_value(term), Rational(exponent)) for term in _terms(old))
    return "square-of-sum" if value_of(new) == each else None


def _raised(node: Node, exponent: int) -> Value:
    inner = bare(node)
    if isinstance(inner, Root):
        index = Rational(2) if inner.index is None else as_constant(value_of(inner.index))
        if index == exponent:
            return value_of(inner.radicand)
    return power(value_of(node), Rational(exponent))


def _terms(node: Node) -> list[Term]:
    inner = bare(node)
    return list(inner.terms) if isinstance(inner, Sum) else [Term(node.span, "+", node)]


def _direction(before: Relation, written: Relation) -> Iterator[Proposal]:
    if written.operator not in TURNED:
        return
    should_be = TURNED[written.operator]
    because = _turning(before, written)
    yield Proposal(
        1.0, "inequality-direction", written.operator_span, should_be, because,
        (Edit(written.operator_span, should_be),),
    )


def _turning(before: Relation, written: Relation) -> str:
    """Why the sign turns, or stays: by what both sides were multiplied or divided."""
    old, new = (subtract(value_of(one.left), value_of(one.right)) for one in (before, written))
    shared = [key for key in old if key and key in new]
    general = "multiplying or dividing by a negative number turns the sign round, and nothing else does"
    if not shared:
        return general
    ratio = old[shared[0]] / new[shared[0]]
    if ratio == 1:
        return "no side was multiplied or divided, so the sign stays as it is"
    if ratio == -1:
        return "both sides changed their sign, which turns the sign of the inequality round"
    done, by = ("divided", ratio) if abs(ratio) > 1 else ("multiplied", 1 / ratio)
    number = write_value({(): by})
    if by < 0:
        return f"both sides were {done} by {number}, a negative number, which turns the sign round"
    return f"both sides were {done} by {number}, a positive number, so the sign stays as it is"


def _total(terms: Sequence[Partial] | Sequence[Leaf], side: int) -> Value:
    return total(term.value for term in terms if term.side == side)


def _by_letter(part: Partial, factor: Value, shown: str) -> Partial:
    (key, number), = multiply(part.value, factor).items()
    return replace(part, key=key, coefficient=number, origin="scaled", factors=(*part.factors[:1], shown))


def scales(parts: Sequence[Partial], leaves: Sequence[Leaf]) -> list[Value]:
    """Factors by which the relation may have been multiplied, those that fit most terms first."""
    one: Value = {(): Rational(1)}
    found: list[Value] = [one, {(): Rational(-1)}]
    for part in parts:
        for leaf in leaves:
            if leaf.key is None or not part.coefficient:
                continue
            ratio = divide(leaf.value, part.value)
            if len(next(iter(ratio))) > 2:
                continue
            for sign in (1, -1):
                turned = {key: sign * number for key, number in ratio.items()}
                if turned not in found:
                    found.append(turned)
    for part in parts:
        inverse: Value = {(): 1 / part.coefficient} if part.coefficient else one
        for other in (inverse, negate(inverse)):
            if other not in found:
                found.append(other)
    found.sort(key=lambda factor: (-_fits(factor, parts, leaves), factor != one))
    return found[:MOST_SCALES]


def _fits(factor: Value, parts: Sequence[Partial], leaves: Sequence[Leaf]) -> int:
    left = [multiply(part.value, factor) for part in parts]
    count = 0
    for leaf in leaves:
        if leaf.value in left:
            left.remove(leaf.value)
            count += 1
    return count


def _unlikeliness(factor: Value, parts: Sequence[Partial]) -> float:
    number = as_constant(factor)
    if number == 1:
        return 0.0
    if number == -1:
        return 0.1
    if number is None:
        return 0.3 if any(exponent < 0 for part in parts for _, exponent in part.key) else 1.3
    coefficients = {abs(part.coefficient) for part in parts}
    denominators = {Rational(part.coefficient.denominator) for part in parts}
    common = lcm(*(part.coefficient.denominator for part in parts))
    if 1 / abs(number) in coefficients or abs(number) in denominators or abs(number) == common:
        return 0.1 if len(parts) < 4 else 0.15
    return 0.6 if number.denominator == 1 or number.numerator == 1 else 1.0


