"""Lines corrected by hand: split, merged, added, dropped, reordered, redrawn; only touched lines are read again."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import Any

import numpy as np
from PySide6.QtCore import QObject, Signal, Slot

from desktop.desk_line import DeskLine, Lines, desk_line
from desktop.document import AnyChange, Document
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr, tr_later
from desktop.line_changes import Change
from desktop.line_order import in_order, stands_for
from desktop.reading import PageReader
from recognition.correction import Correction, Cutter, add, drop, merge, redraw, reorder, split
from recognition.outline import Cut, Outline
from recognition.result import Line, Tick

__all__ = ["Corrections", "SetLines"]

_CHANGED = tr_later("The lines changed meanwhile. Try again now.")

Work = Callable[[Sequence[DeskLine], Cutter[Any]], Correction[Any]]


@dataclass(frozen=True, slots=True)
class SetLines:
    """Put other lines in place of those on the page."""

    lines: Lines
    name: str

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        return self.lines, SetLines(lines, self.name)


class Corrections(QObject):
    """Makes corrections off the window's thread, each one step to undo; tells which line to choose then."""

    corrected = Signal(object, int)
    problem = Signal(str)
    busy_changed = Signal(bool)

    def __init__(
        self, reader: PageReader, do: Callable[[Document, AnyChange], None], parent: QObject | None = None
    ) -> None:
        """
        Args:
            reader: reads the touched lines.
            do: makes a change that can be undone.
        """
        super().__init__(parent)
        self._reader = reader
        self._do = do
        self._jobs = Jobs(self)
        self._jobs.busy_changed.connect(self.busy_changed)
        self._cutter: tuple[object, Cutter[Any]] | None = None

    @property
    def busy(self) -> bool:
        return self._jobs.busy

    def cancel_all(self) -> None:
        """Stop what is being cut and read; nothing has changed then."""
        self._jobs.cancel_all()

    def close(self) -> bool:
        return self._jobs.close()

    def split(self, document: Document, number: int, cut: Cut) -> None:
        """Part a line in two."""
        self._start(document, tr("Split line"), lambda lines, cutter: split(lines, number, cut, cutter), number)

    def merge(self, document: Document, numbers: Sequence[int]) -> None:
        """Make one line of several."""
        self._start(document, tr("Join lines"), lambda lines, cutter: merge(lines, numbers, cutter), min(numbers))

    def add(self, document: Document, outline: Outline) -> None:
        """Take what is within an outline as a new line."""
        self._start(document, tr("Add line"), lambda lines, cutter: add(lines, outline, cutter), None)

    def redraw(self, document: Document, number: int, outline: Outline) -> None:
        """Give a line another outline."""
        self._start(document, tr("Redraw line"), lambda lines, cutter: redraw(lines, number, outline, cutter), number)

    def drop(self, document: Document, number: int) -> None:
        """Take a line off the page."""
        self._put_in_order(document, drop(document.lines, (number,)), tr("Remove line"), None)
        self.corrected.emit(document, min(number, len(document.lines) - 1))

    def move(self, document: Document, number: int, place: int) -> None:
        """Put a line at another place in the order of reading; nothing happens where there is no such place.

        It joins the working that it comes to lie in; between two of them it stays with its own.
        """
        if place != number and 0 <= place < len(document.lines):
            order = [n for n in range(len(document.lines)) if n != number]
            order.insert(place, number)
            self._put_in_order(document, reorder(document.lines, order), tr("Move line"), number)
            self.corrected.emit(document, place)

    def _put_in_order(self, document: Document, correction: Correction[Any], name: str, moved: int | None) -> None:
        self._do(document, SetLines(in_order(document.lines, correction.lines, moved=moved), name))

    def _start(self, document: Document, name: str, work: Work, choose: int | None) -> None:
        job = Job(name, partial(self._corrected, document, document.lines, name, work, choose))
        job.succeeded.connect(self._take)
        job.failed.connect(self.problem)
        self._jobs.start(job)

    def _corrected(
        self, document: Document, before: Lines, name: str, work: Work, choose: int | None, tick: Tick, give: Give
    ) -> tuple[Document, Lines, SetLines, int]:
        correction = work(before, self._cutter_of(document))
        again = correction.read_again
        crops: list[Any] = [correction.lines[number] for number in again]
        tick(0, 0)
        read = self._reader.load().read(crops, tick=tick) if crops else []
        lines: list[DeskLine] = []
        candidates = iter(read)
        for line in correction.lines:
            if isinstance(line, int):
                lines.append(before[line])
            else:
                found = desk_line(Line(line.box, next(candidates), line.struck_out, line.polygon))
                lines.append(found if choose is None else stands_for(found, before[choose], first=len(lines) == choose))
        first = again[0] if choose is None and again else choose or 0
        return document, before, SetLines(tuple(lines), name), first

    def _cutter_of(self, document: Document) -> Cutter[Any]:
        """The cutter of a page, kept for the next correction of the same page."""
        key = document.strokes if document.strokes else document.picture
        if self._cutter is None or self._cutter[0] is not key:
            self._cutter = (key, _cutter(document))
        return self._cutter[1]

    @Slot(object)
    def _take(self, corrected: tuple[Document, Lines, SetLines, int]) -> None:
        document, before, change, choose = corrected
        if document.lines != before:
            self.problem.emit(tr(_CHANGED))
            return
        self._do(document, change)
        self.corrected.emit(document, choose)


def _cutter(document: Document) -> Cutter[Any]:
    if document.strokes:
        from recognition.ink import InkCutter, InkPicture

        assert document.picture is not None
        on_page = InkPicture(document.picture, np.eye(3))
        return InkCutter(on_page, tuple(stroke.points for stroke in document.strokes))
    from recognition.page import LineCutter

    assert document.picture is not None
    return LineCutter.of(document.picture, turns=0)  # it stands upright on the desk
