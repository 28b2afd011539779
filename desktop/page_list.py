"""The pages on the desk, each with a small picture and what was found; shown when there are two or more."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QIcon, QImage, QPixmap
from PySide6.QtWidgets import QFrame, QListWidget, QListWidgetItem, QWidget

from desktop.desk_line import State
from desktop.document import Document
from desktop.language import tr
from desktop.marked_picture import page_image
from desktop.overruled import counted_slip
from desktop.typed_page import is_typed

__all__ = ["PageList", "page_name", "page_state"]

_THUMB = QSize(104, 92)
_DOCUMENT = int(Qt.ItemDataRole.UserRole)


def page_name(document: Document) -> str:
    """The file's name without its ending, and the page when it is not the first."""
    name = Path(document.file).stem
    return name if document.page == 0 else tr("{name}, page {number}", name=name, number=document.page + 1)


def page_state(document: Document) -> str:
    """What is found on a page, in a few words."""
    if not document.lines:
        return tr("no writing found")
    if not document.verdicts:
        return tr("not checked yet")
    slips = [(v, at) for v in document.verdicts if (at := counted_slip(document, v)) is not None]
    doubtful = sum(ln.state in (State.DOUBTFUL, State.UNREAD) and not ln.struck_out for ln in document.lines)
    tail = "\n" + tr("{count} doubtful", count=doubtful) if doubtful else ""
    first = next((at for v, at in slips if not v.check_reading_first or document.lines[at].override), None)
    if first is not None:
        return tr("first slip: line {number}", number=first + 1) + tail
    if slips:
        return tr("check the reading") + tail
    return tr("no slip found") + tail


class PageList(QListWidget):
    """One item a document; the order is that of the desk."""

    page_chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setViewMode(QListWidget.ViewMode.IconMode)
        self.setFlow(QListWidget.Flow.TopToBottom)
        self.setMovement(QListWidget.Movement.Static)
        self.setWrapping(False)
        self.setWordWrap(True)
        self.setIconSize(_THUMB)
        self._item_width = max(136, self.fontMetrics().horizontalAdvance("candidate-0000") + 28)
        self.setFixedWidth(self._item_width + 14)
        self.setSpacing(4)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName(tr("Pages"))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.currentRowChanged.connect(self.page_chosen)

    def add(self, document: Document) -> None:
        item = QListWidgetItem(_thumb(document), "")
        item.setTextAlignment(Qt.AlignmentFlag.AlignHCenter)
        item.setData(_DOCUMENT, document)
        self.addItem(item)
        self.refresh(self.count() - 1, document)

    def row_of(self, document: Document) -> int:
        """The row of a document; -1 when it is not here."""
        rows = (row for row in range(self.count()) if self.item(row).data(_DOCUMENT) is document)
        return next(rows, -1)

    def refresh(self, row: int, document: Document) -> None:
        """Show what is now known of a page."""
        item = self.item(row)
        item.setText(f"{page_name(document)}\n{page_state(document)}")
        item.setToolTip(document.file)
        if document.strokes or is_typed(document):
            item.setIcon(_thumb(document))  # the picture is drawn anew after each change
        item.setSizeHint(QSize(self._item_width, _THUMB.height() + 5 * self.fontMetrics().height()))


def _thumb(document: Document) -> QIcon:
    picture = document.thumbnail if document.picture is None else document.picture
    if picture is None:
        return QIcon()
    height, width = picture.shape[:2]
    step = max(1, min(width // (2 * _THUMB.width()), height // (2 * _THUMB.height())))
    image: QImage = page_image(picture[::step, ::step])
    smooth = Qt.TransformationMode.SmoothTransformation
    return QIcon(QPixmap.fromImage(image.scaled(_THUMB, Qt.AspectRatioMode.KeepAspectRatio, smooth)))
