"""Lines joined to statements: a long line that is carried on below says one thing with its rest. No Qt."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from checker.report import LineReport, Report, Slip
from desktop.desk_line import DeskLine
from desktop.workings import carries_on, renumbered, split_number

__all__ = ["NOT_READ", "Statement", "line_reports", "statement_of", "statements_of", "whole_latex"]

NOT_READ = "This line could not be read. Type what it says."

_LAST_SIGN = re.compile(r"([+\-=]|\\(?:cdot|times)\b)\s*$")


@dataclass(frozen=True, slots=True)
class Statement:
    """One thing that is said, on one line or carried on over several.

    label: the question number at its front, with its blanks. text: the rest, from all its lines.
    places: its lines, as places in their working.
    starts: for each line, where its part begins in `text`, and how much of the line's own text lies before that.
    blank: those of its places where nothing was read.
    """

    places: tuple[int, ...]
    label: str
    text: str
    starts: tuple[tuple[int, int], ...]
    blank: tuple[int, ...] = ()

    @property
    def is_read(self) -> bool:
        return not self.blank

    def holder(self, slip: Slip) -> tuple[int, Slip]:
        """Which of its lines holds the term of a slip, and the slip with its span counted in that line."""
        start, end = slip.span
        part = max(k for k, (at, _) in enumerate(self.starts) if at <= start or k == 0)
        at, before = self.starts[part]
        last = self.starts[part + 1][0] - 1 if part + 1 < len(self.starts) else len(self.text)
        moved = before - at
        return part, replace(slip, span=(start + moved, max(start, min(end, last)) + moved))


def statements_of(
    lines: Sequence[DeskLine], group: Sequence[int], readings: Mapping[int, str] | None = None
) -> tuple[Statement, ...]:
    """The statements of a working, in order.

    Args:
        lines: all lines of the page. group: indices of the working's lines.
        readings: what each of them is taken to say; what it says on the page when left out.
    """
    runs: list[list[int]] = []
    for place, index in enumerate(group):
        if place and carries_on(lines[group[place - 1]], lines[index]):
            runs[-1].append(place)
        else:
            runs.append([place])
    said = {index: lines[index].latex for index in group} if readings is None else readings
    return tuple(_statement(run, [said[group[place]] for place in run]) for run in runs)


def statement_of(lines: Sequence[DeskLine], group: Sequence[int], place: int) -> Statement:
    """The statement that a line of a working belongs to."""
    return next(one for one in statements_of(lines, group) if place in one.places)


def whole_latex(lines: Sequence[DeskLine], group: Sequence[int], place: int) -> str:
    """All that the statement says which a line of a working belongs to."""
    statement = statement_of(lines, group, place)
    return statement.label + statement.text


def line_reports(statements: Sequence[Statement], report: Report, count: int) -> Report:
    """A report on the statements that were read, told line by line.

    A statement's verdict stands at the line that holds the wrong term, or at its first line; its other lines are
    notes. The lines of one that was not read whole are not read, and the others are judged without it.

    Args:
        report: on the statements that were read, in order. count: how many lines the working has.
    """
    read = [statement for statement in statements if statement.is_read]
    heads: list[int] = []
    rows = [LineReport("unreadable")] * count
    for statement in statements:
        for place in statement.blank:
            rows[place] = LineReport("unreadable", reason=NOT_READ)
    for statement, row in zip(read, report.lines, strict=True):
        part, slip = (0, None) if row.slip is None else statement.holder(row.slip)
        for place in statement.places:
            rows[place] = LineReport("note")
        heads.append(statement.places[part])
        rows[heads[-1]] = replace(row, slip=slip)
    for head in heads:
        source = rows[head].source
        rows[head] = replace(rows[head], source=None if source is None else heads[source])
    first = None if report.first_slip is None else heads[report.first_slip]
    return replace(report, first_slip=first, lines=tuple(rows), answer=renumbered(report.answer, heads))


def _statement(places: Sequence[int], readings: Sequence[str]) -> Statement:
    label, text = split_number(readings[0])
    starts = [(0, len(label))]
    for latex in readings[1:]:
        sign = _LAST_SIGN.search(text)
        rest = latex.lstrip()
        if sign is not None and rest.startswith(sign[1]):  # a sign at a line's break is often written on both lines,
            rest = rest[len(sign[1]) :]  # and two signs never stand side by side (common practice, no source)
        text = f"{text} "
        starts.append((len(text), len(latex) - len(rest)))
        text += rest
    blank = tuple(place for place, latex in zip(places, readings, strict=True) if not latex.strip())
    return Statement(tuple(places), label, text, tuple(starts), blank)
