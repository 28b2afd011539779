"""The value of a tree at a point: exact fractions while they last, then intervals that surely hold the value."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction as Rational
from math import comb, factorial, gcd, isqrt, lcm
from typing import Any

import mpmath
from mpmath.ctx_iv import MPIntervalContext
from mpmath.ctx_mp import MPContext

from checker.polynomial import TooLargeError
from checker.refusals import UndefinedError, UnsupportedError
from checker.syntax import (
    Absolute,
    Bracket,
    Division,
    Fraction,
    Function,
    MixedNumber,
    Negation,
    Node,
    Number,
    PlusMinus,
    Postfix,
    Power,
    Product,
    Root,
    Sum,
    Symbol,
    letters,
)

__all__ = [
    "Complex", "Evaluator", "UnsureError", "Value", "approximate", "as_interval", "difference", "is_near_zero",
    "is_real", "sign_of",
]

PRECISION_BITS = 230
MAX_BITS = 60_000  # of a whole number made by a power

_IV = MPIntervalContext()
_IV.prec = PRECISION_BITS
_MP = MPContext()
_MP.prec = PRECISION_BITS
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
    """A real value as an interval."""
    if isinstance(value, Rational):
        if max(value.numerator.bit_length(), value.denominator.bit_length()) > MAX_BITS:
            raise TooLargeError
        return _IV.mpf(value.numerator) / value.denominator
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
    return str(_MP.nstr(_MP.mpf(value.mid), digits))


def _lift(value: Value) -> Complex:
    return value if isinstance(value, Complex) else Complex(value, Rational(0))


def _add(a: Value, b: Value) -> Value:
    if isinstance(a, Rational) and isinstance(b, Rational):
        return a + b
    if isinstance(a, Complex) or isinstance(b, Complex):
        a, b = _lift(a), _lift(b)
        return _collapsed(_add(a.real, b.real), _add(a.imaginary, b.imaginary))
    return as_interval(a) + as_interval(b)


def _negated(a: Value) -> Value:
    return Complex(_negated(a.real), _negated(a.imaginary)) if isinstance(a, Complex) else -a


def _multiply(a: Value, b: Value) -> Value:
    if isinstance(a, Rational) and isinstance(b, Rational):
        return a * b
    if isinstance(a, Complex) or isinstance(b, Complex):
        a, b = _lift(a), _lift(b)
        real = _add(_multiply(a.real, b.real), _negated(_multiply(a.imaginary, b.imaginary)))
        return _collapsed(real, _add(_multiply(a.real, b.imaginary), _multiply(a.imaginary, b.real)))
    if (isinstance(a, Rational) and a == 0) or (isinstance(b, Rational) and b == 0):
        return Rational(0)
    return as_interval(a) * as_interval(b)


def _collapsed(real: Value, imaginary: Value) -> Value:
    return real if isinstance(imaginary, Rational) and imaginary == 0 else Complex(real, imaginary)


def _divide(a: Value, b: Value) -> Value:
    if is_near_zero(b):
        raise UndefinedError
    if isinstance(a, Rational) and isinstance(b, Rational):
        return a / b
    if isinstance(b, Complex):
        size = _add(_multiply(b.real, b.real), _multiply(b.imaginary, b.imaginary))
        turned = _multiply(_lift(a), Complex(b.real, _negated(b.imaginary)))
        return _divide(turned, size)
    if isinstance(a, Complex):
        return _collapsed(_divide(a.real, b), _divide(a.imaginary, b))
    return as_interval(a) / as_interval(b)


def difference(a: Value, b: Value) -> Value:
    return _add(a, _negated(b))


def _whole_power(base: Value, exponent: int) -> Value:
    if exponent < 0:
        return _divide(Rational(1), _whole_power(base, -exponent))
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
        result = _multiply(result, result)
        if bit == "1":
            result = _multiply(result, base)
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


def _rooted(value: Value, index: int) -> Value:
    """The principal root of a real value that is not negative."""
    if isinstance(value, Rational):
        top, bottom = _exact_root(value.numerator, index), _exact_root(value.denominator, index)
        if top is not None and bottom is not None:
            return Rational(top, bottom)
        value = as_interval(value)
    elif sign_of(value) == 0:
        return Rational(0)
    return _IV.sqrt(value) if index == 2 else _IV.exp(_IV.log(value) / index)


class Evaluator:
    """Values of trees at one point.

    Args:
        point: values of the letters.
        euler: is e the base of natural logarithms?
        complex_numbers: may roots of negative numbers be taken?
    """

    __slots__ = ("complex_numbers", "euler", "point")

    def __init__(
        self, point: Mapping[str, Value], *, euler: bool = False, complex_numbers: bool = False
    ) -> None:
        self.point = point
        self.euler = euler
        self.complex_numbers = complex_numbers

    def value(self, node: Node) -> Value:
        """The value of the node.

        Raises:
            UndefinedError: it has none at this point.
            UnsureError: the intervals grew too wide to tell.
            UnsupportedError: a construct or letter without a value.
            TooLargeError: a number too long.
        """
        return _HANDLERS[type(node)](self, node)

    def _number(self, node: Number) -> Value:
        return node.value

    def _symbol(self, node: Symbol) -> Value:
        name = node.name
        if name in self.point:
            return self.point[name]
        if name == "pi":
            return _IV.pi
        if name == "e" and self.euler:
            return _IV.exp(1)
        if name == "i":
            return Complex(Rational(0), Rational(1))
        raise UnsupportedError

    def _sum(self, node: Sum) -> Value:
        total: Value = Rational(0)
        for term in node.terms:
            value = self.value(term.body)
            if term.sign not in ("+", "-"):
                raise UnsupportedError
            total = _add(total, value if term.sign == "+" else _negated(value))
        return total

    def _product(self, node: Product) -> Value:
        total: Value = Rational(1)
        for factor in node.factors:
            total = _multiply(total, self.value(factor))
        return total

    def _fraction(self, node: Fraction) -> Value:
        return _divide(self.value(node.numerator), self.value(node.denominator))

    def _division(self, node: Division) -> Value:
        return _divide(self.value(node.left), self.value(node.right))

    def _inside(self, node: Bracket) -> Value:
        return self.value(node.body)

    def _negation(self, node: Negation) -> Value:
        return _negated(self.value(node.body))

    def _plus_minus(self, node: PlusMinus) -> Value:
        raise UnsupportedError

    def _mixed(self, node: MixedNumber) -> Value:
        return _add(self.value(node.whole), self.value(node.fraction))

    def _absolute(self, node: Absolute) -> Value:
        value = self.value(node.body)
        if isinstance(value, Complex):
            return _rooted(_add(_multiply(value.real, value.real), _multiply(value.imaginary, value.imaginary)), 2)
        return value if sign_of(value) >= 0 else _negated(value)

    def _postfix(self, node: Postfix) -> Value:
        value = self.value(node.body)
        if node.mark == "%":
            return _divide(value, Rational(100))
        if node.mark == "°":
            return _multiply(value, _IV.pi / 180)
        if not isinstance(value, Rational):
            raise UnsupportedError
        if value.denominator != 1 or value < 0:
            raise UndefinedError
        if value > 500:
            raise TooLargeError
        return Rational(factorial(int(value)))

    def _power(self, node: Power) -> Value:
        return self._raised(self.value(node.base), self.value(node.exponent))

    def _raised(self, base: Value, exponent: Value) -> Value:
        if isinstance(exponent, Rational) and exponent.denominator == 1:
            if exponent <= 0 and is_near_zero(base):
                raise UndefinedError
            return _whole_power(base, int(exponent))
        if isinstance(base, Complex) or isinstance(exponent, Complex):
            return self._complex_power(base, exponent)
        sign = sign_of(base)
        if sign < 0:
            if self.complex_numbers and isinstance(exponent, Rational) and exponent.denominator == 2:
                root = Complex(Rational(0), _rooted(_negated(base), 2))
                return _whole_power(root, exponent.numerator)
            raise UndefinedError
        if sign == 0:
            if sign_of(exponent) <= 0:
                raise UndefinedError
            return Rational(0)
        if isinstance(exponent, Rational):
            if exponent.denominator > 10_000 or abs(exponent.numerator) > 100_000:
                raise TooLargeError
            root = _rooted(base, exponent.denominator)
            if isinstance(root, Rational):
                return _whole_power(root, exponent.numerator)
        return self._exponential(as_interval(exponent) * _IV.log(as_interval(base)))

    def _exponential(self, value: Any) -> Value:
        if value.b > 40_000 or value.a < -40_000:
            raise TooLargeError
        return _IV.exp(value)

    def _complex_power(self, base: Value, exponent: Value) -> Value:
        if isinstance(base, Complex) or sign_of(base) <= 0 or not isinstance(exponent, Complex):
            raise UnsupportedError
        log = _IV.log(as_interval(base))
        size = self._exponential(as_interval(exponent.real) * log)
        angle = as_interval(exponent.imaginary) * log
        return Complex(size * _IV.cos(angle), size * _IV.sin(angle))

    def _root(self, node: Root) -> Value:
        index = Rational(2) if node.index is None else self.value(node.index)
        value = self.value(node.radicand)
        if not isinstance(index, Rational) or index.denominator != 1 or index < 2:
            return self._raised(value, _divide(Rational(1), index))
        if index > 10_000:
            raise TooLargeError
        if isinstance(value, Complex):
            raise UnsupportedError
        sign = sign_of(value)
        if sign >= 0:
            return _rooted(value, int(index)) if sign else Rational(0)
        if index % 2:
            return _negated(_rooted(_negated(value), int(index)))
        if self.complex_numbers and index == 2 and not letters(node.radicand):
            return Complex(Rational(0), _rooted(_negated(value), 2))
        raise UndefinedError

    def _function(self, node: Function) -> Value:
        value = self._applied(node, [self.value(argument) for argument in node.arguments])
        return value if node.power is None else self._raised(value, self.value(node.power))

    def _applied(self, node: Function, arguments: list[Value]) -> Value:
        name, first = node.name, arguments[0]
        if name in ("binom", "max", "min", "gcd", "lcm"):
            return self._of_numbers(name, arguments)
        if isinstance(first, Complex):
            if name == "exp":
                return self._complex_power(_IV.exp(1), first)
            raise UnsupportedError
        if name in _WAVES:
            return _WAVES[name](first)
        if name == "exp":
            return Rational(1) if first == 0 else self._exponential(as_interval(first))
        if name in ("ln", "log"):
            value = self._logarithm(first)
            if name == "ln":
                return value
            base = Rational(10) if node.base is None else self.value(node.base)
            return _divide(value, self._logarithm(base))
        if name in _INVERSES:
            return _inverse(name, first)
        raise UnsupportedError

    def _logarithm(self, value: Value) -> Value:
        if isinstance(value, Complex) or sign_of(value) <= 0:
            raise UndefinedError
        return Rational(0) if value == 1 else _IV.log(as_interval(value))

    def _of_numbers(self, name: str, arguments: list[Value]) -> Value:
        if not all(isinstance(argument, Rational) for argument in arguments):
            raise UnsupportedError
        if name in ("max", "min"):
            return max(arguments) if name == "max" else min(arguments)
        if any(argument.denominator != 1 or argument < 0 for argument in arguments):
            raise UndefinedError
        whole = [int(argument) for argument in arguments]
        if name == "binom":
            if whole[0] > 2_000:
                raise TooLargeError
            return Rational(comb(whole[0], whole[1]))
        return Rational(gcd(*whole) if name == "gcd" else lcm(*whole))


def _sine(value: Value) -> Value:
    return Rational(0) if isinstance(value, Rational) and value == 0 else _IV.sin(as_interval(value))


def _cosine(value: Value) -> Value:
    return Rational(1) if isinstance(value, Rational) and value == 0 else _IV.cos(as_interval(value))


def _hyperbolic(value: Value, sign: int) -> Value:
    interval = as_interval(value)
    if abs(interval.mid) > 20_000:
        raise TooLargeError
    return (_IV.exp(interval) + sign * _IV.exp(-interval)) / 2


_WAVES: dict[str, Callable[[Value], Value]] = {
    "sin": _sine,
    "cos": _cosine,
    "tan": lambda value: _divide(_sine(value), _cosine(value)),
    "cot": lambda value: _divide(_cosine(value), _sine(value)),
    "sec": lambda value: _divide(Rational(1), _cosine(value)),
    "csc": lambda value: _divide(Rational(1), _sine(value)),
    "sinh": lambda value: _hyperbolic(value, -1),
    "cosh": lambda value: _hyperbolic(value, 1),
    "tanh": lambda value: _divide(_hyperbolic(value, -1), _hyperbolic(value, 1)),
}
_INVERSES = {"arcsin": "asin", "arccos": "acos", "arctan": "atan"}


def _inverse(name: str, value: Value) -> Value:
    """An inverse sine, cosine or tangent: mpmath's value at both ends, widened by more than its rounding."""
    interval = as_interval(value)
    if name != "arctan" and (interval.b < -1 or interval.a > 1):
        raise UndefinedError
    ends = []
    for end in (interval.a, interval.b):
        number = _MP.mpf(end.mid)
        if name != "arctan":
            number = min(_MP.mpf(1), max(_MP.mpf(-1), number))
        ends.append(getattr(_MP, _INVERSES[name])(number))
    slack = _MP.mpf(2) ** (20 - PRECISION_BITS)
    return _IV.mpf([min(ends) - slack, max(ends) + slack])


_HANDLERS: dict[type[Any], Callable[[Evaluator, Any], Value]] = {
    Number: Evaluator._number, Symbol: Evaluator._symbol, Sum: Evaluator._sum, Product: Evaluator._product,
    Fraction: Evaluator._fraction, Division: Evaluator._division, Power: Evaluator._power, Root: Evaluator._root,
    Negation: Evaluator._negation, PlusMinus: Evaluator._plus_minus, Absolute: Evaluator._absolute,
    Function: Evaluator._function, MixedNumber: Evaluator._mixed, Bracket: Evaluator._inside,
    Postfix: Evaluator._postfix,
}
