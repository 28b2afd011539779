"""The whole working: first slip, carried error, back on track, and the final answer."""

from __future__ import annotations

import logging
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from checker.accuracy import Accuracy, stated_accuracy
from checker.angles import in_degrees
from checker.bounds import is_limit
from checker.budget import Budget, OutOfTimeError
from checker.claims import claimed_value, judged_alone
from checker.equality import equal, uses_euler
from checker.errors import ParseError
from checker.final import final_answer, told_of_answer
from checker.identities import claimed
from checker.knowledge import learned
from checker.outcome import Known, Outcome, point_text, witness_json
from checker.relations import compare_relations, solved_letter
from checker.report import Final, LineReport, Report, Slip, Working
from checker.smallest import difference_slip, value_slip
from checker.solutions import links
from checker.steps import divides_by_zero, inner_link, judge_step
from checker.syntax import (
    Alternatives,
    Chain,
    Definition,
    Expression,
    Line,
    Note,
    Relation,
    Statement,
    Symbol,
    System,
    function_readings,
    letters,
    nodes_of,
    parse,
    parse_line,
    tight,
    to_latex,
)
from checker.unnamed import named_lines
from checker.verdict import No, Yes
from checker.walk import Entry, Walk, parts_of_line

__all__ = ["judge"]

log = logging.getLogger(__name__)

_VECTOR = re.compile(r"\\(?:mathbf|vec|overrightarrow|underline|boldsymbol)\b")
_QUESTION = -1  # the index that the question as set bears in the walk
_SECONDS_TO_EXPLAIN = 0.5
_INEQUALITIES = frozenset({"<", ">", "\\le", "\\ge"})
_LONGEST_EXPLAINED = 600  # characters of a line for which slips are searched
_SHARE_OF_WALK = 0.85  # of the time allowed; the rest is for the final answer


def judge(working: Working, *, budget_s: float = 2.0) -> Report:
    """Judge every line of a working.

    Args:
        working: the lines, and what is known of the question.
        budget_s: time for all of it, in seconds; lines beyond it are undecided.
    Returns:
        One report a line, the first slip, and the final answer.
    """
    return _Judge(working, Budget(budget_s * _SHARE_OF_WALK)).report()


class _Judge:
    def __init__(self, working: Working, budget: Budget) -> None:
        self.working = working
        self.budget = budget
        self.lines: list[Line | None] = []
        self.errors: dict[int, ParseError] = {}
        self.notes: list[str] = []
        self._read(frozenset())
        known = function_readings((*(line.statement for line in self.lines if line is not None), *self._told()))
        if known:
            self._read(known)
        self.question = self._question()
        self.lines[:] = named_lines(self.lines, self.question)
        self.known = self._known()
        vectors = any(_VECTOR.search(text) for text in working.lines)
        self.walk = Walk(self.lines, self.known, has_vectors=vectors)
        self.reports: dict[int, LineReport] = {}

    def _read(self, readings: frozenset[str]) -> None:
        self.readings = readings
        self.lines.clear()
        self.errors.clear()
        for index, text in enumerate(self.working.lines):
            try:
                self.lines.append(parse_line(text, readings))
            except ParseError as error:
                self.errors[index] = error
                self.lines.append(None)

    def _told(self) -> Iterator[Statement]:
        """The question and the givens, those of them that can be read."""
        for text in (self.working.question or "", *self.working.givens):
            try:
                yield parse(text)
            except ParseError:
                continue

    # what is known before the walk

    def _question(self) -> Statement | None:
        if self.working.question is None:
            return None
        try:
            statement = parse_line(self.working.question, self.readings).statement
        except ParseError as error:
            self.notes.append(f"The question could not be read: {error}")
            return None
        return None if isinstance(statement, Note) else statement

    def _known(self) -> Known:
        givens: list[Statement] = []
        for text in self.working.givens:
            try:
                givens.append(parse_line(text, self.readings).statement)
            except ParseError:
                self.notes.append(f"The given {text!r} could not be read and is left out.")
        statements = [line.statement for line in self.lines if line is not None]
        givens += self._bounds(statements)
        if self.question is not None:
            statements.append(self.question)
        nodes = [node for statement in (*statements, *givens) for node in nodes_of(statement)]
        solved = [solved_letter(statement) for statement in statements if isinstance(statement, Relation)]
        return Known(
            budget=self.budget, task=self.working.task, givens=tuple(givens), euler=uses_euler(*nodes),
            complex_numbers=any("i" in letters(node) for node in nodes),
            degrees=in_degrees((*statements, *givens, *self._conditions())),
            unknown=solved[-1] if solved and self.working.task == "solve" else None,
        )

    def _bounds(self, statements: Sequence[Statement]) -> Iterator[Statement]:
        """Bounds of a letter that stand beside the question or the first line: sin x = 0.5, 0 <= x < 360."""
        first = next((line for line in self.lines if line is not None and not isinstance(line.statement, Note)), None)
        told = [self.question, *statements[:1], *(first.conditions if first is not None else ())]
        for statement in told:
            whole = statement.parts if isinstance(statement, System) else (statement,)
            for part in whole:
                if part is None or not is_limit(part) or len(letters(part) - {"pi"}) != 1:
                    continue
                if part is statement and statement not in (first.conditions if first is not None else ()):
                    continue
                if _bounds_a_letter(part):
                    yield part

    def _conditions(self) -> Iterator[Statement]:
        for line in self.lines:
            if line is not None:
                yield from line.conditions

    # the walk

    def report(self) -> Report:
        if self.question is not None:
            self.walk.start(self.question, _QUESTION)
        for index in range(len(self.lines)):
            self.reports[index] = self._line(index)
        for index, last in self.walk.completed.items():
            if self.reports[index].verdict == "loses":
                told = f"One branch; the solutions are all there with line {last + 1}."
                self.reports[index] = LineReport("follows", self.reports[index].source, told)
        self._explain_gains()
        self._solve_mode()
        reports = tuple(self.reports[index] for index in range(len(self.lines)))
        final = self._final()
        answers = [report.verdict for report in reports if report.verdict not in ("note", "unreadable")]
        told = told_of_answer(final, answers[-1], self._first_slip()) if answers else ""
        return Report(self.working.id, self._first_slip(), reports, final, told)

    def _line(self, index: int) -> LineReport:
        line = self.lines[index]
        if line is None:
            return LineReport("unreadable", reason=str(self.errors[index]))
        if isinstance(line.statement, Note):
            return LineReport("note")
        try:
            only_names = all(isinstance(entry.statement, Definition) for entry in self.walk.entries)
            if only_names or self._is_copy_of_question(line):
                return self._start(index, line)
            step = self.walk.take(index)
        except (OutOfTimeError, RecursionError):
            self.walk.start(line.statement, index)
            return LineReport("undecided", reason="The time for this working ran out.")
        except Exception:
            log.exception("line %d of a working could not be judged", index)
            self.walk.start(line.statement, index)
            return LineReport("undecided", reason="This line could not be judged; the others are. See the log.")
        outcome = step.outcome
        source = step.source if step.source != _QUESTION else None
        reason = self._across_unread(index, source, outcome.reason)
        slip = None
        if step.verdict == "slip":
            slip = self._slip(line, step.part, step.before, outcome)
        elif step.verdict == "loses":
            slip = self._explained(line, step.part, step.before)
        return LineReport(step.verdict, source, reason, outcome.witness, slip)

    def _is_copy_of_question(self, line: Line) -> bool:
        """With the question set, a first line that does not go on from it is a copy of it."""
        if self.question is None or len(self.walk.entries) > 1 or self.walk.entries[0].index != _QUESTION:
            return False
        statement = line.statement
        return not (isinstance(statement, Expression | Chain) and statement.continues)

    def _start(self, index: int, line: Line) -> LineReport:
        statement = line.statement
        reason, witness = " ".join(self.notes), None
        misread = self._misread(statement)
        if misread is not None and misread.kind == "follows":
            # a first step from the question, or a copy of it: the walk can go on from either
            self.walk.start(statement, index)
            return LineReport("start", reason=reason)
        if misread is not None and misread.kind in ("slip", "loses", "adds"):
            reason = f"{reason} Not the question as set, perhaps a misread. {misread.reason}".strip()
            witness = misread.witness
            self.walk.entries.clear()
        step = self.walk.open_with(index)
        if step is not None and step.outcome.kind != "follows":
            slip = self._slip(line, step.part, step.before, step.outcome) if step.verdict == "slip" else None
            return LineReport(step.verdict, None, step.outcome.reason, step.outcome.witness, slip)
        if divides_by_zero(statement, self.known):
            return LineReport("start", reason="A division by zero stands on this line; it has no value.")
        try:
            inner = judged_alone(statement, self.known) or inner_link(
                statement, self.known, from_first=not letters(statement)
            )
        except OutOfTimeError:
            inner = None
        if inner is not None and inner.kind == "slip":
            self.walk.first_slip = index
            self.walk.entries = [replace(entry, family="slip") for entry in self.walk.entries]
            return LineReport("slip", None, inner.reason, inner.witness, self._slip(line, statement, (), inner))
        if inner is not None and inner.kind == "undecided":
            reason = f"{reason} {inner.reason}".strip()
        if self.working.task == "identity" and witness is None:
            claim = self._claim(statement)
            if claim is not None:
                reason, witness = f"{reason} {claim.reason}".strip(), claim.witness
        return LineReport("start", None, reason, witness)

    def _misread(self, statement: Statement) -> Outcome | None:
        if self.question is None:
            return None
        if isinstance(self.question, Expression) and isinstance(statement, Expression):
            verdict = equal(self.question.body, statement.body, budget=self.budget, euler=self.known.euler)
            match verdict:
                case Yes():
                    return Outcome("follows")
                case No(counterexample=point):
                    where = f"At {point_text(witness_json(point))} they differ." if point else "They differ."
                    return Outcome("slip", where, witness_json(point))
                case _:
                    return None
        if isinstance(self.question, Expression) or isinstance(statement, Expression):
            return judge_step(self.question, statement, self.known)
        return compare_relations(self.question, statement, self.known)

    def _claim(self, statement: Statement) -> Outcome | None:
        found = claimed(statement, self.known)
        if found is None or found.is_true is None:
            return None
        if found.is_true:
            return Outcome("follows", found.reason)
        return Outcome("slip", found.reason, witness_json(found.counterexample or {}))

    def _across_unread(self, index: int, source: int | None, reason: str) -> str:
        between = [number for number in self.errors if source is not None and source < number < index]
        if not between:
            return reason
        assert source is not None
        return f"{reason} Judged from line {source + 1}, as line {between[-1] + 1} could not be read.".strip()

    # explaining

    def _slip(self, line: Line, part: Statement, before: Sequence[Entry], outcome: Outcome) -> Slip:
        claimed = self._claimed(line, part, outcome)
        if claimed is not None and not any(character.isalpha() for character in claimed.should_be):
            return claimed
        found = self._explained(line, part, before)
        if found is not None and (found.kind != "other" or claimed is None):
            return found
        if claimed is not None:
            return claimed
        given = [entry for entry in before if not isinstance(entry.statement, Definition)]
        written = line if line.statement is part else replace(line, statement=part)
        return difference_slip(given[-1].statement if given else None, written, outcome, self.known)

    def _claimed(self, line: Line, part: Statement, outcome: Outcome) -> Slip | None:
        """A wrong value of a function, a derivative or a term of a sequence, with the right one."""
        entries = [
            (entry.index, entry.statement) for entry in self.walk.entries
            if entry.index < 0 or self.lines[entry.index] is not line
        ]
        told = (*((-1, given) for given in self.known.givens), *entries)
        known = replace(self.known, budget=self.budget.part(_SECONDS_TO_EXPLAIN), knowledge=learned(told))
        try:
            claim = claimed_value(part, known)
            return None if claim is None else value_slip(*claim, line, known, outcome.reason)
        except OutOfTimeError:
            return None

    def _explained(self, line: Line, part: Statement, before: Sequence[Entry]) -> Slip | None:
        from checker.slips import diagnose

        given = [entry for entry in before if not isinstance(entry.statement, Definition)]
        nearest = given[-1].statement if given else None
        told = tuple(self._as_line(entry.index, entry.statement) for entry in given[-4:])
        written = line if line.statement is part else replace(line, statement=part)
        budget = self.budget.part(_SECONDS_TO_EXPLAIN)
        known = replace(self.known, budget=budget)

        def follows(candidate: Line) -> bool:
            if budget.left <= 0:
                return False
            last = nearest if isinstance(part, Chain) or line.statement is part else self._before_line(line, given)
            parts = parts_of_line(candidate.statement)
            if last is None and line.statement is not part:
                last, parts = parts[0], parts[1:]
            for one in parts:
                if inner_link(one, known) is not None:
                    return False
                if last is not None and judge_step(last, one, known).kind != "follows":
                    return False
                last = one
            return bool(parts)

        if max(len(line.text), *(len(one.text) for one in (*told, line))) > _LONGEST_EXPLAINED:
            return None
        try:
            return diagnose(told, written, follows=follows, budget_s=budget.left)
        except (OutOfTimeError, RecursionError):
            log.debug("no time left to explain a line of %d characters", len(line.text))
            return None

    def _before_line(self, line: Line, given: Sequence[Entry]) -> Statement | None:
        """The nearest statement that stood before the line began."""
        parts = parts_of_line(line.statement)
        earlier = [entry.statement for entry in given if not any(entry.statement is part for part in parts)]
        return earlier[-1] if earlier else None

    def _as_line(self, index: int, statement: Statement) -> Line:
        line = self.lines[index] if index >= 0 else None
        if line is not None:
            return line if line.statement is statement else replace(line, statement=statement)
        return Line(self.working.question or to_latex(statement), statement)

    # after the walk

    def _explain_gains(self) -> None:
        """x < 7 after x^2 < 49 gains solutions and is no honest step on the way: told as the slip that it is."""
        for index, report in self.reports.items():
            line, step = self.lines[index], self.walk.steps.get(index)
            if report.verdict != "adds" or report.slip is not None or line is None or step is None:
                continue
            if isinstance(step.part, Relation) and step.part.operator in _INEQUALITIES:
                found = self._explained(line, step.part, step.before)
                if found is not None and found.kind != "other":
                    self.reports[index] = replace(report, slip=found)

    def _solve_mode(self) -> None:
        """A line that lost solutions counts as the first slip when the task is to solve and nothing repaired it."""
        self.unrepaired: int | None = None
        if self.working.task != "solve":
            return
        soft = [index for index, one in self.reports.items() if one.verdict in ("loses", "adds")]
        final = self._final() if soft else Final()
        if not soft or final.correct is not False:
            return
        index = self.unrepaired = soft[0]
        line, step = self.lines[index], self.walk.steps.get(index)
        if line is not None and step is not None:
            slip = self._slip(line, step.part, step.before, step.outcome)
            if slip.kind == "other":
                kind = "solution-lost" if step.verdict == "loses" else "solution-added"
                slip = self._rejecting(slip, line, step.before, step.outcome) if step.verdict == "adds" else slip
                slip = replace(slip, kind=kind, because=step.outcome.reason)
            self.reports[index] = replace(self.reports[index], slip=slip)

    def _rejecting(self, slip: Slip, line: Line, before: Sequence[Entry], outcome: Outcome) -> Slip:
        """The line with the value that it gained struck out: x+7 = x^2-10x+25 and x \ne 2."""
        witness = outcome.witness or {}
        if len(witness) != 1 or not before:
            return slip
        (letter, value), (start, end) = next(iter(witness.items())), line.statement.span
        written = line.text[start:end]
        repaired = rf"{line.text[:end]} \text{{ and }} {letter}\ne {value}{line.text[end:]}"
        try:
            told = parse(repaired)
            if judge_step(before[-1].statement, told, self.known).kind != "follows":
                return slip
        except (ParseError, OutOfTimeError):
            return slip
        return replace(slip, term=tight(written), span=(start, end), should_be=repaired[start:], repaired=repaired)

    def _first_slip(self) -> int | None:
        found = [index for index in (self.walk.first_slip, self.unrepaired) if index is not None]
        return min(found) if found else None

    def _accuracy(self) -> Accuracy | None:
        """What the question, the givens or words on the sheet ask for; else what the answer itself states."""
        words = [line.text for line in self.lines if line is not None and isinstance(line.statement, Note)]
        written = [line.text for line in self.lines if line is not None]
        for text in (self.working.question or "", *self.working.givens, *words, *written[:1], *written[-1:]):
            found = stated_accuracy(text)
            if found is not None:
                return found
        return None

    def _final(self) -> Final:
        lines = [line for line in self.lines if line is not None]
        told: Sequence[Line] = [line for line in lines if not isinstance(line.statement, Note)]
        if not told:
            return Final()
        starts = [entry.statement for entry in self.walk.entries if entry.is_start]
        starts = [statement for statement in starts if not isinstance(statement, Definition)]
        if self.question is not None:
            starts = [self.question]
        if not starts:
            return Final()
        statements = [entry.statement for entry in self.walk.entries if entry.index != _QUESTION]
        known = replace(self.known, budget=Budget(max(0.1, min(0.5, self.budget.left))))
        try:
            final = final_answer(starts, statements, known, asked=self._accuracy())
            for other in self._other_answers(final, statements):
                again = final_answer(starts, other, known, asked=self._accuracy())
                final = again if again.correct else final
        except Exception:
            log.exception("the final answer of a working could not be judged")
            return Final()
        accused = self.walk.first_slip is not None or any(
            report.verdict in ("slip", "loses", "adds") or (report.verdict == "start" and report.witness is not None)
            for report in self.reports.values()
        )
        is_open = self.walk.first_slip is None and any(one.verdict == "undecided" for one in self.reports.values())
        # an answer is not called wrong when no line was, nor when a line could not be judged: a value may be put in
        return final if final.correct is not False or (accused and not is_open) else replace(final, correct=None)

    def _other_answers(self, final: Final, statements: Sequence[Statement]) -> Iterator[list[Statement]]:
        """What else may be meant as the answer: the last line alone, or all values that the branches came to."""
        if final.correct is True or len(statements) < 2:
            return
        name = solved_letter(statements[-1])
        if name is None:
            return
        if final.correct is False:
            yield [statements[0], statements[-1]]
        if self.walk.completed:
            values: dict[str, Statement] = {}
            for statement in statements:
                if solved_letter(statement) == name and letters(statement) == {name}:
                    values.setdefault(to_latex(statement), statement)
            yield [*statements, Alternatives(statements[-1].span, tuple(values.values()))]


def _bounds_a_letter(statement: Statement) -> bool:
    """0 <= x < 360 or x > 0, and no inequality to solve such as 2x + 1 > 5."""
    return all(
        not letters(one) - {"pi"} or isinstance(one, Symbol)
        for left, _, right in links(statement) for one in (left, right)
    )
