"""Marks that stand in place of the others: special cases (SC), and N marks for an answer without working."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from checker.marking.candidate import Candidate
from checker.marking.result import Award

__all__ = ["in_place_of_the_others"]

_LINES_WITHOUT_WORKING = 2  # the question and the answer


def in_place_of_the_others(awards: Sequence[Award], told: Candidate) -> tuple[Award, ...]:
    """Settle SC and N marks by what the scheme itself gives.

    Args:
        awards: one for each entry, each by its own line alone.
        told: the working.
    Returns:
        The same, with SC marks refused where the scheme gives as much, N marks refused where working is shown, and the
        other marks refused where N marks stand for them.
    """
    return tuple(_special_cases(_without_working(list(awards), told)))


def _without_working(awards: list[Award], told: Candidate) -> list[Award]:
    if not any(award.part == "no working" for award in awards):
        return awards
    is_shown = len(told.written) > _LINES_WITHOUT_WORKING
    if is_shown:
        return [
            replace(award, awarded=False, reason="Working is shown, so the marks for an answer alone do not apply.")
            if award.part == "no working" else award for award in awards
        ]
    if not any(award.part == "no working" and award.awarded is True for award in awards):
        return awards
    return [
        replace(award, awarded=False, reason=f"{award.reason} No working is shown: the N marks stand for the answer.")
        if award.part == "main" and award.awarded in (True, "teacher") else award for award in awards
    ]


def _special_cases(awards: list[Award]) -> list[Award]:
    """A special case counts when the scheme itself would give fewer marks."""
    special = sum(award.worth for award in awards if award.part == "special case" and award.awarded is True)
    if not special:
        return awards
    earned = sum(award.worth for award in awards if award.part == "main" and award.awarded is True)
    open_ = sum(award.worth for award in awards if award.part == "main" and award.awarded == "teacher")
    out = []
    for award in awards:
        if award.part == "special case" and award.awarded is True:
            if earned >= special:
                award = replace(award, awarded=False, reason=f"{award.reason} The scheme itself gives as much.")
            elif earned + open_ >= special:
                award = replace(
                    award, awarded="teacher",
                    reason=f"{award.reason} The marks left to the teacher may give as much; the teacher decides.",
                )
            else:
                award = replace(award, reason=f"{award.reason} It stands in place of the marks above.")
        out.append(award)
    return out
