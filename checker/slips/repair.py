"""The smallest change of one number, sign, power, letter or operation that makes a written line follow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction as Rational
from itertools import combinations
from math import isqrt

from checker.slips.leaves import Edit
from checker.slips.proposals import Proposal
from checker.slips.values import (
    BLANK,
    Monomial,
    TooLarge,
    Value,
    as_constant,
    multiply,
    negate,
    power,
    subtract,
    symbol,
    term_value,
    total,
    value_of,
)
from checker.slips.writing import Style, write_value
from checker.syntax.tree import Bracket, Node, Number, Power, Product, Root, Span, Sum, Symbol, Term, walk

__all__ = ["Frame", "repairs", "whole_side"]


@dataclass(frozen=True, slots=True)
class Frame:
    """What a change of the written line is measured against.

    Args:
        line: the written line.
        sides: its expressions: one, or left and right.
        target: value of the line before: of the expression, or of left minus right.
        style: how numbers are written.
    """

    line: str
    sides: tuple[Node, ...]
    target: Value
    style: Style

    @property
    def is_relation(self) -> bool:
        return len(self.sides) == 2

    def value(self, instead: dict[int, Value] | None = None) -> Value:
        found = value_of(self.sides[0], instead)
        return subtract(found, value_of(self.sides[1], instead)) if self.is_relation else found

    def agrees(self, value: Value) -> bool:
        """Whether a value is what the line should say: equal, or for a relation a multiple."""
        if not self.is_relation:
            return value == self.target
        if value.keys() != self.target.keys() or not value:
            return False
        return len({value[key] / self.target[key] for key in value}) == 1


def repairs(frame: Frame) -> Iterator[Proposal]:
    """All single changes that work out in value, then pairs of signs."""
    yield from _signs(frame)
    yield from _numbers(frame)
    yield from _powers(frame)
    yield from _letters(frame)
    yield from _operations(frame)
    yield from _two_signs(frame)


def _terms_of(node: Node) -> Iterator[Term]:
    for below in walk(node):
        if isinstance(below, Sum):
            yield from below.terms


def _enclosing(frame: Frame, span: Span) -> Span:
    """The smallest term of a sum that holds the place, when it is one plain term; else the place itself."""
    best = span
    size = len(frame.line) + 1
    for side in frame.sides:
        for term in _terms_of(side):
            start, end = term.span
            plain = not any(isinstance(below, Sum) for below in walk(term.body))
            if start <= span[0] and span[1] <= end and end - start < size and plain:
                best, size = term.span, end - start
        if best == span and side.span[0] <= span[0] and span[1] <= side.span[1]:
            plain = not any(isinstance(below, Sum) for below in walk(side))
            if plain:
                best = side.span
    return best


def _proposal(frame: Frame, cost: float, kind: str, edits: Sequence[Edit], because: str) -> Proposal:
    span = _enclosing(frame, edits[0].span)
    return _told(frame, cost, kind, span, edits, because)


def _told(frame: Frame, cost: float, kind: str, span: Span, edits: Sequence[Edit], because: str) -> Proposal:
    start, end = span
    for edit in edits:
        start, end = min(start, edit.span[0]), max(end, edit.span[1])
    inner = frame.line[start:end]
    for edit in sorted(edits, key=lambda edit: edit.span, reverse=True):
        inner = inner[:edit.span[0] - start] + edit.text + inner[edit.span[1] - start:]
    return Proposal(cost, kind, (start, end), inner.strip(), because, tuple(edits))


def _flip(frame: Frame, term: Term, first: bool) -> Edit | None:
    start = term.span[0]
    sign = frame.line[start:start + 1]
    if sign == "-":
        return Edit((start, start + 1), "" if first else "+")
    if sign == "+":
        return Edit((start, start + 1), "-")
    return Edit((start, start), "-") if first else None


def _sign_changes(frame: Frame) -> Iterator[tuple[Edit, Value, bool, bool]]:
    """Each sign that can be turned: the edit, the value after it, whether the term is in a factor and opens it."""
    for side in frame.sides:
        if not isinstance(side, Sum):
            sign = frame.line[side.span[0]:side.span[0] + 1]
            edit = Edit((side.span[0], side.span[0] + 1), "") if sign == "-" else Edit((side.span[0],) * 2, "-")
            yield edit, frame.value({id(side): negate(value_of(side))}), False, True
        for node in walk(side):
            if not isinstance(node, Sum):
                continue
            for number, term in enumerate(node.terms):
                edit_of = _flip(frame, term, number == 0)
                if edit_of is None:
                    continue
                whole = subtract(value_of(node), term_value(term))
                yield edit_of, frame.value({id(node): subtract(whole, term_value(term))}), node is not side, number == 0


def _signs(frame: Frame) -> Iterator[Proposal]:
    for edit, value, in_factor, opens in _sign_changes(frame):
        if frame.agrees(value):
            because = "with the other sign the line has the value of the line before"
            kind = "sign-product" if in_factor or frame.is_relation else "copied"
            yield _proposal(frame, 1.7 if opens else 1.6, kind, [edit], because)


def _two_signs(frame: Frame) -> Iterator[Proposal]:
    """Two signs in one product of brackets, such as (x+5)(x-3) for (x-5)(x+3)."""
    for side in frame.sides:
        for node in walk(side):
            if not isinstance(node, Product):
                continue
            sums = [bare for factor in node.factors if isinstance(bare := _bare(factor), Sum)]
            if not 2 <= len(sums) <= 3 or sum(len(inner.terms) for inner in sums) > 7:
                continue
            choices = [
                (inner, number, term) for inner in sums for number, term in enumerate(inner.terms) if number
            ]
            for first, second in combinations(choices, 2):
                if first[0] is second[0]:
                    continue
                instead = {
                    id(inner): subtract(subtract(value_of(inner), term_value(term)), term_value(term))
                    for inner, _, term in (first, second)
                }
                edits = [_flip(frame, term, number == 0) for _, number, term in (first, second)]
                if None not in edits and frame.agrees(frame.value(instead)):
                    because = "both signs are the other way round: multiplied out, this gives the line before"
                    kept = [edit for edit in edits if edit is not None]
                    yield _told(frame, 1.9, "factor-pair", node.span, kept, because)


def _bare(node: Node) -> Node:
    while isinstance(node, Bracket):
        node = node.body
    return node


def _exponents(node: Node) -> set[int]:
    return {id(below) for raised in walk(node) if isinstance(raised, Power) for below in walk(raised.exponent)}


def _numbers(frame: Frame) -> Iterator[Proposal]:
    blank = symbol(BLANK)
    for side in frame.sides:
        raised = _exponents(side)
        for node in walk(side):
            if not isinstance(node, Number) or id(node) in raised:
                continue
            for number in _fitting(frame, frame.value({id(node): blank})):
                if number == node.value:
                    continue
                text = write_value({(): number}, frame.style)
                if text is None or (number < 0 and not _opens(frame, node)):
                    continue
                because = f"with {text} in place of {node.text} the line has the value of the line before"
                yield _proposal(frame, 1.9, "arithmetic", [Edit(node.span, text)], because)


def _opens(frame: Frame, node: Node) -> bool:
    before = frame.line[:node.span[0]].rstrip()
    return not before or before[-1] in "=<>({"


def _fitting(frame: Frame, value: Value) -> list[Rational]:
    """The numbers that, put in the blank, make the value right."""
    rows: dict[Monomial, dict[int, Rational]] = {}
    for key, number in value.items():
        rest: list[tuple[str, Rational]] = []
        exponent = 0
        for atom, raised in key:
            if atom == BLANK:
                if raised.denominator != 1 or raised < 0:
                    return []
                exponent = int(raised)
            elif BLANK in atom:
                return []
            else:
                rest.append((atom, raised))
        rows.setdefault(tuple(rest), {})[exponent] = number
    target = frame.target
    factor = Rational(1)
    if frame.is_relation:
        fixed = [key for key, row in rows.items() if set(row) == {0} and key in target]
        if not fixed:
            return []
        factor = rows[fixed[0]][0] / target[fixed[0]]
    for key, number in target.items():
        row = rows.setdefault(key, {})
        row[0] = row.get(0, Rational(0)) - factor * number
    equations = [
        {exponent: number for exponent, number in row.items() if number} for row in rows.values()
    ]
    equations = [row for row in equations if row]
    if not equations or any(set(row) == {0} for row in equations):
        return []
    lowest = min(equations, key=lambda row: max(row))
    return [
        number for number in _roots(lowest)
        if all(not sum(c * number**e for e, c in row.items()) for row in equations)
    ]


def _roots(row: dict[int, Rational]) -> list[Rational]:
    degree = max(row)
    a, b, c = (row.get(place, Rational(0)) for place in (2, 1, 0))
    if degree == 1:
        return [-c / b]
    if degree == 2:
        inside = b * b - 4 * a * c
        if inside < 0:
            return []
        top, bottom = isqrt(inside.numerator), isqrt(inside.denominator)
        if top * top != inside.numerator or bottom * bottom != inside.denominator:
            return []
        root = Rational(top, bottom)
        return [(-b + root) / (2 * a), (-b - root) / (2 * a)]
    return []


def _powers(frame: Frame) -> Iterator[Proposal]:
    """An exponent changed, or lost, or one too many."""
    for side in frame.sides:
        for node in walk(side):
            if isinstance(node, Power):
                yield from _other_exponent(frame, node)
            elif isinstance(node, Symbol | Bracket):
                yield from _lost_exponent(frame, node)


def _other_exponent(frame: Frame, node: Power) -> Iterator[Proposal]:
    now = as_constant(value_of(node.exponent))
    if now is None:
        return
    wanted = {Rational(n) for n in range(2, 7)} | {now + 1, now - 1, -now, now * 2, now / 2, 1 / now if now else now}
    wanted |= {exponent for key in frame.target for _, exponent in key}
    wanted |= {as_constant(value_of(p.exponent)) or now for p in walk(node) if isinstance(p, Power)}
    for exponent in sorted(wanted - {now, Rational(0)}):
        if abs(exponent) > 200:
            continue
        try:
            value = frame.value({id(node): power(value_of(node.base), exponent)})
        except (TooLarge, ZeroDivisionError):
            continue
        if frame.agrees(value):
            text = write_value({(): exponent}, frame.style) or ""
            start = node.exponent.span[0]
            if len(text) > 1 and frame.line[start - 1:start] == "^":
                text = "{" + text + "}"
            because = f"the power is {text.strip('{}')}"
            yield _proposal(frame, 1.7, "power-law", [Edit(node.exponent.span, text)], because)


def _lost_exponent(frame: Frame, node: Symbol | Bracket) -> Iterator[Proposal]:
    for exponent in (2, 3):
        try:
            value = frame.value({id(node): power(value_of(node), Rational(exponent))})
        except TooLarge:
            return
        if frame.agrees(value):
            edit = Edit((node.span[1], node.span[1]), f"^{exponent}")
            yield _told(
                frame, 1.8, "power-law", _enclosing(frame, node.span), [edit], f"the power {exponent} is missing",
            )


def _letters(frame: Frame) -> Iterator[Proposal]:
    names = {atom for key in frame.target for atom, _ in key if atom.isalpha()}
    for side in frame.sides:
        for node in walk(side):
            if isinstance(node, Symbol):
                for name in sorted(names - {node.name}):
                    if frame.agrees(frame.value({id(node): symbol(name)})):
                        because = f"the letter is {name}, not {node.name}"
                        yield _proposal(frame, 1.8, "copied", [Edit(node.span, name)], because)
            elif isinstance(node, Number):
                for name in sorted(names):
                    value = {((name, Rational(1)),): node.value}
                    if frame.agrees(frame.value({id(node): value})):
                        edit = Edit((node.span[1], node.span[1]), name)
                        words = f"the letter {name} was lost"
                        yield _told(frame, 1.6, "letter-lost", _enclosing(frame, node.span), [edit], words)


def _operations(frame: Frame) -> Iterator[Proposal]:
    """A times that should be a plus, a plus that should be a times, a root sign too many or too few."""
    for side in frame.sides:
        for node in walk(side):
            if isinstance(node, Product) and len(node.factors) == 2:
                if frame.agrees(frame.value({id(node): total(value_of(factor) for factor in node.factors)})):
                    start, end = node.factors[0].span[1], node.factors[1].span[0]
                    edit = Edit((start, end), "+")
                    yield _told(frame, 1.9, "wrong-operation", (start, end), [edit], "here the two are added")
            elif isinstance(node, Sum) and len(node.terms) == 2 and node.terms[0].sign == "+":
                first, second = node.terms
                value = multiply(value_of(first.body), value_of(second.body))
                if second.sign in "+-" and frame.agrees(frame.value({id(node): value})):
                    edit = Edit((second.span[0], second.span[0] + 1), "\\cdot ")
                    yield _told(
                        frame, 1.9, "wrong-operation", edit.span, [edit], "here the two are multiplied",
                    )
            elif isinstance(node, Root) and frame.agrees(frame.value({id(node): value_of(node.radicand)})):
                text = frame.line[node.radicand.span[0]:node.radicand.span[1]]
                yield _told(frame, 1.9, "power-law", node.span, [Edit(node.span, text)], "no root is taken here")


def whole_side(frame: Frame, before: str) -> Iterator[Proposal]:
    """The last resort: the whole expression, or one whole side, written anew."""
    for place, side in enumerate(frame.sides):
        other = frame.sides[1 - place] if frame.is_relation else None
        if other is None:
            text = write_value(frame.target, frame.style) or before
            because = f"the line before is {text}"
            yield Proposal(4.0, "other", side.span, text, because, (Edit(side.span, text),))
            continue
        needed = subtract(value_of(other), frame.target) if place else None
        flipped = negate(subtract(negate(value_of(other)), frame.target)) if not place else needed
        if flipped is not None:
            text = write_value(flipped, frame.style)
            if text is not None:
                because = f"with the other side as it stands, this side is {text}"
                yield Proposal(4.2 + 0.1 * (1 - place), "other", side.span, text, because, (Edit(side.span, text),))

