"""What cannot be parted: a fraction with its bar, letters under a root, whatever stands in a fraction's field.

Pieces are joined in a forest: parent[i] is another piece of the same block, or i itself.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from recognition.page.pieces import LONG_BAR, outline

__all__ = [
    "find_root", "join_contained", "join_enclosed", "join_fractions", "join_touching_fractions",
    "rejoin_at_fractions", "rejoin_within",
]  # fmt: skip

_FRACTION = 3.0
"""Letter heights; a fraction whose bar was not found is narrower."""
_BESIDE = 2.0
"""Letter heights; so far beside a short bar within a piece its row stands."""
_WITHIN = 0.65
"""Share of a row's height that lies at the height of another row beside it, from which on the two are one."""
_SCRAP, _END, _ASIDE = 8.0, 4.0, 4.0
"""Letter heights; marks that fell out of a row, and out of an end of it, are no wider together. How far aside the row
shows how high it is."""


def join_contained(boxes: NDArray[np.float64], letter: float, parent: list[int]) -> None:
    """What lies within the box of a root sign, an 8 or a bracketed drawing belongs to it."""
    x0, y0, x1, y1 = boxes.T
    size = (x1 - x0) * (y1 - y0)
    for i in np.flatnonzero((y1 - y0 > 0.8 * letter) & (x1 - x0 > 0.8 * letter)):
        wide = np.minimum(x1, x1[i]) - np.maximum(x0, x0[i])
        tall = np.minimum(y1, y1[i]) - np.maximum(y0, y0[i])
        inside = (wide > 0) & (tall > 0) & (wide * tall > 0.75 * size) & (size < size[i])
        for j in np.flatnonzero(inside):
            parent[find_root(parent, int(j))] = find_root(parent, int(i))


def join_fractions(boxes: NDArray[np.float64], letter: float, parent: list[int]) -> dict[int, float]:
    """Join each fraction bar with what stands on it and hangs from it; the bars found, each with its height."""
    x0, y0, x1, y1 = boxes.T
    w, h = x1 - x0, y1 - y0
    cx = (x0 + x1) / 2
    found: dict[int, float] = {}
    flat = np.flatnonzero((w > 0.55 * letter) & (h < 0.3 * w) & (h < 0.6 * letter))
    for i in flat[np.argsort(w[flat])]:
        bar_y = (y0[i] + y1[i]) / 2
        # A long bar is hardly a minus sign, so what it parts may stand farther off.
        reach = _reach(float(w[i]), letter)
        over = (cx > x0[i] - 0.25 * letter) & (cx < x1[i] + 0.25 * letter) & (w < w[i] * 1.25 + 0.5 * letter)
        over[i] = False
        is_flat = (h < 0.3 * w) & (w > 0.4 * w[i]) & (w < 2.2 * w[i])
        gap_up, gap_down = y0[i] - y1, y0 - y1[i]
        # A letter that straddles the bar's level stands beside it or is crossed out by it: no fraction.
        above = over & (gap_up > -0.25 * letter) & (gap_up < reach) & (y0 < bar_y - 0.3 * letter) & ~is_flat
        below = over & (gap_down > -0.25 * letter) & (gap_down < reach) & (y1 > bar_y + 0.3 * letter) & ~is_flat
        tall = h > 0.4 * letter
        equals = over & is_flat & (np.abs((y0 + y1) / 2 - bar_y) < 0.75 * letter)
        if equals.any() and not (w[i] > 2.0 * letter and (above & tall).any() and (below & tall).any()):
            continue
        if not ((above & tall).any() and (below & tall).any()):
            continue
        if w[i] < 2.2 * letter:
            covered = _covered(x0, x1, above & tall) + _covered(x0, x1, below & tall)
        else:
            covered = _span(x0, x1, above & tall) + _span(x0, x1, below & tall)
        if covered < 0.45 * w[i]:
            continue
        # Text that runs on past the ends of a long bar, just below it, makes the bar an underline.
        past = (x0 >= x1[i] - 0.2 * letter) & (x0 < x1[i] + 0.6 * letter)
        past |= (x1 <= x0[i] + 0.2 * letter) & (x1 > x0[i] - 0.6 * letter)
        if w[i] > 2.2 * letter and (past & tall & (gap_down > 0) & (gap_down < reach)).any():
            continue
        for j in np.flatnonzero(above | below):
            parent[find_root(parent, int(j))] = find_root(parent, int(i))
        found[int(i)] = float(bar_y)
    return found


def join_touching_fractions(
    boxes: NDArray[np.float64], letter: float, parent: list[int], bars: NDArray[np.float64]
) -> dict[int, float]:
    """The same for bars that a letter above or below touches, so that bar and letter are one piece."""
    x0, y0, x1, y1 = boxes.T
    cx = (x0 + x1) / 2
    found: dict[int, float] = {}
    for left, top, right, bottom, number in bars[np.argsort(bars[:, 2] - bars[:, 0])]:
        piece = int(number)
        own_above, own_below = top - y0[piece] > 0.3 * letter, y1[piece] - bottom > 0.3 * letter
        over = (cx > left - 0.25 * letter) & (cx < right + 0.25 * letter) & (x1 - x0 < 1.25 * (right - left) + letter)
        over[piece] = False
        tall = y1 - y0 > 0.4 * letter
        # The roof of a root has only its own ink below; what stands above it must be quite near to be a numerator.
        above = over & (top - y1 > -0.25 * letter) & (top - y1 < 0.4 * letter) & (y0 < top - 0.3 * letter)
        low = min(_reach(float(right - left), letter), 0.6 * letter)
        below = over & (y0 - bottom > -0.25 * letter) & (y0 - bottom < low) & (y1 > bottom + 0.3 * letter)
        if not ((own_above or (above & tall).any()) and (own_below or (below & tall).any())):
            continue
        if own_above and own_below and not (above | below).any():
            continue  # a struck-out word or a 4 rather than a fraction
        parts = np.append(np.flatnonzero(above | below), piece)
        level, aside = _beside(boxes, (left, top, right, bottom), outline(boxes[parts]), bars, letter)
        # The foot of a 2 and the roof of a root look like bars too, but their rows do not stand at their level.
        if level <= aside and (aside or right - left < LONG_BAR * letter):
            continue
        for j in np.flatnonzero(above | below):
            parent[find_root(parent, int(j))] = find_root(parent, piece)
        found[piece] = float((top + bottom) / 2)
    return found


def _beside(
    boxes: NDArray[np.float64], bar: tuple[float, float, float, float], field: NDArray[np.float64],
    bars: NDArray[np.float64], letter: float,
) -> tuple[int, int]:
    """How many marks close beside a bar stand at its level, and how many letters above or below it?

    Args:
        bar: x0, y0, x1, y1.
        field: the same of the fraction that the bar would make.
        bars: level strokes within pieces; parts of a fraction beside it, with a bar at the same level, do not count.
    """
    left, top, right, bottom = bar
    x0, y0, x1, y1 = boxes.T
    axis, middle = (top + bottom) / 2, (y0 + y1) / 2
    apart = np.maximum(left - x1, x0 - right)
    near = (apart > -0.2 * letter) & (apart < _BESIDE * letter) & (middle > field[1]) & (middle < field[3])
    level = near & ((x1 - x0 > 0.4 * letter) | (y1 - y0 > 0.5 * letter)) & (np.abs(middle - axis) < 0.25 * letter)
    # A letter that reaches well past the level, such as a y, tells nothing.
    aside = near & (y1 - y0 > 0.7 * letter) & (y1 - y0 < 2 * letter) & (np.abs(middle - axis) > 0.4 * letter)
    aside &= np.minimum(axis - y0, y1 - axis) < 0.2 * letter
    strokes = np.concatenate([bars[:, :4], boxes[(x1 - x0 > 0.55 * letter) & (y1 - y0 < 0.3 * (x1 - x0))]])
    strokes = strokes[np.abs((strokes[:, 1] + strokes[:, 3]) / 2 - axis) < 0.3 * letter]
    reach = 0.1 * (x1 - x0)
    at_bar = [
        bool(((strokes[:, 0] < x0[i] + reach[i]) & (strokes[:, 2] > x1[i] - reach[i])).any())
        for i in np.flatnonzero(aside)
    ]
    return int(level.sum()), len(at_bar) - sum(at_bar)


def _reach(width: float, letter: float) -> float:
    """How far from a bar of some width the numbers that it parts may stand."""
    return letter * (0.42 if width < 1.1 * letter else 0.62 if width < 2.2 * letter else 0.8)


def join_enclosed(boxes: NDArray[np.float64], parent: list[int], axes: dict[int, float]) -> None:
    """What lies within a fraction's field belongs to it: letters between tall brackets, a sign before a root."""
    centre_x, centre_y = (boxes[:, 0] + boxes[:, 2]) / 2, (boxes[:, 1] + boxes[:, 3]) / 2
    for _ in range(2):
        for bar in axes:
            root = find_root(parent, bar)
            members = [i for i in range(len(boxes)) if find_root(parent, i) == root]
            field_x0, field_y0 = boxes[members, :2].min(axis=0)
            field_x1, field_y1 = boxes[members, 2:].max(axis=0)
            inside = (centre_x > field_x0) & (centre_x < field_x1) & (centre_y > field_y0) & (centre_y < field_y1)
            for j in np.flatnonzero(inside):
                parent[find_root(parent, int(j))] = find_root(parent, bar)


def rejoin_at_fractions(boxes: NDArray[np.float64], clusters: list[list[int]], letter: float) -> list[list[int]]:
    """Put a row together that broke at a fraction whose bar was not found: its halves hold one part of it each."""
    return _joined(
        clusters, lambda row: float(boxes[row, 0].min()),
        lambda left, right: _broke_at_fraction(boxes[left], boxes[right], letter),
    )  # fmt: skip


def _broke_at_fraction(one: NDArray[np.float64], two: NDArray[np.float64], letter: float) -> bool:
    """Does one row end, and the other begin, with marks that stand on top of one another, and go on level beyond?"""
    begin, end = float(two[:, 0].min()) - 0.2 * letter, float(one[:, 2].max()) + 0.2 * letter
    if not 0 < end - begin < _FRACTION * letter:
        return False
    ends, begins = one[:, 2] > begin + 0.4 * letter, two[:, 0] < end - 0.4 * letter
    rest, follows = one[~ends], two[~begins]
    if not (ends.any() and begins.any() and len(rest) and len(follows)):
        return False
    near = rest[rest[:, 2] > rest[:, 2].max() - 1.5 * letter]
    far = follows[follows[:, 0] < follows[:, 0].min() + 1.5 * letter]
    if begin - float(rest[:, 2].max()) > 2 * letter or float(follows[:, 0].min()) - end > 2 * letter:
        return False
    level = [float(((part[:, 1] + part[:, 3]) / 2).mean()) for part in (near, far, one[ends], two[begins])]
    apart = sorted((level[2], level[3]))
    middle = (level[0] + level[1]) / 2
    return bool(
        abs(level[0] - level[1]) < 0.5 * letter and apart[1] - apart[0] < 2.4 * letter
        and apart[0] < middle < apart[1]
    )  # fmt: skip


def rejoin_within(boxes: NDArray[np.float64], clusters: list[list[int]], letter: float) -> list[list[int]]:
    """Put marks that were taken for a row of their own back into the row at whose height they stand."""
    return _joined(clusters, len, lambda short, long: _stands_within(boxes[short], boxes[long], letter))


def _stands_within(short: NDArray[np.float64], long: NDArray[np.float64], letter: float) -> bool:
    """Do a few marks stand between the ends of a row, and at the height of what is near them of it?"""
    left, top, right, bottom = outline(short).tolist()
    flanked = bool((long[:, 2] < left + 0.3 * letter).any() and (long[:, 0] > right - 0.3 * letter).any())
    past = max(float(long[:, 0].min()) - left, right - float(long[:, 2].max()))
    if right - left > (_SCRAP if flanked else _END) * letter or past > 0.5 * letter:
        return False  # a row of its own, or working at the side
    near = long[(long[:, 2] > left - _ASIDE * letter) & (long[:, 0] < right + _ASIDE * letter)]
    if not len(near):
        return False
    shared = min(bottom, float(near[:, 3].max())) - max(top, float(near[:, 1].min()))
    return bool(shared > _WITHIN * (bottom - top))


def _joined(
    clusters: list[list[int]], rank: Callable[[list[int]], float], belong: Callable[[list[int], list[int]], bool]
) -> list[list[int]]:
    """Join rows two by two while an earlier one, by rank, belongs to a later one."""
    rows = sorted(map(list, clusters), key=rank)
    while pair := next(
        ((one, two) for one, two in combinations(range(len(rows)), 2) if belong(rows[one], rows[two])), None
    ):
        rows[pair[1]] += rows[pair[0]]
        del rows[pair[0]]
        rows.sort(key=rank)
    return rows


def find_root(parent: list[int], i: int) -> int:
    """The piece that stands for the block of piece i."""
    while parent[i] != i:
        parent[i] = parent[parent[i]]
        i = parent[i]
    return i


def _covered(x0: NDArray[np.float64], x1: NDArray[np.float64], chosen: NDArray[np.bool_]) -> float:
    return float((x1[chosen] - x0[chosen]).sum())


def _span(x0: NDArray[np.float64], x1: NDArray[np.float64], chosen: NDArray[np.bool_]) -> float:
    return float(x1[chosen].max() - x0[chosen].min())
