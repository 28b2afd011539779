"""What is said of the final answer of a working: one place, so that window, picture and page say the same. No Qt."""

from __future__ import annotations

from desktop.document import Document, WorkingVerdict
from desktop.reveal import EVERYTHING, GRADES, Reveal
from desktop.wording import sentence
from desktop.workings import renumbered

__all__ = ["answer_words"]

_OF_FORM = "It has not the form asked."


def answer_words(document: Document, verdict: WorkingVerdict, reveal: Reveal = EVERYTHING) -> str:
    """What the checker says of the final answer; empty where it says nothing, or where its word does not count.

    It does not count where a reading should be checked first, or where the user has judged a line. While hints are
    asked for one at a time, the reason is kept back until the slip is told: it may name what the hints lead to.
    """
    report = verdict.report
    if not report.answer or verdict.check_reading_first:
        return ""
    if any(document.lines[index].override is not None for index in verdict.lines):
        return ""
    why = report.final.reason
    told = report.answer.removesuffix(why).strip()
    form = _OF_FORM if told.endswith(_OF_FORM) else ""
    parts = [renumbered(told.removesuffix(form).strip(), verdict.lines), form]
    if _is_told(verdict, reveal):
        parts.append(why)
    return " ".join(sentence(part) for part in parts if part)


def _is_told(verdict: WorkingVerdict, reveal: Reveal) -> bool:
    """Whether nothing of the working's slips is left for hints."""
    if not reveal.is_student:
        return True
    slips = [row.slip for row in verdict.report.lines if row.verdict == "slip"]
    return bool(slips) and all(reveal.grade(slip) == GRADES for slip in slips)
