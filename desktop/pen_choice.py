"""Which strokes of a pen page are selected: by lasso, by tap, or one after the other by key."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from desktop.pen_drawing import draw_stroke
from desktop.pen_page import PIXELS_A_MM
from recognition.ink import Stroke

__all__ = ["CHOSEN", "StrokeChoice"]

CHOSEN = QColor("#1F4E9E")


@dataclass(frozen=True, slots=True)
class StrokeChoice:
    """numbers: the selected strokes in the order they were written. start, end: where a run by key began and stands."""

    numbers: tuple[int, ...] = ()
    start: int = -1
    end: int = -1

    @classmethod
    def of(cls, numbers: Sequence[int]) -> StrokeChoice:
        return cls(tuple(numbers), numbers[0], numbers[-1]) if numbers else cls()

    def stepped(self, by: int, count: int) -> StrokeChoice:
        """The next (1) or the previous (-1) of so many strokes alone, round the page."""
        if not count:
            return StrokeChoice()
        first = 0 if by > 0 else count - 1
        return StrokeChoice.of([(self.end + by) % count if self.numbers else first])

    def extended(self, by: int, count: int) -> StrokeChoice:
        """The run from where it began to one stroke further (1) or less far (-1)."""
        if not self.numbers:
            return self.stepped(by, count)
        end = min(max(self.end + by, 0), count - 1)
        low, high = min(self.start, end), max(self.start, end)
        return StrokeChoice(tuple(range(low, high + 1)), self.start, end)

    def rect(self, strokes: Sequence[Stroke]) -> QRectF:
        """Where the selected strokes are, with a rim, in pixels of the page."""
        points = np.concatenate([strokes[n].points for n in self.numbers])
        (left, top), (right, bottom) = points.min(axis=0), points.max(axis=0)
        pad = 2 * PIXELS_A_MM
        return QRectF(left, top, right - left, bottom - top).adjusted(-pad, -pad, pad, pad)

    def paint(self, painter: QPainter, strokes: Sequence[Stroke], shift: QPointF, *, pixel: float) -> None:
        """Draw the selected strokes and a frame round them; the painter's unit is a pixel of the page.

        Args:
            shift: by how much they are being dragged. pixel: size of a screen pixel on the page.
        """
        painter.save()
        painter.translate(shift)
        painter.setPen(QPen(CHOSEN, 1.6 * pixel, Qt.PenStyle.DashLine))
        painter.drawRect(self.rect(strokes))
        for number in self.numbers:
            draw_stroke(painter, strokes[number], CHOSEN)
        painter.restore()
