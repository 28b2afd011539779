"""The walk over a whole working: first slip, carried error, back on track, misread, final answer."""

import pytest

from checker.report import Report, Working
from checker.working import judge


def report(*lines: str, **options: object) -> Report:
    return judge(Working(lines, **options))  # type: ignore[arg-type]


def verdicts(told: Report) -> list[str]:
    return [line.verdict for line in told.lines]


def test_first_slip_with_term_reason_and_carried_error() -> None:
    # -2t times +4 is -8t; 5t + 8t = 13t follows from the slip.
    told = report("(5-2t)(t+4)", "=5t+20-2t^2+8t", "=-2t^2+13t+20", task="expand")
    assert verdicts(told) == ["start", "slip", "ft"]
    assert told.first_slip == 1
    slip = told.lines[1].slip
    assert slip is not None
    assert (slip.term, slip.span, slip.should_be) == ("+8t", (11, 14), "-8t")
    assert told.lines[1].witness == {"t": "1"}
    assert told.final.correct is False
    assert told.final.expected == "-2t^2-3t+20"


def test_back_on_track_then_follows() -> None:
    told = report("(x+2)(x+3)", "=x^2+5x+5", "=x^2+5x+6", "=x(x+5)+6")
    assert verdicts(told) == ["start", "slip", "back", "follows"]


def test_second_slip() -> None:
    told = report("2(x+3)", "=2x+3", "=2x+4")
    assert verdicts(told) == ["start", "slip", "slip"]
    assert told.first_slip == 1


def test_right_answer_from_wrong_working_is_back() -> None:
    told = report("2x+3=7", "2x=10", "x=2", task="solve")
    assert verdicts(told) == ["start", "slip", "back"]
    assert told.final.correct is True


def test_misread_question_is_said_and_the_rest_judged_as_written() -> None:
    told = report("(x+2)(x-3)", "=x^2-x-6", question="(x+2)(x+3)", task="expand")
    assert verdicts(told) == ["start", "follows"]
    assert "misread" in told.lines[0].reason
    assert told.final.expected == "x^2+5x+6"


def test_first_line_that_goes_on_from_the_question_is_judged_from_it() -> None:
    told = report("=x^2+5x+5", question="(x+2)(x+3)", task="expand")
    assert told.first_slip == 0
    assert told.lines[0].verdict == "slip"


def test_unreadable_line_is_passed_over_and_said() -> None:
    told = report("2x+3=7", "2x=4", "(x", "x=2")
    assert verdicts(told) == ["start", "follows", "unreadable", "follows"]
    assert "At character 3" in told.lines[2].reason
    assert "line 3 could not be read" in told.lines[3].reason


def test_branches_on_lines_of_their_own_complete_each_other() -> None:
    # An open branch turns to "follows" when a later line gives the other.
    told = report("(x-2)(x+3)=0", "x-2=0", "x+3=0", "x=2", "x=-3", task="solve")
    assert verdicts(told) == ["start", "follows", "follows", "follows", "follows"]
    assert told.lines[1].reason == "One branch; the solutions are all there with line 3."
    assert told.first_slip is None
    assert told.final.correct is True


def test_system_by_elimination_and_substitution() -> None:
    told = report("3x+2y=12", "5x-2y=4", "8x=16", "x=2", "y=3")
    assert verdicts(told) == ["start", "start", "follows", "follows", "follows"]
    assert told.lines[2].reason == "From lines 1 and 2 together."
    assert told.final.correct is True


def test_value_put_in_is_undecided_without_it_and_follows_with_it() -> None:
    assert verdicts(report("3x+4", "=3(2)+4", "=10")) == ["start", "undecided", "follows"]
    assert verdicts(report("3x+4", "=3(2)+4", "=10", givens=("x=2",))) == ["start", "follows", "follows"]
    assert verdicts(report("3x+4", "=3(2)+4", "=11", givens=("x=2",))) == ["start", "follows", "slip"]


def test_several_steps_on_one_line() -> None:
    told = report(r"x^2-5x+6=0 \Rightarrow (x-2)(x-3)=0 \Rightarrow x=2 \text{ or } x=4")
    assert told.first_slip == 0
    slip = told.lines[0].slip
    assert slip is not None
    assert (slip.term, slip.should_be) == ("4", "3")


def test_chain_that_is_false_in_itself() -> None:
    told = report("S=2(a+b)=2a+b")
    slip = told.lines[0].slip
    assert slip is not None
    assert slip.repaired == "S=2(a+b)=2a+2b"


def test_division_by_zero_is_said() -> None:
    told = report(r"\frac{1}{0}", "=1")
    assert verdicts(told) == ["start", "undecided"]
    assert "division by zero" in told.lines[0].reason


@pytest.mark.parametrize(
    ("task", "lines", "form_ok"),
    [
        ("expand", ("(x+2)(x+3)", "=x^2+5x+6"), True),
        ("expand", ("(x+2)(x+3)", "=x^2+2x+3x+6"), False),
        ("expand", ("(x+2)(x+3)", "=x(x+5)+6"), False),
        ("factorise", ("2x^2+8x+8", "=2(x+2)^2"), True),
        ("factorise", ("2x^2+8x+8", "=2(x^2+4x+4)"), False),
        ("factorise", ("6s+15", "=3(2s+5)"), True),
        ("factorise", ("4p^2-36", "=(2p-6)(2p+6)"), False),
        ("simplify", (r"\frac{x^2-4}{x-2}", "=x+2"), True),
        ("simplify", (r"\frac{2x}{4y}", r"=\frac{x}{2y}"), True),
        ("simplify", (r"\frac{2x}{4xy}", r"=\frac{x}{2xy}"), False),
        ("solve", ("2x=6", "x=3"), True),
        ("solve", ("4x=6", r"x=\frac{6}{4}"), False),
        ("solve", ("2x-4>6", "x>5"), True),
    ],
)
def test_form_of_the_answer(task: str, lines: tuple[str, ...], form_ok: bool) -> None:
    told = report(*lines, task=task)
    assert told.final.correct is True
    assert told.final.form_ok is form_ok


@pytest.mark.parametrize(
    ("lines", "task", "expected"),
    [
        (("(5-2t)(t+4)",), "expand", "-2t^2-3t+20"),
        (("x^2+7x+10",), "factorise", "(x+2)(x+5)"),
        (("12y-4y^2",), "factorise", "-4y(y-3)"),
        (("x^2-5x+6=0",), "solve", r"x=2 \text{ or } x=3"),
        (("x^2+6x+2=0",), "solve", r"x=-3-\sqrt{7} \text{ or } x=-3+\sqrt{7}"),
        ((r"\frac{x}{x-3}=\frac{3}{x-3}",), "solve", r"\text{no solution}"),
        (("x^2<9",), "solve", "-3<x<3"),
        ((r"x^2\ge 9",), "solve", r"x \le -3 \text{ or } x \ge 3"),
        (("(x+1)^2=x^2+1",), "identity", "not an identity"),
        (("(x+1)^2=x^2+2x+1",), "identity", "true for all values"),
    ],
)
def test_expected_answer_is_worked_out(lines: tuple[str, ...], task: str, expected: str) -> None:
    assert report(*lines, task=task).final.expected == expected


@pytest.mark.parametrize("lines", [(), ("",), ("\x00",), (r"\begin{matrix}",), ("check",), ("=",), ("x" * 30_000,)])
def test_odd_lines_never_raise(lines: tuple[str, ...]) -> None:
    assert len(report(*lines).lines) == len(lines)


@pytest.mark.parametrize(
    ("lines", "repaired"),
    (  # worked by hand: sqrt(9) is not -3, and no logarithm of -2 exists
        ((r"\sqrt{x+7}=x-5", "x+7=x^2-10x+25", r"x=2 \text{ or } x=9"), r"x+7=x^2-10x+25 \text{ and } x\ne 2"),
        ((r"\log_2(x)+\log_2(x-2)=3", r"\log_2(x^2-2x)=3", "x^2-2x=8", r"x=4 \text{ or } x=-2"),
         r"\log_2(x^2-2x)=3 \text{ and } x\ne -2"),
    ),
)  # fmt: skip
def test_gained_solution_that_is_kept_is_to_be_rejected(lines: tuple[str, ...], repaired: str) -> None:
    report = judge(Working(lines=lines, task="solve"))
    assert report.first_slip == 1
    slip = report.lines[1].slip
    assert slip is not None
    assert (slip.kind, slip.repaired) == ("solution-added", repaired)
    assert judge(Working(lines=(lines[0], slip.repaired))).lines[1].verdict == "follows"


def test_gain_at_an_inequality_is_explained_where_a_known_slip_fits() -> None:
    # x^2 < 49 holds between -7 and 7; squaring both sides of an equation is honest and stays without a slip
    line = judge(Working(lines=("x^2<49", "x<7"))).lines[1]
    assert line.verdict == "adds" and line.slip is not None
    assert (line.slip.kind, line.slip.repaired) == ("root-lost", "-7<x<7")
    assert judge(Working(lines=(r"\sqrt{x+7}=x-5", "x+7=x^2-10x+25"))).lines[1].slip is None
