"""Grouping lines into workings, and question numbers."""

import pytest

from desktop.desk_line import DeskLine, State
from desktop.workings import group_lines, split_number
from recognition.result import Box


def line(latex: str, y: int, *, x: int = 100, h: int = 40, **options) -> DeskLine:
    return DeskLine(Box(x, y, 300, h), latex=latex, state=State.READ, **options)


def test_evenly_spaced_lines_are_one_working():
    lines = [line("2 ( k + 1 )", 0), line("= 2 k + 2", 70), line("= 2 k + 4", 150)]
    assert group_lines(lines) == ((0, 1, 2),)


def test_wide_gap_starts_a_working():
    # Gaps of 30, 160 and 30: the middle one is over 2.5 usual gaps and over 1.5 line heights.
    lines = [line("k = 1", 0), line("k = 2", 70), line("m = 1", 270), line("m = 3", 340)]
    assert group_lines(lines) == ((0, 1), (2, 3))


def test_line_that_starts_with_equals_carries_on_after_a_wide_gap():
    lines = [line("k + k", 0), line("= 2 k", 70), line("= k + k", 400), line("= 2 k", 470)]
    assert group_lines(lines) == ((0, 1, 2, 3),)


def test_question_number_starts_a_working():
    lines = [line("1 ) 2 k = 4", 0), line("k = 2", 60), line("2 ) 3 m = 9", 120), line("m = 3", 180)]
    assert group_lines(lines) == ((0, 1), (2, 3))


def test_second_column_starts_a_working():
    lines = [line("k = 1", 0), line("k = 2", 60), line("m = 4", 0, x=600), line("m = 5", 60, x=600)]
    assert group_lines(lines) == ((0, 1), (2, 3))


def test_users_word_comes_first():
    lines = [line("k = 1", 0), line("= 2 k", 60, starts_working=True), line("2 ) m = 4", 120, starts_working=False)]
    assert group_lines(lines) == ((0,), (1, 2))


def test_struck_out_lines_belong_to_no_working():
    lines = [line("k = 1", 0), line("k = 7", 60, struck_out=True), line("k = 2", 120)]
    assert group_lines(lines) == ((0, 2),)


def test_no_lines_make_no_working():
    assert group_lines([]) == ()


@pytest.mark.parametrize(
    ("latex", "label"),
    [
        ("1 ) 2 k = 4", "1 ) "), ("1 2 ) k = 4", "1 2 ) "), ("3 . 2 k = 4", ""), ("3 . k = 4", "3 . "),
        ("Q 3 k = 4", "Q 3 "), ("b ) k = 4", "b ) "), ("( a ) 3 k = 4", "( a ) "), ("( i i ) k = 2", "( i i ) "),
        ("( a ) ( b )", ""), ("( a ) ^ { 2 }", ""), ("( k + 1 ) ( k - 2 )", ""), ("2 ( k + 1 )", ""),
        ("3 . 5 k = 7", ""), ("= 2 k", ""), ("1 )", ""),
    ],
)  # fmt: skip
def test_question_number_is_split_off(latex, label):
    assert split_number(latex) == (label, latex[len(label):])
