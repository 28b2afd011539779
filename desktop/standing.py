"""Who said which way up a page stands: the writing itself, or the user, who turned it. No Qt."""

from __future__ import annotations

from enum import StrEnum

__all__ = ["Standing", "standing_of"]


class Standing(StrEnum):
    """By whose word the page stands as it does; the values are those in a set's file."""

    AS_FOUND = ""
    TURNED = "turned"
    """The user turned it, and its lines are not found yet."""
    BY_HAND = "by hand"
    """The user turned it, and its lines were found then."""


def standing_of(text: str) -> Standing:
    """The standing that a set's file tells of; of one that is not known, that of the writing."""
    return Standing(text) if text in set(Standing) else Standing.AS_FOUND
