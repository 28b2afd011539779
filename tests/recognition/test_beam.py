"""Beam search on a network of our own that says what a table tells it."""

import numpy as np
import pytest

from recognition.reader.beam import best_readings, greedy_reading, neighbours
from recognition.reader.grammar import Grammar
from recognition.reader.network import Memory, Step
from recognition.reader.tokens import EOS, L2R, R2L, TOKEN_ID, VOCABULARY
from recognition.reader.tree import ROOT, Tree
from recognition.reader.weights import ModelFacts

X, Y, Z, PLUS = (TOKEN_ID[token] for token in ("x", "y", "z", "+"))
MEMORY = Memory({}, (1, 1))


class _Table:
    """Says tokens by the number already said and the direction, which rows find in the earlier ones they see."""

    facts = ModelFacts()
    past_width = 1

    def __init__(self, forwards, backwards):
        self._tables = (forwards, backwards)
        self.rows = 0

    def say(self, tokens, places, unseen, past, memory):
        self.rows += len(tokens)
        directions = [int(value) for value in past[:, 0]]
        out = np.full((len(tokens), len(VOCABULARY)), 1e-6)
        for row, (token, place) in enumerate(zip(tokens, places, strict=True)):
            first = np.flatnonzero(unseen[row] == 0)[0]
            directions.append((L2R, R2L).index(token) if place == 0 else directions[first])
            steps = self._tables[directions[-1]]
            for said, share in steps[min(place, len(steps) - 1)].items():
                out[row, said] = share
        log_probs = np.log(out / out.sum(-1, keepdims=True)).astype(np.float32)
        said = np.array(directions[len(past) :], np.float32)[:, None]
        return Step(log_probs, said, np.zeros((len(tokens), 1), np.float32))


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


def test_readings_that_begin_alike_are_asked_about_once():
    table = [{X: 0.5, Y: 0.5}, {PLUS: 1}, {Z: 1}, {EOS: 1}]
    network = _Table(table, table)
    tree = Tree(network, MEMORY)
    first, _ = tree.say([ROOT], [L2R])
    tree.say([first[0], first[0] + 1, first[0]], [X, PLUS, Y])  # one call: x, x + and y
    assert network.rows == 4 and tree.child(first[0], Y) == 3 and tree.child(3, PLUS) is None
    assert [tree.tokens[row] for row in tree.way_to(2)] == [L2R, X, PLUS]


def test_rows_off_the_way_are_not_seen_when_the_tree_is_large():
    seen = []

    class _Watched(_Table):
        def say(self, tokens, places, unseen, past, memory):
            seen.append((len(past), unseen))
            return super().say(tokens, places, unseen, past, memory)

    tree = Tree(_Watched([{X: 1}], [{X: 1}]), MEMORY)
    root, _ = tree.say([ROOT], [L2R])
    for number in range(150):  # all after the start, none on the way of another
        tree.say([root[0]], [4 + number % 20])
    last, log_probs = tree.say([root[0]], [X])
    # It needs the start alone, of 151 rows, and itself.
    assert seen[-1][0] == 1 and seen[-1][1].tolist() == [[0.0, 0.0]]
    assert int(log_probs[0].argmax()) == X and tree.way_to(last[0]) == [0, 151]
