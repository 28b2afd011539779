"""How well are lines of working read as they occur? In one hand each, on photographed pages, cut by the page stage.

`python -m recognition.training.working_lines test2014.jsonl.xz --texts lines.txt.xz --count 500` writes school working,
right and wrong, in the ink of that file's writers, on simulated photos of pages; finds the lines, gives each true line
the crop that covers it, reads the crops, and prints one JSON object. A line without a crop of its own counts as wrong.
Writers of CROHME 2013 serve tuning, those of 2014 the figure. With `--out FOLDER` the crops are kept, and
`python -m recognition evaluate FOLDER/lines.jsonl` reads them again with other weights.
"""

from __future__ import annotations

import argparse
import json
import lzma
import random
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.evaluate import Sample, evaluate
from recognition.page import LineCrop, find_lines
from recognition.reader import NeuralReader
from recognition.reader.tokens import NotCanonical, is_school, parse, serialise
from recognition.reader.weights import MODEL_FOLDER
from recognition.result import Box
from recognition.training.bank import SymbolBank
from recognition.training.hands import WriterHand, one_hand, writer_hands
from recognition.training.layout import draw_line
from recognition.training.lines import mutated, random_line
from recognition.training.photo import PhotoStyle, mapped, photograph
from recognition.training.sheets import Hand, Paper, write_sheet
from recognition.training.style import Style

__all__ = ["PageOfWorking", "WrittenLine", "cut_out", "main", "page_of_working", "pages_of_working", "school_lines"]

SHORTEST, LONGEST = 8, 60
PHOTO_SIZE: Final = (1600, 2200)
_LEAST_OVERLAP: Final = 0.5
"""Intersection over union of upright boxes under which a crop is not that line's."""
_CLEAN_OVERLAP: Final = 0.75
_HARD_SHARE: Final = 0.25
_LEAST_SYMBOLS: Final = 150
_LETTERS: Final = "x" * 10 + "y" * 5 + "aaabbbnnttww" + "pqzkmcrhvd"


@dataclass(frozen=True, slots=True)
class WrittenLine:
    """One line on a page: its canonical tokens, where its form comes from, its box (x0, y0, x1, y1) on the photo."""

    tokens: tuple[str, ...]
    form: str
    box: tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class PageOfWorking:
    """image: the photo, RGB, shape (h, w, 3); writer: whose hand; own_share: share of tokens in that very hand."""

    image: NDArray[np.uint8]
    lines: tuple[WrittenLine, ...]
    writer: str
    own_share: float


def school_lines(rng: random.Random, texts: Sequence[str]) -> Iterator[tuple[tuple[str, ...], str]]:
    """Lines of school working without end, and the name of their form.

    Half are random lines; half have the form of a written line out of `texts`, with symbols exchanged for others of
    like shape, so that neither the text nor its truth was seen before.
    """
    while True:
        form = "text" if texts and rng.random() < 0.5 else "random"
        try:
            row = mutated(parse(rng.choice(texts)), 0.5, rng) if form == "text" else random_line(rng, long_share=0.5)
            tokens = tuple(serialise(row))
            if SHORTEST <= len(tokens) <= LONGEST and is_school(tokens):
                yield tokens, form
        except NotCanonical:
            continue


def page_of_working(
    writer: WriterHand, bank: SymbolBank, lines: Sequence[tuple[tuple[str, ...], str]], rng: random.Random
) -> PageOfWorking:
    """Write lines one below the other in one hand and photograph the page, without lines that run off it."""
    noise = np.random.default_rng(rng.getrandbits(64))
    pattern = rng.choice(("plain", "ruled", "squared"))
    digit, pen = rng.uniform(44, 66), rng.uniform(3.5, 6.5)
    hand = Hand(
        None, digit, pen,
        colour=rng.choice(((28, 34, 92), (34, 46, 120), (36, 36, 40), (88, 88, 92), (20, 60, 150))),
        slant=rng.gauss(0, 0.08), drift=rng.gauss(0, 0.012),
    )  # fmt: skip
    paper = Paper(
        pattern, rng.choice(((249, 248, 243), (252, 252, 252), (244, 240, 226))),
        rng.choice(((166, 190, 222), (150, 178, 210), (196, 204, 214), (178, 206, 190))),
        margin_line=pattern != "plain" and rng.random() < 0.5,
    )  # fmt: skip
    sheet = write_sheet(
        [" ".join(tokens) for tokens, _ in lines], bank, hand, paper, rng, top=rng.uniform(110, 240),
        left=rng.uniform(110, 320), gap=rng.uniform(0.75, 1.6), indent=0.0,
        room=pen / digit,
    )  # fmt: skip
    fit = [box[3] < sheet.image.shape[0] - 40 for box in sheet.boxes]
    count = fit.index(False) if False in fit else len(fit)
    image = sheet.image if count == len(fit) else sheet.image[: max(60, int(sheet.boxes[count][1]) - 6)]
    style = PhotoStyle.random(noise, hard=rng.random() < _HARD_SHARE)
    photo = photograph(np.ascontiguousarray(image), style, PHOTO_SIZE, noise)
    written = []
    for (tokens, form), hull in zip(lines[:count], sheet.hulls, strict=False):
        corners = mapped(hull, photo.homography)
        (x0, y0), (x1, y1) = corners.min(axis=0), corners.max(axis=0)
        written.append(WrittenLine(tokens, form, (float(x0), float(y0), float(x1), float(y1))))
    every = [token for line in written for token in line.tokens if token in bank.ink]
    own = sum(token in writer.bank.ink for token in every) / max(1, len(every))
    return PageOfWorking(photo.image, tuple(written), writer.name, own)


def pages_of_working(
    hands: Sequence[WriterHand], texts: Sequence[str], count: int, seed: int, *, a_page: tuple[int, int] = (4, 9)
) -> Iterator[PageOfWorking]:
    """Pages with `count` lines in all, one writer after the other; the same seed gives the same pages.

    Writers with few symbols write no pages; theirs stand in where another never wrote a symbol.

    Args:
        a_page: fewest and most lines that a page is to have; those that run off it are left out.
    """
    rng = random.Random(seed)
    source = school_lines(rng, texts)
    writers = [hand for hand in hands if hand.symbols >= _LEAST_SYMBOLS]
    made = number = 0
    while made < count:
        writer = writers[number % len(writers)]
        number += 1
        letters = [rng.choice(_LETTERS) for _ in range(rng.choices((1, 2, 3), (50, 35, 15))[0])]
        bank = one_hand(writer, hands, rng)
        wanted: list[tuple[tuple[str, ...], str]] = []
        most = min(rng.randint(*a_page), count - made)
        while len(wanted) < most:
            line = _with_letters(next(source), letters, rng)
            if _can_be_set(line[0], bank):
                wanted.append(line)
        page = page_of_working(writer, bank, wanted, rng)
        made += len(page.lines)
        yield page


def cut_out(page: PageOfWorking) -> list[tuple[LineCrop | None, float]]:
    """For each written line the found crop that covers it, and their overlap; None where none is its own."""
    found = find_lines(page.image).lines
    pairs = sorted(
        ((_overlap(crop.box, line.box), i, j) for i, crop in enumerate(found) for j, line in enumerate(page.lines)),
        reverse=True,
    )
    out: list[tuple[LineCrop | None, float]] = [(None, 0.0)] * len(page.lines)
    used: set[int] = set()
    for overlap, i, j in pairs:
        if overlap >= _LEAST_OVERLAP and i not in used and out[j][0] is None:
            used.add(i)
            out[j] = (found[i], overlap)
    return out


def _with_letters(
    line: tuple[tuple[str, ...], str], letters: list[str], rng: random.Random
) -> tuple[tuple[str, ...], str]:
    """The line in the letters of its page; a line with more letters than the page brings new ones."""
    tokens, form = line
    old = sorted({token for token in tokens if len(token) == 1 and token.isalpha()})
    while len(set(letters)) < len(old):
        letters.append(rng.choice(_LETTERS))
    new = dict(zip(old, rng.sample(sorted(set(letters)), len(old)), strict=True))
    return tuple(new.get(token, token) for token in tokens), form


def _can_be_set(tokens: Sequence[str], bank: SymbolBank) -> bool:
    """Somebody wrote every sign, or it is a word of written letters, or one of the bank's own signs."""
    try:
        draw_line(parse(" ".join(tokens)), bank, Style(), random.Random(0))
    except NotCanonical:
        return False
    return True


def _overlap(box: Box, true: tuple[float, float, float, float]) -> float:
    width = min(box.x + box.w, true[2]) - max(box.x, true[0])
    height = min(box.y + box.h, true[3]) - max(box.y, true[1])
    if width <= 0 or height <= 0:
        return 0.0
    both = width * height
    return both / (box.w * box.h + (true[2] - true[0]) * (true[3] - true[1]) - both)


def _blank() -> LineCrop:
    """Stands for a line that was not found: nothing can be read of it."""
    return LineCrop(np.full((32, 32), 255, np.uint8), Box(0, 0, 32, 32), (), np.eye(3))


def _measure(pages: Iterable[PageOfWorking], reader: NeuralReader, out: Path | None) -> dict[str, Any]:
    samples: list[Sample] = []
    overlaps: list[float] = []
    forms: list[str] = []
    own_shares: dict[str, list[float]] = {}
    for number, page in enumerate(pages):
        own_shares.setdefault(page.writer, []).append(page.own_share)
        for place, (line, (crop, overlap)) in enumerate(zip(page.lines, cut_out(page), strict=True)):
            identity = f"{page.writer}/{number}/{place}"
            samples.append(Sample(
                identity, line.tokens, _blank() if crop is None else crop, page.writer, f"{page.writer}/{number}"
            ))  # fmt: skip
            overlaps.append(overlap)
            forms.append(line.form)
    report, candidates = evaluate(samples, reader)
    report["pages"], report["writers"] = sum(map(len, own_shares.values())), len(own_shares)
    report["own_hand_share"] = round(float(np.mean([share for each in own_shares.values() for share in each])), 3)
    right = [bool(c) and c[0].latex.split() == list(s.truth or ()) for s, c in zip(samples, candidates, strict=True)]

    def rate(chosen: Sequence[bool]) -> dict[str, float]:
        hits = [is_right for is_right, kept in zip(right, chosen, strict=True) if kept]
        return {"lines": len(hits), "ExpRate": round(100 * sum(hits) / max(1, len(hits)), 2)}

    report["found"] = rate([overlap > 0 for overlap in overlaps])
    report["lost_percent"] = round(100 * sum(overlap == 0 for overlap in overlaps) / max(1, len(overlaps)), 2)
    report["cut_well"] = rate([overlap >= _CLEAN_OVERLAP for overlap in overlaps])
    report["forms"] = {form: rate([one == form for one in forms]) for form in sorted(set(forms))}
    if out is not None:
        _keep(out, samples, overlaps, [c[0].latex if c else "" for c in candidates])
    return report


def _keep(folder: Path, samples: Sequence[Sample], overlaps: Sequence[float], read: Sequence[str]) -> None:
    """Write the crops and `lines.jsonl` beside them."""
    folder.mkdir(parents=True, exist_ok=True)
    rows = []
    for number, (sample, overlap, latex) in enumerate(zip(samples, overlaps, read, strict=True)):
        name = f"line-{number:04}.png"
        assert isinstance(sample.crop, LineCrop)
        cv2.imwrite(str(folder / name), sample.crop.image)
        rows.append({
            "id": sample.identity, "writer": sample.identity.split("/")[0], "latex": " ".join(sample.truth or ()),
            "page": sample.page, "image": name, "evened": True, "overlap": round(overlap, 3), "read": latex,
        })  # fmt: skip
    (folder / "lines.jsonl").write_text("".join(json.dumps(row) + "\n" for row in rows), "utf-8")


def _texts(path: Path | None) -> list[str]:
    """The lines of a text file (xz) that are school algebra of a fit length."""
    if path is None:
        return []
    kept = []
    with lzma.open(path, "rt", encoding="utf-8") as file:
        for line in file:
            try:
                tokens = serialise(parse(line))
            except NotCanonical:
                continue
            if SHORTEST <= len(tokens) <= LONGEST and is_school(tokens):
                kept.append(" ".join(tokens))
    return kept


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("ink", type=Path, help="JSON lines (xz) with writers that the reader was not taught")
    parser.add_argument("--texts", type=Path, help="written lines, one a line (xz); without them all lines are random")
    parser.add_argument("--count", type=int, default=500)
    parser.add_argument("--seed", type=int, default=100_000)
    parser.add_argument("--a-page", type=int, nargs=2, default=(4, 9), help="fewest and most lines of a page")
    parser.add_argument("--models", type=Path, default=MODEL_FOLDER, help="weights to measure (the shipped ones)")
    parser.add_argument("--out", type=Path, help="keep the crops in this folder")
    options = parser.parse_args(arguments)
    with lzma.open(options.ink, "rt", encoding="utf-8") as lines:
        hands = writer_hands(map(json.loads, lines))
    pages = pages_of_working(hands, _texts(options.texts), options.count, options.seed, a_page=tuple(options.a_page))
    report = _measure(pages, NeuralReader.load(options.models), options.out)
    print(json.dumps({"ink": options.ink.name, "seed": options.seed, **report}, indent=1))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
