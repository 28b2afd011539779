"""Is an equation that follows from none before it a further equation of a system, or a slip?"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import Enum
from fractions import Fraction as Rational

from checker.common_solutions import judged_by_solutions
from checker.outcome import Known, unknowns_of
from checker.polynomial import Poly, TooLargeError
from checker.putting_in import is_subject
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.steps import judge_step
from checker.syntax import (
    Alternatives,
    Division,
    Fraction,
    Number,
    Power,
    Relation,
    Statement,
    System,
    children,
    letters,
    nodes_of,
    to_latex,
    walk,
)
from checker.syntax.shapes import is_equation
from checker.systems import follows_together

__all__ = ["Place", "equations_of", "place_of"]

_CONSTANTS = frozenset({"pi", "i"})
_FEW = 3  # letters of a system that may stand without being solved
_MOST_LATER = 12  # lines after it that are looked at


class Place(Enum):
    """What an equation is that follows from none before it."""

    FURTHER = "a further equation of the system"
    SLIP = "meant to follow"
    UNCLEAR = "either"


def place_of(part: Statement, starts: Sequence[Statement], later: Sequence[Statement], known: Known) -> Place:
    """Judge by what comes later whether an equation is a further one.

    Two unknown letters need two equations, three need three. When a later line has fewer of the letters, a system is
    being solved; an equation that differs from an earlier one in one number only may then still be a slip.

    Args:
        part: the equation in question.
        starts: what was taken as given so far.
        later: the statements after it.
        known: time and givens.
    """
    if not is_equation(part) or any(is_subject(node) for top in nodes_of(part) for node in walk(top)):
        return Place.SLIP
    equations = list(equations_of(starts))
    names = unknowns_of(part, known)
    told = frozenset().union(*(unknowns_of(one, known) for one in equations))
    if not equations or len(names) < 2 or not names & told:
        return Place.SLIP
    assert isinstance(part, Relation)
    everything = names | told
    if len(equations) >= len(everything):
        return Place.SLIP
    following = list(later[:_MOST_LATER])
    if _is_needed(part, equations, following, known):
        return Place.FURTHER
    changes = min(_terms_changed(one, part, known) for one in equations)
    solving = any(_has_fewer_letters(one, everything, known) for one in following)
    if not solving:
        alike = names == everything and all(unknowns_of(one, known) == everything for one in equations)
        together = (part, *equations)
        plain = all(_is_whole(one) and _has_numbers(one) for one in together)
        if changes > 1 and alike and plain and len(everything) <= _FEW:
            return Place.UNCLEAR
        return Place.SLIP
    others = [one for one in following if is_equation(one) and len(unknowns_of(one, known)) > 1]
    spare = [one for one in others if not _comes_from(one, [*equations, part], known)]
    if len(equations) + 1 + len(spare) <= len(everything):
        return Place.FURTHER
    return Place.FURTHER if changes > 1 else Place.UNCLEAR


def equations_of(statements: Sequence[Statement]) -> Iterator[Relation]:
    """The equations among the statements, those of a system each alone, one that is written again only once."""
    seen: set[str] = set()
    for statement in statements:
        for part in statement.parts if isinstance(statement, System) else (statement,):
            if isinstance(part, Relation) and part.operator == "=" and to_latex(part) not in seen:
                seen.add(to_latex(part))
                yield part


def _is_whole(equation: Relation) -> bool:
    """Has it no letter below a bar?"""
    return not any(
        isinstance(node, Fraction | Division)
        and letters(node.denominator if isinstance(node, Fraction) else node.right)
        for side in (equation.left, equation.right) for node in walk(side)
    )


def _has_numbers(equation: Relation) -> bool:
    """x + y = 7 and no formula such as ax = b: a number stands in it, and not as a power only."""
    waiting = [equation.left, equation.right]
    while waiting:
        node = waiting.pop()
        if isinstance(node, Number):
            return True
        waiting += [node.base] if isinstance(node, Power) else children(node)
    return False


def _has_fewer_letters(statement: Statement, names: frozenset[str], known: Known) -> bool:
    """2x = 8 or 0 = 2 where x and y are looked for; or x = 4, y = 3 at once."""
    if isinstance(statement, System):
        return all(_has_fewer_letters(part, names, known) for part in statement.parts)
    if isinstance(statement, Alternatives) and statement.branches:
        return all(_has_fewer_letters(branch, names, known) for branch in statement.branches)
    return isinstance(statement, Relation) and unknowns_of(statement, known) < names


def _is_needed(
    part: Relation, equations: Sequence[Relation], following: Sequence[Statement], known: Known
) -> bool:
    """Does a later line follow from the equations together, and from none of them alone?"""
    given = [*equations, part]
    for later in following:
        if not letters(later) - _CONSTANTS or _comes_from(later, given, known):
            continue
        if follows_together(list(enumerate(given)), later, known) is not None:
            return True
        told = judged_by_solutions(given, later, known)
        if told is not None and told.kind == "follows":
            return True
    return False


def _comes_from(statement: Statement, equations: Sequence[Relation], known: Known) -> bool:
    return any(judge_step(one, statement, known).kind in ("follows", "loses", "adds") for one in equations)


def _terms_changed(first: Relation, second: Relation, known: Known) -> int:
    """How many terms of the second differ from the first, the first multiplied so that most agree."""

    def work(ring: Ring) -> int:
        polys = [ring.difference(ring.quotient(one.left), ring.quotient(one.right)) for one in (first, second)]
        return _differing(polys[0], polys[1])

    try:
        return in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return 2


def _differing(first: Poly, second: Poly) -> int:
    keys = first.keys() | second.keys()
    scales = {Rational(second[key], first[key]) for key in first.keys() & second.keys()} or {Rational(1)}
    return min(
        sum(scale * first.get(key, 0) != second.get(key, 0) for key in keys) for scale in scales
    )
