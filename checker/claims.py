"""Lines that say what a function, a derivative or a term of a sequence is: f(3) = 9, \\frac{dy}{dx} = 2x."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction

from checker.coefficients import NAMES, discriminant_of
from checker.knowledge import names_function
from checker.outcome import Known, Outcome, undecided, unknowns_of
from checker.putting_in import implicit, inverse_of, is_subject, line_of, worked_out, worked_out_in
from checker.relations import compare_relations
from checker.substitution import substituted
from checker.syntax import (
    Chain,
    Function,
    Node,
    Number,
    Relation,
    Statement,
    Symbol,
    System,
    letters,
    nodes_of,
    to_latex,
    walk,
)
from checker.syntax.shapes import is_literal
from checker.value_steps import compare_values

__all__ = ["claimed_value", "introduces", "judged_alone", "judged_claim", "restricts_nothing", "set_to_nought"]

_EQUAL = frozenset({"=", "\\equiv", "\\approx"})
_ONE = Number((0, 0), Fraction(1), "1")
_CONDITION = "Taken as a condition from here on."

Earlier = Sequence[tuple[int, Statement]]


def judged_claim(statement: Statement, earlier: Earlier, known: Known) -> tuple[Outcome, int | None] | None:
    """Judge a line by what is known of the function, derivative or sequence that it speaks of.

    Args:
        statement: the line.
        earlier: line numbers and statements before it, the nearest last.
        known: time and what was learned from those lines.
    Returns:
        The outcome and the number of the line that it rests on; None when the line says nothing of the kind.
    """
    if isinstance(statement, System):
        return _of_parts(statement, earlier, known)
    members = _members(statement)
    if members is None:
        return _of_discriminant(statement, known)
    inverse = inverse_of(members[0], members[-1], known.knowledge)
    if inverse is not None:
        outcome = compare_values(*inverse, known)
        if outcome.kind == "slip":
            outcome = replace(outcome, reason=f"Put into the function it does not give {to_latex(inverse[1])}.")
        return outcome, line_of(members[0], known.knowledge)
    for at, member, value in _subjects(members, known):
        rest = members[at + 1:] or members[:at]
        return _linked(member, value, rest, known), line_of(member, known.knowledge)
    return (
        _of_quadratic(members, known) or _of_discriminant(statement, known)
        or _integrated(members, earlier, known) or _implied(statement, earlier, known)
    )


def claimed_value(statement: Statement, known: Known) -> tuple[Node, Node] | None:
    """The value of the subject of a claim, and the first member that gives it another one.

    None when the line says nothing of a known function, derivative or sequence.
    """
    members = _members(statement) or ()
    for at, _, value in _subjects(members, known):
        for one in members[at + 1:]:
            if compare_values(value, worked_out(one, known.knowledge), known).kind == "slip":
                return value, one
    return None


def _subjects(members: tuple[Node, ...], known: Known) -> Iterator[tuple[int, Node, Node]]:
    """Each member whose value is known from earlier lines: its place, itself and the value."""
    for at, member in enumerate(members):
        if is_subject(member):
            value = worked_out(member, known.knowledge)
            if value is not member and to_latex(value) != to_latex(member) and not _is_open(value, member):
                yield at, member, value


def _of_parts(statement: System, earlier: Earlier, known: Known) -> tuple[Outcome, int | None] | None:
    """a = 1, b = -4, c = 1: each part a claim of its own."""
    found = [judged_claim(part, earlier, known) for part in statement.parts]
    told = [one for one in found if one is not None]
    if not told or len(told) < len(found):
        return None
    return max(told, key=lambda one: ("follows", "undecided", "slip").index(one[0].kind)
               if one[0].kind in ("follows", "undecided", "slip") else 1)


def _of_quadratic(members: tuple[Node, ...], known: Known) -> tuple[Outcome, int | None] | None:
    """b = -4, or b^2 - 4ac = 16 - 4, of the quadratic on an earlier line."""
    values = known.knowledge.quadratic
    if not values:
        return None
    for at, member in enumerate(members[:-1]):
        subject = discriminant_of() if isinstance(member, Symbol) and member.name == "Delta" else member
        if not letters(subject) or not letters(subject) <= set(NAMES):
            continue
        if isinstance(subject, Symbol) and letters(members[-1]):
            continue
        outcome = _linked(member, substituted(subject, values), members[at + 1:], known)
        return outcome, known.knowledge.quadratic_line
    return None


def _of_discriminant(statement: Statement, known: Known) -> tuple[Outcome, int | None] | None:
    """16 - 4k > 0 after a quadratic with a k: its discriminant."""
    values = known.knowledge.quadratic
    if not values or not isinstance(statement, Relation) or not _is_nought(statement.right):
        return None
    value = substituted(discriminant_of(), values)
    free = unknowns_of(value, known)
    if not free or letters(statement.left) != free:
        return None
    if compare_values(value, statement.left, known).kind != "follows":
        return None
    return Outcome("follows", "The discriminant."), known.knowledge.quadratic_line


def judged_alone(statement: Statement, known: Known) -> Outcome | None:
    """A first line that says what a derivative, an integral or a sum of something written out is."""
    members = _members(statement)
    if members is None or not isinstance(members[0], Function):
        return None
    match members[0]:
        case Function(name="deriv", arguments=(Symbol(), *_)):
            return None
        case Function(name="deriv" | "int" | "sum" | "prod" | "lim" | "between"):
            outcome = _linked(members[0], worked_out(members[0], known.knowledge), members[1:], known)
            return outcome if outcome.kind == "slip" else None
        case _:
            return None


def introduces(statement: Statement, known: Known) -> bool:
    """Does the line give a new function or sequence its rule, f(x) = ..., u_n = ...?"""
    members = _members(statement)
    if members is None:
        return False
    match members[0]:
        case Function(name=name, arguments=(Symbol(),)) if names_function(members[0]):
            return name not in known.knowledge.functions
        case Symbol(name=name) if "_" in name:
            stem, _, place = name.partition("_")
            told = stem in known.knowledge.terms or stem in known.knowledge.next_terms
            if place.isdigit():
                return told and not letters(members[-1])
            inside = letters(members[-1])
            return not told and place[:1].isalpha() and (
                place[:1] in inside or f"{stem}_{place[:1]}" in inside or f"{stem}_{place[:1]}-1" in inside
            )
        case _:
            return False


def restricts_nothing(statement: Statement, known: Known) -> bool:
    """f(x) = x^2, or dy/dx = 2x where y is known: it holds for every x."""
    members = _members(statement)
    if members is None or not is_subject(members[0]) or not letters(members[-1]):
        return False
    if not names_function(members[0]):
        value = worked_out(members[0], known.knowledge)
        return value is not members[0] and not _is_open(value, members[0])
    return isinstance(members[0], Function) and isinstance(members[0].arguments[0], Symbol) and bool(
        letters(members[0].arguments[0]) & letters(members[-1])
    )


def _members(statement: Statement) -> tuple[Node, ...] | None:
    match statement:
        case Relation(left=left, operator=operator, right=right) if operator in _EQUAL:
            return left, right
        case Chain(members=members, operators=operators, continues=False):
            # what stands after an inequality sign, as in ... = -6 < 0, is no value
            size = next((at for at, sign in enumerate(operators) if sign not in _EQUAL), len(operators))
            return members[:size + 1] if size else None
        case _:
            return None


def _is_open(value: Node, member: Node) -> bool:
    """Is it still not known what the subject is?"""
    name = value.name if isinstance(value, Symbol) else ""
    return "/" in name or any(
        names_function(node) and isinstance(member, Function) and isinstance(node, Function)
        and node.name == member.name for node in walk(value)
    )


def _linked(subject: Node, value: Node, rest: Sequence[Node], known: Known) -> Outcome:
    """The value against each member that follows it."""
    before = value
    for at, one in enumerate(rest):
        following = worked_out(one, known.knowledge)
        free = unknowns_of(before, known) - known.knowledge.values
        outcome = compare_values(before, following, known)
        if outcome.kind == "follows":
            before = following
            continue
        if is_literal(one) and free and at == len(rest) - 1:
            if at:
                return Outcome("follows", f"Then it is set equal to {to_latex(one)}.")
            return Outcome("follows", _CONDITION, is_soft=True)
        new = unknowns_of(following, known) - free
        if outcome.kind == "slip" and new and not (len(new) == 1 and _is_indefinite(subject)):
            return undecided("A letter is new on this line; it is not known what it stands for.", is_soft=True)
        if outcome.kind == "slip" and at == 0:
            name = to_latex(subject)
            reason = outcome.reason.replace("The line before", name).replace("the line before", name)
            return replace(outcome, reason=reason)
        return outcome
    return Outcome("follows")


def _is_indefinite(node: Node) -> bool:
    return isinstance(node, Function) and node.name == "int" and len(node.arguments) == 2


def _integrated(members: tuple[Node, ...], earlier: Earlier, known: Known) -> tuple[Outcome, int | None] | None:
    """y = F(x) + c after \\frac{dy}{dx} = ...: the derivative of what is written is compared."""
    subject, written = members[0], members[1]
    for index, statement in reversed(earlier):
        told = _members(statement)
        if told is None:
            continue
        rate = next((one for one in told if _is_rate_of(one, subject)), None)
        given = told[-1]
        if rate is None or given is rate:
            continue
        by = rate.arguments[1 if rate.name == "deriv" else 0] if isinstance(rate, Function) else Symbol((0, 0), "x")
        if not isinstance(by, Symbol) or by.name not in letters(written) | letters(given):
            continue
        rate_of_written = Function(subject.span, "deriv", (written, by, _ONE))
        derived = worked_out(rate_of_written, known.knowledge)
        outcome = compare_values(worked_out(given, known.knowledge), derived, known)
        new = unknowns_of(written, known) - unknowns_of(given, known) - {by.name}
        match outcome.kind:
            case "follows":
                missing = "" if new else "A constant of integration may be missing."
                return Outcome("follows", missing), index
            case "slip" if new:
                told_why = f"The derivative of this line is not the line before. {outcome.reason}"
                return replace(outcome, reason=told_why), index
            case _:
                return None
    return None


def _is_rate_of(rate: Node, subject: Node) -> bool:
    match rate, subject:
        case Function(name="deriv", arguments=(Symbol(name=name), _, Number(value=order))), Symbol(name=other):
            return name == other and order == 1
        case Function(name=name), Function(name=other) if names_function(rate) and names_function(subject):
            return name == other + "'"
        case Symbol(name=name), Symbol(name=other):
            return name == other + "'"
        case _:
            return False


def _implied(statement: Statement, earlier: Earlier, known: Known) -> tuple[Outcome, int | None] | None:
    """A line with dy/dx after an equation in x and y: both sides differentiated."""
    rates = {
        (node.arguments[0].name, node.arguments[1].name)
        for top in nodes_of(statement) for node in walk(top)
        if isinstance(node, Function) and node.name == "deriv"
        and isinstance(node.arguments[0], Symbol) and isinstance(node.arguments[1], Symbol)
    }
    if len(rates) != 1:
        return None
    ((dependent, by),) = rates
    after = worked_out_in(statement, known.knowledge)
    for index, entry in reversed(earlier):
        if not isinstance(entry, Relation) or entry.operator != "=" or not {dependent, by} <= letters(entry):
            continue
        if any(isinstance(node, Function) and node.name == "deriv" for top in nodes_of(entry) for node in walk(top)):
            return None  # the steps from here on are ordinary algebra
        before = implicit(entry, by, dependent)
        if before is None:
            return None
        outcome = compare_relations(before, after, known)
        if outcome.kind == "undecided":
            return None
        if outcome.kind == "slip":
            told = f"Both sides of line {index + 1} differentiated give another equation. {outcome.reason}"
            return replace(outcome, reason=told), index
        return outcome, index
    return None


def set_to_nought(before: Statement, after: Statement, known: Known) -> Outcome | None:
    """\\frac{dy}{dx} = 3x^2 - 3, or y = ..., and then 3x^2 - 3 = 0: the value is set equal to nought."""
    told = _members(before)
    if told is None or not isinstance(after, Relation) or after.operator != "=":
        return None
    if not isinstance(told[0], Symbol) and not any(is_subject(one) for one in told):
        return None
    if letters(after) != letters(told[-1]):
        return None
    if not any(_is_nought(side) for side in (after.left, after.right)):
        return _set_to_value(told, after, known)
    if any(is_subject(node) for top in nodes_of(after) for node in walk(top)):
        return None
    nought = Number((0, 0), Fraction(0), "0")
    left = worked_out(told[-1], known.knowledge)
    outcome = compare_relations(Relation(after.span, left, "=", nought, after.span), after, known)
    if outcome.kind in ("follows", "loses"):
        return replace(outcome, reason=f"{to_latex(told[0])} is set equal to 0. {outcome.reason}".strip())
    return None


def _set_to_value(told: tuple[Node, ...], after: Relation, known: Known) -> Outcome | None:
    """x(x+5) = 84 after A = x(x+5): the value is taken as given."""
    for side, other in ((after.left, after.right), (after.right, after.left)):
        if not letters(other) and compare_values(worked_out(told[-1], known.knowledge), side, known).kind == "follows":
            reason = f"{to_latex(told[0])} is set equal to {to_latex(other)}, which is taken as given."
            return Outcome("follows", reason, is_soft=True)
    return None


def _is_nought(node: Node) -> bool:
    return isinstance(node, Number) and node.value == 0
