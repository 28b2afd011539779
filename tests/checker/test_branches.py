"""Branches solved one after another, alternatives, hidden quadratics, the formula with its numbers."""

import pytest

from tests.checker.verdict_letters import check

# Worked by hand (common practice, no source). The letters are those of `verdict_letters`.
CASES = [
    (("|2x-1|=5", "2x-1=5", "2x=6", "x=3", "2x-1=-5", "2x=-4", "x=-2"), "0ffffff", {"task": 'solve'}, True),
    (
        ("|2x-1|=5", r"2x-1=5 \text{ or } 2x-1=-5", r"2x=6 \text{ or } 2x=-4", r"x=3 \text{ or } x=-2"),
        "0fff", {"task": 'solve'}, True,
    ),
    (("|2x-1|=5", "2x-1=5", "2x=6", "x=3", "2x-1=-5", "2x=-6", "x=-3"), "0ffffSt", {"task": 'solve'}, False),
    (("(x-2)(x+5)=0", "x-2=0", "x=2", "x+5=0", "x=-5"), "0ffff", {"task": 'solve'}, True),
    (("(x-2)(x+5)=0", "x-2=0, x+5=0", "x=2, x=-5"), "0ff", {"task": 'solve'}, True),
    (("(x-2)(x+5)=0", "x=2, x=5"), "0S", {"task": 'solve'}, False),
    (("(x-2)(x+5)=0", "x_1=2, x_2=-5"), "0f", {"task": 'solve'}, True),
    (("(x-2)(x+5)=0", "x_1=2", "x_2=-5"), "0ff", {"task": 'solve'}, True),
    (("x^2=16", r"x=\pm4"), "0f", {"task": 'solve'}, True),
    (("x^2=16", "x=4, -4"), "0f", {"task": 'solve'}, True),
    (("x^2=16", "x=4", "x=-4"), "0ff", {"task": 'solve'}, True),
    (("x^2=16", r"x=4 \text{ and } x=-4"), "0f", {"task": 'solve'}, True),
    (("x^2=16", "x=8"), "0S", {"task": 'solve'}, False),
    (("(x+1)^2=9", r"x+1=\pm3", r"x=-1\pm3", r"x=2 \text{ or } x=-4"), "0fff", {"task": 'solve'}, True),
    (("(x+1)^2=9", r"x+1=\pm3", "x=2"), "0fl", {"task": 'solve'}, False),
    (("(x+1)^2=9", r"x+1=\pm3", r"x+1=3 \text{ or } x+1=-3", r"x=2 \text{ or } x=-2"), "0ffS", {"task": 'solve'}, None),
    (("(x+1)^2=9", "x+1=3", "x=2", "x+1=-3", "x=-4"), "0ffff", {"task": 'solve'}, True),
    (
        ("x^2-4x+1=0", r"x=\frac{4\pm\sqrt{16-4}}{2}", r"=\frac{4\pm\sqrt{12}}{2}", r"=2\pm\sqrt{6}"),
        "0ffS", {"task": 'solve'}, None,
    ),
    (("x^2-4x+1=0", r"x=\frac{4\pm\sqrt{16+4}}{2}"), "0S", {"task": 'solve'}, None),
    (
        ("x^2-4x+1=0", r"x=\frac{-(-4)\pm\sqrt{(-4)^2-4(1)(1)}}{2(1)}", r"x=\frac{4\pm\sqrt{12}}{2}",
         r"x=3.73 \text{ or } x=0.27"),
        "0fff", {"task": 'solve'}, None,
    ),
    (("x^2-4x+1=0", r"x=\frac{-b\pm\sqrt{b^2-4ac}}{2a}", r"x=\frac{4\pm\sqrt{12}}{2}"), "0?f", {"task": 'solve'}, None),
    (
        ("x^2-4x+1=0", "a=1, b=-4, c=1", "b^2-4ac=16-4=12", r"x=\frac{4\pm\sqrt{12}}{2}"),
        "0?ff", {"task": 'solve'}, None,
    ),
    (("x^2-4x+1=0", "a=1, b=-4, c=1", "b^2-4ac=-16-4"), "0?S", {"task": 'solve'}, None),
    (("x^2-4x+1=0", "b^2-4ac=16-4=12"), "0f", {}, None),
    (("x^2-4x+1=0", "b^2-4ac=16+4=20"), "0.", {}, None),
    (("x^2-4x+1=0", r"\Delta=(-4)^2-4(1)(1)=12"), "0?", {}, None),
    (("x^2+kx+9=0", "k^2-36=0", r"k=\pm6"), "0?f", {}, None),
    (("x^2+kx+9=0", "b^2-4ac=0", "k^2-36=0", "k=6"), "0??l", {}, None),
    (("kx^2+4x+1=0", "16-4k>0", "k<4"), "0?f", {}, None),
    (("kx^2+4x+1=0", "16-4k>0", "k>4"), "0?S", {}, None),
    (("x^2+6x+2", "=(x+3)^2-9+2", "=(x+3)^2-7"), "0ff", {}, None),
    (("x^2+6x+2=0", "(x+3)^2-7=0", "(x+3)^2=7", r"x+3=\pm\sqrt7", r"x=-3\pm\sqrt7"), "0ffff", {"task": 'solve'}, True),
    (("x^2+6x+2=0", "(x+3)^2-7=0", "(x+3)^2=7", r"x+3=\pm\sqrt7", r"x=3\pm\sqrt7"), "0fffS", {"task": 'solve'}, False),
    (
        (r"2^{2x}-6\cdot2^x+8=0", r"\text{let } u=2^x", "u^2-6u+8=0", "(u-2)(u-4)=0", r"u=2 \text{ or } u=4",
         r"2^x=2 \text{ or } 2^x=4", r"x=1 \text{ or } x=2"),
        "0ffffff", {"task": 'solve'}, True,
    ),
    (
        ("x^4-5x^2+4=0", r"\text{let }u=x^2", "u^2-5u+4=0", "(u-1)(u-4)=0", "u=1,4", r"x=\pm1,\pm2"),
        "0fffff", {"task": 'solve'}, True,
    ),
    (("x^4-5x^2+4=0", r"\text{let }u=x^2", "u^2-5u+4=0", "u=1,4", "x=1,2"), "0fffl", {"task": 'solve'}, False),
    (
        ("x^4-5x^2+4=0", "u=x^2", "u^2-5u+4=0", "u=1,4", r"x^2=1 \text{ or } x^2=4", r"x=\pm1 \text{ or } x=\pm2"),
        "0fffff", {"task": 'solve'}, None,
    ),
    (
        ("x^4-5x^2+4=0", "(x^2-1)(x^2-4)=0", r"x^2=1 \text{ or } x^2=4", r"x=\pm1 \text{ or } x=\pm2"),
        "0fff", {"task": 'solve'}, True,
    ),
    ((r"x-5\sqrt{x}+6=0", r"y=\sqrt{x}", "y^2-5y+6=0", "y=2,3", "x=4,9"), "0ffff", {"task": 'solve'}, True),
    ((r"x-5\sqrt{x}+6=0", r"y=\sqrt{x}", "y^2-5y+6=0", "y=2,3", "x=4,6"), "0fffS", {"task": 'solve'}, None),
    (
        ("e^{2x}-3e^x+2=0", "(e^x-1)(e^x-2)=0", r"e^x=1 \text{ or } e^x=2", r"x=0 \text{ or } x=\ln2"),
        "0fff", {"task": 'solve'}, True,
    ),
    (
        ("e^{2x}-3e^x+2=0", "(e^x-1)(e^x-2)=0", r"e^x=1 \text{ or } e^x=2", r"x=1 \text{ or } x=\ln2"),
        "0ffS", {"task": 'solve'}, None,
    ),
    (
        ("x^3-6x^2+11x-6=0", "(x-1)(x^2-5x+6)=0", r"x=1 \text{ or } x^2-5x+6=0", r"x=1 \text{ or } (x-2)(x-3)=0",
         "x=1,2,3"),
        "0ffff", {"task": 'solve'}, True,
    ),
    (("x^2-x-6=0", "(x-3)(x+2)=0", r"x=3 \text{ or } -2"), "0ff", {"task": 'solve'}, True),
    (
        ("x^2-x-6=0", "(x-3)(x+2)=0", r"\text{Either } x-3=0 \text{ or } x+2=0", r"x=3 \text{ or } x=-2"),
        "0fff", {"task": 'solve'}, True,
    ),
    (("|x-1|=|2x+3|", "x-1=2x+3", "x=-4", "x-1=-(2x+3)", "3x=-2", r"x=-\frac23"), "0fffff", {"task": 'solve'}, True),
    (("|x-1|=|2x+3|", "x-1=2x+3", "x=-4", "x-1=-2x+3", "3x=4", r"x=\frac43"), "0.fStt", {"task": 'solve'}, None),
    (("x(x+3)=0", "x=0", "x=-3"), "0ff", {"task": 'solve'}, True),
    (("x(x+3)=0", "x+3=0", "x=-3"), "0lf", {"task": 'solve'}, False),
    (("(x-1)(x-2)(x-3)=0", "x-1=0", "x=1", "x-2=0", "x=2", "x-3=0", "x=3"), "0ffffff", {"task": 'solve'}, True),
    (
        (r"\sqrt{2x+3}=x", "2x+3=x^2", "x^2-2x-3=0", "(x-3)(x+1)=0", r"x=3 \text{ or } x=-1", r"x=3 \text{ only}"),
        "0affff", {"task": 'solve'}, True,
    ),
    ((r"\sqrt{2x+3}=x", "2x+3=x^2", "x^2-2x-3=0", "(x-3)(x+1)=0", r"x=3, x\ne-1"), "0afff", {"task": 'solve'}, True),
    (("x^2>4", r"x>2 \text{ or } x<-2"), "0f", {"task": 'solve'}, True),
    (("x^2>4", r"x>\pm2"), "0u", {}, None),
    (("x^2=4x", "x=4", "x=0"), "0ff", {"task": 'solve'}, True),
    (("x^2-9=0", "(x-3)(x+3)=0", "x-3=0", "x=3", "x+3=0", "x=-3", "x=3,-3"), "0ffffff", {"task": 'solve'}, True),
    (("x^2-9=0", r"\text{Case 1: } x=3", r"\text{Case 2: } x=-3"), "0ff", {"task": 'solve'}, True),
    (
        ("2x^2+5x-3=0", r"x=\frac{-5+\sqrt{49}}{4}", r"x=\frac12", r"x=\frac{-5-\sqrt{49}}{4}", "x=-3"),
        "0ffff", {"task": 'solve'}, True,
    ),
    (
        ("2x^2+5x-3=0", r"x=\frac{-5+\sqrt{49}}{4}", r"x=\frac{-5-\sqrt{49}}{4}", r"x=\frac12, x=-3"),
        "0fff", {"task": 'solve'}, True,
    ),
    (
        ("2x^2+5x-3=0", r"x=\frac{-5+\sqrt{49}}{4}", r"x=\frac{-5-\sqrt{49}}{4}", r"x=\frac12, x=3"),
        "0ffS", {"task": 'solve'}, False,
    ),
]


@pytest.mark.parametrize(("lines", "verdicts", "options", "correct"), CASES)
def test_verdicts(lines: tuple[str, ...], verdicts: str, options: dict[str, object], correct: bool | None) -> None:
    check(lines, verdicts, options, correct)
