"""The card of the chosen line: its verdict and why, hints one at a time, the user's own word, and marks."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPalette, QResizeEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QLineEdit, QPushButton, QScrollArea, QVBoxLayout, QWidget

from checker.marking.result import Marks
from desktop.card import Card
from desktop.card_rows import CardRows
from desktop.desk_line import LineMark, Override
from desktop.flow import Flow
from desktop.glyphs import paint_glyph
from desktop.language import tr, tr_later
from desktop.mark_text import MARKS_HELP, marks_text, read_marks
from desktop.reveal import GRADES
from desktop.theme import ground, mix, verdict_colour
from desktop.verdict_style import VerdictStyle
from desktop.wording import Row, sentence

__all__ = ["CardArea", "VerdictCard"]

_LEAST_TARGET = 24
_MOST_OF_COLUMN = 0.45
_STRONG = (tr_later("Written"), tr_later("Should be"), tr_later("Missing"))


class _Glyph(QWidget):
    """The verdict's shape."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._style: VerdictStyle | None = None

    def show_style(self, style: VerdictStyle) -> None:
        self._style = style
        self.update()

    def sizeHint(self) -> QSize:
        side = self.fontMetrics().height()
        return QSize(side + 2, side + 2)

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        if self._style is None:
            return
        painter = QPainter(self)
        side = float(self.fontMetrics().height())
        square = QRectF(1, (self.height() - side) / 2, side, side)
        colour = verdict_colour(self._style, self.palette())
        paint_glyph(painter, square, self._style.shape, colour, ground=ground(self.palette()))


class _Field(QLineEdit):
    """A field whose Enter is its own and not that of the window; wide enough for what it asks for."""

    def sizeHint(self) -> QSize:
        metrics = self.fontMetrics()
        return super().sizeHint().expandedTo(QSize(metrics.horizontalAdvance(self.placeholderText() + "MM"), 0))

    def event(self, event: QEvent) -> bool:
        if (
            event.type() is QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and event.key() in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
        ):
            event.accept()
            return True
        return super().event(event)


class VerdictCard(QFrame):
    """Shows one card; says what the user wants, and changes nothing itself."""

    hint_asked = Signal()
    reading_taken = Signal(int, str)
    overruled = Signal(int, object)
    marked = Signal(int, object)
    awarded = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._card: Card | None = None
        self._shows_counterexample = False
        self._shows_reasons = False
        self._is_student = False
        self._marks: Marks | None = None
        self.setAutoFillBackground(True)
        self.setBackgroundRole(QPalette.ColorRole.Base)
        self.setAccessibleName(tr("Verdict on the chosen line"))
        self._glyph = _Glyph()
        self._title = QLabel()
        self._title.setTextFormat(Qt.TextFormat.PlainText)
        self._title.setWordWrap(True)
        self._rows = CardRows()
        self._rows.setAccessibleName(tr("Why"))
        self._hint = _button("", tr("The next hint tells a little more"), self.hint_asked.emit)
        self._example = _button(
            tr("Show a counterexample"), tr("Numbers for which the step fails"), self._toggle_example
        )
        self._take = _button("", tr("The reading is changed; the photo is not"), self._take_reading)
        self._right = _button(
            tr("Declare right"), tr("Your word counts above the checker's"), lambda: self.declare(True)
        )
        self._wrong = _button(
            tr("Declare wrong"), tr("Your word counts above the checker's"), lambda: self.declare(False)
        )
        self._leave = _button(
            tr("Take my word back"), tr("The checker's verdict counts again"), lambda: self.declare(None)
        )
        self._note = _Field()
        self._note.setAccessibleName(tr("Note to your verdict"))
        self._note.setPlaceholderText(tr("A note to your verdict, kept with the line"))
        self._note.editingFinished.connect(self._keep_note)
        self._marks_field = _Field()
        self._marks_field.setAccessibleName(tr("Marks beside this line"))
        self._marks_field.setPlaceholderText(tr("Marks, such as M1 A0"))
        self._marks_field.setToolTip(tr(MARKS_HELP))
        self._marks_field.editingFinished.connect(self._keep_marks)
        self._suggestion = QLabel()
        self._suggestion.setWordWrap(True)
        self._suggestion.setTextFormat(Qt.TextFormat.PlainText)
        self._award = _button(tr("Award these"), tr("Writes the suggested marks beside the lines"), self.awarded.emit)
        self._why = _button(tr("Why"), tr("The reason for each mark"), self._toggle_reasons)
        self._reasons = CardRows()
        self._reasons.setAccessibleName(tr("Reasons for the suggested marks"))
        self._answer = CardRows()
        self._answer.setAccessibleName(tr("Answer"))
        self._lay_out()
        self.show_card(None)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.addWidget(self._glyph)
        head.addWidget(self._title, 1)
        asks, own, on_marks = Flow(), Flow(), Flow()
        for flow, parts in (
            (asks, (self._hint, self._example, self._take)),
            (own, (self._right, self._wrong, self._leave, self._marks_field)),
            (on_marks, (self._why, self._award)),
        ):
            for part in parts:
                flow.addWidget(part)
        self._suggested = QWidget()
        suggested = QVBoxLayout(self._suggested)
        suggested.setContentsMargins(0, 0, 0, 0)
        suggested.addWidget(self._suggestion)
        suggested.addLayout(on_marks)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(12, 8, 12, 8)
        layout.setSpacing(5)
        layout.addLayout(head)
        layout.addWidget(self._rows)
        layout.addLayout(asks)
        layout.addLayout(own)
        layout.addWidget(self._note)
        layout.addWidget(self._suggested)
        layout.addWidget(self._reasons)
        layout.addWidget(self._answer)

    @property
    def card(self) -> Card | None:
        return self._card

    @property
    def rows(self) -> tuple[Row, ...]:
        """What is told now."""
        return self._rows.rows

    def show_card(
        self, card: Card | None, *, line_marks: tuple[LineMark, ...] = (), marks: Marks | None = None
    ) -> None:
        """Show a card, or nothing."""
        if card is None or self._card is None or (card.index, card.slip) != (self._card.index, self._card.slip):
            self._shows_counterexample = False
        self._card, self._marks = card, marks
        self.setVisible(card is not None)
        if card is None:
            return
        self._glyph.show_style(card.style)
        self._title.setText(card.title)
        self._hint.setVisible(bool(card.next_hint))
        self._hint.setText(tr("Hint {next_hint} of {grades} (Ctrl+H)", next_hint=card.next_hint, grades=GRADES))
        self._example.setVisible(bool(card.counterexample))
        self._take.setVisible(card.other_reading is not None)
        if card.other_reading is not None:
            self._take.setText(tr("Line {number} says the other", number=card.other_reading[0] + 1))
        own = card.override
        self._right.setEnabled(own is None or not own.is_right)
        self._wrong.setEnabled(own is None or own.is_right)
        self._leave.setVisible(own is not None)
        self._note.setVisible(own is not None)
        if not self._note.hasFocus() or own is None:
            self._note.setText("" if own is None else own.note)
        self._marks_field.setVisible(not self._is_student)
        if not self._marks_field.hasFocus():
            self._marks_field.setText(marks_text(line_marks))
        self._show_suggestion()
        self._answer.show_rows([Row(tr("Answer"), text=card.answer)] if card.answer else [])
        self._refresh()

    def set_student(self, is_student: bool) -> None:
        """Leave out what is the teacher's: the marks beside a line."""
        self._is_student = is_student
        self._marks_field.setVisible(not is_student)

    def declare(self, is_right: bool | None) -> None:
        """Say that the line is right or wrong, or leave it to the checker (None)."""
        if self._card is None:
            return
        note = self._card.override.note if self._card.override is not None else ""
        self.overruled.emit(self._card.index, None if is_right is None else Override(is_right, note))
        if is_right is not None:
            self._note.setFocus(Qt.FocusReason.OtherFocusReason)

    def toggle_example(self) -> None:
        """Show or hide the counterexample."""
        if self._card is not None and self._card.counterexample:
            self._toggle_example()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() is QEvent.Type.PaletteChange and self._card is not None:
            self._refresh()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if self._card is not None:
            painter = QPainter(self)
            colour = verdict_colour(self._card.style, self.palette())
            painter.fillRect(self.rect(), mix(ground(self.palette()), colour, 0.07))
            painter.fillRect(0, 0, self.width(), 2, colour)

    def _refresh(self) -> None:
        assert self._card is not None
        colour = verdict_colour(self._card.style, self.palette())
        palette = self._title.palette()
        palette.setColor(QPalette.ColorRole.WindowText, colour)
        palette.setColor(QPalette.ColorRole.Text, colour)
        self._title.setPalette(palette)
        font = self.font()
        font.setBold(True)
        self._title.setFont(font)
        rows = list(self._card.rows)
        if self._shows_counterexample and self._card.counterexample:
            rows.append(Row(tr("Counterexample"), text=self._card.counterexample))
        self._example.setText(
            tr("Hide the counterexample") if self._shows_counterexample else tr("Show a counterexample")
        )
        self._rows.show_rows(rows, strong=tuple(tr(label) for label in _STRONG), colour=colour)

    def _toggle_example(self) -> None:
        self._shows_counterexample = not self._shows_counterexample
        self._refresh()

    def _toggle_reasons(self) -> None:
        self._shows_reasons = not self._shows_reasons
        self._show_suggestion()

    def _take_reading(self) -> None:
        if self._card is not None and self._card.other_reading is not None:
            self.reading_taken.emit(*self._card.other_reading)

    def _keep_note(self) -> None:
        if self._card is not None and self._card.override is not None:
            own = Override(self._card.override.is_right, self._note.text().strip())
            if own != self._card.override:
                self.overruled.emit(self._card.index, own)

    def _keep_marks(self) -> None:
        if self._card is None:
            return
        marks = read_marks(self._marks_field.text())
        self._marks_field.setToolTip(tr(MARKS_HELP))
        if marks is None:
            self._title.setText(tr(MARKS_HELP))
            return
        self.marked.emit(self._card.index, marks)

    def _show_suggestion(self) -> None:
        marks = self._marks
        self._suggested.setVisible(marks is not None)
        if marks is None:
            self._reasons.show_rows(())
            return
        most = (
            ""
            if marks.highest == marks.total
            else tr(" (up to {highest} if you give the open ones)", highest=marks.highest)
        )
        each = ", ".join(f"{award.code} {tr(_AWARDED[award.awarded])}" for award in marks.each)
        sum_of = tr("{total} of {out_of}", total=marks.total, out_of=marks.out_of)
        self._suggestion.setText(f"{tr(_SUGGESTED)} {sum_of}{most}: {each}.")
        self._why.setText(tr("Hide why") if self._shows_reasons else tr("Why"))
        self._reasons.show_rows(
            [Row(award.code, text=sentence(award.reason)) for award in marks.each] if self._shows_reasons else ()
        )


_SUGGESTED = tr_later("A suggestion by your scheme; the teacher decides.")
_AWARDED = {True: tr_later("earned"), False: tr_later("not earned"), "teacher": tr_later("open")}


class CardArea(QScrollArea):
    """Holds the card, as high as it needs to be and never more than a share of the column; beyond that it scrolls."""

    def __init__(self, card: VerdictCard, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._card = card
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidget(card)
        card.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() in (QEvent.Type.LayoutRequest, QEvent.Type.Show, QEvent.Type.Hide):
            self.fit()
        return super().eventFilter(watched, event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.fit()

    def fit(self) -> None:
        """Take the height that the card needs."""
        column = self.parentWidget()
        layout = self._card.layout()
        if self._card.isHidden() or column is None or layout is None:
            self.setFixedHeight(0)
            return
        needed = layout.totalHeightForWidth(self.viewport().width())
        self.setFixedHeight(max(0, min(needed, round(column.height() * _MOST_OF_COLUMN))))


def _button(words: str, tip: str, run: object) -> QPushButton:
    button = QPushButton(words)
    button.setToolTip(tip)
    button.setMinimumHeight(_LEAST_TARGET)
    button.setAutoDefault(False)
    button.clicked.connect(lambda checked=False: run())  # type: ignore[operator]
    return button
