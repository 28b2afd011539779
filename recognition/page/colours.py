"""Tell an earlier marking in red or green from the working beneath it.

A pen is red or green by what it takes out of the light of the paper around it, so warm lamps and cream paper do not
count. The colour with most of the ink is the pupil's own, whatever it is.
"""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.found import Mark, map_points
from recognition.page.grouping import group_lines
from recognition.page.light import background, evened
from recognition.page.pieces import find_pieces

__all__ = ["Marking", "find_marking", "marks_on", "without_marking"]

_LEAST_RED, _LEAST_GREEN = 0.26, 0.22
"""By how much less red than other light a red pen takes, and less green than red a green one, of the most it takes."""
_TEAL = 0.06
"""A green pen may take so much less blue than green; a blue one takes far less."""
_LEAST_TAKEN = 0.12
"""The same in absorbance (natural logarithm): what is fainter has no colour to speak of."""
_FRINGE = 0.6
"""Share of these least values that a pixel near the colour has."""
_MOST_SHARE = 0.35
"""Share of the page's ink; a colour with more of it is what the page is written in."""
_LARGEST = 0.3
"""Share of the page's longer side; what is larger is a margin line or the edge of a table."""
_BROAD = 25
"""Working pixels."""
_THIN = 0.08
"""Breadth of a margin line as a share of its length."""
_ROW = 5
"""Letters in a row; where most ink of a colour stands in such rows, it is writing and no marking."""
_LEAST_AREA = 60
"""Working pixels of one mark; less is a fringe of colour at a stroke."""


@dataclass(frozen=True, slots=True)
class Marking:
    """What was marked before, at working size: 255 where a red or a green pen went; None where none did."""

    red: NDArray[np.uint8] | None
    green: NDArray[np.uint8] | None

    @property
    def mask(self) -> NDArray[np.uint8] | None:
        """Both colours together."""
        if self.red is None or self.green is None:
            return self.red if self.green is None else self.green
        return self.red | self.green


def find_marking(rgb: NDArray[np.uint8], even_grey: NDArray[np.uint8], ink: NDArray[np.uint8]) -> Marking:
    """Look for ink in red and green beside ink of another colour.

    Args:
        rgb: the page at working size, shape (h, w, 3); even_grey: the same in grey, its light evened.
        ink: 255 where anything dark is.
    """
    # What is broader than any stroke is the table or a finger.
    broad = cv2.morphologyEx(ink, cv2.MORPH_OPEN, np.ones((_BROAD, _BROAD), np.uint8))
    ink = np.where(cv2.dilate(broad, np.ones((9, 9), np.uint8)) > 0, 0, ink).astype(np.uint8)
    ys, xs = np.nonzero(ink)
    if len(ys) == 0:
        return Marking(None, None)
    taken = np.empty((len(ys), 3), np.float32)
    for channel in range(3):
        plane = np.ascontiguousarray(rgb[:, :, channel])
        even = cv2.blur(evened(plane, background(plane)), (3, 3))  # cameras store colour at half the size
        taken[:, channel] = -np.log((even[ys, xs].astype(np.float32) + 1) / 256)
    most = np.maximum(taken.max(axis=1), 1e-3)
    red = np.minimum(taken[:, 1], taken[:, 2]) - taken[:, 0]
    green = taken[:, 0] - taken[:, 1]
    blue = (taken[:, 1] - taken[:, 2]) / most  # how far a pen is from green towards blue
    return Marking(
        _layer(ink, even_grey, ys, xs, _apart(red, red / most, _LEAST_RED, blue < 1)),
        _layer(ink, even_grey, ys, xs, _apart(green, np.where(blue < 3 * _TEAL, green / most, 0), _LEAST_GREEN,
                                              blue < _TEAL)),
    )


def _apart(
    taken: NDArray[np.float32], share: NDArray[np.float32], least: float, pure: NDArray[np.bool_]
) -> NDArray[np.bool_]:
    """Pixels of a colour; none where they are but the fringe of a pen with another colour close to it."""
    chosen = (share > least) & (taken > _LEAST_TAKEN) & pure
    close = (share > _FRINGE * least) & (taken > _FRINGE * _LEAST_TAKEN)
    return chosen & (np.count_nonzero(chosen) > 0.5 * np.count_nonzero(close))


def without_marking(rgb: NDArray[np.uint8], marking: Marking) -> NDArray[np.uint8]:
    """Grey in which the pens of an earlier marking are nearly as bright as paper: their own light.

    Args:
        rgb: any size, shape (h, w, 3).
    """
    if marking.red is not None and marking.green is not None:
        return np.asarray(cv2.max(cv2.extractChannel(rgb, 0), cv2.extractChannel(rgb, 1)), dtype=np.uint8)
    if marking.red is not None:
        return np.asarray(cv2.extractChannel(rgb, 0), dtype=np.uint8)
    if marking.green is not None:
        return np.asarray(cv2.extractChannel(rgb, 1), dtype=np.uint8)
    return np.asarray(cv2.cvtColor(rgb, cv2.COLOR_RGB2GRAY), dtype=np.uint8)


def marks_on(marking: Marking, to_original: NDArray[np.float64]) -> tuple[Mark, ...]:
    """The strokes of an earlier marking, each with its outline on the original."""
    marks = []
    for colour, layer in (("red", marking.red), ("green", marking.green)):
        if layer is None:
            continue
        contours, _ = cv2.findContours(layer, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_SIMPLE)
        for contour in contours:
            _, _, w, h = cv2.boundingRect(contour)
            if min(w, h) < _THIN * max(w, h) and max(w, h) > 0.1 * max(layer.shape):
                continue  # a stretch of a margin line
            hull = map_points(cv2.convexHull(contour).reshape(-1, 2).astype(np.float64), to_original)
            marks.append(Mark(colour, tuple((round(float(x), 1), round(float(y), 1)) for x, y in hull)))
    return tuple(marks)


def _layer(
    ink: NDArray[np.uint8], even: NDArray[np.uint8], ys: NDArray[np.intp], xs: NDArray[np.intp],
    chosen: NDArray[np.bool_],
) -> NDArray[np.uint8] | None:
    """The strokes of one colour, each pixel by the vote of its surroundings; None where it is no marking."""
    if not chosen.any():
        return None
    flags = np.zeros_like(ink)
    flags[ys[chosen], xs[chosen]] = 255
    window = (7, 7)
    votes = cv2.blur(flags, window) > 0.5 * cv2.blur(ink, window).astype(np.float32)
    flags = ((ink > 0) & votes).astype(np.uint8) * np.uint8(255)
    count, labels, stats, _ = cv2.connectedComponentsWithStats(flags, connectivity=8, ltype=cv2.CV_32S)
    kept = stats[:, cv2.CC_STAT_AREA] >= _LEAST_AREA
    kept &= stats[:, cv2.CC_STAT_WIDTH : cv2.CC_STAT_HEIGHT + 1].max(axis=1) < _LARGEST * max(ink.shape)
    kept[0] = False
    if count < 2 or not kept.any():
        return None
    layer = np.asarray(kept[labels], dtype=np.uint8) * np.uint8(255)
    if np.count_nonzero(layer) > _MOST_SHARE * len(ys) or _is_writing(layer, even):
        return None
    return layer


def _is_writing(layer: NDArray[np.uint8], even: NDArray[np.uint8]) -> bool:
    """Does most ink of a layer stand in rows of letters?"""
    pieces = find_pieces(layer, even)
    rows = [group for group in group_lines(pieces) if len(group) >= _ROW]
    in_rows = float(sum(pieces.area[row].sum() for row in rows))
    return in_rows > 0.5 * int(np.count_nonzero(layer))
