"""Letters with their subscripts, and functions with their powers, bases and arguments."""

from __future__ import annotations

from fractions import Fraction as Rational
from typing import TYPE_CHECKING

from checker.syntax.cursor import Cursor
from checker.syntax.tokens import CLOSERS, FUNCTIONS, Token
from checker.syntax.tree import (
    Bracket,
    Division,
    Fraction,
    Function,
    Negation,
    Node,
    Number,
    Postfix,
    Power,
    Sum,
    Symbol,
    Term,
    product_of,
)

if TYPE_CHECKING:
    from checker.syntax.expressions import ExpressionParser

__all__ = ["USER_FUNCTIONS", "choice", "function", "is_choice", "letter"]

USER_FUNCTIONS = frozenset({"f", "g"})
_INVERSE = {
    "sin": "arcsin", "cos": "arccos", "tan": "arctan", "sec": "arcsec", "csc": "arccsc", "cot": "arccot",
    "sinh": "arcsinh", "cosh": "arccosh", "tanh": "arctanh",
}
_SAME = {"cosec": "csc", "cosech": "csch", "arsinh": "arcsinh", "arcosh": "arccosh", "artanh": "arctanh"}


def letter(parser: ExpressionParser) -> Node:
    """A letter, or a function such as f with the bracket that it is applied to."""
    cursor = parser.cursor
    token = cursor.advance()
    name, end = token.text, token.end
    if cursor.token.kind == "subscript":
        mark = cursor.advance()
        name, end = f"{name}_{mark.text}", mark.end
    elif cursor.token.kind == "_":
        cursor.advance()
        index = _subscript(cursor)
        name, end = f"{name}_{index}" if index else name, cursor.tokens[cursor.at - 1].end
    while cursor.token.kind == "prime":
        end = cursor.advance().end
        name += "'"
    span = (token.start, end)
    if cursor.token.kind == "open" and cursor.token.text == "(" and _may_be_function(cursor, name):
        if f"function {name}" not in cursor.readings:
            cursor.doubts.add("function")
        if "function" not in cursor.readings:
            bracket = parser.bracket()
            body = bracket.body if isinstance(bracket, Bracket) else bracket
            return Function((span[0], bracket.span[1]), name, (body,))
    return Symbol(span, name)


def is_choice(cursor: Cursor) -> bool:
    """Does ^nC_r or ^nP_r stand here, with or without braces?"""
    tokens, at = cursor.tokens, cursor.at + 1
    if at >= len(tokens) or cursor.token.kind != "^":
        return False
    if tokens[at].kind == "{":
        while at < len(tokens) and tokens[at].kind != "}":
            at += 1
    elif tokens[at].kind not in ("digit", "letter"):
        return False
    return [one.kind for one in tokens[at + 1:at + 3]] == ["letter", "_"] and tokens[at + 1].text in ("C", "P")


def choice(parser: ExpressionParser) -> Node:
    """^nC_r, how many choices of r things out of n there are; ^nP_r where their order counts."""
    cursor = parser.cursor
    start = cursor.advance()
    above = parser.argument("the number chosen from")
    kind = cursor.advance().text
    cursor.advance()
    below = parser.argument("the number chosen")
    span = cursor.since(start)
    if kind == "C":
        return Function(span, "binom", (above, below))
    rest = Sum(span, (Term(span, "+", above), Term(span, "-", below)))
    return Fraction(span, Postfix(span, above, "!"), Postfix(span, Bracket(span, rest, "("), "!"))


def _may_be_function(cursor: Cursor, name: str) -> bool:
    name = name.rstrip("'")
    if f"function {name}" in cursor.readings:
        return True
    return name in USER_FUNCTIONS and f"factor {name}" not in cursor.readings


def _subscript(cursor: Cursor) -> str:
    if cursor.token.kind in ("digit", "letter"):
        return cursor.advance().text
    cursor.take("{", "{", "a subscript")
    parts = []
    while cursor.token.kind not in ("}", "end"):
        parts.append(cursor.advance().text)
    cursor.take("}", "}", "a closing brace }")
    return "".join(parts)


def function(parser: ExpressionParser) -> Node:
    """A named function with what it is taken of: \\sin^2 x, \\log_3(x+1)."""
    cursor = parser.cursor
    token = cursor.advance()
    cursor.deeper()
    name = _SAME.get(token.text, token.text)
    power: Node | None = None
    base: Node | None = None
    for _ in range(2):
        if cursor.token.kind in ("^", "superscript") and power is None:
            power = parser.superscript()
        elif cursor.token.kind == "_" and base is None and name == "log":
            cursor.advance()
            base = parser.argument("the base of the logarithm")
        elif cursor.token.kind == "subscript" and base is None and name == "log":
            mark = cursor.advance()
            base = Number((mark.start, mark.end), Rational(int(mark.text)), mark.text)
    if name in _INVERSE and isinstance(power, Negation) and _is_one(power.body):
        name, power = _INVERSE[name], None
    if name == "lg":
        name = "log"
    arguments = _arguments(parser, name)
    cursor.depth -= 1
    return Function(cursor.since(token), name, arguments, power, base)


def _arguments(parser: ExpressionParser, name: str) -> tuple[Node, ...]:
    cursor = parser.cursor
    token = cursor.token
    if token.kind == "open" and token.text in ("(", "["):
        if name in ("max", "min", "gcd", "lcm"):
            return _list(parser, token)
        bracket = parser.bracket()
        if cursor.token.kind in ("^", "superscript"):
            cursor.doubts.add("power of a function")
            if "power of a function" in cursor.readings:
                exponent = parser.superscript()
                return (Power((bracket.span[0], cursor.tokens[cursor.at - 1].end), bracket, exponent),)
        return (bracket.body if isinstance(bracket, Bracket) else bracket,)
    if token.kind == "sign" and token.text == "-":
        return (parser.signed_factor(),)
    if not parser.starts_factor():
        raise cursor.expected(f"what \\{name} is taken of")
    factors = [parser.factor()]
    while parser.starts_factor():
        following = cursor.token
        numeric = all(isinstance(factor, Number) for factor in factors)
        if following.kind == "letter" or (numeric and following.kind in ("open", "{", "command")):
            if following.kind == "command" and following.text in FUNCTIONS:
                break
            factors.append(parser.factor())
        else:
            break
    argument = product_of(factors, [""] * (len(factors) - 1))
    if cursor.token.kind == "sign" and cursor.token.text == "/":
        cursor.doubts.add("slash")
        if "slash" in cursor.readings:
            cursor.advance()
            right = parser.signed_factor()
            argument = Division((argument.span[0], right.span[1]), argument, right, "/")
    return (argument,)


def _list(parser: ExpressionParser, opening: Token) -> tuple[Node, ...]:
    cursor = parser.cursor
    cursor.advance()
    found = [parser.sum()]
    while cursor.token.kind == "separator":
        cursor.advance()
        found.append(parser.sum())
    cursor.take("close", CLOSERS[opening.text], "a closing bracket")
    return tuple(found)


def _is_one(node: Node) -> bool:
    return isinstance(node, Number) and node.value == 1
