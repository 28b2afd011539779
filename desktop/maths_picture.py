"""Typeset maths drawn with a painter."""

from __future__ import annotations

import threading
from functools import lru_cache

from PySide6.QtCore import QByteArray, QRectF, Qt
from PySide6.QtGui import QColor, QPainter
from PySide6.QtSvg import QSvgRenderer

from desktop.maths import MathsError, compact, typeset

__all__ = ["paint_maths"]


def paint_maths(
    painter: QPainter, area: QRectF, latex: str, *, size: float, colour: QColor, doubt: QColor | None = None
) -> QRectF:
    """Draw a line of maths at the left of an area, in the middle of its height, smaller where it is too wide.

    LaTeX that cannot be typeset is drawn as it was typed.

    Returns:
        The rectangle that was drawn in.
    """
    try:
        maths = typeset(latex, size=round(size, 1), colour=colour.name(), doubt=(doubt or colour).name())
    except MathsError:
        painter.save()
        painter.setPen(colour)
        flags = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        text = painter.fontMetrics().elidedText(compact(latex), Qt.TextElideMode.ElideRight, int(area.width()))
        painter.drawText(area, flags, text)
        painter.restore()
        return area
    scale = min(1.0, area.width() / maths.width, area.height() / maths.height)
    width, height = maths.width * scale, maths.height * scale
    target = QRectF(area.left(), area.center().y() - height / 2, width, height)
    is_window_thread = threading.current_thread() is threading.main_thread()
    renderer = _kept_renderer(maths.svg) if is_window_thread else _renderer(maths.svg)
    renderer.render(painter, target)
    return target


@lru_cache(maxsize=512)
def _kept_renderer(svg: str) -> QSvgRenderer:
    """One renderer for each picture, for the window's thread alone: a renderer belongs to one thread."""
    return _renderer(svg)


def _renderer(svg: str) -> QSvgRenderer:
    return QSvgRenderer(QByteArray(svg.encode()))
