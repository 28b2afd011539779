"""Changes that say more than what a line reads: the user's own verdict, marks, pen strokes, the candidate. No Qt."""

from __future__ import annotations

from dataclasses import dataclass, replace

from desktop.desk_line import LineMark, Lines, Override
from desktop.document import Content, PageChange, Strokes
from desktop.language import tr, tr_later
from desktop.line_changes import Change, changed

__all__ = ["AwardMarks", "Overrule", "SetCandidate", "SetStrokes"]


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
