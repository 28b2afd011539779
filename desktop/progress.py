"""What the program is busy with, how far it is, and a way to stop it."""

from __future__ import annotations

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QWidget

from desktop.elided_label import ElidedLabel
from desktop.language import tr

__all__ = ["Progress"]


class Progress(QWidget):
    """Shown in the status bar while something is read or checked."""

    stopped = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._doing = ElidedLabel()
        self._bar = QProgressBar()
        self._bar.setMinimumWidth(60)
        self._bar.setMaximumWidth(180)
        self._bar.setTextVisible(False)
        self._bar.setAccessibleName(tr("Progress"))
        stop = QPushButton(tr("Stop"))
        stop.clicked.connect(self.stopped)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(6, 0, 0, 0)
        for widget in (self._doing, self._bar, stop):
            layout.addWidget(widget)
        self.hide()

    @Slot(str, int, int)
    def show_activity(self, name: str, done: int, total: int) -> None:
        """Show what is being done; a total below 2 shows a bar without an end."""
        self._doing.say(name)
        self._bar.setRange(0, total if total > 1 else 0)
        self._bar.setValue(done)
        self.show()
