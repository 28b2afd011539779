"""Logarithms: of a single term by those of its factors, of a power by its exponent."""

from __future__ import annotations

from fractions import Fraction as Rational
from math import gcd
from typing import TYPE_CHECKING

from checker.polynomial import (
    BITS,
    ONE,
    Poly,
    Quotient,
    constant_value,
    exponents,
    is_constant,
    monomial,
    q_add,
    q_divide,
    q_multiply,
    q_number,
)
from checker.refusals import UndefinedError
from checker.ring.powers import exponential_index
from checker.ring.primes import prime_powers

if TYPE_CHECKING:
    from checker.ring.algebra import Ring

__all__ = ["logarithm"]

# Where only values count, wherever both are defined, the atom of a letter stands for the logarithm of its size. Where
# a written logarithm has a value, what it is taken of is above zero and so its own size; so a single term may be taken
# apart without asking for the signs of its letters. Where domains count, only what is surely above zero is taken apart.


def logarithm(ring: Ring, value: Quotient) -> Quotient:
    """The natural logarithm.

    Raises:
        UndefinedError: of a number that is not above zero.
    """
    number = constant_value(value)
    if number is not None:
        return _of_number(ring, number)
    top, bottom = value
    if len(top) == 1 and len(bottom) == 1 and _is_real(ring, value):
        ((key_above, above),) = top.items()
        ((key_below, below),) = bottom.items()
        if above > 0 and (ring.by_sizes or _is_above_zero(ring, key_above | key_below)):
            total = _of_number(ring, Rational(above, below))
            for key, sign in ((key_above, 1), (key_below, -1)):
                for letter, times in exponents(key):
                    part = _of_letter(ring, letter)
                    total = q_add(total, q_multiply(part, q_number(Rational(sign * times))))
            return total
    return _of_sum(ring, top, bottom)


def _is_above_zero(ring: Ring, key: int) -> bool:
    """Are all letters e or powers of it or of a number above zero?"""
    return all(_is_power_above_zero(ring, letter) for letter, _ in exponents(key))


def _is_power_above_zero(ring: Ring, letter: int) -> bool:
    if ring.euler and ring.index.get("e") == letter:
        return True
    for kind, key, number in ring.atoms:
        if number == letter and kind == "exp":
            value = constant_value(key[0])
            e_alone = "e" in ring.index and key[0] == ({1 << (ring.index["e"] * BITS): 1}, ONE)
            return (value is not None and value > 0) or (ring.euler and e_alone)
    return False


def _is_real(ring: Ring, value: Quotient) -> bool:
    if "i" not in ring.index:
        return True
    shift = ring.index["i"] * BITS
    return not any((key >> shift) & 1 for poly in value for key in poly)


def _of_number(ring: Ring, number: Rational) -> Quotient:
    if number <= 0:
        raise UndefinedError
    total: Quotient = ({}, ONE)
    for prime, count in prime_powers(number):
        total = q_add(total, q_multiply(ring.atom("ln", (({0: prime}, ONE),)), q_number(Rational(count))))
    return total


def _of_letter(ring: Ring, letter: int) -> Quotient:
    if ring.euler and ring.index.get("e") == letter:
        return ONE, ONE
    for kind, key, number in ring.atoms:
        if number == letter and kind == "exp":
            base, exponent = key
            power = q_divide(exponent, ({0: exponential_index(ring, base, exponent)}, ONE))
            return q_multiply(logarithm(ring, base), power)
    relation = ring.relations.get(letter)
    if relation is not None:
        index, inside = relation
        return q_divide(logarithm(ring, (inside, ONE)), ({0: index}, ONE))
    return ring.atom("ln", ((monomial(letter), ONE),))


def _of_sum(ring: Ring, top: Poly, bottom: Poly) -> Quotient:
    """The content's logarithm and an atom for the rest."""
    content = 0
    for coefficient in top.values():
        content = gcd(content, coefficient)
    if content > 1 and is_constant(bottom):
        rest = {key: coefficient // content for key, coefficient in top.items()}
        return q_add(_of_number(ring, Rational(content, bottom[0])), ring.atom("ln", ((rest, ONE),)))
    if ring.by_sizes and not is_constant(bottom) and len(bottom) == 1:
        ((key, coefficient),) = bottom.items()
        if coefficient > 0:
            below = logarithm(ring, ({key: 1}, {0: 1}))
            whole = logarithm(ring, (top, {0: coefficient}))
            return q_add(whole, q_multiply(below, q_number(Rational(-1))))
    return ring.atom("ln", ((top, bottom),))
