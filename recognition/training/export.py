"""Writes trained weights as the two ONNX graphs that the reader runs (graphs.py), and checks them against the network.

Weights are stored as float16. The check is made in float32; what is left in the folder multiplies its linear layers in
eight bits.
"""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import Any

import numpy as np
import onnxruntime
import torch
from numpy.typing import NDArray
from torch import Tensor

from recognition.reader.tokens import VOCABULARY
from recognition.training.graphs import write_graphs
from recognition.training.model import CELL, NetConfig, ReaderNet

__all__ = ["export", "load_checkpoint"]


def load_checkpoint(path: Path) -> tuple[ReaderNet, dict[str, Any]]:
    """A checkpoint of train.py: `config`, `weights` (averaged, float16) and what the run was."""
    data = torch.load(path, map_location="cpu", weights_only=True)
    net = ReaderNet(NetConfig.from_json(data["config"]))
    weights = {name: value.float() if value.is_floating_point() else value for name, value in data["weights"].items()}
    net.load_state_dict(weights)
    return net.eval(), data


def export(checkpoint: Path, folder: Path, *, frame: dict[str, float], version: str) -> None:
    """Write encoder.onnx, decoder.onnx and SHA256SUMS; raises AssertionError when they differ from the network."""
    net, data = load_checkpoint(checkpoint)
    metadata = {
        "version": version,
        "vocabulary": json.dumps(list(VOCABULARY[: net.config.vocabulary])),
        "frame": json.dumps(frame),
        "cell": str(CELL),
        "config": json.dumps(net.config.to_json()),
        "runs": json.dumps(data.get("runs", [])),
    }
    weights = {name: value.numpy() for name, value in net.state_dict().items()}
    write_graphs(folder, net.config.to_json(), weights, metadata, "float32")
    worst = _largest_difference(net, folder)
    print(f"largest difference from the network: {worst:.2e}")
    assert worst < 0.05, "the graphs do not compute what the network computes"
    write_graphs(folder, net.config.to_json(), weights, metadata)


def _largest_difference(net: ReaderNet, folder: Path) -> float:
    """Run both on images of several sizes, and on readings said at once, one by one, and side by side."""
    encoder, decoder = (
        onnxruntime.InferenceSession(folder / name, providers=["CPUExecutionProvider"])
        for name in ("encoder.onnx", "decoder.onnx")
    )
    names = [node.name for node in encoder.get_outputs()]
    worst = 0.0
    for height, width in ((64, 128), (112, 512), (224, 1024)):
        image, size = torch.rand(1, net.config.planes, height, width), torch.tensor([[width - 19, height - 3]])
        grid = np.array([-(-(height - 3) // CELL), -(-(width - 19) // CELL)])
        tokens = torch.randint(4, net.config.vocabulary, (1, 7))
        with torch.no_grad():
            memory, mask = net.encode(image, size)
            memory, mask = memory[:, mask.flatten()], mask[:, : grid[0], : grid[1]]
            keys, values = net.memory_keys(memory)
            begin = net.start(1, mask[0].numel(), memory)
            expected, _, looks = net.step(tokens, begin, keys, values, mask)
        seen = dict(zip(names, encoder.run(None, {"image": image.numpy(), "grid": grid}), strict=True))
        for number in range(net.config.decoder_layers):
            for kind, wanted in (("k", keys), ("v", values)):
                worst = max(worst, _difference(wanted[number, 0], seen[f"mem_{kind}_{number}"]))
        past = np.zeros((0, decoder.get_outputs()[1].shape[1]), np.float32)
        for first, last in ((0, 3), (3, 4), (4, 7)):
            unseen = np.where(np.tri(7, dtype=bool)[first:last, :last], 0, -1e9).astype(np.float32)
            given = {"tokens": tokens[0, first:last].numpy(), "places": np.arange(first, last), "unseen": unseen}
            log_probs, said, attention = decoder.run(None, {**given, "past": past, **seen})
            worst = max(worst, _difference(expected[0, first:last], log_probs))
            worst = max(worst, _difference(looks[0, first:last], attention))
            past = np.concatenate([past, said])
    return worst


def _difference(expected: Tensor, found: NDArray[np.float32]) -> float:
    return float(np.abs(expected.numpy().astype(np.float64) - found).max())


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("checkpoint", type=Path)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--version", required=True, help="written into the metadata")
    parser.add_argument("--frame", default='{"target": 40, "margin": 8, "max_height": 208, "max_width": 1600}')
    arguments = parser.parse_args()
    export(arguments.checkpoint, arguments.folder, frame=json.loads(arguments.frame), version=arguments.version)
