"""A class's pages at a glance: how far each is, what was found, the slips counted by kind, the marks. No Qt.

A page is known by its candidate's number alone; a file's name, which may hold a pupil's name, is never given out.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from desktop.desk_line import State
from desktop.document import Document, WorkingVerdict
from desktop.mark_text import marks_text
from desktop.maths import plain
from desktop.overruled import counted_slip
from desktop.slip_words import slip_words

__all__ = ["DoubtfulLine", "PageRow", "Progress", "SlipRow", "candidate_of", "class_csv", "doubtful_lines", "page_rows",
           "progress", "slip_rows"]  # fmt: skip

_NUMBER = re.compile(r"(?<!\d)\d{3,8}(?!\d)")
_HEAD = ("candidate", "page", "lines", "confirmed", "doubtful", "working", "first_slip_line", "check_reading",
         "slip", "written", "should_be", "marks", "marks_given", "marks_out_of")  # fmt: skip
_FORMULA = ("=", "+", "-", "@", "\t", "\r")


@dataclass(frozen=True, slots=True)
class PageRow:
    """One page: index on the desk, whose it is, and how far it is.

    page: counts from 1 within its candidate. slips: kind of the first slip of each working that has one, "" where it
    should be read first. given, out_of: marks.
    """

    index: int
    candidate: str
    page: int
    lines: int
    confirmed: int
    doubtful: int
    checked: bool
    slip_lines: tuple[int, ...]
    slips: tuple[str, ...]
    given: int
    out_of: int


@dataclass(frozen=True, slots=True)
class SlipRow:
    """One kind of slip: how often it is the first slip of a working, and by which candidates."""

    kind: str
    words: str
    count: int
    candidates: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class DoubtfulLine:
    """A line that needs the user: index of its page on the desk, index of the line on the page."""

    page_index: int
    line_index: int
    candidate: str
    probability: float


@dataclass(frozen=True, slots=True)
class Progress:
    """Sums over the set."""

    pages: int
    lines: int
    confirmed: int
    doubtful: int
    slips: int
    given: int
    out_of: int


def candidate_of(document: Document) -> str:
    """The candidate's number: the user's own entry, else the digits of the file's name; "" when there are none."""
    if document.candidate:
        return document.candidate
    found = _NUMBER.findall(Path(document.file).stem)
    return found[-1] if found else ""


def page_rows(documents: Sequence[Document]) -> tuple[PageRow, ...]:
    """A row for each page; those with the most doubtful lines first, then as they lie on the desk."""
    seen: dict[str, int] = {}
    rows = []
    for index, document in enumerate(documents):
        candidate = candidate_of(document)
        seen[candidate] = seen.get(candidate, 0) + 1
        rows.append(_page_row(index, document, candidate, seen[candidate]))
    return tuple(sorted(rows, key=lambda row: (-row.doubtful, row.index)))


def slip_rows(documents: Sequence[Document]) -> tuple[SlipRow, ...]:
    """First slips counted by kind, the most frequent first; one that is rather to be read again is not counted."""
    by_kind: dict[str, list[str]] = {}
    for document in documents:
        for verdict in document.verdicts:
            if counted_slip(document, verdict) is not None and (kind := _kind(document, verdict)):
                by_kind.setdefault(kind, []).append(candidate_of(document))
    rows = (
        SlipRow(kind, slip_words(kind), len(whose), tuple(sorted({name for name in whose if name})))
        for kind, whose in by_kind.items()
    )
    return tuple(sorted(rows, key=lambda row: (-row.count, row.words)))


def doubtful_lines(documents: Sequence[Document]) -> tuple[DoubtfulLine, ...]:
    """All lines that need the user, the least sure first."""
    lines = (
        DoubtfulLine(index, at, candidate_of(document), line.probability)
        for index, document in enumerate(documents)
        for at, line in enumerate(document.lines)
        if line.state in (State.DOUBTFUL, State.UNREAD) and not line.struck_out
    )
    return tuple(sorted(lines, key=lambda line: (line.probability, line.page_index, line.line_index)))


def progress(documents: Sequence[Document]) -> Progress:
    """How far the whole set is."""
    rows = page_rows(documents)
    return Progress(
        pages=len(rows), lines=sum(r.lines for r in rows), confirmed=sum(r.confirmed for r in rows),
        doubtful=sum(r.doubtful for r in rows), slips=sum(len(r.slip_lines) for r in rows),
        given=sum(r.given for r in rows), out_of=sum(r.out_of for r in rows),
    )  # fmt: skip


def class_csv(documents: Sequence[Document]) -> str:
    """The set as CSV (RFC 4180), one record a working: commas, CR LF, quotes doubled, a header.

    A cell that a spreadsheet would take for a formula, such as =2k, gets an apostrophe before it.
    """
    rows = {row.index: row for row in page_rows(documents)}
    records = [",".join(_HEAD)]
    for index, document in enumerate(documents):
        row = rows[index]
        head = (row.candidate, row.page, row.lines, row.confirmed, row.doubtful)
        workings = [_working_cells(document, number, verdict) for number, verdict in enumerate(document.verdicts, 1)]
        for cells in workings or [("",) * (len(_HEAD) - len(head))]:
            records.append(",".join(_cell(value) for value in (*head, *cells)))
    return "".join(f"{record}\r\n" for record in records)


def _page_row(index: int, document: Document, candidate: str, page: int) -> PageRow:
    kept = [line for line in document.lines if not line.struck_out]
    found = [(v, at) for v in document.verdicts if (at := counted_slip(document, v)) is not None]
    marks = [mark for line in document.lines for mark in line.marks]
    return PageRow(
        index=index, candidate=candidate, page=page, lines=len(kept),
        confirmed=sum(line.state is State.CONFIRMED for line in kept),
        doubtful=sum(line.state in (State.DOUBTFUL, State.UNREAD) for line in kept),
        checked=bool(document.verdicts), slip_lines=tuple(at + 1 for _, at in found),
        slips=tuple(_kind(document, v) for v, _ in found),
        given=sum(mark.given for mark in marks), out_of=sum(mark.worth for mark in marks),
    )  # fmt: skip


def _kind(document: Document, verdict: WorkingVerdict) -> str:
    """Kind of a working's first slip; "" when the reading is to be checked first."""
    at = counted_slip(document, verdict)
    if at is None:
        return ""
    if document.lines[at].override is not None:
        return "declared"
    if verdict.check_reading_first:
        return ""
    slip = verdict.report.lines[verdict.lines.index(at)].slip
    return "other" if slip is None else slip.kind


def _working_cells(document: Document, number: int, verdict: WorkingVerdict) -> tuple[object, ...]:
    at = counted_slip(document, verdict)
    slip = None if at is None else verdict.report.lines[verdict.lines.index(at)].slip
    kind = _kind(document, verdict)
    marks = [mark for index in verdict.lines for mark in document.lines[index].marks]
    return (
        number, "" if at is None else at + 1, "yes" if at is not None and not kind else "",
        slip_words(kind) if kind else "", plain(slip.term) if slip and kind else "",
        plain(slip.should_be) if slip and kind else "", marks_text(marks),
        sum(mark.given for mark in marks), sum(mark.worth for mark in marks),
    )  # fmt: skip


def _cell(value: object) -> str:
    text = str(value)
    if isinstance(value, str) and text.startswith(_FORMULA):
        text = f"'{text}"
    return '"' + text.replace('"', '""') + '"' if any(sign in text for sign in ',"\r\n') else text
