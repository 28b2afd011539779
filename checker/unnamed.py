"""Sets and points that stand alone on a line: which letters are they values of?"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from checker.bounds import is_limit
from checker.solutions import links
from checker.substitution import substituted_in
from checker.syntax import Alternatives, Chain, Expression, Line, Note, Relation, Statement, Symbol, System, letters
from checker.syntax.sets import UNNAMED

__all__ = ["named_lines"]

_SET_NAME = re.compile("[A-Z] =")
_CONSTANTS = frozenset({"pi", "i", "e", "infty"})


def named_lines(lines: Sequence[Line | None], question: Statement | None = None) -> list[Line | None]:
    """The lines with the letter put into each set or point that stands alone; words where none is meant.

    A set takes the one letter of the conditions before it; a pair such as (3, 4) takes the two letters of a system. A
    pair in brackets is an interval only where an inequality stands before it, else a point that is passed over.
    """
    told: list[Statement] = [] if question is None else [question]
    out: list[Line | None] = []
    for line in lines:
        if line is None:
            out.append(None)
            continue
        statement = line.statement
        if any(_SET_NAME.fullmatch(note) for note in line.notes) and not any(
            isinstance(one, Relation | Chain | Alternatives | System) for one in told
        ):
            statement = Note(statement.span, line.text.strip())  # a set is given its name
            line = replace(line, statement=statement)
        if UNNAMED in letters(statement):
            statement = _named(statement, told) or Note(statement.span, line.text.strip())
            line = replace(line, statement=statement)
        renamed = _without_index(statement, told)
        if renamed is not None:
            statement = renamed
            line = replace(line, statement=statement)
        sides = any(isinstance(one, Relation) and "Rhs" not in letters(one) for one in told)
        if isinstance(statement, Expression) and letters(statement) == {"Rhs"} and not sides:
            statement = Note(statement.span, line.text.strip())
            line = replace(line, statement=statement)
        told.append(statement)
        out.append(line)
    return out


def _named(statement: Statement, told: Sequence[Statement]) -> Statement | None:
    conditions = [one for one in told if isinstance(one, Relation | Chain | Alternatives | System)]
    names = [sorted(letters(one) - _CONSTANTS) for one in conditions]
    if not conditions or (told and isinstance(told[0], Expression)):
        return None
    both = sorted({name for found in names for name in found})
    is_system = len(both) == 2 and sum(len(found) == 2 for found in names) >= 2
    points = _points(statement)
    if points:
        if not is_system:
            return None if len(points) > 1 else _interval(statement, names, conditions)
        found = tuple(_point(one, both) for one in points)
        return found[0] if len(found) == 1 else Alternatives(statement.span, found)
    return _interval(statement, names, conditions)


def _points(statement: Statement) -> list[Chain]:
    """(-5, -2) and (2, 5): each pair as it is read."""
    parts = statement.parts if isinstance(statement, System) else (
        statement.branches if isinstance(statement, Alternatives) else (statement,)
    )
    pairs = [_pair(part) for part in parts]
    return [pair for pair in pairs if pair is not None] if all(pair is not None for pair in pairs) else []


def _point(pair: Chain, names: Sequence[str]) -> System:
    span = pair.span
    return System(span, tuple(
        Relation(span, Symbol(span, name), "=", node, span)
        for name, node in zip(names, (pair.members[0], pair.members[2]), strict=True)
    ))


def _interval(
    statement: Statement, names: Sequence[list[str]], conditions: Sequence[Statement]
) -> Statement | None:
    pair = _pair(statement)
    known = [found for found in names if found]
    if not known or len(known[-1]) != 1:
        return None
    if pair is not None and not any(_bounds(one) for one in conditions):
        return None
    (name,) = known[-1]
    return substituted_in(statement, {UNNAMED: Symbol(statement.span, name)})


def _without_index(statement: Statement, told: Sequence[Statement]) -> Statement | None:
    """x_1 = 2, x_2 = -5 where x was looked for: two values of x."""
    parts = statement.parts if isinstance(statement, System) else (
        statement.branches if isinstance(statement, Alternatives) else (statement,)
    )
    earlier = frozenset().union(*(letters(one) for one in told))
    out: list[Statement] = []
    for part in parts:
        left = part.left if isinstance(part, Relation) else part.members[0] if isinstance(part, Chain) else None
        if not isinstance(left, Symbol) or "_" not in left.name or letters(part) - {left.name, "pi", "e"}:
            return None
        stem, _, index = left.name.partition("_")
        if not index.replace(",", "").isdigit() or stem not in earlier or left.name in earlier:
            return None
        if any(name.startswith(f"{stem}_") for name in earlier):
            return None
        out.append(substituted_in(part, {left.name: Symbol(left.span, stem)}))
    if len(out) > 1:
        return Alternatives(statement.span, tuple(out))
    return out[0] if out else None


def _pair(statement: Statement) -> Chain | None:
    """(3, 4) as it is read: an open interval."""
    match statement:
        case Chain(members=(_, Symbol(name=name), _), operators=("<", "<")) if name == UNNAMED:
            return statement
        case _:
            return None


def _bounds(statement: Statement) -> bool:
    return is_limit(statement) or any(sign in ("<", ">", "\\le", "\\ge") for _, sign, _ in links(statement))
