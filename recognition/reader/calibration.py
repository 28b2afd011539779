"""How sure may the reader say it is? Fits the temperature, and measures how far probabilities are from the truth.

Source: Guo et al. 2017, "On Calibration of Modern Neural Networks" (arXiv 1706.04599): temperature scaling and the
expected calibration error.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

__all__ = ["ScoredLine", "calibration_error", "fit_temperature", "probabilities", "share_of_wrong_in_doubt"]

_BINS: Final = 10
_ROUNDS: Final = 40
_DROPPED: Final = 8.0  # nats behind the best: readings farther behind are dropped in the search


@dataclass(frozen=True, slots=True)
class ScoredLine:
    """Joint log-scores of a line's readings, best first, and which one is right (None: none of them)."""

    scores: tuple[float, ...]
    right: int | None


def probabilities(scores: Sequence[float], temperature: float, rest: float) -> NDArray[np.float64]:
    """Softmax of joint log-scores, best first, over the temperature, with a share for "none of these".

    That share weighs exp(rest) times what all readings but the best weigh together: where alternatives crowd, the
    truth is also likelier to have been missed. Minus infinity leaves it out.
    """
    if not scores:
        return np.zeros(0)
    return np.asarray(np.exp(_log_shares(np.array([scores], np.float64), temperature, rest)[0, :-1]), np.float64)


def fit_temperature(lines: Sequence[ScoredLine]) -> tuple[float, float]:
    """Temperature and weight of "none of these" under which it is likeliest which first readings are right.

    Raises:
        ValueError: there are no lines with readings.
    """
    known = [line for line in lines if line.scores]
    if not known:
        raise ValueError("No line was read, so there is nothing to fit.")
    scores = np.full((len(known), max(len(line.scores) for line in known)), -np.inf)
    is_right = np.array([line.right == 0 for line in known])
    for row, line in enumerate(known):
        scores[row, : len(line.scores)] = line.scores

    def loss(place: NDArray[np.float64]) -> float:
        first = np.exp(_log_shares(scores, float(np.exp(place[0])), float(place[1]))[:, 0])
        said = np.clip(np.where(is_right, first, 1 - first), 1e-9, 1)
        return -float(np.log(said).mean())

    place, step = np.array([0.0, 0.0]), np.array([1.0, 2.0])
    best = loss(place)
    for _ in range(_ROUNDS):  # coordinate search: two smooth directions, one valley
        for axis in (0, 1):
            for sign in (1.0, -1.0):
                trial = place.copy()
                trial[axis] += sign * step[axis]
                value = loss(trial)
                if value < best:
                    place, best = trial, value
                    break
            else:
                step[axis] *= 0.6
    return float(np.exp(place[0])), float(place[1])


def _log_shares(scores: NDArray[np.float64], temperature: float, rest: float) -> NDArray[np.float64]:
    """Log-probabilities of the readings of each line, best first, and of none of them in the last column."""
    logits = (scores - scores[:, :1]) / temperature
    others = np.maximum(np.exp(logits[:, 1:]).sum(axis=1), np.exp(-_DROPPED / temperature))
    with np.errstate(divide="ignore"):
        missed = rest + np.log(others)
    every = np.concatenate([logits, missed[:, None]], axis=1)
    return np.asarray(every - np.log(np.exp(every).sum(axis=1, keepdims=True)), np.float64)


def calibration_error(sure: Sequence[float], is_right: Sequence[bool]) -> float:
    """Expected calibration error: mean gap between said and true probability, over ten bins of equal count."""
    if not len(sure):
        return 0.0
    order = np.argsort(sure)
    said, true = np.asarray(sure, np.float64)[order], np.asarray(is_right, np.float64)[order]
    bins = [part for part in np.array_split(np.arange(len(order)), _BINS) if len(part)]
    return float(sum(abs(said[part].mean() - true[part].mean()) * len(part) for part in bins) / len(order))


def share_of_wrong_in_doubt(sure: Sequence[float], is_right: Sequence[bool], doubtful: float = 0.15) -> float:
    """Of all wrong readings, the share that lies among the least sure lines; `doubtful` is the share of lines shown."""
    wrong = ~np.asarray(is_right, bool)
    if not wrong.any():
        return 1.0
    shown = np.argsort(sure, kind="stable")[: round(doubtful * len(wrong))]
    return float(wrong[shown].sum() / wrong.sum())
