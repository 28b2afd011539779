"""Where the shapes of symbols come from: strokes of real hands, outlines of handwriting fonts, signs of our own."""

from __future__ import annotations

import bisect
import collections
import itertools
import math
import random
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import VOCABULARY
from recognition.training.fonts import Font

__all__ = ["Shape", "SymbolBank", "cut"]

_ENOUGH: Final = 60  # symbols of a writer
_SHEET: Final = 0.015  # of all the paper
_CIRCLE: Final = tuple((0.5 + 0.5 * math.cos(a / 2), 0.5 + 0.5 * math.sin(a / 2)) for a in range(14))
_OWN_SIGNS: Final[Mapping[str, tuple[tuple[tuple[float, float], ...], ...]]] = {
    "+": (((0, 0.5), (1, 0.5)), ((0.5, 0), (0.5, 1))),
    "-": (((0, 0), (1, 0.02)),),
    "=": (((0, 0), (1, 0)), ((0, 0.4), (1, 0.42))),
    "<": (((1, 0), (0, 0.5), (1, 1)),),
    ">": (((0, 0), (1, 0.5), (0, 1)),),
    r"\le": (((1, 0), (0, 0.4), (1, 0.75)), ((0, 1), (1, 1))),
    r"\ge": (((0, 0), (1, 0.4), (0, 0.75)), ((0, 1), (1, 1))),
    r"\ne": (((0, 0.35), (1, 0.35)), ((0, 0.65), (1, 0.65)), ((0.8, 0), (0.2, 1))),
    r"\pm": (((0, 0.4), (1, 0.4)), ((0.5, 0), (0.5, 0.8)), ((0, 1), (1, 1))),
    r"\mp": (((0, 0), (1, 0)), ((0, 0.6), (1, 0.6)), ((0.5, 0.2), (0.5, 1))),
    r"\times": (((0, 0), (1, 1)), ((1, 0), (0, 1))),
    r"\div": (((0, 0.5), (1, 0.5)), ((0.48, 0), (0.52, 0.04)), ((0.48, 0.96), (0.52, 1))),
    r"\cdot": (((0, 0), (1, 1)),),
    r"\approx": (
        ((0, 0.2), (0.25, 0), (0.5, 0.15), (0.75, 0.3), (1, 0.1)),
        ((0, 0.6), (0.25, 0.4), (0.5, 0.55), (0.75, 0.7), (1, 0.5)),
    ),
    r"\equiv": (((0, 0), (1, 0)), ((0, 0.3), (1, 0.3)), ((0, 0.6), (1, 0.6))),
    r"\rightarrow": (((0, 0.5), (1, 0.5)), ((0.7, 0.2), (1, 0.5), (0.7, 0.8))),
    r"\Rightarrow": (((0, 0.3), (0.85, 0.3)), ((0, 0.6), (0.85, 0.6)), ((0.65, 0), (1, 0.45), (0.65, 0.9))),
    r"\Leftrightarrow": (
        ((0.15, 0.3), (0.85, 0.3)), ((0.15, 0.6), (0.85, 0.6)), ((0.7, 0), (1, 0.45), (0.7, 0.9)),
        ((0.3, 0), (0, 0.45), (0.3, 0.9)),
    ),
    r"\therefore": (((0.48, 0), (0.52, 0.04)), ((0, 0.96), (0.04, 1)), ((0.96, 0.96), (1, 1))),
    r"\because": (((0, 0), (0.04, 0.04)), ((0.96, 0), (1, 0.04)), ((0.48, 0.96), (0.52, 1))),
    r"\circ": (_CIRCLE,),
}  # fmt: skip
"""Signs that fonts and ink often lack, as strokes of our own design in the unit square."""


def cut(points: NDArray[np.float32], offsets: NDArray[np.int64]) -> list[NDArray[np.float32]]:
    """The pieces of a drawing or a shape, one array each."""
    return [points[begin:end] for begin, end in itertools.pairwise(offsets)]


@dataclass(frozen=True, slots=True)
class Shape:
    """One instance of a symbol, y downwards, in units of its own.

    points: float32 (N, 2); offsets: int64 (pieces + 1); filled: closed contours instead of pen strokes;
    sits: the points already stand on the baseline, with digits one unit high.
    """

    points: NDArray[np.float32]
    offsets: NDArray[np.int64]
    filled: bool = False
    sits: bool = False


@dataclass(frozen=True, slots=True)
class SymbolBank:
    """Instances of each token in ink, and fonts; either may be empty.

    weights: for each token the running sums of its instances' weights; where it is missing all weigh the same.
    hands: the instances of each writer who left enough of them to write lines with. paper: outlines of symbols cut
    from photographed paper, those of one sheet near each other.
    """

    ink: Mapping[str, Sequence[Shape]] = field(default_factory=dict)
    fonts: Sequence[Font] = ()
    weights: Mapping[str, Sequence[float]] = field(default_factory=dict)
    hands: Sequence[Mapping[str, Sequence[Shape]]] = ()
    paper: Mapping[str, Sequence[Shape]] = field(default_factory=dict)

    @classmethod
    def of_pack(cls, pack: Mapping[str, Any], fonts: Sequence[Font] = ()) -> SymbolBank:
        """The symbols of an ink pack (see ink_pack.py): `bank_points`, `bank_offsets`, `bank_groups`, `bank_tokens`."""
        ink: dict[str, list[Shape]] = {}
        writers: dict[str, list[int]] = {}
        by_writer: dict[int, dict[str, list[Shape]]] = {}
        hands = pack["bank_hands"] if "bank_hands" in pack else np.full(len(pack["bank_tokens"]), -1)
        for (token, shape), writer in zip(_shapes(pack, "bank"), hands.tolist(), strict=True):
            ink.setdefault(token, []).append(shape)
            writers.setdefault(token, []).append(writer)
            by_writer.setdefault(writer, {}).setdefault(token, []).append(shape)
        paper: dict[str, list[Shape]] = {}
        for token, shape in _shapes(pack, "paper", filled=True) if "paper_points" in pack else ():
            paper.setdefault(token, []).append(shape)
        by_writer.pop(-1, None)
        return cls(
            ink, fonts, {token: _running_weights(names) for token, names in writers.items()},
            [own for own in by_writer.values() if sum(map(len, own.values())) >= _ENOUGH], paper,
        )  # fmt: skip

    def from_ink(self, token: str, rng: random.Random) -> Shape | None:
        """Any hand's instance of the token; those who wrote it often do not crowd out the others."""
        shapes = self.ink.get(token)
        if not shapes:
            return None
        running = self.weights.get(token)
        if running is None:
            return shapes[rng.randrange(len(shapes))]
        return shapes[min(bisect.bisect(running, rng.random() * running[-1]), len(shapes) - 1)]

    def from_font(self, token: str, font: Font | None, rng: random.Random) -> Shape | None:
        """The glyph of this font, or of any font when None is given."""
        for candidate in [font] if font is not None else rng.sample(self.fonts, len(self.fonts)):
            glyph = candidate.glyphs.get(token)
            if glyph is not None:
                return Shape(glyph.points, glyph.contours, filled=True, sits=True)
        return None

    def from_paper(self, token: str, place: float, rng: random.Random) -> Shape | None:
        """An outline of the token near a place (0 to 1) in the order in which the paper was cut up."""
        shapes = self.paper.get(token)
        if not shapes:
            return None
        near = (place + rng.gauss(0, _SHEET)) % 1.0
        return shapes[min(int(near * len(shapes)), len(shapes) - 1)]

    @staticmethod
    def drawn(token: str, rng: random.Random) -> Shape | None:
        """A sign of our own, each corner moved a little."""
        strokes = _OWN_SIGNS.get(token)
        if strokes is None:
            return None
        parts = [_rounded([(x + rng.gauss(0, 0.03), y + rng.gauss(0, 0.03)) for x, y in stroke]) for stroke in strokes]
        return Shape(np.concatenate(parts), np.cumsum([0, *map(len, parts)]).astype(np.int64))


def _shapes(pack: Mapping[str, Any], kind: str, *, filled: bool = False) -> Iterator[tuple[str, Shape]]:
    """Tokens and shapes of the arrays `kind_points`, `kind_offsets`, `kind_groups` and `kind_tokens`."""
    points, offsets, groups = pack[f"{kind}_points"], pack[f"{kind}_offsets"].astype(np.int64), pack[f"{kind}_groups"]
    for number, token in enumerate(pack[f"{kind}_tokens"]):
        inner = offsets[groups[number] : groups[number + 1] + 1]
        yield VOCABULARY[token], Shape(points[inner[0] : inner[-1]].astype(np.float32), inner - inner[0], filled)


def _running_weights(writers: Sequence[int]) -> list[float]:
    """Of the instances of one token: each writer weighs as the root of the number of instances they left."""
    counts = collections.Counter(writers)
    return list(itertools.accumulate(counts[writer] ** -0.5 for writer in writers))


def _rounded(corners: list[tuple[float, float]]) -> NDArray[np.float32]:
    """Points along a polyline, close enough together to bend smoothly."""
    line = np.asarray(corners, np.float32)
    steps = np.linspace(0, len(line) - 1, 5 * (len(line) - 1) + 1)
    places = np.arange(len(line))
    return np.stack([np.interp(steps, places, line[:, axis]) for axis in (0, 1)], 1).astype(np.float32)
