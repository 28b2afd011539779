"""The shipped graphs hold all that the next training begins from."""

import numpy as np
import onnx
import pytest
from onnx import numpy_helper

from recognition.reader.weights import MODEL_FOLDER


def _named(name: str) -> dict[str, np.ndarray]:
    model = onnx.load(MODEL_FOLDER / name)
    return {tensor.name: numpy_helper.to_array(tensor) for tensor in model.graph.initializer}


def test_weights_keep_their_names_and_shapes_in_the_graphs():
    encoder, decoder = _named("encoder.onnx"), _named("decoder.onnx")
    assert encoder["net.projection.weight_half"].shape == (256, 256)
    assert decoder["net.embedding.weight_half"].shape == decoder["net.output.weight_half"].shape
    assert all(np.isfinite(value).all() for graph in (encoder, decoder) for value in graph.values())


def test_network_taken_out_of_the_graphs_reads_as_they_do():
    torch = pytest.importorskip("torch", reason="torch comes with the extra train")
    import onnxruntime

    from recognition.training.model import NetConfig, ReaderNet
    from recognition.training.recover import recover

    saved = recover(MODEL_FOLDER)
    net = ReaderNet(NetConfig.from_json(saved["config"])).eval()
    state = net.state_dict()
    for name, value in saved["weights"].items():
        state[name].copy_(value)
    image, size = torch.rand(1, 1, 96, 192), torch.tensor([[180, 90]])
    with torch.no_grad():
        memory, _ = net.encode(image, size)
        keys, _ = net.memory_keys(memory)
    session = onnxruntime.InferenceSession(MODEL_FOLDER / "encoder.onnx", providers=["CPUExecutionProvider"])
    found = session.run(["mem_k"], {"image": image.numpy(), "wh": size.numpy()})[0]
    assert np.abs(found - keys.numpy()).max() < 1e-3
