"""The slips set by hand: place, kind, what it should be, and a reason that a teacher could say."""

from __future__ import annotations

import re

import pytest

from checker.report import Slip, Working
from checker.slips import hint
from checker.slips.hints import KINDS
from checker.working import judge
from tests.checker.slips_by_hand import BY_HAND, ByHand

NAMES = [f"{case.topic}: {case.lines[case.at - 1]} to {case.lines[case.at]}" for case in BY_HAND]


def found(case: ByHand) -> Slip:
    report = judge(Working(case.lines))
    assert report.first_slip == case.at
    slip = report.lines[case.at].slip
    assert slip is not None
    return slip


def plain(texts: tuple[str, ...] | list[str]) -> set[str]:
    """Without the plus of a term that opens a sum, and without blanks."""
    return {text.replace(" ", "").lstrip("+") for text in texts}


@pytest.mark.parametrize("case", BY_HAND, ids=NAMES)
def test_term_kind_and_right_term(case: ByHand) -> None:
    slip = found(case)
    assert slip.kind in case.kinds
    assert plain([slip.term]) <= plain(case.term)
    assert plain([slip.should_be]) <= plain(case.should_be)


@pytest.mark.parametrize("case", BY_HAND, ids=NAMES)
def test_line_put_right_follows(case: ByHand) -> None:
    mended = judge(Working((*case.lines[:case.at], found(case).repaired)))
    assert mended.first_slip is None
    assert mended.lines[-1].verdict == "follows"


VAGUE = re.compile(r"the line (agrees|follows)|two lines (differ|have)|the right term|with the other sign")


def test_reasons_name_what_they_speak_of() -> None:
    reasons = [found(case).because for case in BY_HAND]
    # a factor, a term, a law with its numbers: nearly all; none but a few fall back on "agrees with the line before"
    assert sum(VAGUE.search(reason) is not None for reason in reasons) <= 2
    assert sum(re.search(r"\d|[a-z]\^|\\|\b[a-z]\b", reason) is not None for reason in reasons) >= 0.95 * len(reasons)
    assert max(map(len, reasons)) <= 220


def test_set_is_large_and_of_many_topics() -> None:
    assert len(BY_HAND) >= 80
    assert len({case.topic for case in BY_HAND}) >= 18
    assert len({case.lines for case in BY_HAND}) == len(BY_HAND)


@pytest.mark.parametrize("case", BY_HAND, ids=NAMES)
def test_hints_give_place_then_kind_then_answer(case: ByHand) -> None:
    slip = found(case)
    where, what, answer = (hint(slip, grade) for grade in (1, 2, 3))
    right = slip.should_be.lstrip("+")
    assert slip.term == "(missing)" or slip.term in where
    assert slip.because not in where and slip.because not in what
    assert KINDS[slip.kind] not in where
    assert right not in what or right.isalpha()
    assert right not in where.replace(slip.term, "")
    assert right in answer and slip.because in answer


@pytest.mark.parametrize("kind", KINDS)
def test_first_hint_of_a_kind_does_not_name_it_nor_the_second_the_answer(kind: str) -> None:
    slip = Slip(kind, "+8t", (11, 14), "-17t^5", "this and that is -17t^5", "=5t-17t^5")
    assert hint(slip, 1) == "Look at +8t."
    assert "17" not in hint(slip, 2) and "8t" not in hint(slip, 2)
    assert hint(slip, 3) == "+8t should be -17t^5: this and that is -17t^5."
    told = hint(slip, 2)
    assert told.endswith((".", "?")) and told[0].isupper()


@pytest.mark.parametrize("kind", KINDS)
def test_first_hint_where_something_is_missing(kind: str) -> None:
    slip = Slip(kind, "(missing)", (9, 9), "+12y", "twice y times 6 is 12y", "=y^2+36+12y")
    where = hint(slip, 1)
    assert where == "Go through this line term by term, beside the line before."
    assert hint(slip, 3) == "+12y is missing: twice y times 6 is 12y."


def test_line_with_the_blanks_of_the_reader_is_mended_without_them() -> None:
    # 3 times -4 is -12
    report = judge(Working(("3 ( x - 4 )", "= 3 x - 1 1")))
    slip = report.lines[1].slip
    assert slip is not None
    assert (slip.term, slip.should_be, slip.repaired) == ("-11", "-12", "=3x-12")


def test_two_wrong_terms_of_one_step_are_both_named_and_the_first_is_marked() -> None:
    # 3 times -5 is -15 and -2 times +4 is -8
    slip = judge(Working(("3(2a-5)-2(a+4)", "=6a-5-2a+8"))).lines[1].slip
    assert slip is not None
    assert (slip.term, slip.should_be, slip.repaired) == ("-5", "-15", "=6a-15-2a-8")
    assert "also +8 should be -8" in slip.because


def test_elimination_is_told_by_the_two_equations() -> None:
    # 3y minus -2y is 5y
    slip = judge(Working(("x+3y=11", "x-2y=1", "y=10"))).lines[2].slip
    assert slip is not None
    assert slip.because == "the first equation minus the second: -2y taken away is +2y, so 3y + 2y is 5y"


def test_substitution_is_told_by_what_was_put_in() -> None:
    # 3x - (x + 4) is 3x - x - 4
    slip = judge(Working(("y=x+4", "3x-y=1", "3x-x+4=1"))).lines[2].slip
    assert slip is not None
    assert slip.because == "with x+4 in place of y, the minus before the bracket turns +4 into -4"


def test_wrong_pair_of_factors_is_told_by_its_products() -> None:
    # 3x times -1 and 2 times 2x: -3x + 4x is x
    slip = judge(Working(("6x^2-x-2", "=(3x+2)(2x-1)"))).lines[1].slip
    assert slip is not None
    assert (slip.because, slip.should_be) == ("-3x + 4x is x, but the middle term is -x", "(3x-2)(2x+1)")


def test_multiplied_equations_are_told_with_their_numbers() -> None:
    # 3(2x+y) + (x-3y) = 7x and 3 times 4 plus 9 is 21
    slip = judge(Working(("2x+y=4", "x-3y=9", "7x=13"))).lines[2].slip
    assert slip is not None
    assert (slip.term, slip.should_be) == ("13", "21")
    assert slip.because.startswith("3 times the first equation plus the second: ")
