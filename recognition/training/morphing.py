"""A symbol between two hands': strokes that answer each other are drawn part of the way from one to the other."""

from __future__ import annotations

import functools
import itertools
from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.training.bank import Shape, cut

__all__ = ["between"]

_SAMPLES: Final = 16
_FURTHEST: Final = 0.3  # mean distance of answering points, in sides of the symbol's box, above which shapes differ
_MOST_STROKES: Final = 4
_THINNEST: Final = 0.25  # of the longer side: what a flat symbol's short side counts as

Points = NDArray[np.float32]


def between(first: Shape, second: Shape, share: float) -> Shape | None:
    """The shape that stands `share` (0 to 1) of the way from the first to the second, written as the first is.

    None where the two are not made alike: other numbers of strokes, or strokes that run elsewhere.
    """
    ours, theirs = cut(first.points, first.offsets), cut(second.points, second.offsets)
    if first.filled or second.filled or len(ours) != len(theirs) or len(ours) > _MOST_STROKES:
        return None
    low, side = _frame(first.points)
    other_low, other_side = _frame(second.points)
    sampled = np.stack([_evenly((stroke - low) / side, _SAMPLES) for stroke in ours])
    wanted = np.stack([_evenly((stroke - other_low) / other_side, _SAMPLES) for stroke in theirs])
    both_ways = np.stack([wanted, wanted[:, ::-1]])
    far = np.abs(sampled[None, :, None] - both_ways[:, None]).sum(-1).mean(-1)  # way, ours, theirs
    nearest = far.min(0)
    order = min(_orders(len(ours)), key=lambda places: sum(nearest[n, place] for n, place in enumerate(places)))
    if sum(nearest[number, place] for number, place in enumerate(order)) / len(ours) > _FURTHEST:
        return None
    grown = side * (other_side / side * np.hypot(*side) / np.hypot(*other_side)) ** np.float32(share)
    strokes = []
    for number, place in enumerate(order):
        target = (theirs[place] - other_low) / other_side
        if far[1, number, place] < far[0, number, place]:
            target = target[::-1]
        stroke = (ours[number] - low) / side
        moved = stroke + np.float32(share) * (_along(target, stroke) - stroke)
        strokes.append(moved * grown + low)
    return Shape(np.concatenate(strokes).astype(np.float32), first.offsets)


@functools.cache
def _orders(count: int) -> Sequence[tuple[int, ...]]:
    return list(itertools.permutations(range(count)))


def _frame(points: Points) -> tuple[Points, Points]:
    """The upper left corner and the sides of the box in which shapes are compared."""
    low, high = points.min(0), points.max(0)
    side = high - low
    wide = np.maximum(side, max(_THINNEST * float(side.max()), 1e-3)).astype(np.float32)
    return low - (wide - side) / 2, wide


def _lengths(stroke: Points) -> NDArray[np.float32]:
    steps = np.hypot(*np.diff(stroke, axis=0).T) if len(stroke) > 1 else np.zeros(0, np.float32)
    run = np.concatenate([[0.0], np.cumsum(steps)])
    return np.asarray(run / max(float(run[-1]), 1e-6), np.float32)


def _evenly(stroke: Points, count: int) -> Points:
    return _at(stroke, np.linspace(0, 1, count))


def _along(stroke: Points, like: Points) -> Points:
    """The stroke at the shares of its length at which the points of `like` stand on theirs."""
    return _at(stroke, _lengths(like))


def _at(stroke: Points, shares: NDArray[np.floating]) -> Points:
    run = _lengths(stroke)
    return np.stack([np.interp(shares, run, stroke[:, axis]) for axis in (0, 1)], 1).astype(np.float32)
