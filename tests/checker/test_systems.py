"""Equations that hold at once: elimination, substitution, wrong lines refuted by the common solutions."""

import pytest

from tests.checker.verdict_letters import check

# Worked by hand (common practice, no source). The letters are those of `verdict_letters`.
CASES = [
    (("x+y=7", "x-y=1", "2x=8", "x=4", "y=3"), "00fff", {"task": 'solve'}, None),
    (("x+y=7", "x-y=1", "2x=6"), "00S", {}, None),
    (("x+y=7", "x-y=1", "2x=6", "x=3", "y=4"), "00Stt", {}, None),
    (("x+y=7", "x-y=1", "2x=8", "x=4", "4+y=7", "y=3"), "00ffff", {}, None),
    (("x+y=7", "x-y=1", "2x=8", "x=4", "4+y=7", "y=11"), "00fffS", {}, None),
    (("2x+3y=12", "3x-y=7", "9x-3y=21", "11x=33", "x=3", "y=2"), "00ffff", {}, None),
    (("2x+3y=12", "3x-y=7", "9x-3y=7", "11x=19"), "00St", {}, None),
    (("2x+3y=12 (1)", "3x-y=7 (2)", r"(2)\times3: 9x-3y=21", "(1)+(3): 11x=33", "x=3"), "00fff", {}, None),
    (("2x+3y=12", "3x-y=7", "9x-3y=21", "7x=9"), "00fS", {}, None),
    (("y=2x+1", "3x+y=11", "3x+2x+1=11", "5x=10", "x=2", "y=5"), "00ffff", {}, None),
    (("y=2x+1", "3x+y=11", "3x+2x+1=11", "5x=12"), "00fS", {}, None),
    (("y=2x+1", "3x+y=11", "3x+2x-1=11"), "00S", {}, None),
    (
        ("y=x+1", "x^2+y^2=25", "x^2+(x+1)^2=25", "2x^2+2x-24=0", "x^2+x-12=0", "(x+4)(x-3)=0",
         r"x=-4 \text{ or } x=3", r"y=-3 \text{ or } y=4"),
        "00ffffff", {}, None,
    ),
    (("y=x+1", "x^2+y^2=25", "x^2+x^2+1=25"), "00S", {}, None),
    (
        ("y=x+1", "x^2+y^2=25", "x^2+(x+1)^2=25", "2x^2+2x-24=0", r"x=-4 \text{ or } x=3", r"y=-3 \text{ or } y=5"),
        "00fffS", {}, None,
    ),
    (("x+y+z=6", "x-y+z=2", "2x+y-z=1", "2y=4", "y=2", "3x=3"), "000fff", {}, None),
    (("x+y+z=6", "x-y+z=2", "2x+y-z=1", "2y=8"), "000S", {}, None),
    (
        ("x+y+z=6", "x-y+z=2", "2x+y-z=1", "2y=4", "y=2", "x+z=4", "2x-z=-1", "3x=3", "x=1", "z=3"),
        "000fffffff", {}, None,
    ),
    (("3x+2y=12, 5x-2y=4", "8x=16", "x=2", "y=3"), "0fff", {}, None),
    (("3x+2y=12, 5x-2y=4", "8x=8"), "0S", {}, None),
    ((r"\begin{cases}x+y=7\\x-y=1\end{cases}", "2x=8"), "0f", {}, None),
    (("x+y=7", "y=7-x", "x-y=1", "x-(7-x)=1", "2x-7=1", "2x=8"), "0f0fff", {}, None),
    (("x+y=7", "x-y=1", "x=7-y", "7-y-y=1", "7-2y=1", "y=3", "x=4"), "00fffff", {}, None),
    (("x+y=7", "x-y=1", "x=7-y", "7-y-y=1", "7-2y=1", "y=4", "x=3"), "00fffSt", {}, None),
    (("xy=6", "x+y=5", "x(5-x)=6", "5x-x^2=6", "x^2-5x+6=0", "x=2,3", "y=3,2"), "00fffff", {}, None),
    (("x+2y=8", "x+y=5", "y=3", "x=2"), "00ff", {}, None),
    (("x+2y=8", "x+y=5", "y=13"), "00S", {}, None),
    (("x+2y=8", "x+y=5", "3y=3"), "00S", {}, None),
    (("2x+y=10", "x+y=6", "x=4, y=2"), "00f", {}, None),
    (("2x+y=10", "x+y=6", "x=4, y=3"), "00S", {}, None),
    (("2x+y=10", "x+y=6", "(4,2)"), "00?", {}, None),
    (("y=x^2", "y=x+2", "x^2=x+2", "x^2-x-2=0", "(x-2)(x+1)=0", "x=2, x=-1", "y=4, y=1"), "00fffff", {}, None),
    (("y=x^2", "y=x+2", "x^2=x-2"), "00S", {}, None),
    (("y=x^2", "y=x+2", "x^2=x+2", "x^2-x-2=0", "(x-2)(x+1)=0", "x=2, x=-1", "y=4, y=3"), "00ffffS", {}, None),
    (("5p+2q=16", "3p-2q=0", "8p=16", "p=2", "10+2q=16", "2q=6", "q=3"), "00fffff", {}, None),
    (("5p+2q=16", "3p-2q=0", "8p=16", "p=2", "10+2q=16", "2q=26"), "00fffS", {}, None),
    (("a+b=5", "a^2+b^2=13", "2ab=12", "ab=6"), "00ff", {}, None),
    ((r"\text{Let } x = \text{cost of a tea}", "2x+y=5", "x+y=3", "x=2"), "n00f", {}, None),
    (("4x+3y=7", "2x-3y=5", "6x=12", "x=2", "3y=7-8", r"y=-\frac13"), "00ffff", {}, None),
    (("4x+3y=7", "2x-3y=5", "2x=2"), "00S", {}, None),
    (("4x+3y=7", "2x+3y=5", "2x=2"), "00f", {}, None),
    ((r"\frac{x}{2}+\frac{y}{3}=4", "x-y=3", "3x+2y=24", "3x-3y=9", "5y=15", "y=3", "x=6"), "00fffff", {}, None),
    (("x+y=7", "x+y=9", "0=2", r"\text{no solution}"), "00ff", {}, None),
    (("y=3x-1", "y=5-x", "3x-1=5-x", "4x=6", "x=1.5", "y=3.5"), "00ffff", {}, None),
    (("y=3x-1", "y=5-x", "3x-1=5-x", "2x=6"), "00fS", {}, None),
    (("3x+2y=4", "2x+y=3", "4x+2y=6", "x=2", "y=-1"), "00fff", {}, None),
    (("3x+2y=4", "2x+y=3", "4x+2y=6", "-x=2"), "00fS", {}, None),
    (("3x+2y=4", "2x+y=3", "4x+2y=6", "-x=-2", "x=2"), "00fff", {}, None),
    (("x+3=7", "y-2=5", "x=4", "y=7"), "0?ff", {}, None),
    (("x+y=7", "2x+2y=15"), "0S", {}, None),
    (("3x+2y=6", "2y=6+3x"), "0S", {}, None),
    (("3x+2y=6", "2y=6-3x", "y=3-3x"), "0fS", {}, None),
    (("x+y=7", "x-y=1", "2x=8", "x=4", "x+y=7", "y=3", "x=4, y=3"), "00fffff", {}, None),
    (("x+y=7", "2x-y=2", "3x=9", "x=3", "3+y=7", "y=4", "(3,4)"), "00ffff?", {}, None),
]


@pytest.mark.parametrize(("lines", "verdicts", "options", "correct"), CASES)
def test_verdicts(lines: tuple[str, ...], verdicts: str, options: dict[str, object], correct: bool | None) -> None:
    check(lines, verdicts, options, correct)
