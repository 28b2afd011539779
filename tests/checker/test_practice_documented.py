"""The documented slips planted afresh: all of them, well formed, wrong where they say so and right when put right."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import sympy

from checker.practice.book import MISSING
from checker.practice.documented import PLANTINGS, DocumentedExercise, documented_exercise, documented_exercises
from checker.report import Working
from checker.working import judge
from tests.checker.test_practice import read

CATALOGUE = Path(__file__).parents[3] / "shared" / "data" / "checker" / "slips.json"
# sums, products and whole powers, which the reference library reads as they stand
PLAIN = (
    "expand-first-only", "expand-minus-second", "expand-subtract-product", "square-sign-of-last", "cube-sum",
    "two-brackets-sign-of-product", "three-terms-one-missed", "factor-sum-only", "factor-product-only",
    "two-squares-coefficient", "collect-unlike", "collect-minus-detached",
)


@pytest.mark.skipif(not CATALOGUE.exists(), reason="the data folder with the documented slips is not here")
def test_every_documented_slip_can_be_planted() -> None:
    # source: the works named in each entry of slips.json
    documented = {entry["id"] for entry in json.loads(CATALOGUE.read_text(encoding="utf-8"))}
    assert documented == set(PLANTINGS)


def test_same_seed_gives_the_same_working() -> None:
    assert documented_exercise("cube-sum", 3) == documented_exercise("cube-sum", 3)
    assert len({documented_exercise("cube-sum", seed).lines for seed in range(20)}) > 10


@pytest.mark.parametrize("name", PLANTINGS)
def test_span_covers_the_wrong_term_and_the_right_line_differs(name: str) -> None:
    for seed in range(25):
        working = documented_exercise(name, seed)
        written = working.lines[working.slip_line]
        start, end = working.slip.span
        assert written[start:end] == ("" if working.slip.term == MISSING else working.slip.term)
        assert written[:start] + working.slip.should_be == working.right[-1][:start + len(working.slip.should_be)]
        assert working.right[:-1] == working.lines[:working.slip_line]
        assert working.right[-1] != written


@pytest.mark.parametrize("name", PLAIN)
def test_reference_library_tells_the_wrong_line_from_the_right_one(name: str) -> None:
    for seed in range(60):
        working = documented_exercise(name, seed)
        if working.setting in ("alone", "beside", "front", "bracket"):
            before, wrong = (read(line) for line in working.lines[working.slip_line - 1:working.slip_line + 1])
            assert sympy.expand(before - wrong) != 0
            assert sympy.expand(before - read(working.right[-1])) == 0


def accused(working: DocumentedExercise) -> bool:
    report = judge(Working(working.right))
    return any(line.verdict in ("slip", "loses", "adds") for line in report.lines)


def test_right_workings_of_the_same_shapes_are_not_accused() -> None:
    assert not [working.right for working in documented_exercises(234, seed=11) if accused(working)]
