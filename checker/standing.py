"""What stands while a working is walked: statements of lines judged, each with its step."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from checker.outcome import Outcome
from checker.report import Verdict
from checker.substitution import solved_for
from checker.syntax import Statement, letters

__all__ = ["Entry", "Family", "Step", "resting_on"]

Family = Literal["sound", "slip"]


@dataclass(frozen=True, slots=True)
class Entry:
    """A statement that stands on a line, and whether it came before or after a slip."""

    index: int
    statement: Statement
    family: Family
    is_start: bool = False


@dataclass(frozen=True, slots=True)
class Step:
    """One line judged: verdict, the line it came from, and why.

    Args:
        verdict, source, outcome: as reported; source is a line number.
        part: the statement of the line that the verdict is on.
        before: the entries that stood before that statement, the nearest last.
    """

    verdict: Verdict
    source: int | None
    outcome: Outcome
    part: Statement
    before: tuple[Entry, ...] = ()


def resting_on(entry: Entry, part: Statement, entries: Sequence[Entry]) -> Entry:
    """The line that a line with a value put in rests on: the one that gave the value, where that one is wrong."""
    put_in = letters(entry.statement) - letters(part)
    told = [one for one in entries if (solved := solved_for(one.statement)) and solved[0] in put_in]
    return told[-1] if told and told[-1].family == "slip" else entry
