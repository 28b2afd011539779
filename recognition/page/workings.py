"""Which lines make one working, as far as the layout tells: gaps, columns, and where a question number hangs out left.

What the lines say (a question number read, an equals sign at the start) is judged later, by whoever reads them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from recognition.page.pieces import outline

__all__ = ["Place", "places_in_workings"]

_WIDE_GAP = 2.0
"""A gap starts a working when it is so many times the usual gap of its column..."""
_WIDER_BY = 1.1
"""...and wider than that by so many letter heights."""
_HANGING = 1.0
"""Letter heights by which a first line hangs out to the left of the line before it and the line after it..."""
_HANGING_GAP = 0.5
"""...when a gap of so many letter heights parts its number from the rest, or the working before was indented."""
_INDENT = 1.3
"""Letter heights by which the rest of a line that was too long is set in."""
_FULL = 0.75
"""Share of its column that a line fills which had to be carried on below."""


@dataclass(frozen=True, slots=True)
class Place:
    """working: number of the working, counted in reading order; goes_on: the line carries on the one before it."""

    working: int
    goes_on: bool = False


def places_in_workings(
    lines: Sequence[NDArray[np.float64]], letter: float, struck_out: Sequence[bool]
) -> tuple[Place, ...]:
    """Give each line its working.

    Args:
        lines: of each line, in reading order, the boxes of its pieces, shape (n, 4) as x0, y0, x1, y1, page upright.
        letter: usual height of a letter.
        struck_out: lines that are crossed out; they take the working of the line before and part nothing.
    """
    if not lines:
        return ()
    outlines = np.array([outline(boxes) for boxes in lines])
    columns = _columns(outlines)
    places: list[Place] = []
    working = -1
    for column in columns:
        usual = _usual_gap(outlines[column])
        before: int | None = None
        right = float(outlines[column, 2].max())
        for place, number in enumerate(column):
            if struck_out[number] and before is not None:
                places.append(Place(working))
                continue
            after = column[place + 1] if place + 1 < len(column) else None
            goes_on = before is not None and _goes_on(outlines[before], outlines[number], right, usual, letter)
            if before is None or (
                not goes_on and _starts(outlines, before, number, after, lines[number], usual, letter)
            ):
                working += 1
            places.append(Place(working, goes_on))
            before = number
    return tuple(places)


def _columns(outlines: NDArray[np.float64]) -> list[list[int]]:
    """Runs of lines that go down the page; a line beside or above the one before it begins another run."""
    runs = [[0]]
    for number in range(1, len(outlines)):
        x0, y0, x1, y1 = outlines[number - 1]
        left, top, right, bottom = outlines[number]
        beside = min(y1, bottom) - max(y0, top) > 0.5 * min(y1 - y0, bottom - top) and (left >= x1 or right <= x0)
        if beside or bottom <= y0:
            runs.append([number])
        else:
            runs[-1].append(number)
    return runs


def _usual_gap(outlines: NDArray[np.float64]) -> float:
    gaps = np.maximum(outlines[1:, 1] - outlines[:-1, 3], 0)
    return float(np.percentile(gaps, 35)) if len(gaps) else 0.0


def _goes_on(
    before: NDArray[np.float64], line: NDArray[np.float64], right: float, usual: float, letter: float
) -> bool:
    """Is the line the rest of a full line above it?"""
    width = right - before[0]
    return bool(
        before[2] - before[0] > _FULL * width and width > 8 * letter
        and line[0] - before[0] > _INDENT * letter and line[2] - line[0] < 0.7 * (before[2] - before[0])
        and line[1] - before[3] < usual + 0.5 * letter
    )


def _starts(
    outlines: NDArray[np.float64], before: int, number: int, after: int | None, boxes: NDArray[np.float64],
    usual: float, letter: float,
) -> bool:
    gap = outlines[number, 1] - outlines[before, 3]
    if gap > max(_WIDE_GAP * usual, usual + _WIDER_BY * letter):
        return True
    left = outlines[number, 0]
    if outlines[before, 0] - left < _HANGING * letter:
        return False
    if after is not None and outlines[after, 0] - left < 0.5 * _HANGING * letter:
        return False
    return _label_gap(boxes) > _HANGING_GAP * letter


def _label_gap(boxes: NDArray[np.float64]) -> float:
    """The widest empty strip after the first few signs of a line, such as one after a question number."""
    order = np.argsort(boxes[:, 0])
    reach = np.maximum.accumulate(boxes[order, 2])
    gaps = boxes[order[1:], 0] - reach[:-1]
    return float(gaps[:4].max()) if len(gaps) else 0.0
