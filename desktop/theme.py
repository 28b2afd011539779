"""Colours that follow the desktop's light or dark scheme."""

from __future__ import annotations

from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QAbstractButton, QWidget

from desktop.desk_line import State
from desktop.verdict_style import VerdictStyle

__all__ = [
    "LEAST_TARGET", "enlarge_targets", "ground", "ink", "is_dark", "mix", "quiet", "state_colour", "verdict_colour",
]

LEAST_TARGET = 24
"""Pixels that a target for pointer or finger is high and wide at least."""

_STATE = {
    State.UNREAD: ("#4E5358", "#C3C8CE"),
    State.DOUBTFUL: ("#7A5200", "#F2CB6B"),
    State.READ: ("#50565E", "#B3BAC3"),
    State.CONFIRMED: ("#0B6670", "#7EDBE6"),
}


def is_dark(palette: QPalette) -> bool:
    """Whether text is lighter than what lies behind it."""
    return palette.color(QPalette.ColorRole.Text).lightness() > palette.color(QPalette.ColorRole.Base).lightness()


def ink(palette: QPalette) -> QColor:
    """The colour of text."""
    return palette.color(QPalette.ColorRole.Text)


def ground(palette: QPalette) -> QColor:
    """The colour behind text in lists and fields."""
    return palette.color(QPalette.ColorRole.Base)


def quiet(palette: QPalette) -> QColor:
    """Text that is there to be found and not to be seen first; still 4.5:1."""
    return QColor(_STATE[State.READ][is_dark(palette)])


def verdict_colour(style: VerdictStyle, palette: QPalette) -> QColor:
    """The verdict's colour for this scheme."""
    return QColor(style.on_dark if is_dark(palette) else style.on_light)


def state_colour(state: State, palette: QPalette) -> QColor:
    """The colour of a state's word for this scheme."""
    return QColor(_STATE[state][is_dark(palette)])


def enlarge_targets(top: QWidget) -> None:
    """Make every button of a window at least as high as a finger or a shaky hand needs (WCAG 2.2, 2.5.8)."""
    for button in top.findChildren(QAbstractButton):
        if not button.objectName().startswith("qt_"):
            button.setMinimumHeight(max(button.minimumHeight(), LEAST_TARGET))


def mix(one: QColor, other: QColor, share: float) -> QColor:
    """One colour with a share of another laid over it."""
    pairs = ((one.redF(), other.redF()), (one.greenF(), other.greenF()), (one.blueF(), other.blueF()))
    return QColor.fromRgbF(*(a * (1 - share) + b * share for a, b in pairs))
