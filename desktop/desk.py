"""The desk: the documents that lie on it, reading and checking them off the window's thread."""

from __future__ import annotations

import logging
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, QTimer, Signal, Slot
from PySide6.QtGui import QImage, QUndoGroup, QUndoStack

from checker.marking.result import Marks
from desktop.ahead import load_parser, typeset_slips
from desktop.checker_process import CheckerProcess
from desktop.claims import Claims
from desktop.corrections import Corrections
from desktop.desk_line import Lines
from desktop.document import AnyChange, Document, WorkingVerdict
from desktop.hands import Hands
from desktop.intake import Intake
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.maths import load_typesetter
from desktop.pen_desk import PenDesk
from desktop.pen_page import PEN_PAGE, is_pen_page, new_pen_page
from desktop.read_parts import places_of, was_turned_by_hand
from desktop.reading import PageReader
from desktop.reveal import EVERYTHING, Reveal
from desktop.saving import Saving
from desktop.scheme_text import Scheme, read_scheme_text
from desktop.standing import Standing
from desktop.suggestions import Suggestions
from desktop.typed_page import is_typed, lay_out, typed_document
from desktop.undo import ChangeCommand
from recognition.result import Candidate, Tick

__all__ = ["Desk"]

log = logging.getLogger(__name__)

_PAUSE_MS = 120
"""Wait after a change before checking, so that a run of changes is checked once."""

Read = tuple[Document, list[tuple[Candidate, ...]]]
Judged = tuple[Document, int, tuple[WorkingVerdict, ...]]


class Desk(QObject):
    """Owns documents, their undo stacks, the reader and the checker."""

    document_added = Signal(object)
    document_removed = Signal(object)
    activated = Signal(object)
    document_changed = Signal(object)
    document_read = Signal(object)
    document_checked = Signal(object)
    marks_suggested = Signal(object)
    scheme_changed = Signal(str)
    saved = Signal(object)
    copied = Signal(object)
    problem = Signal(str)
    activity = Signal(str, int, int)
    reading_changed = Signal(bool)
    idle = Signal()

    def __init__(
        self, parent: QObject | None = None, *, reader: PageReader | None = None, checker: CheckerProcess | None = None
    ) -> None:
        """Make an empty desk; a reader and a checker that are passed in stay open when the desk is closed."""
        super().__init__(parent)
        self.documents: list[Document] = []
        self.undo_group = QUndoGroup(self)
        self._stacks: dict[int, QUndoStack] = {}
        self._reader = reader or PageReader()
        self._checker = checker or CheckerProcess()
        self._owns_checker = checker is None
        self._intake = Intake(self._reader, self)
        self._intake.found.connect(self._add)
        self._intake.read.connect(self._take_read)
        self._intake.left.connect(self.document_changed)
        self._intake.problem.connect(self.problem)
        self._intake.activity.connect(self.activity)
        self._intake.reading_changed.connect(self.reading_changed)
        self._reads = self._intake.jobs
        self.corrections = Corrections(self._reader, self.do, self)
        self.corrections.problem.connect(self.problem)
        self.corrections.busy_changed.connect(self._tell_correcting)
        self.pen = PenDesk(self._reader, self)
        self.pen.problem.connect(self.problem)
        self.pen.busy_changed.connect(self._tell_idle)
        self.hands = Hands(self._reader, self.documents, lambda document: not self.is_being_read(document), self)
        self.hands.busy_changed.connect(self._tell_idle)
        self._intake.cut.connect(self.hands.take_crops)
        self._checks = Jobs(self)
        self.claims = Claims(self._checker, self._checks, self)
        self.claims.problem.connect(self.problem)
        self._suggestions = Suggestions(self._checker, self._checks, self.documents, self)
        self._suggestions.suggested.connect(self.marks_suggested)
        self._suggestions.problem.connect(self.problem)
        self._saving = Saving(self)
        self._saving.saved.connect(self.saved)
        self._saving.copied.connect(self.copied)
        self._saving.problem.connect(self.problem)
        self._saving.activity.connect(self.activity)
        self._saves = self._saving.jobs
        self._saves.busy_changed.connect(self._tell_idle)
        self._reads.busy_changed.connect(self._tell_idle)
        self._checks.busy_changed.connect(self._tell_idle)
        self._to_check: list[Document] = []
        self.scheme_text = ""
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE_MS)
        self._timer.timeout.connect(self._start_checks)

    @property
    def busy(self) -> bool:
        """Whether anything is being read, checked or saved, or waits for it."""
        return self._is_working or self.pen.busy or self.hands.busy or self._timer.isActive()

    @property
    def _is_working(self) -> bool:
        return self._reads.busy or self.corrections.busy or self._checks.busy or self._saves.busy

    def warm_up(self) -> None:
        """Start the checker and load the reader in the background."""

        def work(tick: Tick, give: Give) -> object:
            self._checker.start()
            load_typesetter()
            load_parser()
            self._reader.load()
            return None

        job = Job(tr("Starting"), work)
        job.failed.connect(self.problem)
        self._reads.start(job)

    def open(self, paths: Sequence[Path]) -> None:
        """Open files, one after the other; each page appears as soon as its lines are found."""
        for path in paths:
            self._intake.read_file(path)

    def open_picture(self, image: QImage) -> None:
        """Open a picture from the clipboard."""
        self._intake.read_picture(image)

    def read_again(self, document: Document, picture_of: Callable[[], NDArray[np.uint8] | None]) -> None:
        """Find and read the lines of a page that was kept before it was read.

        Args:
            document: the page; it may be changed again when it has been read.
            picture_of: gets its picture; called in the worker.
        """
        self._intake.read_again(document, picture_of)

    def add_typed(self, lines: list[str]) -> Document:
        """Lay a typed working on the desk."""
        number = 1 + sum(is_typed(document) for document in self.documents)
        document = typed_document(lines, number=number)
        self.add(document)
        return document

    def add_pen_page(self) -> Document:
        """Lay an empty page for the pen on the desk."""
        number = 1 + sum(document.file.startswith(PEN_PAGE) for document in self.documents)
        document = new_pen_page(number=number)
        self._add(document)
        return document

    def add(self, document: Document) -> None:
        """Lay a document on the desk and check it."""
        self._add(document)
        self.check(document)

    def lay(self, document: Document) -> None:
        """Lay a document on the desk as it was kept; it is checked when it has no verdicts yet."""
        self._add(document)
        if not document.verdicts:
            self.check(document)

    def remove(self, document: Document) -> None:
        """Take a document off the desk."""
        self.documents.remove(document)
        stack = self._stacks.pop(id(document))
        self._suggestions.forget(document)
        self.pen.forget(document)
        self.hands.forget(document)
        self.undo_group.removeStack(stack)
        stack.deleteLater()
        self.document_removed.emit(document)

    def activate(self, document: Document | None) -> None:
        """Make undo and redo those of a document."""
        self.undo_group.setActiveStack(None if document is None else self._stacks[id(document)])  # type: ignore[arg-type]
        self.activated.emit(document)

    def do(self, document: Document, change: AnyChange) -> None:
        """Make a change that can be undone."""
        self._stacks[id(document)].push(ChangeCommand(document, change))

    def do_all(self, document: Document, changes: Sequence[AnyChange], name: str) -> None:
        """Make several changes that are undone in one step."""
        if changes:
            stack = self._stacks[id(document)]
            stack.beginMacro(name)
            for change in changes:
                stack.push(ChangeCommand(document, change))
            stack.endMacro()

    def is_being_read(self, document: Document) -> bool:
        return self._intake.is_reading(document)

    def check_now(self, document: Document) -> None:
        """Check a document; one that reading was stopped on is read first."""
        if document.is_unread and document.picture is not None and not self.is_being_read(document):
            self._find_again(document)
        else:
            self.check(document)

    def look_at_turned(self, document: Document) -> None:
        """Find and read the lines of a page that the user turned, unless that is done or waits for its picture."""
        if document.standing is Standing.TURNED and not self.is_being_read(document):
            self._find_again(document)

    def _find_again(self, document: Document) -> None:
        if document.picture is not None:
            picture = document.picture
            self.read_again(document, lambda: picture)

    def check(self, document: Document) -> None:
        """Check a document after a short pause."""
        if document.lines and document not in self._to_check:
            self._to_check.append(document)
        self._timer.start()

    @property
    def schemes(self) -> tuple[Scheme, ...]:
        """The teacher's mark schemes, one for each working of a page; one alone serves every working."""
        return self._suggestions.schemes

    def take_scheme_text(self, text: str) -> None:
        """Suggest marks by the scheme as the teacher typed it; it is kept with the set.

        Raises:
            InputError: a line of it is not understood.
        """
        schemes = read_scheme_text(text)
        self.scheme_text = text
        self.take_schemes(schemes)
        self.scheme_changed.emit(text)

    def take_schemes(self, schemes: tuple[Scheme, ...]) -> None:
        """Suggest marks by these schemes from now on, on every page."""
        self._suggestions.take_schemes(schemes)

    def marks_of(self, document: Document, index: int) -> Marks | None:
        """The marks suggested for the working that holds a line; None when there are none."""
        return self._suggestions.marks_of(document, index)

    def stop(self) -> None:
        """Stop reading, checking and saving; a file that is not written yet stays as it was."""
        self._timer.stop()
        self._to_check.clear()
        self._reads.cancel_all()
        self.corrections.cancel_all()
        self.pen.cancel_all()
        self.hands.cancel_all()
        self._checks.cancel_all()
        self._saves.cancel_all()

    def close(self) -> bool:
        """Finish saving and stop the rest; returns whether all threads came to rest."""
        self._timer.stop()
        self._to_check.clear()
        self._reads.cancel_all()
        self.corrections.cancel_all()
        self.pen.cancel_all()
        self._checks.cancel_all()
        saved = self._saves.finish()
        readings = (self._reads.close(), self.corrections.close(), self.pen.close(), self.hands.close())
        rested = all((*readings, self._checks.close(), saved))
        if self._owns_checker:
            self._checker.close()
        return rested

    def save(self, document: Document, path: Path, reveal: Reveal = EVERYTHING) -> None:
        """Save the marked picture as it stands now, under a name that ends in .png or .pdf."""
        self._saving.save(document, path, reveal)

    def save_all(
        self, picture_of: Callable[[Document, int], NDArray[np.uint8] | None], path: Path, reveal: Reveal = EVERYTHING
    ) -> None:
        """Save every page as it stands now as one PDF; `picture_of` gets pictures that are not held, as `Saving`'s."""
        self._saving.save_all(self.documents, picture_of, path, reveal)

    def copy(self, document: Document, reveal: Reveal = EVERYTHING) -> None:
        """Draw the marked picture for the clipboard; `copied` brings it."""
        self._saving.copy(document, reveal)

    @Slot(object)
    def _take_read(self, document: Document) -> None:
        if document in self.documents:
            self.document_read.emit(document)

    @Slot(object)
    def _add(self, document: Document) -> None:
        self.documents.append(document)
        stack = QUndoStack(self)
        self._stacks[id(document)] = stack
        self.undo_group.addStack(stack)
        revision, places, lay = document.revision, places_of(document), (document.turns, document.standing)

        def changed() -> None:
            nonlocal revision, places, lay
            if document.revision != revision:
                revision = document.revision
                before, lay = lay, (document.turns, document.standing)
                if was_turned_by_hand(before, lay):
                    self._intake.leave(document)
                    self.look_at_turned(document)
                if places_of(document) != places:
                    places = places_of(document)
                    document.verdicts = ()  # they count the lines as they were
                if is_typed(document):
                    lay_out(document)
                elif is_pen_page(document):
                    self.pen.look(document)
                self.hands.look(document)
                self.check(document)
            self.document_changed.emit(document)

        if is_pen_page(document):
            self.pen.watch(document)
        self.hands.watch(document)
        document.listen(changed)
        self.document_added.emit(document)

    # Checking ----------------------------------------------------------------------------------------------------

    @Slot()
    def _start_checks(self) -> None:
        waiting, self._to_check = self._to_check, []
        for document in waiting:
            if document not in self.documents or self._intake.is_reading(document):
                continue
            lines, revision = document.lines, document.revision

            job = Job(tr("Checking"), partial(self._judge, document, lines, revision))
            job.progressed.connect(partial(self._show_progress, job.name))
            job.succeeded.connect(self._take_verdicts)
            job.failed.connect(self.problem)
            self._checks.start(job)

    def _judge(self, document: Document, lines: Lines, revision: int, tick: Tick, give: Give) -> Judged:
        verdicts = self._checker.judge(lines, tick=tick)
        typeset_slips(verdicts)
        return document, revision, verdicts

    @Slot(object)
    def _take_verdicts(self, judged: Judged) -> None:
        document, revision, verdicts = judged
        self._suggestions.forget(document)
        if document.show(verdicts, revision=revision):
            self.document_checked.emit(document)
            self._suggestions.suggest(document)

    def _show_progress(self, name: str, done: int, total: int) -> None:
        self.activity.emit(name, done, total)

    @Slot(bool)
    def _tell_correcting(self, busy: bool) -> None:
        if busy:
            self.activity.emit(tr("Reading the changed lines"), 0, 0)
        else:
            self._tell_idle(busy)

    @Slot(bool)
    def _tell_idle(self, busy: bool) -> None:
        if not self._is_working:
            self.idle.emit()
