"""Lines of school algebra in the ink of writers that the reader was not taught: for confidence and for tests.

`python -m recognition.training.unseen_lines test2013.jsonl.xz OUT.jsonl --count 400` sets random lines, right or wrong,
from the symbols of that file, and writes JSON lines with `latex` and `strokes`.
"""

from __future__ import annotations

import argparse
import json
import lzma
import random
from collections.abc import Iterable
from pathlib import Path
from typing import Any, Final

import numpy as np

from recognition.reader.tokens import TOKEN_ID, NotCanonical, is_school, serialise, split_tokens
from recognition.training.bank import Shape, SymbolBank, cut
from recognition.training.layout import draw_line
from recognition.training.lines import random_line
from recognition.training.style import Style

__all__ = ["bank_of", "unseen_lines"]

_DOTTED: Final = frozenset((".", ":", "i", "j", "!", "%", r"\div", r"\cdot", r"\ldots", r"\therefore", r"\because"))
"""Signs with a dot, which may be a stroke of a single point; a pen needs two to draw it."""


def bank_of(rows: Iterable[dict[str, Any]]) -> SymbolBank:
    """The single symbols of labelled ink: objects with `strokes` and `symbols` as in the data set."""
    ink: dict[str, list[Shape]] = {}
    for row in rows:
        for label, members in row["symbols"] if row.get("symbols_agree") else ():
            tokens = split_tokens(label)
            strokes = [np.array(row["strokes"][member], np.float32)[:, :2] for member in members]
            if len(tokens) == 1 and tokens[0] in TOKEN_ID and strokes:
                if tokens[0] in _DOTTED:
                    strokes = [np.repeat(stroke, 2, axis=0) if len(stroke) == 1 else stroke for stroke in strokes]
                elif any(not np.ptp(stroke, axis=0).any() for stroke in strokes):
                    continue  # the pen was lost: an equals sign of one bar and a point is none
                offsets = np.cumsum([0, *map(len, strokes)]).astype(np.int64)
                ink.setdefault(tokens[0], []).append(Shape(np.concatenate(strokes), offsets))
    return SymbolBank(ink)


def unseen_lines(
    bank: SymbolBank, count: int, seed: int, *, shortest: int = 8, longest: int = 60
) -> Iterable[dict[str, Any]]:
    """Random school lines of `shortest` to `longest` tokens, each in symbols drawn from the bank."""
    rng = random.Random(seed)
    made = 0
    while made < count:
        row = random_line(rng, long_share=0.5)
        tokens = serialise(row)
        if not shortest <= len(tokens) <= longest or not is_school(tokens):
            continue
        try:
            drawing = draw_line(row, bank, Style.random(bank, rng), rng)
        except NotCanonical:
            continue
        made += 1
        strokes = [np.round(stroke * 1000).astype(int).tolist() for stroke in cut(drawing.points, drawing.offsets)]
        yield {"id": f"unseen-{seed}-{made}", "latex": " ".join(tokens), "strokes": strokes}


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("ink", type=Path, help="JSON lines (xz) whose writers the reader was not taught")
    parser.add_argument("out", type=Path)
    parser.add_argument("--count", type=int, default=400)
    parser.add_argument("--seed", type=int, default=7)
    given = parser.parse_args()
    with lzma.open(given.ink, "rt", encoding="utf-8") as lines:
        bank = bank_of(map(json.loads, lines))
    with given.out.open("w", encoding="utf-8") as out:
        for line in unseen_lines(bank, given.count, given.seed):
            out.write(json.dumps(line) + "\n")


if __name__ == "__main__":
    main()
