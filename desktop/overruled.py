"""The verdict that counts on a line: the user's own word where there is one, else the checker's. No Qt."""

from __future__ import annotations

from desktop.document import Document, WorkingVerdict
from desktop.statements import statement_of
from desktop.verdict_style import CARRIED_ON, DECLARED_RIGHT, DECLARED_WRONG, STYLES, VerdictStyle, style_of

__all__ = ["counted_slip", "counted_style"]


def counted_slip(document: Document, verdict: WorkingVerdict) -> int | None:
    """Index on the page of the first line of a working that counts as wrong; None when there is none."""
    for place, index in enumerate(verdict.lines):
        override = document.lines[index].override
        if override is not None and not override.is_right:
            return index
        if verdict.report.lines[place].verdict == "slip" and override is None:
            return index
    return None


def counted_style(document: Document, index: int) -> VerdictStyle | None:
    """How the verdict on a line looks; None before checking.

    A line that follows from a slip which the user declared right simply follows.
    """
    override = document.lines[index].override
    if override is not None:
        return DECLARED_RIGHT if override.is_right else DECLARED_WRONG
    found = document.verdict_of(index)
    if found is None:
        return None
    verdict, place = found
    word = verdict.report.lines[place].verdict
    if word == "note" and len(statement_of(document.lines, verdict.lines, place).places) > 1:
        return CARRIED_ON
    slip = counted_slip(document, verdict)
    if word == "ft" and (slip is None or slip > index):
        return STYLES["follows"]
    return style_of(word, check_reading=verdict.check_reading_first)
