"""What a command builds of the groups that follow it: fractions, roots, binomials."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from checker.errors import ParseError
from checker.syntax.tree import Fraction, Function, Node, Root

if TYPE_CHECKING:
    from checker.syntax.expressions import ExpressionParser

__all__ = ["STRUCTURES", "structure"]

STRUCTURES = frozenset({"frac", "sqrt", "binom", "overline", "dot"})


def structure(parser: ExpressionParser) -> Node:
    """The fraction, root or binomial that starts here."""
    cursor = parser.cursor
    token = cursor.advance()
    cursor.deeper()
    node: Node
    match token.text:
        case "frac":
            top = parser.argument("the top of the fraction")
            bottom = parser.argument("the bottom of the fraction")
            node = Fraction(cursor.since(token), top, bottom)
        case "binom":
            top = parser.argument("the upper number")
            bottom = parser.argument("the lower number")
            node = Function(cursor.since(token), "binom", (top, bottom))
        case "sqrt":
            index = None
            if cursor.token.kind == "open" and cursor.token.text == "[":
                cursor.advance()
                index = parser.sum_until("close", "]", "a closing bracket ]")
                cursor.advance()
            node = Root(cursor.since(token), parser.argument("what stands under the root", signed=True), index)
            node = replace(node, span=cursor.since(token))
        case _:
            raise ParseError(cursor.text, token.start, "a number before the recurring digits")
    cursor.depth -= 1
    return node
