"""Drawing a box or a cut on the page: with the pointer, or with the arrow keys and Enter."""

from __future__ import annotations

from enum import StrEnum

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QGraphicsItem, QStyleOptionGraphicsItem, QWidget

from desktop.language import tr
from recognition.outline import Cut
from recognition.result import Box

__all__ = ["PageTool", "ToolKind"]

_COLOUR = QColor("#8A1C6B")
_FINE, _COARSE = 1.0, 10.0
"""Screen pixels by which an arrow key moves; the fine step with Ctrl."""
_LEAST = 4.0
"""Screen pixels below which a drag is no drawing."""


class ToolKind(StrEnum):
    """What is drawn, and what for."""

    ADD = "add"
    REDRAW = "redraw"
    SPLIT = "split"

    @property
    def hint(self) -> str:
        """What to do."""
        if self is ToolKind.SPLIT:
            return tr(
                "Draw the cut across the line, or move it with the arrow keys, T turns it, Enter cuts. Esc leaves the "
                "line whole."
            )
        return tr(
            "Draw a box round the line, or move the box with the arrow keys, size it with Shift and arrow keys, Enter "
            "takes it. Esc changes nothing."
        )


class PageTool(QGraphicsItem):
    """The box or the cut that is being drawn, in pixels of the page."""

    def __init__(self, kind: ToolKind, box: QRectF, page: QRectF) -> None:
        """
        Args:
            box: the box at first; the cut goes through its middle.
            page: bounds.
        """
        super().__init__()
        self.kind = kind
        self._page = page
        self._box = box.intersected(page)
        self._start, self._end = self._level_cut() if kind is ToolKind.SPLIT else (box.topLeft(), box.bottomRight())
        self.setZValue(10)

    @property
    def box(self) -> Box:
        """The box that was drawn."""
        rect = self._rect()
        return Box(round(rect.x()), round(rect.y()), max(1, round(rect.width())), max(1, round(rect.height())))

    @property
    def cut(self) -> Cut:
        """The ends of the cut that was drawn."""
        return (self._start.x(), self._start.y()), (self._end.x(), self._end.y())

    def begin(self, point: QPointF) -> None:
        """Begin to draw anew."""
        self.prepareGeometryChange()
        self._start = self._end = self._inside(point)

    def draw_to(self, point: QPointF) -> None:
        self.prepareGeometryChange()
        self._end = self._inside(point)
        self.update()

    def is_drawn(self, pixel: float) -> bool:
        """Whether what was drawn is more than a click.

        Args:
            pixel: size of a screen pixel on the page.
        """
        drawn = self._end - self._start
        return max(abs(drawn.x()), abs(drawn.y())) > _LEAST * pixel

    def press(self, key: int, modifiers: Qt.KeyboardModifier, pixel: float) -> bool:
        """Move, size or turn with a key; returns whether the key did anything."""
        steps = {
            Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1),
        }  # fmt: skip
        if key == Qt.Key.Key_T and self.kind is ToolKind.SPLIT:
            is_level = abs(self._end.x() - self._start.x()) > abs(self._end.y() - self._start.y())
            self._place(*(self._upright_cut() if is_level else self._level_cut()))
            return True
        step = steps.get(Qt.Key(key))
        if step is None:
            return False
        size = (_FINE if modifiers & Qt.KeyboardModifier.ControlModifier else _COARSE) * pixel
        shift = QPointF(step[0] * size, step[1] * size)
        if modifiers & Qt.KeyboardModifier.ShiftModifier:
            self._place(self._start, self._end + shift)
        else:
            self._place(self._start + shift, self._end + shift)
        return True

    def boundingRect(self) -> QRectF:
        return self._rect().adjusted(-20, -20, 20, 20)

    def paint(self, painter: QPainter, option: QStyleOptionGraphicsItem, widget: QWidget | None = None) -> None:
        pixel = 1.0 / (painter.worldTransform().m11() or 1.0)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        for colour, width in ((QColor("#ffffff"), 4.5), (_COLOUR, 2.2)):
            painter.setPen(QPen(colour, width * pixel))
            if self.kind is ToolKind.SPLIT:
                painter.drawLine(self._start, self._end)
            else:
                painter.drawRect(self._rect())

    def _place(self, start: QPointF, end: QPointF) -> None:
        self.prepareGeometryChange()
        self._start, self._end = self._inside(start), self._inside(end)
        self.update()

    def _rect(self) -> QRectF:
        return QRectF(self._start, self._end).normalized()

    def _level_cut(self) -> tuple[QPointF, QPointF]:
        y = self._box.center().y()
        return QPointF(self._box.left(), y), QPointF(self._box.right(), y)

    def _upright_cut(self) -> tuple[QPointF, QPointF]:
        x = self._box.center().x()
        return QPointF(x, self._box.top()), QPointF(x, self._box.bottom())

    def _inside(self, point: QPointF) -> QPointF:
        return QPointF(
            min(max(point.x(), self._page.left()), self._page.right()),
            min(max(point.y(), self._page.top()), self._page.bottom()),
        )
