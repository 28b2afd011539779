"""Changes to the lines of a page; doing one gives its inverse. No Qt."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Protocol

from desktop.desk_line import DeskLine, Lines, State
from desktop.language import tr_later

__all__ = [
    "CarryOn", "Change", "ConfirmAll", "InsertLine", "MarkStart", "RemoveLine", "SetReading", "StrikeOut",
    "changed",
]  # fmt: skip


class Change(Protocol):
    """A change to the lines: what it is called in the menu, and how it is done; doing it gives its inverse."""

    @property
    def name(self) -> str: ...

    def apply(self, lines: Lines) -> tuple[Lines, Change]: ...


@dataclass(frozen=True, slots=True)
class SetReading:
    """Say what a line says."""

    index: int
    latex: str
    state: State = State.CONFIRMED
    name: str = tr_later("Confirm reading")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        old = lines[self.index]
        new = changed(lines, self.index, latex=self.latex, state=self.state)
        return new, SetReading(self.index, old.latex, old.state, self.name)


@dataclass(frozen=True, slots=True)
class ConfirmAll:
    """Confirm several readings as they stand."""

    indices: tuple[int, ...]
    name: str = tr_later("Confirm all that are sure")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        chosen = set(self.indices)
        new = tuple(replace(ln, state=State.CONFIRMED) if i in chosen else ln for i, ln in enumerate(lines))
        return new, _SetStates(tuple((i, lines[i].latex, lines[i].state) for i in self.indices), self.name)


@dataclass(frozen=True, slots=True)
class _SetStates:
    """Lines by their index, with the reading and the state that each had: it may have been weighed anew since."""

    states: tuple[tuple[int, str, State], ...]
    name: str

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        new = list(lines)
        for i, latex, state in self.states:
            new[i] = replace(lines[i], latex=latex, state=state)
        return tuple(new), _SetStates(tuple((i, lines[i].latex, lines[i].state) for i, _, _ in self.states), self.name)


@dataclass(frozen=True, slots=True)
class StrikeOut:
    """Leave a line out of the working, or take it in again."""

    index: int
    struck_out: bool

    @property
    def name(self) -> str:
        return tr_later("Leave line out") if self.struck_out else tr_later("Take line in")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        old = lines[self.index]
        new = changed(lines, self.index, struck_out=self.struck_out)
        return new, StrikeOut(self.index, old.struck_out)


@dataclass(frozen=True, slots=True)
class MarkStart:
    """Say whether a working starts at a line."""

    index: int
    starts_working: bool | None
    name: str = tr_later("Change where a working starts")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        old = lines[self.index]
        new = changed(lines, self.index, starts_working=self.starts_working)
        return new, MarkStart(self.index, old.starts_working, self.name)


@dataclass(frozen=True, slots=True)
class CarryOn:
    """Say whether a line carries on the one before it, with which it then says one thing."""

    index: int
    carries_on: bool | None
    starts_working: bool | None
    name: str = tr_later("Change where a line carries on")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        old = lines[self.index]
        new = changed(lines, self.index, carries_on=self.carries_on, starts_working=self.starts_working)
        return new, CarryOn(self.index, old.carries_on, old.starts_working, self.name)


@dataclass(frozen=True, slots=True)
class InsertLine:
    """Put a line in before the line of that index."""

    index: int
    line: DeskLine
    name: str = tr_later("Add line")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        if not 0 <= self.index <= len(lines):
            raise IndexError(self.index)
        return (*lines[: self.index], self.line, *lines[self.index :]), RemoveLine(self.index, self.name)


@dataclass(frozen=True, slots=True)
class RemoveLine:
    """Take a line off the page."""

    index: int
    name: str = tr_later("Remove line")

    def apply(self, lines: Lines) -> tuple[Lines, Change]:
        old = lines[self.index]
        return (*lines[: self.index], *lines[self.index + 1 :]), InsertLine(self.index, old, self.name)


def changed(lines: Lines, index: int, **fields: object) -> Lines:
    """The lines with some fields of one of them set."""
    return (*lines[:index], replace(lines[index], **fields), *lines[index + 1 :])  # type: ignore[arg-type]
