"""Marks beside a line as a teacher writes them: M1, A0, B1, A1/2. No Qt."""

from __future__ import annotations

import re
from collections.abc import Sequence

from checker.marking.result import PARTS, Marks
from desktop.desk_line import LineMark
from desktop.document import Document
from desktop.language import tr_later
from desktop.page_changes import AwardMarks

__all__ = ["MARKS_HELP", "awards_to_lines", "marks_text", "read_marks"]

MARKS_HELP = tr_later(
    "Write marks as M1, A1 or B1, with 0 for a mark that is not given (A0), and A1/2 for one of two."
)
_MARK = re.compile(r"([MABmab])([0-9])(?:/([1-9]))?")


def read_marks(text: str) -> tuple[LineMark, ...] | None:
    """The marks in a text, with blanks or commas between them; None when something else stands there."""
    marks: list[LineMark] = []
    for part in re.split(r"[\s,]+", text.strip()):
        if not part:
            continue
        found = _MARK.fullmatch(part)
        if found is None:
            return None
        given = int(found[2])
        worth = int(found[3]) if found[3] else max(1, given)
        if given > worth:
            return None
        marks.append(LineMark(found[1].upper(), worth, given))
    return tuple(marks)


def marks_text(marks: Sequence[LineMark]) -> str:
    """The marks as a teacher writes them."""
    return " ".join(_text(mark) for mark in marks)


def awards_to_lines(document: Document, index: int, marks: Marks) -> list[AwardMarks]:
    """The changes that write suggested marks beside the lines of a working; marks left open are not written.

    Args:
        index: of any line of the working.
        marks: suggested for it; a mark that belongs to no line goes to the last one. Of the scheme, its special cases
            and its marks for an answer without working, only those that give most are written.
    """
    found = document.verdict_of(index)
    if found is None:
        return []
    beside: dict[int, list[LineMark]] = {line: [] for line in found[0].lines}
    best = max(PARTS, key=lambda part: sum(a.worth for a in marks.each if a.part == part and a.awarded is True))
    for award in marks.each:
        if award.awarded != "teacher" and award.part == best:
            line = found[0].lines[-1] if award.line is None else award.line
            letter = next((sign for sign in award.code.removeprefix("SC ") if sign in "MA"), "B")
            beside[line].append(LineMark(letter, award.worth, award.worth if award.awarded else 0))
    return [
        AwardMarks(line, tuple(of_line))
        for line, of_line in beside.items()
        if tuple(of_line) != document.lines[line].marks
    ]


def _text(mark: LineMark) -> str:
    partly = 0 < mark.given < mark.worth or (mark.given == 0 and mark.worth > 1)
    return f"{mark.kind}{mark.given}/{mark.worth}" if partly else f"{mark.kind}{mark.given}"
