"""The set at a glance: counted by hand, doubtful lines first, CSV as RFC 4180 has it."""

import csv
import io

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from checker.report import LineReport, Report, Slip
from checker.slips.hints import KINDS
from desktop.class_set import candidate_of, class_csv, doubtful_lines, page_rows, progress, slip_rows
from desktop.class_view import ClassView
from desktop.desk import Desk
from desktop.desk_line import DeskLine, LineMark, Override, State
from desktop.document import Document, WorkingVerdict
from desktop.page_changes import SetCandidate
from desktop.slip_words import _WORDS, slip_words
from recognition.result import Box, Candidate

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support propagateSizeHints", extend=True)


def slip(kind, term="+ 8 t"):
    return Slip(kind, term, (0, 5), "- 8 t", "because", "")


def page(file, states, *, slips=(), marks=(), override=None, check_reading=False):
    """A page of one working: states of its lines, slips as {place: kind}, marks beside the last line."""
    found = dict(slips)
    lines = [
        DeskLine(Box(0, 60 * at, 100, 40), (Candidate(f"= {at} k", 0.9 - 0.1 * at),), f"= {at} k", state)
        for at, state in enumerate(states)
    ]
    lines[-1] = DeskLine(**{name: getattr(lines[-1], name) for name in DeskLine.__dataclass_fields__} | {
        "marks": tuple(marks), "override": override})  # fmt: skip
    rows = tuple(
        LineReport("slip", 0, "", None, slip(found[at])) if at in found else LineReport("follows" if at else "start")
        for at in range(len(states))
    )
    report = Report("", min(found, default=None), rows)
    verdict = WorkingVerdict(tuple(range(len(states))), report, "look again" if check_reading else "")
    return Document(file, lines=tuple(lines), verdicts=(verdict,))


C, R, D = State.CONFIRMED, State.READ, State.DOUBTFUL


@pytest.fixture
def pages():
    return [
        page("candidate-4107.jpg", [C, C, C], slips={1: "sign-product"}, marks=(LineMark("M"), LineMark("A", 2, 1))),
        page("candidate-4112.jpg", [C, D, D]),
        page("candidate-4107.jpg", [R, R], slips={1: "sign-product"}),
        page("scan.jpg", [C, D], slips={1: "like-terms"}, check_reading=True),
        page("candidate-4130.jpg", [C, C], override=Override(False, "as set")),
    ]


def test_pages_with_doubtful_lines_come_first(pages):
    rows = page_rows(pages)
    assert [(row.candidate, row.page, row.doubtful) for row in rows] == [
        ("4112", 1, 2), ("", 1, 1), ("4107", 1, 0), ("4107", 2, 0), ("4130", 1, 0),
    ]  # fmt: skip


def test_sums_are_those_counted_by_hand(pages):
    # Lines 3 + 3 + 2 + 2 + 2; confirmed 3 + 1 + 0 + 1 + 2; first slips: two, one to read again, one declared.
    sums = progress(pages)
    assert (sums.pages, sums.lines, sums.confirmed, sums.doubtful, sums.slips) == (5, 12, 7, 3, 4)
    assert (sums.given, sums.out_of) == (2, 3)


def test_slips_are_counted_by_kind_and_those_to_read_again_are_not(pages):
    assert [(row.kind, row.count, row.candidates) for row in slip_rows(pages)] == [
        ("sign-product", 2, ("4107",)), ("declared", 1, ("4130",)),
    ]  # fmt: skip


def test_doubtful_lines_begin_with_the_least_sure(pages):
    assert [(line.page_index, line.line_index) for line in doubtful_lines(pages)] == [(1, 2), (1, 1), (3, 1)]


def test_csv_is_read_back_by_a_csv_reader_and_names_no_file(pages):
    text = class_csv(pages)
    assert "scan" not in text and ".jpg" not in text
    assert text.count("\r\n") == 6 and text.endswith("\r\n")  # RFC 4180, 2.1: each record ends in CR LF
    records = list(csv.DictReader(io.StringIO(text, newline="")))
    first = records[0]
    assert (first["candidate"], first["first_slip_line"], first["slip"]) == ("4107", "2", "sign of a product")
    assert (first["marks"], first["marks_given"], first["marks_out_of"]) == ("M1 A1/2", "2", "3")
    assert first["written"].startswith("'+")  # a spreadsheet would take it for a formula
    assert (records[3]["check_reading"], records[3]["slip"]) == ("yes", "")
    assert len({len(record) for record in csv.reader(io.StringIO(text, newline=""))}) == 1


def test_csv_quotes_commas_and_quotes():
    document = page("page-41.jpg", [C, C])
    document.do(SetCandidate('7,"x"'))
    assert class_csv([document]).splitlines()[1].startswith('"7,""x""",1,')  # RFC 4180, 2.6 and 2.7


@pytest.mark.parametrize(("file", "number"), [
    ("candidate-4107.jpg", "4107"), ("set 3 candidate 4107.png", "4107"), ("photo.jpg", ""), ("page-2.jpg", ""),
    ("/home/4444/x.jpg", ""),
])  # fmt: skip
def test_candidate_number_is_taken_from_the_name_of_the_file(file, number):
    assert candidate_of(Document(file)) == number


def test_every_kind_of_slip_has_words():
    assert len(set(KINDS) & set(_WORDS)) > 20
    for kind in (*KINDS, "a-kind-of-tomorrow"):
        assert slip_words(kind) and "-" not in slip_words(kind)


@pytest.fixture
def view(qtbot, pages):
    desk = Desk()
    for document in pages:
        desk.lay(document)
    view = ClassView(desk)
    qtbot.addWidget(view)
    view.show()
    yield view
    desk.close()


def test_view_shows_progress_and_enter_leads_to_the_page(qtbot, view):
    assert view._sums.text().startswith("7 of 12 lines confirmed, 3 doubtful. Pages: 5. First slips: 4.")
    assert view._bar.value() == 7
    view._pages.setCurrentCell(2, 0)
    view._pages.setFocus()
    with qtbot.waitSignal(view.line_wanted) as asked:
        QTest.keyClick(view._pages, Qt.Key.Key_Return)
    assert asked.args == [0, -1]


def test_candidate_number_is_changed_in_the_table_and_can_be_undone(qtbot, view, pages):
    view._pages.item(1, 0).setText("4199")
    assert pages[3].candidate == "4199"
    pages[3].undo()
    assert pages[3].candidate == ""
    with qtbot.waitSignal(view._desk.problem) as told:
        view._pages.item(0, 0).setText("Anna B.")
    assert "letters and digits only" in told.args[0]
    qtbot.waitUntil(lambda: view._pages.item(0, 0).text() == "4112")


def test_csv_is_saved_and_a_folder_that_is_not_there_is_told(qtbot, view, tmp_path):
    view.save_csv(tmp_path / "set.csv")
    assert (tmp_path / "set.csv").read_bytes().startswith(b"candidate,page,lines")
    with qtbot.waitSignal(view._desk.problem) as told:
        view.save_csv(tmp_path / "none" / "set.csv")
    assert "could not be saved there" in told.args[0]
