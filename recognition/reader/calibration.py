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


@dataclass(frozen=True, slots=True)
class ScoredLine:
    """Joint log-scores of a line's readings, best first, and which one is right (None: none of them)."""

    scores: tuple[float, ...]
    right: int | None


def probabilities(scores: Sequence[float], temperature: float, rest: float) -> NDArray[np.float64]:
    """Softmax of joint log-scores over the temperature, "none of these" having the score `rest`."""
    if not scores:
        return np.zeros(0)
    logits = np.array([*scores, rest]) / temperature
    weights = np.exp(logits - logits.max())
    shares: NDArray[np.float64] = weights / weights.sum()
    return shares[:-1]


def fit_temperature(lines: Sequence[ScoredLine]) -> tuple[float, float]:
    """Temperature and score of "none of these" under which the truth of validation lines is likeliest.

    Raises:
        ValueError: there are no lines with readings.
    """
    known = [line for line in lines if line.scores]
    if not known:
        raise ValueError("No line was read, so there is nothing to fit.")
    scores = np.full((len(known), max(len(line.scores) for line in known) + 1), -np.inf)
    right = np.empty(len(known), np.intp)
    for row, line in enumerate(known):
        scores[row, 1 : len(line.scores) + 1] = line.scores
        right[row] = 0 if line.right is None else line.right + 1

    def loss(place: NDArray[np.float64]) -> float:
        scores[:, 0] = place[1]
        logits = scores / np.exp(place[0])
        top = logits.max(axis=1, keepdims=True)
        total = np.log(np.exp(logits - top).sum(axis=1)) + top[:, 0]
        return float(np.mean(total - np.maximum(logits[np.arange(len(known)), right], -1e6)))

    place, step = np.array([0.0, -3.0]), np.array([1.0, 3.0])
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
