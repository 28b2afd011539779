"""Polynomials as a pupil would write them, in LaTeX."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from checker.polynomial import Poly, TooLargeError, exponents

__all__ = ["fraction_latex", "letter_latex", "polynomial_latex"]

MAX_BITS = 12_000  # of a number that is written out
_GREEK = frozenset({
    "alpha", "beta", "gamma", "delta", "epsilon", "theta", "lambda", "mu", "pi", "rho", "sigma", "phi", "omega", "tau",
    "Delta", "Omega", "kappa", "eta", "zeta", "xi", "chi", "psi", "varphi", "nu",
})


def fraction_latex(value: Fraction) -> str:
    """A rational number: -\\frac{3}{4} or 5.

    Raises:
        TooLargeError: it has thousands of digits.
    """
    if max(value.numerator.bit_length(), value.denominator.bit_length()) > MAX_BITS:
        raise TooLargeError
    sign = "-" if value < 0 else ""
    if value.denominator == 1:
        return str(value.numerator)
    return f"{sign}\\frac{{{abs(value.numerator)}}}{{{value.denominator}}}"


def letter_latex(name: str) -> str:
    """A name as LaTeX: \\theta, x_{1}."""
    stem, _, index = name.partition("_")
    head = f"\\{stem}" if stem in _GREEK else stem
    return head + (f"_{{{index}}}" if index else "")


def polynomial_latex(poly: Poly, names: Sequence[str], denominator: int = 1) -> str:
    """The polynomial over a whole number, highest powers first, then letters by name: 2x^2-3xy+\\frac{1}{2}."""
    if not poly:
        return "0"
    rows = []
    for key, coefficient in poly.items():
        found = sorted((names[letter], exponent) for letter, exponent in exponents(key))
        degree = sum(exponent for _, exponent in found)
        order = tuple((name, -exponent) for name, exponent in found)
        rows.append((-degree, order, found, Fraction(coefficient, denominator)))
    rows.sort(key=lambda row: (row[0], row[1]))
    out = ""
    for _, _, found, value in rows:
        sign = "-" if value < 0 else "+" if out else ""
        size = fraction_latex(abs(value))
        letters = ""
        for name, exponent in found:
            piece = letter_latex(name)
            if exponent > 1:
                piece += f"^{exponent}" if exponent < 10 else f"^{{{exponent}}}"
            letters += (" " if letters.rpartition("\\")[2].isalpha() and "\\" in letters and piece[0].isalpha() else "")
            letters += piece
        out += sign + ("" if letters and size == "1" else size) + letters
    return out
