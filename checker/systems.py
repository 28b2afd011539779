"""Does a line follow from two or more earlier equations together?"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations

import sympy

from checker.outcome import Known, Outcome
from checker.polynomial import ONE, Poly, TooLargeError, exponents, letters_in, multiply
from checker.relations import compare_relations, unfolded_branches
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.substitution import solved_for, substituted_in
from checker.syntax import Relation, Statement, System, letters

__all__ = ["follows_together"]

_CONSTANTS = frozenset({"pi", "i"})
_MOST_EQUATIONS = 6
_MOST_TERMS = 300  # of the branches of the line multiplied together


def follows_together(
    earlier: Sequence[tuple[int, Statement]], after: Statement, known: Known
) -> Outcome | None:
    """Try the line against two earlier equations at once: elimination, substitution, then the ideal they span.

    Args:
        earlier: line numbers and statements still standing, the nearest last.
        after: the line.
        known: time and givens.
    Returns:
        follows with the lines used, or None.
    """
    equations: list[tuple[int, Relation]] = []
    for index, statement in earlier:
        parts = statement.parts if isinstance(statement, System) else (statement,)
        equations += [(index, part) for part in parts if isinstance(part, Relation) and part.operator == "="]
    equations = equations[-_MOST_EQUATIONS:]
    if len(equations) < 2:
        return None
    if isinstance(after, System):
        return _each_part(equations, after, known)
    if len({name for _, equation in equations for name in letters(equation) - _CONSTANTS}) < 2:
        return None
    if isinstance(after, Relation) and after.operator == "=":
        used = _combined(equations, after, known)
        if used is not None:
            return Outcome("follows", "", used=used)
    for (i, first), (j, second) in _pairs(equations):
        known.budget.check()
        for solved_line, other in ((first, second), (second, first)):
            solved = solved_for(solved_line)
            if solved is None or solved[0] not in letters(other):
                continue
            put_in = substituted_in(other, {solved[0]: solved[1]})
            if compare_relations(put_in, after, known).kind == "follows":
                return Outcome("follows", "", used=(i, j))
    return _by_ideal(equations, after, known)


def _each_part(equations: list[tuple[int, Relation]], after: System, known: Known) -> Outcome | None:
    used: set[int] = set()
    earlier = [(index, statement) for index, statement in equations]
    for part in after.parts:
        direct = next(
            (index for index, one in reversed(earlier) if compare_relations(one, part, known).kind == "follows"), None
        )
        if direct is not None:
            used.add(direct)
            continue
        outcome = follows_together(earlier, part, known)
        if outcome is None:
            return None
        used |= set(outcome.used)
    return Outcome("follows", "", used=tuple(sorted(used)))


def _pairs(
    equations: list[tuple[int, Relation]]
) -> list[tuple[tuple[int, Relation], tuple[int, Relation]]]:
    """Pairs, those with the nearest lines first."""
    return sorted(combinations(equations, 2), key=lambda pair: (-pair[1][0], -pair[0][0]))


def _polys(ring: Ring, equations: Sequence[Relation]) -> list[Poly]:
    found = []
    for equation in equations:
        found.append(ring.difference(ring.quotient(equation.left), ring.quotient(equation.right)))
    return found


def _combined(
    equations: list[tuple[int, Relation]], after: Relation, known: Known
) -> tuple[int, ...] | None:
    """The lines of which the equation is a sum of multiples: two if two will do."""

    def work(ring: Ring) -> tuple[int, ...] | None:
        *polys, target = _polys(ring, [*(equation for _, equation in equations), after])
        if not target or ring.denominators:
            return None
        for size in (2, len(polys)):
            for chosen in sorted(combinations(range(len(polys)), min(size, len(polys))), reverse=True):
                some = [polys[at] for at in chosen]
                if _spans(some, target) and (set(target) == {0} or not _spans(some, {0: 1})):
                    return tuple(sorted({equations[at][0] for at in chosen}))
        return None

    try:
        return in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None


def _spans(polys: Sequence[Poly], target: Poly) -> bool:
    """Is the target a rational combination of the polynomials? Elimination with monomials as columns."""
    rows: list[tuple[int, dict[int, Fraction]]] = []

    def reduced(row: dict[int, Fraction]) -> dict[int, Fraction]:
        for pivot, known_row in rows:
            factor = row.get(pivot)
            if factor:
                for key, value in known_row.items():
                    rest = row.get(key, Fraction(0)) - factor * value
                    if rest:
                        row[key] = rest
                    else:
                        row.pop(key, None)
        return row

    for poly in polys:
        row = reduced({key: Fraction(value) for key, value in poly.items()})
        if row:
            pivot = max(row)
            lead = row[pivot]
            rows.append((pivot, {key: value / lead for key, value in row.items()}))
    return not reduced({key: Fraction(value) for key, value in target.items()})


def _by_ideal(equations: list[tuple[int, Relation]], after: Statement, known: Known) -> Outcome | None:
    """Small systems: each branch's polynomial, multiplied together, in the ideal of two equations' polynomials."""
    branches = unfolded_branches(after)
    if not all(isinstance(branch, Relation) and branch.operator == "=" for branch in branches):
        return None

    def work(ring: Ring) -> tuple[int, ...] | None:
        polys = _polys(ring, [equation for _, equation in equations])
        targets = _polys(ring, [branch for branch in branches if isinstance(branch, Relation)])
        if ring.relations or not all(_is_small(poly) for poly in (*polys, *targets)) or not all(targets):
            return None
        symbols = sympy.symbols(f"v0:{len(ring.names)}")
        product = ONE
        for target in targets:
            product = multiply(product, target)
            if len(product) > _MOST_TERMS:
                return None
        whole = _sympy(product, symbols)
        for i, j in sorted(combinations(range(len(polys)), 2), reverse=True):
            known.budget.check()
            if not polys[i] or not polys[j]:
                continue
            generators = [_sympy(polys[i], symbols), _sympy(polys[j], symbols)]
            free = [symbols[k] for k in sorted(letters_in(polys[i]) | letters_in(polys[j]))]
            if not whole.free_symbols <= set(free):
                continue
            basis = sympy.groebner(generators, *free, order="grevlex")
            if basis.exprs != [sympy.Integer(1)] and basis.contains(whole):
                return tuple(sorted({equations[i][0], equations[j][0]}))
        return None

    try:
        used = in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None
    return None if used is None else Outcome("follows", "", used=used)


def _is_small(poly: Poly) -> bool:
    if len(poly) > 12 or len(letters_in(poly)) > 4 or any(abs(value) > 10**9 for value in poly.values()):
        return False
    return all(sum(times for _, times in exponents(key)) <= 3 for key in poly)


def _sympy(poly: Poly, symbols: Sequence[sympy.Symbol]) -> sympy.Expr:
    total = sympy.Integer(0)
    for key, value in poly.items():
        term = sympy.Integer(value)
        for letter, times in exponents(key):
            term *= symbols[letter] ** times
        total += term
    return total
