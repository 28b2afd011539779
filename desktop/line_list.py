"""The list of lines: each crop with its reading set as maths under it, its state, its verdict and why."""

from __future__ import annotations

from PySide6.QtCore import QModelIndex, QPersistentModelIndex, QPoint, QPointF, QRectF, QSize, Qt, QTimer, Signal
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontMetricsF,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
    QPalette,
    QPen,
    QResizeEvent,
)
from PySide6.QtWidgets import (
    QAbstractItemView,
    QFrame,
    QListView,
    QStyle,
    QStyledItemDelegate,
    QStyleOptionViewItem,
    QWidget,
)

from desktop.desk_line import STATE_WORDS, State
from desktop.document import Document
from desktop.doubts import Doubt, symbol_at
from desktop.glyphs import WHITE, paint_glyph
from desktop.language import tr
from desktop.line_drag import RowDrag
from desktop.line_rows import LINE_ROLE, ClaimOf, LineRow, LineRows, by_hand_words
from desktop.maths import MathsError, typeset
from desktop.maths_picture import paint_maths
from desktop.reveal import Reveal
from desktop.theme import ground, ink, mix, quiet, state_colour, verdict_colour

__all__ = ["LineList"]

_PAD = 10.0
_NUMBER_WIDTH = 34.0
_CROP_HEIGHT = 40.0
"""Pixels; height of a usual line's crop. All crops of a page have one scale, so a fraction stands higher."""
_TALLEST_CROP = 96.0
_TARGET = 24.0
"""Pixels; a symbol is hit within half of this."""
_VERDICT_SHARE = 0.36
_LEAST_SCALE, _MOST_SCALE = 0.8, 1.7
"""Bounds for the size of a reading that is set as wide as its ink, as shares of the usual size."""
DOUBT_ON_PAPER = "#8F6100"
_WRAP = int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignLeft) | int(Qt.AlignmentFlag.AlignTop)
_MIDDLE = int(Qt.AlignmentFlag.AlignVCenter) | int(Qt.AlignmentFlag.AlignLeft)


class _Layout:
    """Where the parts of a row go, for a width and a font."""

    def __init__(self, row: LineRow, width: float, font: QFont) -> None:
        self.font = font
        self.bold = QFont(font)
        self.bold.setBold(True)
        metrics = QFontMetricsF(font)
        self.em = metrics.height()
        self.maths_size = self.em * 1.3
        y = 0.0
        self.heading = QRectF()
        if row.heading:
            area = QRectF(_PAD, 0, width - 2 * _PAD, 1e5)
            height = QFontMetricsF(self.bold).boundingRect(area, _WRAP, row.heading).height()
            self.heading = QRectF(0, y, width, height + 1.2 * _PAD)
            y = self.heading.bottom()
        self.body_top = y
        left = _PAD + _NUMBER_WIDTH
        verdict_width = max(150.0, width * _VERDICT_SHARE)
        reading_width = width - left - verdict_width - 2 * _PAD
        y += 0.8 * _PAD
        self.crop = QRectF()
        reading_y = y
        if row.crop is not None and not row.crop.isNull():
            tallest = _TALLEST_CROP / row.crop.height()
            scale = min(reading_width / row.crop.width(), _CROP_HEIGHT / row.usual_height, tallest)
            self.crop = QRectF(left, y, row.crop.width() * scale, row.crop.height() * scale)
            reading_y = self.crop.bottom() + 5
        self.maths = QRectF(left, reading_y, reading_width, self._maths_height(row.line.latex, reading_width))
        if not self.crop.isEmpty():
            self._match_ink(row, QRectF(left, reading_y, reading_width, 0))
        words_width = verdict_width - self.em - 6
        words = QRectF(0, 0, words_width, 1e5)
        word = "" if row.style is None else row.style.word
        word_height = QFontMetricsF(self.bold).boundingRect(words, _WRAP, word).height()
        self.verdict = QRectF(left + reading_width + _PAD, y, verdict_width, max(self.em * 1.25, word_height))
        reason = QRectF(self.verdict.left(), self.verdict.bottom(), verdict_width, 1e5)
        told = "" if row.is_slip else row.reason  # the card tells of slips
        reason_height = metrics.boundingRect(reason, _WRAP, told).height() if told else 0.0
        self.reason = QRectF(reason.left(), reason.top(), verdict_width, reason_height)
        state = metrics.boundingRect(reason, _WRAP, _state_words(row)).height()
        self.state = QRectF(self.verdict.left(), self.reason.bottom() + 1, verdict_width, state)
        bottom = max(self.maths.bottom(), self.state.bottom()) + 0.8 * _PAD
        self.height = bottom

    def _match_ink(self, row: LineRow, area: QRectF) -> None:
        """Set the reading as wide as its ink and under it, where that can still be read well."""
        ink_at = row.ink_in_crop
        try:
            maths = typeset(row.marked, size=round(self.maths_size, 1))
        except MathsError:
            return
        scale = self.crop.width() / row.crop.width() if row.crop is not None else 1.0
        wanted = ink_at.width() * scale / maths.width
        factor = min(max(wanted, _LEAST_SCALE), _MOST_SCALE)
        self.maths_size = round(self.maths_size * factor, 1)
        left = area.left() + ink_at.left() * scale
        width = min(maths.width * factor + 2, area.right() - left)
        height = max(self.em * 1.3, maths.height * min(factor, width / maths.width) + 2)
        self.maths = QRectF(left, area.top(), width, height)

    def _maths_height(self, latex: str, width: float) -> float:
        try:
            maths = typeset(latex, size=round(self.maths_size, 1))
        except MathsError:
            return self.em * 1.3
        return max(self.em * 1.3, maths.height * min(1.0, width / maths.width) + 2)


class _RowPainter(QStyledItemDelegate):
    """Paints the rows."""

    def sizeHint(self, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex) -> QSize:
        view = option.widget
        width = view.viewport().width() if isinstance(view, QListView) else option.rect.width()
        row: LineRow = index.data(LINE_ROLE)
        return QSize(width, round(_Layout(row, width, option.font).height) + 1)

    def paint(
        self, painter: QPainter, option: QStyleOptionViewItem, index: QModelIndex | QPersistentModelIndex
    ) -> None:
        row: LineRow = index.data(LINE_ROLE)
        chosen = bool(option.state & QStyle.StateFlag.State_Selected)
        focused = bool(option.state & QStyle.StateFlag.State_HasFocus)
        area = QRectF(option.rect)
        layout = _Layout(row, area.width(), option.font)
        palette = option.palette
        painter.save()
        painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform)
        painter.translate(area.topLeft())
        body = QRectF(0, layout.body_top, area.width(), area.height() - layout.body_top)
        if chosen:
            accent = palette.color(QPalette.ColorRole.Highlight)
            painter.fillRect(body, mix(ground(palette), accent, 0.14))
            painter.fillRect(QRectF(0, body.top(), 4, body.height()), accent)
            if focused:
                painter.setPen(QPen(accent, 1.5))
                painter.drawRect(body.adjusted(1, 1, -1, -1))
        if row.heading:
            self._paint_heading(painter, layout, row, palette)
        painter.setPen(QPen(mix(ground(palette), ink(palette), 0.16), 1))
        painter.drawLine(QPointF(0, area.height() - 0.5), QPointF(area.width(), area.height() - 0.5))
        self._paint_reading(painter, layout, row, palette)
        self._paint_verdict(painter, layout, row, palette)
        painter.restore()

    def _paint_heading(self, painter: QPainter, layout: _Layout, row: LineRow, palette: QPalette) -> None:
        painter.fillRect(layout.heading, mix(ground(palette), ink(palette), 0.09))
        painter.setFont(layout.bold)
        painter.setPen(ink(palette))
        flags = int(Qt.TextFlag.TextWordWrap) | _MIDDLE
        painter.drawText(layout.heading.adjusted(_PAD, 0, -_PAD, 0), flags, row.heading)

    def _paint_reading(self, painter: QPainter, layout: _Layout, row: LineRow, palette: QPalette) -> None:
        painter.setFont(layout.bold)
        painter.setPen(quiet(palette))
        top = layout.body_top + 0.8 * _PAD
        painter.drawText(QRectF(_PAD + 2, top, _NUMBER_WIDTH, layout.em * 1.25), _MIDDLE, str(row.number))
        if row.crop is not None and not layout.crop.isEmpty():
            ratio = painter.device().devicePixelRatio()
            size = QSize(round(layout.crop.width() * ratio), round(layout.crop.height() * ratio))
            smooth = Qt.TransformationMode.SmoothTransformation
            small = row.crop.scaled(size, Qt.AspectRatioMode.IgnoreAspectRatio, smooth)
            painter.drawImage(layout.crop, small)
            self._underline_doubts(painter, layout, row)
        painter.setFont(layout.font)
        if row.line.is_blank:
            painter.setPen(quiet(palette))
            words = tr("left out") if row.line.struck_out else tr("not read: type what it says")
            painter.drawText(layout.maths, _MIDDLE, words)
        else:
            colour = quiet(palette) if row.line.struck_out else ink(palette)
            doubt = state_colour(State.DOUBTFUL, palette)
            paint_maths(painter, layout.maths, row.marked, size=layout.maths_size, colour=colour, doubt=doubt)

    def _underline_doubts(self, painter: QPainter, layout: _Layout, row: LineRow) -> None:
        """A line under the ink of each doubtful symbol, with a white rim so that it shows on any paper."""
        assert row.crop is not None
        scale = layout.crop.width() / row.crop.width()
        for box in row.doubt_boxes:
            y = min(layout.crop.top() + box.bottom() * scale + 2, layout.crop.bottom() - 1.5)
            start, end = (QPointF(layout.crop.left() + x * scale, y) for x in (box.left(), box.right()))
            for colour, width in ((WHITE, 4.5), (QColor(DOUBT_ON_PAPER), 2.2)):
                painter.setPen(QPen(colour, width))
                painter.drawLine(start, end)

    def _paint_verdict(self, painter: QPainter, layout: _Layout, row: LineRow, palette: QPalette) -> None:
        if row.style is not None:
            colour = verdict_colour(row.style, palette)
            side = layout.em
            square = QRectF(layout.verdict.left(), layout.verdict.top() + side * 0.12, side, side)
            paint_glyph(painter, square, row.style.shape, colour, ground=ground(palette))
            painter.setFont(layout.bold)
            painter.setPen(colour)
            words = layout.verdict.adjusted(side + 6, 0, 0, 0)
            flags = int(Qt.TextFlag.TextWordWrap) | _MIDDLE
            painter.drawText(words, flags, row.style.word)
        painter.setFont(layout.font)
        if layout.reason.height() > 0:
            painter.setPen(ink(palette))
            painter.drawText(layout.reason, _WRAP, row.reason)
        painter.setPen(state_colour(row.line.state, palette))
        painter.drawText(layout.state, _WRAP, _state_words(row))


def _state_words(row: LineRow) -> str:
    if row.line.struck_out:
        return tr("struck out")
    if row.line.other_by_hand:
        return by_hand_words(row.line)
    if row.line.state is State.DOUBTFUL:
        return tr("doubtful reading ({probability})", probability=f"{row.line.probability:.0%}")
    return tr(STATE_WORDS[row.line.state])


class LineList(QListView):
    """The rows of one document."""

    line_chosen = Signal(int)
    line_moved = Signal(int, int)
    """A line was dragged: its index, and the place that it is to have."""
    symbol_clicked = Signal(int, int, QPoint)
    """Line, place of the symbol among the tokens of its reading, and where on the screen."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._rows = LineRows(self)
        self.setModel(self._rows)
        self.setItemDelegate(_RowPainter(self))
        self.setVerticalScrollMode(QAbstractItemView.ScrollMode.ScrollPerPixel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
        self.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
        self.setUniformItemSizes(False)
        self.setResizeMode(QListView.ResizeMode.Adjust)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAccessibleName(tr("Lines"))
        self.verticalScrollBar().setSingleStep(24)
        self.selectionModel().currentChanged.connect(self._tell_choice)
        self._drag = RowDrag(self)
        self._empty_words = ""

    @property
    def chosen(self) -> int:
        """Index of the chosen line; -1 for none."""
        return self.currentIndex().row()

    def show_document(self, document: Document | None) -> None:
        self._rows.show_document(document)

    def set_claims(self, claim_of: ClaimOf) -> None:
        """Show claims for all values with the verdict on the claim."""
        self._rows.set_claims(claim_of)

    def set_reveal(self, reveal: Reveal) -> None:
        """Tell so much of the slips and no more."""
        self._rows.set_reveal(reveal)
        self.scheduleDelayedItemsLayout()

    def refresh(self) -> None:
        chosen = self.chosen
        self._rows.refresh()
        if self.chosen != chosen and self._rows.rowCount():
            self.choose(min(max(chosen, 0), self._rows.rowCount() - 1))
        self.scheduleDelayedItemsLayout()

    def choose(self, index: int) -> None:
        """Choose a line and bring it into view."""
        self.setCurrentIndex(self._rows.index(index))
        self.scrollTo(self._rows.index(index))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        super().mousePressEvent(event)
        if event.button() is Qt.MouseButton.LeftButton:
            self._drag.press(event.position().toPoint())

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if event.buttons() & Qt.MouseButton.LeftButton:
            self._drag.follow(event.position().toPoint())
        else:
            super().mouseMoveEvent(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self._drag.is_on and event.key() == Qt.Key.Key_Escape:
            self._drag.give_up()
        else:
            super().keyPressEvent(event)

    def say_when_empty(self, words: str) -> None:
        """What stands here while there are no lines."""
        self._empty_words = words
        self.viewport().update()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._rows.rowCount() and self._empty_words:
            painter = QPainter(self.viewport())
            painter.setPen(quiet(self.palette()))
            room = QRectF(self.viewport().rect()).adjusted(3 * _PAD, 3 * _PAD, -3 * _PAD, -3 * _PAD)
            painter.drawText(room, int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignCenter), self._empty_words)
        if self._drag.is_on:
            self._drag.paint(QPainter(self.viewport()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        super().mouseReleaseEvent(event)
        was_dragged, moved = self._drag.is_on, self._drag.release()
        if was_dragged:
            if moved is not None:
                self.line_moved.emit(*moved)
            return
        index = self.indexAt(event.position().toPoint())
        if event.button() is not Qt.MouseButton.LeftButton or not index.isValid():
            return
        row, layout, origin = self._laid(index.row())
        on_crop = event.position() - origin
        if row.crop is None or not layout.crop.contains(on_crop):
            return
        scale = layout.crop.width() / row.crop.width()
        place = (on_crop - layout.crop.topLeft()) / scale + row.crop_origin
        symbol = symbol_at(row.line, place.x(), place.y(), reach=_TARGET / 2 / scale)
        if symbol is not None:
            self.symbol_clicked.emit(index.row(), symbol.place, event.globalPosition().toPoint())

    def place_of_symbol(self, doubt: Doubt) -> QPoint:
        """Where on the screen a symbol of the chosen line is shown, at its foot."""
        row, layout, origin = self._laid(self.chosen)
        if row.crop is None or layout.crop.isEmpty():
            return self.viewport().mapToGlobal((origin + layout.maths.bottomLeft()).toPoint())
        scale = layout.crop.width() / row.crop.width()
        foot = (QPointF(doubt.box.x, doubt.box.y + doubt.box.h) - row.crop_origin) * scale
        return self.viewport().mapToGlobal((origin + layout.crop.topLeft() + foot).toPoint())

    def _laid(self, index: int) -> tuple[LineRow, _Layout, QPointF]:
        rect = self.visualRect(self._rows.index(index))
        row = self._rows.row(index)
        return row, _Layout(row, rect.width(), self.font()), QPointF(rect.topLeft())

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.scheduleDelayedItemsLayout()
        if self.currentIndex().isValid():
            QTimer.singleShot(0, self, self._keep_choice_in_view)

    def _keep_choice_in_view(self) -> None:
        self.executeDelayedItemsLayout()
        self.scrollTo(self.currentIndex())

    def _tell_choice(self, current: QModelIndex, previous: QModelIndex) -> None:
        self.line_chosen.emit(current.row())
