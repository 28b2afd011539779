"""The frame in which the reader sees writing."""

import numpy as np
import pytest

from recognition.reader.canonical import (
    CanonicalFrame,
    draw_strokes,
    from_picture,
    from_strokes,
    typical_height,
)

FRAME = CanonicalFrame()


def _digit_one(x: float, height: float = 100.0) -> np.ndarray:
    return np.array([[x, 0.0], [x, height]])


def test_typical_piece_becomes_forty_pixels_high():
    # Three upright strokes of 100 units: 40 px of ink between margins of 8 px; 0.4 px a unit.
    image = from_strokes([_digit_one(0), _digit_one(50), _digit_one(100)], FRAME)
    assert image.pixels.shape == (40 + 16, 40 + 16)
    assert image.to_input @ [8, 8, 1] == pytest.approx([0, 0, 1])
    assert image.to_input @ [48, 48, 1] == pytest.approx([100, 100, 1])


def test_dots_and_bars_do_not_move_the_typical_height():
    heights = np.array([100.0, 90.0, 110.0, 1.0, 0.0, 2.0])
    widths = np.array([40.0, 40.0, 40.0, 60.0, 0.0, 80.0])
    assert typical_height(heights, widths) == 100.0


def test_minus_sign_alone_is_not_blown_up():
    image = from_strokes([np.array([[0.0, 0.0], [100.0, 1.0]])], FRAME)
    assert image.pixels.shape[1] < 1000


def test_long_line_is_fitted_into_the_frame():
    image = from_strokes([_digit_one(200.0 * place) for place in range(100)], FRAME)
    assert image.pixels.shape[1] <= FRAME.max_width
    tall = from_strokes([_digit_one(0, 10), _digit_one(10, 10), _digit_one(20, 10), _digit_one(30, 1000)], FRAME)
    assert tall.pixels.shape[0] <= FRAME.max_height


@pytest.mark.parametrize("scale", [0.5, 1.0, 2.5])
def test_strokes_and_their_picture_meet_in_the_same_frame(scale):
    rng = np.random.default_rng(3)
    strokes = [rng.uniform(0, 60, (6, 2)).cumsum(axis=0) / 4 + [70.0 * place, 0] for place in range(6)]
    strokes = [stroke * scale + 20 for stroke in strokes]
    size = tuple(int(side) + 20 for side in np.concatenate(strokes).max(axis=0))
    drawn = from_strokes(strokes, FRAME)
    seen = from_picture(255 - draw_strokes(strokes, size, pen=max(1, round(3 * scale))), FRAME)
    ratio = np.array(seen.pixels.shape) / drawn.pixels.shape
    assert ratio == pytest.approx([1, 1], abs=0.08)
    # The same place of the input lies under both centres.
    for image in (drawn, seen):
        ys, xs = np.nonzero(image.pixels > 90)
        low = image.to_input @ [xs.min(), ys.min(), 1]
        assert low[:2] == pytest.approx(np.concatenate(strokes).min(axis=0), abs=3.0 * max(1, scale))


def test_faint_pencil_is_seen_like_a_pen():
    picture = np.full((80, 200), 255, np.uint8)
    picture[20:60, 50:54] = 165  # 90 grey levels below the paper
    picture[20:60, 90:94] = 165
    image = from_picture(picture, FRAME)
    assert image.pixels.max() >= 180


def test_blank_paper_gives_no_ink():
    assert not from_picture(np.full((50, 50), 255, np.uint8), FRAME).pixels.any()
    assert not from_strokes([], FRAME).pixels.any()
    assert not from_strokes([np.zeros((0, 2))], FRAME).pixels.any()


def test_picture_must_be_grey():
    with pytest.raises(ValueError, match="one grey channel"):
        from_picture(np.zeros((5, 5, 3), np.uint8), FRAME)
    with pytest.raises(ValueError, match="room"):
        CanonicalFrame(margin=200)
