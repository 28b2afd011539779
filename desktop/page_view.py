"""The original page with its lines and marks: zoom to the pointer, drag to move, click a line to choose it."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import (
    QHelpEvent,
    QKeyEvent,
    QMouseEvent,
    QNativeGestureEvent,
    QPainter,
    QPalette,
    QResizeEvent,
    QWheelEvent,
)
from PySide6.QtWidgets import (
    QFrame,
    QGestureEvent,
    QGraphicsItem,
    QGraphicsScene,
    QGraphicsView,
    QPinchGesture,
    QToolTip,
    QWidget,
)

from desktop.document import Document
from desktop.language import tr
from desktop.marked_picture import page_image, page_images
from desktop.marks import place_marks
from desktop.overruled import counted_style
from desktop.page_caption import PageCaption, turn_words
from desktop.page_items import LinesItem, PictureItem, line_outline
from desktop.page_tool import PageTool, ToolKind
from desktop.reveal import EVERYTHING, Reveal, shown_reason

__all__ = ["PageView"]

_STEP = 1.25
_LARGEST_SCALE = 8.0
_TARGET = 24.0
"""Screen pixels that a mark is at least wide and high for the pointer."""
_TOOL_KEYS = (
    Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Escape, Qt.Key.Key_T, Qt.Key.Key_Left, Qt.Key.Key_Right,
    Qt.Key.Key_Up, Qt.Key.Key_Down,
)  # fmt: skip


class PageView(QGraphicsView):
    """Shows one document; the wheel with Ctrl, + and -, or two fingers zoom."""

    line_clicked = Signal(int)
    merge_wanted = Signal(int)
    tool_finished = Signal(object)
    """The tool with what was drawn; None when it was given up."""
    _tool: PageTool | None = None  # asked for already while Qt makes the view

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._scene = QGraphicsScene(self)
        self._picture = PictureItem()
        self._picture.setFlag(QGraphicsItem.GraphicsItemFlag.ItemUsesExtendedStyleOption)
        self._lines = LinesItem()
        self._scene.addItem(self._picture)
        self._scene.addItem(self._lines)
        self.setScene(self._scene)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform)
        self.setDragMode(QGraphicsView.DragMode.ScrollHandDrag)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.AnchorUnderMouse)
        self.viewport().setBackgroundRole(QPalette.ColorRole.Midlight)
        self.setBackgroundBrush(Qt.BrushStyle.NoBrush)
        self.setAccessibleName(tr("Page"))
        self.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        self._fits: Callable[[], QRectF] | None = self._writing
        self._pressed: QPointF | None = None
        self._shown: object = None
        self._hint = PageCaption(self.viewport(), at_foot=False)
        self._turned = PageCaption(self.viewport(), at_foot=True)
        self.viewport().setAttribute(Qt.WidgetAttribute.WA_AcceptTouchEvents)
        self.viewport().grabGesture(Qt.GestureType.PinchGesture)
        self._reveal = EVERYTHING

    def show_document(self, document: Document | None) -> None:
        """Show another page, fitted to the view; None for an empty desk."""
        self._lines.prepareGeometryChange()
        self._lines.document = document
        self._lines.chosen = -1
        if self._end_tool() is not None:
            self.tool_finished.emit(None)
        self._show_picture()
        self.refresh()
        self.fit_writing()

    def refresh(self) -> None:
        """Draw lines and marks anew after a change of the document."""
        document = self._lines.document
        if document is not None and document.picture is not self._shown:
            self._show_picture()  # a typed working is drawn anew after each change
        self._turned.say(turn_words(document))
        self._lines.marks = () if document is None else place_marks(document, reveal=self._reveal)
        self._lines.update()
        self._fit_again()

    def set_reveal(self, reveal: Reveal) -> None:
        """Tell so much of the slips and no more."""
        self._reveal = reveal
        self.refresh()

    def choose(self, index: int) -> None:
        """Show which line is chosen, and bring it into view."""
        document = self._lines.document
        self._lines.chosen = index
        self._lines.update()
        if document is not None and 0 <= index < len(document.lines) and self._fits is None:
            self.ensureVisible(QRectF(*document.lines[index].box), 40, 60)

    def start_tool(self, kind: ToolKind, box: QRectF) -> None:
        """Let the user draw a box or a cut; `tool_finished` tells the end."""
        self._end_tool()
        self._tool = PageTool(kind, box, self._scene.sceneRect())
        self._scene.addItem(self._tool)
        self._hint.say(kind.hint)
        self.ensureVisible(box, 20, 20)
        self.setDragMode(QGraphicsView.DragMode.NoDrag)
        self.viewport().setCursor(Qt.CursorShape.CrossCursor)
        self.setFocus()

    def _end_tool(self) -> PageTool | None:
        tool, self._tool = self._tool, None
        self._hint.say("")
        if tool is not None:
            self._scene.removeItem(tool)
            self.setDragMode(QGraphicsView.DragMode.ScrollHandDrag)
            self.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        return tool

    def event(self, event: QEvent) -> bool:
        if (
            self._tool is not None
            and event.type() is QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and event.key() in _TOOL_KEYS
        ):
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if self._tool is None:
            if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and not event.modifiers():
                self._step_line(-1 if event.key() == Qt.Key.Key_Up else 1)
                return
            super().keyPressEvent(event)
        elif event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.tool_finished.emit(self._end_tool())
        elif event.key() == Qt.Key.Key_Escape:
            self._end_tool()
            self.tool_finished.emit(None)
        else:
            self._tool.press(event.key(), event.modifiers(), self._pixel())

    def _step_line(self, step: int) -> None:
        """Choose the next line and tell its verdict where it is marked."""
        document = self._lines.document
        if document is None or not document.lines:
            return
        index = min(max(self._lines.chosen + step, 0), len(document.lines) - 1)
        self.line_clicked.emit(index)
        self.setFocus()
        self._tell(index)

    def _tell(self, index: int) -> None:
        """Show the words on a line beside it, as hovering does."""
        document = self._lines.document
        if document is None or not 0 <= index < len(document.lines):
            return
        places = [mark.label for mark in self._lines.marks if mark.line == index]
        place = places[0] if places else QRectF(*document.lines[index].box)
        QToolTip.showText(self.viewport().mapToGlobal(self.mapFromScene(place.bottomLeft())), self._words(index), self)

    def _pixel(self) -> float:
        """Size of a screen pixel on the page."""
        return 1.0 / (self.transform().m11() or 1.0)

    def fit(self) -> None:
        """Show the whole page."""
        self._fits = self._scene.sceneRect
        self._fit_again()

    def fit_writing(self) -> None:
        """Show the lines and their marks as large as they go."""
        self._fits = self._writing
        self._fit_again()

    def fit_width(self) -> None:
        """Show the page as wide as the view."""
        rect = self._scene.sceneRect()
        if rect.width() > 0:
            self._fits = None
            self._fit_again()
            scale = (self.viewport().width() - 2) / rect.width()
            self.resetTransform()
            self.scale(scale, scale)

    def zoom(self, factor: float) -> None:
        """Zoom about the pointer, between the whole page and eight screen pixels to one of the picture."""
        rect = self._scene.sceneRect()
        if rect.isEmpty():
            return
        now = self.transform().m11()
        whole = self.maximumViewportSize()
        wanted = min(now * factor, _LARGEST_SCALE)
        if factor < 1 and wanted <= min(whole.width() / rect.width(), whole.height() / rect.height(), 1.0):
            self.fit()
            return
        self._fits = None
        self._fit_again()
        self.scale(wanted / now, wanted / now)

    def zoom_in(self) -> None:
        self.zoom(_STEP)

    def zoom_out(self) -> None:
        self.zoom(1 / _STEP)

    def zoom_to_pixels(self) -> None:
        """One pixel of the picture to one of the screen."""
        self.zoom(1.0 / self.transform().m11())

    def wheelEvent(self, event: QWheelEvent) -> None:
        if event.modifiers() & Qt.KeyboardModifier.ControlModifier:
            self.zoom(1.0015 ** event.angleDelta().y())
            event.accept()
        else:
            super().wheelEvent(event)

    def viewportEvent(self, event: QEvent) -> bool:
        if isinstance(event, QNativeGestureEvent) and event.gestureType() is Qt.NativeGestureType.ZoomNativeGesture:
            self.zoom(1.0 + event.value())
            return True
        if isinstance(event, QGestureEvent):
            pinch = event.gesture(Qt.GestureType.PinchGesture)
            if isinstance(pinch, QPinchGesture):
                self._pinch(pinch)
                event.accept()
                return True
        if isinstance(event, QHelpEvent) and event.type() is QEvent.Type.ToolTip:
            index = self._line_at(QPointF(event.pos()))
            QToolTip.showText(event.globalPos(), self._words(index), self)
            return True
        return super().viewportEvent(event)

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if self._tool is not None:
            self._tool.begin(self.mapToScene(event.position().toPoint()))
            return
        self._pressed = event.position()
        super().mousePressEvent(event)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._tool is not None and event.buttons() & Qt.MouseButton.LeftButton:
            self._tool.draw_to(self.mapToScene(event.position().toPoint()))
            return
        super().mouseMoveEvent(event)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._tool is not None:
            if self._tool.is_drawn(self._pixel()):
                self.tool_finished.emit(self._end_tool())
            return
        super().mouseReleaseEvent(event)
        self.viewport().setCursor(Qt.CursorShape.ArrowCursor)
        pressed, self._pressed = self._pressed, None
        if pressed is not None and (event.position() - pressed).manhattanLength() < 6:
            index = self._line_at(event.position())
            if index >= 0 and event.modifiers() & Qt.KeyboardModifier.ShiftModifier:
                self.merge_wanted.emit(index)
            elif index >= 0:
                self.line_clicked.emit(index)
                self._tell(index)

    def _pinch(self, pinch: QPinchGesture) -> None:
        """Zoom about the middle between the fingers."""
        middle = self.viewport().mapFromGlobal(pinch.hotSpot().toPoint())
        held = self.mapToScene(middle)
        self.zoom(pinch.scaleFactor())
        moved = self.mapFromScene(held) - middle
        self.horizontalScrollBar().setValue(self.horizontalScrollBar().value() + moved.x())
        self.verticalScrollBar().setValue(self.verticalScrollBar().value() + moved.y())

    def scrollContentsBy(self, dx: int, dy: int) -> None:
        super().scrollContentsBy(dx, dy)
        self._hint.place()  # Qt moves what lies on the viewport with the page
        self._turned.place()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._hint.place()
        self._turned.place()
        self._fit_again()

    def _show_picture(self) -> None:
        document = self._lines.document
        self._lines.prepareGeometryChange()
        self._shown = None if document is None else document.picture
        if document is None:
            self._picture.show_pictures((), None)
        elif document.picture is None and document.thumbnail is not None:  # until the large one is there
            self._picture.show_pictures((page_image(document.thumbnail),), None, document.size)
        else:
            self._picture.show_pictures(page_images(document), (document.picture, document.halvings))
        room = self._lines.boundingRect()
        if self._fits is None and room.size() != self._scene.sceneRect().size():  # it was turned
            self._fits = self._writing
        self._scene.setSceneRect(room)

    def _fit_again(self) -> None:
        wanted = Qt.ScrollBarPolicy.ScrollBarAsNeeded if self._fits is None else Qt.ScrollBarPolicy.ScrollBarAlwaysOff
        self.setHorizontalScrollBarPolicy(wanted)
        self.setVerticalScrollBarPolicy(wanted)
        rect = QRectF() if self._fits is None else self._fits()
        if not rect.isEmpty():
            self.fitInView(rect, Qt.AspectRatioMode.KeepAspectRatio)

    def _writing(self) -> QRectF:
        """The part of the page that is written on, with the marks and a margin."""
        document = self._lines.document
        if document is None or not document.lines:
            return self._scene.sceneRect()
        every = [QRectF(*line.box) for line in document.lines] + [mark.label for mark in self._lines.marks]
        left, top = min(r.left() for r in every), min(r.top() for r in every)
        right, bottom = max(r.right() for r in every), max(r.bottom() for r in every)
        margin = 0.04 * max(document.size)
        around = QRectF(left, top, right - left, bottom - top).adjusted(-margin, -margin, margin, margin)
        return around.intersected(self._scene.sceneRect())

    def _line_at(self, position: QPointF) -> int:
        document = self._lines.document
        if document is None:
            return -1
        point = self.mapToScene(position.toPoint())
        for mark in self._lines.marks:
            least = _TARGET * self._pixel()
            wider = max(0.0, (least - mark.label.width()) / 2)
            higher = max(0.0, (least - mark.label.height()) / 2)
            if mark.label.adjusted(-wider, -higher, wider, higher).contains(point):
                return mark.line
        for index, line in enumerate(document.lines):
            if line_outline(line).contains(point):
                return index
        return -1

    def _words(self, index: int) -> str:
        document = self._lines.document
        if document is None or index < 0:
            return ""
        style = counted_style(document, index)
        if style is None:
            return tr("Line {number}", number=index + 1)
        reason = shown_reason(document, index, self._reveal)
        return (
            tr("Line {number}: {word}. {reason}", number=index + 1, word=style.word, reason=reason)
            if reason
            else tr("Line {number}: {word}.", number=index + 1, word=style.word)
        )
