"""How well are lines found? `python -m recognition.training.page_benchmark --pages 60`.

Simulated pages with their true line boxes; F-measure at an overlap (intersection over union of upright boxes) of 0.75
for the finder and for a plain projection profile on the same pages, then milliseconds by stage for a 12-megapixel
photo. Seeds below 100,000 serve tuning, seeds from 100,000 on are for reporting.
"""

from __future__ import annotations

import argparse
import json
import random
import statistics
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page import find_lines
from recognition.page.light import background, evened
from recognition.reader.tokens import is_lower_school, serialise
from recognition.training.bank import SymbolBank
from recognition.training.fonts import load_fonts
from recognition.training.lines import random_line
from recognition.training.photo import Photo, PhotoStyle, mapped, photograph
from recognition.training.sheets import Hand, Paper, write_sheet

__all__ = ["SimulatedPage", "f_measure", "main", "matched", "profile_boxes", "simulated_page"]

OVERLAP = 0.75
TWELVE_MEGAPIXELS = (3000, 4000)

BoxF = tuple[float, float, float, float]


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
    fonts = load_fonts()
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
    pairs = sorted(((_overlap(a, b), i, j) for i, a in enumerate(found) for j, b in enumerate(truth)), reverse=True)
    used_found: set[int] = set()
    used_true: set[int] = set()
    for overlap, i, j in pairs:
        if overlap >= OVERLAP and i not in used_found and j not in used_true:
            used_found.add(i)
            used_true.add(j)
    return len(used_true)


def f_measure(right: int, found: int, true: int) -> float:
    """Harmonic mean of precision and recall."""
    return 2 * right / (found + true) if found + true else 1.0


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


def _overlap(a: BoxF, b: BoxF) -> float:
    w = min(a[2], b[2]) - max(a[0], b[0])
    h = min(a[3], b[3]) - max(a[1], b[1])
    if w <= 0 or h <= 0:
        return 0.0
    both = w * h
    return both / ((a[2] - a[0]) * (a[3] - a[1]) + (b[2] - b[0]) * (b[3] - b[1]) - both)


def _finder_boxes(image: NDArray[np.uint8]) -> list[BoxF]:
    boxes = [line.box for line in find_lines(image).lines]
    return [(float(x), float(y), float(x + w), float(y + h)) for x, y, w, h in boxes]


def _measure(kind: str, seeds: Sequence[int], bank: SymbolBank | None) -> dict[str, object]:
    methods: dict[str, Callable[[NDArray[np.uint8]], list[BoxF]]] = {
        "finder": _finder_boxes, "profile": profile_boxes,
    }
    counts = {name: [0, 0, 0] for name in methods}
    worst: list[tuple[float, int]] = []
    for seed in seeds:
        page = simulated_page(seed, kind=kind, bank=bank)
        for name, method in methods.items():
            found = method(page.photo.image)
            right = matched(found, page.boxes)
            for k, value in enumerate((right, len(found), len(page.boxes))):
                counts[name][k] += value
            if name == "finder":
                worst.append((f_measure(right, len(found), len(page.boxes)), seed))
    worst.sort()
    return {
        "pages": len(seeds), "lines": counts["finder"][2],
        **{name: round(f_measure(*value), 4) for name, value in counts.items()},
        "worst_seeds": [seed for score, seed in worst[:5] if score < 1],
    }


def _timings(repeats: int) -> dict[str, float]:
    page = simulated_page(1, kind="ruled", size=TWELVE_MEGAPIXELS)
    totals, stages = [], []
    for _ in range(repeats):
        start = time.perf_counter()
        stages.append(dict(find_lines(page.photo.image).milliseconds))
        totals.append((time.perf_counter() - start) * 1000)
    result = {name: round(statistics.median(s[name] for s in stages), 1) for name in stages[0]}
    return {**result, "total_p50": round(statistics.median(totals), 1), "total_worst": round(max(totals), 1)}


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object."""
    parser = argparse.ArgumentParser(prog="python -m recognition.training.page_benchmark", description=__doc__)
    parser.add_argument("--pages", type=int, default=60, help="pages in all, a third of each kind")
    parser.add_argument("--seed", type=int, default=100_000, help="first seed")
    parser.add_argument("--repeats", type=int, default=7, help="runs of the timing")
    parser.add_argument("--ink", type=Path, help="write with the real strokes of this ink pack instead of fonts")
    options = parser.parse_args(arguments)
    bank = None
    if options.ink is not None:
        with np.load(options.ink) as pack:
            bank = SymbolBank.of_pack(pack)
    share = max(1, options.pages // 3)
    report = {
        kind: _measure(kind, range(options.seed + start, options.seed + start + share), bank)
        for kind, start in (("plain", 0), ("ruled", 10_000), ("hard", 20_000))
    }
    print(json.dumps({**report, "milliseconds_12_megapixels": _timings(options.repeats)}, indent=1))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
