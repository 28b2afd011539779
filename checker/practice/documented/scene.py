"""One documented slip drawn afresh: the line before, and the wrong line with its wrong term marked."""

from __future__ import annotations

import random
from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction

__all__ = ["Draws", "Planting", "Plantings", "Scene", "bad", "first", "ratio", "root", "signed"]

OPEN, BETWEEN, CLOSE = "\x01", "\x02", "\x03"
LETTERS = "abcdghkmnpqrstuvwxyz"


def bad(wrong: str, right: str) -> str:
    """A term that is written wrongly, with what it should be; an empty wrong one is missing."""
    return f"{OPEN}{wrong}{BETWEEN}{right}{CLOSE}"


def signed(number: int | Fraction, body: str = "") -> str:
    """A term with its sign: +3x, -x, +7."""
    text = first(number, body)
    return text if text.startswith("-") else "+" + text


def first(number: int | Fraction, body: str = "") -> str:
    """A term that opens a sum: 3x, -x, 7."""
    sign = "-" if number < 0 else ""
    size = -number if number < 0 else number
    return sign + body if body and size == 1 else sign + ratio(size) + body


def ratio(value: int | Fraction) -> str:
    """A rational number as LaTeX."""
    value = Fraction(value)
    if value.denominator == 1:
        return str(value.numerator)
    return f"{'-' if value < 0 else ''}\\frac{{{abs(value.numerator)}}}{{{value.denominator}}}"


def root(number: int | str) -> str:
    return f"\\sqrt{{{number}}}"


class Draws(random.Random):
    """The random choices of one scene."""

    def whole(self, low: int, high: int, *without: int) -> int:
        return self.choice([n for n in range(low, high + 1) if n not in without])

    def nonzero(self, size: int, *without: int) -> int:
        return self.choice([n for n in range(-size, size + 1) if n and n not in without])

    def letter(self, *without: str) -> str:
        return self.choice([letter for letter in LETTERS if letter not in without])

    def square_free(self, *without: int) -> int:
        return self.choice([n for n in (2, 3, 5, 6, 7, 10, 11) if n not in without])


@dataclass(frozen=True, slots=True)
class Scene:
    """A step with its slip.

    Args:
        before: the right line before.
        written: the line with its wrong term marked; unmarked it is wrong, with each term put right it follows.
        after: lines that follow from the wrong line.
        settings: what an expression may be set into besides standing alone: "beside", "front", "bracket", "fraction",
            "equation"; a relation has none.
        relation: whether the lines are relations.
        verdict: what a fair teacher calls the wrong line.
    """

    before: str
    written: str
    after: tuple[str, ...] = ()
    settings: tuple[str, ...] = ()
    relation: bool = False
    verdict: str = "slip"


@dataclass(frozen=True, slots=True)
class Planting:
    """A way to draw one documented slip, with the kinds that a fair teacher could give it, the usual one first."""

    id: str
    kinds: tuple[str, ...]
    draw: Callable[[Draws], Scene] = field(repr=False)


class Plantings(dict[str, Planting]):
    """The plantings of one kind of task, by the name of the documented slip."""

    def of(self, name: str, *kinds: str) -> Callable[[Callable[[Draws], Scene]], Callable[[Draws], Scene]]:
        """Take in a way to draw the documented slip of this name."""

        def keep(draw: Callable[[Draws], Scene]) -> Callable[[Draws], Scene]:
            self[name] = Planting(name, kinds, draw)
            return draw

        return keep
