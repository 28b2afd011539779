"""Right workings of many kinds: nothing is accused."""

import pytest

from checker.report import Working
from checker.working import judge

# Worked by hand (common practice, no source).
WORKINGS = [
    ("2x+3y=13", "4x-y=5", "y=4x-5", "2x+3(4x-5)=13", "2x+12x-15=13", "14x=28", "x=2", "y=4(2)-5=3"),
    (r"3p+q=10 \quad (1)", r"p-q=2 \quad (2)", "(1)+(2): 4p=12", "p=3", r"\text{Sub into (2): } 3-q=2", "q=1"),
    ("5x+2y=16", "3x+4y=18", "10x+4y=32", r"(3)-(2) \quad 7x=14", "x=2", "y=3"),
    ("y=x^2-4x", "y=2x-5", "x^2-4x=2x-5", "x^2-6x+5=0", "x=1,5", "y=-3,5", "(1,-3),(5,5)"),
    ("x+y=12", "xy=35", "y=12-x", "x(12-x)=35", "x^2-12x+35=0", r"x=5 \text{ or } 7", r"y=7 \text{ or } 5"),
    (r"\text{Cost of pen}=x", "3x+2y=4.10", "x+4y=4.70", "6x+4y=8.20", "5x=3.50", "x=0.70", "y=1"),
    (r"\frac{3}{x}+\frac{4}{y}=2", r"\frac{6}{x}-\frac{4}{y}=1", r"\frac{9}{x}=3", "x=3", "y=4"),
    ("x^2-xy=6", "x-y=2", "x(x-y)=6", "2x=6", "x=3", "y=1"),
    ("a^2-b^2=15", "a-b=3", "(a-b)(a+b)=15", "3(a+b)=15", "a+b=5", "a=4,b=1"),
    ("x-2y=1", "x=1+2y", "3x+y=10", "3(1+2y)+y=10", "3+7y=10", "y=1", "x=3"),
    ("|x+2|=3x", "x+2=3x", "x=1", "x+2=-3x", r"x=-\frac12", r"x=1 \text{ only}"),
    (r"|2x-3|\le5", r"2x-3\le5 \text{ and } 2x-3\ge-5", r"x\le4 \text{ and } x\ge-1", r"-1\le x\le4"),
    ("x(x-2)<0", "0<x<2"),
    ("(x-1)^2>4", r"x-1>2 \text{ or } x-1<-2", r"x>3 \text{ or } x<-1"),
    (r"\frac{1}{x-1}<2", "x-1<2(x-1)^2", "0<2(x-1)^2-(x-1)", "(x-1)(2x-3)>0", r"x<1 \text{ or } x>\frac32"),
    ("x^3-x^2-6x=0", "x(x^2-x-6)=0", "x(x-3)(x+2)=0", "x=0,3,-2"),
    ("x^3=27", r"x=\sqrt[3]{27}", "x=3"),
    (r"x^{-2}=\frac19", "x^2=9", r"x=\pm3"),
    (r"x^{\frac32}=8", r"x=8^{\frac23}", "x=4"),
    (r"\sqrt{x}+6=x", r"\sqrt{x}=x-6", "x=x^2-12x+36", "x^2-13x+36=0", "x=4,9", "x=9"),
    (r"2\sqrt{x}=x-3", "4x=x^2-6x+9", "x^2-10x+9=0", r"x=1 \text{ or } 9", r"x=1: 2\ne-2", "x=9"),
    ("x^2+bx+c=0", r"\text{roots } 2, -5", "(x-2)(x+5)=0", "x^2+3x-10=0", "b=3, c=-10"),
    ("kx^2-4x+k=0", "(-4)^2-4k^2=0", "16=4k^2", "k^2=4", r"k=\pm2"),
    ("x^2+4x+k=(x+2)^2+1", "x^2+4x+k=x^2+4x+5", "k=5"),
    ("2x^2+8x+5", "=2(x^2+4x)+5", "=2[(x+2)^2-4]+5", "=2(x+2)^2-3"),
    ("y=2x^2+8x+5", "y=2(x+2)^2-3", "x=-2", "y=-3"),
    (r"\alpha+\beta=5, \alpha\beta=3", r"\alpha^2+\beta^2=(\alpha+\beta)^2-2\alpha\beta", "=25-6", "=19"),
    (r"\frac{x^2+2x-1}{x-1}=x+3+\frac{2}{x-1}",),
    ("x^3+2x^2-5x-6=(x+1)(x^2+x-6)", "=(x+1)(x+3)(x-2)"),
    ("p(x)=2x^3+kx^2-7x-6", "p(-1)=0", "-2+k+7-6=0", "k=1"),
    (
        r"\sin^2x+\cos^2x=1", r"\sin x=\frac35", r"\frac{9}{25}+\cos^2x=1", r"\cos^2x=\frac{16}{25}",
        r"\cos x=\pm\frac45",
    ),
    (r"\sin2x=\sqrt3\cos2x", r"\tan2x=\sqrt3", r"2x=60^\circ,240^\circ", r"x=30^\circ,120^\circ"),
    (
        r"2\cos(x+30^\circ)=1 \quad 0\le x\le360^\circ", r"\cos(x+30^\circ)=\frac12", r"x+30^\circ=60^\circ,300^\circ",
        r"x=30^\circ,270^\circ",
    ),
    (r"\tan^2x-3\tan x+2=0", r"(\tan x-1)(\tan x-2)=0", r"\tan x=1 \text{ or } \tan x=2"),
    (
        r"6\sin^2x+\cos x-4=0", r"6(1-\cos^2x)+\cos x-4=0", r"6\cos^2x-\cos x-2=0", r"(3\cos x-2)(2\cos x+1)=0",
        r"\cos x=\frac23, -\frac12", r"x=48.2^\circ, 311.8^\circ, 120^\circ, 240^\circ",
    ),
    (
        r"4\sin x\cos x=1", r"2\sin2x=1", r"\sin2x=\frac12", r"2x=\frac{\pi}{6}+2n\pi, \frac{5\pi}{6}+2n\pi",
        r"x=\frac{\pi}{12}+n\pi, \frac{5\pi}{12}+n\pi",
    ),
    (r"\sec^2x=2\tan x", r"1+\tan^2x=2\tan x", r"(\tan x-1)^2=0", r"\tan x=1", r"x=45^\circ, 225^\circ"),
    (
        r"y=e^{-x}\sin x", r"\frac{dy}{dx}=-e^{-x}\sin x+e^{-x}\cos x", r"=e^{-x}(\cos x-\sin x)", r"\cos x-\sin x=0",
        r"\tan x=1",
    ),
    (
        r"y=\sqrt{4x+1}", r"y=(4x+1)^{\frac12}", r"\frac{dy}{dx}=\frac12(4x+1)^{-\frac12}\times4",
        r"=\frac{2}{\sqrt{4x+1}}", r"x=2: \frac{dy}{dx}=\frac23",
    ),
    (
        r"y=\frac{x^2}{x-1}", r"\frac{dy}{dx}=\frac{2x(x-1)-x^2}{(x-1)^2}", r"=\frac{x^2-2x}{(x-1)^2}", "x^2-2x=0",
        "x(x-2)=0", r"x=0 \text{ or } 2",
    ),
    (
        "f(x)=x^4-2x^2", "f'(x)=4x^3-4x", "f'(x)=0", "4x(x^2-1)=0", r"x=0,\pm1", "f''(x)=12x^2-4", "f''(0)=-4<0",
        "f''(1)=8>0",
    ),
    (
        "V=x(10-2x)^2", "V=100x-40x^2+4x^3", r"\frac{dV}{dx}=100-80x+12x^2", "12x^2-80x+100=0", "3x^2-20x+25=0",
        "(3x-5)(x-5)=0", r"x=\frac53, 5",
    ),
    (r"\int_1^k(2x-1)\,dx=12", "[x^2-x]_1^k=12", "k^2-k=12", "k^2-k-12=0", "k=4"),
    (r"\int\frac{1}{2x+1}\,dx", r"=\frac12\ln|2x+1|+c"),
    (r"\int\cos^2x\,dx", r"=\frac12\int(1+\cos2x)\,dx", r"=\frac12x+\frac14\sin2x+c"),
    (r"\int_0^4\sqrt{x}\,dx", r"=\left[\frac23x^{\frac32}\right]_0^4", r"=\frac23\times8=\frac{16}{3}"),
    (r"\int x(x+1)^3\,dx", r"=\int(x^4+3x^3+3x^2+x)\,dx", r"=\frac{x^5}{5}+\frac{3x^4}{4}+x^3+\frac{x^2}{2}+c"),
    (r"\frac{dy}{dx}=3y", r"\int\frac1y\,dy=\int3\,dx", r"\ln|y|=3x+c", "y=Ae^{3x}"),
    ("a=5, r=2", r"u_n=5\times2^{n-1}", r"u_8=5\times2^7=640", r"S_8=\frac{5(2^8-1)}{2-1}=1275"),
    ("3, 7, 11, 15", "d=4", "u_n=4n-1", "4n-1=99", "4n=100", "n=25"),
    (r"\frac{n}{2}(2\times3+(n-1)4)=210", "n(6+4n-4)=420", "4n^2+2n-420=0", "2n^2+n-210=0", "(2n+21)(n-10)=0", "n=10"),
    (r"x=3+\sqrt2", r"x^2=11+6\sqrt2", "x^2-6x=-7"),
    ("N=N_0e^{-kt}", r"N=\frac12N_0, t=8", r"\frac12=e^{-8k}", r"k=\frac{\ln2}{8}", "k=0.0866"),
    ("T=20+60e^{-0.1t}", "T=50", "30=60e^{-0.1t}", "e^{-0.1t}=0.5", r"-0.1t=\ln0.5", "t=6.93"),
    ("y=kx^3", r"\text{when } x=2, y=40", "k=5", "y=5x^3", r"\text{when } y=135", "x^3=27", "x=3"),
    (r"\frac{a}{b}=\frac{2}{3}", "3a=2b", "a+b=25", "3a=2(25-a)", "5a=50", "a=10", "b=15"),
    ("x=1.2345", r"x=1.23 \text{ (3 s.f.)}"),
    (r"C=\frac59(F-32)", "F=86", r"C=\frac59(86-32)", "C=30"),
    ("0.3x-1.2=0.6", "0.3x=1.8", "x=6"),
    (r"x+15\%x=92", "1.15x=92", "x=80"),
    (r"\text{SP}=CP\times1.2", r"CP=\frac{60}{1.2}", "=50"),
    ("-x^2+4x+5>0", "x^2-4x-5<0", "-1<x<5"),
    (r"7-3x\ge1", r"6\ge3x", r"x\le2", "x=2,1,0,..."),
    ("(x+3)(x-1)=x(x+4)-5", "x^2+2x-3=x^2+4x-5", "-2x=-2", "x=1"),
    (r"\frac{2x-1}{3}-\frac{x+2}{4}=1", "4(2x-1)-3(x+2)=12", "8x-4-3x-6=12", "5x=22", "x=4.4"),
]


@pytest.mark.parametrize("lines", WORKINGS, ids=lambda lines: lines[0])
def test_nothing_is_accused(lines: tuple[str, ...]) -> None:
    report = judge(Working(lines), budget_s=20.0)
    assert not {line.verdict for line in report.lines} & {"slip", "ft", "back"}
    assert report.first_slip is None
