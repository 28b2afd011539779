"""Pieces of ink (connected components) of a page, and the typical height of a letter."""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["Pieces", "find_pieces"]


@dataclass(frozen=True, slots=True)
class Pieces:
    """labels: shape (h, w), 0 for paper, i + 1 for piece i; boxes: shape (n, 4) as x0, y0, x1, y1; area: pixels.

    letter: typical height of a letter or digit in pixels; pen: typical thickness of a stroke.
    """

    labels: NDArray[np.int32]
    boxes: NDArray[np.float64]
    area: NDArray[np.float64]
    letter: float
    pen: float


def find_pieces(mask: NDArray[np.uint8]) -> Pieces:
    """Connected pieces of an ink mask; specks, blots at the border and page-sized frames are left out."""
    height, width = mask.shape
    count, labels, stats, _ = cv2.connectedComponentsWithStats(mask, connectivity=8, ltype=cv2.CV_32S)
    x, y, w, h, area = (stats[1:, i].astype(np.float64) for i in range(5))
    if count <= 1:
        return Pieces(labels, np.zeros((0, 4)), np.zeros(0), 0.0, 0.0)
    pen = _pen(mask)
    letter = _letter(w, h, area, pen)
    keep = area >= max(4.0, 0.25 * pen * pen)
    longer = np.maximum(w, h)
    keep &= longer >= max(2.5, 0.09 * letter)
    at_border = (x <= 1) | (y <= 1) | (x + w >= width - 1) | (y + h >= height - 1)
    keep &= ~(at_border & ((longer > 2.5 * letter) | (area > 0.35 * w * h)))
    keep &= ~((h > 6 * letter) & (w < 0.6 * letter))  # an upright rule or the edge of a sheet
    keep &= ~((h > 5 * letter) & (w > 4 * letter))  # a frame or a drawing
    keep &= ~((area > 0.6 * w * h) & (w > 2 * letter) & (h > 1.2 * letter))  # a blot, a punched hole, a finger
    keep &= ~((w > 0.85 * width) & (h < 0.5 * letter))
    order = np.flatnonzero(keep)
    renumber = np.zeros(count, np.int32)
    renumber[order + 1] = np.arange(1, len(order) + 1)
    boxes = np.column_stack([x, y, x + w, y + h])[order]
    return Pieces(renumber[labels], boxes, area[order], letter, pen)


def _pen(mask: NDArray[np.uint8]) -> float:
    """Thickness of strokes: ink area over half the length of its rim."""
    ink = int(np.count_nonzero(mask))
    inner = int(np.count_nonzero(cv2.erode(mask, np.ones((3, 3), np.uint8))))
    rim = max(1, ink - inner)
    return max(1.0, 2.0 * ink / rim)


def _letter(w: NDArray[np.float64], h: NDArray[np.float64], area: NDArray[np.float64], pen: float) -> float:
    """Median height of those pieces that look like letters: neither specks nor bars nor drawings."""
    fair = (h > 3 * pen) & (h > 7) & (w < 8 * h) & (w > 0.12 * h) & (area > 1.5 * pen * h * 0.5)
    heights = h[fair]
    if heights.size == 0:
        return float(max(8.0, np.median(h)))
    # Specks and ghost writing may outnumber letters, so weight each height by the ink it holds.
    order = np.argsort(heights)
    weights = np.minimum(area[fair], np.percentile(area[fair], 90))[order]
    middle = np.searchsorted(np.cumsum(weights), 0.45 * weights.sum())
    return float(max(8.0, heights[order][min(middle, heights.size - 1)]))
