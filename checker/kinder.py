"""What else a line that does not follow may be: a name, a value put in, a boundary, a further bound, a check."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from checker.knowledge import solved_by_number
from checker.line_kinds import CONSTANTS, is_bound, is_boundary, is_value
from checker.outcome import Known, Outcome
from checker.relations import compare_relations
from checker.standing import Entry, Step
from checker.steps import value_of_line
from checker.substitution import solved_for
from checker.syntax import (
    Absolute,
    Bracket,
    Definition,
    Expression,
    Line,
    Negation,
    Node,
    Relation,
    Statement,
    Symbol,
    System,
    letters,
)
from checker.templates import put_into_formula

__all__ = ["Kinder", "is_put_in", "is_taken", "names_something", "read_kindly"]

_TO_BE_FOUND = frozenset("ABCDPQR")


@dataclass(frozen=True, slots=True)
class Kinder:
    """A kinder outcome, the entry it rests on and the statement that it is of; soft where it is taken as given."""

    outcome: Outcome
    source: Entry | None
    part: Statement


def is_put_in(step: Step, entries: Sequence[Entry]) -> bool:
    """x = 0 before "so 4y = 12": no line before was being solved for it."""
    if step.outcome.kind == "follows":
        return False
    name = solved_for(step.part)
    last = next((one for one in reversed(entries) if not isinstance(one.statement, Definition)), None)
    return name is not None and (
        last is None or solved_for(last.statement) is not None
        or letters(last.statement) - CONSTANTS != {name[0]}
    )


def names_something(part: Statement, later: Iterable[Line | None], entries: Sequence[Entry]) -> bool:
    """u = x^2 without "let": a new letter for an expression in known ones, and a later line uses it."""
    if not isinstance(part, Relation) or part.operator != "=" or not isinstance(part.left, Symbol):
        return False
    name, inside = part.left.name, letters(part.right) - CONSTANTS
    seen = frozenset().union(*(letters(entry.statement) for entry in entries))
    if name in seen or name in inside or not inside or not inside <= seen:
        return False
    return any(
        name in letters(one.statement) for one in later if one is not None
    )


def read_kindly(
    part: Statement, line: Line, outcome: Outcome, source: Entry | None, entries: Sequence[Entry], known: Known
) -> Kinder | None:
    """What else a line that does not follow may be: the boundary of an inequality, a further bound, a check."""
    if outcome.kind == "follows":
        return None
    if outcome.kind != "undecided" and any(is_boundary(one.statement, part, known) for one in entries):
        return Kinder(Outcome("follows", "The boundary of the inequality.", is_soft=True), None, part)
    starts = [entry.statement for entry in entries]
    if outcome.kind == "slip" and starts and is_bound(part) and all(is_bound(one) for one in starts):
        return Kinder(Outcome("follows", "A further condition, taken as given.", is_soft=True), None, part)
    if outcome.kind in ("slip", "adds") and len(starts) > 1 and all(is_bound(one) for one in starts):
        both = System(part.span, tuple(starts))
        if compare_relations(both, part, known).kind == "follows":
            told = Outcome("follows", "From the lines before together.")
            return Kinder(told, entries[-1], part)
    if outcome.kind == "slip":
        case = _case_of_modulus(part, entries, known)
        if case is not None:
            return case
    if outcome.kind == "adds" and line.conditions and not letters(part) - CONSTANTS:
        told = Outcome("follows", "The check holds.")
        return Kinder(told, source, part)
    if outcome.kind == "undecided" and outcome.is_soft:
        for entry in reversed(entries):
            found = put_into_formula(entry.statement, part, known)
            if found is not None:
                return Kinder(found, entry, part)
        identity = _with_constants(part, entries)
        if identity is not None:
            told = Outcome("follows", "With constants that are to be found.", is_soft=True)
            return Kinder(told, None, identity)
    return None


def _case_of_modulus(part: Statement, entries: Sequence[Entry], known: Known) -> Kinder | None:
    """x + 2 = -3x after |x + 2| = 3x: one case, whose solution may have to be rejected."""
    for entry in reversed(entries):
        before = entry.statement
        if not isinstance(before, Relation) or before.operator != "=":
            continue
        for left in _without_bars(before.left):
            for right in _without_bars(before.right):
                if left is before.left and right is before.right:
                    continue
                case = Relation(before.span, left, "=", right, before.operator_span)
                if compare_relations(case, part, known).kind == "follows":
                    told = "One case of the modulus: what it gives is to be checked in the line before."
                    return Kinder(Outcome("adds", told), entry, part)
    return None


def _without_bars(node: Node) -> list[Node]:
    """The node, or where it is a modulus what stands between the bars and its opposite."""
    if isinstance(node, Absolute):
        inside = Bracket(node.span, node.body, "(")
        return [inside, Negation(node.span, inside)]
    return [node]


def _with_constants(part: Statement, entries: Sequence[Entry]) -> Statement | None:
    """= A/(x+1) + B/(x+3) after a fraction: an identity that holds for the right A and B."""
    if not isinstance(part, Expression) or not part.continues or not entries:
        return None
    before = value_of_line(entries[-1].statement)
    new = letters(part) - (letters(before) if before is not None else frozenset())
    if before is None or not new or not new <= _TO_BE_FOUND:
        return None
    return Relation(part.span, before, "=", part.body, part.span)


def is_taken(part: Statement, line: Line, entries: Sequence[Entry]) -> bool:
    """Values with no line to come from: y = 12 when x = 2, or u = 5, a = 2, or x = 4 after y = 2x + 3."""
    if line.conditions and is_value(part):
        return True
    parts = part.parts if isinstance(part, System) else (part,)
    if not all(solved_by_number(one) for one in parts):
        return False
    if len(parts) > 1:
        return True
    name = solved_for(part)
    subjects = {told[0] for entry in entries if (told := solved_for(entry.statement)) is not None}
    used = frozenset().union(*(letters(entry.statement) for entry in entries))
    return name is not None and name[0] in used and name[0] not in subjects
