"""The irreducible factors of a polynomial, and what is written with them: products, fractions in lowest terms."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction as Rational
from math import gcd
from typing import Literal

import sympy

from checker.polynomial import BITS, Poly, exponents, letters_in, multiply, power
from checker.written import fraction_latex, polynomial_latex

__all__ = ["Factors", "cancelled_latex", "content_of", "factorised_latex", "irreducible_factors", "prime_latex"]

Factors = list[tuple[Poly, int]]

_MOST_TERMS = 40
_MOST_LETTERS = 4
_MOST_DEGREE = 12
_LARGEST = 10**12  # coefficient


def content_of(poly: Poly) -> int:
    """The greatest number that divides every coefficient."""
    return gcd(*poly.values())


def irreducible_factors(poly: Poly) -> tuple[int, Factors] | None:
    """The content and the irreducible factors over the rationals; None when it is too large to try."""
    if not _is_small(poly):
        return None
    used = sorted(letters_in(poly))
    if not used:
        return poly.get(0, 0), []
    symbols = sympy.symbols(f"v0:{len(used)}")
    rows = {}
    for key, value in poly.items():
        powers = dict(exponents(key))
        rows[tuple(powers.get(letter, 0) for letter in used)] = value
    whole = sympy.Poly.from_dict(rows, *symbols, domain="ZZ")
    content, found = sympy.factor_list(whole)
    out: Factors = []
    for factor, times in found:
        back: Poly = {}
        for powers_of, value in factor.terms():
            back[sum(raised << (BITS * letter) for raised, letter in zip(powers_of, used, strict=True))] = int(value)
        out.append((back, times))
    return int(content), out


def _is_small(poly: Poly) -> bool:
    return len(poly) <= _MOST_TERMS and len(letters_in(poly)) <= _MOST_LETTERS and all(
        sum(times for _, times in exponents(key)) <= _MOST_DEGREE for key in poly
    ) and all(abs(value) < _LARGEST for value in poly.values())


def factorised_latex(poly: Poly, bottom: int, names: Sequence[str]) -> str | None:
    """The polynomial over a whole number as a product; None when it is too large to try."""
    parts = irreducible_factors(poly)
    return None if parts is None else _product_latex(Rational(parts[0], bottom), parts[1], names)


def _product_latex(share: Rational, found: Factors, names: Sequence[str]) -> str:
    plain = "".join(
        polynomial_latex(factor, names) + _exponent(times)
        for factor, times in sorted(found, key=lambda one: _order(one[0], names)) if len(factor) == 1
    )
    sums = sorted((one for one in found if len(one[0]) > 1), key=lambda one: _order(one[0], names))
    if len(sums) == 1 and sums[0][1] == 1 and share == 1 and not plain:
        return polynomial_latex(sums[0][0], names)
    brackets = "".join(f"({polynomial_latex(factor, names)}){_exponent(times)}" for factor, times in sums)
    if abs(share) == 1 and (plain or brackets):
        return ("-" if share < 0 else "") + plain + brackets
    return fraction_latex(share) + plain + brackets


def _exponent(times: int) -> str:
    return "" if times == 1 else f"^{times}" if times < 10 else f"^{{{times}}}"


def _order(poly: Poly, names: Sequence[str]) -> tuple[int, str]:
    degree = max(sum(times for _, times in exponents(key)) for key in poly)
    return degree, polynomial_latex(poly, names)


def cancelled_latex(
    top: Poly, bottom: Poly, names: Sequence[str], *, below: Literal["factors", "multiplied out"] = "factors"
) -> str | None:
    """The quotient in lowest terms, multiplied out above and as told below; None when it is too large to try."""
    above, under = irreducible_factors(top), irreducible_factors(bottom)
    if above is None or under is None:
        return None
    if not top:
        return "0"
    sign = 1
    rest_above, rest_below = list(above[1]), []
    for factor, times in under[1]:
        left = times
        for at, (other, count) in enumerate(rest_above):
            is_opposite = other == {key: -value for key, value in factor.items()}
            if other == factor or is_opposite:
                shared = min(left, count)
                sign = -sign if is_opposite and shared % 2 else sign
                rest_above[at] = (other, count - shared)
                left -= shared
        if left:
            rest_below.append((factor, left))
    ratio = Rational(sign * above[0], under[0])
    new_top = _multiplied(ratio.numerator, rest_above)
    if not rest_below:
        if len(new_top) > 1 and ratio.denominator > 1:
            return f"\\frac{{{polynomial_latex(new_top, names)}}}{{{ratio.denominator}}}"
        return polynomial_latex(new_top, names, ratio.denominator)
    lead = "-" if len(new_top) == 1 and next(iter(new_top.values())) < 0 else ""
    if lead:
        new_top = {key: -value for key, value in new_top.items()}
    if below == "factors":
        below_text = _product_latex(Rational(ratio.denominator), rest_below, names)
    else:
        below_text = polynomial_latex(_multiplied(ratio.denominator, rest_below), names)
    return f"{lead}\\frac{{{polynomial_latex(new_top, names)}}}{{{below_text}}}"


def _multiplied(number: int, factors: Factors) -> Poly:
    out: Poly = {0: number}
    for factor, times in factors:
        out = multiply(out, power(factor, times))
    return out


def prime_latex(number: int) -> str | None:
    """A whole number as a product of prime powers; None for 0, 1 and -1 and when it is too large to try."""
    if not 1 < abs(number) < _LARGEST:
        return None
    found = sympy.factorint(abs(number))
    product = " \\times ".join(f"{prime}{_exponent(times)}" for prime, times in sorted(found.items()))
    return f"-{product}" if number < 0 else product


