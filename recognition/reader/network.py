"""The two ONNX graphs as two calls: look at a line once, then say how likely each next token is."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final, cast

import numpy as np
from numpy.typing import NDArray

from recognition.errors import ModelError
from recognition.reader.canonical import CanonicalImage, motion_values
from recognition.reader.weights import ModelFacts, Weights

__all__ = ["Memory", "Network", "Step", "encoder_inputs"]

_PADDED_TO: Final = 32  # px: sides of the image are multiples of this; blank paper beyond the line is not kept

Floats = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Memory:
    """What the encoder saw of one line, and the grid on which it lies.

    layers: cross-attention keys and values by their names in the graphs, each (heads, cells, width).
    """

    layers: Mapping[str, Floats]
    grid: tuple[int, int]
    """rows, columns; cell (r, c) is number r * columns + c"""

    @property
    def last_values(self) -> Floats:
        """Values of the last decoder layer, whose heads were taught where to look."""
        return self.layers[f"mem_v_{len(self.layers) // 2 - 1}"]


@dataclass(frozen=True, slots=True)
class Step:
    """What the decoder answers, a row for each token that it was given.

    log_probs: of all next tokens, (rows, vocabulary). past: what later rows must be given of these, (rows, past_width).
    attention: where it looked, (rows, cells), or None in models without it.
    """

    log_probs: Floats
    past: Floats
    attention: Floats | None


class Network:
    """Holds the two ONNX sessions."""

    def __init__(self, weights: Weights, *, threads: int) -> None:
        """
        Raises:
            ModelError: the bytes are no model, or the two graphs do not belong together.
        """
        import onnxruntime as ort  # here, since training uses tokens and frame where it is not installed

        try:
            self._encoder = _session(ort, weights.encoder, threads)
            self._decoder = _session(ort, weights.decoder, 1)
            metadata = [s.get_modelmeta().custom_metadata_map for s in (self._encoder, self._decoder)]
            facts = [ModelFacts.from_metadata(entry) for entry in metadata]
        except Exception as exc:  # onnxruntime raises a dozen kinds without a common base
            raise ModelError("The reader's weights cannot be loaded. Install Firstslip again.") from exc
        self.facts: Final = facts[1]
        outputs = {output.name: output.shape for output in self._decoder.get_outputs()}
        width = outputs["log_probs"][-1] if "log_probs" in outputs else None
        inputs = {given.name: given.shape for given in self._decoder.get_inputs()}
        self._memory: Final = [output.name for output in self._encoder.get_outputs()]
        fits = facts[0] == facts[1] and {"past", "unseen", *self._memory} <= inputs.keys()
        if not fits or width != len(self.facts.vocabulary):
            raise ModelError("The reader's weights do not fit their vocabulary. Install Firstslip again.")
        self._planes: Final = int(self._encoder.get_inputs()[0].shape[1])
        self.past_width: Final = int(inputs["past"][1])
        self._outputs: Final = [name for name in ("log_probs", "said", "attention") if name in outputs]

    def look(self, line: CanonicalImage) -> Memory:
        """Encode one canonical image; how the pen went is used by models that were taught it."""
        given = encoder_inputs(line, self._planes, self.facts.cell)
        seen = cast("list[Any]", self._encoder.run(self._memory, given))
        return Memory(dict(zip(self._memory, seen, strict=True)), (int(given["grid"][0]), int(given["grid"][1])))

    def say(
        self, tokens: NDArray[np.int64], places: NDArray[np.int64], unseen: Floats, past: Floats, memory: Memory
    ) -> Step:
        """Say tokens (S) at their places in their readings (S), after P earlier rows of the same line.

        Steps of several lines together were measured to gain nothing on two threads.

        Args:
            unseen: shape (S, P + S), 0 where a row sees another, else a large negative number.
            past: what was answered for the P rows, (P, past_width).
        """
        given = {"tokens": tokens, "places": places, "unseen": unseen, "past": past, **memory.layers}
        out = dict(zip(self._outputs, cast("list[Any]", self._decoder.run(self._outputs, given)), strict=True))
        return Step(out["log_probs"], out["said"], out.get("attention"))


def _session(runtime: Any, graph: bytes, threads: int) -> Any:
    options = runtime.SessionOptions()
    options.intra_op_num_threads = threads
    options.inter_op_num_threads = 1
    options.log_severity_level = 3
    return runtime.InferenceSession(graph, options, providers=["CPUExecutionProvider"])


def encoder_inputs(line: CanonicalImage, planes: int, cell: int) -> dict[str, NDArray[Any]]:
    """A canonical image as the encoder takes it: its planes with blank paper beyond, and its rows and columns of cells.

    Args:
        planes: 1 for ink alone, 4 with the motion of the pen.
        cell: px to a side.
    """
    height, width = line.pixels.shape
    sides = (-(-side // _PADDED_TO) * _PADDED_TO for side in (height, width))
    image = np.zeros((1, planes, *sides), np.float32)
    image[0, 0, :height, :width] = line.pixels * np.float32(1 / 255)
    if planes > 1 and line.motion is not None:
        image[0, 1:, :height, :width] = motion_values(line.motion)
    return {"image": image, "grid": np.array([-(-height // cell), -(-width // cell)], np.int64)}
