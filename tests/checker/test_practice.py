"""Practice workings: well formed, right where they say so, and wrong only at the planted term."""

from __future__ import annotations

from itertools import pairwise

import pytest
import sympy
from sympy.parsing.sympy_parser import implicit_multiplication_application, parse_expr, standard_transformations

from checker.practice import MISSING, TOPICS, exercise, exercises
from checker.practice.terms import Term, collect, write_sum
from checker.report import Working
from checker.working import judge

RULES = (*standard_transformations, implicit_multiplication_application)


def read(line: str) -> sympy.Expr:
    """A line of sums, products and whole powers, read by the reference library."""
    plain = line.removeprefix("=").replace("^", "**").replace("{", "(").replace("}", ")")
    return parse_expr(plain, transformations=RULES)


def test_terms_are_written_as_pupils_write_them() -> None:
    # 5t + 20 - 2t^2 - 8t, no 1 before a letter, no plus in front
    terms = [Term.of(5, "t"), Term.of(20), Term.of(-2, "t", 2), Term.of(-1, "t")]
    assert write_sum(terms) == ("5t+20-2t^2-t", [(0, 2), (2, 5), (5, 10), (10, 12)])


def test_collecting_adds_like_terms() -> None:
    # 5t - 8t = -3t; the square comes first
    terms = [Term.of(5, "t"), Term.of(20), Term.of(-2, "t", 2), Term.of(-8, "t")]
    assert write_sum(collect(terms))[0] == "-2t^2-3t+20"


def test_same_seed_gives_same_working() -> None:
    assert exercise(17) == exercise(17)
    assert exercise(17).lines != exercise(18).lines


def test_unknown_topic_is_named() -> None:
    with pytest.raises(ValueError, match="No topic 'knots'; choose one of: two-brackets"):
        exercise(1, topic="knots")


def test_impossible_kind_is_refused() -> None:
    with pytest.raises(ValueError, match="No working of topic like-terms holds a slip of kind 'sign-moved'"):
        exercise(1, topic="like-terms", kind="sign-moved")


@pytest.mark.parametrize("topic", TOPICS)
def test_each_topic_gives_three_to_eight_lines(topic: str) -> None:
    for seed in range(12):
        assert 3 <= len(exercise(seed, topic=topic).lines) <= 8
        assert 3 <= len(exercise(seed, topic=topic, slipped=False).lines) <= 8


KINDS = ("sign-product", "product", "sign-bracket", "like-terms", "sign-moved", "square-of-sum")
EXPANDING = ("two-brackets", "three-brackets", "several-brackets", "difference-of-products", "like-terms")


@pytest.mark.parametrize("kind", KINDS)
def test_chosen_kind_is_planted(kind: str) -> None:
    found = exercise(5, kind=kind).slip
    assert found is not None and found.kind == kind


def test_span_covers_the_wrong_term() -> None:
    for working in exercises(120, seed=3):
        assert working.slip is not None and working.slip_line is not None
        start, end = working.slip.span
        text = working.lines[working.slip_line][start:end]
        assert text == ("" if working.slip.term == MISSING else working.slip.term)


@pytest.mark.parametrize("topic", EXPANDING)
def test_reference_library_finds_the_slip_where_it_is_planted(topic: str) -> None:
    # sympy expands every line: equal up to the slip, different there, and equal to the slip line after it
    for seed in range(8):
        working = exercise(seed, topic=topic)
        assert working.slip_line is not None
        values = [sympy.expand(read(line)) for line in working.lines]
        same = [sympy.expand(second - first) == 0 for first, second in pairwise(values)]
        assert same == [place != working.slip_line - 1 for place in range(len(same))]


def test_right_workings_are_right_to_the_judge() -> None:
    for working in exercises(54, seed=8, slipped=False):
        assert judge(Working(working.lines)).first_slip is None
