"""Writes trained weights as the two ONNX graphs that the reader runs, and checks them against the network.

encoder.onnx: image, wh -> mem_k, mem_v, mem_mask. decoder.onnx: tokens, past_k, past_v[, past_coverage], mem_k, mem_v,
mem_mask -> log_probs, new_k, new_v[, new_coverage], attention. Weights are stored as float16 and computed in float32.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Final

import numpy as np
import onnx
import onnxruntime
import torch
from onnx import numpy_helper
from torch import Tensor, nn

from recognition.reader.tokens import VOCABULARY
from recognition.training.model import CELL, DecoderState, NetConfig, ReaderNet
from recognition.training.sums import write_sums

__all__ = ["export", "load_checkpoint"]

_OPSET: Final = 17
_ENCODER: Final = {
    "image": {0: "B", 2: "H", 3: "W"}, "wh": {0: "B"}, "mem_k": {1: "B", 3: "N"}, "mem_v": {1: "B", 3: "N"},
    "mem_mask": {0: "B", 1: "R", 2: "C"},
}  # fmt: skip
_DECODER: Final = {
    "tokens": {0: "B", 1: "T"}, "past_k": {1: "B", 3: "P"}, "past_v": {1: "B", 3: "P"},
    "past_coverage": {1: "B", 3: "N"}, "mem_k": {1: "B", 3: "N"}, "mem_v": {1: "B", 3: "N"},
    "mem_mask": {0: "B", 1: "R", 2: "C"}, "log_probs": {0: "B", 1: "T"}, "new_k": {1: "B", 3: "Q"},
    "new_v": {1: "B", 3: "Q"}, "new_coverage": {1: "B", 3: "N"}, "attention": {0: "B", 1: "T", 2: "N"},
}  # fmt: skip


class _Encoder(nn.Module):
    def __init__(self, net: ReaderNet) -> None:
        super().__init__()
        self.net = net

    def forward(self, image: Tensor, size: Tensor) -> tuple[Tensor, Tensor, Tensor]:
        memory, mask = self.net.encode(image, size)
        keys, values = self.net.memory_keys(memory)
        return keys, values, mask


class _Decoder(nn.Module):
    def __init__(self, net: ReaderNet) -> None:
        super().__init__()
        self.net = net

    def forward(self, tokens: Tensor, past_k: Tensor, past_v: Tensor, *rest: Tensor) -> tuple[Tensor, ...]:
        covered = bool(self.net.config.coverage_layers)
        coverage = rest[0] if covered else torch.zeros(0)
        keys, values, mask = rest[-3:]
        log_probs, state, attention = self.net.step(
            tokens, DecoderState(past_k, past_v, coverage), keys, values, mask
        )
        kept = (state.coverage,) if covered else ()
        return (log_probs, state.keys, state.values, *kept, attention)


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
    folder.mkdir(parents=True, exist_ok=True)
    image, size = torch.rand(2, net.config.planes, 96, 320), torch.tensor([[300, 90], [200, 80]])
    encoder, decoder = _Encoder(net).eval(), _Decoder(net).eval()
    keys, values, mask = encoder(image, size)
    inputs = _decoder_inputs(net, keys, values, mask, length=2, past=3)
    covered = bool(net.config.coverage_layers)
    names = ["tokens", "past_k", "past_v", *(["past_coverage"] if covered else []), "mem_k", "mem_v", "mem_mask"]
    outputs = ["log_probs", "new_k", "new_v", *(["new_coverage"] if covered else []), "attention"]
    metadata = {
        "version": version,
        "vocabulary": json.dumps(list(VOCABULARY[: net.config.vocabulary])),
        "frame": json.dumps(frame),
        "cell": str(CELL),
        "config": json.dumps(net.config.to_json()),
        "runs": json.dumps(data.get("runs", [])),
    }
    for name, module, example, ins, outs, axes in (
        ("encoder", encoder, (image, size), ["image", "wh"], ["mem_k", "mem_v", "mem_mask"], _ENCODER),
        ("decoder", decoder, inputs, names, outputs, _DECODER),
    ):
        path = folder / f"{name}.onnx"
        torch.onnx.export(
            module, example, str(path), input_names=ins, output_names=outs, opset_version=_OPSET, dynamo=False,
            dynamic_axes={axis: axes[axis] for axis in (*ins, *outs)},
            # Neither folded nor fused, so that every weight keeps its name and training can begin from the graphs.
            do_constant_folding=False, training=torch.onnx.TrainingMode.PRESERVE,
        )  # fmt: skip
        _store_as_half(path, metadata)
    worst = _largest_difference(net, folder)
    print(f"largest difference from the network: {worst:.2e}")
    assert worst < 0.05, "the exported graphs do not compute what the network computes"
    write_sums(folder)


def _decoder_inputs(
    net: ReaderNet, keys: Tensor, values: Tensor, mask: Tensor, *, length: int, past: int
) -> tuple[Tensor, ...]:
    config, batch = net.config, keys.shape[1]
    shape = (config.decoder_layers, batch, config.heads, past, config.width // config.heads)
    tokens = torch.randint(4, config.vocabulary, (batch, length))
    covered = (config.coverage_layers, batch, config.heads, keys.shape[3])
    coverage = (torch.rand(covered),) if config.coverage_layers else ()
    return (tokens, torch.randn(shape), torch.randn(shape), *coverage, keys, values, mask)


def _store_as_half(path: Path, metadata: dict[str, str]) -> None:
    """Keep large weights as float16 with a cast in front, and write the metadata."""
    model = onnx.load(path)
    casts, kept = [], []
    for tensor in model.graph.initializer:
        if tensor.data_type == onnx.TensorProto.FLOAT and int(np.prod(tensor.dims)) >= 256:
            half = numpy_helper.to_array(tensor).astype(np.float16)
            kept.append(numpy_helper.from_array(half, tensor.name + "_half"))
            cast = onnx.helper.make_node("Cast", [tensor.name + "_half"], [tensor.name], to=onnx.TensorProto.FLOAT)
            casts.append(cast)
        else:
            kept.append(tensor)
    nodes = list(model.graph.node)
    del model.graph.initializer[:], model.graph.node[:]
    model.graph.initializer.extend(kept)
    model.graph.node.extend([*casts, *nodes])
    onnx.helper.set_model_props(model, metadata)
    onnx.save(model, path)


def _largest_difference(net: ReaderNet, folder: Path) -> float:
    """Run both on images and token lists of several sizes, with and without earlier tokens."""
    encoder = onnxruntime.InferenceSession(folder / "encoder.onnx", providers=["CPUExecutionProvider"])
    decoder = onnxruntime.InferenceSession(folder / "decoder.onnx", providers=["CPUExecutionProvider"])
    worst = 0.0
    for batch, height, width in ((1, 64, 128), (3, 112, 512), (2, 224, 1024)):
        image = torch.rand(batch, net.config.planes, height, width)
        size = torch.tensor([[width - 7 * number, height - 5 * number] for number in range(batch)])
        with torch.no_grad():
            expected = _Encoder(net).eval()(image, size)
        found = encoder.run(None, {"image": image.numpy(), "wh": size.numpy()})
        worst = max(worst, _difference(expected, found))
        for length, past in ((1, 0), (1, 5), (7, 0), (4, 6)):
            inputs = _decoder_inputs(net, *expected, length=length, past=past)
            with torch.no_grad():
                wanted = _Decoder(net).eval()(*inputs)
            feeds = {node.name: value.numpy() for node, value in zip(decoder.get_inputs(), inputs, strict=True)}
            got = decoder.run(None, feeds)
            worst = max(worst, _difference(wanted, got))
    return worst


def _difference(expected: Sequence[Tensor], found: Sequence[Any]) -> float:
    pairs = zip(expected, found, strict=True)
    return max(float(np.abs(a.numpy().astype(np.float64) - b).max()) for a, b in pairs)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("checkpoint", type=Path)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--version", required=True, help="written into the metadata")
    parser.add_argument("--frame", default='{"target": 40, "margin": 8, "max_height": 208, "max_width": 1600}')
    arguments = parser.parse_args()
    export(arguments.checkpoint, arguments.folder, frame=json.loads(arguments.frame), version=arguments.version)
