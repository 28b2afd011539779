"""A page that is written on with a pen: its size, its picture, and what a gesture does to its strokes. No Qt.

Strokes are in pixels of the page; times in ms, pressures from 0 to 1.
"""

from __future__ import annotations

from collections.abc import Sequence

import cv2
import numpy as np
from numpy.typing import NDArray

from desktop.document import Document
from recognition.ink import Stroke

__all__ = [
    "PEN_PAGE", "PIXELS_A_MM", "drawn_picture", "erased", "is_pen_page", "moved", "new_pen_page", "page_size",
    "scratched", "within_lasso",
]

PEN_PAGE = "Pen page"
PIXELS_A_MM = 6.0
_WIDTH_MM, _HEIGHT_MM = 190.0, 270.0
_ROOM_MM = 60.0
"""Free paper under the last stroke; the page grows with the writing."""
_PEN_PX = 3
_INK_RGB = (24, 32, 64)
_SUBPIXEL_BITS = 4

_LASSO_SHARE = 0.6
"""Share of a stroke's points that lie in the lasso when it is chosen."""
_SCRATCH_TURNS = 5
_SCRATCH_DENSITY = 3.0
"""Length of a scratch, in diagonals of its own box."""
_SCRATCH_SHARE = 0.6
"""Share of a stroke's points that lie within the scratch when it is scratched out."""


def new_pen_page(*, number: int = 1) -> Document:
    """An empty page."""
    name = PEN_PAGE if number == 1 else f"{PEN_PAGE} {number}"
    size = page_size(())
    return Document(file=name, size=size, picture=drawn_picture((), size))


def is_pen_page(document: Document) -> bool:
    """Whether a page can be written on: a pen page, or a drawing that was opened."""
    return bool(document.strokes) or document.file.startswith(PEN_PAGE)


def page_size(strokes: Sequence[Stroke]) -> tuple[int, int]:
    """Width and height in pixels, with room to write on."""
    width, height = _WIDTH_MM * PIXELS_A_MM, _HEIGHT_MM * PIXELS_A_MM
    if strokes:
        right, bottom = np.max([stroke.points.max(axis=0) for stroke in strokes], axis=0)
        width = max(width, float(right) + 10 * PIXELS_A_MM)
        height = max(height, float(bottom) + _ROOM_MM * PIXELS_A_MM)
    return round(width), round(height)


def drawn_picture(strokes: Sequence[Stroke], size: tuple[int, int]) -> NDArray[np.uint8]:
    """The strokes on white, RGB, shape (height, width, 3)."""
    image = np.full((size[1], size[0], 3), 255, np.uint8)
    unit = 1 << _SUBPIXEL_BITS
    for stroke in strokes:
        fixed = np.round(stroke.points * unit).astype(np.int32)
        if bool((np.ptp(fixed, axis=0) < unit).all()):
            centre = (int(fixed[0, 0]), int(fixed[0, 1]))
            cv2.circle(image, centre, 2 * unit, _INK_RGB, -1, cv2.LINE_AA, _SUBPIXEL_BITS)
        else:
            cv2.polylines(image, [fixed], False, _INK_RGB, _PEN_PX, cv2.LINE_AA, _SUBPIXEL_BITS)
    return image


def erased(strokes: Sequence[Stroke], path: NDArray[np.float64], *, reach: float) -> tuple[int, ...]:
    """Numbers of the strokes that an eraser's path touches.

    Args:
        path: shape (n, 2). reach: from the middle of the eraser to its rim, in pixels.
    """
    return tuple(n for n, stroke in enumerate(strokes) if _near(stroke, path, reach))


def within_lasso(strokes: Sequence[Stroke], lasso: NDArray[np.float64]) -> tuple[int, ...]:
    """Numbers of the strokes that lie mostly within a closed outline, shape (n, 2)."""
    if len(lasso) < 3:
        return ()
    return tuple(n for n, stroke in enumerate(strokes) if _share_inside(lasso, stroke.points) >= _LASSO_SHARE)


def scratched(strokes: Sequence[Stroke], gesture: Stroke) -> tuple[int, ...]:
    """Numbers of the strokes that a stroke to and fro scratches out; none when it is writing.

    A scratch turns back many times, is far longer than its box, and covers what was written before.
    """
    points = gesture.points
    if len(points) < 2 * _SCRATCH_TURNS:
        return ()
    spread = np.ptp(points, axis=0)
    length = float(np.hypot(*np.diff(points, axis=0).T).sum())
    if _turns(points) < _SCRATCH_TURNS or length < _SCRATCH_DENSITY * float(np.hypot(*spread)):
        return ()
    hull = cv2.convexHull(points.astype(np.float32)).reshape(-1, 2)
    hits = [n for n, stroke in enumerate(strokes) if _share_inside(hull, stroke.points) >= _SCRATCH_SHARE]
    return tuple(hits)


def moved(strokes: Sequence[Stroke], chosen: Sequence[int], shift: tuple[float, float]) -> tuple[Stroke, ...]:
    """The strokes with some of them moved."""
    wanted = set(chosen)
    return tuple(
        Stroke(stroke.points + np.asarray(shift), stroke.time, stroke.pressure) if n in wanted else stroke
        for n, stroke in enumerate(strokes)
    )


def _turns(points: NDArray[np.float64]) -> int:
    """How often a stroke turns back along its longer direction; small waverings do not count."""
    centred = points - points.mean(axis=0)
    _, _, directions = np.linalg.svd(centred, full_matrices=False)
    along = centred @ directions[0]
    least = 0.25 * float(np.ptp(along))
    turns, extreme, heading = 0, float(along[0]), 0
    for value in along[1:]:
        if (heading >= 0 and value > extreme) or (heading <= 0 and value < extreme):
            if heading == 0 and abs(value - extreme) < least:
                continue
            heading = 1 if value > extreme else -1
            extreme = float(value)
        elif abs(value - extreme) >= least:
            turns += 1
            heading, extreme = -heading, float(value)
    return turns


def _near(stroke: Stroke, path: NDArray[np.float64], reach: float) -> bool:
    low, high = stroke.points.min(axis=0) - reach, stroke.points.max(axis=0) + reach
    close = path[((path >= low) & (path <= high)).all(axis=1)]
    if not len(close):
        return False
    starts, ends = stroke.points[:-1], stroke.points[1:]
    if not len(starts):
        starts = ends = stroke.points
    along = ends - starts
    length = np.maximum((along**2).sum(axis=1), 1e-9)
    share = np.clip(((close[:, None] - starts) * along).sum(axis=2) / length, 0, 1)
    nearest = starts + share[..., None] * along
    return bool((np.hypot(*np.moveaxis(close[:, None] - nearest, 2, 0)) <= reach).any())


def _share_inside(outline: NDArray[np.generic], points: NDArray[np.float64]) -> float:
    contour = np.asarray(outline, np.float32).reshape(-1, 1, 2)
    inside = [cv2.pointPolygonTest(contour, (float(x), float(y)), False) >= 0 for x, y in points]
    return float(np.mean(inside))
