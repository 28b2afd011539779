"""The set that lies on the desk: made, opened, kept and closed; large pictures come from it when they are looked at."""

from __future__ import annotations

import contextlib
import logging
from collections.abc import Callable
from datetime import datetime
from functools import partial
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, Signal, Slot

from checker.errors import InputError as CheckerInputError
from desktop.autosave import Autosave
from desktop.desk import Desk
from desktop.document import Document
from desktop.halvings import halved
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.store import SetFile
from desktop.store_file import ENDING
from recognition.errors import InputError
from recognition.result import Tick

__all__ = ["Sets"]

log = logging.getLogger(__name__)

_SCHEME = "mark scheme"
"""Name under which a set keeps its mark scheme, as the teacher typed it."""


class Sets(QObject):
    """Keeps what lies on the desk in one set at a time."""

    opened = Signal(object)
    keeping = Signal(bool)
    pictured = Signal(object)

    def __init__(self, desk: Desk, folder: Path, parent: QObject | None = None) -> None:
        """Watch a desk; sets without a name of the user's lie in `folder`, which is made when it is needed."""
        super().__init__(parent)
        self._desk = desk
        self._folder = folder
        self._autosave: Autosave | None = None
        self._jobs = Jobs(self)
        self._shown: Document | None = None
        self._closing = False
        desk.hands.picture_of = self.picture_of
        desk.document_added.connect(self._on_added)
        desk.document_removed.connect(self._on_removed)
        desk.activated.connect(self._on_activated)
        desk.scheme_changed.connect(self._on_scheme_changed)

    @property
    def path(self) -> Path | None:
        """The file of the set on the desk; None while it is being opened or could not be made."""
        return None if self._autosave is None else self._autosave.store.path

    @property
    def busy(self) -> bool:
        """Whether a set is being opened, or something is not kept yet."""
        return self._jobs.busy or (self._autosave is not None and not self._autosave.is_clean)

    def start_new(self) -> None:
        """Begin an unnamed set with the pages that lie on the desk."""
        self._start(tr("Making a set"), self._make_unnamed, self._take_new)

    def clear(self) -> None:
        """Put the set away and begin an empty one."""
        if self._may_leave():
            self._leave()
            self._clear_desk()
            self._desk.take_scheme_text("")
            self.start_new()

    def open(self, path: Path) -> None:
        """Put the pages of another set on the desk in place of those there; on failure these stay."""
        if self.path is not None and path.absolute() == self.path.absolute():
            return
        if self._may_leave():
            self._start(tr("Opening {name}", name=path.name), lambda: SetFile.open(path), self._take_opened)

    def save_as(self, path: Path) -> None:
        """Copy the set to another file, and go on there; the first one stays as it is now."""
        autosave = self._autosave
        if autosave is None or path.absolute() == autosave.store.path.absolute():
            return

        def work(tick: Tick, give: Give) -> SetFile:
            autosave.store.copy_to(path)
            return SetFile.open(path)

        job = Job(tr("Saving {name}", name=path.name), work)
        job.succeeded.connect(self._move)
        job.failed.connect(self._desk.problem)
        autosave.start(job)

    def close(self) -> bool:
        """Keep all that is left and close the file; returns whether all is kept."""
        self._closing = True
        self._jobs.close()
        autosave, self._autosave = self._autosave, None
        if autosave is None:
            return True
        is_empty = self._is_empty_unnamed(autosave)
        clean = autosave.close()
        if is_empty:
            with contextlib.suppress(OSError):
                autosave.store.path.unlink()
        return clean

    def picture_of(self, document: Document, turns: int) -> NDArray[np.uint8] | None:
        """A page's picture from the set, turned by so many quarter turns in all; in any thread.

        None where the set has none, or the page has left it.
        """
        autosave = self._autosave
        return autosave.picture_of(document, turns) if autosave is not None and autosave.watches(document) else None

    def finish(self) -> bool:
        """Keep all that is left and go on; returns whether all is kept."""
        return self._autosave is None or self._autosave.finish()

    # Making and opening ------------------------------------------------------------------------------------------

    def _start(self, name: str, make: Callable[[], SetFile], take: Callable[[SetFile], None]) -> None:
        job = Job(name, lambda tick, give: make())
        job.succeeded.connect(take)
        job.failed.connect(self._desk.problem)
        if take == self._take_opened:
            job.failed.connect(self._on_not_opened)
        self._jobs.start(job)

    @Slot(str)
    def _on_not_opened(self, sentence: str) -> None:
        if self._autosave is None and not self._closing:
            self.start_new()

    def _make_unnamed(self) -> SetFile:
        try:
            self._folder.mkdir(parents=True, exist_ok=True)
        except OSError as exc:
            raise InputError(
                tr(
                    "The folder {folder} cannot be made, so nothing is kept. Save the set under a name of your own.",
                    folder=self._folder,
                )
            ) from exc
        name = f"{tr('Desk')} {datetime.now():%Y-%m-%d %H.%M.%S}"
        path, number = self._folder / f"{name}{ENDING}", 1
        while path.exists():
            number += 1
            path = self._folder / f"{name} {number}{ENDING}"
        return SetFile.create(path)

    @Slot(object)
    def _take_new(self, store: SetFile) -> None:
        carried = tuple(self._desk.documents)
        self._take(store)
        if self._autosave is not None:
            for document in carried:
                self._autosave.watch(document)
            self._on_scheme_changed(self._desk.scheme_text)

    @Slot(object)
    def _take_opened(self, store: SetFile) -> None:
        if not self._closing:
            self._leave()
            self._clear_desk()
            self._desk.take_scheme_text("")
        self._take(store)

    def _take(self, store: SetFile) -> None:
        if self._closing:
            store.close()
            return
        self._leave()
        autosave = self._autosave = Autosave(store, self)
        autosave.kept.connect(self._on_kept)
        autosave.failed.connect(self._desk.problem)
        self._show_scheme(store.info.get(_SCHEME, ""))
        for page in store.pages():
            autosave.watch(page.document, key=page.key)
            self._desk.lay(page.document)
            if page.document.is_unread:
                self._desk.read_again(page.document, partial(store.picture, page.key))
        log.info("a set of %d pages", autosave.pages)
        self.opened.emit(store.path)

    @Slot(object)
    def _move(self, store: SetFile) -> None:
        if self._autosave is not None and not self._closing:
            self._autosave.move_to(store)
            self.opened.emit(store.path)
        else:
            store.close()

    def _may_leave(self) -> bool:
        if self._autosave is None or not self._autosave.has_failed:
            return True
        self._desk.problem.emit(
            tr(
                "{name} lacks your last changes, so it stays open. Save it under another name.",
                name=self._autosave.store.path.name,
            )
        )
        return False

    def _leave(self) -> None:
        """Let the set go; what is left is written while the window goes on."""
        autosave, self._autosave = self._autosave, None
        if autosave is not None:
            autosave.leave()

    def _is_empty_unnamed(self, autosave: Autosave) -> bool:
        return not autosave.pages and autosave.store.path.parent == self._folder

    def _clear_desk(self) -> None:
        for document in tuple(self._desk.documents):
            self._desk.remove(document)

    # Pages -------------------------------------------------------------------------------------------------------

    @Slot(object)
    def _on_added(self, document: Document) -> None:
        if self._autosave is not None and not self._autosave.watches(document):
            self._autosave.watch(document)
            self.keeping.emit(False)

    def _show_scheme(self, text: str) -> None:
        if text:
            try:
                self._desk.take_scheme_text(text)
            except CheckerInputError as exc:  # of a version that took other schemes; it stays in the set
                self._desk.problem.emit(str(exc))

    @Slot(str)
    def _on_scheme_changed(self, text: str) -> None:
        if self._autosave is not None and self._autosave.store.info.get(_SCHEME, "") != text:
            self._autosave.note(_SCHEME, text)

    @Slot(object)
    def _on_removed(self, document: Document) -> None:
        if self._autosave is not None and self._autosave.watches(document):
            self._autosave.forget(document)

    @Slot()
    def _on_kept(self) -> None:
        self.keeping.emit(True)
        self._let_pictures_go()

    @Slot(object)
    def _on_activated(self, document: Document | None) -> None:
        self._shown = document
        if document is not None and document.picture is None:
            self._fetch(document)
        self._let_pictures_go()

    def _let_pictures_go(self) -> None:
        """Hold one large picture only, that of the page that is shown; the file has the others."""
        if self._autosave is None:
            return
        for document in self._desk.documents:
            if document is self._shown or document.picture is None or self._desk.is_being_read(document):
                continue
            if self._autosave.is_kept(document):
                document.let_picture_go()

    def _fetch(self, document: Document) -> None:
        autosave = self._autosave
        if autosave is None or not autosave.watches(document):
            return

        def work(tick: Tick, give: Give) -> object:
            turns = document.turns
            picture = autosave.picture_of(document, turns)
            return document, turns, picture, () if picture is None else halved(picture)

        job = Job(tr("Opening the picture"), work)
        job.succeeded.connect(self._take_picture)
        job.failed.connect(self._desk.problem)
        autosave.start(job)

    @Slot(object)
    def _take_picture(self, fetched: tuple[Document, int, np.ndarray | None, tuple[np.ndarray, ...]]) -> None:
        document, turns, picture, halvings = fetched
        if document is not self._shown or document.picture is not None or picture is None:
            return
        if document.turns != turns:  # the user turned it meanwhile
            self._fetch(document)
            return
        document.picture, document.halvings = picture, halvings
        self.pictured.emit(document)
        self._desk.look_at_turned(document)
