"""A tree read into a ring, node by node; single terms at one go."""

from __future__ import annotations

from collections.abc import Callable
from math import factorial, gcd
from typing import TYPE_CHECKING, Any

from checker.polynomial import (
    BITS,
    MAX_DEGREE,
    MAX_DIGIT_BITS,
    ONE,
    Poly,
    Quotient,
    TooLargeError,
    constant_value,
    power,
    q_add,
    q_multiply,
    q_negated,
    scaled,
)
from checker.refusals import UndefinedError, UnsupportedError
from checker.ring.functions import function
from checker.ring.powers import absolute, raised, raised_to, root_of
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
)

if TYPE_CHECKING:
    from checker.ring.algebra import Ring

__all__ = ["HANDLERS"]

_MOST_FACTORIAL = 500
_MOST_INDEX = 60
_SHORT_POWER = 64  # of a number in a single term
Monomial = tuple[int, int, int, int]  # packed letters, coefficient above and below, degree


def _monomial(ring: Ring, node: Node) -> Monomial | None:
    """A single term of numbers and letters; None for all else.

    Raises:
        TooLargeError: its degree or its number is too high.
    """
    kind = type(node)
    if kind is Number:
        top, bottom = node.value.as_integer_ratio()  # type: ignore[union-attr]
        return 0, top, bottom, 0
    if kind is Symbol:
        return 1 << (ring.letter(node.name) * BITS), 1, 1, 1  # type: ignore[union-attr]
    if kind is Power:
        return _single_power(ring, node)  # type: ignore[arg-type]
    if kind is Product:
        key, top, bottom, degree = 0, 1, 1, 0
        for factor in node.factors:  # type: ignore[union-attr]
            part = _monomial(ring, factor)
            if part is None:
                return None
            key += part[0]
            top *= part[1]
            bottom *= part[2]
            degree += part[3]
            if degree > MAX_DEGREE or top.bit_length() > MAX_DIGIT_BITS:
                raise TooLargeError
        return key, top, bottom, degree
    return None


def _single_power(ring: Ring, node: Power) -> Monomial | None:
    exponent = node.exponent
    if type(exponent) is not Number:
        return None
    times, parts = exponent.value.as_integer_ratio()
    if parts != 1 or times < 1:
        return None
    base = node.base
    if type(base) is Symbol:
        return None if times > MAX_DEGREE else (times << (ring.letter(base.name) * BITS), 1, 1, times)
    if type(base) is Number and times <= _SHORT_POWER:
        top, bottom = base.value.as_integer_ratio()
        if top.bit_length() < _SHORT_POWER and bottom.bit_length() < _SHORT_POWER:
            return 0, top**times, bottom**times, 0
    return None


def _quotient_of(single: Monomial) -> Quotient:
    key, top, bottom, _ = single
    common = gcd(top, bottom) if bottom != 1 else 1
    return {key: top // common} if top else {}, ONE if bottom == common else {0: bottom // common}


def _number(ring: Ring, node: Number) -> Quotient:
    top, bottom = node.value.as_integer_ratio()
    return {0: top} if top else {}, ONE if bottom == 1 else {0: bottom}


def _symbol(ring: Ring, node: Symbol) -> Quotient:
    return {1 << (ring.letter(node.name) * BITS): 1}, ONE


def _sum(ring: Ring, node: Sum) -> Quotient:
    """Terms over one common number are added in place; those with letters below are added after them."""
    total: Poly = {}
    below = 1
    others: list[Quotient] = []
    for term in node.terms:
        single = _monomial(ring, term.body)
        if single is None:
            poly, bottom = ring.quotient(term.body)
            if bottom is ONE:
                share = 1
            elif len(bottom) == 1 and 0 in bottom:
                share = bottom[0]
            else:
                others.append((poly, bottom) if term.sign == "+" else q_negated((poly, bottom)))
                if term.sign not in ("+", "-"):
                    raise UnsupportedError
                continue
        else:
            key, coefficient, share, _ = single
            poly = {key: coefficient}
        if below % share:
            ring.check_time()
            grown = share // gcd(below, share)
            total = scaled(total, grown)
            below *= grown
        factor = below // share
        if term.sign == "-":
            factor = -factor
        elif term.sign != "+":
            raise UnsupportedError
        for key, coefficient in poly.items():
            found = total.get(key)
            total[key] = coefficient * factor if found is None else found + coefficient * factor
    if 0 in total.values():
        total = {key: value for key, value in total.items() if value}
    result: Quotient = (total, ONE if below == 1 else {0: below})
    if others:
        if not total:
            result = others.pop(0)
        for other in others:
            ring.check_time()
            result = q_add(result, other)
    return ring.reduced(result) if ring.relations else result


def _product(ring: Ring, node: Product) -> Quotient:
    key, top, bottom, degree = 0, 1, 1, 0
    value: Quotient | None = None
    for factor in node.factors:
        single = _monomial(ring, factor)
        if single is not None:
            key += single[0]
            top *= single[1]
            bottom *= single[2]
            degree += single[3]
            if degree > MAX_DEGREE or top.bit_length() > MAX_DIGIT_BITS:
                raise TooLargeError
            continue
        part = ring.quotient(factor)
        if value is None:
            value = part
        else:
            ring.check_time()
            value = q_multiply(value, part)
    front = _quotient_of((key, top, bottom, degree))
    if value is None:
        value = front
    elif front[1] is not ONE or key or top != 1:
        value = q_multiply(value, front)
    return ring.reduced(value) if ring.relations else value


def _fraction(ring: Ring, node: Fraction) -> Quotient:
    return ring.divide(ring.quotient(node.numerator), ring.quotient(node.denominator))


def _division(ring: Ring, node: Division) -> Quotient:
    return ring.divide(ring.quotient(node.left), ring.quotient(node.right))


def _bracket(ring: Ring, node: Bracket) -> Quotient:
    return ring.quotient(node.body)


def _negation(ring: Ring, node: Negation) -> Quotient:
    return q_negated(ring.quotient(node.body))


def _plus_minus(ring: Ring, node: PlusMinus) -> Quotient:
    raise UnsupportedError


def _mixed(ring: Ring, node: MixedNumber) -> Quotient:
    return q_add(ring.quotient(node.whole), ring.quotient(node.fraction))


def _postfix(ring: Ring, node: Postfix) -> Quotient:
    value = ring.quotient(node.body)
    if node.mark == "%":
        return q_multiply(value, ({0: 1}, {0: 100}))
    if node.mark == "°":
        return q_multiply(value, ({1 << (ring.letter("pi") * BITS): 1}, {0: 180}))
    number = constant_value(value)
    if number is None:
        return ring.atom("factorial", (value,))
    if number.denominator != 1 or number < 0:
        raise UndefinedError
    if number > _MOST_FACTORIAL:
        raise TooLargeError
    return {0: factorial(int(number))}, ONE


def _power(ring: Ring, node: Power) -> Quotient:
    exponent = node.exponent
    base = ring.quotient(node.base)
    if type(exponent) is Number:
        times, parts = exponent.value.as_integer_ratio()
        if parts == 1:
            ring.check_time()
            if times < 2 or ring.relations:
                return raised(ring, base, exponent.value)
            return power(base[0], times), ONE if base[1] is ONE else power(base[1], times)
    return raised_to(ring, base, ring.quotient(exponent))


def _root(ring: Ring, node: Root) -> Quotient:
    index = 2
    if node.index is not None:
        number = constant_value(ring.quotient(node.index))
        if number is None:
            radicand = ring.quotient(node.radicand)
            return raised_to(ring, radicand, ring.divide((ONE, ONE), ring.quotient(node.index)))
        if number.denominator != 1 or not 2 <= number <= _MOST_INDEX:
            raise UnsupportedError
        index = int(number)
    return root_of(ring, ring.quotient(node.radicand), index, real=True)


def _absolute(ring: Ring, node: Absolute) -> Quotient:
    return absolute(ring, ring.quotient(node.body))


HANDLERS: dict[type[Any], Callable[[Ring, Any], Quotient]] = {
    Number: _number, Symbol: _symbol, Sum: _sum, Product: _product, Fraction: _fraction, Division: _division,
    Power: _power, Root: _root, Negation: _negation, PlusMinus: _plus_minus, Absolute: _absolute, Function: function,
    MixedNumber: _mixed, Bracket: _bracket, Postfix: _postfix,
}
