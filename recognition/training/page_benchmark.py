"""How well are lines found? `python -m recognition.training.page_benchmark --pages 300 --ink test2014.jsonl.xz --read`.

Simulated pages (`scenes.py`) with their truth: F-measure at an overlap (intersection over union of upright boxes) of
0.75 for the finder and for a plain projection profile on the same pages, order, workings, crossed-out lines, the way
back to the photo, readings kept beside the line alone on white; then milliseconds by stage for a 12-megapixel photo.
Seeds below 100,000 and from 300,000 on serve tuning, those between are for reporting; of these, hard pages of 120,000
to 120,099 have been looked at.
"""

from __future__ import annotations

import argparse
import json
import lzma
import random
import statistics
import time
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page import FoundPage, find_lines
from recognition.page.light import background, evened
from recognition.read import line_from_picture
from recognition.reader import NeuralReader
from recognition.reader.edits import edit_distance
from recognition.reader.tokens import is_lower_school, normalise, parse, serialise
from recognition.result import Box
from recognition.training.bank import SymbolBank
from recognition.training.fonts import page_fonts
from recognition.training.lines import random_line
from recognition.training.page_measure import (
    BoxF,
    Counts,
    f_measure,
    measure_boxes,
    measure_page,
    pairs,
    way_back,
)
from recognition.training.photo import Photo, PhotoStyle, mapped, photograph
from recognition.training.scenes import KINDS, Scene, make_scene
from recognition.training.sheets import Hand, Paper, write_sheet
from recognition.training.unseen_lines import bank_of

__all__ = ["SimulatedPage", "f_measure", "main", "matched", "profile_boxes", "simulated_page"]

REPORT_SEED = 100_000
_READ_EVERY = 10
TWELVE_MEGAPIXELS = (3000, 4000)


@dataclass(frozen=True, slots=True)
class SimulatedPage:
    """photo; LaTeX of each line and its box x0, y0, x1, y1 in pixels of the photo; ink of the sheet (255)."""

    photo: Photo
    latex: tuple[str, ...]
    boxes: tuple[BoxF, ...]
    ink: NDArray[np.uint8]


def simulated_page(
    seed: int, *, kind: str = "mixed", size: tuple[int, int] = (1600, 2200), bank: SymbolBank | None = None
) -> SimulatedPage:
    """A page by lot.

    Args:
        seed: the same seed gives the same page.
        kind: "plain", "ruled" (ruled or squared), "hard" (darker, more turned, less sharp) or "mixed".
        size: (width, height) of the photo.
        bank: shapes to write with; None writes in the shipped fonts.
    """
    rng = random.Random(seed)
    noise = np.random.default_rng(seed)
    fonts = page_fonts()
    font = rng.choice(fonts) if bank is None or not bank.ink else None
    shapes = bank if bank is not None else SymbolBank(fonts=fonts)
    pattern = {"plain": "plain", "ruled": rng.choice(("ruled", "squared"))}.get(
        kind, rng.choice(("plain", "ruled", "squared"))
    )
    hand = Hand(
        font, digit=rng.uniform(44, 66), pen=rng.uniform(3.5, 6.5),
        colour=rng.choice(((28, 34, 92), (34, 46, 120), (36, 36, 40), (88, 88, 92), (20, 60, 150))),
        slant=rng.gauss(0, 0.08), drift=rng.gauss(0, 0.012),
    )
    paper = Paper(
        pattern, rng.choice(((249, 248, 243), (252, 252, 252), (244, 240, 226))),
        rng.choice(((166, 190, 222), (150, 178, 210), (196, 204, 214), (178, 206, 190))),
        margin_line=pattern != "plain" and rng.random() < 0.5,
    )
    lines: list[str] = []
    while len(lines) < rng.randint(4, 10):
        tokens = serialise(random_line(rng, long_share=0.15))
        if 3 <= len(tokens) <= 45 and is_lower_school(tokens) and r"\pi" not in tokens:
            lines.append(" ".join(tokens))
    sheet = write_sheet(
        lines, shapes, hand, paper, rng, top=rng.uniform(110, 240), left=rng.uniform(110, 320),
        gap=rng.uniform(0.75, 1.6), indent=0.0,
    )
    inside = [n for n, box in enumerate(sheet.boxes) if box[3] < sheet.image.shape[0] - 40]
    style = PhotoStyle.random(noise, hard=kind == "hard")
    photo = photograph(_cut(sheet.image, sheet.boxes, len(inside)), style, size, noise)
    boxes = []
    for n in inside:
        corners = mapped(sheet.hulls[n], photo.homography)
        low, high = corners.min(axis=0), corners.max(axis=0)
        boxes.append((float(low[0]), float(low[1]), float(high[0]), float(high[1])))
    return SimulatedPage(photo, tuple(lines[n] for n in inside), tuple(boxes), sheet.ink)


def _cut(image: NDArray[np.uint8], boxes: Sequence[BoxF], count: int) -> NDArray[np.uint8]:
    """The sheet up to the first line that runs off it."""
    if count == len(boxes):
        return image
    return np.ascontiguousarray(image[: int(boxes[count][1]) - 6])


def matched(found: Sequence[BoxF], truth: Sequence[BoxF]) -> int:
    """How many true boxes have a found box of their own that overlaps enough; each found box serves once."""
    return len(pairs(found, truth))


def profile_boxes(image: NDArray[np.uint8]) -> list[BoxF]:
    """The plain baseline: even the light, Otsu, rows with ink make bands, columns with ink bound them."""
    grey = np.asarray(cv2.cvtColor(image, cv2.COLOR_RGB2GRAY), dtype=np.uint8)
    even = evened(grey, background(grey))
    _, dark = cv2.threshold(even, 0, 255, cv2.THRESH_BINARY_INV | cv2.THRESH_OTSU)
    rows = (dark > 0).mean(axis=1) > 0.004
    rows = np.convolve(rows, np.ones(9), "same") > 4
    boxes = []
    edges = np.flatnonzero(np.diff(np.concatenate([[0], rows.astype(int), [0]])))
    for top, bottom in zip(edges[::2], edges[1::2], strict=True):
        columns = np.flatnonzero((dark[top:bottom] > 0).sum(axis=0) > 1)
        if bottom - top >= 12 and columns.size:
            boxes.append((float(columns[0]), float(top), float(columns[-1] + 1), float(bottom)))
    return boxes


def _measure(kind: str, seeds: Sequence[int], bank: SymbolBank | None, reader: NeuralReader | None) -> dict[str, Any]:
    found, plain = Counts(), Counts()
    traits: dict[str, Counts] = {}
    back: list[float] = []
    worst: list[tuple[float, int]] = []
    kept = read = 0
    for number, seed in enumerate(seeds):
        scene = make_scene(seed, kind, bank=bank if number % 2 else None)
        page = find_lines(scene.photo.image)
        counts = measure_page(page, scene)
        found.add(counts)
        plain.add(measure_boxes(profile_boxes(scene.photo.image), scene))
        for trait in scene.traits:
            traits.setdefault(trait, Counts()).add(counts)
        worst.append((counts.f_measure, seed))
        partner = pairs([_corners(line.box) for line in page.lines], [line.box for line in scene.lines])
        back += [way_back(page.lines[i], scene.ink) for i in partner.values()]
        if reader is not None and number % _READ_EVERY == 0:
            better, all_read = _kept_readings(page, scene, partner, reader)
            kept, read = kept + better, read + all_read
    far = np.array(back)
    result: dict[str, Any] = {
        "pages": len(seeds), "lines": found.true, "F": _percent(found), "F_profile": _percent(plain),
        "counts": asdict(found), "counts_profile": asdict(plain),
        "found_whole_pages": found.whole, "order_errors": found.order,
        "working_starts_wrong": f"{found.starts} of {found.compared}",
        "struck_out": f"{found.struck_right} right, {found.struck_found} found, {found.struck_true} true",
        "way_back_within_2_px": round(100 * float((far <= 2).mean()), 2),
        "way_back_p95_px": round(float(np.percentile(far, 95)), 2),
        "worst_seeds": [seed for score, seed in sorted(worst)[:5] if score < 1],
        "F_by_trait": {name: _percent(counts) for name, counts in sorted(traits.items())},
    }
    if read:
        result["readings_kept"] = f"{kept} of {read}"
    return result


def _kept_readings(page: FoundPage, scene: Scene, partner: dict[int, int], reader: NeuralReader) -> tuple[int, int]:
    """Of how many lines the reading is no worse than that of the line alone on white, and how many were read."""
    chosen = [j for j, line in enumerate(scene.lines) if not line.struck_out]
    found = [j for j in chosen if j in partner]
    crops = reader.read([page.lines[partner[j]] for j in found])
    clean = reader.read([line_from_picture(scene.lines[j].clean) for j in chosen])
    from_page = dict(zip(found, crops, strict=True))
    kept = 0
    for j, alone in zip(chosen, clean, strict=True):
        truth = serialise(parse(" ".join(normalise(scene.lines[j].latex))))
        apart = [
            edit_distance(each[0].latex.split() if each else [], truth) for each in (from_page.get(j, ()), alone)
        ]
        kept += apart[0] <= apart[1]
    return kept, len(chosen)


def _percent(counts: Counts) -> float:
    return round(100 * counts.f_measure, 2)


def _corners(box: Box) -> BoxF:
    return (float(box.x), float(box.y), float(box.x + box.w), float(box.y + box.h))


def _timings(repeats: int) -> dict[str, float]:
    scene = make_scene(1, "ruled", size=TWELVE_MEGAPIXELS)
    totals, stages = [], []
    for _ in range(repeats):
        start = time.perf_counter()
        stages.append(dict(find_lines(scene.photo.image).milliseconds))
        totals.append((time.perf_counter() - start) * 1000)
    result = {name: round(statistics.median(s[name] for s in stages), 1) for name in stages[0]}
    p95 = float(np.percentile(totals, 95))
    return {**result, "total_p50": round(statistics.median(totals), 1), "total_p95": round(p95, 1)}


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object a kind, then the timing."""
    parser = argparse.ArgumentParser(
        prog="python -m recognition.training.page_benchmark", description=__doc__,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--pages", type=int, default=60, help="pages in all, a third of each kind")
    parser.add_argument("--seed", type=int, default=REPORT_SEED, help="first seed")
    parser.add_argument("--kinds", nargs="+", choices=KINDS, default=KINDS)
    parser.add_argument("--ink", type=Path, help="labelled ink (JSON lines, xz): every other page is in its hands")
    parser.add_argument("--read", action="store_true", help="read the lines of every tenth page as well")
    parser.add_argument("--repeats", type=int, default=7, help="runs of the timing; 0 leaves it out")
    options = parser.parse_args(arguments)
    bank = None
    if options.ink is not None:
        with lzma.open(options.ink, "rt", encoding="utf-8") as file:
            bank = bank_of(map(json.loads, file))
    reader = NeuralReader.load() if options.read else None
    share = max(1, options.pages // len(KINDS))
    for kind in options.kinds:
        start = options.seed + 10_000 * KINDS.index(kind)
        print(json.dumps({kind: _measure(kind, range(start, start + share), bank, reader)}), flush=True)
    if options.repeats:
        print(json.dumps({"milliseconds_12_megapixels": _timings(options.repeats)}))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
