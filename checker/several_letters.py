"""Two conditions in several letters: each letter in turn taken as the unknown, with numbers for the others."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from checker.bounds import is_limit
from checker.numeric import Evaluator, UnsureError
from checker.outcome import Known
from checker.polynomial import TooLargeError
from checker.ring import UndefinedError, UnsupportedError
from checker.solutions import SetComparison, is_true, links
from checker.syntax import (
    Division,
    Statement,
    letters,
    to_latex,
    walk,
)
from checker.syntax import Fraction as Quotient

__all__ = ["TUPLES", "parameter_note", "points_for_letters", "within_domain"]

TUPLES = 6  # of values for the other letters
_PARAMETERS = (*map(Fraction, (2, 3, 5, -1, 7, -4, 11, -6, 13)), Fraction(1, 2), Fraction(7, 3))


def points_for_letters(names: list[str], known: Known) -> Iterator[dict[str, Fraction]]:
    """Numbers for the letters, such as the givens allow."""
    for shift in range(TUPLES * 4):
        point = {
            name: _PARAMETERS[(shift * (at + 1) + 3 * at) % len(_PARAMETERS)] for at, name in enumerate(names)
        }
        evaluator = Evaluator(point, euler=known.euler)
        try:
            if all(
                is_true(given, evaluator) for given in known.givens
                if letters(given) <= set(names) and is_limit(given)
            ):
                yield point
        except (UnsupportedError, UnsureError, TooLargeError):
            yield point


def within_domain(
    first: Statement, comparison: SetComparison, unknown: str, point: dict[str, Fraction], known: Known
) -> SetComparison:
    """Without the values gained only because a denominator of the line before is zero there: a condition, no gain."""
    gained = tuple(
        witness for witness in comparison.only_second
        if _has_value(first, Evaluator({**point, unknown: witness.value.value}, euler=known.euler))
    )
    return replace(comparison, only_second=gained)


def _has_value(statement: Statement, evaluator: Evaluator) -> bool:
    try:
        for left, _, right in links(statement):
            evaluator.value(left)
            evaluator.value(right)
    except UndefinedError:
        return False
    return True


def parameter_note(first: Statement, second: Statement, unknowns: list[str], known: Known) -> str:
    """Letters divided by in the second line and not in the first: a ≠ 0."""
    bottoms: list[set[str]] = [set(), set()]
    for at, statement in enumerate((first, second)):
        for left, _, right in links(statement):
            for node in (*walk(left), *walk(right)):
                if isinstance(node, Quotient | Division):
                    bottom = node.denominator if isinstance(node, Quotient) else node.right
                    if letters(bottom):
                        bottoms[at].add(to_latex(bottom))
    new = sorted(bottoms[1] - bottoms[0])
    return "For " + ", ".join(bottom + " \\ne 0" for bottom in new) + "." if new else ""
