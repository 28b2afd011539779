"""What a command builds of what follows it: fractions, roots, binomials, integrals, sums, limits."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from checker.errors import ParseError
from checker.syntax.calculus import OPERATORS, derivative, operator
from checker.syntax.tree import Fraction, Function, Node, Root

if TYPE_CHECKING:
    from checker.syntax.expressions import ExpressionParser

__all__ = ["STRUCTURES", "structure"]

STRUCTURES = OPERATORS | {"frac", "sqrt", "binom", "overline", "dot"}


def structure(parser: ExpressionParser) -> Node:
    """The fraction, root, binomial, derivative, integral, sum or limit that starts here."""
    cursor = parser.cursor
    token = cursor.advance()
    cursor.deeper()
    node: Node
    match token.text:
        case "int" | "sum" | "prod" | "lim":
            node = operator(parser, token)
        case "frac" if (found := derivative(parser, token)) is not None:
            node = found
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
