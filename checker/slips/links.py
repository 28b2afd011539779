"""Which expressions of two lines should be equal: the value carried on, sides of equations, members of chains."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from checker.slips.leaves import Edit
from checker.slips.values import value_of
from checker.slips.writing import write_value
from checker.syntax.tree import Chain, Expression, Line, Node, Relation, Statement

__all__ = ["Link", "links_of"]


def _expression(statement: Statement) -> Node | None:
    """The value that a line stands at: an expression, the end of a chain, the right side of an equation."""
    match statement:
        case Expression(body=body):
            return body
        case Chain(members=members):
            return members[-1]
        case Relation(right=right):
            return right
        case _:
            return None


@dataclass(frozen=True, slots=True)
class Link:
    """Two expressions of which the second should equal the first; `tail` mends what is carried on in the same line."""

    old: Node
    text: str
    new: Node
    tail: tuple[Edit, ...] = ()


def links_of(before: Line, written: Line) -> Iterator[Link]:
    """The pairs of expressions that a step compares."""
    match before.statement, written.statement:
        case (old, Expression(body=body)):
            source = _expression(old)
            if source is not None:
                yield Link(source, before.text, body)
        case (old, Chain(members=members) as chain):
            source = _expression(old)
            if source is not None and (chain.continues or isinstance(old, Expression)):
                yield Link(source, before.text, members[0], _tail(source, members[1:]))
            for place, (first, second) in enumerate(pairwise(members), 2):
                yield Link(first, written.text, second, _tail(first, members[place:]))
        case (Expression(body=source), Relation(left=left, right=right, operator="=")):
            yield Link(source, before.text, right)
            yield Link(left, written.text, right)
        case (Relation(left=left, right=right), Relation(left=new_left, right=new_right)):
            if value_of(left) == value_of(new_left):
                yield Link(right, before.text, new_right)
            if value_of(right) == value_of(new_right):
                yield Link(left, before.text, new_left)
        case (Chain(members=old_members), Relation(right=right)):
            yield Link(old_members[-1], before.text, right)
        case _:
            return


def _tail(source: Node, members: Sequence[Node]) -> tuple[Edit, ...]:
    """The later members of a chain that have another value, written anew."""
    value = value_of(source)
    text = write_value(value)
    if text is None:
        return ()
    return tuple(Edit(member.span, text) for member in members if value_of(member) != value)
