"""Files, pictures and kept pages read into documents, off the window's thread."""

from __future__ import annotations

import logging
from collections.abc import Callable
from functools import partial
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, Signal, Slot
from PySide6.QtGui import QImage

from desktop.ahead import typeset_readings
from desktop.document import Document
from desktop.jobs import Give, Job, Jobs, Work
from desktop.language import tr
from desktop.read_parts import FoundAgain, FoundCrops, ReadAgain, pixels_of
from desktop.reading import NO_WRITING, FoundDocument, PageReader
from desktop.standing import Standing
from recognition.result import Candidate, Tick

__all__ = ["Intake"]

log = logging.getLogger(__name__)


class Intake(QObject):
    """Reads one page after the other; each is told of when its lines are found, and again when they are read."""

    found = Signal(object)
    cut = Signal(object, object, object)
    """A page, its lines as they were found, and what the reader reads of each."""
    read = Signal(object)
    left = Signal(object)
    """A page whose lines were found and will not be read now: it was stopped, or reading failed."""
    problem = Signal(str)
    activity = Signal(str, int, int)
    reading_changed = Signal(bool)

    def __init__(self, reader: PageReader, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._reader = reader
        self.jobs = Jobs(self)
        self._unread: dict[int, tuple[Document, Job]] = {}
        self._pasted = 0
        self._queue: list[Job] = []
        self._reads: dict[Job, Document] = {}
        self._done = 0

    def is_reading(self, document: Document) -> bool:
        """Whether a page's lines are being read, or wait for it."""
        return id(document) in self._unread

    def read_file(self, path: Path) -> None:
        """Open a file and read its pages."""
        log.info("opening a file")
        self._start(path.name, partial(self._read_file, path))

    def read_picture(self, image: QImage) -> None:
        """Read a picture from the clipboard."""
        self._pasted += 1
        name = tr("Pasted picture") if self._pasted == 1 else tr("Pasted picture {pasted}", pasted=self._pasted)

        def work(tick: Tick, give: Give) -> object:
            self._read_page(self._reader.find_in_picture(pixels_of(image), name, tick=tick), tick, give)
            return None

        self._start(name, work)

    def read_again(self, document: Document, picture_of: Callable[[], NDArray[np.uint8] | None]) -> None:
        """Find and read the lines of a page that was kept before it was read, or turned; as `Desk.read_again`."""
        turns = None if document.standing is Standing.AS_FOUND else 0  # the user's word stands above the writing's

        def work(tick: Tick, give: Give) -> object:
            picture = picture_of()
            if picture is not None:
                found = self._reader.find_in_picture(
                    picture, document.file, page=document.page, turns=turns, tick=tick
                )
                give(FoundAgain(document, found.document))
                candidates = self._reader.read(found, tick=tick)
                typeset_readings(candidates)
                give(FoundCrops(document, found.document.lines, found.crops))
                give(ReadAgain(document, candidates))
                if not candidates:
                    give(tr(NO_WRITING, name=found.name))
            return None

        self._unread[id(document)] = document, self._start(Path(document.file).name, work, reads=document)

    def leave(self, document: Document) -> None:
        """Let be what is being read of a page, since it lies another way now."""
        _, job = self._unread.pop(id(document), (None, None))
        if job is not None and self._reads.get(job) is document:
            job.cancel()  # a file's own job goes on with the file's other pages

    def _start(self, name: str, work: Work, *, reads: Document | None = None) -> Job:
        job = Job(tr("Reading {name}", name=name), work)
        if reads is not None:
            self._reads[job] = reads
        job.progressed.connect(self._show_progress)
        job.gave.connect(partial(self._take, job))
        job.failed.connect(partial(self._fail, name))
        job.ended.connect(self._leave)
        self._queue.append(job)
        self.reading_changed.emit(True)
        self.jobs.start(job)
        self._show_progress(0, 0)
        return job

    def _read_file(self, path: Path, tick: Tick, give: Give) -> None:
        for found in self._reader.find(path, tick=tick):
            self._read_page(found, tick, give)

    def _read_page(self, found: FoundDocument, tick: Tick, give: Give) -> None:
        as_found = FoundDocument(found.document.snapshot(), found.crops)  # the user may turn the page while it is read
        give(found.document)
        if as_found.document.lines:
            candidates = self._reader.read(as_found, tick=tick)
            typeset_readings(candidates)
            give(FoundCrops(found.document, as_found.document.lines, as_found.crops))
            give((found.document, candidates))
        else:
            give(tr(NO_WRITING, name=found.name))

    def _take(self, job: Job, part: object) -> None:
        if isinstance(part, FoundAgain):
            if self._is_read_by(part.document, job) and part.document.is_unread:
                part.take()
        elif isinstance(part, FoundCrops):
            if self._is_read_by(part.document, job):
                self.cut.emit(part.document, part.lines, part.crops)
        elif isinstance(part, ReadAgain):
            if self._is_read_by(part.document, job):
                del self._unread[id(part.document)]
                self._take_readings(part.document, part.candidates)
        elif isinstance(part, Document):
            if part.lines:
                self._unread[id(part)] = part, job
            self.found.emit(part)
        elif isinstance(part, str):
            self.problem.emit(part)
        else:
            assert isinstance(part, tuple)
            document, candidates = part
            if self._is_read_by(document, job):
                del self._unread[id(document)]
                self._take_readings(document, candidates)

    def _is_read_by(self, document: Document, job: Job) -> bool:
        """Whether a page still waits for what this job reads."""
        _, its_job = self._unread.get(id(document), (None, None))
        return its_job is job

    def _take_readings(self, document: Document, candidates: list[tuple[Candidate, ...]]) -> None:
        document.take_readings(candidates)
        self.read.emit(document)

    def _fail(self, name: str, sentence: str) -> None:
        self.problem.emit(sentence if name in sentence else f"{name}: {sentence}")

    @Slot(object)
    def _leave(self, job: Job) -> None:
        """Give up the pages that a job did not come to read."""
        for document, its_job in list(self._unread.values()):
            if its_job is job:
                del self._unread[id(document)]
                self.left.emit(document)
        self._queue.remove(job)
        self._reads.pop(job, None)
        self._done = self._done + 1 if self._queue else 0
        if self._queue:
            self._show_progress(0, 0)
        else:
            self.reading_changed.emit(False)

    @Slot(int, int)
    def _show_progress(self, done: int, total: int) -> None:
        """Tell which file is being read, and which of several it is."""
        name, every = self._queue[0].name, self._done + len(self._queue)
        if every > 1:
            name = tr("{name} ({number} of {every})", name=name, number=self._done + 1, every=every)
        self.activity.emit(name, done, total)
