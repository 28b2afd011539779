"""The document: changes, undo, states and verdicts."""

import numpy as np
import pytest

from checker.report import LineReport, Report
from desktop.desk_line import SURE, LineMark, Override, State, desk_line
from desktop.document import Document, WorkingVerdict
from desktop.line_changes import ConfirmAll, InsertLine, MarkStart, RemoveLine, SetReading, StrikeOut
from desktop.page_changes import AwardMarks, Overrule, SetCandidate, SetStrokes
from recognition.ink import Stroke
from recognition.result import Box, Candidate, Line, Page


def page_line(latex: str, probability: float, y: int = 0) -> Line:
    return Line(Box(10, y, 200, 40), (Candidate(latex, probability),) if latex else ())


def three_lines() -> Document:
    lines = (page_line("k + 1", 0.99), page_line("= 1 + k", 0.4, 60), page_line("", 0.0, 120))
    return Document.of_page(Page("page.jpg", 0, (400, 300), lines), None)


def test_lines_are_read_doubtful_or_unread_by_their_probability():
    assert [line.state for line in three_lines().lines] == [State.READ, State.DOUBTFUL, State.UNREAD]


def test_reading_at_the_threshold_counts_as_read():
    assert desk_line(page_line("k", SURE)).state is State.READ


def test_confirmed_line_is_certain():
    document = three_lines()
    document.do(SetReading(1, "= k + 1"))
    assert document.lines[1].state is State.CONFIRMED
    assert document.lines[1].probability == 1.0


CHANGES = [
    SetReading(0, "k + 7"), ConfirmAll((0, 1)), StrikeOut(2, True), MarkStart(1, True), RemoveLine(0),
    InsertLine(3, desk_line(page_line("k = 2", 0.9, 180))), Overrule(1, Override(True, "as in the book")),
    AwardMarks(1, (LineMark("M", 1), LineMark("A", 2, given=1))), SetCandidate("4107"),
    SetStrokes((Stroke(np.array([[1.0, 2.0]])),), (desk_line(page_line("k = 2", 0.9)),)),
]  # fmt: skip


@pytest.mark.parametrize("change", CHANGES, ids=lambda change: type(change).__name__)
def test_change_is_undone_and_done_again(change):
    document = three_lines()
    before = document.content
    document.do(change)
    after = document.content
    assert after != before
    document.undo()
    assert document.content == before
    document.redo()
    assert document.content == after


def test_change_that_raises_leaves_all_as_it_was():
    document = three_lines()
    before = document.lines
    with pytest.raises(IndexError):
        document.do(SetReading(7, "x"))
    assert (document.lines, document.revision) == (before, 0)
    document.undo()
    assert document.lines == before


def test_new_change_after_undo_forgets_what_was_undone():
    document = three_lines()
    document.do(SetReading(0, "a"))
    document.undo()
    document.do(SetReading(0, "b"))
    document.redo()
    assert document.lines[0].latex == "b"


def test_verdicts_for_an_older_revision_are_dropped():
    document = three_lines()
    asked = document.revision
    document.do(SetReading(0, "k + 2"))
    verdict = WorkingVerdict((0,), Report("", None, (LineReport("start"),)))
    assert not document.show([verdict], revision=asked)
    assert document.verdicts == ()
    assert document.show([verdict], revision=document.revision)


def test_next_doubtful_line_goes_round_the_page():
    document = three_lines()
    assert document.next_doubtful(0) == 1
    assert document.next_doubtful(1) == 2
    assert document.next_doubtful(2) == 1
    document.do(SetReading(1, "k"))
    document.do(StrikeOut(2, True))
    assert document.next_doubtful(0) is None


def test_readings_do_not_touch_a_line_that_the_user_typed():
    document = three_lines()
    document.do(SetReading(2, "k = 3"))
    document.take_readings([(), (), (Candidate("k = 8", 0.99),)])
    assert document.lines[2].latex == "k = 3"


def test_listeners_hear_of_changes_and_verdicts():
    document = three_lines()
    heard = []
    document.listen(lambda: heard.append(document.revision))
    document.do(SetReading(0, "k"))
    document.show([], revision=document.revision)
    assert heard == [1, 1]
