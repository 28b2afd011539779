"""A typed working laid out as a page, so that it is shown, marked and saved like a photo."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from desktop.desk_line import DeskLine, Lines, State
from desktop.document import Document
from desktop.maths import MathsError, typeset
from desktop.maths_picture import paint_maths
from desktop.places import token_spans
from recognition.result import Box, Candidate, Token

__all__ = ["TYPED", "is_typed", "lay_out", "typed_document"]

TYPED = "Typed working"
_SIZE = 44.0
_MARGIN = 90
_GAP = 34
_SIGN_SPACE = 0.22 * _SIZE
"""Blank that the typesetter leaves before a sign, in pixels."""
_WIDTH = 1240
_LEAST_HEIGHT = 700
_INK = QColor("#18233F")


def typed_document(lines: list[str], *, number: int = 1) -> Document:
    """A document of LaTeX lines, all confirmed; an empty line starts a new working."""
    name = TYPED if number == 1 else f"{TYPED} {number}"
    typed: list[DeskLine] = []
    for before, latex in pairwise(["", *lines]):
        if latex.strip():
            starts = bool(typed) and not before.strip()
            typed.append(DeskLine(Box(0, 0, 1, 1), latex=latex, state=State.CONFIRMED, starts_working=starts))
    document = Document(file=name, lines=tuple(typed))
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
        box = Box(_MARGIN, y, max(8, round(width)), max(8, round(height)))
        placed.append(replace(line, box=box, candidates=(Candidate(line.latex, 1.0, _tokens(line.latex, box)),)))
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


def _tokens(latex: str, box: Box) -> tuple[Token, ...]:
    """The tokens of a line, each as wide as it makes the line; one inside a fraction or root has no place."""
    tokens: list[Token] = []
    left = 0.0
    whole, _ = _measure(latex)
    for text, _, end in token_spans(latex):
        try:
            right = typeset(latex[:end], size=_SIZE, colour=_INK.name()).width
        except MathsError:
            tokens.append(Token(text, 1.0))
            continue
        if left < right <= whole + 1:
            blank = _SIGN_SPACE if right - left > 3 * _SIGN_SPACE else 0.0
            x, width = round(box.x + left + blank), max(1, round(right - left - blank))
            tokens.append(Token(text, 1.0, Box(x, box.y, width, box.h)))
            left = right
        else:
            tokens.append(Token(text, 1.0))
    return tuple(tokens)


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
