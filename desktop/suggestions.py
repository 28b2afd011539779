"""The marks that the teacher's schemes suggest for the pages on the desk."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QObject, Signal, Slot

from checker.marking.result import Marks
from desktop.checker_process import CheckerProcess
from desktop.document import Document
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.pipeline import marks_of
from desktop.scheme_text import Scheme
from recognition.result import Tick

__all__ = ["Suggestions"]

_SECONDS_A_SCHEME = 5.0
"""Longest wait for the marks of one working."""


class Suggestions(QObject):
    """Asks the checker for marks, and keeps them while the page stays as it is."""

    suggested = Signal(object)
    problem = Signal(str)

    def __init__(
        self, checker: CheckerProcess, jobs: Jobs, documents: Sequence[Document], parent: QObject | None = None
    ) -> None:
        """Suggest for the documents of a list that is kept by its owner."""
        super().__init__(parent)
        self._checker = checker
        self._jobs = jobs
        self._documents = documents
        self.schemes: tuple[Scheme, ...] = ()
        self._marks: dict[int, tuple[Marks | None, ...]] = {}

    def take_schemes(self, schemes: tuple[Scheme, ...]) -> None:
        """Suggest marks by these schemes from now on, on every page."""
        self.schemes = schemes
        self._marks.clear()
        for document in self._documents:
            if document.verdicts:
                self.suggest(document)
            self.suggested.emit(document)

    def marks_of(self, document: Document, index: int) -> Marks | None:
        """The marks suggested for the working that holds a line; None when there are none."""
        found, marks = document.verdict_of(index), self._marks.get(id(document), ())
        if found is None or len(marks) != len(document.verdicts):
            return None
        return marks[document.verdicts.index(found[0])]

    def forget(self, document: Document) -> None:
        """Drop what was suggested for a page."""
        self._marks.pop(id(document), None)

    def suggest(self, document: Document) -> None:
        """Ask for the marks of a checked page; `suggested` tells of them."""
        if not self.schemes or document not in self._documents:
            return
        lines, verdicts, schemes, revision = document.lines, document.verdicts, self.schemes, document.revision

        def work(tick: Tick, give: Give) -> object:
            light = tuple(replace(line, candidates=(), polygon=()) for line in lines)
            longest = _SECONDS_A_SCHEME * (len(verdicts) + 2)
            marks = self._checker.call(marks_of, light, verdicts, schemes, longest_s=longest, tick=tick)
            return document, revision, schemes, marks

        job = Job(tr("Suggesting marks"), work)
        job.succeeded.connect(self._take)
        job.failed.connect(self.problem)
        self._jobs.start(job)

    @Slot(object)
    def _take(self, suggested: tuple[Document, int, tuple[Scheme, ...], tuple[Marks | None, ...]]) -> None:
        document, revision, schemes, marks = suggested
        if document.revision == revision and schemes is self.schemes:
            self._marks[id(document)] = marks
            self.suggested.emit(document)
