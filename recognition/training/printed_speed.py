"""How fast is the second engine beside ours? `python -m recognition.training.printed_speed DATA.jsonl SETTINGS.json`.

Reads the same pictures with both, line by line in turn, so that what else the machine does falls on both alike. One
line of each is read first and not counted, since models load then.
"""

from __future__ import annotations

import argparse
import json
import time
from collections.abc import Sequence
from pathlib import Path

import numpy as np

from recognition.evaluate import load_samples
from recognition.printed.reader import PrintedReader
from recognition.printed.settings import PrintedSettings
from recognition.read import Reader
from recognition.reader import LinePicture, LineStrokes, NeuralReader

__all__ = ["main", "milliseconds"]


def milliseconds(crops: Sequence[LinePicture | LineStrokes], readers: Sequence[Reader]) -> list[list[float]]:
    """Milliseconds of each line with each reader, in turn."""
    for reader in readers:
        reader.read(crops[:1])
    out: list[list[float]] = [[] for _ in readers]
    for crop in crops:
        for reader, spent in zip(readers, out, strict=True):
            start = time.perf_counter()
            reader.read((crop,))
            spent.append((time.perf_counter() - start) * 1000)
    return out


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("data", type=Path, help="JSON lines with strokes or images")
    parser.add_argument("settings", type=Path, help="settings of the second engine")
    parser.add_argument("--count", type=int, default=40)
    given = parser.parse_args(arguments)
    settings = PrintedSettings.from_file(given.settings)
    crops = [sample.crop for sample in load_samples(given.data, route="images", limit=given.count)]
    with PrintedReader(settings) as other:
        ours, theirs = milliseconds(crops, (NeuralReader.load(threads=settings.threads), other))
        report = {
            "lines": len(crops), "threads": settings.threads, "engine": other.engine,
            "ours_ms_p50": round(float(np.median(ours)), 1), "engine_ms_p50": round(float(np.median(theirs)), 1),
            "ratio_of_medians": round(float(np.median(theirs) / np.median(ours)), 2),
            "ratio_of_sums": round(sum(theirs) / sum(ours), 2),
        }  # fmt: skip
    print(json.dumps(report))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
