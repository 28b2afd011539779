"""Sums and products over a running letter: term by term, by Bernoulli's numbers, geometric ones by their ratio."""

from __future__ import annotations

from fractions import Fraction as Rational
from math import comb

from checker.calculus.building import ONE, ZERO, added, number, over, raised, replaced, subtracted, times
from checker.calculus.parts import coefficients, linear_slope, split
from checker.numeric import Evaluator, UnsureError, is_real, sign_of
from checker.polynomial import TooLargeError
from checker.refusals import UndefinedError, UnsupportedError
from checker.syntax import Bracket, Negation, Node, Power, Sum, Symbol, letters, walk

__all__ = ["added_up", "multiplied_up", "whole_value"]

_FEW_TERMS = 12  # added one by one even where a closed form is known
_MOST_TERMS = 400
_MOST_NODES = 5_000
_MOST_POWER = 20


def whole_value(node: Node) -> int | None:
    """The whole number that the node is; None when it is none."""
    try:
        value = Evaluator({}, euler=True).value(node)
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
        return None
    return int(value) if isinstance(value, Rational) and value.denominator == 1 else None


def added_up(body: Node, name: str, low: Node, high: Node) -> Node:
    """The sum as a tree without the running letter.

    Raises:
        UnsupportedError: no closed form is known here.
        TooLargeError: too many terms to add one by one.
    """
    first, last = whole_value(low), whole_value(high)
    is_endless = isinstance(high, Symbol) and high.name == "infty"
    if first is None or last is None:
        return _closed(body, name, low, high, is_endless)
    if last - first >= _FEW_TERMS:
        try:
            return _closed(body, name, low, high, is_endless)
        except UnsupportedError:
            pass
    _check_size(body, last - first)
    return added(*(replaced(body, name, number(at)) for at in range(first, last + 1)))


def _check_size(body: Node, count: int) -> None:
    """Raises:
    TooLargeError: the terms one by one would be too many or too long.
    """
    if count >= _MOST_TERMS or count * sum(1 for _ in walk(body)) > _MOST_NODES:
        raise TooLargeError


def _closed(body: Node, name: str, low: Node, high: Node, is_endless: bool) -> Node:
    match body:
        case Bracket(body=inner):
            return _closed(inner, name, low, high, is_endless)
        case Negation(body=inner):
            return times(number(-1), _closed(inner, name, low, high, is_endless))
        case Sum(terms=terms) if not is_endless and coefficients(body, name) is None:
            total: Node = ZERO
            for term in terms:
                part = _closed(term.body, name, low, high, is_endless)
                if term.sign not in ("+", "-"):
                    raise UnsupportedError
                total = added(total, part) if term.sign == "+" else subtracted(total, part)
            return total
        case _:
            pass
    found = None if is_endless else coefficients(body, name)
    if found is not None:
        return _of_powers(found, low, high)
    return _geometric(body, name, low, high, is_endless)


def _of_powers(found: list[Node], low: Node, high: Node) -> Node:
    if len(found) - 1 > _MOST_POWER:
        raise UnsupportedError
    before = subtracted(low, ONE)
    return added(*(
        times(part, subtracted(_power_sum(power, high), _power_sum(power, before)))
        for power, part in enumerate(found)
    ))


def _bernoulli(count: int) -> list[Rational]:
    """The numbers with B_1 = +1/2."""
    found: list[Rational] = []
    for m in range(count + 1):
        found.append(Rational(1) - sum((comb(m, k) * found[k] / (m - k + 1) for k in range(m)), Rational(0)))
    return found


def _power_sum(power: int, n: Node) -> Node:
    """1^p + 2^p + ... + n^p as a polynomial in n."""
    numbers = _bernoulli(power)
    return added(*(
        times(number(comb(power + 1, k) * numbers[k] / (power + 1)), raised(n, number(power + 1 - k)))
        for k in range(power + 1) if numbers[k]
    ))


def _geometric(body: Node, name: str, low: Node, high: Node, is_endless: bool) -> Node:
    constant, factors = split(body, name)
    if len(factors) != 1 or not isinstance(factors[0].base, Power) or factors[0].power != 1:
        raise UnsupportedError
    base, exponent = factors[0].base.base, factors[0].base.exponent
    slope = linear_slope(exponent, name)
    if slope is None or name in letters(base):
        raise UnsupportedError
    ratio = raised(base, slope)
    first = times(constant, raised(base, replaced(exponent, name, low)))
    if is_endless:
        try:
            size = Evaluator({}, euler=True).value(ratio)
            if not is_real(size) or sign_of(size * size - 1) >= 0:
                raise UnsupportedError
        except (UndefinedError, UnsureError, TooLargeError) as exc:
            raise UnsupportedError from exc
        return over(first, subtracted(ONE, ratio))
    if whole_value(ratio) == 1:
        raise UnsupportedError
    count = added(subtracted(high, low), ONE)
    return over(times(first, subtracted(ONE, raised(ratio, count))), subtracted(ONE, ratio))


def multiplied_up(body: Node, name: str, low: Node, high: Node) -> Node:
    """The product as a tree without the running letter.

    Raises:
        UnsupportedError: the bounds are no whole numbers.
        TooLargeError: they are too far apart.
    """
    first, last = whole_value(low), whole_value(high)
    if first is None or last is None:
        raise UnsupportedError
    _check_size(body, last - first)
    return times(*(replaced(body, name, number(at)) for at in range(first, last + 1)), ONE)
