"""Does what is written round to a decimal of a scheme (awrt)?"""

from __future__ import annotations

from fractions import Fraction
from math import floor
from typing import Literal

from checker.numeric import Evaluator, UnsureError
from checker.outcome import Known
from checker.polynomial import TooLargeError
from checker.real_roots import RealNumber
from checker.relations import unfolded_branches
from checker.ring import UndefinedError, UnsupportedError
from checker.rounding import decimal_places
from checker.substitution import solved_for
from checker.syntax import Expression, Node, Relation, Statement, Symbol, letters

__all__ = ["rounds_to"]

Rounds = Literal["written", "exact"]


def rounds_to(target: Statement, part: Statement, known: Known) -> Rounds | None:
    """How a value, or each value of a letter, rounds to the decimals of a scheme.

    Returns:
        "written" when decimals with at least as many places do, "exact" when a value without decimals would; None when
        one does not round to its decimal, or the letters differ.
    """
    wanted, given = _values(target), _values(part)
    if wanted is None or given is None or len(wanted) != len(given):
        return None
    found: set[Rounds] = set()
    left = list(given)
    for name, node in wanted:
        goal = decimal_places(node)
        if goal is None:
            return None
        hits = [(one, how) for one in left if one[0] == name and (how := _rounds(one[1], *goal, known)) is not None]
        if not hits:
            return None
        left.remove(hits[0][0])
        found.add(hits[0][1])
    return "exact" if "exact" in found else "written"


def _values(statement: Statement) -> list[tuple[str, Node]] | None:
    if isinstance(statement, Expression):
        return [("", statement.body)]
    values: list[tuple[str, Node]] = []
    for branch in unfolded_branches(statement):
        solved = solved_for(branch)
        if solved is None and isinstance(branch, Relation) and branch.operator == "\\approx":
            solved = (branch.left.name, branch.right) if isinstance(branch.left, Symbol) else None
        if solved is None:
            return None
        values.append(solved)
    return values


def _rounds(node: Node, goal: Fraction, places: int, known: Known) -> Rounds | None:
    written = decimal_places(node)
    if written is not None and (written[1] >= places or written[0] == goal):
        return "written" if _rounded(written[0], places) == goal else None
    if written is not None or letters(node) - {"pi", "e"}:
        return None
    try:
        value = Evaluator({}, euler=known.euler).value(node)
        return "exact" if _rounded(RealNumber(value, "").middle, places) == goal else None
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError, AttributeError):
        return None


def _rounded(value: Fraction, places: int) -> Fraction:
    """Halves away from zero."""
    unit = Fraction(10) ** -places
    size = floor(abs(value) / unit + Fraction(1, 2)) * unit
    return -size if value < 0 else size
