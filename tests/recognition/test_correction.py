"""Correcting the lines that were found: only touched lines come back as new crops, and they hold the right ink."""

from functools import cache

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from recognition.correction import add, drop, merge, redraw, reorder, split
from recognition.errors import InputError
from recognition.ink import Ink, InkCutter, Stroke, strokes_to_lines
from recognition.page import FoundPage, LineCrop, LineCutter, find_lines
from recognition.page.found import map_points
from recognition.result import Box
from recognition.training.page_benchmark import simulated_page

ROWS = (150, 300, 450)


def _text(page: NDArray[np.uint8], text: str, x: int, y: int, grey: int = 30) -> None:
    cv2.putText(page, text, (x, y), cv2.FONT_HERSHEY_SIMPLEX, 1.6, (grey, grey, grey + 30), 4, cv2.LINE_AA)


@cache
def _drawn() -> tuple[FoundPage, LineCutter]:
    page = np.full((700, 1200, 3), 252, np.uint8)
    for y in ROWS:
        _text(page, "4x + 7 = 19", 120, y)
    return find_lines(page), LineCutter.of(page)


@cache
def _photographed() -> tuple[FoundPage, LineCutter]:
    page = simulated_page(501, kind="ruled")
    return find_lines(page.photo.image), LineCutter.of(page.photo.image)


def _ink_box(crop: LineCrop) -> NDArray[np.float64]:
    """Where the dark pixels of a crop lie on the original: x0, y0, x1, y1."""
    ys, xs = np.nonzero(crop.image < 128)
    points = map_points(np.column_stack([xs, ys]).astype(np.float64), crop.to_original)
    return np.concatenate([points.min(axis=0), points.max(axis=0)])


def test_line_split_upright_gives_left_and_right_part_and_keeps_the_rest():
    found, cutter = _drawn()
    change = split(found.lines, 1, ((257, 200), (257, 350)), cutter)
    assert change.lines[0] == 0 and change.lines[3] == 2 and change.read_again == (1, 2)
    left, right = change.lines[1], change.lines[2]
    assert left.box.x == found.lines[1].box.x and left.box.x + left.box.w < 257 < right.box.x + 3
    assert right.box.x + right.box.w == found.lines[1].box.x + found.lines[1].box.w
    assert _ink_box(left)[2] < 257 < _ink_box(right)[0] + 3


@pytest.mark.parametrize("ends", [((100, 375), (900, 375)), ((900, 375), (100, 375))])
def test_line_split_level_gives_the_upper_part_first(ends):
    found, cutter = _drawn()
    both = merge(found.lines, (1, 2), cutter).lines[1]
    upper, lower = split((found.lines[0], both), 1, ends, cutter).lines[1:]
    assert upper.box == found.lines[1].box and lower.box == found.lines[2].box


def test_split_parts_touching_lines_at_the_cut():
    page = np.full((700, 1200, 3), 252, np.uint8)
    _text(page, "4x + 7 = 19", 120, 200)
    _text(page, "4x = 12", 120, 290)
    cv2.line(page, (140, 150), (140, 290), (30, 30, 60), 4)  # a long stroke ties both lines
    cutter = LineCutter.of(page)
    whole = cutter.within(Box(80, 120, 800, 220))
    upper, lower = cutter.apart(whole.polygon, ((0, 220), (1200, 220)))
    assert upper.box.y + upper.box.h <= 223 and lower.box.y >= 217


def test_cut_beside_the_writing_is_refused():
    found, cutter = _drawn()
    with pytest.raises(InputError, match="leaves one side without writing"):
        split(found.lines, 0, ((20, 0), (20, 600)), cutter)
    with pytest.raises(InputError, match="two ends apart"):
        split(found.lines, 0, ((250, 150), (250, 150)), cutter)


def test_merged_lines_hold_the_ink_of_both_and_of_no_other():
    found, cutter = _photographed()
    change = merge(found.lines, (2, 1), cutter)
    assert change.read_again == (1,) and len(change.lines) == len(found.lines) - 1
    crop = change.lines[1]
    first, second = found.lines[1].box, found.lines[2].box
    expected = (
        min(first.x, second.x), first.y, max(first.x + first.w, second.x + second.w), second.y + second.h
    )  # fmt: skip
    box = crop.box
    assert np.abs(np.array([box.x, box.y, box.x + box.w, box.y + box.h]) - expected).max() <= 2


def test_line_cut_by_its_own_outline_is_the_same_line():
    found, cutter = _photographed()
    for number, line in enumerate(found.lines):
        again = redraw(found.lines, number, line.polygon, cutter).lines[number]
        assert np.abs(np.array(again.box) - np.array(line.box)).max() <= 1
        assert again.image.shape == line.image.shape
        assert np.abs(again.image.astype(int) - line.image).mean() < 0.5
        np.testing.assert_allclose(again.to_original, line.to_original, atol=1e-6)


def test_added_line_comes_where_it_is_read():
    found, cutter = _drawn()
    without = [found.lines[0], found.lines[2]]
    change = add(without, Box(100, 240, 500, 90), cutter)
    assert change.lines[0] == 0 and change.lines[2] == 1 and change.read_again == (1,)
    assert np.abs(np.array(change.lines[1].box) - np.array(found.lines[1].box)).max() <= 1
    assert add(without, Box(100, 240, 500, 90), cutter, at=0).read_again == (0,)


def test_outline_around_ink_that_was_taken_for_a_blot_still_gives_it():
    page = np.full((700, 1200, 3), 252, np.uint8)
    for y in ROWS:
        _text(page, "4x + 7 = 19", 120, y)
    cv2.rectangle(page, (700, 500), (900, 640), (30, 30, 60), -1)
    crop = LineCutter.of(page).within(Box(650, 470, 300, 200))
    assert np.abs(np.array(crop.box) - np.array([700, 500, 201, 141])).max() <= 3


def test_outline_around_nothing_gives_the_bare_picture():
    _, cutter = _drawn()
    crop = cutter.within(Box(700, 560, 300, 100))
    assert not crop.struck_out and crop.image.min() > 200
    assert np.abs(np.array(crop.box) - np.array([700, 560, 300, 100])).max() <= 2


@pytest.mark.parametrize("outline", [Box(5000, 5000, 40, 40), Box(10, 10, 0, 0), ((1, 1), (5, 5)), ((0, 0),) * 4])
def test_outline_beside_the_page_is_refused(outline):
    _, cutter = _drawn()
    with pytest.raises(InputError, match="Draw it around"):
        cutter.within(outline)


def test_dropped_and_reordered_lines_are_not_read_again():
    found, _ = _drawn()
    assert drop(found.lines, (1,)).lines == (0, 2)
    assert reorder(found.lines, (2, 0, 1)).lines == (2, 0, 1)
    assert reorder(found.lines, (2, 0, 1)).read_again == ()
    with pytest.raises(IndexError):
        reorder(found.lines, (0, 0, 1))


def test_lone_line_cannot_be_merged():
    found, cutter = _drawn()
    with pytest.raises(InputError, match="Choose the lines"):
        merge(found.lines, (1, 1), cutter)


def test_picture_of_a_few_pixels_is_refused():
    with pytest.raises(InputError, match="full-size photo"):
        LineCutter.of(np.zeros((4, 4, 3), np.uint8))


def _ink() -> Ink:
    """Three rows of five upright strokes, 10 high, at x = 0, 12, 24, 36, 48 and y = 0, 30, 60."""
    return Ink(tuple(
        Stroke(np.array([[x, y], [x + 2.0, y + 10]], np.float64)) for y in (0, 30, 60) for x in range(0, 60, 12)
    ))  # fmt: skip


def test_ink_is_corrected_by_the_same_functions():
    ink = _ink()
    found = strokes_to_lines(ink)
    cutter = InkCutter.of(ink, found)
    assert [line.numbers for line in found.lines] == [(0, 1, 2, 3, 4), (5, 6, 7, 8, 9), (10, 11, 12, 13, 14)]
    joined = merge(found.lines, (0, 1), cutter)
    assert joined.lines[0].numbers == tuple(range(10)) and joined.lines[1] == 2
    x = found.lines[1].box.x + found.lines[1].box.w * 0.45
    parted = split(found.lines, 1, ((x, 0), (x, 900)), cutter)
    assert [line.numbers for line in parted.lines[1:3]] == [(5, 6), (7, 8, 9)]
    assert redraw(found.lines, 2, found.lines[2].box, cutter).lines[2].numbers == (10, 11, 12, 13, 14)
    added = add(found.lines[:1] + found.lines[2:], found.lines[1].polygon, cutter)
    assert added.read_again == (1,) and added.lines[1].numbers == (5, 6, 7, 8, 9)
    with pytest.raises(InputError, match="no pen stroke within"):
        cutter.within(Box(0, 0, 5, 5))
