"""A proposal: what to change in the written line, what kind of slip that makes it, and how likely it is."""

from __future__ import annotations

from dataclasses import dataclass

from checker.slips.leaves import Edit
from checker.syntax.tree import Span

__all__ = ["MISSING", "Proposal"]

MISSING = "(missing)"


@dataclass(frozen=True, slots=True)
class Proposal:
    """One explanation, to be verified by judging the line with its edits.

    Args:
        cost: the lower, the likelier; about 1 for one common slip, 2 for an odd one, 3 and more for two at once.
        kind: a stable hyphenated name.
        span: the wrong term in the line, empty where one is missing.
        should_be: what to write instead, with its sign.
        because: a plain sentence without a full stop.
        edits: all changes that make the line right.
    """

    cost: float
    kind: str
    span: Span
    should_be: str
    because: str
    edits: tuple[Edit, ...]
