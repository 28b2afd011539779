"""Which real values of one letter satisfy a statement, and how do the sets of two statements compare?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from checker.budget import Budget
from checker.critical_values import critical_values
from checker.numeric import (
    Evaluator,
)
from checker.real_roots import RealNumber, rational_number
from checker.ring import UnsupportedError
from checker.syntax import (
    Statement,
)
from checker.truth import is_true, links

__all__ = [
    "SetComparison", "Witness", "compare_sets", "critical_values", "is_true", "links", "places_of",
    "solution_set",
]


_MOST_WHOLE = 400  # whole numbers that are tried one by one


@dataclass(frozen=True, slots=True)
class Witness:
    """A value of the letter, and whether single values or a whole stretch around it is meant."""

    value: RealNumber
    is_stretch: bool = False


@dataclass(frozen=True, slots=True)
class SetComparison:
    """Values that satisfy only one of two statements; both empty when the sets are the same.

    Args:
        only_first, only_second: values in one set and not in the other.
        common: does any value tried satisfy both?
        proved: False when the places to look at came from a search.
    """

    only_first: tuple[Witness, ...]
    only_second: tuple[Witness, ...]
    common: bool
    proved: bool = True


# places where truth can change


# comparing


def compare_sets(
    first: Statement, second: Statement, letter: str, others: Mapping[str, Fraction], budget: Budget, *,
    euler: bool = False,
) -> SetComparison:
    """Compare two statements' real solution sets in one letter, other letters having the values given.

    Raises:
        UnsupportedError, TooLargeError, UnsureError, OutOfTimeError: it cannot be told.
    """
    values_a, proved_a = critical_values(first, letter, others, budget, euler=euler)
    values_b, proved_b = critical_values(second, letter, others, budget, euler=euler)
    places = places_of([*values_a, *values_b])
    if any(sign == "\\in" for statement in (first, second) for _, sign, _ in links(statement)):
        places = _whole_places([*values_a, *values_b])
    only_first: list[Witness] = []
    only_second: list[Witness] = []
    common = False
    for place, is_stretch in places:
        budget.check()
        evaluator = Evaluator({**others, letter: place.value}, euler=euler)
        in_first, in_second = is_true(first, evaluator), is_true(second, evaluator)
        common = common or (in_first and in_second)
        if in_first and not in_second:
            only_first.append(Witness(place, is_stretch))
        elif in_second and not in_first:
            only_second.append(Witness(place, is_stretch))
    return SetComparison(tuple(only_first), tuple(only_second), common, proved_a and proved_b)


def solution_set(
    statement: Statement, letter: str, budget: Budget, *, euler: bool = False
) -> tuple[tuple[RealNumber, ...], bool]:
    """The separate solutions in one letter, and True when there are whole stretches of solutions besides.

    Raises:
        UnsupportedError: they cannot be listed for certain.
    """
    values, _ = critical_values(statement, letter, {}, budget, euler=euler, search=False)
    found = []
    stretches = False
    for place, is_stretch in places_of(values):
        if is_true(statement, Evaluator({letter: place.value}, euler=euler)):
            if is_stretch:
                stretches = True
            else:
                found.append(place)
    return tuple(found), stretches


def places_of(values: list[RealNumber]) -> list[tuple[RealNumber, bool]]:
    """Each distinct value, and between and beyond them one simple fraction each, marked as a stretch."""
    values = sorted(values, key=lambda number: (number.middle, number.exact is None))
    distinct: list[RealNumber] = []
    for number in values:
        if distinct and abs(number.middle - distinct[-1].middle) < Fraction(1, 10**36):
            continue
        distinct.append(number)
    if not distinct:
        return [(rational_number(Fraction(1)), True)]
    out: list[tuple[RealNumber, bool]] = []
    first, last = distinct[0].middle, distinct[-1].middle
    out.append((rational_number(Fraction(-(-first.numerator // first.denominator) - 1)), True))
    for number, following in zip(distinct, [*distinct[1:], None], strict=True):
        out.append((number, False))
        if following is not None:
            out.append((rational_number(_simplest_between(number.middle, following.middle)), True))
    out.append((rational_number(Fraction(last.numerator // last.denominator + 1)), True))
    return out


def _whole_places(values: Sequence[RealNumber]) -> list[tuple[RealNumber, bool]]:
    """The whole numbers between the values and two beyond.

    Raises:
        UnsupportedError: they are too many.
    """
    middles = [number.middle for number in values] or [Fraction(0)]
    low, high = int(min(middles) // 1) - 2, int(-(-max(middles) // 1)) + 2
    if high - low > _MOST_WHOLE:
        raise UnsupportedError
    return [(rational_number(Fraction(value)), False) for value in range(low, high + 1)]


def _simplest_between(low: Fraction, high: Fraction) -> Fraction:
    """The fraction of smallest denominator strictly between."""
    if low < 0 < high:
        return Fraction(0)
    if high <= 0:
        return -_simplest_between(-high, -low)
    whole = low.numerator // low.denominator
    if whole + 1 < high:
        return Fraction(whole + 1)
    low, high = low - whole, high - whole
    if low == 0:
        return whole + Fraction(1, high.denominator // high.numerator + 1)
    return whole + 1 / _simplest_between(1 / high, 1 / low)


