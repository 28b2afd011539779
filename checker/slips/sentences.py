"""Why a term is what it should be, in plain words that name the factors or the terms collected."""

from __future__ import annotations

import re
from collections.abc import Sequence

from checker.slips.partials import Partial
from checker.slips.values import Value, negate
from checker.slips.writing import Style, signed, unsigned, write_value

__all__ = ["collected", "made", "quotient_reason", "shown", "sign_reason"]

_OPENING = re.compile(r"[-+( ]+")


def shown(value: Value, style: Style) -> str:
    """A value in words, in LaTeX where it has one."""
    return write_value(value, style) or "the right term"


def sign_reason(factors: Sequence[str], result: Value) -> str:
    """Which sign a product has, and why; empty where the signs in front of the factors do not decide it."""
    signs = [_minuses(factor) for factor in factors]
    is_negative = all(number < 0 for number in result.values())
    if (sum(signs) % 2 == 1) != is_negative:
        return ""
    if any(count == 2 for count in signs):
        return "two minus signs make a plus"
    negative = sum(signs)
    if negative == 0:
        return "no factor is negative, so the product is positive"
    if len(factors) == 2:
        return (
            "one factor is negative, so the product is negative" if negative == 1
            else "both factors are negative, so the product is positive"
        )
    sign = "negative" if negative % 2 else "positive"
    verb = "is" if negative == 1 else "are"
    return f"{negative} of the {len(factors)} factors {verb} negative, so the product is {sign}"


def _minuses(factor: str) -> int:
    """How many minus signs stand in front of a factor, brackets looked through: two in -(-3)."""
    opening = _OPENING.match(factor)
    return opening[0].count("-") if opening is not None else 0


def quotient_reason(factors: Sequence[str], result: Value) -> str:
    """Which sign a quotient of two has, and why."""
    negative = sum(_minuses(factor) for factor in factors)
    if len(factors) != 2 or (negative == 1) != all(number < 0 for number in result.values()):
        return ""
    if negative == 2:
        return "both are negative, so the quotient is positive"
    return "one of the two is negative, so the quotient is negative" if negative == 1 else ""


def made(partial: Partial, style: Style) -> str:
    """How the line before gives this term: "-2t times +4 is -8t"."""
    result = shown(partial.value, style)
    factors = partial.factors
    if factors[0] == "-" and partial.origin != "bracket":
        return f"the minus in front turns {shown(negate(partial.value), style)} into {signed(result)}"
    match partial.origin:
        case "product" | "scaled":
            return f"{' times '.join(factors)} is {result}"
        case "square":
            return f"the square of {' times '.join(factors)} is {result}"
        case "middle":
            return f"twice {' times '.join(factors)} is {result}"
        case "power":
            return f"multiplied out, {factors[0]} to the power {factors[1]} has the term {result}"
        case "bracket":
            return f"the minus before the bracket turns {factors[1]} into {signed(result)}"
        case "bar":
            turned = factors[0][1:] if factors[0].startswith("-") else "-" + factors[0].removeprefix("+")
            return f"the bar works as a bracket, so the minus before it turns {factors[0]} into {signed(turned)}"
        case "derived":
            return f"the derivative of {factors[0]} is {result}"
        case "integrated":
            return f"the integral of {factors[0]} is {result}"
        case "quotient" if len(factors) == 2:
            return f"{factors[0]} divided by {factors[1]} is {result}"
        case "quotient":
            return f"divided by {factors[-1]}, this is {result}"
        case "raised" if len(factors) == 2:
            return f"{factors[0]} to the power {factors[1]} is {result}"
        case _:
            return f"the line before has {unsigned(result) if not factors else result}"


def collected(parts: Sequence[Value], result: Value, style: Style) -> str:
    """"20t - 8t is 12t"."""
    text = ""
    for part in parts:
        piece = shown(part, style)
        if not text:
            text = piece
        elif piece.startswith("-"):
            text += " - " + piece[1:]
        else:
            text += " + " + piece
    return f"{text} is {shown(result, style)}"
