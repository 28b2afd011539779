"""The paper under the pen: squared or ruled, with the ink, what is selected, and the marks of the checker."""

from __future__ import annotations

import math
import time
from collections.abc import Sequence

import numpy as np
from PySide6.QtCore import QPointF, QRect, QRectF, Qt, Signal
from PySide6.QtGui import (
    QImage,
    QPainter,
    QPaintEvent,
    QPen,
    QPolygonF,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import QWidget

from desktop.language import tr
from desktop.marks import Mark, paint_marks
from desktop.pen_choice import CHOSEN, StrokeChoice
from desktop.pen_drawing import INK, THICKEST, Background, draw_paper, draw_piece, draw_stroke
from desktop.pen_input import PenInput, PenPoint, PenTool
from desktop.pen_keys import PenKeys
from desktop.pen_page import PIXELS_A_MM, erased, moved, scratched, within_lasso
from recognition.ink import Stroke

__all__ = ["PenCanvas"]

_ERASER_MM = 2.0
_LEAST_SCALE, _LARGEST_SCALE = 0.3, 4.0


class PenCanvas(QWidget):
    """Shows strokes and takes new ones; what changed is told with all strokes as they are then."""

    strokes_changed = Signal(object, str)
    pen_down = Signal()
    pen_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setAccessibleName(tr("Paper"))
        self.setCursor(Qt.CursorShape.CrossCursor)
        self.background = Background.SQUARED
        self.latencies_ms: list[tuple[float, float]] = []
        """From each pen event to the end of the paint that shows it, newest last: by the clock, and the processor time
        of this thread; for measuring."""
        self._strokes: tuple[Stroke, ...] = ()
        self._marks: tuple[Mark, ...] = ()
        self._mark_text = 20.0
        self._page = (1140, 1620)
        self._scale, self._offset = 1.0, QPointF(0, 0)
        self._fits_width = True
        self._layer = QImage()
        self._tool = PenTool.WRITE
        self._points: list[PenPoint] = []
        self._gone: set[int] = set()
        self._choice = StrokeChoice()
        self._moving: QPointF | None = None
        self._shift = QPointF(0, 0)
        self._rubber: QPointF | None = None
        self._event_times: list[tuple[float, float]] = []
        self._keys = PenKeys(self)
        self.input = PenInput(
            self, begin=self._begin, extend=self._extend, end=self._end, hover=self._hover, drag=self.drag
        )

    # What is shown -----------------------------------------------------------------------------------------------

    def show_strokes(self, strokes: tuple[Stroke, ...], page: tuple[int, int]) -> None:
        """Show other strokes."""
        if strokes is not self._strokes or page != self._page:
            if strokes is not self._strokes:
                self._choice = StrokeChoice()
            self._strokes, self._page = strokes, page
            self._draw_all()

    def show_marks(self, marks: Sequence[Mark], text: float) -> None:
        """Show marks beside the writing."""
        self._marks, self._mark_text = tuple(marks), text
        self.update()

    def set_background(self, background: Background) -> None:
        self.background = background
        self._draw_all()

    def fit_width(self) -> None:
        """Show the page as wide as the widget."""
        self._fits_width = True
        self._scale = min(max(self.width() / self._page[0], _LEAST_SCALE), _LARGEST_SCALE)
        self._keep_in_view()
        self._draw_all()

    def zoom(self, factor: float, about: QPointF | None = None) -> None:
        place = about or QPointF(self.rect().center())
        self.drag(QPointF(0, 0), factor, place)

    def drag(self, by: QPointF, factor: float, about: QPointF) -> None:
        """Move the paper and zoom it about a place of the widget."""
        wanted = min(max(self._scale * factor, _LEAST_SCALE), _LARGEST_SCALE)
        held = (about - by - self._offset) / self._scale
        self._fits_width = self._fits_width and factor == 1.0
        self._scale = wanted
        self._offset = about - held * wanted
        self._keep_in_view()
        self._draw_all()

    def to_page(self, place: QPointF) -> QPointF:
        """A place of the widget in pixels of the page."""
        return (place - self._offset) / self._scale

    def from_page(self, place: QPointF) -> QPointF:
        return place * self._scale + self._offset

    # Selecting ---------------------------------------------------------------------------------------------------

    @property
    def chosen(self) -> tuple[int, ...]:
        """Numbers of the selected strokes."""
        return self._choice.numbers

    def select_all(self) -> None:
        self._choose(StrokeChoice.of(range(len(self._strokes))))

    def select_none(self) -> None:
        self._choose(StrokeChoice())

    def step_selection(self, by: int) -> None:
        """Select the next (1) or the previous (-1) stroke in the order of writing."""
        self._choose(self._choice.stepped(by, len(self._strokes)))

    def extend_selection(self, by: int) -> None:
        """Take one stroke more into the selection (1), or one less (-1)."""
        self._choose(self._choice.extended(by, len(self._strokes)))

    def _choose(self, choice: StrokeChoice) -> None:
        self._choice = choice
        words = tr("{count} of {total} strokes selected", count=len(choice.numbers), total=len(self._strokes))
        self.setAccessibleDescription(words if choice.numbers else "")
        if choice.numbers:
            self._bring_into_view(choice.rect(self._strokes))
        self.update()

    def _bring_into_view(self, rect: QRectF) -> None:
        """Move the paper no further than it must be to show a part of it."""
        shown = QRectF(self.from_page(rect.topLeft()), self.from_page(rect.bottomRight()))
        room = QRectF(self.rect())
        across = min(0.0, room.right() - shown.right()) or max(0.0, room.left() - shown.left())
        down = min(0.0, room.bottom() - shown.bottom()) or max(0.0, room.top() - shown.top())
        if across or down:
            self.drag(QPointF(across, down), 1.0, room.center())

    def remove_selected(self) -> None:
        """Rub out what is selected."""
        if self._choice.numbers:
            self._tell_without(set(self._choice.numbers), tr("Rub out"))

    def move_selected(self, by: QPointF) -> None:
        """Move what is selected, in pixels of the page."""
        if self._choice.numbers:
            choice = self._choice
            strokes = moved(self._strokes, choice.numbers, (by.x(), by.y()))
            self._strokes = strokes
            self.strokes_changed.emit(strokes, tr("Move strokes"))
            self._choice = choice
            self._draw_all()

    # Drawing by hand ---------------------------------------------------------------------------------------------

    def _begin(self, tool: PenTool, point: PenPoint) -> None:
        self._event_times.append((time.perf_counter(), time.thread_time()))
        self.pen_down.emit()
        self._tool, self._points, self._gone = tool, [point], set()
        place = self.to_page(point.place)
        if tool is PenTool.SELECT and self._choice.numbers and self._choice.rect(self._strokes).contains(place):
            self._moving, self._shift = place, QPointF(0, 0)
            self._draw_all()
            return
        self._moving = None
        if self._choice.numbers:
            self._choice = StrokeChoice()
            self.update()
        if tool is PenTool.ERASE:
            self._rub(point)
        else:
            self._update_around(point.place, point.place)

    def _extend(self, point: PenPoint) -> None:
        self._event_times.append((time.perf_counter(), time.thread_time()))
        before = self._points[-1]
        if point.place == before.place:
            return
        self._points.append(point)
        if self._moving is not None:
            self._shift = self.to_page(point.place) - self._moving
            self.update()
        elif self._tool is PenTool.WRITE:
            self._draw_segment()
        elif self._tool is PenTool.ERASE:
            self._rub(point)
        else:
            self.update()

    def _end(self) -> None:
        points, self._points = self._points, []
        if self._moving is not None:
            shift, self._moving, self._shift = self._shift, None, QPointF(0, 0)
            if shift.manhattanLength() > 0:
                self.move_selected(shift)
        elif self._tool is PenTool.WRITE:
            self._write(self._stroke(points))
        elif self._tool is PenTool.ERASE:
            if self._gone:
                self._tell_without(self._gone, tr("Rub out"))
            self._rubber = None
        else:
            self._choose_within(points)
        self._gone = set()
        self.pen_up.emit()
        self.update()

    def _write(self, stroke: Stroke) -> None:
        gone = scratched(self._strokes, stroke)
        if gone:
            self._tell_without(set(gone), tr("Scratch out"))
            return
        self._strokes = (*self._strokes, stroke)
        if len(stroke.points) == 1:
            self._draw_dot(stroke)
        self.strokes_changed.emit(self._strokes, tr("Write"))

    def _tell_without(self, gone: set[int], name: str) -> None:
        self._strokes = tuple(stroke for n, stroke in enumerate(self._strokes) if n not in gone)
        self._choice, self._gone = StrokeChoice(), set()
        self._draw_all()
        self.strokes_changed.emit(self._strokes, name)

    def _choose_within(self, points: Sequence[PenPoint]) -> None:
        places = [self.to_page(point.place) for point in points]
        lasso = np.array([(place.x(), place.y()) for place in places])
        chosen = within_lasso(self._strokes, lasso)
        if not chosen and len(lasso) < 4:  # a tap chooses the stroke under it
            chosen = erased(self._strokes, lasso, reach=_ERASER_MM * PIXELS_A_MM)[-1:]
        self._choice = StrokeChoice.of(chosen)

    def _stroke(self, points: Sequence[PenPoint]) -> Stroke:
        places = [self.to_page(point.place) for point in points]
        return Stroke(
            np.array([(place.x(), place.y()) for place in places], np.float64),
            np.array([point.time for point in points], np.float64),
            np.array([point.pressure for point in points], np.float64),
        )

    def _hover(self, place: QPointF | None, tool: PenTool) -> None:
        rubber = place if tool is PenTool.ERASE else None
        if rubber != self._rubber:
            self._rubber = rubber
            self.update()

    def _rub(self, point: PenPoint) -> None:
        self._rubber = point.place
        place = self.to_page(point.place)
        path = np.array([(place.x(), place.y())])
        if len(self._points) > 1:  # fast rubbers leave gaps between their events
            before = self.to_page(self._points[-2].place)
            steps = max(1, math.ceil((place - before).manhattanLength() / (_ERASER_MM * PIXELS_A_MM)))
            shares = np.linspace(0, 1, steps + 1)[:, None]
            path = np.array([(before.x(), before.y())]) * (1 - shares) + path * shares
        hit = set(erased(self._strokes, path, reach=_ERASER_MM * PIXELS_A_MM)) - self._gone
        if hit:
            self._gone |= hit
            self._draw_all()
        self.update()

    # Painting ----------------------------------------------------------------------------------------------------

    def paintEvent(self, event: QPaintEvent) -> None:
        painter = QPainter(self)
        area = event.rect()
        ratio = self._layer.devicePixelRatio()
        source = QRect(round(area.x() * ratio), round(area.y() * ratio), round(area.width() * ratio),
                       round(area.height() * ratio))  # fmt: skip
        painter.drawImage(area, self._layer, source)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        if self._choice.numbers:
            painter.save()
            painter.translate(self._offset)
            painter.scale(self._scale, self._scale)
            self._choice.paint(painter, self._strokes, self._shift, pixel=1 / self._scale)
            painter.restore()
        if self._tool is PenTool.SELECT and self._points and self._moving is None:
            painter.setPen(QPen(CHOSEN, 1.5, Qt.PenStyle.DashLine))
            painter.drawPolyline(QPolygonF([point.place for point in self._points]))
        if self._rubber is not None:
            painter.setPen(QPen(INK, 1.2))
            radius = _ERASER_MM * PIXELS_A_MM * self._scale
            painter.drawEllipse(self._rubber, radius, radius)
        if self._marks:
            seen = QRectF(self.to_page(QPointF(area.topLeft())), self.to_page(QPointF(area.bottomRight())))
            painter.translate(self._offset)
            painter.scale(self._scale, self._scale)
            near = [mark for mark in self._marks if mark.extent.intersects(seen)]
            paint_marks(painter, near, text=self._mark_text)
        painter.end()
        if self._event_times:
            now, cpu = time.perf_counter(), time.thread_time()
            self.latencies_ms += [((now - then) * 1000, (cpu - used) * 1000) for then, used in self._event_times]
            del self.latencies_ms[:-5000]
            self._event_times.clear()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._fits_width:
            self.fit_width()
        else:
            self._keep_in_view()
            self._draw_all()

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(1.0015 ** event.angleDelta().y(), event.position())
        else:
            by = event.pixelDelta() if not event.pixelDelta().isNull() else event.angleDelta() / 2
            self.drag(QPointF(by), 1.0, event.position())
        event.accept()

    def _keep_in_view(self) -> None:
        room = QPointF(self.width() - self._page[0] * self._scale, self.height() - self._page[1] * self._scale)
        x = min(max(self._offset.x(), min(0.0, room.x())), max(0.0, room.x()))
        y = min(max(self._offset.y(), min(0.0, room.y())), 0.0)
        self._offset = QPointF(x, y)

    def _draw_all(self) -> None:
        """Draw paper and ink anew."""
        ratio = self.devicePixelRatioF()
        width, height = max(1, round(self.width() * ratio)), max(1, round(self.height() * ratio))
        if (self._layer.width(), self._layer.height()) != (width, height):
            self._layer = QImage(width, height, QImage.Format.Format_RGB32)
            self._layer.setDevicePixelRatio(ratio)
        self._layer.fill(self.palette().midlight().color())
        painter = self._layer_painter()
        draw_paper(painter, self._page, self.background)
        for number, stroke in enumerate(self._strokes):
            if number not in self._gone and not (self._moving is not None and number in self._choice.numbers):
                draw_stroke(painter, stroke)
        painter.end()
        self.update()

    def _layer_painter(self) -> QPainter:
        painter = QPainter(self._layer)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.translate(self._offset)
        painter.scale(self._scale, self._scale)
        return painter

    def _draw_segment(self) -> None:
        """Add the newest piece of the open stroke to the layer, and show it."""
        painter = self._layer_painter()
        points = self._points[-3:]
        places = [self.to_page(point.place) for point in points]
        draw_piece(painter, places, points[-1].pressure)
        painter.end()
        self._update_around(*(point.place for point in points))

    def _draw_dot(self, stroke: Stroke) -> None:
        painter = self._layer_painter()
        draw_stroke(painter, stroke)
        painter.end()
        self.update()

    def _update_around(self, *places: QPointF) -> None:
        rect = QPolygonF(list(places)).boundingRect()
        room = THICKEST * self._scale + 3
        self.update(rect.adjusted(-room, -room, room, room).toAlignedRect())
