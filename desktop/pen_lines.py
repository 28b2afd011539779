"""The lines of a page that is written on: found anew after each pause, read only where strokes changed. No Qt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from desktop.desk_line import DeskLine, Lines, desk_line
from desktop.document import Strokes
from recognition.ink import Ink, InkLine, strokes_to_lines
from recognition.result import Box, Candidate, Line, Tick, Token

__all__ = ["PenLines", "ReadsLines"]

_PAD = 6


class ReadsLines(Protocol):
    """What reads lines of ink, such as `recognition.reader.NeuralReader`."""

    def read(self, crops: Sequence[InkLine], *, tick: Tick) -> list[tuple[Candidate, ...]]: ...


@dataclass(frozen=True, slots=True)
class _Found:
    """A line: its strokes, and where it is on the page."""

    key: Strokes
    box: Box
    ink: InkLine


class PenLines:
    """Remembers the readings of one page by the strokes that they were read from."""

    def __init__(self, strokes: Strokes, lines: Lines) -> None:
        """Take over a page as it is: its lines keep the readings that they have."""
        self._readings: dict[Strokes, tuple[Candidate, ...]] = {}
        if strokes and lines:
            by_box = {line.box: line for line in lines}
            for found in _found(strokes)[0]:
                line = by_box.get(found.box)
                if line is not None and line.candidates:
                    self._readings[found.key] = line.candidates

    def find(self, strokes: Strokes, lines: Lines, reader: ReadsLines, tick: Tick) -> Lines:
        """The lines of the strokes as they are now.

        Args:
            strokes: all of the page. lines: as they stand on the page; those whose strokes are the same stay.
            reader: reads the others.
        """
        if not strokes:
            return ()
        found, back = _found(strokes)
        unread = [one for one in found if one.key not in self._readings]
        if unread:
            read = reader.read([one.ink for one in unread], tick=tick)
            for one, candidates in zip(unread, read, strict=True):
                self._readings[one.key] = tuple(_on_page(candidate, back) for candidate in candidates)
        standing = {(line.box, line.candidates): line for line in lines}
        return tuple(self._line(one, standing) for one in found)

    def _line(self, found: _Found, standing: dict[tuple[Box, tuple[Candidate, ...]], DeskLine]) -> DeskLine:
        candidates = self._readings[found.key]
        stays = standing.get((found.box, candidates))
        if stays is not None:
            return stays
        x, y, w, h = map(float, found.box)
        polygon = ((x, y), (x + w, y), (x + w, y + h), (x, y + h))
        return desk_line(Line(found.box, candidates, found.ink.struck_out, polygon))


def _found(strokes: Strokes) -> tuple[list[_Found], NDArray[np.float64]]:
    """The lines, and the map from the pixels in which they are found to those of the page, shape (3, 3)."""
    lines = strokes_to_lines(Ink(strokes))
    keys = [tuple(strokes[n] for n in line.numbers) for line in lines.lines]
    return [_Found(k, _box(k), line) for k, line in zip(keys, lines.lines, strict=True)], lines.picture.to_ink


def _box(strokes: Strokes) -> Box:
    points = np.concatenate([stroke.points for stroke in strokes])
    low = np.maximum(np.floor(points.min(axis=0)) - _PAD, 0).astype(int)
    high = (np.ceil(points.max(axis=0)) + _PAD + 1).astype(int)
    return Box(int(low[0]), int(low[1]), int(high[0] - low[0]), int(high[1] - low[1]))


def _on_page(candidate: Candidate, back: NDArray[np.float64]) -> Candidate:
    return replace(candidate, tokens=tuple(_placed(token, back) for token in candidate.tokens))


def _placed(token: Token, back: NDArray[np.float64]) -> Token:
    if token.box is None:
        return token
    scale = back[0, 0]
    x, y = (round(float(side * scale + shift)) for side, shift in zip(token.box[:2], back[:2, 2], strict=True))
    w, h = (max(1, round(float(side * scale))) for side in token.box[2:])
    return replace(token, box=Box(x, y, w, h))
