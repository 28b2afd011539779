"""Turning the page that is shown by hand: what it costs is said first, and Undo takes it back."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject
from PySide6.QtWidgets import QMessageBox

from desktop.desk_line import DeskLine, State
from desktop.document import Document
from desktop.language import tr
from desktop.page_changes import TurnPage
from desktop.pen_page import is_pen_page
from desktop.typed_page import is_typed

if TYPE_CHECKING:
    from desktop.window import Window

__all__ = ["Turning", "has_word", "may_be_turned"]


def may_be_turned(document: Document) -> bool:
    """Whether the page is a picture; what is drawn or typed stands as it was written."""
    return document.picture is not None and not is_pen_page(document) and not is_typed(document)


def has_word(line: DeskLine) -> bool:
    """Whether the user has said something about a line that is gone when the lines are found anew."""
    return line.state is State.CONFIRMED or line.override is not None or bool(line.marks)


class Turning(QObject):
    """Turns the page by quarters; its lines are found and read again then."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window

    def right(self) -> None:
        """Turn the page by a quarter, clockwise."""
        self._turn(1)

    def left(self) -> None:
        """Turn the page by a quarter, anticlockwise."""
        self._turn(-1)

    def _turn(self, quarters: int) -> None:
        document = self._window.document
        if document is None or not may_be_turned(document):
            return
        said = sum(has_word(line) for line in document.lines)
        if said and not self._agreed(said):
            return
        name = tr("Turn page right") if quarters > 0 else tr("Turn page left")
        self._window.desk.do(document, TurnPage(quarters, name))

    def _agreed(self, said: int) -> bool:
        """Say what becomes of the lines that the user has dealt with, and ask."""
        words = tr("One line of this page is confirmed or marked by you.") if said == 1 else ""
        words = words or tr("{count} lines of this page are confirmed or marked by you.", count=said)
        box = QMessageBox(self._window)
        box.setIcon(QMessageBox.Icon.Question)
        box.setWindowTitle(tr("Turn page"))
        box.setText(words)
        box.setInformativeText(
            tr("Turning finds and reads all lines of the page anew; that work is put aside, and Undo brings it back.")
        )
        turn = box.addButton(tr("&Turn and read again"), QMessageBox.ButtonRole.AcceptRole)
        stay = box.addButton(tr("&Leave as it is"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(stay)
        box.setEscapeButton(stay)
        box.exec()
        return box.clickedButton() is turn
