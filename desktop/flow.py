"""A layout that sets its parts in rows like words, as wide as there is room, and grows in height only."""

from __future__ import annotations

from PySide6.QtCore import QRect, QSize, Qt
from PySide6.QtWidgets import QLayout, QLayoutItem, QSizePolicy, QWidget

__all__ = ["Flow"]

_GAP = 6


class Flow(QLayout):
    """Parts in rows; what may grow takes what is left of its row, and no part is wider than the whole."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._items: list[QLayoutItem] = []
        self.setContentsMargins(0, 0, 0, 0)

    def addItem(self, item: QLayoutItem) -> None:
        self._items.append(item)

    def count(self) -> int:
        return len(self._items)

    def itemAt(self, index: int) -> QLayoutItem | None:
        return self._items[index] if 0 <= index < len(self._items) else None

    def takeAt(self, index: int) -> QLayoutItem | None:
        return self._items.pop(index) if 0 <= index < len(self._items) else None

    def expandingDirections(self) -> Qt.Orientation:
        return Qt.Orientation.Horizontal

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        return sum(self._height(row) + _GAP for row in self._rows(width)) - _GAP if self._shown() else 0

    def sizeHint(self) -> QSize:
        shown = self._shown()
        width = sum(item.sizeHint().width() + _GAP for item in shown)
        return QSize(max(0, width - _GAP), max((item.sizeHint().height() for item in shown), default=0))

    def minimumSize(self) -> QSize:
        shown = self._shown()
        return QSize(24 if shown else 0, max((item.sizeHint().height() for item in shown), default=0))

    def setGeometry(self, rect: QRect) -> None:
        super().setGeometry(rect)
        y = rect.top()
        for row in self._rows(rect.width()):
            height, x = self._height(row), rect.left()
            spare = rect.width() - sum(width for _, width in row) - _GAP * (len(row) - 1)
            growing = [item for item, _ in row if _grows(item)]
            for item, wanted in row:
                width = wanted + (max(0, spare) // len(growing) if item in growing else 0)
                item.setGeometry(QRect(x, y, width, height))
                x += width + _GAP
            y += height + _GAP

    def _shown(self) -> list[QLayoutItem]:
        return [item for item in self._items if not item.isEmpty()]

    def _rows(self, width: int) -> list[list[tuple[QLayoutItem, int]]]:
        rows: list[list[tuple[QLayoutItem, int]]] = []
        left = 0
        for item in self._shown():
            wanted = min(item.sizeHint().width(), width)
            if not rows or wanted + _GAP > left:
                rows.append([])
                left = width + _GAP
            rows[-1].append((item, wanted))
            left -= wanted + _GAP
        return rows

    def _height(self, row: list[tuple[QLayoutItem, int]]) -> int:
        return max(item.sizeHint().height() for item, _ in row)


def _grows(item: QLayoutItem) -> bool:
    widget = item.widget()
    return widget is not None and widget.sizePolicy().horizontalPolicy() == QSizePolicy.Policy.Expanding
