"""How much of a slip is shown: all to a teacher, to a student as many grades of hints as were asked for. No Qt."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from checker.report import Slip
from desktop.document import Document, WorkingVerdict
from desktop.language import tr
from desktop.wording import Row, line_reason, sentence, slip_rows

__all__ = ["EVERYTHING", "GRADES", "Reveal", "shown_reason", "shown_rows"]

GRADES = 3
"""Grades of hints: where it is, of what kind it is, what it should be."""


@dataclass(frozen=True, slots=True)
class Reveal:
    """grades: for each slip, the grade of the last hint that the student asked for."""

    is_student: bool = False
    grades: Mapping[Slip, int] = field(default_factory=dict)

    def grade(self, slip: Slip | None) -> int:
        """0 tells only that the line does not follow, 3 tells all."""
        if not self.is_student:
            return GRADES
        return 0 if slip is None else self.grades.get(slip, 0)

    def hints(self, slip: Slip) -> tuple[str, ...]:
        """The hints that the student has asked for, as sentences."""
        from checker.slips.hints import hint  # here, since it brings the whole checker, which the window starts without

        return tuple(sentence(hint(slip, number)) for number in range(1, self.grade(slip) + 1))

    def further(self, slip: Slip) -> Reveal:
        """The same with one grade more for a slip."""
        return replace(self, grades={**self.grades, slip: min(GRADES, self.grade(slip) + 1)})


EVERYTHING = Reveal()


def shown_reason(document: Document, index: int, reveal: Reveal) -> str:
    """Why a line has its verdict, as far as it is to be told."""
    found = document.verdict_of(index)
    if found is None or not reveal.is_student or document.lines[index].override is not None:
        return line_reason(document, index)
    verdict, place = found
    row = verdict.report.lines[place]
    if row.verdict != "slip" or verdict.check_reading_first:
        return line_reason(document, index)
    return "" if row.slip is None else " ".join(reveal.hints(row.slip))


def shown_rows(document: Document, verdict: WorkingVerdict, reveal: Reveal) -> tuple[Row, ...]:
    """What is told of the first slip of a working, row by row: the line, and the hints that were asked for."""
    rows = slip_rows(document, verdict)
    if not reveal.is_student or verdict.check_reading_first or not rows:
        return rows
    slip = verdict.slip
    if slip is not None and reveal.grade(slip) == GRADES:
        return rows
    assert verdict.report.first_slip is not None
    has_source = verdict.report.lines[verdict.report.first_slip].source is not None
    hints = () if slip is None else reveal.hints(slip)
    told = (Row(tr("Hint {number}", number=number), text=text) for number, text in enumerate(hints, start=1))
    return (*rows[: 2 if has_source else 1], *told)
