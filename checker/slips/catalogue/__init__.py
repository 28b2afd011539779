"""The documented slips tried on the line before, at each place."""

from __future__ import annotations

import time
from collections.abc import Iterator
from itertools import islice

from checker.slips.alternatives import with_sign
from checker.slips.catalogue.bracket_table import BRACKET_SLIPS
from checker.slips.catalogue.common_table import COMMON_SLIPS
from checker.slips.catalogue.entries import ExpressionSlip, RelationSlip
from checker.slips.catalogue.fraction_table import FRACTION_SLIPS
from checker.slips.catalogue.power_table import POWER_SLIPS
from checker.slips.catalogue.relation_table import RELATION_SLIPS
from checker.slips.values import SIGN, TooLarge, Value, value_of
from checker.syntax.tree import Alternatives, Node, Relation, Statement, children

__all__ = [
    "COMMON_SLIPS", "EXPRESSION_SLIPS", "RELATION_SLIPS", "ExpressionSlip", "RelationSlip", "expression_slips",
    "relation_slips",
]

EXPRESSION_SLIPS: tuple[ExpressionSlip, ...] = tuple(
    sorted((*BRACKET_SLIPS, *FRACTION_SLIPS, *POWER_SLIPS), key=lambda slip: not slip.telling)
)
TRIED = tuple(sorted((*EXPRESSION_SLIPS, *COMMON_SLIPS), key=lambda slip: not slip.telling))
MOST_PLACES = 40


def relation_slips(before: Statement, written: Statement) -> Iterator[RelationSlip]:
    """The documented slips that turn one relation into the written relation or alternatives."""
    branches = written.branches if isinstance(written, Alternatives) else (written,)
    if not isinstance(before, Relation) or not all(isinstance(branch, Relation) for branch in branches):
        return
    found = [(value_of(b.left), value_of(b.right)) for b in branches if isinstance(b, Relation)]
    found = [one for left, right in found for one in _both_signs(left, right)]
    for slip in sorted(RELATION_SLIPS, key=lambda slip: not slip.telling):
        try:
            if any(_same_branches(wrong, found) for wrong in slip.rewrite(before)):
                yield slip
        except (TooLarge, ZeroDivisionError, OverflowError, ValueError):
            continue


def _both_signs(left: Value, right: Value) -> list[tuple[Value, Value]]:
    """A relation with plus or minus as its two branches."""
    if not any(atom == SIGN for key in right for atom, _ in key):
        return [(left, right)]
    return [(left, with_sign(right, sign)) for sign in (1, -1)]


def _same_branches(wrong: list[tuple[Value, Value]], found: list[tuple[Value, Value]]) -> bool:
    return len(wrong) == len(found) and all(branch in found for branch in wrong)


def expression_slips(before: Node, written: Value, *, telling: bool, deadline: float) -> Iterator[ExpressionSlip]:
    """The documented slips that, at one place of an expression, give it the written value.

    Args:
        before: the expression of the line before.
        written: the value of the written expression.
        telling: leave out slips that say no more than that a sign, a number or a power of one term is wrong.
        deadline: when to stop, on the monotonic clock, in seconds.
    """
    places = [(node, _around(above, node)) for node, above in islice(_with_ancestors(before, ()), MOST_PLACES)]
    for slip in TRIED:
        if telling and not slip.telling:
            continue
        if time.monotonic() > deadline:
            return
        for place, around in places:
            try:
                if any(_value(before, place, around, wrong, deadline) == written for wrong in slip.rewrite(place)):
                    yield slip
                    break
            except (TooLarge, ZeroDivisionError, OverflowError, ValueError):
                continue


def _with_ancestors(node: Node, above: tuple[Node, ...]) -> Iterator[tuple[Node, tuple[Node, ...]]]:
    yield node, above
    for child in children(node):
        yield from _with_ancestors(child, (*above, node))


def _around(above: tuple[Node, ...], place: Node) -> dict[int, Value]:
    """The values of all that stands beside the way from the top to a place."""
    path = {id(node) for node in (*above, place)}
    return {id(child): value_of(child) for node in above for child in children(node) if id(child) not in path}


def _value(before: Node, place: Node, around: dict[int, Value], wrong: Value, deadline: float) -> Value:
    """The value of the whole with a wrong value at one place; gives up like a value that is too large."""
    if time.monotonic() > deadline:
        raise TooLarge
    return wrong if place is before else value_of(before, {**around, id(place): wrong})
