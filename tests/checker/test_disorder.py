"""Disordered lines: no crash and no hang, and the same lines for the same seed."""

from random import Random

from checker.measure.disorder import disordered_lines
from checker.measure.fuzz import measure_disorder


def test_disordered_lines_neither_crash_nor_hang() -> None:
    found = measure_disorder(2_000, seed=11, real=("3(2x-1)=\\frac{x}{4}+7", "=x^2-4x+4", "y^2=9", "\\sqrt{2x}=x"))
    assert found["crashes"] == 0, found["crashed"]
    assert found["over_2s_cpu"] == 0, found["slow"]
    assert sum(found["verdicts"].values()) == 2_000


def test_same_seed_gives_the_same_lines_of_every_kind() -> None:
    first, second = (list(disordered_lines(400, Random(4), ())) for _ in range(2))
    assert first == second
    assert any("\x00" in line for line in first)
    assert any(len(line) == 10_000 for line in first)
    assert any("9^{9^{9}}" in line for line in first)
