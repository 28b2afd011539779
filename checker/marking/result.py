"""What is suggested for each mark of a scheme."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

from checker.marking.scheme import Part

__all__ = ["NOTE", "Award", "Awarded", "Marks"]

PARTS: tuple[Part, ...] = ("main", "special case", "no working")
Awarded = bool | Literal["teacher"]
NOTE = "These marks are a suggestion; the teacher decides."


@dataclass(frozen=True, slots=True)
class Award:
    """One mark: earned, not earned, or left to the teacher.

    Args:
        code, worth, purpose, part: as the scheme has them.
        awarded: True, False, or "teacher" when it cannot be told.
        line: the line that it was given or refused for, counted from 0; None when no line stands for it.
        reason: one or two plain sentences; lines are counted from 1 there.
    """

    code: str
    worth: int
    purpose: str
    awarded: Awarded
    line: int | None
    reason: str
    part: Part = "main"

    def to_json(self) -> dict[str, Any]:
        return {
            "mark": self.code, "for": self.purpose, "awarded": self.awarded, "line": self.line, "reason": self.reason,
        }


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks suggested for one working.

    Special cases (SC) and marks for an answer without working (N) stand in place of the others, and never beside them.
    """

    each: tuple[Award, ...]

    def _sum(self, part: Part, *, is_open: bool) -> int:
        return sum(
            award.worth for award in self.each
            if award.part == part and (award.awarded is True or (is_open and award.awarded == "teacher"))
        )

    @property
    def total(self) -> int:
        """Marks that are surely earned."""
        return max(self._sum(part, is_open=False) for part in PARTS)

    @property
    def highest(self) -> int:
        """The sum if the teacher gives every mark left open."""
        return max(self._sum(part, is_open=True) for part in PARTS)

    @property
    def out_of(self) -> int:
        return sum(award.worth for award in self.each if award.part == "main")

    def to_json(self) -> dict[str, Any]:
        return {
            "each": [award.to_json() for award in self.each], "sum": self.total, "highest": self.highest,
            "out_of": self.out_of, "note": NOTE,
        }
