"""The window's side of sets: actions in the File menu, recent files, what is kept, and closing."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QObject, Qt, Slot
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QFileDialog, QMenu, QMessageBox

from desktop.actions import Entry, make_action
from desktop.class_view import ClassView
from desktop.elided_label import ElidedLabel
from desktop.language import tr
from desktop.printing import PrintBox
from desktop.sets import Sets
from desktop.settings import Settings
from desktop.store_file import ENDING, is_set
from desktop.window import Window

__all__ = ["SetActions"]


class SetActions(QObject):
    """Joins the window to the sets and the settings."""

    def __init__(self, window: Window, sets: Sets, settings: Settings) -> None:
        super().__init__(window)
        self._window = window
        self._sets = sets
        self._settings = settings
        self.actions: dict[str, QAction] = {}
        self._class: ClassView | None = None
        self._kept = ElidedLabel()
        self._kept.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self._kept.setContentsMargins(0, 0, 12, 0)
        window.statusBar().addPermanentWidget(self._kept)
        window.statusBar().messageChanged.connect(self._make_room)
        self._recent = QMenu(tr("Open &recent"), window)
        self._add_actions()
        window.may_close = self.may_close
        window.set_asked.connect(sets.open)
        window.files_opened.connect(self._remember)
        sets.opened.connect(self._on_opened)
        sets.keeping.connect(self._on_keeping)
        sets.pictured.connect(window.show_picture)

    def _add_actions(self) -> None:
        entries = {
            "new_set": Entry(tr("&New set"), ["Ctrl+Alt+N"], self._sets.clear,
                             tr("Put the pages on the desk away in their set and begin an empty one")),
            "open_set": Entry(tr("Open s&et…"), ["Ctrl+Shift+O"], self.ask_to_open),
            "save_set": Entry(tr("Save set &as…"), ["Ctrl+Alt+A"], self.ask_to_save),
            "glance": Entry(tr("The set at a &glance"), ["F6"], self.show_class),
        }  # fmt: skip
        menu = self._window.menus.menus[0]
        before = menu.actions()[1]
        for name, entry in entries.items():
            self.actions[name] = make_action(entry, self._window)
            menu.insertAction(before, self.actions[name])
        menu.insertMenu(before, self._recent)
        menu.insertSeparator(before)
        self.actions["print"] = make_action(Entry(tr("P&rint marked page…"), ["Ctrl+P"], self.print_page), self._window)
        menu.insertAction(self._window.menus.actions["copy"], self.actions["print"])
        every = Entry(tr("Save all &marked pages as one PDF…"), ["Ctrl+Shift+A"], self.ask_to_save_all)
        self.actions["all"] = make_action(every, self._window)
        menu.insertAction(self.actions["print"], self.actions["all"])
        for changed in (self._window.desk.document_added, self._window.desk.document_removed):
            changed.connect(self._refresh)
        self._refresh()
        self._recent.aboutToShow.connect(self._fill_recent)
        self._fill_recent()

    def begin(self, files: Sequence[Path]) -> None:
        """Put files on the desk in a new set; without files, the set that lay there last."""
        last = self._settings.last_set
        if any(is_set(path) for path in files):
            self._window.open_files(files)
        elif files or last is None or not last.is_file():
            self._sets.start_new()
            self._window.open_files(files)
        else:
            self._sets.open(last)

    def show_class(self) -> None:
        """Show the set at a glance, in a window of its own."""
        if self._class is None:
            self._class = ClassView(self._window.desk, self._window)
            self._class.line_wanted.connect(self._window.go_to)
        self._class.refresh()
        self._class.show()
        self._class.raise_()
        self._class.activateWindow()

    @Slot(str)
    def _make_room(self, message: str) -> None:
        """Leave the status bar's room to a message while there is one."""
        self._kept.setVisible(not message)

    @Slot()
    def _refresh(self) -> None:
        self.actions["all"].setEnabled(bool(self._window.desk.documents))

    def ask_to_save_all(self) -> None:
        """Ask where the marked pages of the set are to lie as one PDF, and write it while the window goes on."""
        path = self._sets.path
        suggestion = tr("{name} marked", name=tr("Set") if path is None else path.stem) + ".pdf"
        title = tr("Save all marked pages as one PDF")
        name, _ = QFileDialog.getSaveFileName(self._window, title, suggestion, "PDF (*.pdf)")
        if name:
            chosen = Path(name)
            self.save_all(chosen if chosen.suffix.lower() == ".pdf" else chosen.with_name(f"{chosen.name}.pdf"))

    def save_all(self, path: Path) -> None:
        """Save every page of the set, marked, as one PDF."""
        self._window.desk.save_all(self._sets.picture_of, path, self._window.reveal)

    def print_page(self) -> None:
        """Show how the marked page comes out on paper, and print it."""
        if self._window.document is not None:
            PrintBox([self._window.document.snapshot()], self._window, reveal=self._window.reveal).exec()

    def ask_to_open(self) -> None:
        """Ask which set to open."""
        name, _ = QFileDialog.getOpenFileName(self._window, tr("Open set"), self._folder(), self._filter())
        if name:
            self._window.open_files([Path(name)])

    def ask_to_save(self) -> None:
        """Ask where the set is to be kept from now on."""
        name, _ = QFileDialog.getSaveFileName(self._window, tr("Save set as"), self._folder(), self._filter())
        if name:
            path = Path(name)
            self._sets.save_as(path if path.suffix == ENDING else path.with_name(path.name + ENDING))

    def may_close(self) -> bool:
        """Keep all that is left; when that fails, ask whether to close all the same."""
        if self._sets.finish():
            self._settings.geometry = self._window.saveGeometry()
            return True
        answer = QMessageBox.question(
            self._window, "Firstslip",
            tr("Your last changes could not be kept. Save the set under another name first. Close all the same?"),
        )  # fmt: skip
        return answer == QMessageBox.StandardButton.Yes

    def _filter(self) -> str:
        return tr("Sets (*{ending})").format(ending=ENDING)

    def _folder(self) -> str:
        return "" if self._sets.path is None else str(self._sets.path.parent)

    def _fill_recent(self) -> None:
        self._recent.clear()
        for number, path in enumerate(self._settings.recent, start=1):
            key = f"&{number} " if number < 10 else ""
            action = self._recent.addAction(f"{key}{path.name.replace('&', '&&')}")
            action.setToolTip(str(path))
            action.triggered.connect(lambda checked=False, path=path: self._window.open_files([path]))
        self._recent.setToolTipsVisible(True)
        if not self._settings.recent:
            self._recent.addAction(tr("Nothing was opened yet")).setEnabled(False)
        else:
            self._recent.addSeparator()
            self._recent.addAction(tr("Forget these")).triggered.connect(self._settings.forget_recent)

    @Slot(object)
    def _remember(self, paths: list[Path]) -> None:
        self._settings.remember([path for path in paths if path.exists()])

    @Slot(object)
    def _on_opened(self, path: Path) -> None:
        self._settings.last_set = path
        self._settings.remember([path])
        self._show_kept(tr("Set: {name}").format(name=path.stem), path)

    @Slot(bool)
    def _on_keeping(self, is_kept: bool) -> None:
        path = self._sets.path
        if path is not None:
            words = tr("Set: {name}, all kept") if is_kept else tr("Set: {name}, keeping…")
            self._show_kept(words.format(name=path.stem), path)

    def _show_kept(self, words: str, path: Path) -> None:
        self._kept.setText(words)
        self._kept.setToolTip(f"{words}\n{path}")
