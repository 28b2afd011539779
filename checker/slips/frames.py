"""What a change of the written line is measured against, and how a change is told."""

from __future__ import annotations

import math
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction as Rational
from math import isqrt

from checker.slips.leaves import Edit
from checker.slips.proposals import Proposal
from checker.slips.values import (
    BLANK,
    Monomial,
    TooLarge,
    Value,
    add,
    multiply,
    power,
    subtract,
    value_of,
)
from checker.slips.writing import Style
from checker.syntax.tree import (
    Node,
    Span,
    Sum,
    Term,
    walk,
)

__all__ = ["Frame", "at_span", "at_term", "enclosing", "fitting", "flip", "flip_side", "rational_roots"]


@dataclass(frozen=True, slots=True)
class Frame:
    """What a change of the written line is measured against.

    Args:
        line: the written line.
        sides: its expressions: one, or left and right.
        target: value of the line before: of the expression, or of left minus right.
        style: how numbers are written.
        unknown: the letter when the line gives a root: the target is then zero at the value of the side.
        deadline: when to give up, on the monotonic clock, in seconds.
    """

    line: str
    sides: tuple[Node, ...]
    target: Value
    style: Style
    unknown: str | None = None
    deadline: float = math.inf

    @property
    def is_relation(self) -> bool:
        return len(self.sides) == 2

    def value(self, instead: dict[int, Value] | None = None) -> Value:
        if time.monotonic() > self.deadline:
            raise TooLarge
        found = value_of(self.sides[0], instead)
        return subtract(found, value_of(self.sides[1], instead)) if self.is_relation else found

    def agrees(self, value: Value) -> bool:
        """Whether a value is what the line should say: equal, for a relation a multiple, or a root."""
        if self.unknown is not None:
            return not _at(self.target, self.unknown, value)
        if not self.is_relation:
            return value == self.target
        if value.keys() != self.target.keys() or not value:
            return False
        return len({value[key] / self.target[key] for key in value}) == 1


def _at(polynomial: Value, letter: str, value: Value) -> Value:
    """The value of a polynomial where the letter stands for another value."""
    found: Value = {}
    for key, number in polynomial.items():
        exponent = next((raised for atom, raised in key if atom == letter), Rational(0))
        rest = tuple(pair for pair in key if pair[0] != letter)
        found = add(found, multiply({rest: number}, power(value, exponent)))
    return found




def _terms_of(node: Node) -> Iterator[Term]:
    for below in walk(node):
        if isinstance(below, Sum):
            yield from below.terms


def enclosing(frame: Frame, span: Span) -> Span:
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


def at_term(frame: Frame, cost: float, kind: str, edits: Sequence[Edit], because: str) -> Proposal:
    span = enclosing(frame, edits[0].span)
    return at_span(frame, cost, kind, span, edits, because)


def at_span(frame: Frame, cost: float, kind: str, span: Span, edits: Sequence[Edit], because: str) -> Proposal:
    start, end = span
    for edit in edits:
        start, end = min(start, edit.span[0]), max(end, edit.span[1])
    inner = frame.line[start:end]
    for edit in sorted(edits, key=lambda edit: edit.span, reverse=True):
        inner = inner[:edit.span[0] - start] + edit.text + inner[edit.span[1] - start:]
    return Proposal(cost, kind, (start, end), inner.strip(), because, tuple(edits))




def flip_side(line: str, side: Node) -> Edit:
    """The change that gives a side which is no sum the other sign."""
    start = side.span[0]
    if line[start:start + 1] == "-":
        return Edit((start, start + 1), "")
    before = line[:start].rstrip()
    return Edit((len(before) - 1, start), "-") if before.endswith("+") else Edit((start, start), "-")


def flip(frame: Frame, term: Term, first: bool) -> Edit | None:
    start = term.span[0]
    sign = frame.line[start:start + 1]
    if sign == "-":
        return Edit((start, start + 1), "" if first else "+")
    if sign == "+":
        return Edit((start, start + 1), "-")
    return Edit((start, start), "-") if first else None




def fitting(frame: Frame, value: Value) -> list[Rational]:
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
        number for number in rational_roots(lowest)
        if all(not sum(c * number**e for e, c in row.items()) for row in equations)
    ]


def rational_roots(row: dict[int, Rational]) -> list[Rational]:
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
