"""Nodes of an ONNX graph, and the layers of the reader's network made of them.

Linear layers multiply in float32 or in eight bits: the weights rounded for each of their outputs, what goes in rounded
within its own range when the layer runs. Convolutions stay in float32: in eight bits, with ranges measured on training
lines, the encoder took 0.65 of its time and lost 0.0 to 0.6 points of CROHME 2013, by the choice of these lines.

Source: Jacob et al. 2018, "Quantization and Training of Neural Networks for Efficient Integer-Arithmetic-Only
Inference" (arXiv 1712.05877).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final, Literal

import numpy as np
import onnx
from numpy.typing import NDArray
from onnx import TensorProto, helper, numpy_helper

__all__ = ["Arrays", "Nodes", "Precision"]

_OPSET: Final = 17
_IR: Final = 8
_EPSILON: Final = 1e-5  # of layer and batch normalisation, as the network has it
_HALF_FROM: Final = 256  # numbers: smaller tensors are stored as float32

Arrays = Mapping[str, NDArray[Any]]
Precision = Literal["float32", "int8"]


class Nodes:
    """Nodes and stored tensors in the order in which they are made."""

    def __init__(self, weights: Arrays, precision: Precision) -> None:
        self.nodes: list[onnx.NodeProto] = []
        self._weights: Final = weights
        self._precision: Final = precision
        self._stored: dict[str, TensorProto] = {}

    def add(self, operator: str, *inputs: str, output: str | None = None, **attributes: Any) -> str:
        """Add a node with one output, and name it."""
        output = output or f"{operator}_{len(self.nodes)}"
        self.nodes.append(helper.make_node(operator, list(inputs), [output], **attributes))
        return output

    def parts(self, x: str, count: int) -> list[str]:
        """Equal parts of the first axis."""
        outputs = [f"{x}_{number}" for number in range(count)]
        self.nodes.append(helper.make_node("Split", [x], outputs, axis=0))
        return outputs

    def weight(self, name: str) -> str:
        """A weight of the network by its name there; large ones are kept as float16 with a cast to float32."""
        known = f"net.{name}"
        half = known + "_half"
        if known not in self._stored and half not in self._stored:
            value = np.asarray(self._weights[name])
            if value.size < _HALF_FROM:
                self._stored[known] = numpy_helper.from_array(value.astype(np.float32), known)
            else:
                self._stored[half] = numpy_helper.from_array(value.astype(np.float16), half)
                self.add("Cast", half, output=known, to=TensorProto.FLOAT)
        return known

    def _value(self, name: str) -> NDArray[np.float32]:
        """A weight as the graph knows it."""
        value = np.asarray(self._weights[name])
        return (value.astype(np.float16) if value.size >= _HALF_FROM else value).astype(np.float32)

    def constant(self, value: Any, kind: type = np.float32) -> str:
        name = f"constant_{len(self._stored)}"
        self._stored[name] = numpy_helper.from_array(np.asarray(value, kind), name)
        return name

    def shaped(self, x: str, *shape: int) -> str:
        return self.add("Reshape", x, self.constant(shape, np.int64))

    def linear(self, x: str, *layers: str, scales: Sequence[float] = ()) -> str:
        """x (rows, inputs) through layers side by side, each multiplied by its scale."""
        scales = scales or [1.0] * len(layers)
        operands = []
        for kind in ("weight", "bias"):
            own = [self.weight(f"{layer}.{kind}") for layer in layers]
            own = [
                one if scale == 1 else self.add("Mul", one, self.constant(scale))
                for one, scale in zip(own, scales, strict=True)
            ]
            operands.append(own[0] if len(own) == 1 else self.add("Concat", *own, axis=0))
        if self._precision == "float32":
            return self.add("Gemm", x, *operands, transB=1)
        parts = [self._value(f"{layer}.weight") * scale for layer, scale in zip(layers, scales, strict=True)]
        steps = self.constant(_steps(np.concatenate(parts)))
        zeros = self.constant(np.zeros(sum(map(len, parts))), np.int8)
        weight = self.add("QuantizeLinear", self.add("Transpose", operands[0], perm=[1, 0]), steps, zeros, axis=1)
        rounded = [f"rounded_{len(self.nodes)}_{place}" for place in range(3)]
        self.nodes.append(helper.make_node("DynamicQuantizeLinear", [x], rounded))
        whole = self.add("MatMulInteger", rounded[0], weight, rounded[2], zeros)
        product = self.add("Mul", self.add("Cast", whole, to=TensorProto.FLOAT), self.add("Mul", rounded[1], steps))
        return self.add("Add", product, operands[1])

    def convolution(self, x: str, name: str, stride: int = 1, *, side: int = 3, weight: str | None = None) -> str:
        """A convolution without bias and its batch normalisation; `weight` in place of its own where it was turned."""
        weight = weight or self.weight(name + ".0.weight")
        y = self.add("Conv", x, weight, kernel_shape=[side] * 2, strides=[stride] * 2, pads=[side // 2] * 4)
        operands = [self.weight(f"{name}.1.{kind}") for kind in ("weight", "bias", "running_mean", "running_var")]
        return self.add("BatchNormalization", y, *operands, epsilon=_EPSILON)

    def norm(self, x: str, name: str) -> str:
        operands = self.weight(name + ".weight"), self.weight(name + ".bias")
        return self.add("LayerNormalization", x, *operands, axis=-1, epsilon=_EPSILON)

    def heads(self, x: str, count: int, width: int) -> str:
        """(rows, count * width) -> (count, rows, width); there may be no rows."""
        return self.add("Transpose", self.shaped(x, -1, count, width), perm=[1, 0, 2])

    def scores(self, query: str, keys: str) -> str:
        return self.add("MatMul", query, self.add("Transpose", keys, perm=[0, 2, 1]))

    def attended(self, shares: str, values: str, width: int) -> str:
        """(heads, rows, cells) of (heads, cells, width of one) -> (rows, width)."""
        return self.shaped(self.add("Transpose", self.add("MatMul", shares, values), perm=[1, 0, 2]), 0, width)

    def model(
        self,
        name: str,
        inputs: Mapping[str, tuple[int, Sequence[Any]]],
        outputs: Mapping[str, Sequence[Any]],
        metadata: Mapping[str, str],
    ) -> onnx.ModelProto:
        """The graph with its metadata."""
        given = [helper.make_tensor_value_info(key, kind, shape) for key, (kind, shape) in inputs.items()]
        made = [helper.make_tensor_value_info(key, TensorProto.FLOAT, shape) for key, shape in outputs.items()]
        graph = helper.make_graph(self.nodes, name, given, made, list(self._stored.values()))
        model = helper.make_model(graph, opset_imports=[helper.make_opsetid("", _OPSET)], ir_version=_IR)
        helper.set_model_props(model, dict(metadata))
        onnx.checker.check_model(model)
        return model


def _steps(weights: NDArray[np.float32]) -> NDArray[np.float32]:
    """Of each row: the step in which its largest weight is 127."""
    return np.asarray(np.maximum(np.abs(weights).max(axis=1), 1e-8) / 127, np.float32)
