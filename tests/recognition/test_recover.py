"""The shipped graphs hold all that the next training begins from."""

import json

import numpy as np
import onnx
import pytest
from onnx import numpy_helper

from recognition.reader.weights import MODEL_FOLDER
from recognition.training.graphs import decoder_graph, encoder_graph, write_graphs
from recognition.training.recover import recover, stored_weights


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

    saved = recover(MODEL_FOLDER)
    net = ReaderNet(NetConfig.from_json(saved["config"])).eval()
    state = net.state_dict()
    for name, value in saved["weights"].items():
        state[name].copy_(value)
    image, size = torch.rand(1, net.config.planes, 96, 192), torch.tensor([[170, 90]])
    with torch.no_grad():
        memory, mask = net.encode(image, size)
        keys, _ = net.memory_keys(memory[:, mask.flatten()])
    graph = encoder_graph(saved["config"], *stored_weights(MODEL_FOLDER), "float32")
    session = onnxruntime.InferenceSession(graph.SerializeToString(), providers=["CPUExecutionProvider"])
    grid = np.array([6, 11])  # cells of 16 px that hold the line of 90 by 170
    found = session.run([f"mem_k_{layer}" for layer in range(len(keys))], {"image": image.numpy(), "grid": grid})
    assert np.abs(np.array(found) - keys[:, 0].numpy()).max() < 1e-3


def test_graphs_built_again_from_their_own_weights_are_the_same(tmp_path):
    weights, facts = stored_weights(MODEL_FOLDER)
    write_graphs(tmp_path, json.loads(facts["config"]), weights, facts)
    for name in ("encoder.onnx", "decoder.onnx"):
        assert (tmp_path / name).read_bytes() == (MODEL_FOLDER / name).read_bytes()
    assert (tmp_path / "SHA256SUMS").read_text() == (MODEL_FOLDER / "SHA256SUMS").read_text()


def test_network_with_coverage_is_refused():
    with pytest.raises(ValueError, match="train without coverage_layers"):
        decoder_graph({"coverage_layers": 2}, {}, {})


def test_eight_bits_change_little_of_what_the_encoder_sees():
    import onnxruntime

    weights, facts = stored_weights(MODEL_FOLDER)
    config = json.loads(facts["config"])
    image = np.zeros((1, 4 if config["motion"] else 1, 64, 96), np.float32)
    image[0, 0, 30:33, 20:70] = 1  # a stroke of 3 by 50 px
    given = {"image": image, "grid": np.array([4, 6])}
    exact, rounded = (
        onnxruntime.InferenceSession(
            encoder_graph(config, weights, facts, precision).SerializeToString(), providers=["CPUExecutionProvider"]
        ).run(None, given)
        for precision in ("float32", "int8")
    )
    for one, other in zip(exact, rounded, strict=True):
        # 8 bits are 256 steps: a half of one is 0.2 % of the range; 18 layers in turn add up to a few percent.
        assert 0 < np.sqrt(((one - other) ** 2).mean() / (one**2).mean()) < 0.08
