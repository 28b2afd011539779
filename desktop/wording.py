"""The sentences that the desk says about a working: one place, so that window, picture and page say the same. No Qt."""

from __future__ import annotations

from dataclasses import dataclass

from checker.report import Slip
from desktop.desk_line import State
from desktop.document import Document, WorkingVerdict
from desktop.language import tr, tr_later
from desktop.maths import plain
from desktop.overruled import counted_slip
from desktop.sentences import in_language, latex_in_language, with_capital
from desktop.statements import statement_of, whole_latex

__all__ = [
    "TEACHER_DECIDES", "Row", "heading", "headline", "is_missing", "line_reason", "sentence", "slip_rows",
    "working_name",
]

TEACHER_DECIDES = tr_later("Marks and verdicts are a suggestion: the teacher decides.")
"""To be shown with `tr`."""


@dataclass(frozen=True, slots=True)
class Row:
    """One row of the slip's card: what it is, and either a sentence or a piece of LaTeX."""

    label: str
    text: str = ""
    latex: str = ""


def working_name(document: Document, verdict: WorkingVerdict) -> str:
    """Which working of the page it is, with its lines counted on the page from 1."""
    first, last = verdict.lines[0] + 1, verdict.lines[-1] + 1
    span = tr("line {number}", number=first) if first == last else tr("lines {first} to {last}", first=first, last=last)
    return tr("Working {number} ({span})", number=document.verdicts.index(verdict) + 1, span=span)


def heading(document: Document, verdict: WorkingVerdict) -> str:
    """The verdict on a working in one sentence, with the working's name when the page has several."""
    text = headline(document, verdict)
    return text if len(document.verdicts) < 2 else f"{working_name(document, verdict)}: {text}"


def headline(document: Document, verdict: WorkingVerdict) -> str:
    """The verdict on a working in one sentence."""
    slip_line = counted_slip(document, verdict)
    rows = verdict.report.lines
    own = [i + 1 for i in verdict.lines if document.lines[i].override is not None]
    if slip_line is not None and slip_line + 1 in own:
        return tr("First slip: line {number}, as you declared.", number=slip_line + 1)
    if slip_line is not None:
        if verdict.check_reading_first:
            words = tr("Line {number} does not follow as it was read.", number=slip_line + 1)
            return f"{words} {in_language(verdict.reading_hint)}"
        carried = sum(row.verdict == "ft" for row in rows)
        tail = ""
        if carried:
            later = tr("{count} later line follows from it (ft).") if carried == 1 else ""
            later = later or tr("{count} later lines follow from it (ft).")
            tail = " " + later.format(count=carried)
        return tr("First slip: line {number}.", number=slip_line + 1) + tail
    states = {row.verdict for row in rows}
    if states <= {"unreadable"}:
        return tr("No line could be read yet.")
    unread = [verdict.lines[i] + 1 for i, row in enumerate(rows) if row.verdict == "unreadable"]
    if unread:
        return tr("No slip found, but {lines} could not be read.", lines=_lines(unread))
    undecided = [verdict.lines[i] + 1 for i, row in enumerate(rows) if row.verdict == "undecided"]
    if undecided:
        return tr("No slip found; {lines} could not be decided.", lines=_lines(undecided))
    lossy = [verdict.lines[i] + 1 for i, row in enumerate(rows) if row.verdict in ("loses", "adds")]
    if lossy:
        return tr("No slip found; look at {lines}.", lines=_lines(lossy))
    if own:
        words = tr("No slip left: {lines} was declared right.") if len(own) == 1 else ""
        words = words or tr("No slip left: {lines} were declared right.")
        return words.format(lines=_lines(own))
    judged = sum(row.verdict not in ("note", "start") for row in rows)
    if not judged:
        return tr("One line only: nothing to compare it with.")
    unsure = [i + 1 for i in verdict.lines if document.lines[i].state is State.DOUBTFUL]
    if not unsure:
        return tr("Every line follows.")
    words = tr("Every line follows as read, but {lines} was hard to read.") if len(unsure) == 1 else ""
    words = words or tr("Every line follows as read, but {lines} were hard to read.")
    return words.format(lines=_lines(unsure))


def line_reason(document: Document, index: int) -> str:
    """Why a line has its verdict, in ordinary signs; empty before checking and where nothing needs saying."""
    override = document.lines[index].override
    if override is not None:
        return override.note
    found = document.verdict_of(index)
    if found is None:
        return ""
    verdict, place = found
    row = verdict.report.lines[place]
    if not row.reason and row.verdict in ("note", "unreadable"):
        return _part_reason(document, verdict, place)
    if place == verdict.report.first_slip and verdict.check_reading_first:
        return in_language(verdict.reading_hint)
    if row.verdict == "slip" and verdict.check_reading_first:
        return tr("Judged from lines whose reading should be checked first.")
    if row.verdict == "slip" and row.slip is not None:
        return sentence(row.slip.because or row.reason)
    return sentence(row.reason)


def _part_reason(document: Document, verdict: WorkingVerdict, place: int) -> str:
    """How a line hangs together with its neighbours, with which it says one thing."""
    places = statement_of(document.lines, verdict.lines, place).places
    if len(places) < 2:
        return ""
    if verdict.report.lines[place].verdict == "unreadable":
        return tr("Another part of this line could not be read.")
    if place == places[0]:
        return tr("Goes on in line {number}.", number=verdict.lines[places[1]] + 1)
    return tr("Carries on line {number}.", number=verdict.lines[place - 1] + 1)


def slip_rows(document: Document, verdict: WorkingVerdict) -> tuple[Row, ...]:
    """What the card of the first slip says, row by row; empty when there is no slip.

    Where the reading should be checked first, the card shows the reading, not a slip.
    """
    if verdict.report.first_slip is None or counted_slip(document, verdict) != verdict.first_slip_line:
        return ()
    row = verdict.report.lines[verdict.report.first_slip]
    written = whole_latex(document.lines, verdict.lines, verdict.report.first_slip)
    rows: list[Row] = []
    if row.source is not None:
        before = whole_latex(document.lines, verdict.lines, row.source)
        rows.append(Row(tr("From line {number}", number=verdict.lines[row.source] + 1), latex=before))
    if verdict.check_reading_first:
        rows.append(Row(tr("Line as read"), latex=written))
        if verdict.other_reading is not None:
            index, latex = verdict.other_reading
            rows.append(Row(tr("Or line {number} says", number=index + 1), latex=latex))
        if row.reason:
            rows.append(Row(tr("As read"), text=sentence(row.reason)))
        return tuple(rows)
    rows.append(Row(tr("Line as written"), latex=written))
    if row.slip is None:
        if row.reason:
            rows.append(Row(tr("Why"), text=sentence(row.reason)))
        return tuple(rows)
    slip = row.slip
    if slip.term and not is_missing(slip):
        rows.append(Row(tr("Term"), latex=slip.term))
    if slip.should_be:
        label = tr("Missing") if is_missing(slip) else tr("Should be")
        rows.append(Row(label, latex=latex_in_language(slip.should_be)))
    if slip.because:
        rows.append(Row(tr("Why"), text=sentence(slip.because)))
    if slip.repaired:
        rows.append(Row(tr("Line put right"), latex=latex_in_language(slip.repaired)))
    if row.reason and row.reason != slip.because:
        rows.append(Row(tr("Check") if slip.because else tr("Why"), text=sentence(row.reason)))
    return tuple(rows)


def sentence(words: str) -> str:
    """The words in plain signs, with a capital and a full stop."""
    text = plain(with_capital(in_language(words).strip())).strip()
    return text if not text or text[-1] in ".!?" else f"{text}."


def is_missing(slip: Slip) -> bool:
    """Whether the slip is a term that was left out, so that nothing on the page can be framed."""
    return slip.span[0] == slip.span[1] or slip.term.startswith("(missing")


def _lines(numbers: list[int]) -> str:
    if len(numbers) == 1:
        return tr("line {number}", number=numbers[0])
    return tr("lines {numbers} and {last}", numbers=", ".join(map(str, numbers[:-1])), last=numbers[-1])


