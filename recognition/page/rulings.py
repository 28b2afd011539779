"""Find the printed lines of ruled and squared paper, so that they can be taken out without breaking strokes."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["Ruling", "find_rulings", "rulings_mask"]

_STRIPS = 28
_FILLED = 0.72
"""Share of a strip's columns that must be dark in a row for the row to count as part of a printed line."""


@dataclass(frozen=True, slots=True)
class Ruling:
    """A printed line across the page: heights ys at places xs (swapped when upright), half thickness in pixels."""

    xs: tuple[float, ...]
    ys: tuple[float, ...]
    half: float
    level: float
    upright: bool


def find_rulings(even: NDArray[np.uint8]) -> list[Ruling]:
    """Printed lines of an evened page, level ones and upright ones."""
    level = _level_rulings(even, upright=False)
    upright = _level_rulings(np.ascontiguousarray(even.T), upright=True)
    # A single line across may be a long fraction bar or an underline: two or three are needed for paper,
    # unless it runs from edge to edge. One upright line (a margin) is enough: no letter is that tall.
    if len(level) < 3:
        level = [r for r in level if r.xs[-1] - r.xs[0] > 0.9 * even.shape[1]]
    return level + upright


def rulings_mask(even: NDArray[np.uint8], rulings: list[Ruling], ink: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """Pixels (255) that belong to a printed line only; where a pen stroke crosses or is darker, the stroke stays.

    Args:
        even: evened grey page.
        rulings: from `find_rulings`.
        ink: 255 where anything dark is, printed lines included.
    """
    mask = np.zeros_like(even)
    bands = [_bands(even.shape, [r for r in rulings if r.upright == upright]) for upright in (False, True)]
    for upright in (False, True):
        # Where a printed line crosses another one, that one is no pen stroke.
        strokes = np.asarray(np.where(bands[not upright] > 0, 0, ink), dtype=np.uint8)
        page, dark = (even.T, strokes.T) if upright else (even, strokes)
        target = mask.T if upright else mask
        for ruling in rulings:
            if ruling.upright == upright:
                _erase(target, page, dark, ruling)
    return mask


def _bands(shape: tuple[int, ...], rulings: list[Ruling]) -> NDArray[np.uint8]:
    """Full width of printed lines, whatever crosses them."""
    mask = np.zeros(shape, np.uint8)
    for ruling in rulings:
        target = mask.T if ruling.upright else mask
        columns = np.arange(int(max(0, ruling.xs[0])), int(min(target.shape[1], ruling.xs[-1] + 1)))
        middle = np.rint(np.interp(columns, ruling.xs, ruling.ys)).astype(int)
        half = int(np.ceil(ruling.half)) + 1
        for offset in range(-half, half + 1):
            target[np.clip(middle + offset, 0, target.shape[0] - 1), columns] = 255
    return mask


def _erase(target: NDArray[np.uint8], page: NDArray[np.uint8], dark: NDArray[np.uint8], ruling: Ruling) -> None:
    height, width = page.shape
    start, stop = int(max(0, ruling.xs[0])), int(min(width, ruling.xs[-1] + 1))
    if stop - start < 2:
        return
    columns = np.arange(start, stop)
    middle = np.interp(columns, ruling.xs, ruling.ys)
    half = int(np.ceil(ruling.half)) + 1
    offsets = np.arange(-half, half + 1)
    rows = np.clip(np.rint(middle)[None, :].astype(int) + offsets[:, None], 0, height - 1)
    band = page[rows, columns[None, :]]
    above = np.clip(np.rint(middle).astype(int) - half - 1, 0, height - 1)
    below = np.clip(np.rint(middle).astype(int) + half + 1, 0, height - 1)
    further_up = np.clip(above - 1, 0, height - 1)
    further_down = np.clip(below + 1, 0, height - 1)
    touched = (dark[above, columns] > 0) & (dark[further_up, columns] > 0)
    touched |= (dark[below, columns] > 0) & (dark[further_down, columns] > 0)
    # Ink keeps its neighbours too, so that the rim of a stroke is not shaved off.
    keep_column = np.convolve(touched.astype(np.uint8), np.ones(3, np.uint8), "same") > 0
    margin = max(28.0, 0.35 * (255 - ruling.level))
    pen = (band < ruling.level - margin).astype(np.uint8)
    pen = cv2.dilate(pen, np.ones((3, 3), np.uint8)) > 0
    erased = ~keep_column[None, :] & ~pen
    rows_erased, columns_erased = np.nonzero(erased)
    target[rows[rows_erased, columns_erased], columns[columns_erased]] = 255


def _level_rulings(even: NDArray[np.uint8], *, upright: bool) -> list[Ruling]:
    height, width = even.shape
    if min(height, width) < 200:
        return []
    step = width / _STRIPS
    peaks: list[list[tuple[float, float, float]]] = []
    for index in range(_STRIPS):
        part = even[:, int(index * step): int((index + 1) * step)]
        peaks.append(_strip_peaks(part))
    chains: list[list[tuple[int, float, float, float]]] = []
    open_chains: list[list[tuple[int, float, float, float]]] = []
    reach = max(3.0, step * 0.09)
    for index, found in enumerate(peaks):
        free = list(found)
        still_open = []
        for chain in open_chains:
            last_index, last_y = chain[-1][0], chain[-1][1]
            slope = (chain[-1][1] - chain[-4][1]) / (chain[-1][0] - chain[-4][0]) if len(chain) >= 4 else 0.0
            guess = last_y + slope * (index - last_index)
            near = [p for p in free if abs(p[0] - guess) <= reach]
            if near:
                pick = min(near, key=lambda p: abs(p[0] - guess))
                free.remove(pick)
                chain.append((index, *pick))
                still_open.append(chain)
            elif index - last_index <= 5:
                still_open.append(chain)
        for p in free:
            new = [(index, *p)]
            chains.append(new)
            still_open.append(new)
        open_chains = still_open
    rulings = []
    for chain in chains:
        span = chain[-1][0] - chain[0][0] + 1
        if span < 0.5 * _STRIPS or len(chain) < 0.55 * span:
            continue
        ys = np.array([c[1] for c in chain])
        if len(ys) > 4 and float(np.abs(np.diff(ys, 2)).mean()) > reach * 0.6:
            continue
        xs = [(c[0] + 0.5) * step for c in chain]
        first = ys[0] - (ys[1] - ys[0]) * 0.5 if chain[1][0] - chain[0][0] == 1 else ys[0]
        xs = [max(0.0, xs[0] - 0.6 * step), *xs, min(float(width), xs[-1] + 0.6 * step)]
        half = float(np.median([c[2] for c in chain])) / 2
        level = float(np.median([c[3] for c in chain]))
        rulings.append(Ruling(tuple(xs), (float(first), *map(float, ys), float(ys[-1])), half, level, upright))
    return _extended(rulings, width)


def _extended(rulings: list[Ruling], width: int) -> list[Ruling]:
    """Carry lines that nearly reach an edge on to it."""
    result = []
    for ruling in rulings:
        xs, ys = list(ruling.xs), list(ruling.ys)
        if 0 < xs[0] < 0.25 * width:
            xs, ys = [0.0, *xs], [ys[0], *ys]
        if 0.75 * width < xs[-1] < width:
            xs, ys = [*xs, float(width)], [*ys, ys[-1]]
        if all(b > a for a, b in pairwise(xs)):
            result.append(Ruling(tuple(xs), tuple(ys), ruling.half, ruling.level, ruling.upright))
        else:
            result.append(ruling)
    return result


def _strip_peaks(part: NDArray[np.uint8]) -> list[tuple[float, float, float]]:
    """Rows of a strip that are dark nearly from side to side: (row, thickness, darkness level)."""
    # Local contrast against the rows a little above and below, so that pale lines count as well.
    around = np.maximum(
        np.roll(cv2.blur(part, (1, 3)), 6, axis=0), np.roll(cv2.blur(part, (1, 3)), -6, axis=0)
    )
    darker = (part.astype(np.int16) < around.astype(np.int16) - 8).astype(np.uint8)
    # A line that falls by a row within the strip still counts, hence the dilation.
    dark = cv2.dilate(darker, np.ones((3, 1), np.uint8)).mean(axis=1)
    rows = np.flatnonzero(dark > _FILLED)
    peaks = []
    if rows.size:
        for group in np.split(rows, np.flatnonzero(np.diff(rows) > 2) + 1):
            thickness = max(1.0, float(group[-1] - group[0] - 1))
            if thickness <= 9:
                level = float(np.median(part[group], axis=1).min())
                peaks.append((float(group.mean()), thickness, level))
    return peaks
