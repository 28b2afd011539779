"""A page turned by hand: what is on it, kept of it and saved of it lies right, and Undo takes it back."""

import sqlite3
import zlib

import cv2
import numpy as np
import pytest
from PySide6.QtCore import QSettings, Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMessageBox

from desktop.desk import Desk
from desktop.desk_line import DeskLine, Override, State
from desktop.document import Document
from desktop.empty_desk import words_for_no_lines
from desktop.line_changes import SetReading
from desktop.marked_pdf import save_pdf
from desktop.marked_picture import save_png
from desktop.marks import place_marks
from desktop.page_caption import turn_words
from desktop.page_changes import Overrule, SetCandidate, TurnPage
from desktop.page_json import page_json
from desktop.reading import PageReader
from desktop.set_actions import SetActions
from desktop.sets import Sets
from desktop.settings import Settings
from desktop.standing import Standing
from desktop.store import KeptPage, SetFile
from desktop.store_blobs import picture_blob, small_blob
from desktop.store_blobs import picture_of as unpacked
from desktop.store_schema import MIGRATIONS, migrate
from desktop.typed_page import typed_document
from desktop.upright import as_opened, turned_picture
from desktop.window import Window
from recognition.page import find_lines
from recognition.page.cutting import LineCutter
from recognition.result import Box
from tests.desktop.samples import sample, truth

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
PAGE = "candidate-4107.jpg"
WAIT_MS = 60_000


def picture_of(name=PAGE):
    return cv2.cvtColor(cv2.imread(str(sample(name))), cv2.COLOR_BGR2RGB)


def unlike(width=50, height=30):
    """A picture whose every pixel differs from its neighbours."""
    across, down = np.meshgrid(np.arange(width), np.arange(height))
    return np.stack([across * 5, down * 7, across + down], axis=2).astype(np.uint8)


def page_of(picture, *lines):
    document = Document("page.jpg", size=(picture.shape[1], picture.shape[0]), picture=picture, lines=lines)
    document.halvings = (np.ascontiguousarray(picture[::2, ::2]),)
    return document


@pytest.fixture(scope="module")
def reader():
    return PageReader()


@pytest.fixture
def window(qtbot, reader, checker):
    window = Window(Desk(reader=reader, checker=checker))
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window.desk.busy, timeout=WAIT_MS)


def opened(qtbot, window, path):
    with qtbot.waitSignal(window.desk.document_checked, timeout=WAIT_MS):
        window.open_files([path])
    settle(qtbot, window)
    return window.document


def turn(window, *, left=False):
    modifier = Qt.KeyboardModifier.ShiftModifier if left else Qt.KeyboardModifier.NoModifier
    QTest.keyClick(window, Qt.Key.Key_F7, modifier)


def answer(words, *, seen):
    """Press the button of those words in the question that comes next, and note what the question says."""

    def press():
        box = QApplication.activeModalWidget()
        assert isinstance(box, QMessageBox)
        seen.append(f"{box.text()} {box.informativeText()}")
        next(button for button in box.buttons() if button.text() == words).click()

    QTimer.singleShot(0, press)


def readings(document):
    return [line.latex for line in document.lines]


# The document -------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("quarters", [-3, -2, -1, 1, 2, 3, 5])
def test_page_turns_with_all_that_hangs_on_its_picture_and_undo_brings_all_back(quarters):
    picture = unlike()
    document = page_of(picture, DeskLine(Box(4, 5, 20, 6), latex="k = 4", state=State.CONFIRMED))
    document.thumbnail = picture[::2, ::2].copy()
    lines, small, half = document.lines, document.thumbnail, document.halvings[0]
    document.do(SetCandidate("4107"))
    document.do(TurnPage(quarters))
    expected = np.rot90(picture, -quarters)
    assert (document.picture == expected).all()
    assert (document.thumbnail == np.rot90(small, -quarters)).all()
    assert (document.halvings[0] == np.rot90(half, -quarters)).all()
    assert document.size == (expected.shape[1], expected.shape[0])
    assert (document.turns, document.standing, document.lines) == (quarters % 4, Standing.TURNED, ())
    assert document.is_unread
    document.undo()
    assert (document.picture == picture).all() and (document.halvings[0] == half).all()
    assert (document.size, document.turns, document.standing) == ((50, 30), 0, Standing.AS_FOUND)
    assert document.lines is lines and document.candidate == "4107"
    assert not document.is_unread
    document.undo()
    assert document.candidate == ""


def test_redo_brings_the_lines_that_were_found_on_the_turned_page():
    document = page_of(unlike(), DeskLine(Box(4, 5, 20, 6)))
    document.do(TurnPage(1))
    document.take_found((DeskLine(Box(1, 2, 8, 20)), DeskLine(Box(11, 2, 8, 20))))
    found = document.lines
    assert document.standing is Standing.BY_HAND
    document.do(SetReading(0, "k = 4"))
    document.undo()
    document.undo()
    assert len(document.lines) == 1 and document.turns == 0
    document.redo()
    assert document.lines == found
    assert (document.turns, document.standing, document.size) == (1, Standing.BY_HAND, (30, 50))


def test_full_circle_keeps_every_pixel_and_is_still_the_same_picture_to_the_set():
    picture = unlike()
    document = page_of(picture)
    as_taken = document.picture_as_taken
    for _ in range(4):
        document.do(TurnPage(1))
        assert document.picture_as_taken is as_taken
    assert (document.picture == picture).all() and document.picture is not picture
    document.picture = unlike(20, 20)
    assert document.picture_as_taken is not as_taken


# Finding ------------------------------------------------------------------------------------------------------------


def test_users_word_stands_above_what_the_writing_tells():
    picture = picture_of()
    sideways = turned_picture(picture, 3)
    upright = find_lines(picture)
    told = find_lines(sideways)
    assert (told.turns, find_lines(sideways, turns=0).turns, find_lines(sideways, turns=1).turns) == (1, 0, 1)
    assert [line.box for line in find_lines(sideways, turns=1).lines] == [line.box for line in told.lines]
    assert [line.box for line in find_lines(picture, turns=0).lines] == [line.box for line in upright.lines]
    # Held on its side, the page has other lines than when it is read upright.
    assert len(find_lines(sideways, turns=0).lines) != len(upright.lines)
    assert LineCutter.of(sideways, turns=0).page.turns == 0
    assert LineCutter.of(sideways).page.turns == 1


# The window ---------------------------------------------------------------------------------------------------------


def test_page_that_was_not_turned_though_it_lies_sideways_is_turned_by_a_key_and_read(qtbot, window, reader):
    expected = opened(qtbot, window, sample(PAGE))
    window.close_page()
    found = reader.find_in_picture(turned_picture(picture_of(), 3), "sideways.jpg", turns=0)
    window.desk.lay(found.document)
    settle(qtbot, window)
    document = window.document
    turn(window)
    assert (document.turns, document.lines) == (1, ())
    assert words_for_no_lines(document) == "The lines of the turned page are being found."
    assert window.page.sceneRect().size().toTuple() == document.size
    settle(qtbot, window)
    assert document.size == expected.size
    assert readings(document) == readings(expected)
    assert document.verdicts[0].report.first_slip == truth(PAGE)["planted"]["line"]
    assert turn_words(document) == ""


def test_page_turned_upright_by_the_program_says_which_key_turns_it_further(qtbot, window, tmp_path):
    path = tmp_path / "sideways.png"
    cv2.imwrite(str(path), cv2.cvtColor(turned_picture(picture_of(), 3), cv2.COLOR_RGB2BGR))
    document = opened(qtbot, window, path)
    assert turn_words(document) == "The picture lay on its side; the page is shown upright. F7 turns it further."


def test_two_quarters_in_a_row_are_read_once_they_are_done_and_can_be_taken_back_one_by_one(qtbot, window):
    document = opened(qtbot, window, sample(PAGE))
    before, picture = document.lines, document.picture
    turn(window)
    turn(window, left=True)  # while the first is being read
    settle(qtbot, window)
    assert (document.turns, document.standing) == (0, Standing.BY_HAND)
    assert readings(document) == [line.latex for line in before]
    QTest.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)
    assert document.turns == 1
    QTest.keyClick(window, Qt.Key.Key_Z, Qt.KeyboardModifier.ControlModifier)  # while that is being read
    assert document.lines is before and (document.picture == picture).all()
    settle(qtbot, window)
    assert document.lines is before and document.turns == 0
    assert document.verdicts[0].report.first_slip == truth(PAGE)["planted"]["line"]


def test_page_is_turned_while_its_first_reading_goes_on(qtbot, window):
    with qtbot.waitSignal(window.desk.document_added, timeout=WAIT_MS):
        window.open_files([sample(PAGE)])
    document = window.document
    turn(window)
    turn(window, left=True)
    settle(qtbot, window)
    assert (document.turns, document.standing) == (0, Standing.BY_HAND)
    assert document.verdicts[0].report.first_slip == truth(PAGE)["planted"]["line"]
    assert window.notice.isHidden()


def test_confirmed_lines_are_put_aside_only_when_the_user_says_so(qtbot, window):
    document = opened(qtbot, window, sample(PAGE))
    window.desk.do(document, SetReading(1, document.lines[1].latex))
    window.desk.do(document, Overrule(2, Override(is_right=True)))
    settle(qtbot, window)
    before, seen = document.lines, []
    answer("&Leave as it is", seen=seen)
    turn(window)
    assert document.lines is before and document.turns == 0
    answer("&Turn and read again", seen=seen)
    window.menus.actions["turn back"].trigger()
    assert document.turns == 3 and document.lines == ()
    assert seen[0] == seen[1] == (
        "2 lines of this page are confirmed or marked by you. Turning finds and reads all lines of the page anew; "
        "that work is put aside, and Undo brings it back."
    )
    settle(qtbot, window)
    window.desk.undo_group.undo()
    assert document.lines is before and document.turns == 0
    settle(qtbot, window)
    assert document.verdicts != ()


def test_drawn_and_typed_pages_stand_as_they_were_written(qtbot, window):
    action = window.menus.actions["turn"]
    for document in (typed_document(["k = 4"], number=1), window.desk.add_pen_page()):
        if document not in window.desk.documents:
            window.desk.add(document)
        window.pages.setCurrentRow(window.desk.documents.index(document))
        assert not action.isEnabled()
        window.turning.right()
        assert document.turns == 0
    settle(qtbot, window)


def test_turned_page_without_writing_says_what_to_do(qtbot, window):
    blank = np.full((300, 400, 3), 255, np.uint8)
    window.desk.lay(page_of(blank))
    turn(window)
    settle(qtbot, window)
    assert window.document.standing is Standing.BY_HAND and not window.document.is_unread
    assert "no writing was found" in window.notice.text
    assert "F7 turns the page" in words_for_no_lines(window.document)


# What maps to the original ------------------------------------------------------------------------------------------


@pytest.fixture
def both(qtbot, window, reader):
    """The same page, opened upright, and opened on its side and turned by hand."""
    pages = []
    for quarters in (0, 1):
        found = reader.find_in_picture(turned_picture(picture_of(), -quarters), "page.jpg", turns=0)
        window.desk.lay(found.document)
        window.pages.setCurrentRow(len(window.desk.documents) - 1)
        settle(qtbot, window)
        if quarters:
            turn(window)
        else:
            QTest.keyClick(window, Qt.Key.Key_F5)
        settle(qtbot, window)
        pages.append(window.document)
    return pages


def test_marks_pictures_annotations_and_json_lie_right_after_a_turn(both, tmp_path):
    pymupdf = pytest.importorskip("pymupdf")
    upright, turned = both
    assert (turned.picture == upright.picture).all()
    assert place_marks(turned) == place_marks(upright) != ()
    for name, document in (("upright", upright), ("turned", turned)):
        save_png(document, tmp_path / f"{name}.png")
        save_pdf(document, tmp_path / f"{name}.pdf")
    one, other = (cv2.imread(str(tmp_path / f"{name}.png")) for name in ("upright", "turned"))
    assert (one == other).all()
    places = []
    for name in ("upright", "turned"):
        with pymupdf.open(tmp_path / f"{name}.pdf") as pdf:
            places.append([(annotation.type[1], tuple(annotation.rect)) for annotation in pdf[0].annots()])
    assert places[0] == places[1] != []
    # The JSON tells places on the picture as it was opened: there they hold the same ink.
    original = turned_picture(picture_of(), -1)
    width = original.shape[1]
    lines = [
        (first, second)
        for one, other in zip(page_json(upright)["workings"], page_json(turned)["workings"], strict=True)
        for first, second in zip(one["lines"], other["lines"], strict=True)
    ]
    for first, second in lines:
        x, y, w, h = first["box"]
        a, b, c, d = second["box"]
        assert a + c <= width
        cut = original[b : b + d, a : a + c]
        assert (turned_picture(cut, 1) == picture_of()[y : y + h, x : x + w]).all()


def test_line_added_to_a_turned_page_is_cut_upright(qtbot, window, both):
    _, turned = both
    index = 1
    box, latex = turned.lines[index].box, turned.lines[index].latex
    window.desk.corrections.drop(turned, index)
    window.desk.corrections.add(turned, box)
    settle(qtbot, window)
    assert turned.lines[index].latex == latex


# The set ------------------------------------------------------------------------------------------------------------


class Bench:
    """A window with its set in a folder of the test."""

    def __init__(self, qtbot, folder, checker, reader):
        self.qtbot = qtbot
        self.desk = Desk(reader=reader, checker=checker)
        self.window = Window(self.desk)
        qtbot.addWidget(self.window)
        self.window.show()
        settings = Settings(QSettings(str(folder / "settings.ini"), QSettings.Format.IniFormat))
        self.sets = Sets(self.desk, folder / "sets")
        self.actions = SetActions(self.window, self.sets, settings)

    def begin(self):
        with self.qtbot.waitSignal(self.sets.opened, timeout=WAIT_MS):
            self.actions.begin(())
        return self

    def settle(self):
        self.qtbot.waitUntil(lambda: not self.desk.busy and not self.sets.busy, timeout=WAIT_MS)

    def close(self):
        self.window.close()
        return self.sets.close()


@pytest.fixture
def bench(qtbot, tmp_path, checker, reader):
    made = []

    def make():
        made.append(Bench(qtbot, tmp_path, checker, reader))
        return made[-1]

    yield make
    for one in made:
        one.close()


def test_turned_page_comes_back_turned_and_its_picture_is_not_packed_again(bench):
    one = bench().begin()
    one.settle()
    with one.qtbot.waitSignal(one.desk.document_checked, timeout=WAIT_MS):
        one.window.open_files([sample(PAGE)])
    one.settle()
    before = one.window.document
    kept = unpacked(picture_blob(before.picture))
    turn(one.window, left=True)
    one.settle()
    assert one.close()
    two = bench().begin()
    two.settle()
    (after,) = two.desk.documents
    two.qtbot.waitUntil(lambda: after.picture is not None, timeout=WAIT_MS)
    assert (after.turns, after.standing, after.size) == (3, Standing.BY_HAND, before.size)
    assert after.lines == before.lines
    assert (after.picture == turned_picture(kept, 3)).all()
    turn(two.window)
    two.settle()
    assert (after.picture == kept).all()
    assert after.verdicts[0].report.first_slip == truth(PAGE)["planted"]["line"]


def test_page_that_was_turned_and_not_read_before_the_end_is_read_as_it_was_turned(bench, qtbot):
    one = bench().begin()
    one.settle()
    with qtbot.waitSignal(one.desk.document_checked, timeout=WAIT_MS):
        one.window.open_files([sample(PAGE)])
    one.settle()
    turn(one.window)
    qtbot.wait(1)
    assert one.window.document.lines == ()
    assert one.close()
    two = bench().begin()
    two.settle()
    (after,) = two.desk.documents
    assert (after.turns, after.standing) == (1, Standing.BY_HAND)
    assert after.lines != ()
    assert not after.is_unread


def test_page_out_of_sight_is_saved_as_it_was_turned(bench, tmp_path):
    one = bench().begin()
    one.settle()
    for shade in (180, 230):
        picture = np.full((300, 400, 3), shade, np.uint8)
        picture[:100] = 20
        one.desk.lay(page_of(picture))
        one.settle()
    one.window.pages.setCurrentRow(0)
    turn(one.window)
    one.settle()
    one.window.pages.setCurrentRow(1)
    one.settle()
    first = one.desk.documents[0]
    one.qtbot.waitUntil(lambda: first.picture is None, timeout=WAIT_MS)
    assert first.thumbnail.shape[0] > first.thumbnail.shape[1]
    assert first.thumbnail[:, -1].mean() < 60  # the dark edge, now at the right
    saved = one.sets.picture_of(first, first.turns)
    assert saved.shape[:2] == (400, 300) and saved[:, -1].mean() < 60
    one.desk.activate(first)
    one.window.pages.setCurrentRow(0)
    one.qtbot.waitUntil(lambda: first.picture is not None, timeout=WAIT_MS)
    one.desk.undo_group.undo()
    assert first.picture.shape[:2] == (300, 400) and first.picture[0].mean() < 60
    one.settle()


@pytest.mark.parametrize("turns", [0, 1, 2, 3])
def test_set_of_the_version_before_opens_with_its_turned_pages_as_they_stood(tmp_path, turns):
    path = tmp_path / "old.firstslip"
    upright = unlike(64, 40)
    connection = sqlite3.connect(path, isolation_level=None)
    migrate(connection, MIGRATIONS[:4])
    columns = "id, place, file, page, width, height, turns"
    connection.execute(f"INSERT INTO page ({columns}) VALUES (1, 0, 'old.jpg', 0, 64, 40, ?)", (turns,))
    blob = picture_blob(upright)
    connection.execute("INSERT INTO picture VALUES (1, ?, ?, ?)", (blob, small_blob(upright), zlib.crc32(blob)))
    connection.close()
    store = SetFile.open(path)
    (page,) = store.pages()
    kept = store.picture(page.key)
    assert page.document.turns == turns and page.document.size == (64, 40)
    assert kept.shape == upright.shape and np.abs(kept.astype(int) - upright).mean() < 12
    page.document.picture = kept
    page.document.do(TurnPage(1))
    store.keep([KeptPage(page.key, 0, page.document)])
    store.close()
    again = SetFile.open(path)
    (page,) = again.pages()
    assert (again.picture(page.key) == turned_picture(kept, 1)).all()
    assert page.document.thumbnail.shape[:2] == (64, 40)
    assert page.document.is_unread
    again.close()


def test_places_are_told_on_the_picture_as_it_was_opened_after_any_turn():
    picture = unlike(60, 40)
    document = page_of(picture)
    for quarters in (1, 1, 2, 3):
        document.do(TurnPage(quarters))
        width, height = document.size
        document.take_found((DeskLine(Box(2, 3, width - 20, height - 12)),))
        x, y, w, h = as_opened(document.lines[0].box, document.turns, document.size)
        cut = picture[y : y + h, x : x + w]
        here = document.picture[3 : 3 + height - 12, 2 : 2 + width - 20]
        assert (turned_picture(cut, document.turns) == here).all()
