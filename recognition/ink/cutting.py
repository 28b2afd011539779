"""Take lines out of a pen drawing by outlines that a user draws: the same lines as grouping gives."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.ink.lines import InkLine, InkLines, ink_line
from recognition.ink.picture import InkPicture
from recognition.ink.strokes import Ink
from recognition.outline import Cut, Outline, contains, corners, side_of_cut, sorted_cut

__all__ = ["InkCutter"]


@dataclass(frozen=True, slots=True, eq=False)
class InkCutter:
    """One drawing, ready to be cut; places are in pixels of its picture. A stroke is never parted."""

    picture: InkPicture
    strokes: tuple[NDArray[np.float64], ...]

    @classmethod
    def of(cls, ink: Ink, found: InkLines) -> InkCutter:
        """The strokes of a drawing, placed on the picture that its lines are given in."""
        return cls(found.picture, tuple(found.picture.placed(stroke) for stroke in ink.strokes))

    def within(self, outline: Outline) -> InkLine:
        """The line of those strokes of which at least half lies within an outline.

        Raises:
            InputError: there is none, or the outline has no area.
        """
        return self._line(self._inside(corners(outline)) >= 0.5)

    def together(self, outlines: Sequence[Outline], others: Sequence[Outline] = ()) -> InkLine:
        """One line of all that is within several outlines.

        Args:
            outlines: of the parts.
            others: outlines of the other lines; strokes that lie more in one of them are left to it.
        """
        return self._line(self._chosen(outlines, others))

    def apart(self, outline: Outline, cut: Cut, others: Sequence[Outline] = ()) -> tuple[InkLine, InkLine]:
        """The two parts of a line on both sides of a straight cut, the upper or left one first.

        Raises:
            InputError: one side has no stroke.
        """
        ends = sorted_cut(np.asarray(cut, np.float64))
        chosen = self._chosen((outline,), others)
        first = np.array([side_of_cut(ends, stroke).mean() > 0.5 for stroke in self.strokes])
        if not (chosen & first).any() or not (chosen & ~first).any():
            raise InputError("This cut leaves one side without writing. Draw it between the two parts.")
        return self._line(chosen & first), self._line(chosen & ~first)

    def place(self, outline: Outline, others: Sequence[Outline]) -> int:
        """Where a new line comes among the others as a page is read."""
        middle = float(np.mean(corners(outline)[:, 1]))
        return sum(float(np.mean(corners(other)[:, 1])) <= middle for other in others)

    def _inside(self, polygon: NDArray[np.float64]) -> NDArray[np.float64]:
        """Share of the points of each stroke within a polygon."""
        return np.array([contains(polygon, stroke).mean() for stroke in self.strokes])

    def _chosen(self, outlines: Sequence[Outline], others: Sequence[Outline]) -> NDArray[np.bool_]:
        own = np.max([self._inside(corners(outline)) for outline in outlines], axis=0)
        chosen = np.asarray(own >= 0.5)
        for other in others:
            polygon = corners(other)
            theirs = self._inside(polygon)
            nearer = self._height(polygon) < np.min([self._height(corners(each)) for each in outlines], axis=0)
            chosen &= ~((theirs > own) | ((theirs == own) & (theirs > 0) & nearer))
        return chosen

    def _height(self, polygon: NDArray[np.float64]) -> NDArray[np.float64]:
        """How far the middle of each stroke is above or below the middle of a polygon, in its heights."""
        low, high = polygon[:, 1].min(), polygon[:, 1].max()
        middles = np.array([stroke[:, 1].min() + stroke[:, 1].max() for stroke in self.strokes]) / 2
        return np.asarray(np.abs(middles - (low + high) / 2) / (high - low), np.float64)

    def _line(self, chosen: NDArray[np.bool_]) -> InkLine:
        numbers = tuple(int(number) for number in np.flatnonzero(chosen))
        if not numbers:
            raise InputError("There is no pen stroke within this outline. Draw it around the writing.")
        return ink_line(tuple(self.strokes[number] for number in numbers), numbers, self.picture.size)
