"""How right are the lines found on a simulated page? Overlaps, order, workings, struck lines, the way back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from itertools import pairwise

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page import FoundPage, LineCrop
from recognition.page.found import map_points
from recognition.training.scenes import Scene

__all__ = ["OVERLAP", "BoxF", "Counts", "f_measure", "measure_boxes", "measure_page", "overlap", "pairs", "way_back"]

OVERLAP = 0.75
"""Least intersection over union of upright boxes at which a line counts as found."""
_EXCUSED = 0.5
"""A found box that lies so far on print or an arrow is neither right nor wrong."""

BoxF = tuple[float, float, float, float]


@dataclass(slots=True)
class Counts:
    """Sums over pages.

    right, found, true: lines; order: lines that come before one that should precede them; compared: neighbours in the
    truth that were both found; starts: those where the beginning of a working was judged wrongly;
    struck_right, struck_found, struck_true: crossed-out lines; pages and whole: pages, and those without any error.
    """

    right: int = 0
    found: int = 0
    true: int = 0
    order: int = 0
    compared: int = 0
    starts: int = 0
    struck_right: int = 0
    struck_found: int = 0
    struck_true: int = 0
    pages: int = 0
    whole: int = 0

    @property
    def f_measure(self) -> float:
        return f_measure(self.right, self.found, self.true)

    def add(self, other: Counts) -> None:
        for each in fields(self):
            setattr(self, each.name, getattr(self, each.name) + getattr(other, each.name))


def f_measure(right: int, found: int, true: int) -> float:
    """Harmonic mean of precision and recall."""
    return 2 * right / (found + true) if found + true else 1.0


def pairs(found: Sequence[BoxF], truth: Sequence[BoxF], least: float = OVERLAP) -> dict[int, int]:
    """For each true box (its number) the found box of its own that overlaps it enough, best overlaps first."""
    ranked = sorted(((overlap(a, b), i, j) for i, a in enumerate(found) for j, b in enumerate(truth)), reverse=True)
    partner: dict[int, int] = {}
    used: set[int] = set()
    for value, i, j in ranked:
        if value >= least and i not in used and j not in partner:
            used.add(i)
            partner[j] = i
    return partner


def overlap(a: BoxF, b: BoxF) -> float:
    """Intersection over union."""
    both = _common(a, b)
    return both / (_area(a) + _area(b) - both) if both else 0.0


def measure_boxes(found: Sequence[BoxF], scene: Scene) -> Counts:
    """Boxes alone, for methods that know no more."""
    partner = pairs(found, [line.box for line in scene.lines])
    excused = _excused(found, partner, scene)
    return Counts(len(partner), len(found) - len(excused), len(scene.lines), pages=1)


def measure_page(page: FoundPage, scene: Scene) -> Counts:
    """Everything that is told about the lines of a page."""
    boxes = [(float(x), float(y), float(x + w), float(y + h)) for x, y, w, h in (line.box for line in page.lines)]
    partner = pairs(boxes, [line.box for line in scene.lines])
    counts = measure_boxes(boxes, scene)
    main = [j for j, line in enumerate(scene.lines) if line.column >= 0 and j in partner]
    places = [partner[j] for j in main]
    counts.order = sum(a > b for a, b in pairwise(places))
    for a, b in pairwise(main):
        one, other = scene.lines[a], scene.lines[b]
        if b != a + 1 or one.struck_out or other.struck_out:
            continue
        counts.compared += 1
        same = page.lines[partner[a]].working == page.lines[partner[b]].working
        counts.starts += same != (one.working == other.working)
    counts.struck_true = sum(line.struck_out for line in scene.lines)
    counts.struck_found = sum(line.struck_out for line in page.lines)
    counts.struck_right = sum(scene.lines[j].struck_out and page.lines[i].struck_out for j, i in partner.items())
    counts.whole = int(counts.right == counts.found == counts.true and not counts.order and not counts.starts)
    return counts


def way_back(line: LineCrop, ink: NDArray[np.uint8]) -> float:
    """How far, in pixels of the photo, the left or right half of a crop lies from where its ink is known to be.

    Args:
        ink: of the whole photo, 0 to 255, as its maker knows it.
    """
    h, w = line.image.shape
    if w < 16 or h < 16:
        return 0.0
    true = cv2.warpPerspective(ink, np.linalg.inv(line.to_original), (w, h)).astype(np.float32)
    seen = (255 - line.image).astype(np.float32)
    worst = 0.0
    for part in (slice(0, w // 2), slice(w // 2, w)):
        one, other = true[:, part], seen[:, part]
        if (one > 128).sum() < 60:
            continue
        window = cv2.createHanningWindow((one.shape[1], h), cv2.CV_32F)
        (dx, dy), _ = cv2.phaseCorrelate(np.ascontiguousarray(one), np.ascontiguousarray(other), window)
        spots = map_points(np.array([[w / 2, h / 2], [w / 2 + dx, h / 2 + dy]]), line.to_original)
        worst = max(worst, float(np.linalg.norm(spots[1] - spots[0])))
    return worst


def _excused(found: Sequence[BoxF], partner: dict[int, int], scene: Scene) -> set[int]:
    used = set(partner.values())
    return {
        i for i, box in enumerate(found)
        if i not in used and any(_common(box, aside) > _EXCUSED * _area(box) for aside in scene.aside)
    }


def _common(a: BoxF, b: BoxF) -> float:
    w, h = min(a[2], b[2]) - max(a[0], b[0]), min(a[3], b[3]) - max(a[1], b[1])
    return w * h if w > 0 and h > 0 else 0.0


def _area(box: BoxF) -> float:
    return (box[2] - box[0]) * (box[3] - box[1])
