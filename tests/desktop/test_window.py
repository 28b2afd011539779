"""The window, driven as a user drives it, on real sample pages with the real reader and checker."""


import numpy as np
import pytest
from PySide6.QtCore import QMimeData, QPoint, QPointF, Qt, QUrl
from PySide6.QtGui import QColor, QDropEvent, QGuiApplication, QImage
from PySide6.QtTest import QTest

from desktop.desk import Desk
from desktop.desk_line import State
from desktop.dialogs import AboutBox, KeysBox, TypedWorkingBox
from desktop.document import Document
from desktop.line_changes import SetReading
from desktop.marked_picture import save_png
from desktop.maths import tidy
from desktop.reading import PageReader
from desktop.window import Window
from recognition.result import Box, Candidate, Line, Page
from tests.desktop.samples import sample, truth

SLIP_PAGE = "candidate-4107.jpg"
INK_PAGE = "candidate-4160.inkml"
READ_MS = 60_000


pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)


@pytest.fixture(scope="module")
def reader():
    return PageReader()


@pytest.fixture
def window(qtbot, reader, checker):
    desk = Desk(reader=reader, checker=checker)
    window = Window(desk)
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window._desk.busy, timeout=READ_MS)


def opened(qtbot, window, name):
    path = sample(name)
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        window.open_files([path])
    settle(qtbot, window)
    return window.document


def verdicts(document):
    return [row.verdict for verdict in document.verdicts for row in verdict.report.lines]


def press(window, key, modifier=Qt.KeyboardModifier.NoModifier):
    QTest.keyClick(window.focusWidget() or window, key, modifier)


def test_page_is_read_and_its_planted_slip_is_shown(qtbot, window):
    document = opened(qtbot, window, SLIP_PAGE)
    planted = truth(SLIP_PAGE)["planted"]
    (verdict,) = document.verdicts
    assert verdict.report.first_slip == planted["line"]
    assert window.list.chosen == planted["line"]
    assert window.page._lines.marks[0].line == planted["line"]
    assert window.page._lines.marks[0].frame is not None
    assert window.notice.isHidden()


def test_drawing_is_read_and_its_planted_slip_is_shown(qtbot, window):
    document = opened(qtbot, window, INK_PAGE)
    assert document.verdicts[0].report.first_slip == truth(INK_PAGE)["planted"]["line"]


def test_correcting_the_slip_and_confirming_makes_every_line_follow_and_undo_brings_it_back(qtbot, window):
    document = opened(qtbot, window, INK_PAGE)
    lines = [line["latex"] for line in truth(INK_PAGE)["lines"]]
    assert lines[1] == "=7n+14-3n^2+6n"
    window.list.choose(1)
    press(window, Qt.Key.Key_F2)
    assert window.focusWidget() is window.editor._field
    QTest.keyClicks(window.editor._field, "=7n+14-3n^2-6n")
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        press(window, Qt.Key.Key_Return)
    assert document.lines[1].state is State.CONFIRMED
    assert tidy(document.lines[1].latex) == "=7n+14-3n^2-6n"
    # The third line, written after the slip, is now the first that does not follow.
    assert verdicts(document) == ["start", "follows", "slip"]
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        window.list.setFocus()
        press(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert verdicts(document) == ["start", "slip", "ft"]


def test_keys_confirm_all_that_are_sure_and_number_keys_take_a_reading(qtbot, window):
    lines = (
        Line(Box(50, 50, 300, 40), (Candidate("2 ( k + 1 )", 0.99),)),
        Line(Box(50, 120, 300, 40), (Candidate("= 2 k + 7", 0.44), Candidate("= 2 k + 2", 0.35))),
        Line(Box(50, 190, 300, 40), (Candidate("= 2 + 2 k", 0.98),)),
    )
    document = Document.of_page(Page("page.jpg", 0, (600, 400), lines), None)
    window._desk.add(document)
    settle(qtbot, window)
    (verdict,) = document.verdicts
    assert verdict.check_reading_first
    assert window.list.chosen == 1
    window.list.setFocus()
    press(window, Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
    assert [line.state for line in document.lines] == [State.CONFIRMED, State.DOUBTFUL, State.CONFIRMED]
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        press(window, Qt.Key.Key_2)
    assert document.lines[1].latex == "= 2 k + 2"
    settle(qtbot, window)
    assert verdicts(document) == ["start", "follows", "follows"]


def test_line_that_does_not_parse_is_told_in_place_and_kept_on_a_second_enter(qtbot, window):
    window._desk.add_typed(["2(k+1)", "=2k+2"])
    settle(qtbot, window)
    window.list.choose(1)
    window.editor.edit()
    QTest.keyClicks(window.editor._field, "=2(k+1")
    press(window, Qt.Key.Key_Return)
    assert "bracket" in window.editor._problem.text()
    assert window.document.lines[1].latex == "=2k+2"
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        press(window, Qt.Key.Key_Return)
    assert verdicts(window.document) == ["start", "unreadable"]


def test_escape_gives_the_reading_back(qtbot, window):
    window._desk.add_typed(["2k", "=k+k"])
    settle(qtbot, window)
    window.list.choose(0)
    window.editor.edit()
    QTest.keyClicks(window.editor._field, "junk")
    press(window, Qt.Key.Key_Escape)
    assert window.editor.text == "2k"
    assert window.focusWidget() is window.list


def test_what_was_typed_is_kept_when_the_line_is_left_and_undone_in_one_step(qtbot, window):
    document = window._desk.add_typed(["2k", "=k+k", "=3k-k"])
    settle(qtbot, window)
    window.list.choose(1)
    window.editor.edit()
    QTest.keyClicks(window.editor._field, "=k+2k")
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        window.list.choose(2)
    assert document.lines[1].latex == "=k+2k"
    assert window.editor.text == "=3k-k"
    window._desk.undo_group.undo()
    assert document.lines[1].latex == "=k+k"
    assert not window._desk.undo_group.canUndo()


def test_confirming_makes_one_step_to_undo(qtbot, window):
    document = window._desk.add_typed(["2k", "=k+k", "=3k-k"])
    settle(qtbot, window)
    window.list.choose(0)
    window.editor.edit()
    QTest.keyClicks(window.editor._field, "k+k")
    press(window, Qt.Key.Key_Return)
    window.list.choose(2)
    window._desk.undo_group.undo()
    assert document.lines[0].latex == "2k"
    assert not window._desk.undo_group.canUndo()
    settle(qtbot, window)


def test_typed_working_is_checked_marked_and_saved(qtbot, window, tmp_path):
    # -2t times +4 is -8t; the third line follows from the second as written.
    box = TypedWorkingBox(window)
    box.set_text("$(5-2t)(t+4)$\n=5t+20-2t^2+8t \\\\\n=-2t^2+13t+20\n\n\\[2k=4\\]\nk=2")
    assert box.lines == ["(5-2t)(t+4)", "=5t+20-2t^2+8t", "=-2t^2+13t+20", "", "2k=4", "k=2"]
    document = window._desk.add_typed(box.lines)
    settle(qtbot, window)
    assert verdicts(document) == ["start", "slip", "ft", "start", "follows"]
    assert [verdict.lines for verdict in document.verdicts] == [(0, 1, 2), (3, 4)]
    line, (mark, *_) = document.lines[1].box, window.page._lines.marks
    assert mark.frame.left() > line.x + line.w / 2  # the last of four terms, not the whole line
    assert document.verdicts[0].slip.should_be == "-8t"
    for ending in ("png", "pdf"):
        with qtbot.waitSignal(window._desk.saved, timeout=READ_MS):
            window.save_picture(tmp_path / f"marked.{ending}")
        assert (tmp_path / f"marked.{ending}").stat().st_size > 2000
    assert QImage(str(tmp_path / "marked.png")).height() > document.size[1]


def test_typed_line_that_is_corrected_is_drawn_anew_on_the_page(qtbot, window):
    document = window._desk.add_typed(["2k+2", "=2(k+3)"])
    settle(qtbot, window)
    window._desk.do(document, SetReading(1, "=2(k+1)"))
    settle(qtbot, window)
    window.page._lines.hide()  # the marks change as well
    corrected = window.page.grab().toImage()
    window._desk.undo_group.undo()
    settle(qtbot, window)
    assert window.page.grab().toImage() != corrected


def test_division_by_zero_written_in_a_line_is_no_crash(qtbot, window):
    document = window._desk.add_typed([r"\frac{1}{0}", "=1"])
    settle(qtbot, window)
    assert len(document.verdicts[0].report.lines) == 2
    assert window.notice.isHidden()


@pytest.mark.logs("WARNING")
def test_saving_where_nothing_can_be_written_is_told_in_a_sentence(qtbot, window, tmp_path):
    window._desk.add_typed(["2k", "=k+k"])
    settle(qtbot, window)
    with qtbot.waitSignal(window._desk.problem, timeout=READ_MS):
        window.save_picture(tmp_path / "no such folder" / "marked.png")
    settle(qtbot, window)
    assert "could not be saved there. Choose another folder" in window.notice.text


def test_picture_saved_is_that_of_the_moment_though_the_page_changes_at_once(qtbot, window, tmp_path):
    document = window._desk.add_typed(["2k+2", "=2(k+3)"])
    settle(qtbot, window)
    document.picture = np.full((3000, 4000, 3), 250, np.uint8)  # large, so that saving takes a while
    document.size = (4000, 3000)
    save_png(document, tmp_path / "now.png")
    with qtbot.waitSignal(window._desk.saved, timeout=READ_MS):
        window.save_picture(tmp_path / "marked.png")
        assert not window.progress.isHidden()
        assert not (tmp_path / "marked.png").exists()  # it goes on elsewhere
        document.verdicts = ()
    assert QImage(str(tmp_path / "marked.png")) == QImage(str(tmp_path / "now.png"))
    settle(qtbot, window)
    assert window.progress.isHidden()


@pytest.mark.parametrize("ending", ["png", "pdf"])
def test_saving_that_is_stopped_leaves_the_old_file(qtbot, window, tmp_path, ending):
    document = window._desk.add_typed(["2k", "=k+k"])
    settle(qtbot, window)
    document.picture, document.size = np.full((3000, 4000, 3), 250, np.uint8), (4000, 3000)
    (tmp_path / f"marked.{ending}").write_bytes(b"old")
    window.save_picture(tmp_path / f"marked.{ending}")
    window._desk.stop()
    settle(qtbot, window)
    assert [path.name for path in tmp_path.iterdir()] == [f"marked.{ending}"]
    assert (tmp_path / f"marked.{ending}").read_bytes() == b"old"


def test_saving_is_finished_when_the_window_is_closed(qtbot, window, tmp_path):
    window._desk.add_typed(["2k", "=k+k"])
    settle(qtbot, window)
    window.save_picture(tmp_path / "marked.png")
    window.close()
    assert not QImage(str(tmp_path / "marked.png")).isNull()


def test_bad_files_are_told_in_sentences_and_the_good_one_is_opened(qtbot, window, tmp_path):
    text = tmp_path / "notes.jpg"
    text.write_text("not a picture")
    cut = tmp_path / "cut.jpg"
    cut.write_bytes(sample(SLIP_PAGE).read_bytes()[:5000])
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        window.open_files([tmp_path / "gone.jpg", text, cut, sample(INK_PAGE)])
    settle(qtbot, window)
    for name in ("gone.jpg", "notes.jpg", "cut.jpg"):
        assert name in window.notice.text
    assert len(window._desk.documents) == 1


def test_blank_sheet_is_shown_and_told(qtbot, window, tmp_path):
    blank = QImage(900, 1200, QImage.Format.Format_RGB32)
    blank.fill(QColor("#f2efe6"))
    blank.save(str(tmp_path / "blank.png"))
    window.open_files([tmp_path / "blank.png"])
    settle(qtbot, window)
    assert "blank.png: no writing was found" in window.notice.text
    assert window.document is not None
    assert window.document.lines == ()


def test_files_are_dropped_and_pictures_pasted(qtbot, window):
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(sample(INK_PAGE)))])
    drop = QDropEvent(QPointF(200, 200), Qt.DropAction.CopyAction, data, Qt.MouseButton.LeftButton,
                      Qt.KeyboardModifier.NoModifier)  # fmt: skip
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        window.dropEvent(drop)
    QGuiApplication.clipboard().setImage(QImage(str(sample(SLIP_PAGE))))
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        window.paste()
    settle(qtbot, window)
    assert [document.file.rsplit("/")[-1] for document in window._desk.documents] == [INK_PAGE, "Pasted picture"]
    assert window.pages.isVisible()
    assert window._desk.documents[1].verdicts[0].report.first_slip == truth(SLIP_PAGE)["planted"]["line"]


def test_reading_is_stopped_by_the_user(qtbot, window):
    window.open_files([sample(SLIP_PAGE)] * 3)
    window._desk.stop()
    settle(qtbot, window)
    assert len(window._desk.documents) < 3
    assert window.notice.isHidden()


def test_line_left_out_of_the_working_is_not_judged(qtbot, window):
    document = window._desk.add_typed(["2(k+1)", "=2k+7", "=2k+2"])
    settle(qtbot, window)
    window.list.choose(1)
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        press(window, Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier)
    assert document.verdicts[0].lines == (0, 2)
    assert verdicts(document) == ["start", "follows"]


def test_user_says_where_a_working_starts(qtbot, window):
    document = window._desk.add_typed(["2k=4", "k=2", "3m=9", "m=3"])
    settle(qtbot, window)
    assert len(document.verdicts) == 1
    window.list.choose(2)
    with qtbot.waitSignal(window._desk.document_checked, timeout=READ_MS):
        press(window, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier)
    assert [verdict.lines for verdict in document.verdicts] == [(0, 1), (2, 3)]


def test_line_is_chosen_with_a_click_on_the_page(qtbot, window):
    document = window._desk.add_typed(["2k=4", "k=2"])
    settle(qtbot, window)
    box = document.lines[1].box
    place = window.page.mapFromScene(QPointF(box.x + box.w / 2, box.y + box.h / 2))
    QTest.mouseClick(window.page.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(place))
    assert window.list.chosen == 1


def test_zoom_keeps_to_its_bounds(qtbot, window):
    window._desk.add_typed(["2k=4", "k=2"])
    settle(qtbot, window)
    for _ in range(40):
        window.page.zoom_in()
    assert window.page.transform().m11() == pytest.approx(8.0)
    for _ in range(60):
        window.page.zoom_out()
    smallest = window.page.transform().m11()
    window.page.fit()
    assert window.page.transform().m11() == pytest.approx(smallest, rel=0.02)


def test_every_action_is_in_a_menu_and_has_a_key_of_its_own(qtbot, window):
    seen = {}
    for menu in window._menus.menus:
        for action in menu.actions():
            if action.isSeparator() or "About" in action.text():
                continue
            assert action.shortcuts(), action.text()
            for key in action.shortcuts():
                assert key.toString() not in seen, (action.text(), seen.get(key.toString()))
                seen[key.toString()] = action.text()


def test_about_says_that_the_teacher_decides(qtbot, window):
    box = AboutBox(window)
    qtbot.addWidget(box)
    from PySide6.QtWidgets import QLabel

    assert any("the teacher decides" in label.text() for label in box.findChildren(QLabel))


def test_keys_are_listed_from_the_menus(qtbot, window):
    box = KeysBox(window._menus.menus, window)
    qtbot.addWidget(box)
    from PySide6.QtWidgets import QTextBrowser

    text = box.findChild(QTextBrowser).toPlainText()
    assert "Confirm all that are sure" in text
    assert "Ctrl+O" in text


def test_removed_page_leaves_the_desk_and_its_file(qtbot, window):
    window._desk.add_typed(["2k", "=k+k"])
    window._desk.add_typed(["3k", "=k+k+k"])
    settle(qtbot, window)
    window.close_page()
    assert len(window._desk.documents) == 1
    assert window.document is window._desk.documents[0]
    window.close_page()
    assert window.document is None
