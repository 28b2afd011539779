"""Exact sparse polynomials with integer coefficients, and quotients of them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from math import gcd

__all__ = [
    "BITS", "MASK", "MAX_DEGREE", "MAX_TERMS", "ONE", "Poly", "Quotient", "TooLargeError", "add",
    "coefficients_in", "constant", "constant_value", "degree_in", "depends_on", "exponents", "is_constant",
    "letters_in", "monomial", "multiply", "negated", "power", "primitive", "proportional", "q_add", "q_divide",
    "q_multiply", "q_negated", "q_number", "q_power", "scaled", "subtract", "used",
    "value_of",
]

BITS = 20  # of a packed monomial for each letter
MASK = (1 << BITS) - 1
MAX_DEGREE = 2_000
MAX_TERMS = 20_000
MAX_DIGIT_BITS = 20_000
MAX_WORK = 200_000_000  # products of terms times bits, in one squaring
_MANY_PAIRS = 5_000  # of terms in a product, from which on the length of the numbers is looked at

# A monomial is one integer: the exponent of letter number k sits in bits k*BITS and up, so that multiplying
# monomials adds integers. A polynomial maps monomials to nonzero integers.
Poly = dict[int, int]
Quotient = tuple[Poly, Poly]

ONE: Poly = {0: 1}


class TooLargeError(Exception):
    """The result would have too many terms, too high a degree or too long a number."""


def constant(value: int) -> Poly:
    return {0: value} if value else {}


def monomial(letter: int, exponent: int = 1) -> Poly:
    return {exponent << (letter * BITS): 1}


def exponents(key: int) -> tuple[tuple[int, int], ...]:
    """The letters of a packed monomial with their exponents."""
    found = []
    letter = 0
    while key:
        exponent = key & MASK
        if exponent:
            found.append((letter, exponent))
        key >>= BITS
        letter += 1
    return tuple(found)


def letters_in(poly: Poly) -> frozenset[int]:
    union = 0
    for key in poly:
        union |= key
    return frozenset(letter for letter, _ in exponents(union))


def used(quotient: Quotient) -> frozenset[int]:
    return letters_in(quotient[0]) | letters_in(quotient[1])


def is_constant(poly: Poly) -> bool:
    return not poly or (len(poly) == 1 and 0 in poly)


def constant_value(quotient: Quotient) -> Fraction | None:
    """The rational number that the quotient is, or None when it has letters."""
    top, bottom = quotient
    if not top:
        return Fraction(0)
    if is_constant(top) and is_constant(bottom):
        return Fraction(top[0], bottom[0])
    if len(top) == len(bottom) and top.keys() == bottom.keys():
        key = next(iter(top))
        ratio = Fraction(top[key], bottom[key])
        if all(value == ratio * bottom[one] for one, value in top.items()):
            return ratio
    return None


def add(a: Poly, b: Poly) -> Poly:
    if len(a) < len(b):
        a, b = b, a
    out = dict(a)
    for key, value in b.items():
        total = out.get(key, 0) + value
        if total:
            out[key] = total
        else:
            del out[key]
    return out


def negated(a: Poly) -> Poly:
    return {key: -value for key, value in a.items()}


def subtract(a: Poly, b: Poly) -> Poly:
    out = dict(a)
    for key, value in b.items():
        total = out.get(key, 0) - value
        if total:
            out[key] = total
        else:
            del out[key]
    return out


def scaled(a: Poly, factor: int) -> Poly:
    if factor == 1:
        return a
    return {key: value * factor for key, value in a.items()} if factor else {}


def multiply(a: Poly, b: Poly) -> Poly:
    """The product.

    Raises:
        TooLargeError: too many terms or too high a degree.
    """
    if not a or not b:
        return {}
    if len(a) == 1:
        a, b = b, a
    if len(b) == 1:
        ((shift, factor),) = b.items()
        if shift == 0:
            return scaled(a, factor)
        out = {key + shift: value * factor for key, value in a.items()}
    else:
        pairs = len(a) * len(b)
        if pairs > MAX_TERMS * 5 or (pairs > _MANY_PAIRS and pairs * (_bits(a) + _bits(b)) > MAX_WORK):
            raise TooLargeError
        out = _products(a, b)
    if len(out) > MAX_TERMS:
        raise TooLargeError
    _check_degree(out)
    return out


def _products(a: Poly, b: Poly) -> Poly:
    out: Poly = {}
    if a is b:
        rows = list(a.items())
        for at, (key_a, value_a) in enumerate(rows):
            key = key_a + key_a
            out[key] = out.get(key, 0) + value_a * value_a
            twice = value_a + value_a
            for key_b, value_b in rows[at + 1:]:
                key = key_a + key_b
                out[key] = out.get(key, 0) + twice * value_b
    else:
        get = out.get
        columns = list(b.items())
        for key_a, value_a in a.items():
            for key_b, value_b in columns:
                key = key_a + key_b
                out[key] = get(key, 0) + value_a * value_b
    return {key: value for key, value in out.items() if value} if 0 in out.values() else out


def _bits(a: Poly) -> int:
    return max(value.bit_length() for value in a.values())


def _check_degree(poly: Poly) -> None:
    union = 0
    for key in poly:
        union |= key
    while union:
        if union & MASK > MAX_DEGREE:
            for key in poly:
                if any(exponent > MAX_DEGREE for _, exponent in exponents(key)):
                    raise TooLargeError
            return
        union >>= BITS


def power(a: Poly, exponent: int) -> Poly:
    """A non-negative whole power.

    Raises:
        TooLargeError: too many terms, too high a degree or too long a number.
    """
    if exponent == 0:
        return ONE
    if exponent == 1 or not a:
        return a
    longest = _bits(a)
    if exponent > MAX_DEGREE and not (is_constant(a) and abs(a[0]) == 1):
        raise TooLargeError
    if longest > 1 and longest * exponent > MAX_DIGIT_BITS:
        raise TooLargeError
    if len(a) == 1:
        ((key, value),) = a.items()
        if any(one * exponent > MAX_DEGREE for _, one in exponents(key)):
            raise TooLargeError
        return {key * exponent: value if exponent % 2 and abs(value) == 1 else value**exponent}
    if exponent * (len(a) - 1) > MAX_TERMS // 4:
        raise TooLargeError
    out = a
    for bit in bin(exponent)[3:]:
        if len(out) * len(out) * (longest * exponent + 64) > MAX_WORK:
            raise TooLargeError
        out = multiply(out, out)
        if bit == "1":
            out = multiply(out, a)
    return out


def primitive(a: Poly) -> Poly:
    """The polynomial over its content, with a positive coefficient at the highest monomial."""
    if not a:
        return a
    content = 0
    for value in a.values():
        content = gcd(content, value)
        if content == 1:
            break
    if a[max(a)] < 0:
        content = -content
    return a if content == 1 else {key: value // content for key, value in a.items()}


def proportional(a: Poly, b: Poly) -> bool:
    """Is one a nonzero number times the other?"""
    return a.keys() == b.keys() and primitive(a) == primitive(b)


def degree_in(a: Poly, letter: int) -> int:
    shift = letter * BITS
    return max(((key >> shift) & MASK for key in a), default=0)


def coefficients_in(a: Poly, letter: int) -> list[Poly]:
    """Coefficients by rising powers of one letter."""
    shift = letter * BITS
    out: list[Poly] = [{} for _ in range(degree_in(a, letter) + 1)]
    for key, value in a.items():
        exponent = (key >> shift) & MASK
        out[exponent][key - (exponent << shift)] = value
    return out


def value_of(a: Poly, values: Sequence[int]) -> int:
    """The value where letter number k has the k-th of the values."""
    total = 0
    for key, value in a.items():
        at = 0
        while key:
            exponent = key & MASK
            if exponent:
                value *= values[at]**exponent
            key >>= BITS
            at += 1
        total += value
    return total


def depends_on(top: Poly, bottom: Poly, letter: int) -> bool:
    """Does the quotient change with the letter? It does not where its derivative is zero."""
    if letter not in letters_in(bottom):
        return letter in letters_in(top)
    return bool(subtract(multiply(_derivative(top, letter), bottom), multiply(top, _derivative(bottom, letter))))


def _derivative(a: Poly, letter: int) -> Poly:
    shift = letter * BITS
    found = {key - (1 << shift): value * ((key >> shift) & MASK) for key, value in a.items()}
    return {key: value for key, value in found.items() if value}


# quotients: a numerator and a denominator that is not zero; common factors are left in place


def q_number(value: Fraction) -> Quotient:
    return constant(value.numerator), ONE if value.denominator == 1 else {0: value.denominator}


def q_add(a: Quotient, b: Quotient) -> Quotient:
    top_a, bottom_a = a
    top_b, bottom_b = b
    if bottom_a == bottom_b:
        return add(top_a, top_b), bottom_a
    if len(bottom_a) == 1 and len(bottom_b) == 1 and 0 in bottom_a and 0 in bottom_b:
        x, y = bottom_a[0], bottom_b[0]
        common = gcd(x, y)
        return add(scaled(top_a, y // common), scaled(top_b, x // common)), {0: x // common * y}
    return add(multiply(top_a, bottom_b), multiply(top_b, bottom_a)), multiply(bottom_a, bottom_b)


def q_negated(a: Quotient) -> Quotient:
    return negated(a[0]), a[1]


def q_multiply(a: Quotient, b: Quotient) -> Quotient:
    top = multiply(a[0], b[0])
    if a[1] is ONE:
        return top, b[1]
    if b[1] is ONE:
        return top, a[1]
    return top, multiply(a[1], b[1])


def q_divide(a: Quotient, b: Quotient) -> Quotient:
    """The quotient of quotients.

    Raises:
        ZeroDivisionError: the divisor is zero.
    """
    if not b[0]:
        raise ZeroDivisionError
    top = a[0] if b[1] is ONE else multiply(a[0], b[1])
    bottom = b[0] if a[1] is ONE else multiply(a[1], b[0])
    if is_constant(bottom) and bottom[0] < 0:
        return negated(top), negated(bottom)
    return top, bottom


def q_power(a: Quotient, exponent: int) -> Quotient:
    """A whole power, negative ones by turning the quotient over.

    Raises:
        ZeroDivisionError: zero to a negative power.
    """
    top, bottom = a
    if exponent < 0:
        if not top:
            raise ZeroDivisionError
        top, bottom, exponent = bottom, top, -exponent
    return power(top, exponent), ONE if bottom is ONE else power(bottom, exponent)


