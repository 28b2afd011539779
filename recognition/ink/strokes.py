"""What a pen left behind: strokes with their places, times and pressures."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from recognition.reader.canonical import typical_height

__all__ = ["Ink", "Stroke", "StrokeGroup", "typical_size"]


@dataclass(frozen=True, slots=True, eq=False)
class Stroke:
    """One trace of the pen, from down to up.

    points: shape (n, 2), n >= 1: x to the right, y downwards, in the ink's unit.
    time: shape (n,), in ms; pressure: shape (n,), of any range; None where the pen did not tell.
    """

    points: NDArray[np.float64]
    time: NDArray[np.float64] | None = None
    pressure: NDArray[np.float64] | None = None

    def __post_init__(self) -> None:
        if self.points.ndim != 2 or self.points.shape[1] != 2 or not len(self.points):
            raise ValueError("A stroke has at least one point (x, y).")
        for values in (self.points, self.time, self.pressure):
            if values is not None and (len(values) != len(self.points) or not np.isfinite(values).all()):
                raise ValueError("Each point of a stroke has finite values in each channel.")


@dataclass(frozen=True, slots=True)
class StrokeGroup:
    """Strokes that belong together, with what was noted about them, such as the line they make."""

    strokes: tuple[int, ...]
    note: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class Ink:
    """All strokes of one drawing in the order they were written.

    unit: of x and y as the file names it, "dev" for the pen's own. notes: (type, text), such as ("truth", "x=2").
    """

    strokes: tuple[Stroke, ...]
    unit: str = "dev"
    groups: tuple[StrokeGroup, ...] = ()
    notes: tuple[tuple[str, str], ...] = ()

    def __post_init__(self) -> None:
        for group in self.groups:
            if not all(0 <= number < len(self.strokes) for number in group.strokes):
                raise ValueError("A group names strokes of its own ink.")


def typical_size(strokes: tuple[Stroke, ...]) -> float:
    """Height of a typical stroke, in the ink's unit."""
    sides = np.array([np.ptp(stroke.points, axis=0) for stroke in strokes])
    return typical_height(sides[:, 1], sides[:, 0])
