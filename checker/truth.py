"""Does a statement hold at a point?"""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from checker.numeric import (
    Evaluator,
    difference,
    is_near_zero,
    is_real,
    sign_of,
)
from checker.real_roots import RealNumber
from checker.ring import UndefinedError, UnsupportedError
from checker.syntax import (
    Alternatives,
    Chain,
    Definition,
    Node,
    Relation,
    Statement,
    System,
)

__all__ = ["is_true", "links"]


def links(statement: Statement) -> list[tuple[Node, str, Node]]:
    """The relations between two sides that a statement is made of."""
    match statement:
        case Relation(left=left, operator=operator, right=right):
            return [(left, operator, right)]
        case Chain(members=members, operators=operators, continues=continues):
            signs = operators[1:] if continues else operators
            return [(a, sign, b) for (a, b), sign in zip(pairwise(members), signs, strict=True)]
        case Alternatives(branches=parts) | System(parts=parts):
            return [link for part in parts for link in links(part)]
        case Definition(name=name, body=body):
            return [(name, "=", body)]
        case _:
            return []


def is_true(statement: Statement, evaluator: Evaluator) -> bool:
    """Does the statement hold at the evaluator's point? What has no value there does not hold.

    Raises:
        UnsureError: it cannot be told.
        UnsupportedError, TooLargeError: it cannot be worked out.
    """
    match statement:
        case Alternatives(branches=branches):
            return any(is_true(branch, evaluator) for branch in branches)
        case System(parts=parts):
            return all(is_true(part, evaluator) for part in parts)
        case Relation() | Chain() | Definition():
            return all(_link_holds(link, evaluator) for link in links(statement))
        case _:
            raise UnsupportedError


def _link_holds(link: tuple[Node, str, Node], evaluator: Evaluator) -> bool:
    left, operator, right = link
    if operator == "\\in":
        return _is_whole(left, evaluator)
    try:
        gap = difference(evaluator.value(left), evaluator.value(right))
    except UndefinedError:
        return False
    if operator in ("=", "\\equiv", "\\approx"):
        return is_near_zero(gap)
    if operator == "\\ne":
        return not is_near_zero(gap)
    if not is_real(gap):
        return False
    sign = sign_of(gap)
    match operator:
        case "<":
            return sign < 0
        case ">":
            return sign > 0
        case "\\le":
            return sign <= 0
        case "\\ge":
            return sign >= 0
        case _:
            raise UnsupportedError


def _is_whole(node: Node, evaluator: Evaluator) -> bool:
    try:
        value = evaluator.value(node)
    except UndefinedError:
        return False
    if isinstance(value, Fraction):
        return value.denominator == 1
    return is_real(value) and is_near_zero(difference(value, Fraction(round(RealNumber(value, "").middle))))
