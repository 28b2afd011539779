"""From the lines of a page to the verdict on each working. No Qt: it runs in any thread or process."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from checker.marking.result import Marks
from checker.marking.scheme import Mark
from checker.report import Report, Working
from desktop.desk_line import DeskLine, State
from desktop.document import WorkingVerdict
from desktop.statements import Statement, line_reports, statements_of
from desktop.workings import group_lines
from recognition.result import Candidate, Tick, no_tick

__all__ = ["CLOSE", "Judge", "judge_lines", "marks_of"]

CLOSE = 0.1
"""Another reading is close when it is at least this many times as probable as the reading that was judged."""

ALTERNATIVES = 4
"""Other readings of a line that are tried, best first."""

Judge = Callable[[Working], Report]


def judge_lines(
    lines: Sequence[DeskLine], *, judge: Judge | None = None, tick: Tick = no_tick
) -> tuple[WorkingVerdict, ...]:
    """Judge each working of a page.

    Args:
        lines: the lines in reading order.
        judge: what judges one working; the checker's when left out.
        tick: told of (done, total) workings; raises to stop.
    """
    if judge is None:
        from checker.working import judge as checker_judge

        judge = checker_judge
    groups = group_lines(lines)
    verdicts = []
    for done, group in enumerate(groups):
        tick(done, len(groups))
        verdicts.append(_judge_group(lines, group, judge))
    tick(len(groups), len(groups))
    return tuple(verdicts)


def marks_of(
    lines: Sequence[DeskLine], verdicts: Sequence[WorkingVerdict], schemes: Sequence[tuple[Mark, ...]]
) -> tuple[Marks | None, ...]:
    """Suggest marks for each working; None where there is no scheme for it.

    Args:
        lines: all lines of the page.
        verdicts: what was found of its workings.
        schemes: one for each working in order; a single one serves every working.
    Returns:
        The marks of each working; the line of an award is an index on the page.
    """
    suggested: list[Marks | None] = []
    for number, verdict in enumerate(verdicts):
        scheme = schemes[0] if len(schemes) == 1 else schemes[number] if number < len(schemes) else ()
        suggested.append(_marks(lines, verdict, scheme) if scheme else None)
    return tuple(suggested)


def _marks(lines: Sequence[DeskLine], verdict: WorkingVerdict, scheme: tuple[Mark, ...]) -> Marks:
    from checker.marking.suggestion import suggested_marks

    said = [statement for statement in statements_of(lines, verdict.lines) if statement.is_read]
    heads = [_head(verdict.report, statement) for statement in said]
    moved = {place: new for new, place in enumerate(heads)}
    rows = tuple(
        replace(row, source=None if row.source is None else moved.get(row.source))
        for row in (verdict.report.lines[place] for place in heads)
    )
    first = verdict.report.first_slip
    report = replace(verdict.report, lines=rows, first_slip=None if first is None else moved[first])
    marks = suggested_marks(Working(tuple(statement.text for statement in said), scheme=scheme), report)
    return Marks(tuple(
        replace(award, line=None if award.line is None else verdict.lines[heads[award.line]]) for award in marks.each
    ))


def _head(report: Report, statement: Statement) -> int:
    """The place that holds a statement's verdict."""
    return next((place for place in statement.places if report.lines[place].verdict != "note"), statement.places[0])


def _judge_group(lines: Sequence[DeskLine], group: tuple[int, ...], judge: Judge) -> WorkingVerdict:
    statements = statements_of(lines, group)
    raw = _report(statements, judge)
    hint, other = _reading_hint(lines, group, statements, raw, judge)
    return WorkingVerdict(group, line_reports(statements, raw, len(group)), reading_hint=hint, other_reading=other)


def _report(statements: Sequence[Statement], judge: Judge) -> Report:
    """Judge the statements that were read; the indices of the report count these alone."""
    texts = tuple(statement.text for statement in statements if statement.is_read)
    return judge(Working(lines=texts)) if texts else Report(id="", first_slip=None, lines=())


def _reading_hint(
    lines: Sequence[DeskLine], group: tuple[int, ...], statements: Sequence[Statement], report: Report, judge: Judge
) -> tuple[str, tuple[int, str] | None]:
    """Why the first flagged line may be a reading that went wrong and not a slip, and the reading that would follow.

    The hint is empty when nothing says so. The reading that was judged stays: only the user changes it.
    """
    if report.first_slip is None:
        return "", None
    read = [statement for statement in statements if statement.is_read]
    slip = report.lines[report.first_slip].slip
    source = report.lines[report.first_slip].source
    part = 0 if slip is None else read[report.first_slip].holder(slip)[0]
    flagged = group[read[report.first_slip].places[part]]
    suspects = [flagged, *(group[place] for place in read[report.first_slip].places if group[place] != flagged)]
    if source is not None:
        suspects += [group[place] for place in read[source].places]
    for index in suspects:
        if lines[index].state is State.CONFIRMED:
            continue
        which = "it" if index == flagged else f"line {index + 1}"
        for other in _close_candidates(lines[index]):
            readings = {member: lines[member].latex for member in group} | {index: other.latex}
            tried = _report(statements_of(lines, group, readings), judge)
            later = tried.first_slip is None or tried.first_slip > report.first_slip
            if later and tried.lines[report.first_slip].verdict in ("follows", "back"):
                hint = f"Check the reading first: with another reading of {which} the line follows."
                return hint, (index, other.latex)
    for index in suspects:
        if lines[index].state in (State.DOUBTFUL, State.UNREAD):
            return f"Check the reading first: line {index + 1} was hard to read.", None
    return "", None


def _close_candidates(line: DeskLine) -> Iterator[Candidate]:
    chosen = line.probability
    others = [c for c in line.candidates if c.latex != line.latex and c.latex.strip()]
    for other in others[:ALTERNATIVES]:
        if other.probability >= CLOSE * chosen:
            yield other
