"""How far apart are two readings?"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TypeVar

__all__ = ["edit_distance"]

Token = TypeVar("Token")


def edit_distance(first: Sequence[Token], second: Sequence[Token]) -> int:
    """Least number of tokens to insert, delete or replace (Levenshtein 1966)."""
    row = list(range(len(second) + 1))
    for i, one in enumerate(first, 1):
        diagonal, row[0] = row[0], i
        for j, other in enumerate(second, 1):
            diagonal, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, diagonal + (one != other))
    return row[-1]
