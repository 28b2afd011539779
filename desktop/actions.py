"""Every action of the window: its words, its keys and what it does. The menus and the help on keys come from here."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from PySide6.QtCore import QObject
from PySide6.QtGui import QAction, QKeySequence

from desktop.language import tr

__all__ = ["Entry", "make_action"]


@dataclass(frozen=True, slots=True)
class Entry:
    """An action before it is made; keys in Qt's portable text, the first is shown in the menu.

    checks: whether it is switched on and off; then `run` is told which.
    """

    words: str
    keys: Sequence[str]
    run: Callable[..., object]
    tip: str = ""
    checks: bool = False


def make_action(entry: Entry, parent: QObject) -> QAction:
    """The action of an entry, with its keys."""
    action = QAction(tr(entry.words), parent)
    action.setShortcuts([QKeySequence(key) for key in entry.keys])
    if entry.checks:
        action.setCheckable(True)
        action.toggled.connect(entry.run)
    else:
        action.triggered.connect(lambda checked=False: entry.run())
    if entry.tip:
        action.setToolTip(tr(entry.tip))
        action.setStatusTip(tr(entry.tip))
    return action
