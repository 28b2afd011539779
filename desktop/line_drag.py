"""A row of a list dragged to another place, with a bar that shows where it would come to lie."""

from __future__ import annotations

from PySide6.QtCore import QObject, QPoint, QRectF, Qt, QTimer, Slot
from PySide6.QtGui import QPainter
from PySide6.QtWidgets import QApplication, QListView

from desktop.theme import ground

__all__ = ["RowDrag"]

_EDGE = 28
"""Pixels from the upper and lower edge within which the list scrolls."""
_SCROLL_MS = 30
_STEP = 14
_BAR = 4.0


class RowDrag(QObject):
    """Follows the pointer from press to release; it moves nothing itself."""

    def __init__(self, view: QListView) -> None:
        super().__init__(view)
        self._view = view
        self._pressed: QPoint | None = None
        self._row = -1
        self._at = QPoint()
        self.is_on = False
        self._timer = QTimer(self)
        self._timer.setInterval(_SCROLL_MS)
        self._timer.timeout.connect(self._scroll)

    def press(self, at: QPoint) -> None:
        """The pointer went down."""
        self._row = self._view.indexAt(at).row()
        self._pressed = at if self._row >= 0 else None

    def follow(self, at: QPoint) -> bool:
        """The pointer moved while down; returns whether a row is being dragged."""
        self._at = at
        least = QApplication.startDragDistance()
        if not self.is_on and self._pressed is not None and abs(at.y() - self._pressed.y()) >= least:
            self.is_on = True
            self._view.viewport().setCursor(Qt.CursorShape.ClosedHandCursor)
            self._timer.start()
        if self.is_on:
            self._view.viewport().update()
        return self.is_on

    def release(self) -> tuple[int, int] | None:
        """The pointer went up: the row that was dragged and its new place; None where nothing is to be moved."""
        row, gap, was_on = self._row, self._gap(), self.is_on
        self.give_up()
        place = gap if gap <= row else gap - 1
        return (row, place) if was_on and place != row else None

    def give_up(self) -> None:
        """Leave the row where it is."""
        self._timer.stop()
        if self.is_on:
            self._view.viewport().unsetCursor()
        self.is_on, self._pressed = False, None
        self._view.viewport().update()

    def paint(self, painter: QPainter) -> None:
        """Veil the row that is dragged, and draw the bar."""
        if not self.is_on:
            return
        palette = self._view.palette()
        veil = ground(palette)
        veil.setAlphaF(0.6)
        painter.fillRect(self._rect(self._row), veil)
        gap, count = self._gap(), self._count()
        y = self._rect(gap).top() if gap < count else self._rect(count - 1).bottom()
        width = float(self._view.viewport().width())
        y = min(max(y, _BAR), self._view.viewport().height() - _BAR)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(palette.highlight())
        painter.drawRoundedRect(QRectF(6, y - _BAR / 2, width - 12, _BAR), _BAR / 2, _BAR / 2)

    @Slot()
    def _scroll(self) -> None:
        bar = self._view.verticalScrollBar()
        if self._at.y() < _EDGE:
            bar.setValue(bar.value() - _STEP)
        elif self._at.y() > self._view.viewport().height() - _EDGE:
            bar.setValue(bar.value() + _STEP)
        else:
            return
        self._view.viewport().update()

    def _gap(self) -> int:
        """Number of the row before which the bar stands."""
        rows = range(self._count())
        return next((row for row in rows if self._at.y() < self._rect(row).center().y()), len(rows))

    def _count(self) -> int:
        return self._view.model().rowCount()

    def _rect(self, row: int) -> QRectF:
        return QRectF(self._view.visualRect(self._view.model().index(row, 0)))
