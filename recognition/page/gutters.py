"""Part what runs on across the empty strip between two columns."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from recognition.page.pieces import outline

__all__ = ["split_at_gutters"]

_SLACK = 0.3
"""Letter heights by which lines beside a gap may reach into it."""
_LEAST_STRIP = 0.9
"""Letter heights of the strip within a gap that stays empty in the lines around."""

_WORD_GAP, _WORDS, _WIDER = 0.5, 3, 1.7
"""With so many other gaps of so many letter heights a line is prose; a column is parted by so much wider a gap."""

_NUMBER = 2.5
"""Letter heights of the widest question number."""


@dataclass(frozen=True, slots=True)
class _Evidence:
    """What must be seen around a gap before a line is parted there; lengths in letter heights.

    gap: between two signs of the line, and by how many times it is wider than the next widest gap of the line.
    beside, beyond: lines on the left and on the right of the strip; wide: their least width on the left.
    aligned: within so much of the gap's end the lines on the right begin; numbers hang out to the left of the rest.
    """

    gap: float
    clearer: float
    beside: int
    beyond: int
    wide: float
    aligned: float


_LINES = _Evidence(gap=1.2, clearer=0.0, beside=2, beyond=2, wide=2.0, aligned=4.0)
"""Whole lines lie on both sides."""
_PARTS = _Evidence(gap=1.6, clearer=1.5, beside=3, beyond=3, wide=3.0, aligned=4.0)
"""Most lines run across: what stands between their wide gaps counts as a line."""
_ASIDE = _Evidence(gap=2.2, clearer=2.0, beside=2, beyond=1, wide=3.0, aligned=1.2)
"""A few lines of side working begin at the same place, far from the working."""


def split_at_gutters(groups: Sequence[list[int]], boxes: NDArray[np.float64], letter: float) -> list[list[int]]:
    """Split lines that go on into the next column.

    A line is parted at a wide gap when others lie to the left of it, others begin at its right end, and nothing stands
    in a strip within the gap there. Where whole lines do not tell, parts of lines at wide gaps do: most lines of two
    columns may have been joined. A question number is not parted from its line: nothing but numbers lies to the left
    of that gap.

    Args:
        groups: indices of the pieces of each line.
        boxes: x0, y0, x1, y1 of each piece.
        letter: usual height of a letter.
    """
    if len(groups) < 3:
        return list(groups)
    outlines = [outline(boxes[group]) for group in groups]
    parts = [_parts(boxes, group, letter) for group in groups]
    out: list[list[int]] = []
    for number, group in enumerate(groups):
        rest = [piece for other, pieces in enumerate(groups) if other != number for piece in pieces]
        whole = np.array([outline for other, outline in enumerate(outlines) if other != number])
        others = np.array([part for other, found in enumerate(parts) if other != number for part in found])
        cut = _gutter(boxes[group], whole, others, boxes[rest], letter)
        if cut is None:
            out.append(group)
        else:
            middles = (boxes[group, 0] + boxes[group, 2]) / 2
            out.append([piece for piece, x in zip(group, middles, strict=True) if x < cut])
            out.append([piece for piece, x in zip(group, middles, strict=True) if x >= cut])
    return out


def _parts(boxes: NDArray[np.float64], group: list[int], letter: float) -> list[NDArray[np.float64]]:
    """Outlines of what stands between the wide gaps of a line."""
    order = sorted(group, key=lambda piece: float(boxes[piece, 0]))
    runs = [[order[0]]]
    reach = float(boxes[order[0], 2])
    for piece in order[1:]:
        if boxes[piece, 0] - reach > _PARTS.gap * letter:
            runs.append([])
        runs[-1].append(piece)
        reach = max(reach, float(boxes[piece, 2]))
    return [outline(boxes[run]) for run in runs]


def _gutter(
    line: NDArray[np.float64], whole: NDArray[np.float64], parts: NDArray[np.float64], pieces: NDArray[np.float64],
    letter: float,
) -> float | None:
    """Where a line crosses a gutter; None where it does not.

    Args:
        line: boxes of its pieces; whole: outlines of the other lines; parts: of what stands between their wide gaps;
            pieces: boxes of their pieces.
    """
    order = np.argsort(line[:, 0])
    reach = np.maximum.accumulate(line[order, 2])[:-1]
    starts = line[order[1:], 0]
    gaps = starts - reach
    second = float(np.sort(gaps)[-2]) if len(gaps) > 1 else 0.0
    for k in np.argsort(-gaps):
        if gaps[k] < _LINES.gap * letter:
            return None
        rest = np.delete(gaps, k)
        words = rest[rest > _WORD_GAP * letter]
        if len(words) >= _WORDS and gaps[k] < _WIDER * float(np.median(words)):
            continue
        for evidence, others in ((_LINES, whole), (_PARTS, parts), (_ASIDE, parts)):
            if gaps[k] > evidence.gap * letter and gaps[k] > evidence.clearer * second:
                cut = _strip(line, (float(reach[k]), float(starts[k])), others, evidence, pieces, letter)
                before = _gap_before_number(gaps, reach, starts, int(k), letter)
                if cut is not None and before is not None:
                    cut = _strip(line, before, others, evidence, pieces, letter) or cut
                if cut is not None:
                    return cut
    return None


def _gap_before_number(
    gaps: NDArray[np.float64], reach: NDArray[np.float64], starts: NDArray[np.float64], k: int, letter: float
) -> tuple[float, float] | None:
    """The wide gap before a question number that gap k parts from its line; None where no number stands there."""
    for j in range(k - 1, -1, -1):
        if reach[k] - starts[j] > _NUMBER * letter:
            return None
        if gaps[j] > _LINES.gap * letter:
            return float(reach[j]), float(starts[j])
    return None


def _strip(
    line: NDArray[np.float64], gap: tuple[float, float], others: NDArray[np.float64], evidence: _Evidence,
    pieces: NDArray[np.float64], letter: float,
) -> float | None:
    """Middle of an empty strip within a gap that others lie on both sides of; None where there is none."""
    left, right = gap
    slack = _SLACK * letter
    beside = others[(others[:, 2] < right - slack) & (others[:, 2] - others[:, 0] > evidence.wide * letter)]
    beyond = others[(others[:, 0] > left + slack) & (np.abs(others[:, 0] - right) < evidence.aligned * letter)]
    if len(beside) < evidence.beside or len(beyond) < evidence.beyond:
        return None
    middle = float(line[:, 1].min() + line[:, 3].max()) / 2
    # What is parted stands in the columns of the others: a question number alone stands in none.
    low, high = (line[:, 0] + line[:, 2]) / 2 < left + slack, (line[:, 0] + line[:, 2]) / 2 > right - slack
    if not low.any() or not high.any():
        return None
    beside = beside[beside[:, 2] > line[low, 0].min()]
    beyond = beyond[beyond[:, 0] < line[high, 2].max()]
    if len(beside) < evidence.beside or len(beyond) < evidence.beyond:
        return None
    near = np.concatenate([_nearest(beside, middle, evidence.beside), _nearest(beyond, middle, evidence.beyond)])
    top = min(float(near[:, 1].min()), float(line[:, 1].min()))
    bottom = max(float(near[:, 3].max()), float(line[:, 3].max()))
    between = pieces[(pieces[:, 2] > left) & (pieces[:, 0] < right) & (pieces[:, 3] > top) & (pieces[:, 1] < bottom)]
    start, stop = _widest_free(gap, between)
    if stop - start < _LEAST_STRIP * letter:
        return None
    # Both sides must lie off the strip itself, not only off the gap.
    if (beside[:, 2] < stop).sum() < evidence.beside or (beyond[:, 0] > start).sum() < evidence.beyond:
        return None
    return (start + stop) / 2


def _widest_free(gap: tuple[float, float], pieces: NDArray[np.float64]) -> tuple[float, float]:
    """The widest part of a gap in which no piece stands."""
    best, reach = (gap[0], gap[0]), gap[0]
    for x0, x1 in [*sorted((float(p[0]), float(p[2])) for p in pieces), (gap[1], gap[1])]:
        if min(x0, gap[1]) - reach > best[1] - best[0]:
            best = (reach, min(x0, gap[1]))
        reach = max(reach, x1)
    return best


def _nearest(outlines: NDArray[np.float64], y: float, count: int) -> NDArray[np.float64]:
    """The few lines that are nearest to a height on the page."""
    distance = np.abs((outlines[:, 1] + outlines[:, 3]) / 2 - y)
    return outlines[np.argsort(distance)[:count]]
