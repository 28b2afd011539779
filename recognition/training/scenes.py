"""Simulated pages with all that happens on paper, and their truth: what is written where, in which working, what else.

Printed questions, question numbers, two columns, side working, crossings-out, lines that go on below, arrows, an
earlier marking in red or green, margin lines, staples, punched holes; then the photo: table, shadow, curl, a finger.
The same seed gives the same page.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field, replace

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import NotCanonical, is_lower_school, parse, serialise
from recognition.training.bank import SymbolBank
from recognition.training.fonts import page_fonts
from recognition.training.layout import draw_line
from recognition.training.lines import random_line
from recognition.training.markings import draw_marks
from recognition.training.photo import Bend, Finger, Photo, PhotoStyle, photograph
from recognition.training.sheets import MM, Hand, LineDrawing, Paper, blank_sheet, inked, write_line
from recognition.training.style import Style

__all__ = ["KINDS", "Scene", "SceneLine", "make_scene"]

KINDS = ("plain", "ruled", "hard")
SHEET = (1554, 2198)
_INKS = ((28, 34, 92), (34, 46, 120), (36, 36, 40), (88, 88, 92), (20, 60, 150))
_RED, _GREEN = (196, 34, 46), (24, 128, 66)
_RELATIONS = frozenset(("=", "<", ">", r"\le", r"\ge", r"\ne"))
_PRINTED = (
    "1. Expand and simplify.", "Work out the area of the path.", "2. Solve each equation. Show your working.",
    "Find the width of the bed.", "Show that the two areas are equal.",
)


@dataclass(frozen=True, slots=True)
class SceneLine:
    """A written line.

    hull: outline of its ink on the photo, shape (n, 2); box: x0, y0, x1, y1 on the photo.
    working: which working it belongs to; column: which column of the page, -1 for side working.
    goes_on: it continues the line above. clean: the line alone as written, grey, ink dark on white.
    """

    latex: str
    hull: NDArray[np.float64]
    box: tuple[float, float, float, float]
    working: int
    column: int
    struck_out: bool
    goes_on: bool
    clean: NDArray[np.uint8]


@dataclass(frozen=True, slots=True)
class Scene:
    """A photographed page and its truth.

    lines: in reading order, side working last. ink: how far ink covers each pixel of the photo, 0 to 255, lines only.
    aside: boxes on the photo where a found line is neither right nor wrong: print, arrows, lines under a finger.
    colour: RGB of the pupil's ink.
    """

    photo: Photo
    lines: tuple[SceneLine, ...]
    ink: NDArray[np.uint8]
    aside: tuple[tuple[float, float, float, float], ...]
    colour: tuple[int, int, int]
    traits: tuple[str, ...]


@dataclass(slots=True)
class _Desk:
    """A sheet while it is written on."""

    rng: random.Random
    bank: SymbolBank
    hand: Hand
    paper: Paper
    ink: NDArray[np.uint8]
    other: NDArray[np.uint8]
    lines: list[tuple[str, LineDrawing, int, int, bool, bool, NDArray[np.uint8]]] = field(default_factory=list)
    aside: list[tuple[float, float, float, float]] = field(default_factory=list)
    working: int = -1


def make_scene(
    seed: int, kind: str, *, bank: SymbolBank | None = None, size: tuple[int, int] = (1600, 2200),
    quarter_turns: int = 0,
) -> Scene:
    """A page by lot.

    Args:
        kind: "plain", "ruled" (ruled or squared) or "hard" (any paper, with everything).
        bank: ink to write with; None writes in the shipped fonts.
        size: (width, height) of the photo.
        quarter_turns: the photo was taken with the camera turned so often, anticlockwise.
    """
    rng, noise = random.Random(seed), np.random.default_rng(seed)
    hard = kind == "hard"
    fonts = page_fonts()
    font = rng.choice(fonts) if bank is None else None
    shapes = SymbolBank(fonts=fonts) if bank is None else bank
    pattern = {"plain": "plain", "ruled": rng.choice(("ruled", "squared"))}.get(
        kind, rng.choice(("plain", "ruled", "squared"))
    )
    traits: set[str] = {pattern}
    columns = 2 if hard and rng.random() < 0.4 else 1
    colour = rng.choice(_INKS)
    if rng.random() < 0.06:
        colour = _RED
        traits.add("red ink")
    hand = Hand(
        font, digit=rng.uniform(44, 66) * (0.8 if columns == 2 else 1.0), pen=rng.uniform(3.5, 6.5), colour=colour,
        slant=rng.gauss(0, 0.08), drift=rng.gauss(0, 0.012),
    )
    paper = Paper(
        pattern, rng.choice(((249, 248, 243), (252, 252, 252), (244, 240, 226))),
        rng.choice(((166, 190, 222), (150, 178, 210), (196, 204, 214), (178, 206, 190))),
        margin_line=pattern != "plain" and rng.random() < 0.5,
    )
    width, height = SHEET
    desk = _Desk(rng, shapes, hand, paper, np.zeros((height, width), np.uint8), np.zeros((height, width), np.uint8))
    sheet = blank_sheet(SHEET, paper, noise)
    punched = hard and rng.random() < 0.25
    left = rng.uniform(215 if paper.margin_line or punched else 130, 330 if columns == 1 else 240)
    top = rng.uniform(110, 220)
    if rng.random() < 0.25:
        top = _print_question(desk, sheet, left, top)
        traits.add("printed question")
    if columns == 2:
        traits.add("two columns")
        gutter = width * rng.uniform(0.49, 0.55)
        _column(desk, 0, (left, gutter - 45), (top, height - 60), hard)
        _column(desk, 1, (gutter + 30, width - 50), (top + rng.uniform(-15, 40), height - 60), hard)
    else:
        _column(desk, 0, (left, width - 60), (top, height - 60), hard)
        if hard and rng.random() < 0.3 and _side_working(desk):
            traits.add("side working")
    sheet = inked(sheet, desk.ink | desk.other, hand, noise)
    if hard and colour is not _RED and rng.random() < 0.45:
        draw_marks(sheet, [line.box for _, line, *_ in desk.lines], rng.choice((_RED, _GREEN)), rng)
        traits.add("earlier marking")
    if hard and rng.random() < 0.25:
        _staple(sheet, rng)
        traits.add("staple")
    if punched:
        for y in (0.36 * height, 0.64 * height):
            cv2.circle(sheet, (round(11 * MM), round(y)), round(3 * MM), (96, 82, 70), -1, cv2.LINE_AA)
        traits.add("punched holes")
    traits |= {name for name, present in (
        ("crossed out", any(line[4] for line in desk.lines)), ("goes on", any(line[5] for line in desk.lines)),
    ) if present}
    style = PhotoStyle.random(noise, hard=hard)
    bend = None
    if hard and rng.random() < 0.5:
        bend = Bend(SHEET, rng.choice((-1, 1)) * rng.uniform(12, 42), rng.uniform(0.8, 1.7), rng.uniform(0, 1),
                    rng.uniform(0, 30))
        traits.add("curl")
    finger = None
    if hard and rng.random() < 0.3:
        tip = rng.choice(((rng.uniform(0.3, 0.9), 0.95), (0.95, rng.uniform(0.2, 0.9)), (0.04, rng.uniform(0.5, 0.9))))
        finger = Finger(tip, rng.uniform(110, 170), rng.choice(((205, 158, 132), (150, 104, 78), (96, 66, 50))))
        traits.add("finger")
    photo = photograph(sheet, style, size, noise, bend=bend, finger=finger)
    return _truth(desk, photo, finger, colour, tuple(sorted(traits)), quarter_turns)


def _column(
    desk: _Desk, column: int, across: tuple[float, float], down: tuple[float, float], hard: bool
) -> None:
    """Workings one below the other, as many as there is room for."""
    rng, hand = desk.rng, desk.hand
    left, right = across
    y, bottom = down
    gap = rng.uniform(0.75, 1.4)
    numbered = rng.random() < 0.6
    for _ in range(rng.choice((1, 2, 3, 4))):
        desk.working += 1
        indent = hand.digit * rng.uniform(1.6, 2.4) if numbered else 0.0
        chain = rng.random() < 0.5  # an expression and what it equals, or equations one below the other
        for place in range(rng.randint(2, 6)):
            text = _line_text(desk, longest=45 if right - left > 900 else 14, chained=chain)
            if place and chain:
                text = "= " + text
            shift = hand.digit * 0.8 if text.startswith("=") else 0.0
            before, kept = desk.ink.copy(), len(desk.lines)
            line = write_line(text, desk.bank, hand, desk.paper, rng, desk.ink, at=(left + indent + shift, y),
                              right=right)
            if numbered and place == 0:
                label, line = _numbered(desk, line, left)
                text = f"{label} {text}"
            struck = hard and place > 0 and rng.random() < 0.09
            if struck:
                line = _crossed(desk, line)
            if line.box[3] > bottom:
                desk.ink, desk.lines = before, desk.lines[:kept]
                return
            desk.lines.append((text, line, desk.working, column, struck, False, _alone(desk.ink, before, line)))
            y = line.box[3] + hand.digit * gap * 0.75 * (1 + rng.gauss(0, 0.08))
            if hard and not struck and line.box[2] - line.box[0] > 0.6 * (right - left) and rng.random() < 0.5:
                more = rng.choice(("+", "-")) + " " + _line_text(desk, longest=8, chained=True)
                before = desk.ink.copy()
                line = write_line(more, desk.bank, hand, desk.paper, rng, desk.ink,
                                  at=(left + indent + hand.digit * 2.5, y), right=right)
                if line.box[3] > bottom:
                    desk.ink = before
                    return
                desk.lines.append((more, line, desk.working, column, False, True, _alone(desk.ink, before, line)))
                y = line.box[3] + hand.digit * gap * 0.75
        y += hand.digit * rng.uniform(1.6, 2.6)


def _line_text(desk: _Desk, *, longest: int, chained: bool = False) -> str:
    """A random line in signs that the hand has; one of a chain is an expression that does not begin with a sign."""
    while True:
        tokens = serialise(random_line(desk.rng, long_share=0.15))
        if 3 <= len(tokens) <= longest and is_lower_school(tokens) and r"\pi" not in tokens:
            if chained and (tokens[0] in "+-=" or not _RELATIONS.isdisjoint(tokens)):
                continue
            if _can_write(desk, " ".join(tokens)):
                return " ".join(tokens)


def _can_write(desk: _Desk, text: str) -> bool:
    try:
        draw_line(parse(text), desk.bank, Style(font=desk.hand.font), random.Random(0))
    except NotCanonical:
        return False
    return True


def _alone(
    ink: NDArray[np.uint8], before: NDArray[np.uint8], line: LineDrawing, margin: int = 8
) -> NDArray[np.uint8]:
    """The ink that was added since, dark on white, within the line's box and a margin."""
    x0, y0, x1, y1 = (round(v) for v in line.box)
    part = np.s_[max(0, y0 - margin): y1 + margin, max(0, x0 - margin): x1 + margin]
    return np.asarray(255 - cv2.subtract(ink[part], before[part]), dtype=np.uint8)


def _numbered(desk: _Desk, line: LineDrawing, left: float) -> tuple[str, LineDrawing]:
    """A question number before the line; it counts as part of it."""
    forms = ("{} )", "{} .", "Q {}") if _can_write(desk, "Q") else ("{} )", "{} .")
    text = desk.rng.choice(forms).format(desk.working + 1)
    number = write_line(
        text, desk.bank, replace(desk.hand, drift=0.0), Paper("plain"), desk.rng, desk.ink,
        at=(left, (line.box[1] + line.box[3]) / 2 - 0.6 * desk.hand.digit), right=line.box[0],
    )
    return text, _joined(line, number.hull)


def _crossed(desk: _Desk, line: LineDrawing) -> LineDrawing:
    """One or two strokes through the whole line."""
    x0, y0, x1, y1 = line.box
    rng, points = desk.rng, [line.hull]
    for _ in range(rng.choice((1, 1, 2))):
        middle = y0 + (y1 - y0) * rng.uniform(0.42, 0.62)
        xs = np.linspace(x0 - 12, x1 + 12, 24)
        ys = middle + rng.gauss(0, 0.03) * (xs - xs.mean()) / 4 + 2.5 * np.sin(xs / rng.uniform(40, 120))
        stroke = np.column_stack([xs, ys])
        pen = round(desk.hand.pen)
        cv2.polylines(desk.ink, [np.rint(stroke * 16).astype(np.int32)], False, 255, pen, cv2.LINE_AA, 4)
        points.append(stroke)
    return _joined(line, np.concatenate(points))


def _joined(line: LineDrawing, points: NDArray[np.float64]) -> LineDrawing:
    hull = cv2.convexHull(np.concatenate([line.hull, points]).astype(np.float32)).reshape(-1, 2).astype(np.float64)
    (x0, y0), (x1, y1) = hull.min(axis=0), hull.max(axis=0)
    return LineDrawing((float(x0), float(y0), float(x1), float(y1)), hull, line.drawing, line.points)


def _side_working(desk: _Desk) -> bool:
    """Two or three small lines on the right where there is room, with an arrow from the working."""
    rng = desk.rng
    rows = [line[1].box for line in desk.lines]
    for start in range(len(rows) - 2):
        near = rows[start: start + 3]
        x = max(box[2] for box in near) + 130
        room = SHEET[0] - 60 - x
        if room < 260:
            continue
        desk.working += 1
        hand = replace(desk.hand, digit=desk.hand.digit * 0.75)
        y = near[0][1]
        for _ in range(2):
            text = _line_text(desk, longest=9)
            before = desk.ink.copy()
            line = write_line(text, desk.bank, hand, Paper("plain"), rng, desk.ink, at=(x, y), right=x + room)
            desk.lines.append((text, line, desk.working, -1, False, False, _alone(desk.ink, before, line)))
            y = line.box[3] + hand.digit * 0.9
        if rng.random() < 0.6:
            tail = np.array([near[1][2] + 25, (near[1][1] + near[1][3]) / 2])
            head = np.array([x - 30, near[0][1] + 40.0])
            for a, b in ((tail, head), (head, head - np.array([22, 4])), (head, head + np.array([-10, 20]))):
                ends = [tuple(int(v) for v in np.rint(p)) for p in (a, b)]
                cv2.line(desk.other, ends[0], ends[1], 255, round(desk.hand.pen), cv2.LINE_AA)
            low, high = np.minimum(tail, head) - 24, np.maximum(tail, head) + 24
            desk.aside.append((float(low[0]), float(low[1]), float(high[0]), float(high[1])))
        return True
    return False


def _print_question(desk: _Desk, sheet: NDArray[np.uint8], left: float, top: float) -> float:
    """A line of print above the working; where writing may begin below it."""
    text = desk.rng.choice(_PRINTED)
    (width, height), _ = cv2.getTextSize(text, cv2.FONT_HERSHEY_COMPLEX, 1.15, 2)
    x, y = round(left - 20), round(top + height)
    cv2.putText(sheet, text, (x, y), cv2.FONT_HERSHEY_COMPLEX, 1.15, (24, 24, 24), 2, cv2.LINE_AA)
    desk.aside.append((x - 4.0, y - height - 6.0, x + width + 4.0, y + 14.0))
    return float(y) + 75.0


def _staple(sheet: NDArray[np.uint8], rng: random.Random) -> None:
    """A staple across the top left corner, and its two holes."""
    a = np.array([rng.uniform(50, 80), rng.uniform(70, 100)])
    b = a + np.array([84, rng.uniform(-70, -30)])
    one, two = (tuple(int(v) for v in np.rint(p)) for p in (a, b))
    cv2.line(sheet, one, two, (92, 92, 98), 6, cv2.LINE_AA)
    cv2.line(sheet, (one[0], one[1] - 2), (two[0], two[1] - 2), (188, 188, 196), 2, cv2.LINE_AA)
    for end in (one, two):
        cv2.circle(sheet, end, 5, (40, 38, 36), -1, cv2.LINE_AA)


def _truth(
    desk: _Desk, photo: Photo, finger: Finger | None, colour: tuple[int, int, int], traits: tuple[str, ...], turns: int
) -> Scene:
    height, width = photo.image.shape[:2]
    aside = [_box(photo.placed(_corners(box))) for box in desk.aside]
    held = None if finger is None else finger.outline((width, height)).astype(np.float32)
    lines = []
    for text, line, working, column, struck, goes_on, clean in sorted(desk.lines, key=lambda each: each[3] % 9):
        hull = photo.placed(line.hull)
        hidden = held is not None and any(
            cv2.pointPolygonTest(held, (float(x), float(y)), True) > -40 for x, y in hull
        )
        if hidden:
            aside.append(_box(hull))
            continue
        lines.append(SceneLine(text, hull, _box(hull), working, column, struck, goes_on, clean))
    ink = _seen_ink(desk.ink, photo)
    scene = Scene(photo, tuple(lines), ink, tuple(aside), colour, traits)
    return scene if turns % 4 == 0 else _turned(scene, turns % 4)


def _seen_ink(ink: NDArray[np.uint8], photo: Photo) -> NDArray[np.uint8]:
    """The ink alone as the photo sees it, without light, blur and noise."""
    height, width = photo.image.shape[:2]
    view = photo.homography
    if photo.bend is not None:
        pad = int(abs(photo.bend.sag) + abs(photo.bend.lift)) + 8
        ink = photo.bend.picture(ink, pad=pad, border=0)
        view = view @ np.array([[1, 0, 0], [0, 1, -pad], [0, 0, 1.0]])
    return np.asarray(cv2.warpPerspective(ink, view, (width, height), flags=cv2.INTER_AREA), dtype=np.uint8)


def _turned(scene: Scene, turns: int) -> Scene:
    """The same scene with the photo turned anticlockwise by quarter turns."""
    height, width = scene.photo.image.shape[:2]
    turn = np.eye(3)
    for _ in range(turns):
        turn = np.array([[0, 1, 0], [-1, 0, width - 1], [0, 0, 1.0]]) @ turn
        width, height = height, width

    def placed(points: NDArray[np.float64]) -> NDArray[np.float64]:
        return points @ turn[:2, :2].T + turn[:2, 2]
    photo = Photo(np.ascontiguousarray(np.rot90(scene.photo.image, turns)), turn @ scene.photo.homography,
                  scene.photo.bend)
    lines = tuple(replace(line, hull=placed(line.hull), box=_box(placed(line.hull))) for line in scene.lines)
    aside = tuple(_box(placed(_corners(box))) for box in scene.aside)
    return replace(scene, photo=photo, lines=lines, aside=aside, ink=np.ascontiguousarray(np.rot90(scene.ink, turns)))


def _corners(box: tuple[float, float, float, float]) -> NDArray[np.float64]:
    x0, y0, x1, y1 = box
    return np.array([[x0, y0], [x1, y0], [x1, y1], [x0, y1]], np.float64)


def _box(points: NDArray[np.float64]) -> tuple[float, float, float, float]:
    low, high = points.min(axis=0), points.max(axis=0)
    return float(low[0]), float(low[1]), float(high[0]), float(high[1])
