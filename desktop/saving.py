"""Saving and copying the marked picture off the window's thread."""

from __future__ import annotations

import logging
from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal, SignalInstance

from desktop.document import Document
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.marked_pdf import save_pdf
from desktop.marked_picture import marked_image, save_png
from desktop.reveal import Reveal
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
            try:
                write(page, path, reveal=reveal, tick=tick)
            except OSError as exc:
                log.warning("saving failed: %s", exc.strerror)
                raise InputError(
                    tr(
                        "{name} could not be saved there. Choose another folder, or make room on the disk.",
                        name=path.name,
                    )
                ) from exc
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
