"""Long lines that are carried on below: joined, judged as one, told at the line that holds the wrong term."""

from dataclasses import replace

import pytest

from desktop.desk_line import DeskLine, State
from desktop.document import Document
from desktop.line_changes import CarryOn
from desktop.overruled import counted_style
from desktop.page_json import page_json
from desktop.pipeline import judge_lines, marks_of
from desktop.scheme_text import read_scheme_text
from desktop.statements import statements_of, whole_latex
from desktop.verdict_style import CARRIED_ON, STYLES
from desktop.wording import headline, line_reason, slip_rows
from desktop.workings import carries_on
from recognition.result import Box


def line(latex: str, row: int, **options) -> DeskLine:
    return DeskLine(Box(100, 70 * row, 300, 40), latex=latex, state=State.CONFIRMED, **options)


def page(*lines: DeskLine) -> Document:
    document = Document("page.jpg", size=(900, 900), lines=lines)
    document.show(judge_lines(document.lines), revision=document.revision)
    return document


def verdicts(document: Document) -> list[str]:
    return [row.verdict for verdict in document.verdicts for row in verdict.report.lines]


@pytest.mark.parametrize(
    ("before", "rest", "joins"),
    [
        ("3 x ^ { 2 } + 2 x -", "7 x + 4", True),  # the sign is left at the end
        ("3 x ^ { 2 } + 2 x", "- 7 x + 4", True),  # or stands at the start
        ("y = 3 ( x + 2", "- 5 x )", True),  # the bracket is still open
        ("x = 2 \\text { or }", "x = 5", True),
        ("2 x + 3 = 1 1", "- 2 x = 8", False),  # two whole equations
        ("2 ( x + 3 ) ( x - 4 )", "= 2 x ^ { 2 } - 2 x - 2 4", False),  # the next step of a chain
        ("2 x ^ { 2 } + 6 x - 8 x - 2 4", "2 x ^ { 2 } - 2 x - 2 4", False),  # nothing shows a joint
    ],
)
def test_layout_joins_lines_only_where_the_readings_show_the_joint(before, rest, joins):
    assert carries_on(line(before, 0), line(rest, 1, goes_on=True)) is joins
    assert not carries_on(line(before, 0), line(rest, 1))
    assert carries_on(line(before, 0), line(rest, 1, carries_on=True))
    assert not carries_on(line(before, 0), line(rest, 1, goes_on=True, carries_on=False))


@pytest.mark.parametrize(
    ("before", "rest", "text"),
    [
        ("3 ) 2 a +", "+ 5 b", "2 a + 5 b"),
        ("3 ) 2 a -", "- 5 b", "2 a - 5 b"),
        ("3 ) 2 a =", "= 5 b", "2 a = 5 b"),
        ("3 ) 2 a +", "- 5 b", "2 a + - 5 b"),
        ("3 ) 2 a \\cdot", "\\cdot 5 b", "2 a \\cdot 5 b"),
        ("3 ) 2 a \\cdot", "\\cos b", "2 a \\cdot \\cos b"),
    ],
)
def test_sign_at_the_break_counts_once_and_the_question_number_is_apart(before, rest, text):
    lines = [line(before, 0), line(rest, 1, carries_on=True)]
    (statement,) = statements_of(lines, (0, 1))
    assert " ".join(statement.text.split()) == text
    assert statement.label == "3 ) "
    at, own = statement.starts[1]
    assert lines[1].latex[own:] == statement.text[at:]


# (x + 2)(x - 7) + 3x = x^2 - 7x + 2x - 14 + 3x; written over two lines, then gathered: x^2 - 2x - 14.
LONG = ("( x + 2 ) ( x - 7 ) + 3 x", "= x ^ { 2 } - 7 x +", "2 x - 1 4 + 3 x", "= x ^ { 2 } - 2 x - 1 4")


def test_long_line_is_judged_with_its_rest():
    document = page(*(line(latex, k, goes_on=k == 2) for k, latex in enumerate(LONG)))
    assert verdicts(document) == ["start", "follows", "note", "follows"]
    assert headline(document, document.verdicts[0]) == "Every line follows."
    assert counted_style(document, 2) is CARRIED_ON
    assert line_reason(document, 2) == "Carries on line 2."
    assert page_json(document)["workings"][0]["lines"][3]["verdict"] == "follows"


def test_each_half_judged_alone_would_be_accused():
    document = page(*(line(latex, k) for k, latex in enumerate(LONG)))
    assert "slip" in verdicts(document)


def test_slip_in_the_rest_is_told_there_with_its_span_in_that_line():
    wrong = (*LONG[:2], "2 x + 1 4 + 3 x", "= x ^ { 2 } - 2 x + 1 4")
    document = page(*(line(latex, k, goes_on=k == 2) for k, latex in enumerate(wrong)))
    (verdict,) = document.verdicts
    assert verdicts(document) == ["start", "note", "slip", "ft"]
    assert verdict.first_slip_line == 2
    start, end = verdict.slip.span
    assert wrong[2][start:end].replace(" ", "") == "+14"
    assert verdict.slip.should_be.replace(" ", "") == "-14"
    assert line_reason(document, 1) == "Goes on in line 3."
    written = next(row.latex for row in slip_rows(document, verdict) if row.label == "Line as written")
    assert written == whole_latex(document.lines, verdict.lines, 1) == f"{wrong[1]} {wrong[2]}"
    assert document.verdicts[0].report.lines[3].source == 2


def test_slip_in_the_first_part_is_told_there():
    wrong = (LONG[0], "= x ^ { 2 } + 7 x +", LONG[2])
    document = page(*(line(latex, k, goes_on=k == 2) for k, latex in enumerate(wrong)))
    assert verdicts(document) == ["start", "slip", "note"]
    start, end = document.verdicts[0].slip.span
    assert wrong[1][start:end].replace(" ", "") == "+7x"


def test_line_of_which_a_part_is_not_read_is_stepped_across():
    lines = [line(latex, k, goes_on=k == 2) for k, latex in enumerate(LONG)]
    lines[2] = replace(lines[2], latex="", state=State.UNREAD, carries_on=True)
    document = page(*lines)
    assert verdicts(document) == ["start", "unreadable", "unreadable", "follows"]
    assert line_reason(document, 1) == "Another part of this line could not be read."
    assert "could not be read" in line_reason(document, 2)


def test_marks_are_awarded_at_the_line_that_holds_the_verdict():
    document = page(*(line(latex, k, goes_on=k == 2) for k, latex in enumerate(LONG)))
    (scheme,) = read_scheme_text('[{"mark": "M1", "line": "x^2-7x+2x-14+3x"}, {"mark": "A1", "line": "x^2-2x-14"}]')
    (marks,) = marks_of(document.lines, document.verdicts, [scheme])
    assert [(award.awarded, award.line) for award in marks.each] == [(True, 1), (True, 3)]


def test_user_joins_lines_and_takes_it_back():
    document = page(*(line(latex, k) for k, latex in enumerate(LONG)))
    document.do(CarryOn(2, True, None))
    (verdict,) = judge_lines(document.lines)
    assert [row.verdict for row in verdict.report.lines] == ["start", "follows", "note", "follows"]
    document.undo()
    assert document.lines[2].carries_on is None


def test_note_of_words_is_no_part_of_a_line():
    document = page(line("( x + 2 ) ^ { 2 }", 0), line("\\text { Area }", 1), line("= x ^ { 2 } + 4 x + 4", 2))
    assert counted_style(document, 1) in (STYLES["note"], STYLES["start"])
