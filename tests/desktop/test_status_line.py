"""The status line at narrow widths: what does not fit is cut with dots and told whole in a tool tip."""

import pytest
from PySide6.QtWidgets import QLabel

from desktop.elided_label import ElidedLabel

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
NAME = "Reading a photo with a long name, page 3.jpg (3 of 30)" + ", and more" * 20


def narrow(qtbot, window):
    font = window.font()
    font.setPointSizeF(font.pointSizeF() * 1.8)
    window.statusBar().setFont(font)
    for label in window.statusBar().findChildren(QLabel):
        label.setFont(font)
    qtbot.wait(20)
    window.resize(window.minimumSizeHint().width(), 500)
    qtbot.wait(20)


def test_nothing_in_the_status_line_is_cut_without_dots_and_tool_tip(qtbot, window):
    window.progress.show_activity(NAME, 2, 5)
    narrow(qtbot, window)
    labels = [label for label in window.statusBar().findChildren(QLabel) if label.isVisible()]
    assert any(label.width() < label.sizeHint().width() for label in labels)
    for label in labels:
        if label.width() < label.fontMetrics().horizontalAdvance(label.text()):
            assert isinstance(label, ElidedLabel)
            assert label.toolTip() == label.text() != ""
    assert window.progress.isVisible() and window.progress.geometry().right() <= window.statusBar().width()


def test_message_has_the_room_that_it_needs_and_a_tool_tip(qtbot, window):
    bar = window.statusBar()
    bar.showMessage("Saved.")
    assert window._decides.isVisible()
    bar.showMessage("A sentence that takes the room of the words beside it. " * 4)
    assert not window._decides.isVisible()
    assert bar.toolTip() == bar.currentMessage()
    bar.clearMessage()
    assert window._decides.isVisible() and bar.toolTip() == ""
