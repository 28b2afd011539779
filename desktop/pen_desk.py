"""Finds and reads the lines of pen pages when the pen rests, off the window's thread."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QObject, QTimer, Signal, Slot

from desktop.desk_line import Lines
from desktop.document import Document, Strokes
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.pen_lines import PenLines
from desktop.pen_page import drawn_picture, page_size
from desktop.reading import PageReader
from recognition.result import Tick

__all__ = ["REST_MS", "PenDesk"]

REST_MS = 600
"""The pen rests this long before what it wrote is read."""


class PenDesk(QObject):
    """Watches pages with strokes; the lines that it finds are no step to undo."""

    problem = Signal(str)
    busy_changed = Signal(bool)

    def __init__(self, reader: PageReader, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._reader = reader
        self._jobs = Jobs(self)
        self._jobs.busy_changed.connect(self.busy_changed)
        self._memories: dict[int, PenLines] = {}
        self._seen: dict[int, Strokes] = {}
        self._waiting: list[Document] = []
        self._is_writing = False
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(REST_MS)
        self._timer.timeout.connect(self._read)

    @property
    def busy(self) -> bool:
        return self._jobs.busy or self._timer.isActive()

    def watch(self, document: Document) -> None:
        """Take a page over as it is."""
        self._seen[id(document)] = document.strokes

    def forget(self, document: Document) -> None:
        self._memories.pop(id(document), None)
        self._seen.pop(id(document), None)
        if document in self._waiting:
            self._waiting.remove(document)

    def look(self, document: Document) -> None:
        """Notice whether strokes have changed; they are read when the pen rests."""
        before = self._seen.get(id(document), ())
        if document.strokes is before:
            return
        if id(document) not in self._memories:
            self._memories[id(document)] = PenLines(before, document.lines)
        self._seen[id(document)] = document.strokes
        document.size = page_size(document.strokes)
        if document not in self._waiting:
            self._waiting.append(document)
        self._timer.start()

    def pen_down(self) -> None:
        """The pen writes: wait."""
        self._is_writing = True
        self._timer.stop()

    def pen_up(self) -> None:
        """The pen rests from now on."""
        self._is_writing = False
        if self._waiting:
            self._timer.start()

    def cancel_all(self) -> None:
        self._timer.stop()
        self._jobs.cancel_all()

    def close(self) -> bool:
        self.cancel_all()
        return self._jobs.close()

    @Slot()
    def _read(self) -> None:
        if self._is_writing:
            return
        waiting, self._waiting = self._waiting, []
        for document in waiting:
            work = partial(self._find, document, document.strokes, document.lines, self._memories[id(document)])
            job = Job(tr("Reading what was written"), work)
            job.succeeded.connect(self._take)
            job.failed.connect(self.problem)
            self._jobs.start(job)

    def _find(
        self, document: Document, strokes: Strokes, lines: Lines, memory: PenLines, tick: Tick, give: Give
    ) -> tuple[Document, Strokes, Lines, Lines, object]:
        size = page_size(strokes)
        picture = drawn_picture(strokes, size)
        found = memory.find(strokes, lines, self._reader.load(), tick)
        return document, strokes, lines, found, picture

    @Slot(object)
    def _take(self, found: tuple[Document, Strokes, Lines, Lines, object]) -> None:
        document, strokes, before, lines, picture = found
        if document.strokes is not strokes or id(document) not in self._seen:
            return  # the pen went on; what it wrote since is read at the next rest
        if document.lines != before:
            self._waiting.append(document)
            self._timer.start()
            return
        document.picture, document.halvings = picture, ()  # type: ignore[assignment]
        document.take_lines(lines)
