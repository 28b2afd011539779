"""Which weights does the reader run, are they whole, and in which frame and vocabulary were they taught?

A model is a folder with `encoder.onnx`, `decoder.onnx`, `SHA256SUMS` and `CARD.md`. What a reader must know travels
in the metadata of both graphs, so that weights and facts cannot part.
"""

from __future__ import annotations

import hashlib
import json
import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from recognition.errors import ModelError
from recognition.reader.canonical import CanonicalFrame
from recognition.reader.tokens import SPECIAL, VOCABULARY

__all__ = ["MODEL_FILES", "MODEL_FOLDER", "ModelFacts", "Weights", "load_weights"]

MODEL_FOLDER: Final = Path(__file__).resolve().parent.parent / "models"
MODEL_FILES: Final = ("encoder.onnx", "decoder.onnx")
_AGAIN: Final = "Install Firstslip again."


@dataclass(frozen=True, slots=True)
class ModelFacts:
    """What must be known to run a model.

    vocabulary: token of each output, in order. cell: input pixels to a cell of the attention's grid.
    temperature: divides the joint log-scores before they become probabilities.
    rest: log of how much "none of the candidates" weighs against all candidates but the best together; minus infinity
        when it was never fitted.
    token_ceiling: probability of a token that nothing speaks against; below 1 since labels are smoothed in training.
    max_tokens: the longest reading. version: as in the model card.
    """

    vocabulary: tuple[str, ...] = VOCABULARY
    frame: CanonicalFrame = field(default_factory=CanonicalFrame)
    cell: int = 16
    temperature: float = 1.0
    rest: float = -math.inf
    token_ceiling: float = 0.94
    max_tokens: int = 160
    version: str = "0"

    def __post_init__(self) -> None:
        if self.vocabulary[: len(SPECIAL)] != SPECIAL or len(set(self.vocabulary)) != len(self.vocabulary):
            raise ValueError("The vocabulary starts with the special tokens and names each token once.")
        if not (self.temperature > 0 and self.cell > 0 and self.max_tokens > 0):
            raise ValueError("Temperature, cell and length are positive.")
        if not 0 < self.token_ceiling <= 1:
            raise ValueError("The most likely token has a probability.")

    def to_metadata(self) -> dict[str, str]:
        """Key and value texts for the metadata of an ONNX graph."""
        frame = {
            "target": self.frame.height, "margin": self.frame.margin,
            "max_height": self.frame.max_height, "max_width": self.frame.max_width,
        }  # fmt: skip
        return {
            "version": self.version,
            "vocabulary": json.dumps(self.vocabulary),
            "frame": json.dumps(frame),
            "cell": str(self.cell),
            "temperature": repr(self.temperature),
            "rest": repr(self.rest),
            "token_ceiling": repr(self.token_ceiling),
            "max_tokens": str(self.max_tokens),
        }

    @classmethod
    def from_metadata(cls, metadata: Mapping[str, str]) -> ModelFacts:
        """Read the facts back; the vocabulary must be there, the rest has defaults.

        Raises:
            ValueError, KeyError, TypeError: a value is missing or is not what it should be.
        """
        facts: dict[str, Any] = {"vocabulary": tuple(json.loads(metadata["vocabulary"]))}
        if "frame" in metadata:
            frame = json.loads(metadata["frame"])
            sides = {name: int(frame[name]) for name in ("margin", "max_height", "max_width")}
            facts["frame"] = CanonicalFrame(height=float(frame["target"]), **sides)
        kinds: dict[str, Callable[[str], Any]] = {
            "cell": int, "temperature": float, "rest": float, "token_ceiling": float, "max_tokens": int, "version": str,
        }  # fmt: skip
        facts |= {key: kind(metadata[key]) for key, kind in kinds.items() if key in metadata}
        return cls(**facts)


@dataclass(frozen=True, slots=True)
class Weights:
    """The two graphs as read from the disk, byte for byte what the sums promise."""

    encoder: bytes
    decoder: bytes


def load_weights(folder: Path = MODEL_FOLDER) -> Weights:
    """Read the two graphs once and compare them with SHA256SUMS.

    Raises:
        ModelError: a file is missing, or is not the one that was summed.
    """
    sums = _sums(folder)
    encoder, decoder = (_checked(folder / name, sums.get(name, "")) for name in MODEL_FILES)
    return Weights(encoder, decoder)


def _sums(folder: Path) -> dict[str, str]:
    try:
        lines = (folder / "SHA256SUMS").read_text("utf-8").splitlines()
    except (OSError, UnicodeDecodeError) as exc:
        raise ModelError(f"The list of the reader's weights, SHA256SUMS, cannot be read. {_AGAIN}") from exc
    pairs = [line.split(maxsplit=1) for line in lines if line.strip()]
    return {pair[1].lstrip("*"): pair[0].lower() for pair in pairs if len(pair) == 2}


def _checked(path: Path, expected: str) -> bytes:
    try:
        content = path.read_bytes()
    except OSError as exc:
        raise ModelError(f"The reader's weights {path.name} are missing. {_AGAIN}") from exc
    if hashlib.sha256(content).hexdigest() != expected:
        raise ModelError(f"The reader's weights {path.name} are damaged: their SHA-256 is not the listed one. {_AGAIN}")
    return content
