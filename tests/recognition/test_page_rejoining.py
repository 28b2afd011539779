"""Rows that were taken apart, by the boxes of their marks: what belongs together, and what stays a row of its own."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from recognition.page.fractions import rejoin_within

LETTER = 30.0
ROW = [(100 + 40 * n, 100, 125 + 40 * n, 132) for n in range(8)]
FRACTION = [(60, 80, 80, 105), (55, 112, 90, 116), (60, 120, 80, 150)]  # its foot reaches below the row


def rejoined(*rows: list[tuple[int, int, int, int]]) -> list[set[int]]:
    boxes = np.array([box for row in rows for box in row], np.float64)
    ends = np.cumsum([0, *map(len, rows)])
    clusters = [list(range(first, last)) for first, last in pairwise(ends)]
    return sorted((set(row) for row in rejoin_within(boxes, clusters, LETTER)), key=min)


def test_a_denominator_that_fell_out_goes_back() -> None:
    assert rejoined([*FRACTION[:2], *ROW], FRACTION[2:]) == [set(range(2 + len(ROW))), {2 + len(ROW)}]
    tall = [(100, 75, 112, 155)]  # a bracket beside it shows how high the row is
    assert rejoined([*FRACTION[:2], *tall, *ROW[1:]], FRACTION[2:]) == [set(range(11))]


def test_powers_between_brackets_go_back() -> None:
    brackets = [(90, 60, 100, 150), (180, 60, 190, 150), (230, 60, 240, 150), (330, 60, 340, 150)]
    powers = [(195, 62, 205, 80), (250, 70, 320, 92)]
    assert rejoined(brackets, powers) == [set(range(6))]


@pytest.mark.parametrize("other", [
    [(100 + 40 * n, 150, 125 + 40 * n, 182) for n in range(8)],  # the next row
    [(100, 140, 125, 172)],  # a short next row
    [(460 + 40 * n, 100, 485 + 40 * n, 132) for n in range(3)],  # working at the side
    [(80 + 40 * n, 104, 105 + 40 * n, 136) for n in range(4)],  # a wide row that runs past this one's end
])  # fmt: skip
def test_rows_of_their_own_stay(other: list[tuple[int, int, int, int]]) -> None:
    assert len(rejoined(ROW, other)) == 2
