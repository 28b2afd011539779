"""What can be said of one step, and what is known when it is judged."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from checker.accuracy import Accuracy
from checker.budget import Budget
from checker.knowledge import NOTHING, Knowledge
from checker.report import Task
from checker.syntax import Node, Statement, letters

__all__ = ["Kind", "Known", "Outcome", "point_text", "undecided", "unknowns_of", "witness_json"]

_CONSTANTS = frozenset({"pi", "i"})

Kind = Literal["follows", "loses", "adds", "slip", "undecided"]


@dataclass(frozen=True, slots=True)
class Outcome:
    """One step judged.

    Args:
        kind: the verdict on the step alone.
        reason: one or two plain sentences; may be empty when it simply follows.
        witness: values of letters that show it.
        used: indices of further lines that were needed.
        is_soft: for undecided: a value or another line seems to have been used, or it is only the notation; for
            follows: it is a new condition, taken as given.
    """

    kind: Kind
    reason: str = ""
    witness: Mapping[str, str] | None = None
    used: tuple[int, ...] = ()
    is_soft: bool = False


@dataclass(frozen=True, slots=True)
class Known:
    """What is known when a step is judged.

    Args:
        budget: time left for the whole working.
        task: what was asked.
        givens: statements taken as true.
        euler: is e the base of natural logarithms?
        complex_numbers: has i appeared?
        unknown: the letter that the working solves for, when it is clear.
        knowledge: what the lines so far say of functions, sequences and letters.
        degrees: are angles in degrees? None when nothing tells.
        accuracy: when the line states one.
    """

    budget: Budget
    task: Task | None = None
    givens: tuple[Statement, ...] = ()
    euler: bool = False
    complex_numbers: bool = False
    unknown: str | None = None
    knowledge: Knowledge = NOTHING
    degrees: bool | None = None
    accuracy: Accuracy | None = None


def undecided(reason: str, *, is_soft: bool = False) -> Outcome:
    return Outcome("undecided", reason, is_soft=is_soft)


def unknowns_of(part: Node | Statement, known: Known) -> frozenset[str]:
    """The letters that stand for unknown numbers."""
    return letters(part) - _CONSTANTS - ({"e"} if known.euler else set())


def witness_json(point: Mapping[str, Fraction]) -> dict[str, str]:
    return {name: str(value) for name, value in sorted(point.items())}


def point_text(point: Mapping[str, object]) -> str:
    """x = 1 and y = 2."""
    return " and ".join(f"{name} = {value}" for name, value in sorted(point.items()))
