"""What is suggested for each mark of a scheme."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Literal

__all__ = ["NOTE", "Award", "Awarded", "Marks"]

Awarded = bool | Literal["teacher"]
NOTE = "These marks are a suggestion; the teacher decides."


@dataclass(frozen=True, slots=True)
class Award:
    """One mark: earned, not earned, or left to the teacher.

    Args:
        code, worth, purpose: as the scheme has them.
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

    def to_json(self) -> dict[str, Any]:
        return {
            "mark": self.code, "for": self.purpose, "awarded": self.awarded, "line": self.line, "reason": self.reason,
        }


@dataclass(frozen=True, slots=True)
class Marks:
    """The marks suggested for one working."""

    each: tuple[Award, ...]

    @property
    def total(self) -> int:
        """Marks that are surely earned."""
        return sum(award.worth for award in self.each if award.awarded is True)

    @property
    def highest(self) -> int:
        """The sum if the teacher gives every mark left open."""
        return sum(award.worth for award in self.each if award.awarded is not False)

    @property
    def out_of(self) -> int:
        return sum(award.worth for award in self.each)

    def to_json(self) -> dict[str, Any]:
        return {
            "each": [award.to_json() for award in self.each], "sum": self.total, "highest": self.highest,
            "out_of": self.out_of, "note": NOTE,
        }
