"""Bars and what looks like them: a bar that a letter touches, the foot of a 2, a row that is no printed line."""

from __future__ import annotations

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from recognition.page.fractions import find_root, join_touching_fractions
from recognition.page.light import ink_mask
from recognition.page.pieces import Pieces, find_pieces
from recognition.page.rulings import find_rulings

LETTER = 40.0
Box = tuple[int, int, int, int]

SEVEN, EIGHT = (104, 60, 130, 98), (100, 102, 136, 148)  # the bar at the top of the 8 is a part of it
SHORT_BAR = (100, 102, 136, 108)
EQUALS, PLUS = [(50, 94, 76, 100), (50, 108, 76, 114)], (160, 90, 190, 120)


def touched(boxes: list[Box], *bars: tuple[Box, int]) -> tuple[list[int], dict[int, float]]:
    """What is in one block with the first bar's piece, and the level of each piece's bar."""
    parent = list(range(len(boxes)))
    rows = np.array([(*bar, piece) for bar, piece in bars], np.float64)
    found = join_touching_fractions(np.array(boxes, np.float64), LETTER, parent, rows)
    root = find_root(parent, bars[0][1])
    return [i for i in range(len(boxes)) if find_root(parent, i) == root], found


def test_short_bar_that_the_denominator_touches_keeps_its_numerator() -> None:
    assert touched([SEVEN, EIGHT, *EQUALS, PLUS], (SHORT_BAR, 1))[0] == [0, 1]


def test_the_next_fraction_of_the_row_does_not_tell_against_a_short_bar() -> None:
    halves, bar = [(204, 60, 230, 98), (200, 102, 236, 148)], (200, 102, 236, 108)
    assert touched([SEVEN, EIGHT, *EQUALS, *halves], (SHORT_BAR, 1), (bar, 5))[0] == [0, 1]


@pytest.mark.parametrize("beside", [
    [],  # nothing tells that a row stands at the level of the stroke
    [(60, 104, 90, 148), (150, 104, 180, 148)],  # a 5 in a row of digits, a digit of the row above over it
    [*EQUALS, (60, 104, 90, 148), (150, 104, 180, 148), (184, 104, 210, 148)],
])  # fmt: skip
def test_top_of_a_digit_below_another_row_is_no_bar(beside: list[Box]) -> None:
    assert touched([SEVEN, EIGHT, *beside], (SHORT_BAR, 1)) == ([1], {})


def test_long_foot_of_a_2_is_no_bar_over_the_next_row() -> None:
    two, foot = (100, 100, 170, 144), (102, 138, 170, 144)
    row = [(186, 116, 214, 124), (222, 100, 244, 144)]
    below = [(98, 164, 128, 208), (134, 164, 166, 208), (186, 164, 214, 208)]
    assert touched([two, *row, *below], (foot, 0)) == ([0], {})


def test_long_bar_that_the_numerator_touches_keeps_its_denominator() -> None:
    numerator, below = (100, 60, 180, 106), (120, 116, 150, 156)
    assert touched([numerator, below, *EQUALS, PLUS], ((100, 100, 180, 106), 0))[0] == [0, 1]
    assert touched([numerator, below], ((100, 100, 180, 106), 0))[0] == [0, 1]  # alone in its row


def test_longest_bar_of_a_piece_is_its_axis() -> None:
    """A 2 with its bar touches the longer bar below: the row stands at the level of that one."""
    piece, seven, eight = (100, 100, 340, 152), (150, 56, 176, 96), (200, 162, 230, 202)
    bars = (((100, 146, 340, 152), 0), ((145, 100, 185, 106), 0))
    minus, equals = (200, 100, 230, 106), (50, 146, 80, 152)
    assert touched([piece, seven, eight, minus, equals], *bars) == ([0, 1, 2], {0: 149.0})


def _pieces(*strokes: list[tuple[int, int]]) -> Pieces:
    """Strokes drawn beside three letters that tell the height, 40 pixels."""
    page = np.full((300, 600), 255, np.uint8)
    for x in (400, 450, 500):
        cv2.rectangle(page, (x, 100), (x + 26, 136), 0, 5)
    for stroke in strokes:
        cv2.polylines(page, [np.array(stroke)], False, 0, 5)
    return find_pieces(255 - page, page)


def test_strokes_within_pieces_are_bars_at_an_end_or_where_they_are_long() -> None:
    seven = [(100, 100), (134, 100), (112, 140)]
    assert [bar[2] - bar[0] > 30 for bar in _pieces(seven).bars if bar[0] < 300] == [True]
    middle = [(116, 60), (116, 140), (116, 100), (100, 100), (134, 100)]  # a plus
    assert not [bar for bar in _pieces(middle).bars if bar[0] < 300]


def test_long_bar_that_falls_is_a_bar_of_its_piece() -> None:
    falling = [(60, 100), (340, 120), (200, 110), (200, 160)]
    bars = [bar for bar in _pieces(falling).bars if bar[0] < 300]
    assert len(bars) == 1 and bars[0][2] - bars[0][0] > 260
    struck = [*falling, (200, 60)]
    assert not [bar for bar in _pieces(struck).bars if bar[0] < 300 and bar[2] - bar[0] > 260]


def _ruled_once() -> NDArray[np.uint8]:
    page = np.full((1400, 1100), 250, np.uint8)
    cv2.line(page, (0, 500), (1099, 500), 90, 3, cv2.LINE_AA)
    return page


def test_lone_printed_line_has_no_breaks() -> None:
    page = _ruled_once()
    assert len(find_rulings(page)) == 1
    page[495:506, np.arange(1100) % 40 < 10] = 250  # minus signs and feet of letters in a long row
    assert find_rulings(page) == []


def test_ink_on_crowded_squares_is_seen() -> None:
    page = np.full((960, 960), 250, np.uint8)
    printed = np.zeros(page.shape, bool)
    for at in range(20, 960, 40):
        printed[at : at + 7] = printed[:, at : at + 7] = True
    written = np.zeros(page.shape, np.uint8)
    for y in range(220, 700, 20):
        cv2.line(written, (200, y), (760, y), 255, 6)
    page[printed] = 205
    cleaned = np.where(written > 0, 120, 250).astype(np.uint8)
    page = np.where(written > 0, 120, page).astype(np.uint8)
    inside = np.full_like(page, 255)
    ink = ink_mask(cleaned, inside, grain=page, printed=printed).mask
    assert np.count_nonzero(ink[written > 0]) > 0.95 * np.count_nonzero(written)
    assert not ink[written == 0].any()
