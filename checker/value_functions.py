"""Sines, hyperbolic functions and their inverses of values."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction as Rational
from typing import Any

from checker.polynomial import TooLargeError
from checker.refusals import UndefinedError
from checker.values import (
    IV,
    MP,
    PRECISION_BITS,
    Value,
    added,
    as_interval,
    divided,
    multiplied,
    negated,
    rooted,
    sign_of,
)

__all__ = ["VALUE_FUNCTIONS"]


def _sine(value: Value) -> Value:
    return Rational(0) if isinstance(value, Rational) and value == 0 else IV.sin(as_interval(value))


def _cosine(value: Value) -> Value:
    return Rational(1) if isinstance(value, Rational) and value == 0 else IV.cos(as_interval(value))


def _hyperbolic(value: Value, sign: int) -> Value:
    interval = as_interval(value)
    if abs(interval.mid) > 20_000:
        raise TooLargeError
    return (IV.exp(interval) + sign * IV.exp(-interval)) / 2


def _inverse(name: str, value: Value) -> Value:
    """An inverse sine, cosine or tangent: mpmath's value at both ends, widened by more than its rounding."""
    interval = as_interval(value)
    if name != "arctan" and (interval.b < -1 or interval.a > 1):
        raise UndefinedError
    ends = []
    for end in (interval.a, interval.b):
        number = MP.mpf(end.mid)
        if name != "arctan":
            number = min(MP.mpf(1), max(MP.mpf(-1), number))
        ends.append(_POINTS[name](number))
    slack = MP.mpf(2) ** (20 - PRECISION_BITS)
    return IV.mpf([min(ends) - slack, max(ends) + slack])


def _inverse_hyperbolic_sine(value: Value) -> Value:
    if sign_of(value) < 0:
        return negated(_inverse_hyperbolic_sine(negated(value)))
    root = rooted(added(multiplied(value, value), Rational(1)), 2)
    return _logarithm(added(value, root))


def _inverse_hyperbolic_cosine(value: Value) -> Value:
    if sign_of(added(value, Rational(-1))) < 0:
        raise UndefinedError
    return _logarithm(added(value, rooted(added(multiplied(value, value), Rational(-1)), 2)))


def _inverse_hyperbolic_tangent(value: Value) -> Value:
    above, below = added(Rational(1), value), added(Rational(1), negated(value))
    if sign_of(above) <= 0 or sign_of(below) <= 0:
        raise UndefinedError
    return divided(_logarithm(divided(above, below)), Rational(2))


def _logarithm(value: Value) -> Value:
    return Rational(0) if isinstance(value, Rational) and value == 1 else IV.log(as_interval(value))


def _of_reciprocal(name: str) -> Callable[[Value], Value]:
    return lambda value: VALUE_FUNCTIONS[name](divided(Rational(1), value))


def _arccot(value: Value) -> Value:
    return divided(IV.pi, Rational(2)) if sign_of(value) == 0 else _inverse("arctan", divided(Rational(1), value))


_POINTS: dict[str, Callable[[Any], Any]] = {"arcsin": MP.asin, "arccos": MP.acos, "arctan": MP.atan}
_ONE = Rational(1)
VALUE_FUNCTIONS: dict[str, Callable[[Value], Value]] = {
    "sin": _sine,
    "cos": _cosine,
    "tan": lambda value: divided(_sine(value), _cosine(value)),
    "cot": lambda value: divided(_cosine(value), _sine(value)),
    "sec": lambda value: divided(_ONE, _cosine(value)),
    "csc": lambda value: divided(_ONE, _sine(value)),
    "sinh": lambda value: _hyperbolic(value, -1),
    "cosh": lambda value: _hyperbolic(value, 1),
    "tanh": lambda value: divided(_hyperbolic(value, -1), _hyperbolic(value, 1)),
    "coth": lambda value: divided(_hyperbolic(value, 1), _hyperbolic(value, -1)),
    "sech": lambda value: divided(_ONE, _hyperbolic(value, 1)),
    "csch": lambda value: divided(_ONE, _hyperbolic(value, -1)),
    "arcsin": lambda value: _inverse("arcsin", value),
    "arccos": lambda value: _inverse("arccos", value),
    "arctan": lambda value: _inverse("arctan", value),
    "arcsec": _of_reciprocal("arccos"),
    "arccsc": _of_reciprocal("arcsin"),
    "arccot": _arccot,
    "arcsinh": _inverse_hyperbolic_sine,
    "arccosh": _inverse_hyperbolic_cosine,
    "arctanh": _inverse_hyperbolic_tangent,
}
