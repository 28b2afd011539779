"""Single symbols bent as other hands would write them: a few real hands become many.

A symbol in its own square, -1 to 1 both ways, is sheared and bent by terms up to the second degree; strokes move a
little against each other, and their ends are cut short or run on.
"""

from __future__ import annotations

from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["TERMS", "bending", "frayed", "rebent"]

TERMS: Final = 5
"""x, y, x squared, x times y, y squared"""

_LONG_ENOUGH: Final = 7  # points of a stroke whose ends may change

Points = NDArray[np.float32]


def bending(count: int, spread: float, rng: np.random.Generator) -> NDArray[np.float32]:
    """How `count` symbols are bent: coefficients float32 (count, 2, TERMS), `spread` in halves of a symbol's size."""
    coefficients = rng.normal(0, spread, (count, 2, TERMS)).astype(np.float32)
    coefficients[:, :, :2] *= 0.6
    return coefficients


def rebent(local: Points, coefficients: NDArray[np.float32]) -> Points:
    """Bend points.

    Args:
        local: float32 (N, 2), -1 to 1 in each symbol's own square.
        coefficients: float32 (N, 2, TERMS) for each point, or (2, TERMS) for all.
    """
    x, y = local[:, 0], local[:, 1]
    terms = np.stack([x, y, x * x, x * y, y * y], 1)
    each = coefficients if coefficients.ndim == 3 else np.broadcast_to(coefficients, (len(local), 2, TERMS))
    return np.asarray(local + np.einsum("nt,nat->na", terms, each), np.float32)


def frayed(stroke: Points, rng: np.random.Generator) -> Points:
    """A pen stroke whose ends are cut short, or run on a little in the direction they had."""
    if len(stroke) < _LONG_ENOUGH:
        return stroke
    lot = rng.random(2)
    begin = int(len(stroke) * 0.14 * rng.random()) if lot[0] < 0.1 else 0
    end = len(stroke) - (int(len(stroke) * 0.14 * rng.random()) if lot[1] < 0.1 else 0)
    kept = stroke[begin:end]
    size = float(np.ptp(kept, axis=0).max())
    for at_end in (False, True):
        if rng.random() < 0.06:
            tip, before = (kept[-1], kept[-3]) if at_end else (kept[0], kept[2])
            way = tip - before
            length = float(np.hypot(*way))
            if length > 0:
                turn = rng.normal(0, 0.5)
                cos, sin = np.cos(turn), np.sin(turn)
                way = np.array((way[0] * cos - way[1] * sin, way[0] * sin + way[1] * cos)) / length
                new = (tip + way * size * 0.16 * rng.random())[None].astype(np.float32)
                kept = np.concatenate([kept, new] if at_end else [new, kept])
    return kept
