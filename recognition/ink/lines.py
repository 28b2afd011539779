"""Which strokes make one written line?

Strokes side by side at the same height belong together, a bar holds what stands above and below it, a sign holds
what it spans, and small marks go to the nearest line. The order of writing is not used: a bar drawn last, or a dot
added later, falls where it stands.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.ink.picture import InkPicture, render_page
from recognition.ink.strokes import Ink
from recognition.reader.canonical import draw_strokes, typical_height
from recognition.result import Box

__all__ = ["InkLine", "InkLines", "ink_line", "strokes_to_lines"]

_PEN: Final = 3  # px
_BORDER: Final = 6  # px round a crop

# In heights of a typical stroke:
_SCRIPT_WIDTH: Final = 5.5  # scripts and limits are narrower
_SCRIPT_REACH: Final = 0.35  # and nearer to their line than lines are to each other
_STRAY_WIDTH: Final = 2.5
_STRAY_HEIGHT: Final = 0.75
_STRAY_REACH: Final = 0.9
_FLAT: Final = 0.35  # minus signs, bars and dots are lower
_LETTER: Final = 0.5  # higher strokes can tell whether they are crossed out

_STRIKE_WIDTH: Final = 0.75  # of the line
_STRIKE_SHARE: Final = 0.7  # of its letters are crossed
_STRIKE_LEAST: Final = 3  # letters


@dataclass(frozen=True, slots=True, eq=False)
class InkLine:
    """One written line, in pixels of the page's picture (`InkPicture`).

    strokes: each of shape (n, 2). numbers: of these strokes in the ink. to_original: identity, for such as photos need.
    """

    strokes: tuple[NDArray[np.float64], ...]
    numbers: tuple[int, ...]
    box: Box
    polygon: tuple[tuple[float, float], ...]
    struck_out: bool = False
    to_original: NDArray[np.float64] = field(default_factory=lambda: np.eye(3))

    @property
    def image(self) -> NDArray[np.uint8]:
        """The line alone, grey, ink dark on white, shape (h, w) of the box."""
        moved = [stroke - (self.box.x, self.box.y) for stroke in self.strokes]
        return 255 - draw_strokes(moved, (self.box.w, self.box.h), pen=_PEN)


@dataclass(frozen=True, slots=True, eq=False)
class InkLines:
    """The lines of a drawing from top to bottom, and the picture in whose pixels they are given."""

    lines: tuple[InkLine, ...]
    picture: InkPicture


def strokes_to_lines(ink: Ink) -> InkLines:
    """Group the strokes of a drawing into written lines."""
    picture = render_page(ink)
    strokes = [picture.placed(stroke) for stroke in ink.strokes]
    groups = _Grouping(strokes).lines()
    lines = [ink_line(tuple(strokes[number] for number in group), group, picture.size) for group in groups]
    return InkLines(tuple(lines), picture)


def ink_line(strokes: tuple[NDArray[np.float64], ...], numbers: tuple[int, ...], size: tuple[int, int]) -> InkLine:
    """The line of some strokes.

    Args:
        strokes: in pixels of the picture, each of shape (n, 2).
        numbers: of the strokes in the ink.
        size: width and height of the picture.
    """
    points = np.concatenate(strokes)
    low = np.maximum(np.floor(points.min(axis=0)) - _BORDER, 0).astype(int)
    high = np.minimum(np.ceil(points.max(axis=0)) + _BORDER + 1, size).astype(int)
    box = Box(int(low[0]), int(low[1]), int(high[0] - low[0]), int(high[1] - low[1]))
    left, top, right, bottom = (float(side) for side in (box.x, box.y, box.x + box.w, box.y + box.h))
    polygon = ((left, top), (right, top), (right, bottom), (left, bottom))
    return InkLine(strokes, numbers, box, polygon, _is_struck_out(strokes))


def _is_struck_out(strokes: tuple[NDArray[np.float64], ...]) -> bool:
    """One stroke runs along the whole line, through the middle of most of the others."""
    low = np.array([stroke.min(axis=0) for stroke in strokes])
    high = np.array([stroke.max(axis=0) for stroke in strokes])
    letters = np.flatnonzero((high - low)[:, 1] > _LETTER * typical_height(*(high - low).T[::-1]))
    width = float(np.ptp([low[:, 0].min(), high[:, 0].max()]))
    for number in np.flatnonzero((high - low)[:, 0] > _STRIKE_WIDTH * width):
        others = letters[letters != number]
        if len(others) < _STRIKE_LEAST:
            continue
        path = _dense(strokes[number])
        room = 0.2 * (high - low)[others]
        room[:, 0] = 0
        inside = (path[:, None] > low[others] + room) & (path[:, None] < high[others] - room)
        if inside.all(axis=2).any(axis=0).mean() > _STRIKE_SHARE:
            return True
    return False


def _dense(stroke: NDArray[np.float64]) -> NDArray[np.float64]:
    """Points along a stroke, about a pixel apart."""
    lengths = np.hypot(*np.diff(stroke, axis=0).T)
    along = np.concatenate([[0.0], np.cumsum(lengths)])
    places = np.arange(0.0, along[-1] + 1.0)
    return np.column_stack([np.interp(places, along, stroke[:, axis]) for axis in (0, 1)])


class _Grouping:
    """Joins strokes to lines step by step; `unit` is the height of a typical stroke."""

    def __init__(self, strokes: list[NDArray[np.float64]]) -> None:
        low = np.array([stroke.min(axis=0) for stroke in strokes])
        high = np.array([stroke.max(axis=0) for stroke in strokes])
        self._left, self._top = low.T
        self._right, self._bottom = high.T
        self._width, self._height = (high - low).T
        self.unit = typical_height(self._height, self._width)
        self._parent = list(range(len(strokes)))
        self._bars: list[int] = []

    def lines(self) -> list[tuple[int, ...]]:
        self._join_neighbours()
        self._join_spanned()
        self._join_bars()
        self._join_nearest(widest=_SCRIPT_WIDTH, reach=_SCRIPT_REACH)
        self._join_rows()
        self._join_nearest(widest=_STRAY_WIDTH, reach=_STRAY_REACH, tallest=_STRAY_HEIGHT)
        self._join_nearest(widest=np.inf, reach=_STRAY_REACH, tallest=_FLAT)  # underlines
        groups = self._groups()
        return [tuple(group) for group in sorted(groups, key=lambda g: float(self._middle(g)))]

    def _find(self, number: int) -> int:
        while self._parent[number] != number:
            self._parent[number] = self._parent[self._parent[number]]
            number = self._parent[number]
        return number

    def _join(self, first: int, second: int) -> None:
        self._parent[self._find(first)] = self._find(second)

    def _groups(self) -> list[list[int]]:
        groups: dict[int, list[int]] = {}
        for number in range(len(self._parent)):
            groups.setdefault(self._find(number), []).append(number)
        return list(groups.values())

    def _middle(self, group: list[int]) -> float:
        return float((self._top[group].min() + self._bottom[group].max()) / 2)

    def _flat(self) -> NDArray[np.bool_]:
        """Minus signs, bars, dots: too low to tell a height."""
        flat: NDArray[np.bool_] = self._height < _FLAT * self.unit
        return flat

    def _join_neighbours(self) -> None:
        """Strokes side by side whose heights overlap by half of the lower one."""
        room = np.maximum(0.6 * self.unit - self._height, 0) / 2  # flat strokes get some height
        top, bottom = self._top - room, self._bottom + room
        order = np.argsort(self._left)
        for place, one in enumerate(order):
            for other in order[place + 1 :]:
                if self._left[other] - self._right[one] > 1.5 * self.unit:
                    break
                overlap = min(bottom[one], bottom[other]) - max(top[one], top[other])
                lower = min(bottom[one] - top[one], bottom[other] - top[other], 1.2 * self.unit)
                if overlap > 0.5 * lower:
                    self._join(int(one), int(other))

    def _join_spanned(self) -> None:
        """What stands inside a root, a bracket's width or another large stroke."""
        large = np.flatnonzero((self._height > 0.8 * self.unit) & (self._width > 1.2 * self.unit))
        for one in large:
            middle_x, middle_y = (self._left + self._right) / 2, (self._top + self._bottom) / 2
            inside = (
                (middle_x > self._left[one])
                & (middle_x < self._right[one])
                & (middle_y > self._top[one])
                & (middle_y < self._bottom[one])
            )
            for other in np.flatnonzero(inside):
                self._join(int(one), int(other))

    def _join_bars(self) -> None:
        """A fraction bar and what stands right above and below it."""
        bars = np.flatnonzero((self._width > 0.7 * self.unit) & (self._height < 0.25 * self._width))
        for bar in bars[np.argsort(self._width[bars])]:
            middle_x = (self._left + self._right) / 2
            over = (middle_x > self._left[bar] - 0.2 * self.unit) & (middle_x < self._right[bar] + 0.2 * self.unit)
            over &= (self._width < 1.25 * self._width[bar]) & ~(self._flat() & (self._width > 0.5 * self._width[bar]))
            over[bar] = False
            reach = min(0.8 * self.unit + 0.12 * self._width[bar], 1.4 * self.unit)
            above = over & (self._bottom < self._bottom[bar]) & (self._top[bar] - self._bottom < reach)
            below = over & (self._top > self._top[bar]) & (self._top - self._bottom[bar] < reach)
            if above.any() and below.any() and self._is_bar(int(bar), above, below):
                self._bars.append(int(bar))
                for other in np.flatnonzero(above | below):
                    self._join(int(bar), int(other))

    def _is_bar(self, bar: int, above: NDArray[np.bool_], below: NDArray[np.bool_]) -> bool:
        """Not a minus sign between two lines: nothing stands beside it at less than the distance of its parts."""
        gap_above = float(self._top[bar] - self._bottom[above].max())
        gap_below = float(self._top[below].min() - self._bottom[bar])
        if self._width[bar] < 1.6 * self.unit:
            beside = (np.abs((self._top + self._bottom) / 2 - self._top[bar]) < 0.4 * self.unit) & ~self._flat()
            near = np.maximum(self._left - self._right[bar], self._left[bar] - self._right) < 0.8 * self.unit
            if (beside & near).any() and max(gap_above, gap_below) > 0.35 * self.unit:
                return False
        return True

    def _join_rows(self) -> None:
        """Groups at the same height, however far apart, and groups that stick into each other."""
        changed = True
        while changed:
            changed = False
            groups = sorted(self._groups(), key=lambda g: -len(g))
            for place, large in enumerate(groups):
                for small in groups[place + 1 :]:
                    if self._share_row(large, small):
                        self._join(small[0], large[0])
                        changed = True
                        break
                if changed:
                    break

    def _share_row(self, large: list[int], small: list[int]) -> bool:
        top, bottom = self._core(large)
        small_top, small_bottom = self._core(small)
        overlap = min(bottom, small_bottom) - max(top, small_top)
        return overlap > 0.5 * min(bottom - top, small_bottom - small_top)

    def _core(self, group: list[int]) -> tuple[float, float]:
        top, bottom = float(self._top[group].min()), float(self._bottom[group].max())
        room = max(0.3 * self.unit - (bottom - top), 0) / 2
        return top - room, bottom + room

    def _join_nearest(self, *, widest: float, reach: float, tallest: float = np.inf) -> None:
        """Small groups (scripts, limits, dots) go to the group that they are nearest to; lengths in units."""
        groups = self._groups()
        order = [number for group in groups for number in group]
        starts = np.cumsum([0, *(len(group) for group in groups[:-1])])
        apart = self._distances()[np.ix_(order, order)]
        between = np.minimum.reduceat(np.minimum.reduceat(apart, starts, axis=0), starts, axis=1)
        np.fill_diagonal(between, np.inf)
        while len(groups) > 1:
            small = np.array([self._fits(group, widest, tallest) for group in groups])
            usable = np.where(small[:, None], between, np.inf)
            one, other = np.unravel_index(int(usable.argmin()), usable.shape)
            if not usable[one, other] < reach * self.unit:
                return
            self._join(groups[one][0], groups[other][0])
            groups[other] = groups[other] + groups[one]
            nearer = np.minimum(between[one], between[other])
            between[other], between[:, other] = nearer, nearer
            between[other, other] = np.inf
            between = np.delete(np.delete(between, one, axis=0), one, axis=1)
            del groups[one]

    def _fits(self, group: list[int], widest: float, tallest: float) -> bool:
        width = self._right[group].max() - self._left[group].min()
        height = self._bottom[group].max() - self._top[group].min()
        return bool(width < widest * self.unit and height < tallest * self.unit)

    def _distances(self) -> NDArray[np.float64]:
        """Between the boxes of any two strokes, steps to the side counting half."""
        across = np.maximum(self._left[:, None] - self._right, self._left - self._right[:, None])
        down = np.maximum(self._top[:, None] - self._bottom, self._top - self._bottom[:, None])
        return np.asarray(np.hypot(0.5 * np.maximum(across, 0), np.maximum(down, 0)), np.float64)
