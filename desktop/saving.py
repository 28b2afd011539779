"""Saving and copying the marked picture off the window's thread."""

from __future__ import annotations

import contextlib
import logging
from collections.abc import Callable, Iterator, Sequence
from functools import partial
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, Signal, SignalInstance

from desktop.document import Document
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.marked_pdf import marked_pdf, save_pdf
from desktop.marked_picture import marked_image, save_png
from desktop.reveal import Reveal
from desktop.whole_file import write_whole
from recognition.errors import InputError
from recognition.result import Tick

__all__ = ["Saving"]

log = logging.getLogger(__name__)


class Saving(QObject):
    """Writes pages as they stand at the moment they are to be saved."""

    saved = Signal(object)
    copied = Signal(object)
    problem = Signal(str)
    activity = Signal(str, int, int)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.jobs = Jobs(self)

    def save(self, document: Document, path: Path, reveal: Reveal) -> None:
        """Save the marked picture as it stands now, under a name that ends in .png or .pdf."""
        page = document.snapshot()
        write = save_pdf if path.suffix.lower() == ".pdf" else save_png

        def work(tick: Tick, give: Give) -> object:
            with _told(path):
                write(page, path, reveal=reveal, tick=tick)
            return path.name

        self._start(Job(tr("Saving {name}", name=path.name), work), self.saved)

    def save_all(
        self, documents: Sequence[Document], picture_of: Callable[[Document, int], NDArray[np.uint8] | None],
        path: Path, reveal: Reveal,
    ) -> None:  # fmt: skip
        """Save pages as they stand now as one PDF.

        Args:
            picture_of: gets the picture of a page that holds none, turned by so many quarter turns in all; called in
                the worker, one page after the other.
        """
        pages = [(document, document.snapshot()) for document in documents]

        def work(tick: Tick, give: Give) -> object:
            def each() -> Iterator[Document]:
                for number, (document, page) in enumerate(pages):
                    tick(number, len(pages))
                    page.picture = picture_of(document, page.turns) if page.picture is None else page.picture
                    yield page
                    page.picture = None

            with _told(path):
                write_whole(path, marked_pdf(each(), title=path.stem, reveal=reveal, tick=lambda done, total: None))
            return path.name

        self._start(Job(tr("Saving {name}", name=path.name), work), self.saved)

    def copy(self, document: Document, reveal: Reveal) -> None:
        """Draw the marked picture for the clipboard; `copied` brings it."""
        page = document.snapshot()
        self._start(Job(tr("Copying"), lambda tick, give: marked_image(page, reveal)), self.copied)

    def _start(self, job: Job, done: SignalInstance) -> None:
        job.progressed.connect(partial(self._show_progress, job.name))
        job.succeeded.connect(done)
        job.failed.connect(self.problem)
        self.jobs.start(job)
        self.activity.emit(job.name, 0, 0)

    def _show_progress(self, name: str, done: int, total: int) -> None:
        self.activity.emit(name, done, total)


@contextlib.contextmanager
def _told(path: Path) -> Iterator[None]:
    """Say in a sentence that a file could not be written."""
    try:
        yield
    except OSError as exc:
        log.warning("saving failed: %s", exc.strerror)
        words = tr("{name} could not be saved there. Choose another folder, or make room on the disk.", name=path.name)
        raise InputError(words) from exc
