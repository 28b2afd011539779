"""Conditions that only bound a letter: x > 0, 0 <= x < 360, x is a whole number."""

from __future__ import annotations

from checker.solutions import links
from checker.syntax import (
    Chain,
    Relation,
    Statement,
    System,
)

__all__ = ["is_limit"]


def is_limit(given: Statement) -> bool:
    """A given such as x > 0, 0 <= x < 360 or "x is a whole number", which bounds every set alike."""
    signs = [sign for _, sign, _ in links(given)]
    return isinstance(given, Relation | Chain | System) and bool(signs) and all(
        sign in ("<", ">", "\\le", "\\ge", "\\ne", "\\in") for sign in signs
    )
