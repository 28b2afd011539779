"""What hands do to a pen page: pen, eraser, mouse and fingers told apart, palms left out.

The pen's own events are taken and accepted. The mouse events that Qt makes from them are compressed, so nothing is
drawn from these; nor from the mouse while a pen stroke is open. A mouse has no pressure and draws as full pressure.
Fingers move and zoom the paper, but while the pen is near, what touches the screen is a palm.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QGuiApplication, QInputDevice, QMouseEvent, QPointingDevice, QTabletEvent, QTouchEvent
from PySide6.QtWidgets import QWidget

__all__ = ["PenInput", "PenPoint", "PenTool"]

_NEAR_S = 0.5
"""Seconds after its last event in which the pen still counts as near, should its leaving not be told."""
_PALM_PX = 70.0
"""A touch wider than this is a palm."""


class PenTool(StrEnum):
    """What the pen does."""

    WRITE = "write"
    ERASE = "erase"
    SELECT = "select"


@dataclass(frozen=True, slots=True)
class PenPoint:
    """One place of the pen: pixels of the widget, pressure 0 to 1, time in ms."""

    place: QPointF
    pressure: float
    time: float


class PenInput(QObject):
    """Listens on a widget and tells what is drawn; hands are told apart here and nowhere else."""

    def __init__(
        self, widget: QWidget, *, begin: Callable[[PenTool, PenPoint], None], extend: Callable[[PenPoint], None],
        end: Callable[[], None], hover: Callable[[QPointF | None, PenTool], None],
        drag: Callable[[QPointF, float, QPointF], None],
    ) -> None:
        """
        Args:
            begin, extend, end: a stroke with a tool.
            hover: where the pen is over the paper, and with which tool; None when it left.
            drag: fingers moved the paper by so much, zoomed it by a factor, about a place.
        """
        super().__init__(widget)
        self._widget = widget
        self._begin, self._extend, self._end, self._hover, self._drag = begin, extend, end, hover, drag
        self.tool = PenTool.WRITE
        self._stroke_of: QInputDevice.DeviceType | None = None
        self._is_near = False
        self._last_pen = -1e9
        widget.setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        widget.setTabletTracking(True)
        widget.setMouseTracking(True)
        widget.installEventFilter(self)
        application = QGuiApplication.instance()
        assert application is not None
        application.installEventFilter(self)  # the pen's coming near and leaving is told to nothing else

    @property
    def is_pen_near(self) -> bool:
        """Whether the pen is over the screen, so that touches are palms."""
        return self._is_near or time.monotonic() - self._last_pen < _NEAR_S

    @property
    def is_writing(self) -> bool:
        return self._stroke_of is not None

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        kind = event.type()
        if kind is QEvent.Type.TabletEnterProximity:
            self._is_near = True
        elif kind is QEvent.Type.TabletLeaveProximity:
            self._is_near = False
            self._last_pen = time.monotonic()
            self._hover(None, self.tool)
        elif watched is not self._widget:
            return False
        elif isinstance(event, QTabletEvent):
            self._take_pen(event)
            event.accept()
            return True
        elif isinstance(event, QMouseEvent):
            return self._take_mouse(event)
        elif isinstance(event, QTouchEvent):
            self._take_touch(event)
            event.accept()
            return True
        elif kind is QEvent.Type.Leave and not self.is_writing:
            self._hover(None, self.tool)
        return False

    def _take_pen(self, event: QTabletEvent) -> None:
        self._last_pen = time.monotonic()
        tool = self._tool_of(event)
        point = PenPoint(event.position(), event.pressure(), event.timestamp())
        kind = event.type()
        if kind is QEvent.Type.TabletPress and not self.is_writing:
            self._stroke_of = QInputDevice.DeviceType.Stylus
            self._begin(tool, point)
        elif kind is QEvent.Type.TabletMove:
            if self._stroke_of is QInputDevice.DeviceType.Stylus:
                self._extend(point)
            else:
                self._hover(event.position(), tool)
        elif kind is QEvent.Type.TabletRelease and self._stroke_of is QInputDevice.DeviceType.Stylus:
            self._stroke_of = None
            self._end()

    def _tool_of(self, event: QTabletEvent) -> PenTool:
        """The eraser's end rubs out; of the pen's buttons, the first selects, the second rubs out."""
        if event.pointerType() is QPointingDevice.PointerType.Eraser:
            return PenTool.ERASE
        held = event.buttons() | event.button()
        if held & Qt.MouseButton.RightButton:
            return PenTool.SELECT
        if held & Qt.MouseButton.MiddleButton:
            return PenTool.ERASE
        return self.tool

    def _take_mouse(self, event: QMouseEvent) -> bool:
        is_made_by_qt = event.source() is not Qt.MouseEventSource.MouseEventNotSynthesized
        is_pen = event.pointingDevice().type() is not QInputDevice.DeviceType.Mouse
        if is_made_by_qt or is_pen or self._stroke_of is QInputDevice.DeviceType.Stylus:
            event.accept()
            return True
        point = PenPoint(event.position(), 1.0, event.timestamp())
        kind = event.type()
        if kind is QEvent.Type.MouseButtonPress and event.button() is Qt.MouseButton.LeftButton:
            self._widget.setFocus(Qt.FocusReason.MouseFocusReason)
            self._stroke_of = QInputDevice.DeviceType.Mouse
            self._begin(self.tool, point)
        elif kind is QEvent.Type.MouseMove:
            if self._stroke_of is QInputDevice.DeviceType.Mouse:
                self._extend(point)
            else:
                self._hover(event.position(), self.tool)
        elif kind is QEvent.Type.MouseButtonRelease and self._stroke_of is QInputDevice.DeviceType.Mouse:
            self._stroke_of = None
            self._end()
        else:
            return False
        return True

    def _take_touch(self, event: QTouchEvent) -> None:
        points = event.points()
        palm = any(max(p.ellipseDiameters().width(), p.ellipseDiameters().height()) > _PALM_PX for p in points)
        if self.is_pen_near or self.is_writing or palm or event.type() is not QEvent.Type.TouchUpdate:
            return
        now = [p.position() for p in points]
        before = [p.lastPosition() for p in points]
        middle, middle_before = _mean(now), _mean(before)
        factor = 1.0
        if len(points) >= 2:
            apart, apart_before = _apart(now), _apart(before)
            factor = apart / apart_before if apart_before > 1 else 1.0
        self._drag(middle - middle_before, factor, middle)


def _mean(points: list[QPointF]) -> QPointF:
    return QPointF(sum(p.x() for p in points) / len(points), sum(p.y() for p in points) / len(points))


def _apart(points: list[QPointF]) -> float:
    across = points[1] - points[0]
    return float((across.x() ** 2 + across.y() ** 2) ** 0.5)
