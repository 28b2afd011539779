"""Make the sample pages: `python -m recognition.training.pages sample_images`.

Each page is written by a hand of its own on plain, ruled or squared paper and photographed in simulation; a JSON file
beside it tells the truth. Two pen drawings are written as InkML. The same seeds give the same pages.
"""

from __future__ import annotations

import argparse
import json
import random
import re
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import normalise, parse
from recognition.training.bank import SymbolBank
from recognition.training.fonts import load_fonts
from recognition.training.layout import draw_line
from recognition.training.own_hand import own_bank
from recognition.training.photo import Photo, PhotoStyle, mapped, photograph
from recognition.training.sheets import Hand, Paper, SheetDrawing, jittered, write_sheet
from recognition.training.style import Style
from recognition.training.worksheet import DRAWINGS, PAGES, Answer

__all__ = ["Look", "main", "make_page", "write_drawing", "write_page"]

PHOTO_SIZE = (1600, 2200)
MOST_BYTES = 500_000


@dataclass(frozen=True, slots=True)
class Look:
    """How one page looks: its hand, paper and photo."""

    font: str
    hand: Hand
    paper: Paper
    photo: PhotoStyle


_BLUE, _BLACK, _PENCIL = (34, 46, 120), (36, 36, 40), (92, 92, 96)

_LOOKS = {
    4107: Look("kalam", Hand(None, 59, 5.2, _BLUE, 0.04, 0.008), Paper("plain"),
               PhotoStyle(0.05, 0.02, -1.5, 0.72, 0.7, 2.5, 1.05)),
    4112: Look("handlee", Hand(None, 58, 5.5, _BLACK, 0.0, -0.004), Paper("ruled", margin_line=True),
               PhotoStyle(0.035, 0.02, 1.2, 0.65, 0.8, 3.0, 1.08)),
    4118: Look("mansalva", Hand(None, 61, 5.2, _BLUE, 0.05, 0.004), Paper("squared"),
               PhotoStyle(0.04, 0.025, 0.8, 0.75, 0.7, 2.5, 0.98)),
    4123: Look("nanum-pen-script", Hand(None, 56, 4.0, _BLACK, 0.08, 0.012), Paper("plain", (246, 243, 230)),
               PhotoStyle(0.06, 0.02, -2.2, 0.6, 0.8, 3.5, 1.1)),
    4130: Look("patrick-hand", Hand(None, 59, 4.7, _BLUE, 0.0, 0.0), Paper("ruled"),
               PhotoStyle(0.03, 0.03, 0.5, 0.8, 0.9, 3.0, 1.0)),
    4136: Look("indie-flower", Hand(None, 57, 5.2, _BLACK, 0.0, 0.006), Paper("squared", margin_line=True),
               PhotoStyle(0.04, 0.02, 1.6, 0.7, 0.7, 3.0, 1.06)),
    4141: Look("yomogi", Hand(None, 59, 5.7, _BLUE, 0.06, -0.006), Paper("plain", (250, 250, 250)),
               PhotoStyle(0.05, 0.025, -0.8, 0.68, 0.8, 2.5, 0.96)),
    4152: Look("the-girl-next-door", Hand(None, 54, 5.2, _PENCIL, 0.03, 0.006), Paper("ruled", margin_line=True),
               PhotoStyle(0.04, 0.02, 2.0, 0.62, 0.9, 4.0, 1.08, 80)),
}


def main(arguments: Sequence[str] | None = None) -> int:
    """Write all samples into a folder."""
    parser = argparse.ArgumentParser(prog="python -m recognition.training.pages", description=__doc__)
    parser.add_argument("folder", type=Path, help="where the pages go, for example sample_images")
    folder: Path = parser.parse_args(arguments).folder
    folder.mkdir(parents=True, exist_ok=True)
    for answer in PAGES:
        print(write_page(answer, _LOOKS[answer.candidate], folder))
    for answer in DRAWINGS:
        print(write_drawing(answer, folder))
    return 0


def make_page(answer: Answer, look: Look) -> tuple[Photo, SheetDrawing]:
    """Write one answer by hand and photograph it; the candidate number is the seed."""
    fonts = {font.name: font for font in load_fonts()}
    font = fonts[look.font]
    rng = random.Random(answer.candidate)
    noise = np.random.default_rng(answer.candidate)
    hand = Hand(font, look.hand.digit, look.hand.pen, look.hand.colour, look.hand.slant, look.hand.drift)
    left = 190.0 if look.paper.margin_line else 150.0
    sheet = write_sheet(answer.lines, SymbolBank(fonts=(font,)), hand, look.paper, rng, left=left, gap=1.35)
    image = sheet.image
    for line in answer.smudged:
        image = _smudged(image, sheet.boxes[line], noise)
    photo = photograph(image, look.photo, PHOTO_SIZE, noise)
    return photo, sheet


def write_page(answer: Answer, look: Look, folder: Path) -> Path:
    """Write candidate-NUMBER.jpg and the truth beside it; the path of the picture."""
    photo, sheet = make_page(answer, look)
    path = folder / f"candidate-{answer.candidate}.jpg"
    for quality in (88, 82, 76, 68, 60):
        good, data = cv2.imencode(".jpg", photo.image[:, :, ::-1], [cv2.IMWRITE_JPEG_QUALITY, quality])
        assert good
        if len(data) < MOST_BYTES:
            break
    path.write_bytes(data.tobytes())
    outlines = [mapped(hull, photo.homography) for hull in sheet.hulls]
    _write_truth(answer, path, outlines)
    return path


def write_drawing(answer: Answer, folder: Path) -> Path:
    """Write candidate-NUMBER.inkml, with time in milliseconds and force, and the truth beside it."""
    rng = random.Random(answer.candidate)
    style = Style(gap=0.2, operator_gap=0.26, size_spread=0.05, aspect_spread=0.06, baseline_spread=0.03)
    digit, y, clock = 60.0, 120.0, 0.0
    root = ElementTree.Element("ink", {"xmlns": "http://www.w3.org/2003/InkML"})
    form = ElementTree.SubElement(ElementTree.SubElement(root, "definitions"), "traceFormat", {"xml:id": "pen"})
    channels = (("X", "decimal", "px"), ("Y", "decimal", "px"), ("T", "integer", "ms"), ("F", "decimal", ""))
    for name, kind, unit in channels:
        ElementTree.SubElement(form, "channel", {"name": name, "type": kind, **({"units": unit} if unit else {})})
    outlines = []
    number = 0
    for latex in answer.lines:
        drawing = draw_line(parse(" ".join(normalise(latex))), own_bank(), style, rng)
        points = jittered(drawing, rng, 0.9) * np.float32(digit)
        points[:, 0] += 100 + rng.gauss(0, 6) + (40 if latex.startswith("=") else 0) - points[:, 0].min()
        points[:, 1] += (points[:, 0] - 100) * rng.gauss(0, 0.01)
        points[:, 1] += y - points[:, 1].min()
        for start, stop in zip(drawing.offsets, drawing.offsets[1:], strict=False):
            clock += 180 + 60 * rng.random()
            text, clock = _trace(points[start:stop], clock, rng)
            trace = ElementTree.SubElement(root, "trace", {"xml:id": f"t{number}", "contextRef": "#pen"})
            trace.text = text
            number += 1
        clock += 900
        low, high = points.min(axis=0), points.max(axis=0)
        outlines.append(np.array([low, (high[0], low[1]), high, (low[0], high[1])], np.float64))
        y = float(high[1]) + 0.85 * digit
    ElementTree.indent(root)
    path = folder / f"candidate-{answer.candidate}.inkml"
    path.write_bytes(ElementTree.tostring(root, encoding="utf-8", xml_declaration=True) + b"\n")
    _write_truth(answer, path, outlines)
    return path


def _trace(points: NDArray[np.float32], clock: float, rng: random.Random) -> tuple[str, float]:
    """Points of one stroke as InkML text, and the time at its end; pressure swells in the middle."""
    parts = []
    for index, (x, y) in enumerate(points):
        share = index / max(1, len(points) - 1)
        force = 0.45 + 0.35 * np.sin(np.pi * share) + rng.gauss(0, 0.02)
        parts.append(f"{x:.1f} {y:.1f} {round(clock)} {min(1.0, max(0.05, force)):.2f}")
        if index + 1 < len(points):
            clock += max(6.0, float(np.hypot(*(points[index + 1] - points[index]))) * 1.6)
    return ", ".join(parts), clock


def _smudged(
    image: NDArray[np.uint8], box: tuple[float, float, float, float], noise: np.random.Generator
) -> NDArray[np.uint8]:
    """Wipe over part of a line: ink smeared sideways and faded, as by a sleeve or a rubber."""
    x0, y0, x1, y1 = (round(v) for v in box)
    width = x1 - x0
    start = x0 + round(width * noise.uniform(0.25, 0.45))
    stop = start + round(width * noise.uniform(0.22, 0.34))
    top, bottom = max(0, y0 - 14), y1 + 14
    part = image[top:bottom, start:stop].astype(np.float32)
    smear = cv2.blur(cv2.GaussianBlur(part, (0, 0), 3), (41, 5))
    paper = np.percentile(part, 90, axis=(0, 1))
    wiped = 0.55 * smear + 0.45 * paper
    height, length = part.shape[:2]
    across = np.minimum(np.arange(length), np.arange(length)[::-1]) / 25.0
    down = np.minimum(np.arange(height), np.arange(height)[::-1]) / 12.0
    share = np.clip(np.minimum.outer(down, across), 0, 1)[:, :, None] * 0.9
    result = image.copy()
    result[top:bottom, start:stop] = np.clip(part * (1 - share) + wiped * share, 0, 255).astype(np.uint8)
    return result


def _write_truth(answer: Answer, path: Path, outlines: Sequence[NDArray[np.float64]]) -> None:
    lines = []
    for number, (latex, outline) in enumerate(zip(answer.lines, outlines, strict=True)):
        low, high = np.floor(outline.min(axis=0)), np.ceil(outline.max(axis=0))
        corners = cv2.approxPolyDP(outline.astype(np.float32), 1.0, True).reshape(-1, 2)
        corners = np.roll(corners, -int(np.argmin(corners.sum(axis=1))), axis=0)  # clockwise from the top left
        lines.append({
            "latex": latex,
            "box": [int(low[0]), int(low[1]), int(high[0] - low[0]), int(high[1] - low[1])],
            "polygon": [[round(float(x), 1), round(float(y), 1)] for x, y in corners],
            "legible": number not in answer.smudged,
        })
    planted = answer.planted
    truth: dict[str, Any] = {
        "file": path.name, "candidate": answer.candidate, "question": answer.question, "lines": lines,
        "planted": None if planted is None else {
            "line": planted.line, "kind": planted.kind, "term": planted.term, "should_be": planted.should_be,
        },
        "legible": not answer.smudged,
    }
    text = json.dumps(truth, indent=1, ensure_ascii=False)
    # Boxes and polygons on one line each, so that a person can read the file.
    text = re.sub(r"\[[\d\s.,\[\]-]+\]", lambda found: re.sub(r"(?<=\[)\s+|\s+(?=\])|(?<=,)\s+", "", found[0]), text)
    path.with_suffix(".json").write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    raise SystemExit(main())
