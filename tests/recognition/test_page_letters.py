"""Letters shared by the lines of a page: what is weighed, what stays, and that mathematics plays no part."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recognition.page_letters import with_page_letters
from recognition.result import Candidate


def _line(*readings: tuple[str, float]) -> tuple[Candidate, ...]:
    return tuple(Candidate(latex, probability) for latex, probability in readings)


SURE = [_line(("3 x + 2 = 8", 0.99)), _line(("3 x = 6", 0.98)), _line(("x = 2", 0.97)), _line(("2 x - 1", 0.95))]


def test_a_letter_that_no_other_line_has_gives_way_to_one_that_all_have() -> None:
    doubtful = _line(("a = 2", 0.5), ("x = 2", 0.42))
    read = with_page_letters([*SURE, doubtful])
    assert [one.latex for one in read[-1]] == ["x = 2", "a = 2"]


def test_a_sure_reading_keeps_its_letter() -> None:
    read = with_page_letters([*SURE, _line(("a = 2", 0.97), ("x = 2", 0.02))])
    assert read[-1][0].latex == "a = 2"


def test_digits_and_signs_are_not_weighed() -> None:
    """9 stands nowhere else on the page; a right line and a wrong one are weighed alike."""
    doubtful = _line(("2 + 2 = 9", 0.5), ("2 + 2 = 4", 0.45))
    assert with_page_letters([*SURE, doubtful])[-1] == doubtful


def test_two_lines_say_nothing_about_a_page() -> None:
    lines = [SURE[0], _line(("a", 0.5), ("x", 0.49))]
    assert with_page_letters(lines) == lines


@given(st.lists(st.lists(st.tuples(st.sampled_from(["x", "a = 2", "b ^ { 2 }", "7", r"\theta", ""]),
                                    st.floats(0, 1)), max_size=5), max_size=7))  # fmt: skip
def test_nothing_is_lost_and_sums_stay(lines: list[list[tuple[str, float]]]) -> None:
    given_lines = []
    for line in lines:
        total = max(1.0, sum(probability for _, probability in line))
        ranked = sorted(((latex, probability / total) for latex, probability in line), key=lambda one: -one[1])
        given_lines.append(_line(*ranked))
    for before, after in zip(given_lines, with_page_letters(given_lines), strict=True):
        assert sorted(one.latex for one in before) == sorted(one.latex for one in after)
        assert sum(one.probability for one in after) == pytest.approx(sum(one.probability for one in before))
        assert list(after) == sorted(after, key=lambda one: -one.probability)
        assert all(0 <= one.probability <= 1 + 1e-9 for one in after)
