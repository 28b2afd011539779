"""How large, how thick and where must the writing stand before the reader looks at it?

Strokes and pictures meet in one frame: ink bright on 0, the typical piece (stroke, or connected component of ink)
a fixed number of pixels high. The same formula serves both, so a reader taught on strokes reads photographs.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = [
    "CanonicalFrame", "CanonicalImage", "draw_motion", "draw_strokes", "from_picture", "from_strokes", "motion_values",
    "typical_height",
]  # fmt: skip

_INK_LEVEL: Final = 90  # of 255: fainter than this is paper when pieces are measured
_SPECK: Final = 3  # px: smaller components are dust
_ENLARGE_MAX: Final = 4.0
_FAINT_LEVEL: Final = 60  # of 255: ink fainter than this is not stretched, it may be paper grain
_STRONG_LEVEL: Final = 200.0  # of 255: ink is stretched to this, as strong as the faintest pen the reader was taught
_PEN: Final = 3  # px, in the canonical frame
_SUBPIXEL_BITS: Final = 4
_MOTION_REACH: Final = 2.0  # px of the path, both ways, over which a direction is taken


@dataclass(frozen=True, slots=True)
class CanonicalFrame:
    """The frame a model was taught in; the values travel in the model's metadata.

    height: of the typical piece. margin: blank border. max_height, max_width: of the whole. All in px.
    """

    height: float = 40.0
    margin: int = 8
    max_height: int = 208
    max_width: int = 1152

    def __post_init__(self) -> None:
        inner = min(self.max_height, self.max_width) - 2 * self.margin
        if self.height <= 0 or self.margin < 0 or inner <= 0:
            raise ValueError("A canonical frame needs room inside its margins.")

    def scale(self, piece_height: float, width: float, height: float) -> float:
        """Factor that brings pieces to the frame's height, less where the whole would not fit."""
        return min(
            self.height / max(piece_height, 1e-3),
            (self.max_height - 2 * self.margin) / max(height, 1e-3),
            (self.max_width - 2 * self.margin) / max(width, 1e-3),
        )


@dataclass(frozen=True, slots=True)
class CanonicalImage:
    """pixels: uint8, shape (H, W), ink bright on 0. to_input: affine map (3, 3) from these pixels to the input's.

    motion: uint8, shape (2, H, W), of pen strokes as draw_motion makes it; None where only a picture is known.
    """

    pixels: NDArray[np.uint8]
    to_input: NDArray[np.float64]
    motion: NDArray[np.uint8] | None = None


def typical_height(heights: NDArray[np.float64], widths: NDArray[np.float64]) -> float:
    """The height of a typical piece, unmoved by dots, bars and tall brackets.

    Args:
        heights, widths: of the pieces of a line, shape (n,), in any unit.
    """
    if not len(heights):
        return 1.0
    reference = float(np.percentile(heights, 85))
    kept = heights[heights > 0.35 * reference]
    middle = float(np.median(kept)) if len(kept) and reference > 0 else 0.0
    widest = max(float(heights.max()), 0.25 * float(widths.max()))  # a minus sign or dots alone
    return max(middle, 0.2 * widest, 1e-3)


def from_strokes(strokes: Sequence[NDArray[np.floating]], frame: CanonicalFrame) -> CanonicalImage:
    """Draw pen strokes in the canonical frame.

    Args:
        strokes: each of shape (n, 2): x to the right, y downwards, any unit; finite. Empty ones are passed over.
    """
    written = [np.asarray(stroke[:, :2], np.float64) for stroke in strokes if len(stroke)]
    if not written:
        return _blank()
    low = np.array([stroke.min(axis=0) for stroke in written])
    high = np.array([stroke.max(axis=0) for stroke in written])
    pieces = high - low
    origin = low.min(axis=0)
    extent = high.max(axis=0) - origin
    scale = frame.scale(typical_height(pieces[:, 1], pieces[:, 0]), float(extent[0]), float(extent[1]))
    width, height = (int(np.ceil(side * scale)) + 2 * frame.margin for side in extent)
    drawn = [(stroke - origin) * scale + frame.margin for stroke in written]
    pixels = draw_strokes(drawn, (width, height), pen=_PEN)
    points, offsets = np.concatenate(drawn), np.cumsum([0, *map(len, drawn)])
    motion = draw_motion(points, offsets, np.arange(len(drawn)), (width, height))
    return CanonicalImage(pixels, _affine(1 / scale, origin - frame.margin / scale), motion)


def draw_motion(
    points: NDArray[np.floating],
    offsets: NDArray[np.integer],
    strokes: NDArray[np.integer],
    size: tuple[int, int],
) -> NDArray[np.uint8]:
    """How the pen went, drawn under its ink: uint8 (2, height, width), 0 where no stroke is known.

    The first plane is the direction, 1 to 255 for a whole turn; the second is the place of the stroke in the order of
    writing, 1 for the first and 255 for the last.

    Args:
        points, offsets: strokes one behind the other, in pixels, float (N, 2) and int (count + 1).
        strokes: numbers of the strokes to draw, in the order of writing.
        size: (width, height).
    """
    planes = np.zeros((2, size[1], size[0]), np.uint8)
    if not len(strokes):
        return planes
    lengths = (offsets[1:] - offsets[:-1])[strokes]
    first = np.cumsum(lengths) - lengths
    index = np.repeat(offsets[:-1][strokes] - first, lengths) + np.arange(lengths.sum())
    path = points[index].astype(np.float64)
    steps = np.hypot(*np.diff(path, axis=0).T)
    steps[first[1:] - 1] = 1.0  # from one stroke to the next
    at = np.r_[0.0, np.cumsum(steps)]
    begin, end = at[first], at[first + lengths - 1]
    along = np.arange(0.0, at[-1] + 1.0)
    owner = np.searchsorted(begin, along, side="right") - 1
    kept = along <= end[owner]
    along, owner = along[kept], owner[kept]
    low, high = np.maximum(along - _MOTION_REACH, begin[owner]), np.minimum(along + _MOTION_REACH, end[owner])
    ahead = np.stack([np.interp(high, at, axis) - np.interp(low, at, axis) for axis in path.T])
    turn = np.arctan2(ahead[1], ahead[0]) / (2 * np.pi) % 1.0
    place = owner / max(1, len(strokes) - 1)
    values = (1 + 254 * np.stack([turn, place])).astype(np.uint8)
    x, y = (np.rint(np.interp(along, at, axis)).astype(np.int64) for axis in path.T)
    for down in (-1, 1, 0):
        for right in (-1, 1, 0):
            planes[:, np.clip(y + down, 0, size[1] - 1), np.clip(x + right, 0, size[0] - 1)] = values
    return planes


def motion_values(motion: NDArray[np.uint8]) -> NDArray[np.float32]:
    """The planes as the network takes them: (3, H, W), cosine and sine of the direction and -1 to 1 for the order."""
    known = motion[0] > 0
    angle = (motion[0].astype(np.float32) - 1) * np.float32(2 * np.pi / 254)
    order = (motion[1].astype(np.float32) - 1) * np.float32(2 / 254) - 1
    values: NDArray[np.float32] = np.stack([np.cos(angle), np.sin(angle), order]) * known
    return values


def draw_strokes(strokes: Sequence[NDArray[np.float64]], size: tuple[int, int], *, pen: int) -> NDArray[np.uint8]:
    """Draw strokes, given in pixels, as a round pen would: ink 255 on 0. size is (width, height)."""
    pixels = np.zeros((size[1], size[0]), np.uint8)
    unit = 1 << _SUBPIXEL_BITS
    for stroke in strokes:
        points = np.round(stroke * unit).astype(np.int32)
        if len(points) == 1 or bool((np.ptp(points, axis=0) < unit).all()):
            centre = (int(points[0, 0]), int(points[0, 1]))
            cv2.circle(pixels, centre, int(max(1.0, pen * 0.65) * unit), 255, -1, cv2.LINE_AA, _SUBPIXEL_BITS)
        else:
            cv2.polylines(pixels, [points], False, 255, pen, cv2.LINE_AA, _SUBPIXEL_BITS)
    return pixels


def from_picture(picture: NDArray[np.uint8], frame: CanonicalFrame) -> CanonicalImage:
    """Bring the picture of one line to the canonical frame.

    Args:
        picture: shape (h, w), evened grey: ink dark on light paper.
    """
    if picture.ndim != 2 or not picture.size:
        raise ValueError("The picture of a line is one grey channel.")
    ink = _strengthened(255 - picture)
    dark = (ink > _INK_LEVEL).astype(np.uint8)
    _, _, stats, _ = cv2.connectedComponentsWithStats(dark, connectivity=8)
    stats = stats[1:][stats[1:, cv2.CC_STAT_AREA] >= _SPECK]
    if not len(stats):
        return _blank()
    left, top = int(stats[:, 0].min()), int(stats[:, 1].min())
    right, bottom = int((stats[:, 0] + stats[:, 2]).max()), int((stats[:, 1] + stats[:, 3]).max())
    pen = min(_pen_width(dark[top:bottom, left:right]), 4.0)
    piece = typical_height(stats[:, 3] - pen, stats[:, 2] - pen)
    scale = min(frame.scale(piece, right - left, bottom - top), _ENLARGE_MAX)
    cut = ink[top:bottom, left:right]
    if abs(scale - 1) > 1e-3:
        size = (max(1, round(cut.shape[1] * scale)), max(1, round(cut.shape[0] * scale)))
        cut = cv2.resize(cut, size, interpolation=cv2.INTER_AREA if scale < 1 else cv2.INTER_LINEAR).astype(np.uint8)
    # Pixel centres: (u + 1/2) / scale - 1/2 is the input pixel under canonical pixel u.
    shift = np.array([left, top]) + 0.5 / scale - 0.5 - frame.margin / scale
    return CanonicalImage(np.pad(cut, frame.margin), _affine(1 / scale, shift))


def _pen_width(dark: NDArray[np.uint8]) -> float:
    """Twice the ink's area over its outline, twice since the outline is drawn on both sides; in px."""
    outline = cv2.morphologyEx(dark, cv2.MORPH_GRADIENT, np.ones((3, 3), np.uint8))
    return 4.0 * float(dark.sum()) / max(1.0, float(outline.sum()))


def _strengthened(ink: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """Stretch faint pencil to the strength of a pen; strong ink is left as it is."""
    visible = ink[ink > _FAINT_LEVEL // 2]
    if not len(visible):
        return ink
    level = float(np.percentile(visible, 95))
    if not _FAINT_LEVEL <= level < _STRONG_LEVEL:
        return ink
    stretched: NDArray[np.uint8] = np.minimum(ink.astype(np.float32) * (_STRONG_LEVEL / level), 255).astype(np.uint8)
    return stretched


def _affine(scale: float, shift: NDArray[np.float64]) -> NDArray[np.float64]:
    return np.array([[scale, 0.0, shift[0]], [0.0, scale, shift[1]], [0.0, 0.0, 1.0]])


def _blank() -> CanonicalImage:
    return CanonicalImage(np.zeros((32, 32), np.uint8), np.eye(3))
