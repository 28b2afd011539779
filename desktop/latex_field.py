"""One line of LaTeX: brackets shown in pairs, commands completed, templates filled from place to place."""

from __future__ import annotations

import re
from collections.abc import Sequence

from PySide6.QtCore import QMimeData, QSize, QStringListModel, Qt, Signal
from PySide6.QtGui import (
    QColor,
    QFocusEvent,
    QFont,
    QFontDatabase,
    QFontMetrics,
    QKeyEvent,
    QTextCharFormat,
    QTextCursor,
)
from PySide6.QtWidgets import QApplication, QCompleter, QFrame, QPlainTextEdit, QTextEdit, QWidget

from desktop.brackets import lonely, partners
from desktop.theme import ground, ink, is_dark, mix

__all__ = ["PLACE", "LatexField"]

PLACE = "\N{DOTTED SQUARE}"
"""Stands in a template for the place of the cursor, or of what is selected."""

_TEMPLATES = {
    r"\frac": rf"\frac{{{PLACE}}}{{}}", r"\sqrt": rf"\sqrt{{{PLACE}}}", r"\text": rf"\text{{{PLACE}}}",
    r"\log_": rf"\log_{{{PLACE}}}", r"\overline": rf"\overline{{{PLACE}}}",
}  # fmt: skip
_COMMANDS = sorted((
    *_TEMPLATES, r"\times", r"\div", r"\cdot", r"\pm", r"\mp", r"\le", r"\ge", r"\ne", r"\equiv", r"\approx",
    r"\therefore", r"\Rightarrow", r"\pi", r"\theta", r"\alpha", r"\beta", r"\lambda", r"\mu", r"\infty", r"\sin",
    r"\cos", r"\tan", r"\log", r"\ln", r"\left(", r"\right)",
))  # fmt: skip
_BEGUN = re.compile(r"\\[a-zA-Z]+$")
_EMPTY_GROUP = re.compile(r"\{\}")
_LEAST_LETTERS = 3
"""Characters of a command, its backslash among them, from which on it is completed."""


class LatexField(QPlainTextEdit):
    """A field of one line; Enter is told and not typed."""

    entered = Signal()
    left = Signal()
    stepped = Signal(int)
    focus_changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._places: list[QTextCursor] = []
        self.take_font(QApplication.font())
        self.setLineWrapMode(QPlainTextEdit.LineWrapMode.NoWrap)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setTabChangesFocus(True)
        self._completer = QCompleter(QStringListModel(_COMMANDS, self), self)
        self._completer.setWidget(self)
        self._completer.setCaseSensitivity(Qt.CaseSensitivity.CaseSensitive)
        popup = self._completer.popup()
        assert popup is not None
        self._popup = popup
        self._completer.activated[str].connect(self._complete)  # type: ignore[index]
        self.cursorPositionChanged.connect(self._show_brackets)
        self.textChanged.connect(self._show_brackets)

    def text(self) -> str:
        return self.toPlainText()

    def setText(self, text: str) -> None:
        self.setPlainText(text.replace("\n", " "))
        self.moveCursor(QTextCursor.MoveOperation.End)

    def setCursorPosition(self, position: int) -> None:
        self.select(position, position)

    def select(self, start: int, end: int) -> None:
        """Select a range of characters and set the cursor at its end."""
        cursor = self.textCursor()
        length = len(self.text())
        cursor.setPosition(min(start, length))
        cursor.setPosition(min(end, length), QTextCursor.MoveMode.KeepAnchor)
        self.setTextCursor(cursor)

    def mark_places(self, ranges: Sequence[tuple[int, int]]) -> None:
        """Remember ranges of characters, from left to right; Tab goes from one to the next, also after typing."""
        self._places = [self._range(start, end) for start, end in ranges]

    def go_to_next_place(self) -> bool:
        """Select the next remembered range after the cursor; returns whether there is one."""
        position = self.textCursor().selectionEnd()
        for place in self._places:
            if place.hasSelection() and place.selectionStart() >= position:
                self.setTextCursor(place)
                return True
        return False

    def _range(self, start: int, end: int) -> QTextCursor:
        cursor = QTextCursor(self.document())
        cursor.setPosition(start)
        cursor.setPosition(end, QTextCursor.MoveMode.KeepAnchor)
        return cursor

    def fill_in(self, template: str) -> None:
        """Type a template; what is selected goes to its place, and the cursor to its first empty place."""
        cursor = self.textCursor()
        chosen = cursor.selectedText()
        before, has_place, after = template.partition(PLACE)
        start = cursor.selectionStart()
        cursor.insertText(before + chosen + after)
        position = start + len(before) + len(chosen)
        if has_place and chosen and (empty := _EMPTY_GROUP.search(self.text(), position)) is not None:
            position = empty.start() + 1
        self.setCursorPosition(position)
        self.setFocus()

    def sizeHint(self) -> QSize:
        metrics = QFontMetrics(self.font())
        margins = self.contentsMargins()
        document = round(2 * self.document().documentMargin())
        return QSize(200, max(24, metrics.height() + document + margins.top() + margins.bottom() + 4))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def insertFromMimeData(self, source: QMimeData) -> None:
        self.insertPlainText(" ".join(source.text().split("\n")).strip())

    def keyPressEvent(self, event: QKeyEvent) -> None:
        popup = self._popup
        if popup.isVisible() and event.key() in (
            Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_Escape, Qt.Key.Key_Backtab,
        ):  # fmt: skip
            event.ignore()  # the list of completions takes it
            return
        if event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.entered.emit()
            return
        if event.key() == Qt.Key.Key_Escape:
            self.left.emit()
            return
        if event.key() in (Qt.Key.Key_Up, Qt.Key.Key_Down) and not popup.isVisible():
            self.stepped.emit(-1 if event.key() == Qt.Key.Key_Up else 1)
            return
        super().keyPressEvent(event)
        if event.text():
            self._offer()

    def take_font(self, beside: QFont) -> None:
        """Take letters of one width, a little larger than those beside the field."""
        font = QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont)
        font.setPointSizeF(beside.pointSizeF() * 1.1)
        self.setFont(font)
        self.updateGeometry()

    def focusNextPrevChild(self, next: bool) -> bool:
        """Tab goes to the next place to fill or to look at; after the last it leaves the field."""
        if next and self._popup.isVisible():
            self._complete(self._popup.currentIndex().data() or self._completer.currentCompletion())
            self._popup.hide()
            return True
        if next and (self._go_to_empty_group() or self.go_to_next_place()):
            return True
        return super().focusNextPrevChild(next)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self.focus_changed.emit()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self.focus_changed.emit()

    def _before_cursor(self) -> str:
        return self.text()[: self.textCursor().position()]

    def _offer(self) -> None:
        begun = _BEGUN.search(self._before_cursor())
        if begun is None or len(begun.group()) < _LEAST_LETTERS or begun.group() in _COMMANDS:
            self._popup.hide()
            return
        self._completer.setCompletionPrefix(begun.group())
        if self._completer.completionCount() == 0:
            self._popup.hide()
            return
        self._popup.setCurrentIndex(self._completer.completionModel().index(0, 0))
        place = self.cursorRect()
        place.setWidth(self._popup.sizeHintForColumn(0) + 32)
        self._completer.complete(place)

    def _complete(self, command: str) -> None:
        begun = _BEGUN.search(self._before_cursor())
        if begun is None or not command:
            return
        self.select(begun.start(), self.textCursor().position())
        self.textCursor().removeSelectedText()
        self.fill_in(_TEMPLATES.get(command, command))

    def _go_to_empty_group(self) -> bool:
        empty = _EMPTY_GROUP.search(self.text(), self.textCursor().position())
        if empty is not None:
            self.setCursorPosition(empty.start() + 1)
        return empty is not None

    def _show_brackets(self) -> None:
        text, cursor = self.text(), self.textCursor().position()
        pairs = partners(text)
        marked: list[QTextEdit.ExtraSelection] = []
        near = next((place for place in (cursor - 1, cursor) if place in pairs), None)
        if near is not None:
            shade = QTextCharFormat()
            shade.setBackground(mix(ground(self.palette()), ink(self.palette()), 0.25))
            shade.setFontWeight(700)
            marked += [self._marked(place, shade) for place in (near, pairs[near])]
        alone = QTextCharFormat()
        alone.setForeground(QColor("#FF9AA8" if is_dark(self.palette()) else "#B01030"))
        alone.setUnderlineStyle(QTextCharFormat.UnderlineStyle.WaveUnderline)
        marked += [self._marked(place, alone) for place in lonely(text)]
        self.setExtraSelections(marked)

    def _marked(self, place: int, look: QTextCharFormat) -> QTextEdit.ExtraSelection:
        selection = QTextEdit.ExtraSelection()
        selection.cursor = self._range(place, place + 1)
        selection.format = look
        return selection
