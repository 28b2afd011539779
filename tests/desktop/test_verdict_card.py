"""The card of a line: what it tells, hints one at a time, the user's own word, marks by a scheme."""

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest

from checker.errors import InputError
from desktop.card import card_of
from desktop.desk import Desk
from desktop.desk_line import LineMark, Override
from desktop.mark_text import awards_to_lines, marks_text, read_marks
from desktop.overruled import counted_slip, counted_style
from desktop.page_changes import Overrule
from desktop.page_list import page_state
from desktop.pipeline import judge_lines, marks_of
from desktop.reason_strip import strip_items
from desktop.reveal import EVERYTHING, Reveal
from desktop.scheme_text import read_scheme_text
from desktop.summary_page import page_section
from desktop.typed_page import typed_document
from desktop.verdict_style import DECLARED_RIGHT, STYLES
from desktop.window import Window
from desktop.wording import headline, slip_rows

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)

# -2t times +4 is -8t, so the second line's last sign is wrong; the third follows from the second as written.
SIGN = ["(5-2t)(t+4)", "=5t+20-2t^2+8t", "=-2t^2+13t+20"]


@pytest.fixture
def window(qtbot, checker):
    desk = Desk(checker=checker)
    window = Window(desk)
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()


def settle(qtbot, window):
    qtbot.waitUntil(lambda: not window._desk.busy, timeout=60_000)


def judged(lines):
    document = typed_document(lines)
    document.show(judge_lines(document.lines), revision=document.revision)
    return document


def words(window):
    return {row.label: row.text or row.latex for row in window.card.rows}


def test_card_of_a_slip_tells_step_factors_written_should_be_and_line_put_right(qapp):
    card = card_of(judged(SIGN), 1, EVERYTHING)
    rows = {row.label: row.text or row.latex for row in card.rows}
    assert rows["From line 1"] == "(5-2t)(t+4)"
    assert rows["Factors"].replace(" ", "") == r"{-2t}\text{and}{+4}"
    assert (rows["Written"], rows["Should be"]) == ("+8t", "-8t")
    assert rows["Line put right"].replace(" ", "") == "=5t+20-2t^2-8t"
    assert "15" in card.counterexample  # at t = 1 the line before is 3 * 5
    assert "31" in card.counterexample
    assert not any("15" in (row.text + row.latex) for row in card.rows)


def test_student_gets_one_grade_of_hint_more_each_time(qtbot, window):
    window._desk.add_typed(SIGN)
    settle(qtbot, window)
    window.verdicts.set_student(True)
    window.go_to_slip()
    assert set(words(window)) == {"From line 1", "Line as written"}
    (mark, *_) = window.page._lines.marks
    whole = mark.frame.width()
    assert mark.should_be == ""
    window.verdicts.ask_for_hint()
    assert "8t" in words(window)["Hint 1"]
    assert "8t" not in words(window)["Hint 1"].replace("+8t", "")
    assert window.page._lines.marks[0].frame.width() < whole / 2  # the term alone is framed now
    window.verdicts.ask_for_hint()
    assert "sign" in words(window)["Hint 2"]
    assert window.page._lines.marks[0].should_be == ""
    window.verdicts.ask_for_hint()
    assert "Should be" in words(window)
    assert window.page._lines.marks[0].should_be == "-8t"
    assert not window.card._hint.isVisible()


def test_student_sees_no_reason_before_asking_in_list_and_on_the_page(qtbot, window):
    window._desk.add_typed(SIGN)
    settle(qtbot, window)
    window.verdicts.set_student(True)
    assert window.list.model().row(1).reason == ""
    assert window.page._words(1) == "Line 2: does not follow."


def test_counterexample_is_shown_on_demand(qtbot, window):
    window._desk.add_typed(SIGN)
    settle(qtbot, window)
    window.go_to_slip()
    assert "Counterexample" not in words(window)
    QTest.keyClick(window.list, Qt.Key.Key_E, Qt.KeyboardModifier.ControlModifier)
    assert "31" in words(window)["Counterexample"]


def test_user_declares_a_line_right_with_a_note_and_it_is_kept_shown_and_undone(qtbot, window):
    document = window._desk.add_typed(SIGN)
    settle(qtbot, window)
    window.go_to_slip()
    QTest.mouseClick(window.card._right, Qt.MouseButton.LeftButton)
    QTest.keyClicks(window.card._note, "sign was unclear")
    QTest.keyClick(window.card._note, Qt.Key.Key_Return)
    settle(qtbot, window)
    assert document.lines[1].override == Override(True, "sign was unclear")
    assert window.card._title.text() == "Line 2: declared right"
    assert counted_style(document, 1) is DECLARED_RIGHT
    assert counted_style(document, 2) is STYLES["follows"]  # no slip is left that it could follow from
    assert counted_slip(document, document.verdicts[0]) is None
    assert "declared right" in headline(document, document.verdicts[0])
    assert slip_rows(document, document.verdicts[0]) == ()
    assert "sign was unclear" in window.page._words(1)
    window._desk.undo_group.undo()
    window._desk.undo_group.undo()
    assert document.lines[1].override is None


def test_line_declared_wrong_becomes_the_first_slip(qapp):
    document = judged(["2(k+1)", "=2k+2", "=2+2k"])
    document.do(Overrule(1, Override(False)))
    assert counted_slip(document, document.verdicts[0]) == 1
    assert headline(document, document.verdicts[0]) == "First slip: line 2, as you declared."


def test_scheme_suggests_marks_and_they_are_awarded_in_one_step(qtbot, window):
    document = window._desk.add_typed(["2x+3=13", "2x=10", "x=5"])
    settle(qtbot, window)
    window._desk.take_schemes(read_scheme_text("M1: 2x=10 ; one term on each side\nA1: final x=5"))
    with qtbot.waitSignal(window._desk.marks_suggested, timeout=60_000):
        settle(qtbot, window)
    settle(qtbot, window)
    window.list.choose(2)
    assert "2 of 2" in window.card._suggestion.text()
    assert "the teacher decides" in window.card._suggestion.text()
    window.verdicts.award_suggested()
    assert document.lines[1].marks == (LineMark("M"),)
    assert document.lines[2].marks == (LineMark("A"),)
    window._desk.undo_group.undo()
    assert not any(line.marks for line in document.lines)


def test_marks_of_a_page_name_the_lines_of_the_page(qapp):
    document = judged(["2k=4", "k=2", "", "2x+3=13", "2x=10", "x=5"])
    none, marks = marks_of(document.lines, document.verdicts, ((), read_scheme_text("M1: 2x=10\nA1: final x=5")[0]))
    assert none is None
    assert [award.line for award in marks.each] == [3, 4]


def test_teacher_writes_marks_beside_a_line(qtbot, window):
    document = window._desk.add_typed(SIGN)
    settle(qtbot, window)
    window.list.choose(1)
    QTest.keyClicks(window.card._marks_field, "m1 A0")
    QTest.keyClick(window.card._marks_field, Qt.Key.Key_Return)
    assert document.lines[1].marks == (LineMark("M"), LineMark("A", 1, 0))


@pytest.mark.parametrize(
    ("text", "marks"),
    [
        ("M1 A0", (LineMark("M"), LineMark("A", 1, 0))),
        ("b2", (LineMark("B", 2, 2),)),
        ("A1/2", (LineMark("A", 2, 1),)),
        ("", ()),
        ("M1 good", None),
        ("A3/2", None),
    ],
)
def test_marks_are_read_as_teachers_write_them(text, marks):
    assert read_marks(text) == marks
    if marks:
        assert read_marks(marks_text(marks)) == marks


def test_scheme_lines_become_marks():
    ((method, accuracy), (other,)) = read_scheme_text(
        "M1: 2x=10 or 2x-10=0 ; one term on each side\nA1: final x=5 ; ft\n\nQuestion 2\nB1 final x(x+1) ; factorised"
    )
    assert (method.code, len(method.targets), method.purpose) == ("M1", 2, "one term on each side")
    assert (accuracy.is_final, accuracy.ft) == (True, True)
    assert (other.form, other.is_final) == ("factorised", True)


def test_scheme_that_is_not_understood_is_told_with_its_line():
    with pytest.raises(InputError, match="Line 2 of the scheme begins with no mark"):
        read_scheme_text("M1: 2x=10\nthen two marks for the rest")
    with pytest.raises(InputError, match="Line 4 of the scheme begins with no mark"):
        read_scheme_text("M1 2x=10\n\nM1 x=1\nfurther marks")
    with pytest.raises(InputError, match="Entry 1 of the scheme"):
        read_scheme_text("M1: 2x=(10")


def test_marks_of_a_special_case_stand_in_place_of_the_others(qapp):
    document = judged(["2x+3=13", "x=4"])
    scheme = read_scheme_text("M1 2x=10\nA1 final x=5\nSC B1 final x=4")
    (marks,) = marks_of(document.lines, document.verdicts, scheme)
    changes = awards_to_lines(document, 0, marks)
    written = {change.index: change.marks for change in changes}
    assert sum(mark.given for marks in written.values() for mark in marks) == marks.total


def test_student_with_everything_told_sees_the_whole_card(qapp):
    document = judged(SIGN)
    reveal = Reveal(True)
    slip = document.verdicts[0].slip
    for _ in range(5):
        reveal = reveal.further(slip)
    assert reveal.grade(slip) == 3
    assert card_of(document, 1, reveal).next_hint == 0


def test_own_word_counts_in_page_list_picture_and_summary(qtbot, window):
    document = window._desk.add_typed(SIGN)
    settle(qtbot, window)
    assert "first slip: line 2" in page_state(document)
    window._desk.do(document, Overrule(1, Override(True, "written beside it")))
    settle(qtbot, window)
    assert "first slip" not in page_state(document)
    section = page_section(document, "page", b"")
    assert "declared right" in section
    assert "written beside it" in section
    assert any("Declared right. written beside it" in item.text for item in strip_items(document))
