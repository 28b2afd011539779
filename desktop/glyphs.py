"""The marks themselves: one outline for each verdict, drawn in a square."""

from __future__ import annotations

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QFont, QPainter, QPainterPath, QPen, QPolygonF

from desktop.verdict_style import Shape

__all__ = ["WHITE", "paint_glyph", "paint_halo_frame"]

WHITE = QColor("#ffffff")


def paint_glyph(
    painter: QPainter, square: QRectF, shape: Shape, colour: QColor, *, ground: QColor, halo: bool = False
) -> None:
    """Draw a mark.

    Args:
        painter: where to draw.
        square: the square that the mark fills.
        shape: which mark.
        colour: of its lines and areas.
        ground: of the window or paper behind it; signs inside filled areas take it, and so does the halo.
        halo: whether a rim of the ground colour keeps the mark apart from what lies under it.
    """
    side = square.width()
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.translate(square.topLeft())
    painter.scale(side, side)
    outline, filled = _outline(shape)
    if halo:
        pen = _pen(ground, 0.34)
        painter.setPen(pen)
        painter.setBrush(ground if filled or shape is not Shape.TICK else Qt.BrushStyle.NoBrush)
        painter.drawPath(outline)
    pen = _pen(colour, 0.11)
    if shape is Shape.DASHED:
        pen.setDashPattern([1.6, 1.7])
        pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    painter.setPen(pen)
    painter.setBrush(colour if filled else Qt.BrushStyle.NoBrush)
    painter.drawPath(outline)
    _paint_inside(painter, shape, ground if filled else colour)
    painter.restore()


def paint_halo_frame(painter: QPainter, frame: QRectF, colour: QColor, *, width: float) -> None:
    """Draw a rounded frame in a colour with a white rim on both sides, so that it shows on any paper."""
    radius = width * 2.2
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for pen_colour, factor in ((WHITE, 2.4), (colour, 1.0)):
        painter.setPen(QPen(pen_colour, width * factor))
        painter.drawRoundedRect(frame, radius, radius)
    painter.restore()


def _pen(colour: QColor, width: float) -> QPen:
    return QPen(colour, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)


def _outline(shape: Shape) -> tuple[QPainterPath, bool]:
    """The outline in the unit square, and whether it is filled."""
    path = QPainterPath()
    match shape:
        case Shape.DOT:
            path.addEllipse(QPointF(0.5, 0.5), 0.13, 0.13)
            return path, True
        case Shape.TICK:
            path.moveTo(0.12, 0.55)
            path.lineTo(0.40, 0.82)
            path.lineTo(0.90, 0.18)
            return path, False
        case Shape.CROSS_DISC:
            path.addEllipse(QPointF(0.5, 0.5), 0.43, 0.43)
            return path, True
        case Shape.ARROW_FRAME:
            path.addRoundedRect(QRectF(0.07, 0.07, 0.86, 0.86), 0.18, 0.18)
            return path, False
        case Shape.RING_TICK:
            path.addEllipse(QPointF(0.5, 0.5), 0.43, 0.43)
            return path, False
        case Shape.DOWN:
            path.addPolygon(_polygon((0.06, 0.12), (0.94, 0.12), (0.5, 0.92)))
            path.closeSubpath()
            return path, True
        case Shape.UP:
            path.addPolygon(_polygon((0.06, 0.88), (0.94, 0.88), (0.5, 0.08)))
            path.closeSubpath()
            return path, True
        case Shape.DIAMOND:
            path.addPolygon(_polygon((0.5, 0.03), (0.97, 0.5), (0.5, 0.97), (0.03, 0.5)))
            path.closeSubpath()
            return path, False
        case Shape.DASHED:
            path.addRect(QRectF(0.1, 0.2, 0.8, 0.6))
            return path, False
        case Shape.BAR:
            path.moveTo(0.2, 0.5)
            path.lineTo(0.8, 0.5)
            return path, False
        case Shape.LENS:
            path.addEllipse(QPointF(0.42, 0.42), 0.32, 0.32)
            path.moveTo(0.66, 0.66)
            path.lineTo(0.92, 0.92)
            return path, False
        case Shape.THREE_BARS | Shape.STRUCK_BARS:
            for y in (0.25, 0.5, 0.75):
                path.moveTo(0.1, y)
                path.lineTo(0.9, y)
            if shape is Shape.STRUCK_BARS:
                path.moveTo(0.25, 0.95)
                path.lineTo(0.75, 0.05)
            return path, False
        case Shape.HOOK:
            path.moveTo(0.16, 0.12)
            path.lineTo(0.16, 0.62)
            path.lineTo(0.88, 0.62)
            path.moveTo(0.64, 0.36)
            path.lineTo(0.88, 0.62)
            path.lineTo(0.64, 0.88)
            return path, False
        case Shape.SHIELD_TICK | Shape.SHIELD_CROSS:
            path.moveTo(0.12, 0.08)
            path.lineTo(0.88, 0.08)
            path.lineTo(0.88, 0.52)
            path.quadTo(0.86, 0.80, 0.5, 0.96)
            path.quadTo(0.14, 0.80, 0.12, 0.52)
            path.closeSubpath()
            return path, shape is Shape.SHIELD_CROSS
    raise AssertionError(shape)


def _paint_inside(painter: QPainter, shape: Shape, colour: QColor) -> None:
    painter.setPen(_pen(colour, 0.12))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    match shape:
        case Shape.CROSS_DISC:
            painter.drawLine(QPointF(0.33, 0.33), QPointF(0.67, 0.67))
            painter.drawLine(QPointF(0.67, 0.33), QPointF(0.33, 0.67))
        case Shape.SHIELD_CROSS:
            painter.drawLine(QPointF(0.35, 0.30), QPointF(0.65, 0.62))
            painter.drawLine(QPointF(0.65, 0.30), QPointF(0.35, 0.62))
        case Shape.SHIELD_TICK:
            painter.drawPolyline(_polygon((0.31, 0.46), (0.45, 0.61), (0.70, 0.29)))
        case Shape.RING_TICK:
            painter.drawPolyline(_polygon((0.30, 0.52), (0.45, 0.67), (0.71, 0.35)))
        case Shape.DOWN:
            painter.drawLine(QPointF(0.37, 0.36), QPointF(0.63, 0.36))
        case Shape.UP:
            painter.drawLine(QPointF(0.37, 0.66), QPointF(0.63, 0.66))
            painter.drawLine(QPointF(0.5, 0.53), QPointF(0.5, 0.79))
        case Shape.DIAMOND:
            _paint_letters(painter, "?", colour, 0.46)
        case Shape.ARROW_FRAME:
            painter.drawLine(QPointF(0.27, 0.5), QPointF(0.73, 0.5))
            painter.drawPolyline(_polygon((0.53, 0.29), (0.74, 0.5), (0.53, 0.71)))
        case Shape.LENS:
            painter.drawPoint(QPointF(0.42, 0.55))
            painter.drawLine(QPointF(0.42, 0.27), QPointF(0.42, 0.40))
        case _:
            pass


def _paint_letters(painter: QPainter, letters: str, colour: QColor, height: float) -> None:
    font = QFont()
    font.setBold(True)
    font.setPixelSize(100)
    path = QPainterPath()
    path.addText(0, 0, font, letters)
    bounds = path.boundingRect()
    scale = min(height / bounds.height(), height / bounds.width())
    painter.save()
    painter.translate(0.5, 0.5)
    painter.scale(scale, scale)
    painter.translate(-bounds.center())
    painter.fillPath(path, colour)
    painter.restore()


def _polygon(*points: tuple[float, float]) -> QPolygonF:
    return QPolygonF([QPointF(x, y) for x, y in points])
