"""Letters that the lines of a page share: a reading with a letter that no other line has is believed less.

A page of working keeps to a few letters. Each line's readings are weighed by how many of the other lines seem to hold
the letters they name; digits and signs count the same everywhere. This is about which signs a page is written in,
never about what is true.
"""

from __future__ import annotations

import collections
import string
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from recognition.result import Candidate

__all__ = ["LEAST_LINES", "LETTERS", "with_page_letters"]

LETTERS: Final = frozenset(
    [*string.ascii_letters, r"\alpha", r"\beta", r"\gamma", r"\Delta", r"\theta", r"\lambda", r"\mu", r"\pi", r"\sigma",
     r"\phi", r"\omega"]
)  # fmt: skip
LEAST_LINES: Final = 2
"""Confirmed lines of a hand; fewer say nothing of it (`recognition/reader/same_hand.py`)."""
_FEWEST: Final = 3  # lines; fewer say nothing about a page


def with_page_letters(lines: Sequence[tuple[Candidate, ...]]) -> list[tuple[Candidate, ...]]:
    """Weigh the readings of the lines of one page anew.

    Of n other lines k are expected to hold a letter, by the probabilities of their readings: a reading that names it
    weighs (k + 1) / (n + 1). The probabilities of a line sum to what they did before.

    Args:
        lines: for each line its readings, best first; none where it could not be read. A line that the user confirmed
            has one reading of probability 1.
    Returns:
        The readings of each line, best first.
    """
    others = sum(map(bool, lines)) - 1
    if others + 1 < _FEWEST:
        return list(lines)
    expected = [_letters_of(readings) for readings in lines]
    total = collections.defaultdict[str, float](float)
    for letters in expected:
        for letter, share in letters.items():
            total[letter] += share
    return [
        _weighed(readings, {letter: (total[letter] - own[letter] + 1) / (others + 1) for letter in own})
        for readings, own in zip(lines, expected, strict=True)
    ]


def _letters_of(readings: Sequence[Candidate]) -> dict[str, float]:
    """How likely each letter stands somewhere on the line."""
    expected = collections.defaultdict[str, float](float)
    for reading in readings:
        for letter in LETTERS & set(reading.latex.split()):
            expected[letter] += reading.probability
    return expected


def _weighed(readings: tuple[Candidate, ...], weights: dict[str, float]) -> tuple[Candidate, ...]:
    if len(readings) < 2:
        return readings
    new = []
    for reading in readings:
        weight = reading.probability
        for letter in LETTERS & set(reading.latex.split()):
            weight *= min(1.0, weights[letter])
        new.append(weight)
    if sum(new) <= 0:
        return readings
    share = sum(reading.probability for reading in readings) / sum(new)
    out = [replace(reading, probability=weight * share) for reading, weight in zip(readings, new, strict=True)]
    return tuple(sorted(out, key=lambda reading: -reading.probability))
