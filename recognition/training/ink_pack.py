"""Packs training ink into one small file: expressions, their parts, and a bank of single symbols.

`python -m recognition.training.ink_pack DATA OUT.npz` reads the data folder described in the model card. Test files of
the competition are never read here. Lines whose strokes are not linked to their symbols are linked by the shipped
reader, where it finds their label.
"""

from __future__ import annotations

import argparse
import collections
import hashlib
import io
import itertools
import json
import lzma
import random
import string
import tarfile
import xml.etree.ElementTree as ElementTree
from collections.abc import Iterable, Iterator, Sequence, Sized
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from recognition.reader import NeuralReader
from recognition.reader.canonical import typical_height
from recognition.reader.tokens import TOKEN_ID, NotCanonical, normalise
from recognition.training.linked_ink import Item, LinkedInk, read_linked
from recognition.training.linking import link
from recognition.training.paper_symbols import digit_pictures, labelled_pictures, packed

__all__ = ["UNITS", "build", "resampled"]

UNITS: Final = 8.0
"""Stored units to one pixel of the canonical frame, in which a typical symbol is 40 high."""

_JSON_INK: Final = ("crohme/train.jsonl.xz", "mathwriting/sample.jsonl.xz")
_PAPER_EACH: Final = 500
_FEW_SHAPES: Final = 20
"""A letter with fewer instances in ink would be learnt by heart from lines with texts that hold it."""
_SYMBOL_HEIGHT: Final = 40.0
_KEEP_EVERY: Final = 1.6
_FILL_EVERY: Final = 8.0


def resampled(strokes: Sequence[NDArray[np.float32]]) -> list[NDArray[np.float32]]:
    """Scale to the canonical frame, thin out dense points and fill long gaps so that warps stay smooth."""
    low = np.array([stroke.min(0) for stroke in strokes])
    high = np.array([stroke.max(0) for stroke in strokes])
    size = high - low
    scale = _SYMBOL_HEIGHT / typical_height(size[:, 1].astype(np.float64), size[:, 0].astype(np.float64))
    scale *= min(1.0, 3900 / max(float((high.max(0) - low.min(0)).max()) * scale, 1e-6))
    return [_evened((stroke - low.min(0)) * np.float32(scale)) for stroke in strokes]


def _evened(stroke: NDArray[np.float32]) -> NDArray[np.float32]:
    kept = [stroke[0]]
    for point in stroke[1:-1]:
        if np.abs(point - kept[-1]).max() >= _KEEP_EVERY:
            kept.append(point)
    if len(stroke) > 1:
        kept.append(stroke[-1])
    out = [kept[0]]
    for a, b in itertools.pairwise(kept):
        steps = int(np.hypot(*(b - a)) // _FILL_EVERY) + 1
        out += [a + (b - a) * np.float32(step / steps) for step in range(1, steps + 1)]
    return np.asarray(out, np.float32)


@dataclass(slots=True)
class _Writer:
    points: list[NDArray[np.int16]] = field(default_factory=list)
    offsets: list[int] = field(default_factory=lambda: [0])
    expressions: list[int] = field(default_factory=lambda: [0])
    groups: list[int] = field(default_factory=list)
    item_expression: list[int] = field(default_factory=list)
    item_offsets: list[int] = field(default_factory=lambda: [0])
    item_tokens: list[int] = field(default_factory=list)
    item_groups: list[int] = field(default_factory=list)
    item_whole: list[bool] = field(default_factory=list)
    bank_points: list[NDArray[np.int16]] = field(default_factory=list)
    bank_offsets: list[int] = field(default_factory=lambda: [0])
    bank_groups: list[int] = field(default_factory=lambda: [0])
    bank_tokens: list[int] = field(default_factory=list)
    bank_hands: list[int] = field(default_factory=list)

    def add(self, ink: LinkedInk, hand: int) -> None:
        """Take over one expression; `hand` numbers its writer, -1 where nobody is named."""
        strokes = [np.round(s * UNITS).clip(-32000, 32000).astype(np.int16) for s in resampled(ink.strokes)]
        for stroke in strokes:
            self.points.append(stroke)
            self.offsets.append(self.offsets[-1] + len(stroke))
        self.groups += ink.group
        for whole, item in ((True, ink.whole), *((False, part) for part in ink.parts)):
            self.item_expression.append(len(self.expressions) - 1)
            self.item_tokens += [TOKEN_ID[token] for token in item.tokens]
            self.item_groups += item.groups
            self.item_offsets.append(len(self.item_tokens))
            self.item_whole.append(whole)
        self.expressions.append(len(self.groups))
        for number, symbol in enumerate(ink.symbols):
            members = [stroke for stroke, group in zip(strokes, ink.group, strict=True) if group == number]
            if members and symbol in TOKEN_ID and symbol not in ("^", "_", "{", "}", r"\frac", r"\sqrt"):
                for stroke in members:
                    self.bank_points.append(stroke)
                    self.bank_offsets.append(self.bank_offsets[-1] + len(stroke))
                self.bank_groups.append(len(self.bank_offsets) - 1)
                self.bank_tokens.append(TOKEN_ID[symbol])
                self.bank_hands.append(hand)

    def arrays(self) -> dict[str, Any]:
        return {
            "points": np.concatenate(self.points), "offsets": np.array(self.offsets, np.int32),
            "expressions": np.array(self.expressions, np.int32), "groups": np.array(self.groups, np.int16),
            "item_expression": np.array(self.item_expression, np.int32),
            "item_offsets": np.array(self.item_offsets, np.int32),
            "item_tokens": np.array(self.item_tokens, np.uint8), "item_groups": np.array(self.item_groups, np.int16),
            "item_whole": np.array(self.item_whole, np.bool_),
            "bank_points": np.concatenate(self.bank_points or [np.zeros((0, 2), np.int16)]),
            "bank_offsets": np.array(self.bank_offsets, np.int32), "bank_groups": np.array(self.bank_groups, np.int32),
            "bank_tokens": np.array(self.bank_tokens, np.uint8), "bank_hands": np.array(self.bank_hands, np.int16),
        }  # fmt: skip


def stroke_shape(strokes: Iterable[Sized]) -> str:
    """A key that the same ink has in every copy: how many points each stroke has."""
    return hashlib.sha256(",".join(str(len(stroke)) for stroke in strokes).encode()).hexdigest()


def _hands(data: Path) -> dict[str, int]:
    """The number of the writer of each expression, by its stroke_shape; names count within their data set.

    MathWriting names nobody, and its sample has hardly two lines of one hand: each is a writer of its own.
    """
    numbers: dict[tuple[str, str], int] = {}
    out: dict[str, int] = {}
    for source in _JSON_INK:
        for place, line in enumerate(_json_lines(data / source)):
            name = line["writer"]
            if name is None and line["source"].startswith("mathwriting"):
                name = place
            if name is not None:
                number = numbers.setdefault((line["source"], str(name)), len(numbers))
                out[stroke_shape([stroke for stroke in line["strokes"] if stroke])] = number
    return out


def _json_lines(path: Path) -> Iterator[dict[str, Any]]:
    with lzma.open(path, "rt", encoding="utf-8") as lines:
        for line in lines:
            yield json.loads(line)


def _unlinked(data: dict[str, Any]) -> LinkedInk:
    label = tuple(normalise(data["latex"] or ""))
    if not label:
        raise NotCanonical("The label is empty.")
    strokes = tuple(np.array([point[:2] for point in stroke], np.float32) for stroke in data["strokes"] if stroke)
    group, symbols = [-1] * len(strokes), []
    for number, (symbol, members) in enumerate(data["symbols"] if data.get("symbols_agree") else ()):
        symbols.append(symbol)
        for member in members:
            group[member] = number
    return LinkedInk(strokes, tuple(group), tuple(symbols), Item(label, (-1,) * len(label)), ())


def _is_linked(ink: LinkedInk) -> bool:
    return max(ink.whole.groups, default=-1) >= 0


def build(
    data: Path, out: Path, *, digits: Path | None = None, reader: NeuralReader | None = None, seed: int = 0
) -> None:
    """Write the pack: linked InkML first, then the ink that only the JSON lines hold, then the texts of lines.

    Args:
        data: folder with crohme/, mathwriting/, line-texts/ and symbols-on-paper/.
        digits: more digits on paper, as `paper_symbols.digit_pictures` reads them.
        reader: links the strokes of lines that no data set links.
    """
    rng, writer, seen = random.Random(seed), _Writer(), set()
    hands = _hands(data)

    def take(ink: LinkedInk, hand: int, kind: str) -> None:
        own = ink if reader is None or _is_linked(ink) else link(ink, reader)
        troubles[f"{kind}, linked" if own is not None and _is_linked(own) else f"{kind}, not linked"] += 1
        writer.add(own or ink, hand)

    troubles: collections.Counter[str] = collections.Counter()
    with tarfile.open(data / "crohme" / "train-inkml.tar.xz") as archive:
        files = {member.name: archive.extractfile(member) for member in archive if member.name.endswith(".inkml")}
        contents = {name: file.read() for name, file in files.items() if file is not None}
        for name in sorted(contents):
            try:
                ink = read_linked(io.BytesIO(contents[name]), rng)
            except (NotCanonical, ElementTree.ParseError, ValueError) as error:
                troubles[str(error)[:60]] += 1
                continue
            seen.add(stroke_shape(ink.strokes))
            take(ink, hands.get(stroke_shape(ink.strokes), -1), "InkML" if _is_linked(ink) else "InkML without links")
    for source in _JSON_INK:
        for line in _json_lines(data / source):
            key = stroke_shape([stroke for stroke in line["strokes"] if stroke])
            if key in seen or not line["split"].startswith("train"):
                continue
            seen.add(key)
            try:
                take(_unlinked(line), hands.get(key, -1), f"only in {source}")
            except NotCanonical as error:
                troubles[str(error)[:60]] += 1
    written = collections.Counter(writer.bank_tokens)
    seldom = {letter for letter in string.ascii_letters if written[TOKEN_ID[letter]] < _FEW_SHAPES}
    texts, text_offsets = [], [0]
    with lzma.open(data / "line-texts" / "lines.txt.xz", "rt", encoding="utf-8") as file:
        lines = sorted(set(file))
    for text in lines:
        try:
            tokens = normalise(text)
        except NotCanonical:
            continue
        if 2 <= len(tokens) <= 80 and seldom.isdisjoint(tokens):
            texts += [TOKEN_ID[token] for token in tokens]
            text_offsets.append(len(texts))
    paper = labelled_pictures(data / "symbols-on-paper" / "symbols.npz", each=_PAPER_EACH)
    np.savez_compressed(
        out, **writer.arrays(), **packed(itertools.chain(paper, digit_pictures(digits) if digits else ())),
        texts=np.array(texts, np.uint8), text_offsets=np.array(text_offsets, np.int32),
    )
    for trouble, count in troubles.most_common(20):
        print(f"{count:6d}  {trouble}")
    print(f"{len(writer.item_whole)} items, {len(writer.bank_tokens)} symbols, {len(text_offsets) - 1} line texts,",
          f"{out.stat().st_size / 2**20:.1f} MiB")  # fmt: skip


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("data", type=Path, help="folder with crohme/, mathwriting/, line-texts/ and symbols-on-paper/")
    parser.add_argument("out", type=Path)
    parser.add_argument("--digits", type=Path, help="digits on paper: CSV of 784 grey values, ink bright, and label")
    arguments = parser.parse_args()
    build(arguments.data, arguments.out, digits=arguments.digits, reader=NeuralReader.load())
