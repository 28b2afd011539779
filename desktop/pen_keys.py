"""What the keys do on the paper: move what is selected or the paper, rub out, select all, let go."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, QObject, QPointF, Qt
from PySide6.QtGui import QKeyEvent

from desktop.pen_page import PIXELS_A_MM

if TYPE_CHECKING:
    from desktop.pen_canvas import PenCanvas

__all__ = ["PenKeys"]

_ARROWS = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1),
}  # fmt: skip
_STEP_MM, _LARGE_STEP_MM = 1.0, 5.0
_PAPER_STEP = 40


class PenKeys(QObject):
    """Takes the keys of the paper before the window's shortcuts, which would remove a line where strokes are meant."""

    def __init__(self, canvas: PenCanvas) -> None:
        super().__init__(canvas)
        self._canvas = canvas
        canvas.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.ShortcutOverride and self._is_own(event):
            event.accept()
            return True
        if isinstance(event, QKeyEvent) and event.type() is QEvent.Type.KeyPress and self._is_own(event):
            self._press(event)
            return True
        return super().eventFilter(watched, event)

    def _is_own(self, event: QKeyEvent) -> bool:
        has_ctrl = event.modifiers() & Qt.KeyboardModifier.ControlModifier
        has_alt = event.modifiers() & Qt.KeyboardModifier.AltModifier
        if event.key() in _ARROWS:
            return not has_ctrl and not has_alt
        is_removal = event.key() in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace, Qt.Key.Key_Escape)
        return is_removal or (event.key() == Qt.Key.Key_A and bool(has_ctrl))

    def _press(self, event: QKeyEvent) -> None:
        canvas, step = self._canvas, _ARROWS.get(Qt.Key(event.key()))
        if step is not None and canvas.chosen:
            is_large = bool(event.modifiers() & Qt.KeyboardModifier.ShiftModifier)
            size = (_LARGE_STEP_MM if is_large else _STEP_MM) * PIXELS_A_MM
            canvas.move_selected(QPointF(step[0] * size, step[1] * size))
        elif step is not None:
            by = QPointF(-step[0] * _PAPER_STEP, -step[1] * _PAPER_STEP)
            canvas.drag(by, 1.0, QPointF(canvas.rect().center()))
        elif event.key() == Qt.Key.Key_A:
            canvas.select_all()
        elif event.key() == Qt.Key.Key_Escape:
            canvas.select_none()
        else:
            canvas.remove_selected()
