"""Discriminants, values put in, inequalities, logs and sequences in whole workings."""

import pytest

from tests.checker.verdict_letters import check

# Worked by hand (common practice, no source). The letters are those of `verdict_letters`.
CASES = [
    ((r"2\sin x-1=0, 0\le x<360", r"\sin x=\frac12", "x=30, 150"), "0ff", {}, None),
    ((r"2\sin x-1=0, 0\le x<360", r"\sin x=\frac12", "x=30, 330"), "0fS", {}, None),
    (
        (r"2\sin x-1=0 \text{ for } 0^\circ\le x\le360^\circ", r"\sin x=\frac12", r"x=30^\circ, 150^\circ"),
        "0ff", {}, None,
    ),
    ((r"\frac{d}{dx}(x^3+2x)=3x^2+2x",), "S", {}, None),
    ((r"\int_0^1 x^2\,dx=\frac12",), "S", {}, None),
    ((r"\int x^2\,dx=\frac{x^3}{2}+c",), "S", {}, None),
    (("x+2y=4", "2x+4y=8", "0=0"), "0ff", {}, None),
    (("P=2l+2w", "P-2w=2l", r"l=\frac{P-2w}{2}"), "0ff", {}, None),
    (("P=2l+2w", "P-2w=2l", "l=P-w"), "0fS", {}, None),
    (
        ("x^2-7x+10=0", "a=1,b=-7,c=10", r"x=\frac{7\pm\sqrt{49-40}}{2}", r"=\frac{7\pm3}{2}", r"x=5 \text{ or } x=2"),
        "0ffff", {"task": 'solve'}, True,
    ),
    (("x^2-7x+10=0", "a=1,b=7,c=10"), "0S", {}, None),
    (("3x^2+2x-5=0", "b^2-4ac=2^2-4(3)(-5)=4+60=64", r"x=\frac{-2\pm8}{6}", r"x=1, x=-\frac{10}{6}"), "0fff", {}, None),
    (("3x^2+2x-5=0", "b^2-4ac=2^2-4(3)(-5)=4-60=-56"), "0S", {}, None),
    (("x^2+x+1=0", "b^2-4ac=1-4=-3<0", r"\text{no real roots}"), "0ff", {}, None),
    (("x^2+kx+9=0", r"\Delta=k^2-36", "k^2-36>0", r"k>6 \text{ or } k<-6"), "0fff", {}, None),
    (("x^2+kx+9=0", "b^2-4ac=k^2-36", "k^2-36=0", r"k=\pm6"), "0fff", {}, None),
    (("x^2+kx+9=0", "b^2-4ac=k^2+36"), "0S", {}, None),
    (
        ("u=x^2-1", "y=u^5", r"\frac{dy}{du}=5u^4", r"\frac{du}{dx}=2x", r"\frac{dy}{dx}=5u^4\times2x",
         "=10x(x^2-1)^4"),
        "0ffff?", {}, None,
    ),
    (
        ("y=(x^2-1)^5", "u=x^2-1", "y=u^5", r"\frac{dy}{du}=5u^4", r"\frac{du}{dx}=2x", r"\frac{dy}{dx}=10x(x^2-1)^4"),
        "0f?fff", {}, None,
    ),
    (("y=x^2e^x", r"\frac{dy}{dx}=2xe^x+x^2e^x", "=xe^x(2+x)"), "0ff", {}, None),
    (("y=x^2e^x", r"\frac{dy}{dx}=2xe^x"), "0S", {}, None),
    (
        ("y=x^3-6x^2+9x", r"\frac{dy}{dx}=3x^2-12x+9", "3x^2-12x+9=0", "x^2-4x+3=0", "(x-1)(x-3)=0", "x=1,3",
         r"\frac{d^2y}{dx^2}=6x-12", r"x=1: \frac{d^2y}{dx^2}=-6<0", r"x=3: \frac{d^2y}{dx^2}=6>0"),
        "0ffffff??", {}, None,
    ),
    (("y=x^3-6x^2+9x", "x=1, y=1-6+9=4", "x=3, y=27-54+27=0"), "0??", {}, None),
    (("y=x^3-6x^2+9x", r"\text{when } x=1, y=1-6+9=4"), "0f", {}, None),
    (("y=x^3-6x^2+9x", r"\text{when } x=1, y=1-6+9=5"), "0S", {}, None),
    (("y=2x+3", r"\text{when } x=4, y=11"), "0f", {}, None),
    (("y=2x+3", r"\text{when } x=4, y=12"), "0S", {}, None),
    (("y=2x+3", "x=4", "y=2(4)+3=11"), "0?f", {}, None),
    (("y=2x+3", "x=4", "y=2(4)+3=12"), "0?S", {}, None),
    (("y=2x+3", r"x=0 \Rightarrow y=3", r"y=0 \Rightarrow x=-\frac32"), "0??", {}, None),
    ((r"s=ut+\frac12at^2", "u=5, a=2, t=3", r"s=5(3)+\frac12(2)(3)^2", "s=15+9=24"), "0?ff", {}, None),
    ((r"s=ut+\frac12at^2", "u=5, a=2, t=3", r"s=5(3)+\frac12(2)(3)^2", "s=15+36=51"), "0?fS", {}, None),
    ((r"V=\frac13\pi r^2h", "r=3,h=4", r"V=\frac13\pi(3)^2(4)", r"V=12\pi", "V=37.7"), "0?fff", {}, None),
    (
        ("(x+1)(x-2)=10", "x^2-x-2=10", "x^2-x-12=0", "(x-4)(x+3)=0", r"x=4 \text{ or } x=-3"),
        "0ffff", {"task": 'solve'}, True,
    ),
    (("(x+1)(x-2)=10", r"x+1=10 \text{ or } x-2=10"), "0S", {}, None),
    ((r"\frac{2}{3}x+1=5", r"\frac{2}{3}x=4", r"x=4\times\frac32", "x=6"), "0fff", {}, None),
    ((r"\frac{2}{3}x+1=5", "2x+3=15", "2x=12", "x=6"), "0fff", {}, None),
    ((r"\frac{2}{3}x+1=5", "2x+1=15"), "0S", {}, None),
    (("4-3(x-2)=x", "4-3x+6=x", "10=4x", "x=2.5"), "0fff", {}, None),
    (("4-3(x-2)=x", "4-3x-6=x", "-2=4x", r"x=-\frac12"), "0Stt", {}, None),
    (
        (r"\sqrt{x+1}=x-1", "x+1=x^2-2x+1", "0=x^2-3x", "x(x-3)=0", r"x=0 \text{ or } x=3", r"x=3 \text{ only}"),
        "0affff", {"task": 'solve'}, True,
    ),
    ((r"\sqrt{x+1}=x-1", "x+1=x^2+1"), "0S", {}, None),
    (("|x-3|<5", "-5<x-3<5", "-2<x<8"), "0ff", {"task": 'solve'}, True),
    (("|x-3|>5", r"x-3>5 \text{ or } x-3<-5", r"x>8 \text{ or } x<-2"), "0ff", {"task": 'solve'}, True),
    (("|x-3|>5", "x-3>5", "x>8"), "0lf", {"task": 'solve'}, False),
    (("|x-3|>5", "-5<x-3<5"), "0S", {}, None),
    ((r"\frac{x+1}{x-2}>0", r"x<-1 \text{ or } x>2"), "0f", {"task": 'solve'}, None),
    (("x^2-4x-5<0", "(x-5)(x+1)<0", "-1<x<5"), "0ff", {"task": 'solve'}, None),
    (("x^2-4x-5<0", "(x-5)(x+1)<0", r"x<5 \text{ or } x<-1"), "0f.", {"task": 'solve'}, None),
    (("3^{x+1}=81", "3^{x+1}=3^4", "x+1=4", "x=3"), "0fff", {}, None),
    (("3^{x+1}=81", "x+1=27"), "0S", {}, None),
    ((r"\log_3(x+4)=2", "x+4=9", "x=5"), "0ff", {}, None),
    ((r"\log_3(x+4)=2", "x+4=8"), "0S", {}, None),
    (
        (r"4^x-5\cdot2^x+4=0", "y=2^x", "y^2-5y+4=0", "(y-1)(y-4)=0", r"y=1 \text{ or } y=4", r"x=0 \text{ or } x=2"),
        "0fffff", {"task": 'solve'}, True,
    ),
    ((r"4^x-5\cdot2^x+4=0", "y=2^x", "2y-5y+4=0"), "0fS", {}, None),
    (("x^2+y^2=10", "y=3x", "x^2+9x^2=10", "10x^2=10", "x^2=1", r"x=\pm1", r"y=\pm3"), "00fffff", {}, None),
    (("x^2+y^2=10", "y=3x", "x^2+3x^2=10"), "00S", {}, None),
    (
        ("f(x)=x^3-2x^2-5x+6", "f(1)=1-2-5+6=0", r"(x-1) \text{ is a factor}", "f(x)=(x-1)(x^2-x-6)",
         "f(x)=(x-1)(x-3)(x+2)", "x=1,3,-2"),
        "0f.ff?", {}, None,
    ),
    (("a+4d=14", "a+9d=29", "5d=15", "d=3", "a=2"), "00fff", {}, None),
    (("a+4d=14", "a+9d=29", "5d=15", "d=3", "a=5"), "00ffS", {}, None),
    (
        (r"\frac{a}{1-r}=8", "ar=2", r"a=\frac2r", r"\frac{2}{r(1-r)}=8", "1=4r(1-r)", "4r^2-4r+1=0", r"r=\frac12",
         "a=4"),
        "00ffffff", {}, None,
    ),
    (("(1+2x)^5", r"=1+\binom51(2x)+\binom52(2x)^2+...", "=1+10x+40x^2+..."), "0..", {}, None),
    ((r"\frac{1}{x}+\frac{1}{x+1}", r"=\frac{x+1+x}{x(x+1)}", r"=\frac{2x+1}{x(x+1)}"), "0ff", {}, None),
    ((r"\cos^2x-\sin^2x", r"=1-2\sin^2x"), "0f", {}, None),
    ((r"\cos^2x-\sin^2x", r"=1-\sin^2x"), "0S", {}, None),
    ((r"y=\frac{k}{x}", r"6=\frac{k}{2}", "k=12", r"y=\frac{12}{x}", r"y=\frac{12}{3}=4"), "0?ff?", {}, None),
    (("5:x=2:8",), ".", {}, None),
    ((r"x=-b\pm\sqrt{b^2-4ac}",), "0", {}, None),
    (("3x-2y=4", r"\text{gradient}=\frac32"), "0?", {}, None),
    (("3x-2y=4", "2y=3x-4", r"y=\frac32x-2", r"m=\frac32"), "0ff?", {}, None),
    ((r"x>2 \text{ or } x<-2", "|x|>2"), "0f", {}, None),
    ((r"5<2x+1\le11 \text{ and } x \text{ is an integer}", r"4<2x\le10", r"2<x\le5", "x=3,4,5"), "0ff?", {}, None),
]


@pytest.mark.parametrize(("lines", "verdicts", "options", "correct"), CASES)
def test_verdicts(lines: tuple[str, ...], verdicts: str, options: dict[str, object], correct: bool | None) -> None:
    check(lines, verdicts, options, correct)
