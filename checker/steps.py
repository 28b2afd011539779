"""Does one statement follow from another? Each pair of kinds of line has its own rule."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from checker.angles import has_angle, with_degrees
from checker.budget import OutOfTimeError
from checker.equality import equal
from checker.numeric import Evaluator, UnsureError
from checker.outcome import Known, Outcome, undecided, unknowns_of
from checker.periodic import is_periodic
from checker.polynomial import TooLargeError
from checker.putting_in import worked_out_in
from checker.relations import compare_relations
from checker.ring import UndefinedError, UnsupportedError, in_ring
from checker.solutions import is_true, links
from checker.substitution import known_values, solved_for, substituted_in
from checker.syntax import (
    Alternatives,
    Chain,
    Definition,
    Division,
    Expression,
    Node,
    Number,
    Power,
    Product,
    Relation,
    Statement,
    Sum,
    System,
    has_plus_minus,
    letters,
    nodes_of,
    walk,
)
from checker.syntax import Fraction as Quotient
from checker.value_steps import CONSTANTS, PUT_IN, judge_values, letters_needed
from checker.verdict import Yes

__all__ = ["VALUE_PUT_IN", "divides_by_zero", "false_number", "inner_link", "judge_step", "value_of_line"]

VALUE_PUT_IN = "With the known value put in."


def value_of_line(statement: Statement) -> Node | None:
    """The value that a line "= ..." after this one carries on: the expression, or the last right side."""
    match statement:
        case Expression(body=body):
            return body
        case Relation(right=right):
            return right
        case Chain(members=members):
            return members[-1]
        case Definition(body=body):
            return body
        case _:
            return None


def divides_by_zero(statement: Statement, known: Known) -> bool:
    """Does a division by zero, whatever the letters, stand somewhere on the line?"""
    for node in nodes_of(statement):
        if not any(isinstance(part, Quotient | Division | Power) for part in walk(node)):
            continue
        try:
            in_ring(lambda ring, node=node: ring.quotient(node), euler=known.euler)  # type: ignore[misc]
        except UndefinedError:
            return True
        except (TooLargeError, UnsupportedError):
            continue
    return False


def inner_link(statement: Statement, known: Known, *, from_first: bool = False) -> Outcome | None:
    """The first link inside a chain that is false, as an outcome; None when none is.

    Args:
        statement: a line; only chains have inner links.
        known: time and givens.
        from_first: is the first link to be true for all values too?
    """
    if not isinstance(statement, Chain):
        return None
    operators = statement.operators[1:] if statement.continues else statement.operators
    members = statement.members
    for at, operator in enumerate(operators):
        if operator not in ("=", "\\equiv", "\\approx") or (at == 0 and not from_first and not statement.continues):
            continue
        outcome = judge_values(members[at], members[at + 1], known, operator)
        if outcome.kind == "slip" and _runs_on(members, at, known):
            return undecided(
                "The equals signs run on: the last value is worked out from the one before, but the first is another "
                "number. Write it as two lines.", is_soft=True,
            )
        if outcome.kind != "follows":
            return outcome
    return None


def false_number(statement: Statement, known: Known) -> Outcome | None:
    """A link of a chain between two numbers that are not equal, whatever the lines before."""
    if not isinstance(statement, Chain) or (has_angle(statement) and not known.degrees):
        return None
    operators = statement.operators[1:] if statement.continues else statement.operators
    for at, operator in enumerate(operators):
        first, second = statement.members[at], statement.members[at + 1]
        if operator != "=" or unknowns_of(first, known) or unknowns_of(second, known):
            continue
        outcome = judge_values(first, second, known, operator)
        if outcome.kind == "slip":
            return None if _runs_on(statement.members, at, known) else outcome
    return None


def _runs_on(members: Sequence[Node], at: int, known: Known) -> bool:
    """7 \\times 3 = 21 + 4 = 25: the next member begins with the value of this one and goes on."""
    following = members[at + 1]
    first = (
        following.terms[0].body if isinstance(following, Sum) and following.terms[0].sign == "+"
        else following.factors[0] if isinstance(following, Product) else None
    )
    return first is not None and isinstance(equal(members[at], first, budget=known.budget, euler=known.euler), Yes)


def judge_step(before: Statement, after: Statement, known: Known) -> Outcome:
    """Judge a line against one earlier line.

    Args:
        before: the earlier line's statement.
        after: the line's own statement.
        known: time, task and givens.
    Returns:
        The verdict on this step alone, with its reason and witness.
    """
    try:
        first, second = worked_out_in(before, known.knowledge), worked_out_in(after, known.knowledge)
        if known.degrees is False or not (has_angle(first) or has_angle(second)):
            return _judge(first, second, known)
        in_degrees = replace(known, degrees=True, givens=tuple(with_degrees(given) for given in known.givens))
        if known.degrees:
            return _judge(with_degrees(first), with_degrees(second), in_degrees)
        outcome = _judge(first, second, known)
        if outcome.kind == "follows":
            return outcome
        again = _judge(with_degrees(first), with_degrees(second), in_degrees)
        if again.kind == "follows":
            return replace(again, reason=f"The angles are read as degrees. {again.reason}".strip())
        return again if outcome.kind == "slip" and again.kind != "slip" else outcome
    except OutOfTimeError:
        return undecided("The time for this step ran out.")


def _judge(before: Statement, after: Statement, known: Known) -> Outcome:
    match after:
        case Definition():
            return Outcome("follows", "A name for later lines.")
        case Expression(body=body, continues=continues, operator=operator):
            value = value_of_line(before)
            if value is None:
                return undecided("It is not clear which value this line carries on.")
            if continues and operator not in ("=", "\\approx", "\\equiv"):
                return undecided("A line that starts with an inequality sign is not judged from one line.")
            if not continues and not isinstance(before, Expression):
                outcome = judge_values(value, body, known, "=")
                return outcome if outcome.kind == "follows" else undecided("An expression after an equation.")
            return judge_values(value, body, known, operator)
        case Chain(continues=True, members=members):
            value = value_of_line(before)
            if value is None:
                return undecided("It is not clear which value this line carries on.")
            outcome = judge_values(value, members[0], known, after.operators[0])
            return outcome if outcome.kind != "follows" else inner_link(after, known) or outcome
        case _:
            if isinstance(before, Expression):
                return _set_equal(before, after, known)
            return _conditions(before, after, known)


# values


# conditions


def _set_equal(before: Expression, after: Statement, known: Known) -> Outcome:
    """An equation after an expression: a name for it, the same identity carried on, or where solving begins."""
    if not isinstance(after, Relation | Chain):
        return undecided("It is not clear how this line comes from the expression before it.")
    members = (after.left, after.right) if isinstance(after, Relation) else after.members
    operators = (after.operator,) if isinstance(after, Relation) else after.operators
    if any(operator not in ("=", "\\equiv", "\\approx") for operator in operators):
        return undecided("It is not clear where the inequality comes from.")
    starts_same = isinstance(equal(before.body, members[0], budget=known.budget, euler=known.euler), Yes)
    if not starts_same:
        if isinstance(equal(before.body, members[1], budget=known.budget, euler=known.euler), Yes):
            return inner_link(after, known) or Outcome("follows", "The expression is given a name.")
        return undecided("It is not clear where the equation comes from.", is_soft=True)
    outcome = judge_values(members[0], members[1], known, operators[0])
    if outcome.kind == "follows":
        return inner_link(after, known) or Outcome("follows", outcome.reason)
    right = members[1]
    if isinstance(right, Number) or not letters(right):
        if known.task == "solve":
            return Outcome("follows", "The expression is set equal to a value.")
        return undecided("The expression is set equal to a value that is not stated.", is_soft=True)
    return outcome


def _conditions(before: Statement, after: Statement, known: Known) -> Outcome:
    names_a, names_b = unknowns_of(before, known), unknowns_of(after, known)
    if isinstance(after, Chain) and set(after.operators) <= {"=", "\\approx"} and len(after.members) > 2:
        if not names_b:
            return inner_link(after, known, from_first=True) or Outcome("follows", "The numbers agree.")
        return _chain(before, after, known)
    if isinstance(after, System) and len(names_b) == 1 and len(after.parts) > 1:
        together = compare_relations(before, after, known)
        if together.kind != "follows":
            apart = compare_relations(before, Alternatives(after.span, after.parts), known)
            if apart.kind == "follows" or (together.kind == "slip" and apart.kind == "loses"):
                return Outcome(apart.kind, f"Read as alternatives, joined by or. {apart.reason}".strip(), apart.witness)
    if has_plus_minus(after) and any(sign in ("<", ">", "\\le", "\\ge") for _, sign, _ in links(after)):
        return undecided("An inequality with ± has no agreed meaning; write each part out.")
    if not names_a and names_b and isinstance(before, Relation) and not _holds(before, known):
        return compare_relations(before, after, known)
    if not names_b and len(names_a) > 1 and isinstance(after, Relation) and _holds(after, known):
        return Outcome("follows", "It is true for all values.")
    if not names_b and names_a:
        check = _is_check(before, after, known)
        if check is not None:
            return check
    if len(names_b - names_a) == 1 and len(names_a) == 1 and is_periodic(before, min(names_a)):
        general = compare_relations(before, after, known)
        if general.kind != "undecided":
            return general
    if names_b - names_a:
        outcome = _with_values(before, after, known)
        return outcome or _identity(after, known) or undecided(
            "A letter is new on this line; it is not known what it stands for.", is_soft=True
        )
    if names_b < names_a and names_b and not _only_cancelled(before, names_b, known):
        outcome = _with_values(before, after, known)
        if outcome is not None and outcome.kind == "follows":
            return outcome
        subject, value = solved_for(before), solved_for(after)
        if subject is not None and value is not None and subject[0] != value[0] and not letters(value[1]):
            return undecided(PUT_IN, is_soft=True)
        if outcome is not None:
            return outcome
        direct = compare_relations(before, after, known)
        if direct.kind in ("follows", "loses", "adds"):
            return direct
        return undecided(PUT_IN, is_soft=True)
    outcome = compare_relations(before, after, known)
    if outcome.kind in ("slip", "adds"):
        with_values = _with_values(before, after, known) if len(names_a | names_b) > 1 else None
        if with_values is not None and with_values.kind == "follows":
            return with_values
        if outcome.kind == "slip":
            return _identity(after, known) or outcome
    return outcome


def _only_cancelled(before: Statement, names: frozenset[str], known: Known) -> bool:
    """Are the letters of the relation that are not among these gone once like terms are collected?"""
    if not isinstance(before, Relation):
        return False
    return letters_needed(before.left, known, before.right) - CONSTANTS <= names


def _holds(statement: Statement, known: Known) -> bool:
    try:
        return is_true(statement, Evaluator({}, euler=known.euler, complex_numbers=known.complex_numbers))
    except (UnsureError, UnsupportedError, TooLargeError):
        return True


def _identity(after: Statement, known: Known) -> Outcome | None:
    """A line that holds for all values may stand anywhere."""
    if not isinstance(after, Relation) or after.operator not in ("=", "\\equiv"):
        return None
    if not letters(after) - CONSTANTS:
        return None
    if isinstance(equal(after.left, after.right, budget=known.budget, euler=known.euler), Yes):
        return Outcome("follows", "It is true for all values.")
    return None


def _chain(before: Statement, after: Chain, known: Known) -> Outcome:
    """a = b = c after a condition: the first link as a condition, the others as identities or conditions too."""
    first = Relation(after.span, after.members[0], after.operators[0], after.members[1], after.operator_spans[0])
    outcome = _conditions(before, first, known)
    if outcome.kind == "slip":
        ends = Relation(after.span, after.members[0], "=", after.members[-1], after.operator_spans[0])
        if _conditions(before, ends, known).kind == "follows":
            return undecided("The equals signs run on; write it as two lines.", is_soft=True)
        return outcome
    inner = inner_link(after, known)
    if inner is None or outcome.kind != "follows":
        return outcome
    whole = compare_relations(before, after, known)
    return whole if whole.kind in ("follows", "loses") else inner


def _with_values(before: Statement, after: Statement, known: Known) -> Outcome | None:
    """The step again with known values put in; None when nothing is known of the letters in question."""
    values: Mapping[str, Node] = known_values(known.givens)
    solved = solved_for(after)
    if solved is not None:  # what the line says of the letter is not put in
        values = {name: value for name, value in values.items() if name != solved[0]}
    if not values.keys() & (letters(before) | letters(after)):
        return None
    first, second = substituted_in(before, values), substituted_in(after, values)
    if letters(second) - letters(first) - CONSTANTS:
        return None
    outcome = compare_relations(first, second, known)
    if outcome.kind != "follows" and letters(second) < letters(first):
        return None
    if outcome.kind == "follows":
        return Outcome("follows", outcome.reason or VALUE_PUT_IN)
    return outcome if outcome.kind in ("slip", "loses", "adds") else None


def _is_check(before: Statement, after: Statement, known: Known) -> Outcome | None:
    """A line of numbers that puts a value into the line before."""
    if not isinstance(after, Relation) or not isinstance(before, Relation):
        return None
    values = known_values(known.givens)
    if letters(before) - CONSTANTS <= values.keys():
        first = substituted_in(before, values)
        if isinstance(first, Relation) and all(
            isinstance(equal(a, b, budget=known.budget, euler=known.euler), Yes)
            for a, b in ((first.left, after.left), (first.right, after.right))
        ):
            try:
                holds = is_true(after, Evaluator({}, euler=known.euler))
            except (UnsureError, UnsupportedError, TooLargeError):
                return None
            return Outcome("follows", "The check holds." if holds else "The check fails: the value is no solution.")
    return None
