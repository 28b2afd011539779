"""Writing with a pen, driven by synthesised tablet, mouse and touch events on the real window."""

from itertools import pairwise

import numpy as np
import pytest
from PySide6.QtCore import QEvent, QPointF, Qt
from PySide6.QtGui import QInputDevice, QMouseEvent, QPointingDevice, QTabletEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from desktop.desk import Desk
from desktop.desk_line import State
from desktop.maths import tidy
from desktop.page_changes import SetStrokes
from desktop.pen_drawing import Background
from desktop.pen_input import PenTool
from desktop.pen_page import PIXELS_A_MM, drawn_picture, erased, moved, scratched, within_lasso
from desktop.reading import PageReader
from desktop.window import Window
from recognition.ink import Stroke, read_inkml, strokes_to_lines
from tests.desktop.samples import sample, truth

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)

INK_PAGE = "candidate-4160.inkml"
CAN = QInputDevice.Capability
PEN = QPointingDevice(
    "a pen", 1, QInputDevice.DeviceType.Stylus, QPointingDevice.PointerType.Pen, CAN.Position | CAN.Pressure, 1, 3
)
RUBBER = QPointingDevice(
    "a pen's other end", 2, QInputDevice.DeviceType.Stylus, QPointingDevice.PointerType.Eraser,
    CAN.Position | CAN.Pressure, 1, 1,
)  # fmt: skip
NO_BUTTON, LEFT, RIGHT = Qt.MouseButton.NoButton, Qt.MouseButton.LeftButton, Qt.MouseButton.RightButton


@pytest.fixture(scope="module")
def reader():
    return PageReader()


@pytest.fixture
def window(qtbot, reader, checker):
    window = Window(Desk(reader=reader, checker=checker))
    qtbot.addWidget(window)
    window.show()
    qtbot.waitExposed(window)
    window.writing.new_page()
    QTest.qWait(50)  # the layout comes to rest
    yield window
    window.close()


@pytest.fixture
def canvas(window):
    return window.pen.canvas


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window._desk.busy, timeout=60_000)


def pen_event(canvas, kind, place, *, pressure=0.5, device=PEN, button=NO_BUTTON, buttons=LEFT):
    where = QPointF(*place)
    event = QTabletEvent(
        kind, device, where, QPointF(canvas.mapToGlobal(where.toPoint())), pressure, 0.0, 0.0, 0.0, 0.0, 0.0,
        Qt.KeyboardModifier.NoModifier, button, buttons,
    )  # fmt: skip
    event.ignore()
    QApplication.sendEvent(canvas, event)
    return event


def draw(canvas, places, *, pressures=None, device=PEN, button=LEFT):
    """A stroke of tablet events through places of the widget."""
    pressures = pressures or [0.5] * len(places)
    pen_event(canvas, QEvent.Type.TabletPress, places[0], pressure=pressures[0], device=device, button=button,
              buttons=button)  # fmt: skip
    for place, pressure in zip(places[1:], pressures[1:], strict=True):
        pen_event(canvas, QEvent.Type.TabletMove, place, pressure=pressure, device=device, buttons=button)
    pen_event(canvas, QEvent.Type.TabletRelease, places[-1], pressure=0, device=device, button=button,
              buttons=NO_BUTTON)  # fmt: skip


def line(x0, y0, x1, y1, count=12):
    return [(x0 + (x1 - x0) * i / (count - 1), y0 + (y1 - y0) * i / (count - 1)) for i in range(count)]


def stroke(places):
    return Stroke(np.array(places, float))


def write_sample(canvas):
    """Write the sample drawing on the paper, stroke by stroke, as the pen gave it."""
    found = strokes_to_lines(ink := read_inkml(sample(INK_PAGE)))
    for one in ink.strokes:
        points = found.picture.placed(one) * 0.8 + 30
        draw(canvas, [(p.x(), p.y()) for p in (canvas.from_page(QPointF(x, y)) for x, y in points)])


def test_pen_events_are_accepted_and_become_a_stroke_with_pressure(window, canvas):
    event = pen_event(canvas, QEvent.Type.TabletPress, (50, 60), pressure=0.2, button=LEFT)
    assert event.isAccepted()
    pen_event(canvas, QEvent.Type.TabletMove, (80, 60), pressure=0.9)
    pen_event(canvas, QEvent.Type.TabletRelease, (80, 60), pressure=0, button=LEFT, buttons=NO_BUTTON)
    (one,) = window.document.strokes
    assert one.pressure == pytest.approx([0.2, 0.9], abs=1e-4)
    start = canvas.to_page(QPointF(50, 60))
    assert one.points[0] == pytest.approx([start.x(), start.y()])


def test_every_event_of_the_pen_is_kept(window, canvas):
    places = [(40 + i, 80 + (i * 7) % 5) for i in range(120)]
    draw(canvas, places)
    assert len(window.document.strokes[0].points) == 120


def test_hard_pressure_draws_wider_than_soft(window, canvas):
    draw(canvas, line(40, 60, 240, 60), pressures=[0.05] * 12)
    draw(canvas, line(40, 120, 240, 120), pressures=[1.0] * 12)
    image = canvas.grab().toImage()

    def dark(y):
        return sum(image.pixelColor(140, row).lightness() < 120 for row in range(y - 8, y + 9))

    assert dark(120) > dark(60)


def test_eraser_end_rubs_out_the_stroke_that_it_touches_and_undo_brings_it_back(window, canvas):
    draw(canvas, line(40, 60, 240, 60))
    draw(canvas, line(40, 160, 240, 160))
    kept = window.document.strokes[1]
    draw(canvas, line(140, 30, 140, 90), device=RUBBER)
    assert window.document.strokes == (kept,)
    window._desk.undo_group.undo()
    assert len(window.document.strokes) == 2
    assert canvas._strokes is window.document.strokes


def test_second_button_of_the_pen_selects_and_the_selection_is_dragged_and_moved_with_keys(window, canvas):
    draw(canvas, line(100, 100, 160, 100))
    draw(canvas, line(100, 250, 160, 250))
    draw(canvas, [(80, 80), (180, 80), (180, 120), (80, 120), (80, 80)], button=RIGHT)
    assert canvas.chosen == (0,)
    before = window.document.strokes[0].points.copy()
    window.pen.take_tool(PenTool.SELECT)
    draw(canvas, line(130, 100, 130, 150))
    down = 50 / canvas._scale
    assert window.document.strokes[0].points == pytest.approx(before + np.array([0, down]))
    canvas.setFocus()
    QTest.keyClick(canvas, Qt.Key.Key_Right)
    assert window.document.strokes[0].points == pytest.approx(before + np.array([PIXELS_A_MM, down]))
    QTest.keyClick(canvas, Qt.Key.Key_Delete)
    assert len(window.document.strokes) == 1


def test_scribble_over_writing_scratches_it_out_but_a_letter_does_not(window, canvas):
    draw(canvas, line(100, 100, 160, 100))
    draw(canvas, line(130, 80, 130, 120))  # a plus: crossing is no scratching
    assert len(window.document.strokes) == 2
    zigzag = [(90 + i * 3 + (0 if i % 2 else 40), 85 + i * 3) for i in range(14)]
    draw(canvas, [p for a, b in pairwise(zigzag) for p in line(*a, *b, count=4)])
    assert window.document.strokes == ()


def test_mouse_writes_with_full_pressure(window, canvas):
    QTest.mousePress(canvas, LEFT, pos=QPointF(60, 60).toPoint())
    QTest.mouseMove(canvas, QPointF(120, 80).toPoint())
    QApplication.processEvents()
    QTest.mouseRelease(canvas, LEFT, pos=QPointF(120, 80).toPoint())
    (one,) = window.document.strokes
    assert set(one.pressure) == {1.0}


def mouse_event(canvas, kind, place, source, device=None):
    where = QPointF(*place)
    button = LEFT if kind is not QEvent.Type.MouseMove else NO_BUTTON
    arguments = [kind, where, where, QPointF(canvas.mapToGlobal(where.toPoint())), button, LEFT,
                 Qt.KeyboardModifier.NoModifier, source]  # fmt: skip
    if device is not None:
        arguments.append(device)
    QApplication.sendEvent(canvas, QMouseEvent(*arguments))


def test_mouse_events_made_from_the_pen_draw_nothing(window, canvas):
    made = Qt.MouseEventSource.MouseEventSynthesizedByQt
    for kind, place in ((QEvent.Type.MouseButtonPress, (60, 60)), (QEvent.Type.MouseMove, (90, 90)),
                        (QEvent.Type.MouseButtonRelease, (90, 90))):  # fmt: skip
        mouse_event(canvas, kind, place, made)
    assert window.document.strokes == ()


def test_mouse_is_ignored_while_a_pen_stroke_is_open(window, canvas):
    pen_event(canvas, QEvent.Type.TabletPress, (50, 60), button=LEFT)
    pen_event(canvas, QEvent.Type.TabletMove, (80, 60))
    own = Qt.MouseEventSource.MouseEventNotSynthesized
    mouse_event(canvas, QEvent.Type.MouseButtonPress, (200, 200), own)
    mouse_event(canvas, QEvent.Type.MouseMove, (220, 220), own)
    mouse_event(canvas, QEvent.Type.MouseButtonRelease, (220, 220), own)
    pen_event(canvas, QEvent.Type.TabletMove, (90, 60))
    pen_event(canvas, QEvent.Type.TabletRelease, (90, 60), button=LEFT, buttons=NO_BUTTON)
    (one,) = window.document.strokes
    assert float(np.ptp(one.points[:, 1])) == 0


def fingers(canvas, *moves):
    device = QTest.createTouchDevice()
    touch = QTest.touchEvent(canvas, device, False)
    for number, places in enumerate(moves):
        for finger, place in enumerate(places):
            where = QPointF(*place).toPoint()
            if number == 0:
                touch.press(finger, where, canvas)
            elif number == len(moves) - 1:
                touch.release(finger, where, canvas)
            else:
                touch.move(finger, where, canvas)
        touch.commit()
    QApplication.processEvents()


def test_fingers_move_and_zoom_the_paper_and_write_nothing(window, canvas):
    canvas.zoom(3)  # so that there is paper beyond the view
    scale, offset = canvas._scale, canvas._offset.y()
    fingers(canvas, [(200, 300)], [(200, 260)], [(200, 220)], [(200, 220)])
    assert canvas._offset.y() == pytest.approx(offset - 80, abs=2)
    fingers(canvas, [(200, 300), (260, 300)], [(180, 300), (300, 300)], [(180, 300), (300, 300)])
    assert canvas._scale == pytest.approx(scale * 2, rel=0.05)
    assert window.document.strokes == ()


def test_palm_is_ignored_while_the_pen_is_near(window, canvas):
    canvas.zoom(3)  # so that there is paper beyond the view
    offset = canvas._offset
    QApplication.sendEvent(
        QApplication.instance(), QTabletEvent(
            QEvent.Type.TabletEnterProximity, PEN, QPointF(), QPointF(), 0, 0, 0, 0, 0, 0,
            Qt.KeyboardModifier.NoModifier, NO_BUTTON, NO_BUTTON,
        ),
    )  # fmt: skip
    assert canvas.input.is_pen_near
    fingers(canvas, [(200, 300)], [(200, 200)], [(200, 200)])
    assert canvas._offset == offset
    QApplication.sendEvent(
        QApplication.instance(), QTabletEvent(
            QEvent.Type.TabletLeaveProximity, PEN, QPointF(), QPointF(), 0, 0, 0, 0, 0, 0,
            Qt.KeyboardModifier.NoModifier, NO_BUTTON, NO_BUTTON,
        ),
    )  # fmt: skip
    assert not canvas.input._is_near


def test_what_is_written_is_read_when_the_pen_rests_and_checked(qtbot, window, canvas):
    planted = truth(INK_PAGE)
    write_sample(canvas)
    assert window.document.lines == ()  # not while the pen writes
    with qtbot.waitSignal(window._desk.document_checked, timeout=60_000):
        settle(qtbot, window)
    document = window.document
    settle(qtbot, window)
    assert [tidy(one.latex) for one in document.lines] == [tidy(one["latex"]) for one in planted["lines"]]
    assert document.verdicts[0].report.first_slip == planted["planted"]["line"]
    assert canvas._marks  # shown beside the writing


def test_only_the_line_that_changed_is_read_again_and_what_was_confirmed_stays(qtbot, window, canvas, reader):
    write_sample(canvas)
    settle(qtbot, window)
    document = window.document
    window.list.choose(0)
    window.confirm()
    settle(qtbot, window)
    assert document.lines[0].state is State.CONFIRMED
    given = []
    real = reader.load()

    class Noting:
        def read(self, crops, **options):
            given.append(len(crops))
            return real.read(crops, **options)

    reader._reader = Noting()
    try:
        low = max(one.points[:, 1].max() for one in document.strokes) + 60
        start, end = (canvas.from_page(QPointF(x, low)) for x in (60, 110))
        draw(canvas, line(start.x(), start.y(), end.x(), end.y()))
        settle(qtbot, window)
    finally:
        reader._reader = real
    assert given == [1]
    assert document.lines[0].state is State.CONFIRMED
    assert len(document.lines) == 4


def test_undoing_the_last_stroke_reads_nothing_anew_and_gives_the_old_lines(qtbot, window, canvas):
    write_sample(canvas)
    settle(qtbot, window)
    lines = [one.latex for one in window.document.lines]
    draw(canvas, line(300, 400, 330, 400))
    settle(qtbot, window)
    window._desk.undo_group.undo()
    settle(qtbot, window)
    assert [one.latex for one in window.document.lines] == lines


def test_drawing_is_saved_as_inkml_and_opened_again_with_the_same_numbers(qtbot, window, canvas, tmp_path):
    draw(canvas, line(60, 60, 120, 90), pressures=[i / 12 for i in range(12)])
    window.writing.save(tmp_path / "own.inkml")
    (again,) = read_inkml(tmp_path / "own.inkml").strokes
    (written,) = window.document.strokes
    assert np.array_equal(again.points, written.points)
    assert np.array_equal(again.pressure, written.pressure)
    assert np.array_equal(again.time, written.time)


def test_saving_where_nothing_can_be_written_is_told(window, canvas, tmp_path):
    draw(canvas, line(60, 60, 120, 90))
    window.writing.save(tmp_path / "no folder" / "own.inkml")
    assert "cannot be saved there" in window.notice.text


def test_opened_drawing_can_be_written_on(qtbot, window, canvas):
    with qtbot.waitSignal(window._desk.document_checked, timeout=60_000):
        window.open_files([sample(INK_PAGE)])
    settle(qtbot, window)
    window.pages.setCurrentRow(1)
    readings = [one.latex for one in window.document.lines]
    QTest.keyClick(window.list, Qt.Key.Key_F8)
    assert window.is_writing
    count = len(window.document.strokes)
    draw(canvas, line(60, 30, 90, 30))
    assert len(window.document.strokes) == count + 1
    window._desk.undo_group.undo()
    settle(qtbot, window)
    assert [one.latex for one in window.document.lines] == readings


@pytest.mark.parametrize("background", list(Background))
def test_paper_is_squared_ruled_or_plain(window, canvas, background):
    canvas.set_background(background)
    image = canvas.grab().toImage()
    shades = {image.pixelColor(x, y).name() for x in range(10, 200) for y in range(10, 200)}
    assert (len(shades) == 1) == (background is Background.PLAIN)


def test_geometry_of_rubber_lasso_and_moves():
    level = stroke([(0, 0), (100, 0)])
    assert erased([level], np.array([[50.0, 4.0]]), reach=5) == (0,)
    assert erased([level], np.array([[50.0, 6.0]]), reach=5) == ()
    square = np.array([[-5, -5], [60, -5], [60, 5], [-5, 5]], float)
    dense = stroke([(x, 0) for x in range(0, 101, 10)])
    assert within_lasso([dense], square) == (0,)  # 0 to 60 of 0 to 100: 7 of 11 points
    assert within_lasso([dense], square - [20, 0]) == ()
    (shifted,) = moved([level], (0,), (3, 4))
    assert shifted.points.tolist() == [[3, 4], [103, 4]]


def test_letters_are_no_scratches():
    under = stroke([(x, 10) for x in range(0, 40, 2)])
    w = stroke(line(0, 0, 10, 20) + line(10, 20, 20, 0) + line(20, 0, 30, 20) + line(30, 20, 40, 0))
    assert scratched([under], w) == ()


def test_picture_of_a_page_is_white_with_dark_ink():
    picture = drawn_picture([stroke([(10, 10), (60, 10)])], (100, 40))
    assert picture.shape == (40, 100, 3)
    assert picture[10, 30].max() < 90
    assert picture[30].min() == 255


def test_strokes_set_elsewhere_are_shown(window, canvas):
    window._desk.do(window.document, SetStrokes((stroke([(10, 10), (60, 60)]),), ()))
    assert len(canvas._strokes) == 1
