"""Sets in the window: what lies on the desk is kept, comes back, and large pictures come when they are looked at."""

import numpy as np
import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtTest import QTest

from desktop.desk import Desk
from desktop.desk_line import State
from desktop.document import Document
from desktop.line_changes import SetReading
from desktop.reading import PageReader
from desktop.set_actions import SetActions
from desktop.sets import Sets
from desktop.settings import Settings
from desktop.store import KeptPage, SetFile
from desktop.window import Window
from recognition.result import Box, Candidate, Line, Page
from tests.desktop.samples import sample

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support propagateSizeHints", extend=True)
WAIT_MS = 30_000


class Bench:
    """A window with its sets and settings, all in a folder of the test."""

    def __init__(self, qtbot, folder, checker):
        self.qtbot = qtbot
        self.desk = Desk(reader=PageReader(), checker=checker)
        self.window = Window(self.desk)
        qtbot.addWidget(self.window)
        self.settings = Settings(QSettings(str(folder / "settings.ini"), QSettings.Format.IniFormat))
        self.sets = Sets(self.desk, folder / "sets")
        self.actions = SetActions(self.window, self.sets, self.settings)

    def begin(self, *files):
        with self.qtbot.waitSignal(self.sets.opened, timeout=WAIT_MS):
            self.actions.begin(files)
        self.settle()
        return self

    def settle(self):
        self.qtbot.waitUntil(lambda: not self.desk.busy and not self.sets.busy, timeout=WAIT_MS)

    def close(self):
        self.window.close()
        return self.sets.close()


@pytest.fixture
def bench(qtbot, tmp_path, checker):
    made = []

    def make():
        made.append(Bench(qtbot, tmp_path, checker))
        return made[-1]

    yield make
    for one in made:
        one.close()


def photo(name="photo.jpg", shade=180):
    lines = (Line(Box(20, 20, 200, 30), (Candidate("2 k = 8", 0.99),)),
             Line(Box(20, 80, 200, 30), (Candidate("k = 5", 0.99),)))  # fmt: skip
    document = Document.of_page(Page(name, 0, (400, 300), lines), np.full((300, 400, 3), shade, np.uint8))
    return document


def test_desk_without_a_name_is_kept_and_comes_back(bench):
    one = bench().begin()
    document = photo()
    one.desk.add(document)
    one.settle()
    one.desk.do(document, SetReading(1, "k = 4"))
    one.settle()
    assert one.close()
    two = bench().begin()
    (again,) = two.desk.documents
    assert again.lines == document.lines
    assert again.lines[1].state is State.CONFIRMED
    assert again.verdicts == document.verdicts != ()
    two.qtbot.waitUntil(lambda: again.picture is not None, timeout=WAIT_MS)
    assert np.abs(again.picture.astype(int) - 180).max() <= 2
    assert two.window.document is again


def test_change_is_in_the_file_within_a_second(bench, qtbot):
    one = bench().begin()
    document = photo()
    one.desk.add(document)
    one.settle()
    with qtbot.waitSignal(one.sets.keeping, timeout=1000, check_params_cb=bool):
        one.desk.do(document, SetReading(0, "2k=9"))


def test_empty_set_without_a_name_leaves_no_file(bench, tmp_path):
    assert bench().begin().close()
    assert list((tmp_path / "sets").iterdir()) == []


def test_only_the_page_that_is_shown_holds_its_large_picture(bench, qtbot):
    one = bench().begin()
    pages = [photo(f"page-{n}.jpg", 100 + 20 * n) for n in range(3)]
    for page in pages:
        one.desk.add(page)
    one.settle()
    qtbot.waitUntil(lambda: [p.picture is not None for p in pages] == [True, False, False], timeout=WAIT_MS)
    with qtbot.waitSignal(one.sets.pictured, timeout=WAIT_MS):
        one.window.pages.setCurrentRow(2)
    assert [p.picture is not None for p in pages] == [False, False, True]
    assert np.abs(pages[2].picture.astype(int) - 140).max() <= 2
    assert all(p.thumbnail is not None for p in pages[:2])


def test_saving_under_another_name_goes_on_there_and_keeps_undo(bench, qtbot, tmp_path):
    one = bench().begin()
    document = photo()
    one.desk.add(document)
    one.settle()
    one.desk.do(document, SetReading(1, "k = 4"))
    with qtbot.waitSignal(one.sets.opened, timeout=WAIT_MS):
        one.sets.save_as(tmp_path / "class.firstslip")
    one.desk.do(document, SetReading(0, "2k=9"))
    one.settle()
    one.desk.undo_group.activeStack().undo()
    one.settle()
    assert one.sets.path == tmp_path / "class.firstslip"
    assert one.close()
    store = SetFile.open(tmp_path / "class.firstslip")
    (kept,) = store.pages()
    assert [line.latex for line in kept.document.lines] == ["2 k = 8", "k = 4"]
    assert store.picture(kept.key) is not None
    store.close()


def test_damaged_set_is_told_and_the_desk_stays(bench, qtbot, tmp_path):
    one = bench().begin()
    one.desk.add(photo())
    one.settle()
    (tmp_path / "bad.firstslip").write_bytes(b"junk" * 100)
    with qtbot.waitSignal(one.desk.problem, timeout=WAIT_MS):
        one.window.open_files([tmp_path / "bad.firstslip"])
    assert "bad.firstslip is damaged" in one.window.notice.text
    assert len(one.desk.documents) == 1 and one.sets.path is not None


def test_last_set_that_is_damaged_is_told_and_an_empty_one_begun(bench, qtbot, tmp_path):
    (tmp_path / "bad.firstslip").write_bytes(b"junk" * 100)
    one = bench()
    one.settings.last_set = tmp_path / "bad.firstslip"
    one.begin()
    assert "bad.firstslip is damaged" in one.window.notice.text
    assert one.sets.path.parent == tmp_path / "sets"


def test_opening_a_set_takes_the_place_of_the_pages_and_removing_one_takes_it_out(bench, qtbot, tmp_path):
    store = SetFile.create(tmp_path / "other.firstslip")
    store.keep([KeptPage(store.new_key(), n, photo(f"other-{n}.jpg")) for n in range(2)])
    store.close()
    one = bench().begin()
    one.desk.add(photo())
    one.settle()
    with qtbot.waitSignal(one.sets.opened, timeout=WAIT_MS):
        one.window.open_files([tmp_path / "other.firstslip"])
    one.settle()
    assert [d.file for d in one.desk.documents] == ["other-0.jpg", "other-1.jpg"]
    assert one.window.pages.count() == 2
    one.window.close_page()
    one.settle()
    assert one.close()
    store = SetFile.open(tmp_path / "other.firstslip")
    assert [page.document.file for page in store.pages()] == ["other-1.jpg"]
    store.close()
    assert one.settings.recent[0] == tmp_path / "other.firstslip"


def test_full_disk_is_told_once_and_mended_by_itself(bench, qtbot):
    one = bench().begin()
    document = photo()
    one.desk.add(document)
    one.settle()
    connection = one.sets._autosave.store._connection
    (count,) = connection.execute("PRAGMA page_count").fetchone()
    connection.execute(f"PRAGMA max_page_count = {count}")
    noisy = Document("noise.jpg", 0, (300, 300), np.random.default_rng(0).integers(0, 255, (300, 300, 3), np.uint8))
    with qtbot.waitSignal(one.desk.problem, timeout=WAIT_MS):
        one.desk.add(noisy)
    assert "the disk is full" in one.window.notice.text
    connection.execute("PRAGMA max_page_count = 1000000")
    with qtbot.waitSignal(one.sets._autosave.kept, timeout=WAIT_MS):
        pass
    assert one.sets._autosave.is_clean


def test_recent_files_are_offered_newest_first_and_can_be_forgotten(bench, tmp_path):
    one = bench()
    for name in ("a.jpg", "b & c.jpg"):
        (tmp_path / name).write_bytes(b"")
        one.settings.remember([tmp_path / name])
    one.actions._fill_recent()
    texts = [action.text() for action in one.actions._recent.actions()]
    assert texts[:2] == ["&1 b && c.jpg", "&2 a.jpg"]
    one.actions._recent.actions()[-1].trigger()
    assert one.settings.recent == ()


def test_new_set_by_its_key_empties_the_desk_and_keeps_the_old_set(bench, qtbot):
    one = bench().begin()
    one.window.show()
    one.desk.add(photo())
    one.settle()
    old = one.sets.path
    with qtbot.waitSignal(one.sets.opened, timeout=WAIT_MS):
        QTest.keyClick(
            one.window, Qt.Key.Key_N, Qt.KeyboardModifier.ControlModifier | Qt.KeyboardModifier.AltModifier
        )
    one.settle()
    assert one.desk.documents == [] and one.sets.path != old
    store = SetFile.open(old)
    assert len(store.pages()) == 1
    store.close()


def test_settings_of_a_wrong_kind_count_as_not_set(tmp_path):
    store = QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat)
    for name, value in (("recent", 5), ("language", "xx"), ("decimal_mark", "?"), ("geometry", "?"), ("last_set", 3)):
        store.setValue(name, value)
    settings = Settings(store)
    assert settings.recent == () and settings.language == "" and settings.last_set is None
    assert settings.geometry.isEmpty()
    settings.decimal_comma = True
    assert settings.decimal_comma


def test_page_that_was_kept_before_it_was_read_is_read_when_the_set_is_opened(bench, tmp_path):
    reader = PageReader()
    (found,) = list(reader.find(sample("candidate-4107.jpg")))
    assert found.document.is_unread
    store = SetFile.create(tmp_path / "cut.firstslip")
    store.keep([KeptPage(store.new_key(), 0, found.document)])
    store.close()
    one = bench().begin(tmp_path / "cut.firstslip")
    one.qtbot.waitUntil(lambda: bool(one.desk.documents[0].verdicts), timeout=WAIT_MS)
    one.settle()
    (document,) = one.desk.documents
    assert [line.state for line in document.lines].count(State.UNREAD) == 0
    assert one.close()
    store = SetFile.open(tmp_path / "cut.firstslip")
    assert all(line.candidates for line in store.pages()[0].document.lines)
    store.close()


def test_mark_scheme_is_kept_with_its_set_and_leaves_with_it(bench, tmp_path):
    one = bench().begin()
    one.desk.add(photo())
    one.desk.take_scheme_text("M1 2k=8\nA1 final k=4")
    one.settle()
    with one.qtbot.waitSignal(one.sets.opened, timeout=WAIT_MS):
        one.sets.clear()
    assert one.desk.scheme_text == "" and one.desk.schemes == ()
    old = next(path for path in (tmp_path / "sets").iterdir() if path.suffix == ".firstslip" and path != one.sets.path)
    one.settle()
    with one.qtbot.waitSignal(one.sets.opened, timeout=WAIT_MS):
        one.sets.open(old)
    assert one.desk.scheme_text == "M1 2k=8\nA1 final k=4"
    assert [mark.code for mark in one.desk.schemes[0]] == ["M1", "A1"]


def test_message_in_the_status_bar_has_the_room_to_itself_until_it_goes(bench):
    one = bench().begin()
    one.window.show()
    assert one.actions._kept.isVisible()
    one.window.statusBar().showMessage("Saved candidate-4107 marked.pdf.")
    assert not one.actions._kept.isVisible()
    one.window.statusBar().clearMessage()
    assert one.actions._kept.isVisible()
