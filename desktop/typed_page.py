"""A typed working laid out as a page, so that it is shown, marked and saved like a photo."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from desktop.document import DeskLine, Document, Lines, State
from desktop.maths import MathsError, typeset
from desktop.maths_picture import paint_maths
from recognition.result import Box

__all__ = ["TYPED", "is_typed", "lay_out", "typed_document"]

TYPED = "Typed working"
_SIZE = 44.0
_MARGIN = 90
_GAP = 34
_WIDTH = 1240
_LEAST_HEIGHT = 700
_INK = QColor("#18233F")


def typed_document(lines: list[str], *, number: int = 1) -> Document:
    """A document of LaTeX lines, all confirmed."""
    name = TYPED if number == 1 else f"{TYPED} {number}"
    document = Document(
        file=name, lines=tuple(DeskLine(box=Box(0, 0, 1, 1), latex=t, state=State.CONFIRMED) for t in lines)
    )
    lay_out(document)
    return document


def is_typed(document: Document) -> bool:
    """Whether a document was typed and has no picture of its own."""
    return document.file.startswith(TYPED)


def lay_out(document: Document) -> None:
    """Draw the lines of a typed document on white paper and give each its box."""
    placed: list[DeskLine] = []
    y = _MARGIN
    for line in document.lines:
        width, height = _measure(line.latex)
        if line.starts_working and placed:
            y += 3 * _GAP
        placed.append(replace(line, box=Box(_MARGIN, y, max(8, round(width)), max(8, round(height)))))
        y += round(height) + _GAP
    document.lines = tuple(placed)
    document.size = (_WIDTH, max(_LEAST_HEIGHT, y + _MARGIN))
    document.picture = _drawn(document.lines, document.size)


def _measure(latex: str) -> tuple[float, float]:
    try:
        maths = typeset(latex, size=_SIZE, colour=_INK.name())
    except MathsError:
        return min(len(latex) * _SIZE * 0.6, _WIDTH - 2 * _MARGIN), _SIZE
    scale = min(1.0, (_WIDTH - 2 * _MARGIN) / maths.width)
    return maths.width * scale, maths.height * scale


def _drawn(lines: Lines, size: tuple[int, int]) -> NDArray[np.uint8]:
    image = QImage(*size, QImage.Format.Format_RGB888)
    image.fill(QColor("#ffffff"))
    painter = QPainter(image)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    font = painter.font()
    font.setPixelSize(round(_SIZE * 0.7))
    painter.setFont(font)
    for line in lines:
        paint_maths(painter, QRectF(*line.box), line.latex, size=_SIZE, colour=_INK)
    painter.end()
    row = image.bytesPerLine()
    pixels = np.frombuffer(image.constBits(), np.uint8).reshape(size[1], row)[:, : 3 * size[0]]
    return pixels.reshape(size[1], size[0], 3).copy()
