"""Decimals that stand for a value they do not equal: rounded, cut off, or wrong."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from checker.numeric import UnsureError, Value, as_interval, difference, is_real, sign_of
from checker.syntax import Bracket, Negation, Node, Number, Sum

__all__ = ["Rounding", "decimal_places", "places_when_rounded", "rounding_of", "terminates"]

Rounding = Literal["exact", "rounded", "cut", "wrong"]


def decimal_places(node: Node) -> tuple[Fraction, int] | None:
    """The value and the decimals written, for a number in digits with or without a minus, or a sum of such: -1+1.41."""
    match node:
        case Sum(terms=terms) if all(term.sign in "+-" for term in terms):
            found = [decimal_places(term.body) for term in terms]
            if None in found or not any(one[1] for one in found if one is not None):
                return None
            signs = [-1 if term.sign == "-" else 1 for term in terms]
            told = [one for one in found if one is not None]
            return sum((sign * one[0] for sign, one in zip(signs, told, strict=True)), Fraction(0)), max(
                one[1] for one in told
            )
        case Number(value=value, text=text) if "(" not in text:
            return value, len(text.partition(".")[2])
        case Negation(body=body) | Bracket(body=body):
            inner = decimal_places(body)
            if inner is None:
                return None
            return (-inner[0] if isinstance(node, Negation) else inner[0]), inner[1]
        case _:
            return None


def places_when_rounded(written: Fraction, places: int) -> int:
    """The decimals of a number said to be rounded: below 0 for the noughts at the end of a whole number."""
    if places or not written or written.denominator != 1:
        return places
    text = str(abs(written.numerator))
    return len(text.rstrip("0")) - len(text)


def rounding_of(value: Value, written: Fraction, places: int) -> Rounding | None:
    """How a written decimal stands to a real value; None when it cannot be told.

    Args:
        value: what it stands for.
        written: the decimal.
        places: its decimals; -1 when it is rounded to tens.
    """
    if not is_real(value):
        return None
    unit = Fraction(10) ** -places
    gap = difference(value, written)
    try:
        sign = sign_of(gap)
        if sign == 0:
            return "exact"
        size = gap if sign > 0 else -gap
        if sign_of(difference(size, unit / 2)) <= 0:
            return "rounded"
        if sign_of(difference(size, unit)) < 0 and sign_of(as_interval(value)) == sign:
            return "cut"
        return "wrong"
    except UnsureError:
        return None


def terminates(value: Fraction) -> bool:
    """Has it finitely many decimals?"""
    bottom = value.denominator
    for prime in (2, 5):
        while bottom % prime == 0:
            bottom //= prime
    return bottom == 1
