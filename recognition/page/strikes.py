"""Has a whole line been struck out?"""

from __future__ import annotations

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.pieces import Pieces

__all__ = ["is_struck_out"]

_LEAST_SPAN = 0.72
"""Share of the line's length that a striking stroke must cover."""


def is_struck_out(own: NDArray[np.uint8], boxes: NDArray[np.float64], pieces: Pieces) -> bool:
    """Tell whether a line is crossed through from end to end, or scribbled over.

    Args:
        own: ink of the line alone, 255 on 0.
        boxes: boxes of its pieces.
        pieces: all pieces of the page, for letter height and pen.
    """
    height, width = own.shape
    if width < 2 * pieces.letter or height < 4:
        return False
    ink = own > 0
    if ink.mean() > 0.5 and height > 0.7 * pieces.letter:
        return True  # scribbled over
    if float((boxes[:, 2] - boxes[:, 0]).max()) < 0.9 * _LEAST_SPAN * width:
        return False  # a stroke through the line would tie its letters to one long piece
    return _crossed_by_straight_stroke(own, pieces)


def _crossed_by_straight_stroke(own: NDArray[np.uint8], pieces: Pieces) -> bool:
    """Look for one long stroke that letters cross; a fraction bar or a root's roof is not crossed."""
    height, width = own.shape
    found = cv2.HoughLinesP(
        own, 1, np.pi / 360, threshold=int(0.5 * width), minLineLength=_LEAST_SPAN * width, maxLineGap=pieces.pen
    )
    if found is None:
        return False
    reach = max(3, round(1.5 * pieces.pen))
    for x0, y0, x1, y1 in found.reshape(-1, 4)[:50]:
        columns = np.arange(int(x0), int(x1) + 1)
        if columns.size < _LEAST_SPAN * width:
            continue
        rows = np.rint(np.interp(columns, [x0, x1], [y0, y1])).astype(int)
        middle = np.clip(rows, 1, height - 2)
        inked = (own[middle, columns] > 0) | (own[middle - 1, columns] > 0) | (own[middle + 1, columns] > 0)
        if inked.mean() < 0.93:
            continue
        above, below = np.clip(rows - reach, 0, height - 1), np.clip(rows + reach, 0, height - 1)
        up, down = own[above, columns] > 0, own[below, columns] > 0
        window = max(3, round(0.3 * pieces.letter))
        near_up = np.convolve(up, np.ones(window), "same") > 0
        near_down = np.convolve(down, np.ones(window), "same") > 0
        crossings = (near_up & near_down).astype(np.int8)
        count = int(np.count_nonzero(np.diff(crossings) > 0)) + int(crossings[0])
        if count >= max(3, 0.35 * width / pieces.letter / 1.5) and crossings.mean() > 0.2:
            return True
    return False
