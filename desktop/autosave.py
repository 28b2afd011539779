"""Keeps every change of the desk in the set's file within a second, off the window's thread."""

from __future__ import annotations

import logging

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, QTimer, Signal, Slot

from desktop.document import Document
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.store import KeptPage, SetFile
from recognition.result import Tick

__all__ = ["Autosave"]

log = logging.getLogger(__name__)

_PAUSE_MS = 250
"""From the first change that is not kept to the writing; later changes in that time go with it."""
_AGAIN_MS = 4000
"""From a writing that failed to the next try."""


class Autosave(QObject):
    """Watches documents and keeps them in one set. What could not be written is tried again until it is."""

    kept = Signal()
    failed = Signal(str)

    def __init__(self, store: SetFile, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.store = store
        self._keys: dict[int, tuple[int, Document]] = {}
        self._order: list[Document] = []
        self._dirty: set[int] = set()
        self._gone: list[int] = []
        self._info: dict[str, str] = {}
        self._jobs = Jobs(self)
        self._writing = False
        self._told = ""
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._write)

    @property
    def is_clean(self) -> bool:
        """Whether the file holds all there is."""
        return not self._waits and not self._writing

    @property
    def _waits(self) -> bool:
        return bool(self._dirty or self._gone or self._info)

    def note(self, name: str, value: str) -> None:
        """Keep something that belongs to the whole set, such as its mark scheme."""
        self._info[name] = value
        self._start(_PAUSE_MS)

    def watch(self, document: Document, *, key: int | None = None) -> None:
        """Keep a document from now on; `key` is that of the page it was read from, None for a new page."""
        self._order.append(document)
        self._keys[id(document)] = (self.store.new_key() if key is None else key, document)
        document.listen(lambda: self._changed(document))
        if key is None:
            self._changed(document)

    def forget(self, document: Document) -> None:
        """Take a document out of the set."""
        key, _ = self._keys.pop(id(document))
        self._order.remove(document)
        self._dirty.discard(id(document))
        self._gone.append(key)
        self._start(_PAUSE_MS)

    def is_kept(self, document: Document) -> bool:
        """Whether the file holds this document as it is, picture and all."""
        return id(document) in self._keys and id(document) not in self._dirty and not self._writing

    def watches(self, document: Document) -> bool:
        """Whether a document belongs to this set."""
        return id(document) in self._keys

    @property
    def pages(self) -> int:
        """How many pages the set has."""
        return len(self._order)

    def start(self, job: Job) -> None:
        """Run a job that asks the file, in turn with the writing."""
        self._jobs.start(job)

    def picture_of(self, document: Document, turns: int) -> NDArray[np.uint8] | None:
        """A document's picture from the file, turned so many times in all; to be called in a job of `start`."""
        return self.store.picture(self._keys[id(document)][0], as_turned=turns)

    def finish(self) -> bool:
        """Write what is left and wait for it; returns whether the file holds all there is."""
        self._timer.stop()
        self._jobs.finish()
        if not self.is_clean:
            self._write()
            self._jobs.finish()
        return self.is_clean

    def close(self) -> bool:
        """Write what is left and close the file; returns whether it holds all there is."""
        clean = self.finish()
        self.store.close()
        return clean

    @property
    def has_failed(self) -> bool:
        """Whether the last writing failed, so that the file lacks something."""
        return bool(self._told)

    def leave(self) -> None:
        """Write what is left and close the file, while the window goes on; this object then ends itself."""
        self._timer.stop()
        self._write()
        self._keys, self._order = {}, []
        job = Job(tr("Closing the set"), lambda tick, give: self.store.close())
        job.ended.connect(self._end)
        self._jobs.start(job)

    @Slot(object)
    def _end(self, job: object) -> None:
        self.deleteLater()

    def move_to(self, store: SetFile) -> None:
        """Go on in another file, which holds a copy of this one; this one is closed."""
        self._timer.stop()
        self._jobs.finish()
        self.store.close()
        self.store = store
        self._dirty = set(self._keys)
        self._told = ""
        self._start(0)

    def _changed(self, document: Document) -> None:
        if id(document) in self._keys:
            self._dirty.add(id(document))
            self._start(_PAUSE_MS)

    def _start(self, pause_ms: int) -> None:
        if not self._timer.isActive() and not self._writing:
            self._timer.start(pause_ms)

    @Slot()
    def _write(self) -> None:
        if self._writing or not self._waits:
            return
        dirty, gone, info = self._dirty, self._gone, self._info
        self._dirty, self._gone, self._info = set(), [], {}
        pages = []
        for place, document in enumerate(self._order):
            if id(document) in dirty:
                pages.append(KeptPage(self._keys[id(document)][0], place, document.snapshot()))
        self._writing = True

        def work(tick: Tick, give: Give) -> None:
            self.store.keep(pages, gone, info)

        job = Job(tr("Keeping the set"), work)
        job.succeeded.connect(self._on_kept)
        job.failed.connect(self._on_failed)
        self._pending = (dirty, gone, info)
        self._jobs.start(job)

    @Slot(object)
    def _on_kept(self, result: object) -> None:
        self._writing = False
        self._told = ""
        if self._waits:
            self._start(_PAUSE_MS)
        else:
            self.kept.emit()

    @Slot(str)
    def _on_failed(self, sentence: str) -> None:
        self._writing = False
        dirty, gone, info = self._pending
        self._dirty |= {number for number in dirty if number in self._keys}
        self._gone = [*gone, *self._gone]
        self._info = {**info, **self._info}
        self._start(_AGAIN_MS)
        if sentence != self._told:
            self._told = sentence
            self.failed.emit(sentence)
