"""A line of words over the page, at its head or at its foot; it stays where it is while the page is moved."""

from __future__ import annotations

from PySide6.QtGui import QKeySequence, QPalette
from PySide6.QtWidgets import QLabel, QWidget

from desktop.document import Document
from desktop.language import tr, tr_later
from desktop.standing import Standing

__all__ = ["TURN_LEFT", "TURN_RIGHT", "PageCaption", "key_text", "turn_words"]

TURN_RIGHT, TURN_LEFT = "F7", "Shift+F7"
"""Keys that turn the page by a quarter, in Qt's portable text."""

_ON_ITS_SIDE = tr_later("The picture lay on its side; the page is shown upright. {key} turns it further.")
_ON_ITS_HEAD = tr_later("The picture stood on its head; the page is shown upright. {key} turns it further.")


def turn_words(document: Document | None) -> str:
    """What is said of a page that was turned because its writing told so; empty for any other."""
    if document is None or document.turns % 4 == 0 or document.standing is not Standing.AS_FOUND:
        return ""
    return tr(_ON_ITS_HEAD if document.turns % 4 == 2 else _ON_ITS_SIDE, key=key_text(TURN_RIGHT))


def key_text(key: str) -> str:
    """A key as it is called in the user's language and system."""
    return QKeySequence(key).toString(QKeySequence.SequenceFormat.NativeText)


class PageCaption(QLabel):
    """Words on a ground of their own."""

    def __init__(self, page: QWidget, *, at_foot: bool) -> None:
        super().__init__(page)
        self._page = page
        self._at_foot = at_foot
        self.setWordWrap(True)
        self.setMargin(6)
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.ToolTipBase)
        self.setForegroundRole(QPalette.ColorRole.ToolTipText)
        self.hide()

    def say(self, words: str) -> None:
        """Show words; none hides the line."""
        self.setText(words)
        self.place()
        self.setVisible(bool(words))

    def place(self) -> None:
        """Take the place at the page's edge, as wide as the words at the foot and as the page at the head."""
        width = self._page.width()
        if self._at_foot:
            width = min(width, self.fontMetrics().horizontalAdvance(self.text()) + 2 * self.margin() + 4)
        height = self.heightForWidth(width)
        self.setGeometry(0, self._page.height() - height if self._at_foot else 0, width, height)
