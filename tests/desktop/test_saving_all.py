"""All pages of a set, marked, as one PDF, with pictures that lie in the set's file."""

import pypdfium2
import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QFileDialog

from desktop.line_changes import SetReading
from tests.desktop.test_sets import WAIT_MS, bench, photo  # noqa: F401

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)

CTRL, SHIFT = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
SHADES = (60, 120, 180, 240)


def laid(one):
    for number, shade in enumerate(SHADES):
        one.desk.add(photo(f"candidate-410{number}.jpg", shade))
    one.settle()
    one.qtbot.waitUntil(lambda: sum(page.picture is not None for page in one.desk.documents) == 1, timeout=WAIT_MS)
    return one


def test_each_page_comes_with_its_own_picture_and_marks(bench, qtbot, tmp_path, monkeypatch):  # noqa: F811
    one = laid(bench().begin())
    with qtbot.waitActive(one.window):
        one.window.show()
        one.window.activateWindow()
    monkeypatch.setattr(QFileDialog, "getSaveFileName", lambda *arguments: (str(tmp_path / "class"), ""))
    with one.qtbot.waitSignal(one.desk.saved, timeout=WAIT_MS) as saved:
        QTest.keyClick(one.window.focusWidget() or one.window, Qt.Key.Key_A, CTRL | SHIFT)
    assert saved.args == ["class.pdf"]
    with pypdfium2.PdfDocument(tmp_path / "class.pdf") as pdf:
        assert len(pdf) == len(SHADES)
        for sheet, shade in zip(pdf, SHADES, strict=True):
            image = sheet.render(scale=0.5).to_numpy()[:, :, 0]
            assert abs(int(image[image.shape[1] * 3 // 8, 4]) - shade) <= 6  # left edge, half down the photo
            assert "First slip: line 2" in sheet.get_textpage().get_text_bounded()
            assert pypdfium2.raw.FPDFPage_GetAnnotCount(sheet.raw) > 0
    assert sum(page.picture is not None for page in one.desk.documents) == 1  # none is held afterwards
    assert one.actions.actions["all"].isEnabled()


@pytest.mark.logs("WARNING")
def test_folder_that_cannot_be_written_is_told_and_nothing_lies_there(bench, qtbot, tmp_path):  # noqa: F811
    one = laid(bench().begin())
    with qtbot.waitSignal(one.desk.problem, timeout=WAIT_MS) as told:
        one.actions.save_all(tmp_path / "missing" / "class.pdf")
    assert "class.pdf could not be saved there" in told.args[0]
    assert not (tmp_path / "missing").exists()


def test_stopping_leaves_no_file(bench, qtbot, tmp_path):  # noqa: F811
    one = laid(bench().begin())
    one.actions.save_all(tmp_path / "class.pdf")
    one.desk.stop()
    one.settle()
    assert not (tmp_path / "class.pdf").exists()


def test_changes_are_kept_while_all_pages_are_saved(bench, qtbot, tmp_path):  # noqa: F811
    one = laid(bench().begin())
    with qtbot.waitSignal(one.desk.saved, timeout=WAIT_MS):
        one.actions.save_all(tmp_path / "class.pdf")
        one.desk.do(one.desk.documents[2], SetReading(1, "k = 4"))
    one.settle()
    assert one.close()
    two = bench().begin()
    assert two.desk.documents[2].lines[1].latex == "k = 4"


def test_empty_desk_has_nothing_to_save(bench):  # noqa: F811
    one = bench().begin()
    assert not one.actions.actions["all"].isEnabled()
