"""Where linear inequalities in one letter change from false to true."""

from __future__ import annotations

from fractions import Fraction

from checker.polynomial import TooLargeError, coefficients_in, is_constant
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.solutions import links
from checker.syntax import Chain, Node, Relation, Statement, System

__all__ = ["has_wrong_boundary", "linear_boundaries"]

_SIGNS = frozenset({"<", ">", "\\le", "\\ge"})


def has_wrong_boundary(before: Statement, after: Statement, name: str, *, euler: bool = False) -> bool:
    """Are both linear inequalities in one letter, the second with a boundary that the first has not?

    Their sets may well lie one inside the other, but a wrong number is no loss or gain of solutions: the step is wrong.
    A boundary dropped, or a strict sign in place of a weak one, is none of this.
    """
    first = linear_boundaries(before, name, euler=euler)
    second = linear_boundaries(after, name, euler=euler)
    return first is not None and second is not None and not second <= first


def linear_boundaries(statement: Statement, name: str, *, euler: bool = False) -> frozenset[Fraction] | None:
    """The values at which the sides of linear inequalities that hold at once are equal; None for anything else."""
    if not isinstance(statement, Relation | Chain | System):
        return None
    found = set()
    for left, sign, right in links(statement):
        place = _boundary(left, right, name, euler=euler) if sign in _SIGNS else None
        if place is None:
            return None
        found.add(place)
    return frozenset(found) or None


def _boundary(left: Node, right: Node, name: str, *, euler: bool) -> Fraction | None:
    def work(ring: Ring) -> Fraction | None:
        top, bottom = ring.quotient(left), ring.quotient(right)
        rest = ring.difference(top, bottom)
        if ring.denominators or ring.names != [name]:
            return None
        parts = coefficients_in(rest, ring.index[name])
        if len(parts) != 2 or not all(is_constant(part) for part in parts):
            return None
        return Fraction(-parts[0].get(0, 0), parts[1][0])

    try:
        return in_ring(work, euler=euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None
