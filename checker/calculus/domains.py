"""Is a tree defined and continuous over a whole interval? Shown with intervals, piece by piece."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction as Rational
from typing import Any, Literal

from checker.calculus.building import applied, number, raised, subtracted
from checker.calculus.derivative import differentiated
from checker.calculus.parts import CONSTANT, linear_slope, split
from checker.numeric import Evaluator, UnsureError, Value, as_interval, is_real, sign_of
from checker.polynomial import TooLargeError
from checker.refusals import UndefinedError, UnsupportedError
from checker.syntax import (
    Absolute,
    Division,
    Fraction,
    Function,
    Node,
    Number,
    Postfix,
    Power,
    Root,
    Symbol,
    letters,
    walk,
)

__all__ = ["Hazard", "hazards", "is_continuous", "is_continuous_beyond"]

Hazard = tuple[Literal["nonzero", "positive", "not negative"], Node]
_PIECES = 16
_DEEPEST = 8  # halvings of a piece
_HARMLESS = frozenset({"sin", "cos", "exp", "sinh", "cosh", "tanh", "sech", "arctan", "arcsinh"})


def hazards(top: Node, name: str) -> Iterator[Hazard]:
    """What must be nonzero, positive or not negative for the tree to be defined, where it changes with the letter.

    Raises:
        UnsupportedError: a construct of which that is not known.
    """
    for node in walk(top):
        if name not in letters(node):
            continue
        match node:
            case Fraction(denominator=bottom) | Division(right=bottom):
                yield from _nonzero(bottom, name)
            case Power(base=base, exponent=Number(value=value)) if value.denominator == 1 and value >= 0:
                continue
            case Power(base=base, exponent=exponent):
                times = _number(exponent)
                if times is None or times.denominator > 1:
                    if name in letters(base) or not _is_positive(base):
                        yield "not negative" if times is not None and times > 0 else "positive", base
                elif times < 0:
                    yield from _nonzero(base, name)
            case Root(radicand=radicand, index=index):
                if index is None or (isinstance(index, Number) and index.value % 2 == 0):
                    yield "not negative", radicand
                elif not isinstance(index, Number):
                    raise UnsupportedError
            case Function():
                yield from _of_function(node, name)
            case Postfix(mark="!"):
                raise UnsupportedError
            case _:
                continue


def _nonzero(node: Node, name: str) -> Iterator[Hazard]:
    if name in letters(node):
        yield "nonzero", node


def _number(node: Node) -> Rational | None:
    try:
        value = Evaluator({}, euler=True).value(node)
    except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
        return None
    return value if isinstance(value, Rational) else None


def _is_positive(base: Node) -> bool:
    return (isinstance(base, Number) and base.value > 0) or (isinstance(base, Symbol) and base.name in ("e", "pi"))


def _of_function(node: Function, name: str) -> Iterator[Hazard]:
    if len(node.arguments) != 1 or node.name.rstrip("'") in ("f", "g", "h"):
        raise UnsupportedError
    u = node.arguments[0]
    if node.power is not None and not (isinstance(node.power, Number) and node.power.value.denominator == 1):
        raise UnsupportedError
    match node.name:
        case "ln" | "log":
            if node.base is not None and name in letters(node.base):
                raise UnsupportedError
            yield ("nonzero", u.body) if isinstance(u, Absolute) else ("positive", u)
        case "tan" | "sec":
            yield "nonzero", applied("cos", u)
        case "cot" | "csc":
            yield "nonzero", applied("sin", u)
        case "coth" | "csch":
            yield "nonzero", u
        case "arcsin" | "arccos":
            yield "not negative", subtracted(number(1), raised(u, number(2)))
        case "arctanh":
            yield "positive", subtracted(number(1), raised(u, number(2)))
        case called if called not in _HARMLESS:
            raise UnsupportedError
        case _:
            return


def is_continuous(top: Node, name: str, low: Node, high: Node) -> bool:
    """Is the tree defined, and so continuous, from one bound to the other? False where that cannot be shown."""
    found = list(hazards(top, name))
    if not found:
        return True
    if any(letters(node) - {name, "e", "pi"} for _, node in found) or (letters(low) | letters(high)) - {"e", "pi"}:
        return False
    try:
        ends = [Evaluator({}, euler=True).value(bound) for bound in (low, high)]
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
        return False
    if not all(is_real(end) for end in ends):
        return False
    first, last = (as_interval(end) for end in ends)
    if first.a > last.b:
        first, last, ends = last, first, [ends[1], ends[0]]
    return all(_holds(hazard, name, first, last, ends) for hazard in found)


def _holds(hazard: Hazard, name: str, first: Any, last: Any, ends: list[Value]) -> bool:
    width = last - first
    pieces = [(first + width * at / _PIECES, first + width * (at + 1) / _PIECES, 0) for at in range(_PIECES)]
    while pieces:
        low, high, depth = pieces.pop()
        piece = low.ctx.mpf([low.a, high.b])
        if _holds_over(hazard, name, piece, [end for end in ends if as_interval(end).b >= piece.a
                                             and as_interval(end).a <= piece.b]):
            continue
        if depth == _DEEPEST:
            return False
        middle = low + (high - low) / 2
        pieces += [(low, middle, depth + 1), (middle, high, depth + 1)]
    return True


def _holds_over(hazard: Hazard, name: str, piece: Any, ends: list[Value]) -> bool:
    kind, node = hazard
    sign = _sign(node, name, piece)
    if kind == "nonzero":
        return sign is not None and sign != 0
    if sign == 1:
        return True
    if kind == "positive" or not ends:
        return False
    # nothing may be below zero: at an end it may be zero, and it grows or falls all over the piece
    at_end = _sign(node, name, ends[0])
    try:
        slope = _sign(differentiated(node, name, CONSTANT), name, piece)
    except UnsupportedError:
        return False
    return at_end is not None and at_end >= 0 and slope is not None and slope != 0


def _sign(node: Node, name: str, value: Value) -> int | None:
    try:
        return sign_of(Evaluator({name: value}, euler=True).value(node))
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
        return None


def is_continuous_beyond(top: Node, name: str, low: Node) -> bool:
    """Is the tree defined from the bound on? Shown only where what must not vanish grows evenly from there."""
    for _, node in hazards(top, name):
        for factor in split(node, name)[1]:
            slope = linear_slope(factor.base, name)
            if slope is None or letters(factor.base) - {name} or letters(low):
                return False
            start = _number(low)
            if start is None or _sign(factor.base, name, start) != 1 or _sign(slope, name, Rational(0)) != 1:
                return False
    return True
