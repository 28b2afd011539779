"""Editing one line: its other readings, its LaTeX, how that looks, and where it does not parse."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QIcon, QPainter, QPalette, QPixmap
from PySide6.QtWidgets import QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from checker.errors import InputError
from desktop.document import DeskLine, State
from desktop.doubts import doubts_of, range_of
from desktop.keypad import Keypad
from desktop.latex_field import LatexField
from desktop.maths import MathsError, plain, tidy, typeset
from desktop.maths_picture import paint_maths
from desktop.preview import Preview
from desktop.theme import ink, quiet, state_colour

__all__ = ["LineEditor", "parse_problem"]

_LEAST_PROBABILITY = 0.005
_MOST_CANDIDATES = 5


def parse_problem(latex: str) -> tuple[str, int] | None:
    """Why a line cannot be checked as it stands, and the character where; None when it can."""
    from checker.syntax import parse_line
    from desktop.workings import split_number

    label, rest = split_number(latex)
    try:
        parse_line(rest)
    except InputError as exc:
        position = getattr(exc, "position", len(rest)) + len(label)
        return plain(str(exc)), min(position, len(latex))
    return None


class LineEditor(QWidget):
    """Shows the chosen line; tells when the user confirms a reading. Holds only what is being typed."""

    confirmed = Signal(int, str)
    abandoned = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._index = -1
        self._line: DeskLine | None = None
        self._warned_of: str | None = None
        self._title = QLabel()
        self._title.setTextFormat(Qt.TextFormat.PlainText)
        self._buttons = [self._candidate_button(number) for number in range(_MOST_CANDIDATES)]
        self._field = LatexField()
        self._field.setAccessibleName("LaTeX of the line")
        self._field.setPlaceholderText("What does the line say? LaTeX, for example 2x^2-3x=5")
        self._field.textChanged.connect(self._look_again)
        self._field.focus_changed.connect(self._look_again)
        self._field.entered.connect(self.confirm)
        self._field.left.connect(self._give_up)
        self._preview = Preview()
        self.keypad = Keypad()
        self.keypad.pressed.connect(self._field.fill_in)
        self.keypad.hide()
        self._problem = QLabel()
        self._problem.setWordWrap(True)
        self._problem.setTextFormat(Qt.TextFormat.PlainText)
        self._keys = QPushButton("Keypad")
        self._keys.setToolTip("Keys for fractions, powers, roots and signs (Ctrl+K)")
        self._keys.setCheckable(True)
        self._keys.toggled.connect(self.keypad.setVisible)
        self._confirm = QPushButton("Confirm (Enter)")
        self._confirm.clicked.connect(self.confirm)
        row = QHBoxLayout()
        row.addWidget(self._field, 1)
        row.addWidget(self._keys)
        row.addWidget(self._confirm)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(12, 8, 12, 10)
        layout.setSpacing(6)
        layout.addWidget(self._title)
        for button in self._buttons:
            layout.addWidget(button)
        layout.addLayout(row)
        layout.addWidget(self.keypad)
        layout.addWidget(self._preview)
        layout.addWidget(self._problem)
        self.show_line(-1, None)

    @property
    def has_edit(self) -> bool:
        """Whether something was typed that is not yet confirmed."""
        return self._line is not None and self._field.text().strip() != tidy(self._line.latex)

    @property
    def text(self) -> str:
        return self._field.text()

    def take_edit(self) -> tuple[int, str] | None:
        """Hand over what was typed and not confirmed, with the line's index, and forget it; None for nothing."""
        typed = (self._index, self._field.text().strip()) if self.has_edit and self._field.text().strip() else None
        self.show_line(-1, None)
        return typed

    @property
    def offered(self) -> int:
        """How many readings there are to choose from."""
        return len(self._offered())

    def show_line(self, index: int, line: DeskLine | None) -> None:
        """Show a line; what was typed and not confirmed is gone."""
        self._index, self._line, self._warned_of = index, line, None
        self.setEnabled(line is not None)
        self._field.setText("" if line is None else tidy(line.latex))
        self._show_candidates()
        self._title.setText(self._title_text())
        colour = quiet(self.palette()) if line is None else state_colour(line.state, self.palette())
        palette = self._title.palette()
        palette.setColor(QPalette.ColorRole.WindowText, colour)
        self._title.setPalette(palette)
        self._look_again()

    def edit(self) -> None:
        """Put the cursor into the LaTeX: on the first doubtful symbol, or on all of it when none is."""
        self._field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        places = () if self._line is None or self.has_edit else self._doubtful_ranges()
        if places:
            self._field.select(*places[0])
        else:
            self._field.selectAll()

    def edit_symbol(self, place: int) -> None:
        """Put the cursor on a symbol of the reading."""
        found = None if self._line is None else range_of(self._line, place)
        self.edit()
        if found is not None:
            self._field.select(*found)

    def write(self, latex: str) -> None:
        """Put other LaTeX into the field; it is not confirmed yet."""
        self._field.setText(latex)

    def toggle_keypad(self) -> None:
        """Show or hide the keypad."""
        self._keys.toggle()
        if self._keys.isChecked():
            self._field.setFocus()

    def _doubtful_ranges(self) -> list[tuple[int, int]]:
        assert self._line is not None
        found = (range_of(self._line, doubt.place) for doubt in doubts_of(self._line))
        return [place for place in found if place is not None]

    def _give_up(self) -> None:
        self.show_line(self._index, self._line)
        self.abandoned.emit()

    def choose_candidate(self, number: int) -> None:
        """Take another reading, counted from 0, as the right one."""
        if self._line is not None and number < len(self._offered()):
            self.confirmed.emit(self._index, self._offered()[number])

    def confirm(self) -> None:
        """Confirm what stands in the field; what does not parse is asked about once, at the place where it fails."""
        if self._line is None:
            return
        text = self._field.text().strip()
        if not text:
            self._field.setFocus()
            self._say("Type what the line says, or leave the line out (Ctrl+L).")
            return
        problem = parse_problem(text)
        if problem is not None and self._warned_of != text:
            self._warned_of = text
            self._field.setFocus()
            self._field.setCursorPosition(problem[1])
            self._say(f"{problem[0]} Press Enter again to keep it as it is.")
            return
        same = text == tidy(self._line.latex)
        known = next((c.latex for c in self._line.candidates if tidy(c.latex) == text), text)
        self.confirmed.emit(self._index, self._line.latex if same else known)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.PaletteChange and hasattr(self, "_buttons"):
            self._show_candidates()

    def _title_text(self) -> str:
        if self._line is None:
            return "Choose a line to see its readings."
        words = {
            State.UNREAD: "could not be read. Type what it says.",
            State.DOUBTFUL: "is doubtful. Which reading is right?",
            State.READ: "as it was read. Enter confirms it.",
            State.CONFIRMED: "is confirmed.",
        }
        return f"Line {self._index + 1} {words[self._line.state]}"

    def _offered(self) -> list[str]:
        if self._line is None:
            return []
        likely = [c for c in self._line.candidates if c.probability >= _LEAST_PROBABILITY and c.latex.strip()]
        return [c.latex for c in likely[:_MOST_CANDIDATES]]

    def _show_candidates(self) -> None:
        offered = self._offered() if self._line is not None else []
        chances = {c.latex: c.probability for c in self._line.candidates} if self._line is not None else {}
        for number, button in enumerate(self._buttons):
            button.setVisible(number < len(offered) and len(offered) > 1)
            if number < len(offered):
                latex = offered[number]
                icon = self._icon(f"{number + 1}", latex, f"{chances[latex]:.0%}")
                button.setIcon(QIcon(icon))
                button.setIconSize(icon.deviceIndependentSize().toSize())
                button.setAccessibleName(f"Reading {number + 1}: {plain(tidy(latex))}, {chances[latex]:.0%}")
                button.setToolTip(f"Take this reading (key {number + 1})")

    def _candidate_button(self, number: int) -> QPushButton:
        button = QPushButton()
        button.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Fixed)
        button.setFlat(True)
        button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        button.setStyleSheet("text-align: left; padding: 2px 6px;")
        button.clicked.connect(lambda: self.choose_candidate(number))
        return button

    def _icon(self, key: str, latex: str, chance: str) -> QPixmap:
        em = self.fontMetrics().height()
        try:
            height = min(max(typeset(latex, size=round(em * 1.05, 1)).height, em * 1.2), em * 2.4)
        except MathsError:
            height = em * 1.2
        width = max(240, self.width() - 44)
        ratio = self.devicePixelRatioF()
        pixmap = QPixmap(QSize(round(width * ratio), round((height + 4) * ratio)))
        pixmap.setDevicePixelRatio(ratio)
        pixmap.fill(Qt.GlobalColor.transparent)
        painter = QPainter(pixmap)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setFont(self.font())
        painter.setPen(quiet(self.palette()))
        area = QRectF(0, 0, width, height + 4)
        cap = QRectF(1, area.center().y() - em * 0.6, em * 1.15, em * 1.2)
        painter.drawRoundedRect(cap, 3, 3)
        painter.drawText(cap, int(Qt.AlignmentFlag.AlignCenter), key)
        painter.drawText(area, int(Qt.AlignmentFlag.AlignVCenter) | int(Qt.AlignmentFlag.AlignRight), chance)
        middle = area.adjusted(em * 1.15 + 12, 0, -em * 3.4, 0)
        paint_maths(painter, middle, latex, size=em * 1.05, colour=ink(self.palette()))
        painter.end()
        return pixmap

    def _look_again(self) -> None:
        text = self._field.text().strip()
        self._preview.show_latex(text)
        self._preview.setVisible(self._field.hasFocus() or self.has_edit)
        if self._line is None or not text:
            self._say("")
            return
        problem = parse_problem(text)
        self._say("" if problem is None else problem[0])

    def _say(self, sentence: str) -> None:
        self._problem.setText(sentence)
        self._problem.setVisible(bool(sentence))
