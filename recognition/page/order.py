"""In which order are the lines of a page read?"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from recognition.page.pieces import outline

__all__ = ["reading_order"]

_LEAST_GUTTER = 0.4
"""Letter heights of the strip between two columns at its narrowest."""
_MOST_ACROSS = 3
"""Lines above and below two columns, such as a printed question, that run across the strip between them."""


def reading_order(boxes: NDArray[np.float64], groups: list[list[int]], letter: float) -> list[list[int]]:
    """Sort lines from top to bottom, a left column before a right one.

    Args:
        boxes: x0, y0, x1, y1 of each piece.
        groups: pieces of each line.
        letter: typical height of a letter.
    """
    if not groups:
        return []
    outlines = np.array([outline(boxes[group]) for group in groups])
    return [groups[i] for i in _ordered(outlines, list(range(len(groups))), letter)]


def _ordered(outlines: NDArray[np.float64], chosen: list[int], letter: float) -> list[int]:
    split = _gutter(outlines, chosen, letter)
    if split is not None:
        left = [i for i in chosen if (outlines[i, 0] + outlines[i, 2]) / 2 < split]
        right = [i for i in chosen if i not in set(left)]
        return _ordered(outlines, left, letter) + _ordered(outlines, right, letter)
    band = _band(outlines, chosen, letter)
    if band is None:
        return _rows(outlines, chosen)
    above, beside, below = band
    return _rows(outlines, above) + _ordered(outlines, beside, letter) + _ordered(outlines, below, letter)


def _band(
    outlines: NDArray[np.float64], chosen: list[int], letter: float
) -> tuple[list[int], list[int], list[int]] | None:
    """Columns between a few lines above and below that run across them; None where there are none."""
    down = sorted(chosen, key=lambda i: float(outlines[i, 1] + outlines[i, 3]))
    for outside in range(1, _MOST_ACROSS + 1):
        for top in range(outside, -1, -1):
            stop = len(down) - (outside - top)
            beside = down[top:stop]
            split = _gutter(outlines, beside, letter)
            if split is not None and all(outlines[i, 0] < split < outlines[i, 2] for i in down[:top] + down[stop:]):
                return down[:top], beside, down[stop:]
    return None


def _gutter(outlines: NDArray[np.float64], chosen: list[int], letter: float) -> float | None:
    """Middle of an empty upright strip with at least two lines on each side that run beside each other."""
    if len(chosen) < 4:
        return None
    part = outlines[chosen]
    best: tuple[float, float] | None = None
    for edge in np.unique(part[:, 2]):
        left = part[part[:, 2] <= edge + 1e-6]
        right = part[part[:, 2] > edge + 1e-6]
        if len(left) < 2 or len(right) < 2:
            continue
        width = float(right[:, 0].min() - edge)
        if width < _LEAST_GUTTER * letter:
            continue
        shared = min(left[:, 3].max(), right[:, 3].max()) - max(left[:, 1].min(), right[:, 1].min())
        shorter = min(np.ptp(left[:, [1, 3]]), np.ptp(right[:, [1, 3]]))
        if shared > 0.5 * shorter and (best is None or width > best[0]):
            best = (width, float(edge + width / 2))
    return None if best is None else best[1]


def _rows(outlines: NDArray[np.float64], chosen: list[int]) -> list[int]:
    """Top to bottom; lines that share most of their height are read from the left."""
    waiting = sorted(chosen, key=lambda i: float(outlines[i, 1] + outlines[i, 3]))
    order: list[int] = []
    while waiting:
        first = waiting.pop(0)
        row = [first]
        for i in list(waiting):
            shared = min(outlines[i, 3], outlines[first, 3]) - max(outlines[i, 1], outlines[first, 1])
            lower = min(outlines[i, 3] - outlines[i, 1], outlines[first, 3] - outlines[first, 1])
            apart = min(outlines[i, 2], outlines[first, 2]) <= max(outlines[i, 0], outlines[first, 0])
            if shared > 0.5 * lower and apart:
                row.append(i)
                waiting.remove(i)
        order.extend(sorted(row, key=lambda i: float(outlines[i, 0])))
    return order
