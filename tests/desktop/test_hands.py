"""Confirmed lines weigh the readings of other lines in the same hand; the user is told, and can take it back."""


import pytest
from PySide6.QtWidgets import QLabel

from desktop.desk import Desk
from desktop.desk_line import DeskLine, State, weighed_by_hand
from desktop.document import Document
from desktop.hand_pages import HandLine, HandPage
from desktop.line_changes import ConfirmAll, SetReading
from desktop.line_editor import LineEditor
from desktop.page_changes import SetCandidate
from desktop.reader_process import ReaderProcess
from recognition.result import Box, Candidate, Token
from tests.desktop.samples import sample
from tests.recognition.test_same_hand import _written

WORKING = ("2 x 7 ( 1 7 )", "7 x 1 ( 2 7 )", "2 x ( 7 1 )", "x 1 7 ( 2 )", "7 ( 2 x ) 1 7")


def _candidate(latex, probability):
    return Candidate(latex, probability, tuple(Token(t, 0.9, Box(n, 0, 1, 1)) for n, t in enumerate(latex.split())))


def _misread(latex, wrong, probability=0.55):
    """Readings as of a line of which another reading was likeliest."""
    return (_candidate(wrong, probability), _candidate(latex, 0.9 - probability))


@pytest.fixture(scope="module")
def process():
    reader = ReaderProcess(threads=1)
    yield reader
    reader.close()


@pytest.fixture
def desk(qapp, checker, process):
    desk = Desk(reader=process, checker=checker)
    yield desk
    assert desk.close()


def _page(desk, *, texts=WORKING, last=None, name="page"):
    """A drawn page in the project's own pen hand; the last line may have other readings."""
    lines, crops = [], []
    for number, text in enumerate(texts):
        crop = _written(text)
        readings = last if last is not None and number == len(texts) - 1 else (_candidate(text, 0.6),)
        lines.append(
            DeskLine(Box(0, 100 * number, 400, 80), readings, readings[0].latex, State.DOUBTFUL)
        )
        crops.append(crop)
    document = Document(file=f"{name}.inkml", size=(400, 600), lines=tuple(lines))
    desk.add(document)
    desk.hands.take_crops(document, document.lines, crops)
    return document


def _rest(qtbot, desk):
    qtbot.waitUntil(lambda: not desk.hands.busy, timeout=60_000)


def test_line_misread_is_read_by_the_hand_and_undo_takes_it_back(qtbot, desk):
    page = _page(desk, last=_misread(WORKING[-1], "7 ( 2 x ) 1 1"))
    before = page.lines[-1]
    desk.do(page, ConfirmAll((0, 1, 2, 3)))
    _rest(qtbot, desk)
    line = page.lines[-1]
    assert line.latex == line.other_by_hand == WORKING[-1]
    assert line.state is State.DOUBTFUL  # the user is to look at it
    assert line.as_read == before.candidates
    assert {candidate.latex for candidate in before.candidates} <= {candidate.latex for candidate in line.candidates}
    desk.undo_group.setActiveStack(desk._stacks[id(page)])
    desk.undo_group.undo()
    _rest(qtbot, desk)
    assert page.lines[-1] == before
    desk.undo_group.redo()
    _rest(qtbot, desk)
    assert page.lines[-1] == line


def test_line_that_is_looked_at_keeps_its_reading_and_is_told_of(qtbot, desk):
    page = _page(desk, last=_misread(WORKING[-1], "7 ( 2 x ) 1 1"))
    desk.hands.look_at(page, 4)
    desk.do(page, ConfirmAll((0, 1, 2, 3)))
    _rest(qtbot, desk)
    line = page.lines[-1]
    assert (line.latex, line.other_by_hand) == ("7 ( 2 x ) 1 1", WORKING[-1])
    editor = LineEditor()
    qtbot.addWidget(editor)
    editor.show_line(4, line)
    titles = [label.text() for label in editor.findChildren(QLabel)]
    assert any("Key 2 takes that reading" in title for title in titles)
    with qtbot.waitSignal(editor.confirmed) as said:
        editor.choose_candidate(1)
    assert said.args == [4, WORKING[-1]]


def test_confirmed_and_edited_lines_are_never_touched(qtbot, desk):
    page = _page(desk, last=_misread(WORKING[-1], "7 ( 2 x ) 1 1"))
    desk.do(page, SetReading(4, "7(2x)11"))  # the user's word, however it looks
    desk.do(page, ConfirmAll((0, 1, 2)))
    told = page.lines
    _rest(qtbot, desk)
    assert [page.lines[n] for n in (0, 1, 2, 4)] == [told[n] for n in (0, 1, 2, 4)]


def test_one_confirmed_line_says_nothing_and_asks_nothing(qtbot, desk, process, monkeypatch):
    asked = []
    monkeypatch.setattr(process, "weigh", lambda pages, **_: asked.append(pages))
    page = _page(desk, last=_misread(WORKING[-1], "7 ( 2 x ) 1 1"))
    desk.do(page, SetReading(0, WORKING[0]))
    before = page.lines
    _rest(qtbot, desk)
    assert page.lines == before and not asked


def test_page_of_the_same_candidate_is_weighed_and_of_another_is_not(qtbot, desk):
    first = _page(desk)
    same = _page(desk, texts=WORKING[-1:], last=_misread(WORKING[-1], "7 ( 2 x ) 1 1"), name="same")
    other = _page(desk, texts=WORKING[-1:], last=_misread(WORKING[-1], "7 ( 2 x ) 1 1"), name="other")
    for page, number in ((first, "4107"), (same, "4107"), (other, "4160")):
        desk.do(page, SetCandidate(number))
    desk.do(first, ConfirmAll((0, 1, 2, 3, 4)))
    _rest(qtbot, desk)
    assert same.lines[0].latex == WORKING[-1]
    assert other.lines[0].latex == "7 ( 2 x ) 1 1" and not other.lines[0].as_read
    desk.do(same, SetCandidate("4160"))
    _rest(qtbot, desk)
    assert same.lines[0].latex == "7 ( 2 x ) 1 1" and not same.lines[0].as_read


def test_answer_for_a_page_that_changed_meanwhile_is_weighed_anew(qtbot, desk):
    page = _page(desk, last=_misread(WORKING[-1], "7 ( 2 x ) 1 1"))
    desk.do(page, ConfirmAll((0, 1)))
    qtbot.waitUntil(lambda: desk.hands._job is not None, timeout=10_000)
    desk.do(page, SetReading(2, WORKING[2]))
    desk.do(page, SetReading(3, WORKING[3]))
    _rest(qtbot, desk)
    assert page.lines[-1].latex == WORKING[-1]
    assert [line.state for line in page.lines[:4]] == [State.CONFIRMED] * 4


def test_weighing_takes_back_and_leaves_confirmed_lines():
    read = _misread("x = 7", "x = 1")
    line = DeskLine(Box(0, 0, 9, 9), read, read[0].latex, State.DOUBTFUL)
    new = weighed_by_hand(line, read[::-1], keeps_first=False)
    assert (new.latex, new.as_read) == ("x = 7", read)
    assert weighed_by_hand(new, read, keeps_first=False) == line
    kept = DeskLine(Box(0, 0, 9, 9), read, "x = 1", State.CONFIRMED)
    assert weighed_by_hand(kept, read[::-1], keeps_first=False) is kept


def test_lines_without_a_crop_are_cut_out_of_the_page(process):
    (found,) = process.find(sample("candidate-4107.jpg"))
    read = process.read(found)
    lines = found.document.lines
    told = [
        HandLine(line.polygon or line.box, None, of_line[0].latex if number < 4 else None, of_line)
        for number, (line, of_line) in enumerate(zip(lines, read, strict=True)) if of_line
    ]  # fmt: skip
    (weighed,) = process.weigh([HandPage(tuple(told), found.document.picture)])
    assert set(weighed.cut) == set(range(len(told)))
    assert len(weighed.candidates) == len(told)
    assert all(new[0].latex for new in weighed.candidates)
    assert process.weigh([HandPage(tuple(told))])[0].candidates == tuple(line.candidates for line in told)
