"""Which token may follow, when a reading is said one token at a time? Braces only; never mathematics."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import EOS, SPECIAL

__all__ = ["BANNED", "Grammar"]

BANNED: Final = np.float32(-1e9)

_TAKES_GROUP: Final = ("^", "_", r"\frac")
_BEFORE_GROUP: Final = ("^", "_", r"\frac", r"\sqrt", "}", "]")


class Grammar:
    """Penalties, 0 or BANNED, on the next token of one direction of reading."""

    def __init__(self, vocabulary: tuple[str, ...], *, backwards: bool, allowed: Collection[str] | None = None) -> None:
        """
        Args:
            backwards: readings are said from their last token to their first.
            allowed: the tokens that may be said at all; braces and scripts come with what needs them.
        """
        ids = {token: number for number, token in enumerate(vocabulary)}
        size = len(vocabulary)
        after = np.zeros((size, size), np.float32)
        opening, closing = ("}", "{") if backwards else ("{", "}")
        if backwards:
            before = [ids[token] for token in _BEFORE_GROUP]
            after[ids["{"]] = BANNED
            after[ids["{"], before] = 0
            elsewhere = [number for number in range(size) if number != ids["{"]]
            for mark in _TAKES_GROUP:
                after[elsewhere, ids[mark]] = BANNED
            for mark in ("^", "_"):
                after[ids[mark], [ids["{"], EOS]] = BANNED
            after[ids["}"], [ids["{"], ids["^"], ids["_"]]] = BANNED
        else:
            for token in _TAKES_GROUP:
                after[ids[token]] = BANNED
                after[ids[token], ids["{"]] = 0
            after[ids[r"\sqrt"]] = BANNED
            after[ids[r"\sqrt"], [ids["{"], ids["["]]] = 0
            for start in range(len(SPECIAL)):
                after[start, [ids["^"], ids["_"], ids["}"]]] = BANNED
            after[ids["{"], [ids["^"], ids["_"], ids["}"]]] = BANNED
            sources = [number for token, number in ids.items() if token not in (*_TAKES_GROUP, r"\sqrt", "}", "]")]
            after[sources, ids["{"]] = BANNED
        never = [number for number in range(len(SPECIAL)) if number != EOS]
        after[:, never] = BANNED
        if allowed is not None:
            after[:, [n for token, n in ids.items() if token not in allowed and token not in SPECIAL]] = BANNED
        self.after: Final[NDArray[np.float32]] = after
        """Row: the token said last; column: the next."""
        self.at_depth: Final = np.zeros((2, size), np.float32)
        """Row 0: outside of all groups; row 1: inside of one."""
        self.at_depth[0, ids[closing]] = BANNED
        self.at_depth[1, EOS] = BANNED
        self.depth_change: Final = np.zeros(size, np.int64)
        self.depth_change[ids[opening]] = 1
        self.depth_change[ids[closing]] = -1
