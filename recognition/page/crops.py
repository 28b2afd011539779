"""Cut one written line out of the original: straight, evened, without its neighbours, with the way back."""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.found import LineCrop, map_points
from recognition.page.pieces import Pieces
from recognition.page.rulings import Cleaned
from recognition.page.strikes import is_struck_out
from recognition.result import Box

__all__ = ["Flat", "cut_line"]

_LETTER = 72.0
"""Letters in a crop are at most this tall in pixels; the reader needs no more."""
_MOST_WIDTH = 4000
_RESIDUE = 90
"""Grey levels below paper up to which a trace of a printed line is wiped."""


@dataclass(frozen=True, slots=True)
class Flat:
    """The page at working size: evened grey, brightness of paper (small), homography original -> working size."""

    even: NDArray[np.uint8]
    paper: NDArray[np.uint8]
    to_flat: NDArray[np.float64]
    is_sheet: bool


def cut_line(
    grey: NDArray[np.uint8], flat: Flat, pieces: Pieces, group: list[int], cleaned: Cleaned
) -> LineCrop | None:
    """The crop of one line.

    Args:
        grey: the original, shape (h, w).
        flat: the page at working size.
        pieces: all pieces of ink, in working pixels.
        group: indices of the pieces of this line.
        cleaned: the page at working size without its printed lines.
    Returns:
        None where the line has shrunk to nothing on the original.
    """
    boxes = pieces.boxes[group]
    x0, y0 = np.floor(boxes[:, :2].min(axis=0)).astype(int)
    x1, y1 = np.ceil(boxes[:, 2:].max(axis=0)).astype(int)
    own = _own(pieces, group, x0, y0, x1, y1)
    pad = max(4.0, 0.25 * pieces.letter)
    angle = _slope(boxes, pieces.letter)
    frame, (width, height) = _frame(own, (x0, y0), angle, pad)
    back = np.asarray(np.linalg.inv(flat.to_flat), dtype=np.float64)
    scale = _scale(back, boxes, pieces.letter)
    scale = min(scale, _MOST_WIDTH / max(width, 1.0))
    size = (max(8, round(width * scale)), max(8, round(height * scale)))
    to_flat = frame @ np.diag([width / size[0], height / size[1], 1.0])  # crop pixel -> working pixel
    to_original = back @ to_flat
    if not np.isfinite(to_original).all():
        return None
    image = _evened_crop(grey, flat, to_original, to_flat, size)
    image = _without_rulings(image, cleaned, pieces, to_flat, size)
    image = _without_neighbours(image, pieces, group, cleaned.erased, to_flat, size)
    ys, xs = np.nonzero(own)
    points = np.column_stack([xs + x0, ys + y0]).astype(np.float64)
    outline = cv2.convexHull(points.astype(np.float32)).reshape(-1, 2).astype(np.float64)
    corners = np.concatenate([outline + offset for offset in ((-0.5, -0.5), (0.5, -0.5), (0.5, 0.5), (-0.5, 0.5))])
    hull = cv2.convexHull(map_points(corners, back).astype(np.float32)).reshape(-1, 2).astype(np.float64)
    box = _box(hull, grey.shape)
    if box.w < 1 or box.h < 1:
        return None
    return LineCrop(image, box, _clockwise(hull, grey.shape), to_original, is_struck_out(own, boxes, pieces))


def _own(pieces: Pieces, group: list[int], x0: int, y0: int, x1: int, y1: int) -> NDArray[np.uint8]:
    chosen = np.zeros(len(pieces.boxes) + 1, np.uint8)
    chosen[np.array(group) + 1] = 255
    return chosen[pieces.labels[y0:y1, x0:x1]]


def _slope(boxes: NDArray[np.float64], letter: float) -> float:
    """Angle in radians of the line through its letters; 0 where the line is too short to tell."""
    tall = boxes[(boxes[:, 3] - boxes[:, 1]) > 0.5 * letter]
    if len(tall) < 5 or np.ptp(tall[:, 0]) < 6 * letter:
        return 0.0
    x, y = (tall[:, 0] + tall[:, 2]) / 2, (tall[:, 1] + tall[:, 3]) / 2
    far = np.abs(x[:, None] - x[None, :]) > 0.3 * np.ptp(x)
    run, rise = x[:, None] - x[None, :], y[:, None] - y[None, :]
    angle = float(np.arctan(np.median(rise[far] / run[far])))
    return angle if abs(angle) > 0.02 and abs(angle) < 0.5 else 0.0


def _frame(
    own: NDArray[np.uint8], origin: tuple[int, int], angle: float, pad: float
) -> tuple[NDArray[np.float64], tuple[float, float]]:
    """Matrix from an upright frame around the turned line to working pixels, and the frame's width and height."""
    ys, xs = np.nonzero(own)
    points = np.column_stack([xs + origin[0], ys + origin[1]]).astype(np.float64)
    cos, sin = np.cos(angle), np.sin(angle)
    turn = np.array([[cos, sin], [-sin, cos]])
    turned = points @ turn.T
    low, high = turned.min(axis=0) - pad, turned.max(axis=0) + pad
    corner = turn.T @ low
    frame = np.array([[cos, -sin, corner[0]], [sin, cos, corner[1]], [0, 0, 1]])
    return frame, (float(high[0] - low[0]), float(high[1] - low[1]))


def _scale(back: NDArray[np.float64], boxes: NDArray[np.float64], letter: float) -> float:
    """Crop pixels a working pixel: the resolution of the original, but letters no taller than the reader needs."""
    middle = np.array([[(boxes[:, 0].min() + boxes[:, 2].max()) / 2, (boxes[:, 1].min() + boxes[:, 3].max()) / 2]])
    corners = map_points(middle + np.array([[0.0, 0.0], [1.0, 0.0], [0.0, 1.0]]), back)
    original = max(float(np.linalg.norm(corners[1] - corners[0])), float(np.linalg.norm(corners[2] - corners[0])))
    return float(min(max(original, 0.5), max(1.0, _LETTER / max(letter, 1.0))))


def _evened_crop(
    grey: NDArray[np.uint8], flat: Flat, to_original: NDArray[np.float64], to_flat: NDArray[np.float64],
    size: tuple[int, int],
) -> NDArray[np.uint8]:
    flags = cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
    step = map_points(np.array([[0.0, 0.0], [1.0, 0.0]]), to_original)
    shrink = float(np.linalg.norm(step[1] - step[0]))
    if shrink > 1.3:
        source, to_source = _reduced(grey, to_original, size, shrink)
    else:
        source, to_source = grey, to_original
    raw = cv2.warpPerspective(source, to_source, size, flags=flags, borderMode=cv2.BORDER_REPLICATE)
    height, width = flat.even.shape
    sx, sy = flat.paper.shape[1] / width, flat.paper.shape[0] / height
    to_paper = np.array([[sx, 0, 0.5 * sx - 0.5], [0, sy, 0.5 * sy - 0.5], [0, 0, 1]]) @ to_flat
    paper = cv2.warpPerspective(flat.paper, to_paper, size, flags=flags, borderMode=cv2.BORDER_REPLICATE)
    return np.asarray(cv2.divide(raw, paper, scale=255), dtype=np.uint8)


def _without_rulings(
    image: NDArray[np.uint8], cleaned: Cleaned, pieces: Pieces, to_flat: NDArray[np.float64], size: tuple[int, int]
) -> NDArray[np.uint8]:
    """Divide the brightness of printed lines out of the crop, and wipe what is left of them away from strokes."""
    flags = cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP
    shade = cv2.warpPerspective(cleaned.shade, to_flat, size, flags=flags, borderValue=255)
    if shade.min() == 255:
        return image
    divided = np.asarray(cv2.divide(image, shade, scale=255), dtype=np.uint8)
    printed = cv2.dilate((shade < 250).astype(np.uint8), np.ones((3, 3), np.uint8))
    strokes = cv2.dilate((pieces.labels > 0).astype(np.uint8), np.ones((5, 5), np.uint8))
    near = cv2.warpPerspective(strokes, to_flat, size, flags=cv2.INTER_NEAREST | cv2.WARP_INVERSE_MAP)
    divided[(printed > 0) & (near == 0) & (divided > 255 - _RESIDUE)] = 255
    return divided


def _reduced(
    grey: NDArray[np.uint8], to_original: NDArray[np.float64], size: tuple[int, int], shrink: float
) -> tuple[NDArray[np.uint8], NDArray[np.float64]]:
    """The part of the original under the crop, area-averaged so that thin strokes do not break when it shrinks."""
    w, h = size
    corners = map_points(np.array([[0, 0], [w, 0], [w, h], [0, h]], np.float64), to_original)
    x0, y0 = np.maximum(np.floor(corners.min(axis=0)).astype(int) - 2, 0)
    x1, y1 = np.ceil(corners.max(axis=0)).astype(int) + 3
    part = grey[y0:y1, x0:x1]
    if part.size == 0:
        return grey, to_original
    new = (max(1, round(part.shape[1] / shrink)), max(1, round(part.shape[0] / shrink)))
    small = np.asarray(cv2.resize(part, new, interpolation=cv2.INTER_AREA), dtype=np.uint8)
    sx, sy = new[0] / part.shape[1], new[1] / part.shape[0]
    to_small = np.array([[sx, 0, (0.5 - x0) * sx - 0.5], [0, sy, (0.5 - y0) * sy - 0.5], [0, 0, 1]])
    return small, to_small @ to_original


def _without_neighbours(
    image: NDArray[np.uint8], pieces: Pieces, group: list[int], erased: NDArray[np.uint8],
    to_flat: NDArray[np.float64], size: tuple[int, int],
) -> NDArray[np.uint8]:
    """Paint printed lines and other lines' ink white, up to a soft rim; the line's own ink stays as it is."""
    height, width = pieces.labels.shape
    w, h = size
    corners = map_points(np.array([[0, 0], [w, 0], [w, h], [0, h]], np.float64), to_flat)
    x0, y0 = np.maximum(np.floor(corners.min(axis=0)).astype(int) - 4, 0)
    x1, y1 = np.minimum(np.ceil(corners.max(axis=0)).astype(int) + 5, (width, height))
    labels = pieces.labels[y0:y1, x0:x1]
    own = _own(pieces, group, x0, y0, x1, y1)
    other = ((labels > 0) & (own == 0)).astype(np.uint8) * np.uint8(255)
    ring = np.ones((3, 3), np.uint8)
    wide = np.ones((5, 5), np.uint8)
    hide = cv2.dilate(other, wide) | cv2.dilate(erased[y0:y1, x0:x1], ring)
    hide[cv2.dilate(own, ring) > 0] = 0
    shift = np.array([[1, 0, -x0], [0, 1, -y0], [0, 0, 1]], np.float64) @ to_flat
    cover = cv2.warpPerspective(
        hide, shift, size, flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP, borderMode=cv2.BORDER_CONSTANT
    )
    return np.asarray(np.maximum(image, cover), dtype=np.uint8)


def _box(hull: NDArray[np.float64], shape: tuple[int, ...]) -> Box:
    x0, y0 = np.maximum(np.floor(hull.min(axis=0)), 0).astype(int)
    x1, y1 = np.minimum(np.ceil(hull.max(axis=0)), (shape[1], shape[0])).astype(int)
    return Box(int(x0), int(y0), int(x1 - x0), int(y1 - y0))


def _clockwise(hull: NDArray[np.float64], shape: tuple[int, ...]) -> tuple[tuple[float, float], ...]:
    """The outline clockwise on the picture, starting at the top left, kept within it."""
    kept = np.clip(hull, 0, (shape[1], shape[0]))
    centre = kept.mean(axis=0)
    order = np.argsort(np.arctan2(kept[:, 1] - centre[1], kept[:, 0] - centre[0]), kind="stable")
    ring = kept[order]
    ring = np.roll(ring, -int(np.argmin(ring.sum(axis=1))), axis=0)
    return tuple((round(float(x), 2), round(float(y), 2)) for x, y in ring)
