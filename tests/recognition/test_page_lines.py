"""Finding written lines: on simulated pages with known ink, on real photos, and where nothing is written."""

from __future__ import annotations

from functools import cache
from itertools import pairwise
from pathlib import Path
from typing import Any

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from recognition.errors import Cancelled
from recognition.page import NOTHING_FOUND, LineCrop, find_lines, open_pages
from recognition.page.found import map_points
from recognition.training.page_benchmark import SimulatedPage, matched, profile_boxes, simulated_page
from recognition.training.photo import PhotoStyle, noisy, photograph, shaded, table

_REAL_PAGES = Path(__file__).parents[3] / "shared" / "data" / "pages"
needs_real_pages = pytest.mark.skipif(not _REAL_PAGES.is_dir(), reason="the real photos of ../shared are not here")


@cache
def _page(kind: str, seed: int) -> SimulatedPage:
    return simulated_page(seed, kind=kind)


def _edges(line: LineCrop) -> tuple[float, float, float, float]:
    box = line.box
    return (box.x, box.y, box.x + box.w, box.y + box.h)


@pytest.mark.parametrize(("kind", "seed"), [("plain", 500), ("ruled", 501), ("hard", 503)])
def test_ink_of_a_crop_lies_where_it_was_on_the_photo(kind: str, seed: int):
    # The truth comes from the page maker's own homography, not from the finder.
    page = _page(kind, seed)
    lines = find_lines(page.photo.image).lines
    assert len(lines) == len(page.boxes)
    for line, truth in zip(lines, page.boxes, strict=True):
        assert np.abs(_shift(line, page)).max() <= 2.0
        assert np.abs(np.array(_edges(line)) - np.array(truth)).max() <= 4.0  # blur moves the rim of a stroke


def _shift(line: LineCrop, page: SimulatedPage) -> NDArray[np.float64]:
    """How far the ink of a crop lies from where the page maker put it, in pixels of the photo."""
    h, w = line.image.shape
    true = cv2.warpPerspective(page.ink, np.linalg.inv(line.to_original) @ page.photo.homography, (w, h))
    seen = (255 - line.image).astype(np.float32)
    window = cv2.createHanningWindow((w, h), cv2.CV_32F)
    (dx, dy), _ = cv2.phaseCorrelate(true.astype(np.float32), seen, window)
    spots = map_points(np.array([[w / 2, h / 2], [w / 2 + dx, h / 2 + dy]]), line.to_original)
    return np.asarray(spots[1] - spots[0], dtype=np.float64)


def test_box_and_polygon_agree_with_the_crop():
    page = _page("ruled", 501)
    for line in find_lines(page.photo.image).lines:
        polygon = np.array(line.polygon)
        x0, _, _, y1 = _edges(line)
        assert polygon[:, 0].min() == pytest.approx(x0, abs=1.01)
        assert polygon[:, 1].max() == pytest.approx(y1, abs=1.01)
        h, w = line.image.shape
        corners = map_points(np.array([[0, 0], [w, 0], [w, h], [0, h]], np.float64), line.to_original)
        hull = corners.astype(np.float32).reshape(-1, 1, 2)
        assert all(cv2.pointPolygonTest(hull, (float(x), float(y)), True) > -1.5 for x, y in polygon)
        # Clockwise on a picture, y downwards: the signed area is positive.
        assert sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*polygon, polygon[0]])) > 0


def test_crops_are_grey_on_white_not_black_and_white():
    page = _page("plain", 500)
    for line in find_lines(page.photo.image).lines:
        assert line.image.dtype == np.uint8 and line.image.ndim == 2
        assert np.median(line.image) >= 240 and line.image.min() < 120
        assert len(np.unique(line.image)) > 40


def test_finder_beats_a_projection_profile():
    right = found = plain_right = true = 0
    for kind, seed in (("plain", 500), ("ruled", 501), ("hard", 503)):
        page = _page(kind, seed)
        boxes = [_edges(line) for line in find_lines(page.photo.image).lines]
        right += matched(boxes, page.boxes)
        found += len(boxes)
        plain_right += matched(profile_boxes(page.photo.image), page.boxes)
        true += len(page.boxes)
    assert right >= 0.9 * true and found <= 1.1 * true
    assert plain_right < right


def _drawn(size: tuple[int, int] = (900, 1200)) -> NDArray[np.uint8]:
    return np.full((*size, 3), 252, np.uint8)


def _text(page: NDArray[np.uint8], text: str, x: int, y: int) -> None:
    cv2.putText(page, text, (x, y), cv2.FONT_HERSHEY_SIMPLEX, 1.6, (30, 30, 60), 4, cv2.LINE_AA)


def test_fraction_stays_one_line():
    page = _drawn()
    _text(page, "3x + 12", 300, 200)
    cv2.line(page, (280, 226), (520, 228), (30, 30, 60), 4, cv2.LINE_AA)
    _text(page, "4", 380, 288)
    _text(page, "y =", 120, 245)
    _text(page, "y = 2x - 7", 120, 470)
    lines = find_lines(page).lines
    assert len(lines) == 2
    assert lines[0].box.y < 170 and lines[0].box.y + lines[0].box.h > 280


def test_dots_bars_and_powers_join_their_line():
    page = _drawn()
    for row, y in enumerate((150, 300, 450)):
        _text(page, f"= {row + 3}x", 120, y)
        cv2.putText(page, "2", (260, y - 35), cv2.FONT_HERSHEY_SIMPLEX, 0.8, (30, 30, 60), 3, cv2.LINE_AA)
        _text(page, "- 1.5", 320, y)
    lines = find_lines(page).lines
    assert len(lines) == 3
    for line, y in zip(lines, (150, 300, 450), strict=True):
        assert line.box.x == pytest.approx(122, abs=12)  # the equals sign is in
        assert line.box.y < y - 45  # so is the power
        assert line.box.x + line.box.w > 415  # and what follows the dot


def test_struck_out_line_is_flagged_and_others_are_not():
    page = _drawn()
    for y in (150, 300, 450):
        _text(page, "4x + 7 = 3x - 5", 120, y)
    cv2.line(page, (110, 278), (560, 288), (30, 30, 60), 4, cv2.LINE_AA)
    assert [line.struck_out for line in find_lines(page).lines] == [False, True, False]


def test_left_column_is_read_before_the_right_one():
    page = _drawn()
    for k, y in enumerate((150, 270, 390, 510)):
        _text(page, f"x = {k}", 80, y)
        _text(page, f"y = {k}", 800, y + 6)
    left = [line.box.x < 500 for line in find_lines(page).lines]
    assert left == [True] * 4 + [False] * 4


def test_slanted_line_is_cut_straight():
    page = _drawn()
    _text(page, "3x + 5y - 2 = 14x + 6", 120, 300)
    turn = cv2.getRotationMatrix2D((600, 450), 7, 1.0)
    page = np.asarray(cv2.warpAffine(page, turn, (1200, 900), borderValue=(252, 252, 252)), dtype=np.uint8)
    (line,) = find_lines(page).lines
    # Seven degrees over some 430 pixels make an upright crop more than 50 pixels taller than its letters.
    assert line.image.shape[0] < line.box.h - 20


@cache
def _scenes() -> dict[str, NDArray[Any]]:
    rng = np.random.default_rng(9)
    sheet = np.full((2205, 1554, 3), 248, np.uint8)
    shapes = np.full((1200, 1600, 3), 120, np.uint8)
    for _ in range(60):
        colour, centre, axes = rng.integers(0, 255, 3), rng.integers(0, 1600, 2), rng.integers(20, 300, 2)
        cv2.ellipse(shapes, centre.tolist(), axes.tolist(), float(rng.uniform(0, 180)), 0, 360, colour.tolist(), -1)
    return {
        "blank": np.full((2200, 1600, 3), 250, np.uint8),
        "blank sheet on a table": photograph(sheet, PhotoStyle(), (1600, 2200), rng).image,
        "table": noisy(shaded(table((1600, 1200), rng), 0.7, rng), 3, rng),
        "noise": rng.integers(0, 255, (600, 800, 3), dtype=np.uint8),
        "grainy paper": np.clip(rng.normal(200, 20, (900, 1200, 3)), 0, 255).astype(np.uint8),
        "gradient": np.tile(np.linspace(0, 255, 800), (600, 1))[:, :, None].repeat(3, axis=2).astype(np.uint8),
        "coloured shapes": noisy(cv2.GaussianBlur(shapes, (0, 0), 2), 4, rng),
        "black": np.zeros((500, 500, 3), np.uint8),
    }


@pytest.mark.parametrize("name", sorted(_scenes()))
def test_no_lines_where_nothing_is_written(name: str):
    assert find_lines(_scenes()[name]).lines == ()


def test_sentence_for_nothing_found_says_what_to_do():
    assert NOTHING_FOUND.startswith("No writing was found") and "take it again" in NOTHING_FOUND


@pytest.mark.parametrize(
    "array",
    [
        np.zeros((0, 0, 3), np.uint8), np.zeros((5, 5), np.float32), np.zeros((300, 300, 4), np.uint8),
        np.full((400, 400), np.nan), np.zeros((2, 3, 4, 5)), np.array(["x"]), np.zeros((300, 200, 2), np.uint16),
        np.ones((1, 5000, 3), np.uint8), np.full((9, 9000, 3), 200, np.uint8), np.ones((500, 500), bool),
        np.full((300, 300), 1 + 2j),
    ],
    ids=lambda a: f"{a.shape}-{a.dtype}",
)  # fmt: skip
def test_any_array_gives_a_page(array: NDArray[Any]):
    assert find_lines(array).lines == ()


def test_tick_stops_the_work():
    def stop(done: int, total: int) -> None:
        if done >= 2:
            raise Cancelled

    with pytest.raises(Cancelled):
        find_lines(_page("plain", 500).photo.image, tick=stop)


# Counted by eye on the photos, as (fewest, most): lines of writing; fewest leaves out marginal notes and drawings.
# Two words in red on a page in black are taken for an earlier marking and count as none.
# Source: repositories mzucker/noteshrink and Breta01/handwriting-ocr, both MIT; no transcription comes with them.
_COUNTED = {
    "graph-paper-front.jpg": (6, 8), "graph-paper-ink-only.jpg": (3, 3), "graph-paper-pencil-only.jpg": (2, 2),
    "text-page01.jpg": (4, 4), "text-page02.jpg": (3, 5), "text-page03.jpg": (26, 40), "text-page04.jpg": (24, 45),
    "text-page05.jpg": (13, 26), "notesA1.jpg": (28, 48), "notesA2.jpg": (26, 45), "notesB1.jpg": (35, 65),
    "note1.jpeg": (1, 60),
}  # fmt: skip


@needs_real_pages
@pytest.mark.parametrize("name", sorted(_COUNTED))
def test_real_page_yields_its_lines(name: str):
    for sheet in open_pages(_REAL_PAGES / name):
        found = find_lines(sheet.image)
        fewest, most = _COUNTED[name]
        assert fewest <= len(found.lines) <= most
        for line in found.lines:
            x0, y0, x1, y1 = _edges(line)
            assert 0 <= x0 < x1 <= sheet.image.shape[1] and 0 <= y0 < y1 <= sheet.image.shape[0]
            assert np.isfinite(line.to_original).all()


@needs_real_pages
@pytest.mark.parametrize("name", ["text-page01.jpg", "text-page02.jpg"])
def test_sheet_on_a_table_is_found(name: str):
    (sheet,) = open_pages(_REAL_PAGES / name)
    corners = find_lines(sheet.image).sheet
    assert corners is not None
    # The sheet's corners, read off the photos, in shares of width and height; within 4 %.
    expected = {
        "text-page01.jpg": [(0.08, 0.10), (0.92, 0.10), (0.955, 0.905), (0.02, 0.905)],
        "text-page02.jpg": [(0.06, 0.135), (0.92, 0.14), (0.945, 0.925), (0.07, 0.945)],
    }[name]
    height, width = sheet.image.shape[:2]
    shares = np.array(corners) / (width, height)
    assert np.abs(shares - np.array(expected)).max() < 0.04
