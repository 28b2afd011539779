"""Are symbols that were struck out left out of the reading and reported?

`python -m recognition.training.struck_lines test2014.jsonl.xz --count 200` sets random school lines in the ink of that
file's writers, reads each as it is and with some symbols struck out, and prints one JSON object: how many of each are
read rightly (the struck symbols are no part of the truth), in how many of the struck ones a reported place lies on
struck ink, and how often something is reported where nothing was struck.
"""

from __future__ import annotations

import argparse
import json
import lzma
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from recognition.evaluate import DrawnStrokes
from recognition.reader import NeuralReader
from recognition.reader.tokens import NotCanonical, is_school, serialise
from recognition.reader.weights import MODEL_FOLDER
from recognition.result import Box, Candidate
from recognition.training.bank import SymbolBank, cut
from recognition.training.layout import Drawing, Sample, draw_line
from recognition.training.lines import random_line
from recognition.training.striking import struck
from recognition.training.style import Style
from recognition.training.unseen_lines import bank_of

__all__ = ["StruckLine", "main", "reported_on", "struck_lines"]

SHORTEST, LONGEST = 8, 40


@dataclass(frozen=True, slots=True)
class StruckLine:
    """A line before and after symbols were struck out; `gone`: strokes of these symbols and of the strikes."""

    whole: Sample
    rest: Sample
    gone: tuple[NDArray[np.float32], ...]


def struck_lines(bank: SymbolBank, count: int, seed: int) -> Iterator[StruckLine]:
    """Random school lines of which something was struck out."""
    rng = random.Random(seed)
    made = 0
    while made < count:
        row = random_line(rng, long_share=0.3)
        tokens = tuple(serialise(row))
        if not SHORTEST <= len(tokens) <= LONGEST or not is_school(tokens):
            continue
        try:
            whole = Sample(tokens, draw_line(row, bank, Style.random(bank, rng), rng))
        except NotCanonical:
            continue
        rest = struck(whole, rng)
        if rest is whole:
            continue
        made += 1
        parts = cut(rest.drawing.points, rest.drawing.offsets)
        gone = tuple(part for part, owner in zip(parts, rest.drawing.token, strict=True) if owner < 0)
        yield StruckLine(whole, rest, gone)


def reported_on(places: Sequence[Box], strokes: Sequence[NDArray[np.float32]]) -> int:
    """How many of the places hold a point of one of the strokes."""
    points = np.concatenate(strokes) if strokes else np.zeros((0, 2))
    inside = [
        (points[:, 0] >= x) & (points[:, 0] <= x + w) & (points[:, 1] >= y) & (points[:, 1] <= y + h)
        for x, y, w, h in places
    ]
    return sum(bool(one.any()) for one in inside)


def _read(reader: NeuralReader, drawing: Drawing) -> tuple[Candidate | None, float]:
    """The first candidate, and the unit that its boxes are in: a digit's height."""
    unit = 100.0
    low = drawing.points.min(axis=0)
    strokes = tuple(np.asarray((part - low) * unit, np.float64) for part in cut(drawing.points, drawing.offsets))
    (candidates,) = reader.read((DrawnStrokes(strokes),))
    return (candidates[0] if candidates else None), unit


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("ink", type=Path, help="JSON lines (xz) whose writers the reader was not taught")
    parser.add_argument("--count", type=int, default=200)
    parser.add_argument("--seed", type=int, default=17)
    parser.add_argument("--models", type=Path, default=MODEL_FOLDER)
    given = parser.parse_args(arguments)
    with lzma.open(given.ink, "rt", encoding="utf-8") as lines:
        bank = bank_of(map(json.loads, lines))
    reader = NeuralReader.load(given.models)
    right = {"whole": 0, "struck": 0}
    false = found = places = 0
    for line in struck_lines(bank, given.count, given.seed):
        read, _ = _read(reader, line.whole.drawing)
        right["whole"] += read is not None and read.latex == " ".join(line.whole.tokens)
        false += read is not None and bool(read.struck)
        read, unit = _read(reader, line.rest.drawing)
        right["struck"] += read is not None and read.latex == " ".join(line.rest.tokens)
        low = line.rest.drawing.points.min(axis=0)
        hits = reported_on(read.struck if read is not None else (), [(part - low) * unit for part in line.gone])
        found += hits > 0
        places += (len(read.struck) if read is not None else 0) - hits
    share = 100 / given.count
    report = {
        "ink": given.ink.name, "lines": given.count, "ExpRate_whole": round(right["whole"] * share, 1),
        "ExpRate_struck": round(right["struck"] * share, 1), "struck_reported": round(found * share, 1),
        "reported_elsewhere": round(places * share, 1), "reported_where_nothing_was_struck": round(false * share, 1),
    }  # fmt: skip
    print(json.dumps(report))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
