"""What was said of one line: a tree of tokens, in which readings that begin alike share what they have in common.

Each row is a token said after its parent, and knows how likely each next token is and where the network looked for it.
The rows at the root say in which direction it is read. A row that is already there costs nothing to say again, so
scoring a reading asks the network only about what no other reading began with.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Protocol

import numpy as np
from numpy.typing import NDArray

from recognition.reader.network import Floats, Memory, Step

__all__ = ["ROOT", "Speaker", "Tree"]

ROOT: Final = -1
"""Parent of the rows that say the direction."""
_UNSEEN: Final = np.float32(-1e9)
_ROOM: Final = 64  # rows; doubled when full
_FEW: Final = 96  # rows: from here on those that no new row can see are left out of a call, once they are the most


class Speaker(Protocol):
    """The decoder: says how likely each next token is."""

    def say(
        self, tokens: NDArray[np.int64], places: NDArray[np.int64], unseen: Floats, past: Floats, memory: Memory
    ) -> Step: ...

    @property
    def past_width(self) -> int: ...


class Tree:
    """Tokens said of one line. Rows are numbered in the order in which they were said."""

    def __init__(self, network: Speaker, memory: Memory) -> None:
        self._network = network
        self._memory = memory
        self._past = np.empty((_ROOM, network.past_width), np.float32)
        self._sees = np.zeros((_ROOM, _ROOM), np.bool_)
        self._children: dict[tuple[int, int], int] = {}
        self.tokens: list[int] = []
        self.parents: list[int] = []
        self.log_probs: list[Floats] = []
        """of all tokens, after each row"""
        self.attention: list[Floats] = []
        """of each row, for the token after it; empty in models that do not show it"""
        self._places: list[int] = []

    def child(self, row: int, token: int) -> int | None:
        """The row that says a token after another row, where it was said before."""
        return self._children.get((row, token))

    def say(self, parents: Sequence[int], tokens: Sequence[int]) -> tuple[range, Floats]:
        """Say tokens, each after its parent, in one call of the network.

        Args:
            parents: ROOT, earlier rows, or rows of this same call, which are numbered on from the last one.
        Returns:
            The new rows and, for each, the log-probabilities of all next tokens.
        """
        known, count = len(self.tokens), len(tokens)
        self._make_room(known + count)
        for row, (parent, token) in enumerate(zip(parents, tokens, strict=True), known):
            if parent != ROOT:
                self._sees[row, :row] = self._sees[parent, :row]
            self._sees[row, row] = True
            self.tokens.append(token)
            self.parents.append(parent)
            self._places.append(0 if parent == ROOT else self._places[parent] + 1)
            self._children[parent, token] = row
        sees, past = self._sees[known : known + count, : known + count], self._past[:known]
        if known >= _FEW:
            needed = sees[:, :known].any(axis=0)
            if 2 * int(needed.sum()) < known:
                past = past[needed]
                sees = sees[:, np.concatenate([needed, np.ones(count, np.bool_)])]
        said = self._network.say(
            np.array(tokens, np.int64), np.array(self._places[known:], np.int64),
            np.where(sees, np.float32(0), _UNSEEN), past, self._memory,
        )  # fmt: skip
        self._past[known : known + count] = said.past
        self.log_probs.extend(said.log_probs)
        if said.attention is not None:
            self.attention.extend(said.attention)
        return range(known, known + count), said.log_probs

    def way_to(self, row: int) -> list[int]:
        """Rows from the one that says the direction to this one."""
        out = []
        while row != ROOT:
            out.append(row)
            row = self.parents[row]
        return out[::-1]

    def _make_room(self, rows: int) -> None:
        room = len(self._past)
        if rows <= room:
            return
        while room < rows:
            room *= 2
        known = len(self.tokens)
        past, sees = np.empty((room, self._past.shape[1]), np.float32), np.zeros((room, room), np.bool_)
        past[:known], sees[:known, :known] = self._past[:known], self._sees[:known, :known]
        self._past, self._sees = past, sees
