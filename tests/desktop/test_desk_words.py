"""What the window says beside the verdicts: progress, empty places, pages in the list."""

import numpy as np
import pytest
from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest

from desktop.desk import Desk
from desktop.document import Document
from desktop.empty_desk import words_for_no_lines
from desktop.page_list import page_state
from desktop.pen_page import new_pen_page
from desktop.reading import PageReader
from desktop.typed_page import typed_document
from desktop.window import Window
from recognition.result import Box, Candidate, Line, Page
from tests.desktop.samples import sample, truth

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)


@pytest.fixture
def window(qtbot, checker):
    window = Window(Desk(reader=PageReader(), checker=checker))
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window.desk.busy, timeout=120_000)


def test_progress_names_the_page_that_is_read_and_how_many_there_are(qtbot, window):
    said = []
    window.desk.activity.connect(lambda words, done, total: said.append(words))
    names = ["candidate-4107.jpg", "candidate-4112.jpg"]
    window.open_files([sample(name) for name in names])
    assert window._middle.currentWidget().text() == "The first page appears here as soon as its lines are found."
    settle(qtbot, window)
    reading = list(dict.fromkeys(words for words in said if words.startswith("Reading candidate")))
    assert reading == [
        "Reading candidate-4107.jpg",  # nothing else is known to wait yet
        "Reading candidate-4107.jpg (1 of 2)", "Reading candidate-4112.jpg (2 of 2)",
    ]  # fmt: skip
    window.close_page()
    window.close_page()
    assert window._middle.currentWidget().text().startswith("Open a photo")


def test_page_that_cannot_be_read_leaves_the_others_being_read(qtbot, window, tmp_path):
    broken = tmp_path / "broken.jpg"
    broken.write_bytes(b"\xff\xd8\xff\xe0 no picture")
    window.open_files([broken, sample("candidate-4107.jpg")])
    settle(qtbot, window)
    assert "broken.jpg" in window.notice.text
    (document,) = window.desk.documents
    assert document.verdicts


def test_each_kind_of_page_says_how_a_line_comes_on_it(window):
    photo = Document("photo.jpg", size=(300, 300), picture=np.full((300, 300, 3), 255, np.uint8))
    words = [words_for_no_lines(page) for page in (photo, new_pen_page(), typed_document([]))]
    assert "draw a box" in words[0]
    assert "when the pen rests" in words[1]
    assert "type" in words[2]
    assert words_for_no_lines(None) == ""


def test_marks_are_left_out_of_the_card_while_hints_are_asked_for(qtbot, window):
    window.desk.add_typed(["2(k+1)", "=2k+1"])
    settle(qtbot, window)
    field = window.card._marks_field
    assert not field.isHidden()
    window.menus.actions["student"].setChecked(True)
    assert field.isHidden()
    window.menus.actions["student"].setChecked(False)
    assert not field.isHidden()


def test_single_claim_is_named_as_one_in_heading_and_list(qtbot, window):
    window.desk.add_typed(["(x+2)^2=x^2+4"])
    settle(qtbot, window)
    qtbot.waitUntil(lambda: "claim" in window.list.model().row(0).heading, timeout=30_000)
    assert page_state(window.document) == "nothing to compare"


def test_small_picture_stands_in_while_the_large_one_is_fetched(qtbot, window):
    red = np.zeros((800, 600, 3), np.uint8)
    red[:, :, 0] = 255
    document = Document("page.jpg", size=(600, 800), picture=red)
    document.let_picture_go()
    assert document.picture is None
    window.desk.lay(document)
    window.page.fit()
    assert window.page._picture.boundingRect() == QRectF(0, 0, 600, 800)
    seen = window.page.viewport().grab().toImage()
    assert seen.pixelColor(seen.width() // 2, seen.height() // 2) == QColor("#ff0000")


def test_f5_reads_a_page_on_which_reading_was_stopped(qtbot, window):
    (found,) = window.desk._reader.find(sample("candidate-4107.jpg"))
    window.desk.lay(found.document)
    settle(qtbot, window)
    assert found.document.is_unread
    QTest.keyClick(window, Qt.Key.Key_F5)
    settle(qtbot, window)
    assert not found.document.is_unread
    assert found.document.verdicts[0].report.first_slip == truth("candidate-4107.jpg")["planted"]["line"]


def test_end_of_a_page_says_whether_other_pages_have_doubtful_lines(qtbot, window):
    def page(name, probability):
        line = Line(Box(20, 20, 200, 30), (Candidate("2 k = 8", probability), Candidate("2 h = 8", 0.1)))
        return Document.of_page(Page(name, 0, (400, 300), (line,)), None)

    for name in ("one.jpg", "two.jpg"):
        window.desk.add(page(name, 0.4))
    settle(qtbot, window)
    window.confirm()
    assert window.statusBar().currentMessage() == "No doubtful line is left here; other pages have some (Ctrl+PgDown)."
    window.step_page(1)
    window.confirm()
    assert window.statusBar().currentMessage() == "No doubtful line is left."
