"""Starts Qt and the window."""

from __future__ import annotations

import logging
import signal
import sys
from collections.abc import Sequence
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from types import TracebackType

from PySide6.QtWidgets import QApplication

from desktop.desk import Desk
from desktop.set_actions import SetActions
from desktop.sets import Sets
from desktop.settings import Settings, sets_folder
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


def run_window(files: Sequence[Path]) -> int:
    """Open the window on files and stay until it is closed; returns the exit status."""
    application = make_application()
    settings = Settings()
    desk = Desk()
    window = Window(desk)
    sets = Sets(desk, sets_folder())
    actions = SetActions(window, sets, settings)
    window.restoreGeometry(settings.geometry)

    def show_fault(kind: type[BaseException], fault: BaseException, trace: TracebackType | None) -> None:
        log.error("fault in the window", exc_info=(kind, fault, trace))
        window.notice.say("Something went wrong in the program; nothing is lost. Try again, or see the log.")

    sys.excepthook = show_fault
    signal.signal(signal.SIGINT, signal.SIG_DFL)  # Ctrl+C in the terminal ends the program at once
    window.show()
    actions.begin(files)
    desk.warm_up()
    status = application.exec()
    sets.close()
    settings.save()
    return status
