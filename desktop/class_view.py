"""The set at a glance, in a window beside the desk: pages, doubtful lines, slips by kind, marks; CSV out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, QTimer, Signal, Slot
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QAbstractItemView,
    QDialog,
    QFileDialog,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QProgressBar,
    QPushButton,
    QTableWidget,
    QTableWidgetItem,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from desktop.class_set import candidate_of, class_csv, doubtful_lines, page_rows, progress, slip_rows
from desktop.desk import Desk
from desktop.document import Document
from desktop.language import tr
from desktop.maths import plain, tidy
from desktop.page_changes import SetCandidate
from desktop.slip_words import slip_words
from desktop.theme import LEAST_TARGET, enlarge_targets
from desktop.whole_file import write_whole

__all__ = ["ClassView"]

_PAUSE_MS = 300
"""Wait after a change before counting again."""
_TARGET = int(Qt.ItemDataRole.UserRole)


class ClassView(QDialog):
    """Shows the pages on the desk as a class's set; it can stay open while the user works."""

    line_wanted = Signal(int, int)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setWindowTitle(tr("The set at a glance"))
        metrics, room = self.fontMetrics(), self.screen().availableSize()
        self.resize(min(max(860, metrics.averageCharWidth() * 110), room.width()), min(560, room.height()))
        self._sums = QLabel()
        self._sums.setWordWrap(True)
        self._bar = QProgressBar()
        self._bar.setAccessibleName(tr("Lines confirmed"))
        self._pages = _table(
            [tr("Candidate"), tr("Page"), tr("Confirmed"), tr("Doubtful"), tr("Marks"), tr("First slips")], tr("Pages")
        )
        self._pages.setEditTriggers(QAbstractItemView.EditTrigger.EditKeyPressed)
        self._lines = _table([tr("Candidate"), tr("Line"), tr("Reading"), tr("How sure")], tr("Doubtful lines"))
        self._slips = _table([tr("Slip"), tr("How often"), tr("Candidates")], tr("Slips by kind"))
        self._tabs = QTabWidget()
        self._tabs.setAccessibleName(tr("Parts of the overview"))
        self._tabs.addTab(self._pages, tr("&Pages"))
        self._tabs.addTab(self._lines, tr("&Doubtful lines"))
        self._tabs.addTab(self._slips, tr("&Slips"))
        hint = QLabel(tr("Enter shows the page or line on the desk. F2 changes a candidate's number."))
        hint.setWordWrap(True)
        save = QPushButton(tr("Save as &CSV…"))
        save.clicked.connect(self.ask_to_save)
        save.setAutoDefault(False)
        close = QPushButton(tr("Close"))
        close.clicked.connect(self.close)
        close.setAutoDefault(False)
        below = QHBoxLayout()
        below.addWidget(hint, 1)
        below.addWidget(save)
        below.addWidget(close)
        layout = QVBoxLayout(self)
        for widget in (self._sums, self._bar):
            layout.addWidget(widget)
        layout.addWidget(self._tabs, 1)
        layout.addLayout(below)
        for table in (self._pages, self._lines):
            table.cellDoubleClicked.connect(self._go)
            for key in ("Return", "Enter"):
                shortcut = QShortcut(QKeySequence(key), table, context=Qt.ShortcutContext.WidgetShortcut)
                shortcut.activated.connect(self._go)
        self._pages.itemChanged.connect(self._on_edited)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE_MS)
        self._timer.timeout.connect(self.refresh)
        for signal in (desk.document_added, desk.document_removed, desk.document_changed):
            signal.connect(self._on_changed)
        enlarge_targets(self)
        self.refresh()

    @Slot(object)
    def _on_changed(self, document: Document) -> None:
        if self.isVisible() and not self._timer.isActive():
            self._timer.start()

    @Slot()
    def refresh(self) -> None:
        """Count again."""
        documents = self._desk.documents
        sums = progress(documents)
        words = tr("{confirmed} of {lines} lines confirmed, {doubtful} doubtful. Pages: {pages}. First slips: {slips}.")
        marks = " " + tr("Marks: {given} of {out_of}.") if sums.out_of else ""
        self._sums.setText((words + marks).format(
            confirmed=sums.confirmed, lines=sums.lines, pages=sums.pages, doubtful=sums.doubtful, slips=sums.slips,
            given=sums.given, out_of=sums.out_of,
        ))  # fmt: skip
        self._bar.setRange(0, max(1, sums.lines))
        self._bar.setValue(sums.confirmed)
        self._fill_pages(documents)
        rows = doubtful_lines(documents)
        _fill(self._lines, [
            (row.candidate or "–", str(row.line_index + 1),
             plain(tidy(documents[row.page_index].lines[row.line_index].latex)) or tr("not read"),
             f"{round(100 * row.probability)} %")
            for row in rows
        ], [(row.page_index, row.line_index) for row in rows])  # fmt: skip
        _fill(self._slips, [
            (row.words, str(row.count), ", ".join(row.candidates)) for row in slip_rows(documents)
        ])  # fmt: skip

    def ask_to_save(self) -> None:
        """Ask where the CSV file is to lie, and write it."""
        name, _ = QFileDialog.getSaveFileName(self, tr("Save the set as CSV"), "set.csv", "CSV (*.csv)")
        if name:
            self.save_csv(Path(name))

    def save_csv(self, path: Path) -> None:
        """Write the set as CSV."""
        try:
            write_whole(path, class_csv(self._desk.documents).encode())
        except OSError:
            self._desk.problem.emit(
                tr("{name} could not be saved there. Choose another folder, or make room on the disk.").format(
                    name=path.name
                )
            )
        else:
            self._desk.saved.emit(path.name)

    def _fill_pages(self, documents: Sequence[Document]) -> None:
        rows = page_rows(documents)
        self._pages.blockSignals(True)
        cells = []
        for row in rows:
            found = ", ".join(
                tr("line {number}: {slip}").format(
                    number=at, slip=slip_words(kind) if kind else tr("check the reading")
                )
                for at, kind in zip(row.slip_lines, row.slips, strict=True)
            )
            nothing = tr("none") if row.checked else tr("not checked")
            marks = f"{row.given}/{row.out_of}" if row.out_of else ""
            cells.append((row.candidate, str(row.page), f"{row.confirmed}/{row.lines}", str(row.doubtful), marks,
                          found or nothing))  # fmt: skip
        _fill(self._pages, cells, [(row.index, -1) for row in rows], edited=0)
        self._pages.blockSignals(False)

    def _go(self) -> None:
        table = self._tabs.currentWidget()
        assert isinstance(table, QTableWidget)
        item = table.item(table.currentRow(), 0)
        if item is not None:
            page_index, line_index = item.data(_TARGET)
            self.line_wanted.emit(page_index, line_index)

    @Slot(QTableWidgetItem)
    def _on_edited(self, item: QTableWidgetItem) -> None:
        page_index, _ = item.data(_TARGET) or (-1, -1)
        number = item.text().strip()
        if 0 <= page_index < len(self._desk.documents):
            document = self._desk.documents[page_index]
            if number.isalnum() and len(number) <= 12:
                if number != candidate_of(document):
                    self._desk.do(document, SetCandidate(number))
            else:
                self._desk.problem.emit(tr("A candidate number has letters and digits only, twelve at most."))
        self._timer.start()


def _table(heads: list[str], name: str) -> QTableWidget:
    table = QTableWidget(0, len(heads))
    table.setHorizontalHeaderLabels(heads)
    table.setAccessibleName(name)
    table.verticalHeader().hide()
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    table.setSelectionMode(QAbstractItemView.SelectionMode.SingleSelection)
    table.setEditTriggers(QAbstractItemView.EditTrigger.NoEditTriggers)
    table.setTabKeyNavigation(False)
    table.setWordWrap(True)
    table.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    table.verticalHeader().setMinimumSectionSize(LEAST_TARGET)
    header = table.horizontalHeader()
    header.setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    header.setStretchLastSection(True)
    return table


def _fill(
    table: QTableWidget, rows: Sequence[Sequence[str]], targets: Sequence[tuple[int, int]] = (), *, edited: int = -1
) -> None:
    """Put rows into a table; the chosen row stays the chosen one by its place."""
    chosen = table.currentRow()
    table.setRowCount(len(rows))
    for at, row in enumerate(rows):
        for column, text in enumerate(row):
            item = QTableWidgetItem(text)
            if column != edited:
                item.setFlags(item.flags() & ~Qt.ItemFlag.ItemIsEditable)
            if targets:
                item.setData(_TARGET, targets[at])
            table.setItem(at, column, item)
    if rows:
        table.setCurrentCell(min(max(chosen, 0), len(rows) - 1), 0)
