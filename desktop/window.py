"""The window: pages at the left, the page with its marks, and its lines at the right."""

from __future__ import annotations

from PySide6.QtCore import QPoint, Qt, Slot
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QSplitter, QStackedWidget, QVBoxLayout, QWidget

from desktop.desk import Desk
from desktop.desk_line import DeskLine, State
from desktop.dialogs import KeysBox
from desktop.document import Document
from desktop.doubts import doubts_of, others_of, reading_of, with_other
from desktop.elided_label import LastElidedLabel
from desktop.empty_desk import EmptyDesk, words_for_no_lines
from desktop.file_window import FileWindow
from desktop.language import tr
from desktop.line_changes import ConfirmAll, MarkStart, SetReading, StrikeOut
from desktop.line_commands import LineCommands
from desktop.line_editor import LineEditor
from desktop.line_list import LineList
from desktop.menus import Menus
from desktop.overruled import counted_slip
from desktop.page_list import page_name
from desktop.page_view import PageView
from desktop.pen_commands import PenCommands
from desktop.pen_page import PEN_PAGE
from desktop.pen_view import PenView
from desktop.progress import Progress
from desktop.reveal import Reveal
from desktop.symbol_menu import SymbolMenu
from desktop.theme import enlarge_targets
from desktop.turning import Turning
from desktop.verdict_card import CardArea, VerdictCard
from desktop.verdict_commands import VerdictCommands
from desktop.wording import TEACHER_DECIDES
from desktop.workings import group_lines

__all__ = ["Window"]


class Window(FileWindow):
    """Shows the desk; every change goes through it."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._seen: tuple[object, object] = (None, None)
        self.setWindowTitle("Firstslip")
        room = self.screen().availableSize()
        self.resize(min(1280, room.width()), min(800, room.height()))
        self._build_views()
        self._build_status()
        self.verdicts = VerdictCommands(self, desk)
        self.lines = LineCommands(self)
        self.writing = PenCommands(self)
        self.turning = Turning(self)
        desk.corrections.corrected.connect(self._on_corrected)
        self._menus = Menus(self, desk)
        desk.document_added.connect(self._on_added)
        desk.document_removed.connect(self._on_removed)
        desk.document_changed.connect(self._on_changed)
        desk.document_read.connect(self._on_read)
        desk.document_checked.connect(self._on_checked)
        desk.saved.connect(self._on_saved)
        desk.copied.connect(self._on_copied)
        desk.problem.connect(self.notice.say)
        desk.activity.connect(self.progress.show_activity)
        desk.idle.connect(self.progress.hide)
        enlarge_targets(self)
        self._show(None)

    @property
    def document(self) -> Document | None:
        """The page that is shown."""
        return self._document

    # Building ----------------------------------------------------------------------------------------------------

    def _build_views(self) -> None:
        self.pages.page_chosen.connect(self._choose_page)
        self.page = PageView()
        self.page.line_clicked.connect(self._choose_line)
        empty = EmptyDesk()
        self._desk.reading_changed.connect(empty.tell_reading)
        self._middle = QStackedWidget()
        self._middle.addWidget(empty)
        self._middle.addWidget(self.page)
        self.pen = PenView()
        self._middle.addWidget(self.pen)
        self.list = LineList()
        self.list.line_chosen.connect(self._on_line_chosen)
        self.list.symbol_clicked.connect(self._ask_what_else)
        self.editor = LineEditor()
        self.editor.confirmed.connect(self._confirm)
        self.editor.abandoned.connect(self.list.setFocus)
        self.card = VerdictCard()
        self.card.reading_taken.connect(self._confirm)
        self._right = QWidget()
        right = QVBoxLayout(self._right)
        right.setContentsMargins(0, 0, 0, 0)
        right.setSpacing(0)
        right.addWidget(self.list, 1)
        right.addWidget(CardArea(self.card))
        right.addWidget(self.editor)
        self._right.setMinimumWidth(400)
        split = self._split = QSplitter(Qt.Orientation.Horizontal)
        split.setChildrenCollapsible(False)
        split.addWidget(self.pages)
        split.addWidget(self._middle)
        split.addWidget(self._right)
        split.setStretchFactor(0, 0)
        split.setStretchFactor(1, 1)
        split.setStretchFactor(2, 1)
        split.setSizes([148, 560, 600])
        centre = QWidget()
        layout = QVBoxLayout(centre)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addWidget(self.notice)
        layout.addWidget(split, 1)
        self.setCentralWidget(centre)

    def _build_status(self) -> None:
        self.progress = Progress()
        self.progress.stopped.connect(self._desk.stop)
        self.statusBar().addWidget(self.progress)
        self._decides = LastElidedLabel()
        self._decides.say(tr(TEACHER_DECIDES))
        self.statusBar().addPermanentWidget(self._decides)
        self.statusBar().messageChanged.connect(self._make_room)

    @Slot(str)
    def _make_room(self, message: str) -> None:
        """Let a message that does not fit beside them have the room of the words at its right."""
        bar = self.statusBar()
        bar.setToolTip(message)
        room = bar.width() - self._decides.sizeHint().width() - 40
        self._decides.setVisible(bar.fontMetrics().horizontalAdvance(message) <= room)

    # Lines -------------------------------------------------------------------------------------------------------

    def confirm(self) -> None:
        """Confirm the reading in the editor and go to the next doubtful line."""
        self.editor.confirm()

    def confirm_sure(self) -> None:
        """Confirm all lines that were read with enough certainty."""
        if self._document is not None and self._document.sure_lines():
            self._desk.do(self._document, ConfirmAll(self._document.sure_lines()))
            self._go_on(-1)

    def ask_about_symbol(self) -> None:
        """Ask what else the first doubtful symbol of the chosen line may be."""
        line = self.chosen_line
        if line is not None:
            doubts = doubts_of(line)
            if doubts:
                least = min(doubts, key=lambda doubt: doubt.probability)
                self._ask_what_else(self.list.chosen, least.place, self.list.place_of_symbol(least))
            else:
                self.editor.edit()

    @Slot(int, int, QPoint)
    def _ask_what_else(self, index: int, place: int, where: QPoint) -> None:
        line = self.chosen_line
        if line is None or index != self.list.chosen or (symbol := reading_of(line)) is None:
            return
        menu = SymbolMenu(symbol.tokens[place].text, others_of(line, place), self)
        menu.chosen.connect(lambda text: self.editor.write(with_other(line, place, text)))
        menu.other_wanted.connect(lambda: self.editor.edit_symbol(place))
        menu.aboutToHide.connect(menu.deleteLater)
        menu.popup(where)

    def next_doubtful(self) -> None:
        """Choose the next line that needs the user."""
        if self._document is not None:
            self._go_on(self.list.chosen)

    def strike_out(self) -> None:
        """Leave the chosen line out of the working, or take it in again."""
        line = self.chosen_line
        if self._document is not None and line is not None:
            self._desk.do(self._document, StrikeOut(self.list.chosen, not line.struck_out))

    def toggle_start(self) -> None:
        """Say that a new working starts at the chosen line, or that it does not."""
        line = self.chosen_line
        if self._document is not None and line is not None:
            starts = any(group[0] == self.list.chosen for group in group_lines(self._document.lines))
            self._desk.do(self._document, MarkStart(self.list.chosen, not starts))

    def check(self) -> None:
        if self._document is not None:
            self._desk.check_now(self._document)

    def go_to_slip(self) -> None:
        """Choose the first slip of the page."""
        if self._document is not None:
            document = self._document
            counted = (counted_slip(document, verdict) for verdict in document.verdicts)
            slips = [index for index in counted if index is not None]
            if slips:
                self.list.choose(slips[0])
                self.list.setFocus()

    @property
    def reveal(self) -> Reveal:
        return self.verdicts.reveal

    @property
    def is_writing(self) -> bool:
        """Whether the paper for the pen is shown."""
        return self._middle.currentWidget() is self.pen

    def show_middle(self, document: Document | None, *, writes: bool = False) -> None:
        """Show a page to look at, or to write on."""
        if writes != self.is_writing:
            self._share_room(for_paper=writes)
        self.pen.show_document(document if writes else None)
        self._middle.setCurrentWidget(self.pen if writes else self.page)
        if document is None:
            self._middle.setCurrentIndex(0)

    def _share_room(self, *, for_paper: bool) -> None:
        """Give the paper more of the window while the pen writes on it."""
        pages, middle, right = self._split.sizes()
        both = middle + right
        if both > 0:
            wanted = round(both * (0.62 if for_paper else 0.48))
            self._split.setSizes([pages, wanted, both - wanted])

    def show_student_mode(self) -> None:
        """Switch hints one at a time on."""
        self._menus.actions["student"].setChecked(True)

    # Editing -----------------------------------------------------------------------------------------------------

    @Slot(int, str)
    def _confirm(self, index: int, latex: str) -> None:
        if self._document is None or self._desk.is_being_read(self._document):
            return
        self.editor.show_line(-1, None)
        self._desk.do(self._document, SetReading(index, latex))
        self._go_on(index)

    def _keep_edit(self) -> None:
        """Keep what was typed into a line that is left without Enter; it can be undone."""
        typed = self.editor.take_edit()
        document = self._document
        if typed is None or document is None or document not in self._desk.documents:
            return
        if typed[0] < len(document.lines):
            self._desk.do(document, SetReading(typed[0], typed[1]))

    def _go_on(self, after: int) -> None:
        assert self._document is not None
        following = self._document.next_doubtful(after)
        if following is None:
            self.statusBar().showMessage(self._words_at_the_end(), 8000)
            self.editor.show_line(self.list.chosen, self.chosen_line)
        else:
            self.list.choose(following)
        self.list.setFocus()

    def _words_at_the_end(self) -> str:
        """What is said when a page has no doubtful line left: where the next one lies."""
        document, pages = self._document, self._desk.documents
        if any(other is not document and other.next_doubtful(-1) is not None for other in pages):
            keys = self._menus.actions["page+"].shortcut().toString(QKeySequence.SequenceFormat.NativeText)
            return tr("No doubtful line is left here; other pages have some ({keys}).", keys=keys)
        return tr("No doubtful line is left.")

    def step_line(self, step: int) -> None:
        if self._document is not None and self._document.lines:
            self.list.choose(min(max(self.list.chosen + step, 0), len(self._document.lines) - 1))

    def step_page(self, step: int) -> None:
        if self.pages.count():
            self.pages.setCurrentRow((self.pages.currentRow() + step) % self.pages.count())

    @property
    def chosen_line(self) -> DeskLine | None:
        """The line that is chosen; None for none."""
        if self._document is None or not 0 <= self.list.chosen < len(self._document.lines):
            return None
        return self._document.lines[self.list.chosen]

    @Slot(int)
    def _choose_line(self, index: int) -> None:
        self.list.choose(index)
        self.list.setFocus()

    @Slot(int)
    def _on_line_chosen(self, index: int) -> None:
        self._desk.hands.look_at(self._document, index)
        self._keep_edit()
        self.editor.show_line(index, self.chosen_line)
        self.verdicts.show_card()
        self.page.choose(index)
        self._refresh_actions()

    # Documents ---------------------------------------------------------------------------------------------------

    @Slot(object)
    def _on_added(self, document: Document) -> None:
        self.pages.add(document)
        if self.pages.count() == 1:
            self.pages.setCurrentRow(0)
        self.pages.setVisible(self.pages.count() > 1)
        self._refresh_actions()

    @Slot(object)
    def _on_removed(self, document: Document) -> None:
        self.pages.takeItem(self.pages.row_of(document))
        self.pages.setVisible(self.pages.count() > 1)
        self._choose_page(self.pages.currentRow())

    @Slot(object)
    def _on_changed(self, document: Document) -> None:
        seen, self._seen = self._seen, (document.lines, document.verdicts)
        is_same = all(one is other for one, other in zip(seen, self._seen, strict=True))
        if self.is_writing and document is self._document and is_same:
            self.pen.refresh()  # a stroke more, and nothing is read of it yet
            return
        if document in self._desk.documents:
            self.pages.refresh(self._desk.documents.index(document), document)
        if document is self._document:
            chosen = self.list.chosen
            self.list.say_when_empty(words_for_no_lines(document))
            self.list.refresh()
            self.page.refresh()
            self.pen.refresh()
            if chosen < 0 and document.lines and not self._desk.is_being_read(document):
                self.list.choose(document.next_doubtful(-1) or 0)
            if not self.editor.has_edit or self.chosen_line is None:
                self.editor.show_line(self.list.chosen, self.chosen_line)
            self.verdicts.show_card()
        self._refresh_actions()

    @Slot(object)
    def _on_read(self, document: Document) -> None:
        """Bring the first line that needs the user to the front, now that it is known."""
        if document is self._document and document.lines:
            self.list.choose(document.next_doubtful(-1) or 0)

    @Slot(object, int)
    def _on_corrected(self, document: Document, index: int) -> None:
        """Choose the line that was corrected."""
        if document is self._document and 0 <= index < len(document.lines):
            self.list.choose(index)
            self.editor.show_line(index, self.chosen_line)
            self.verdicts.show_card()

    @Slot(object)
    def _on_checked(self, document: Document) -> None:
        """Show the first slip of a page on which the user has done nothing yet and nothing is doubtful."""
        untouched = not any(line.state is State.CONFIRMED for line in document.lines)
        if document is self._document and untouched and document.next_doubtful(-1) is None:
            self.go_to_slip()

    @Slot(int)
    def _choose_page(self, row: int) -> None:
        self._show(self._desk.documents[row] if 0 <= row < len(self._desk.documents) else None)

    def _show(self, document: Document | None) -> None:
        self._keep_edit()
        self._document = document
        self._desk.activate(document)
        self.page.show_document(document)
        self.show_middle(document, writes=document is not None and document.file.startswith(PEN_PAGE))
        self.list.show_document(document)
        self.list.say_when_empty(words_for_no_lines(document))
        self.pages.setVisible(self.pages.count() > 1)
        self.setWindowTitle("Firstslip" if document is None else f"{page_name(document)} – Firstslip")
        if document is not None and document.lines:
            self.list.choose(document.next_doubtful(-1) or 0)
            self.list.setFocus()
        else:
            self.editor.show_line(-1, None)
        self.verdicts.show_card()
        self._refresh_actions()

    @property
    def desk(self) -> Desk:
        """The desk that the window shows."""
        return self._desk

    @Slot(int, int)
    def go_to(self, page_index: int, line_index: int) -> None:
        """Show a page, and choose a line of it; below 0 leaves the line to the window."""
        if 0 <= page_index < len(self._desk.documents):
            self.pages.setCurrentRow(page_index)
            if line_index >= 0:
                self._choose_line(line_index)
            self.activateWindow()

    @property
    def menus(self) -> Menus:
        """The menus with their actions."""
        return self._menus

    @Slot(object)
    def show_picture(self, document: Document) -> None:
        """Show the picture of the page, now that it is there."""
        if document is self._document:
            chosen = self.list.chosen
            self.page.show_document(document)
            self.list.show_document(document)
            if chosen >= 0:
                self.list.choose(chosen)

    def _refresh_actions(self) -> None:
        self._menus.refresh(self._document, self.chosen_line)

    def show_keys(self) -> None:
        KeysBox(self._menus.menus, self).exec()
