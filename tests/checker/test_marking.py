"""Marks suggested for hand-worked workings; each rule with the board and paper that states it.

The sources were read in public copies; only the rules are used, in words of our own.
"""

import json
from typing import Any

import pytest

from checker.marking.result import Marks
from checker.marking.suggestion import suggested_marks
from checker.report import Working
from checker.working import judge

LINEAR = [{"mark": "M1", "line": "2x=10"}, {"mark": "A1", "final": "x=5"}]
EXPAND = [
    {"mark": "M1", "line": "5t+20-2t^2-8t"},
    {"mark": "A1", "line": "5t+20-2t^2-8t"},
    {"mark": "A1", "final": "-2t^2-3t+20", "ft": True},
]
QUADRATIC = [
    {"mark": "M1", "line": "x^2-5x+6=0"},
    {"mark": "M1", "line": "(x-2)(x-3)=0"},
    {"mark": "A1", "final": "x=2 \\text{ or } x=3"},
]
PRODUCT = [{"mark": "M1", "line": "x^2+3x+2x+6"}, {"mark": "A1", "final": "x^2+5x+6"}]


def marks(scheme: list[dict[str, Any]], *lines: str, **options: Any) -> Marks:
    working = Working.from_json({"lines": list(lines), "scheme": scheme, **options})
    return suggested_marks(working, judge(working))


def awarded(told: Marks) -> list[object]:
    return [award.awarded for award in told.each]


# right workings


def test_right_working_earns_all() -> None:
    # 2x = 13 - 3 = 10, x = 5. Source: common practice, no source.
    told = marks(LINEAR, "2x+3=13", "2x=10", "x=5", task="solve")
    assert awarded(told) == [True, True]
    assert [award.line for award in told.each] == [1, 2]
    assert (told.total, told.highest, told.out_of) == (2, 2, 2)


@pytest.mark.parametrize("line", ["10=2x", "2x-10=0", "4x=20", "2x=13-3"])
def test_or_equivalent_line_never_earns_less_than_a_question_to_the_teacher(line: str) -> None:
    # oe: or equivalent. Source: AQA GCSE Mathematics 8300/2H, glossary.
    assert False not in awarded(marks(LINEAR, "2x+3=13", line, "x=5", task="solve"))


def test_equivalent_line_of_the_same_form_is_taken_in_any_order() -> None:
    # oe. Source: AQA GCSE Mathematics 8300/2H, glossary.
    assert awarded(marks(LINEAR, "2x+3=13", "10=2x", "5=x", task="solve")) == [True, True]


def test_values_on_lines_of_their_own_are_one_answer() -> None:
    # Common practice, no source.
    told = marks(QUADRATIC, "x^2=5x-6", "x^2-5x+6=0", "(x-3)(x-2)=0", "x=2", "x=3", task="solve")
    assert awarded(told) == [True, True, True]


def test_question_itself_shows_no_method() -> None:
    # 3x = 15 has the form of 2x = 10 and the same solution; it is where the working starts. Common practice, no source.
    told = marks(LINEAR, "3x=15", task="solve")
    assert awarded(told)[0] is False


def test_one_of_several_lines_earns_it() -> None:
    # Valid methods are treated alike. Source: Edexcel GCSE general marking guidance; AQA glossary; HKEA 1996, 1.
    scheme = [{"mark": "M1", "line": ["2x=10", "x+\\frac{3}{2}=\\frac{13}{2}"]}, {"mark": "A1", "final": "x=5"}]
    told = marks(scheme, "2x+3=13", "x+\\frac{3}{2}=\\frac{13}{2}", "x=5", task="solve")
    assert awarded(told) == [True, True]


# slips


def test_slip_of_sign_with_carried_error_is_m1_a0_a1ft() -> None:
    # -2t times 4 is -8t; 5t + 8t = 13t follows from the slip. Source for M and A after a wrong value: HKEA Additional
    # Mathematics 1996 Paper 2, instruction 2; for ft: AQA 8300/2H glossary, IB instructions 5.
    told = marks(EXPAND, "(5-2t)(t+4)", "=5t+20-2t^2+8t", "=-2t^2+13t+20", task="expand")
    assert awarded(told) == [True, False, True]
    assert [award.line for award in told.each] == [1, 1, 2]
    assert "+8t" in told.each[0].reason
    assert told.total == 2


def test_without_ft_the_later_accuracy_is_lost_too() -> None:
    # 13 - 3 = 10, not 11. Source: HKEA 1996 Paper 2, instruction 2.
    told = marks(LINEAR, "2x+3=13", "2x=11", "x=5.5", task="solve")
    assert awarded(told) == [True, False]


def test_ft_needs_a_line_that_follows_from_the_wrong_one() -> None:
    # 5t + 8t = 13t; 12t is a second slip. Source: IB instructions 5 (ft only for what follows, with working present).
    told = marks(EXPAND, "(5-2t)(t+4)", "=5t+20-2t^2+8t", "=-2t^2+12t+20", task="expand")
    assert awarded(told) == [True, False, False]


def test_correct_answer_only_is_not_followed_through() -> None:
    # cao. Source: Edexcel AS/A level pure mathematics, general notes 3.
    scheme = [LINEAR[0], {"mark": "A1", "final": "x=5", "cao": True}]
    told = marks(scheme, "2x+3=13", "2x=11", "x=5.5", task="solve")
    assert awarded(told) == [True, False]
    assert "cao" in told.each[1].reason


def test_method_on_wrong_numbers_is_still_the_method() -> None:
    # From x^2 - 5x + 4 = 0 (should be + 6) the factors are (x-1)(x-4). Source: HKEA 1996 Paper 2, instruction 2.
    told = marks(
        QUADRATIC, "x^2=5x-6", "x^2-5x+4=0", "(x-1)(x-4)=0", "x=1 \\text{ or } x=4", task="solve"
    )
    assert awarded(told) == [True, True, False]


def test_slip_that_may_be_a_wrong_method_is_left_to_the_teacher() -> None:
    # 3 was added, not subtracted: 2x = 16. Common practice, no source; benefit of the doubt: HKEA 1996, instruction 5.
    told = marks(LINEAR, "2x+3=13", "2x=16", "x=8", task="solve")
    assert awarded(told) == ["teacher", False]
    assert (told.total, told.highest) == (0, 1)


def test_another_form_shows_no_method() -> None:
    # (k-5)^2 without its middle term has two terms where three are asked. Common practice, no source.
    scheme = [{"mark": "M1", "line": "k^2-10k+25"}]
    assert awarded(marks(scheme, "(k-5)^2", "=k^2-25", task="expand")) == [False]


def test_value_that_cannot_be_is_not_followed_through() -> None:
    # A width below 0. Source: IB instructions 5 (inappropriate values).
    scheme = [{"mark": "M1", "line": "2w=10"}, {"mark": "A1", "final": "w=5", "ft": True}]
    told = marks(scheme, "2w+3=13", "2w=-10", "w=-5", task="solve", givens=["w>0"])
    assert told.each[1].awarded is False
    assert "given" in told.each[1].reason
    free = marks(scheme, "2w+3=13", "2w=-10", "w=-5", task="solve")
    assert free.each[1].awarded is not False


def test_answer_made_easier_by_a_slip_is_left_to_the_teacher() -> None:
    # With the power lost a linear equation is left: x = 5x - 6 gives 4x = 6. Source: IB instructions 5-6.
    scheme = [{"mark": "A1", "final": "x=2 \\text{ or } x=3", "ft": True}]
    told = marks(scheme, "x^2=5x-6", "x=5x-6", "4x=6", "x=\\frac{3}{2}", task="solve")
    assert awarded(told) == ["teacher"]
    assert "easier" in told.each[0].reason


def test_surds_still_to_be_collected_are_not_the_answer() -> None:
    # 5 + 2 = 7 root 2; from 5 + 4 the answer 9 root 2 follows. Source for ft: AQA 8300/2H glossary.
    scheme = [{"mark": "B1", "final": "7\\sqrt2", "ft": True}]
    start = "\\sqrt{50}+\\sqrt{8}"
    assert awarded(marks(scheme, start, "=5\\sqrt2+2\\sqrt2", "=7\\sqrt2", task="simplify")) == [True]
    assert awarded(marks(scheme, start, "=5\\sqrt2+2\\sqrt2", task="simplify")) != [True]
    told = marks(scheme, start, "=5\\sqrt2+4\\sqrt2", "=9\\sqrt2", task="simplify")
    assert (told.each[0].awarded, told.each[0].line) == (True, 2)


def test_value_of_one_letter_is_not_followed_through_for_another() -> None:
    # 20 - 2 = 18, not 16: x = 8 carries on, then y = 5 for 4. Source for ft: AQA 8300/2H glossary.
    scheme = [
        {"mark": "M1", "line": "2x=18"}, {"mark": "A1", "line": "y=4", "ft": True},
        {"mark": "A1", "line": "x=9", "ft": True},
    ]
    told = marks(scheme, "2x+2=20", "2x=16", "x=8", task="solve")
    assert told.each[1].awarded is False
    assert told.each[2].line == 2


def test_chain_on_one_line_is_marked_beyond_what_it_opens_with() -> None:
    # Common practice, no source.
    assert awarded(marks(PRODUCT, "(x+2)(x+3)=x^2+2x+3x+6=x^2+5x+6", task="expand")) == [True, True]


# right answers from wrong or missing working


def test_right_answer_from_wrong_working_earns_nothing_by_itself() -> None:
    # 2x = 16 gives 8, yet 5 is written. Source: IB instructions 2; OCR instructions (second-hand copy).
    told = marks(LINEAR, "2x+3=13", "2x=16", "x=5", task="solve")
    assert told.each[1].awarded is False
    assert "wrong working" in told.each[1].reason
    assert told.total == 0


def test_work_taken_up_again_is_the_last_attempt() -> None:
    # The wrong line is followed by the right one, and the answer comes from that. Source: Edexcel general notes 5.
    told = marks(LINEAR, "2x+3=13", "2x=16", "2x=10", "x=5", task="solve")
    assert awarded(told) == [True, True]


def test_correct_solution_only_allows_no_slip_before() -> None:
    # cso. Source: Edexcel AS/A level pure mathematics, general notes 3.
    scheme = [LINEAR[0], {"mark": "A1", "final": "x=5", "cso": True}]
    told = marks(scheme, "2x+3=13", "2x=16", "2x=10", "x=5", task="solve")
    assert awarded(told) == [True, False]
    assert awarded(marks(scheme, "2x+3=13", "2x=10", "x=5", task="solve")) == [True, True]


def test_right_answer_without_working_is_the_teachers() -> None:
    # Boards differ. Source: IB instructions 3 (separate marks, to 2012); else common practice, no source.
    told = marks(LINEAR, "2x+3=13", "x=5", task="solve")
    assert awarded(told) == ["teacher", "teacher"]
    assert (told.total, told.highest) == (0, 2)


def test_accuracy_needs_its_method() -> None:
    # M0 A1 is not possible. Source: IB instructions 2 (Nov 2006, May 2007); Edexcel general notes 2.
    scheme = [{**LINEAR[0], "implied": False}, LINEAR[1]]
    told = marks(scheme, "2x+3=13", "x=5", task="solve")
    assert awarded(told) == [False, False]
    assert "needs the M1" in told.each[1].reason


def test_scheme_may_let_the_answer_imply_the_method() -> None:
    # The method may be implied. Source: AQA 8300/2H glossary; MARS/Shell Centre key to markscheme codes.
    scheme = [{**LINEAR[0], "implied": True}, LINEAR[1]]
    assert awarded(marks(scheme, "2x+3=13", "x=5", task="solve")) == [True, True]


def test_later_line_from_shown_working_implies_a_linear_one() -> None:
    # 3x + 3 = 2x + 8 gives x = 5 only by collecting. Source: AQA 8300/2H glossary (method may be implied).
    scheme = [
        {"mark": "M1", "line": "3x+3=2x+8"}, {"mark": "M1", "line": "3x-2x=8-3"}, {"mark": "A1", "final": "x=5"},
    ]
    told = marks(scheme, "3(x+1)=2x+8", "3x+3=2x+8", "x=5", task="solve")
    assert awarded(told) == [True, True, True]


def test_other_valid_method_is_the_teachers() -> None:
    # The formula in place of factors. Source: Edexcel GCSE guidance, AQA preamble (valid methods are treated alike).
    told = marks(
        QUADRATIC, "x^2=5x-6", "x^2-5x+6=0", "x=\\frac{5\\pm\\sqrt{25-24}}{2}", "x=2 \\text{ or } x=3", task="solve"
    )
    assert awarded(told) == [True, "teacher", "teacher"]


def test_independent_mark_needs_no_method() -> None:
    # B is independent of method. Source: AQA 8300/2H glossary; Edexcel general notes; MARS key.
    scheme = [{**LINEAR[0], "implied": False}, {"mark": "B1", "final": "x=5"}]
    assert awarded(marks(scheme, "2x+3=13", "x=5", task="solve")) == [False, True]


def test_mark_may_depend_on_another() -> None:
    # dep. Source: AQA 8300/2H glossary; MARS key.
    scheme = [{**LINEAR[0], "implied": False}, {"mark": "B1", "final": "x=5", "depends_on": "M1"}]
    assert awarded(marks(scheme, "2x+3=13", "x=5", task="solve")) == [False, False]


def test_wrong_answer_without_method_earns_nothing() -> None:
    # Common practice, no source.
    told = marks(LINEAR, "2x+3=13", "x=7", task="solve")
    assert awarded(told) == [False, False]
    assert told.highest == 0


def test_line_beyond_the_one_asked_for_with_one_wrong_term_is_the_teachers() -> None:
    # 5t - 8t = -3t, not 13t; two of three terms show that all was multiplied out. Benefit of the doubt: HKEA 1996, 5.
    told = marks(EXPAND[:1], "(5-2t)(t+4)", "=-2t^2+13t+20", task="expand")
    assert awarded(told) == ["teacher"]


def test_marks_are_not_subdivided() -> None:
    # Source: Edexcel general notes 2; HKEA 1996, instruction 3.
    told = marks([{"mark": "A2", "final": "x=2 \\text{ or } x=3"}], "x^2-5x+6=0", "x=2", task="solve")
    assert (told.total, told.out_of) == (0, 2)


# misread, isw, attempts, form, what cannot be read


def test_misread_loses_the_accuracy_mark_only() -> None:
    # (x+2)(x-3) for (x+2)(x+3). Source: Edexcel general notes 4; IB instructions 6.
    told = marks(
        PRODUCT, "(x+2)(x-3)", "=x^2-3x+2x-6", "=x^2-x-6", task="expand", question="(x+2)(x+3)"
    )
    assert awarded(told) == [True, False]
    assert "misread" in told.each[1].reason


def test_misread_loses_at_most_two_accuracy_marks() -> None:
    # Source: Edexcel general notes 4 (two A or B marks of that part).
    scheme = [
        PRODUCT[0], {"mark": "A1", "line": "x^2+3x+2x+6"}, {"mark": "A1", "final": "x^2+5x+6"},
        {"mark": "B1", "final": "x^2+5x+6"},
    ]
    told = marks(scheme, "(x+2)(x-3)", "=x^2-3x+2x-6", "=x^2-x-6", task="expand", question="(x+2)(x+3)")
    assert awarded(told) == [True, False, False, "teacher"]


def test_miscopying_ones_own_line_is_no_misread() -> None:
    # Line 2 is copied into line 3 with 7 for 2, then collected. Source: IB instructions 6.
    told = marks(
        PRODUCT, "(x+2)(x+3)", "=x^2+3x+2x+6", "=x^2+3x+7x+6", "=x^2+10x+6", task="expand", question="(x+2)(x+3)"
    )
    assert awarded(told) == [True, False]
    assert "misread" not in told.each[1].reason


def test_work_after_a_right_answer_is_ignored() -> None:
    # x(x+11) is wrong, and needless. Source for isw: IB instructions 2; Edexcel general notes 6.
    lines = ("(x+2)(x+3)", "=x^2+3x+2x+6", "=x^2+5x+6", "=x(x+11)")
    told = marks(PRODUCT, *lines, task="expand")
    assert awarded(told) == [True, True]
    assert "isw" in told.each[1].reason
    strict = [PRODUCT[0], {**PRODUCT[1], "isw": False}]
    assert awarded(marks(strict, *lines, task="expand")) == [True, False]


def test_second_answer_is_the_teachers() -> None:
    # x = 5, then x = 6: which attempt counts? Source: Edexcel general notes 5; IB instructions 2.
    told = marks(LINEAR, "2x+3=13", "2x=10", "x=5", "x=6", task="solve")
    assert awarded(told) == [True, "teacher"]


def test_form_asked_must_be_reached() -> None:
    # 4x^2 - 9 factorises further. Common practice, no source.
    scheme = [
        {"mark": "M1", "line": "3(4x^2-9)"}, {"mark": "A1", "final": "3(2x-3)(2x+3)", "form": "factorised"},
    ]
    assert awarded(marks(scheme, "12x^2-27", "=3(4x^2-9)", task="factorise")) == [True, False]
    assert awarded(marks(scheme, "12x^2-27", "=3(4x^2-9)", "=3(2x+3)(2x-3)", task="factorise")) == [True, True]


def test_exact_form_allows_another_order_only() -> None:
    scheme = [{"mark": "B1", "line": "(x+3)^2-4=0", "form": "exact"}]
    assert awarded(marks(scheme, "x^2+6x+5=0", "-4+(x+3)^2=0", task="solve")) == [True]
    assert awarded(marks(scheme, "x^2+6x+5=0", "(x+3)^2=4", task="solve")) == [False]


def test_rounded_value_for_an_exact_one_is_the_teachers() -> None:
    scheme = [{"mark": "B1", "final": "x=\\frac{7}{3}"}]
    assert awarded(marks(scheme, "3x=7", "x=2.33", task="solve")) == ["teacher"]
    assert awarded(marks(scheme, "3x=7", "x=2\\frac13", task="solve")) == [True]


def test_unread_line_leaves_the_mark_open() -> None:
    told = marks(LINEAR, "2x+3=13", "2x=\\frac{", "x=7", task="solve")
    assert told.each[0].awarded == "teacher"
    assert "could not be read" in told.each[0].reason


def test_mark_in_words_is_the_teachers() -> None:
    told = marks([{"mark": "B1", "for": "a labelled sketch"}], "2x=10", "x=5")
    assert awarded(told) == ["teacher"]


def test_inequality_and_system() -> None:
    # -2h < 8 turns to h > -4; x + y = 7 and x - y = 1 give 2x = 8. Common practice, no source.
    turned = [{"mark": "M1", "line": "-2h<8"}, {"mark": "A1", "final": "h>-4"}]
    assert awarded(marks(turned, "1-2h<9", "-2h<8", "h>-4", task="solve")) == [True, True]
    assert awarded(marks(turned, "1-2h<9", "-2h<8", "h<-4", task="solve")) == [True, False]
    both = [{"mark": "M1", "line": "2x=8"}, {"mark": "A1", "line": "x=4"}, {"mark": "A1", "line": "y=3"}]
    told = marks(both, "x+y=7 \\quad (1)", "x-y=1 \\quad (2)", "2x=8", "x=4", "y=3", task="solve")
    assert awarded(told) == [True, True, True]


def test_marks_are_said_to_be_a_suggestion() -> None:
    told = marks(LINEAR, "2x+3=13", "2x=10", "x=5", task="solve").to_json()
    assert "teacher decides" in told["note"]
    assert json.loads(json.dumps(told)) == told
    assert told["each"][0].keys() == {"mark", "for", "awarded", "line", "reason"}
