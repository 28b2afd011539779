"""Laws over random workings: valid rewriting is never accused, one changed coefficient is always caught with its term.

The rewritings are rules of school algebra (common practice, no source); FLINT multiplies out and factorises.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker.equality import equal
from checker.report import Report, Working
from checker.syntax import parse_expression
from checker.verdict import Yes
from checker.working import judge

pytest.importorskip("flint", reason="python-flint is not installed; it comes with the extra test")

from tests.checker.random_algebra import Tree, beyond, latex
from tests.checker.random_workings import (
    Condition,
    Planted,
    chains_beyond,
    conditions,
    elimination,
    expressions,
    planted_in_equations,
    planted_in_expressions,
    square_completed,
)


def fixed(count: int) -> settings:
    return settings(max_examples=count, deadline=None, derandomize=True, database=None,
                    suppress_health_check=list(HealthCheck))


def judged(*lines: str) -> Report:
    return judge(Working(lines))


def verdicts(told: Report) -> set[str]:
    return {line.verdict for line in told.lines}


def chain(trees: list[Tree]) -> list[str]:
    return [latex(trees[0]), *("=" + latex(tree) for tree in trees[1:])]


@fixed(150)
@given(expressions())
def test_rewritten_polynomials_follow(trees: list[Tree]) -> None:
    # Laws, then multiplied out, factorised, or the terms in another order.
    assert verdicts(judged(*chain(trees))) == {"start", "follows"}


@fixed(100)
@given(chains_beyond(beyond))
def test_rewritten_roots_logarithms_and_angles_are_not_accused(trees: list[Tree]) -> None:
    # Undecided where a law leaves no real value, as e^(ln(-1)) does.
    told = judged(*chain(trees))
    assert verdicts(told) <= {"start", "follows", "undecided"}
    assert all("value" in line.reason for line in told.lines if line.verdict == "undecided")


@fixed(100)
@given(conditions())
def test_equations_and_inequalities_rearranged_are_not_accused(lines: list[Condition]) -> None:
    # Terms moved, sides swapped, both multiplied or divided by a number (which may turn the sign), the same added.
    told = judged(*(line.latex for line in lines))
    assert verdicts(told) <= {"start", "follows", "undecided"}
    # Undecided: no real numbers satisfy the line before, letters are added to a line of numbers, or the time ran out.
    assert all(any(words in one.reason for words in ("No values", "A letter is new", "ran out"))
               for one in told.lines if one.verdict == "undecided")


@pytest.mark.parametrize("half", range(-4, 5))
@pytest.mark.parametrize("root", [Fraction(1), Fraction(3), Fraction(5, 2), Fraction(10, 3)])
def test_square_completed(half: int, root: Fraction) -> None:
    # x^2 - 2hx + h^2 - r^2 = (x - h)^2 - r^2, so that x = h + r or x = h - r.
    told = judge(Working(tuple(square_completed(half, root)), task="solve"))
    assert verdicts(told) == {"start", "follows"}
    assert (told.final.correct, told.final.form_ok) == (True, True)


@fixed(40)
@given(
    st.tuples(*(st.integers(-9, 9).filter(bool) for _ in range(6)))
    .filter(lambda six: six[0] * six[3] != six[1] * six[2])
)
def test_elimination(six: tuple[int, ...]) -> None:
    a, b, c, d, x, y = six
    told = judge(Working(tuple(elimination(((a, b), (c, d)), x, y)), task="solve"))
    assert verdicts(told) <= {"start", "follows"}
    assert told.final.correct is True


@pytest.mark.parametrize("plantings", [planted_in_expressions(), planted_in_equations()], ids=["value", "equation"])
def test_changed_term_is_caught_with_what_makes_the_step_valid(plantings: st.SearchStrategy[Planted]) -> None:
    count: Counter[str] = Counter()

    @fixed(100)
    @given(plantings)
    def caught(planted: Planted) -> None:
        count[term_named(planted)] += 1

    caught()
    # Else the term could be right with another change: 3x for -2x lacks a -5x, or a number moved to the other side.
    assert count["elsewhere"] <= 0.08 * count.total(), count


def term_named(planted: Planted) -> str:
    """The slip's place, when the line is caught and explained."""
    told = judged(*planted.lines)
    last = len(planted.lines) - 1
    assert told.first_slip == last
    slip = told.lines[last].slip
    assert slip is not None
    assert judged(*planted.lines[:-1], slip.repaired).lines[last].verdict == "follows"
    start, end = planted.start, planted.start + len(planted.term)
    if slip.span[0] >= end or slip.span[1] <= start:
        return "elsewhere"
    if slip.span != (start, end):
        return "part of it"
    assert isinstance(equal(parse_expression(slip.should_be), parse_expression(planted.should_be)), Yes)
    return "the term"
