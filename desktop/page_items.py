"""What lies on the page view: the photo, the outlines of its lines, and the marks."""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import lru_cache

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath, QPainterPathStroker, QPen, QPolygonF
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from desktop.desk_line import DeskLine, State
from desktop.document import Document
from desktop.marks import Mark, paint_marks, text_size
from recognition.result import Box

__all__ = ["LinesItem", "PictureItem", "line_outline"]

_OUTLINE_PAD = 0.1
"""Distance of a line's outline from its ink, as a share of the line's height."""
_LINE_COLOURS = {
    State.UNREAD: QColor("#55595E"),
    State.DOUBTFUL: QColor("#8F6100"),
    State.READ: QColor("#55595E"),
    State.CONFIRMED: QColor("#0B6670"),
}
_CHOSEN = QColor("#1F4E9E")


class PictureItem(QGraphicsItem):
    """The photo; drawn from the smallest of its halvings that is still sharp, so that a redraw stays quick."""

    def __init__(self) -> None:
        super().__init__()
        self._halvings: list[QImage] = []
        self._pixels: object = None
        self._size = QRectF()

    def show_pictures(self, images: Sequence[QImage], pixels: object, size: tuple[int, int] | None = None) -> None:
        """Show a picture, given with as many of its halvings as there are; the others are made when needed.

        Args:
            images: the picture, its half, its quarter and so on.
            pixels: what holds the images' memory, kept as long as they are shown.
            size: width and height on the page, where they are not those of the first image.
        """
        self.prepareGeometryChange()
        self._halvings = list(images)
        self._pixels = pixels
        self._size = QRectF(images[0].rect()) if images else QRectF()
        if images and size is not None:
            self._size = QRectF(0, 0, *size)

    def boundingRect(self) -> QRectF:
        return self._size

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        if not self._halvings:
            return
        wanted = painter.worldTransform().m11() * painter.device().devicePixelRatio()
        wanted *= self._size.width() / self._halvings[0].width()
        level = max(0, math.floor(-math.log2(wanted))) if wanted > 0 else 0
        while len(self._halvings) <= level and self._halvings[-1].width() > 64:
            last = self._halvings[-1]
            half = QSize(max(1, last.width() // 2), max(1, last.height() // 2))
            smooth = Qt.TransformationMode.SmoothTransformation
            self._halvings.append(last.scaled(half, Qt.AspectRatioMode.IgnoreAspectRatio, smooth))
        image = self._halvings[min(level, len(self._halvings) - 1)]
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        exposed = option.exposedRect.intersected(self._size)
        across, down = image.width() / self._size.width(), image.height() / self._size.height()
        source = QRectF(exposed.x() * across, exposed.y() * down, exposed.width() * across, exposed.height() * down)
        painter.drawImage(exposed, image, source)


class LinesItem(QGraphicsItem):
    """The outlines of the lines, and the marks over them."""

    def __init__(self) -> None:
        super().__init__()
        self.document: Document | None = None
        self.marks: tuple[Mark, ...] = ()
        self.chosen = -1

    def boundingRect(self) -> QRectF:
        if self.document is None:
            return QRectF()
        return QRectF(0, 0, *self.document.size)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        if self.document is None:
            return
        scale = painter.worldTransform().m11() or 1.0
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for index, line in enumerate(self.document.lines):
            self._paint_line(painter, line, chosen=index == self.chosen, pixel=1.0 / scale)
        paint_marks(painter, self.marks, text=text_size(self.document))

    def _paint_line(self, painter: QPainter, line: DeskLine, *, chosen: bool, pixel: float) -> None:
        colour = _CHOSEN if chosen else _LINE_COLOURS[line.state]
        needs_user = line.state in (State.DOUBTFUL, State.UNREAD) and not line.struck_out
        width = 2.4 if chosen else 1.6 if needs_user else 1.0
        outline = line_outline(line)
        painter.setBrush(QColor(31, 78, 158, 22) if chosen else Qt.BrushStyle.NoBrush)
        painter.setPen(QPen(QColor("#ffffff"), (width + 1.8) * pixel))
        painter.drawPath(outline)
        pen = QPen(colour, width * pixel)
        if needs_user and not chosen:
            pen.setDashPattern([4, 3])
        painter.setPen(pen)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.drawPath(outline)
        if line.struck_out:
            bounds = outline.boundingRect()
            painter.drawLine(
                QPointF(bounds.left(), bounds.center().y()), QPointF(bounds.right(), bounds.center().y())
            )


@lru_cache(maxsize=512)
def _outline(polygon: tuple[tuple[float, float], ...], box: Box) -> QPainterPath:
    path = QPainterPath()
    if len(polygon) >= 3:
        path.addPolygon(QPolygonF([QPointF(x, y) for x, y in polygon]))
        path.closeSubpath()
    else:
        path.addRect(QRectF(*box))
    wider = QPainterPathStroker()
    wider.setWidth(max(2.0, box.h * _OUTLINE_PAD * 2))
    wider.setJoinStyle(Qt.PenJoinStyle.RoundJoin)
    return path.united(wider.createStroke(path)).simplified()


def line_outline(line: DeskLine) -> QPainterPath:
    """The outline of a line on the page, a little outside its ink."""
    return _outline(line.polygon, line.box)
