"""The documented slips tried on the line before, at each place."""

from __future__ import annotations

from collections.abc import Iterator

from checker.slips.catalogue.bracket_table import BRACKET_SLIPS
from checker.slips.catalogue.entries import ExpressionSlip, RelationSlip
from checker.slips.catalogue.fraction_table import FRACTION_SLIPS
from checker.slips.catalogue.power_table import POWER_SLIPS
from checker.slips.catalogue.relation_table import RELATION_SLIPS
from checker.slips.values import TooLarge, Value, value_of
from checker.syntax.tree import Alternatives, Node, Relation, Statement, walk

__all__ = [
    "EXPRESSION_SLIPS", "RELATION_SLIPS", "ExpressionSlip", "RelationSlip", "expression_slips", "relation_slips",
]

EXPRESSION_SLIPS: tuple[ExpressionSlip, ...] = tuple(
    sorted((*BRACKET_SLIPS, *FRACTION_SLIPS, *POWER_SLIPS), key=lambda slip: not slip.telling)
)
MOST_PLACES = 40


def relation_slips(before: Statement, written: Statement) -> Iterator[RelationSlip]:
    """The documented slips that turn one relation into the written relation or alternatives."""
    branches = written.branches if isinstance(written, Alternatives) else (written,)
    if not isinstance(before, Relation) or not all(isinstance(branch, Relation) for branch in branches):
        return
    found = [(value_of(b.left), value_of(b.right)) for b in branches if isinstance(b, Relation)]
    for slip in sorted(RELATION_SLIPS, key=lambda slip: not slip.telling):
        try:
            if any(_same_branches(wrong, found) for wrong in slip.rewrite(before)):
                yield slip
        except (TooLarge, ZeroDivisionError, OverflowError, ValueError):
            continue


def _same_branches(wrong: list[tuple[Value, Value]], found: list[tuple[Value, Value]]) -> bool:
    return len(wrong) == len(found) and all(branch in found for branch in wrong)


def expression_slips(before: Node, written: Value) -> Iterator[ExpressionSlip]:
    """The documented slips that, at one place of an expression, give it the written value."""
    places = [node for number, node in enumerate(walk(before)) if number < MOST_PLACES]
    for slip in EXPRESSION_SLIPS:
        for place in places:
            try:
                if any(_same(before, place, wrong, written) for wrong in slip.rewrite(place)):
                    yield slip
                    break
            except (TooLarge, ZeroDivisionError, OverflowError, ValueError):
                continue


def _same(before: Node, place: Node, wrong: Value, written: Value) -> bool:
    if place is before:
        return wrong == written
    return value_of(before, {id(place): wrong}) == written
