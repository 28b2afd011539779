"""Two tables of cases: what "follows" means for each pair of kinds of line; worked by hand (common practice)."""

import pytest

from checker.report import Report, Working
from checker.working import judge

# The lines, then the verdict on the last of them.
CASES = [
    # expanding, collecting, fractions
    (("(k-5)^2", "=k^2-10k+25"), "follows"),
    (("(k-5)^2", "=k^2-25"), "slip"),
    (("(k-5)^2", "=k^2+25"), "slip"),
    (("-3(2m-4)", "=-6m-12"), "slip"),
    (("5-(n-3)", "=5-n-3"), "slip"),
    ((r"\frac{6a+9}{3}", "=2a+9"), "slip"),
    ((r"\frac{6a+9}{3}", "=2a+3"), "follows"),
    ((r"\frac{p^2-9}{p-3}", "=p+3"), "follows"),
    (("4d-d", "=4"), "slip"),
    ((r"2\frac12\times4", "=10"), "follows"),
    (("-3^2", "=9"), "slip"),
    ((r"\frac1a+\frac1b", r"=\frac{2}{a+b}"), "slip"),
    # powers, roots, logs, sines
    ((r"2^x\cdot2^3", "=2^{3x}"), "slip"),
    (("(2b^3)^2", "=4b^6"), "follows"),
    (("(2b^3)^2", "=2b^6"), "slip"),
    (("b^{-2}", "=-b^2"), "slip"),
    ((r"\sqrt{a^2+b^2}", "=a+b"), "slip"),
    ((r"\sqrt{50}", r"=5\sqrt2"), "follows"),
    ((r"\log(ab)", r"=\log a\cdot\log b"), "slip"),
    ((r"\sin 2\theta", r"=2\sin\theta"), "slip"),
    ((r"\sin 2\theta", r"=2\sin\theta\cos\theta"), "follows"),
    ((r"\ln(x^2)", r"=2\ln x"), "follows"),  # both defined for x > 0 only
    ((r"\sqrt{x^2-6x+9}", "=x-3"), "slip"),  # at x = 0: 3 and -3
    ((r"\sqrt{18x^3}", r"=3x\sqrt{2x}"), "follows"),  # both defined for x >= 0 only
    ((r"\sqrt{18x^2}", r"=3x\sqrt2"), "slip"),
    # equations: same set, lost, gained
    (("w^2=7w", "w=7"), "loses"),
    (("w^2=49", "w=7"), "loses"),
    (("w^2=49", r"w=\pm7"), "follows"),
    ((r"\sqrt{y+2}=y", "y+2=y^2"), "adds"),
    (("x^2-5x+6=0", "(x-2)(x-3)=0"), "follows"),
    (("(x-2)(x-3)=0", r"x=-2 \text{ or } x=-3"), "slip"),
    (("(x-2)(x-3)=2", r"x-2=2 \text{ or } x-3=2"), "slip"),
    (("3x+2=11", "3x=13"), "slip"),
    ((r"\frac{x}{4}=x-6", "x=4x-6"), "slip"),
    ((r"\lvert q\rvert=4", "q=4"), "loses"),
    ((r"x=\frac{-6\pm\sqrt{36-20}}{2}", r"x=-1 \text{ or } x=-5"), "follows"),
    (("(x+3)^2=16", "x+3=4"), "loses"),
    ((r"\frac{x+1}{x}=2", "x+1=2x"), "follows"),
    (("x^2=5x", "x^2-5x=0", "x(x-5)=0", "x=5"), "loses"),
    (("x^2=5x", r"\frac{x^2}{x}=5"), "loses"),
    (("x^2=5x", r"\frac{x^2}{x}=5", "x=5"), "follows"),
    ((r"\sqrt{x+7}=x-5", "x+7=x^2-10x+25"), "adds"),
    ((r"\sqrt{x+7}=x-5", "x+7=x^2-10x+25", "(x-2)(x-9)=0", "x=9"), "follows"),
    ((r"\frac{x}{x-3}=\frac{3}{x-3}", "x=3"), "adds"),
    ((r"\frac{x^2-4}{x-2}=7", "x+2=7"), "follows"),
    ((r"\frac{x^2-4}{x-2}=4", "x+2=4"), "adds"),
    ((r"\lvert x-1\rvert=2x+4", r"x-1=2x+4 \text{ or } x-1=-2x-4"), "adds"),
    ((r"\ln x+\ln(x-3)=\ln 10", "x(x-3)=10"), "adds"),
    ((r"\ln(x^2)=4", r"2\ln x=4"), "loses"),
    (("(x-4)^{2}=(2x+1)^{2}", "x-4=2x+1"), "loses"),
    (("x^3=8x^2", "x=8"), "loses"),
    (("x^3=27", "x=3"), "follows"),
    (("x^2=-9", r"x=\pm3i"), "follows"),
    (("x^2+6x+2=0", "(x+3)^2-7=0", r"x+3=\sqrt7"), "loses"),
    (("(x+2)^2-(x-2)^2=8x", "x=0"), "loses"),  # true for every x
    (("x+1=x+3", "0=2"), "follows"),
    (("x+1=x+3", "0=2", "x=2"), "slip"),
    (("ax=b", r"x=\frac ba"), "follows"),
    (("a(x-1)=a", "x=2"), "follows"),
    (("4x=20", "x=5=10-5"), "follows"),
    (("6x-9", "6x-9=3(2x-3)"), "follows"),
    # inequalities
    (("-2h<8", "h<-4"), "slip"),
    (("-2h<8", "h>-4"), "follows"),
    ((r"\frac1x>2", "1>2x"), "adds"),
    (("x^2<9", "x<3"), "adds"),
    (("x^2>9", "x>3"), "loses"),
    (("x^2>9", r"x>\pm3"), "undecided"),
    ((r"-x\ge 4", r"x\le -4"), "follows"),
    ((r"2<5-x\le 9", r"-3<-x\le 4"), "follows"),
    ((r"2<5-x\le 9", r"-3<-x\le 4", r"-4\le x<3"), "follows"),
    ((r"\lvert 2x-3\rvert<5", "2x-3<5"), "adds"),
    # several equations, names
    (("x+y=7", "x-y=1", "2x=8"), "follows"),
    (("x+y=10", "xy=21", "x^2+y^2=58"), "follows"),
    (("3x+2y=12", "5x-2y=4", "8x=16", "x=2", "y=3"), "follows"),
    (("2^{2x}-6\\cdot 2^x+8=0", "u^2-6u+8=0"), "undecided"),
    ((r"\text{let }u=2^x", "2^{2x}-6\\cdot 2^x+8=0", "u^2-6u+8=0"), "follows"),
    ((r"\text{let }u=2^x", r"u=2 \text{ or } u=4", r"x=1 \text{ or } x=2"), "follows"),
    # decimals
    ((r"y=\frac{2}{7}", "y=0.286"), "follows"),
    ((r"y=\frac{2}{7}", "y=0.285"), "follows"),
    ((r"y=\frac{2}{7}", "y=0.29"), "follows"),
    ((r"y=\frac{2}{7}", "y=0.287"), "slip"),
]


def report(*lines: str, **options: object) -> Report:
    return judge(Working(lines, **options))  # type: ignore[arg-type]


@pytest.mark.parametrize(("lines", "verdict"), CASES, ids=lambda value: value if isinstance(value, str) else value[-1])
def test_verdict_on_the_last_line(lines: tuple[str, ...], verdict: str) -> None:
    assert report(*lines).lines[-1].verdict == verdict


def test_condition_given_makes_a_root_follow() -> None:
    # x > 5 makes x - 3 positive, so the root of its square is x - 3 itself.
    assert report(r"\sqrt{x^2-6x+9}", "=x-3", givens=("x>5",)).lines[1].verdict == "follows"


def test_equals_signs_that_run_on_are_notation_not_a_slip() -> None:
    # 7 times 3 is 21, not 25; but 21 + 4 = 25 is what was meant.
    told = report(r"7\times 3=21+4=25")
    assert told.first_slip is None
    assert "run on" in told.lines[0].reason


def test_extra_root_that_stays_makes_the_answer_wrong() -> None:
    told = report(r"\sqrt{x+7}=x-5", "x+7=x^2-10x+25", r"x=2 \text{ or } x=9", task="solve")
    assert told.first_slip == 1
    assert told.final.correct is False
    assert told.final.expected == "x=9"


def test_mixed_number_read_as_a_product_is_said() -> None:
    line = report(r"2\frac12\times4", "=4").lines[1]
    assert line.verdict == "follows"
    assert "product" in line.reason


def test_lost_root_counts_as_first_slip_only_when_solving_and_unrepaired() -> None:
    assert report("x^2=5x", "x=5").first_slip is None
    assert report("x^2=5x", "x=5", task="solve").first_slip == 1
    assert report("x^2=5x", "x=5", "x=0", task="solve").first_slip is None
