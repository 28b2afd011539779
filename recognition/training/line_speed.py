"""How long does a line take, and where? `python -m recognition.training.line_speed DATA.jsonl --lines 120`.

Lines are read one at a time, as a reader of a page reads them; a few are read first and not counted, since the runtime
makes its plans then. Printed: one JSON object with milliseconds a line at the 50th and 95th percentile, in all and by
stage. Other work on the machine falls on every figure: `--repeat 3` reads each line three times and counts its least.
"""

from __future__ import annotations

import argparse
import json
import resource
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from recognition.evaluate import load_samples
from recognition.reader import LinePicture, LineStrokes, NeuralReader
from recognition.reader.canonical import CanonicalImage, from_picture, from_strokes
from recognition.reader.network import Floats, Memory, Network, Step
from recognition.reader.weights import MODEL_FOLDER, Weights, load_weights

__all__ = ["Spent", "TimedNetwork", "line_times", "main"]

_WARM: Final = 5  # lines
_PERCENTILES: Final = (50, 95)


@dataclass(frozen=True, slots=True)
class Spent:
    """What one line took, in ms: picture (strokes drawn or crop resized), encoder, decoder, and all with the rest.

    calls: of the decoder. rows: tokens that it was given.
    """

    picture: float
    encoder: float
    decoder: float
    whole: float
    calls: int
    rows: int


class TimedNetwork(Network):
    """A network that counts its own time, in seconds."""

    def __init__(self, weights: Weights, *, threads: int) -> None:
        super().__init__(weights, threads=threads)
        self.forget()

    def forget(self) -> None:
        """Count anew."""
        self.encoder = self.decoder = 0.0
        self.calls = self.rows = 0

    def look(self, line: CanonicalImage) -> Memory:
        start = time.perf_counter()
        seen = super().look(line)
        self.encoder += time.perf_counter() - start
        return seen

    def say(
        self, tokens: NDArray[np.int64], places: NDArray[np.int64], unseen: Floats, past: Floats, memory: Memory
    ) -> Step:
        start = time.perf_counter()
        said = super().say(tokens, places, unseen, past, memory)
        self.decoder += time.perf_counter() - start
        self.calls += 1
        self.rows += len(tokens)
        return said


def line_times(
    crops: Sequence[LinePicture | LineStrokes], network: TimedNetwork, *, beam: int = 5, repeat: int = 1
) -> list[Spent]:
    """Read each line `repeat` times in turn and keep its quickest reading."""
    for crop in crops[:_WARM]:
        _read(crop, network, beam)
    return [min((_read(crop, network, beam) for _ in range(repeat)), key=lambda one: one.whole) for crop in crops]


def _read(crop: LinePicture | LineStrokes, network: TimedNetwork, beam: int) -> Spent:
    frame = network.facts.frame
    start = time.perf_counter()
    if isinstance(crop, LineStrokes):
        from_strokes(crop.strokes, frame)
    else:
        from_picture(crop.image, frame)
    picture = time.perf_counter() - start
    network.forget()
    start = time.perf_counter()
    NeuralReader(network).read((crop,), beam=beam)
    whole = time.perf_counter() - start
    encoder, decoder = network.encoder * 1000, network.decoder * 1000
    return Spent(picture * 1000, encoder, decoder, whole * 1000, network.calls, network.rows)


def _report(times: Sequence[Spent]) -> dict[str, Any]:
    stages: dict[str, list[float]] = {
        "ms_a_line": [one.whole for one in times],
        "picture": [one.picture for one in times],
        "encoder": [one.encoder for one in times],
        "decoder": [one.decoder for one in times],
        "search_boxes_and_rest": [one.whole - one.picture - one.encoder - one.decoder for one in times],
        "decoder_calls": [one.calls for one in times],
        "decoder_rows": [one.rows for one in times],
    }
    return {
        stage: {f"p{percent}": round(float(np.percentile(values, percent)), 1) for percent in _PERCENTILES}
        for stage, values in stages.items()
    }


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("data", type=Path, help="JSON lines with strokes or images")
    parser.add_argument("--lines", type=int, default=120, help="evenly spread over the file")
    parser.add_argument("--routes", nargs="+", choices=("ink", "images"), default=["ink", "images"])
    parser.add_argument("--beam", type=int, default=5)
    parser.add_argument("--threads", type=int, default=2)
    parser.add_argument("--repeat", type=int, default=1)
    parser.add_argument("--models", type=Path, default=MODEL_FOLDER, help="folder of the weights")
    given = parser.parse_args(arguments)
    network = TimedNetwork(load_weights(given.models), threads=given.threads)
    report: dict[str, Any] = {"threads": given.threads, "beam": given.beam, "repeat": given.repeat}
    for route in given.routes:
        crops = [sample.crop for sample in load_samples(given.data, route=route, limit=given.lines)]
        report[route] = {
            "lines": len(crops),
            **_report(line_times(crops, network, beam=given.beam, repeat=given.repeat)),
        }
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss  # bytes on macOS, kilobytes elsewhere
    report["peak_memory_mb"] = round(peak / (1e6 if sys.platform == "darwin" else 1e3))
    print(json.dumps(report))
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
