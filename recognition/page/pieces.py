"""Pieces of ink (connected components) of a page, and the typical height of a letter."""

from __future__ import annotations

from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["LONG_BAR", "Pieces", "all_pieces", "find_pieces", "outline"]


@dataclass(frozen=True, slots=True)
class Pieces:
    """All pieces of a page.

    labels: shape (h, w), 0 for paper, i + 1 for piece i; boxes: shape (n, 4) as x0, y0, x1, y1; area: pixels.
    darkness: mean grey levels below paper; thickness: of the thickest stroke of each piece in pixels.
    letter: usual height of a letter or digit in pixels; pen: usual thickness of a stroke.
    bars: shape (m, 5) as x0, y0, x1, y1, piece: level strokes within larger pieces, such as a fraction bar that a
    letter touches; those shorter than a letter is tall lie at the top or the foot of their piece.
    slanted: pieces that are one straight slanted stroke, such as an arrow or a staple.
    """

    labels: NDArray[np.int32]
    boxes: NDArray[np.float64]
    area: NDArray[np.float64]
    darkness: NDArray[np.float64]
    thickness: NDArray[np.float64]
    letter: float
    pen: float
    bars: NDArray[np.float64]
    slanted: NDArray[np.bool_]

    def flanks(self, even: NDArray[np.uint8]) -> float:
        """Steepness of the rims of the pieces: share of their darkness that is gained within a pixel."""
        if not len(self.boxes):
            return 0.0
        rim = cv2.morphologyEx((self.labels > 0).astype(np.uint8), cv2.MORPH_GRADIENT, np.ones((3, 3), np.uint8)) > 0
        return float(np.median(_steepness(even)[rim]) / np.average(self.darkness, weights=self.area))


_FAINTEST = 0.34
"""Darkness of a piece below this share of the dark pieces' is writing that shines through from the back."""
_LONG_STROKE = 2.6
"""Letter heights; a straight slanted stroke that is longer is an arrow or a crease."""
_STRAIGHT = 0.8
"""Share of such a stroke's ink that lies along its axis; an arrow has a head besides."""
LONG_BAR, _SHORT_BAR = 1.05, 0.6
"""Letter heights; level strokes within a piece are at least so long, and shorter ones where they end the piece."""
_LEAST_STEEPNESS = 0.13
"""Steepest flank of a stroke, as a share of its darkness, a pixel."""


def find_pieces(mask: NDArray[np.uint8], even: NDArray[np.uint8], *, rim: int = 0) -> Pieces:
    """Connected pieces of ink; specks, blots at the border, page-sized frames and faint ghosts are left out.

    Args:
        mask: 255 where ink is.
        even: the evened grey page.
        rim: pixels along the border in which no ink was looked for.
    """
    height, width = mask.shape
    count, labels, stats, _ = cv2.connectedComponentsWithStats(mask, connectivity=8, ltype=cv2.CV_32S)
    x, y, w, h, area = (stats[1:, i].astype(np.float64) for i in range(5))
    if count <= 1:
        return Pieces(labels, np.zeros((0, 4)), np.zeros(0), np.zeros(0), np.zeros(0), 0.0, 0.0, np.zeros((0, 5)),
                      np.zeros(0, bool))
    inked = mask > 0
    darkness = np.bincount(labels[inked], 255.0 - even[inked], minlength=count)[1:] / np.maximum(area, 1)
    usual = _weighted(darkness, area, 0.7)
    pen = _pen(mask)
    seen = darkness > _FAINTEST * usual
    letter = _letter(w[seen], h[seen], area[seen], pen)
    keep = area >= max(4.0, 0.25 * pen * pen)
    keep &= seen
    longer = np.maximum(w, h)
    keep &= longer >= max(2.5, 0.09 * letter)
    near = rim + 1
    at_border = (x <= near) | (y <= near) | (x + w >= width - near) | (y + h >= height - near)
    # At the edge of a sheet table shows; at the edge of a photo a letter may be cut.
    keep &= ~(at_border & ((rim > 0) | (longer > 2.5 * letter) | (area > 0.35 * w * h)))
    keep &= ~((h > 6 * letter) & (w < 0.6 * letter))  # an upright rule or the edge of a sheet
    keep &= ~((h > 5 * letter) & (w > 4 * letter))  # a frame or a drawing
    keep &= ~((area > 0.6 * w * h) & (w > 2 * letter) & (h > 1.2 * letter))  # a blot, a punched hole, a finger
    keep &= ~((w > 0.85 * width) & (h < 0.5 * letter))
    # A solid disc as large as a letter is a punched hole.
    keep &= ~((area > 0.68 * w * h) & (np.minimum(w, h) > 0.8 * letter) & (np.minimum(w, h) > 0.75 * longer))
    slanted = np.zeros(len(w), bool)
    for i in np.flatnonzero(keep & (np.minimum(w, h) > 0.4 * letter) & (area < 0.45 * w * h) & (longer > letter)):
        part = (slice(int(y[i]), int(y[i] + h[i])), slice(int(x[i]), int(x[i] + w[i])))
        slanted[i] = _is_slanted_stroke(labels[part] == i + 1, pen)
    keep &= ~(slanted & (np.hypot(w, h) > _LONG_STROKE * letter))
    edges = None
    for i in np.flatnonzero(keep & (np.maximum(w, h) > 0.6 * letter)):
        part = (slice(int(y[i]), int(y[i] + h[i])), slice(int(x[i]), int(x[i] + w[i])))
        if min(w[i], h[i]) > 2.2 * letter and _is_frame(labels[part] == i + 1):
            keep[i] = False
        elif darkness[i] < 0.75 * usual:
            if edges is None:
                edges = _steepness(even)
            inside = labels[part] == i + 1
            if np.percentile(edges[part][inside], 90) < _LEAST_STEEPNESS * (255 - float(even[part][inside].min())):
                keep[i] = False
    order = np.flatnonzero(keep)
    renumber = np.zeros(count, np.int32)
    renumber[order + 1] = np.arange(1, len(order) + 1)
    boxes = np.column_stack([x, y, x + w, y + h])[order]
    numbered = renumber[labels]
    thickness = _thickness(numbered, len(order))
    return Pieces(
        numbered, boxes, area[order], darkness[order], thickness, letter, pen,
        _inner_bars(numbered, boxes, letter, pen), slanted[order],
    )


def all_pieces(mask: NDArray[np.uint8], even: NDArray[np.uint8], like: Pieces) -> Pieces:
    """Every connected piece larger than a speck, whatever it may be, for a user who says that it is writing.

    Args:
        mask: 255 where ink is.
        even: the evened grey page.
        like: the chosen pieces of the same page, for the height of letters and the pen.
    """
    count, labels, stats, _ = cv2.connectedComponentsWithStats(mask, connectivity=8, ltype=cv2.CV_32S)
    x, y, w, h, area = (stats[1:, i].astype(np.float64) for i in range(5))
    order = np.flatnonzero(area >= 4)
    renumber = np.zeros(count, np.int32)
    renumber[order + 1] = np.arange(1, len(order) + 1)
    numbered = renumber[labels]
    inked = numbered > 0
    darkness = np.bincount(numbered[inked], 255.0 - even[inked], minlength=len(order) + 1)[1:] / area[order]
    boxes = np.column_stack([x, y, x + w, y + h])[order]
    letter = like.letter or float(max(8.0, np.median(h[order]))) if len(order) else 8.0
    thickness = _thickness(numbered, len(order))
    slanted = np.zeros(len(order), bool)
    return Pieces(
        numbered, boxes, area[order], darkness, thickness, letter, like.pen or 3.0, np.zeros((0, 5)), slanted
    )


def _thickness(labels: NDArray[np.int32], count: int) -> NDArray[np.float64]:
    """Twice the greatest distance from a pixel of each piece to paper."""
    ink = labels > 0
    distance = cv2.distanceTransform(ink.astype(np.uint8), cv2.DIST_L2, 3)
    thickest = np.zeros(count + 1)
    np.maximum.at(thickest, labels[ink], distance[ink])
    return 2 * thickest[1:]


def _inner_bars(
    labels: NDArray[np.int32], boxes: NDArray[np.float64], letter: float, pen: float
) -> NDArray[np.float64]:
    """Level strokes within pieces that are more than the stroke: longer than a letter is tall, or at a piece's end."""
    ink = (labels > 0).astype(np.uint8)
    # A stroke that falls by a pixel now and then is still level, hence the dilation.
    thick = cv2.dilate(ink, np.ones((3, 1), np.uint8))
    length = max(5, round(LONG_BAR * letter))
    bars = []
    for least, most in ((length, labels.shape[1]), (max(5, round(_SHORT_BAR * letter)), length - 1)):
        opened = cv2.morphologyEx(thick, cv2.MORPH_OPEN, np.ones((1, least), np.uint8)) & ink
        count, _, stats, _ = cv2.connectedComponentsWithStats(opened, connectivity=8, ltype=cv2.CV_32S)
        for x, y, w, h, _area in stats[1:count]:
            if not least <= w <= most:
                continue
            inside = labels[y: y + h, x: x + w]
            found = np.bincount(inside[inside > 0])
            piece = int(found.argmax()) - 1
            above, below = y - boxes[piece, 1], boxes[piece, 3] - (y + h)
            at_end = min(above, below) < 0.15 * letter
            # A long stroke that falls through the middle of a piece strikes it out.
            if h > max(0.35 * letter, 3 * pen, pen + 0.08 * w if at_end else 0.07 * w):
                continue
            if above + below > 0.3 * letter and (w >= length or at_end):
                bars.append((x, y, x + w, y + h, piece))
    return np.array(bars, np.float64).reshape(-1, 5)


def _is_slanted_stroke(shape: NDArray[np.bool_], pen: float) -> bool:
    """Does nearly all ink lie along one straight slanted axis, from end to end?"""
    ys, xs = np.nonzero(shape)
    points = np.column_stack([xs, ys]).astype(np.float64)
    centre = np.median(points, axis=0)
    _, _, axes = np.linalg.svd(points[:: max(1, len(points) // 500)] - points.mean(axis=0), full_matrices=False)
    along, across = axes[0], axes[1]
    if min(abs(along)) < 0.25:
        return False
    near = np.abs((points - centre) @ across) < max(1.5, 0.9 * pen)
    reach = (points[near] - centre) @ along
    return bool(near.mean() > _STRAIGHT and np.ptp(reach) > 0.9 * np.hypot(*shape.shape))


def _is_frame(shape: NDArray[np.bool_]) -> bool:
    """Has the piece ink along all four sides of its box, as a drawn box has? A root sign has not."""
    height, width = shape.shape
    dy, dx = max(2, height // 7), max(2, width // 7)
    sides = (
        shape[:dy].any(axis=0).mean(), shape[-dy:].any(axis=0).mean(),
        shape[:, :dx].any(axis=1).mean(), shape[:, -dx:].any(axis=1).mean(),
    )
    return bool(min(sides) > 0.7)


def _steepness(even: NDArray[np.uint8]) -> NDArray[np.float32]:
    """Grey levels a pixel: pen strokes have steep flanks, creases and shadows have not."""
    across = cv2.Sobel(even, cv2.CV_32F, 1, 0, scale=0.125)
    down = cv2.Sobel(even, cv2.CV_32F, 0, 1, scale=0.125)
    return np.asarray(cv2.magnitude(across, down), dtype=np.float32)


def _pen(mask: NDArray[np.uint8]) -> float:
    """Thickness of strokes: ink area over half the length of its rim."""
    ink = int(np.count_nonzero(mask))
    inner = int(np.count_nonzero(cv2.erode(mask, np.ones((3, 3), np.uint8))))
    rim = max(1, ink - inner)
    return max(1.0, 2.0 * ink / rim)


def _letter(w: NDArray[np.float64], h: NDArray[np.float64], area: NDArray[np.float64], pen: float) -> float:
    """Median height of those pieces that look like letters: neither specks nor bars nor drawings."""
    fair = (h > 3 * pen) & (h > 7) & (w < 8 * h) & (w > 0.12 * h) & (area > 1.5 * pen * h * 0.5)
    heights = h[fair]
    if heights.size == 0:
        return float(max(8.0, np.median(h)))
    # Specks may outnumber letters, so weight each height by the ink it holds.
    return max(8.0, _weighted(heights, np.minimum(area[fair], np.percentile(area[fair], 90)), 0.45))


def _weighted(values: NDArray[np.float64], weights: NDArray[np.float64], share: float) -> float:
    """Weighted quantile."""
    order = np.argsort(values)
    total = np.cumsum(weights[order])
    return float(values[order][min(int(np.searchsorted(total, share * total[-1])), values.size - 1)])


def outline(boxes: NDArray[np.float64]) -> NDArray[np.float64]:
    """The box around boxes: shape (n, 4) as x0, y0, x1, y1 -> (4,)."""
    return np.concatenate([boxes[:, :2].min(axis=0), boxes[:, 2:].max(axis=0)])
