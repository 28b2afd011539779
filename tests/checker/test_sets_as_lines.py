"""Intervals, lists in braces, sets by a condition and "no solution" as lines of a working."""

import pytest

from tests.checker.verdict_letters import check

# Worked by hand (common practice, no source). The letters are those of `verdict_letters`.
CASES = [
    (("x^2-x-6<0", r"x\in(-2,3)"), "0f", {}, None),
    ((r"x^2-x-6\le0", r"(x-3)(x+2)\le 0", r"x\in[-2,3]"), "0ff", {}, None),
    ((r"-2<x\le3", r"x\in(-2,3]"), "0f", {}, None),
    ((r"-2<x\le3", r"x\in[-2,3]"), "0a", {}, None),
    (("x^2>9", r"x\in(-\infty,-3)\cup(3,\infty)"), "0f", {}, None),
    (("x^2>9", r"(-\infty,-3)\cup(3,\infty)"), "0f", {}, None),
    (("x^2>9", "(-3,3)"), "0S", {}, None),
    (("2x>4", r"\{x:x>2\}"), "0f", {}, None),
    (("2x>4", r"\{x: x<2\}"), "0S", {}, None),
    (("2x>4", r"\{x\mid x>2\}"), "0f", {}, None),
    (("2x>4", r"\{x \in \mathbb{R} : x>2\}"), "0f", {}, None),
    (("(x-2)(x-3)=0", r"S=\{2,3\}"), "0f", {}, None),
    (("(x-2)(x-3)=0", r"x\in\{2,3\}"), "0f", {}, None),
    (("(x-2)(x-3)=0", r"\{2,3\}"), "0f", {}, None),
    (("(x-2)(x-3)=0", r"S=\{-2,-3\}"), "0S", {}, None),
    (("x^2+1=0", r"\emptyset"), "0f", {}, None),
    (("x^2+1=0", r"x\in\emptyset"), "0f", {}, None),
    (("x^2+1=0", r"\text{no solution}"), "0f", {}, None),
    (("x^2+1=0", r"\text{no real solutions}"), "0f", {}, None),
    (("x^2-1=0", r"\text{no real solutions}"), "0S", {}, None),
    (("x^2-1=0", r"S=\emptyset"), "0S", {}, None),
    ((r"x^2\ge0", r"x\in\mathbb{R}"), "0f", {}, None),
    ((r"x^2\ge0", r"\text{all real }x"), "0?", {}, None),
    (("x^2>0", r"x\in\mathbb{R}"), "0a", {}, None),
    (("x^2>0", r"x\ne0"), "0f", {}, None),
    (("x^2>0", r"x\in\mathbb{R}\setminus\{0\}"), "0f", {}, None),
    (("3<2x+1<7", "1<x<3", r"x\in\left(1,3\right)"), "0ff", {}, None),
    ((r"|x-2|\ge 3", r"x\le -1 \text{ or } x\ge5", r"(-\infty,-1]\cup[5,\infty)"), "0ff", {}, None),
    ((r"|x-2|\ge 3", r"x\in(-\infty,-1)\cup(5,\infty)"), "0l", {}, None),
    ((r"x\in(1,4)", "1<x<4"), "0f", {}, None),
    ((r"x>1 \text{ and } x<4", "1<x<4"), "0f", {}, None),
    (("x+1>2", r"(1,\infty)"), "0f", {}, None),
    (("x+1>2", r"\left(1,\infty\right)"), "0f", {}, None),
    ((r"\{x:-1<x<2\}", r"x\in(-1,2)"), "0f", {}, None),
    ((r"\{x:x<-1\}\cup\{x:x>4\}", r"x<-1 \text{ or } x>4"), "0f", {}, None),
    (("x^2-3x-4>0", "(x-4)(x+1)>0", r"\{x:x<-1\}\cup\{x:x>4\}"), "0ff", {}, None),
    ((r"x>1,\ x<4", r"x\in(1,\infty)\cap(-\infty,4)"), "0f", {}, None),
    (("2x+5=2x+7", "5=7", r"\text{no solutions}"), "0ff", {}, None),
    (("2(x+1)=2x+2", r"x\in\mathbb{R}"), "0f", {}, None),
    (("x<5", r"x\in\mathbb{Z}"), "0?", {}, None),
    ((r"-3\le2x<6,\ x\in\mathbb{Z}", "x=-1,0,1,2"), "0?", {}, None),
    (("x^2=4", r"\{-2,2\}"), "0f", {}, None),
    (("x^2=4", r"\{2\}"), "0l", {}, None),
    (("x^2=4", r"S=\{\pm2\}"), "0f", {}, None),
    (("x^2=4", r"L=\{-2;2\}"), "0?", {}, None),
    ((r"x\ge -2", r"[-2,\infty)"), "0f", {}, None),
    (("x>3", r"x\in[3,\infty)"), "0a", {}, None),
    ((r"-2<x\leqslant3", r"x \in \left(-2, 3\right]"), "0f", {}, None),
    ((r"x^2-5x+6\le0", r"2\le x\le3"), "0f", {}, None),
    (("x^2-5x+6>0", "2>x>3"), "0S", {}, None),
    (("x^2-5x+6>0", "x<2, x>3"), "0f", {}, None),
    (("x^2-5x+6>0", r"x<2 \text{ and } x>3"), "0?", {}, None),
    (("x^2-5x+6<0", r"x>2 \text{ and } x<3"), "0f", {}, None),
    (("3-2x>7", "-2x>4", "x<-2", r"x\in(-\infty,-2)"), "0fff", {}, None),
    (("3-2x>7", "-2x>4", "x>-2"), "0fS", {}, None),
    ((r"x\neq 2", r"x\in\mathbb{R}\setminus\{2\}"), "0f", {}, None),
]


@pytest.mark.parametrize(("lines", "verdicts", "options", "correct"), CASES)
def test_verdicts(lines: tuple[str, ...], verdicts: str, options: dict[str, object], correct: bool | None) -> None:
    check(lines, verdicts, options, correct)
