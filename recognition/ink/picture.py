"""The picture of a drawing: what the desktop shows, and the pixels in which boxes of ink are given."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.ink.strokes import Ink, Stroke, typical_size

__all__ = ["InkPicture", "render_page"]

_SYMBOL: Final = 40.0  # px: height of a typical stroke
_MARGIN: Final = 40  # px
_LONGEST: Final = 8000  # px: a side of the picture
_PEN: Final = 3  # px
_INK: Final = (24, 32, 64)  # RGB, dark blue-black
_SUBPIXEL_BITS: Final = 4


@dataclass(frozen=True, slots=True)
class InkPicture:
    """image: RGB uint8, shape (h, w, 3). from_ink: affine map (3, 3) from the ink's unit to pixels of the image."""

    image: NDArray[np.uint8]
    from_ink: NDArray[np.float64]

    @property
    def to_ink(self) -> NDArray[np.float64]:
        """Affine map (3, 3) from pixels of the image to the ink's unit."""
        scale, shift = self.from_ink[0, 0], self.from_ink[:2, 2]
        return np.array([[1 / scale, 0.0, -shift[0] / scale], [0.0, 1 / scale, -shift[1] / scale], [0.0, 0.0, 1.0]])

    @property
    def size(self) -> tuple[int, int]:
        """Width and height in px."""
        return self.image.shape[1], self.image.shape[0]

    def placed(self, stroke: Stroke) -> NDArray[np.float64]:
        """The points of a stroke in pixels of the image, shape (n, 2)."""
        placed: NDArray[np.float64] = stroke.points * self.from_ink[0, 0] + self.from_ink[:2, 2]
        return placed


def render_page(ink: Ink) -> InkPicture:
    """Draw all strokes on white, a typical symbol about 40 px high, with a margin."""
    low = np.min([stroke.points.min(axis=0) for stroke in ink.strokes], axis=0)
    high = np.max([stroke.points.max(axis=0) for stroke in ink.strokes], axis=0)
    extent = high - low
    scale = _SYMBOL / typical_size(ink.strokes)
    scale = min(scale, (_LONGEST - 2 * _MARGIN) / max(float(extent.max()), 1e-9))
    width, height = (int(np.ceil(side * scale)) + 2 * _MARGIN for side in extent)
    shift = _MARGIN - low * scale
    from_ink = np.array([[scale, 0.0, shift[0]], [0.0, scale, shift[1]], [0.0, 0.0, 1.0]])
    picture = InkPicture(np.full((height, width, 3), 255, np.uint8), from_ink)
    for stroke in ink.strokes:
        _draw(picture.image, picture.placed(stroke))
    return picture


def _draw(image: NDArray[np.uint8], points: NDArray[np.float64]) -> None:
    unit = 1 << _SUBPIXEL_BITS
    fixed = np.round(points * unit).astype(np.int32)
    if bool((np.ptp(fixed, axis=0) < unit).all()):
        cv2.circle(image, (int(fixed[0, 0]), int(fixed[0, 1])), 2 * unit, _INK, -1, cv2.LINE_AA, _SUBPIXEL_BITS)
    else:
        cv2.polylines(image, [fixed], False, _INK, _PEN, cv2.LINE_AA, _SUBPIXEL_BITS)
