"""Changes that say more than what a line reads: verdict, marks, pen strokes, candidate, which way up. No Qt."""

from __future__ import annotations

from dataclasses import dataclass, replace

from desktop.desk_line import LineMark, Lines, Override
from desktop.document import Content, PageChange, Strokes
from desktop.language import tr, tr_later
from desktop.line_changes import Change, changed
from desktop.standing import Standing

__all__ = ["AwardMarks", "Overrule", "SetCandidate", "SetStrokes", "TurnPage"]


@dataclass(frozen=True, slots=True)
class Overrule:
    """Declare a line right or wrong, or take that word back (None)."""

    index: int
    override: Override | None

    @property
    def name(self) -> str:
        if self.override is None:
            return tr("Leave line to the checker")
        return tr("Declare line right") if self.override.is_right else tr("Declare line wrong")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        old = lines[self.index]
        return changed(lines, self.index, override=self.override), Overrule(self.index, old.override)


@dataclass(frozen=True, slots=True)
class AwardMarks:
    """Write marks beside a line in place of those that stand there."""

    index: int
    marks: tuple[LineMark, ...]
    name: str = tr_later("Award marks")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        old = lines[self.index]
        return changed(lines, self.index, marks=self.marks), AwardMarks(self.index, old.marks, self.name)


@dataclass(frozen=True, slots=True)
class SetStrokes:
    """Put other pen strokes, and the lines found in them, in place of those on the page."""

    strokes: Strokes
    lines: Lines
    name: str = tr_later("Write")

    def apply_to_page(self, content: Content) -> tuple[Content, PageChange]:
        new = replace(content, strokes=self.strokes, lines=self.lines)
        return new, SetStrokes(content.strokes, content.lines, self.name)


@dataclass(frozen=True, slots=True)
class SetCandidate:
    """Say whose page it is, by the candidate's number."""

    candidate: str
    name: str = tr_later("Change candidate number")

    def apply_to_page(self, content: Content) -> tuple[Content, PageChange]:
        return replace(content, candidate=self.candidate), SetCandidate(content.candidate, self.name)


@dataclass(frozen=True, slots=True)
class TurnPage:
    """Turn the page clockwise by quarter turns; its lines are gone then, to be found anew."""

    quarters: int
    name: str = tr_later("Turn page")

    def apply_to_page(self, content: Content) -> tuple[Content, PageChange]:
        turns = (content.turns + self.quarters) % 4
        new = replace(content, lines=(), turns=turns, standing=Standing.TURNED)
        return new, _LayPage(content.turns, content.standing, content.lines, self.name)


@dataclass(frozen=True, slots=True)
class _LayPage:
    """Lay the page as it lay, with the lines that it had then."""

    turns: int
    standing: Standing
    lines: Lines
    name: str

    def apply_to_page(self, content: Content) -> tuple[Content, PageChange]:
        new = replace(content, lines=self.lines, turns=self.turns, standing=self.standing)
        return new, _LayPage(content.turns, content.standing, content.lines, self.name)
