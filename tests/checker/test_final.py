"""The final answer: right or not, the form asked, the accuracy, what was expected, and how it stands in the working.

Cases worked by hand; what counts as expanded, factorised or simplest form is common practice, no source.
"""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings

from checker.accuracy import Accuracy, stated_accuracy
from checker.forms import checked_form
from checker.report import Report, Working
from checker.syntax import parse_expression
from checker.working import judge


def judged(task: str | None, *lines: str, **more: Any) -> Report:
    return judge(Working(lines, task=task, **more))  # type: ignore[arg-type]


# (task, lines, right, of the form asked, expected)
CASES: list[tuple[str | None, tuple[str, ...], bool | None, bool | None, str]] = [
    # expanded and collected: every bracket gone, one term of each kind
    ("expand", ("3(x+4)", "=3x+12"), True, True, "3x+12"),
    ("expand", ("(x+2)(x+3)", "=x^2+2x+3x+6"), True, False, "x^2+5x+6"),
    ("expand", ("x(x+2)", "=x\\cdot x+2x"), True, False, "x^2+2x"),
    ("expand", ("(2x-1)^2", "=1-4x+4x^2"), True, True, "4x^2-4x+1"),
    ("expand", ("(x+1)(x+2)", "=x(x+2)+1(x+2)"), True, False, "x^2+3x+2"),
    ("expand", ("(\\sqrt2+1)^2", "=2+2\\sqrt2+1"), True, False, "3+2\\sqrt{2}"),
    ("expand", ("(\\sqrt2+1)^2", "=3+2\\sqrt2"), True, True, "3+2\\sqrt{2}"),
    ("expand", ("(x+2)(x-5)", "=x^2-3x+10"), False, True, "x^2-3x-10"),
    # fully factorised over the whole numbers: a common factor left in a bracket is not full
    ("factorise", ("6x+9", "=3(2x+3)"), True, True, "3(2x+3)"),
    ("factorise", ("4x^2+8x", "=4(x^2+2x)"), True, False, "4x(x+2)"),
    ("factorise", ("4x^2+8x", "=2x(2x+4)"), True, False, "4x(x+2)"),
    ("factorise", ("12x^2-27", "=3(4x^2-9)"), True, False, "3(2x+3)(2x-3)"),
    ("factorise", ("2x^2+7x+3", "=(2x+1)(x+3)"), True, True, "(2x+1)(x+3)"),
    ("factorise", ("2x^2+7x+3", "=2(x+\\frac12)(x+3)"), True, False, "(2x+1)(x+3)"),
    ("factorise", ("x^2-6x+9", "=(x-3)(x-3)"), True, True, "(x-3)^2"),
    ("factorise", ("ax+ay+bx+by", "=a(x+y)+b(x+y)"), True, False, "(a+b)(x+y)"),
    ("factorise", ("x^4-16", "=(x^2-4)(x^2+4)"), True, False, "(x+2)(x-2)(x^2+4)"),
    ("factorise", ("(x+1)^2-4", "=(x+1-2)(x+1+2)"), True, False, "(x+3)(x-1)"),
    ("factorise", ("x^2-2", "=(x-\\sqrt2)(x+\\sqrt2)"), True, None, "x^2-2"),
    ("factorise", ("60", "=4\\times15"), True, False, "2^2 \\times 3 \\times 5"),
    ("factorise", ("60", "=2^2\\times3\\times5"), True, True, "2^2 \\times 3 \\times 5"),
    # simplest form: fractions cancelled, surds without square factors, one fraction, powers put together
    ("simplify", ("\\frac{6}{8}", "=\\frac34"), True, True, "\\frac{3}{4}"),
    ("simplify", ("\\frac{12}{20}", "=\\frac{6}{10}"), True, False, "\\frac{3}{5}"),
    ("simplify", ("\\frac74", "=1\\frac34"), True, True, "\\frac{7}{4}"),
    ("simplify", ("\\sqrt{72}", "=3\\sqrt8"), True, False, "6\\sqrt{2}"),
    ("simplify", ("\\sqrt{72}", "=6\\sqrt2"), True, True, "6\\sqrt{2}"),
    ("simplify", ("\\sqrt8+\\sqrt2", "=2\\sqrt2+\\sqrt2"), True, False, "3\\sqrt{2}"),
    ("simplify", ("\\frac{6}{\\sqrt3}", "=\\frac{6\\sqrt3}{3}"), True, False, "2\\sqrt{3}"),
    ("simplify", ("\\frac{4}{1+\\sqrt5}", "=\\sqrt5-1"), True, True, "-1+\\sqrt{5}"),
    ("simplify", ("\\frac{2+\\sqrt{12}}{4}", "=\\frac{2+2\\sqrt3}{4}"), True, False, "\\frac{1+\\sqrt{3}}{2}"),
    ("simplify", ("\\frac{2x+4}{6}", "=\\frac{2(x+2)}{6}"), True, False, "\\frac{x+2}{3}"),
    ("simplify", ("\\frac1x+\\frac1y", "=\\frac{y}{xy}+\\frac{x}{xy}"), True, False, "\\frac{x+y}{xy}"),
    ("simplify", ("\\frac3x+\\frac{2}{x+1}", "=\\frac{5x+3}{x(x+1)}"), True, True, "\\frac{5x+3}{x(x+1)}"),
    ("simplify", ("\\frac{x^2-4}{x^2-2x}", "=\\frac{(x-2)(x+2)}{x(x-2)}"), True, False, "\\frac{x+2}{x}"),
    ("simplify", ("x^3\\times x^4", "=x^7"), True, True, "x^7"),
    ("simplify", ("(2a^3)^2", "=2^2a^6"), True, False, "4a^6"),
    ("simplify", ("16^{\\frac34}", "=2\\times4"), True, False, "8"),
    ("simplify", ("3^2\\times3^4", "=3^6"), True, None, "729"),
    ("simplify", ("3x+2y-x", "=3x-x+2y"), True, False, "2x+2y"),
    # all solutions, each worked out
    ("solve", ("x^2=9", "x=3"), False, True, "x=-3 \\text{ or } x=3"),
    ("solve", ("x^2=9", "x=3", "x=-3"), True, True, "x=-3 \\text{ or } x=3"),
    ("solve", ("x^2-5x+6=0", "(x-2)(x-3)=0"), True, False, "x=2 \\text{ or } x=3"),
    ("solve", ("4x=10", "x=\\frac{10}{4}"), True, False, "x=\\frac{5}{2}"),
    ("solve", ("x^2-2x-1=0", "x=1\\pm\\sqrt2"), True, True, "x=1-\\sqrt{2} \\text{ or } x=1+\\sqrt{2}"),
    ("solve", ("2x+1>7", "2x>6"), True, False, "x>3"),
    ("solve", ("-2x>6", "x>-3"), False, True, "x<-3"),
    ("solve", ("x^2\\le 9", "-3\\le x\\le3"), True, True, "-3 \\le x \\le 3"),
    ("solve", ("x+1=x+2", "\\text{no solution}"), True, True, "\\text{no solution}"),
    ("solve", ("x+y=7", "x-y=1", "x=4", "y=3"), True, True, "x=4, y=3"),
    ("solve", ("2x+y=1", "y=3-x", "x=-2", "y=4"), False, True, "x=-2, y=5"),
    ("solve", ("ax+b=c", "x=\\frac{c-b}{a}"), True, True, "x=\\frac{-b+c}{a}"),
    ("solve", ("e^x=5", "x=\\ln5"), True, True, "x \\approx 1.6094"),
    ("simplify", ("\\frac{3x}{4}-\\frac{x}{6}", "=\\frac{9x-2x}{12}"), True, False, "\\frac{7}{12}x"),
    ("simplify", ("\\frac{a^5}{a^2}", "=a^{5-2}"), True, False, "a^3"),
    ("simplify", ("(3+2i)(1-i)", "=5-i"), True, True, "5-i"),
    # the line y = x + 1 meets the circle in two points
    ("solve", ("x^2+y^2=25", "y=x+1", "x=3", "y=4"), False, True, "x=-4, y=-3 \\text{ or } x=3, y=4"),
    ("solve", ("x^2+y^2=25", "y=x+1", "x=3, y=4 \\text{ or } x=-4, y=-3"), True, True,
     "x=-4, y=-3 \\text{ or } x=3, y=4"),
    ("solve", ("x^2+y^2=25", "y=x+1", "x=3, y=4 \\text{ or } x=-4, y=3"), False, True,
     "x=-4, y=-3 \\text{ or } x=3, y=4"),
    ("solve", ("x^2+y^2=25", "y=x+1", "x^2+(x+1)^2=25", "(x+4)(x-3)=0", "x=-4 \\text{ or } x=3",
               "y=-3 \\text{ or } y=4"), True, True, "x=-4, y=-3 \\text{ or } x=3, y=4"),
    # the value and what it comes to on one line; a formula for lengths; a condition on the line
    ("factorise", ("x^2+7x+12=(x+3)(x+4)",), True, True, "(x+3)(x+4)"),
    ("expand", ("(x+1)^2=x^2+x+x+1",), True, False, "x^2+2x+1"),
    ("solve", ("A=\\pi r^2", "r=\\sqrt{\\frac{A}{\\pi}}"), None, True, ""),
    ("solve", ("x^2=16 \\text{ for } x>0", "x=4"), True, True, "x=4"),
    # to the accuracy stated: 50 has the root 7.0710...; 36 pi = 113.097...; 7/3 = 2.333...
    ("solve", ("3x=7", "x=2.33 \\text{ (2 d.p.)}"), True, True, "x=2.33 \\text{ (2 d.p.)}"),
    ("solve", ("3x=7", "x=2.3 \\text{ (3 s.f.)}"), True, False, "x=2.33 \\text{ (3 s.f.)}"),
    ("solve", ("3x=7", "x=2.34 \\text{ (2 d.p.)}"), False, True, "x=2.33 \\text{ (2 d.p.)}"),
    ("solve", ("2x=2468", "x=1230 \\text{ (3 s.f.)}"), True, True, "x=1230 \\text{ (3 s.f.)}"),
    (None, ("36\\pi", "=113.1 \\text{ (1 d.p.)}"), True, True, "113.1"),
    (None, ("36\\pi", "=113 \\text{ (nearest whole number)}"), True, True, "113"),
    (None, ("\\sqrt2", "=1.42 (3 \\text{ s.f.})"), False, True, "1.41"),
    # no task: only right or wrong
    (None, ("2+3\\times4", "=20"), False, None, "14"),
    ("identity", ("(x+1)^2=x^2+2x+1",), True, None, "true for all values"),
]


@pytest.mark.parametrize(("task", "lines", "correct", "form_ok", "expected"), CASES)
def test_final_answer(
    task: str | None, lines: tuple[str, ...], correct: bool | None, form_ok: bool | None, expected: str
) -> None:
    final = judged(task, *lines).final
    assert (final.correct, final.form_ok, final.expected) == (correct, form_ok, expected)


@pytest.mark.parametrize(
    ("answer", "form_ok"),
    [("x=\\pm7.07", True), ("x=\\pm7.1", False), ("x=\\pm7.0711", False), ("x=\\pm5\\sqrt2", False)],
)
def test_accuracy_that_the_question_asks_for(answer: str, form_ok: bool) -> None:
    # The root of 50 is 7.0710678...
    final = judged("solve", "x^2=50", answer, question="x^2=50 \\text{ (3 s.f.)}").final
    assert (final.correct, final.form_ok) == (True, form_ok)
    assert final.expected == "x=-7.07 \\text{ or } x=7.07 \\text{ (3 s.f.)}"


@pytest.mark.parametrize(
    ("lines", "correct"),
    [
        # e^2 = 7.389...; e^1.0737 + 1.0737 = 4.00; 2.2079 + ln 2.2079 = 3.00
        (("\\ln x=2", "x=7.39"), True), (("\\ln x=2", "x=7.38"), False), (("e^x+x=4", "x=1.07"), True),
        (("e^x+x=4", "x=1.08"), False),
        # -1 + root 2 = 0.4142...
        (("x^2+2x-1=0", "x=-1\\pm1.41"), True), (("x^2+2x-1=0", "x=-1\\pm1.42"), False),
        (("x+\\ln x=3", "x=2.208"), True),
    ],
)
def test_rounded_solution_of_an_equation_without_a_list_of_solutions(lines: tuple[str, ...], correct: bool) -> None:
    told = judged("solve", *lines)
    assert told.final.correct is correct
    assert (told.first_slip is None) is correct


def test_exact_answer_asked() -> None:
    question = "x^2=50 \\text{, giving exact answers}"
    assert judged("solve", "x^2=50", "x=\\pm5\\sqrt2", question=question).final.form_ok is True
    assert judged("solve", "x^2=50", "x=\\pm7.07", question=question).final.form_ok is False


@pytest.mark.parametrize(
    ("text", "accuracy"),
    [
        ("x=2.33 \\text{ (2 d.p.)}", Accuracy("dp", 2)), ("x=2.33 (2dp)", Accuracy("dp", 2)),
        ("to three significant figures", Accuracy("sf", 3)), ("x=1.4 (2 \\text{ sf})", Accuracy("sf", 2)),
        ("correct to 1 decimal place", Accuracy("dp", 1)), ("\\text{to the nearest integer}", Accuracy("unit")),
        ("give exact values", Accuracy("exact")), ("x=2dp", Accuracy("dp", 2)),
        ("x=2", None),
    ],
)
def test_stated_accuracy(text: str, accuracy: Accuracy | None) -> None:
    assert stated_accuracy(text) == accuracy


# how the answer stands in the working


@pytest.mark.parametrize(
    ("task", "lines", "sentence"),
    [
        ("solve", ("2x+3=13", "2x=10", "x=5"), "The answer is right."),
        ("solve", ("2x+3=13", "2x=16", "x=8"), "The answer follows from the slip on line 2 (ft)."),
        ("solve", ("2x+3=13", "2x=16", "x=5"), "The answer is right, but it comes from wrong working: see line 2."),
        ("solve", ("2x+3=13", "2x=16", "2x=10", "x=5"), "The answer is right; the slip on line 2 was put right."),
        ("solve", ("2x+3=13", "2x=10", "x=6"), "The answer is wrong."),
        ("factorise", ("12x^2-27", "=3(4x^2-9)"),
         "The answer is right. It has not the form asked. It can be factorised further."),
        ("factorise", ("4x^2+8x", "=2x(2x+4)"),
         "The answer is right. It has not the form asked. A common factor is left in a bracket."),
        ("simplify", ("\\sqrt{72}", "=3\\sqrt8"),
         "The answer is right. It has not the form asked. A root still holds a square or higher power."),
        ("solve", ("x^2=9", "x=3"), "The answer is wrong. The solution x = -3 is lost."),
        ("solve", ("x^2=9", "x^2-9=0"), "It is still to be solved."),
    ],
)
def test_answer_in_words(task: str, lines: tuple[str, ...], sentence: str) -> None:
    assert judged(task, *lines).answer == sentence


# FLINT as an outside judge of full factors


def test_full_factors_agree_with_flint() -> None:
    pytest.importorskip("flint", reason="python-flint is not installed; it comes with the extra test")
    from tests.checker.random_algebra import Tree, expanded, latex, polynomials
    from tests.checker.random_workings import factorised

    @settings(max_examples=120, deadline=None, derandomize=True, database=None,
              suppress_health_check=list(HealthCheck))
    @given(polynomials)
    def judged_by_flint(tree: Tree) -> None:
        poly = expanded(tree)
        if poly.is_constant() or any(value.q != 1 for value in poly.coeffs()):
            return
        whole = factorised(poly)
        assert checked_form(parse_expression(latex(whole)), "factorise").is_met is True
        _, factors = poly.factor()
        if sum(int(times) for factor, times in factors if len(factor) > 1) > 1:
            text = judged("expand", latex(tree)).final.expected
            assert checked_form(parse_expression(text), "factorise").is_met is False

    judged_by_flint()


def test_value_of_a_wrong_line_put_into_a_right_one_is_followed_through() -> None:
    # 13 + 2 is 15, not 20; with x = 4 the second equation gives 2y = 6.
    told = judged("solve", "3x+2y=13 \\quad (1)", "2x-2y=2 \\quad (2)", "5x=20", "x=4", "y=3")
    assert [line.verdict for line in told.lines] == ["start", "start", "slip", "ft", "ft"]
    assert told.lines[4].source == 3
    assert told.answer == "The answer follows from the slip on line 3 (ft)."


def test_question_copied_is_no_second_equation() -> None:
    # The roots of 50 are 7.07 and -7.07: one of them is lost, and nothing is wrong besides.
    told = judged("solve", "x^2=50", "x=7.07", question="x^2=50")
    assert told.lines[1].verdict == "loses"
