"""A picture at a half, a quarter and so on of its size, so that a page is drawn quickly at any zoom. No Qt."""

from __future__ import annotations

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["halved"]

_SMALLEST = 64
"""Pixels of the shorter side below which no further half is made."""


def halved(picture: NDArray[np.uint8]) -> tuple[NDArray[np.uint8], ...]:
    """Halve a picture again and again.

    Args:
        picture: RGB, shape (height, width, 3).
    Returns:
        From the half down; each of shape (h, w, 4) in the order blue, green, red, 255, as the screen takes it.
    """
    halves: list[NDArray[np.uint8]] = []
    last = picture
    while min(last.shape[:2]) >= 2 * _SMALLEST:
        last = np.asarray(
            cv2.resize(last, (last.shape[1] // 2, last.shape[0] // 2), interpolation=cv2.INTER_AREA), np.uint8
        )
        halves.append(np.ascontiguousarray(cv2.cvtColor(last, cv2.COLOR_RGB2BGRA), np.uint8))
    return tuple(halves)
