"""Decimals and whole numbers given for a solution: rounded, cut off, or wrong."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from checker.accuracy import judged_decimal, rounded_latex
from checker.numeric import Evaluator, UnsureError, Value, difference, sign_of
from checker.outcome import Known, Outcome, undecided
from checker.polynomial import TooLargeError
from checker.real_roots import RealNumber
from checker.ring import UndefinedError, UnsupportedError
from checker.rounding import decimal_places, places_when_rounded, rounding_of, terminates
from checker.solutions import solution_set
from checker.substitution import solved_for
from checker.syntax import (
    Alternatives,
    Node,
    Relation,
    Statement,
    Symbol,
    letters,
    unfolded,
)

__all__ = ["by_accuracy", "nearest_whole", "rounded_solutions", "unfolded_branches"]

_PLAINLY_ROUNDED = 100  # a whole number from here on is read as rounded


def unfolded_branches(statement: Statement) -> tuple[Statement, ...]:
    """The statements joined by "or", each ± written out."""
    whole = unfolded(statement)
    return whole.branches if isinstance(whole, Alternatives) else (whole,)


def rounded_solutions(
    first: Statement, second: Statement, name: str, others: dict[str, Fraction], known: Known
) -> Outcome | None:
    """Each decimal given as the letter's value against the nearest solution of the line before."""
    if others:
        return None
    decimals, nodes = [], []
    is_near = any(getattr(branch, "operator", "") == "\\approx" for branch in unfolded_branches(second))
    for branch in unfolded_branches(second):
        if not isinstance(branch, Relation) or branch.operator not in ("=", "\\approx"):
            return None
        if not isinstance(branch.left, Symbol) or branch.left.name != name:
            return None
        decimal = decimal_places(branch.right)
        if decimal is None:
            return None
        decimals.append((decimal[0], places_when_rounded(*decimal)))
        nodes.append(branch.right)
    if not decimals:
        return None
    solved = solved_for(first)
    try:
        if solved is not None and solved[0] == name and not letters(solved[1]) - {"pi", "e"}:
            value = Evaluator({}, euler=known.euler).value(solved[1])
            roots: tuple[RealNumber, ...] = (RealNumber(value, ""),)
            stretches = False
        else:
            roots, stretches = solution_set(first, name, known.budget, euler=known.euler)
    except (UnsupportedError, TooLargeError, UnsureError, UndefinedError):
        return _between_signs(first, decimals, name, known)
    if stretches or not roots or len(decimals) > len(roots):
        return None
    if known.accuracy is None and not is_near and any(decimal_places(node) == (number[0], 0) for node, number in zip(
        nodes, decimals, strict=True
    )):
        return _whole_instead(roots, decimals)
    kinds = set()
    for node, (written, places) in zip(nodes, decimals, strict=True):
        nearest = min(roots, key=lambda root: abs(root.middle - written))
        if known.accuracy is not None:
            told = _by_accuracy(nearest.value, node, known)
            if told is None or told.kind == "slip":
                return told
            continue
        kind = rounding_of(nearest.value, written, places)
        if kind is None or kind == "wrong":
            return None
        if not is_near and nearest.exact is not None and kind != "exact" and places < 2 and terminates(nearest.exact):
            return None
        kinds.add(kind)
    if len(decimals) < len(roots):
        return Outcome("loses", "Not all solutions are given.")
    if "cut" in kinds:
        return Outcome("follows", "The decimal is cut off; rounding would change its last digit.")
    return Outcome("follows", "The value is rounded.")


def _whole_instead(roots: Sequence[RealNumber], decimals: Sequence[tuple[Fraction, int]]) -> Outcome | None:
    """N = 3695 where N is 3694.53."""
    if len(decimals) != 1 or len(roots) != 1:
        return None
    return _nearest_whole(roots[0].value, decimals[0][0])


def by_accuracy(value: Node, written: Node, known: Known) -> Outcome | None:
    """A value rounded as the line says: right, wrong in the last digit, or None when it cannot be told."""
    try:
        exact = Evaluator({}, euler=known.euler).value(value)
    except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
        return None
    return _by_accuracy(exact, written, known)


def nearest_whole(value: Node, written: Fraction, known: Known) -> Outcome | None:
    """A whole number in place of a value that no decimal gives exactly; None where it is not the nearest."""
    try:
        exact = Evaluator({}, euler=known.euler).value(value)
    except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
        return None
    return _nearest_whole(exact, written)


def _nearest_whole(exact: Value, written: Fraction) -> Outcome | None:
    if isinstance(exact, Fraction) and terminates(exact):
        return None
    if rounding_of(exact, written, 0) != "rounded":
        return None
    if abs(written) >= _PLAINLY_ROUNDED:
        return Outcome("follows", "The value is rounded to a whole number.")
    return undecided("It is the nearest whole number; the accuracy that is meant is not said.", is_soft=True)


def _by_accuracy(exact: Value, written: Node, known: Known) -> Outcome | None:
    assert known.accuracy is not None
    told = rounded_latex(exact, known.accuracy)
    number = decimal_places(written)
    if not told or number is None:
        return None
    if Fraction(told) == number[0]:
        return Outcome("follows", f"Rounded to {known.accuracy.words}.")
    right, _ = judged_decimal(exact, written, None)
    if right:
        return Outcome("follows", f"The value is rounded; to {known.accuracy.words} it is {told}.")
    return Outcome("slip", f"To {known.accuracy.words} the value is {told}.", {})


def _between_signs(
    first: Statement, decimals: Sequence[tuple[Fraction, int]], name: str, known: Known
) -> Outcome | None:
    """Where the solutions cannot be listed: do the sides change places within half a unit of each decimal?"""
    if not isinstance(first, Relation) or first.operator != "=":
        return None
    for written, places in decimals:
        signs = []
        for sign in (-1, 1):
            evaluator = Evaluator({name: written + sign * Fraction(10) ** -places / 2}, euler=known.euler)
            try:
                signs.append(sign_of(difference(evaluator.value(first.left), evaluator.value(first.right))))
            except (UnsupportedError, UndefinedError, UnsureError, TooLargeError):
                return None
        if signs[0] * signs[1] > 0:
            return None
    return Outcome("follows", "The value is rounded.")
