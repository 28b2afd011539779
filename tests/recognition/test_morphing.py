"""Symbols between two hands, and outlines of symbols from paper."""

from __future__ import annotations

import random
from pathlib import Path

import cv2
import numpy as np
import pytest

from recognition.reader.tokens import TOKEN_ID, VOCABULARY
from recognition.training.bank import Shape, SymbolBank, cut
from recognition.training.morphing import between
from recognition.training.paper_symbols import digit_pictures, labelled_pictures, outlines, packed

PAPER = Path(__file__).resolve().parents[3] / "shared" / "data" / "symbols-on-paper" / "symbols.npz"


def ring(width: float, height: float, count: int) -> np.ndarray:
    angle = np.linspace(0, 2 * np.pi, count)
    return np.stack([width / 2 * np.cos(angle), height / 2 * np.sin(angle)], 1).astype(np.float32)


def shape(*strokes: np.ndarray) -> Shape:
    parts = [np.asarray(stroke, np.float32) for stroke in strokes]
    return Shape(np.concatenate(parts), np.cumsum([0, *map(len, parts)]).astype(np.int64))


UPRIGHT, ACROSS = [(5, 0), (5, 5), (5, 10)], [(0, 5), (5, 5), (10, 5)]
PLUS = shape(UPRIGHT, ACROSS)


def test_the_ends_of_the_way_are_the_two_shapes() -> None:
    first, second = shape(ring(10, 10, 33)), shape(ring(8, 10, 51) + 100)
    near, far = between(first, second, 0.0), between(first, second, 1.0)
    assert near is not None and near.points == pytest.approx(first.points, abs=1e-3)
    assert far is not None
    low, high = far.points.min(0), far.points.max(0)
    assert (high - low)[0] / (high - low)[1] == pytest.approx(0.8, abs=0.02)


def test_half_way_stands_between() -> None:
    slanted = shape([(7, 0), (5, 5), (3, 10)], [(0, 7), (5, 5), (10, 3)])
    middle = between(PLUS, slanted, 0.5)
    assert middle is not None
    upright = cut(middle.points, middle.offsets)[0]
    assert 5 < upright[0, 0] < 7 and 3 < upright[-1, 0] < 5


def test_order_and_direction_of_the_first_hand_stay() -> None:
    backwards = shape(ACROSS[::-1], UPRIGHT[::-1])
    middle = between(PLUS, backwards, 0.5)
    assert middle is not None and middle.points == pytest.approx(PLUS.points, abs=1e-4)


@pytest.mark.parametrize("other", [
    shape([(0, 0), (10, 10)]),  # one stroke for two
    shape([(0, 0), (10, 0)], [(0, 10), (10, 10)]),  # an equals sign
    Shape(PLUS.points, PLUS.offsets, filled=True),
])  # fmt: skip
def test_unlike_shapes_are_not_mixed(other: Shape) -> None:
    assert between(PLUS, other, 0.5) is None


def test_an_outline_encloses_the_ink() -> None:
    image = np.full((28, 28), 255, np.uint8)
    cv2.circle(image, (14, 14), 9, (0,), 3)
    contours = outlines(image)
    assert len(contours) == 2, "the outside and the hole"
    drawn = np.zeros((32 * 6, 32 * 6), np.uint8)
    cv2.fillPoly(drawn, [contour.astype(np.int32) for contour in contours], (255,))
    small = cv2.resize(drawn, (32, 32), interpolation=cv2.INTER_AREA)[2:30, 2:30]
    assert float(np.mean((small > 127) == (image < 127))) > 0.95
    assert outlines(np.full((28, 28), 255, np.uint8)) == []


def test_symbols_of_paper_are_drawn_near_their_place() -> None:
    token = 5
    squares = [np.array([(0, 0), (n, 0), (n, n)], np.int16) for n in range(1, 201)]
    bank = SymbolBank.of_pack({
        "bank_points": np.zeros((1, 2), np.int16), "bank_offsets": np.array([0, 1]), "bank_groups": np.array([0, 1]),
        "bank_tokens": np.array([4], np.uint8), "paper_points": np.concatenate(squares),
        "paper_offsets": np.arange(0, 601, 3), "paper_groups": np.arange(201),
        "paper_tokens": np.full(200, token, np.uint8),
    })  # fmt: skip
    rng = random.Random(1)
    sizes = []
    for _ in range(100):
        drawn = bank.from_paper(VOCABULARY[token], 0.5, rng)
        assert drawn is not None and drawn.filled
        sizes.append(float(drawn.points.max()))
    assert min(sizes) > 80 and max(sizes) < 120 and len(set(sizes)) > 5
    assert bank.from_paper(VOCABULARY[4], 0.5, rng) is None


@pytest.mark.skipif(not PAPER.exists(), reason="../shared/data/symbols-on-paper is not here")
def test_symbols_of_paper_keep_their_look() -> None:
    """Symbols cut from photographed paper (repository wblachowski/bhmsds, MIT), drawn again from their outlines."""
    arrays = packed(labelled_pictures(PAPER, each=20))
    assert len(set(arrays["paper_tokens"].tolist())) == 18
    with np.load(PAPER) as data:
        places = np.flatnonzero(data["labels"] == "8")
        images = data["images"][places[np.linspace(0, len(places) - 1, 20).astype(int)]]
    for image in images:
        drawn = np.zeros((32 * 6, 32 * 6), np.uint8)
        cv2.fillPoly(drawn, [contour.astype(np.int32) for contour in outlines(image)], (255,))
        small = cv2.resize(drawn, (32, 32), interpolation=cv2.INTER_AREA)[2:30, 2:30]
        assert float(np.mean((small > 127) == (image < 127))) > 0.93


def test_digits_of_one_slant_stand_together(tmp_path: Path) -> None:
    upright = np.zeros((28, 28), np.uint8)
    upright[4:24, 12:15] = 255
    rows = []
    for lean in (6, -6, 0, 3, -3):  # px to the right at the top
        picture = np.stack([np.roll(row, round(lean * (0.5 - y / 27))) for y, row in enumerate(upright)])
        rows.append([*picture.ravel().tolist(), 1])
    path = tmp_path / "digits.csv"
    path.write_text("\n".join(",".join(map(str, row)) for row in [[*rows[0][:-1], 7], *rows]))
    tokens, pictures = zip(*digit_pictures(path), strict=True)
    assert tokens == ("1",) * 5 + ("7",)
    tops = [float(np.nonzero(picture[5] == 0)[0].mean()) for picture in pictures[:5]]
    assert tops == sorted(tops) or tops == sorted(tops, reverse=True)
    assert set(packed(zip(tokens, pictures, strict=True))["paper_tokens"].tolist()) == {TOKEN_ID["1"], TOKEN_ID["7"]}
