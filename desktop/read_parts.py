"""What the reading of a page gives to the desk, and how the desk tells that lines came, went or changed places."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PySide6.QtGui import QImage

from desktop.desk_line import Lines
from desktop.document import Document
from desktop.standing import Standing
from desktop.typed_page import is_typed
from recognition.result import Candidate

__all__ = ["FoundAgain", "FoundCrops", "Lay", "ReadAgain", "pixels_of", "places_of", "was_turned_by_hand"]


@dataclass(frozen=True, slots=True)
class FoundAgain:
    """A page, and the same as its lines were found anew."""

    document: Document
    found: Document

    def take(self) -> None:
        """Give the page its lines, and its picture where that was turned upright."""
        if self.found.turns:
            self.document.picture, self.document.halvings = self.found.picture, self.found.halvings
            self.document.size = self.found.size
            self.document.turns = (self.document.turns + self.found.turns) % 4
        self.document.take_found(self.found.lines)


@dataclass(frozen=True, slots=True)
class FoundCrops:
    """A page, and what the reader reads of each line that was found on it."""

    document: Document
    lines: Lines
    crops: Sequence[object]


@dataclass(frozen=True, slots=True)
class ReadAgain:
    """A page, and the readings of the lines that were found anew."""

    document: Document
    candidates: list[tuple[Candidate, ...]]


Lay = tuple[int, Standing]
"""By how many quarter turns a page was turned, and by whose word."""


def was_turned_by_hand(before: Lay, now: Lay) -> bool:
    """Whether the user turned a page between, or took that back."""
    return before[0] != now[0] and {before[1], now[1]} != {Standing.AS_FOUND}


def places_of(document: Document) -> object:
    """What changes when lines come, go or change places."""
    return len(document.lines) if is_typed(document) else tuple(line.box for line in document.lines)


def pixels_of(image: QImage) -> NDArray[np.uint8]:
    """The pixels of an image, RGB, shape (h, w, 3)."""
    rgb = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(rgb.constBits(), np.uint8).reshape(rgb.height(), rgb.bytesPerLine())
    return rows[:, : 3 * rgb.width()].reshape(rgb.height(), rgb.width(), 3).copy()
