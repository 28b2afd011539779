"""Correct the lines that were found: split, merge, add, drop, reorder, redraw. Only touched lines are read again.

Every function takes the lines as they are, `LineCrop`, `InkLine` or anything else with a box and a polygon, and leaves
them alone. It gives a `Correction`: for each line afterwards the number of the line it was, or a new crop to be read.

    cutter = LineCutter.of(image)                # or InkCutter(strokes_to_lines(ink)); once a page
    change = split(lines, 2, ((310, 80), (312, 140)), cutter)
    again = reader.read([change.lines[number] for number in change.read_again])
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Generic, Protocol, TypeVar

from recognition.errors import InputError
from recognition.outline import Cut, Outline
from recognition.result import Box

__all__ = ["Correction", "Cutter", "OutlinedLine", "add", "drop", "merge", "redraw", "reorder", "split"]


class OutlinedLine(Protocol):
    """A line with its place on the original; the polygon may be empty."""

    @property
    def box(self) -> Box: ...

    @property
    def polygon(self) -> tuple[tuple[float, float], ...]: ...


Crop = TypeVar("Crop")
CropOut = TypeVar("CropOut", covariant=True)


class Cutter(Protocol[CropOut]):
    """Cuts lines out of one page: `recognition.page.LineCutter`, `recognition.ink.InkCutter`."""

    def within(self, outline: Outline) -> CropOut: ...

    def apart(self, outline: Outline, cut: Cut, others: Sequence[Outline] = ()) -> tuple[CropOut, CropOut]: ...

    def together(self, outlines: Sequence[Outline], others: Sequence[Outline] = ()) -> CropOut: ...

    def place(self, outline: Outline, others: Sequence[Outline]) -> int: ...


@dataclass(frozen=True, slots=True)
class Correction(Generic[Crop]):
    """lines: for each line after the correction the number of the line it was before, or its new crop."""

    lines: tuple[int | Crop, ...]

    @property
    def read_again(self) -> tuple[int, ...]:
        """Numbers of the lines after the correction that have to be read."""
        return tuple(number for number, line in enumerate(self.lines) if not isinstance(line, int))


def split(lines: Sequence[OutlinedLine], number: int, cut: Cut, cutter: Cutter[Crop]) -> Correction[Crop]:
    """Part a line in two along a straight cut: the upper (or left) part keeps the place, the other follows.

    Raises:
        InputError: the cut leaves one side without writing.
    """
    _check(lines, number)
    first, second = cutter.apart(_outline(lines[number]), cut, _others(lines, (number,)))
    kept = range(len(lines))
    return Correction((*kept[:number], first, second, *kept[number + 1 :]))


def merge(lines: Sequence[OutlinedLine], numbers: Sequence[int], cutter: Cutter[Crop]) -> Correction[Crop]:
    """Make one line of several; it stands where the first of them stood."""
    _check(lines, *numbers)
    joined = sorted(set(numbers))
    if len(joined) < 2:
        raise InputError("One line alone cannot be merged. Choose the lines that belong together.")
    crop = cutter.together([_outline(lines[n]) for n in joined], _others(lines, joined))
    after: list[int | Crop] = []
    for number in range(len(lines)):
        if number == joined[0]:
            after.append(crop)
        elif number not in joined:
            after.append(number)
    return Correction(tuple(after))


def add(
    lines: Sequence[OutlinedLine], outline: Outline, cutter: Cutter[Crop], *, at: int | None = None
) -> Correction[Crop]:
    """Take what is within an outline as a new line.

    Args:
        outline: drawn by the user. Ink within it counts, also what is within another line's outline.
        at: number of the new line; None puts it where it would be read.
    """
    crop = cutter.within(outline)
    if at is None:
        at = cutter.place(outline, _others(lines, ()))
    if not 0 <= at <= len(lines):
        raise IndexError(f"no place {at} among {len(lines)} lines")
    kept = range(len(lines))
    return Correction((*kept[:at], crop, *kept[at:]))


def drop(lines: Sequence[OutlinedLine], numbers: Sequence[int]) -> Correction[Crop]:
    """Leave lines out."""
    _check(lines, *numbers)
    return Correction(tuple(n for n in range(len(lines)) if n not in set(numbers)))


def reorder(lines: Sequence[OutlinedLine], order: Sequence[int]) -> Correction[Crop]:
    """Put the lines in another order; `order` names every line once."""
    if sorted(order) != list(range(len(lines))):
        raise IndexError("the new order names each line exactly once")
    return Correction(tuple(order))


def redraw(
    lines: Sequence[OutlinedLine], number: int, outline: Outline, cutter: Cutter[Crop]
) -> Correction[Crop]:
    """Give a line another outline."""
    _check(lines, number)
    kept = range(len(lines))
    return Correction((*kept[:number], cutter.within(outline), *kept[number + 1 :]))


def _outline(line: OutlinedLine) -> Outline:
    return line.polygon if len(line.polygon) >= 3 else line.box


def _others(lines: Sequence[OutlinedLine], left_out: Sequence[int]) -> list[Outline]:
    return [_outline(line) for number, line in enumerate(lines) if number not in left_out]


def _check(lines: Sequence[OutlinedLine], *numbers: int) -> None:
    for number in numbers:
        if not 0 <= number < len(lines):
            raise IndexError(f"no line {number} among {len(lines)} lines")
