"""LaTeX as a picture, as typed, and in plain signs."""

import pytest

from desktop.maths import MathsError, plain, tidy, typeset

# Each pair is by hand: what the reader gives, and how one would type it.
TIDY = [
    ("= 5 t + 2 0 - 2 t ^ { 2 } + 8 t", "=5t+20-2t^2+8t"),
    (r"3 \times t = \pi r ^ { 1 2 }", r"3\times t=\pi r^{12}"),
    (r"x = 2 \text{or} x = - 5", r"x=2\text{ or }x=-5"),
    (r"\frac { 1 } { 2 } a _ { 1 }", r"\frac{1}{2}a_1"),
    (r"x ^ { 2 } 3", r"x^{2}3"),
]


@pytest.mark.parametrize(("latex", "typed"), TIDY)
def test_latex_is_tidied_as_one_types_it(latex, typed):
    assert tidy(latex) == typed
    assert tidy(typed) == typed


@pytest.mark.parametrize(
    ("sentence", "signs"),
    [
        ("-2t times +4 is -8t: one factor is negative", "−2t times +4 is −8t: one factor is negative"),
        ("the terms in t^2 differ", "the terms in t² differ"),
        (r"\frac{1}{2} of x \ne 0", "1/2 of x ≠ 0"),
        ("a follow-through error", "a follow-through error"),
        (r"w = \frac{-5+\sqrt{149}}{2} satisfies", "w = (−5+√149)/2 satisfies"),
    ],
)
def test_sentences_are_written_in_plain_signs(sentence, signs):
    assert plain(sentence) == signs


def test_line_is_typeset_with_its_size():
    small, large = typeset("x^2+1", size=10), typeset("x^2+1", size=20)
    assert large.width == pytest.approx(2 * small.width, rel=0.05)
    assert large.svg.startswith("<svg")


@pytest.mark.parametrize("latex", [r"\frac{1}{", "", "   ", "x^", r"\frac", "{" * 5000, "x" * 5000])
def test_latex_that_cannot_be_set_says_so(latex):
    with pytest.raises(MathsError, match=r"not complete|nothing to show|too long|too deeply"):
        typeset(latex)


@pytest.mark.parametrize(
    ("sign", "operation"), [("=-2k", "=k-2"), ("(-k)2", "(2-k)"), (r"3\times-2", r"3-2\times"), ("= - 2 k", "= k - 2")]
)
def test_sign_stands_close_to_its_number_and_an_operation_does_not(sign, operation):
    # The same symbols in both; an operation has room on both sides (common practice, no source).
    assert typeset(sign).width < typeset(operation).width
