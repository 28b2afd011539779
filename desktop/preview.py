"""A line of LaTeX set as maths while it is typed."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QSizePolicy, QWidget

from desktop.language import tr
from desktop.maths import MathsError, plain, typeset
from desktop.maths_picture import paint_maths
from desktop.sentences import in_language
from desktop.theme import ground, ink, mix, quiet

__all__ = ["Preview"]


class Preview(QWidget):
    """The LaTeX set as maths while it is typed."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._latex = ""
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setAccessibleName(tr("How the line looks"))

    def show_latex(self, latex: str) -> None:
        self._latex = latex
        self.setAccessibleDescription(plain(latex))
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        em = self.fontMetrics().height()
        try:
            height = typeset(self._latex, size=round(em * 1.3, 1)).height
        except MathsError:
            height = 0.0
        return QSize(200, round(min(max(height, em * 1.4), em * 4.2)) + 12)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        palette = self.palette()
        area = QRectF(self.rect())
        painter.setPen(mix(ground(palette), ink(palette), 0.2))
        painter.setBrush(ground(palette))
        painter.drawRoundedRect(area.adjusted(0.5, 0.5, -0.5, -0.5), 4, 4)
        inner = area.adjusted(10, 5, -10, -5)
        size = self.fontMetrics().height() * 1.3
        try:
            typeset(self._latex, size=round(size, 1))
        except MathsError as exc:
            painter.setPen(quiet(palette))
            painter.drawText(inner, int(Qt.AlignmentFlag.AlignVCenter), in_language(str(exc)))
            return
        paint_maths(painter, inner, self._latex, size=size, colour=ink(palette))
