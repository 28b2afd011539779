"""Claims for all values: expanded sides, terms that differ, counterexamples, conditions."""

from checker.report import LineReport, Report, Working
from checker.working import judge


def claim(line: str) -> tuple[Report, LineReport]:
    told = judge(Working((line,), task="identity"))
    return told, told.lines[0]


def test_false_identity_is_multiplied_out_and_refuted() -> None:
    # (x+1)^2 is x^2 + 2x + 1; at x = 1 that is 4, and x^2 + 1 is 2.
    told, line = claim("(x+1)^2=x^2+1")
    assert told.final.correct is False
    assert line.witness == {"x": "1"}
    assert line.reason == (
        "Not true for all values: at x = 1 the sides are 4 and 2. "
        "Multiplied out, the left is x^2+2x+1 and the right is x^2+1. Only the left has 2x."
    )


def test_terms_that_differ_are_told_of_both_sides_with_capital_letters_kept() -> None:
    # (A-2)^2 is A^2 - 4A + 4.
    _, line = claim("(A-2)^2=A^2-2A+4")
    assert line.reason.endswith("Only the left has -4A and only the right has -2A.")


def test_condition_of_a_true_identity() -> None:
    assert claim(r"\frac{x^2-1}{x-1}=x+1")[1].reason == r"True for all values with x \ne 1."
    assert claim("2(x+1)=2x+2")[1].reason == "True for all values."


def test_claim_that_holds_for_positive_values_only() -> None:
    # The root of a square is never negative: at x = -1 the sides are 1 and -1.
    told, line = claim(r"\sqrt{x^2}=x")
    assert told.final.correct is False
    assert line.witness == {"x": "-1"}
    assert r"It holds for x \ge 0, as sampled" in line.reason
