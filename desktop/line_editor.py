"""Editing one line: its other readings, its LaTeX, how that looks, and where it does not parse."""

from __future__ import annotations

from dataclasses import replace

from PySide6.QtCore import QEvent, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QIcon, QPainter, QPalette, QPixmap, QResizeEvent
from PySide6.QtWidgets import QBoxLayout, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from checker.errors import InputError
from desktop.desk_line import DeskLine, State
from desktop.doubts import doubts_of, range_of
from desktop.keypad import Keypad
from desktop.language import tr, with_points
from desktop.latex_field import LatexField
from desktop.maths import MathsError, plain, tidy, typeset
from desktop.maths_picture import paint_maths
from desktop.preview import Preview
from desktop.sentences import in_language
from desktop.theme import ink, quiet, state_colour

__all__ = ["LineEditor", "parse_problem"]

_LEAST_PROBABILITY = 0.005
_MOST_CANDIDATES = 5
_LEAST_LETTERS = 30
"""Letters that the field shows at least; with less room the buttons go under it."""


def parse_problem(latex: str) -> tuple[str, int] | None:
    """Why a line cannot be checked as it stands, and the character where; None when it can."""
    from checker.syntax import parse_line
    from desktop.workings import split_number

    label, rest = split_number(latex)
    try:
        parse_line(rest)
    except InputError as exc:
        position = getattr(exc, "position", len(rest)) + len(label)
        return plain(in_language(str(exc))), min(position, len(latex))
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
        self._title.setWordWrap(True)
        self._buttons = [self._candidate_button(number) for number in range(_MOST_CANDIDATES)]
        self._field = LatexField()
        self._field.setAccessibleName(tr("LaTeX of the line"))
        self._field.setPlaceholderText(tr("LaTeX, for example 2x^2-3x=5"))
        self._field.textChanged.connect(self._look_again)
        self._field.focus_changed.connect(self._look_again)
        self._field.entered.connect(self.confirm)
        self._field.left.connect(self._give_up)
        self._field.stepped.connect(self._step_reading)
        self._preview = Preview()
        self.keypad = Keypad()
        self.keypad.pressed.connect(self._field.fill_in)
        self.keypad.hide()
        self._problem = QLabel()
        self._problem.setWordWrap(True)
        self._problem.setTextFormat(Qt.TextFormat.PlainText)
        self._keys = QPushButton(tr("Keypad"))
        self._keys.setToolTip(tr("Keys for fractions, powers, roots and signs (Ctrl+K)"))
        self._keys.setCheckable(True)
        self._keys.toggled.connect(self.keypad.setVisible)
        self._confirm = QPushButton(tr("Confirm (Enter)"))
        self._confirm.clicked.connect(self.confirm)
        self._row = row = QBoxLayout(QBoxLayout.Direction.LeftToRight)
        row.addWidget(self._field, 1)
        beside = QHBoxLayout()
        beside.addStretch(1)
        beside.addWidget(self._keys)
        beside.addWidget(self._confirm)
        row.addLayout(beside)
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
        text = with_points(self._field.text().strip())
        typed = (self._index, text) if self.has_edit and text else None
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
        if self._line is None or self.has_edit:
            self._field.selectAll()
        else:
            self._show_doubts(self._line)

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

    def _step_reading(self, step: int) -> None:
        """Put the next or the previous of the readings into the field, to be changed there."""
        offered = self._offered()
        if self._line is None or not offered:
            return
        written = [tidy(latex) for latex in offered]
        now = written.index(self._field.text()) if self._field.text() in written else -1 if step > 0 else len(offered)
        if 0 <= now + step < len(offered):
            self._field.setText(written[now + step])
            self._show_doubts(replace(self._line, latex=offered[now + step]))

    def _show_doubts(self, line: DeskLine) -> None:
        """Let Tab go through the doubtful symbols of what stands in the field, and select the first."""
        found = (range_of(line, doubt.place) for doubt in doubts_of(line))
        places = [place for place in found if place is not None]
        self._field.mark_places(places)
        if places:
            self._field.select(*places[0])
        else:
            self._field.selectAll()

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
        text = with_points(self._field.text().strip())
        if not text:
            self._field.setFocus()
            self._say(tr("Type what the line says, or leave the line out (Ctrl+L)."))
            return
        problem = parse_problem(text)
        if problem is not None and self._warned_of != text:
            self._warned_of = text
            self._field.setFocus()
            self._field.setCursorPosition(problem[1])
            self._say(tr("{problem} Press Enter again to keep it as it is.", problem=problem[0]))
            return
        same = text == tidy(self._line.latex)
        known = next((c.latex for c in self._line.candidates if tidy(c.latex) == text), text)
        self.confirmed.emit(self._index, self._line.latex if same else known)

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Where the type is large for the width, the buttons go under the field."""
        super().resizeEvent(event)
        beside = self._keys.sizeHint().width() + self._confirm.sizeHint().width()
        is_narrow = self.width() < beside + _LEAST_LETTERS * self._field.fontMetrics().averageCharWidth()
        ways = QBoxLayout.Direction
        self._row.setDirection(ways.TopToBottom if is_narrow else ways.LeftToRight)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.PaletteChange, QEvent.Type.FontChange) and hasattr(self, "_row"):
            self._field.take_font(self.font())
            self._show_candidates()

    def _title_text(self) -> str:
        if self._line is None:
            return tr("Choose a line to see its readings.")
        if self._line.other_by_hand:
            return self._by_hand_title(self._line)
        words = {
            State.UNREAD: tr("could not be read. Type what it says."),
            State.DOUBTFUL: tr("is doubtful. Which reading is right?"),
            State.READ: tr("as it was read. Enter confirms it."),
            State.CONFIRMED: tr("is confirmed."),
        }
        return tr("Line {number} {words}", number=self._index + 1, words=words[self._line.state])

    def _by_hand_title(self, line: DeskLine) -> str:
        """What the confirmed lines of the same hand say, and the key for the reading that does not stand first."""
        swapped = line.latex == line.other_by_hand
        other = line.as_read[0].latex if swapped else line.other_by_hand
        offered = self._offered()
        key = offered.index(other) + 1 if other in offered else 2
        if swapped:
            return tr(
                "Line {number} was read otherwise before you confirmed lines in this hand. "
                "Key {key} takes that reading, Enter this one.", number=self._index + 1, key=key,
            )  # fmt: skip
        return tr(
            "Line {number} reads otherwise by the hand of the confirmed lines. "
            "Key {key} takes that reading, Enter this one.", number=self._index + 1, key=key,
        )  # fmt: skip

    def _offered(self) -> list[str]:
        if self._line is None:
            return []
        if self._line.other_by_hand:  # both that it may be come first
            two = (self._line.latex, self._line.other_by_hand, self._line.as_read[0].latex)
            rest = (c.latex for c in self._line.candidates if c.probability >= _LEAST_PROBABILITY and c.latex.strip())
            return list(dict.fromkeys((*two, *rest)))[:_MOST_CANDIDATES]
        likely = [c for c in self._line.candidates if c.probability >= _LEAST_PROBABILITY and c.latex.strip()]
        return [c.latex for c in likely[:_MOST_CANDIDATES]]

    def _show_candidates(self) -> None:
        offered = self._offered() if self._line is not None else []
        chances = {c.latex: c.probability for c in self._line.candidates} if self._line is not None else {}
        for number, button in enumerate(self._buttons):
            button.setVisible(number < len(offered) and len(offered) > 1)
            if number < len(offered):
                latex = offered[number]
                icon = self._icon(f"{number + 1}", latex, f"{chances.get(latex, 0.0):.0%}")
                button.setIcon(QIcon(icon))
                button.setIconSize(icon.deviceIndependentSize().toSize())
                button.setAccessibleName(
                    tr(
                        "Reading {number}: {latex}, {chances}",
                        number=number + 1,
                        latex=plain(tidy(latex)),
                        chances=f"{chances.get(latex, 0.0):.0%}",
                    )
                )
                button.setToolTip(tr("Take this reading (key {number})", number=number + 1))

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
        text = with_points(self._field.text().strip())
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
