"""The likeliest readings of one line, said forwards and backwards together and scored both ways."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.reader.grammar import BANNED, Grammar
from recognition.reader.network import Memory, Network
from recognition.reader.tokens import EOS, L2R, R2L
from recognition.reader.tree import ROOT, Tree

__all__ = ["Reading", "Spoken", "best_readings", "greedy_reading", "neighbours", "score_reading"]

_SURE: Final = 6.0  # nats: a finished reading this far ahead of all that goes on ends the search
_HOPELESS: Final = 4.0  # nats behind the best one that goes on: such a reading is dropped
_UNLIKELY: Final = 4.0  # nats behind the best finished one: not worth scoring the other way
# 8 for both finds the same first readings (CROHME 2013, every third line) and takes a third longer.
_NEIGHBOURS: Final = 64  # exchanges that are looked at
_STARTS: Final = (L2R, R2L)

Floats = NDArray[np.float32]


@dataclass(frozen=True, slots=True)
class Spoken:
    """One direction's view of a reading, in reading order.

    log_probs: of each token. end: log-probability of stopping after it. attention: (tokens, cells) or None.
    spread: log-probabilities of all tokens in the place of each, shape (tokens, vocabulary).
    """

    tokens: tuple[int, ...]
    log_probs: Floats
    end: float
    attention: Floats | None
    spread: Floats

    @property
    def score(self) -> float:
        return float(self.log_probs.sum()) + self.end


@dataclass(frozen=True, slots=True)
class Reading:
    """A reading scored in both directions (the same twice where only one was asked for)."""

    forwards: Spoken
    backwards: Spoken

    @property
    def tokens(self) -> tuple[int, ...]:
        return self.forwards.tokens

    @property
    def score(self) -> float:
        """Mean of the two directions' log-probabilities of the whole reading."""
        return (self.forwards.score + self.backwards.score) / 2

    @property
    def log_probs(self) -> Floats:
        return (self.forwards.log_probs + self.backwards.log_probs) * np.float32(0.5)

    @property
    def attention(self) -> Floats | None:
        if self.forwards.attention is None or self.backwards.attention is None:
            return None
        return (self.forwards.attention + self.backwards.attention) * np.float32(0.5)

    @property
    def spread(self) -> Floats:
        """Mean of the two directions' log-probabilities of all tokens in the place of each."""
        return (self.forwards.spread + self.backwards.spread) * np.float32(0.5)


@dataclass(frozen=True, slots=True)
class _Finished:
    """A reading that ended after a row of the tree."""

    row: int
    score: float


def greedy_reading(network: Network, memory: Memory, forwards: Grammar) -> Reading | None:
    """The reading that says the likeliest token each time, left to right; None where it never ends."""
    tree = Tree(network, memory)
    found = _search(tree, (forwards,), 1, network.facts.max_tokens)[0]
    return Reading(found[0], found[0]) if found else None


def best_readings(
    network: Network, memory: Memory, forwards: Grammar, backwards: Grammar, *, width: int
) -> list[Reading]:
    """Readings found by either direction's beam, best joint score first. May be empty; at most 2 * width."""
    tree = Tree(network, memory)
    found = _search(tree, (forwards, backwards), width, network.facts.max_tokens)
    views: list[dict[tuple[int, ...], Spoken]] = [{}, {}]
    for direction, spoken in enumerate(found):
        best = max((one.score for one in spoken), default=0.0)
        views[direction] = {one.tokens: one for one in spoken if one.score >= best - _UNLIKELY}
    every = list(dict.fromkeys((*views[0], *views[1])))
    missing = [(tokens, direction) for tokens in every for direction in (0, 1) if tokens not in views[direction]]
    for one, (tokens, direction) in zip(_score(tree, missing), missing, strict=True):
        views[direction][tokens] = one
    readings = [Reading(views[0][tokens], views[1][tokens]) for tokens in every]
    return sorted(readings, key=lambda reading: -reading.score)


def score_reading(network: Network, memory: Memory, tokens: tuple[int, ...]) -> Reading:
    """A given reading scored in both directions."""
    forwards, backwards = _score(Tree(network, memory), [(tokens, 0), (tokens, 1)])
    return Reading(forwards, backwards)


def neighbours(reading: Reading, forwards: Grammar, kinds: NDArray[np.bool_]) -> Iterator[Reading]:
    """Readings that exchange one sign of a reading for another, likeliest first.

    Their scores take the rest of the line to be as likely as before, so they are a little too high. Which of them parse
    is for the caller to see.

    Args:
        kinds: for each token of the vocabulary, whether it is a sign that may be exchanged for another.
    """
    spread, tokens = reading.spread, np.array(reading.tokens, np.intp)
    places = np.arange(len(tokens))
    legal = kinds[None, :] & kinds[tokens][:, None]
    legal &= forwards.after[np.concatenate([[L2R], tokens[:-1]])] > BANNED / 2
    legal[places, tokens] = False
    loss = np.where(legal, reading.log_probs[:, None] - spread, np.inf).ravel()
    for place in np.argsort(loss, kind="stable")[:_NEIGHBOURS]:
        if not np.isfinite(loss[place]):
            return
        at, token = int(place // spread.shape[1]), int(place % spread.shape[1])
        yield Reading(_exchanged(reading.forwards, at, token), _exchanged(reading.backwards, at, token))


def _exchanged(spoken: Spoken, at: int, token: int) -> Spoken:
    log_probs = spoken.log_probs.copy()
    log_probs[at] = spoken.spread[at, token]
    tokens = (*spoken.tokens[:at], token, *spoken.tokens[at + 1 :])
    return Spoken(tokens, log_probs, spoken.end, spoken.attention, spoken.spread)


def _search(tree: Tree, grammars: Sequence[Grammar], width: int, longest: int) -> list[list[Spoken]]:
    """Beam search in the given directions at once: forwards first, then backwards."""
    penalties = np.stack([grammar.after[None] + grammar.at_depth[:, None] for grammar in grammars])
    depth_change = np.stack([grammar.depth_change for grammar in grammars])
    finished: list[list[_Finished]] = [[] for _ in grammars]
    direction = np.arange(len(grammars))
    last = np.array(_STARTS[: len(grammars)], np.int64)
    score = np.zeros(len(grammars))
    depth = np.zeros(len(grammars), np.int64)
    said, log_probs = tree.say([ROOT] * len(grammars), _STARTS[: len(grammars)])
    for step in range(longest):
        total = score[:, None] + (log_probs + penalties[direction, np.minimum(depth, 1), last])
        rows: list[int] = []
        tokens: list[int] = []
        for number in range(len(grammars)):
            own = np.flatnonzero(direction == number)
            if not len(own):
                continue
            live = _grow(total, own, width, said if step else None, finished[number])
            if not _is_over(finished[number], live, total, width):
                rows += [row for row, _ in live]
                tokens += [token for _, token in live]
        if not rows:
            break
        parents = np.array(rows, np.intp)
        last = np.array(tokens, np.int64)
        score = total[parents, last]
        direction = direction[parents]
        depth = depth[parents] + depth_change[direction, last]
        said, log_probs = tree.say([said[row] for row in rows], tokens)
    return [
        [_spoken(tree, one.row, number) for one in _best(finished[number], width)] for number in range(len(grammars))
    ]


def _grow(
    total: NDArray[np.float64], own: NDArray[np.intp], width: int, said: range | None, finished: list[_Finished]
) -> list[tuple[int, int]]:
    """The best (row, next token) that go on; those that end are added to `finished`, if anything was said."""
    flat = total[own].ravel()
    wanted = min(2 * width, len(flat) - 1)
    best = np.argpartition(-flat, wanted)[:wanted]
    live: list[tuple[int, int]] = []
    top = None
    for rank, place in enumerate(best[np.argsort(-flat[best], kind="stable")]):
        if flat[place] <= BANNED / 2:
            break
        row, token = int(own[place // total.shape[1]]), int(place % total.shape[1])
        if token == EOS:
            if rank < width and said is not None:
                finished.append(_Finished(said[row], float(flat[place])))
        elif len(live) < width:
            top = flat[place] if top is None else top
            if flat[place] < top - _HOPELESS:
                break
            live.append((row, token))
    return live


def _is_over(finished: list[_Finished], live: list[tuple[int, int]], total: NDArray[np.float64], width: int) -> bool:
    if not live:
        return True
    scores = sorted((one.score for one in finished), reverse=True)
    ahead = float(total[live[0]])
    return bool(scores) and (scores[0] > ahead + _SURE or (len(scores) >= width and scores[width - 1] >= ahead))


def _best(finished: list[_Finished], width: int) -> list[_Finished]:
    return sorted(finished, key=lambda one: -one.score)[:width]


def _score(tree: Tree, wanted: Sequence[tuple[tuple[int, ...], int]]) -> list[Spoken]:
    """Score whole readings, each in its given direction (0 forwards, 1 backwards), in one call at most."""
    parents: list[int] = []
    tokens: list[int] = []
    new: dict[tuple[int, int], int] = {}
    first = len(tree.tokens)
    ends = []
    for reading, direction in wanted:
        row = ROOT
        for token in (_STARTS[direction], *(reading if direction == 0 else reading[::-1])):
            known = tree.child(row, token)
            known = new.get((row, token)) if known is None else known
            if known is None:
                known = new[row, token] = first + len(tokens)
                parents.append(row)
                tokens.append(token)
            row = known
        ends.append(row)
    if tokens:
        tree.say(parents, tokens)
    return [_spoken(tree, row, direction) for row, (_, direction) in zip(ends, wanted, strict=True)]


def _spoken(tree: Tree, row: int, direction: int) -> Spoken:
    """The reading that ends after a row of the tree."""
    way = tree.way_to(row)
    before, after = (way[:-1], way[1:]) if direction == 0 else (way[-2::-1], way[:0:-1])
    tokens = tuple(tree.tokens[number] for number in after)
    spread = np.array([tree.log_probs[number] for number in before], np.float32).reshape(len(before), -1)
    attention = np.array([tree.attention[number] for number in before], np.float32) if tree.attention else None
    log_probs = spread[np.arange(len(tokens)), list(tokens)]
    return Spoken(tokens, log_probs, float(tree.log_probs[row][EOS]), attention, spread)
