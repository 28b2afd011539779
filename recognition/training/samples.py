"""Training lines: real expressions with symbols exchanged, real pieces joined, and lines set from the symbol bank."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, TypeVar

import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import TOKEN_ID, VOCABULARY, NotCanonical, Row, Symbol, parse, serialise
from recognition.training.bank import Shape, SymbolBank, cut
from recognition.training.fonts import Font
from recognition.training.layout import Drawing, Sample, draw_line
from recognition.training.lines import mutated, other_like, random_line
from recognition.training.metrics import ASCENDERS, METRICS, X_HEIGHT
from recognition.training.morphing import between
from recognition.training.striking import struck
from recognition.training.style import varied_style

__all__ = ["InkPack", "Mixture", "draw_sample"]

_PLAIN: Final = ASCENDERS | X_HEIGHT
_JOINTS: Final = ("+", "-", "=", "+", "-", "=", "=", "<", r"\times", "")
_LAYOUT_MOST: Final = 80
_TEXT_WEIGHT: Final = 0.1
_SELDOM: Final = 30  # times that a token nobody wrote counts as written
_BETWEEN_SHARE: Final = 0.35

Points = NDArray[np.float32]
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Mixture:
    """Shares of the kinds of sample; the first five add up to 1."""

    real: float = 0.30
    joined: float = 0.12
    relaid: float = 0.13
    school: float = 0.22
    texts: float = 0.23
    font_share: float = 0.22
    paper_share: float = 0.18
    exchanged: float = 0.5
    struck: float = 0.06
    long_share: float = 0.4


class InkPack:
    """A pack of ink_pack.py with its symbol bank."""

    def __init__(self, path: Path, fonts: Sequence[Font]) -> None:
        with np.load(path) as arrays:
            self._arrays: dict[str, NDArray[Any]] = {name: arrays[name] for name in arrays.files}
        self.bank = SymbolBank.of_pack(self._arrays, fonts)
        whole = self._arrays["item_whole"]
        self._whole, self._parts = np.flatnonzero(whole), np.flatnonzero(~whole)
        self.weights = self._natural_weights()
        """how likely each token is as another's stand-in: as the root of how often people wrote it"""

    def __len__(self) -> int:
        return len(self._arrays["item_whole"])

    def pick(self, rng: random.Random, whole_share: float) -> int:
        """The number of an item drawn by lot."""
        items = self._whole if rng.random() < whole_share or not len(self._parts) else self._parts
        return int(items[rng.randrange(len(items))])

    def _natural_weights(self) -> dict[str, float]:
        written = np.bincount(self._arrays["texts"], minlength=len(VOCABULARY)) * _TEXT_WEIGHT
        for number in self._whole:
            begin, end = self._arrays["item_offsets"][number : number + 2]
            np.add.at(written, self._arrays["item_tokens"][begin:end], 1)
        return dict(zip(VOCABULARY, np.sqrt(written + _SELDOM).tolist(), strict=True))

    def tokens(self, number: int) -> tuple[str, ...]:
        begin, end = self._arrays["item_offsets"][number : number + 2]
        return tuple(VOCABULARY[token] for token in self._arrays["item_tokens"][begin:end])

    def text(self, rng: random.Random) -> tuple[str, ...]:
        """A line text drawn by lot."""
        offsets = self._arrays["text_offsets"]
        number = rng.randrange(len(offsets) - 1)
        return tuple(VOCABULARY[token] for token in self._arrays["texts"][offsets[number] : offsets[number + 1]])

    def sample(self, number: int) -> Sample:
        """An item with its ink; of a part only its own strokes."""
        arrays = self._arrays
        begin, end = arrays["item_offsets"][number : number + 2]
        groups = arrays["item_groups"][begin:end]
        expression = arrays["item_expression"][number]
        first, last = arrays["expressions"][expression : expression + 2]
        offsets = arrays["offsets"][first : last + 1].astype(np.int64)
        stroke_groups = arrays["groups"][first:last]
        token_of = {int(group): token for token, group in enumerate(groups) if group >= 0}
        kept = [stroke for stroke in range(last - first) if not token_of or int(stroke_groups[stroke]) in token_of]
        points = [arrays["points"][offsets[stroke] : offsets[stroke + 1]] for stroke in kept]
        token = [token_of.get(int(stroke_groups[stroke]), -1) for stroke in kept]
        return Sample(self.tokens(number), _drawing([p.astype(np.float32) for p in points], token))


def draw_sample(pack: InkPack, mixture: Mixture, rng: random.Random) -> Sample:
    """One training line.

    Raises:
        NotCanonical: this draw came to nothing; draw again.
    """
    sample = _unspoilt(pack, mixture, rng)
    return struck(sample, rng) if rng.random() < mixture.struck else sample


def _unspoilt(pack: InkPack, mixture: Mixture, rng: random.Random) -> Sample:
    lot = rng.random()
    if lot < mixture.real:
        return _exchanged(pack.sample(pack.pick(rng, 0.65)), pack, rng, mixture.exchanged)
    lot -= mixture.real
    if lot < mixture.joined:
        return _joined(pack, rng)
    lot -= mixture.joined
    if lot < mixture.relaid:
        row = mutated(parse(" ".join(pack.tokens(pack.pick(rng, 0.9)))), rng.choice((0.0, 0.3, 0.6)), rng, pack.weights)
    elif lot < mixture.relaid + mixture.school:
        row = random_line(rng, long_share=mixture.long_share)
    else:
        row = _from_texts(pack, rng)
    tokens = tuple(serialise(row))
    if not 1 <= len(tokens) <= _LAYOUT_MOST or any(token not in TOKEN_ID for token in tokens):
        raise NotCanonical("The line is too long.")
    style = varied_style(pack.bank, rng, font_share=mixture.font_share, paper_share=mixture.paper_share)
    return Sample(tokens, draw_line(row, pack.bank, style, rng))


def _from_texts(pack: InkPack, rng: random.Random) -> Row:
    """A line text, or two or three with a sign between; some symbols are changed so that no text is learnt by heart."""
    row = mutated(parse(" ".join(pack.text(rng))), rng.choice((0.2, 0.4, 0.7)), rng, pack.weights)
    for _ in range(rng.choices((0, 1, 2), (60, 28, 12))[0]):
        more = mutated(parse(" ".join(pack.text(rng))), rng.choice((0.2, 0.4, 0.7)), rng, pack.weights)
        sign = rng.choice(("+", "-", "=", "=", r"\times"))
        row = (*row, *(() if more[0] == Symbol("=") else (Symbol(sign),)), *more)
    return row


def _drawing(strokes: Sequence[Points], token: Sequence[int]) -> Drawing:
    if not strokes:
        raise NotCanonical("There is no ink.")
    offsets = np.cumsum([0, *map(len, strokes)]).astype(np.int64)
    return Drawing(np.concatenate(strokes), offsets, np.zeros(len(strokes), np.bool_), np.array(token, np.int32))


def _exchanged(sample: Sample, pack: InkPack, rng: random.Random, share: float) -> Sample:
    """Replace some symbols by another hand's, fitted to the old place, often by a different symbol of like shape.

    The decoder can then lean neither on formulas it knows nor on arithmetic.
    """
    token = sample.drawing.token.tolist()
    if max(token, default=-1) < 0 or rng.random() >= share:
        return sample
    rate, change = rng.choice((0.1, 0.25, 0.5)), rng.random() < 0.6
    tokens, strokes = list(sample.tokens), cut(sample.drawing.points, sample.drawing.offsets)
    for place, name in enumerate(sample.tokens):
        if rng.random() > rate or name in (r"\sqrt", r"\frac") or place not in token:
            continue
        new = other_like(name, rng, pack.weights) if change and rng.random() < 0.7 else name
        shape = _any_hand(pack.bank, new, rng)
        members = [number for number, owner in enumerate(token) if owner == place]
        fitted = None if shape is None else _fit_to(shape, np.concatenate([strokes[n] for n in members]), new)
        if shape is None or fitted is None:
            continue
        pieces = cut(fitted, shape.offsets)
        at = members[0]  # the new symbol is written when the old one was
        strokes = _in_place(strokes, members, at, pieces)
        token = _in_place(token, members, at, [place] * len(pieces))
        tokens[place] = new
    return Sample(tuple(tokens), _drawing(strokes, token))


def _any_hand(bank: SymbolBank, token: str, rng: random.Random) -> Shape | None:
    """An instance of the token in any hand, or between two hands."""
    shape = bank.from_ink(token, rng)
    if shape is None or rng.random() >= _BETWEEN_SHARE:
        return shape
    other = bank.from_ink(token, rng)
    return shape if other is None else between(shape, other, rng.uniform(0.15, 0.85)) or shape


def _in_place(items: list[T], members: Sequence[int], at: int, new: Sequence[T]) -> list[T]:
    """The items without `members`, and `new` where number `at` was."""
    before = [item for number, item in enumerate(items) if number < at and number not in members]
    return [*before, *new, *(item for number, item in enumerate(items) if number > at and number not in members)]


def _fit_to(shape: Shape, old: Points, token: str) -> Points | None:
    """Scale a shape by height, width or both to stand where the old one stood; None where it would not fit."""
    old_low, old_high = old.min(0), old.max(0)
    low, high = shape.points.min(0), shape.points.max(0)
    wanted, have = old_high - old_low, np.maximum(high - low, 1e-3)
    fit = METRICS[token].fit if token in METRICS else "height"
    axis = {"height": 1, "width": 0}.get(fit)
    scale = float(wanted.max() / have.max() if axis is None else wanted[axis] / have[axis])
    if scale < 1e-3 or scale * float(have.max()) > 2.2 * float(wanted.max()):
        return None
    moved: Points = (shape.points - (low + high) / 2) * np.float32(scale) + (old_low + old_high) / 2
    return moved


def _joined(pack: InkPack, rng: random.Random) -> Sample:
    """Two or three real pieces on one baseline with a real sign between: long lines in real writing."""
    tokens: list[str] = []
    strokes: list[Points] = []
    owners: list[int] = []
    right, baseline, size = 0.0, 0.0, 1.0
    for _ in range(rng.choice((2, 2, 3))):
        piece = _exchanged(_joinable(pack, rng), pack, rng, 0.4)
        begin, end = _standing(piece, first=True), _standing(piece, first=False)
        if begin is None or end is None:
            raise NotCanonical("The piece does not stand on a line.")
        points, scale = piece.drawing.points, 1.0
        if tokens:
            scale = size / begin[1]
            if not 0.5 < scale < 2:
                raise NotCanonical("The pieces differ too much in size.")
            right += size * abs(rng.gauss(0.25, 0.12))
            sign = rng.choice(_JOINTS)
            shape = pack.bank.from_ink(sign, rng) if sign else None
            if shape is not None:
                sign_points = _sign_between(shape, sign, right, baseline, size, rng)
                strokes += cut(sign_points, shape.offsets)
                owners += [len(tokens)] * (len(shape.offsets) - 1)
                tokens.append(sign)
                right = float(sign_points[:, 0].max()) + size * abs(rng.gauss(0.25, 0.12))
            points = points * np.float32(scale)
            shift = (right - points[:, 0].min(), baseline - begin[0] * scale + rng.gauss(0, 0.06) * size)
            points = points + np.array(shift, np.float32)
            baseline, size = baseline + (end[0] - begin[0]) * scale, end[1] * scale
        else:
            baseline, size = end
        strokes += cut(points, piece.drawing.offsets)
        owners += [owner + len(tokens) if owner >= 0 else -1 for owner in piece.drawing.token.tolist()]
        tokens += piece.tokens
        right = float(points[:, 0].max())
    return Sample(tuple(tokens), _drawing(strokes, owners))


def _joinable(pack: InkPack, rng: random.Random) -> Sample:
    """A linked item that starts and ends with a plain symbol on the main line."""
    for _ in range(30):
        number = pack.pick(rng, 0.75)
        tokens = pack.tokens(number)
        starts, ends = tokens[0] in _PLAIN or tokens[0] in "-(", tokens[-1] in _PLAIN or tokens[-1] == ")"
        if starts and ends and len(tokens) <= 40:
            sample = pack.sample(number)
            if sample.drawing.token.max() >= 0:
                return sample
    raise NotCanonical("No piece to join was found.")


def _standing(sample: Sample, *, first: bool) -> tuple[float, float] | None:
    """Baseline and digit height at the first or last plain symbol of the main line, or None."""
    places = range(len(sample.tokens)) if first else range(len(sample.tokens) - 1, -1, -1)
    depth = 0
    for place in places:
        token = sample.tokens[place]
        if token in ("{", "}"):
            depth += 1 if (token == "{") == first else -1
        elif depth == 0 and token in (r"\frac", r"\sqrt", "^", "_"):
            return None
        elif depth == 0 and token in _PLAIN:
            pieces = cut(sample.drawing.points, sample.drawing.offsets)
            strokes = [piece for piece, owner in zip(pieces, sample.drawing.token, strict=True) if owner == place]
            if not strokes:
                return None
            y = np.concatenate(strokes)[:, 1]
            height = float(np.ptp(y)) / (1.0 if token in ASCENDERS else 0.62)
            return (float(y.max()), height) if height > 1e-3 else None
    return None


def _sign_between(shape: Shape, sign: str, left: float, baseline: float, size: float, rng: random.Random) -> Points:
    low, high = shape.points.min(0), shape.points.max(0)
    width, height = np.maximum(high - low, 1.0)
    fit, first, second = METRICS[sign]
    scale = size * first / width if fit == "width" else size * (second - first) / height
    scale = min(scale * rng.uniform(0.8, 1.2), 0.9 * size / width)
    centre = (left + width * scale / 2, baseline - 0.42 * size + rng.gauss(0, 0.05) * size)
    moved: Points = (shape.points - (low + high) / 2) * np.float32(scale) + np.array(centre, np.float32)
    return moved.astype(np.float32)
