"""The final answer: is it right, has it the form that was asked, and what was expected?"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from checker.accuracy import Accuracy, is_decimal, judged_decimal, rounded_latex
from checker.answer_text import solutions_text, subject_text, system_answer, written_out
from checker.budget import OutOfTimeError
from checker.equality import equal
from checker.forms import checked_form, is_final_number
from checker.identities import claimed
from checker.numeric import Evaluator, UnsureError, Value
from checker.outcome import Known
from checker.polynomial import TooLargeError
from checker.real_roots import RealNumber
from checker.relations import compare_relations, free_letters, solved_letter, unfolded_branches
from checker.report import Final
from checker.ring import UndefinedError, UnsupportedError
from checker.solutions import is_true, links, solution_set
from checker.steps import value_of_line
from checker.substitution import known_values, solved_for
from checker.syntax import (
    Alternatives,
    Chain,
    Expression,
    Node,
    Note,
    Relation,
    Statement,
    Symbol,
    System,
    letters,
    to_latex,
)
from checker.syntax.sets import UNNAMED
from checker.verdict import No, Yes

__all__ = ["final_answer", "told_of_answer"]

_UNSOLVED = "It is still to be solved."
_FORMS = ("expand", "factorise", "simplify")
_STUCK = (UnsupportedError, UndefinedError, TooLargeError, UnsureError, OutOfTimeError)


def final_answer(
    starts: Sequence[Statement], lines: Sequence[Statement], known: Known, *, asked: Accuracy | None = None
) -> Final:
    """Judge the last line against the first, or against the question as set.

    Args:
        starts: the question, or the lines taken as given.
        lines: statements of the readable lines, the first among them.
        known: time, task and givens.
        asked: the accuracy that the question or the answer states.
    """
    told = [_as_equal(line) for line in lines if not isinstance(line, Note)]
    if not told:
        return Final()
    first = starts[0]
    try:
        if isinstance(first, Expression):
            return _of_value(first.body, told[-1], known, asked)
        if known.task in _FORMS and (left := _first_member(first)) is not None:
            return _of_value(left, told[-1], known, asked)
        if known.task == "identity":
            return _of_identity(first, known)
        if len(starts) > 1 or isinstance(first, System):
            return _of_system(starts, told, known)
        return _of_condition(first, told, known, asked)
    except _STUCK:
        return Final()


def _first_member(statement: Statement) -> Node | None:
    """2x + 6 where "2x + 6 = 2(x + 3)" is a value and what it comes to, on one line."""
    match statement:
        case Relation(left=left, operator="=" | "\\equiv"):
            return left
        case Chain(members=members, operators=operators, continues=False) if set(operators) <= {"=", "\\equiv"}:
            return members[0]
        case _:
            return None


def _as_equal(line: Statement) -> Statement:
    """A rounded value is an answer like any other."""
    match line:
        case Relation(operator="\\approx"):
            return replace(line, operator="=")
        case Alternatives(branches=branches):
            return replace(line, branches=tuple(map(_as_equal, branches)))
        case _:
            return line


# values


def _of_value(start: Node, last: Statement, known: Known, asked: Accuracy | None) -> Final:
    answer = value_of_line(last)
    expected = written_out(start, known) or ""
    value = None if letters(start) - {"pi", "e", "i"} else _value(start, known)
    if asked is not None and asked.kind != "exact" and value is not None:
        expected = rounded_latex(value, asked) or expected
    if answer is None:
        return Final(expected=expected)
    if value is not None and is_decimal(answer):
        correct, form = judged_decimal(value, answer, asked)
        if correct is not None:
            return Final(correct, form, expected, _of_rounding(form, asked))
    verdict = equal(start, answer, budget=known.budget, euler=known.euler)
    correct = True if isinstance(verdict, Yes) else False if isinstance(verdict, No) else None
    if asked is not None and asked.kind != "exact" and value is not None and known.task not in _FORMS:
        digits = judged_decimal(value, answer, asked)
        return Final(digits[0] or correct, bool(digits[1]), expected, "" if digits[1] else _of_rounding(False, asked))
    if known.task not in _FORMS:
        return Final(correct, None, expected or _as_written(answer, correct))
    checked = checked_form(answer, known.task, euler=known.euler)
    expected = expected or _as_written(answer, checked.is_met and correct)
    return Final(correct, checked.is_met, expected, checked.lacks)


def _as_written(answer: Node | Statement, is_right: bool | None) -> str:
    """A right answer, where no other way to write it is known."""
    return to_latex(answer) if is_right else ""


def _value(node: Node, known: Known) -> Value | None:
    try:
        return Evaluator({}, euler=known.euler).value(node)
    except _STUCK:
        return None


def _of_rounding(form: bool | None, asked: Accuracy | None) -> str:
    if form is None:
        return "The value is rounded."
    if form:
        return ""
    return f"It is to be given {'exactly' if asked is None or asked.kind == 'exact' else 'to ' + asked.words}."


# conditions


def _of_identity(first: Statement, known: Known) -> Final:
    claim = claimed(first, known)
    if claim is None or claim.is_true is None:
        return Final()
    if claim.is_true:
        return Final(True, None, "true for all values", claim.reason)
    return Final(False, None, "not an identity", claim.reason)


def _of_condition(first: Statement, told: Sequence[Statement], known: Known, asked: Accuracy | None) -> Final:
    names = free_letters(first, known)
    if not names or isinstance(told[-1], Expression):
        return Final()
    answer = _gathered_answer(told)
    name = next(iter(names)) if len(names) == 1 else solved_letter(answer)
    expected = ""
    if name is not None:
        is_alone = names == {name}
        expected = solutions_text(first, name, known, asked) if is_alone else subject_text(first, name, known)
        if is_alone and asked is not None:
            decimals = _of_decimals(first, name, answer, known, asked)
            if decimals is not None:
                return replace(decimals, expected=expected)
    outcome = compare_relations(first, answer, known)
    correct = True if outcome.kind == "follows" else None if outcome.kind == "undecided" else False
    is_formula = outcome.kind == "loses" and len(names) > 1  # its letters may be known to be positive
    if outcome.kind != "follows" and (free_letters(answer, known) != names or is_formula):
        correct = None
    why = outcome.reason if outcome.kind in ("follows", "loses", "adds") else ""
    if known.task != "solve" and not expected:
        return Final(correct, None, expected, why)
    if not _solved_form(answer, name):
        return Final(correct, False, expected, _UNSOLVED if correct else why)
    if asked is not None and (asked.kind != "exact" or any(map(is_decimal, _values_given(answer)))):
        form = _is_to_accuracy(answer, asked)
        return Final(correct, form, expected, _of_rounding(form, asked) if correct else why)
    return Final(correct, True, expected or _as_written(answer, correct), why)


def _values_given(answer: Statement) -> list[Node]:
    return [solved[1] for branch in unfolded_branches(answer) if (solved := solved_for(branch)) is not None]


def _is_to_accuracy(answer: Statement, asked: Accuracy) -> bool:
    """Values that need no rounding may stand as they are; roots and the like may not."""
    if asked.kind == "exact":
        return False
    found = _values_given(answer)
    return bool(found) and all(
        (value := _value_alone(node)) is not None and judged_decimal(value, node, asked)[1] for node in found
    )


def _value_alone(node: Node) -> Value | None:
    try:
        return Evaluator({}).value(node)
    except _STUCK:
        return None


def _of_decimals(
    first: Statement, name: str, answer: Statement, known: Known, asked: Accuracy
) -> Final | None:
    """Decimals for every solution, each to the accuracy asked; None when the answer has other values too."""
    nodes = _values_given(answer)
    if not nodes or solved_letter(answer) != name:
        return None
    try:
        roots, stretches = solution_set(first, name, known.budget, euler=known.euler)
    except (UnsupportedError, TooLargeError, UnsureError):
        return None
    whole = asked.kind in ("unit", "sf")
    if stretches or not roots or not all(is_decimal(node) or (whole and _is_whole(node)) for node in nodes):
        return None
    judged: list[_Judged] = []
    for node in nodes:
        value = _value_alone(node)
        if not isinstance(value, type(roots[0].middle)):
            return None
        nearest = min(roots, key=lambda root: abs(root.middle - value))
        judged.append(_Judged(nearest, *judged_decimal(nearest.value, node, asked)))
    if any(one.is_right is None for one in judged):
        return None
    if not all(one.is_right for one in judged):
        return Final(False, all(one.has_digits for one in judged), "", "A value is not rounded rightly.")
    if len({id(one.root) for one in judged}) < len(roots):
        return Final(False, all(one.has_digits for one in judged), "", "Not all solutions are given.")
    form = all(one.has_digits for one in judged)
    return Final(True, form, "", _of_rounding(form, asked))


@dataclass(frozen=True, slots=True)
class _Judged:
    root: RealNumber
    is_right: bool | None
    has_digits: bool | None


def _is_whole(node: Node) -> bool:
    return not letters(node) and to_latex(node).lstrip("-").isdigit()


def _of_system(starts: Sequence[Statement], told: Sequence[Statement], known: Known) -> Final:
    """Numbers for every letter, put into each equation given."""
    names = frozenset().union(*(free_letters(start, known) for start in starts))
    if not names:
        return Final()
    points, expected = system_answer(starts, known)
    given = _values_of_letters(told)
    missing = [point for point in points or () if not _is_told(point, given, known)]
    if points and len(points) > 1 and not missing:
        return Final(True, True, expected)
    wrong = _wrong_pair(told[-1], names, starts, known)
    if wrong is not None:
        return Final(False, True, expected, f"{wrong} does not satisfy every equation.")
    values = {name: node for name, node in known_values(told).items() if not letters(node) - {"pi", "e"}}
    if not names <= values.keys():
        return Final(expected=expected)
    place = {name: Evaluator({}, euler=known.euler).value(values[name]) for name in names}
    evaluator = Evaluator(place, euler=known.euler)
    correct = all(is_true(start, evaluator) for start in starts)
    form = all(is_final_number(values[name]) for name in names)
    if correct and missing and len(missing) < len(points or ()):
        lost = ", ".join(f"{name} = {to_latex(value)}" for name, value in sorted(missing[0].items()))
        return Final(False, form, expected, f"The solution {lost} is missing.")
    return Final(correct, form, expected)


def _wrong_pair(
    answer: Statement, names: frozenset[str], starts: Sequence[Statement], known: Known
) -> str | None:
    """Of several points given at once, one that is no solution, in words."""
    if not isinstance(answer, Alternatives):
        return None
    for branch in answer.branches:
        values = {name: node for name, node in known_values([branch]).items() if not letters(node) - {"pi", "e"}}
        if values.keys() < names:
            return None
        point = {name: Evaluator({}, euler=known.euler).value(values[name]) for name in names}
        evaluator = Evaluator(point, euler=known.euler)
        if not all(is_true(start, evaluator) for start in starts):
            return ", ".join(f"{name} = {to_latex(values[name])}" for name in sorted(names))
    return None


def _values_of_letters(told: Sequence[Statement]) -> list[tuple[str, Node]]:
    """Every value without letters that a line gives to a letter."""
    found: list[tuple[str, Node]] = []
    for line in told:
        for branch in unfolded_branches(line):
            for part in branch.parts if isinstance(branch, System) else (branch,):
                solved = solved_for(part)
                if solved is not None and not letters(solved[1]) - {"pi", "e"}:
                    found.append(solved)
    return found


def _is_told(point: Mapping[str, Node], given: Sequence[tuple[str, Node]], known: Known) -> bool:
    return all(
        any(name == other and isinstance(equal(value, node, budget=known.budget, euler=known.euler), Yes)
            for other, node in given)
        for name, value in point.items()
    )


def _gathered_answer(told: Sequence[Statement]) -> Statement:
    """The last line; with the lines just before it when each gives one value of the same letter."""
    last = told[-1]
    name = solved_letter(last)
    if name is None:
        return last
    branches = list(unfolded_branches(last))
    for line in reversed(told[1:-1]):
        if solved_letter(line) != name or letters(line) != {name} or not _are_numbers(line):
            break
        seen = {to_latex(branch) for branch in branches}
        branches += [branch for branch in unfolded_branches(line) if to_latex(branch) not in seen]
    return last if len(branches) == 1 else Alternatives(last.span, tuple(branches))


def _are_numbers(line: Statement) -> bool:
    return all(is_final_number(node) for node in _values_given(line))


def _solved_form(answer: Statement, name: str | None) -> bool:
    """The letter alone on one side, or between two bounds, and numbers worked out on the others."""
    for branch in unfolded_branches(answer):
        if isinstance(branch, System) and not branch.parts:
            continue  # "every value"
        solved = solved_for(branch)
        if solved is not None:
            if (name is not None and solved[0] not in (name, UNNAMED)) or not is_final_number(solved[1]):
                return False
            continue
        found = links(branch)
        if not found or any(sign == "=" for _, sign, _ in found):
            return False
        for left, sign, right in found:
            if sign != "\\in" and isinstance(left, Symbol) == isinstance(right, Symbol):
                return False
            if not all(isinstance(side, Symbol) or sign == "\\in" or is_final_number(side) for side in (left, right)):
                return False
    return True


def told_of_answer(final: Final, verdict: str, first_slip: int | None) -> str:
    """What a marker would say of the final answer, in a sentence or two.

    Args:
        final: the judgement.
        verdict: of the line that holds the answer.
        first_slip: number of the first line that does not follow, from 0.
    """
    slip = "" if first_slip is None else f"line {first_slip + 1}"
    if final.correct is None:
        return ""
    if final.correct and final.reason == _UNSOLVED:
        return _UNSOLVED
    if not final.correct:
        is_carried = slip and verdict == "ft"
        told = f"The answer follows from the slip on {slip} (ft)." if is_carried else "The answer is wrong."
    elif not slip:
        told = "The answer is right."
    elif verdict in ("back", "slip", "ft"):
        told = f"The answer is right, but it comes from wrong working: see {slip}."
    else:
        told = f"The answer is right; the slip on {slip} was put right."
    if final.form_ok is False and (final.correct or verdict == "ft"):
        told += " It has not the form asked."
    return f"{told} {final.reason}".strip()
