"""What the user does about verdicts: hints, counterexamples, claims, the user's own word, marks by a scheme."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Slot

from desktop.card import card_of, claim_card
from desktop.claims import Claim, claims_identity
from desktop.desk import Desk
from desktop.desk_line import LineMark, Override
from desktop.document import Document
from desktop.language import tr
from desktop.mark_text import awards_to_lines
from desktop.page_changes import AwardMarks, Overrule
from desktop.reveal import EVERYTHING, Reveal
from desktop.scheme_box import SchemeBox

if TYPE_CHECKING:
    from desktop.window import Window

__all__ = ["VerdictCommands"]


class VerdictCommands(QObject):
    """Keeps the card in step with the chosen line, and turns its buttons into changes."""

    def __init__(self, window: Window, desk: Desk) -> None:
        super().__init__(window)
        self._window = window
        self._desk = desk
        self._reveal = EVERYTHING
        self._as_claims: set[str] = set()
        window.card.hint_asked.connect(self.ask_for_hint)
        window.card.overruled.connect(self._overrule)
        window.card.marked.connect(self._mark)
        window.card.awarded.connect(self.award_suggested)
        window.list.set_claims(self._claim_of)
        desk.claims.known.connect(self._on_claim_known)
        desk.marks_suggested.connect(self._on_marks_suggested)

    @property
    def reveal(self) -> Reveal:
        """How much of slips is told now."""
        return self._reveal

    def set_student(self, is_student: bool) -> None:
        """Give hints one at a time in place of the whole answer, or tell all again."""
        self._window.card.set_student(is_student)
        self._set_reveal(Reveal(is_student))

    def ask_for_hint(self) -> None:
        """Give the next hint to the chosen line, or to the first slip."""
        window = self._window
        if not self._reveal.is_student:
            window.show_student_mode()
        if window.card.card is None or window.card.card.slip is None:
            window.go_to_slip()
        card = window.card.card
        if card is not None and card.slip is not None and card.next_hint:
            self._set_reveal(self._reveal.further(card.slip))

    def toggle_claim(self) -> None:
        """Take the chosen line as a claim for all values, or no longer."""
        line = self._window.chosen_line
        if line is not None:
            self._as_claims ^= {line.latex}
            self._window.list.refresh()
            self.show_card()

    def ask_for_scheme(self) -> None:
        """Ask for the mark scheme, and suggest marks by it."""
        box = SchemeBox(self._desk.scheme_text, self._window)
        if box.exec():
            self._desk.take_scheme_text(box.text)

    def award_suggested(self) -> None:
        """Write the marks that are suggested for the working of the chosen line beside their lines."""
        document, index = self._window.document, self._window.list.chosen
        marks = None if document is None or index < 0 else self._desk.marks_of(document, index)
        if document is not None and marks is not None:
            self._desk.do_all(document, awards_to_lines(document, index, marks), tr("Award suggested marks"))

    def show_card(self) -> None:
        """Show the card of the chosen line."""
        window = self._window
        document, index, line = window.document, window.list.chosen, window.chosen_line
        if document is None or line is None:
            window.card.show_card(None)
            return
        card = card_of(document, index, self._reveal)
        claim = None if card is None else self._claim_of(document, index)
        if claim is not None:
            card = claim_card(index, line.latex, claim)
        window.card.show_card(card, line_marks=line.marks, marks=self._desk.marks_of(document, index))

    def _claim_of(self, document: Document, index: int) -> Claim | None:
        """What is known of a checked line that is taken as a claim; the user's own word on it comes first."""
        line = document.lines[index]
        if line.override is not None or not (line.latex in self._as_claims or claims_identity(document, index)):
            return None
        return self._desk.claims.of(line.latex)

    def _set_reveal(self, reveal: Reveal) -> None:
        self._reveal = reveal
        for view in (self._window.list, self._window.page, self._window.pen):
            view.set_reveal(reveal)
        self.show_card()

    @Slot(int, object)
    def _overrule(self, index: int, override: Override | None) -> None:
        document = self._window.document
        if document is not None and document.lines[index].override != override:
            self._desk.do(document, Overrule(index, override))

    @Slot(int, object)
    def _mark(self, index: int, marks: tuple[LineMark, ...]) -> None:
        document = self._window.document
        if document is not None and document.lines[index].marks != marks:
            self._desk.do(document, AwardMarks(index, marks))

    @Slot(str)
    def _on_claim_known(self, latex: str) -> None:
        self._window.list.refresh()
        line = self._window.chosen_line
        if line is not None and line.latex == latex:
            self.show_card()

    @Slot(object)
    def _on_marks_suggested(self, document: Document) -> None:
        if document is self._window.document:
            self.show_card()
