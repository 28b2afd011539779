"""Beam search on a network of our own that says what a table tells it."""

import numpy as np
import pytest

from recognition.reader.beam import best_readings, greedy_reading, neighbours
from recognition.reader.grammar import Grammar
from recognition.reader.network import Memory, Past, Step
from recognition.reader.tokens import EOS, L2R, R2L, TOKEN_ID, VOCABULARY
from recognition.reader.weights import ModelFacts

X, Y, Z, PLUS = (TOKEN_ID[token] for token in ("x", "y", "z", "+"))
MEMORY = Memory(np.zeros(0), np.zeros(0), np.zeros(0, bool), (1, 1))


class _Table:
    """Says tokens by the number already said; the past only counts, its first axis is a dummy layer."""

    facts = ModelFacts()

    def __init__(self, forwards, backwards):
        self._tables = (forwards, backwards)
        self.rows = 0

    def begin(self, readings, memory):
        return Past(np.zeros((1, readings, 2)), np.zeros((1, readings, 0)))

    def say(self, tokens, past, memory):
        self.rows += tokens.size
        said, direction = past.keys[0, :, 0].astype(int), past.keys[0, :, 1].astype(int)
        direction = np.where(tokens[:, 0] == R2L, 1, np.where(tokens[:, 0] == L2R, 0, direction))
        out = np.full((*tokens.shape, len(VOCABULARY)), 1e-6)
        for row in range(len(tokens)):
            for place in range(tokens.shape[1]):
                steps = self._tables[direction[row]]
                for token, share in steps[min(said[row] + place, len(steps) - 1)].items():
                    out[row, place, token] = share
        keys = np.stack([said + tokens.shape[1], direction], 1)[None].astype(float)
        log_probs = np.log(out / out.sum(-1, keepdims=True)).astype(np.float32)
        return Step(log_probs, Past(keys, past.values), np.zeros((*tokens.shape, 1), np.float32))


GRAMMARS = [Grammar(VOCABULARY, backwards=backwards) for backwards in (False, True)]
KINDS = np.array([token in "xyz+" for token in VOCABULARY])


def test_joint_score_is_the_mean_of_both_directions():
    forwards = [{X: 0.6, Y: 0.4}, {PLUS: 1}, {Z: 1}, {EOS: 1}]
    backwards = [{Z: 1}, {PLUS: 1}, {X: 0.2, Y: 0.8}, {EOS: 1}]
    best, second = best_readings(_Table(forwards, backwards), MEMORY, *GRAMMARS, width=3)[:2]
    # y + z: half of log 0.4 + log 0.8 = log 0.566; x + z: half of log 0.6 + log 0.2 = log 0.346
    assert best.tokens == (Y, PLUS, Z) and second.tokens == (X, PLUS, Z)
    assert best.score == pytest.approx(np.log(0.4 * 0.8) / 2, abs=1e-3)
    assert second.score == pytest.approx(np.log(0.6 * 0.2) / 2, abs=1e-3)
    np.testing.assert_allclose(best.spread[0, [X, Y]], [np.log(0.6 * 0.2) / 2, np.log(0.4 * 0.8) / 2], atol=1e-3)
    np.testing.assert_allclose(best.log_probs, best.spread[np.arange(3), list(best.tokens)])


def test_a_sure_line_is_said_by_one_reading_in_each_direction():
    forwards = [{X: 0.999}, {PLUS: 0.999}, {Z: 0.999}, {EOS: 0.999}]
    backwards = [{Z: 0.999}, {PLUS: 0.999}, {X: 0.999}, {EOS: 0.999}]
    network = _Table(forwards, backwards)
    readings = best_readings(network, MEMORY, *GRAMMARS, width=5)
    assert [reading.tokens for reading in readings] == [(X, PLUS, Z)]
    assert network.rows == 2 * 4  # two directions, three tokens and the end


def test_neighbours_exchange_one_sign_likeliest_first():
    forwards = [{X: 0.9, Y: 0.08, Z: 0.02}, {PLUS: 1}, {Z: 0.95, Y: 0.05}, {EOS: 1}]
    backwards = [{Z: 0.95, Y: 0.05}, {PLUS: 1}, {X: 0.9, Y: 0.08, Z: 0.02}, {EOS: 1}]
    reading = greedy_reading(_Table(forwards, backwards), MEMORY, GRAMMARS[0])
    assert reading.tokens == (X, PLUS, Z)
    near = list(neighbours(reading, GRAMMARS[0], KINDS))
    # Exchanged: x by y loses log(0.9/0.08) = 2.42; z by y log(0.95/0.05) = 2.94; x by z log(0.9/0.02) = 3.81.
    assert [one.tokens for one in near[:3]] == [(Y, PLUS, Z), (X, PLUS, Y), (Z, PLUS, Z)]
    losses = [reading.score - one.score for one in near]
    np.testing.assert_allclose(losses[:3], np.log([0.9 / 0.08, 0.95 / 0.05, 0.9 / 0.02]), atol=1e-3)
    assert losses == sorted(losses)
    assert all(sum(a != b for a, b in zip(one.tokens, reading.tokens, strict=True)) == 1 for one in near)


def test_neighbours_keep_to_the_letters_of_the_page():
    table = [{X: 0.9, Y: 0.1}, {EOS: 1}]
    only = Grammar(VOCABULARY, backwards=False, allowed={"x", "z"})
    reading = greedy_reading(_Table(table, table), MEMORY, only)
    assert {one.tokens for one in neighbours(reading, only, KINDS)} == {(Z,)}
