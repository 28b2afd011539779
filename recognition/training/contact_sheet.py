"""Misread lines on one picture, to be looked at: `python -m recognition.training.contact_sheet DATA DETAILS OUT.png`.

DATA are the lines and DETAILS what `python -m recognition evaluate DATA --details DETAILS` wrote of them, by the same
route. Shows the worst: the wrong readings that the reader was surest of, or with `--by edits` those farthest from the
truth. Under each line stand its truth, the reading with its probability, and where the truth stands among five.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.evaluate import load_samples
from recognition.reader import LineStrokes
from recognition.reader.canonical import CanonicalFrame, from_strokes
from recognition.reader.edits import edit_distance

__all__ = ["Entry", "contact_sheet", "main"]

_CELL: Final = (640, 150)
_CAPTION: Final = 16  # px a row of text
_FONT: Final = cv2.FONT_HERSHEY_SIMPLEX


@dataclass(frozen=True, slots=True)
class Entry:
    """One line on the sheet: its picture, grey, ink dark on light, and what stands under it."""

    picture: NDArray[np.uint8]
    captions: tuple[str, ...]


def contact_sheet(entries: Sequence[Entry], *, columns: int = 3) -> NDArray[np.uint8]:
    """All entries side by side, in rows of `columns`; grey."""
    most = max((len(entry.captions) for entry in entries), default=0)
    width, height = _CELL[0], _CELL[1] + most * _CAPTION + 6
    rows = -(-len(entries) // columns)
    sheet = np.full((max(1, rows) * height, columns * width), 255, np.uint8)
    for number, entry in enumerate(entries):
        x, y = number % columns * width, number // columns * height
        scale = min(1.0, (_CELL[0] - 12) / entry.picture.shape[1], (_CELL[1] - 8) / entry.picture.shape[0])
        size = (max(1, int(entry.picture.shape[1] * scale)), max(1, int(entry.picture.shape[0] * scale)))
        small = cv2.resize(entry.picture, size, interpolation=cv2.INTER_AREA)
        sheet[y + 4 : y + 4 + size[1], x + 6 : x + 6 + size[0]] = small
        for row, caption in enumerate(entry.captions):
            place = (x + 6, y + _CELL[1] + (row + 1) * _CAPTION - 4)
            cv2.putText(sheet, caption[:100], place, _FONT, 0.42, 0, 1, cv2.LINE_AA)
        cv2.rectangle(sheet, (x, y), (x + width - 1, y + height - 1), 200, 1)
    return sheet


def _caption(number: int, row: dict[str, Any]) -> tuple[str, str, str]:
    truth, candidates = row["truth"] or "(out of the vocabulary)", row["candidates"]
    place = next((str(n + 1) for n, (latex, _) in enumerate(candidates) if latex == row["truth"]), "-")
    read, sure = candidates[0] if candidates else ("(nothing)", 0.0)
    return f"{number + 1}: {row['id']}  truth is candidate {place}", f"= {truth}", f"? {read}  {sure:.2f}"


def _worst(rows: Sequence[dict[str, Any]], count: int, by: str) -> list[int]:
    """Numbers of the wrong readings, the worst first."""
    wrong = [n for n, row in enumerate(rows) if not row["candidates"] or row["candidates"][0][0] != row["truth"]]

    def badness(number: int) -> float:
        row = rows[number]
        if by == "edits":
            read = row["candidates"][0][0].split() if row["candidates"] else []
            return edit_distance(read, (row["truth"] or "").split())
        return float(row["candidates"][0][1]) if row["candidates"] else 1.0

    return sorted(wrong, key=badness, reverse=True)[:count]


def main(arguments: Sequence[str] | None = None) -> int:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("data", type=Path)
    parser.add_argument("details", type=Path)
    parser.add_argument("out", type=Path)
    parser.add_argument("--images", action="store_true", help="the lines were read as pictures drawn from strokes")
    parser.add_argument("--by", choices=("sure", "edits"), default="sure")
    parser.add_argument("--count", type=int, default=60)
    given = parser.parse_args(arguments)
    rows = [json.loads(line) for line in given.details.read_text("utf-8").splitlines()]
    crops = {s.identity: s.crop for s in load_samples(given.data, route="images" if given.images else "as given")}
    entries = []
    for number, place in enumerate(_worst(rows, given.count, given.by)):
        crop = crops[rows[place]["id"]]
        drawn = 255 - from_strokes(crop.strokes, CanonicalFrame()).pixels if isinstance(crop, LineStrokes) else None
        picture = drawn if drawn is not None else crop.image  # type: ignore[union-attr]
        entries.append(Entry(np.asarray(picture, np.uint8), _caption(number, rows[place])))
    cv2.imwrite(str(given.out), contact_sheet(entries))
    print(f"{len(entries)} lines")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
