"""How symbols of training lines are exchanged, and what the training does to the network's weights."""

import collections
import random

import pytest

from recognition.reader.tokens import parse, serialise
from recognition.training.lines import ALIKE, mutated, other_like


def test_stand_ins_are_drawn_as_often_as_they_weigh():
    rng = random.Random(1)
    weights = dict.fromkeys(ALIKE["x"], 1.0) | {"n": 10.0}
    drawn = collections.Counter(other_like("x", rng, weights) for _ in range(4000))
    assert set(drawn) <= set(ALIKE["x"])
    share = 10 / (len(ALIKE["x"]) + 9)
    assert abs(drawn["n"] / 4000 - share) < 5 * (share * (1 - share) / 4000) ** 0.5


def test_without_weights_all_of_like_shape_are_equally_likely():
    rng = random.Random(2)
    drawn = collections.Counter(other_like("7", rng) for _ in range(4000))
    assert set(drawn) == set("0123456789")
    assert max(drawn.values()) < 1.5 * min(drawn.values())


def test_a_token_that_nothing_is_like_stays():
    assert other_like(r"\int", random.Random(3), {}) == r"\int"


def test_weights_reach_every_part_of_a_line():
    row = parse(r"\frac{a_{c}}{\sqrt[3]{e}}+m^{n}")
    every = dict.fromkeys(ALIKE["a"], 0.0) | {"x": 1.0} | dict.fromkeys("0123456789+", 1.0)
    letters = [token for token in serialise(mutated(row, 1.0, random.Random(4), every)) if token.isalpha()]
    assert letters == ["x"] * 5


def test_skipped_branch_is_left_out_for_whole_lines_and_keeps_its_mean():
    torch = pytest.importorskip("torch", reason="torch comes with the extra train")
    from recognition.training.model import _Skipped

    torch.manual_seed(5)
    branch, given = _Skipped(0.25), torch.ones(4000, 3, 2)
    kept = branch(given)
    assert all(line.unique().numel() == 1 for line in kept[:50])
    assert abs(float(kept.mean()) - 1) < 0.05
    assert torch.equal(branch.eval()(given), given)


def test_step_uphill_is_as_long_as_asked_and_taken_back():
    """Sharpness-aware minimisation (Foret et al. 2021, arXiv 2010.01412, eq. 2): the radius along the gradient."""
    torch = pytest.importorskip("torch", reason="torch comes with the extra train")
    from recognition.training.train import _step_uphill

    net = torch.nn.Linear(2, 1, bias=False)
    with torch.no_grad():
        net.weight.copy_(torch.tensor([[3.0, 4.0]]))
    (net.weight**2).sum().backward()  # the gradient points along the weights, (6, 8)
    uphill = _step_uphill(net, 0.5)
    assert torch.allclose(net.weight, torch.tensor([[3.3, 4.4]]))
    uphill.undo()
    assert torch.allclose(net.weight, torch.tensor([[3.0, 4.0]]))


def test_mean_of_two_networks_lies_between_them_and_keeps_their_runs():
    torch = pytest.importorskip("torch", reason="torch comes with the extra train")
    from recognition.training.average import average

    def network(value, *runs):
        weights = {"a": torch.full((2,), value), "steps": torch.tensor(3)}
        return {"config": {"width": 2}, "runs": list(runs), "weights": weights}

    mean = average([(3, network(1.0, "first")), (1, network(5.0, "first", "second"))])
    assert mean["weights"]["a"].tolist() == [2.0, 2.0]
    assert mean["runs"] == ["first", "second"] and "steps" not in mean["weights"]
    other = network(1.0)
    other["weights"]["a"] = torch.ones(3)
    with pytest.raises(ValueError, match="no common ancestor"):
        average([(1, network(1.0)), (1, other)])
