"""Values put into functions, composites, inverses and sequences."""

import pytest

from checker.report import Working
from checker.working import judge
from tests.checker.verdict_letters import check

# Worked by hand (common practice, no source). The letters are those of `verdict_letters`.
CASES = [
    (("f(x)=x^2", "f(3)=9"), "0f", {}, None),
    (("f(x)=x^2", "f(3)=6"), "0S", {}, None),
    (("f(x)=x^2", "f(3)=3^2=9"), "0f", {}, None),
    (("f(x)=x^2-2x", "f(-1)=(-1)^2-2(-1)=1+2=3"), "0f", {}, None),
    (("f(x)=x^2-2x", "f(-1)=(-1)^2-2(-1)", "=1-2", "=-1"), "0fSt", {}, None),
    (("f(x)=x^2", "f(x+1)=(x+1)^2", "=x^2+2x+1"), "0ff", {}, None),
    (("f(x)=x^2", "f(x+1)=x^2+1"), "0S", {}, None),
    (("f(x)=2x+1", "g(x)=x^2", "fg(x)=2x^2+1"), "0?f", {}, None),
    (("f(x)=2x+1", "g(x)=x^2", "fg(x)=(2x+1)^2"), "0?S", {}, None),
    (("f(x)=2x+1", "g(x)=x^2", "gf(x)=(2x+1)^2"), "0?f", {}, None),
    (("f(x)=2x+1", "g(x)=x^2", "f(g(x))=2x^2+1"), "0?f", {}, None),
    (("f(x)=2x+1", "g(x)=x^2", "fg(3)=f(9)", "=19"), "0?ff", {}, None),
    (("f(x)=2x+1", "g(x)=x^2", "fg(3)=19"), "0?f", {}, None),
    (("f(x)=2x+1", "g(x)=x^2", "fg(3)=49"), "0?S", {}, None),
    (("f(x)=2x+1", "y=2x+1", r"x=\frac{y-1}{2}", r"f^{-1}(x)=\frac{x-1}{2}"), "0?ff", {}, None),
    (("f(x)=2x+1", r"f^{-1}(x)=\frac{x-1}{2}"), "0f", {}, None),
    (("f(x)=2x+1", r"f^{-1}(x)=\frac{x+1}{2}"), "0S", {}, None),
    (("f(x)=2x+1", "y=2x+1", "x=2y+1", r"y=\frac{x-1}{2}"), "0?.f", {}, None),
    (("f(x)=2x+1", "f(x)=7", "2x+1=7", "x=3"), "0?ff", {}, None),
    (("f(x)=2x+1", "f(x)=7", "2x+1=7", "x=4"), "0?fS", {}, None),
    (("f(x)=x^2", "f(a)=a^2"), "0f", {}, None),
    (("f(x)=x^3-7x+6", "f(2)=8-14+6", "=0"), "0ff", {}, None),
    (("f(x)=x^3-7x+6", "f(2)=8-14+6=0", "f(x)=(x-2)(x^2+2x-3)", "=(x-2)(x+3)(x-1)"), "0fff", {}, None),
    (("f(x)=x^3-7x+6", "f(2)=8-14+6=0", "f(x)=(x-2)(x^2+2x+3)"), "0fS", {}, None),
    (("f(x)=x^3+ax+6", "f(2)=0", "8+2a+6=0", "2a=-14", "a=-7"), "0?fff", {}, None),
    (("f(x)=x^3+ax+6", "f(2)=0", "8+2a+6=0", "2a=14"), "0?fS", {}, None),
    (("f(x)=x^3+ax+6", "f(2)=0", "6+2a+6=0"), "0?S", {}, None),
    (("u_{n+1}=2u_n+1, u_1=3", "u_2=2(3)+1=7", "u_3=15"), "0ff", {}, None),
    (("u_{n+1}=2u_n+1", "u_1=3", "u_2=7", "u_3=15"), "0?ff", {}, None),
    (("u_{n+1}=2u_n+1", "u_1=3", "u_2=7", "u_3=14"), "0?fS", {}, None),
    (("u_{n+1}=2u_n+1", "u_1=3", "u_2=8"), "0?S", {}, None),
    (("u_n=3n+2", "u_1=5", "u_{10}=32"), "0ff", {}, None),
    (("u_n=3n+2", "u_1=5", "u_{10}=33"), "0fS", {}, None),
    (("u_n=a+(n-1)d", "u_{10}=3+9(4)", "=39"), "0?f", {}, None),
    (("u_n=3+4(n-1)", "=4n-1", "u_{20}=79"), "0ff", {}, None),
    ((r"S_n=\frac{n}{2}(2a+(n-1)d)", r"S_{20}=\frac{20}{2}(2(3)+19(4))", "=820"), "0?f", {}, None),
    ((r"S_n=\frac{n}{2}(2a+(n-1)d)", r"S_{20}=\frac{20}{2}(2(3)+19(4))", "=800"), "0?S", {}, None),
    (("a=3, d=4", "u_n=a+(n-1)d", "u_n=3+4(n-1)", "u_n=4n-1"), "0?ff", {}, None),
    (("a=3, d=4", "u_n=a+(n-1)d", "u_n=3+4(n-1)", "u_n=4n+7"), "0?fS", {}, None),
    (("ar=6, ar^4=48", r"\frac{ar^4}{ar}=\frac{48}{6}", "r^3=8", "r=2", "a=3"), "0ffff", {}, None),
    (("ar=6, ar^4=48", r"\frac{ar^4}{ar}=\frac{48}{6}", "r^3=8", "r=2", "a=4"), "0fffS", {}, None),
    ((r"S_\infty=\frac{a}{1-r}", r"S_{\infty}=\frac{6}{1-\frac12}", "=12"), "0?f", {}, None),
    ((r"\sum_{r=1}^{4}r^2", "=1+4+9+16", "=30"), "0ff", {}, None),
    ((r"\sum_{r=1}^{4}r^2", "=1+4+9+16", "=31"), "0fS", {}, None),
    ((r"\sum_{r=1}^{n}r=\frac{n(n+1)}{2}",), "0", {}, None),
    (("h(x)=x^2+1", "h(2)=5"), "0f", {}, None),
    (("h(x)=x^2+1", "h(2)=6"), "0S", {}, None),
    (("p(x)=x^3-2x^2+x-5", "p(2)=8-8+2-5=-3"), "0f", {}, None),
    (("p(x)=x^3-2x^2+x-5", "p(2)=8-8+2-5=-2"), "0S", {}, None),
    ((r"f(x)=\frac{1}{x-2}", r"f(5)=\frac13"), "0f", {}, None),
    (("f(x)=|x-3|", "f(1)=2"), "0f", {}, None),
    (("f(x)=|x-3|", "f(1)=-2"), "0S", {}, None),
    ((r"f:x\mapsto 2x+1", "f(3)=7"), "0f", {}, None),
    (("f(x)=3x-2", "ff(x)=3(3x-2)-2", "=9x-8"), "0ff", {}, None),
    (("f(x)=3x-2", "f^2(x)=9x-8"), "0f", {}, None),
    (("f(x)=3x-2", "ff(x)=(3x-2)^2"), "0S", {}, None),
    (("f(x)=x^2", r"\frac{f(x+h)-f(x)}{h}", r"=\frac{(x+h)^2-x^2}{h}", "=2x+h"), "0?ff", {}, None),
    (("f(x)=x^2", r"\frac{f(x+h)-f(x)}{h}", r"=\frac{x^2+h^2-x^2}{h}"), "0?S", {}, None),
    (("f(x)=2^x", "f(3)=8"), "0f", {}, None),
    (("f(x)=2^x", "f(3)=6"), "0S", {}, None),
    (("T(n)=n^2+1", "T(5)=26"), "0f", {}, None),
    (("T_n=n^2+1", "T_5=26"), "0f", {}, None),
    (("C(n)=20+5n", "C(4)=20+20=40"), "0f", {}, None),
    (("f(x)=x^2+1", "g(x)=x-3", "f(x)+g(x)=x^2+x-2"), "0?f", {}, None),
    (("f(x)=x^2+1", "f(2x)=4x^2+1"), "0f", {}, None),
    (("f(x)=x^2+1", "f(2x)=2x^2+1"), "0S", {}, None),
    (("f(2)=5", "f(x)=3x-1"), "0?", {}, None),
]


@pytest.mark.parametrize(("lines", "verdicts", "options", "correct"), CASES)
def test_verdicts(lines: tuple[str, ...], verdicts: str, options: dict[str, object], correct: bool | None) -> None:
    check(lines, verdicts, options, correct)


@pytest.mark.parametrize(
    ("lines", "term", "should_be", "repaired"),
    (  # worked by hand
        (("f(x)=x^2", "f(3)=6"), "6", "9", "f(3)=9"),
        (("f(x)=x^2-3x", "f(-2)=4-6"), "4-6", "10", "f(-2)=10"),
        (("f(x)=x^2-3x", "f(-2)=4-6=-2"), "4-6=-2", "10", "f(-2)=10"),
        (("f(x)=2x+1", "g(x)=x^2", "fg(x)=2x^2+2"), "2x^2+2", "2x^2+1", "fg(x)=2x^2+1"),
    ),
)
def test_wrong_value_of_a_function_is_put_right(
    lines: tuple[str, ...], term: str, should_be: str, repaired: str
) -> None:
    slip = judge(Working(lines=lines)).lines[-1].slip
    assert slip is not None
    assert (slip.term, slip.should_be, slip.repaired) == (term, should_be, repaired)
