"""The names that values give to roots, functions and powers of letters, read back into base, argument and exponent."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction as Rational
from typing import Literal

from checker.slips.values import Value, add, single

__all__ = ["Named", "read_atom"]

_FUNCTION = re.compile(r"([a-z]+)\[\]\((.+)\)")
_RAISED = re.compile(r"\((.+)\)\^([^()]+)")
_FACTOR = re.compile(r"([A-Za-z0-9]+)\^(-?\d+(?:/\d+)?)")
_NUMBER = re.compile(r"-?\d+(?:/\d+)?")


@dataclass(frozen=True, slots=True)
class Named:
    """What a name stands for.

    Args:
        kind: a function of a value, the absolute value, a sum in a bracket, or a number raised to letters.
        name: the function's name, else empty.
        inside: the argument, the sum, or the base.
        exponent: the letters of the exponent of a raised number.
    """

    kind: Literal["function", "bars", "sum", "raised"]
    name: str
    inside: Value
    exponent: Value | None = None


def read_atom(atom: str) -> Named | None:
    """What an atom of a value stands for, where it is simple enough to be written."""
    if (found := _FUNCTION.fullmatch(atom)) is not None:
        inside = _value(found[2])
        return None if inside is None else Named("function", found[1], inside)
    if atom.startswith("|") and atom.endswith("|"):
        inside = _value(atom[1:-1])
        return None if inside is None else Named("bars", "", inside)
    if (found := _RAISED.fullmatch(atom)) is not None:
        base, exponent = _value(found[1]), _value(found[2])
        return None if base is None or exponent is None else Named("raised", "", base, exponent)
    if atom.startswith("(") and atom.endswith(")"):
        inside = _value(atom[1:-1])
        return None if inside is None else Named("sum", "", inside)
    return None


def _value(name: str) -> Value | None:
    """The value that a name of `name_of` was made from; None where it holds further names."""
    whole: Value = {}
    for piece in name.split("+"):
        number, star, rest = piece.partition("*")
        if not star or not _NUMBER.fullmatch(number):
            return None
        key: list[tuple[str, Rational]] = []
        for factor in rest.split("*") if rest else ():
            found = _FACTOR.fullmatch(factor)
            if found is None:
                return None
            key.append((found[1], Rational(found[2])))
        whole = add(whole, single(tuple(key), Rational(number)))
    return whole
