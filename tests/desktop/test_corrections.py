"""Lines of a page corrected by hand, with keys and with the pointer; only touched lines are read again."""

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent, QNativeGestureEvent, QPointingDevice
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from desktop.desk import Desk
from desktop.maths import tidy
from desktop.reading import PageReader
from desktop.window import Window
from tests.desktop.samples import sample, truth

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)

PAGE = "candidate-4136.jpg"


class CountingReader(PageReader):
    """The real reader; counts how many lines it is given."""

    def __init__(self):
        super().__init__()
        self.lines_read = 0

    def load(self):
        reader = super().load()
        outer = self

        class Counted:
            def read(self, crops, **options):
                outer.lines_read += len(crops)
                return reader.read(crops, **options)

        return Counted()


@pytest.fixture(scope="module")
def reader():
    return CountingReader()


@pytest.fixture
def window(qtbot, reader, checker):
    window = Window(Desk(reader=reader, checker=checker))
    qtbot.addWidget(window)
    window.show()
    with qtbot.waitSignal(window._desk.document_checked, timeout=120_000):
        window.open_files([sample(PAGE)])
    settle(qtbot, window)
    reader.lines_read = 0
    yield window
    window.close()


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window._desk.busy, timeout=120_000)


def press(window, key, modifier=Qt.KeyboardModifier.NoModifier):
    QTest.keyClick(window.focusWidget() or window, key, modifier)


CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier


def test_lines_are_joined_and_parted_again_with_keys_and_only_touched_ones_are_read(qtbot, window, reader):
    document = window.document
    written = [tidy(line["latex"]) for line in truth(PAGE)["lines"]]
    before = document.lines
    window.list.choose(4)
    window.list.setFocus()
    press(window, Qt.Key.Key_J, CTRL)
    settle(qtbot, window)
    assert len(document.lines) == len(before) - 1
    assert reader.lines_read == 1
    assert document.lines[:4] == before[:4]
    joined = document.lines[4].box
    assert joined.y <= before[4].box.y
    assert joined.y + joined.h >= before[5].box.y + before[5].box.h
    press(window, Qt.Key.Key_B, CTRL)  # the cut lies level through the middle, between the two lines
    press(window, Qt.Key.Key_Return)
    settle(qtbot, window)
    assert reader.lines_read == 3
    assert [tidy(line.latex) for line in document.lines[4:]] == written[4:]
    window._desk.undo_group.undo()
    window._desk.undo_group.undo()
    assert document.lines == before
    settle(qtbot, window)


def test_line_is_removed_and_added_again_by_drawing_with_the_pointer(qtbot, window, reader):
    document = window.document
    removed = document.lines[2]
    window.list.choose(2)
    window.list.setFocus()
    press(window, Qt.Key.Key_Delete)
    assert removed not in document.lines
    assert reader.lines_read == 0
    press(window, Qt.Key.Key_Insert)
    x, y, w, h = removed.box
    start, end = (window.page.mapFromScene(QPointF(*place)) for place in ((x - 9, y - 9), (x + w + 9, y + h + 9)))
    view = window.page.viewport()
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    for share in (0.3, 0.7, 1.0):
        QTest.mouseMove(view, start + (end - start) * share)
        QApplication.processEvents()
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=end)
    settle(qtbot, window)
    assert reader.lines_read == 1
    assert window.list.chosen == 2
    assert tidy(document.lines[2].latex) == tidy(removed.latex)


def test_line_is_redrawn_with_keys(qtbot, window, reader):
    document = window.document
    old = document.lines[0].box
    window.list.choose(0)
    window.list.setFocus()
    press(window, Qt.Key.Key_B, CTRL | SHIFT)
    for _ in range(12):
        press(window, Qt.Key.Key_Left, SHIFT)  # the right side comes nearer
    press(window, Qt.Key.Key_Return)
    settle(qtbot, window)
    assert document.lines[0].box.w < old.w * 0.9
    assert reader.lines_read == 1


def test_escape_leaves_the_tool_and_nothing_changes(qtbot, window):
    before = window.document.lines
    window.list.choose(1)
    window.list.setFocus()
    press(window, Qt.Key.Key_B, CTRL)
    assert window.page._tool is not None
    press(window, Qt.Key.Key_Escape)
    assert window.page._tool is None
    assert window.document.lines is before
    assert window.focusWidget() is window.list


def test_cut_beside_the_writing_is_told_in_a_sentence(qtbot, window):
    before = window.document.lines
    window.list.choose(1)
    window.list.setFocus()
    press(window, Qt.Key.Key_B, CTRL)
    for _ in range(30):
        press(window, Qt.Key.Key_Up)
    with qtbot.waitSignal(window._desk.problem, timeout=60_000):
        press(window, Qt.Key.Key_Return)
    assert "leaves one side without writing" in window.notice.text
    assert window.document.lines is before


def test_line_is_moved_in_the_order_of_reading(qtbot, window):
    document = window.document
    first, second, *rest = document.lines
    window.list.choose(0)
    window.list.setFocus()
    press(window, Qt.Key.Key_Down, CTRL | SHIFT)
    assert document.lines == (second, first, *rest)
    assert window.list.chosen == 1
    press(window, Qt.Key.Key_Up, CTRL | SHIFT)
    assert document.lines == (first, second, *rest)
    settle(qtbot, window)


def test_shift_and_click_joins_another_line_to_the_chosen_one(qtbot, window):
    document = window.document
    count = len(document.lines)
    window.list.choose(0)
    x, y, w, h = document.lines[1].box
    place = window.page.mapFromScene(QPointF(x + w / 2, y + h / 2))
    QTest.mouseClick(window.page.viewport(), Qt.MouseButton.LeftButton, SHIFT, QPoint(place))
    settle(qtbot, window)
    assert len(document.lines) == count - 1


def test_arrow_keys_on_the_page_walk_through_the_lines(qtbot, window):
    window.list.choose(0)
    window.page.setFocus()
    press(window, Qt.Key.Key_Down)
    assert window.list.chosen == 1
    assert window.focusWidget() is window.page


def test_pinch_zooms(qtbot, window):
    before = window.page.transform().m11()
    device = QPointingDevice.primaryPointingDevice()
    point = QPointF(50, 50)
    pinch = QNativeGestureEvent(
        Qt.NativeGestureType.ZoomNativeGesture, device, 2, point, point, point, 0.5, QPointF(0, 0)
    )
    assert pinch.type() == QEvent.Type.NativeGesture
    QApplication.sendEvent(window.page.viewport(), pinch)
    assert window.page.transform().m11() == pytest.approx(before * 1.5, rel=0.01)


def test_small_mark_is_hit_within_24_pixels(qtbot, window):
    (mark, *_) = window.page._lines.marks
    window.page.fit()
    window.page.scale(0.2, 0.2)  # far away, so that the label is a few pixels high
    middle = window.page.mapFromScene(mark.label.center())
    assert mark.label.height() * window.page.transform().m11() < 8
    assert window.page._line_at(QPointF(middle) + QPointF(0, 10)) == mark.line


def drag_row(window, row, onto, share, *, release=True):
    """Drag a row of the list onto another, to a share of its height."""
    view = window.list.viewport()
    start = window.list.visualRect(window.list.model().index(row)).center()
    rect = window.list.visualRect(window.list.model().index(onto))
    end = QPoint(rect.center().x(), round(rect.top() + rect.height() * share))
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    for part in (0.2, 0.6, 1.0):
        place = QPointF(start) + (QPointF(end) - QPointF(start)) * part
        event = QMouseEvent(
            QEvent.Type.MouseMove, place, view.mapToGlobal(place), Qt.MouseButton.NoButton, Qt.MouseButton.LeftButton,
            Qt.KeyboardModifier.NoModifier,
        )  # fmt: skip
        QApplication.sendEvent(view, event)
    if release:
        QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=end)


@pytest.mark.parametrize(
    ("onto", "share", "order"), [(0, 0.2, (2, 0, 1, 3)), (0, 0.8, (0, 2, 1, 3)), (3, 0.8, (0, 1, 3, 2))]
)
def test_line_is_dragged_to_another_place_in_the_list_and_back_with_undo(qtbot, window, reader, onto, share, order):
    document = window.document
    before = document.lines
    window.resize(1280, 1400)
    QApplication.processEvents()
    drag_row(window, 2, onto, share)
    assert [before.index(find_like(before, line)) for line in document.lines[:4]] == list(order)
    assert window.list.chosen == order.index(2)
    assert reader.lines_read == 0
    window._desk.undo_group.undo()
    assert document.lines == before
    settle(qtbot, window)


def find_like(lines, wanted):
    return next(line for line in lines if line.box == wanted.box)


def test_drag_is_given_up_with_escape_and_shows_where_the_line_would_go(qtbot, window):
    before = window.document.lines
    window.resize(1280, 1400)
    QApplication.processEvents()
    still = window.list.grab().toImage()
    drag_row(window, 3, 0, 0.1, release=False)
    assert window.list.grab().toImage() != still
    QTest.keyClick(window.list, Qt.Key.Key_Escape)
    QTest.mouseRelease(window.list.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(5, 5))
    assert window.document.lines == before


def test_line_is_moved_with_keys_and_stays_in_its_working(qtbot, window):
    document = window.document
    before, groups = document.lines, [len(verdict.lines) for verdict in document.verdicts]
    window.list.choose(2)
    window.list.setFocus()
    press(window, Qt.Key.Key_Up, CTRL | SHIFT)
    assert document.lines[1].box == before[2].box
    assert window.list.chosen == 1
    settle(qtbot, window)
    assert [len(verdict.lines) for verdict in document.verdicts] == groups
    press(window, Qt.Key.Key_Down, CTRL | SHIFT)
    assert [line.box for line in document.lines] == [line.box for line in before]
    settle(qtbot, window)


def test_line_is_joined_to_the_one_above_with_a_key_and_parted_again(qtbot, window):
    document = window.document
    window.list.choose(2)
    window.list.setFocus()
    press(window, Qt.Key.Key_J, CTRL | SHIFT)
    assert document.lines[2].carries_on is True
    settle(qtbot, window)
    assert [row.verdict for row in document.verdicts[0].report.lines][1:3].count("note") == 1
    press(window, Qt.Key.Key_J, CTRL | SHIFT)
    assert document.lines[2].carries_on is False
    window._desk.undo_group.undo()
    window._desk.undo_group.undo()
    assert document.lines[2].carries_on is None
    settle(qtbot, window)
