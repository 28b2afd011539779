"""Sets a line of mathematics as a hand would write it: symbols of a bank placed by the tree of the line.

Units: a digit is 1 high; y grows downwards; the baseline of the line is y = 0.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import Fraction, Node, NotCanonical, Root, Row, Script, Symbol, serialise
from recognition.training.bank import Shape, SymbolBank
from recognition.training.deformation import bending, rebent
from recognition.training.metrics import BINARY, DESCENDERS, METRICS, X_HEIGHT, Metric
from recognition.training.morphing import between
from recognition.training.style import Style

__all__ = ["Drawing", "Sample", "draw_line", "wavy_line"]

_OPENING: Final = {"(": ")", "[": "]", r"\{": r"\}"}
_WORDS: Final = {
    **{name: name[1:] for name in (r"\sin", r"\cos", r"\tan", r"\log", r"\ln", r"\lim")},
    r"\text{or}": "or",
    r"\text{and}": "and",
}

Points = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawn line.

    points: float32 (N, 2); offsets: int64 (pieces + 1); filled: bool (pieces), closed contours instead of strokes;
    token: int32 (pieces), which token of the canonical list a piece belongs to (a bar to its fraction).
    """

    points: Points
    offsets: NDArray[np.int64]
    filled: NDArray[np.bool_]
    token: NDArray[np.int32]


@dataclass(frozen=True, slots=True)
class Sample:
    """Tokens of a line and its drawing; drawing.token is -1 where the ink of a token is not known."""

    tokens: tuple[str, ...]
    drawing: Drawing


def draw_line(row: Row, bank: SymbolBank, style: Style, rng: random.Random) -> Drawing:
    """Set a line.

    Raises:
        NotCanonical: the bank has no shape for one of its tokens.
    """
    box = _Setter(bank, style, rng).row(row, 0, 1.0)
    offsets, filled, token = [0], [], []
    for piece in box.pieces:
        base = offsets[-1]
        offsets += [base + int(end) for end in piece.offsets[1:]]
        filled += [piece.filled] * (len(piece.offsets) - 1)
        token += [piece.token] * (len(piece.offsets) - 1)
    return Drawing(
        np.concatenate([piece.points for piece in box.pieces]),
        np.array(offsets, np.int64),
        np.array(filled, np.bool_),
        np.array(token, np.int32),
    )


def wavy_line(
    start: tuple[float, float], end: tuple[float, float], bow: float, rng: random.Random, count: int = 12
) -> Points:
    """A stroke from start to end that bends a little: float32 (count, 2)."""
    t = np.linspace(0, 1, count, dtype=np.float32)[:, None]
    a, b = np.array(start, np.float32), np.array(end, np.float32)
    length = float(np.hypot(*(b - a)))
    sideways = np.array((a[1] - b[1], b[0] - a[0]), np.float32) / np.float32(length + 1e-6)
    arch = rng.gauss(0, bow) * length + rng.gauss(0, 0.01)
    wave = rng.gauss(0, bow * 0.4) * length
    line: Points = a + (b - a) * t + sideways * (arch * 4 * t * (1 - t) + wave * np.sin(2 * np.pi * t))
    return line.astype(np.float32, copy=False)


@dataclass(slots=True)
class _Piece:
    points: Points
    offsets: NDArray[np.int64]
    filled: bool
    token: int


@dataclass(slots=True)
class _Box:
    pieces: list[_Piece]
    left: float
    right: float
    top: float
    bottom: float

    def move(self, dx: float, dy: float) -> _Box:
        step = np.array((dx, dy), np.float32)
        for piece in self.pieces:
            piece.points = piece.points + step
        self.left += dx
        self.right += dx
        self.top += dy
        self.bottom += dy
        return self

    def take(self, other: _Box) -> None:
        self.pieces += other.pieces
        self.left, self.right = min(self.left, other.left), max(self.right, other.right)
        self.top, self.bottom = min(self.top, other.top), max(self.bottom, other.bottom)


def _around(points: Points, offsets: NDArray[np.int64], filled: bool, token: int) -> _Box:
    low, high = points.min(0), points.max(0)
    piece = _Piece(points, offsets, filled, token)
    return _Box([piece], float(low[0]), float(high[0]), float(low[1]), float(high[1]))


def _stroke(points: Points, token: int) -> _Box:
    return _around(points, np.array((0, len(points)), np.int64), False, token)


class _Setter:
    """Places the nodes of one line; token numbers run along the canonical list."""

    def __init__(self, bank: SymbolBank, style: Style, rng: random.Random) -> None:
        self._bank, self._style, self._rng = bank, style, rng

    def _shape(self, token: str) -> Shape | None:
        style = self._style
        if style.font is not None and token not in style.ink_only:
            shape = self._bank.from_font(token, style.font, self._rng)
            if shape is not None:
                return shape
        repeats = style.repeats if token in style.hand or not style.hand else 1.0
        if token in style.seen and self._rng.random() < repeats:
            return style.seen[token]
        shape = None if style.paper is None else self._bank.from_paper(token, style.paper, self._rng)
        if shape is None:
            shape = self._from_hand(token)
        if shape is not None:
            shape = self._bent(shape, token) if style.bend else shape
            style.seen[token] = shape
        elif token not in _WORDS:
            drawn = self._bank.drawn(token, self._rng)
            shape = drawn if drawn is not None else self._bank.from_font(token, None, self._rng)
        return shape

    def _from_hand(self, token: str) -> Shape | None:
        """This hand's symbol, or any one's; perhaps on the way to another's."""
        style, rng = self._style, self._rng
        own = style.hand.get(token)
        shape = rng.choice(own) if own else self._bank.from_ink(token, rng)
        share, other = style.share, None
        if own and token in style.towards:
            other = rng.choice(style.towards[token])
        elif style.mixing and rng.random() < style.mixing:
            share, other = rng.uniform(0.15, 0.85), self._bank.from_ink(token, rng)
        if shape is None or other is None:
            return shape
        mixed = between(shape, other, share)
        return shape if mixed is None else mixed

    def _bent(self, shape: Shape, token: str) -> Shape:
        bends = self._style.bends
        if token not in bends:
            bends[token] = bending(1, self._style.bend, np.random.default_rng(self._rng.getrandbits(32)))[0]
        low, high = shape.points.min(0), shape.points.max(0)
        half = max(float((high - low).max()) / 2, 1e-3)
        middle = (low + high) / 2
        points = rebent((shape.points - middle) / np.float32(half), bends[token]) * np.float32(half) + middle
        return Shape(points.astype(np.float32), shape.offsets, shape.filled, shape.sits)

    def symbol(self, token: str, number: int, size: float, span: tuple[float, float] | None = None) -> _Box:
        """One symbol on the baseline, or stretched between top and bottom when `span` gives them."""
        shape = self._shape(token)
        if shape is None:
            if token in _WORDS:
                return self._word(_WORDS[token], number, size)
            raise NotCanonical(f"The bank has no shape for {token}.")
        rng, style = self._rng, self._style
        grow, stretch = math.exp(rng.gauss(0, style.size_spread)), math.exp(rng.gauss(0, style.aspect_spread))
        if shape.sits and span is None and token not in (",", "."):
            points: Points = shape.points * np.array((size * grow * stretch, size * grow), np.float32)
        else:
            points = self._fitted(shape.points, token, size, grow, stretch, span)
        box = _around(points, shape.offsets, shape.filled, number)
        return box.move(0, rng.gauss(0, style.baseline_spread) * size) if style.baseline_spread else box

    def _fitted(
        self, points: Points, token: str, size: float, grow: float, stretch: float, span: tuple[float, float] | None
    ) -> Points:
        low, high = points.min(0), points.max(0)
        width, height = max(float(high[0] - low[0]), 1e-3), max(float(high[1] - low[1]), 1e-3)
        fit, first, second = METRICS.get(token, Metric("height", -1.0, 0.0))
        operator = self._style.operator_size if token in BINARY else 1.0
        if fit == "height":
            if token in X_HEIGHT or token in DESCENDERS:
                first *= self._style.x_height
            top, bottom = span if span is not None else (first * size, second * size)
            tall = (bottom - top) * grow * operator
            scale_y = tall / height
            scale_x = min(scale_y * stretch, 1.6 * max(tall, size) / width)
            if span is not None and scale_x * width > 0.6 * size:
                scale_x = 0.45 * size / width
            middle = (top + bottom) / 2
        elif fit == "width":
            scale_x = first * size * grow * operator / width
            scale_y = min(scale_x * stretch, 0.7 * size / height)
            middle = second * size
        else:
            scale_x = scale_y = first * size * grow / max(width, height)
            middle = second * size
        centred: Points = (points - (low + high) / 2) * np.array((scale_x, scale_y), np.float32)
        return centred + np.array((0, middle), np.float32)

    def _word(self, word: str, number: int, size: float) -> _Box:
        out: _Box | None = None
        for letter in word:
            box = self.symbol(letter, number, size)
            if out is None:
                out = box.move(-box.left, 0)
            else:
                out.take(box.move(out.right + 0.07 * size - box.left, 0))
        assert out is not None
        return out

    def row(self, nodes: Row, number: int, size: float) -> _Box:
        """Set nodes beside each other; `number` is the place of the first one's first token."""
        numbers = []
        for node in nodes:
            numbers.append(number)
            number += len(serialise((node,)))
        pairs = _bracket_pairs(nodes)
        inside = {index for pair in pairs for index in pair}
        boxes = [
            None if index in inside else self._node(node, numbers[index], size) for index, node in enumerate(nodes)
        ]
        for begin, end in sorted(pairs, key=lambda pair: pair[1] - pair[0]):
            span = self._bracket_span([box for box in boxes[begin + 1 : end] if box is not None], size)
            for index in (begin, end):
                node = nodes[index]
                bare = node.base if isinstance(node, Script) else node
                assert isinstance(bare, Symbol)
                box = self.symbol(bare.text, numbers[index], size, span)
                boxes[index] = self._scripts(node, box, numbers[index], size) if isinstance(node, Script) else box
        return self._beside(nodes, [box for box in boxes if box is not None], size)

    def _bracket_span(self, content: Sequence[_Box], size: float) -> tuple[float, float]:
        top, bottom = -1.05 * size, 0.15 * size
        if self._style.brackets_grow and content:
            highest, lowest = min(box.top for box in content), max(box.bottom for box in content)
            top = min(-0.95 * size, highest - 0.06 * size) if highest < -1.05 * size else -1.1 * size
            bottom = max(0.12 * size, lowest + 0.04 * size)
            top, bottom = max(top, -3.2 * size), min(bottom, 2.6 * size)
        return top + self._rng.gauss(0, 0.05) * size, bottom + self._rng.gauss(0, 0.05) * size

    def _beside(self, nodes: Row, boxes: Sequence[_Box], size: float) -> _Box:
        rng, style = self._rng, self._style
        out: _Box | None = None
        before: Node | None = None
        for node, box in zip(nodes, boxes, strict=True):
            x = 0.0
            if out is not None:
                gap = style.operator_gap if _is_binary(node) or _is_binary(before) else style.gap
                if isinstance(node, Fraction) or isinstance(before, Fraction):
                    gap += 0.08
                x = out.right + max(-0.02, gap + rng.gauss(0, 0.05)) * size
            box.move(x - box.left, rng.gauss(0, style.baseline_spread * 0.5) * size + style.drift * x)
            if out is None:
                out = box
            else:
                out.take(box)
            before = node
        if out is None:
            raise NotCanonical("There is nothing to draw.")
        return out

    def _node(self, node: Node, number: int, size: float) -> _Box:
        match node:
            case Symbol(text):
                return self.symbol(text, number, size)
            case Fraction():
                return self._fraction(node, number, size)
            case Root():
                return self._root(node, number, size)
            case Script(base):
                return self._scripts(node, self._node(base, number, size), number, size)

    def _scripts(self, node: Script, base: _Box, number: int, size: float) -> _Box:
        rng, style = self._rng, self._style
        small = size * style.script_size
        after_base = number + len(serialise((node.base,)))
        sub = self.row(node.sub, after_base + 2, small) if node.sub else None
        skip = len(serialise(node.sub)) + 3 if node.sub else 0
        sup = self.row(node.sup, after_base + skip + 2, small) if node.sup else None
        sign = node.base.text if isinstance(node.base, Symbol) else ""
        left, right, top, bottom = base.left, base.right, base.top, base.bottom
        if sign == r"\lim" or (sign == r"\sum" and not style.limits_beside):
            middle = (left + right) / 2
            for box, up in ((sup, True), (sub, False)):
                if box is not None:
                    y = top - 0.12 * size - box.bottom if up else bottom + 0.12 * size - box.top
                    base.take(box.move(middle - (box.left + box.right) / 2 + rng.gauss(0, 0.06) * size, y))
            return base
        if sup is not None:
            gap = (0.06 + abs(rng.gauss(0, 0.06))) * size
            if node.sup[0] in (Symbol(r"\prime"), Symbol(r"\circ")):
                sup.move(right + gap - sup.left, top - 0.1 * size - sup.top)
            else:
                shoulder = (0.35 + 0.3 * rng.random() + style.script_raise) * min(bottom - top, size) * 0.75
                y = min(top + shoulder, -0.42 * size)
                sup.move(right + gap - sup.left, y - max(0.0, sup.bottom * 0.6))
            base.take(sup)
        if sub is not None:
            gap = (0.05 + abs(rng.gauss(0, 0.05))) * size
            back, foot = (0.25 * size, bottom) if sign == r"\int" else (0.0, 0.0)
            sub.move(right + gap - back - sub.left, foot + (0.28 + 0.15 * rng.random()) * size)
            base.take(sub)
        return base

    def _fraction(self, node: Fraction, number: int, size: float) -> _Box:
        rng, style = self._rng, self._style
        inner = size * style.fraction_size
        above = self.row(node.numerator, number + 2, inner)
        below = self.row(node.denominator, number + len(serialise(node.numerator)) + 4, inner)
        overhang = max(0.0, style.fraction_overhang + rng.gauss(0, 0.06)) * size
        length = max(above.right - above.left, below.right - below.left) + 2 * overhang
        axis, gap = -0.42 * size, style.fraction_gap * size
        tilt = rng.gauss(0, 0.02) * length
        out = _stroke(wavy_line((0, axis + tilt / 2), (length, axis - tilt / 2), style.bow, rng), number)
        for box, y in ((above, axis - gap - above.bottom), (below, axis + gap - below.top)):
            out.take(box.move(length / 2 - (box.left + box.right) / 2 + rng.gauss(0, 0.05) * size, y))
        return out

    def _root(self, node: Root, number: int, size: float) -> _Box:
        rng, style = self._rng, self._style
        indexed = len(serialise(node.index)) + 2 if node.index else 0
        body = self.row(node.radicand, number + indexed + 2, size)
        top = min(body.top, -0.62 * size) - (0.1 + 0.12 * rng.random()) * size
        bottom = body.bottom + (0.02 + 0.06 * rng.random()) * size
        knee = (0.28 + 0.15 * rng.random()) * size
        middle = top + (bottom - top) * (0.5 + 0.15 * rng.random())
        overhang = (0.05 + 0.2 * rng.random()) * size
        body.move(knee + (0.3 + 0.1 * rng.random()) * size - body.left, 0)
        shoulder = knee + (0.18 + 0.12 * rng.random()) * size
        end = (body.right + overhang, top + rng.gauss(0, 0.03) * size)
        corners = [(0.0, middle + 0.06 * size), (0.1 * size, middle), (knee, bottom), (shoulder, top), end]
        if rng.random() < 0.3:
            corners.append((end[0], end[1] + 0.15 * size))
        bows, counts = (0.02, 0.02, 0.02, style.bow, 0.02), (4, 8, 10, 14, 4)
        parts = [
            wavy_line(a, b, bow, rng, count)
            for a, b, bow, count in zip(corners, corners[1:], bows, counts, strict=False)
        ]
        sign = np.concatenate(parts)
        out = _stroke(sign, number)
        if rng.random() < 0.25:  # the bar drawn as a stroke of its own
            out.pieces[0].offsets = np.array((0, sum(map(len, parts[:3])), len(sign)), np.int64)
        out.take(body)
        if node.index:
            index = self.row(node.index, number + 2, size * 0.5)
            out.take(index.move(0.24 * size - index.right, middle - 0.12 * size - index.bottom))
        return out


def _is_binary(node: Node | None) -> bool:
    return isinstance(node, Symbol) and node.text in BINARY


def _bracket_pairs(nodes: Row) -> list[tuple[int, int]]:
    """Places of brackets that open and close each other; a closing one may carry a power."""
    pairs: list[tuple[int, int]] = []
    open_: list[int] = []
    for index, node in enumerate(nodes):
        bare = node.base if isinstance(node, Script) else node
        sign = bare.text if isinstance(bare, Symbol) else ""
        if sign in _OPENING and bare is node:
            open_.append(index)
        elif sign in _OPENING.values() and open_:
            pairs.append((open_.pop(), index))
    return pairs
