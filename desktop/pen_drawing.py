"""How paper and ink are drawn: ruled or squared, strokes as wide as the pen was pressed."""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum

import numpy as np
from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen

from desktop.pen_page import PIXELS_A_MM
from recognition.ink import Stroke

__all__ = ["INK", "THICKEST", "Background", "draw_paper", "draw_piece", "draw_stroke"]

INK = QColor("#18203F")
_PAPER = QColor("#FFFFFF")
_RULE = QColor("#C9D8EA")
_SQUARE_MM, _RULE_MM = 5.0, 8.0
_THINNEST, THICKEST = 1.6, 4.6
"""Pixels of the page; the width of the pen from no pressure to full pressure."""


class Background(StrEnum):
    """What is printed on the paper."""

    SQUARED = "squared"
    RULED = "ruled"
    PLAIN = "plain"


def draw_paper(painter: QPainter, page: tuple[int, int], background: Background) -> None:
    """Draw an empty page, in pixels of the page."""
    width, height = page
    painter.fillRect(QRectF(0, 0, width, height), _PAPER)
    if background is Background.PLAIN:
        return
    painter.setPen(QPen(_RULE, 1.0))
    step = (_SQUARE_MM if background is Background.SQUARED else _RULE_MM) * PIXELS_A_MM
    for y in np.arange(step, height, step):
        painter.drawLine(QPointF(0, y), QPointF(width, y))
    if background is Background.SQUARED:
        for x in np.arange(step, width, step):
            painter.drawLine(QPointF(x, 0), QPointF(x, height))


def _width(pressure: float) -> float:
    return _THINNEST + (THICKEST - _THINNEST) * min(max(pressure, 0.0), 1.0)


def draw_stroke(painter: QPainter, stroke: Stroke, colour: QColor = INK) -> None:
    """Draw a whole stroke."""
    places = [QPointF(x, y) for x, y in stroke.points]
    pressures = [0.6] * len(places) if stroke.pressure is None else _shares(stroke)
    if len(places) == 1:
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(colour)
        radius = _width(pressures[0]) * 0.7
        painter.drawEllipse(places[0], radius, radius)
        return
    for end in range(1, len(places)):
        draw_piece(painter, places[max(0, end - 2) : end + 1], pressures[end], colour)


def _shares(stroke: Stroke) -> list[float]:
    """Pressures from 0 to 1, whatever the range that the pen told them in."""
    assert stroke.pressure is not None
    most = max(1.0, float(stroke.pressure.max()))
    return [float(value) / most for value in stroke.pressure]


def draw_piece(painter: QPainter, places: Sequence[QPointF], pressure: float, colour: QColor = INK) -> None:
    """The piece up to the newest place, curved through the middles between places."""
    painter.setPen(QPen(colour, _width(pressure), Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
    if len(places) < 3:
        painter.drawLine(places[0], places[-1])
        return
    first, middle, last = places
    path = QPainterPath((first + middle) / 2)
    path.quadTo(middle, (middle + last) / 2)
    path.lineTo(last)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.drawPath(path)
