"""Work that was read with other weights of the reader: it opens as it was, confirmed lines stay, the rest goes on."""

from dataclasses import replace

import cv2
import pytest
from PySide6.QtCore import QSettings, Qt
from PySide6.QtTest import QTest

from desktop.desk import Desk
from desktop.desk_line import State, with_readings
from desktop.line_changes import SetReading
from desktop.reading import PageReader
from desktop.set_actions import SetActions
from desktop.sets import Sets
from desktop.settings import Settings
from desktop.store import KeptPage, SetFile
from desktop.window import Window
from recognition.reader.weights import ModelFacts
from recognition.result import Candidate, Token
from tests.desktop.samples import sample

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)
PAGE = "candidate-4107.jpg"
UNKNOWN = r"\oldsign"
WAIT_MS = 60_000


@pytest.fixture(scope="module")
def reader():
    return PageReader()


def other(line, probability):
    """The line as weights with another vocabulary, other probabilities and no places would have read it."""
    tokens = (Token("k", 0.2), Token(UNKNOWN, 0.4, line.box), Token("4", 0.9))
    return with_readings(replace(line, candidates=()), (Candidate(f"k {UNKNOWN} 4", probability, tokens),))


@pytest.fixture
def kept(tmp_path, reader):
    """A set with a page read by other weights: two lines confirmed, one of them with a sign unknown today."""
    assert UNKNOWN not in ModelFacts().vocabulary
    (found,) = reader.find(sample(PAGE))
    document = found.document
    document.picture = cv2.cvtColor(cv2.imread(str(sample(PAGE))), cv2.COLOR_BGR2RGB)
    document.lines = tuple(other(line, 0.4 if n % 2 else 0.9) for n, line in enumerate(document.lines))
    document.do(SetReading(0, "(2x-3)(x-4)-x(x-5)"))
    document.do(SetReading(1, f"k {UNKNOWN} 4"))
    store = SetFile.create(tmp_path / "class.firstslip")
    store.keep([KeptPage(store.new_key(), 0, document)])
    store.close()
    return store.path, document


@pytest.fixture
def window(qtbot, tmp_path, checker, reader, kept):
    desk = Desk(reader=reader, checker=checker)
    window = Window(desk)
    qtbot.addWidget(window)
    window.show()
    sets = Sets(desk, tmp_path / "sets")
    settings = Settings(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))
    actions = SetActions(window, sets, settings)
    with qtbot.waitSignal(sets.opened, timeout=WAIT_MS):
        actions.begin([kept[0]])
    window.settle = lambda: qtbot.waitUntil(lambda: not desk.busy and not sets.busy, timeout=WAIT_MS)
    window.settle()
    qtbot.waitUntil(lambda: window.document.picture is not None, timeout=WAIT_MS)
    yield window
    window.close()
    sets.close()


def test_set_opens_with_every_line_as_it_was(window, kept):
    assert window.document.lines == kept[1].lines
    assert [line.state for line in window.document.lines[:2]] == [State.CONFIRMED] * 2
    assert window.document.verdicts != ()
    assert window.notice.isHidden()


def test_checking_again_reads_nothing_over_confirmed_lines(window, kept):
    QTest.keyClick(window, Qt.Key.Key_F5)
    window.settle()
    assert window.document.lines == kept[1].lines


def test_only_the_line_that_is_drawn_anew_is_read_with_the_weights_of_today(window, kept):
    document, before = window.document, kept[1].lines
    window.desk.corrections.redraw(document, 2, before[2].box)
    window.settle()
    assert UNKNOWN not in document.lines[2].latex
    assert document.lines[:2] == before[:2] and document.lines[3:] == before[3:]
    window.desk.undo_group.undo()
    assert document.lines == before
    window.settle()


def test_reading_that_comes_late_leaves_confirmed_lines_alone(kept, reader):
    document = kept[1]
    (found,) = reader.find(sample(PAGE))
    document.take_readings(reader.read(found))
    assert document.lines[0].latex == "(2x-3)(x-4)-x(x-5)"
    assert [line.state for line in document.lines[:2]] == [State.CONFIRMED] * 2
