"""Is a written line the line that a scheme asks for, a later one, one of the same form, or none of these?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import Enum

from checker.budget import OutOfTimeError
from checker.equality import equal
from checker.forms import checked_form
from checker.marking.rounds import rounds_to
from checker.marking.scheme import Form
from checker.marking.shape import holds_terms, is_linear, shape, size, written_alike
from checker.numeric import UnsureError
from checker.outcome import Known
from checker.polynomial import TooLargeError
from checker.relations import compare_relations, free_letters, unfolded_branches
from checker.report import Task
from checker.ring import UndefinedError, UnsupportedError
from checker.syntax import (
    Bracket,
    Chain,
    Definition,
    Expression,
    Node,
    Note,
    Number,
    Relation,
    Statement,
    Steps,
    letters,
    nodes_of,
    to_latex,
    walk,
)
from checker.verdict import No, Yes

__all__ = ["Likeness", "Match", "compared", "is_same_question"]

_TASKS: dict[Form, Task] = {"expanded": "expand", "factorised": "factorise", "simplest": "simplify"}


class Likeness(Enum):
    """How a written line stands to the line of a scheme, the nearest first."""

    SAME = "equivalent and of the form asked"
    FURTHER = "equivalent and simpler: it may come from the line asked for"
    PART = "some of the line's terms are just it"
    ROUNDED = "a rounded value of it"
    UNROUNDED = "an exact value that rounds to it"
    UNSURE = "it could not be compared"
    OTHER_FORM = "equivalent but not of the form asked"
    LIKE = "of the same form with other numbers"
    NONE = "neither equivalent nor of the same form"


_ORDER = list(Likeness)


@dataclass(frozen=True, slots=True)
class Match:
    """A likeness, and the part of the line that has it."""

    likeness: Likeness
    part: Statement


def compared(target: Statement, written: Statement, form: Form, known: Known, *, is_opening: bool = False) -> Match:
    """The best likeness of the parts of a written line to the line of a scheme.

    Args:
        target: the line of the scheme.
        written: the candidate's line.
        form: how it is to be written.
        known: time and givens.
        is_opening: is it the line that the working starts with? Then only a line written alike is the same.
    """
    best = Match(Likeness.NONE, written)
    for one in _targets(target):
        parts = _parts(one, written)
        for part in parts:
            # a chain goes on from what it opens with
            opens = is_opening and (part is parts[-1] or not isinstance(written, Chain))
            likeness = _likeness(one, part, form, known, is_opening=opens)
            if _ORDER.index(likeness) < _ORDER.index(best.likeness):
                best = Match(likeness, part)
        if _ORDER.index(Likeness.PART) < _ORDER.index(best.likeness) and not is_opening and (
            isinstance(one, Expression) and holds_terms(written, one.body)
        ):
            best = Match(Likeness.PART, written)
    return best


def is_same_question(question: Statement, first: Statement, known: Known) -> bool | None:
    """Is the first line equivalent to the question as set? None when that cannot be told."""
    told = [_equivalence(question, part, known) for part in _parts(question, first)]
    if any(one == "yes" for one in told):
        return True
    return False if told and all(one == "no" for one in told) else None


def _targets(target: Statement) -> tuple[Statement, ...]:
    match target:
        case Steps(parts=parts):
            return _targets(parts[-1])
        case Chain(continues=True, members=members):
            return (Expression(target.span, members[-1], continues=True),)
        case Chain(members=members, operators=operators, operator_spans=spans) if set(operators) == {"="}:
            return (Relation(target.span, members[0], "=", members[-1], spans[0]),)
        case _:
            return (target,)


def _parts(target: Statement, written: Statement) -> list[Statement]:
    """What a line says of the kind that the target is of, the last first."""
    if isinstance(written, Steps):
        return [part for one in reversed(written.parts) for part in _parts(target, one)]
    if isinstance(written, Note):
        return []
    if isinstance(target, Expression):
        nodes: tuple[Node, ...]
        match written:
            case Expression(body=body) | Definition(body=body):
                nodes = (body,)
            case Relation(left=left, right=right, operator="=" | "\\equiv" | "\\approx"):
                nodes = (right, left)
            case Chain(members=members):
                nodes = members[::-1]
            case _:
                nodes = ()
        return [Expression(node.span, node) for node in nodes]
    match written:
        case Expression():
            return []
        case Chain(continues=False, members=members, operators=operators, operator_spans=spans) if (
            set(operators) == {"="}
        ):
            return [
                Relation(written.span, members[0], "=", member, span)
                for member, span in reversed(list(zip(members[1:], spans, strict=True)))
            ]
        case Definition(name=name, body=body):
            return [Relation(written.span, name, "=", body, written.span)]
        case _:
            return [written]


def _likeness(target: Statement, part: Statement, form: Form, known: Known, *, is_opening: bool) -> Likeness:
    is_like = shape(target) == shape(part) and free_letters(target, known) == free_letters(part, known)
    if is_opening:
        # a sum in another order is a step; the sides or factors of an equation in another order are none
        is_same = to_latex(target) == to_latex(part) if isinstance(target, Expression) else written_alike(target, part)
        return Likeness.SAME if is_same else Likeness.NONE
    if form == "exact" and written_alike(target, part):
        return Likeness.SAME
    if form == "awrt":
        rounds = rounds_to(target, part, known)
        if rounds is not None:
            return Likeness.SAME if rounds == "written" else Likeness.UNROUNDED
        return Likeness.LIKE if is_like else Likeness.NONE
    told = _equivalence(target, part, known)
    if told == "rounded":
        return Likeness.ROUNDED
    if told == "unknown":
        return Likeness.UNSURE if is_like else Likeness.NONE
    if told == "no":
        return Likeness.LIKE if is_like and form != "exact" and _has_form(part, form, known) else Likeness.NONE
    if form == "exact":
        return Likeness.OTHER_FORM
    if form != "oe":
        has_form = _has_form(part, form, known)
        return Likeness.SAME if has_form else Likeness.UNSURE if has_form is None else Likeness.OTHER_FORM
    if is_like:
        return Likeness.SAME
    if isinstance(target, Expression) and _has_brackets(target) != _has_brackets(part):
        return Likeness.OTHER_FORM  # shorter perhaps, but on the other side of multiplying out
    return Likeness.FURTHER if size(part) < size(target) and _is_beyond(target, part) else Likeness.OTHER_FORM


def _is_beyond(target: Statement, part: Statement) -> bool:
    """Can a shorter condition come from the one asked for? x(x-2)=8 does not come from x^2-2x-8=0, but x=4 may."""
    if isinstance(target, Expression) or is_linear(target):
        return True
    return all(is_linear(branch) for branch in unfolded_branches(part))


def _has_brackets(statement: Statement) -> bool:
    return any(
        isinstance(node, Bracket) and letters(node) - {"pi"} for top in nodes_of(statement) for node in walk(top)
    )


def _equivalence(target: Statement, part: Statement, known: Known) -> str:
    """yes, no, rounded or unknown."""
    if written_alike(target, part):
        return "yes"
    if isinstance(target, Expression) and isinstance(part, Expression):
        verdict = equal(target.body, part.body, budget=known.budget.part(0.3), euler=known.euler)
        return "yes" if isinstance(verdict, Yes) else "no" if isinstance(verdict, No) else "unknown"
    if isinstance(target, Expression) or isinstance(part, Expression):
        return "no"
    if free_letters(target, known) != free_letters(part, known):
        return "no"
    try:
        outcome = compare_relations(target, part, replace(known, budget=known.budget.part(0.3)))
    except (OutOfTimeError, UnsureError, UnsupportedError, UndefinedError, TooLargeError):
        return "unknown"
    if outcome.kind == "follows":
        return "rounded" if _has_decimal(part) and not _has_decimal(target) and outcome.reason else "yes"
    return "unknown" if outcome.kind == "undecided" else "no"


def _has_decimal(statement: Statement) -> bool:
    return any(
        isinstance(node, Number) and "." in node.text for top in nodes_of(statement) for node in walk(top)
    )


def _has_form(statement: Statement, form: Form, known: Known) -> bool | None:
    """Is each side that holds letters, or the only side, written in the form?"""
    if form not in _TASKS:
        return True
    nodes = list(nodes_of(statement))
    asked = [node for node in nodes if len(nodes) == 1 or letters(node) - {"pi"}]
    found: bool | None = True
    for node in asked:
        try:
            told = checked_form(node, _TASKS[form], euler=known.euler).is_met
        except (UnsupportedError, UndefinedError, TooLargeError):
            told = None
        if told is False:
            return False
        found = None if told is None else found
    return found
