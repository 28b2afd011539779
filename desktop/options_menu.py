"""What can be set: language, decimal comma; and the log."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, QUrl
from PySide6.QtGui import QAction, QActionGroup, QDesktopServices
from PySide6.QtWidgets import QMenu

from desktop.actions import Entry, make_action
from desktop.language import tr
from desktop.settings import LANGUAGES, Settings
from desktop.window import Window

__all__ = ["OptionsMenu"]


class OptionsMenu(QObject):
    """Adds the settings to the View menu and the log to the Help menu."""

    def __init__(self, window: Window, settings: Settings, log_path: Path) -> None:
        super().__init__(window)
        self._window = window
        self._settings = settings
        self._log_path = log_path
        view, helping = window.menus.menus[-2], window.menus.menus[-1]
        view.addSeparator()
        self.comma = self._add_comma(view)
        self.languages = self._add_languages(view)
        log = Entry(tr("Open the &log"), ["Ctrl+Shift+L"], self.open_log, tr("What the program noted when it failed"))
        self.log = make_action(log, window)
        helping.addAction(self.log)

    def open_log(self) -> None:
        """Open the log in the system's editor."""
        if self._log_path.is_file() and self._log_path.stat().st_size:
            if not QDesktopServices.openUrl(QUrl.fromLocalFile(str(self._log_path))):
                self._window.notice.say(tr("The log lies at {path}.", path=self._log_path))
        else:
            self._window.notice.say(tr("The log is empty: nothing has failed."))

    def _add_comma(self, menu: QMenu) -> QAction:
        action = QAction(tr("&Decimal comma"), self._window)
        action.setCheckable(True)
        action.setChecked(self._settings.decimal_comma)
        action.setShortcut("Ctrl+Shift+D")
        action.setToolTip(tr("Show 2.5 as 2,5, and take a comma between digits for a decimal one"))
        action.toggled.connect(self._set_comma)
        menu.addAction(action)
        return action

    def _add_languages(self, menu: QMenu) -> dict[str, QAction]:
        submenu = QMenu(tr("&Language"), self._window)
        menu.addMenu(submenu)
        names = {"": tr("As the &system"), "en": "&English", "de": "&Deutsch"}
        group, actions = QActionGroup(self), {}
        for language in LANGUAGES:
            action = submenu.addAction(names[language])
            action.setCheckable(True)
            action.setChecked(language == self._settings.language)
            action.triggered.connect(lambda checked=False, language=language: self._set_language(language))
            group.addAction(action)
            actions[language] = action
        return actions

    def _set_comma(self, wanted: bool) -> None:
        self._settings.decimal_comma = wanted
        self._say_later()

    def _set_language(self, language: str) -> None:
        self._settings.language = language
        self._say_later()

    def _say_later(self) -> None:
        self._window.notice.say(tr("This takes effect when Firstslip is started again."))
