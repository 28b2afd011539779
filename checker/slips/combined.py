"""Two earlier equations made into one: added, taken away, or one put into the other, as a line to judge from."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction as Rational
from itertools import combinations
from math import gcd

from checker.errors import ParseError
from checker.slips.proposals import Proposal
from checker.slips.values import TooLarge, Value, scale, subtract, value_of
from checker.syntax import parse_line, tight
from checker.syntax.tree import Line, Node, Relation, Sum, Symbol, letters, walk

__all__ = ["Combined", "combined_lines"]

_TURNED = re.compile(r"the minus before the bracket turns (\S+) into (\S+?)(?=[,;]|$)")
MOST = 12
LARGEST = 12  # number by which an equation is multiplied


@dataclass(frozen=True, slots=True)
class Combined:
    """A line made from two earlier ones, and how, as the opening of a sentence."""

    line: Line
    how: str

    def told(self, proposal: Proposal) -> Proposal:
        """The proposal in words that speak of the two equations, where no bracket was written."""
        kind, because = proposal.kind, proposal.because.replace("the line before has", "there is")
        if not self.how.startswith("with "):
            because = _TURNED.sub(r"\1 taken away is \2", because)
            kind = "like-terms" if kind == "sign-bracket" else kind
        return replace(proposal, kind=kind, because=self.how + because)


def combined_lines(before: Sequence[Line], written: Line) -> list[Combined]:
    """The combinations of two earlier equations from which a written equation differs in one kind of term only.

    Args:
        before: the lines that stand, the nearest last.
        written: the line that does not follow from one of them.
    """
    statement = written.statement
    if not isinstance(statement, Relation) or statement.operator != "=":
        return []
    equations = [
        line for line in before
        if isinstance(line.statement, Relation) and line.statement.operator == "=" and letters(line.statement)
    ]
    if len({name for line in equations for name in letters(line.statement)}) < 2:
        return []
    found: list[Combined] = []
    for first, second in combinations(equations, 2):
        put_in = [*_put_in(first, second), *_put_in(second, first)]
        for text, how in put_in or _added(first, second):
            if len(found) < MOST and (made := _near(text, how, statement)) is not None:
                found.append(made)
    return found


def _near(text: str, how: str, written: Relation) -> Combined | None:
    try:
        line = parse_line(text)
        if not isinstance(line.statement, Relation) or not letters(written) <= letters(line.statement):
            return None
        made, own = _difference(line.statement), _difference(written)
        gaps = [subtract(made, scale(own, Rational(sign))) for sign in (1, -1)]
    except (ParseError, TooLarge, ZeroDivisionError):
        return None
    return Combined(line, how) if any(len(gap) == 1 for gap in gaps) else None


def _difference(relation: Relation) -> Value:
    return subtract(value_of(relation.left), value_of(relation.right))


def _text(node: Node, line: Line) -> str:
    return tight(line.text[slice(*node.span)])


def _put_in(solved: Line, other: Line) -> Iterator[tuple[str, str]]:
    """y = 2x-1 put into the other equation."""
    one, two = solved.statement, other.statement
    assert isinstance(one, Relation) and isinstance(two, Relation)
    if not isinstance(one.left, Symbol) or one.left.name in letters(one.right) or one.left.name not in letters(two):
        return
    value = _text(one.right, solved)
    text = other.text
    places = [node.span for side in (two.left, two.right) for node in walk(side)
              if isinstance(node, Symbol) and node.name == one.left.name]
    for start, end in sorted(places, reverse=True):
        text = f"{text[:start]}({value}){text[end:]}"
    yield text, f"with {value} in place of {one.left.name}, "


def _added(first: Line, second: Line) -> Iterator[tuple[str, str]]:
    one, two = first.statement, second.statement
    assert isinstance(one, Relation) and isinstance(two, Relation)
    for m, n in _multipliers(_difference(one), _difference(two)):
        sides = [
            _scaled(m, a, first, opens=True) + _scaled(n, b, second, opens=False)
            for a, b in ((one.left, two.left), (one.right, two.right))
        ]
        yield "=".join(sides), _how(m, n)


def _multipliers(first: Value, second: Value) -> Iterator[tuple[int, int]]:
    yield 1, -1
    yield 1, 1
    yield -1, 1
    for key in first:
        if not key or key not in second:
            continue
        a, b = first[key], second[key]
        if a.denominator != 1 or b.denominator != 1:
            continue
        common = gcd(int(a), int(b))
        m, n = abs(int(b)) // common, abs(int(a)) // common
        if (m, n) != (1, 1) and max(m, n) <= LARGEST:
            sign = -1 if a * b > 0 else 1
            yield m, sign * n
            if sign < 0:
                yield -m, n


def _scaled(number: int, node: Node, line: Line, *, opens: bool) -> str:
    text = _text(node, line)
    plain = not isinstance(node, Sum) and not text.startswith("-")
    sign = "-" if number < 0 else "" if opens else "+"
    size = "" if abs(number) == 1 else str(abs(number))
    if plain and not size:
        return sign + text
    return f"{sign}{size}({text})"


def _how(m: int, n: int) -> str:
    def times(number: int, name: str) -> str:
        return name if abs(number) == 1 else f"{abs(number)} times {name}"

    if m < 0:
        return f"{times(n, 'the second equation')} minus {times(m, 'the first')}: "
    return f"{times(m, 'the first equation')} {'minus' if n < 0 else 'plus'} {times(n, 'the second')}: "
