"""Make a photo ready for line finding and for cutting crops: sheet, even light, ink without printed lines."""

from __future__ import annotations

import time
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.colours import Marking, find_marking, without_marking
from recognition.page.crops import Flat
from recognition.page.light import InkMask, background, evened, ink_mask
from recognition.page.paper import find_corners, flattening, single_hue_share
from recognition.page.pieces import Pieces, find_pieces
from recognition.page.rulings import Cleaned, Ruling, find_rulings, take_out
from recognition.page.turning import quarter_turns
from recognition.result import Tick, no_tick

__all__ = ["STAGES", "Clock", "PreparedPage", "prepare"]

STAGES = 6
"""Steps of finding lines that progress counts."""
WORK_SIDE = 1800
"""Longer side in pixels at which lines are looked for; crops are cut at full size."""
_OVERVIEW_SIDE = 960
_LEAST_SIDE = 8
_LEAST_PAPER = 0.5
"""A page has at least this share of plain paper; a picture with less is no page of writing."""
_PRINTED = 250
"""Brightness of printed lines; above it they are paper."""
_LEAST_SINGLE_HUE = 0.55
"""Share of the sheet that has the hue of the paper."""


@dataclass(frozen=True, slots=True)
class PreparedPage:
    """A page before its lines are looked for.

    grey: the original, shape (h, w); flat: the page at working size; cleaned: that without its printed lines.
    ink: of the cleaned page, and its pieces; is_page: it looks like paper with writing on it.
    marking: marks of an earlier marking in red or green, which are not in the ink.
    corners: of the sheet in the original, shape (4, 2).
    turns: by how many quarter turns anticlockwise the writing on the original is turned; the page is turned back.
    """

    grey: NDArray[np.uint8]
    flat: Flat
    cleaned: Cleaned
    ink: InkMask
    pieces: Pieces
    is_page: bool
    marking: Marking
    corners: NDArray[np.float64] | None
    turns: int

    @property
    def size(self) -> tuple[int, int]:
        """Width and height of the original."""
        return self.grey.shape[1], self.grey.shape[0]


class Clock:
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


def prepare(
    image: NDArray[Any], clock: Clock, *, turns: int | None = None, tick: Tick = no_tick
) -> PreparedPage | None:
    """Find the sheet, flatten it, even its light and take out its printed lines.

    Args:
        image: RGB uint8, shape (h, w, 3); other arrays are brought to that form.
        clock: notes the time of each stage.
        turns: by how many quarter turns anticlockwise the writing is turned, 0 to 3; None to tell it from the writing.
        tick: told about progress; may raise Cancelled.
    Returns:
        None for a picture of a few pixels.
    """
    rgb = _as_rgb(image)
    if min(rgb.shape[:2]) < _LEAST_SIDE:
        return None
    tick(0, STAGES)
    overview, reduction = _overview(rgb)
    found = find_corners(overview)
    corners = None if found is None else found / reduction
    clock.note("sheet")
    tick(1, STAGES)
    work, to_flat = _flattened(rgb, corners)
    clock.note("flatten")
    tick(2, STAGES)
    inked = _inked(work, to_flat, corners is not None)
    is_page = (
        inked.ink.paper_share >= _LEAST_PAPER and bool(inked.ink.mask.any())
        and single_hue_share(overview, found) >= _LEAST_SINGLE_HUE
    )
    clock.note("light")
    tick(3, STAGES)
    turned = 0
    if is_page:
        rulings = find_rulings(inked.flat.even)
        inked = _without_rulings(inked, rulings)
        clock.note("rulings")
        inked = _marked_apart(work, inked, rulings)
        clock.note("marking")
    pieces = find_pieces(inked.ink.mask, inked.cleaned.even, rim=inked.rim)
    clock.note("pieces")
    if is_page:
        turned = quarter_turns(pieces) if turns is None else turns
        if turned:
            work, to_flat = _turned_back(work, to_flat, turned)
            inked = _inked(work, to_flat, corners is not None)
            rulings = find_rulings(inked.flat.even)
            inked = _marked_apart(work, _without_rulings(inked, rulings), rulings)
            pieces = find_pieces(inked.ink.mask, inked.cleaned.even, rim=inked.rim)
        clock.note("turning")
    grey = without_marking(rgb, inked.marking)
    return PreparedPage(grey, inked.flat, inked.cleaned, inked.ink, pieces, is_page, inked.marking, corners, turned)


@dataclass(frozen=True, slots=True)
class _Inked:
    """A page at working size with its ink, as far as it is cleaned."""

    flat: Flat
    cleaned: Cleaned
    ink: InkMask
    marking: Marking
    inside: NDArray[np.uint8]
    rim: int


def _inked(work: NDArray[np.uint8], to_flat: NDArray[np.float64], is_sheet: bool) -> _Inked:
    none = Marking(None, None)
    flat = _evened(without_marking(work, none), to_flat, is_sheet)
    rim = max(3, round(0.008 * max(flat.even.shape))) if is_sheet else 0
    inside = _inside(flat, rim)
    ink = ink_mask(flat.even, inside)
    return _Inked(flat, take_out(flat.even, [], ink.mask, ink.deepest), ink, none, inside, rim)


def _marked_apart(work: NDArray[np.uint8], page: _Inked, rulings: Sequence[Ruling]) -> _Inked:
    """Take an earlier marking in another colour out of the ink.

    Args:
        page: without its printed lines, which have colours of their own.
    """
    marking = find_marking(work, page.cleaned.even, page.ink.mask)
    if marking.mask is None:
        return page
    flat = _evened(without_marking(work, marking), page.flat.to_flat, page.flat.is_sheet)
    marked = _faint(marking.mask, flat.even, ink_mask(flat.even, page.inside))
    inside = np.asarray(np.where(marked > 0, 0, page.inside), dtype=np.uint8)
    ink = ink_mask(flat.even, inside)
    cleaned = replace(take_out(flat.even, [], ink.mask, ink.deepest), erased=marked)
    return _without_rulings(_Inked(flat, cleaned, ink, marking, inside, page.rim), rulings)


def _without_rulings(page: _Inked, rulings: Sequence[Ruling]) -> _Inked:
    if not rulings:
        return page
    cleaned = take_out(page.flat.even, rulings, page.ink.mask, page.ink.deepest)
    cleaned = replace(cleaned, erased=cleaned.erased | page.cleaned.erased)
    inside = np.asarray(np.where(cleaned.erased > 0, 0, page.inside), dtype=np.uint8)
    ink = ink_mask(cleaned.even, inside, grain=page.flat.even, printed=cleaned.shade < _PRINTED)
    return replace(page, cleaned=cleaned, ink=ink)


def _turned_back(
    work: NDArray[np.uint8], to_flat: NDArray[np.float64], turns: int
) -> tuple[NDArray[np.uint8], NDArray[np.float64]]:
    """The page turned clockwise by quarter turns, and the homography to it."""
    for _ in range(turns):
        height = work.shape[0]
        to_flat = np.array([[0, -1, height - 1], [1, 0, 0], [0, 0, 1.0]]) @ to_flat
        work = np.ascontiguousarray(np.rot90(work, -1))
    return work, to_flat


def _faint(marked: NDArray[np.uint8], even: NDArray[np.uint8], ink: InkMask) -> NDArray[np.uint8]:
    """The marks and their rims, without what is dark in their own light too: working that they cross."""
    wide = cv2.dilate(marked, np.ones((5, 5), np.uint8))
    own = 255 - float(np.percentile(even[marked > 0], 25))
    wide[even < 255 - max(0.6 * ink.depth, (own + ink.deepest) / 2)] = 0
    return np.asarray(wide, dtype=np.uint8)


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


def _flattened(
    rgb: NDArray[np.uint8], corners: NDArray[np.float64] | None
) -> tuple[NDArray[np.uint8], NDArray[np.float64]]:
    """The page at working size, seen straight from above where a sheet was found, and the homography to it."""
    height, width = rgb.shape[:2]
    if corners is None:
        scale = min(1.0, WORK_SIDE / max(height, width))
        size = (max(1, round(width * scale)), max(1, round(height * scale)))
        work = cv2.resize(rgb, size, interpolation=cv2.INTER_AREA) if scale < 1 else rgb
        # Pixel centres: working pixel (i + 0.5) / scale - 0.5 on the original.
        sx, sy = size[0] / width, size[1] / height
        return np.asarray(work, dtype=np.uint8), np.array([[sx, 0, 0.5 * sx - 0.5], [0, sy, 0.5 * sy - 0.5], [0, 0, 1]])
    straight, (sheet_w, sheet_h) = flattening(corners)
    scale = min(1.0, WORK_SIDE / max(sheet_w, sheet_h))
    size = (max(1, round(sheet_w * scale)), max(1, round(sheet_h * scale)))
    to_flat = np.diag([size[0] / sheet_w, size[1] / sheet_h, 1.0]) @ straight
    if scale < 0.8:
        half = cv2.resize(rgb, (max(1, round(width * scale)), max(1, round(height * scale))),
                          interpolation=cv2.INTER_AREA)
        sx, sy = half.shape[1] / width, half.shape[0] / height
        shrink = np.array([[sx, 0, 0.5 * sx - 0.5], [0, sy, 0.5 * sy - 0.5], [0, 0, 1]])
        work = cv2.warpPerspective(half, to_flat @ np.linalg.inv(shrink), size, flags=cv2.INTER_LINEAR,
                                   borderMode=cv2.BORDER_REPLICATE)
    else:
        work = cv2.warpPerspective(rgb, to_flat, size, flags=cv2.INTER_LINEAR, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(work, dtype=np.uint8), np.asarray(to_flat, dtype=np.float64)


def _evened(grey: NDArray[np.uint8], to_flat: NDArray[np.float64], is_sheet: bool) -> Flat:
    paper = background(grey)
    return Flat(evened(grey, paper), paper, to_flat, is_sheet)


def _inside(flat: Flat, rim: int) -> NDArray[np.uint8]:
    """255 where the working picture shows paper, a thin rim excepted."""
    inside = np.full(flat.even.shape, 255, np.uint8)
    if rim:
        inside[:rim] = inside[-rim:] = 0
        inside[:, :rim] = inside[:, -rim:] = 0
    return inside
