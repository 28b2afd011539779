"""Which way up is the writing? Told from the shapes of its pieces by a small network of our own.

Each piece of ink votes for one of four quarter turns; a 7 or a root says much, a 0 or a cross nothing. The page is
turned only when the votes for another way are clearly ahead, and ahead in each part of the page.
`recognition/training/turns.py` made the weights.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page.pieces import Pieces

__all__ = ["SIDE", "TurnNet", "load_net", "piece_features", "quarter_turns"]

SIDE: Final = 16
"""Pixels of the small picture in which a piece is looked at."""
_WEIGHTS: Final = Path(__file__).with_name("turns.npz")
_MOST_PIECES: Final = 500
_LEAST_SIZE: Final = 0.35
"""Share of the usual size; smaller marks have no way up."""
_LEAST_PIECES: Final = 6
_LEAST_LEAD: Final = 8.0
"""Natural logarithm of the odds by which another way up must be ahead..."""
_LEAST_MEAN_LEAD: Final = (0.0, 0.75, 0.2, 0.75)
"""...and the same for each piece, for each way: drawings and long words have a look of sideways writing about them."""
_PARTS: Final = 3
"""Stretches of the page, from its top to its bottom, that must agree: one drawing or one odd line turns no page."""
_FLOOR: Final = -3.0
"""No single piece may speak more strongly against a way up than this."""


@dataclass(frozen=True, slots=True)
class TurnNet:
    """Two layers: w1 (SIDE * SIDE + 2, hidden), b1, w2 (hidden, 4), b2."""

    w1: NDArray[np.float32]
    b1: NDArray[np.float32]
    w2: NDArray[np.float32]
    b2: NDArray[np.float32]

    def log_probabilities(self, features: NDArray[np.float32]) -> NDArray[np.float32]:
        """For each piece, shape (n, 4): how probable it is that it was turned by 0 to 3 quarter turns."""
        hidden = np.maximum(features @ self.w1 + self.b1, 0)
        scores = hidden @ self.w2 + self.b2
        scores -= scores.max(axis=1, keepdims=True)
        return np.asarray(scores - np.log(np.exp(scores).sum(axis=1, keepdims=True)), np.float32)


@cache
def load_net() -> TurnNet:
    """The shipped weights."""
    with np.load(_WEIGHTS) as saved:
        return TurnNet(*(saved[name].astype(np.float32) for name in ("w1", "b1", "w2", "b2")))


def quarter_turns(pieces: Pieces) -> int:
    """By how many quarter turns anticlockwise the writing is turned, 0 to 3; 0 where it cannot be told."""
    features = piece_features(pieces)
    if len(features) < _LEAST_PIECES:
        return 0
    votes = np.maximum(load_net().log_probabilities(features), _FLOOR)
    best = int(votes.sum(axis=0).argmax())
    leads = votes[:, best] - votes[:, 0]
    if float(leads.sum()) <= max(_LEAST_LEAD, _LEAST_MEAN_LEAD[best] * len(features)):
        return 0
    return best if all(float(part.sum()) > 0 for part in np.array_split(leads, _PARTS)) else 0


def piece_features(pieces: Pieces) -> NDArray[np.float32]:
    """What the network sees of each piece of some size, shape (n, SIDE * SIDE + 2)."""
    wide, tall = (pieces.boxes[:, 2:] - pieces.boxes[:, :2]).T
    longer = np.maximum(wide, tall)
    if not len(longer):
        return np.zeros((0, SIDE * SIDE + 2), np.float32)
    usual = float(np.median(longer[longer > 0.5 * np.median(longer)]))
    chosen = np.flatnonzero((longer > _LEAST_SIZE * usual) & (longer < 8 * usual))
    if len(chosen) > _MOST_PIECES:
        chosen = chosen[np.linspace(0, len(chosen) - 1, _MOST_PIECES).astype(int)]
    rows = []
    for i in chosen:
        x0, y0, x1, y1 = (int(v) for v in pieces.boxes[i])
        shape = (pieces.labels[y0:y1, x0:x1] == i + 1).astype(np.float32)
        scale = SIDE / max(shape.shape)
        # Even sizes stand exactly in the middle, so that a turned piece gives exactly the turned picture.
        size = (max(2, 2 * round(shape.shape[1] * scale / 2)), max(2, 2 * round(shape.shape[0] * scale / 2)))
        small = cv2.resize(shape, size, interpolation=cv2.INTER_AREA)
        frame = np.zeros((SIDE, SIDE), np.float32)
        top, left = (SIDE - size[1]) // 2, (SIDE - size[0]) // 2
        frame[top : top + size[1], left : left + size[0]] = small
        rows.append(np.concatenate([frame.ravel(), np.log(np.array([wide[i], tall[i]], np.float32) / usual + 0.05)]))
    return np.array(rows, np.float32).reshape(-1, SIDE * SIDE + 2)
