"""Which lines of a page belong to one working, and where a question number ends."""

from __future__ import annotations

import re
from collections.abc import Sequence
from itertools import pairwise
from statistics import median

from desktop.desk_line import DeskLine

__all__ = ["group_lines", "renumbered", "split_number"]

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

    All of a page is one working unless a line carries a question number, stands after a clearly wider gap, or
    goes back up the page (a second column). A line that starts with = always carries on. What the user said
    about a line (`starts_working`) comes first. Lines struck out belong to no working.
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
    for gap, (before, index) in zip(gaps, pairwise(kept), strict=True):
        if _starts(lines[before], lines[index], gap=gap, wide=wide, few=len(kept) < 3):
            groups.append([index])
        else:
            groups[-1].append(index)
    return tuple(tuple(group) for group in groups)


def renumbered(answer: str, lines: Sequence[int]) -> str:
    """The sentence on a working's answer with its lines, counted from 1, counted as where they stand instead.

    Args:
        answer: the sentence as the checker says it.
        lines: index of each of its lines, from 0.
    """
    return _LINE_OF_ANSWER.sub(lambda number: str(lines[int(number[0]) - 1] + 1), answer)


def _starts(before: DeskLine, line: DeskLine, *, gap: int, wide: float, few: bool) -> bool:
    if line.starts_working is not None:
        return line.starts_working
    if line.latex.lstrip().startswith(("=", r"\Rightarrow", r"\therefore", r"\implies")):
        return False
    if split_number(line.latex)[0]:
        return True
    if _bottom(line) <= before.box.y and line.box.h:
        return True
    return not few and line.box.h > 0 and gap > wide


def _bottom(line: DeskLine) -> int:
    return line.box.y + line.box.h
