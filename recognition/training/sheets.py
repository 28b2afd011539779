"""A written page seen straight from above: lines of mathematics in one hand on plain, ruled or squared paper."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import normalise, parse
from recognition.training.bank import SymbolBank
from recognition.training.fonts import Font
from recognition.training.layout import Drawing, draw_line
from recognition.training.style import Style

__all__ = [
    "Hand", "LineDrawing", "Paper", "SheetDrawing", "blank_sheet", "inked", "jittered", "write_line", "write_sheet",
]

_SHIFT = 4
"""Fractional bits of OpenCV's drawing coordinates."""
MM = 10.5
"""Pixels a millimetre: an A5 page of an exercise book is 1554 x 2205."""


@dataclass(frozen=True, slots=True)
class Hand:
    """How the pupil writes.

    font: None writes from the bank's ink; digit: height of a digit in pixels; pen: thickness of a stroke in pixels;
    colour: RGB of the ink; slant: lean of the letters; drift: fall of a line a pixel; wobble: strength of the jitter.
    """

    font: Font | None
    digit: float = 44.0
    pen: float = 4.0
    colour: tuple[int, int, int] = (28, 34, 92)
    slant: float = 0.0
    drift: float = 0.0
    wobble: float = 1.0


@dataclass(frozen=True, slots=True)
class Paper:
    """pattern: "plain", "ruled" (8 mm) or "squared" (5 mm); shade: RGB of the sheet; margin_line: a red rule left."""

    pattern: str = "plain"
    shade: tuple[int, int, int] = (249, 248, 243)
    rule: tuple[int, int, int] = (166, 190, 222)
    margin_line: bool = False


@dataclass(frozen=True, slots=True)
class SheetDrawing:
    """image: RGB, shape (h, w, 3); boxes: x0, y0, x1, y1 of the ink of each line, in pixels of the image.

    hulls: convex outline of the ink of each line, shape (n, 2), clockwise. ink: shape (h, w), 255 where the pen went.
    """

    image: NDArray[np.uint8]
    boxes: tuple[tuple[float, float, float, float], ...]
    hulls: tuple[NDArray[np.float64], ...]
    ink: NDArray[np.uint8]


@dataclass(frozen=True, slots=True)
class LineDrawing:
    """One written line: box x0, y0, x1, y1 and convex outline (n, 2) of its ink, its drawing, points on the sheet."""

    box: tuple[float, float, float, float]
    hull: NDArray[np.float64]
    drawing: Drawing
    points: NDArray[np.float32]


def write_sheet(
    lines: Sequence[str], bank: SymbolBank, hand: Hand, paper: Paper, rng: random.Random, *,
    size: tuple[int, int] = (1554, 2198), top: float = 190.0, left: float = 170.0, gap: float = 1.1,
    indent: float = 0.6, room: float = 0.0,
) -> SheetDrawing:
    """Write lines one below the other.

    Args:
        lines: canonical or plain LaTeX; a line that begins with "=" is set in by `indent`.
        size: (width, height) of the sheet in pixels.
        top, left: where writing begins, in pixels.
        gap: free height between two lines, in digit heights; on patterned paper lines sit on the rules.
        indent: in digit heights.
        room: added between symbols, in digit heights; about the pen's thickness keeps a decimal point from its digits.
    """
    width, height = size
    noise = np.random.default_rng(rng.getrandbits(64))
    image = blank_sheet(size, paper, noise)
    ink = np.zeros((height, width), np.uint8)
    boxes, hulls = [], []
    y = top
    for number, latex in enumerate(lines):
        start = left + (hand.digit * indent if latex.lstrip().startswith("=") else 0.0)
        line = write_line(latex, bank, hand, paper, rng, ink, at=(start, y), right=width - 60, room=room)
        boxes.append(line.box)
        hulls.append(line.hull)
        y = boxes[-1][3] + hand.digit * gap * (1 + rng.gauss(0, 0.08)) * (0.75 if number + 1 < len(lines) else 1)
    return SheetDrawing(inked(image, ink, hand, noise), tuple(boxes), tuple(hulls), ink)


def write_line(
    latex: str, bank: SymbolBank, hand: Hand, paper: Paper, rng: random.Random, ink: NDArray[np.uint8], *,
    at: tuple[float, float], right: float, room: float = 0.0,
) -> LineDrawing:
    """Write one line into a picture of ink.

    Args:
        latex: canonical or plain LaTeX.
        ink: shape (h, w), 255 where the pen went; the line is drawn into it.
        at: where writing begins: x, and y of the top; on patterned paper the line moves down to a rule.
        right: writing that would run past this x is made smaller.
        room: added between symbols, in digit heights.
    """
    style = _style(hand, rng, room)
    drawing = draw_line(parse(" ".join(normalise(latex))), bank, style, rng)
    points = jittered(drawing, rng, hand.wobble) * hand.digit
    points[:, 0] -= points[:, 1] * hand.slant
    x = at[0] + hand.digit * rng.gauss(0, 0.12)
    widest = float(np.ptp(points[:, 0]))
    if x + widest > right:
        points *= (right - x) / widest
    points[:, 0] += x - points[:, 0].min()
    slope = hand.drift + rng.gauss(0, 0.004)
    points[:, 1] += (points[:, 0] - x) * slope
    rise = -float(points[:, 1].min())
    baseline = _baseline(at[1] + rise, paper, hand)
    points[:, 1] += baseline + rng.gauss(0, 0.03) * hand.digit
    _draw(ink, drawing, points, hand, rng)
    half = hand.pen / 2
    low, high = points.min(axis=0), points.max(axis=0)
    box = (float(low[0]) - half, float(low[1]) - half, float(high[0]) + half, float(high[1]) + half)
    rim = np.concatenate([points + offset for offset in ((-half, 0), (half, 0), (0, -half), (0, half))])
    hull = cv2.convexHull(rim.astype(np.float32)).reshape(-1, 2).astype(np.float64)
    return LineDrawing(box, hull, drawing, points)


def jittered(drawing: Drawing, rng: random.Random, strength: float) -> NDArray[np.float32]:
    """Points of a drawing with every symbol turned, stretched and bent a little in its own way."""
    points = drawing.points.copy()
    noise = np.random.default_rng(rng.getrandbits(64))
    for token in np.unique(drawing.token):
        pieces = np.flatnonzero(drawing.token == token)
        index = np.concatenate([np.arange(drawing.offsets[p], drawing.offsets[p + 1]) for p in pieces])
        part = points[index]
        size = np.ptp(part, axis=0).max()
        if size > 1.6:  # long bars, roots and tall brackets have bends of their own
            continue
        centre = part.mean(axis=0)
        angle = noise.normal(0, 0.035) * strength
        turn = np.array([[np.cos(angle), -np.sin(angle)], [np.sin(angle), np.cos(angle)]])
        offset = (part - centre) @ turn.T
        phase, wave = noise.uniform(0, 2 * np.pi, (2, 2)), noise.uniform(2.5, 5.5, (2, 2))
        bend = np.stack([
            np.sin(offset[:, 1] * wave[0, 0] + phase[0, 0]) + np.sin(offset[:, 0] * wave[0, 1] + phase[0, 1]),
            np.sin(offset[:, 0] * wave[1, 0] + phase[1, 0]) + np.sin(offset[:, 1] * wave[1, 1] + phase[1, 1]),
        ], axis=1)
        points[index] = centre + offset + bend * (0.018 * strength * noise.uniform(0.4, 1.2))
    return points


def _style(hand: Hand, rng: random.Random, room: float) -> Style:
    return Style(
        font=hand.font, gap=0.12 + room + rng.uniform(-0.02, 0.04), operator_gap=0.24 + room, size_spread=0.05,
        aspect_spread=0.05, baseline_spread=0.035, script_size=0.62, fraction_gap=0.17, fraction_overhang=0.14,
        bow=0.012,
    )


def _baseline(y: float, paper: Paper, hand: Hand) -> float:
    """Where the baseline falls: pupils write on the rules of ruled paper, less strictly on squares."""
    pitch = {"ruled": 8 * MM, "squared": 5 * MM}.get(paper.pattern)
    if pitch is None:
        return y
    return float(np.ceil((y - 0.1 * hand.digit) / pitch) * pitch - 0.06 * hand.digit)


def blank_sheet(size: tuple[int, int], paper: Paper, noise: np.random.Generator) -> NDArray[np.uint8]:
    """Paper before anything is written, RGB, shape (height, width, 3)."""
    width, height = size
    image = np.empty((height, width, 3), np.float32)
    image[:] = paper.shade
    cloud = cv2.resize(noise.normal(0, 1, (24, 18)).astype(np.float32), size, interpolation=cv2.INTER_CUBIC)
    image += cloud[:, :, None] * 1.6
    sheet = np.clip(image, 0, 255).astype(np.uint8)
    pitch = {"ruled": 8 * MM, "squared": 5 * MM}.get(paper.pattern)
    if pitch is not None:
        for k in range(1, int(height / pitch) + 1):
            _rule(sheet, (0, k * pitch), (width, k * pitch), paper.rule)
        if paper.pattern == "squared":
            for k in range(1, int(width / pitch) + 1):
                _rule(sheet, (k * pitch, 0), (k * pitch, height), paper.rule)
    if paper.margin_line:
        _rule(sheet, (18 * MM, 0), (18 * MM, height), (226, 150, 150))
    return sheet


def _rule(
    sheet: NDArray[np.uint8], a: tuple[float, float], b: tuple[float, float], colour: tuple[int, int, int]
) -> None:
    one, two = (tuple(round(v * (1 << _SHIFT)) for v in p) for p in (a, b))
    cv2.line(sheet, one, two, colour, 2, cv2.LINE_AA, _SHIFT)


def _draw(
    ink: NDArray[np.uint8], drawing: Drawing, points: NDArray[np.float32], hand: Hand, rng: random.Random
) -> None:
    """Ink of one line: strokes with round ends, outlines filled and their rim thickened to the pen."""
    fixed = np.rint(points * (1 << _SHIFT)).astype(np.int32)
    pen = max(1, round(hand.pen + rng.gauss(0, 0.2)))
    filled: dict[int, list[NDArray[np.int32]]] = {}
    for piece in range(len(drawing.filled)):
        part = fixed[drawing.offsets[piece]: drawing.offsets[piece + 1]].reshape(-1, 1, 2)
        if drawing.filled[piece]:
            filled.setdefault(int(drawing.token[piece]), []).append(part)
        else:
            cv2.polylines(ink, [part], False, 255, pen, cv2.LINE_AA, _SHIFT)
    for contours in filled.values():
        cv2.fillPoly(ink, contours, 255, cv2.LINE_AA, _SHIFT)
        rim = max(1, round(hand.pen * 0.3))
        cv2.polylines(ink, contours, True, 255, rim, cv2.LINE_AA, _SHIFT)


def inked(
    sheet: NDArray[np.uint8], ink: NDArray[np.uint8], hand: Hand, noise: np.random.Generator
) -> NDArray[np.uint8]:
    """Lay ink on paper, denser here and fainter there as a ball pen writes."""
    height, width = ink.shape
    flow = cv2.resize(noise.normal(0, 1, (height // 14, width // 14)).astype(np.float32), (width, height))
    grain = cv2.GaussianBlur(noise.normal(0, 1, ink.shape).astype(np.float32), (0, 0), 0.8)
    cover = cv2.GaussianBlur(ink, (0, 0), 0.6).astype(np.float32) / 255
    cover *= np.clip(0.9 + 0.07 * flow + 0.12 * grain, 0.45, 1.0)
    colour = np.array(hand.colour, np.float32)
    mixed = sheet * (1 - cover[:, :, None]) + colour * cover[:, :, None]
    return np.asarray(np.clip(mixed, 0, 255), dtype=np.uint8)
