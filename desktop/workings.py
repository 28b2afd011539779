"""Which lines of a page belong to one working, which carry on the line before, and where a question number ends."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from statistics import median

from desktop.desk_line import DeskLine, Lines

__all__ = ["carries_on", "group_lines", "regrouped", "renumbered", "split_number", "working_ids"]

WIDE_GAP = 2.5
"""A gap starts a new working when it is this many times the page's usual gap between lines..."""
WIDE_GAP_HEIGHTS = 1.5
"""...and at least this many usual line heights."""

_LINE_OF_ANSWER = re.compile(r"(?<=the slip on line )\d+|(?<=see line )\d+")
_BLANK = r"[\s~]*"
_NUMBER = re.compile(
    rf"{_BLANK}(?:"
    rf"Q{_BLANK}\d(?:{_BLANK}\d)?{_BLANK}[.):]?"  # Q3, Q 12.
    rf"|\d(?:{_BLANK}\d)?{_BLANK}\)"  # 3), 12)
    rf"|\d(?:{_BLANK}\d)?{_BLANK}\.(?!{_BLANK}\d)"  # 3. but not 3.5
    rf"|[a-h]{_BLANK}\)"  # a)
    rf"|\({_BLANK}(?:[a-h]|i{_BLANK}i?{_BLANK}i?|i{_BLANK}v){_BLANK}\)(?={_BLANK}[\da-zA-Z\\])"  # (a) 3x, (ii) 2y
    rf"){_BLANK}"
)

_CHAIN = re.compile(r"\s*(?:=|\\Rightarrow|\\therefore|\\implies)")
_RELATION = re.compile(r"[=<>]|\\(?:leq?|geq?|neq?|equiv|approx)\b")
_SIGN = (
    r"(?:[+\-*/,=<>]|\\(?:cdot|times|div|pm|mp|leq?|geq?|equiv|lor|land|quad)\b"
    r"|\\text\s*\{\s*(?:or|and|oder|und)\s*\})"
)
_OPEN_END = re.compile(_SIGN + r"\s*$")
_OPEN_START = re.compile(r"\s*" + _SIGN)


def split_number(latex: str) -> tuple[str, str]:
    """Split a question number such as "3)" or "(a)" off the front of a line.

    A closing bracket with no opening one before it can only be a label; "(a)" is one when a letter, digit or
    command follows it, since a product would rather be written without the brackets.

    Returns:
        The label with its blanks (empty when there is none) and the rest; together they are the line.
    """
    match = _NUMBER.match(latex)
    if match is None or match.end() == len(latex):
        return "", latex
    return latex[: match.end()], latex[match.end() :]


def group_lines(lines: Sequence[DeskLine]) -> tuple[tuple[int, ...], ...]:
    """Group the lines of a page, in reading order, into workings.

    A line that carries a question number starts a working, one that starts with = never does. Else the layout
    tells: the page's own (`working`) where it was looked at, or a clearly wider gap and a step back up the page (a
    second column). What the user said about a line (`starts_working`) comes first. Lines struck out belong to none.
    """
    kept = [i for i, line in enumerate(lines) if not line.struck_out]
    if not kept:
        return ()
    gaps = [max(0, lines[b].box.y - _bottom(lines[a])) for a, b in pairwise(kept)]
    forward = [
        gap for gap, (a, b) in zip(gaps, pairwise(kept), strict=True)
        if lines[b].box.y >= lines[a].box.y
    ]
    usual_gap = median(forward) if forward else 0
    usual_height = median(lines[i].box.h for i in kept)
    wide = max(WIDE_GAP * usual_gap, WIDE_GAP_HEIGHTS * usual_height)
    groups: list[list[int]] = [[kept[0]]]
    working = lines[kept[0]].working
    for gap, (before, index) in zip(gaps, pairwise(kept), strict=True):
        if _starts(lines[before], lines[index], working=working, gap=gap, wide=wide, few=len(kept) < 3):
            groups.append([index])
        else:
            groups[-1].append(index)
        working = working if lines[index].working is None else lines[index].working
    return tuple(tuple(group) for group in groups)


def working_ids(lines: Sequence[DeskLine]) -> tuple[int | None, ...]:
    """For each line the number of its working; None for a line that is struck out."""
    ids: list[int | None] = [None] * len(lines)
    for number, group in enumerate(group_lines(lines)):
        for index in group:
            ids[index] = number
    return tuple(ids)


def regrouped(lines: Sequence[DeskLine], ids: Sequence[int | None]) -> Lines:
    """Lines that came, went or changed places, with their workings as they were.

    Where the layout would now tell otherwise, the line says itself whether a working starts at it.

    Args:
        lines: in their new order. ids: for each line, which working it belongs to.
    """
    kept = [i for i, line in enumerate(lines) if not line.struck_out]
    wanted = {b: ids[b] != ids[a] for a, b in pairwise(kept)}
    bare = [replace(line, starts_working=None) for line in lines]
    told = {group[0] for group in group_lines(bare)}
    new = list(lines)
    for index, starts in wanted.items():
        said = lines[index].starts_working
        if said is not starts:
            new[index] = replace(lines[index], starts_working=None if (index in told) is starts else starts)
    if kept and lines[kept[0]].starts_working is False:
        new[kept[0]] = replace(lines[kept[0]], starts_working=None)
    return tuple(new)


def carries_on(before: DeskLine, line: DeskLine) -> bool:
    """Whether a line is the rest of the one before it, so that both say one thing.

    The user's word comes first. What the layout tells counts where the two readings show the joint: a sign at the
    end or at the start, a bracket left open; two whole statements stay two.
    """
    if line.carries_on is not None:
        return line.carries_on
    if not line.goes_on or _CHAIN.match(line.latex):
        return False
    if _OPEN_END.search(before.latex) or _is_open(before.latex):
        return True
    both_state = _RELATION.search(before.latex) is not None and _RELATION.search(line.latex) is not None
    return _OPEN_START.match(line.latex) is not None and not both_state


def renumbered(answer: str, lines: Sequence[int]) -> str:
    """The sentence on a working's answer with its lines, counted from 1, counted as where they stand instead.

    Args:
        answer: the sentence as the checker says it.
        lines: index of each of its lines, from 0.
    """
    return _LINE_OF_ANSWER.sub(lambda number: str(lines[int(number[0]) - 1] + 1), answer)


def _starts(
    before: DeskLine, line: DeskLine, *, working: int | None, gap: int, wide: float, few: bool
) -> bool:
    """Whether a line starts a working; `working` is the number that the layout last gave before it."""
    if line.starts_working is not None:
        return line.starts_working
    if _CHAIN.match(line.latex) or carries_on(before, line):
        return False
    if split_number(line.latex)[0]:
        return True
    if line.working is not None and working is not None:
        return line.working != working
    if _bottom(line) <= before.box.y and line.box.h:
        return True
    return not few and line.box.h > 0 and gap > wide


def _bottom(line: DeskLine) -> int:
    return line.box.y + line.box.h


def _is_open(latex: str) -> bool:
    """Whether more brackets are opened than closed."""
    return sum(latex.count(sign) for sign in "([") > sum(latex.count(sign) for sign in ")]")
