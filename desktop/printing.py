"""Marked pages on paper, after a look at how they will come out."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainter
from PySide6.QtPrintSupport import QPrinter, QPrintPreviewDialog
from PySide6.QtWidgets import QWidget

from desktop.document import Document
from desktop.language import tr
from desktop.marked_picture import paint_marked, whole_size
from desktop.reveal import EVERYTHING, Reveal

__all__ = ["PrintBox", "print_pages"]


def print_pages(documents: Sequence[Document], printer: QPrinter, reveal: Reveal = EVERYTHING) -> None:
    """Draw each marked page on a sheet of its own, as large as the sheet's printable part allows."""
    painter = QPainter(printer)
    try:
        for number, document in enumerate(documents):
            if number:
                printer.newPage()
            room = QRectF(printer.pageLayout().paintRectPixels(printer.resolution()))
            size = whole_size(document, reveal)
            scale = min(room.width() / size.width(), room.height() / size.height())
            painter.save()
            painter.translate((room.width() - size.width() * scale) / 2, 0)
            painter.scale(scale, scale)
            paint_marked(painter, document, reveal)
            painter.restore()
    finally:
        painter.end()


class PrintBox(QPrintPreviewDialog):
    """Shows the sheets and prints them; sheet size, printer and copies are chosen in it."""

    def __init__(
        self, documents: Sequence[Document], parent: QWidget | None = None, *, reveal: Reveal = EVERYTHING
    ) -> None:
        printer = QPrinter(QPrinter.PrinterMode.HighResolution)
        super().__init__(printer, parent)
        self._documents = tuple(documents)
        self._reveal = reveal
        self._printer = printer  # Qt does not hold it
        self.setWindowTitle(tr("Print marked page"))
        self.resize(900, 700)
        self.paintRequested.connect(self._paint)

    def _paint(self, printer: QPrinter) -> None:
        print_pages(self._documents, printer, self._reveal)
