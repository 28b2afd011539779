"""What was found on a page: the contract of `python -m recognition read`."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, NamedTuple

__all__ = ["Box", "Candidate", "Line", "Page", "Tick", "Token", "no_tick"]

Tick = Callable[[int, int], None]
"""Called with (done, total) between pieces of a long job; raises Cancelled to stop it."""


def no_tick(done: int, total: int) -> None:
    """Take no notice of progress."""


class Box(NamedTuple):
    """Upright box in pixels of the original image, origin top left."""

    x: int
    y: int
    w: int
    h: int


@dataclass(frozen=True, slots=True)
class Token:
    """One token of a reading; box is None for tokens without ink of their own, such as braces."""

    text: str
    probability: float
    box: Box | None = None


@dataclass(frozen=True, slots=True)
class Candidate:
    """One reading of a line: canonical LaTeX, tokens separated by blanks.

    struck: where ink stands that the reading leaves out, such as a symbol that was crossed out.
    """

    latex: str
    probability: float
    tokens: tuple[Token, ...] = ()
    struck: tuple[Box, ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """One written line; candidates best first (empty when nothing could be read).

    polygon: corners in pixels of the original, clockwise from the top left.
    """

    box: Box
    candidates: tuple[Candidate, ...]
    struck_out: bool = False
    polygon: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Page:
    """The lines of one page, in reading order; size is (width, height) of the original in pixels."""

    file: str
    page: int
    size: tuple[int, int]
    lines: tuple[Line, ...]

    def to_json(self) -> dict[str, Any]:
        return {
            "file": self.file, "page": self.page, "size": list(self.size),
            "lines": [_line_json(line) for line in self.lines],
        }


def _line_json(line: Line) -> dict[str, Any]:
    return {
        "box": list(line.box),
        "struck_out": line.struck_out,
        "candidates": [_candidate_json(candidate) for candidate in line.candidates],
    }


def _candidate_json(candidate: Candidate) -> dict[str, Any]:
    return {
        "latex": candidate.latex,
        "probability": round(candidate.probability, 4),
        "tokens": [
            {
                "text": token.text, "probability": round(token.probability, 4),
                "box": None if token.box is None else list(token.box),
            }
            for token in candidate.tokens
        ],
        **({"struck": [list(box) for box in candidate.struck]} if candidate.struck else {}),
    }
