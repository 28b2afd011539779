"""Find the written lines of a page: flatten, even, take out rulings, group ink, cut crops."""

from __future__ import annotations

import time
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.crops import Flat, cut_line
from recognition.page.found import FoundPage, LineCrop
from recognition.page.grouping import group_lines
from recognition.page.light import background, evened, ink_mask
from recognition.page.order import reading_order
from recognition.page.paper import find_corners, flattening, single_hue_share
from recognition.page.pieces import Pieces, find_pieces
from recognition.page.rulings import find_rulings, take_out
from recognition.result import Tick, no_tick

__all__ = ["find_lines"]

WORK_SIDE = 1800
"""Longer side in pixels at which lines are looked for; crops are cut at full size."""
_OVERVIEW_SIDE = 960
_LEAST_PAPER = 0.5
"""A page has at least this share of plain paper; a picture with less is no page of writing."""
_LEAST_SINGLE_HUE = 0.55
"""Share of the sheet that has the hue of the paper."""
_LEAST_LETTER = 10.0
"""Working pixels; what is smaller is grain of the picture, or writing too small to read."""
_LARGE_LETTER, _LARGEST_LETTER = 0.045, 0.35
"""Height of letters as a share of the picture's longer side: large, and beyond belief."""
_LEAST_FLANKS = 0.21
"""Share of its darkness that a pen stroke gains within a pixel; shapes in a scene are softer."""
_MOST_LINES = 200


def find_lines(image: NDArray[Any], *, tick: Tick = no_tick) -> FoundPage:
    """Find the written lines of a photo or scan.

    Args:
        image: RGB uint8, shape (h, w, 3); other arrays are brought to that form.
        tick: told about progress; may raise Cancelled.
    Returns:
        The lines in reading order, none where nothing is written.
    """
    clock = _Clock()
    rgb = _as_rgb(image)
    height, width = rgb.shape[:2]
    size = (width, height)
    if min(size) < 8:
        return FoundPage((), size)
    tick(0, 6)
    overview, reduction = _overview(rgb)
    found = find_corners(overview)
    corners = None if found is None else found / reduction
    grey = np.asarray(cv2.cvtColor(rgb, cv2.COLOR_RGB2GRAY), dtype=np.uint8)
    clock.note("sheet")
    tick(1, 6)
    flat = _flatten(grey, corners)
    clock.note("flatten")
    tick(2, 6)
    inside = _inside(flat)
    dark = ink_mask(flat.even, inside)
    if (
        dark.paper_share < _LEAST_PAPER or not dark.mask.any() or single_hue_share(overview, found) < _LEAST_SINGLE_HUE
    ):
        return FoundPage((), size, _tuples(corners), clock.stages())
    clock.note("light")
    tick(3, 6)
    rulings = find_rulings(flat.even)
    cleaned = take_out(flat.even, rulings, dark.mask, dark.deepest)
    if rulings:
        dark = ink_mask(cleaned.even, np.asarray(np.where(cleaned.erased > 0, 0, inside), dtype=np.uint8))
    clock.note("rulings")
    tick(4, 6)
    pieces = find_pieces(dark.mask, cleaned.even, rim=_rim(flat))
    groups = group_lines(pieces)[:_MOST_LINES] if _may_be_writing(pieces, cleaned.even) else []
    clock.note("lines")
    tick(5, 6)
    lines: list[LineCrop] = []
    for group in reading_order(pieces.boxes, groups, pieces.letter):
        crop = cut_line(grey, flat, pieces, group, cleaned)
        if crop is not None:
            lines.append(crop)
    clock.note("crops")
    tick(6, 6)
    return FoundPage(tuple(lines), size, _tuples(corners), clock.stages())


def _may_be_writing(pieces: Pieces, even: NDArray[np.uint8]) -> bool:
    """Letters are neither grain nor as large as the picture, and large ones have sharp rims."""
    to_side = pieces.letter / max(even.shape)
    if pieces.letter < _LEAST_LETTER or to_side > _LARGEST_LETTER:
        return False
    return to_side < _LARGE_LETTER or pieces.flanks(even) >= _LEAST_FLANKS


class _Clock:
    """Milliseconds spent between notes."""

    def __init__(self) -> None:
        self._last = time.perf_counter()
        self._stages: list[tuple[str, float]] = []

    def note(self, stage: str) -> None:
        now = time.perf_counter()
        self._stages.append((stage, (now - self._last) * 1000))
        self._last = now

    def stages(self) -> tuple[tuple[str, float], ...]:
        return tuple(self._stages)


def _as_rgb(image: NDArray[Any]) -> NDArray[np.uint8]:
    """Bring any numeric array of two or three axes to RGB uint8; anything else becomes an empty picture."""
    array: NDArray[Any] = np.asarray(image)
    if array.ndim not in (2, 3) or array.size == 0 or array.dtype.kind not in "buif":
        return np.zeros((1, 1, 3), np.uint8)
    if array.dtype != np.uint8:
        values = np.nan_to_num(array.astype(np.float32), nan=255.0, posinf=255.0, neginf=0.0)
        top = float(values.max())
        scale = 255.0 if top <= 1.0 else 255.0 / 65535.0 if top > 255 else 1.0
        array = np.clip(values * scale, 0, 255).astype(np.uint8)
    if array.ndim == 2:
        array = array[:, :, None]
    if array.shape[2] == 1 or array.shape[2] == 2:
        array = array[:, :, :1].repeat(3, axis=2)
    return np.ascontiguousarray(array[:, :, :3], dtype=np.uint8)


def _overview(rgb: NDArray[np.uint8]) -> tuple[NDArray[np.uint8], float]:
    """The photo reduced for looking at it as a whole, and by how much it was reduced."""
    height, width = rgb.shape[:2]
    scale = min(1.0, _OVERVIEW_SIDE / max(height, width))
    if scale == 1.0:
        return rgb, 1.0
    size = (max(1, round(width * scale)), max(1, round(height * scale)))
    return np.asarray(cv2.resize(rgb, size, interpolation=cv2.INTER_AREA), dtype=np.uint8), scale


def _flatten(grey: NDArray[np.uint8], corners: NDArray[np.float64] | None) -> Flat:
    """The page at working size, seen straight from above where a sheet was found."""
    height, width = grey.shape
    if corners is None:
        scale = min(1.0, WORK_SIDE / max(height, width))
        size = (max(1, round(width * scale)), max(1, round(height * scale)))
        work = cv2.resize(grey, size, interpolation=cv2.INTER_AREA) if scale < 1 else grey
        # Pixel centres: working pixel (i + 0.5) / scale - 0.5 on the original.
        sx, sy = size[0] / width, size[1] / height
        to_flat = np.array([[sx, 0, 0.5 * sx - 0.5], [0, sy, 0.5 * sy - 0.5], [0, 0, 1]])
    else:
        straight, (sheet_w, sheet_h) = flattening(corners)
        scale = min(1.0, WORK_SIDE / max(sheet_w, sheet_h))
        size = (max(1, round(sheet_w * scale)), max(1, round(sheet_h * scale)))
        to_flat = np.diag([size[0] / sheet_w, size[1] / sheet_h, 1.0]) @ straight
        if scale < 0.8:
            half = cv2.resize(grey, (max(1, round(width * scale)), max(1, round(height * scale))),
                              interpolation=cv2.INTER_AREA)
            sx, sy = half.shape[1] / width, half.shape[0] / height
            shrink = np.array([[sx, 0, 0.5 * sx - 0.5], [0, sy, 0.5 * sy - 0.5], [0, 0, 1]])
            work = cv2.warpPerspective(half, to_flat @ np.linalg.inv(shrink), size, flags=cv2.INTER_LINEAR,
                                       borderMode=cv2.BORDER_REPLICATE)
        else:
            work = cv2.warpPerspective(grey, to_flat, size, flags=cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    flat_grey = np.asarray(work, dtype=np.uint8)
    paper = background(flat_grey)
    return Flat(evened(flat_grey, paper), paper, to_flat, corners is not None)


def _inside(flat: Flat) -> NDArray[np.uint8]:
    """255 where the working picture shows paper, a thin rim excepted."""
    height, width = flat.even.shape
    inside = np.full((height, width), 255, np.uint8)
    if flat.is_sheet:
        rim = _rim(flat)
        inside[:rim] = inside[-rim:] = 0
        inside[:, :rim] = inside[:, -rim:] = 0
    return inside


def _rim(flat: Flat) -> int:
    """Pixels along the edges of a flattened sheet that may still show the table."""
    return max(3, round(0.008 * max(flat.even.shape))) if flat.is_sheet else 0


def _tuples(corners: NDArray[np.float64] | None) -> tuple[tuple[float, float], ...] | None:
    return None if corners is None else tuple((float(x), float(y)) for x, y in corners)
