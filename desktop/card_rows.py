"""Rows of a label and a sentence or a line of maths, as high as they need to be."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QFontMetricsF, QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from desktop.maths import MathsError, plain, typeset
from desktop.maths_picture import paint_maths
from desktop.theme import ink, quiet
from desktop.wording import Row

__all__ = ["CardRows"]

_GAP = 3.0
_WRAP = int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignLeft) | int(Qt.AlignmentFlag.AlignTop)
_MIDDLE = int(Qt.AlignmentFlag.AlignVCenter) | int(Qt.AlignmentFlag.AlignLeft)


class CardRows(QWidget):
    """Shows the rows; screen readers get them as one description."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows: tuple[Row, ...] = ()
        self._strong: tuple[str, ...] = ()
        self._colour = QColor()
        policy = QSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    @property
    def rows(self) -> tuple[Row, ...]:
        return self._rows

    def show_rows(self, rows: Sequence[Row], *, strong: Sequence[str] = (), colour: QColor | None = None) -> None:
        """Show rows; those with a label in `strong` in the colour."""
        self._rows, self._strong = tuple(rows), tuple(strong)
        self._colour = colour or QColor()
        self.setAccessibleDescription("; ".join(f"{row.label}: {row.text or plain(row.latex)}" for row in rows))
        self.setVisible(bool(rows))
        self.updateGeometry()
        self.update()

    def hasHeightForWidth(self) -> bool:
        return True

    def heightForWidth(self, width: int) -> int:
        places = self._places(float(width))
        return round(places[-1][1].bottom() + _GAP) if places else 0

    def sizeHint(self) -> QSize:
        width = max(240, self.width())
        return QSize(width, self.heightForWidth(width))

    def minimumSizeHint(self) -> QSize:
        return QSize(200, self.heightForWidth(max(200, self.width())))

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        for row, (label, place) in zip(self._rows, self._places(self.width()), strict=True):
            painter.setPen(quiet(palette))
            painter.drawText(label, _MIDDLE if row.latex else _WRAP, row.label)
            if row.latex:
                is_strong = row.label in self._strong and self._colour.isValid()
                colour = self._colour if is_strong else ink(palette)
                paint_maths(painter, place, row.latex, size=self._maths_size(), colour=colour)
            else:
                painter.setPen(ink(palette))
                painter.drawText(place, _WRAP, row.text)

    def _maths_size(self) -> float:
        return self.fontMetrics().height() * 1.2

    def _places(self, width: float) -> list[tuple[QRectF, QRectF]]:
        if not self._rows:
            return []
        metrics = QFontMetricsF(self.font())
        label_width = min(width * 0.4, max(metrics.horizontalAdvance(row.label) for row in self._rows) + 10)
        places, y = [], 0.0
        for row in self._rows:
            area = QRectF(label_width, y, max(40.0, width - label_width), 1e5)
            words = QRectF(0, y, label_width - 6, 1e5)
            least = max(metrics.height(), metrics.boundingRect(words, _WRAP, row.label).height())
            height = max(least, self._height(row, area, metrics))
            places.append((QRectF(0, y, label_width - 6, height), QRectF(area.left(), y, area.width(), height)))
            y += height + _GAP
        return places

    def _height(self, row: Row, area: QRectF, metrics: QFontMetricsF) -> float:
        if not row.latex:
            return metrics.boundingRect(area, _WRAP, row.text).height()
        try:
            maths = typeset(row.latex, size=round(self._maths_size(), 1))
        except MathsError:
            return metrics.height() * 1.2
        return maths.height * min(1.0, area.width() / maths.width) + 2
