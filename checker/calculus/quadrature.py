"""An interval that surely holds an integral between bounds, where no antiderivative is known."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction as Rational

from checker.calculus.derivative import repeatedly_differentiated
from checker.polynomial import TooLargeError
from checker.refusals import UnsupportedError
from checker.syntax import Function, Node, Symbol, walk
from checker.values import Value, added, as_interval, is_real, multiplied

__all__ = ["enclosed_integral"]

_PIECES = 32
_SHARE = Rational(1, 24)  # of the second derivative times a piece's cube
_LARGEST = 400  # nodes of the second derivative

Evaluated = Callable[[Node, Mapping[str, Value]], Value]


def enclosed_integral(node: Function, evaluated: Evaluated) -> Value:
    """The integral by the midpoint rule; the second derivative over each piece bounds what is left.

    Args:
        node: int(body, letter, low, high).
        evaluated: the value of a tree where some letters have the values given.
    Raises:
        UnsupportedError: a construct with no derivative, or bounds that are no real numbers.
        UndefinedError, UnsureError: the body may have no value somewhere between the bounds.
        TooLargeError: the derivatives grow too large.
    """
    body, letter, low, high = node.arguments
    if not isinstance(letter, Symbol):
        raise UnsupportedError
    second = repeatedly_differentiated(body, letter.name, 2)
    if any(isinstance(one, Function) and one.name == "int" for one in walk(body)):
        raise UnsupportedError
    if sum(1 for _ in walk(second)) > _LARGEST:
        raise TooLargeError
    start, end = evaluated(low, {}), evaluated(high, {})
    if not is_real(start) or not is_real(end):
        raise UnsupportedError
    width = multiplied(added(end, multiplied(Rational(-1), start)), Rational(1, _PIECES))
    cube = multiplied(multiplied(width, width), multiplied(width, _SHARE))
    total: Value = Rational(0)
    for at in range(_PIECES):
        left = added(start, multiplied(width, Rational(at)))
        middle = added(start, multiplied(width, Rational(2 * at + 1, 2)))
        right = added(start, multiplied(width, Rational(at + 1)))
        ends = [as_interval(left), as_interval(right)]
        piece = ends[0].ctx.mpf([min(one.a for one in ends), max(one.b for one in ends)])
        total = added(total, multiplied(width, evaluated(body, {letter.name: middle})))
        total = added(total, multiplied(cube, evaluated(second, {letter.name: piece})))
    return total
