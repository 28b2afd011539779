"""Integrals of rational functions of one letter with rational coefficients, by partial fractions."""

from __future__ import annotations

from fractions import Fraction as Rational
from math import isqrt, lcm

from checker.budget import Budget
from checker.calculus.building import ZERO, added, applied, number, over, raised, subtracted, symbol, times
from checker.real_roots import real_roots
from checker.refusals import UnsupportedError
from checker.syntax import Node

__all__ = ["integrated_polynomial", "integrated_quotient"]

Coefficients = list[Rational]  # by rising powers
_MOST_DEGREE = 8  # of what stands below


def integrated_polynomial(coefficients: list[Node], name: str) -> Node:
    """The integral of a polynomial given by its coefficients, by rising powers."""
    x = symbol(name)
    return added(*(
        over(times(part, raised(x, number(at + 1))), number(at + 1)) for at, part in enumerate(coefficients)
    ))


def integrated_quotient(top: Coefficients, bottom: Coefficients, name: str) -> Node:
    """The integral of a quotient of polynomials.

    Raises:
        UnsupportedError: what stands below has factors that are not linear, but for one quadratic one.
    """
    top, bottom = _trimmed(top), _trimmed(bottom)
    if len(bottom) - 1 > _MOST_DEGREE or len(bottom) < 2:
        raise UnsupportedError
    whole, rest = _divided(top, bottom)
    result = integrated_polynomial([number(value) for value in whole], name)
    if not _trimmed(rest):
        return result
    factors, quadratic, lead = _factors(bottom)
    return added(result, *_partial_fractions(rest, factors, quadratic, lead, name))


def _trimmed(poly: Coefficients) -> Coefficients:
    poly = list(poly)
    while poly and not poly[-1]:
        poly.pop()
    return poly


def _multiplied(a: Coefficients, b: Coefficients) -> Coefficients:
    out = [Rational(0)] * (len(a) + len(b) - 1)
    for i, x in enumerate(a):
        for j, y in enumerate(b):
            out[i + j] += x * y
    return out


def _divided(top: Coefficients, bottom: Coefficients) -> tuple[Coefficients, Coefficients]:
    rest = list(top)
    whole = [Rational(0)] * max(0, len(top) - len(bottom) + 1)
    for at in range(len(whole) - 1, -1, -1):
        share = rest[at + len(bottom) - 1] / bottom[-1]
        whole[at] = share
        for step, value in enumerate(bottom):
            rest[at + step] -= share * value
    return whole, rest[:len(bottom) - 1]


def _factors(bottom: Coefficients) -> tuple[list[tuple[Rational, int]], Coefficients | None, Rational]:
    """Rational roots with their counts, what quadratic is left, and the leading number."""
    scale = lcm(*(value.denominator for value in bottom))
    roots = real_roots([int(value * scale) for value in bottom], Budget(0.1))
    rest = list(bottom)
    found = []
    for root in roots:
        if root.exact is None:
            continue
        count = 0
        while len(rest) > 1 and sum(value * root.exact**at for at, value in enumerate(rest)) == 0:
            rest = _divided(rest, [-root.exact, Rational(1)])[0]
            count += 1
        found.append((root.exact, count))
    if len(rest) > 3 or len(rest) == 2:
        raise UnsupportedError
    lead = rest[-1]
    return found, [value / lead for value in rest] if len(rest) == 3 else None, lead


def _partial_fractions(
    top: Coefficients, factors: list[tuple[Rational, int]], quadratic: Coefficients | None, lead: Rational, name: str
) -> list[Node]:
    """Each unknown numerator's column is all the other factors; the columns add to the numerator."""
    columns: list[Coefficients] = []
    for at, (_, count) in enumerate(factors):
        for times_ in range(1, count + 1):
            columns.append(_others(factors, quadratic, at, count - times_))
    if quadratic is not None:
        plain = [Rational(1)]
        for root, count in factors:
            for _ in range(count):
                plain = _multiplied(plain, [-root, Rational(1)])
        columns += [plain, _multiplied(plain, [Rational(0), Rational(1)])]
    values = _solved(columns, [value / lead for value in top])
    parts: list[Node] = []
    x = symbol(name)
    place = 0
    for root, count in factors:
        base = subtracted(x, number(root))
        for times_ in range(1, count + 1):
            share = number(values[place])
            if values[place]:
                parts.append(
                    times(share, applied("ln", applied("abs", base))) if times_ == 1
                    else over(times(share, number(Rational(-1, times_ - 1))), raised(base, number(times_ - 1)))
                )
            place += 1
    if quadratic is not None:
        parts += _over_quadratic(values[place], values[place + 1], quadratic, x)
    return parts


def _others(
    factors: list[tuple[Rational, int]], quadratic: Coefficients | None, without: int, kept: int
) -> Coefficients:
    out = [Rational(1)] if quadratic is None else list(quadratic)
    for at, (root, count) in enumerate(factors):
        for _ in range(kept if at == without else count):
            out = _multiplied(out, [-root, Rational(1)])
    return out


def _solved(columns: list[Coefficients], wanted: Coefficients) -> Coefficients:
    size = len(columns)
    rows = [[column[at] if at < len(column) else Rational(0) for column in columns]
            + [wanted[at] if at < len(wanted) else Rational(0)] for at in range(size)]
    for at in range(size):
        pivot = next(row for row in range(at, size) if rows[row][at])
        rows[at], rows[pivot] = rows[pivot], rows[at]
        rows[at] = [value / rows[at][at] for value in rows[at]]
        for row in range(size):
            if row != at and rows[row][at]:
                share = rows[row][at]
                rows[row] = [value - share * other for value, other in zip(rows[row], rows[at], strict=True)]
    return [row[-1] for row in rows]


def _over_quadratic(constant: Rational, slope: Rational, quadratic: Coefficients, x: Node) -> list[Node]:
    """(slope x + constant) over x^2 + px + q."""
    q, p, _ = quadratic
    below = added(raised(x, number(2)), times(number(p), x), number(q))
    parts: list[Node] = []
    if slope:
        parts.append(times(number(slope / 2), applied("ln", applied("abs", below))))
    share = constant - slope * p / 2
    if not share:
        return parts
    gap = 4 * q - p * p
    width = _root(abs(gap))
    upper = added(times(number(2), x), number(p))
    if gap > 0:
        parts.append(over(times(number(2 * share), applied("arctan", over(upper, width))), width))
    else:
        ratio = over(subtracted(upper, width), added(upper, width))
        parts.append(over(times(number(share), applied("ln", applied("abs", ratio))), width))
    return parts


def _root(value: Rational) -> Node:
    top, bottom = isqrt(value.numerator), isqrt(value.denominator)
    if top * top == value.numerator and bottom * bottom == value.denominator:
        return number(Rational(top, bottom))
    return applied("sqrt", number(value)) if value else ZERO
