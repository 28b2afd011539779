"""A hand of our own design: digits and a few letters as single pen strokes, for pen drawings free of any data set."""

from __future__ import annotations

import itertools
from collections.abc import Mapping
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.training.bank import Shape, SymbolBank

__all__ = ["own_bank"]

_Stroke = tuple[tuple[float, float], ...]

# Corner points of each stroke in the unit square, y downwards; a smooth curve is laid through them.
# A point given twice is a sharp corner.
_DESIGNS: Final[Mapping[str, tuple[_Stroke, ...]]] = {
    "0": (((0.55, 0.0), (0.1, 0.25), (0.05, 0.7), (0.45, 1.0), (0.85, 0.75), (0.9, 0.3), (0.55, 0.0)),),
    "1": (((0.2, 0.22), (0.5, 0.0), (0.5, 0.0), (0.48, 1.0)),),
    "2": (((0.08, 0.25), (0.4, 0.0), (0.8, 0.2), (0.6, 0.6), (0.05, 1.0), (0.05, 1.0), (0.9, 0.97)),),
    "3": (((0.1, 0.12), (0.5, 0.0), (0.8, 0.22), (0.4, 0.47), (0.4, 0.47), (0.85, 0.72), (0.5, 1.0), (0.05, 0.88)),),
    "4": (((0.6, 0.0), (0.6, 0.0), (0.05, 0.65), (0.05, 0.65), (0.9, 0.63)), ((0.68, 0.3), (0.66, 1.0))),
    "5": (((0.22, 0.02), (0.16, 0.45), (0.16, 0.45), (0.6, 0.4), (0.85, 0.7), (0.5, 1.0), (0.05, 0.9)),
          ((0.22, 0.02), (0.85, 0.0))),
    "6": (((0.7, 0.0), (0.25, 0.35), (0.08, 0.75), (0.45, 1.0), (0.82, 0.75), (0.5, 0.52), (0.12, 0.72)),),
    "7": (((0.05, 0.04), (0.85, 0.0), (0.85, 0.0), (0.5, 0.5), (0.35, 1.0)),),
    "8": (((0.75, 0.15), (0.4, 0.0), (0.15, 0.22), (0.5, 0.48), (0.85, 0.75), (0.5, 1.0), (0.12, 0.78), (0.45, 0.5),
           (0.78, 0.18)),),
    "9": (((0.8, 0.2), (0.45, 0.0), (0.12, 0.25), (0.4, 0.5), (0.78, 0.25), (0.8, 0.2), (0.75, 0.6), (0.6, 1.0)),),
    "x": (((0.05, 0.1), (0.3, 0.12), (0.6, 0.85), (0.95, 0.9)), ((0.9, 0.05), (0.5, 0.5), (0.05, 0.95))),
    "y": (((0.05, 0.0), (0.15, 0.35), (0.5, 0.42), (0.75, 0.02)), ((0.78, 0.0), (0.7, 0.6), (0.4, 1.0), (0.08, 0.88))),
    "n": (((0.1, 0.05), (0.12, 1.0), (0.12, 1.0), (0.25, 0.3), (0.6, 0.05), (0.8, 0.4), (0.85, 1.0)),),
    "t": (((0.5, 0.0), (0.45, 0.75), (0.65, 1.0), (0.9, 0.88)), ((0.1, 0.34), (0.9, 0.3))),
    "w": (((0.0, 0.05), (0.2, 1.0), (0.2, 1.0), (0.48, 0.25), (0.48, 0.25), (0.75, 1.0), (0.75, 1.0), (1.0, 0.0)),),
    "(": (((0.8, 0.0), (0.25, 0.3), (0.22, 0.7), (0.75, 1.0)),),
    ")": (((0.2, 0.0), (0.75, 0.3), (0.78, 0.7), (0.25, 1.0)),),
}  # fmt: skip

_WIDTHS: Final[Mapping[str, float]] = {
    "1": 0.34, "(": 0.24, ")": 0.24, "w": 1.15, "x": 0.95, "n": 0.9, "y": 0.6, "t": 0.55,
}  # fmt: skip


def own_bank() -> SymbolBank:
    """A bank that holds one shape for each symbol of the hand; jitter makes the copies differ."""
    return SymbolBank(ink={token: (_shape(strokes, _WIDTHS.get(token, 0.6)),) for token, strokes in _DESIGNS.items()})


def _shape(strokes: tuple[_Stroke, ...], width: float) -> Shape:
    parts = [_smooth(np.array(stroke, np.float64) * (width, 1.0)) for stroke in strokes]
    offsets = np.cumsum([0, *(len(part) for part in parts)]).astype(np.int64)
    return Shape(np.concatenate(parts).astype(np.float32), offsets)


def _smooth(corners: NDArray[np.float64]) -> NDArray[np.float64]:
    """Catmull-Rom curve through the corners, broken where a corner is given twice."""
    runs: list[list[NDArray[np.float64]]] = [[corners[0]]]
    for before, point in itertools.pairwise(corners):
        if np.array_equal(before, point):
            runs.append([point])
        else:
            runs[-1].append(point)
    curves = [_curve(np.array(run)) for run in runs if len(run) > 1]
    return np.concatenate([curves[0], *(curve[1:] for curve in curves[1:])])


def _curve(points: NDArray[np.float64]) -> NDArray[np.float64]:
    padded = np.concatenate([[2 * points[0] - points[1]], points, [2 * points[-1] - points[-2]]])
    t = np.linspace(0, 1, 9)[:, None]
    pieces = [points[:1]]
    for a, b, c, d in zip(padded, padded[1:], padded[2:], padded[3:], strict=False):
        piece = 0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t**2 + (3 * b - a - 3 * c + d) * t**3)
        pieces.append(piece[1:])
    return np.concatenate(pieces)
