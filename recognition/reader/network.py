"""The two ONNX graphs as two calls: look at a line once, then say how likely each next token is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any, Final, cast

import numpy as np
from numpy.typing import NDArray

from recognition.errors import ModelError
from recognition.reader.canonical import CanonicalImage, motion_values
from recognition.reader.weights import ModelFacts, Weights

__all__ = ["Memory", "Network", "Past", "Step"]

_PADDED_TO: Final = 32  # px: input sides are multiples of this, so that few shapes occur

Floats = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Memory:
    """What the encoder saw of one line: cross-attention keys and values, and the grid they lie on."""

    keys: Floats
    values: Floats
    mask: NDArray[np.bool_]
    grid: tuple[int, int]
    """rows, columns; cell (r, c) is number r * columns + c"""


@dataclass(frozen=True, slots=True)
class Past:
    """What the decoder remembers of what was said so far.

    keys, values: of self-attention, shape (layers, readings, heads, tokens, width).
    coverage: where it has looked, shape (layers, readings, heads, cells), or None in models that do not need it.
    """

    keys: Floats
    values: Floats
    coverage: Floats | None = None

    def chosen(self, rows: NDArray[np.intp]) -> Past:
        coverage = None if self.coverage is None else self.coverage[:, rows]
        return Past(self.keys[:, rows], self.values[:, rows], coverage)


@dataclass(frozen=True, slots=True)
class Step:
    """log_probs: (readings, tokens, vocabulary). attention: (readings, tokens, cells), or None in models without it."""

    log_probs: Floats
    past: Past
    attention: Floats | None


class Network:
    """Holds the two ONNX sessions."""

    def __init__(self, weights: Weights, *, threads: int) -> None:
        """
        Raises:
            ModelError: the bytes are no model, or the two graphs do not belong together.
        """
        import onnxruntime as ort  # here, since training uses tokens and frame where it is not installed

        options = ort.SessionOptions()
        options.intra_op_num_threads = threads
        options.inter_op_num_threads = 1
        options.log_severity_level = 3
        try:
            self._encoder = ort.InferenceSession(weights.encoder, options, providers=["CPUExecutionProvider"])
            self._decoder = ort.InferenceSession(weights.decoder, options, providers=["CPUExecutionProvider"])
            metadata = [s.get_modelmeta().custom_metadata_map for s in (self._encoder, self._decoder)]
            facts = [ModelFacts.from_metadata(entry) for entry in metadata]
        except Exception as exc:  # onnxruntime raises a dozen kinds without a common base
            raise ModelError("The reader's weights cannot be loaded. Install Firstslip again.") from exc
        self.facts: Final = facts[1]
        outputs = {output.name: output.shape for output in self._decoder.get_outputs()}
        width = outputs["log_probs"][-1] if "log_probs" in outputs else None
        if facts[0] != facts[1] or width != len(self.facts.vocabulary):
            raise ModelError("The reader's weights do not fit their vocabulary. Install Firstslip again.")
        inputs = {given.name: given.shape for given in self._decoder.get_inputs()}
        self._planes: Final = int(self._encoder.get_inputs()[0].shape[1])
        self._layers, _, self._heads, _, self._head_width = inputs["past_k"]
        self._covered_layers: Final = int(inputs["past_coverage"][0]) if "past_coverage" in inputs else 0
        wanted = ("log_probs", "new_k", "new_v", "new_coverage", "attention")
        self._outputs: Final = [name for name in wanted if name in outputs]

    def look(self, line: CanonicalImage) -> Memory:
        """Encode one canonical image; how the pen went is used by models that were taught it."""
        height, width = line.pixels.shape
        rows, columns = (-(-side // _PADDED_TO) * _PADDED_TO for side in (height, width))
        image = np.zeros((1, self._planes, rows, columns), np.float32)
        image[0, 0, :height, :width] = line.pixels * np.float32(1 / 255)
        if self._planes > 1 and line.motion is not None:
            image[0, 1:, :height, :width] = motion_values(line.motion)
        given = {"image": image, "wh": np.array([[width, height]], np.int64)}
        keys, values, mask = cast("list[Any]", self._encoder.run(["mem_k", "mem_v", "mem_mask"], given))
        cell = self.facts.cell
        return Memory(keys, values, mask, (rows // cell, columns // cell))

    def begin(self, readings: int, memory: Memory) -> Past:
        """The past of readings in which nothing was said yet."""
        shape = (self._layers, readings, self._heads, 0, self._head_width)
        coverage = None
        if self._covered_layers:
            cells = memory.grid[0] * memory.grid[1]
            coverage = np.zeros((self._covered_layers, readings, self._heads, cells), np.float32)
        return Past(np.zeros(shape, np.float32), np.zeros(shape, np.float32), coverage)

    def say(self, tokens: NDArray[np.int64], past: Past, memory: Memory) -> Step:
        """Feed tokens, shape (readings, tokens).

        All readings are of the one line: its memory is broadcast over them inside the graph, which halves the time of
        a step against a copy for each. Steps of several lines together were measured to gain nothing on two threads.
        """
        given = {
            "tokens": tokens, "past_k": past.keys, "past_v": past.values,
            "mem_k": memory.keys, "mem_v": memory.values, "mem_mask": memory.mask,
        }  # fmt: skip
        if past.coverage is not None:
            given["past_coverage"] = past.coverage
        out = dict(zip(self._outputs, cast("list[Any]", self._decoder.run(self._outputs, given)), strict=True))
        said = Past(out["new_k"], out["new_v"], out.get("new_coverage"))
        return Step(out["log_probs"], said, out.get("attention"))
