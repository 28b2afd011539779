"""The marked picture: the original with its marks, and a strip under it that gives the reasons."""

from __future__ import annotations

from pathlib import Path

import cv2
import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QRectF, QSize, QSizeF
from PySide6.QtGui import QColor, QImage, QImageWriter, QPainter

from desktop.document import Document
from desktop.language import tr
from desktop.marks import paint_marks, place_marks, text_size
from desktop.reason_strip import paint_strip, strip_height
from desktop.reveal import EVERYTHING, Reveal
from desktop.whole_file import write_whole
from recognition.result import Tick, no_tick

__all__ = [
    "image_bytes", "marked_image", "marked_page", "page_image", "page_images", "paint_marked", "paint_photo",
    "save_png", "whole_size",
]

_INK = QColor("#15191E")
_QUIET = QColor("#50565E")
_PAPER = QColor("#FFFFFF")
_QUICK_PNG = 80
"""Of 100: packs a 12-megapixel photo in a seventh of the time that the default takes, a sixth larger."""
_BAND_PIXELS = 100_000
"""Pixels of the photo that are packed into a PDF in one go."""
_BAND_SEAM = 2
"""Rows by which a band reaches under the next one."""
_LARGEST_SIDE = 4000
"""Pixels of the longer side of a saved picture; a larger original is made smaller."""


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


def marked_image(document: Document, reveal: Reveal = EVERYTHING) -> QImage:
    """The original with marks and the strip of reasons, which tell of slips as much as is to be told."""
    size, scale = _layout(document, reveal)
    image = _canvas(document, scale, QSize(round(size.width() * scale), round(size.height() * scale)))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.scale(scale, scale)
    _paint_marks(painter, document, reveal)
    paint_strip(painter, document, reveal)
    painter.end()
    return image


def paint_marked(painter: QPainter, document: Document, reveal: Reveal = EVERYTHING) -> None:
    """Draw the picture, its marks and the strip; the painter's unit is a pixel of the picture."""
    paint_photo(painter, document)
    _paint_marks(painter, document, reveal)
    paint_strip(painter, document, reveal)


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


def save_png(
    document: Document, path: Path, *, reveal: Reveal = EVERYTHING, tick: Tick = no_tick
) -> None:
    """Write the marked picture; in any thread.

    Args:
        document: the page; a snapshot where the user may go on meanwhile.
        path: the file.
        reveal: how much of slips is told.
        tick: told of (done, total) steps; raises to stop, and then no file is written.
    Raises:
        OSError: the file cannot be written.
    """
    tick(0, 3)
    image = marked_image(document, reveal)
    tick(1, 3)
    content = image_bytes(image, quality=_QUICK_PNG)
    tick(2, 3)
    write_whole(path, content)


def whole_size(document: Document, reveal: Reveal = EVERYTHING) -> QSizeF:
    """Size of the picture with the strip under it, in pixels of the picture."""
    width, height = document.size
    return QSizeF(width, height + strip_height(document, reveal))


def _layout(document: Document, reveal: Reveal) -> tuple[QSizeF, float]:
    size = whole_size(document, reveal)
    scale = min(1.0, _LARGEST_SIDE / max(size.width(), size.height()))
    if size.width() < 900:  # small pictures are enlarged, or the words would not be legible
        scale = 900 / size.width()
    return size, scale


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


def _paint_marks(painter: QPainter, document: Document, reveal: Reveal = EVERYTHING) -> None:
    paint_marks(painter, place_marks(document, reveal=reveal), text=text_size(document))
