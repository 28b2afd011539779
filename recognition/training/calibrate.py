"""Fits how sure the reader may say it is, on lines that it was not taught, and writes it into the weights' metadata."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path

import onnx

from recognition.evaluate import Route, load_samples
from recognition.reader import NeuralReader
from recognition.reader.calibration import ScoredLine, fit_temperature
from recognition.reader.weights import MODEL_FILES
from recognition.training.sums import write_sums

__all__ = ["calibrate", "stamp"]


def calibrate(folder: Path, data: Path, *, routes: tuple[Route, ...] = ("ink",)) -> tuple[float, float]:
    """Temperature and score of "none of these" for the weights in `folder`, fitted on the lines of `data`."""
    return fit_temperature(list(_scored(NeuralReader.load(folder), data, routes)))


def stamp(folder: Path, temperature: float, rest: float) -> None:
    """Write the two numbers into the metadata of both graphs, and their new sums into SHA256SUMS."""
    for name in MODEL_FILES:
        model = onnx.load(folder / name)
        facts = {entry.key: entry.value for entry in model.metadata_props}
        onnx.helper.set_model_props(model, {**facts, "temperature": repr(temperature), "rest": repr(rest)})
        (folder / name).write_bytes(model.SerializeToString())
    write_sums(folder)


def _scored(reader: NeuralReader, data: Path, routes: tuple[Route, ...]) -> Iterator[ScoredLine]:
    for route in routes:
        for sample in load_samples(data, route=route):
            readings = reader.joint_scores(sample.crop)
            truth = " ".join(sample.truth or ())
            right = next((number for number, (latex, _) in enumerate(readings) if latex == truth), None)
            yield ScoredLine(tuple(score for _, score in readings), right)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path, help="where encoder.onnx and decoder.onnx are")
    parser.add_argument("data", type=Path, help="lines with strokes, never those of a final figure")
    parser.add_argument("--routes", nargs="+", choices=("ink", "images"), default=["ink", "images"])
    options = parser.parse_args()
    found = calibrate(options.folder, options.data, routes=tuple(options.routes))
    stamp(options.folder, *found)
    print(f"temperature {found[0]:.4f}, none of these {found[1]:.4f}")
