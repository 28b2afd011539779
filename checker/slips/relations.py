"""Readings of a step between two relations: side by side, or with the whole relation scaled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction as Rational
from math import lcm

from checker.slips.leaves import Edit, Leaf, Place, leaves_of
from checker.slips.matching import matching_proposals
from checker.slips.partials import Partial, bare, partials_of, scaled
from checker.slips.proposals import Proposal
from checker.slips.reading import Reading
from checker.slips.values import Value, as_constant, divide, multiply, negate, term_value, total
from checker.slips.writing import Style, write_value
from checker.syntax.tree import Line, Node, Relation, Sum, Term

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
    # A side that did not change speaks against the whole relation having changed its sign.
    kept = any(
        _total(parts, side) == _total(leaves, side) != {} for side in (0, 1)
    )
    for factor in scales(parts, leaves):
        number = as_constant(factor)
        if number is None:
            shown = write_value(factor, style) or "the same"
            new_parts = [_by_letter(part, factor, shown) for part in parts]
        else:
            divisor = write_value({(): 1 / number}, style) if abs(number) < 1 else write_value({(): number}, style)
            new_parts = [scaled(part, number, divisor or "") for part in parts]
        reading = Reading(tuple(new_parts), tuple(leaves), tuple(places), line.text, style, True, True)
        if number != 1 and len(reading.gap()) > 2:
            continue
        extra = _unlikeliness(factor, parts) + (0.6 if kept and number == -1 else 0.0)
        for proposal in matching_proposals(reading):
            yield replace(proposal, cost=proposal.cost + extra)


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


def _terms(node: Node) -> list[Term]:
    inner = bare(node)
    return list(inner.terms) if isinstance(inner, Sum) else [Term(node.span, "+", node)]


def _direction(before: Relation, written: Relation) -> Iterator[Proposal]:
    if written.operator not in TURNED:
        return
    should_be = TURNED[written.operator]
    because = "multiplying or dividing by a negative number turns the sign round, and nothing else does"
    yield Proposal(
        1.0, "inequality-direction", written.operator_span, should_be, because,
        (Edit(written.operator_span, should_be),),
    )


def _total(terms: Sequence[Partial] | Sequence[Leaf], side: int) -> Value:
    return total(term.value for term in terms if term.side == side)


def _by_letter(part: Partial, factor: Value, shown: str) -> Partial:
    (key, number), = multiply(part.value, factor).items()
    return replace(part, key=key, coefficient=number, origin="product", factors=(*part.factors[:1], shown))


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
        return 0.3
    coefficients = {abs(part.coefficient) for part in parts}
    denominators = {Rational(part.coefficient.denominator) for part in parts}
    common = lcm(*(part.coefficient.denominator for part in parts))
    if 1 / abs(number) in coefficients or abs(number) in denominators or abs(number) == common:
        return 0.1 if len(parts) < 4 else 0.15
    return 0.6 if number.denominator == 1 or number.numerator == 1 else 1.0


