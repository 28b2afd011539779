"""Marks suggested for a judged working: each entry of the scheme weighed against each line."""

from __future__ import annotations

import logging
from collections.abc import Sequence
from dataclasses import dataclass, replace

from checker.budget import Budget, OutOfTimeError
from checker.marking.candidate import Candidate, Written, candidate
from checker.marking.comparison import Likeness, compared
from checker.marking.evidence import Evidence, weighed
from checker.marking.instead import in_place_of_the_others
from checker.marking.result import Award, Awarded, Marks
from checker.marking.scheme import Mark
from checker.report import Report, Working

__all__ = ["suggested_marks"]

log = logging.getLogger(__name__)

_MOST_LINES = 60  # of a working that are weighed
_MISREAD_LOSES = 2  # A or B marks of the part


@dataclass(frozen=True, slots=True)
class _Found:
    evidence: Evidence
    line: int | None


def suggested_marks(working: Working, report: Report, *, budget_s: float = 1.0) -> Marks:
    """Suggest marks for a working by its scheme.

    Args:
        working: the lines, with their scheme.
        report: what `checker.working.judge` says of them.
        budget_s: time for all of it, in seconds; marks beyond it are left to the teacher.
    Returns:
        One award an entry of the scheme, in its order.
    """
    told = candidate(working, report, Budget(budget_s))
    found = [_found(mark, told) for mark in working.scheme]
    found = _after_misread(working.scheme, found)
    is_right = report.first_slip is None and not told.is_misread and (
        (report.final.correct is True and report.final.form_ok is not False and len(told.written) > 1) or any(
            mark.is_final and mark.part == "main" and one.evidence.awarded is True
            for mark, one in zip(working.scheme, found, strict=True)
        )
    )
    awards: list[Award] = []
    for mark, one in zip(working.scheme, found, strict=True):
        shown = _perhaps_shown(mark, one, told, is_right=is_right)
        awarded, line, reason = _depending(mark, shown, awards)
        awards.append(Award(mark.code, mark.worth, mark.purpose, awarded, line, reason, mark.part))
    return Marks(in_place_of_the_others(awards, told))


def _found(mark: Mark, told: Candidate) -> _Found:
    if not mark.targets:
        return _Found(Evidence("teacher", "The scheme describes this mark in words; the teacher decides."), None)
    try:
        return _best(mark, told)
    except (OutOfTimeError, RecursionError):
        return _Found(Evidence("teacher", "The time for marking ran out; the teacher decides."), None)
    except Exception:
        log.exception("a mark of a scheme could not be weighed")
        return _Found(Evidence("teacher", "This mark could not be weighed; the teacher decides. See the log."), None)


def _best(mark: Mark, told: Candidate) -> _Found:
    """The line that does most for the mark: the first one, for a final answer the last one."""
    lines: Sequence[Written] = told.written[-_MOST_LINES:]
    if mark.is_final:
        lines = lines[::-1] if mark.isw else lines[-1:]
    best: _Found | None = None
    for line in lines:
        told.known.budget.check()
        evidence = weighed(mark, line, told)
        if evidence is None:
            continue
        if mark.is_final and evidence.awarded is True:
            evidence = _unless_contradicted(mark, evidence, line, told)
        if best is None or _rank(evidence.awarded) < _rank(best.evidence.awarded):
            best = _Found(evidence, line.index)
        if evidence.awarded is True:
            break
    if best is not None:
        return best
    sentence = "The final answer is not that of the scheme." if mark.is_final else "No line shows it."
    return _Found(Evidence(False, sentence), told.written[-1].index if mark.is_final and told.written else None)


def _rank(awarded: Awarded) -> int:
    return 0 if awarded is True else 1 if awarded == "teacher" else 2


def _unless_contradicted(mark: Mark, evidence: Evidence, line: Written, told: Candidate) -> Evidence:
    """A later line that gives another answer of the same form may be a new attempt, and the last one counts."""
    for later in told.written:
        if later.index <= line.index:
            continue
        for target in mark.targets:
            if compared(target, later.statement, mark.form, told.known).likeness is Likeness.LIKE:
                return Evidence(
                    "teacher", f"{evidence.reason} Line {later.index + 1} gives another answer; the teacher decides "
                    "which attempt counts.",
                )
    if told.written[-1].index > line.index:
        return replace(evidence, reason=f"{evidence.reason} What follows it is ignored (isw).")
    return evidence


def _after_misread(scheme: Sequence[Mark], found: list[_Found]) -> list[_Found]:
    """Of the A and B marks that follow from a misread question, the first two are lost; the rest is for the teacher."""
    out: list[_Found] = []
    lost = 0
    for mark, one in zip(scheme, found, strict=True):
        if one.evidence.is_from_misread and mark.kind != "M":
            awarded: Awarded = False if lost < _MISREAD_LOSES else "teacher"
            told = "The misread (MR) loses this mark." if awarded is False else "The teacher decides how much it loses."
            one = _Found(replace(one.evidence, awarded=awarded, reason=f"{one.evidence.reason} {told}"), one.line)
            lost += mark.worth
        out.append(one)
    return out


def _perhaps_shown(mark: Mark, one: _Found, told: Candidate, *, is_right: bool) -> _Found:
    """What no line shows may still have been done: on an unread line, or by another valid method."""
    if one.evidence.awarded is not False or one.evidence.is_settled or mark.part != "main":
        return one
    if told.unread:
        sentence = f"{one.evidence.reason} Line {told.unread[0] + 1} could not be read; the teacher decides."
        return _Found(replace(one.evidence, awarded="teacher", reason=sentence), one.line)
    if mark.kind == "M" and is_right and one.line is None and mark.implied is not False:
        sentence = (
            f"{one.evidence.reason} The answer is right, so another valid method may be there; the teacher decides."
        )
        return _Found(replace(one.evidence, awarded="teacher", reason=sentence), None)
    return one


def _depending(mark: Mark, one: _Found, earlier: Sequence[Award]) -> tuple[Awarded, int | None, str]:
    """A mark that depends on another is not earned without it."""
    awarded, reason = one.evidence.awarded, one.evidence.reason
    if awarded is False:
        return awarded, one.line, reason
    for need in mark.needs:
        if earlier[need].awarded is False:
            return False, one.line, f"{reason} It needs the {earlier[need].code} before it, which is not earned."
    for need in mark.needs:
        if awarded is True and earlier[need].awarded == "teacher":
            code = earlier[need].code
            return "teacher", one.line, f"{reason} It needs the {code} before it, on which the teacher decides."
    return awarded, one.line, reason
