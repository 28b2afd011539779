"""One written line as it lies on the desk: its readings, its state, and the user's word on it. No Qt."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from desktop.language import tr_later
from recognition.result import Box, Candidate, Line

__all__ = [
    "STATE_WORDS", "SURE", "DeskLine", "LineMark", "Lines", "Override", "State", "desk_line", "weighed_by_hand",
    "with_readings",
]  # fmt: skip

SURE = 0.75
"""A reading of at least this probability is "read"; one below it is "doubtful" and is shown first.

A misreading that passes for read can accuse right working, so the line is drawn where most wrong readings lie below it,
at the price of more lines to look at. Measured with the weights of version 1 on 250 random school lines, each in the
ink of many writers of CROHME 2014, as pictures: 37 % of the lines lay below it and held 80 % of the 44 wrong readings
(0.46: 15 % and 50 %; 0.60: 24 % and 57 %; 0.90: 56 % and 93 %).
"""


class State(StrEnum):
    """How far a line has come: nothing read, read but unsure, read, or seen by the user."""

    UNREAD = "unread"
    DOUBTFUL = "doubtful"
    READ = "read"
    CONFIRMED = "confirmed"


@dataclass(frozen=True, slots=True)
class Override:
    """The user's own word on a line, which stands above the checker's."""

    is_right: bool
    note: str = ""


@dataclass(frozen=True, slots=True)
class LineMark:
    """A mark that the teacher writes beside a line, such as M1: its letter, what it is worth, what was given."""

    kind: str
    worth: int = 1
    given: int = 1

    def __post_init__(self) -> None:
        if self.kind not in ("M", "A", "B") or not 1 <= self.worth <= 9 or not 0 <= self.given <= self.worth:
            raise ValueError(f"no mark: {self.kind}{self.worth}, {self.given} given")


@dataclass(frozen=True, slots=True)
class DeskLine:
    """One written line as it lies on the desk.

    working, goes_on: what the layout of the page tells: the number of the line's working, and whether the line
        carries on the one before it, which was too long; None where no layout was looked at.
    starts_working, carries_on: the user's own word on where a working starts and on whether the line carries on the
        one before it; None leaves it to the layout.
    override: the user's own word on whether the line is right; None leaves it to the checker.
    marks: what the teacher awards beside this line.
    as_read: the readings before confirmed lines of the same hand weighed them; none where nothing did.
    """

    box: Box
    candidates: tuple[Candidate, ...] = ()
    latex: str = ""
    state: State = State.UNREAD
    struck_out: bool = False
    polygon: tuple[tuple[float, float], ...] = ()
    starts_working: bool | None = None
    override: Override | None = None
    marks: tuple[LineMark, ...] = ()
    working: int | None = None
    goes_on: bool = False
    carries_on: bool | None = None
    as_read: tuple[Candidate, ...] = ()

    @property
    def probability(self) -> float:
        """How sure the reading is, 0 to 1; a confirmed line is certain, an unread one is 0."""
        if self.state is State.CONFIRMED:
            return 1.0
        return next((c.probability for c in self.candidates if c.latex == self.latex), 0.0)

    @property
    def other_by_hand(self) -> str:
        """The reading that the hand of confirmed lines speaks for, against what was read; empty for none."""
        if self.state is State.CONFIRMED or not self.as_read or not self.candidates:
            return ""
        likeliest = max(self.candidates, key=lambda candidate: candidate.probability).latex
        return likeliest if likeliest != self.as_read[0].latex else ""

    @property
    def is_blank(self) -> bool:
        return not self.latex.strip()


STATE_WORDS = {
    State.UNREAD: tr_later("unread"), State.DOUBTFUL: tr_later("doubtful"), State.READ: tr_later("read"),
    State.CONFIRMED: tr_later("confirmed"),
}  # fmt: skip
"""What the states are called, to be shown with `tr`."""

Lines = tuple[DeskLine, ...]


def desk_line(line: Line) -> DeskLine:
    """Lay a line that was found on a page on the desk, with its best reading."""
    return with_readings(DeskLine(box=line.box, struck_out=line.struck_out, polygon=line.polygon), line.candidates)


def weighed_by_hand(line: DeskLine, candidates: tuple[Candidate, ...], *, keeps_first: bool) -> DeskLine:
    """A line with its readings weighed by confirmed lines of the same hand; a confirmed line stays as it is.

    A line that reads otherwise then is doubtful, so that the user looks at it.

    Args:
        candidates: best first; those that were read take the weighing back.
        keeps_first: the user looks at the line, so its reading stays and the other one is offered next.
    """
    read = line.as_read or line.candidates
    if line.state is State.CONFIRMED or not read or not candidates:
        return line
    if candidates == read:
        return replace(with_readings(line, read), as_read=()) if line.as_read else line
    if candidates[0].latex == read[0].latex:
        return replace(with_readings(line, read), candidates=candidates, as_read=read)
    if keeps_first:
        kept = next((c for c in candidates if c.latex == line.latex), candidates[0])
        candidates = (kept, *(c for c in candidates if c is not kept))
    return replace(
        line, candidates=candidates, latex=candidates[0].latex, state=State.DOUBTFUL, as_read=read
    )


def with_readings(line: DeskLine, candidates: tuple[Candidate, ...]) -> DeskLine:
    if not candidates or not candidates[0].latex.strip():
        return replace(line, candidates=candidates)
    best = candidates[0]
    state = State.READ if best.probability >= SURE else State.DOUBTFUL
    return replace(line, candidates=candidates, latex=best.latex, state=state)
