"""Rational numbers as products of powers of primes."""

from __future__ import annotations

from fractions import Fraction as Rational

from checker.polynomial import MAX_DIGIT_BITS, TooLargeError

__all__ = ["TRIAL_DIVISORS", "prime_powers"]

TRIAL_DIVISORS = 10_000


def prime_powers(number: Rational) -> list[tuple[int, int]]:
    """The positive number's primes with their counts; what has no small divisor is taken whole.

    Raises:
        TooLargeError: it has too many digits.
    """
    if max(number.numerator.bit_length(), number.denominator.bit_length()) > MAX_DIGIT_BITS // 10:
        raise TooLargeError
    found: dict[int, int] = {}
    for part, sign in ((number.numerator, 1), (number.denominator, -1)):
        divisor = 2
        while part > 1 and divisor * divisor <= part and divisor < TRIAL_DIVISORS:
            while part % divisor == 0:
                found[divisor] = found.get(divisor, 0) + sign
                part //= divisor
            divisor += 1 if divisor == 2 else 2
        if part > 1:
            found[part] = found.get(part, 0) + sign
    return sorted((prime, count) for prime, count in found.items() if count)
