"""Where the marks go on a page, and drawing them on the original picture."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from statistics import median

from PySide6.QtCore import QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPainter, QPen, QPolygonF

from desktop.document import Document, WorkingVerdict
from desktop.glyphs import WHITE, paint_glyph, paint_halo_frame
from desktop.language import tr
from desktop.maths import MathsError, typeset
from desktop.maths_picture import paint_maths
from desktop.overruled import counted_style
from desktop.places import span_box
from desktop.reveal import EVERYTHING, GRADES, Reveal
from desktop.sentences import latex_in_language
from desktop.verdict_style import VerdictStyle
from desktop.wording import is_missing
from recognition.result import Box

__all__ = [
    "Mark", "leader_points", "paint_frame", "paint_label", "paint_leader", "paint_marks", "place_marks", "text_size",
]

TEXT_SHARE = 1 / 52
"""Height of the type on a picture, as a share of the square root of its area."""

_SHARE_OF_LINE = 0.28


@dataclass(frozen=True, slots=True)
class Mark:
    """One mark: the verdict on a line, the frame round the term or line (None for none), and its label.

    is_term: whether the frame is round a term and not the whole line.
    """

    line: int
    style: VerdictStyle
    reason: str
    frame: QRectF | None
    label: QRectF
    line_box: QRectF
    advice: str = ""
    should_be: str = ""
    is_term: bool = False

    @property
    def extent(self) -> QRectF:
        """All that the mark may draw on."""
        pad = self.label.height()
        whole = self.label.united(self.line_box)
        return (whole if self.frame is None else whole.united(self.frame)).adjusted(-pad, -pad, pad, pad)


def text_size(document: Document) -> float:
    """Height of the type, in pixels of the picture, that reads well when the whole picture is on a screen.

    It follows the picture's size, and grows with the writing where that fills the picture.
    """
    side = math.sqrt(document.size[0] * document.size[1])
    written = median([line.box.h for line in document.lines] or [0])
    return max(9.0, side * TEXT_SHARE, min(written * _SHARE_OF_LINE, side * 2 * TEXT_SHARE))


def place_marks(document: Document, *, reveal: Reveal = EVERYTHING) -> tuple[Mark, ...]:
    """Work out the marks of a page: the label beside its line where there is room, never over other writing if
    that can be helped.

    Args:
        reveal: how much of a slip is told: the term is framed from the first hint on, the last tells what it should be.
    """
    text = text_size(document)
    page = QRectF(0, 0, *document.size)
    taken = [_rect(line.box) for line in document.lines]
    marks: list[Mark] = []
    for verdict in document.verdicts:
        for place, index in enumerate(verdict.lines):
            mark = _mark(document, verdict, place, text, page, taken, reveal)
            if mark is not None:
                marks.append(mark)
                taken.append(mark.label)
                if mark.frame is not None and index == verdict.first_slip_line:
                    taken.append(mark.frame)
    return tuple(marks)


def paint_marks(painter: QPainter, marks: Sequence[Mark], *, text: float) -> None:
    """Draw marks; the painter's unit is a pixel of the original picture.

    Args:
        painter: on the picture, or on the page view's scene.
        marks: from `place_marks`.
        text: height of the type, from `text_size`.
    """
    for mark in marks:
        if mark.frame is not None:
            paint_frame(painter, mark, text=text)
        paint_leader(painter, mark, text=text)
    for mark in marks:
        paint_label(painter, mark, text=text)


def paint_frame(painter: QPainter, mark: Mark, *, text: float) -> None:
    """Draw the frame of a mark that has one."""
    assert mark.frame is not None
    paint_halo_frame(painter, mark.frame, QColor(mark.style.on_light), width=text * 0.14)


def paint_leader(painter: QPainter, mark: Mark, *, text: float) -> None:
    """Draw the line from what a mark is about to its label, where there is one."""
    points = leader_points(mark, text=text)
    if points:
        _paint_path(painter, points, QColor(mark.style.on_light), text)


def _mark(
    document: Document, verdict: WorkingVerdict, place: int, text: float, page: QRectF, taken: Sequence[QRectF],
    reveal: Reveal,
) -> Mark | None:
    row = verdict.report.lines[place]
    index = verdict.lines[place]
    line = document.lines[index]
    style = counted_style(document, index)
    if style is None or (row.verdict in ("start", "note") and line.override is None):
        return None
    frame = box = None
    grade = reveal.grade(row.slip)
    is_slip = row.verdict == "slip" and (line.override is None or not line.override.is_right)
    if is_slip:
        known = grade > 0 and not verdict.check_reading_first
        box = span_box(line, row.slip.span) if known and row.slip is not None else None
        across, down = text * 0.1, text * 0.2
        frame = _rect(box or line.box).adjusted(-across, -down, across, down)
    elif line.override is None and row.verdict in ("loses", "adds", "undecided", "unreadable"):
        pad = text * 0.15
        frame = _rect(line.box).adjusted(-pad, -pad, pad, pad)
    is_term = is_slip and box is not None
    advice = should_be = ""
    told = is_slip and grade == GRADES and not verdict.check_reading_first
    if told and row.slip is not None and row.slip.should_be:
        advice = tr("missing: ") if is_missing(row.slip) else tr("should be ")
        should_be = latex_in_language(row.slip.should_be)
    size = _label_size(style.short, advice, should_be, text)
    others = [rect for rect in taken if rect != _rect(line.box)]
    label = _free_place(size, _rect(line.box), frame or _rect(line.box), page, others, text)
    return Mark(index, style, row.reason, frame, label, _rect(line.box), advice, should_be, is_term)


def _free_place(
    size: QSizeF, line: QRectF, frame: QRectF, page: QRectF, others: Sequence[QRectF], text: float
) -> QRectF:
    """The place for a label with the least writing under it; beside the line comes first."""
    gap = text * 0.5
    middle = line.center().y() - size.height() / 2
    corners = [
        QPointF(line.right() + gap, middle),
        QPointF(page.right() - size.width() - gap, middle),
        QPointF(line.left() - gap - size.width(), middle),
        QPointF(frame.left(), frame.bottom() + gap / 2),
        QPointF(frame.left(), frame.top() - gap / 2 - size.height()),
        QPointF(line.right() - size.width(), frame.bottom() + gap / 2),
        QPointF(line.right() - size.width(), frame.top() - gap / 2 - size.height()),
    ]
    best, least = None, math.inf
    for rank, corner in enumerate(corners):
        x = min(max(corner.x(), page.left() + 1), max(page.left() + 1, page.right() - size.width() - 1))
        y = min(max(corner.y(), page.top() + 1), max(page.top() + 1, page.bottom() - size.height() - 1))
        rect = QRectF(QPointF(x, y), size)
        covered = sum(_area(rect.intersected(other)) for other in (*others, line, frame)) + rank
        if covered < least:
            best, least = rect, covered
    assert best is not None
    return best


def _label_size(word: str, advice: str, should_be: str, text: float) -> QSizeF:
    metrics = QFontMetricsF(_font(text))
    width = text * 2.1 + metrics.horizontalAdvance(word)
    height = text * 1.6
    if should_be:
        maths = _maths_size(should_be, text)
        second = text * 0.9 + metrics.horizontalAdvance(advice) + maths.width()
        width, height = max(width, second), height + max(text * 1.4, maths.height() + text * 0.4)
    return QSizeF(width, height)


def _maths_size(latex: str, text: float) -> QSizeF:
    try:
        maths = typeset(latex, size=text * 1.05)
    except MathsError:
        return QSizeF(QFontMetricsF(_font(text)).horizontalAdvance(latex), text * 1.3)
    return QSizeF(maths.width, maths.height)


def paint_label(painter: QPainter, mark: Mark, *, text: float) -> None:
    """Draw the label of a mark: its shape, its word and what should be there."""
    colour = QColor(mark.style.on_light)
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.setPen(QPen(colour, text * 0.07))
    painter.setBrush(WHITE)
    painter.drawRoundedRect(mark.label, text * 0.35, text * 0.35)
    square = QRectF(mark.label.left() + text * 0.4, mark.label.top() + text * 0.3, text, text)
    paint_glyph(painter, square, mark.style.shape, colour, ground=WHITE)
    painter.setFont(_font(text))
    painter.setPen(colour)
    first = QRectF(square.right() + text * 0.35, mark.label.top(), mark.label.width(), text * 1.6)
    painter.drawText(first, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, mark.style.short)
    if mark.should_be:
        top = mark.label.top() + text * 1.45
        left, bottom = mark.label.left() + text * 0.45, mark.label.bottom() - text * 0.2
        second = QRectF(left, top, mark.label.width(), bottom - top)
        painter.drawText(second, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, mark.advice)
        advance = QFontMetricsF(_font(text)).horizontalAdvance(mark.advice)
        paint_maths(painter, second.adjusted(advance, 0, 0, 0), mark.should_be, size=text * 1.05, colour=colour)
    painter.restore()


def leader_points(mark: Mark, *, text: float) -> tuple[QPointF, ...]:
    """The line from what a mark is about to its label, which runs under the writing, not through it; empty for none."""
    frame, label = mark.frame, mark.label
    if frame is None:
        if mark.line_box.top() < label.center().y() < mark.line_box.bottom():
            return ()
        start = _nearest_edge(mark.line_box, label.center())
        return start, _nearest_edge(label, start)
    if label.adjusted(-text, -text, text, text).intersects(frame):
        return ()
    level = max(frame.bottom(), mark.line_box.bottom()) + text * 0.22
    start = QPointF(frame.center().x(), frame.bottom())
    is_right = label.left() > frame.center().x()
    if label.top() < level < label.bottom():
        side = label.left() if is_right else label.right()
        return start, QPointF(start.x(), level), QPointF(side, level)
    if frame.top() < label.bottom() <= level:
        foot = label.left() + text if is_right else label.right() - text
        return start, QPointF(start.x(), level), QPointF(foot, level), QPointF(foot, label.bottom())
    start = _nearest_edge(frame, label.center())
    return start, _nearest_edge(label, start)


def _paint_path(painter: QPainter, points: Sequence[QPointF], colour: QColor, text: float) -> None:
    painter.save()
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    for pen_colour, width in ((WHITE, 0.24), (colour, 0.09)):
        painter.setPen(QPen(pen_colour, text * width))
        painter.drawPolyline(QPolygonF(list(points)))
    painter.restore()


def _nearest_edge(rect: QRectF, point: QPointF) -> QPointF:
    return QPointF(min(max(point.x(), rect.left()), rect.right()), min(max(point.y(), rect.top()), rect.bottom()))


def _font(text: float) -> QFont:
    font = QFont()
    font.setPixelSize(max(1, round(text)))
    font.setWeight(QFont.Weight.DemiBold)
    return font


def _rect(box: Box) -> QRectF:
    return QRectF(*box)


def _area(rect: QRectF) -> float:
    return max(0.0, rect.width()) * max(0.0, rect.height())
