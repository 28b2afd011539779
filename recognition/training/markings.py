"""An earlier marking on a page: ticks, crosses, rings, underlines and marks in another colour."""

from __future__ import annotations

import random
from collections.abc import Sequence

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["draw_marks"]

BoxF = tuple[float, float, float, float]


def draw_marks(
    sheet: NDArray[np.uint8], lines: Sequence[BoxF], colour: tuple[int, int, int], rng: random.Random
) -> list[BoxF]:
    """Mark some lines of a sheet; the boxes of the marks.

    Args:
        sheet: RGB, shape (h, w, 3); drawn on.
        lines: boxes x0, y0, x1, y1 of the written lines.
        colour: RGB of the marking pen.
    """
    cover = np.zeros(sheet.shape[:2], np.uint8)
    boxes = []
    for box in lines:
        if rng.random() < 0.6:
            boxes.append(_mark(cover, box, rng))
    if lines and rng.random() < 0.5:
        boxes.append(_score(cover, lines, rng))
    share = (cv2.GaussianBlur(cover, (0, 0), 0.6).astype(np.float32) / 255 * 0.92)[:, :, None]
    sheet[:] = np.clip(sheet * (1 - share) + np.array(colour, np.float32) * share, 0, 255).astype(np.uint8)
    return boxes


def _mark(cover: NDArray[np.uint8], line: BoxF, rng: random.Random) -> BoxF:
    x0, y0, x1, y1 = line
    middle, height = (y0 + y1) / 2, min(y1 - y0, 90)
    kind = rng.choice(("tick", "tick", "tick", "cross", "underline", "ring", "struck"))
    x = min(x1 + rng.uniform(-20, 110), cover.shape[1] - 70)
    if kind == "tick":
        size = height * rng.uniform(0.7, 1.3)
        points = [(x, middle), (x + 0.3 * size, middle + 0.4 * size), (x + 0.95 * size, middle - 0.6 * size)]
        return _stroke(cover, points, rng)
    if kind == "cross":
        size = height * rng.uniform(0.5, 0.8)
        first = _stroke(cover, [(x, middle - size / 2), (x + size, middle + size / 2)], rng)
        _stroke(cover, [(x, middle + size / 2), (x + size, middle - size / 2)], rng)
        return first
    start = x0 + (x1 - x0) * rng.uniform(0, 0.6)
    stop = min(x1, start + rng.uniform(60, 160))
    if kind == "underline":
        xs = np.linspace(start, stop, 12)
        return _stroke(cover, [(float(v), y1 + 8 + 2 * np.sin(v / 9)) for v in xs], rng)
    if kind == "struck":
        return _stroke(cover, [(start, middle + 0.4 * height), (start + 50, middle - 0.4 * height)], rng)
    angles = np.linspace(0.2, 2 * np.pi + 0.5, 40)
    half_w, half_h = (stop - start) / 2 + 14, height / 2 + 14
    centre = ((start + stop) / 2, middle)
    return _stroke(cover, [(centre[0] + half_w * np.cos(a), centre[1] + half_h * np.sin(a)) for a in angles], rng)


def _score(cover: NDArray[np.uint8], lines: Sequence[BoxF], rng: random.Random) -> BoxF:
    """Marks out of a total, in the margin beside the last line or under it."""
    x = cover.shape[1] - 170
    y = round(min(lines[-1][3] + rng.uniform(0, 60), cover.shape[0] - 40))
    text = f"{rng.randint(0, 5)}/{rng.randint(5, 9)}"
    cv2.putText(cover, text, (x, y), cv2.FONT_HERSHEY_SCRIPT_SIMPLEX, 2.0, 255, 5, cv2.LINE_AA)
    return (x - 6.0, y - 66.0, x + 130.0, y + 24.0)


def _stroke(cover: NDArray[np.uint8], points: Sequence[tuple[float, float]], rng: random.Random) -> BoxF:
    path = np.array(points, np.float64)
    cv2.polylines(cover, [np.rint(path * 16).astype(np.int32)], False, 255, rng.choice((4, 5, 6)), cv2.LINE_AA, 4)
    (left, top), (right, bottom) = path.min(axis=0) - 4, path.max(axis=0) + 4
    return float(left), float(top), float(right), float(bottom)
