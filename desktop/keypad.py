"""Keys for those who do not know LaTeX: fraction, power, root, signs and Greek letters."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QIcon, QPainter, QPixmap
from PySide6.QtWidgets import QGridLayout, QToolButton, QWidget

from desktop.language import tr, tr_later
from desktop.latex_field import PLACE
from desktop.maths import typeset
from desktop.maths_picture import paint_maths
from desktop.theme import ink

__all__ = ["KEYS", "Keypad"]

_COLUMNS = 11
_LEAST_TARGET = 28


@dataclass(frozen=True, slots=True)
class PadKey:
    """One key: how it looks, what it types, what it is called."""

    look: str
    types: str
    name: str


KEYS = (
    PadKey(r"\frac{a}{b}", rf"\frac{{{PLACE}}}{{}}", tr_later("fraction")),
    PadKey("a^n", rf"^{{{PLACE}}}", tr_later("power")),
    PadKey("a^2", "^2", tr_later("squared")),
    PadKey(r"\sqrt{a}", rf"\sqrt{{{PLACE}}}", tr_later("root")),
    PadKey(r"\sqrt[n]{a}", rf"\sqrt[]{{{PLACE}}}", tr_later("nth root")),
    PadKey("a_n", rf"_{{{PLACE}}}", tr_later("index")),
    PadKey("(a)", f"({PLACE})", tr_later("brackets")),
    PadKey(r"\pm", r"\pm ", tr_later("plus or minus")),
    PadKey(r"\times", r"\times ", tr_later("times")),
    PadKey(r"\div", r"\div ", tr_later("divided by")),
    PadKey(r"\cdot", r"\cdot ", tr_later("dot")),
    PadKey("=", "=", tr_later("equals")),
    PadKey(r"\ne", r"\ne ", tr_later("not equal")),
    PadKey(r"\le", r"\le ", tr_later("less than or equal")),
    PadKey(r"\ge", r"\ge ", tr_later("greater than or equal")),
    PadKey(r"\equiv", r"\equiv ", tr_later("identical to")),
    PadKey(r"\Rightarrow", r"\Rightarrow ", tr_later("implies")),
    PadKey(r"\pi", r"\pi ", tr_later("pi")),
    PadKey(r"\theta", r"\theta ", tr_later("theta")),
    PadKey(r"\alpha", r"\alpha ", tr_later("alpha")),
    PadKey(r"\beta", r"\beta ", tr_later("beta")),
    PadKey(r"\lambda", r"\lambda ", tr_later("lambda")),
)


class Keypad(QWidget):
    """Tells what a key types; the cursor stays in the field."""

    pressed = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(tr("Keypad"))
        grid = QGridLayout(self)
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setSpacing(3)
        self.buttons: dict[str, QToolButton] = {}
        for number, key in enumerate(KEYS):
            button = QToolButton()
            button.setToolTip(tr(key.name))
            button.setAccessibleName(tr(key.name))
            button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
            button.setMinimumSize(_LEAST_TARGET, _LEAST_TARGET)
            button.clicked.connect(lambda checked=False, types=key.types: self.pressed.emit(types))
            grid.addWidget(button, number // _COLUMNS, number % _COLUMNS)
            self.buttons[key.name] = button
        self._draw()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.FontChange) and hasattr(self, "buttons"):
            self._draw()

    def _draw(self) -> None:
        em = self.fontMetrics().height()
        ratio = self.devicePixelRatioF()
        side = round(em * 1.7)
        colour = ink(self.palette())
        for key, button in zip(KEYS, self.buttons.values(), strict=True):
            pixmap = QPixmap(QSize(round(side * ratio), round(side * ratio)))
            pixmap.setDevicePixelRatio(ratio)
            pixmap.fill(Qt.GlobalColor.transparent)
            painter = QPainter(pixmap)
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            size = em * 0.95
            left = max(1.0, (side - typeset(key.look, size=size).width) / 2)
            paint_maths(painter, QRectF(left, 1, side - 1 - left, side - 2), key.look, size=size, colour=colour)
            painter.end()
            button.setIcon(QIcon(pixmap))
            button.setIconSize(QSize(side, side))
