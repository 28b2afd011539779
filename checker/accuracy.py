"""The accuracy that a question or an answer states: decimal places, significant figures, the nearest unit, exact."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from math import floor
from typing import Literal

from checker.numeric import UnsureError, Value, difference, is_real, sign_of
from checker.real_roots import RealNumber
from checker.rounding import decimal_places, rounding_of
from checker.syntax import Node, Number
from checker.syntax.shapes import unsigned

__all__ = ["Accuracy", "is_decimal", "judged_decimal", "rounded_latex", "stated_accuracy"]

_WORDS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "a": 1}
_UNITS = {
    "integer": Fraction(1), "whole number": Fraction(1), "unit": Fraction(1), "degree": Fraction(1),
    "ten": Fraction(10), "hundred": Fraction(100), "thousand": Fraction(1000), "tenth": Fraction(1, 10),
    "hundredth": Fraction(1, 100), "thousandth": Fraction(1, 1000), "penny": Fraction(1, 100), "cent": Fraction(1, 100),
}
_COUNT = r"(\d{1,2}|one|two|three|four|five|six|a)\s*"
_PLACES = re.compile(_COUNT + r"(?:d\.?\s?p\b|decimal\s+places?|decimals?\b)", re.IGNORECASE)
_FIGURES = re.compile(_COUNT + r"(?:s\.?\s?f\b|sig(?:nificant|\.)?\s*fig(?:ure)?s?)", re.IGNORECASE)
_NEAREST = re.compile(r"nearest\s+(" + "|".join(_UNITS) + r")\b", re.IGNORECASE)
_EXACT = re.compile(r"\bexact(?:ly)?\b|\bsurd form\b", re.IGNORECASE)
_COMMANDS = re.compile(r"\\(?:text|mathrm|textrm|mbox|quad|qquad|[ ,;!])|[{}~]")


@dataclass(frozen=True, slots=True)
class Accuracy:
    """How a value is to be given.

    Args:
        kind: decimal places, significant figures, a unit, or exact.
        count: places or figures.
        unit: for a unit, what it is rounded to a multiple of.
    """

    kind: Literal["dp", "sf", "unit", "exact"]
    count: int = 0
    unit: Fraction = Fraction(1)

    @property
    def words(self) -> str:
        """2 d.p., 3 s.f."""
        match self.kind:
            case "dp":
                return f"{self.count} d.p."
            case "sf":
                return f"{self.count} s.f."
            case "exact":
                return "exact"
            case _:
                return "nearest " + next(name for name, unit in _UNITS.items() if unit == self.unit)


def stated_accuracy(text: str) -> Accuracy | None:
    """What a line or a question says of accuracy; the last statement counts."""
    plain = re.sub(r"\s+", " ", _COMMANDS.sub(" ", text))
    found: list[tuple[int, Accuracy]] = []
    for pattern, kind in ((_PLACES, "dp"), (_FIGURES, "sf")):
        for match in pattern.finditer(plain):
            count = _WORDS.get(match[1].lower()) or int(match[1])
            if kind == "dp" or count:
                found.append((match.start(), Accuracy("dp" if kind == "dp" else "sf", count)))
    found += [(match.start(), Accuracy("unit", unit=_UNITS[match[1].lower()])) for match in _NEAREST.finditer(plain)]
    found += [(match.start(), Accuracy("exact")) for match in _EXACT.finditer(plain)]
    return max(found, key=lambda one: one[0])[1] if found else None


def judged_decimal(value: Value, node: Node, asked: Accuracy | None) -> tuple[bool | None, bool | None]:
    """A written decimal against the value it stands for.

    Args:
        value: the true value, real.
        node: what is written.
        asked: the accuracy, when one is stated.
    Returns:
        Is it right, to the digits that are written, and has it as many as asked? None where that cannot be told; a
        decimal that was cut off is not called wrong unless an accuracy was asked.
    """
    written = decimal_places(node)
    if written is None or not is_real(value):
        return None, None
    number, places = written
    if asked is not None and asked.kind in ("unit", "sf") and places == 0 and _places(asked, number) < 0:
        unit = Fraction(10) ** -_places(asked, number)
        right = _within(value, number, unit / 2)
        return right, right and number % unit == 0
    kind = rounding_of(value, number, places)
    if kind is None:
        return None, None
    right = True if kind in ("exact", "rounded") else None if kind == "cut" and asked is None else False
    if asked is None:
        return right, True if kind == "exact" else None
    if kind == "exact" and asked.kind != "sf":
        return True, asked.kind == "exact" or number * 10 ** _places(asked, number) % 1 == 0
    return right, _has_digits(node, number, places, asked)


def _within(value: Value, number: Fraction, most: Fraction) -> bool | None:
    gap = difference(value, number)
    try:
        size = gap if sign_of(gap) >= 0 else -gap
        return sign_of(difference(size, most)) <= 0
    except UnsureError:
        return None


def _places(asked: Accuracy, number: Fraction) -> int:
    """The decimals that the accuracy comes to for a number of this size; below 0 for tens."""
    if asked.kind == "dp":
        return asked.count
    if asked.kind == "unit":
        return next((places for places in range(-3, 4) if asked.unit == Fraction(10) ** -places), 0)
    size, places = abs(number), asked.count - 1
    while size >= 10:
        size, places = size / 10, places - 1
    while 0 < size < 1:
        size, places = size * 10, places + 1
    return places


def _has_digits(node: Node, number: Fraction, places: int, asked: Accuracy) -> bool:
    if asked.kind == "exact":
        return False
    wanted = _places(asked, number)
    if wanted >= 0:
        return places == wanted
    return places == 0 and number % Fraction(10) ** -wanted == 0


def rounded_latex(value: Value, asked: Accuracy) -> str:
    """The value as the accuracy wants it, halves away from zero; empty when its digits cannot be told."""
    if asked.kind == "exact" or not is_real(value):
        return ""
    middle = RealNumber(value, "").middle
    places = _places(asked, middle)
    for _ in range(2):
        unit = Fraction(10) ** -places
        size = floor(abs(middle) / unit + Fraction(1, 2)) * unit
        again = _places(asked, size)  # 9.996 to 3 s.f. is 10.0
        if again == places:
            break
        places = again
    sign = "-" if middle < 0 and size else ""
    if places <= 0:
        return f"{sign}{int(size)}"
    whole, rest = divmod(int(size * 10**places), 10**places)
    return f"{sign}{whole}.{rest:0{places}d}"


def is_decimal(node: Node) -> bool:
    """Is it written in digits with a point, with or without a minus?"""
    node = unsigned(node)
    return isinstance(node, Number) and "." in node.text
