"""What else a symbol may be, to choose from by number."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QMenu, QWidget

from desktop.language import tr
from desktop.maths import plain

__all__ = ["SymbolMenu"]


class SymbolMenu(QMenu):
    """Offers other signs in place of one; the digits choose."""

    chosen = Signal(str)
    other_wanted = Signal()

    def __init__(self, symbol: str, others: Sequence[tuple[str, float]], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.addSection(tr("Read as {symbol}. Or is it", symbol=plain(symbol)))
        for number, (text, weight) in enumerate(others, start=1):
            chance = f"   ({weight:.0%})" if weight >= 0.005 else ""
            action = self.addAction(f"&{number}   {plain(text)}{chance}")
            action.triggered.connect(lambda checked=False, text=text: self.chosen.emit(text))
        if others:
            self.addSeparator()
            self.setActiveAction(self.actions()[1])
        self.addAction(tr("&Other: type it")).triggered.connect(self.other_wanted)
