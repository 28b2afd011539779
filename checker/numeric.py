"""The value of a tree at a point: exact fractions while they last, then intervals that surely hold the value."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction as Rational
from math import comb, factorial, gcd, lcm
from typing import Any

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
from checker.value_functions import VALUE_FUNCTIONS
from checker.values import (
    IV,
    Complex,
    UnsureError,
    Value,
    added,
    approximate,
    as_interval,
    difference,
    divided,
    is_near_zero,
    is_real,
    multiplied,
    negated,
    rooted,
    sign_of,
    whole_power,
)

__all__ = [
    "Complex", "Evaluator", "UnsureError", "Value", "approximate", "as_interval", "difference", "is_near_zero",
    "is_real", "sign_of",
]


_MOST_TERMS = 60  # of a sum that is added up at a point


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
            return IV.pi
        if name == "e" and self.euler:
            return IV.exp(1)
        if name == "i":
            return Complex(Rational(0), Rational(1))
        raise UnsupportedError

    def _sum(self, node: Sum) -> Value:
        total: Value = Rational(0)
        for term in node.terms:
            value = self.value(term.body)
            if term.sign not in ("+", "-"):
                raise UnsupportedError
            total = added(total, value if term.sign == "+" else negated(value))
        return total

    def _product(self, node: Product) -> Value:
        total: Value = Rational(1)
        for factor in node.factors:
            total = multiplied(total, self.value(factor))
        return total

    def _fraction(self, node: Fraction) -> Value:
        return divided(self.value(node.numerator), self.value(node.denominator))

    def _division(self, node: Division) -> Value:
        return divided(self.value(node.left), self.value(node.right))

    def _inside(self, node: Bracket) -> Value:
        return self.value(node.body)

    def _negation(self, node: Negation) -> Value:
        return negated(self.value(node.body))

    def _plus_minus(self, node: PlusMinus) -> Value:
        raise UnsupportedError

    def _mixed(self, node: MixedNumber) -> Value:
        return added(self.value(node.whole), self.value(node.fraction))

    def _absolute(self, node: Absolute) -> Value:
        value = self.value(node.body)
        if isinstance(value, Complex):
            return rooted(added(multiplied(value.real, value.real), multiplied(value.imaginary, value.imaginary)), 2)
        return value if sign_of(value) >= 0 else negated(value)

    def _postfix(self, node: Postfix) -> Value:
        value = self.value(node.body)
        if node.mark == "%":
            return divided(value, Rational(100))
        if node.mark == "°":
            return multiplied(value, IV.pi / 180)
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
            return whole_power(base, int(exponent))
        if isinstance(base, Complex) or isinstance(exponent, Complex):
            return self._complex_power(base, exponent)
        sign = sign_of(base)
        if sign < 0:
            if self.complex_numbers and isinstance(exponent, Rational) and exponent.denominator == 2:
                root = Complex(Rational(0), rooted(negated(base), 2))
                return whole_power(root, exponent.numerator)
            raise UndefinedError
        if sign == 0:
            if sign_of(exponent) <= 0:
                raise UndefinedError
            return Rational(0)
        if isinstance(exponent, Rational):
            if exponent.denominator > 10_000 or abs(exponent.numerator) > 100_000:
                raise TooLargeError
            root = rooted(base, exponent.denominator)
            if isinstance(root, Rational):
                return whole_power(root, exponent.numerator)
        return self._exponential(as_interval(exponent) * IV.log(as_interval(base)))

    def _exponential(self, value: Any) -> Value:
        if value.b > 40_000 or value.a < -40_000:
            raise TooLargeError
        return IV.exp(value)

    def _complex_power(self, base: Value, exponent: Value) -> Value:
        if isinstance(base, Complex) or sign_of(base) <= 0 or not isinstance(exponent, Complex):
            raise UnsupportedError
        log = IV.log(as_interval(base))
        size = self._exponential(as_interval(exponent.real) * log)
        angle = as_interval(exponent.imaginary) * log
        return Complex(size * IV.cos(angle), size * IV.sin(angle))

    def _root(self, node: Root) -> Value:
        index = Rational(2) if node.index is None else self.value(node.index)
        value = self.value(node.radicand)
        if not isinstance(index, Rational) or index.denominator != 1 or index < 2:
            return self._raised(value, divided(Rational(1), index))
        if index > 10_000:
            raise TooLargeError
        if isinstance(value, Complex):
            raise UnsupportedError
        sign = sign_of(value)
        if sign >= 0:
            return rooted(value, int(index)) if sign else Rational(0)
        if index % 2:
            return negated(rooted(negated(value), int(index)))
        if self.complex_numbers and index == 2 and not letters(node.radicand):
            return Complex(Rational(0), rooted(negated(value), 2))
        raise UndefinedError

    def _function(self, node: Function) -> Value:
        if node.name == "int":
            return self._integral(node)
        if node.name in ("sum", "prod") and len(node.arguments) == 4:
            return self._series(node)
        value = self._applied(node, [self.value(argument) for argument in node.arguments])
        return value if node.power is None else self._raised(value, self.value(node.power))

    def _integral(self, node: Function) -> Value:
        from checker.calculus.quadrature import enclosed_integral  # this room stands below those of calculus

        if len(node.arguments) != 4:
            raise UnsupportedError
        return enclosed_integral(node, self._with_values)

    def _series(self, node: Function) -> Value:
        body, letter, *bounds = node.arguments
        low, high = (self.value(bound) for bound in bounds)
        if not isinstance(letter, Symbol) or not isinstance(low, Rational) or not isinstance(high, Rational):
            raise UnsupportedError
        if low.denominator != 1 or high.denominator != 1 or high < low:
            raise UndefinedError
        if high - low > _MOST_TERMS:
            raise TooLargeError
        total = Rational(0) if node.name == "sum" else Rational(1)
        for at in range(int(low), int(high) + 1):
            part = self._with_values(body, {letter.name: Rational(at)})
            total = added(total, part) if node.name == "sum" else multiplied(total, part)
        return total

    def _with_values(self, node: Node, values: Mapping[str, Value]) -> Value:
        point = {**self.point, **values}
        return Evaluator(point, euler=self.euler, complex_numbers=self.complex_numbers).value(node)

    def _applied(self, node: Function, arguments: list[Value]) -> Value:
        name, first = node.name, arguments[0]
        if name in ("binom", "max", "min", "gcd", "lcm"):
            return self._of_numbers(name, arguments)
        if isinstance(first, Complex):
            if name == "exp":
                return self._complex_power(IV.exp(1), first)
            raise UnsupportedError
        if name in VALUE_FUNCTIONS and len(arguments) == 1:
            return VALUE_FUNCTIONS[name](first)
        if name == "exp":
            return Rational(1) if first == 0 else self._exponential(as_interval(first))
        if name in ("ln", "log"):
            value = self._logarithm(first)
            if name == "ln":
                return value
            base = Rational(10) if node.base is None else self.value(node.base)
            return divided(value, self._logarithm(base))
        raise UnsupportedError

    def _logarithm(self, value: Value) -> Value:
        if isinstance(value, Complex) or sign_of(value) <= 0:
            raise UndefinedError
        return Rational(0) if value == 1 else IV.log(as_interval(value))

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


_HANDLERS: dict[type[Any], Callable[[Evaluator, Any], Value]] = {
    Number: Evaluator._number, Symbol: Evaluator._symbol, Sum: Evaluator._sum, Product: Evaluator._product,
    Fraction: Evaluator._fraction, Division: Evaluator._division, Power: Evaluator._power, Root: Evaluator._root,
    Negation: Evaluator._negation, PlusMinus: Evaluator._plus_minus, Absolute: Evaluator._absolute,
    Function: Evaluator._function, MixedNumber: Evaluator._mixed, Bracket: Evaluator._inside,
    Postfix: Evaluator._postfix,
}
