"""A strip over the page that says, in a sentence, what could not be done; it never blocks the window."""

from __future__ import annotations

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

from desktop.language import tr
from desktop.sentences import in_language
from desktop.theme import ground, ink, mix, verdict_colour
from desktop.verdict_style import CHECK_READING

__all__ = ["Notice"]

_MOST_SENTENCES = 6


class Notice(QFrame):
    """Sentences for the user, newest last, until they are closed."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._sentences: list[str] = []
        self._label = QLabel()
        self._label.setWordWrap(True)
        self._label.setTextFormat(Qt.TextFormat.PlainText)
        self._label.setTextInteractionFlags(
            Qt.TextInteractionFlag.TextSelectableByMouse | Qt.TextInteractionFlag.TextSelectableByKeyboard
        )
        self._close = QPushButton(tr("Close"))
        self._close.clicked.connect(self.clear)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(12, 6, 8, 6)
        layout.addWidget(self._label, 1)
        layout.addWidget(self._close, 0, Qt.AlignmentFlag.AlignTop)
        self.setAutoFillBackground(True)
        self.setAccessibleName(tr("Message"))
        self._paint_ground()
        self.hide()

    @property
    def text(self) -> str:
        return self._label.text()

    def say(self, sentence: str) -> None:
        """Add a sentence."""
        sentence = in_language(sentence)
        if sentence not in self._sentences:
            self._sentences = [*self._sentences, sentence][-_MOST_SENTENCES:]
        self._label.setText("\n".join(self._sentences))
        self.show()

    def clear(self) -> None:
        """Take all sentences away."""
        self._sentences = []
        self._label.clear()
        self.hide()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.ApplicationPaletteChange:
            self._paint_ground()

    def _paint_ground(self) -> None:
        self.setPalette(QPalette())
        palette = self.palette()
        tint = mix(ground(palette), verdict_colour(CHECK_READING, palette), 0.18)
        palette.setColor(QPalette.ColorRole.Window, tint)
        palette.setColor(QPalette.ColorRole.WindowText, ink(palette))
        self.setPalette(palette)
