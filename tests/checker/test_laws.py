"""Random cases of the laws of each class, right and with a number changed, beside sympy's values to 50 digits."""

import pytest

from checker.measure.classes import measure_class
from checker.measure.laws import LAWS


@pytest.mark.parametrize("name", LAWS)
def test_no_verdict_is_false_on_random_cases_of_a_law(name: str) -> None:
    # Source: sympy 1.14 as the judge (evalf to 50 digits at random points); the laws are common practice, no source.
    found = measure_class(name, 24, seed=11)
    assert (found["accused"], found["missed"]) == (0, 0), found["listed"]
    assert found["undecided"] <= 1, found["listed"]
    assert found["right"] >= 20
