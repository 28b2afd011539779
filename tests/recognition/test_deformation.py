"""Bent symbols: what stays, what moves, and by how much; and hands that write training lines."""

from __future__ import annotations

import random

import numpy as np
import pytest

from recognition.training.bank import Shape, SymbolBank
from recognition.training.deformation import TERMS, bending, frayed, rebent
from recognition.training.layout import draw_line
from recognition.training.style import Style, varied_style

CIRCLE = np.stack([np.cos(np.linspace(0, 6.2, 40)), np.sin(np.linspace(0, 6.2, 40))], 1).astype(np.float32)


def test_no_bend_changes_nothing() -> None:
    assert np.array_equal(rebent(CIRCLE, np.zeros((2, TERMS), np.float32)), CIRCLE)


def test_a_shear_is_a_shear() -> None:
    coefficients = np.zeros((2, TERMS), np.float32)
    coefficients[0, 1] = 0.5  # x gains half of y
    expected = CIRCLE @ np.array(((1, 0), (0.5, 1)), np.float32)
    assert rebent(CIRCLE, coefficients) == pytest.approx(expected, abs=1e-6)
    assert rebent(CIRCLE, np.repeat(coefficients[None], len(CIRCLE), 0)) == pytest.approx(expected, abs=1e-6)


def test_the_middle_of_a_symbol_stays() -> None:
    bends = bending(1, 0.2, np.random.default_rng(3))[0]
    assert rebent(np.zeros((1, 2), np.float32), bends) == pytest.approx(np.zeros((1, 2)))


def test_frayed_ends_stay_near_the_stroke() -> None:
    rng = np.random.default_rng(0)
    line = np.stack([np.linspace(0, 100, 30), np.zeros(30)], 1).astype(np.float32)
    lengths = [float(np.ptp(frayed(line, rng)[:, 0])) for _ in range(300)]
    assert min(lengths) >= 70 and max(lengths) <= 100 + 2 * 16
    assert len({round(length, 3) for length in lengths}) > 20
    dot = line[:2]
    assert frayed(dot, rng) is dot


def test_prolific_writers_do_not_crowd_out_the_others() -> None:
    """100 instances of one writer against one of another: the root makes it 10 to 1."""
    arrays = {
        "bank_points": np.arange(404, dtype=np.int16).reshape(202, 2),
        "bank_offsets": np.arange(0, 203, 2), "bank_groups": np.arange(102),
        "bank_tokens": np.full(101, 4, np.uint8), "bank_hands": np.array([0] * 100 + [1], np.int16),
    }  # fmt: skip
    bank = SymbolBank.of_pack(arrays)
    (token,) = bank.ink
    rare = bank.ink[token][-1]
    rng = random.Random(0)
    drawn = sum(bank.from_ink(token, rng) is rare for _ in range(4000)) / 4000
    assert drawn == pytest.approx(1 / 11, abs=0.02)
    assert len(bank.hands) == 1, "only who left enough symbols counts as a hand"


def test_a_line_in_one_hand_takes_that_hand() -> None:
    def shape(height: float) -> Shape:
        points = np.array(((0, 0), (10, height), (20, 0)), np.float32)
        return Shape(points, np.array((0, 3), np.int64))

    bank = SymbolBank({"x": [shape(9.0)] * 5}, hands=[{"x": [shape(3.0)]}])
    rng = random.Random(1)
    from recognition.reader.tokens import parse

    style = Style(hand=bank.hands[0], size_spread=0, aspect_spread=0, baseline_spread=0)
    drawing = draw_line(parse("x x"), bank, style, rng)
    sizes = [np.ptp(drawing.points[a:b], axis=0) for a, b in zip(drawing.offsets, drawing.offsets[1:], strict=False)]
    assert all(size[0] / size[1] > 2.4 for size in sizes), "3 high and 20 wide, within the widest allowed"
    assert {bool(varied_style(bank, rng).hand) for _ in range(50)} == {True, False}
