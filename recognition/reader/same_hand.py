"""What confirmed lines tell of this hand and this page, and how that weighs doubtful signs of the other lines.

Two things are learnt from lines whose reading the user has confirmed: which signs and letters occur, and how this hand
makes each of them. A doubtful sign of another line is compared with the confirmed ones; readings in which it is what it
looks like here gain, and an exchange that was no candidate yet may become one. It never asks whether the mathematics
is true, and a line in which nothing was doubtful stays as it was.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.page_letters import LEAST_LINES, LETTERS
from recognition.reader.tokens import is_valid
from recognition.result import Candidate

__all__ = ["Hand", "LineStudy", "letter_evidence", "reweighed"]

Floats = NDArray[np.float32]

LEAST_SIGNS: Final = 12
"""Fewer confirmed signs than these say nothing, as do fewer lines than `LEAST_LINES`."""
MOST_STRANGE: Final = 0.2
"""Share of the confirmed signs that occurred just once, above which the next line will hold many that were not
confirmed (Good 1953). Lines of one working have 0.06 (median), lines that have nothing to do with each other 0.16 to
0.28 (CROHME 2014, 2013, five lines of a writer); there, what was confirmed mends hardly more than it spoils.
"""
# Chosen on the writers of CROHME 2013 (their own lines, and lines of working in their ink), to spoil next to nothing.
_LOOK: Final = 8.0  # nats a unit of likeness (cosine)
_STRANGER: Final = 0.7  # likeness lent to a sign that was not confirmed yet, so that it is not held against it
_COUNT: Final = 0.2  # nats for each factor of e in how often a sign was confirmed
_LETTERS: Final = 0.6  # weight of the letters of the page
_MARGIN: Final = 2.0  # nats that an exchange, or a lower candidate, must gain over what was read
_REACH: Final = 6.0  # nats behind: a sign that the network thinks so unlikely is no rival
_COMMON: Final = 8.0  # letters among which a page chooses, if nothing is known
_UNSEEN: Final = 12.0  # letters that a new one may be
_MOST: Final = 5


@dataclass(frozen=True, slots=True)
class LineStudy:
    """What the network saw of one line under a given reading (`NeuralReader.study`).

    tokens: of that reading. is_sign: which of them have ink and may be exchanged. spread: log-probability of every
    token of the vocabulary in each place, shape (tokens, vocabulary). looks: what was seen there, (tokens, width).
    """

    tokens: tuple[str, ...]
    is_sign: NDArray[np.bool_]
    spread: Floats
    looks: Floats
    vocabulary: tuple[str, ...]

    def __post_init__(self) -> None:
        if not len(self.tokens) == len(self.is_sign) == len(self.spread) == len(self.looks):
            raise ValueError("A study has one row for each token.")


@dataclass(frozen=True, slots=True)
class Hand:
    """Confirmed signs of one hand: their tokens and looks, looks less their mean and of length 1.

    on_page: the signs confirmed on the page that is weighed, which alone tell of its letters; None for all.
    """

    lines: int
    tokens: tuple[str, ...]
    looks: Floats
    middle: Floats
    on_page: tuple[str, ...] | None = None

    @classmethod
    def of(cls, confirmed: Sequence[LineStudy]) -> Hand | None:
        """Learn from studies of confirmed readings; None where these say too little of the other lines."""
        tokens = _signs(confirmed)
        if len(confirmed) < LEAST_LINES or len(tokens) < LEAST_SIGNS:
            return None
        if sum(count == 1 for count in Counter(tokens).values()) > MOST_STRANGE * len(tokens):
            return None
        looks = np.concatenate([study.looks[study.is_sign] for study in confirmed]).astype(np.float32)
        middle = looks.mean(axis=0)
        return cls(len(confirmed), tokens, _unit(looks - middle), middle)

    def for_page(self, confirmed: Sequence[LineStudy]) -> Hand:
        """The same hand on a page of which these lines are confirmed: other pages have other letters."""
        return replace(self, on_page=_signs(confirmed))

    def likeness(self, looks: Floats) -> dict[str, Floats]:
        """For each confirmed token how like its nearest example each look is (cosine)."""
        near = _unit(looks - self.middle) @ self.looks.T
        own = np.array(self.tokens)
        return {token: near[:, own == token].max(axis=1) for token in dict.fromkeys(self.tokens)}


def _signs(studies: Sequence[LineStudy]) -> tuple[str, ...]:
    return tuple(token for study in studies for token, sign in zip(study.tokens, study.is_sign, strict=True) if sign)


def letter_evidence(counts: Counter[str]) -> dict[str, float]:
    """Log-odds that a letter occurs on the page, against a page of which nothing is known; between -3 and 1.

    How likely a letter is that was not confirmed yet follows from how many were confirmed just once.
    Source: Good 1953, "The population frequencies of species and the estimation of population parameters".
    """
    seen = {token: count for token, count in counts.items() if token in LETTERS and count}
    total = sum(seen.values())
    if not total:
        return {}
    new = (sum(count == 1 for count in seen.values()) + 0.5) / (total + 1)
    shares = {token: (1 - new) * seen[token] / total if token in seen else new / _UNSEEN for token in LETTERS}
    return {token: min(1.0, max(-3.0, math.log(share * _COMMON))) for token, share in shares.items()}


def reweighed(candidates: Sequence[Candidate], study: LineStudy, hand: Hand | None) -> tuple[Candidate, ...]:
    """The candidates of a line, weighed anew by what is known of the hand.

    Args:
        candidates: best first, as read.
        study: of the first candidate's reading.
        hand: what was confirmed; None leaves all as it is.
    Returns:
        Up to five candidates, best first; their probabilities have the same sum as before.
    Raises:
        ValueError: the study is of another reading.
    """
    if not candidates or hand is None:
        return tuple(candidates)
    best = candidates[0]
    if tuple(best.latex.split()) != study.tokens:
        raise ValueError("The study is not of the first candidate.")
    gains = _gains(study, hand)
    known = {candidate.latex: candidate for candidate in candidates}
    weights = {latex: _weight(candidate, best, study, gains) for latex, candidate in known.items()}
    for places in _exchanges(study, gains):
        tokens = list(study.tokens)
        for place, token in places.items():
            tokens[place] = token
        latex = " ".join(tokens)
        if latex in known or not is_valid(tokens):
            continue
        change = sum(gains[place][token] for place, token in places.items())
        known[latex] = _exchanged(best, places)
        weights[latex] = best.probability * math.exp(min(change, 30.0))
    total, share = sum(weights.values()), sum(candidate.probability for candidate in candidates)
    order = sorted(known, key=lambda latex: -weights[latex])[:_MOST]
    if best.latex not in order:
        order[-1] = best.latex  # what was read stays at hand
    scale = share / total if total > 0 else 0.0
    return tuple(replace(known[latex], probability=weights[latex] * scale) for latex in order)


def _gains(study: LineStudy, hand: Hand) -> list[dict[str, float]]:
    """For each place the rivals of its token and the nats that each would gain, network and hand together."""
    counts = Counter(hand.tokens)
    letters = letter_evidence(Counter(hand.tokens if hand.on_page is None else hand.on_page))
    likeness = hand.likeness(study.looks)
    ids = {token: number for number, token in enumerate(study.vocabulary)}
    out: list[dict[str, float]] = []
    for place, token in enumerate(study.tokens):
        rivals: dict[str, float] = {}
        if study.is_sign[place]:
            near = {name: float(values[place]) for name, values in likeness.items()}
            stranger = min(_STRANGER, max(near.values()))
            own = _evidence(token, near, counts, letters, stranger)
            for rival in near:
                gap = float(study.spread[place, ids[token]] - study.spread[place, ids[rival]])
                if rival != token and gap < _REACH:
                    rivals[rival] = _evidence(rival, near, counts, letters, stranger) - own - gap
        out.append(rivals)
    return out


def _evidence(
    token: str, near: dict[str, float], counts: Counter[str], letters: dict[str, float], stranger: float
) -> float:
    seen = _COUNT * math.log1p(counts[token])
    return _LOOK * near.get(token, stranger) + seen + _LETTERS * letters.get(token, 0.0)


def _weight(candidate: Candidate, best: Candidate, study: LineStudy, gains: list[dict[str, float]]) -> float:
    """A candidate that differs from the best in signs alone gains what the hand says of these signs."""
    tokens = candidate.latex.split()
    if candidate is best or len(tokens) != len(study.tokens):
        return candidate.probability
    ids = {token: number for number, token in enumerate(study.vocabulary)}
    change = 0.0
    for place, (token, own) in enumerate(zip(tokens, study.tokens, strict=True)):
        if token != own:
            if token not in gains[place]:
                return candidate.probability
            # what the network thinks of it is in the candidate's probability already
            change += gains[place][token] + float(study.spread[place, ids[own]] - study.spread[place, ids[token]])
    if change > 0:  # as much doubt as an exchange must overcome
        change = max(0.0, change - _MARGIN)
    return candidate.probability * math.exp(min(change, 30.0))


def _exchanges(study: LineStudy, gains: list[dict[str, float]]) -> list[dict[int, str]]:
    """Exchanges worth making: each alone, and all together."""
    single = {
        place: max(rivals, key=lambda token: rivals[token])
        for place, rivals in enumerate(gains)
        if rivals and max(rivals.values()) > _MARGIN
    }
    out = [{place: token} for place, token in single.items()]
    return [single, *out] if len(single) > 1 else out


def _exchanged(best: Candidate, places: dict[int, str]) -> Candidate:
    tokens = tuple(
        replace(token, text=places[place], probability=min(token.probability, 0.5)) if place in places else token
        for place, token in enumerate(best.tokens)
    )
    latex = best.latex.split()
    for place, token in places.items():
        latex[place] = token
    return Candidate(" ".join(latex), best.probability, tokens, best.struck)


def _unit(vectors: Floats) -> Floats:
    length = np.maximum(np.linalg.norm(vectors, axis=1, keepdims=True), 1e-6)
    return np.asarray(vectors / length, np.float32)
