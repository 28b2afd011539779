"""Starts Qt and the window."""

from __future__ import annotations

import logging
import signal
import sys
from collections.abc import Sequence
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from types import TracebackType

from PySide6.QtCore import QLocale
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QApplication

from desktop.desk import Desk
from desktop.language import tr
from desktop.options_menu import OptionsMenu
from desktop.reader_process import ReaderProcess
from desktop.set_actions import SetActions
from desktop.sets import Sets
from desktop.settings import Settings, sets_folder
from desktop.translation import choose_locale, install
from desktop.window import Window

__all__ = ["make_application", "run_window"]

log = logging.getLogger(__name__)

_SWITCH_S = 0.001
"""Seconds that a worker may compute in Python while the window waits; Python's own 5 ms add up to a visible halt."""


def make_application() -> QApplication:
    """The application with its name; colours follow the desktop's scheme."""
    sys.setswitchinterval(_SWITCH_S)
    application = QApplication(["firstslip"])
    application.setApplicationName("firstslip")
    application.setApplicationDisplayName("Firstslip")
    try:
        application.setApplicationVersion(version("firstslip"))
    except PackageNotFoundError:
        log.debug("not installed, so no version is known")
    if sys.platform.startswith("linux"):
        application.setStyle("Fusion")
    return application


def run_window(files: Sequence[Path], *, log_path: Path, ended_badly: bool = False) -> int:
    """Open the window on files and stay until it is closed.

    Args:
        files: pages, or one set.
        log_path: the log that the user may open.
        ended_badly: whether the program crashed the last time.
    Returns:
        The exit status.
    """
    application = make_application()
    settings = Settings()
    QLocale.setDefault(choose_locale(settings.language, decimal_comma=settings.decimal_comma))
    install(application, settings.language)
    reader = ReaderProcess()
    desk = Desk(reader=reader)
    window = Window(desk)
    sets = Sets(desk, sets_folder())
    actions = SetActions(window, sets, settings)
    options = OptionsMenu(window, settings, log_path)
    window.restoreGeometry(settings.geometry)

    def show_fault(kind: type[BaseException], fault: BaseException, trace: TracebackType | None) -> None:
        log.error("fault in the window", exc_info=(kind, fault, trace))
        window.notice.say(tr("Something went wrong in the program; nothing is lost. Try again, or see the log."))

    sys.excepthook = show_fault
    signal.signal(signal.SIGINT, signal.SIG_DFL)  # Ctrl+C in the terminal ends the program at once
    window.show()
    if ended_badly:
        keys = options.log.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
        words = tr("Firstslip ended badly last time. Your work is kept; the log ({keys}) may tell why.", keys=keys)
        window.notice.say(words)
    actions.begin(files)
    desk.warm_up()
    status = application.exec()
    sets.close()
    reader.close()
    settings.save()
    return status
