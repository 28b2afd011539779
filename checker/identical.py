"""Unknown constants in an identity: 5x + 1 = A(x+2) + B(x-1) for every x gives A + B = 5 and 2A - B = 1."""

from __future__ import annotations

from fractions import Fraction

from checker.common_solutions import judged_by_solutions
from checker.outcome import Known, Outcome
from checker.polynomial import TooLargeError, coefficients_in, is_constant, letters_in
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import Node, Number, Relation, Statement, letters, parse_expression
from checker.written import polynomial_latex

__all__ = ["judged_by_coefficients"]

_CONSTANTS = frozenset({"pi", "i", "e"})
_MOST_EQUATIONS = 6


def judged_by_coefficients(before: Statement, after: Statement, known: Known) -> Outcome | None:
    """Judge a line about constants by the identity that they stand in.

    Args:
        before: an equation one side of which has one letter only, the other that letter and the constants; or with the
            sign of identity.
        after: a line in some of the constants.
        known: time.
    """
    if not isinstance(before, Relation) or before.operator not in ("=", "\\equiv"):
        return None
    told = letters(after) - _CONSTANTS
    sides = letters(before.left) - _CONSTANTS, letters(before.right) - _CONSTANTS
    everything = sides[0] | sides[1]
    if not told or not told < everything:
        return None
    one = next((min(side) for side, other in (sides, sides[::-1]) if len(side) == 1 and side < other), None)
    if one is None or one in told or len(everything) > _MOST_EQUATIONS:
        return None
    equations = _coefficients(before, one, known)
    if not equations:
        return None
    outcome = judged_by_solutions(equations, after, known)
    if outcome is None:
        return None
    match outcome.kind:
        case "follows":
            return Outcome("follows", f"From the coefficients, as the two sides are equal for every {one}.")
        case "slip":
            reason = f"The two sides are equal for every {one} only with {_values(outcome)}."
            return Outcome("slip", reason, outcome.witness)
        case _:
            return None


def _values(outcome: Outcome) -> str:
    return " and ".join(f"{name} = {value}" for name, value in sorted((outcome.witness or {}).items()))


def _coefficients(before: Relation, name: str, known: Known) -> list[Relation]:
    """One equation for each power of the letter."""

    def work(ring: Ring) -> list[str]:
        rest = ring.difference(ring.quotient(before.left), ring.quotient(before.right))
        if name not in ring.index or any(ring.names[one].startswith("\0") for one in letters_in(rest)):
            return []
        parts = [part for part in coefficients_in(rest, ring.index[name]) if part]
        if any(is_constant(part) for part in parts):
            return []
        return [polynomial_latex(part, ring.names) for part in parts]

    try:
        texts = in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return []
    return [_is_nought(parse_expression(text)) for text in texts]


def _is_nought(node: Node) -> Relation:
    return Relation(node.span, node, "=", Number(node.span, Fraction(0), "0"), node.span)
