"""From a file to documents: open it, find the lines, read them. No Qt: it runs in any thread."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from desktop.desk_line import DeskLine
from desktop.document import Document
from desktop.hand_pages import HandPage, HandStudies, Weighed
from desktop.language import tr, tr_later
from recognition.page_letters import with_page_letters
from recognition.result import Candidate, Tick, no_tick

if TYPE_CHECKING:
    from recognition.ink import InkLine
    from recognition.page import LineCrop
    from recognition.reader import LinePicture, LineStrokes, NeuralReader

__all__ = ["NO_WRITING", "FoundDocument", "PageReader"]

NO_WRITING = tr_later(
    "{name}: no writing was found. Check that it shows the written side, sharp and near enough to read, "
    "and take the picture again."
)


@dataclass(frozen=True, slots=True)
class FoundDocument:
    """A page whose lines are found and not yet read, with what the reader needs of each line."""

    document: Document
    crops: Sequence[LinePicture | LineStrokes]

    @property
    def name(self) -> str:
        """The file's name, with the page when it is not the first."""
        name = Path(self.document.file).name
        page = self.document.page + 1
        return name if page == 1 else tr("{name}, page {number}", name=name, number=page)


class PageReader:
    """Opens files and reads their lines; the weights are loaded when the first line is read."""

    def __init__(self, *, threads: int = 2) -> None:
        self._threads = threads
        self._reader: NeuralReader | None = None
        self._lock = threading.Lock()
        self._studies = HandStudies()

    def find(self, path: str | os.PathLike[str], *, tick: Tick = no_tick) -> Iterator[FoundDocument]:
        """Open a photo, scan, PDF or InkML file and find the lines of each page.

        Raises:
            InputError: the file cannot be used; the sentence says why and what to do next.
        """
        from recognition.read import is_ink

        if is_ink(Path(path)):
            yield _ink_document(path)
            return
        from recognition.page import open_pages

        for sheet in open_pages(path):
            yield self.find_in_picture(sheet.image, str(path), page=sheet.page, tick=tick)

    def find_in_picture(
        self, picture: NDArray[np.uint8], name: str, *, page: int = 0, turns: int | None = None, tick: Tick = no_tick
    ) -> FoundDocument:
        """Find the lines of a picture that is already in memory: RGB, shape (height, width, 3).

        A page whose writing lies on its side or head is turned upright; its places are those on the upright page.

        Args:
            turns: by how many quarter turns anticlockwise the writing is turned; None to tell it from the writing.
        """
        from desktop.upright import turned_crop, turned_picture
        from recognition.page import find_lines

        found = find_lines(picture, turns=turns, tick=lambda done, total: tick(0, 0))
        crops = [turned_crop(crop, found.turns, found.size) for crop in found.lines]
        upright = turned_picture(picture, found.turns)
        document = _document(name, page, (upright.shape[1], upright.shape[0]), upright, crops)
        document.turns = found.turns
        return FoundDocument(document, crops)

    def read(self, found: FoundDocument, *, tick: Tick = no_tick) -> list[tuple[Candidate, ...]]:
        """Read the lines of a page; struck-out lines are not read.

        Raises:
            ModelError: the weights are missing or damaged.
        """
        wanted = [i for i, line in enumerate(found.document.lines) if not line.struck_out]
        read = self.load().read([found.crops[i] for i in wanted], tick=tick) if wanted else []
        candidates: list[tuple[Candidate, ...]] = [()] * len(found.document.lines)
        for index, of_line in zip(wanted, read, strict=True):
            candidates[index] = of_line
        return with_page_letters(candidates)

    def weigh(self, pages: Sequence[HandPage], *, tick: Tick = no_tick) -> list[Weighed]:
        """Weigh lines by the confirmed ones of the same hand; no thread but one may be in here."""
        return self._studies.weigh(pages, self.load(), tick=tick)

    def load(self) -> NeuralReader:
        """The reader, loaded once."""
        from recognition.reader import NeuralReader

        with self._lock:
            if self._reader is None:
                self._reader = NeuralReader.load(threads=self._threads)
            return self._reader


def _ink_document(path: str | os.PathLike[str]) -> FoundDocument:
    from recognition.ink import Stroke, read_inkml, strokes_to_lines

    ink = read_inkml(Path(path))
    found = strokes_to_lines(ink)
    document = _document(str(path), 0, found.picture.size, found.picture.image, found.lines)
    document.strokes = tuple(Stroke(found.picture.placed(one), one.time, one.pressure) for one in ink.strokes)
    return FoundDocument(document, found.lines)


def _document(
    file: str, page: int, size: tuple[int, int], picture: NDArray[np.uint8], crops: Sequence[InkLine | LineCrop]
) -> Document:
    from desktop.halvings import halved

    lines = tuple(_unread_line(crop) for crop in crops)
    return Document(file=file, page=page, size=size, picture=picture, halvings=halved(picture), lines=lines)


def _unread_line(crop: InkLine | LineCrop) -> DeskLine:
    return DeskLine(
        box=crop.box, polygon=crop.polygon, struck_out=crop.struck_out, working=getattr(crop, "working", None),
        goes_on=getattr(crop, "goes_on", False),
    )  # fmt: skip
