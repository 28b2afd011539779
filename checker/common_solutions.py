"""The finitely many real solutions that several equations have in common, found by putting one into the others."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from checker.errors import ParseError
from checker.numeric import Evaluator, UnsureError, Value, approximate, difference, is_near_zero
from checker.outcome import Known, Outcome, unknowns_of
from checker.polynomial import TooLargeError, coefficients_in, is_constant, letters_in
from checker.real_roots import RealNumber
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.solutions import is_true, solution_set
from checker.substitution import substituted, substituted_in
from checker.syntax import Node, Relation, Statement, letters, parse_expression, to_latex
from checker.written import fraction_latex, polynomial_latex

__all__ = ["common_solutions", "judged_by_solutions"]

_CONSTANTS = frozenset({"pi", "i"})
_MOST_POINTS = 8
_MOST_EQUATIONS = 6

Point = dict[str, Node]


def judged_by_solutions(equations: Sequence[Relation], after: Statement, known: Known) -> Outcome | None:
    """Judge a line by the solutions that earlier equations have in common.

    Args:
        equations: equations that hold at once.
        after: the line, in letters that are among theirs.
        known: time and the rest.
    Returns:
        follows when every common solution satisfies the line, a slip when none does or when a value is gained and
        another lost, loses when only some do; None when the solutions are not known or the line has other letters.
    """
    names = frozenset().union(*(letters(equation) for equation in equations)) - _CONSTANTS
    if known.euler:
        names -= {"e"}
    told = unknowns_of(after, known)
    if not told or not told <= names:
        return None
    points = common_solutions(equations, known)
    if not points:
        return None
    try:
        held = [is_true(after, Evaluator(_values(point, known), euler=known.euler)) for point in points]
    except (UnsupportedError, UnsureError, TooLargeError):
        return None
    if all(held):
        return Outcome("follows")
    first = points[held.index(False)]
    shown = {name: approximate(value) for name, value in sorted(_values(first, known).items())}
    where = " and ".join(f"{name} = {value}" for name, value in shown.items())
    if not any(held):
        return Outcome("slip", f"With {where} the equations before hold, but this line does not.", shown)
    if len(told) == 1 and _gains(after, next(iter(told)), points, known):
        return Outcome("slip", f"With {where} the equations before hold, but this line does not.", shown)
    return Outcome("loses", f"The solution {where} is not among those given.", shown)


def _gains(after: Statement, name: str, points: Sequence[Point], known: Known) -> bool:
    """Does a value of the letter satisfy the line that no common solution has?"""
    try:
        found, stretches = solution_set(after, name, known.budget, euler=known.euler)
        if stretches:
            return False
        values = [Evaluator({}, euler=known.euler).value(point[name]) for point in points]
        return any(not any(is_near_zero(difference(one.value, value)) for value in values) for one in found)
    except (UnsupportedError, UnsureError, TooLargeError, UndefinedError):
        return False


def _values(point: Mapping[str, Node], known: Known) -> dict[str, Value]:
    evaluator = Evaluator({}, euler=known.euler)
    return {name: evaluator.value(node) for name, node in point.items()}


def common_solutions(equations: Sequence[Relation], known: Known) -> list[Point] | None:
    """All real points that satisfy every equation; None when there are infinitely many or they are not found."""
    if not 1 <= len(equations) <= _MOST_EQUATIONS:
        return None
    try:
        points = _solved(list(equations), known)
        if points is None:
            return None
        kept = []
        for point in points:
            evaluator = Evaluator(_values(point, known), euler=known.euler)
            if all(is_true(equation, evaluator) for equation in equations):
                kept.append({name: _plain(node, known) for name, node in point.items()})
        return kept
    except (UnsupportedError, UnsureError, TooLargeError, UndefinedError, ParseError):
        return None


def _plain(node: Node, known: Known) -> Node:
    """A rational value as one fraction, any other as it was found."""
    value = Evaluator({}, euler=known.euler).value(node)
    return parse_expression(fraction_latex(value)) if isinstance(value, Fraction) else node


def _solved(equations: list[Relation], known: Known) -> list[Point] | None:
    """Points found letter by letter; some may fail an equation and are to be tried."""
    known.budget.check()
    equations = [equation for equation in equations if not _is_number(equation, known)]
    if not equations:
        return None
    single = next((equation for equation in equations if len(unknowns_of(equation, known)) == 1), None)
    if single is not None:
        return _by_roots(single, equations, known)
    for equation in sorted(equations, key=lambda one: len(to_latex(one))):
        for name in sorted(unknowns_of(equation, known)):
            value = _linear_value(equation, name, known)
            if value is None:
                continue
            rest = [
                substituted_in(other, {name: value}) for other in equations if other is not equation
            ]
            points = _solved([one for one in rest if isinstance(one, Relation)], known) if rest else None
            if points is None:
                return None
            return [{**point, name: substituted(value, point)} for point in points]
    return None


def _is_number(equation: Relation, known: Known) -> bool:
    return not unknowns_of(equation, known)


def _by_roots(single: Relation, equations: list[Relation], known: Known) -> list[Point] | None:
    (name,) = unknowns_of(single, known)
    roots, stretches = solution_set(single, name, known.budget, euler=known.euler)
    if stretches or len(roots) > _MOST_POINTS:
        return None
    left = frozenset().union(*(unknowns_of(equation, known) for equation in equations)) - {name}
    found: list[Point] = []
    for root in roots:
        node = _exact_node(root, known)
        if node is None:
            return None
        if not left:
            found.append({name: node})
            continue
        rest = [substituted_in(other, {name: node}) for other in equations if other is not single]
        points = _solved([one for one in rest if isinstance(one, Relation)], known)
        if points is None:
            return None
        found += [{**point, name: node} for point in points]
    return found if len(found) <= _MOST_POINTS else None


def _exact_node(root: RealNumber, known: Known) -> Node | None:
    """The root as a tree of the same value; None when it is known in digits only."""
    node = parse_expression(root.latex)
    value = Evaluator({}, euler=known.euler).value(node)
    return node if is_near_zero(difference(value, root.value)) else None


def _linear_value(equation: Relation, name: str, known: Known) -> Node | None:
    """The letter by the others, when the equation is linear in it with a number as its coefficient."""

    def work(ring: Ring) -> str | None:
        rest = ring.difference(ring.quotient(equation.left), ring.quotient(equation.right))
        if name not in ring.index or any(ring.names[letter].startswith("\0") for letter in letters_in(rest)):
            return None
        parts = coefficients_in(rest, ring.index[name])
        if len(parts) != 2:
            return None
        if not is_constant(parts[1]):
            # a r = 6 gives a = 6/r; where r is nought there is no solution
            if not is_constant(parts[0]) or not parts[0]:
                return None
            return f"\\frac{{{-parts[0][0]}}}{{{polynomial_latex(parts[1], ring.names)}}}"
        lead = parts[1][0]
        top = {key: -value if lead > 0 else value for key, value in parts[0].items()}
        return polynomial_latex(top, ring.names, abs(lead))

    text = in_ring(work, euler=known.euler)
    return None if text is None else parse_expression(text)
