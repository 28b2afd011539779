"""A line of text that is cut short with three dots where room is scarce, so that others beside it stay whole."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QLabel

__all__ = ["ElidedLabel", "LastElidedLabel"]

_LEAST_SIGNS = 8


class ElidedLabel(QLabel):
    """Shows as much of its text as fits; all of it is in the tool tip and is told to screen readers."""

    def say(self, text: str) -> None:
        """Show a text, with all of it as the tool tip."""
        self.setText(text)
        self.setToolTip(text)

    def minimumSizeHint(self) -> QSize:
        metrics = self.fontMetrics()
        return QSize(metrics.averageCharWidth() * _LEAST_SIGNS, metrics.height())

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        room = self.contentsRect()
        text = self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideMiddle, room.width())
        painter.setPen(self.palette().color(self.foregroundRole()))
        painter.drawText(room, self.alignment(), text)
        painter.end()


class LastElidedLabel(ElidedLabel):
    """Is cut only where there is no room for it even when all beside it has given way."""

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()
