"""Takes the network back out of the shipped graphs, so that the next training begins where the last one ended."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import onnx
import torch
from onnx import numpy_helper

__all__ = ["recover"]

_INSIDE = "net."
_STORED = "_half"


def recover(folder: Path) -> dict[str, Any]:
    """The `config` and `weights` of encoder.onnx and decoder.onnx, in the form of a checkpoint of train.py.

    What only training needs is not in the graphs: the head that counts symbols begins anew.
    """
    weights: dict[str, torch.Tensor] = {}
    facts: dict[str, str] = {}
    for name in ("encoder.onnx", "decoder.onnx"):
        model = onnx.load(folder / name)
        facts = {entry.key: entry.value for entry in model.metadata_props}
        for tensor in model.graph.initializer:
            if tensor.name.startswith(_INSIDE):
                value = np.array(numpy_helper.to_array(tensor))
                weights[tensor.name.removeprefix(_INSIDE).removesuffix(_STORED)] = torch.from_numpy(value)
    for name in [name for name in weights if name.endswith(".shortcut.1.weight")]:
        # Both ends of a residual sum are shifted alike in training, and of equal tensors the export keeps one.
        shift = name.replace("weight", "bias")
        weights.setdefault(shift, weights[shift.replace("shortcut", "second")])
    return {
        "config": json.loads(facts["config"]),
        "weights": weights,
        "runs": json.loads(facts.get("runs", "[]")),
    }
