"""Takes the network back out of the shipped graphs, so that the next training begins where the last one ended."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import onnx
from numpy.typing import NDArray
from onnx import numpy_helper

from recognition.reader.weights import MODEL_FILES

if TYPE_CHECKING:
    import torch

__all__ = ["recover", "stored_weights"]

_INSIDE = "net."
_STORED = "_half"


def stored_weights(folder: Path) -> tuple[dict[str, NDArray[Any]], dict[str, str]]:
    """The weights in encoder.onnx and decoder.onnx by their names in the network, and the metadata of the graphs."""
    weights: dict[str, NDArray[Any]] = {}
    facts: dict[str, str] = {}
    for name in MODEL_FILES:
        model = onnx.load(folder / name)
        facts = {entry.key: entry.value for entry in model.metadata_props}
        for tensor in model.graph.initializer:
            if tensor.name.startswith(_INSIDE):
                weights[tensor.name.removeprefix(_INSIDE).removesuffix(_STORED)] = np.array(
                    numpy_helper.to_array(tensor)
                )
    for name in [name for name in weights if name.endswith(".shortcut.1.weight")]:
        # Both ends of a residual sum are shifted alike in training; older graphs keep one of equal tensors.
        shift = name.replace("weight", "bias")
        weights.setdefault(shift, weights[shift.replace("shortcut", "second")])
    return weights, facts


def recover(folder: Path) -> dict[str, Any]:
    """The `config` and `weights` of encoder.onnx and decoder.onnx, in the form of a checkpoint of train.py.

    What only training needs is not in the graphs: the head that counts symbols begins anew.
    """
    import torch

    arrays, facts = stored_weights(folder)
    weights: dict[str, torch.Tensor] = {name: torch.from_numpy(value) for name, value in arrays.items()}
    return {
        "config": json.loads(facts["config"]),
        "weights": weights,
        "runs": json.loads(facts.get("runs", "[]")),
    }
