"""The terms of the written line, each with its place in the text and what stands before its bracket."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction as Rational

from checker.slips.values import (
    Monomial,
    Value,
    constant,
    divide,
    is_monomial,
    multiply,
    negate,
    symbol,
    value_of,
)
from checker.slips.writing import Style, signed, write_value
from checker.syntax.latex import tight
from checker.syntax.shapes import bare
from checker.syntax.tree import Division, Fraction, Negation, Node, Product, Span, Sum

__all__ = ["Edit", "Leaf", "Place", "apply_edits", "leaves_of"]


@dataclass(frozen=True, slots=True)
class Place:
    """A sum (or a lone term) that terms can be added to; `multiplier` stands before it."""

    span: Span
    multiplier: Value
    side: int = 0


@dataclass(frozen=True, slots=True)
class Leaf:
    """A written term.

    Args:
        span: its characters, its sign among them.
        text: those characters, without blanks.
        value: what it adds to the whole line, the multiplier counted in.
        multiplier: what its bracket is multiplied with, sign and divisor counted in.
        first: whether it opens its sum, so that a plus is not written.
        place: the sum that it belongs to.
        side: 0, or 1 on the right of an equation.
    """

    span: Span
    text: str
    value: Value
    multiplier: Value
    first: bool
    place: Place
    side: int = 0

    @property
    def key(self) -> Monomial | None:
        """Letters and powers when it is one monomial."""
        return next(iter(self.value)) if len(self.value) == 1 else None

    @property
    def coefficient(self) -> Rational:
        return next(iter(self.value.values()), Rational(0))

    def writing(self, whole: Value, style: Style) -> str | None:
        """The text that would make it add `whole` to the line; "" to leave it out."""
        own = divide(whole, self.multiplier) if whole else {}
        if not own:
            return ""
        if whole == negate(self.value) and _SIGNED.match(self.text):
            return self._turned()
        text = write_value(own, style.after(self.text))
        if text is None:
            return None
        return text if self.first and not self.text.startswith("+") else signed(text)


    def _turned(self) -> str:
        """The text with the other sign, all else as written."""
        if self.text.startswith("-"):
            return self.text[1:] if self.first else "+" + self.text[1:]
        return "-" + self.text.removeprefix("+")


_SIGNED = re.compile(r"[+-]?[^-+(]")


@dataclass(frozen=True, slots=True)
class Edit:
    """A stretch of the line and what to write instead."""

    span: Span
    text: str


def apply_edits(line: str, edits: Sequence[Edit]) -> str:
    for edit in sorted(edits, key=lambda edit: edit.span, reverse=True):
        start, end = edit.span
        new = edit.text
        if new and (new[0].isalnum()) and start and line[:start].endswith(_COMMANDS):
            new = " " + new
        if new and new[-1].isalpha() and "\\" in new.rsplit(" ", 1)[-1] and line[end:end + 1].isalpha():
            new += " "
        line = line[:start] + new + line[end:]
    return line


_COMMANDS = ("\\pm", "\\mp", "\\cdot", "\\times", "\\le", "\\ge", "\\div", "\\neq", "\\ne", "\\leq", "\\geq")


def leaves_of(node: Node, line: str, *, side: int = 0) -> tuple[list[Leaf], list[Place]]:
    """The terms of an expression and the sums they stand in, left to right."""
    leaves: list[Leaf] = []
    places: list[Place] = []
    _gather(node, line, constant(1), side, leaves, places)
    return leaves, places


def _gather(
    node: Node, line: str, multiplier: Value, side: int, leaves: list[Leaf], places: list[Place],
) -> None:
    inner = bare(node)
    place = Place(inner.span, multiplier, side)
    places.append(place)
    if not isinstance(inner, Sum):
        _term(inner, inner.span, multiplier, True, place, line, leaves, places)
        return
    for number, term in enumerate(inner.terms):
        below = multiplier
        if term.sign == "-":
            below = negate(multiplier)
        elif term.sign == "±":
            below = multiply(multiplier, symbol("±"))
        elif term.sign == "∓":
            below = negate(multiply(multiplier, symbol("±")))
        opens = number == 0 and not re.search(r"[\w})\]]\s*$", line[:term.span[0]])
        _term(term.body, term.span, below, opens, place, line, leaves, places, own_multiplier=multiplier)


def _term(
    node: Node, span: Span, multiplier: Value, first: bool, place: Place, line: str,
    leaves: list[Leaf], places: list[Place], own_multiplier: Value | None = None,
) -> None:
    """One term: `multiplier` counts its own sign in, `own_multiplier` does not."""
    outside = multiplier if own_multiplier is None else own_multiplier
    inner = bare(node)
    if isinstance(inner, Negation):
        _term(inner.body, span, negate(multiplier), first, place, line, leaves, places, outside)
        return
    if isinstance(inner, Sum):
        _gather(inner, line, multiplier, place.side, leaves, places)
        return
    if isinstance(inner, Product):
        sums = [factor for factor in inner.factors if len(value_of(factor)) > 1]
        others = [factor for factor in inner.factors if not any(factor is other for other in sums)]
        if len(sums) == 1 and isinstance(bare(sums[0]), Sum) and all(is_monomial(value_of(f)) for f in others):
            below = multiplier
            for factor in others:
                below = multiply(below, value_of(factor))
            _gather(sums[0], line, below, place.side, leaves, places)
            return
    if isinstance(inner, Fraction | Division):
        top, bottom = (
            (inner.numerator, inner.denominator) if isinstance(inner, Fraction) else (inner.left, inner.right)
        )
        below = value_of(bottom)
        if isinstance(bare(top), Sum) and below:
            _gather(top, line, divide(multiplier, below), place.side, leaves, places)
            return
    whole = multiply(multiplier, value_of(inner))
    text = line[span[0]:span[1]]
    start, end = span[0] + len(text) - len(text.lstrip()), span[1] - len(text) + len(text.rstrip())
    leaves.append(Leaf((start, end), tight(line[start:end]), whole, outside, first, place, place.side))


