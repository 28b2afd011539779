"""Where on the page is a part of a line's LaTeX?"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from difflib import SequenceMatcher

from desktop.desk_line import DeskLine
from recognition.result import Box, Candidate, Token

__all__ = ["box_around", "span_box", "token_spans"]

_TOKEN = re.compile(r"\\text\s*\{[^{}]*\}|\\[a-zA-Z]+|\\.|\S")
_SAME = {r"\leq": r"\le", r"\geq": r"\ge", r"\neq": r"\ne", r"\dfrac": r"\frac", r"\tfrac": r"\frac"}


def token_spans(latex: str) -> tuple[tuple[str, int, int], ...]:
    """Cut LaTeX into tokens, each with the half-open range of characters where it stands."""
    return tuple(
        (_SAME.get(text := re.sub(r"\s", "", m.group()), text), m.start(), m.end()) for m in _TOKEN.finditer(latex)
    )


def span_box(line: DeskLine, span: tuple[int, int]) -> Box | None:
    """The box on the page of a range of characters of a line's LaTeX.

    A line that the user corrected keeps the places of the symbols that were not changed; a symbol put for
    another takes its place.

    Args:
        line: the line with its candidates, whose tokens carry boxes.
        span: half-open range of characters of `line.latex`.
    Returns:
        The box around the ink of those characters; None when no token of the range has a place.
    """
    candidate = _nearest(line)
    if candidate is None:
        return None
    written = token_spans(line.latex)
    boxes = _aligned_boxes([text for text, _, _ in written], candidate.tokens)
    start, end = span
    inside = [box for box, (_, a, b) in zip(boxes, written, strict=True) if box is not None and a < end and b > start]
    return box_around(inside)


def box_around(boxes: Iterable[Box]) -> Box | None:
    """The smallest box that holds all of them; None for none."""
    every = list(boxes)
    if not every:
        return None
    left, top = min(b.x for b in every), min(b.y for b in every)
    right, bottom = max(b.x + b.w for b in every), max(b.y + b.h for b in every)
    return Box(left, top, right - left, bottom - top)


def _nearest(line: DeskLine) -> Candidate | None:
    located = [c for c in line.candidates if any(token.box is not None for token in c.tokens)]
    if not located:
        return None
    same = [c for c in located if c.latex == line.latex]
    if same:
        return same[0]
    wanted = [text for text, _, _ in token_spans(line.latex)]

    def likeness(candidate: Candidate) -> float:
        return SequenceMatcher(None, wanted, [_text(token) for token in candidate.tokens], autojunk=False).ratio()

    return max(located, key=likeness)


def _aligned_boxes(written: Sequence[str], tokens: Sequence[Token]) -> list[Box | None]:
    boxes: list[Box | None] = [None] * len(written)
    matcher = SequenceMatcher(None, written, [_text(token) for token in tokens], autojunk=False)
    for kind, a, b, c, d in matcher.get_opcodes():
        if kind == "equal" or (kind == "replace" and b - a == d - c):
            for offset in range(b - a):
                boxes[a + offset] = tokens[c + offset].box
        elif kind == "replace":
            whole = box_around(token.box for token in tokens[c:d] if token.box is not None)
            boxes[a:b] = [whole] * (b - a)
    return boxes


def _text(token: Token) -> str:
    text = re.sub(r"\s", "", token.text)
    return _SAME.get(text, text)
