"""Terms and sums as a pupil writes them, with the place of each term in the line."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

__all__ = ["Powers", "Term", "coefficients", "collect", "number", "same_value", "write_sum"]

Powers = tuple[tuple[str, int], ...]


@dataclass(frozen=True, slots=True)
class Term:
    """A number times powers of letters; `powers` is sorted by letter and holds no zero."""

    coefficient: Fraction
    powers: Powers = ()

    @classmethod
    def of(cls, coefficient: int | Fraction, letter: str = "", power: int = 1) -> Term:
        return cls(Fraction(coefficient), ((letter, power),) if letter and power else ())

    @property
    def degree(self) -> int:
        return sum(power for _, power in self.powers)

    def __neg__(self) -> Term:
        return Term(-self.coefficient, self.powers)

    def __mul__(self, other: Term) -> Term:
        powers = dict(self.powers)
        for letter, power in other.powers:
            powers[letter] = powers.get(letter, 0) + power
        kept = tuple(sorted((letter, power) for letter, power in powers.items() if power))
        return Term(self.coefficient * other.coefficient, kept)

    def with_coefficient(self, coefficient: int | Fraction) -> Term:
        return Term(Fraction(coefficient), self.powers)

    def write(self) -> str:
        """LaTeX with a leading minus but no leading plus."""
        letters = "".join(letter + power_of(power) for letter, power in self.powers)
        size = abs(self.coefficient)
        sign = "-" if self.coefficient < 0 else ""
        if letters and size == 1:
            return sign + letters
        return sign + number(size) + letters

    def signed(self) -> str:
        """LaTeX with its sign, plus or minus."""
        return self.write() if self.coefficient < 0 else "+" + self.write()


def power_of(power: int) -> str:
    if power == 1:
        return ""
    return f"^{power}" if 0 <= power <= 9 else f"^{{{power}}}"


def number(value: Fraction) -> str:
    """A rational number as LaTeX."""
    if value.denominator == 1:
        return str(value.numerator)
    sign = "-" if value < 0 else ""
    return f"{sign}\\frac{{{abs(value.numerator)}}}{{{value.denominator}}}"


def write_sum(terms: Sequence[Term], offset: int = 0) -> tuple[str, list[tuple[int, int]]]:
    """Write a sum; the spans are those of the terms with their signs, shifted by `offset`."""
    text = ""
    spans: list[tuple[int, int]] = []
    for term in terms:
        piece = term.signed() if text else term.write()
        spans.append((offset + len(text), offset + len(text) + len(piece)))
        text += piece
    if not text:
        return "0", []
    return text, spans


def coefficients(terms: Iterable[Term]) -> dict[Powers, Fraction]:
    """The sum as coefficients by powers, zeros left out."""
    total: dict[Powers, Fraction] = {}
    for term in terms:
        total[term.powers] = total.get(term.powers, Fraction(0)) + term.coefficient
    return {powers: value for powers, value in total.items() if value}


def collect(terms: Iterable[Term]) -> list[Term]:
    """Like terms collected, highest degree first."""
    found = [Term(value, powers) for powers, value in coefficients(terms).items()]
    return sorted(found, key=lambda term: (-term.degree, [(letter, -power) for letter, power in term.powers]))


def same_value(left: Iterable[Term], right: Iterable[Term]) -> bool:
    """Are the two sums equal for all values of their letters?"""
    return coefficients(left) == coefficients(right)
