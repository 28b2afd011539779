"""Confirmed lines weigh the readings of the other lines in the same hand, off the window's thread."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QObject, QTimer, Signal, Slot

from desktop.desk_line import DeskLine, State, weighed_by_hand
from desktop.document import Document
from desktop.hand_pages import HandLine, HandPage, Weighed
from desktop.jobs import Give, Job, Jobs
from desktop.language import tr
from desktop.reading import PageReader
from desktop.typed_page import is_typed
from recognition.page_letters import LEAST_LINES
from recognition.result import Tick

__all__ = ["Hands"]

_PAUSE_MS = 150
"""Wait after a confirmation before weighing, so that a run of them is weighed once."""
_MOST_PAGES = 8
"""Pages whose crops are held; those of others are cut out anew."""

Place = tuple[object, ...]
Told = tuple[tuple[Document, tuple[DeskLine, ...]], ...]
"""The pages of one hand with their lines as they were when weighing began."""
PictureOf = Callable[[Document, int], NDArray[np.uint8] | None]


class Hands(QObject):
    """Watches documents; pages with one candidate number are in one hand. Weighing is no step to undo.

    What is weighed follows from the confirmed lines alone, so undoing a confirmation takes its weight back.
    """

    weighed = Signal(object)
    busy_changed = Signal(bool)

    def __init__(
        self, reader: PageReader, documents: Sequence[Document], rests: Callable[[Document], bool],
        parent: QObject | None = None,
    ) -> None:  # fmt: skip
        """
        Args:
            documents: all pages of the desk, as they come and go.
            rests: whether a page is not being read.
        """
        super().__init__(parent)
        self.picture_of: PictureOf = lambda document, turns: None
        """Gets a picture that a document does not hold; called in the worker."""
        self._reader = reader
        self._documents = documents
        self._rests = rests
        self._jobs = Jobs(self)
        self._jobs.busy_changed.connect(self.busy_changed)
        self._job: Job | None = None
        self._crops: OrderedDict[int, tuple[Document, dict[Place, Any]]] = OrderedDict()
        self._seen: dict[int, tuple[str, object]] = {}
        self._waiting: list[Document] = []
        self._looked_at: tuple[Document | None, int] = (None, -1)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE_MS)
        self._timer.timeout.connect(self._start)

    @property
    def busy(self) -> bool:
        return self._jobs.busy or self._timer.isActive()

    def take_crops(self, document: Document, lines: Sequence[DeskLine], crops: Sequence[Any]) -> None:
        """Keep what the reader reads of each line, since it need not be cut out again then."""
        self._crops[id(document)] = (document, {_place(line): crop for line, crop in zip(lines, crops, strict=True)})
        self._crops.move_to_end(id(document))
        while len(self._crops) > _MOST_PAGES:
            self._crops.popitem(last=False)

    def look_at(self, document: Document | None, index: int) -> None:
        """The line that the user looks at; its reading does not change."""
        self._looked_at = document, index

    def watch(self, document: Document) -> None:
        """Take a page over as it is."""
        self._seen[id(document)] = document.candidate, _word_of(document)

    def forget(self, document: Document) -> None:
        self._seen.pop(id(document), None)
        self._crops.pop(id(document), None)
        if document in self._waiting:
            self._waiting.remove(document)

    def look(self, document: Document) -> None:
        """Notice what the user has confirmed, or taken back."""
        before, now = self._seen.get(id(document)), (document.candidate, _word_of(document))
        if before is None or before == now or is_typed(document):
            return
        self._seen[id(document)] = now
        touched = [document]
        if before[0] != now[0]:  # those that it leaves lose what it told
            touched += [other for other in self._documents if other.candidate and other.candidate == before[0]]
        self._waiting += [one for one in touched if one not in self._waiting]
        if self._job is not None:
            self._job.cancel()
        self._timer.start()

    def cancel_all(self) -> None:
        self._timer.stop()
        self._jobs.cancel_all()

    def close(self) -> bool:
        self.cancel_all()
        return self._jobs.close()

    @Slot()
    def _start(self) -> None:
        waiting, self._waiting = self._waiting, []
        done: list[Document] = []
        for document in waiting:
            if document in done or document not in self._documents:
                continue
            pages = self._in_one_hand(document)
            done += pages
            told = tuple((page, page.lines) for page in pages)
            lines = [line for page in pages for line in page.lines]
            if sum(_is_told(line) for line in lines) >= LEAST_LINES:
                if any(_is_open(line) for line in lines):
                    self._weigh(told)
            else:
                for page in pages:  # too little is known, or no longer enough
                    self._take_page(page, [line.as_read or line.candidates for line in page.lines])

    def _in_one_hand(self, document: Document) -> list[Document]:
        others = (page for page in self._documents if document.candidate and page.candidate == document.candidate)
        return [page for page in dict.fromkeys((document, *others)) if not is_typed(page) and self._rests(page)]

    def _weigh(self, told: Told) -> None:
        pages = tuple((page, self._hand_page(page)) for page, _ in told)
        job = Job(tr("Weighing the readings"), partial(self._weighed, told, pages))
        job.succeeded.connect(self._take)
        job.ended.connect(self._leave)
        self._job = job
        self._jobs.start(job)

    def _hand_page(self, page: Document) -> HandPage:
        _, crops = self._crops.get(id(page), (page, {}))
        lines = tuple(
            HandLine(line.polygon or line.box, crops.get(_place(line)), line.latex if _is_told(line) else None,
                     (line.as_read or line.candidates) if _is_open(line) else ())
            for line in page.lines if _is_told(line) or _is_open(line)
        )  # fmt: skip
        whole = page.picture if any(line.crop is None for line in lines) else None
        return HandPage(lines, whole, tuple(stroke.points for stroke in page.strokes) if whole is not None else ())

    def _weighed(
        self, told: Told, pages: tuple[tuple[Document, HandPage], ...], tick: Tick, give: Give
    ) -> tuple[Told, list[Weighed]]:
        tick(0, 0)
        return told, self._reader.weigh([self._with_picture(*page) for page in pages], tick=tick)

    def _with_picture(self, document: Document, page: HandPage) -> HandPage:
        """The page with its picture out of the set, where lines must be cut and the desk does not hold it."""
        if page.picture is not None or all(line.crop is not None for line in page.lines):
            return page
        return HandPage(page.lines, self.picture_of(document, document.turns), page.strokes)

    @Slot(object)
    def _take(self, answer: tuple[Told, list[Weighed]]) -> None:
        told, weighed = answer
        for (page, lines), of_page in zip(told, weighed, strict=True):
            if page not in self._documents or not self._rests(page):
                continue
            used = [line for line in lines if _is_told(line) or _is_open(line)]
            found = {_place(used[number]): crop for number, crop in of_page.cut.items()}
            if found:
                _, known = self._crops.pop(id(page), (page, {}))
                self._crops[id(page)] = page, {**known, **found}
            if page.lines != lines:  # the user went on
                self._waiting += [] if page in self._waiting else [page]
                self._timer.start()
                continue
            new = dict(zip(map(_place, used), of_page.candidates, strict=True))
            self._take_page(page, [new.get(_place(line), ()) for line in lines])

    def _take_page(self, page: Document, candidates: Sequence[tuple[Any, ...]]) -> None:
        looked_at = self._looked_at[1] if self._looked_at[0] is page else -1
        lines = tuple(
            weighed_by_hand(line, found, keeps_first=index == looked_at)
            for index, (line, found) in enumerate(zip(page.lines, candidates, strict=True))
        )
        if lines != page.lines:
            page.take_weighed(lines)
            self.weighed.emit(page)

    @Slot(object)
    def _leave(self, job: Job) -> None:
        if self._job is job:
            self._job = None


def _place(line: DeskLine) -> Place:
    return tuple(line.box), line.polygon


def _is_told(line: DeskLine) -> bool:
    """Whether the user has said what a line says."""
    return line.state is State.CONFIRMED and not line.struck_out and not line.is_blank


def _is_open(line: DeskLine) -> bool:
    return line.state in (State.READ, State.DOUBTFUL) and not line.struck_out and bool(line.candidates)


def _word_of(document: Document) -> object:
    """All that weighs: what is confirmed, and of which lines the readings are open."""
    return tuple((_place(line), line.latex if _is_told(line) else None, _is_open(line)) for line in document.lines)
