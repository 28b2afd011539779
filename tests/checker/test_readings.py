"""Letters before brackets, labels before lines: what a fair reader takes them to be."""

import pytest

from checker.report import LineReport, Working
from checker.syntax import function_readings, parse, parse_line, tight
from checker.working import judge


def second(*lines: str) -> LineReport:
    return judge(Working(lines)).lines[1]


@pytest.mark.parametrize(
    ("lines", "verdict"),
    [
        # 5g times g - 2 is 5g^2 - 10g; g also stands alone, so it is a factor.
        (("5g(g-2)", "=5g^2-10g"), "follows"),
        (("5g(g-2)", "=5g^2-10"), "slip"),
        (("g(g+7)=0", r"g=0 \text{ or } g=-7"), "follows"),
        (("g(g+7)=0", r"g=0 \text{ or } g=7"), "slip"),
        (("f(2x+1)", "=2fx+f"), "follows"),
        (("f(2x+1)", "=2fx+1"), "slip"),
        # A difference of functions, as published: g and f are multiplied like factors.
        (("(g-f)(x)", "=g(x)-f(x)"), "follows"),
        # f is defined, so f(2x) is (2x)^2 and no product.
        (("f(x)=x^2", "f(2x)=4x^2"), "follows"),
        (("f(x)=x^2", "f(2x)=2x^2"), "slip"),
        (("h(x)=x+3", "h(x+1)=x+4"), "follows"),
    ],
)
def test_letter_before_a_bracket(lines: tuple[str, str], verdict: str) -> None:
    assert second(*lines).verdict == verdict


def test_readings_are_told_for_the_whole_working() -> None:
    assert function_readings([parse("5g(g-2)"), parse("=5g^2-10g")]) == {"factor g"}
    assert function_readings([parse("f(x)=x^2"), parse("f(3)=9")]) == frozenset()
    assert function_readings([parse("h(x)=x+3")]) == {"function h"}
    assert function_readings([parse("h(x+3)")]) == frozenset()


@pytest.mark.parametrize(
    ("text", "label"),
    [
        ("(2) 3x=30", "2"), ("( 2 ) 3 x = 30", "2"), ("1) 3x=6", "1"), ("a) 3x=6", "a"), ("(a) 3x=6", "a"),
        ("(iv) 2x=4", "iv"), ("(2) x=5", "2"), ("2. 3x=6", "2"),
        ("(2)(x+1)", None), ("(a)(x+1)", None), ("(2)x=10", None), ("(x) 3x=6", None), ("(2)+3x", None),
    ],
)
def test_label_before_a_line(text: str, label: str | None) -> None:
    assert parse_line(text).label == label


def test_label_that_may_be_a_factor_is_read_so_that_the_line_follows() -> None:
    # As a product 2 times 3x = 30 gives x = 5; with the label (2), 3x = 30 gives x = 10.
    assert second("(2) 3x=30", "x=10").verdict == "follows"
    assert second("(2) 3x=30", "x=5").verdict == "follows"
    assert second("(2) 3x=30", "x=6").verdict == "slip"


def test_letters_that_cancel_are_no_values_put_in() -> None:
    # 8d - 8d is nothing, so only a is left: -7a + 3a is -4a, and -15 stays.
    assert second("-7a+3a+8d-8d-15", "=-4a-15").verdict == "follows"
    told = second("-7a+3a+8d-8d-15", "=-4a-16")
    assert told.verdict == "slip"
    assert told.slip is not None
    assert (told.slip.term, told.slip.should_be) == ("-16", "-15")
    assert second(r"\frac{6ab}{2a}", "=4b").verdict == "slip"
    assert second("2x+3y-3y=7", "2x=8").verdict == "slip"
    # 3y is really gone: 6 may be its value.
    assert second("2x+3y", "=2x+6").verdict == "undecided"


@pytest.mark.parametrize(
    ("lines", "verdict"),
    [
        # -14n < 13 divided by -14 turns the sign: n > -13/14; 13/14 is another boundary.
        (("-14n<13", "n>13/14"), "slip"),
        (("-14n<13", "n>-13/14"), "follows"),
        (("2x+1>7", "x>4"), "slip"),
        (("3<2x+1<9", "1<x<5"), "slip"),
        # The boundary is right, the end point is lost or a link is dropped: no wrong number.
        ((r"2x\le 8", "x<4"), "loses"),
        ((r"2<x\le 5", r"x\le 5"), "adds"),
        # Powers and reciprocals stay with their sets.
        (("x^2<9", "x<3"), "adds"),
        ((r"\frac1x>2", "1>2x"), "adds"),
    ],
)
def test_boundary_of_a_linear_inequality(lines: tuple[str, str], verdict: str) -> None:
    assert second(*lines).verdict == verdict


def test_line_that_loses_a_root_says_which() -> None:
    told = judge(Working(("w^2=7w", "w=7")))
    assert told.first_slip is None
    slip = told.lines[1].slip
    assert told.lines[1].verdict == "loses"
    assert slip is not None
    assert (slip.kind, slip.span, slip.should_be) == ("root-lost", (3, 3), "w=0")
    assert judge(Working(("w^2=7w", slip.repaired))).lines[1].verdict == "follows"


def test_term_and_correction_are_tight_and_the_span_marks_the_place() -> None:
    line = "= 3 x - 1 1"
    slip = second("3 ( x - 4 )", line).slip
    assert slip is not None
    assert (slip.term, slip.should_be, line[slice(*slip.span)]) == ("-11", "-12", "- 1 1")
    line = "= 5 t + 2 0 - 2 t ^ { 2 } + 8 t"
    slip = second("( 5 - 2 t ) ( t + 4 )", line).slip
    assert slip is not None
    assert (slip.term, slip.should_be, line[slice(*slip.span)]) == ("+8t", "-8t", "+ 8 t")
    assert slip.because.startswith("-2t times +4 is -8t")


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("- 1 2 t ^ { 2 }", "-12t^{2}"), (r"\pm 2", r"\pm 2"), (r"\frac { 1 } { 2 }", r"\frac{1}{2}"),
        (r"x = 2 \text{ or } x = - 5", r"x=2\text{ or }x=-5"), ("x = 2 or x = 3", "x=2 or x=3"), (r"\pi r", r"\pi r"),
    ],
)
def test_tight_latex(text: str, expected: str) -> None:
    assert tight(text) == expected


def test_reason_for_unlike_terms_fits_what_was_written() -> None:
    # 8w + 12w is 20w; 20 + 24 is 44, so 44w joins unlike terms; 3w joins nothing.
    slip = second("8w+12w+24", "=44w").slip
    assert slip is not None
    assert slip.because == "20w and 24 are not like terms, so they stay apart"
    slip = second("8w+12w+24", "=3w").slip
    assert slip is not None
    assert slip.because == "the line before gives 20w+24"


def test_line_that_was_misread_gets_no_far_fetched_reason() -> None:
    # -26x657.8 lost its minus: no product of thousands is told; 3 times -10 is no fraction over y squared.
    number = ("-26x-657.8=0.5", "-26x657.8-0.5=0.5-0.5")
    letter = (r"3=-\frac{10}{y}", r"3\cdot -10=\frac{10}{y}\cdot -10")
    for lines in (number, letter):
        slip = second(*lines).slip
        assert slip is not None
        assert "433029" not in slip.because
        assert "y^2" not in slip.should_be
