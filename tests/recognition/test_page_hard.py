"""Hard photos: coarse grain in shadow, printed lines that fall, joined columns, edges that are none."""

from itertools import pairwise

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from recognition.page import find_lines
from recognition.page.grouping import group_lines
from recognition.page.gutters import split_at_gutters
from recognition.page.light import background, evened, ink_mask
from recognition.page.order import reading_order
from recognition.page.pieces import Pieces
from recognition.page.rulings import find_rulings
from recognition.training.scenes import make_scene

LETTER = 40.0
BLUE, GREY, GREEN = (34, 46, 120), (60, 60, 64), (24, 128, 66)


def _signs(x: float, y: float, count: int) -> list[list[float]]:
    """Boxes of signs 30 wide and 40 high, 20 apart."""
    return [[x + 50 * k, y, x + 50 * k + 30, y + 40] for k in range(count)]


def _split(*rows: list[list[float]]) -> list[list[float]]:
    """Left edges of the lines of each row after parting; a row is given as one line."""
    boxes = np.array([box for row in rows for box in row])
    edges = np.cumsum([0, *(len(row) for row in rows)])
    groups = [list(range(a, b)) for a, b in pairwise(edges)]
    parted = split_at_gutters(groups, boxes, LETTER)
    starts: list[list[float]] = [[] for _ in rows]
    for group in parted:
        row = int(np.searchsorted(edges, group[0], "right")) - 1
        starts[row].append(float(boxes[group, 0].min()))
    return [sorted(row) for row in starts]


def test_two_columns_are_parted_where_most_lines_run_across():
    joined = [_signs(100, y, 6) + _signs(520, y, 5) for y in (100, 220, 340, 460)]
    assert _split(*joined) == [[100, 520]] * 4


def test_number_that_hangs_out_left_of_the_second_column_parts_it():
    # The number stands 140 pixels, three and a half letters, left of the rest of its column.
    first = _signs(100, 100, 6) + _signs(480, 100, 1) + _signs(620, 100, 4)
    whole = [_signs(x, y, 5) for y in (220, 340, 460) for x in (100, 620)]
    assert _split(first, *whole)[0] == [100, 480]


def test_question_number_of_the_second_column_stays_with_its_line():
    numbered = _signs(560, 100, 1) + _signs(680, 100, 5)
    left = [_signs(100, y, 6) for y in (100, 220, 340)]
    right = [_signs(680, y, 5) for y in (220, 340)]
    assert _split(numbered, *left, *right)[0] == [560]


def test_side_working_is_parted_from_the_line_beside_it():
    beside = _signs(100, 100, 7) + _signs(620, 100, 4)
    rest = [_signs(100, y, 7) for y in (250, 400, 550)]
    assert _split(beside, _signs(620, 180, 4), *rest)[0] == [100, 620]


def test_prose_is_not_parted_where_a_gap_is_a_little_wider():
    def prose(y: float, gaps: tuple[int, ...]) -> list[list[float]]:
        row, x = [], 100.0
        for gap in (*gaps, 0):
            row += _signs(x, y, 3)
            x = row[-1][2] + gap
        return row
    wide = prose(100, (48, 50, 72, 48))
    left = [_signs(100, y, 7) for y in (200, 300)]
    right = [_signs(640, y, 5) for y in (200, 300)]
    assert len(_split(wide, *left, *right)[0]) == 1


def test_grain_in_a_shadow_is_no_ink():
    rng = np.random.default_rng(5)
    light = np.where(np.arange(1200) < 500, 40.0, 230.0)[None, :].repeat(900, 0)
    page = np.clip(light + cv2.GaussianBlur(rng.normal(0, 9, (900, 1200)), (0, 0), 0.7), 0, 255).astype(np.uint8)
    for y in (200, 400, 600):
        cv2.putText(page, "4x + 7 = 19", (80, y), cv2.FONT_HERSHEY_SIMPLEX, 1.6, 8, 4, cv2.LINE_AA)
        cv2.putText(page, "3y - 2", (700, y), cv2.FONT_HERSHEY_SIMPLEX, 1.6, 60, 4, cv2.LINE_AA)
    even = evened(page, background(page))
    mask = ink_mask(even, np.full_like(even, 255)).mask
    assert np.count_nonzero(mask[650:, :480]) < 0.002 * 250 * 480
    assert np.count_nonzero(mask[160:205, 80:480]) > 2000 and np.count_nonzero(mask[160:205, 700:900]) > 1000


@pytest.mark.parametrize("slope", [-0.09, 0.0, 0.09])
def test_printed_lines_that_fall_are_found(slope: float):
    page = np.full((1400, 1100), 250, np.uint8)
    heights = np.arange(160, 1240, 70)
    for y in heights:
        cv2.line(page, (0, int(y - 550 * slope)), (1099, int(y + 549 * slope)), 190, 2, cv2.LINE_AA)
    found = [r for r in find_rulings(page) if not r.upright]
    at = np.array([np.interp(550, r.xs, r.ys) for r in found])
    for y in heights:
        nearest = int(np.abs(at - y).argmin())
        assert at[nearest] == pytest.approx(y, abs=2)
        ends = np.interp([100, 1000], found[nearest].xs, found[nearest].ys)
        assert ends == pytest.approx([y - 450 * slope, y + 450 * slope], abs=3)


def _squared() -> NDArray[np.uint8]:
    page = np.full((1200, 1500, 3), (250, 249, 244), np.uint8)
    for at in range(30, 1500, 52):
        cv2.line(page, (at, 0), (at, 1199), (178, 206, 190), 2, cv2.LINE_AA)
        cv2.line(page, (0, at), (1499, at), (178, 206, 190), 2, cv2.LINE_AA)
    return page


def test_green_marks_on_green_squares_are_a_marking():
    page = _squared()
    for y in (150, 290, 430, 570, 710):
        cv2.putText(page, "4x + 7 = 19", (120, y), cv2.FONT_HERSHEY_SIMPLEX, 1.6, GREY, 4, cv2.LINE_AA)
        cv2.polylines(page, [np.array([[470, y - 20], [490, y], [530, y - 50]])], False, GREEN, 5, cv2.LINE_AA)
    found = find_lines(page)
    assert len(found.lines) == 5 and max(line.box.x + line.box.w for line in found.lines) < 470
    assert {mark.colour for mark in found.marks} == {"green"}


def test_word_struck_out_by_thick_strokes_is_a_line():
    page = np.full((900, 1200, 3), 252, np.uint8)
    for y in (150, 270, 390, 510):
        cv2.putText(page, "x = 12 + 7", (120, y), cv2.FONT_HERSHEY_SIMPLEX, 1.6, BLUE, 5, cv2.LINE_AA)
    for left, right in ((380, 362), (362, 380)):
        cv2.line(page, (105, left), (400, right), BLUE, 9, cv2.LINE_AA)
    struck = [line.struck_out for line in find_lines(page).lines]
    assert struck == [False, False, True, False]


def test_row_of_writing_is_no_edge_of_the_sheet():
    # The sheet fills the photo but for a strip of table; one row is as long as the sheet is wide.
    scene = make_scene(300048, "hard")
    found = find_lines(scene.photo.image)
    assert found.sheet is None or min(y for _, y in found.sheet) < 0.1 * found.size[1]
    assert len(found.lines) == len(scene.lines)


def _rows(count: int) -> NDArray[np.uint8]:
    page = np.full((60 + 70 * count, 900, 3), 250, np.uint8)
    texts = ("4x + 7 = 19", "2(y - 3) = 74", "17k - 2 = 5k", "7(a + 4) = 27")
    for row in range(count):
        text = f"{texts[row % 4]} {texts[(row + 1) % 4]}"
        cv2.putText(page, text, (60, 70 + 70 * row), cv2.FONT_HERSHEY_SIMPLEX, 1.3, BLUE, 3, cv2.LINE_AA)
    return page


def test_page_is_turned_only_where_all_its_parts_agree():
    upside_down = np.ascontiguousarray(np.rot90(_rows(6), 2))
    assert find_lines(upside_down).turns == 2
    assert find_lines(np.vstack([_rows(2), upside_down])).turns == 0


def _order(*outlines: tuple[float, float, float, float]) -> list[int]:
    return [group[0] for group in reading_order(np.array(outlines), [[i] for i in range(len(outlines))], LETTER)]


def test_left_column_is_read_first_where_one_line_of_it_nearly_reaches_the_right_one():
    rows = [(100.0, 100.0 + 90 * k, (480.0 if k == 2 else 300.0), 140.0 + 90 * k) for k in range(4)]
    right = [(500.0, 110.0 + 90 * k, 800.0, 150.0 + 90 * k) for k in range(4)]
    assert _order(*rows, *right) == list(range(8))


def test_question_across_both_columns_is_read_before_them():
    question = (100.0, 20.0, 700.0, 60.0)
    rows = [(100.0, 100.0 + 90 * k, 300.0, 140.0 + 90 * k) for k in range(3)]
    right = [(500.0, 110.0 + 90 * k, 800.0, 150.0 + 90 * k) for k in range(3)]
    answer = (100.0, 500.0, 700.0, 540.0)
    assert _order(question, *rows, *right, answer) == list(range(8))


def _pieces(boxes: list[list[float]], letter: float) -> Pieces:
    corners = np.array(boxes)
    area = 0.3 * (corners[:, 2:] - corners[:, :2]).prod(axis=1)
    ones = np.ones(len(corners))
    return Pieces(
        np.zeros((1, 1), np.int32), corners, area, 150 * ones, 6 * ones, letter, 6.0, np.zeros((0, 5)),
        np.zeros(len(corners), bool),
    )


def test_word_in_joined_letters_is_no_power_of_the_line_below():
    # A word of 141 x 56 pixels, all of it one piece, 18 pixels above a line.
    word = [215.0, 709.0, 356.0, 765.0]
    line = [[221.0, 783.0, 389.0, 828.0], [391.0, 782.0, 418.0, 830.0], [417.0, 786.0, 536.0, 840.0]]
    assert sorted(group_lines(_pieces([word, *line], 44.0))) == [[0], [1, 2, 3]]


def test_row_that_breaks_at_a_fraction_without_its_bar_is_one_line():
    """The bar was lost with a printed line: what stood above it goes right, what hung from it goes left."""
    left, right = _signs(100.0, 200.0, 4), _signs(370.0, 200.0, 4)
    fraction = [[308.0, 174.0, 348.0, 214.0], [292.0, 226.0, 332.0, 266.0]]
    assert group_lines(_pieces([*left, *fraction, *right], LETTER)) == [list(range(10))]


def test_rows_one_below_the_other_stay_apart():
    first, second = _signs(100.0, 200.0, 5), _signs(310.0, 270.0, 5)
    assert len(group_lines(_pieces([*first, *second], LETTER))) == 2
