"""How each verdict looks and what it is called: a shape, a word and a colour of its own. No Qt.

The dark colours stand on white paper or a white halo, the light ones on a dark window; each has at least
4.5:1 against its ground (WCAG 2.2, success criteria 1.4.3 and 1.4.11), and no two verdicts share a shape or a word.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from checker.report import VERDICTS
from desktop.language import tr

__all__ = [
    "CARRIED_ON", "CHECK_READING", "CLAIM_FALSE", "CLAIM_TRUE", "DECLARED_RIGHT", "DECLARED_WRONG", "STYLES", "Shape",
    "VerdictStyle", "contrast", "style_of",
]


class Shape(StrEnum):
    """The outline of a mark."""

    DOT = "dot"
    TICK = "tick"
    CROSS_DISC = "cross in a disc"
    ARROW_FRAME = "arrow in a frame"
    RING_TICK = "tick in a ring"
    DOWN = "minus in a triangle pointing down"
    UP = "plus in a triangle pointing up"
    DIAMOND = "question mark in a diamond"
    DASHED = "dashed frame"
    BAR = "bar"
    LENS = "lens"
    SHIELD_TICK = "tick in a shield"
    SHIELD_CROSS = "cross in a shield"
    THREE_BARS = "three bars"
    STRUCK_BARS = "three bars struck through"
    HOOK = "arrow round a corner"


@dataclass(frozen=True, slots=True)
class VerdictStyle:
    """Word, the word on the picture where room is short, shape, and the two colours (#rrggbb) of a verdict."""

    english: str
    english_short: str
    shape: Shape
    on_light: str
    on_dark: str

    @property
    def word(self) -> str:
        """The word in the user's language."""
        return tr(self.english)

    @property
    def short(self) -> str:
        """The word where room is short, in the user's language."""
        return tr(self.english_short)


STYLES: dict[str, VerdictStyle] = {
    "start": VerdictStyle("as given", "as given", Shape.DOT, "#55595E", "#B4BAC2"),
    "follows": VerdictStyle("follows", "follows", Shape.TICK, "#1C6B3C", "#7FD8A0"),
    "slip": VerdictStyle("does not follow", "does not follow", Shape.CROSS_DISC, "#B01030", "#FF9AA8"),
    "ft": VerdictStyle("follows from the slip (ft)", "ft", Shape.ARROW_FRAME, "#1F4E9E", "#9CC2FF"),
    "back": VerdictStyle("back on track", "back on track", Shape.RING_TICK, "#0B6670", "#7EDBE6"),
    "loses": VerdictStyle("loses solutions", "loses solutions", Shape.DOWN, "#8A3FA0", "#E3A8F2"),
    "adds": VerdictStyle("adds solutions", "adds solutions", Shape.UP, "#8F4700", "#FFBE7A"),
    "undecided": VerdictStyle("undecided", "undecided", Shape.DIAMOND, "#5A4A8A", "#C5B8F5"),
    "unreadable": VerdictStyle("not read", "not read", Shape.DASHED, "#4E5358", "#C3C8CE"),
    "note": VerdictStyle("note", "note", Shape.BAR, "#5C5C4A", "#C9C9B4"),
}

CHECK_READING = VerdictStyle("check the reading first", "check reading", Shape.LENS, "#7A5200", "#F2CB6B")
"""For a flagged line that may only be misread: it is not called a slip."""

DECLARED_RIGHT = VerdictStyle("declared right", "declared right", Shape.SHIELD_TICK, "#175A33", "#92E0AF")
DECLARED_WRONG = VerdictStyle("declared wrong", "declared wrong", Shape.SHIELD_CROSS, "#931029", "#FFABB6")
"""The user's own word, which stands above the checker's."""

CLAIM_TRUE = VerdictStyle("true for all values", "identity", Shape.THREE_BARS, "#26603F", "#86D3A6")
CLAIM_FALSE = VerdictStyle("not true for all values", "no identity", Shape.STRUCK_BARS, "#A3132F", "#FFA0AD")
"""For a line that claims to hold whatever the letters are."""

CARRIED_ON = VerdictStyle("part of a long line", "part of a line", Shape.HOOK, "#555B63", "#B9BFC6")
"""For a line that says one thing together with the line above or below, where the verdict on both stands."""

assert set(STYLES) == set(VERDICTS)


def style_of(verdict: str, *, check_reading: bool = False) -> VerdictStyle:
    """The look of a verdict; of a slip whose reading should be checked first, the look of that."""
    return CHECK_READING if check_reading and verdict == "slip" else STYLES[verdict]


def contrast(one: str, other: str) -> float:
    """Contrast ratio of two colours, 1 to 21.

    Source: WCAG 2.2, definitions of "contrast ratio" and "relative luminance".
    """
    light, dark = sorted((_luminance(one), _luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
