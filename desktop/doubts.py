"""Which symbols of a reading are doubtful, and what else each may be. No Qt.

What else a symbol may be comes from the other readings of the same line, then from the signs that hands mix up.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

from desktop.desk_line import DeskLine, State
from desktop.maths import DOUBT, tidy
from desktop.places import token_spans
from recognition.result import Box, Candidate, Token

__all__ = ["Doubt", "doubts_of", "marked_latex", "others_of", "range_of", "reading_of", "symbol_at", "with_other"]

SURE_SYMBOL = 0.9
"""A symbol of lower probability is underlined."""
_MOST_OTHERS = 8
_LOOK_ALIKE = (
    "0 o O 6 a", "1 l 7 | I /", "2 z Z", "4 y 9", "5 s S", "6 b G", "7 t", "8 B", "9 g q y", "+ t", "- =",
    r"x X \times", "n m r", "u v r", "w v", "c C (", "k K", r"p P \rho", r"a \alpha", r"B \beta", r"\le <",
    r"\ge >", ". ,", r"\theta 0", r"\pi n", r"\cdot .",
)  # fmt: skip
"""Signs that one hand writes like another's; common practice, no source."""
_GROUPS = tuple(tuple(group.split()) for group in _LOOK_ALIKE)
_OPERATIONS = frozenset({"+", "-", "=", "<", ">", r"\times", r"\cdot", r"\div", r"\pm", r"\le", r"\ge", r"\neq"})
_NOT_ALONE = frozenset({r"\frac", r"\sqrt", "^", "_", "{", "}", r"\left", r"\right", r"\text", "&", r"\\"})


@dataclass(frozen=True, slots=True)
class Doubt:
    """One symbol of a reading: its place among the tokens, its box on the page, and how sure it is."""

    place: int
    text: str
    probability: float
    box: Box


def reading_of(line: DeskLine) -> Candidate | None:
    """The candidate that the line's LaTeX is; None when it was typed."""
    return next((c for c in line.candidates if c.latex == line.latex and c.tokens), None)


def doubts_of(line: DeskLine) -> tuple[Doubt, ...]:
    """The doubtful symbols of a line that is not confirmed yet, from left to right."""
    if line.state is State.CONFIRMED:
        return ()
    return tuple(d for d in _symbols(line) if d.probability < SURE_SYMBOL)


def symbol_at(line: DeskLine, x: float, y: float, *, reach: float) -> Doubt | None:
    """The symbol nearest to a point of the page, no farther than the reach, in pixels of the page."""
    best, least = None, reach
    for symbol in _symbols(line):
        away = max(symbol.box.x - x, x - symbol.box.x - symbol.box.w, 0) + max(
            symbol.box.y - y, y - symbol.box.y - symbol.box.h, 0
        )
        if away < least or (away == least == 0 and best is None):
            best, least = symbol, away
    return best


def others_of(line: DeskLine, place: int) -> tuple[tuple[str, float], ...]:
    """What else a symbol may be, likeliest first, with the probability of the readings that have it, or 0."""
    reading = reading_of(line)
    if reading is None:
        return ()
    own = [token.text for token in reading.tokens]
    weights: dict[str, float] = {}
    for other in line.candidates:
        theirs = [token.text for token in other.tokens]
        for kind, a, b, c, d in SequenceMatcher(None, own, theirs, autojunk=False).get_opcodes():
            if kind == "replace" and b - a == d - c and a <= place < b:
                text = theirs[c + place - a]
                weights[text] = weights.get(text, 0.0) + other.probability
    for text in _look_alikes(own[place]):
        weights.setdefault(text, 0.0)
    weights.pop(own[place], None)
    ranked = sorted(weights.items(), key=lambda pair: -pair[1])
    return tuple(pair for pair in ranked if pair[0] not in _NOT_ALONE)[:_MOST_OTHERS]


def with_other(line: DeskLine, place: int, text: str) -> str:
    """The line's LaTeX with another symbol in that place, as one would type it."""
    reading = reading_of(line)
    assert reading is not None
    tokens = [token.text for token in reading.tokens]
    tokens[place] = text
    return tidy(" ".join(tokens))


def range_of(line: DeskLine, place: int) -> tuple[int, int] | None:
    """Where a symbol stands in the line's LaTeX as one would type it: a half-open range of characters."""
    reading = reading_of(line)
    if reading is None:
        return None
    written = token_spans(tidy(line.latex))
    own = [token.text for token in reading.tokens]
    matcher = SequenceMatcher(None, own, [text for text, _, _ in written], autojunk=False)
    for a, b, size in matcher.get_matching_blocks():
        if a <= place < a + size:
            _, start, end = written[b + place - a]
            return start, end
    return None


def marked_latex(line: DeskLine) -> str:
    """The line's LaTeX with its doubtful symbols underlined, for showing only."""
    reading = reading_of(line)
    doubtful = {doubt.place for doubt in doubts_of(line)}
    if reading is None or not doubtful:
        return line.latex
    return " ".join(
        _marked(reading.tokens, place) if place in doubtful else token.text
        for place, token in enumerate(reading.tokens)
    )


def _marked(tokens: Sequence[Token], place: int) -> str:
    text = tokens[place].text
    marked = rf"\textcolor{{{DOUBT}}}{{\underline{{{text}}}}}"
    if text not in _OPERATIONS:
        return marked
    is_first = place == 0 or tokens[place - 1].text in {*_OPERATIONS, "(", "[", "{"}
    return marked if is_first else rf"\; {marked} \;"


def _symbols(line: DeskLine) -> list[Doubt]:
    reading = reading_of(line)
    if reading is None:
        return []
    return [
        Doubt(place, token.text, token.probability, token.box)
        for place, token in enumerate(reading.tokens)
        if token.box is not None and token.text not in _NOT_ALONE
    ]


def _look_alikes(text: str) -> list[str]:
    alike: list[str] = []
    for group in _GROUPS:
        if text in group:
            alike += [sign for sign in group if sign != text and sign not in alike]
    return alike
