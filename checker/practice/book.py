"""The exercise book: lines are written into it one by one, and at one of them a slip may be planted."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Generic, TypeVar

from checker.practice.terms import Term, same_value, write_sum

__all__ = [
    "MISSING",
    "Book",
    "Degenerate",
    "Draft",
    "Planted",
    "dropped",
    "flipped",
    "mistaken",
    "near",
    "sum_draft",
    "with_slip",
]

MISSING = "(missing)"
P = TypeVar("P")


class Degenerate(Exception):
    """The numbers drawn give nothing to write; draw again."""


@dataclass(frozen=True, slots=True)
class Planted:
    """The truth about a planted slip; `span` is half-open and empty where a term is missing."""

    kind: str
    term: str
    span: tuple[int, int]
    should_be: str


@dataclass(frozen=True, slots=True)
class Draft(Generic[P]):
    """A line that could be written, what it holds for the lines after it, and its slip."""

    text: str
    holds: P
    slip: Planted | None = None


class Book:
    """Collects lines; writes the slipped draft at one step when told to.

    Args:
        draws: the source of all random choices of the working.
        plant: number of the step that slips and the number of its slip, or None for a right working.
    """

    def __init__(self, draws: random.Random, plant: tuple[int, int] | None = None) -> None:
        self.draws = draws
        self.lines: list[str] = []
        self.offered: list[tuple[str, ...]] = []
        self.slip: tuple[int, Planted] | None = None
        self._plant = plant

    def start(self, text: str) -> None:
        self.lines.append(text)

    def write(self, right: Draft[P], slips: Sequence[Draft[P]] = ()) -> P:
        """Write the next line, and return what it holds, right or wrong."""
        if right.text == self.lines[-1]:
            return right.holds
        step = len(self.offered)
        self.offered.append(tuple(draft.slip.kind for draft in slips if draft.slip is not None))
        chosen = right
        if self._plant is not None and self._plant[0] == step:
            chosen = slips[self._plant[1]]
            if chosen.slip is not None:
                self.slip = (len(self.lines), chosen.slip)
        self.lines.append(chosen.text)
        return chosen.holds


def sum_draft(terms: Sequence[Term], prefix: str = "=", suffix: str = "") -> Draft[list[Term]]:
    text, _ = write_sum(terms)
    return Draft(prefix + text + suffix, list(terms))


def with_slip(
    kind: str, right: Sequence[Term], wrong: Sequence[Term], index: int, prefix: str = "=", suffix: str = ""
) -> list[Draft[list[Term]]]:
    """The draft where term `index` is wrong, or nothing when the wrong line could not be told from a right one."""
    if same_value(right, wrong) or any(not term.coefficient for term in wrong) or not wrong:
        return []
    text, spans = write_sum(wrong, len(prefix))
    start, end = spans[index]
    should_be = right[index].signed() if index else right[index].write()
    whole = prefix + text + suffix
    return [Draft(whole, list(wrong), Planted(kind, whole[start:end], (start, end), should_be))]


def flipped(
    kind: str, terms: Sequence[Term], index: int, prefix: str = "=", suffix: str = ""
) -> list[Draft[list[Term]]]:
    """Term `index` with the other sign."""
    return mistaken(kind, terms, index, -terms[index], prefix, suffix)


def mistaken(
    kind: str, terms: Sequence[Term], index: int, instead: Term, prefix: str = "=", suffix: str = ""
) -> list[Draft[list[Term]]]:
    """Term `index` written as another term."""
    return with_slip(kind, terms, [*terms[:index], instead, *terms[index + 1 :]], index, prefix, suffix)


def dropped(
    kind: str, terms: Sequence[Term], indices: Sequence[int], prefix: str = "=", suffix: str = ""
) -> list[Draft[list[Term]]]:
    """The line without the terms at `indices`."""
    kept = [term for index, term in enumerate(terms) if index not in indices]
    if same_value(kept, terms) or not kept or _letters(kept) != _letters(terms):
        return []
    text, _ = write_sum(kept)
    place = len(prefix) + len(text)
    missing = "".join(terms[index].signed() for index in indices)
    return [Draft(prefix + text + suffix, kept, Planted(kind, MISSING, (place, place), missing))]


def _letters(terms: Sequence[Term]) -> set[str]:
    return {letter for term in terms for letter, _ in term.powers}


def near(draws: random.Random, value: Fraction) -> Fraction:
    """A wrong value of the size and sign of the right one, as a slip in arithmetic gives."""
    step = Fraction(draws.choice([1, 1, 2, 10] if abs(value) > 11 else [1, 1, 2]))
    moved = value + step if draws.random() < 0.5 else value - step
    return moved if moved * value > 0 else value + (step if value > 0 else -step)
