"""Lines in another order, or in place of others, with their workings and joints as the user means them. No Qt."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from desktop.desk_line import DeskLine, Lines
from desktop.workings import regrouped, working_ids

__all__ = ["in_order", "stands_for"]


def in_order(lines: Lines, order: Sequence[int], *, moved: int | None = None) -> Lines:
    """The lines of those numbers in that order; lines that are not named are left out.

    The workings stay as they are, but the moved line joins the one that it comes to lie within; away from its own it
    joins the one above. A line carries on no other line than it did before.

    Args:
        moved: number of the line that was moved; None for none.
    """
    ids = working_ids(lines)
    new_ids = [ids[number] for number in order]
    if moved is not None and ids[moved] is not None:
        place = order.index(moved)
        above = next((one for one in reversed(new_ids[:place]) if one is not None), None)
        below = next((one for one in new_ids[place + 1 :] if one is not None), None)
        is_alone = ids.count(ids[moved]) == 1
        if (above is not None and above == below) or not (is_alone or ids[moved] in (above, below)):
            new_ids[place] = below if above is None else above
    new: list[DeskLine] = []
    for place, number in enumerate(order):
        line = lines[number]
        if (line.goes_on or line.carries_on) and not (place and order[place - 1] == number - 1):
            line = replace(line, goes_on=False, carries_on=None)
        new.append(line)
    return regrouped(new, new_ids)


def stands_for(new: DeskLine, old: DeskLine, *, first: bool) -> DeskLine:
    """A line that was cut anew, in the working of the line that it comes from; the first of several takes its start."""
    new = replace(new, working=old.working)
    if first:
        new = replace(new, starts_working=old.starts_working, goes_on=old.goes_on, carries_on=old.carries_on)
    return new
