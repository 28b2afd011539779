"""The strip under a marked picture: the verdict on each working, and the reason of each mark."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen

from desktop.answer_words import answer_words
from desktop.document import Document
from desktop.glyphs import paint_glyph
from desktop.language import tr
from desktop.marks import text_size
from desktop.maths import MathsError, typeset
from desktop.maths_picture import paint_maths
from desktop.overruled import counted_style
from desktop.reveal import EVERYTHING, Reveal, shown_reason, shown_rows
from desktop.verdict_style import CARRIED_ON, STYLES, VerdictStyle
from desktop.wording import TEACHER_DECIDES, heading

__all__ = ["paint_strip", "strip_height", "strip_items"]

_INK = QColor("#15191E")
_QUIET = QColor("#50565E")
_PAPER = QColor("#FFFFFF")
_NEEDS_NO_WORDS = (STYLES["start"], STYLES["follows"], STYLES["note"], CARRIED_ON)


@dataclass(frozen=True, slots=True)
class StripItem:
    """One row of the strip."""

    label: str = ""
    text: str = ""
    latex: str = ""
    style: VerdictStyle | None = None
    bold: bool = False
    quiet: bool = False


def strip_height(document: Document, reveal: Reveal = EVERYTHING) -> float:
    """Height of the strip, in pixels of the picture."""
    text = _text(document)
    return sum(_item_height(item, document.size[0], text) for item in strip_items(document, reveal)) + text * 1.6


def strip_items(document: Document, reveal: Reveal = EVERYTHING) -> list[StripItem]:
    """The rows of the strip; of a slip as much as is to be told."""
    items: list[StripItem] = []
    for verdict in document.verdicts:
        items.append(StripItem(text=heading(document, verdict), bold=True))
        for row in shown_rows(document, verdict, reveal):
            items.append(StripItem(label=row.label, text=row.text, latex=row.latex))
        for place, index in enumerate(verdict.lines):
            style = counted_style(document, index)
            is_told = place == verdict.report.first_slip or style in _NEEDS_NO_WORDS
            if style is None or (is_told and document.lines[index].override is None):
                continue
            reason = shown_reason(document, index, reveal)
            word = style.word[0].upper() + style.word[1:]
            words = f"{word}. {reason}" if reason else f"{word}."
            items.append(StripItem(label=tr("Line {number}", number=index + 1), text=words, style=style))
        if told := answer_words(document, verdict, reveal):
            items.append(StripItem(label=tr("Answer"), text=told))
    if not document.verdicts:
        items.append(StripItem(text=tr("Not checked yet."), bold=True))
    items.append(StripItem(text=tr(TEACHER_DECIDES), quiet=True))
    return items


def paint_strip(painter: QPainter, document: Document, reveal: Reveal = EVERYTHING) -> None:
    """Draw the strip of reasons under the picture."""
    strip = strip_items(document, reveal)
    width, height = document.size
    text = _text(document)
    painter.fillRect(QRectF(0, height, width, 1e5), _PAPER)
    painter.setPen(QPen(_QUIET, max(1.0, text * 0.08)))
    painter.drawLine(0, height, width, height)
    y = height + text * 0.6
    for item in strip:
        y = _paint_item(painter, item, y, width, text)


def _text(document: Document) -> float:
    """Height of the strip's type."""
    return min(text_size(document), document.size[0] / 36)


def _item_height(item: StripItem, width: float, text: float) -> float:
    if item.latex:
        try:
            maths = typeset(item.latex, size=round(text * 1.1, 1))
        except MathsError:
            return text * 1.7
        room = width - _left(item, text) - text
        return max(text * 1.7, maths.height * min(1.0, room / maths.width) + text * 0.6)
    metrics = QFontMetricsF(_font(text, bold=item.bold))
    area = QRectF(0, 0, width - _left(item, text) - text, 1e6)
    height = metrics.boundingRect(area, int(Qt.TextFlag.TextWordWrap), item.text).height()
    return height + text * (0.9 if item.bold else 0.45)


def _left(item: StripItem, text: float) -> float:
    if not item.label:
        return text
    return text * 9.5


def _paint_item(painter: QPainter, item: StripItem, y: float, width: float, text: float) -> float:
    height = _item_height(item, width, text)
    left = _left(item, text)
    flags = int(Qt.TextFlag.TextWordWrap) | int(Qt.AlignmentFlag.AlignVCenter) | int(Qt.AlignmentFlag.AlignLeft)
    colour = _QUIET if item.quiet else _INK
    if item.label:
        painter.setFont(_font(text))
        painter.setPen(_QUIET)
        label_left = text
        if item.style is not None:
            mark = QColor(item.style.on_light)
            square = QRectF(text, y + (height - text) / 2, text, text)
            paint_glyph(painter, square, item.style.shape, mark, ground=_PAPER)
            label_left = text * 2.4
            colour = mark
        painter.drawText(QRectF(label_left, y, left - label_left, height), flags, item.label)
    area = QRectF(left, y, width - left - text, height)
    if item.latex:
        painter.setFont(_font(text))
        paint_maths(painter, area, item.latex, size=text * 1.1, colour=_INK)
    else:
        painter.setFont(_font(text, bold=item.bold))
        painter.setPen(colour)
        painter.drawText(area, flags, item.text)
    return y + height


def _font(text: float, *, bold: bool = False) -> QFont:
    font = QFont()
    font.setPixelSize(max(1, round(text)))
    font.setBold(bold)
    return font
