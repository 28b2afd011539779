"""What stands around the working: other colours, columns, question numbers, arrows, holes; pages the wrong way up."""

from functools import cache

import cv2
import numpy as np
import pytest
from numpy.typing import NDArray

from recognition.page import FoundPage, find_lines
from recognition.page.found import map_points
from recognition.page.workings import Place, places_in_workings
from recognition.training.page_measure import Counts, measure_page, pairs, way_back
from recognition.training.scenes import KINDS, Scene, make_scene

BLUE, RED, GREEN, TEAL = (34, 46, 120), (200, 30, 44), (24, 128, 66), (40, 140, 120)
ROWS = (150, 270, 390, 510)


def _paper() -> NDArray[np.uint8]:
    return np.full((900, 1300, 3), (250, 249, 244), np.uint8)


def _text(page: NDArray[np.uint8], text: str, x: int, y: int, colour: tuple[int, int, int] = BLUE) -> None:
    cv2.putText(page, text, (x, y), cv2.FONT_HERSHEY_SIMPLEX, 1.6, colour, 4, cv2.LINE_AA)


def _page(colour: tuple[int, int, int] = BLUE) -> NDArray[np.uint8]:
    page = _paper()
    for y in ROWS:
        _text(page, "4x + 7 = 19", 120, y, colour)
    return page


def _right_edges(found: FoundPage) -> list[int]:
    return [line.box.x + line.box.w for line in found.lines]


@pytest.mark.parametrize("colour", [RED, GREEN])
def test_earlier_marking_is_a_layer_of_its_own(colour: tuple[int, int, int]):
    page = _page()
    plain = _right_edges(find_lines(page))
    for y in ROWS[:3]:
        cv2.polylines(page, [np.array([[520, y - 20], [540, y], [580, y - 50]])], False, colour, 5, cv2.LINE_AA)
    cv2.ellipse(page, (190, 370), (70, 45), 0, 0, 360, colour, 5, cv2.LINE_AA)
    found = find_lines(page)
    assert _right_edges(found) == pytest.approx(plain, abs=2)
    assert len(found.marks) == 4 and {mark.colour for mark in found.marks} == {"red" if colour == RED else "green"}
    # The ring around a term is not in its line's crop: rows above the letters are clean.
    assert found.lines[2].image.shape[0] < 80


@pytest.mark.parametrize("colour", [RED, GREEN, TEAL, (150, 90, 60)])
def test_pupil_who_writes_in_one_colour_is_read(colour: tuple[int, int, int]):
    found = find_lines(_page(colour))
    assert len(found.lines) == len(ROWS) and found.marks == ()


def test_lines_of_writing_in_red_beside_blue_ones_are_lines():
    page = _paper()
    for number, y in enumerate(ROWS):
        _text(page, "4x + 7 = 19 - 2x", 120, y, RED if number == 2 else BLUE)
    assert len(find_lines(page).lines) == len(ROWS)


def test_holes_staples_and_arrows_are_no_lines():
    page = _page()
    cv2.circle(page, (50, 260), 30, (96, 82, 70), -1, cv2.LINE_AA)
    cv2.line(page, (30, 60), (110, 20), (90, 90, 96), 7, cv2.LINE_AA)
    cv2.arrowedLine(page, (520, 390), (760, 280), BLUE, 4, cv2.LINE_AA, tipLength=0.1)
    found = find_lines(page)
    assert len(found.lines) == len(ROWS)
    assert min(line.box.x for line in found.lines) > 100 and max(_right_edges(found)) < 500


def test_lines_at_the_same_height_in_two_columns_are_parted():
    page = _paper()
    for y, fall in zip(ROWS, (60, 60, 0, 60), strict=True):
        _text(page, "x^2 + 3x", 80, y)
        _text(page, "2y - 14", 400, y + fall)  # nearer than the widest gap within a line
    found = find_lines(page)
    assert [line.box.x < 300 for line in found.lines] == [True] * 4 + [False] * 4
    assert found.lines[3].working < found.lines[4].working


def test_words_of_prose_are_not_parted():
    page = _paper()
    for y, text in zip(ROWS, ("so   the area is   4x", "of   the bed   and 3x", "the path   is   5x", "as x   is 7"),
                       strict=True):
        _text(page, text, 100, y)
    assert len(find_lines(page).lines) == len(ROWS)


def _row(y: float, x: float = 100.0, width: float = 400.0, label: float | None = None) -> NDArray[np.float64]:
    """Boxes of letters 40 high; the first one far from the others where it is a label."""
    boxes = [[x + k, y, x + k + 30, y + 40] for k in np.arange(0, width, 50)]
    return np.array([[label, y, label + 40, y + 40], *boxes] if label is not None else boxes)


def _workings(*rows: NDArray[np.float64]) -> list[int]:
    return [place.working for place in places_in_workings(rows, 40, [False] * len(rows))]


def test_wide_gap_starts_a_working():
    assert _workings(_row(0), _row(60), _row(120), _row(260), _row(320)) == [0, 0, 0, 1, 1]


def test_hanging_question_number_starts_a_working():
    rows = (_row(0, label=0), _row(60), _row(120), _row(180, label=0), _row(240))
    assert _workings(*rows) == [0, 0, 0, 1, 1]


def test_next_column_starts_a_working():
    assert _workings(_row(0), _row(60), _row(0, x=700), _row(60, x=700)) == [0, 0, 1, 1]


def test_rest_of_a_full_line_goes_on():
    rows = (_row(0, width=900), _row(60, x=220, width=200), _row(120, width=300))
    assert places_in_workings(rows, 40, [False] * 3) == (Place(0), Place(0, True), Place(0))


def test_line_struck_out_parts_nothing():
    rows = (_row(0), _row(60), _row(200), _row(260))
    assert [p.working for p in places_in_workings(rows, 40, [False, False, True, False])][:2] == [0, 0]
    assert places_in_workings((), 40, ()) == ()


@cache
def _scene(kind: str, seed: int, turns: int = 0) -> Scene:
    return make_scene(seed, kind, quarter_turns=turns)


def test_scene_is_the_same_for_the_same_seed():
    one, other = make_scene(3, "hard"), make_scene(3, "hard")
    assert np.array_equal(one.photo.image, other.photo.image) and one.traits == other.traits
    assert [line.box for line in one.lines] == [line.box for line in other.lines]


def test_bent_sheet_is_placed_where_its_ink_is_seen():
    scene = _scene("hard", 0)
    assert "curl" in scene.traits
    for line in scene.lines:
        x0, y0, x1, y1 = (round(v) for v in line.box)
        ys, xs = np.nonzero(scene.ink[max(0, y0 - 3) : y1 + 4, max(0, x0 - 3) : x1 + 4] > 128)
        assert xs.min() <= 7 and xs.max() >= x1 - x0 - 3 and ys.min() <= 7 and ys.max() >= y1 - y0 - 3


@pytest.mark.parametrize("turns", [0, 1, 2, 3])
def test_page_is_turned_by_its_writing(turns: int):
    scene = _scene("plain", 56, turns)
    found = find_lines(scene.photo.image)
    assert found.turns == turns
    boxes = [(float(x), float(y), float(x + w), float(y + h)) for x, y, w, h in (line.box for line in found.lines)]
    partner = pairs(boxes, [line.box for line in scene.lines])
    assert len(partner) == len(scene.lines) == len(found.lines)
    assert [partner[j] for j in range(len(partner))] == list(range(len(partner)))  # read in the order of the writing
    for line in found.lines:
        assert line.image.shape[1] > line.image.shape[0]  # upright
        assert way_back(line, scene.ink) <= 2.0


def test_way_back_sees_a_shifted_crop():
    scene = _scene("plain", 56)
    line = find_lines(scene.photo.image).lines[0]
    moved = np.roll(scene.ink, 6, axis=1)
    corner = map_points(np.array([[0.0, 0.0]]), line.to_original)
    assert np.isfinite(corner).all() and way_back(line, moved) == pytest.approx(6, abs=1.5)


@pytest.mark.parametrize("kind", KINDS)
def test_simulated_pages_are_found(kind: str):
    counts = Counts()
    for seed in (52, 53):
        scene = _scene(kind, seed)
        counts.add(measure_page(find_lines(scene.photo.image), scene))
    assert counts.f_measure > (0.85 if kind == "hard" else 0.9)
    assert counts.order == 0 and counts.starts <= 0.15 * counts.compared
