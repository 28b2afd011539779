"""Lines in another order: the workings stay as the user means them."""

from dataclasses import replace
from itertools import pairwise

import pytest

from desktop.desk_line import DeskLine, State
from desktop.line_order import in_order, stands_for
from desktop.workings import carries_on, group_lines, regrouped, working_ids
from recognition.result import Box


def line(latex: str, y: int, *, x: int = 100, **options) -> DeskLine:
    return DeskLine(Box(x, y, 300, 40), latex=latex, state=State.READ, **options)


def page(*workings: int | None) -> tuple[DeskLine, ...]:
    """Lines named a, b, c ... from the top, evenly apart, each in the working that the layout tells."""
    return tuple(line(chr(97 + k), 70 * k, working=number) for k, number in enumerate(workings))


def grouped(lines) -> list[str]:
    return ["".join(lines[index].latex for index in group) for group in group_lines(lines)]


def test_layout_of_the_page_tells_the_workings():
    assert grouped(page(0, 0, 1, 1, 1, 2)) == ["ab", "cde", "f"]


def test_equals_sign_carries_on_and_a_question_number_starts_whatever_the_layout_tells():
    lines = list(page(0, 0, 1, 1))
    lines[2] = replace(lines[2], latex="= c")
    lines[3] = replace(lines[3], latex="4 ) d")
    assert group_lines(lines) == ((0, 1, 2), (3,))


def test_line_drawn_by_hand_within_a_working_parts_nothing():
    assert grouped(page(0, None, 0, 1, None, 1)) == ["abc", "def"]


@pytest.mark.parametrize(
    ("moved", "place", "after"),
    [
        (0, 1, ["ba", "cde", "f"]),  # within its own working
        (3, 0, ["dab", "ce", "f"]),  # to the top: it joins the working that lies there
        (1, 3, ["a", "cdbe", "f"]),  # into another working
        (1, 2, ["a", "cbde", "f"]),  # one step down
        (2, 1, ["acb", "de", "f"]),  # one step up
        (0, 5, ["b", "cde", "fa"]),  # to the foot: away from its own it joins the one above
        (5, 2, ["ab", "f", "cde"]),  # a working of one line stays one between two others
        (5, 3, ["ab", "cfde"]),
    ],
)
def test_moved_line_joins_the_working_that_it_comes_to_lie_in(moved, place, after):
    lines = page(0, 0, 1, 1, 1, 2)
    order = [n for n in range(6) if n != moved]
    order.insert(place, moved)
    assert grouped(in_order(lines, order, moved=moved)) == after


def test_moving_a_line_up_the_page_starts_no_working_where_the_layout_alone_would():
    lines = page(None, None, None, None)
    assert grouped(in_order(lines, [0, 3, 1, 2], moved=3)) == ["adbc"]
    assert grouped([lines[n] for n in (0, 3, 1, 2)]) == ["ad", "bc"]  # without the user's word


def test_taking_the_first_line_of_a_working_off_leaves_its_start():
    lines = list(page(None, None, None, None))
    lines[2] = replace(lines[2], starts_working=True)
    assert grouped(in_order(tuple(lines), [0, 1, 3])) == ["ab", "d"]
    assert grouped(in_order(tuple(lines), [2, 3])) == ["cd"]


def test_line_carries_on_no_other_line_than_before():
    lines = list(page(0, 0, 0, 0))
    lines[2] = replace(lines[2], latex="+ c", goes_on=True)
    assert carries_on(lines[1], lines[2])
    for order in ([0, 2, 1, 3], [0, 2, 3], [1, 0, 2, 3]):
        new = in_order(tuple(lines), order)
        assert not any(carries_on(a, b) for a, b in pairwise(new))
    new = in_order(tuple(lines), [3, 0, 1, 2])
    assert carries_on(new[2], new[3])


def test_regrouping_says_no_more_than_it_must():
    lines = page(0, 0, 1, 1)
    assert regrouped(lines, working_ids(lines)) == lines
    assert [one.starts_working for one in regrouped(lines, (0, 0, 0, 1))] == [None, None, False, True]


def test_struck_out_lines_part_nothing():
    lines = list(page(0, 0, 1, 1))
    lines[2] = replace(lines[2], struck_out=True)
    assert working_ids(lines) == (0, 0, None, 1)
    assert grouped(in_order(tuple(lines), [0, 2, 1, 3], moved=1)) == ["ab", "d"]


def test_parts_of_a_line_stay_in_its_working_and_the_first_takes_its_start():
    old = line("k", 0, working=3, starts_working=True, goes_on=True)
    first, second = (stands_for(line(text, 0), old, first=text == "a") for text in "ab")
    assert (first.working, first.starts_working, first.goes_on) == (3, True, True)
    assert (second.working, second.starts_working, second.goes_on) == (3, None, False)
