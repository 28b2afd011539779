"""The paper by keys alone: strokes selected, moved, rubbed out, and no key that does something else there."""

import numpy as np
import pytest
from PySide6.QtCore import QPointF, Qt
from PySide6.QtTest import QTest

from desktop.pen_page import PIXELS_A_MM
from tests.desktop.test_pen_view import (  # noqa: F401
    canvas,
    draw,
    line,
    reader,
    settle,
    window,
    write_sample,
)

# ruff: noqa: F811
pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)

def key(canvas, key, modifier=Qt.KeyboardModifier.NoModifier):
    QTest.keyClick(canvas, key, modifier)


ALT, SHIFT = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ShiftModifier


def test_strokes_are_selected_one_after_the_other_with_keys_moved_and_rubbed_out(window, canvas):
    for row in range(4):
        draw(canvas, line(60, 60 + 50 * row, 200, 60 + 50 * row))
    canvas.setFocus()
    before = window.document.strokes
    seen = []
    for _ in range(5):
        key(canvas, Qt.Key.Key_Right, ALT)
        seen.append(canvas.chosen)
    assert seen == [(0,), (1,), (2,), (3,), (0,)]
    key(canvas, Qt.Key.Key_Left, ALT)
    assert canvas.chosen == (3,)
    key(canvas, Qt.Key.Key_Left, ALT)
    key(canvas, Qt.Key.Key_Left, ALT | SHIFT)
    assert canvas.chosen == (1, 2)
    assert canvas.accessibleDescription() == "2 of 4 strokes selected"
    key(canvas, Qt.Key.Key_Right, ALT | SHIFT)
    assert canvas.chosen == (2,)
    key(canvas, Qt.Key.Key_Right, ALT | SHIFT)
    assert canvas.chosen == (2, 3)
    key(canvas, Qt.Key.Key_Down)
    moved_by = window.document.strokes[2].points - before[2].points
    assert np.allclose(moved_by, (0, PIXELS_A_MM))
    assert window.document.strokes[1] is before[1]
    key(canvas, Qt.Key.Key_Delete)
    assert window.document.strokes == before[:2]
    window._desk.undo_group.undo()
    window._desk.undo_group.undo()
    assert len(window.document.strokes) == 4
    assert all(np.array_equal(a.points, b.points) for a, b in zip(window.document.strokes, before, strict=True))


def test_stroke_selected_by_key_is_brought_into_view(window, canvas):
    draw(canvas, line(60, 60, 200, 60))
    first = QPointF(*window.document.strokes[0].points[0])
    canvas.zoom(4.0)
    canvas.drag(QPointF(-10_000, -10_000), 1.0, QPointF(0, 0))
    assert not canvas.rect().contains(canvas.from_page(first).toPoint())
    canvas.setFocus()
    key(canvas, Qt.Key.Key_Right, ALT)
    assert canvas.rect().contains(canvas.from_page(first).toPoint())


def test_keys_select_nothing_on_an_empty_page_and_nothing_is_announced(window, canvas):
    canvas.setFocus()
    key(canvas, Qt.Key.Key_Right, ALT)
    key(canvas, Qt.Key.Key_Left, ALT | SHIFT)
    assert canvas.chosen == ()
    assert canvas.accessibleDescription() == ""


def test_del_rubs_out_strokes_and_leaves_the_line_list_alone_also_with_a_line_chosen(qtbot, window, canvas):
    """Del removes a line elsewhere in the window; on the paper it means strokes, or nothing."""
    write_sample(canvas)
    settle(qtbot, window)
    document = window.document
    lines, strokes = document.lines, document.strokes
    window.list.choose(0)
    canvas.setFocus()
    assert window.menus.actions["remove"].isEnabled()
    key(canvas, Qt.Key.Key_Delete)
    assert document.lines == lines
    assert document.strokes == strokes
    key(canvas, Qt.Key.Key_Right, ALT)
    key(canvas, Qt.Key.Key_Delete)
    assert document.strokes == strokes[1:]
    settle(qtbot, window)
