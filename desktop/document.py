"""One page on the desk: its lines, readings, corrections and verdicts. No Qt; every change can be undone."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Protocol, runtime_checkable
from weakref import ReferenceType, ref

import numpy as np
from numpy.typing import NDArray

from checker.report import Report, Slip
from desktop.desk_line import Lines, State, desk_line, with_readings
from desktop.line_changes import Change
from desktop.standing import Standing
from recognition.result import Candidate, Page

if TYPE_CHECKING:
    from recognition.ink import Stroke

__all__ = ["AnyChange", "Content", "Document", "PageChange", "Strokes", "WorkingVerdict"]

Strokes = tuple["Stroke", ...]


@dataclass(frozen=True, slots=True)
class Content:
    """All of a page that the user can change.

    strokes: what the pen drew, in the order it was drawn; none for a photo.
    candidate: the candidate's number, as on the paper; no name is ever kept.
    turns: by how many quarter turns clockwise the picture was turned to stand as it does, 0 to 3.
    standing: by whose word.
    """

    lines: Lines = ()
    strokes: Strokes = ()
    candidate: str = ""
    turns: int = 0
    standing: Standing = Standing.AS_FOUND


@runtime_checkable
class PageChange(Protocol):
    """A change that touches more than the lines; otherwise like `Change`."""

    @property
    def name(self) -> str: ...

    def apply_to_page(self, content: Content) -> tuple[Content, PageChange]: ...


AnyChange = Change | PageChange


@dataclass(frozen=True, slots=True)
class WorkingVerdict:
    """What the checker says of one working of the page.

    lines: index on the page of each line of the report, in order.
    reading_hint: why the reading should be checked first; empty when it need not be.
    other_reading: index on the page of a line, and another reading of it with which the flagged line follows.
    """

    lines: tuple[int, ...]
    report: Report
    reading_hint: str = ""
    other_reading: tuple[int, str] | None = None

    @property
    def check_reading_first(self) -> bool:
        return bool(self.reading_hint)

    @property
    def first_slip_line(self) -> int | None:
        """Index on the page of the first slip."""
        return None if self.report.first_slip is None else self.lines[self.report.first_slip]

    @property
    def slip(self) -> Slip | None:
        return None if self.report.first_slip is None else self.report.lines[self.report.first_slip].slip


Listener = Callable[[], None]


@dataclass(slots=True, eq=False)
class Document:
    """A page with its history. Views listen, redraw and send changes; they hold no state of the page.

    picture: RGB, shape (height, width, 3), or None for a typed working.
    halvings: the picture at a half, a quarter and so on, for quick drawing; may be left out.
    strokes, candidate, turns, standing: as in `Content`.
    thumbnail: RGB, a small copy of the picture while the picture itself lies in the set's file; None otherwise.
    """

    file: str
    page: int = 0
    size: tuple[int, int] = (0, 0)
    picture: NDArray[np.uint8] | None = None
    lines: Lines = ()
    verdicts: tuple[WorkingVerdict, ...] = ()
    revision: int = 0
    halvings: tuple[NDArray[np.uint8], ...] = ()
    strokes: Strokes = ()
    candidate: str = ""
    turns: int = 0
    thumbnail: NDArray[np.uint8] | None = None
    standing: Standing = Standing.AS_FOUND
    _turned_from: tuple[ReferenceType[NDArray[np.uint8]], ReferenceType[NDArray[np.uint8]]] | None = None
    _done: list[AnyChange] = field(default_factory=list)
    _undone: list[AnyChange] = field(default_factory=list)
    _listeners: list[Listener] = field(default_factory=list)

    @classmethod
    def of_page(cls, page: Page, picture: NDArray[np.uint8] | None) -> Document:
        return cls(
            file=page.file, page=page.page, size=page.size, picture=picture,
            lines=tuple(desk_line(line) for line in page.lines),
        )

    def snapshot(self) -> Document:
        """The page as it stands now, without its history, for work that goes on while the user does."""
        return Document(
            file=self.file, page=self.page, size=self.size, picture=self.picture, lines=self.lines,
            verdicts=self.verdicts, revision=self.revision, strokes=self.strokes, candidate=self.candidate,
            turns=self.turns, standing=self.standing, _turned_from=self._turned_from,
        )

    @property
    def content(self) -> Content:
        """All that the user can change, as it stands now."""
        return Content(self.lines, self.strokes, self.candidate, self.turns, self.standing)

    @property
    def is_unread(self) -> bool:
        """Whether finding and reading its lines never came to its end."""
        if not self.lines:
            return self.standing is Standing.TURNED
        return all(line.state is State.UNREAD and not line.candidates and not line.latex for line in self.lines)

    @property
    def picture_as_taken(self) -> ReferenceType[NDArray[np.uint8]] | None:
        """The picture that this one is but for its turns by hand; the same reference until another takes its place."""
        if self.picture is None:
            return None
        if self._turned_from is not None and self._turned_from[0]() is self.picture:
            return self._turned_from[1]
        return ref(self.picture)

    def let_picture_go(self) -> None:
        """Hold the small picture only; a set has the large one."""
        if self.picture is not None:
            height, width = self.picture.shape[:2]
            step = max(1, min(height, width) // 200)
            self.thumbnail = self.picture[::step, ::step].copy()
        self.picture, self.halvings = None, ()

    def listen(self, listener: Listener) -> None:
        """Call the listener after every change of lines or verdicts."""
        self._listeners.append(listener)

    def do(self, change: AnyChange) -> None:
        """Apply a change and keep its inverse; a change that raises leaves all as it was."""
        self._done.append(self._apply(change))
        self._undone.clear()
        self._changed()

    def undo(self) -> None:
        """Take the last change back; nothing happens when there is none."""
        if self._done:
            inverse = self._apply(self._done[-1])
            self._done.pop()
            self._undone.append(inverse)
            self._changed()

    def redo(self) -> None:
        """Do again what was taken back last; nothing happens when there is none."""
        if self._undone:
            inverse = self._apply(self._undone[-1])
            self._undone.pop()
            self._done.append(inverse)
            self._changed()

    def take_readings(self, candidates: Sequence[tuple[Candidate, ...]]) -> None:
        """Take in what the reader found, line by line; lines that the user has dealt with already stay."""
        if len(candidates) == len(self.lines):
            self.lines = tuple(
                with_readings(line, found) if line.state is State.UNREAD and not line.candidates else line
                for line, found in zip(self.lines, candidates, strict=True)
            )
            self._changed()

    def take_weighed(self, lines: Lines) -> None:
        """Take in lines whose readings were weighed by their hand; this is no step to undo."""
        if lines != self.lines:
            self.lines = lines
            self._changed()

    def take_lines(self, lines: Lines) -> None:
        """Take in the lines that were found in what the pen wrote; this is no step to undo."""
        if lines != self.lines:
            self.lines = lines
            self.verdicts = ()
            self._changed()

    def take_found(self, lines: Lines) -> None:
        """Take in the lines that were found on the page as it stands now; this is no step to undo."""
        if self.standing is Standing.TURNED:
            self.standing = Standing.BY_HAND
        self.lines = lines
        self.verdicts = ()
        self._changed()

    def show(self, verdicts: Sequence[WorkingVerdict], *, revision: int) -> bool:
        """Take the verdicts in, unless the page has changed since they were asked for.

        Returns:
            Whether they were taken.
        """
        if revision != self.revision:
            return False
        self.verdicts = tuple(verdicts)
        self._tell()
        return True

    def verdict_of(self, index: int) -> tuple[WorkingVerdict, int] | None:
        """The working that holds a line, and the line's place in its report."""
        for verdict in self.verdicts:
            if index in verdict.lines:
                return verdict, verdict.lines.index(index)
        return None

    def next_doubtful(self, after: int) -> int | None:
        """The next line that needs the user: the first doubtful or unread one after an index, round the page."""
        count = len(self.lines)
        for step in range(1, count + 1):
            index = (after + step) % count
            line = self.lines[index]
            if line.state in (State.DOUBTFUL, State.UNREAD) and not line.struck_out:
                return index
        return None

    def sure_lines(self) -> tuple[int, ...]:
        """The lines read with enough certainty to be confirmed together."""
        return tuple(i for i, ln in enumerate(self.lines) if ln.state is State.READ and not ln.struck_out)

    def _apply(self, change: AnyChange) -> AnyChange:
        """Make a change and give its inverse."""
        if isinstance(change, PageChange):
            content, page_inverse = change.apply_to_page(self.content)
            self.lines, self.strokes, self.candidate = content.lines, content.strokes, content.candidate
            self.standing = content.standing
            self._turn_to(content.turns)
            return page_inverse
        self.lines, inverse = change.apply(self.lines)
        return inverse

    def _turn_to(self, turns: int) -> None:
        quarters = (turns - self.turns) % 4
        if not quarters:
            return
        from desktop.upright import turned_picture  # here, since the checker's process has no use for OpenCV

        if self.picture is not None:
            taken = self.picture_as_taken
            self.picture = turned_picture(self.picture, quarters)
            self._turned_from = None if taken is None else (ref(self.picture), taken)
        if self.thumbnail is not None:
            self.thumbnail = turned_picture(self.thumbnail, quarters)
        self.halvings = tuple(turned_picture(half, quarters) for half in self.halvings)
        self.size = self.size if quarters == 2 else self.size[::-1]
        self.turns = turns

    def _changed(self) -> None:
        self.revision += 1
        self._tell()

    def _tell(self) -> None:
        for listener in tuple(self._listeners):
            listener()
