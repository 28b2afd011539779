"""The sample pages: their truth is whole, and the finder sees their lines."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import cv2
import numpy as np
import pytest

from recognition.page import find_lines, open_pages
from recognition.reader.tokens import is_valid, normalise
from recognition.training.page_benchmark import matched
from recognition.training.worksheet import DRAWINGS, PAGES

_FOLDER = Path(__file__).parents[2] / "sample_images"
_PICTURES = sorted(_FOLDER.glob("*.jpg"))
_INK = "{http://www.w3.org/2003/InkML}"


def _truth(path: Path) -> dict[str, Any]:
    content: dict[str, Any] = json.loads(path.with_suffix(".json").read_text(encoding="utf-8"))
    return content


def test_there_are_eight_pages_and_two_drawings():
    truths = [_truth(path) for path in _PICTURES]
    assert len(truths) == 8 == len(PAGES)
    assert sum(t["planted"] is not None for t in truths) == 5
    assert sum(t["planted"] is None and t["legible"] for t in truths) == 2
    assert sum(not t["legible"] for t in truths) == 1
    assert len(list(_FOLDER.glob("*.inkml"))) == 2 == len(DRAWINGS)


@pytest.mark.parametrize("path", _PICTURES, ids=lambda p: p.stem)
def test_truth_is_whole(path: Path):
    truth = _truth(path)
    assert truth["file"] == path.name and path.stat().st_size < 500_000
    assert 4 <= len(truth["lines"]) <= 8
    for line in truth["lines"]:
        assert is_valid(normalise(line["latex"]))
        x, y, w, h = line["box"]
        polygon = np.array(line["polygon"])
        assert x - 1 <= polygon[:, 0].min() and polygon[:, 0].max() <= x + w + 1
        assert y - 1 <= polygon[:, 1].min() and polygon[:, 1].max() <= y + h + 1
    planted = truth["planted"]
    if planted is not None and planted["term"] != "(missing)":
        assert planted["term"].lstrip("+-") in truth["lines"][planted["line"]]["latex"]


@pytest.mark.parametrize("path", _PICTURES, ids=lambda p: p.stem)
def test_lines_of_a_sample_are_found_in_order(path: Path):
    truth = _truth(path)
    (sheet,) = open_pages(path)
    found = find_lines(sheet.image).lines
    boxes = [(b.x, b.y, b.x + b.w, b.y + b.h) for b in (line.box for line in found)]
    true = [(x, y, x + w, y + h) for x, y, w, h in (line["box"] for line in truth["lines"])]
    assert len(boxes) == len(true)
    assert matched(boxes, true) == len(true)
    for box, wanted in zip(boxes, true, strict=True):
        assert matched([box], [wanted]) == 1
    assert not any(line.struck_out for line in found)


def test_ink_of_a_crop_is_where_the_picture_has_it():
    # Each crop, laid back onto the picture by its own map, meets the dark pixels there.
    (sheet,) = open_pages(_PICTURES[0])
    grey = cv2.cvtColor(sheet.image, cv2.COLOR_RGB2GRAY)
    for line in find_lines(sheet.image).lines:
        h, w = line.image.shape
        there = cv2.warpPerspective(grey, line.to_original, (w, h), flags=cv2.INTER_LINEAR | cv2.WARP_INVERSE_MAP)
        assert np.corrcoef(there.ravel(), line.image.ravel())[0, 1] > 0.9


@pytest.mark.parametrize("answer", DRAWINGS, ids=lambda a: str(a.candidate))
def test_drawing_is_inkml_with_time_and_force(answer: Any):
    root = ElementTree.parse(_FOLDER / f"candidate-{answer.candidate}.inkml").getroot()
    assert root.tag == f"{_INK}ink"  # W3C Recommendation Ink Markup Language, 2011-09-20
    assert [c.get("name") for c in root.iter(f"{_INK}channel")] == ["X", "Y", "T", "F"]
    times = []
    for trace in root.iter(f"{_INK}trace"):
        points = [[float(v) for v in point.split()] for point in (trace.text or "").split(",")]
        assert all(len(point) == 4 and 0 < point[3] <= 1 for point in points)
        times += [point[2] for point in points]
    assert times == sorted(times) and len(times) > 200
