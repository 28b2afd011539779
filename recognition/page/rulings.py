"""Find the printed lines of ruled and squared paper, so that they can be taken out without breaking strokes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["Cleaned", "Ruling", "find_rulings", "take_out"]

_STRIPS = 28
_FILLED = 0.72
"""Share of a strip's columns that must be dark in a row for the row to count as part of a printed line."""
_STEEPEST = 10
"""Rows by which a printed line may fall or rise over the width of a strip."""
_STRAY = 4.5
"""Pixels by which a printed line may stray from a smooth curve."""

_MOST_BREAKS, _NEAR = 0.2, 4
"""Share of a line that may be missing where no others tell that it is printed; pixels around in which it is looked for.
"""


@dataclass(frozen=True, slots=True)
class Ruling:
    """A printed line across the page: heights ys at places xs (swapped when upright), half thickness in pixels."""

    xs: tuple[float, ...]
    ys: tuple[float, ...]
    half: float
    level: float
    upright: bool


@dataclass(frozen=True, slots=True)
class Cleaned:
    """A page without its printed lines.

    even: evened grey; shade: brightness of the printed lines (255 where none is), to be divided out of a crop as well;
    erased: 255 where a line as dark as ink was cut out.
    """

    even: NDArray[np.uint8]
    shade: NDArray[np.uint8]
    erased: NDArray[np.uint8]


def find_rulings(even: NDArray[np.uint8]) -> list[Ruling]:
    """Printed lines of an evened page, level ones and upright ones."""
    level = _alike(_level_rulings(even, upright=False))
    upright = _level_rulings(np.ascontiguousarray(even.T), upright=True)
    # A single line across may be a long fraction bar or an underline: three are needed for paper,
    # unless it runs from edge to edge without a break. One upright line (a margin) is enough: no letter is that tall.
    if len(level) < 3:
        level = [r for r in level if r.xs[-1] - r.xs[0] > 0.9 * even.shape[1] and _breaks(even, r) < _MOST_BREAKS]
    return _completed(level, even.shape[0]) + _completed(upright, even.shape[1])


def _breaks(even: NDArray[np.uint8], ruling: Ruling) -> float:
    """Share of a level line's length where paper shows: between the letters of a row, hardly along a printed line."""
    height, width = even.shape
    columns = np.arange(int(max(0, ruling.xs[0])), int(min(width, np.ceil(ruling.xs[-1]))))
    rows = np.rint(np.interp(columns, ruling.xs, ruling.ys)).astype(int) + np.arange(-_NEAR, _NEAR + 1)[:, None]
    darkest = even[np.clip(rows, 0, height - 1), columns].min(axis=0)
    return float((darkest > (ruling.level + 255) / 2).mean())


def _completed(rulings: list[Ruling], height: int) -> list[Ruling]:
    """Add the lines that the even pitch of the others asks for; where none is printed, taking it out does nothing."""
    if len(rulings) < 3:
        return rulings
    rulings = _carried_on(sorted(rulings, key=lambda r: float(np.mean(r.ys))))
    centre = float(np.median([(r.xs[0] + r.xs[-1]) / 2 for r in rulings]))
    at = np.array([np.interp(centre, r.xs, r.ys) for r in rulings])
    gaps = np.diff(at)
    pitch = float(np.median(gaps[gaps < 1.4 * np.percentile(gaps, 25)])) if gaps.size else 0.0
    if not pitch > 12:
        return rulings
    added: list[Ruling] = []
    for upper, lower, gap in zip(rulings, rulings[1:], gaps, strict=False):
        count = round(gap / pitch)
        if count >= 2 and abs(gap / pitch - count) < 0.15 * count:
            added += [_between(upper, lower, k / count) for k in range(1, count)]
    outer = ((rulings[0], rulings[1], float(at[0])), (rulings[-1], rulings[-2], float(height - at[-1])))
    for edge, inner, room in outer:
        step = abs(float(np.interp(centre, edge.xs, edge.ys) - np.interp(centre, inner.xs, inner.ys)))
        if abs(step - pitch) < 0.2 * pitch:
            added += [_between(inner, edge, 1.0 + k) for k in range(1, int(room / pitch) + 1)]
    return rulings + added


def _carried_on(rulings: list[Ruling]) -> list[Ruling]:
    """Carry lines seen in part on as far as their neighbours reach, in parallel with them."""
    start, stop = min(r.xs[0] for r in rulings), max(r.xs[-1] for r in rulings)
    whole = [r for r in rulings if r.xs[0] <= start + 1 and r.xs[-1] >= stop - 1]
    result = []
    for ruling in rulings:
        if ruling in whole or not whole:
            result.append(ruling)
            continue
        guide = min(whole, key=lambda r: abs(r.ys[len(r.ys) // 2] - ruling.ys[len(ruling.ys) // 2]))
        xs = np.linspace(start, stop, _STRIPS)
        guided = np.interp(xs, guide.xs, guide.ys)
        apart = np.interp(ruling.xs, guide.xs, guide.ys)
        ys = guided + np.interp(xs, ruling.xs, np.array(ruling.ys) - apart)
        result.append(Ruling(tuple(map(float, xs)), tuple(map(float, ys)), ruling.half, ruling.level, ruling.upright))
    return result


def _between(one: Ruling, two: Ruling, share: float) -> Ruling:
    """A line at a share of the way from one line to another, or beyond."""
    start, stop = min(one.xs[0], two.xs[0]), max(one.xs[-1], two.xs[-1])
    xs = np.linspace(start, stop, _STRIPS)
    ys = (1 - share) * np.interp(xs, one.xs, one.ys) + share * np.interp(xs, two.xs, two.ys)
    level = (one.level + two.level) / 2
    return Ruling(tuple(map(float, xs)), tuple(map(float, ys)), max(one.half, two.half), level, one.upright)


def _alike(rulings: list[Ruling]) -> list[Ruling]:
    """Leave out lines much darker than most: they are bars of a written line that happen to stand in a row."""
    if len(rulings) < 3:
        return rulings
    usual = float(np.median([r.level for r in rulings]))
    return [r for r in rulings if r.level > usual - 45]


def take_out(
    even: NDArray[np.uint8], rulings: Sequence[Ruling], ink: NDArray[np.uint8], deepest: float
) -> Cleaned:
    """Take printed lines out of a page.

    A line fainter than ink is divided out by its own profile, so that strokes that cross it or lie on it stay whole.
    A line as dark as ink is erased where no stroke crosses it.

    Args:
        even: evened grey page.
        rulings: from `find_rulings`.
        ink: 255 where anything dark is, printed lines included.
        deepest: darkness of the darkest ink in grey levels.
    """
    faint = [r for r in rulings if 255 - r.level < max(60.0, 0.7 * deepest)]
    dark = [r for r in rulings if r not in faint]
    shade = np.full_like(even, 255)
    for ruling in faint:
        _shade(shade.T if ruling.upright else shade, even.T if ruling.upright else even, ruling)
    cleaned = even
    if faint:
        cleaned = np.asarray(cv2.divide(even, shade, scale=255), dtype=np.uint8)
        # What is left where a line strays from its curve is no darker than the line was.
        residue = min(1.1 * max(255 - r.level for r in faint), 0.5 * deepest)
        zone = cv2.dilate((shade < 250).astype(np.uint8), np.ones((5, 5), np.uint8)) > 0
        cleaned[zone & (cleaned > 255 - residue)] = 255
    erased = np.zeros_like(even)
    bands = [_bands(even.shape, [r for r in dark if r.upright == upright]) for upright in (False, True)]
    for ruling in dark:
        # Where a printed line crosses another one, that one is no pen stroke.
        strokes = np.asarray(np.where(bands[not ruling.upright] > 0, 0, ink), dtype=np.uint8)
        if ruling.upright:
            _erase(erased.T, even.T, np.ascontiguousarray(strokes.T), ruling)
        else:
            _erase(erased, even, strokes, ruling)
    return Cleaned(cleaned, shade, erased)


def _shade(target: NDArray[np.uint8], page: NDArray[np.uint8], ruling: Ruling) -> None:
    """Multiply the brightness of one printed line, its median along the line, into the picture of all of them."""
    height, width = page.shape
    start, stop = int(max(0, ruling.xs[0])), int(min(width, np.ceil(ruling.xs[-1]) + 1))
    if stop - start < 2:
        return
    columns = np.arange(start, stop)
    middle = np.interp(columns, ruling.xs, ruling.ys)
    middle = middle + _offsets(page, columns, middle, ruling)
    reach = int(np.ceil(ruling.half)) + 3
    rows = np.rint(middle).astype(int)[None, :] + np.arange(-reach, reach + 1)[:, None]
    inside = (rows >= 0) & (rows < height)
    rows = np.clip(rows, 0, height - 1)
    band = page[rows, columns[None, :]].astype(np.float32)
    distance = rows - middle[None, :]
    # Columns under ink are far darker than the rest and would pull the median down on a crowded line.
    clear = (band.min(axis=0) > ruling.level - 40) & inside.all(axis=0)
    if clear.sum() < 12:
        return
    profile = np.median(band[:, clear], axis=1)
    profile = np.where(profile > 249, 255.0, profile)
    shade = np.interp(distance, np.arange(-reach, reach + 1), profile)
    before = target[rows, columns[None, :]].astype(np.float32)
    target[rows, columns[None, :]] = np.where(inside, np.maximum(before * shade / 255, 40), before).astype(np.uint8)


def _offsets(
    page: NDArray[np.uint8], columns: NDArray[np.int_], middle: NDArray[np.float64], ruling: Ruling
) -> NDArray[np.float64]:
    """How far the printed line really runs from its curve, column by column."""
    reach = int(np.ceil(ruling.half)) + 6
    around = np.arange(-reach, reach + 1)
    nearest = np.rint(middle).astype(int)
    rows = np.clip(nearest[None, :] + around[:, None], 0, page.shape[0] - 1)
    band = page[rows, columns[None, :]].astype(np.float32)
    clear = (band.min(axis=0) > ruling.level - 40).astype(np.float32)
    size = 40
    count = max(1, len(columns) // size)
    used = count * size
    if used > len(columns):
        return np.zeros(len(columns))
    share = clear[:used].reshape(count, size)
    enough = share.sum(axis=1) >= 12
    means = (band[:, :used].reshape(len(around), count, size) * share).sum(axis=2) / np.maximum(share.sum(axis=1), 1)
    darkness = np.maximum(means.max(axis=0) - 2 - means, 0)
    darkness[darkness < 0.4 * darkness.max(axis=0)] = 0
    rest = ((nearest - middle)[:used].reshape(count, size) * share).sum(axis=1) / np.maximum(share.sum(axis=1), 1)
    found = (around[:, None] * darkness).sum(axis=0) / np.maximum(darkness.sum(axis=0), 1e-6) + rest
    good = np.flatnonzero(enough & (darkness.max(axis=0) > 6))
    if len(good) < 3:
        return np.zeros(len(columns))
    smooth = found[good]
    smooth[1:-1] = np.median([smooth[:-2], smooth[1:-1], smooth[2:]], axis=0)
    shift = np.interp(np.arange(len(columns)), (good + 0.5) * size, smooth)
    return np.asarray(np.clip(shift, -_STRAY, _STRAY), dtype=np.float64)


def _bands(shape: tuple[int, ...], rulings: Sequence[Ruling]) -> NDArray[np.uint8]:
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
    falls: list[float] = []
    for index in range(_STRIPS):
        found, fall = _strip_peaks(even[:, int(index * step): int((index + 1) * step)])
        peaks.append(found)
        falls.append(float(fall))
    chains: list[list[tuple[int, float, float, float]]] = []
    open_chains: list[list[tuple[int, float, float, float]]] = []
    reach = max(3.0, step * 0.09)
    for index, found in enumerate(peaks):
        free = list(found)
        still_open = []
        for chain in open_chains:
            last_index, last_y = chain[-1][0], chain[-1][1]
            if len(chain) >= 4:
                slope = (chain[-1][1] - chain[-4][1]) / (chain[-1][0] - chain[-4][0])
            else:
                slope = (falls[last_index] + falls[index]) / 2
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
        if span < 0.5 * _STRIPS or len(chain) < 0.72 * span:
            continue
        half = float(np.median([c[2] for c in chain])) / 2
        level = float(np.median([c[3] for c in chain]))
        places = np.array([(c[0] + 0.5) * step for c in chain])
        curve = _curve(places, np.array([c[1] for c in chain]), reach * 0.5)
        if curve is not None:
            rulings.append(_ruling(curve, places, width, half, level, upright))
    return rulings


def _curve(places: NDArray[np.float64], heights: NDArray[np.float64], allowed: float) -> NDArray[np.float64] | None:
    """Smooth curve (polynomial, highest power first) through the heights; None where they do not lie on one."""
    degree = 3 if len(places) >= 12 else 1
    middle, spread = places.mean(), max(float(np.ptp(places)), 1.0)
    x = (places - middle) / spread
    kept = np.ones(len(x), bool)
    curve = np.polyfit(x, heights, degree)
    for _ in range(3):
        miss = np.abs(np.polyval(curve, x) - heights)
        kept = miss <= max(1.0, 2.5 * float(np.median(miss)))
        if kept.sum() < degree + 3:
            return None
        curve = np.polyfit(x[kept], heights[kept], degree)
    if kept.mean() < 0.6 or float(np.abs(np.polyval(curve, x[kept]) - heights[kept]).mean()) > allowed:
        return None
    return np.array([*curve, middle, spread])


def _ruling(
    curve: NDArray[np.float64], places: NDArray[np.float64], width: int, half: float, level: float, upright: bool
) -> Ruling:
    """A ruling along a curve; carried on to an edge that it nearly reaches, straight beyond the last place seen."""
    middle, spread = curve[-2:]
    step = width / _STRIPS
    first, last = float(places[0]) - 0.5 * step, float(places[-1]) + 0.5 * step
    xs = np.linspace(first, last, _STRIPS)
    ys = np.polyval(curve[:-2], (xs - middle) / spread)
    if 0 < first < 0.25 * width:
        ys = np.concatenate([[ys[0] - first * (ys[3] - ys[0]) / (xs[3] - xs[0])], ys])
        xs = np.concatenate([[0.0], xs])
    if 0.75 * width < last < width:
        ys = np.concatenate([ys, [ys[-1] + (width - last) * (ys[-1] - ys[-4]) / (xs[-1] - xs[-4])]])
        xs = np.concatenate([xs, [float(width)]])
    return Ruling(tuple(map(float, xs)), tuple(map(float, ys)), half, level, upright)


def _strip_peaks(part: NDArray[np.uint8]) -> tuple[list[tuple[float, float, float]], int]:
    """Rows of a strip that are dark nearly from side to side: (row, thickness, darkness level); their fall over it."""
    # Local contrast against the rows a little above and below, so that pale lines count as well.
    around = np.maximum(
        np.roll(cv2.blur(part, (1, 3)), 6, axis=0), np.roll(cv2.blur(part, (1, 3)), -6, axis=0)
    )
    darker = (part.astype(np.int16) < around.astype(np.int16) - 8).astype(np.uint8)
    fall = _fall(darker)
    if fall:
        part, darker = _levelled(part, fall), _levelled(darker, fall)
    # A line that falls by a row within the strip still counts, hence the dilation.
    dark = cv2.dilate(darker, np.ones((3, 1), np.uint8)).mean(axis=1)
    rim = 14  # the edge of the sheet is no printed line
    dark[:rim] = dark[-rim:] = 0
    rows = np.flatnonzero(dark > _FILLED)
    peaks = []
    if rows.size:
        for group in np.split(rows, np.flatnonzero(np.diff(rows) > 2) + 1):
            thickness = max(1.0, float(group[-1] - group[0] - 1))
            if thickness <= 9:
                near = np.arange(max(0, group[0] - 1), min(len(part), group[-1] + 2))
                medians = np.median(part[near], axis=1)
                weights = np.maximum(medians.max() - medians, 0) + 1e-3
                peaks.append((float((near * weights).sum() / weights.sum()), thickness, float(medians.min())))
    return peaks, fall


def _fall(darker: NDArray[np.uint8]) -> int:
    """By how many rows printed lines fall over the width of a strip: where its rows of dark pixels are fullest."""
    best, fullest = 0, 0.0
    for fall in sorted(range(-_STEEPEST, _STEEPEST + 1, 2), key=abs):
        rows = _levelled(darker[:, ::2], fall).mean(axis=1, dtype=np.float32)
        filled = float((rows[rows > 0.4] ** 2).sum())
        if filled > 1.15 * fullest:
            best, fullest = fall, filled
    return best


def _levelled(part: NDArray[np.uint8], fall: int) -> NDArray[np.uint8]:
    """The strip with each column moved so that lines with this fall lie level; the middle column stays."""
    if fall == 0:
        return part
    width = part.shape[1]
    out = np.empty_like(part)
    shifts = np.rint(fall * ((np.arange(width) + 0.5) / width - 0.5)).astype(int)
    for shift in np.unique(shifts):
        columns = np.flatnonzero(shifts == shift)
        out[:, columns] = np.roll(part[:, columns], -shift, axis=0)
    return out
