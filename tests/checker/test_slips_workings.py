"""Whole workings set by hand, of other shapes than those of the generator: the first slip, its term and its reason.

Each slip was planted by hand and the later lines follow from it; own examples, no source.
"""

from __future__ import annotations

import pytest

from checker.report import Working
from checker.working import judge

# lines, index of the slip, kinds that a fair teacher could give it, term, what it should be
WORKINGS = [
    # -2t times +4 is -8t
    (("(5-2t)(t+4)", "=5t+20-2t^2+8t", "=20+13t-2t^2"), 1, {"sign-product"}, "+8t", "-8t"),
    # collected in the same step: 15m - 14m is m
    (("(3m-2)(7+5m)", "=15m^2-11m-14", "=15m^2-11m-14+0"), 1, {"sign-product", "like-terms"}, "-11m", "+11m"),
    # -7 times -y is +7y, and y times -y is -y^2
    (("(y-7)(2-y)", "=2y-y^2-14-7y", "=-y^2-5y-14"), 1, {"sign-product"}, "-7y", "+7y"),
    # two letters: 2a times 3b is 6ab
    (("(2a+b)(3b-a)", "=5ab-2a^2+3b^2-ab", "=4ab-2a^2+3b^2"), 1, {"product"}, "5ab", "6ab"),
    # both collected at once, the constant wrong: 4 times -6 is -24
    (("(x+4)(x-6)", "=x^2-2x+24"), 1, {"sign-product"}, "+24", "-24"),
    # 9k - 4k is 5k
    (("(k+9)(k-4)", "=k^2+9k-4k-36", "=k^2+13k-36"), 2, {"like-terms"}, "+13k", "+5k"),
    # nested: -2 times -3 is +6
    (("5-2(x-3(x+1))", "=5-2(x-3x-3)", "=5-2x+6x-6", "=4x-1"), 2, {"sign-product"}, "-6", "+6"),
    # the minus turns +4 into -4
    (("8p-(3p+4)", "=8p-3p+4", "=5p+4"), 1, {"sign-bracket"}, "+4", "-4"),
    # -(n-6) is -n+6
    (("2(n+1)-(n-6)", "=2n+2-n-6", "=n-4"), 1, {"sign-bracket"}, "-6", "+6"),
    # x times x is x^2
    (("x(x+3)+2x", "=x+3x+2x", "=6x"), 1, {"power-law"}, "x", "x^2"),
    # 4 times 7 is 28
    (("4(k+7)-k", "=4k+7-k", "=3k+7"), 1, {"multiply-each-term"}, "+7", "+28"),
    # the middle term of a square: 2 times 3d times -4 is -24d
    (("(3d-4)^2+d", "=9d^2+16+d"), 1, {"square-of-sum"}, "(missing)", "-24d"),
    # (2u)^2 is 4u^2
    (("(2u+5)^2", "=2u^2+20u+25"), 1, {"power-law"}, "2u^2", "4u^2"),
    # (-7)^2 is +49
    (("(w-7)^2-w^2", "=w^2-14w-49-w^2", "=-14w-49"), 1, {"sign-product"}, "-49", "+49"),
    # three brackets, the product of -2 and -3 in the second step
    (
        ("(a+1)(a-2)(a-3)", "=(a^2-a-2)(a-3)", "=a^3-3a^2-a^2+3a-2a-6", "=a^3-4a^2+a-6"), 2,
        {"sign-product"}, "-6", "+6",
    ),
    # like terms in the first bracket only: -2c + 5c is 3c
    (("(c-2)(c+5)(c+1)", "=(c^2+7c-10)(c+1)", "=c^3+8c^2-3c-10"), 1, {"sign-product", "like-terms"}, "+7c", "+3c"),
    # one of four terms left out: 3 times -q
    (("(3-p)(p-q)", "=3p-p^2+pq"), 1, {"dropped-term"}, "(missing)", "-3q"),
    # fractions: 2 times -5 is -10
    (
        (r"\frac{x+1}{3}+\frac{x-5}{6}", r"=\frac{2(x+1)+(x-5)}{6}", r"=\frac{2x+1+x-5}{6}", r"=\frac{3x-4}{6}"), 2,
        {"multiply-each-term"}, "+1", "+2",
    ),
    # the bar is a bracket: -(y-2) is -y+2
    (
        (r"\frac{3y}{4}-\frac{y-2}{4}", r"=\frac{3y-y-2}{4}", r"=\frac{2y-2}{4}"), 1,
        {"sign-bracket", "sign-product"}, "-2", "+2",
    ),
    # 12 divided by 4 is 3
    ((r"\frac{8b+12}{4}", "=2b+12"), 1, {"divide-each-term"}, "+12", "+3"),
    # 6 divided by 2 is 3
    ((r"\frac{10z^2-6z}{2z}", "=5z-4"), 1, {"arithmetic"}, "-4", "-3"),
    # equations: -3 times -2 is +6
    (("4x-3(x-2)=10", "4x-3x-6=10", "x-6=10", "x=16"), 1, {"sign-product"}, "-6", "+6"),
    # 9 moves: 21 - 9 is 12
    (("3x+9=21", "3x=30", "x=10"), 1, {"sign-moved"}, "30", "12"),
    # 2y moves: 5y - 2y is 3y
    (("5y-4=2y+11", "7y=15", r"y=\frac{15}{7}"), 1, {"sign-moved"}, "7y", "3y"),
    # shown before collecting: -6 becomes +6
    (("7r-6=3r+10", "7r-3r=10-6", "4r=4", "r=1"), 1, {"sign-moved"}, "-6", "+6"),
    # unknown on the right: 20 - 8 is 12
    (("20=4v+8", "28=4v", "7=v"), 1, {"sign-moved"}, "28", "12"),
    # -15 divided by -3
    (("-3h=-15", "h=-5"), 1, {"sign-product"}, "-5", "5"),
    # each term is multiplied by 4: 3 times 4 is 12
    ((r"\frac{x}{4}+3=5", "x+3=20", "x=17"), 1, {"multiply-each-term"}, "+3", "+12"),
    # each term is divided by 5
    (("5q-10=35", "q-10=7", "q=17"), 1, {"divide-each-term"}, "-10", "-2"),
    # taken on one side only
    (("6x+7=25", "6x=25", r"x=\frac{25}{6}"), 1, {"one-side-only"}, "25", "18"),
    # 3s + 4s is 7s
    (("3s+4s-5=9", "8s-5=9", "8s=14", r"s=\frac{7}{4}"), 1, {"like-terms"}, "8s", "7s"),
    # the factors of n^2-3n-10 are n-5 and n+2
    (("n^2-3n-10=0", "(n-5)(n-2)=0", r"n=5 \text{ or } n=2"), 1, {"sign-product", "factor-pair"}, "-2", "+2"),
    # the root of x+8 is -8
    (("(x-3)(x+8)=0", r"x=3 \text{ or } x=8"), 1, {"sign-product"}, "8", "-8"),
    # powers add
    ((r"2a^3\cdot 5a^4", "=10a^{12}"), 1, {"power-law"}, "10a^{12}", "10a^7"),
    # 3^2 is 9
    (("(3x^2y)^2", "=3x^4y^2"), 1, {"power-law"}, "3x^4y^2", "9x^4y^2"),
    # 12 divided by 4 is 3
    ((r"\frac{12p^5}{4p^2}", "=8p^3"), 1, {"arithmetic"}, "8p^3", "3p^3"),
    # direction turns
    (("5-2x>11", "-2x>6", "x>-3"), 2, {"inequality-direction"}, ">", "<"),
    # difference of two squares: no middle term, and -25
    (("(2c+5)(2c-5)", "=4c^2+25"), 1, {"sign-product"}, "+25", "-25"),
    # the last term keeps its sign
    (("6+2e-9+5e", "=7e+3"), 1, {"like-terms"}, "+3", "-3"),
    # x^2 keeps its power
    (("3x^2+4x-x^2", "=2x^2+4x", "=2x+4x", "=6x"), 2, {"copied", "power-law"}, "2x", "2x^2"),
]


@pytest.mark.parametrize(("lines", "index", "kinds", "term", "should_be"), WORKINGS, ids=lambda value: None)
def test_first_slip_its_term_and_its_kind(
    lines: tuple[str, ...], index: int, kinds: set[str], term: str, should_be: str,
) -> None:
    report = judge(Working(lines))
    assert report.first_slip == index
    slip = report.lines[index].slip
    assert slip is not None
    assert (slip.term, slip.should_be) == (term, should_be)
    assert slip.kind in kinds
    mended = judge(Working((*lines[:index], slip.repaired)))
    assert mended.first_slip is None
