"""What stands where the page will be: how to bring one here, or that one is on its way."""

from __future__ import annotations

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import QLabel, QWidget

from desktop.document import Document
from desktop.language import tr, tr_later
from desktop.page_caption import TURN_RIGHT, key_text
from desktop.pen_page import is_pen_page
from desktop.standing import Standing
from desktop.typed_page import is_typed

__all__ = ["EmptyDesk", "words_for_no_lines"]

_EMPTY = tr_later(
    "Open a photo, scan, PDF or InkML file of worked algebra (Ctrl+O),\n"
    "drop it here, paste a picture (Ctrl+V), or type a working (Ctrl+T)."
)
_READING = tr_later("The first page appears here as soon as its lines are found.")

_WRITE = tr_later("Write on the paper with the pen or the mouse. Each line is read and checked when the pen rests.")
_TYPE = tr_later("No line is left. Ctrl+I adds one to type into.")
_DRAW = tr_later(
    "No line was found on this page. Ctrl+I adds one: draw a box round its writing. "
    "{key} turns the page, if it lies on its side or head."
)
_FINDING = tr_later("The lines of the turned page are being found.")


def words_for_no_lines(document: Document | None) -> str:
    """What is said in place of the lines of a page that has none."""
    if document is None:
        return ""
    if document.standing is Standing.TURNED:
        return tr(_FINDING)
    if is_pen_page(document) or is_typed(document):
        return tr(_WRITE if is_pen_page(document) else _TYPE)
    return tr(_DRAW, key=key_text(TURN_RIGHT))


class EmptyDesk(QLabel):
    """A sentence in the middle of the room."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.setWordWrap(True)
        self.setMargin(24)
        self.tell_reading(False)

    @Slot(bool)
    def tell_reading(self, is_reading: bool) -> None:
        """Say whether a page is on its way."""
        self.setText(tr(_READING) if is_reading else tr(_EMPTY))
