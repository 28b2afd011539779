"""A judged working as a marker reads it: its lines, which of them carry a slip, and what the answer is."""

from __future__ import annotations

from dataclasses import dataclass

from checker.budget import Budget
from checker.equality import equal, uses_euler
from checker.errors import ParseError
from checker.marking.comparison import is_same_question
from checker.marking.shape import written_alike
from checker.numeric import Evaluator, UnsureError
from checker.outcome import Known
from checker.polynomial import TooLargeError
from checker.relations import solved_letter, unfolded_branches
from checker.report import Report, Working
from checker.ring import UndefinedError, UnsupportedError
from checker.solutions import is_true
from checker.substitution import solved_for
from checker.syntax import Alternatives, Expression, Note, Statement, letters, nodes_of, parse
from checker.verdict import No

__all__ = ["Candidate", "Written", "candidate"]


@dataclass(frozen=True, slots=True)
class Written:
    """A line that can be marked.

    Args:
        index: its number, from 0.
        statement: what it says.
        gathered: with the values on the lines just before it, when each gives one of the same letter.
        verdict: as reported.
        source: the line that it was judged from.
        is_own: does it rest on a slip of the candidate's own?
        is_open: does it rest on a line that could not be judged?
        is_opening: is it what the working starts from?
    """

    index: int
    statement: Statement
    gathered: Statement | None
    verdict: str
    source: int | None
    is_own: bool
    is_open: bool
    is_opening: bool


@dataclass(frozen=True, slots=True)
class Candidate:
    """What there is to mark.

    Args:
        written: the lines that hold mathematics, in order.
        report: the checker's verdicts.
        known: time and givens.
        is_misread: does the working start from another question than the one set?
        unread: numbers of the lines that could not be read.
    """

    written: tuple[Written, ...]
    report: Report
    known: Known
    is_misread: bool
    unread: tuple[int, ...]

    def at(self, index: int | None) -> Written | None:
        """The line with a number."""
        return next((one for one in self.written if one.index == index), None)

    def is_part(self, target: Statement) -> bool:
        """Is a value of the scheme another than the working's, so that it can be some terms of a line only?"""
        if not isinstance(target, Expression) or self.is_misread or not self.written:
            return False
        first = self.written[0].statement
        if not isinstance(first, Expression):
            return False
        budget = self.known.budget.part(0.2)
        return isinstance(equal(first.body, target.body, budget=budget, euler=self.known.euler), No)

    def breaks_given(self, statement: Statement) -> bool:
        """Does a value lie outside what is given of its letter, such as a length below 0?"""
        for branch in unfolded_branches(statement):
            solved = solved_for(branch)
            if solved is None or letters(solved[1]) - {"pi"}:
                continue
            try:
                value = Evaluator({}, euler=self.known.euler).value(solved[1])
                evaluator = Evaluator({solved[0]: value}, euler=self.known.euler)
                for given in self.known.givens:
                    if letters(given) == {solved[0]} and not is_true(given, evaluator):
                        return True
            except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
                continue
        return False


def candidate(working: Working, report: Report, budget: Budget) -> Candidate:
    """Gather what there is to mark."""
    statements = [_parsed(text) for text in working.lines]
    givens = tuple(given for given in map(_parsed, working.givens) if given is not None)
    question = None if working.question is None else _parsed(working.question)
    told = [one for one in (*statements, *givens, question) if one is not None]
    nodes = [node for statement in told for node in nodes_of(statement)]
    known = Known(
        budget=budget, task=working.task, givens=givens, euler=uses_euler(*nodes),
        complex_numbers=any("i" in letters(node) for node in nodes),
    )
    own: dict[int, bool] = {}
    open_: dict[int, bool] = {}
    is_misread = False
    written: list[Written] = []
    for index, (statement, line) in enumerate(zip(statements, report.lines, strict=True)):
        own[index] = line.verdict in ("slip", "ft") or (
            line.verdict in ("loses", "adds", "undecided") and line.source is not None and own.get(line.source, False)
        )
        open_[index] = line.verdict == "undecided" or (
            line.verdict != "slip" and line.source is not None and open_.get(line.source, False)
        )
        if statement is None or isinstance(statement, Note) or line.verdict in ("note", "unreadable"):
            continue
        is_opening = line.verdict == "start" and not any(one.verdict != "start" for one in written)
        if is_opening and question is not None and not isinstance(question, Note) and not written:
            is_misread = is_same_question(question, statement, known) is False
            is_opening = is_misread or written_alike(question, statement)
        gathered = _gathered(statement, written)
        written.append(
            Written(index, statement, gathered, line.verdict, line.source, own[index], open_[index], is_opening)
        )
    unread = tuple(index for index, line in enumerate(report.lines) if line.verdict == "unreadable")
    return Candidate(tuple(written), report, known, is_misread, unread)


def _parsed(text: str) -> Statement | None:
    try:
        return parse(text)
    except (ParseError, RecursionError):
        return None


def _gathered(statement: Statement, before: list[Written]) -> Statement | None:
    name = solved_letter(statement)
    if name is None or not before or letters(statement) - {"pi"} != {name}:
        return None
    last = before[-1].gathered or before[-1].statement
    if before[-1].is_opening or solved_letter(last) != name or letters(last) - {"pi"} != {name}:
        return None
    return Alternatives(statement.span, (*unfolded_branches(last), *unfolded_branches(statement)))
