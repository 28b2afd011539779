"""Outlines that a user draws on a page: boxes, polygons, and the cut that parts a line in two."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.result import Box

__all__ = ["Cut", "Outline", "contains", "corners", "side_of_cut", "sorted_cut"]

Point = tuple[float, float]
Outline = Box | Sequence[Point]
"""A box, or the corners of a polygon, in pixels of the original."""
Cut = tuple[Point, Point]
"""Two points on the straight cut that parts a line, in pixels of the original; it runs on beyond both."""


def corners(outline: Outline) -> NDArray[np.float64]:
    """Corners of an outline, shape (n, 2).

    Raises:
        InputError: the outline has no area.
    """
    if isinstance(outline, Box):
        x, y, w, h = outline
        outline = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
    points = np.asarray(outline, np.float64).reshape(-1, 2)
    if len(points) < 3 or not np.isfinite(points).all() or (np.ptp(points, axis=0) < 2).any():
        raise InputError("This outline is too small to hold a line. Draw it around the whole line.")
    return points


def contains(outline: NDArray[np.float64], points: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which points, shape (n, 2), lie within a polygon (even-odd rule)."""
    inside = np.zeros(len(points), bool)
    x, y = points.T
    for (x0, y0), (x1, y1) in zip(outline, np.roll(outline, -1, axis=0), strict=True):
        if y0 == y1:
            continue
        crossed = (y0 > y) != (y1 > y)
        inside ^= crossed & (x < x0 + (y - y0) * (x1 - x0) / (y1 - y0))
    return inside


def side_of_cut(cut: NDArray[np.float64], points: NDArray[np.float64]) -> NDArray[np.bool_]:
    """Which points lie above (or to the left of) a cut from `sorted_cut`."""
    (x0, y0), (x1, y1) = cut
    return np.asarray((x1 - x0) * (points[:, 1] - y0) - (y1 - y0) * (points[:, 0] - x0) < 0)


def sorted_cut(cut: NDArray[np.float64]) -> NDArray[np.float64]:
    """The cut from left to right where it is level, from bottom to top where it is upright.

    Raises:
        InputError: both ends are the same point.
    """
    along = cut[1] - cut[0]
    if np.hypot(*along) < 1:
        raise InputError("A cut needs two ends apart from each other. Draw it across the line.")
    swap = along[0] < 0 if abs(along[0]) >= abs(along[1]) else along[1] > 0
    return cut[::-1] if swap else cut
