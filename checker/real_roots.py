"""All real roots of a polynomial in one letter with whole coefficients, exact where a surd can say them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import gcd, isqrt, lcm
from typing import Any

from checker.budget import Budget
from checker.numeric import Value, approximate, as_interval
from checker.polynomial import TooLargeError

__all__ = ["RealNumber", "greatest_common_divisor", "rational_number", "real_roots", "square_free"]

MAX_ROOT_DEGREE = 40
_BITS = 180  # of the last enclosure of a root that is no surd
_MOST_BITS = 10_000  # of a number that is written out


@dataclass(frozen=True, slots=True)
class RealNumber:
    """A real number: `value` is a fraction or a narrow interval, `latex` how it is written."""

    value: Value
    latex: str

    @property
    def exact(self) -> Fraction | None:
        return self.value if isinstance(self.value, Fraction) else None

    @property
    def middle(self) -> Fraction:
        """A fraction within the interval."""
        if isinstance(self.value, Fraction):
            return self.value
        top, bottom = _ratio(self.value.mid)
        return Fraction(top, bottom)


def _ratio(point: Any) -> tuple[int, int]:
    sign, mantissa, exponent, _ = point._mpi_[0]
    mantissa = -int(mantissa) if sign else int(mantissa)
    return (mantissa << exponent, 1) if exponent >= 0 else (mantissa, 1 << -exponent)


def rational_number(value: Fraction) -> RealNumber:
    """
    Raises:
        TooLargeError: the number has thousands of digits and would not be written.
    """
    if max(value.numerator.bit_length(), value.denominator.bit_length()) > _MOST_BITS:
        raise TooLargeError
    sign = "-" if value < 0 else ""
    if value.denominator == 1:
        return RealNumber(value, str(value))
    return RealNumber(value, f"{sign}\\frac{{{abs(value.numerator)}}}{{{value.denominator}}}")


Coefficients = list[int]  # by rising powers, the last one not zero


def _trim(poly: Sequence[int]) -> Coefficients:
    out = list(poly)
    while out and out[-1] == 0:
        out.pop()
    return out


def _primitive(poly: Sequence[int]) -> Coefficients:
    out = _trim(poly)
    content = 0
    for value in out:
        content = gcd(content, value)
    if content > 1:
        out = [value // content for value in out]
    return out


def _remainder(a: Coefficients, b: Coefficients) -> Coefficients:
    """A positive multiple of the remainder of a by b, primitive."""
    a = list(a)
    lead = b[-1]
    scale = abs(lead)
    sign = 1 if lead > 0 else -1
    while len(a) >= len(b):
        top = a[-1] * sign
        shift = len(a) - len(b)
        a = [value * scale for value in a]
        for at, value in enumerate(b):
            a[at + shift] -= top * value
        a = _trim(a[:-1])
        if not a:
            break
    return _primitive(a)


def _derivative(poly: Coefficients) -> Coefficients:
    return [value * at for at, value in enumerate(poly)][1:]


def greatest_common_divisor(a: Sequence[int], b: Sequence[int]) -> Coefficients:
    """The primitive greatest common divisor of two polynomials."""
    first, second = _primitive(a), _primitive(b)
    while second:
        first, second = second, _remainder(first, second)
        if max((value.bit_length() for value in second), default=0) > 100_000:
            raise TooLargeError
    return first


def _exact_quotient(a: Coefficients, b: Coefficients) -> Coefficients:
    rest: list[Fraction] = [Fraction(value) for value in a]
    out = [Fraction(0)] * (len(a) - len(b) + 1)
    for at in range(len(out) - 1, -1, -1):
        out[at] = rest[at + len(b) - 1] / b[-1]
        for k, value in enumerate(b):
            rest[at + k] -= out[at] * value
    common = lcm(*(value.denominator for value in out))
    return _primitive([int(value * common) for value in out])


def square_free(poly: Sequence[int]) -> Coefficients:
    """The polynomial with each root once."""
    whole = _primitive(poly)
    if len(whole) <= 2:
        return whole
    common = greatest_common_divisor(whole, _derivative(whole))
    return whole if len(common) <= 1 else _exact_quotient(whole, common)


def _value(poly: Sequence[int], at: Fraction) -> int:
    """The sign-keeping value: denominators multiplied out."""
    top, bottom = at.numerator, at.denominator
    total = 0
    scale = 1
    for coefficient in reversed(poly):
        total = total * top + coefficient * scale
        scale *= bottom
    return total


def _sturm(poly: Coefficients) -> list[Coefficients]:
    chain = [poly, _primitive(_derivative(poly))]
    while len(chain[-1]) > 1:
        rest = _remainder(chain[-2], chain[-1])
        if not rest:
            break
        chain.append([-value for value in rest])
    return chain


def _changes(chain: Sequence[Coefficients], at: Fraction) -> int:
    count = 0
    last = 0
    for poly in chain:
        value = _value(poly, at)
        if value:
            sign = 1 if value > 0 else -1
            count += last == -sign
            last = sign
    return count


def real_roots(poly: Sequence[int], budget: Budget) -> list[RealNumber]:
    """The distinct real roots in rising order.

    Args:
        poly: whole coefficients by rising powers, not all zero.
        budget: time that may be spent.
    Raises:
        TooLargeError: the degree or the numbers are beyond what is tried.
        OutOfTimeError: the budget is spent.
    """
    whole = _trim(poly)
    if len(whole) - 1 > MAX_ROOT_DEGREE or max(value.bit_length() for value in whole) > 4_000:
        raise TooLargeError
    rest = square_free(whole)
    found: list[RealNumber] = []
    if rest and rest[0] == 0:
        found.append(rational_number(Fraction(0)))
        rest = rest[1:]
    if len(rest) > 3:
        rest = _take_rational(rest, found, budget)
    if len(rest) == 2:
        found.append(rational_number(Fraction(-rest[0], rest[1])))
    elif len(rest) == 3:
        found.extend(_quadratic(rest))
    elif len(rest) > 3:
        if not any(rest[1::2]):
            found.extend(_of_squares(rest, budget))
        else:
            found.extend(_enclosed(rest, low, high, budget) for low, high in _isolated(rest, budget))
    return sorted(found, key=lambda number: number.middle)


def _take_rational(poly: Coefficients, found: list[RealNumber], budget: Budget) -> Coefficients:
    """Rational roots divided out: each is a whole number over a divisor of the leading coefficient."""
    lead = abs(poly[-1])
    if lead.bit_length() > 200:
        return poly
    for low, high in _isolated(poly, budget):
        budget.check()
        low, high = _narrowed(poly, low, high, Fraction(1, 4 * lead), budget)
        guess = Fraction(round((low + high) / 2 * lead), lead)
        if _value(poly, guess) == 0:
            found.append(rational_number(guess))
            poly = _exact_quotient(poly, [-guess.numerator, guess.denominator])
    return poly


def _quadratic(poly: Coefficients) -> list[RealNumber]:
    c, b, a = poly
    if a < 0:
        a, b, c = -a, -b, -c
    inside = b * b - 4 * a * c
    if inside < 0:
        return []
    root = isqrt(inside)
    if root * root == inside:
        return [rational_number(Fraction(-b - root, 2 * a)), rational_number(Fraction(-b + root, 2 * a))]
    outside, inside = _square_part(inside)
    common = gcd(gcd(b, outside), 2 * a)
    b, outside, bottom = b // common, outside // common, 2 * a // common
    surd = _surd(inside)
    out = []
    for sign in (-1, 1):
        value = (as_interval(Fraction(-b)) + sign * outside * surd) / bottom
        out.append(RealNumber(value, _surd_latex(-b, sign * outside, inside, bottom)))
    return out


def _surd(inside: int) -> Any:
    interval = as_interval(Fraction(inside))
    return interval.ctx.sqrt(interval)


def _square_part(number: int) -> tuple[int, int]:
    """number = outside^2 * inside, squares of small divisors taken out."""
    outside, inside = 1, number
    divisor = 2
    while divisor * divisor <= inside and divisor < 2_000:
        while inside % (divisor * divisor) == 0:
            inside //= divisor * divisor
            outside *= divisor
        divisor += 1
    root = isqrt(inside)
    return (outside * root, 1) if root * root == inside else (outside, inside)


def _surd_latex(whole: int, factor: int, inside: int, bottom: int) -> str:
    surd = f"{'' if abs(factor) == 1 else abs(factor)}\\sqrt{{{inside}}}"
    sign = "-" if factor < 0 else ""
    top = f"{sign}{surd}" if whole == 0 else f"{whole}{sign or '+'}{surd}"
    if bottom == 1:
        return top
    if whole == 0:
        return f"{sign}\\frac{{{surd}}}{{{bottom}}}"
    return f"\\frac{{{top}}}{{{bottom}}}"


def _of_squares(poly: Coefficients, budget: Budget) -> list[RealNumber]:
    """Roots of a polynomial in x^2: the square roots of its roots that are not negative."""
    found = []
    for square in real_roots(poly[::2], budget):
        if square.middle < 0:
            continue
        if square.exact is not None:
            outside_top, inside = _square_part(square.exact.numerator * square.exact.denominator)
            share = Fraction(outside_top, square.exact.denominator)
            value = as_interval(share) * _surd(inside)
            for sign in (-1, 1):
                latex = _surd_latex(0, sign * share.numerator, inside, share.denominator)
                found.append(RealNumber(sign * value, latex))
        else:
            value = square.value.ctx.sqrt(square.value)
            for sign in (-1, 1):
                found.append(RealNumber(sign * value, f"{'-' if sign < 0 else ''}\\sqrt{{{square.latex}}}"))
    return found


def _isolated(poly: Coefficients, budget: Budget) -> list[tuple[Fraction, Fraction]]:
    """Half-open intervals (low, high] with one root each."""
    chain = _sturm(poly)
    bound = Fraction(2)
    limit = 1 + Fraction(max(abs(value) for value in poly[:-1]), abs(poly[-1]))
    while bound < limit:
        bound *= 2
    found = []
    stack = [(-bound, bound, _changes(chain, -bound), _changes(chain, bound))]
    while stack:
        budget.check()
        low, high, at_low, at_high = stack.pop()
        count = at_low - at_high
        if count == 1:
            found.append((low, high))
        elif count > 1:
            middle = (low + high) / 2
            at_middle = _changes(chain, middle)
            stack.append((low, middle, at_low, at_middle))
            stack.append((middle, high, at_middle, at_high))
    return found


def _narrowed(
    poly: Coefficients, low: Fraction, high: Fraction, width: Fraction, budget: Budget
) -> tuple[Fraction, Fraction]:
    at_high = _value(poly, high)
    if at_high == 0:
        return high, high
    while high - low > width:
        budget.check()
        middle = (low + high) / 2
        value = _value(poly, middle)
        if value == 0:
            return middle, middle
        if (value > 0) == (at_high > 0):
            high = middle
        else:
            low = middle
    return low, high


def _enclosed(poly: Coefficients, low: Fraction, high: Fraction, budget: Budget) -> RealNumber:
    low, high = _narrowed(poly, low, high, Fraction(1, 1 << _BITS), budget)
    first, last = as_interval(low), as_interval(high)
    value = first.ctx.mpf([first.a, last.b])
    return RealNumber(value, f"{approximate(value, 5)}")
