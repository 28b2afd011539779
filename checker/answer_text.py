"""The answer as a teacher would write it: a value in the form asked, the solutions, both values of a system."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from checker.accuracy import Accuracy, rounded_latex
from checker.common_solutions import common_solutions
from checker.factors import cancelled_latex, factorised_latex, prime_latex
from checker.numeric import Evaluator, UnsureError
from checker.outcome import Known
from checker.polynomial import TooLargeError, coefficients_in, is_constant, letters_in
from checker.real_roots import RealNumber
from checker.regions import region_text
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.solutions import critical_values, is_true, links, places_of, solution_set
from checker.substitution import solved_for
from checker.surd_text import surd_latex
from checker.syntax import Fraction, Node, Relation, Statement, System, letters, to_latex, walk
from checker.written import letter_latex, polynomial_latex

__all__ = ["solutions_text", "stretches_text", "subject_text", "system_answer", "written_out"]

_EQUALS = {True: "=", False: " \\approx "}


def written_out(start: Node, known: Known) -> str | None:
    """The value as the task wants it: factorised for "factorise", over one denominator else; None when unknown."""

    def work(ring: Ring) -> str | None:
        top, bottom = ring.quotient(start)
        used = letters_in(top) | letters_in(bottom)
        if "i" in ring.index and ring.index["i"] in letters_in(bottom):
            return None
        if any(ring.names[letter].startswith("\0") or ring.names[letter] == "i" for letter in used):
            return surd_latex(ring, top, bottom)
        if not is_constant(bottom):
            below: Literal["factors", "multiplied out"] = "multiplied out" if known.task == "expand" else "factors"
            return cancelled_latex(top, bottom, ring.names, below=below)
        if known.task == "factorise":
            if is_constant(top) and not letters(start) and not top.get(0, 0) % bottom[0]:
                return prime_latex(top.get(0, 0) // bottom[0]) or polynomial_latex(top, ring.names, bottom[0])
            return factorised_latex(top, bottom[0], ring.names)
        if known.task == "simplify" and len(top) > 1 and any(isinstance(node, Fraction) for node in walk(start)):
            return cancelled_latex(top, bottom, ring.names)
        return polynomial_latex(top, ring.names, bottom[0])

    try:
        return in_ring(work, euler=known.euler)
    except (UnsupportedError, UndefinedError, TooLargeError):
        return None


def solutions_text(statement: Statement, name: str, known: Known, asked: Accuracy | None = None) -> str:
    """Every solution in one letter, to the accuracy asked; empty when they cannot be listed for certain."""
    try:
        roots, stretches = solution_set(statement, name, known.budget, euler=known.euler)
        if stretches:
            return stretches_text(statement, name, known)
    except (UnsupportedError, TooLargeError, UnsureError):
        return ""
    if known.complex_numbers:
        return ""
    roots = tuple(root for root in roots if _is_given(root, name, known))
    if not roots:
        return "\\text{no solution}"
    shown = letter_latex(name)
    if asked is not None and asked.kind != "exact":
        values = [f"{shown}={rounded_latex(root.value, asked)}" for root in roots]
        return " \\text{ or } ".join(values) + f" \\text{{ ({asked.words})}}"
    return " \\text{ or } ".join(f"{shown}{_EQUALS[_is_exact(root)]}{root.latex}" for root in roots)


def _is_given(root: RealNumber, name: str, known: Known) -> bool:
    """Does a solution satisfy what is given of the letter?"""
    limits = [given for given in known.givens if letters(given) == {name} and solved_for(given) is None]
    evaluator = Evaluator({name: root.value}, euler=known.euler)
    try:
        return all(is_true(given, evaluator) for given in limits)
    except (UnsupportedError, TooLargeError, UnsureError):
        return True


def _is_exact(root: RealNumber) -> bool:
    return root.exact is not None or "." not in root.latex


def stretches_text(statement: Statement, name: str, known: Known) -> str:
    """The solutions of an inequality as intervals; empty when they are not known for certain."""
    values, proved = critical_values(statement, name, {}, known.budget, euler=known.euler)
    if not proved:
        return ""
    return region_text(
        name, places_of(values), lambda place: is_true(statement, Evaluator({name: place.value}, euler=known.euler))
    )


def subject_text(statement: Statement, name: str, known: Known) -> str:
    """An equation in several letters with one made the subject, where it is linear in it; else empty."""
    if not isinstance(statement, Relation) or statement.operator != "=":
        return ""

    def work(ring: Ring) -> str:
        ((left, _, right),) = links(statement)
        rest = ring.difference(ring.quotient(left), ring.quotient(right))
        if name not in ring.index or any(ring.names[letter].startswith("\0") for letter in letters_in(rest)):
            return ""
        parts = coefficients_in(rest, ring.index[name])
        if len(parts) != 2:
            return ""
        value = cancelled_latex({key: -size for key, size in parts[0].items()}, parts[1], ring.names)
        return f"{letter_latex(name)}={value}" if value else ""

    try:
        return in_ring(work, euler=known.euler)
    except (UnsupportedError, UndefinedError, TooLargeError):
        return ""


def system_answer(starts: Sequence[Statement], known: Known) -> tuple[list[dict[str, Node]] | None, str]:
    """The points that satisfy several equations at once, and the same in words; None and empty when not found."""
    parts = [part for start in starts for part in (start.parts if isinstance(start, System) else (start,))]
    equations = [part for part in parts if isinstance(part, Relation) and part.operator == "="]
    points = common_solutions(equations, known) if len(equations) == len(parts) else None
    if points is None:
        return None, ""
    if not points:
        return points, "\\text{no solution}"
    told = [[f"{letter_latex(name)}={to_latex(value)}" for name, value in sorted(point.items())] for point in points]
    return points, " \\text{ or } ".join(map(", ".join, told))
