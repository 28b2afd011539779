"""A user who knows what is written on a page, and presses the keys of the real window until it stands there."""

from __future__ import annotations

from collections import Counter
from difflib import SequenceMatcher
from typing import TYPE_CHECKING, Any

from desktop.desk_line import DeskLine, State
from desktop.document import Document
from desktop.maths import tidy

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from desktop.window import Window

__all__ = ["KeyUser"]


class KeyUser:
    """Presses keys in the window, and counts them."""

    def __init__(self, window: Window, document: Document, goal: dict[int, str | None], ways: Counter[str]) -> None:
        self.window = window
        self.document = document
        self.goal = goal
        self.ways = ways
        self.keys = 0

    def confirm_page(self) -> None:
        """Deal with the doubtful lines in the order in which they come, then with sure ones that are wrong."""
        from PySide6.QtCore import Qt

        window, document = self.window, self.document
        for _ in range(4 * len(document.lines)):
            window.list.setFocus()
            if (chosen := window.list.chosen) in self._open() and self._needs_user(chosen):
                self._settle(chosen)
            elif (wrong := self._wrong()) is not None:
                self._walk_to(wrong)
                self._settle(wrong)
            elif (doubtful := document.next_doubtful(chosen)) is not None:
                self._press(Qt.Key.Key_F3)
                assert window.list.chosen == doubtful
            elif document.sure_lines():
                self._press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
                self.ways["all sure at once"] += 1
            else:
                return
        raise AssertionError("the page was not confirmed")

    def _open(self) -> list[int]:
        lines = enumerate(self.document.lines)
        return [i for i, line in lines if line.state is not State.CONFIRMED and not line.struck_out]

    def _needs_user(self, index: int) -> bool:
        return self.document.lines[index].state is not State.READ or self._is_wrong(index)

    def _is_wrong(self, index: int) -> bool:

        return tidy(self.document.lines[index].latex) != self.goal[index]

    def _wrong(self) -> int | None:
        """The nearest line that was read with certainty and wrongly."""
        wrong = [i for i in self._open() if self.document.lines[i].state is State.READ and self._is_wrong(i)]
        return min(wrong, key=lambda i: abs(i - self.window.list.chosen)) if wrong else None

    def _walk_to(self, index: int) -> None:
        from PySide6.QtCore import Qt

        while (chosen := self.window.list.chosen) != index:
            self._press(Qt.Key.Key_Down if index > chosen else Qt.Key.Key_Up, widget=self.window.list)
            assert self.window.list.chosen != chosen

    def _settle(self, index: int) -> None:
        """Take the shortest way to what is written."""
        from PySide6.QtCore import Qt

        wanted = self.goal[index]
        if wanted is None:
            self.ways["left out"] += 1
            self._press(Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier)
            return
        line = self.document.lines[index]
        offered = [tidy(latex) for latex in self.window.editor._offered()]
        if tidy(line.latex) == wanted:
            self.ways["as read"] += 1
            self._press(Qt.Key.Key_Return)
        elif wanted in offered:
            self.ways["other reading"] += 1
            self._press([Qt.Key.Key_1, Qt.Key.Key_2, Qt.Key.Key_3, Qt.Key.Key_4, Qt.Key.Key_5][offered.index(wanted)])
        else:
            self._type(line, wanted)
            if self._is_wrong(index):  # what does not parse is asked about once
                self._press(Qt.Key.Key_Return)

    def _type(self, line: DeskLine, wanted: str) -> None:
        from PySide6.QtCore import Qt

        from desktop.doubts import doubts_of, others_of, with_other

        doubts = doubts_of(line)
        if doubts:
            least = min(doubts, key=lambda doubt: doubt.probability)
            others = [with_other(line, least.place, text) for text, _ in others_of(line, least.place)]
            if wanted in others:
                self.ways["other symbol"] += 1
                self._press(Qt.Key.Key_S)
                self._choose(others.index(wanted))
                self._press(Qt.Key.Key_Return)
                return
        self.ways["typed"] += 1
        self._press(Qt.Key.Key_F2)
        offered = [tidy(latex) for latex in self.window.editor._offered()]
        now = offered.index(tidy(line.latex)) if tidy(line.latex) in offered else 0
        costs = [abs(n - now) + cost_of(text, wanted) for n, text in enumerate(offered)]
        if costs and min(costs) < cost_of(tidy(line.latex), wanted):
            nearest = costs.index(min(costs))
            self._press(Qt.Key.Key_Down if nearest > now else Qt.Key.Key_Up, times=abs(nearest - now))
        self._edit(wanted)
        self._press(Qt.Key.Key_Return)

    def _choose(self, number: int) -> None:
        from PySide6.QtCore import Qt
        from PySide6.QtWidgets import QApplication

        from desktop.symbol_menu import SymbolMenu

        (menu,) = [w for w in QApplication.topLevelWidgets() if isinstance(w, SymbolMenu) and w.isVisible()]
        self._press(Qt.Key(Qt.Key.Key_1.value + number), widget=menu)

    def _edit(self, wanted: str) -> None:
        """Change what stands in the field to what is wanted, piece by piece or as a whole, with the fewest keys."""
        from PySide6.QtCore import Qt

        field = self.window.editor._field
        pieces = pieces_of(field.text(), wanted)
        cursor = field.textCursor()
        has_all = cursor.selectionEnd() - cursor.selectionStart() == len(field.text())
        by_pieces = cost_of(field.text(), wanted) + 4
        if len(wanted) + (0 if has_all else 2) < by_pieces:
            if not has_all:
                self._press(Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
            self._write(wanted)
            return
        grown = 0
        for start, end, new in pieces:
            start, end = start + grown, end + grown
            self._go_to(start, end)
            cursor = field.textCursor()
            if (cursor.selectionStart(), cursor.selectionEnd()) == (start, end) and cursor.hasSelection():
                if not new:
                    self._press(Qt.Key.Key_Delete)
            else:
                assert cursor.position() in (start, end), (cursor.position(), start, end)
                key = Qt.Key.Key_Delete if cursor.position() == start else Qt.Key.Key_Backspace
                self._press(key, times=end - start)
            self._write(new)
            grown += len(new) - (end - start)

    def _go_to(self, start: int, end: int) -> None:
        """Bring the cursor to a piece: it is selected already, Tab selects it, or Home, End and the arrows."""
        from PySide6.QtCore import Qt

        field = self.window.editor._field
        cursor = field.textCursor()
        if (cursor.selectionStart(), cursor.selectionEnd()) == (start, end):
            return
        later = [(c.selectionStart(), c.selectionEnd()) for c in field._places
                 if c.hasSelection() and c.selectionStart() >= cursor.selectionEnd()]  # fmt: skip
        length = len(field.text())
        here = cursor.selectionStart() if cursor.hasSelection() else cursor.position()
        there = cursor.selectionEnd() if cursor.hasSelection() else cursor.position()
        extra = int(cursor.hasSelection())  # the first arrow only takes the selection off
        ways: list[tuple[int, str, int]] = [(1 + start, "home", start), (1 + length - end, "end", end)]
        ways += [(extra + here - goal, "left", goal) for goal in (start, end) if goal <= here]
        ways += [(extra + goal - there, "right", goal) for goal in (start, end) if goal >= there]
        if (start, end) in later and "{}" not in field.text()[cursor.position():]:
            ways.append((later.index((start, end)) + 1, "tab", start))
        keys, way, _ = min(ways)
        if way == "tab":
            self._press(Qt.Key.Key_Tab, times=keys)
        elif way in ("home", "end"):
            self._press(Qt.Key.Key_Home if way == "home" else Qt.Key.Key_End)
            self._press(Qt.Key.Key_Right if way == "home" else Qt.Key.Key_Left, times=keys - 1)
        else:
            self._press(Qt.Key.Key_Left if way == "left" else Qt.Key.Key_Right, times=keys)

    def _write(self, text: str) -> None:
        from PySide6.QtTest import QTest

        self.keys += len(text)
        field = self.window.editor._field
        for sign in text:
            QTest.keyClicks(field, sign)
            field._popup.hide()

    def _press(self, key: Any, modifier: Any = None, *, times: int = 1, widget: QWidget | None = None) -> None:
        from PySide6.QtCore import Qt
        from PySide6.QtTest import QTest

        none = Qt.KeyboardModifier.NoModifier
        for _ in range(times):
            self.keys += 1 if modifier in (None, none) else 2
            QTest.keyClick(widget or self.window.focusWidget() or self.window, key, modifier or none)


def pieces_of(text: str, wanted: str) -> list[tuple[int, int, str]]:
    """What to replace in a text, from left to right: a half-open range of characters, and what comes there."""
    codes = SequenceMatcher(None, text, wanted, autojunk=False).get_opcodes()
    return [(a, b, wanted[c:d]) for kind, a, b, c, d in codes if kind != "equal"]


def cost_of(text: str, wanted: str) -> int:
    """About how many keys it takes to make one text of another."""
    return sum(len(new) + end - start + 2 for start, end, new in pieces_of(text, wanted))
