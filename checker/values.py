"""Values: exact fractions while they last, then intervals that surely hold the value, and complex pairs of these."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as Rational
from math import isqrt
from typing import Any

import mpmath
from mpmath.ctx_iv import MPIntervalContext
from mpmath.ctx_mp import MPContext

from checker.polynomial import TooLargeError
from checker.refusals import UndefinedError, UnsupportedError

__all__ = [
    "IV", "MP", "PRECISION_BITS", "Complex", "UnsureError", "Value", "added", "approximate", "as_interval",
    "difference", "divided", "is_near_zero", "is_real", "multiplied", "negated", "rooted", "sign_of", "whole_power",
]

PRECISION_BITS = 230
MAX_BITS = 60_000  # of a whole number made by a power

IV = MPIntervalContext()
IV.prec = PRECISION_BITS
MP = MPContext()
MP.prec = PRECISION_BITS
_NEAR_ZERO = mpmath.mpf(10) ** -35


class UnsureError(Exception):
    """The interval is too wide to tell."""


@dataclass(frozen=True, slots=True)
class Complex:
    """A complex number whose parts are fractions or intervals."""

    real: Any
    imaginary: Any


Value = Any  # Rational, an mpmath interval, or Complex


def as_interval(value: Value) -> Any:
    """A real value as an interval.

    Raises:
        UnsupportedError: it is a complex number.
        TooLargeError: it has too many digits.
    """
    if isinstance(value, Complex):
        raise UnsupportedError
    if isinstance(value, Rational):
        if max(value.numerator.bit_length(), value.denominator.bit_length()) > MAX_BITS:
            raise TooLargeError
        return IV.mpf(value.numerator) / value.denominator
    return value


def sign_of(value: Value) -> int:
    """-1, 0 or 1; an interval about zero that is narrow enough counts as zero.

    Raises:
        UnsureError: a wide interval holds zero.
    """
    if isinstance(value, Rational):
        return (value > 0) - (value < 0)
    if value.a > 0:
        return 1
    if value.b < 0:
        return -1
    if value.b - value.a < _NEAR_ZERO:
        return 0
    raise UnsureError


def is_near_zero(value: Value) -> bool:
    """Raises:
    UnsureError: it cannot be told.
    """
    if isinstance(value, Complex):
        return sign_of(value.real) == 0 and sign_of(value.imaginary) == 0
    return sign_of(value) == 0


def is_real(value: Value) -> bool:
    return not isinstance(value, Complex)


def approximate(value: Value, digits: int = 4) -> str:
    """The value in a few digits, exact when it is a short fraction."""
    if isinstance(value, Complex):
        imaginary = approximate(value.imaginary, digits)
        return f"{approximate(value.real, digits)}{'' if imaginary.startswith('-') else '+'}{imaginary}i"
    if isinstance(value, Rational):
        if max(abs(value.numerator), value.denominator) < 10**6:
            return str(value)
        value = as_interval(value)
    return str(MP.nstr(MP.mpf(value.mid), digits))


def _lift(value: Value) -> Complex:
    return value if isinstance(value, Complex) else Complex(value, Rational(0))


def added(a: Value, b: Value) -> Value:
    if isinstance(a, Rational) and isinstance(b, Rational):
        return a + b
    if isinstance(a, Complex) or isinstance(b, Complex):
        a, b = _lift(a), _lift(b)
        return _collapsed(added(a.real, b.real), added(a.imaginary, b.imaginary))
    return as_interval(a) + as_interval(b)


def negated(a: Value) -> Value:
    return Complex(negated(a.real), negated(a.imaginary)) if isinstance(a, Complex) else -a


def multiplied(a: Value, b: Value) -> Value:
    if isinstance(a, Rational) and isinstance(b, Rational):
        return a * b
    if isinstance(a, Complex) or isinstance(b, Complex):
        a, b = _lift(a), _lift(b)
        real = added(multiplied(a.real, b.real), negated(multiplied(a.imaginary, b.imaginary)))
        return _collapsed(real, added(multiplied(a.real, b.imaginary), multiplied(a.imaginary, b.real)))
    if (isinstance(a, Rational) and a == 0) or (isinstance(b, Rational) and b == 0):
        return Rational(0)
    return as_interval(a) * as_interval(b)


def _collapsed(real: Value, imaginary: Value) -> Value:
    return real if isinstance(imaginary, Rational) and imaginary == 0 else Complex(real, imaginary)


def divided(a: Value, b: Value) -> Value:
    if is_near_zero(b):
        raise UndefinedError
    if isinstance(a, Rational) and isinstance(b, Rational):
        return a / b
    if isinstance(b, Complex):
        size = added(multiplied(b.real, b.real), multiplied(b.imaginary, b.imaginary))
        turned = multiplied(_lift(a), Complex(b.real, negated(b.imaginary)))
        return divided(turned, size)
    if isinstance(a, Complex):
        return _collapsed(divided(a.real, b), divided(a.imaginary, b))
    return as_interval(a) / as_interval(b)


def difference(a: Value, b: Value) -> Value:
    return added(a, negated(b))


def whole_power(base: Value, exponent: int) -> Value:
    if exponent < 0:
        return divided(Rational(1), whole_power(base, -exponent))
    if isinstance(base, Rational):
        bits = max(base.numerator.bit_length(), base.denominator.bit_length())
        if abs(base) != 1 and base and bits * exponent > MAX_BITS:
            raise TooLargeError
        if abs(base) == 1:
            return base if exponent % 2 else Rational(1)
        return Rational(base**exponent) if base or exponent <= 1 else Rational(0)
    if exponent > 5_000:
        raise TooLargeError
    result: Value = Rational(1)
    for bit in bin(exponent)[2:]:
        result = multiplied(result, result)
        if bit == "1":
            result = multiplied(result, base)
    return result


def _exact_root(value: int, index: int) -> int | None:
    if value < 2:
        return value
    if value.bit_length() > MAX_BITS:
        raise TooLargeError
    if index == 2:
        root = isqrt(value)
        return root if root * root == value else None
    low, high = 0, 1 << (value.bit_length() // index + 1)
    while low <= high:
        middle = (low + high) // 2
        test = middle**index
        if test == value:
            return middle
        low, high = (middle + 1, high) if test < value else (low, middle - 1)
    return None


def rooted(value: Value, index: int) -> Value:
    """The principal root of a real value that is not negative."""
    if isinstance(value, Rational):
        top, bottom = _exact_root(value.numerator, index), _exact_root(value.denominator, index)
        if top is not None and bottom is not None:
            return Rational(top, bottom)
        value = as_interval(value)
    elif sign_of(value) == 0:
        return Rational(0)
    return IV.sqrt(value) if index == 2 else IV.exp(IV.log(value) / index)
