"""Builds the two ONNX graphs that the reader runs, node by node, from named weights.

encoder.onnx: image, grid -> mem_k_0, mem_v_0, ... of every decoder layer.
decoder.onnx: tokens, places, unseen, past, mem_k_0, ... -> log_probs, said, attention.

Both look at one line, and the decoder at one tree of readings: each row is a token said after another row, and `unseen`
keeps it from seeing rows that are not on its way to the root. Readings that begin alike share their rows, nothing is
copied when one reading becomes two, and readings of any length go in one call. Every weight keeps the name that it has
in the network (`recover.py` reads them back); what follows from weights alone (transposes, scales, batch normalisation)
is left to the runtime, which works it out once when it loads a graph: also the eight-bit form of the weights that it
multiplies with, so that the stored weights stay as trained.

`python -m recognition.training.graphs FOLDER` builds the graphs of a folder anew from the weights in them.
"""

from __future__ import annotations

import argparse
import json
import math
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

import numpy as np
import onnx
from onnx import TensorProto, helper

from recognition.training.nodes import Arrays, Nodes, Precision
from recognition.training.recover import stored_weights
from recognition.training.sums import write_sums

__all__ = ["decoder_graph", "encoder_graph", "write_graphs"]

_LONGEST_WAVE: Final = 1000.0  # of the sine positions

Config = Mapping[str, Any]


def write_graphs(
    folder: Path, config: Config, weights: Arrays, metadata: Mapping[str, str], precision: Precision = "int8"
) -> None:
    """Write encoder.onnx, decoder.onnx and SHA256SUMS."""
    folder.mkdir(parents=True, exist_ok=True)
    for name, build in (("encoder.onnx", encoder_graph), ("decoder.onnx", decoder_graph)):
        onnx.save(build(config, weights, metadata, precision), folder / name)
    write_sums(folder)


def encoder_graph(
    config: Config, weights: Arrays, metadata: Mapping[str, str], precision: Precision = "int8"
) -> onnx.ModelProto:
    """Image (1, planes, height, width) -> keys and values of each decoder layer, (heads, cells, width).

    The image may be larger than the line, as it was in training; `grid`: rows and columns of cells to keep.
    """
    graph = Nodes(weights, precision)
    width, heads = int(config["width"]), int(config["heads"])
    planes = 4 if config.get("motion") else 1
    zeros, axes = (graph.constant(pair, np.int64) for pair in ([0, 0], [2, 3]))
    x = graph.add("Slice", _features(graph, config, planes), zeros, "grid", axes)
    places = _grid_places(graph, x, width)
    cells = graph.shaped(graph.add("Transpose", x, perm=[0, 2, 3, 1]), -1, int(config["channels"][-1]))
    x = graph.add("Add", graph.linear(cells, "projection"), places)
    for number in range(int(config["encoder_layers"])):
        name = f"encoder.{number}"
        query, keys, values = _own_view(graph, graph.norm(x, name + ".norm_attention"), name + ".attention", config)
        shares = graph.add("Softmax", graph.scores(query, keys), axis=-1)
        x = graph.add("Add", x, graph.linear(graph.attended(shares, values, width), name + ".attention.output"))
        x = _inner(graph, x, name)
    x = graph.norm(x, "encoder_norm")
    memory = _memory(config)
    layers = [f"decoder.{number}.cross_attention.key_value" for number in range(len(memory) // 2)]
    seen = graph.heads(graph.linear(x, *layers), len(memory) * heads, width // heads)
    graph.nodes.append(helper.make_node("Split", [seen], list(memory), axis=0))
    inputs: dict[str, tuple[int, list[Any]]] = {
        "image": (TensorProto.FLOAT, [1, planes, "H", "W"]), "grid": (TensorProto.INT64, [2]),
    }  # fmt: skip
    return graph.model("encoder", inputs, {name: shape for name, (_, shape) in memory.items()}, metadata)


def decoder_graph(
    config: Config, weights: Arrays, metadata: Mapping[str, str], precision: Precision = "int8"
) -> onnx.ModelProto:
    """Tokens said (S) at their places (S), after P earlier rows -> log-probabilities of the next token (S, vocabulary).

    unseen: added to the attention's scores, shape (S, P + S): 0 where a row sees another, else a large negative number.
    past: keys and values of all layers of the earlier rows, (P, 2 * layers * width); said: the same of the new rows.
    attention: where each row looked, (S, N).

    Raises:
        ValueError: the network uses coverage, which needs readings of one length.
    """
    if config.get("coverage_layers"):
        raise ValueError("Coverage cannot be exported: train without coverage_layers.")
    graph = Nodes(weights, precision)
    width, heads, layers = int(config["width"]), int(config["heads"]), int(config["decoder_layers"])
    words = graph.add("Mul", graph.weight("embedding.weight"), graph.constant(math.sqrt(width)))
    x = graph.add("Add", graph.add("Gather", words, "tokens"), graph.add("Gather", graph.weight("places"), "places"))
    past = graph.parts(graph.heads("past", 2 * layers * heads, width // heads), 2 * layers)
    said: list[str] = []
    shares = ""
    for number in range(layers):
        name = f"decoder.{number}"
        query, *new = _own_view(graph, graph.norm(x, name + ".norm_self"), name + ".self_attention", config)
        keys, values = (graph.add("Concat", past[2 * number + part], new[part], axis=1) for part in (0, 1))
        said += new
        shares = graph.add("Softmax", graph.add("Add", graph.scores(query, keys), "unseen"), axis=-1)
        x = graph.add("Add", x, graph.linear(graph.attended(shares, values, width), name + ".self_attention.output"))
        y = graph.linear(graph.norm(x, name + ".norm_cross"), name + ".cross_attention.query", scales=[_scale(config)])
        shares = graph.add("Softmax", graph.scores(graph.heads(y, heads, width // heads), f"mem_k_{number}"), axis=-1)
        y = graph.attended(shares, f"mem_v_{number}", width)
        x = graph.add("Add", x, graph.linear(y, name + ".cross_attention.output"))
        x = _inner(graph, x, name)
    graph.add("LogSoftmax", graph.linear(graph.norm(x, "decoder_norm"), "output"), output="log_probs", axis=-1)
    rows = graph.add("Transpose", graph.add("Concat", *said, axis=0), perm=[1, 0, 2])
    graph.add("Reshape", rows, graph.constant([0, 2 * layers * width], np.int64), output="said")
    aligned = int(config.get("aligned_heads") or heads)
    taught = graph.add("Slice", shares, *(graph.constant([at], np.int64) for at in (0, aligned, 0)))
    graph.add("ReduceMean", taught, output="attention", axes=[0], keepdims=0)
    inputs: dict[str, tuple[int, list[Any]]] = {
        "tokens": (TensorProto.INT64, ["S"]), "places": (TensorProto.INT64, ["S"]),
        "unseen": (TensorProto.FLOAT, ["S", "Q"]), "past": (TensorProto.FLOAT, ["P", 2 * layers * width]),
        **_memory(config),
    }  # fmt: skip
    outputs: dict[str, list[Any]] = {
        "log_probs": ["S", int(config["vocabulary"])], "said": ["S", 2 * layers * width], "attention": ["S", "N"],
    }  # fmt: skip
    return graph.model("decoder", inputs, outputs, metadata)


def _memory(config: Config) -> dict[str, tuple[int, list[Any]]]:
    """Kind and shape of keys and values of each decoder layer in turn, in the order of its key_value weights."""
    shape = [int(config["heads"]), "N", int(config["width"]) // int(config["heads"])]
    layers = range(int(config["decoder_layers"]))
    return {f"mem_{kind}_{number}": (TensorProto.FLOAT, shape) for number in layers for kind in ("k", "v")}


def _scale(config: Config) -> float:
    return float((int(config["width"]) / int(config["heads"])) ** -0.5)


def _own_view(graph: Nodes, x: str, name: str, config: Config) -> list[str]:
    """Scaled queries, keys and values of self-attention, each (heads, rows, width of one)."""
    y = graph.linear(x, name + ".query", name + ".key_value", scales=(_scale(config), 1.0))
    heads = int(config["heads"])
    return graph.parts(graph.heads(y, 3 * heads, int(config["width"]) // heads), 3)


def _inner(graph: Nodes, x: str, name: str) -> str:
    """x plus the two layers that each cell or token goes through alone, with the exact GELU between."""
    y = graph.linear(graph.norm(x, name + ".norm_inner"), name + ".inner.0")
    bend = graph.add("Erf", graph.add("Div", y, graph.constant(math.sqrt(2))))
    y = graph.add("Mul", graph.add("Mul", y, graph.add("Add", bend, graph.constant(1))), graph.constant(0.5))
    return graph.add("Add", x, graph.linear(y, name + ".inner.3"))


def _features(graph: Nodes, config: Config, planes: int) -> str:
    """The image through the convolutions: (1, channels, rows, columns)."""
    x = graph.add("SpaceToDepth", "image", blocksize=2)
    # The network names the places of a 2 x 2 block within each plane, this operator the planes within each place.
    first = graph.shaped(graph.weight("features.1.0.weight"), 0, planes, 4, 9)
    first = graph.shaped(graph.add("Transpose", first, perm=[0, 2, 1, 3]), 0, 4 * planes, 3, 3)
    x = graph.add("Relu", graph.convolution(x, "features.1", weight=first))
    strides = [2 if block == 0 else 1 for count in config["blocks"] for block in range(int(count))]
    for number, stride in enumerate(strides, 2):
        name = f"features.{number}"
        y = graph.add("Relu", graph.convolution(x, name + ".first", stride))
        y = graph.convolution(y, name + ".second")
        if stride > 1:
            x = graph.convolution(x, name + ".shortcut", stride, side=1)
        x = graph.add("Relu", graph.add("Add", y, x))
    return x


def _grid_places(graph: Nodes, features: str, width: int) -> str:
    """Sine positions of the cells, (cells, width): the first half tells the row, the second the column."""
    quarter = width // 4
    periods = np.exp(np.arange(quarter) * (-math.log(_LONGEST_WAVE) / quarter))
    shape = graph.add("Shape", features)
    zero, one = (graph.constant(value, np.int64) for value in (0, 1))
    counts = [graph.add("Gather", shape, graph.constant(axis, np.int64)) for axis in (2, 3)]
    whole = graph.add("Concat", *(graph.add("Unsqueeze", n, graph.constant([0], np.int64)) for n in counts),
                      graph.constant([2 * quarter], np.int64), axis=0)  # fmt: skip
    halves = []
    for axis, count in enumerate(counts):
        numbers = graph.add("Cast", graph.add("Range", zero, count, one), to=TensorProto.FLOAT)
        angle = graph.add("Mul", graph.shaped(numbers, -1, 1), graph.constant(periods))
        waves = graph.add("Concat", graph.add("Sin", angle), graph.add("Cos", angle), axis=1)
        place = graph.add("Unsqueeze", waves, graph.constant([1 - axis], np.int64))
        halves.append(graph.add("Expand", place, whole))
    return graph.shaped(graph.add("Concat", *halves, axis=2), -1, width)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("folder", type=Path)
    chosen = parser.parse_args().folder
    found, facts = stored_weights(chosen)
    write_graphs(chosen, json.loads(facts["config"]), found, facts)
