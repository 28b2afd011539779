"""Powers, roots and absolute values: atoms whose powers are known."""

from __future__ import annotations

from fractions import Fraction as Rational
from math import gcd
from typing import TYPE_CHECKING

from checker.polynomial import (
    BITS,
    ONE,
    Poly,
    Quotient,
    TooLargeError,
    constant_value,
    is_constant,
    multiply,
    power,
    q_divide,
    q_multiply,
    q_number,
    q_power,
    scaled,
    used,
)
from checker.refusals import UndefinedError, UnsupportedError
from checker.ring.primes import TRIAL_DIVISORS, prime_powers

if TYPE_CHECKING:
    from checker.ring.algebra import Ring

__all__ = ["absolute", "exponential_index", "raised", "raised_to", "root_of", "root_of_number"]

_MOST_POWER = 10_000  # in the numerator of a broken exponent
_MOST_INDEX = 60


def raised_to(ring: Ring, base: Quotient, exponent: Quotient) -> Quotient:
    """A base to any exponent."""
    number = constant_value(exponent)
    if number is not None:
        return raised(ring, base, number)
    if not is_constant(exponent[1]):
        return ring.atom("power", (base, exponent))
    value: Quotient = (ONE, ONE)
    for key, coefficient in exponent[0].items():
        share = Rational(coefficient, exponent[1][0])
        part = raised(ring, base, share) if key == 0 else _exponential(ring, base, key, share)
        value = q_multiply(value, part)
    return ring.reduced(value)


def _exponential(ring: Ring, base: Quotient, key: int, share: Rational) -> Quotient:
    """base^(share * monomial): a power of the atom base^(monomial / n)."""
    number = constant_value(base)
    if number is not None:
        if number <= 0:
            return ring.atom("power", (base, ({key: 1}, ONE), share))
        value: Quotient = (ONE, ONE)
        for prime, count in prime_powers(number):
            value = q_multiply(value, _exponential_atom(ring, prime, ({0: prime}, ONE), key, share * count))
        return value
    return _exponential_atom(ring, str(sorted(base[0].items())) + str(sorted(base[1].items())), base, key, share)


def _exponential_atom(ring: Ring, name: object, base: Quotient, key: int, share: Rational) -> Quotient:
    # letters keep their numbers between attempts, as the trees are read in the same order
    index = ring.needed(("exp", name, key), share.denominator)
    atom = ring.atom("exp", (base, ({key: 1}, ONE)))
    return q_power(atom, int(share * index))


def exponential_index(ring: Ring, base: Quotient, exponent: Quotient) -> int:
    """n where the atom of a base and a monomial stands for base^(monomial/n)."""
    (key,) = exponent[0]
    number = constant_value(base)
    name = int(number) if number is not None else str(sorted(base[0].items())) + str(sorted(base[1].items()))
    return ring.fine.get(("exp", name, key), 1)


def raised(ring: Ring, base: Quotient, exponent: Rational) -> Quotient:
    """base to a rational power; the principal value, for a base that is not negative where the power is broken."""
    if exponent.denominator == 1:
        whole = exponent.numerator
        if whole < 0:
            if not base[0]:
                raise UndefinedError
            if not is_constant(base[0]):
                ring.denominators.append(base[0])
        if whole == 0 and not base[0]:
            raise UndefinedError
        return ring.reduced(q_power(base, whole))
    if abs(exponent.numerator) > _MOST_POWER or exponent.denominator > _MOST_INDEX:
        raise TooLargeError
    if not base[0]:
        if exponent < 0:
            raise UndefinedError
        return {}, ONE
    root = root_of(ring, base, exponent.denominator)
    return ring.reduced(q_power(root, exponent.numerator))


def root_of(ring: Ring, radicand: Quotient, index: int, *, real: bool = False) -> Quotient:
    """The root: surds of primes for a number, else an atom whose power is the radicand.

    Args:
        ring: where the atom lives.
        radicand: what the root is taken of.
        index: 2 for the square root.
        real: is a root with an odd index taken of negative numbers too?
    """
    number = constant_value(radicand)
    if number is not None:
        return root_of_number(ring, number, index, real=real)
    top, bottom = radicand
    if not is_constant(bottom):
        ring.denominators.append(bottom)
    # v = bottom * root, so that v^index is a polynomial
    inside = ring.reduce(multiply(top, power(bottom, index - 1)))
    content = 0
    for value in inside.values():
        content = gcd(content, value)
    inside = {key: value // content for key, value in inside.items()}
    outside = root_of_number(ring, Rational(content), index)
    atom = ring.atom("root", (index, (inside, ONE)), (index, inside))
    return ring.reduced(q_divide(q_multiply(outside, atom), (bottom, ONE)))


def root_of_number(ring: Ring, number: Rational, index: int, *, real: bool = False) -> Quotient:
    """The root of a rational number by the surds of its primes."""
    if number == 0:
        return {}, ONE
    value: Quotient = (ONE, ONE)
    if number < 0:
        if index == 2:
            value = {1 << (ring.letter("i") * BITS): 1}, ONE
        elif index % 2 and real:
            value = ({0: -1}, ONE)
        else:
            raise UnsupportedError
    for prime, count in prime_powers(abs(number)):
        whole, rest = divmod(count, index)
        value = q_multiply(value, q_power(({0: prime}, ONE), whole))
        if rest:
            share = Rational(rest, index)
            have = ring.needed(("root", prime), share.denominator)
            atom = ring.atom("surd", (prime,), (have, {0: prime}), opaque=prime > TRIAL_DIVISORS**2)
            value = q_multiply(value, q_power(atom, int(share * have)))
    return ring.reduced(value)


def absolute(ring: Ring, value: Quotient) -> Quotient:
    """The absolute value, as an atom whose square is the value's square."""
    number = constant_value(value)
    if number is not None:
        return q_number(abs(number))
    if "i" in ring.index and ring.index["i"] in used(value):
        return ring.atom("modulus", (value,))
    top, outside = _without_content(value[0])
    result = ring.atom("bars", ((top, ONE),), (2, ring.reduce(multiply(top, top))))
    result = scaled(result[0], abs(outside)), result[1]
    if is_constant(value[1]):
        return q_divide(result, ({0: abs(value[1][0])}, ONE))
    return ring.reduced(q_divide(result, absolute(ring, (value[1], ONE))))


def _without_content(poly: Poly) -> tuple[Poly, int]:
    """The polynomial with its sign and content taken out: the rest and what was taken."""
    content = 0
    for value in poly.values():
        content = gcd(content, value)
    if poly[max(poly)] < 0:
        content = -content
    return {key: value // content for key, value in poly.items()}, content
