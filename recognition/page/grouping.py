"""Which pieces of ink make a written line? Fractions stay whole, small marks join their letters, lines stay apart."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from recognition.page.fractions import (
    find_root,
    join_contained,
    join_enclosed,
    join_fractions,
    join_touching_fractions,
    rejoin_at_fractions,
    rejoin_within,
)
from recognition.page.gutters import split_at_gutters
from recognition.page.pieces import Pieces, outline

__all__ = ["group_lines"]

_GAP = 5.0
"""Widest gap, in letter heights, between two letters of one line."""
_NEAR = 3.0
"""Farthest that a small mark may stand from its line, in letter heights."""
_THIN, _FAINT = 0.6, 0.72
"""Thickness and darkness of a hairline: at most these shares of the pen's and of its line's."""
_GHOST = 0.48
"""Marks with less than this share of the usual darkness shine through from the back of the sheet."""

_WORD, _TALL = 2.0, 1.5
"""Letter heights; a single mark that is wider or taller is a word or a fraction in joined letters, and no power."""
_LONG_WORD, _FILLED = 2.5, 0.7
"""A word crossed out is so much wider than tall, and has so much ink in its box at most."""


@dataclass(slots=True)
class _Block:
    """Pieces that cannot be parted: a letter, or a fraction with its bar."""

    members: list[int]
    box: NDArray[np.float64]
    axis: float
    fraction: bool = False


def group_lines(pieces: Pieces) -> list[list[int]]:
    """Sort pieces into lines.

    Args:
        pieces: all pieces of ink of a page.
    Returns:
        Indices of the pieces of each line; pieces that belong to no line are in none. In no order.
    """
    boxes, letter = pieces.boxes, pieces.letter
    if len(boxes) == 0:
        return []
    shear = 0.0
    groups: list[list[int]] = []
    for _ in range(2):
        sheared = boxes.copy()
        middle = (boxes[:, 0] + boxes[:, 2]) / 2
        sheared[:, 1] -= shear * middle
        sheared[:, 3] -= shear * middle
        bars = pieces.bars.copy()
        bars[:, 1] -= shear * (bars[:, 0] + bars[:, 2]) / 2
        bars[:, 3] -= shear * (bars[:, 0] + bars[:, 2]) / 2
        groups = _grouped(sheared, pieces.area, letter, bars)
        slope = _common_slope(boxes, groups, letter)
        if abs(slope - shear) < 0.004:
            break
        shear = slope
    return split_at_gutters(_without_ghosts(groups, pieces), boxes, letter)


def _without_ghosts(groups: list[list[int]], pieces: Pieces) -> list[list[int]]:
    """Leave out marks much fainter than the line they were given to, and lines much fainter than the other lines."""
    kept = []
    for group in groups:
        darkness = pieces.darkness[group]
        usual = float(np.average(darkness, weights=pieces.area[group]))
        clear = [i for i in group if pieces.darkness[i] > _GHOST * usual and not _is_hairline(i, usual, pieces)]
        if clear:
            kept.append((clear, usual, float(pieces.area[clear].sum())))
    if not kept:
        return []
    order = sorted(kept, key=lambda item: item[1])
    total = np.cumsum([item[2] for item in order])
    usual = order[int(np.searchsorted(total, total[-1] / 2))][1]
    return [
        group for group, level, _ in kept
        if level > _GHOST * usual and not _is_stray(group, level, usual, pieces) and not _is_blots(group, pieces)
    ]


def _is_hairline(piece: int, usual: float, pieces: Pieces) -> bool:
    """Far thinner than the pen and fainter than its line: what is left of a printed rule."""
    x0, y0, x1, y1 = pieces.boxes[piece]
    long = max(x1 - x0, y1 - y0) > 3 * min(x1 - x0, y1 - y0)
    thin = pieces.thickness[piece] < _THIN * pieces.pen + 1
    return bool(long and thin and pieces.darkness[piece] < _FAINT * usual)


def _is_blots(group: list[int], pieces: Pieces) -> bool:
    """Filled patches instead of strokes: as thick as they are tall, and as thick as letters are tall."""
    if len(group) == 1 and _is_crossed_word(group[0], pieces):
        return False
    area, thickness = pieces.area[group], pieces.thickness[group]
    tall = pieces.boxes[group, 3] - pieces.boxes[group, 1]
    to_letter = float(np.average(thickness, weights=area)) / pieces.letter
    to_height = float(np.average(thickness / np.maximum(tall, 1), weights=area))
    most = 0.55 if len(group) > 3 else 0.48
    return to_letter > most and to_height > most


def _is_crossed_word(piece: int, pieces: Pieces) -> bool:
    """One long piece with paper in it: letters that a thick stroke, or several, tie together."""
    x0, y0, x1, y1 = pieces.boxes[piece]
    wide, tall = x1 - x0, y1 - y0
    filled = pieces.area[piece] / max(1.0, wide * tall)
    return bool(wide > _LONG_WORD * tall and 0.6 * pieces.letter < tall < 2 * pieces.letter and filled < _FILLED)


def _is_stray(group: list[int], level: float, usual: float, pieces: Pieces) -> bool:
    """A single mark that is no letter: a rule, a smear, a hole."""
    if len(group) > 1:
        return False
    if pieces.slanted[group[0]]:
        return True
    x0, y0, x1, y1 = pieces.boxes[group[0]]
    slim = x1 - x0 < 0.3 * (y1 - y0) and y1 - y0 > 1.4 * pieces.letter
    return bool(slim or y1 - y0 < 0.7 * pieces.letter or y1 - y0 > 4 * pieces.letter or level < 0.65 * usual)


def _common_slope(boxes: NDArray[np.float64], groups: list[list[int]], letter: float) -> float:
    """Slope shared by the lines of the page, weighted by their length; 0 when there is too little to tell."""
    slopes, weights = [], []
    for group in groups:
        part = boxes[group]
        tall = part[(part[:, 3] - part[:, 1]) > 0.5 * letter]
        bars = (part[:, 2] - part[:, 0] > 1.4 * letter) & (part[:, 3] - part[:, 1] < 0.4 * letter)
        if len(tall) < 6 or bars.any():
            continue  # fractions say little about the slope of their line
        x, y = (tall[:, 0] + tall[:, 2]) / 2, (tall[:, 1] + tall[:, 3]) / 2
        if np.ptp(x) < 8 * letter:
            continue
        run, rise = x[:, None] - x[None, :], y[:, None] - y[None, :]
        far = run > 2 * letter
        if far.any():
            slope = float(np.median(rise[far] / run[far]))
            level = y - slope * x
            # Nor do many powers.
            if float(np.median(np.abs(level - np.median(level)))) > 0.2 * letter:
                continue
            slopes.append(slope)
            weights.append(float(np.ptp(x)))
    if not slopes:
        return 0.0
    order = np.argsort(slopes)
    total = np.cumsum(np.array(weights)[order])
    return float(np.clip(np.array(slopes)[order][np.searchsorted(total, total[-1] / 2)], -0.35, 0.35))


def _grouped(
    boxes: NDArray[np.float64], area: NDArray[np.float64], letter: float, inner_bars: NDArray[np.float64]
) -> list[list[int]]:
    parent = list(range(len(boxes)))
    join_contained(boxes, letter, parent)
    axes = join_fractions(boxes, letter, parent)
    axes.update(join_touching_fractions(boxes, letter, parent, inner_bars))
    join_enclosed(boxes, parent, axes)
    blocks = _blocks(boxes, parent, axes)
    core = [i for i, block in enumerate(blocks) if _is_core(block, letter)]
    small = [i for i in range(len(blocks)) if i not in set(core)]
    clusters = _link(blocks, core, letter)
    sides = np.array([block.box for block in blocks]).reshape(-1, 4)
    _attach(blocks, sides, clusters, small, letter)
    clusters = rejoin_at_fractions(sides, _absorbed(blocks, sides, clusters, letter), letter)
    clusters = rejoin_within(sides, clusters, letter)
    return [
        sorted(member for block in cluster for member in blocks[block].members)
        for cluster in clusters
        if _is_writing(blocks, cluster, area, letter)
    ]


def _blocks(boxes: NDArray[np.float64], parent: list[int], axes: dict[int, float]) -> list[_Block]:
    members: dict[int, list[int]] = {}
    for i in range(len(boxes)):
        members.setdefault(find_root(parent, i), []).append(i)
    blocks = []
    for group in members.values():
        part = boxes[group]
        box = outline(part)
        inner = [i for i in group if i in axes]
        axis = (box[1] + box[3]) / 2
        if inner:
            widest = max(inner, key=lambda i: boxes[i, 2] - boxes[i, 0])
            axis = axes[widest]
        blocks.append(_Block(group, box, float(axis), bool(inner)))
    return blocks


def _is_core(block: _Block, letter: float) -> bool:
    return block.fraction or block.box[3] - block.box[1] > 0.55 * letter


def _link(blocks: list[_Block], core: list[int], letter: float) -> list[list[int]]:
    """Join letters that stand side by side, nearest first, never two that stand on top of one another."""
    box = np.array([blocks[i].box for i in core]).reshape(-1, 4)
    axis = np.array([blocks[i].axis for i in core])
    n = len(core)
    tall = box[:, 3] - box[:, 1] if n else np.zeros(0)
    candidates = []
    for a in range(n):
        dx = np.maximum(box[:, 0] - box[a, 2], box[a, 0] - box[:, 2])
        overlap = np.minimum(box[:, 3], box[a, 3]) - np.maximum(box[:, 1], box[a, 1])
        share = overlap / np.minimum(tall, tall[a])
        drop = np.abs(axis - axis[a])
        near = (dx < _GAP * letter) & (share > 0.3) & (drop < 0.45 * (tall + tall[a]))
        near[: a + 1] = False
        for b in np.flatnonzero(near):
            gap = max(0.0, float(dx[b]))
            # Letters far apart must agree better in height than close ones.
            if gap > 2 * letter and share[b] < 0.45:
                continue
            candidates.append((gap + 1.6 * float(drop[b]) * (1.0 if gap < letter else 1.4), a, int(b)))
    candidates.sort()
    owner = list(range(n))
    clusters: dict[int, list[int]] = {i: [i] for i in range(n)}
    for _cost, left, right in candidates:
        first, second = owner[left], owner[right]
        if first == second or _stacked(box, axis, clusters[first], clusters[second], letter):
            continue
        for i in clusters[second]:
            owner[i] = first
        clusters[first].extend(clusters.pop(second))
    return [[core[i] for i in cluster] for cluster in clusters.values()]


def _stacked(
    box: NDArray[np.float64], axis: NDArray[np.float64], one: list[int], two: list[int], letter: float
) -> bool:
    """Would some letter of one cluster stand above a letter of the other, or the axis of one pass the other by?"""
    p, q = box[one], box[two]
    wide = np.minimum(p[:, None, 2], q[None, :, 2]) - np.maximum(p[:, None, 0], q[None, :, 0])
    narrow = np.minimum((p[:, 2] - p[:, 0])[:, None], (q[:, 2] - q[:, 0])[None, :])
    drop = np.abs(axis[one][:, None] - axis[two][None, :])
    half = ((p[:, 3] - p[:, 1])[:, None] + (q[:, 3] - q[:, 1])[None, :]) / 2
    if bool(np.any((wide > 0.45 * narrow) & (drop > 0.62 * half) & (drop > 0.75 * letter))):
        return True
    # Compare where the two clusters face one another: axes of the nearest letters, smoothed over some neighbours.
    gap = np.maximum(p[:, None, 0] - q[None, :, 2], q[None, :, 0] - p[:, None, 2])
    i, j = divmod(int(np.argmin(gap)), gap.shape[1])
    centre = ((p[i, 0] + p[i, 2]) + (q[j, 0] + q[j, 2])) / 4
    level_one, level_two = _level(p, axis[one], centre, letter), _level(q, axis[two], centre, letter)
    allowed = max(1.0 * letter, 0.42 * min(float(np.max(p[:, 3] - p[:, 1])), float(np.max(q[:, 3] - q[:, 1]))))
    return abs(level_one - level_two) > allowed


def _level(box: NDArray[np.float64], axis: NDArray[np.float64], x: float, letter: float) -> float:
    distance = np.abs((box[:, 0] + box[:, 2]) / 2 - x)
    weight = np.exp(-distance / (4 * letter))
    return float((axis * weight).sum() / max(weight.sum(), 1e-9))


def _attach(
    blocks: list[_Block], boxes: NDArray[np.float64], clusters: list[list[int]], small: list[int], letter: float
) -> None:
    """Give each small mark (dot, bar, power) to the line whose ink is nearest, nearest first."""
    if not small:
        return
    owner: dict[int, int] = {}
    assigned = np.full(len(blocks), -1)
    for number, cluster in enumerate(clusters):
        assigned[cluster] = number
    best_cost = np.full(len(blocks), math.inf)
    best_line = np.full(len(blocks), -1)
    waiting = np.zeros(len(blocks), bool)
    waiting[small] = True

    def spread(source: int) -> None:
        cost = _distance(boxes, source, letter)
        better = waiting & (cost < best_cost)
        best_cost[better] = cost[better]
        best_line[better] = assigned[source]

    for placed in np.flatnonzero(assigned >= 0):
        spread(int(placed))
    while waiting.any():
        open_costs = np.where(waiting, best_cost, math.inf)
        nearest = int(np.argmin(open_costs))
        if open_costs[nearest] > _NEAR * letter:
            break
        waiting[nearest] = False
        line = int(best_line[nearest])
        assigned[nearest] = line
        clusters[line].append(nearest)
        owner[nearest] = line
        spread(nearest)
    if waiting.any():
        _leftovers(blocks, clusters, [int(i) for i in np.flatnonzero(waiting)], letter)


def _absorbed(
    blocks: list[_Block], boxes: NDArray[np.float64], clusters: list[list[int]], letter: float
) -> list[list[int]]:
    """Give a mark that stands alone, close above or beside a line, to that line: a power of a power, a numerator."""
    owner = np.full(len(blocks), -1)
    for number, cluster in enumerate(clusters):
        owner[cluster] = number
    kept = {number: list(cluster) for number, cluster in enumerate(clusters)}
    for number, cluster in enumerate(clusters):
        if len(cluster) != 1 or blocks[cluster[0]].fraction:
            continue
        alone = cluster[0]
        wide, tall = boxes[alone, 2:] - boxes[alone, :2]
        if (wide > _WORD * letter and tall > 0.7 * letter) or tall > _TALL * letter:
            continue
        cost = _distance(boxes, alone, letter)
        cost[(owner == number) | (owner < 0)] = math.inf
        nearest = int(np.argmin(cost))
        if cost[nearest] < 1.5 * letter and len(kept.get(int(owner[nearest]), ())) > 1:
            kept[int(owner[nearest])].append(alone)
            owner[alone] = owner[nearest]
            del kept[number]
    return list(kept.values())


def _distance(boxes: NDArray[np.float64], source: int, letter: float) -> NDArray[np.float64]:
    box = boxes[source]
    dx = np.maximum(np.maximum(boxes[:, 0] - box[2], box[0] - boxes[:, 2]), 0)
    dy = np.maximum(np.maximum(boxes[:, 1] - box[3], box[1] - boxes[:, 3]), 0)
    drop = np.abs((boxes[:, 1] + boxes[:, 3]) / 2 - (box[1] + box[3]) / 2)
    # Beside a letter is better than above or below it: marks of algebra stand in the row.
    cost: NDArray[np.float64] = dx + 2.2 * dy + 0.35 * drop
    return cost


def _leftovers(blocks: list[_Block], clusters: list[list[int]], rest: list[int], letter: float) -> None:
    """Small marks far from every line make lines of their own where they stand side by side."""
    rest = sorted(rest, key=lambda i: float(blocks[i].box[0]))
    while rest:
        row = [rest.pop(0)]
        for i in list(rest):
            last = blocks[row[-1]].box
            if blocks[i].box[0] - last[2] < 3 * letter and abs(blocks[i].axis - blocks[row[-1]].axis) < 0.6 * letter:
                row.append(i)
                rest.remove(i)
        clusters.append(row)


def _is_writing(blocks: list[_Block], cluster: list[int], area: NDArray[np.float64], letter: float) -> bool:
    """A line needs at least one letter-sized piece, or several smaller ones, and some ink."""
    boxes = np.array([blocks[i].box for i in cluster])
    tall = boxes[:, 3] - boxes[:, 1]
    ink = float(area[[m for i in cluster for m in blocks[i].members]].sum())
    width = float(boxes[:, 2].max() - boxes[:, 0].min())
    if ink < 0.25 * letter * max(1.0, 0.06 * letter):
        return False
    if len(cluster) == 1:
        return bool(tall[0] > 0.55 * letter) and width > 0.15 * letter
    return bool((tall > 0.5 * letter).any()) or (len(cluster) >= 4 and bool((tall > 0.3 * letter).any()))
