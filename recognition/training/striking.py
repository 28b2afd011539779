"""Strikes some symbols of a line out, as a writer does who changes his mind; the reading leaves them out."""

from __future__ import annotations

import itertools
import random
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import NotCanonical, parse, serialise
from recognition.training.layout import Drawing, Sample

__all__ = ["struck"]

_BUILT: Final = frozenset([r"\frac", r"\sqrt", "^", "_", "{", "}"])
_THIN: Final = frozenset(["1", "l", "|", "/", "-", "=", "<", ">", ".", ",", "i", "t", "+", "(", ")", r"\cdot", "I"])
"""Alone and struck once, these would be another symbol: a 1 a plus sign, an equals sign an unequal one."""
_MOST: Final = 5

Points = NDArray[np.float32]


def struck(sample: Sample, rng: random.Random) -> Sample:
    """Strike out one to five neighbouring symbols of the main line; the sample as it is where none can be.

    What is left is a line in canonical form, and the struck ink belongs to none of its tokens.
    """
    runs = _runs(sample)
    rng.shuffle(runs)
    for begin, end in runs[:6]:
        rest = (*sample.tokens[:begin], *sample.tokens[end:])
        try:
            if tuple(serialise(parse(" ".join(rest)))) == rest:
                return Sample(rest, _crossed(sample.drawing, begin, end, rng))
        except NotCanonical:
            continue
    return sample


def _runs(sample: Sample) -> list[tuple[int, int]]:
    """Half-open ranges of tokens that stand side by side on the main line, each with known ink."""
    tokens, linked = sample.tokens, set(sample.drawing.token.tolist())
    depth, plain = 0, []
    for place, token in enumerate(tokens):
        depth += (token == "{") - (token == "}")
        follows = tokens[place + 1] if place + 1 < len(tokens) else ""
        plain.append(depth == 0 and token not in _BUILT and follows not in ("^", "_") and place in linked)
    out = []
    for begin, length in itertools.product(range(len(tokens)), range(1, _MOST + 1)):
        end = begin + length
        if end > len(tokens) or length == len(tokens) or not all(plain[begin:end]):
            continue
        if begin and tokens[begin - 1] in (r"\frac", r"\sqrt", "^", "_"):
            continue
        if not set(tokens[begin:end]) <= _THIN:
            out.append((begin, end))
    return out


def _crossed(drawing: Drawing, begin: int, end: int, rng: random.Random) -> Drawing:
    """Give the ink of tokens begin to end to nobody and draw a strike over it."""
    token = drawing.token.copy()
    mine = (token >= begin) & (token < end)
    pieces = np.flatnonzero(mine)
    token[mine] = -1
    token[token >= end] -= end - begin
    ink = np.concatenate([drawing.points[drawing.offsets[n] : drawing.offsets[n + 1]] for n in pieces])
    strikes = _strikes(ink.min(0), ink.max(0), rng)
    at = int(pieces.max()) + 1
    place = int(drawing.offsets[at])
    lengths = np.insert(np.diff(drawing.offsets), at, [len(strike) for strike in strikes])
    return Drawing(
        np.concatenate([drawing.points[:place], *strikes, drawing.points[place:]]),
        np.r_[0, np.cumsum(lengths)].astype(np.int64),
        np.insert(drawing.filled, at, [False] * len(strikes)),
        np.insert(token, at, [-1] * len(strikes)).astype(np.int32),
    )


def _strikes(low: Points, high: Points, rng: random.Random) -> list[Points]:
    """Strokes over a box: a bar, two bars, a slash, a cross, a zigzag or a scribble."""
    width, height = (max(float(side), 1e-3) for side in high - low)
    over = 0.15 * min(width, height)
    left, right = float(low[0]) - over * rng.uniform(0, 1.5), float(high[0]) + over * rng.uniform(0, 1.5)
    top, bottom = float(low[1]), float(high[1])
    middle = top + height * rng.uniform(0.35, 0.65)

    def line(x0: float, y0: float, x1: float, y1: float) -> Points:
        share = np.linspace(0, 1, 12)
        bow = np.sin(np.pi * share) * rng.gauss(0, 0.04) * height
        return np.stack([x0 + (x1 - x0) * share, y0 + (y1 - y0) * share + bow], 1).astype(np.float32)

    def lean() -> float:
        return rng.gauss(0, 0.12) * height

    kind = rng.choices(("bar", "bars", "slash", "cross", "zigzag", "scribble"), (26, 16, 14, 14, 14, 16))[0]
    if width < 0.7 * height and kind in ("bar", "slash"):
        kind = rng.choice(("scribble", "bars", "zigzag"))
    match kind:
        case "bar":
            return [line(left, middle + lean(), right, middle + lean())]
        case "bars":
            apart = height * rng.uniform(0.12, 0.3)
            return [line(left, middle + shift + lean() / 2, right, middle + shift + lean() / 2) for shift in (0, apart)]
        case "slash":
            return [line(left, bottom, right, top)]
        case "cross":
            return [line(left, top, right, bottom), line(right, top, left, bottom)]
        case "zigzag":
            count = max(4, round(width / height * rng.uniform(3, 6)))
            reach = height * rng.uniform(0.2, 0.45)
        case _:
            count = max(8, round(width / height * rng.uniform(8, 16)))
            reach = height * rng.uniform(0.35, 0.55)
    x = np.linspace(left, right, count) + np.array([rng.gauss(0, 0.25) * width / count for _ in range(count)])
    y = (top + bottom) / 2 + reach * np.where(np.arange(count) % 2, 1, -1)
    y = y + np.array([rng.gauss(0, 0.08) * height for _ in range(count)])
    corners = np.stack([x, y], 1)
    share = np.arange(0, count - 1, 0.25)
    return [np.stack([np.interp(share, np.arange(count), axis) for axis in corners.T], 1).astype(np.float32)]
