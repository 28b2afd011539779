"""Part what runs on across the empty strip between two columns."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

__all__ = ["split_at_gutters"]

_LEAST_GAP = 1.2
"""Letter heights between two signs of a line where a column may begin."""
_ALIGNED = 2.5
"""Letter heights within which the lines of a column begin."""
_SUPPORT = 2
"""So many other lines must lie on each side of the strip."""


def split_at_gutters(groups: Sequence[list[int]], boxes: NDArray[np.float64], letter: float) -> list[list[int]]:
    """Split lines that go on into the next column.

    A line is parted at a wide gap when other lines lie wholly to the left of it, others begin at its right end, and
    nothing stands in the strip between them. A question number is not parted from its line: nothing but numbers lies
    to the left of that gap.

    Args:
        groups: indices of the pieces of each line.
        boxes: x0, y0, x1, y1 of each piece.
        letter: usual height of a letter.
    """
    if len(groups) < 2 * _SUPPORT + 1:
        return list(groups)
    outlines = np.array([[*boxes[g, :2].min(axis=0), *boxes[g, 2:].max(axis=0)] for g in groups])
    out: list[list[int]] = []
    for number, group in enumerate(groups):
        rest = [piece for other, pieces in enumerate(groups) if other != number for piece in pieces]
        cut = _gutter(boxes[group], np.delete(outlines, number, axis=0), boxes[rest], letter)
        if cut is None:
            out.append(group)
        else:
            middles = (boxes[group, 0] + boxes[group, 2]) / 2
            out.append([piece for piece, x in zip(group, middles, strict=True) if x < cut])
            out.append([piece for piece, x in zip(group, middles, strict=True) if x >= cut])
    return out


def _gutter(
    line: NDArray[np.float64], others: NDArray[np.float64], pieces: NDArray[np.float64], letter: float
) -> float | None:
    """Where a line crosses a gutter; None where it does not.

    Args:
        line: boxes of its pieces; others: outlines of the other lines; pieces: boxes of their pieces.
    """
    middle = float(line[:, 1].min() + line[:, 3].max()) / 2
    order = np.argsort(line[:, 0])
    reach = np.maximum.accumulate(line[order, 2])[:-1]
    starts = line[order[1:], 0]
    for k in np.argsort(reach - starts):
        left, right = float(reach[k]), float(starts[k])
        if right - left < _LEAST_GAP * letter:
            return None
        beside = others[(others[:, 2] < right - 0.3 * letter) & (others[:, 2] - others[:, 0] > 2 * letter)]
        beyond = others[(others[:, 0] > left + 0.3 * letter) & (np.abs(others[:, 0] - right) < _ALIGNED * letter)]
        if len(beside) < _SUPPORT or len(beyond) < _SUPPORT:
            continue
        support = np.concatenate([_nearest(beside, middle), _nearest(beyond, middle)])
        top = min(float(support[:, 1].min()), float(line[:, 1].min()))
        bottom = max(float(support[:, 3].max()), float(line[:, 3].max()))
        inset = 0.2 * (right - left)
        between = (pieces[:, 2] > left + inset) & (pieces[:, 0] < right - inset)
        between &= (pieces[:, 3] > top) & (pieces[:, 1] < bottom)
        if not between.any():
            return (left + right) / 2
    return None


def _nearest(outlines: NDArray[np.float64], y: float) -> NDArray[np.float64]:
    """The few lines that are nearest to a height on the page."""
    distance = np.abs((outlines[:, 1] + outlines[:, 3]) / 2 - y)
    return outlines[np.argsort(distance)[:_SUPPORT]]
