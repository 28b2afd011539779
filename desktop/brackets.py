"""Which brackets of a LaTeX line belong together, and which have no partner. No Qt."""

from __future__ import annotations

__all__ = ["lonely", "partners"]

_CLOSING = {")": "(", "]": "[", "}": "{"}


def partners(text: str) -> dict[int, int]:
    """For each bracket with a partner, the place of that partner; both ways."""
    pairs, _ = _matched(text)
    return pairs


def lonely(text: str) -> tuple[int, ...]:
    """The places of brackets without a partner."""
    _, alone = _matched(text)
    return alone


def _matched(text: str) -> tuple[dict[int, int], tuple[int, ...]]:
    pairs: dict[int, int] = {}
    open_ones: list[int] = []
    alone: list[int] = []
    for place, sign in enumerate(text):
        if place and text[place - 1] == "\\" and sign in "{}":
            continue  # a brace that is written, not one of LaTeX's own
        if sign in "([{":
            open_ones.append(place)
        elif sign in _CLOSING:
            if open_ones and text[open_ones[-1]] == _CLOSING[sign]:
                partner = open_ones.pop()
                pairs[partner], pairs[place] = place, partner
            else:
                alone.append(place)
    return pairs, tuple(sorted((*alone, *open_ones)))
