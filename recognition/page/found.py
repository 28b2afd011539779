"""What the page stage hands on: one evened picture for each written line, with the way back to the original."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from recognition.result import Box

__all__ = ["FoundPage", "LineCrop", "Mark", "map_points"]


@dataclass(frozen=True, slots=True)
class LineCrop:
    """One written line.

    image: grey, shape (h, w), ink dark on white (255), light evened, neighbour lines masked out.
    box, polygon: in pixels of the original, the polygon clockwise from the top left.
    to_original: homography, shape (3, 3), from crop pixels to original pixels.
    working: number of the working on its page, as the layout tells (a gap, a column, a question number's place).
    goes_on: the line carries on the one before it, which was too long.
    """

    image: NDArray[np.uint8]
    box: Box
    polygon: tuple[tuple[float, float], ...]
    to_original: NDArray[np.float64]
    struck_out: bool = False
    working: int = 0
    goes_on: bool = False


@dataclass(frozen=True, slots=True)
class Mark:
    """A stroke of an earlier marking: its colour, "red" or "green", and its outline in pixels of the original."""

    colour: str
    polygon: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class FoundPage:
    """All lines of one page in reading order.

    size: (width, height) of the original in pixels.
    sheet: corners of the paper in the original, clockwise from the top left; None when the photo is used as it is.
    milliseconds: time spent by stage.
    marks: an earlier marking in red or green, which no line holds.
    turns: by how many quarter turns anticlockwise the writing is turned on the original, 0 to 3. Crops are upright.
    """

    lines: tuple[LineCrop, ...]
    size: tuple[int, int]
    sheet: tuple[tuple[float, float], ...] | None = None
    milliseconds: tuple[tuple[str, float], ...] = ()
    marks: tuple[Mark, ...] = ()
    turns: int = 0


def map_points(points: NDArray[np.float64], homography: NDArray[np.float64]) -> NDArray[np.float64]:
    """Map points, shape (n, 2), through a homography, shape (3, 3)."""
    lifted = np.column_stack([points, np.ones(len(points))]) @ homography.T
    mapped: NDArray[np.float64] = lifted[:, :2] / lifted[:, 2:3]
    return mapped
