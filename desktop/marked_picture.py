"""The marked picture: the original with its marks, and a strip under it that gives the reasons."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import cv2
import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QImage, QImageWriter, QPainter, QPen

from desktop.answer_words import answer_words
from desktop.document import Document
from desktop.glyphs import paint_glyph
from desktop.language import tr
from desktop.marks import paint_marks, place_marks, text_size
from desktop.maths import MathsError, typeset
from desktop.maths_picture import paint_maths
from desktop.overruled import counted_style
from desktop.verdict_style import STYLES, VerdictStyle
from desktop.whole_file import write_whole
from desktop.wording import TEACHER_DECIDES, heading, line_reason, slip_rows
from recognition.result import Tick, no_tick

__all__ = [
    "image_bytes", "marked_image", "marked_page", "page_image", "page_images", "paint_marked", "paint_photo",
    "paint_strip", "save_png", "whole_size",
]

_INK = QColor("#15191E")
_QUIET = QColor("#50565E")
_PAPER = QColor("#FFFFFF")
_QUICK_PNG = 80
"""Of 100: packs a 12-megapixel photo in a seventh of the time that the default takes, a sixth larger."""
_BAND_PIXELS = 500_000
"""Pixels of the photo that are packed into a PDF in one go."""
_BAND_SEAM = 2
"""Rows by which a band reaches under the next one."""
_LARGEST_SIDE = 4000
"""Pixels of the longer side of a saved picture; a larger original is made smaller."""


_NEEDS_NO_WORDS = (STYLES["start"], STYLES["follows"], STYLES["note"])


@dataclass(frozen=True, slots=True)
class _Item:
    """One row of the strip."""

    label: str = ""
    text: str = ""
    latex: str = ""
    style: VerdictStyle | None = None
    bold: bool = False
    quiet: bool = False


def page_image(picture: NDArray[np.uint8]) -> QImage:
    """RGB, shape (h, w, 3), as an image of Qt that owns its pixels."""
    pixels = np.ascontiguousarray(picture)
    height, width = pixels.shape[:2]
    return QImage(pixels.data, width, height, 3 * width, QImage.Format.Format_RGB888).copy()


def page_images(document: Document) -> tuple[QImage, ...]:
    """The picture of a page and its halvings, largest first, on the document's own pixels: nothing is copied.

    They are to be used no longer than the document's picture and halvings are held.
    """
    if document.picture is None:
        return ()
    height, width = document.picture.shape[:2]
    pixels = np.ascontiguousarray(document.picture)
    whole = QImage(pixels.data, width, height, 3 * width, QImage.Format.Format_RGB888)
    halves = (
        QImage(half.data, half.shape[1], half.shape[0], 4 * half.shape[1], QImage.Format.Format_RGB32)
        for half in document.halvings
    )
    return (whole if pixels is document.picture else whole.copy(), *halves)


def marked_image(document: Document) -> QImage:
    """The original with marks and the strip of reasons."""
    size, scale = _layout(document)
    image = _canvas(document, scale, QSize(round(size.width() * scale), round(size.height() * scale)))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(scale, scale)
    _paint_marks(painter, document)
    paint_strip(painter, document)
    painter.end()
    return image


def paint_marked(painter: QPainter, document: Document) -> None:
    """Draw the picture, its marks and the strip; the painter's unit is a pixel of the picture."""
    paint_photo(painter, document)
    _paint_marks(painter, document)
    paint_strip(painter, document)


def marked_page(document: Document, *, widest: int) -> QImage:
    """The original with its marks alone, at most so many pixels wide."""
    width, height = document.size
    scale = min(1.0, widest / width)
    image = _canvas(document, scale, QSize(max(1, round(width * scale)), max(1, round(height * scale))))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(scale, scale)
    _paint_marks(painter, document)
    painter.end()
    return image


def image_bytes(image: QImage, kind: str = "PNG", *, quality: int = -1) -> bytes:
    """The image as a file's content."""
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QImageWriter(buffer, QByteArray(kind.encode()))
    writer.setQuality(quality)
    if not writer.write(image):
        raise OSError(tr("The picture could not be written as {kind}.", kind=kind))
    return bytes(content.data())


def save_png(document: Document, path: Path, *, tick: Tick = no_tick) -> None:
    """Write the marked picture; in any thread.

    Args:
        document: the page; a snapshot where the user may go on meanwhile.
        path: the file.
        tick: told of (done, total) steps; raises to stop, and then no file is written.
    Raises:
        OSError: the file cannot be written.
    """
    tick(0, 3)
    image = marked_image(document)
    tick(1, 3)
    content = image_bytes(image, quality=_QUICK_PNG)
    tick(2, 3)
    write_whole(path, content)


def whole_size(document: Document) -> QSizeF:
    """Size of the picture with the strip under it, in pixels of the picture."""
    width, height = document.size
    return QSizeF(width, height + _strip_height(_strip(document), width, _strip_text(document)))


def _layout(document: Document) -> tuple[QSizeF, float]:
    size = whole_size(document)
    scale = min(1.0, _LARGEST_SIDE / max(size.width(), size.height()))
    if size.width() < 900:  # small pictures are enlarged, or the words would not be legible
        scale = 900 / size.width()
    return size, scale


def _strip(document: Document) -> list[_Item]:
    items: list[_Item] = []
    for verdict in document.verdicts:
        items.append(_Item(text=heading(document, verdict), bold=True))
        for row in slip_rows(document, verdict):
            items.append(_Item(label=row.label, text=row.text, latex=row.latex))
        for place, index in enumerate(verdict.lines):
            style = counted_style(document, index)
            is_told = place == verdict.report.first_slip or style in _NEEDS_NO_WORDS
            if style is None or (is_told and document.lines[index].override is None):
                continue
            reason = line_reason(document, index)
            word = style.word[0].upper() + style.word[1:]
            words = f"{word}. {reason}" if reason else f"{word}."
            items.append(_Item(label=tr("Line {number}", number=index + 1), text=words, style=style))
        if told := answer_words(document, verdict):
            items.append(_Item(label=tr("Answer"), text=told))
    if not document.verdicts:
        items.append(_Item(text=tr("Not checked yet."), bold=True))
    items.append(_Item(text=tr(TEACHER_DECIDES), quiet=True))
    return items


def _strip_text(document: Document) -> float:
    return min(text_size(document), document.size[0] / 36)


def _strip_height(items: Sequence[_Item], width: float, text: float) -> float:
    return sum(_item_height(item, width, text) for item in items) + text * 1.6


def _item_height(item: _Item, width: float, text: float) -> float:
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


def _left(item: _Item, text: float) -> float:
    if not item.label:
        return text
    return text * 9.5


def _canvas(document: Document, scale: float, size: QSize) -> QImage:
    """White paper of that size with the photo at its top; made by code that lets the window's thread run."""
    image = QImage(size, QImage.Format.Format_RGB32)
    pixels = np.frombuffer(image.bits(), np.uint8).reshape(size.height(), size.width(), 4)
    if document.picture is None:
        pixels[:] = 255
        return image
    height = min(size.height(), max(1, round(document.size[1] * scale)))
    way = cv2.INTER_AREA if scale < 1 else cv2.INTER_CUBIC
    photo = document.picture
    if (photo.shape[1], photo.shape[0]) != (size.width(), height):
        photo = np.asarray(cv2.resize(photo, (size.width(), height), interpolation=way), np.uint8)
    cv2.cvtColor(photo, cv2.COLOR_RGB2BGRA, dst=pixels[:height])
    pixels[height:] = 255
    return image


def paint_photo(painter: QPainter, document: Document, tick: Tick = no_tick) -> None:
    """Draw the photo in bands, each short enough to let the window's thread run; the next covers a band's seam."""
    if document.picture is None:
        return
    height, width = document.picture.shape[:2]
    rows = max(16, _BAND_PIXELS // width)
    for top in range(0, height, rows):
        tick(top, height)
        band = np.ascontiguousarray(document.picture[top : top + rows + _BAND_SEAM])
        image = QImage(band.data, width, len(band), 3 * width, QImage.Format.Format_RGB888)
        painter.drawImage(QRectF(0, top, width, len(band)), image)


def _paint_marks(painter: QPainter, document: Document) -> None:
    paint_marks(painter, place_marks(document), text=text_size(document))


def paint_strip(painter: QPainter, document: Document) -> None:
    """Draw the strip of reasons under the picture."""
    strip = _strip(document)
    width, height = document.size
    text = _strip_text(document)
    painter.fillRect(QRectF(0, height, width, 1e5), _PAPER)
    painter.setPen(QPen(_QUIET, max(1.0, text * 0.08)))
    painter.drawLine(0, height, width, height)
    y = height + text * 0.6
    for item in strip:
        y = _paint_item(painter, item, y, width, text)


def _paint_item(painter: QPainter, item: _Item, y: float, width: float, text: float) -> float:
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
