"""A drawing becomes the image that the reader would get: bent, drawn with some pen, soiled, scaled to the frame."""

from __future__ import annotations

import math
from typing import Final, NamedTuple

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.reader.canonical import CanonicalFrame, draw_motion, from_picture, typical_height
from recognition.training.bank import cut
from recognition.training.deformation import bending, frayed, rebent
from recognition.training.layout import Drawing

__all__ = ["LineImage", "draw", "pen_line", "photographed_line", "token_boxes", "warped"]

_BITS: Final = 4
_BENT_SHARE: Final = 0.7  # of the lines whose symbols are bent one by one
_FRAYED_SHARE: Final = 0.5
_PENS: Final = (1, 2, 3, 4, 5)
_MOTION_SHARE: Final = 0.62  # of the lines drawn with a pen; the others are shown as pictures
_PEN_SHARES: Final = (0.07, 0.33, 0.37, 0.18, 0.05)

Points = NDArray[np.float32]


class LineImage(NamedTuple):
    """pixels: uint8 (H, W), ink bright on 0; boxes: float32 (tokens, 4), x0 y0 x1 y1, NaN where a token has no ink.

    motion: uint8 (2, H, W) as draw_motion makes it, or None for a picture.
    """

    pixels: NDArray[np.uint8]
    boxes: NDArray[np.float32]
    motion: NDArray[np.uint8] | None = None


def warped(drawing: Drawing, rng: np.random.Generator) -> Points:
    """The points after a hand's unsteadiness: each symbol moved and bent a little, smooth bends, tremor, slant."""
    points, counts = drawing.points.astype(np.float32), np.diff(drawing.offsets)
    low, high = _piece_boxes(points, drawing.offsets)
    unit = _typical(low, high)
    if rng.random() < 0.7:
        points = _jittered(points, counts, drawing.token, low, high, unit, rng)
    if rng.random() < 0.8:
        for _ in range(3):
            points = _bent(points, unit, rng)
    if rng.random() < 0.25:
        points = points + rng.normal(0, 0.008 * unit, points.shape).astype(np.float32)
    shear, aspect = rng.normal(0, 0.17), math.exp(rng.normal(0, 0.13))
    turn = rng.normal(0, 0.08 if rng.random() < 0.05 else 0.025)
    cos, sin = math.cos(turn), math.sin(turn)
    matrix = np.diag((aspect, 1 / aspect)) @ np.array(((1, -shear), (0, 1))) @ np.array(((cos, -sin), (sin, cos)))
    slanted: Points = points @ matrix.T.astype(np.float32)
    return slanted


def token_boxes(points: Points, drawing: Drawing, count: int) -> NDArray[np.float32]:
    """Boxes of the tokens that have ink: float32 (count, 4), NaN for the others."""
    boxes = np.full((count, 4), np.nan, np.float32)
    low, high = _piece_boxes(points, drawing.offsets)
    for token in np.unique(drawing.token[drawing.token >= 0]):
        mine = drawing.token == token
        boxes[token] = (*low[mine].min(0), *high[mine].max(0))
    return boxes


def pen_line(drawing: Drawing, count: int, frame: CanonicalFrame, rng: np.random.Generator | None) -> LineImage:
    """The drawing as pen strokes in the frame; with `rng` bent, soiled and in any pen, without it plain."""
    if rng is not None and rng.random() < _FRAYED_SHARE:
        drawing = _with_frayed_ends(drawing, rng)
    points = drawing.points if rng is None else warped(drawing, rng)
    low, high = _piece_boxes(points, _symbol_offsets(drawing))
    grow = 1.0 if rng is None else math.exp(rng.normal(0, 0.16))
    origin, extent = low.min(0), high.max(0) - low.min(0)
    sized = CanonicalFrame(frame.height * grow, frame.margin, frame.max_height, frame.max_width)
    scale = sized.scale(_typical(low, high), float(extent[0]), float(extent[1]))
    left, top, right, bottom = (0, 0, 0, 0) if rng is None else rng.integers(-5, 9, 4).tolist()
    points = (points - origin) * np.float32(scale) + np.array((frame.margin + left, frame.margin + top), np.float32)
    width = max(16, math.ceil(extent[0] * scale) + 2 * frame.margin + left + right)
    height = max(16, math.ceil(extent[1] * scale) + 2 * frame.margin + top + bottom)
    pen = 3 if rng is None else int(rng.choice(_PENS, p=_PEN_SHARES))
    pixels = draw(points, drawing, (width, height), pen, rng)
    motion = None
    if rng is None or rng.random() < _MOTION_SHARE:
        motion = draw_motion(points, drawing.offsets, _order_of_writing(drawing, rng), (width, height))
    elif rng.random() < 0.7:
        _soil(pixels, pen, 40.0, rng)
    return LineImage(pixels, token_boxes(points, drawing, count), motion)


def _order_of_writing(drawing: Drawing, rng: np.random.Generator | None) -> NDArray[np.intp]:
    """Numbers of the strokes as they were written; now and then one is put in later, as a forgotten dot or bar is."""
    order = np.flatnonzero(~drawing.filled)
    if rng is not None and len(order) > 2 and rng.random() < 0.12:
        late = int(rng.integers(len(order)))
        order = np.r_[np.delete(order, late), order[late]]
    return order


def photographed_line(drawing: Drawing, count: int, frame: CanonicalFrame, rng: np.random.Generator) -> LineImage:
    """The drawing as a cut from a photo: drawn at any size, blurred, packed, then brought to the frame as a picture."""
    if rng.random() < _FRAYED_SHARE:
        drawing = _with_frayed_ends(drawing, rng)
    points = warped(drawing, rng)
    low, high = _piece_boxes(points, _symbol_offsets(drawing))
    size = 40 * math.exp(rng.uniform(math.log(0.4), math.log(2.0)))
    extent = high.max(0) - low.min(0)
    scale = min(size / _typical(low, high), 420 / max(float(extent[1]), 1e-3), 2400 / max(float(extent[0]), 1e-3))
    border = 10
    points = (points - low.min(0)) * np.float32(scale) + np.float32(border)
    width, height = (math.ceil(side * scale) + 2 * border for side in extent)
    thickness = size / 40 * rng.choice(_PENS, p=_PEN_SHARES)
    pen = max(1, round(thickness))
    pixels = draw(points, drawing, (width, height), pen, rng)
    _soil(pixels, pen, size, rng)
    if rng.random() < 0.25:
        pixels = _ruled(pixels, size, rng)
    if rng.random() < 0.5:
        pixels = cv2.GaussianBlur(pixels, (0, 0), size / 40 * rng.uniform(0.3, 1.3) + 0.01)
    if rng.random() < 0.35:
        pixels = (pixels * rng.uniform(0.45, 1.0)).astype(np.uint8)
    if rng.random() < 0.2:
        good, data = cv2.imencode(".jpg", pixels, [cv2.IMWRITE_JPEG_QUALITY, int(rng.integers(25, 85))])
        if good:
            pixels = np.asarray(cv2.imdecode(data, cv2.IMREAD_GRAYSCALE), np.uint8)
    if rng.random() < 0.12:
        pixels = np.where(pixels > rng.integers(60, 150), 255, 0).astype(np.uint8)
    grow = math.exp(rng.normal(0, 0.1))
    sized = CanonicalFrame(frame.height * grow, frame.margin, frame.max_height, frame.max_width)
    found = from_picture(255 - pixels, sized)
    shown = found.to_input
    boxes = token_boxes(points, drawing, count)
    boxes[:, 0::2] = (boxes[:, 0::2] - shown[0, 2]) / shown[0, 0]
    boxes[:, 1::2] = (boxes[:, 1::2] - shown[1, 2]) / shown[1, 1]
    return LineImage(found.pixels, boxes)


def draw(
    points: Points, drawing: Drawing, size: tuple[int, int], pen: int, rng: np.random.Generator | None
) -> NDArray[np.uint8]:
    """Draw strokes with a round pen and fill outlines: uint8 (height, width), ink 255 on 0; size is (width, height)."""
    pixels = np.zeros((size[1], size[0]), np.uint8)
    pieces = cut(np.round(points * (1 << _BITS)).astype(np.int32), drawing.offsets)  # type: ignore[arg-type]
    varied = rng is not None and rng.random() < 0.3
    number = 0
    while number < len(pieces):
        if drawing.filled[number]:
            end = number
            while end < len(pieces) and drawing.filled[end] and drawing.token[end] == drawing.token[number]:
                end += 1
            contours = pieces[number:end]
            cv2.fillPoly(pixels, contours, (255,), cv2.LINE_AA, _BITS)
            if pen > 2:
                cv2.polylines(pixels, contours, True, (255,), pen - 2 if pen > 3 else 1, cv2.LINE_AA, _BITS)
            number = end
            continue
        stroke = pieces[number]
        width = pen if rng is None or not varied else max(1, pen + int(rng.integers(-1, 2)))
        if len(stroke) == 1 or bool((np.ptp(stroke, axis=0) < 1 << _BITS).all()):
            centre = (int(stroke[0, 0]), int(stroke[0, 1]))
            cv2.circle(pixels, centre, int(max(1.0, width * 0.65) * (1 << _BITS)), (255,), -1, cv2.LINE_AA, _BITS)
        else:
            cv2.polylines(pixels, [stroke], False, (255,), width, cv2.LINE_AA, _BITS)
        number += 1
    return pixels


def _with_frayed_ends(drawing: Drawing, rng: np.random.Generator) -> Drawing:
    strokes = [
        stroke if filled else frayed(stroke, rng)
        for stroke, filled in zip(cut(drawing.points, drawing.offsets), drawing.filled, strict=True)
    ]
    offsets = np.cumsum([0, *map(len, strokes)]).astype(np.int64)
    return Drawing(np.concatenate(strokes).astype(np.float32), offsets, drawing.filled, drawing.token)


def _piece_boxes(points: Points, offsets: NDArray[np.int64]) -> tuple[Points, Points]:
    starts = offsets[:-1]
    return np.minimum.reduceat(points, starts, axis=0), np.maximum.reduceat(points, starts, axis=0)


def _typical(low: Points, high: Points) -> float:
    size = (high - low).astype(np.float64)
    return typical_height(size[:, 1], size[:, 0])


def _symbol_offsets(drawing: Drawing) -> NDArray[np.int64]:
    """Pieces as they are measured: strokes one by one, the contours of one glyph together."""
    if not drawing.filled.any():
        return drawing.offsets
    first = np.r_[True, ~(drawing.filled[1:] & drawing.filled[:-1] & (np.diff(drawing.token) == 0))]
    kept: NDArray[np.int64] = np.r_[drawing.offsets[:-1][first], drawing.offsets[-1]]
    return kept


def _jittered(
    points: Points, counts: NDArray[np.int64], token: NDArray[np.int32], low: Points, high: Points, unit: float,
    rng: np.random.Generator,
) -> Points:  # fmt: skip
    """Move, scale and turn each symbol a little; strokes without a known symbol count one by one."""
    loose = np.flatnonzero(token < 0)
    symbol = token.astype(np.int64)
    symbol[loose] = token.max(initial=0) + 1 + np.arange(len(loose))
    number = int(symbol.max()) + 1
    shift = rng.normal(0, 0.035 * unit * rng.random(), (number, 2)).astype(np.float32)
    scale = np.exp(rng.normal(0, 0.06 * rng.random(), (number, 2))).astype(np.float32)
    angle = rng.normal(0, 0.05 * rng.random(), number).astype(np.float32)
    centre, members = np.zeros((number, 2), np.float32), np.zeros(number, np.float32)
    np.add.at(centre, symbol, (low + high) / 2)
    np.add.at(members, symbol, 1)
    centre /= np.maximum(members, 1)[:, None]
    large = symbol[(high - low).max(1) > 2.5 * unit]
    angle[large] *= 0.2
    scale[large] = 1
    loosened = rng.normal(0, 0.02 * unit * rng.random(), (len(counts), 2)).astype(np.float32)
    loosened[np.bincount(symbol, minlength=number)[symbol] < 2] = 0  # strokes of one symbol against each other
    owner = np.repeat(symbol, counts)
    middle = centre[owner]
    local = (points - middle) * scale[owner] + np.repeat(loosened, counts, axis=0)
    if rng.random() < _BENT_SHARE:
        lowest, highest = np.full((2, number, 2), np.float32(np.inf)) * np.array((1, -1), np.float32)[:, None, None]
        np.minimum.at(lowest, symbol, low)
        np.maximum.at(highest, symbol, high)
        half = np.maximum((highest - lowest).max(1) / 2, 1e-3)[owner, None]
        bends = bending(number, 0.06 * abs(rng.normal()), rng)
        bends[large] = 0
        local = rebent(local / half, bends[owner]) * half
    cos, sin = np.cos(angle)[owner], np.sin(angle)[owner]
    turned = np.stack([local[:, 0] * cos - local[:, 1] * sin, local[:, 0] * sin + local[:, 1] * cos], 1)
    return turned + middle + shift[owner]


def _bent(points: Points, unit: float, rng: np.random.Generator) -> Points:
    wave = unit * math.exp(rng.uniform(math.log(1.2), math.log(8)))
    along, across, phase = rng.uniform(0, 2 * np.pi, 3)
    height = wave * 0.022 * rng.normal()
    at = points @ np.array((math.cos(along), math.sin(along)), np.float32)
    swing = np.sin(at * np.float32(2 * np.pi / wave) + np.float32(phase)) * np.float32(height)
    bent: Points = points + swing[:, None] * np.array((math.cos(across), math.sin(across)), np.float32)
    return bent


def _soil(pixels: NDArray[np.uint8], pen: int, size: float, rng: np.random.Generator) -> None:
    """A remnant of a rule, specks, or the end of a neighbour's stroke."""
    height, width = pixels.shape
    lot = rng.random()
    if lot < 0.05:
        y = int(rng.integers(0, height))
        shade = (int(rng.integers(40, 130)),)
        cv2.line(pixels, (0, y), (width, y + int(rng.normal(0, 3))), shade, max(1, round(size / 40)), cv2.LINE_AA)
    elif lot < 0.09:
        for _ in range(int(rng.integers(1, 6))):
            centre = (int(rng.integers(0, width)), int(rng.integers(0, height)))
            cv2.circle(pixels, centre, max(1, round(size / 50)), (int(rng.integers(60, 255)),), -1, cv2.LINE_AA)
    elif lot < 0.13:
        x, y = int(rng.integers(0, width)), 0 if rng.random() < 0.5 else height - 1
        reach = size / 5
        end = (x + int(rng.normal(0, reach)), y + int(rng.normal(0, reach / 2)))
        cv2.line(pixels, (x, y), end, (255,), pen, cv2.LINE_AA)


def _ruled(pixels: NDArray[np.uint8], size: float, rng: np.random.Generator) -> NDArray[np.uint8]:
    """Faint rests of ruled or squared paper under the ink."""
    height, width = pixels.shape
    paper = np.zeros_like(pixels)
    pitch = size * rng.uniform(0.6, 2.5)
    shade, thick = (int(rng.integers(15, 70)),), max(1, round(size / 60))
    places = np.arange(rng.uniform(0, pitch), max(height, width), pitch)
    for place in places[places < height]:
        cv2.line(paper, (0, int(place)), (width, int(place + rng.normal(0, 2))), shade, thick, cv2.LINE_AA)
    if rng.random() < 0.5:
        for place in places[places < width]:
            cv2.line(paper, (int(place), 0), (int(place + rng.normal(0, 2)), height), shade, thick, cv2.LINE_AA)
    if rng.random() < 0.6:  # removed, but not everywhere
        paper[rng.random(paper.shape) < rng.uniform(0.3, 0.9)] = 0
    merged: NDArray[np.uint8] = np.maximum(pixels, paper)
    return merged
