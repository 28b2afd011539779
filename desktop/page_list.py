"""The pages on the desk, each with a small picture and what was found; shown when there are two or more."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFont, QFontMetricsF, QIcon, QImage, QPainter, QPalette, QPen, QPixmap
from PySide6.QtWidgets import (
    QFrame,
    QListWidget,
    QListWidgetItem,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from desktop.desk_line import State
from desktop.document import Document
from desktop.language import tr
from desktop.marked_picture import page_image
from desktop.overruled import counted_slip
from desktop.pen_page import PEN_PAGE
from desktop.sentences import in_language
from desktop.theme import ground, ink, mix, quiet
from desktop.typed_page import TYPED, is_typed

__all__ = ["PageList", "page_name", "page_state"]

_THUMB = QSize(104, 92)
_PAD = 6.0
_DOCUMENT = int(Qt.ItemDataRole.UserRole)
_TURNS = _DOCUMENT + 1
_CENTRED = int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignHCenter) | int(Qt.AlignmentFlag.AlignTop)


def page_name(document: Document) -> str:
    """The file's name without its ending, and the page when it is not the first."""
    name = Path(document.file).stem
    if document.file.startswith((TYPED, PEN_PAGE)):
        name = in_language(name)
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
    if all(row.verdict in ("start", "note") for verdict in document.verdicts for row in verdict.report.lines):
        return tr("nothing to compare") + tail
    return tr("no slip found") + tail


class _PagePainter(QStyledItemDelegate):
    """Paints a page: its picture, its name and what was found; the chosen one as a chosen line is."""

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        width = option.widget.viewport().width() - 2 if isinstance(option.widget, QListWidget) else option.rect.width()
        name, state = self._heights(index, width - 2 * _PAD, option.font)
        return QSize(width, round(_THUMB.height() + name + state + 3 * _PAD))

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        area, palette = QRectF(option.rect), option.palette
        accent = palette.color(QPalette.ColorRole.Highlight)
        painter.save()
        if option.state & QStyle.StateFlag.State_Selected:
            painter.fillRect(area, mix(ground(palette), accent, 0.14))
            painter.fillRect(QRectF(area.topLeft(), area.bottomLeft()).adjusted(0, 0, 4, 0), accent)
        if option.state & QStyle.StateFlag.State_HasFocus:
            painter.setPen(QPen(accent, 1.5))
            painter.drawRect(area.adjusted(0.75, 0.75, -0.75, -0.75))
        icon = index.data(Qt.ItemDataRole.DecorationRole)
        place = QRectF(area.left(), area.top() + _PAD, area.width(), _THUMB.height())
        if isinstance(icon, QIcon):
            icon.paint(painter, place.toRect())
        text = area.adjusted(_PAD, 0, -_PAD, 0)
        name, _ = self._heights(index, text.width(), option.font)
        text.setTop(place.bottom() + _PAD / 2)
        words, _, found = str(index.data()).partition("\n")
        painter.setFont(option.font)
        painter.setPen(ink(palette))
        painter.drawText(text, _CENTRED, words)
        painter.setPen(quiet(palette))
        painter.drawText(text.adjusted(0, name, 0, 0), _CENTRED, found)
        painter.restore()

    @staticmethod
    def _heights(index: QModelIndex | QPersistentModelIndex, width: float, font: QFont) -> tuple[float, float]:
        """Height of the name and of what was found."""
        name, _, found = str(index.data()).partition("\n")
        room, metrics = QRectF(0, 0, width, 1e4), QFontMetricsF(font)
        high, low = (metrics.boundingRect(room, _CENTRED, words).height() for words in (name, found))
        return high, low


class PageList(QListWidget):
    """One item a document; the order is that of the desk."""

    page_chosen = Signal(int)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setItemDelegate(_PagePainter(self))
        self.setVerticalScrollMode(QListWidget.ScrollMode.ScrollPerPixel)
        self.setUniformItemSizes(False)
        self.setIconSize(_THUMB)
        self.setFixedWidth(max(150, self.fontMetrics().horizontalAdvance("candidate-0000") + 42))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName(tr("Pages"))
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.currentRowChanged.connect(self.page_chosen)

    def add(self, document: Document) -> None:
        item = QListWidgetItem(_thumb(document), "")
        item.setData(_DOCUMENT, document)
        item.setData(_TURNS, document.turns)
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
        if document.strokes or is_typed(document) or item.data(_TURNS) != document.turns:
            item.setIcon(_thumb(document))  # the picture is drawn anew after each change
            item.setData(_TURNS, document.turns)


def _thumb(document: Document) -> QIcon:
    picture = document.thumbnail if document.picture is None else document.picture
    if picture is None:
        return QIcon()
    height, width = picture.shape[:2]
    step = max(1, min(width // (2 * _THUMB.width()), height // (2 * _THUMB.height())))
    image: QImage = page_image(picture[::step, ::step])
    smooth = Qt.TransformationMode.SmoothTransformation
    return QIcon(QPixmap.fromImage(image.scaled(_THUMB, Qt.AspectRatioMode.KeepAspectRatio, smooth)))
