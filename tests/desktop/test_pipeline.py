"""From lines to verdicts, with the real checker."""

import pytest

from desktop.checker_process import CheckerProcess
from desktop.desk_line import DeskLine, State, desk_line
from desktop.document import Document
from desktop.line_changes import SetReading
from desktop.page_json import page_json
from desktop.pipeline import judge_lines
from desktop.wording import heading, line_reason, slip_rows
from recognition.errors import Cancelled
from recognition.result import Box, Candidate, Line


def read(*candidates: tuple[str, float], y: int = 0) -> DeskLine:
    found = tuple(Candidate(latex, probability) for latex, probability in candidates)
    return desk_line(Line(Box(10, y, 300, 40), found))


# (5 - 2t)(t + 4) = 5t + 20 - 2t^2 - 8t = -2t^2 - 3t + 20; written with +8t the sum is -2t^2 + 13t + 20.
GIVEN = "( 5 - 2 t ) ( t + 4 )"
SLIP = "= 5 t + 2 0 - 2 t ^ { 2 } + 8 t"
RIGHT = "= 5 t + 2 0 - 2 t ^ { 2 } - 8 t"
CARRIED = "= - 2 t ^ { 2 } + 1 3 t + 2 0"


def test_slip_is_named_with_its_span_in_the_line_as_read():
    (verdict,) = judge_lines([read((GIVEN, 0.99)), read((SLIP, 0.98), y=60), read((CARRIED, 0.97), y=120)])
    assert verdict.first_slip_line == 1
    assert [row.verdict for row in verdict.report.lines] == ["start", "slip", "ft"]
    start, end = verdict.slip.span
    assert SLIP[start:end].replace(" ", "") == "+8t"
    assert verdict.slip.should_be == "-8t"
    assert not verdict.check_reading_first


def test_close_reading_that_would_follow_asks_to_check_the_reading():
    lines = [read((GIVEN, 0.99)), read((SLIP, 0.86), (RIGHT, 0.13), y=60)]
    (verdict,) = judge_lines(lines)
    assert verdict.check_reading_first
    assert verdict.other_reading == (1, RIGHT)
    assert verdict.first_slip_line == 1


def test_reading_is_never_swapped():
    lines = [read((GIVEN, 0.99)), read((SLIP, 0.4), (RIGHT, 0.39), y=60)]
    (verdict,) = judge_lines(lines)
    assert [row.verdict for row in verdict.report.lines] == ["start", "slip"]
    assert lines[1].latex == SLIP


def test_far_fetched_reading_does_not_excuse_a_slip():
    (verdict,) = judge_lines([read((GIVEN, 0.99)), read((SLIP, 0.98), (RIGHT, 0.002), y=60)])
    assert not verdict.check_reading_first


def test_misread_line_before_asks_to_check_that_line():
    before = read(("( 5 + 2 t ) ( t + 4 )", 0.88), (GIVEN, 0.12))
    (verdict,) = judge_lines([before, read((RIGHT, 0.99), y=60)])
    assert verdict.other_reading == (0, GIVEN)


def test_confirmed_slip_is_called_a_slip():
    document = Document("page.jpg", lines=(read((GIVEN, 0.99)), read((SLIP, 0.4), (RIGHT, 0.35), y=60)))
    document.do(SetReading(1, SLIP))
    (verdict,) = judge_lines(document.lines)
    assert not verdict.check_reading_first


def test_doubtful_line_that_does_not_follow_asks_to_check_the_reading():
    (verdict,) = judge_lines([read((GIVEN, 0.99)), read((SLIP, 0.4), y=60)])
    assert verdict.check_reading_first
    document = Document("page.jpg", lines=(read((GIVEN, 0.99)), read((SLIP, 0.4), y=60)), verdicts=(verdict,))
    assert "hard to read" in heading(document, verdict)
    assert not any(row.label == "Should be" for row in slip_rows(document, verdict))


def test_unread_line_is_stepped_across():
    (verdict,) = judge_lines([read((GIVEN, 0.99)), read(y=60), read((RIGHT, 0.98), y=120)])
    assert [row.verdict for row in verdict.report.lines] == ["start", "unreadable", "follows"]
    assert verdict.report.lines[2].source == 0


def test_page_of_unread_lines_has_a_verdict_for_each():
    (verdict,) = judge_lines([read(), read(y=60)])
    assert [row.verdict for row in verdict.report.lines] == ["unreadable", "unreadable"]


def test_question_number_is_no_part_of_the_working():
    (verdict,) = judge_lines([read((f"3 ) {GIVEN}", 0.99)), read((SLIP, 0.98), y=60)])
    assert verdict.first_slip_line == 1
    assert verdict.report.lines[0].verdict == "start"


def test_span_counts_the_question_number():
    lines = [read((GIVEN, 0.99)), read((f"3 ) {SLIP[2:]}", 0.98), y=60)]
    lines[1] = DeskLine(lines[1].box, latex=lines[1].latex, state=State.CONFIRMED, starts_working=False)
    (verdict,) = judge_lines(lines)
    start, end = verdict.slip.span
    assert lines[1].latex[start:end].replace(" ", "") == "+8t"


@pytest.mark.parametrize("latex", [r"\frac { 1 } { 0 }", "( ( (", "k = = 2", r"\sqrt { - 4 }", "?", "x" * 400, "0 ^ 0"])
def test_line_that_makes_no_sense_gets_a_verdict_and_no_crash(latex):
    document = Document("page.jpg", lines=(read(("k + 1", 0.99)), read((latex, 0.99), y=60)))
    document.show(judge_lines(document.lines), revision=0)
    assert sum(len(v.lines) for v in document.verdicts) == 2
    assert isinstance(line_reason(document, 1), str)


def test_page_as_json_keeps_the_contract():
    document = Document("page.jpg", lines=(read((GIVEN, 0.99)), read((SLIP, 0.98), y=60)))
    document.show(judge_lines(document.lines), revision=0)
    data = page_json(document)
    assert set(data) == {"file", "page", "workings"}
    (working,) = data["workings"]
    assert set(working) == {"lines", "first_slip", "check_reading_first", "slip", "final"}
    assert set(working["lines"][1]) == {"box", "latex", "probability", "state", "verdict", "reason"}
    assert working["first_slip"] == 1
    assert working["lines"][1]["box"] == [10, 60, 300, 40]
    assert set(working["slip"]) == {"kind", "term", "span", "should_be", "because", "repaired"}


@pytest.fixture(scope="module")
def process():
    checker = CheckerProcess()
    yield checker
    checker.close()


def test_checker_process_gives_the_same_verdicts(process):
    lines = [read((GIVEN, 0.99)), read((SLIP, 0.98), y=60)]
    assert process.judge(lines) == judge_lines(lines)


def test_checker_process_works_again_after_it_was_stopped(process):
    def stop(done, total):
        raise Cancelled

    lines = [read((f"( k + {n} ) ^ {{ 9 }} ( k - {n} ) ^ {{ 9 }}", 0.99), y=60 * n) for n in range(30)]
    with pytest.raises(Cancelled):
        process.judge(lines, tick=stop)
    assert len(process.judge([read(("k", 0.9))])) == 1


def test_term_and_correction_are_tight_and_the_span_stays_in_the_line_as_read():
    # -3 times -4 is +12. The reader puts blanks between its tokens, between the digits of a number too.
    given, written = "( 2 x - 3 ) ( x - 4 )", "= 2 x ^ { 2 } - 8 x - 3 x - 1 2"
    lines = [read((given, 0.99)), read((written, 0.99), y=60)]
    (verdict,) = judge_lines(lines)
    assert verdict.slip is not None
    assert (verdict.slip.term, verdict.slip.should_be) == ("-12", "+12")
    assert written[slice(*verdict.slip.span)].replace(" ", "") == "-12"
    page = page_json(Document("page.jpg", lines=tuple(lines), verdicts=(verdict,)))
    assert page["workings"][0]["lines"][1]["latex"] == written
    assert page["workings"][0]["slip"]["term"] == "-12"
