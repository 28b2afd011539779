"""What is said of the final answer: on the card, under the picture and on the summary page; counted on the page."""

from dataclasses import replace

import pytest

from checker.report import Final, LineReport, Report, Slip
from desktop.answer_words import answer_words
from desktop.card import card_of
from desktop.desk import Desk
from desktop.desk_line import Override
from desktop.document import WorkingVerdict
from desktop.page_changes import Overrule
from desktop.pipeline import judge_lines
from desktop.reason_strip import strip_items
from desktop.reveal import EVERYTHING, Reveal
from desktop.summary_page import page_section
from desktop.typed_page import typed_document
from desktop.undo import ChangeCommand
from desktop.window import Window

pytestmark = pytest.mark.qt_log_ignore("This plugin does not support", extend=True)

CARRIED = ["2x+3=7", "2x=10", "x=5"]  # 2x is 4
LOST = ["x^2=9", "x=3"]  # and x = -3


def judged(lines, judge=None):
    document = typed_document(lines)
    document.show(judge_lines(document.lines, judge=judge), revision=document.revision)
    return document


def answers(document, reveal=EVERYTHING):
    return [answer_words(document, verdict, reveal) for verdict in document.verdicts]


@pytest.mark.parametrize(("lines", "words"), [
    (["2x+3=7", "2x=4", "x=2"], "The answer is right."),
    (CARRIED, "The answer follows from the slip on line 2 (ft)."),
], ids=["right", "carried"])  # fmt: skip
def test_answer_stands_on_card_under_the_picture_and_on_the_summary_page(qapp, lines, words):
    document = judged(lines)
    assert all(card_of(document, index, EVERYTHING).answer == words for index in range(len(lines)))
    assert ("Answer", words) in [(item.label, item.text) for item in strip_items(document)]
    assert words in page_section(document, "page", b"")


def test_nothing_is_said_where_the_checker_says_nothing(qapp):
    document = judged([r"\text{so}", "2x+"])
    assert answers(document) == [""] * len(document.verdicts)
    assert "Answer" not in [item.label for item in strip_items(document)]
    assert "Answer" not in page_section(document, "page", b"")


def test_lines_are_counted_on_the_page(qapp):
    document = judged(["5(a-1)", "=5a-5", "", *CARRIED])
    first_of_second = document.verdicts[-1].lines[0]
    slip = document.verdicts[-1].first_slip_line
    assert first_of_second > 0
    assert answers(document)[-1] == f"The answer follows from the slip on line {slip + 1} (ft)."


def test_blank_line_within_a_working_is_counted(qapp):
    def judge(working):
        assert working.lines == ("x=1", "x=2", "x=2")
        rows = (LineReport("start"), LineReport("slip", 0), LineReport("ft", 1))
        return Report("", 1, rows, Final(False), "The answer follows from the slip on line 2 (ft).")

    document = judged(["x=1", "x=1", "x=2", "x=2"])
    lines = list(document.lines)
    lines[1] = replace(lines[1], latex="", starts_working=False)
    (verdict,) = judge_lines(lines, judge=judge)
    assert verdict.report.answer == "The answer follows from the slip on line 3 (ft)."


def test_reason_is_kept_back_while_hints_are_asked_for_one_at_a_time(qapp):
    slip = Slip("sign", "+8", (1, 3), "-8", "the sign is lost", "=-8")
    rows = (LineReport("start"), LineReport("slip", 0, slip=slip))
    why = "The value -8 is expected."
    report = Report(
        "", 1, rows, Final(False, True, "-8", why), f"The answer is wrong. It has not the form asked. {why}"
    )
    document = typed_document(["a", "=+8"])
    document.show((WorkingVerdict((0, 1), report),), revision=document.revision)
    hidden, told = "The answer is wrong. It has not the form asked.", "The value −8 is expected."
    assert answers(document) == [f"{hidden} {told}"]
    reveal = Reveal(is_student=True)
    for _ in range(3):
        assert answers(document, reveal) == [hidden]
        reveal = reveal.further(slip)
    assert answers(document, reveal) == [f"{hidden} {told}"]


def test_lost_solution_is_not_named_to_who_asks_for_hints(qapp):
    document = judged(LOST)
    assert "-3" in answers(document)[0].replace("−", "-")
    assert answers(document, Reveal(is_student=True)) == ["The answer is wrong."]


def test_users_own_word_and_a_doubtful_reading_silence_the_answer(qapp):
    document = judged(CARRIED)
    (verdict,) = document.verdicts
    document.show(
        (WorkingVerdict(verdict.lines, verdict.report, "Check the reading first."),), revision=document.revision
    )
    assert answers(document) == [""]
    document = judged(CARRIED)
    ChangeCommand(document, Overrule(1, Override(True))).redo()
    assert answers(document) == [""]


def test_card_shows_the_answer_at_its_end(qtbot):
    window = Window(Desk())
    qtbot.addWidget(window)
    window.show()
    window.desk.add_typed(CARRIED)
    qtbot.waitUntil(lambda: not window.desk.busy, timeout=60_000)
    window.go_to_slip()
    card = window.card
    assert [row.text for row in card._answer.rows] == ["The answer follows from the slip on line 2 (ft)."]
    qtbot.wait(50)
    others = [part for part in card.children() if part is not card._answer and getattr(part, "isVisible", bool)()]
    assert all(part.geometry().bottom() <= card._answer.geometry().top() for part in others)
    window.close()
