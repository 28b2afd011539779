"""Derivatives, integrals, sums and limits as written: the letter they run over and its bounds.

They become functions: deriv(body, letter, order), int(body, letter), int(body, letter, low, high),
sum(body, letter, low, high), prod(...), lim(body, letter, place), limabove, limbelow, between(body, letter, low, high).
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as Rational
from typing import TYPE_CHECKING

from checker.syntax.tokens import Token
from checker.syntax.tree import Function, Node, Number, Span, Sum, Symbol, Term, letters

if TYPE_CHECKING:
    from checker.syntax.expressions import ExpressionParser

__all__ = ["OPERATORS", "between", "derivative", "operator"]

OPERATORS = frozenset({"int", "sum", "prod", "lim"})
_MOST_ORDER = 9
_RUNNING = ("x", "t", "theta", "u", "y", "z", "v", "s", "r")


def operator(parser: ExpressionParser, token: Token) -> Node:
    """The integral, sum, product or limit whose sign has just been read.

    Raises:
        ParseError: with the place and what was expected there.
    """
    match token.text:
        case "int":
            return _integral(parser, token)
        case "lim":
            return _limit(parser, token)
        case _:
            return _series(parser, token)


# sums and limits


def _series(parser: ExpressionParser, token: Token) -> Node:
    cursor = parser.cursor
    cursor.take("_", "_", f"the letter and its first value under \\{token.text}")
    cursor.take("{", "{", f"the letter and its first value in braces under \\{token.text}")
    letter = _letter(parser)
    cursor.take("relation", "=", "an equals sign")
    low = parser.sum_until("}", "}", "a closing brace }")
    cursor.advance()
    cursor.take("^", "^", f"the last value above \\{token.text}")
    high = parser.argument("the last value", signed=True)
    body = _reached(parser, letter.name)
    return Function(cursor.since(token), token.text, (body, letter, low, high))


def _limit(parser: ExpressionParser, token: Token) -> Node:
    cursor = parser.cursor
    cursor.take("_", "_", "the letter and where it goes under \\lim")
    cursor.take("{", "{", "the letter and where it goes in braces under \\lim")
    letter = _letter(parser)
    if cursor.token.kind != "link":
        raise cursor.expected("an arrow")
    cursor.advance()
    name = "lim"
    side = next((at for at in range(cursor.at, len(cursor.tokens)) if cursor.tokens[at].kind == "}"), None)
    if side is not None and [one.text for one in cursor.tokens[side - 2:side]] in (["^", "+"], ["^", "-"]):
        name = "limabove" if cursor.tokens[side - 1].text == "+" else "limbelow"
        del cursor.tokens[side - 2:side]
    place = parser.sum_until("}", "}", "a closing brace }")
    cursor.advance()
    body = _reached(parser, letter.name)
    return Function(cursor.since(token), name, (body, letter, place))


def _letter(parser: ExpressionParser) -> Symbol:
    cursor = parser.cursor
    if cursor.token.kind != "letter":
        raise cursor.expected("a letter")
    token = cursor.advance()
    return Symbol((token.start, token.end), token.text)


def _reached(parser: ExpressionParser, running: str | None) -> Node:
    """What the sign reaches over: one term, and further ones up to the last that holds the running letter.

    With the doubt "reach" read the other way it is all that follows.
    """
    cursor = parser.cursor
    cursor.deeper()
    if "reach" in cursor.readings:
        body = parser.sum()
    else:
        body = parser.product()
        if cursor.token.kind == "sign" and cursor.token.text in ("+", "-"):
            cursor.doubts.add("reach")
            terms = [Term(body.span, "+", body)]
            for _ in range(0 if running is None else _further_terms(cursor.tokens, cursor.at, running)):
                sign = cursor.advance()
                following = parser.product()
                terms.append(Term((sign.start, following.span[1]), "+" if sign.text == "+" else "-", following))
            if len(terms) > 1:
                body = Sum((terms[0].span[0], terms[-1].span[1]), tuple(terms))
    cursor.depth -= 1
    return body


def _further_terms(tokens: list[Token], start: int, running: str) -> int:
    """How many terms from here on it is to the last that holds the running letter, before another such sign."""
    depth = terms = found = 0
    for token in tokens[start:]:
        if token.kind in ("open", "{"):
            depth += 1
        elif token.kind in ("close", "}"):
            depth -= 1
            if depth < 0:
                break
        elif depth == 0 and (token.kind == "relation" or token.text in OPERATORS):
            break
        elif depth == 0 and token.kind == "sign" and token.text in ("+", "-", "±", "∓"):
            if token.text not in ("+", "-"):
                break
            terms += 1
        elif token.kind == "letter" and token.text == running:
            found = terms
    return found


# integrals


def _integral(parser: ExpressionParser, token: Token) -> Node:
    cursor = parser.cursor
    low: Node | None = None
    high: Node | None = None
    for _ in range(2):
        if cursor.token.kind == "_" and low is None:
            cursor.advance()
            low = parser.argument("the lower limit", signed=True)
        elif cursor.token.kind == "^" and high is None:
            cursor.advance()
            high = parser.argument("the upper limit", signed=True)
    if (low is None) != (high is None):
        raise cursor.expected("both limits of the integral")
    place = _differential(cursor.tokens, cursor.at)
    if place is not None:
        at, size = place
        letter = _differential_letter(cursor.tokens, at + size)
        if at == cursor.at:
            body: Node = Number((token.start, token.end), Rational(1), "1")
        else:
            body = parser.part(at, "the end of what is integrated")
        cursor.at = at + size
    else:
        body, letter = _integrand_with_letter_above(parser)
    arguments = (body, letter) if low is None or high is None else (body, letter, low, high)
    return Function(cursor.since(token), "int", arguments)


def _differential(tokens: list[Token], start: int) -> tuple[int, int] | None:
    """Where d and a letter stand outside every bracket, and how many tokens they are."""
    depth = inner = 0
    for at in range(start, len(tokens) - 1):
        token = tokens[at]
        if token.kind == "command" and token.text == "int":
            inner += 1
        if depth == 0 and (size := _differential_at(tokens, at)):
            if inner == 0:
                return at, size
            inner -= 1
        if token.kind in ("open", "{"):
            depth += 1
        elif token.kind in ("close", "}"):
            depth -= 1
            if depth < 0:
                return None
        elif token.kind == "relation" and depth == 0:
            return None
    return None


def _differential_at(tokens: list[Token], at: int) -> int:
    """How many tokens dx, {dx}, or {d}x with an upright d, takes here; nothing when it does not stand here."""
    kinds = [one.kind for one in tokens[at:at + 4]]
    if kinds[:2] == ["letter", "letter"] and tokens[at].text == "d":
        return 2
    if kinds == ["{", "letter", "}", "letter"]:
        return 4 if tokens[at + 1].text == "d" else 0
    is_group = kinds == ["{", "letter", "letter", "}"] and tokens[at + 1].text == "d"
    return 4 if is_group and not _belongs_to_command(tokens, at) else 0


def _belongs_to_command(tokens: list[Token], at: int) -> bool:
    """Is the group that starts here what a command, a power or a subscript takes?"""
    if at and tokens[at - 1].kind in ("^", "_"):
        return True
    depth = 0
    for place in range(at - 1, -1, -1):
        token = tokens[place]
        if depth == 0 and token.kind != "}":
            return token.kind == "command" and token.text not in OPERATORS
        depth += (token.kind == "}") - (token.kind == "{")
    return False


def _differential_letter(tokens: list[Token], end: int) -> Symbol:
    """The letter of a differential, the last before its end."""
    token = tokens[end - 1] if tokens[end - 1].kind == "letter" else tokens[end - 2]
    return Symbol((token.start, token.end), token.text)


def _integrand_with_letter_above(parser: ExpressionParser) -> tuple[Node, Symbol]:
    """\\frac{dx}{x}: the differential stands in the numerator."""
    cursor = parser.cursor
    tokens = cursor.tokens
    for at in range(cursor.at, len(tokens) - 2):
        if tokens[at].kind in ("open", "sign", "end", "command") and tokens[at].text not in ("frac", "sqrt", "\\cdot"):
            break
        if tokens[at].kind == "command" and tokens[at].text == "frac" and tokens[at + 1].kind == "{":
            place = _differential(tokens, at + 2)
            if place is not None and tokens[sum(place)].kind == "}":
                first, size = place
                letter = _differential_letter(tokens, first + size)
                inside = [] if first > at + 2 else [replace(tokens[first], kind="digit", text="1")]
                tokens[first:first + size] = inside
                return parser.product(), letter
    raise cursor.expected("what is integrated and then a differential such as dx")


# derivatives


def derivative(parser: ExpressionParser, token: Token) -> Node | None:
    """\\frac{d}{dx}(...), \\frac{dy}{dx}, \\frac{d^2y}{dx^2} after the command; None when it is another fraction."""
    cursor = parser.cursor
    tokens = cursor.tokens
    at = _after_d(tokens, cursor.at)
    if at is None:
        return None
    order, at = _order(tokens, at)
    close = _closing(tokens, cursor.at)
    if close is None or close < at:
        return None
    below = _after_d(tokens, close + 1)
    if below is None or tokens[below].kind != "letter":
        return None
    letter = _differential_letter(tokens, below + 1)
    order_below, end = _order(tokens, below + 1)
    if order_below != order or end >= len(tokens) or tokens[end].kind != "}" or not 1 <= order <= _MOST_ORDER:
        return None
    if at == close:
        start, cursor.at = cursor.at, end + 1
        if not parser.starts_factor():
            cursor.at = start
            return None
        body = _reached(parser, None)
    else:
        cursor.at = at
        body = parser.part(close, "the end of what is differentiated")
        cursor.at = end + 1
    count = Number(letter.span, Rational(order), str(order))
    return Function(cursor.since(token), "deriv", (body, letter, count))


def _after_d(tokens: list[Token], at: int) -> int | None:
    """The place after "{ d" or "{ {d}", where it stands here."""
    texts = [one.text for one in tokens[at:at + 4]]
    if texts[:2] == ["{", "d"]:
        return at + 2
    return at + 4 if texts == ["{", "{", "d", "}"] else None


def _order(tokens: list[Token], at: int) -> tuple[int, int]:
    """The order written as a power, 1 when there is none, and the place after it."""
    kinds = [one.kind for one in tokens[at:at + 4]]
    if kinds[:2] == ["^", "digit"]:
        return int(tokens[at + 1].text), at + 2
    if kinds == ["^", "{", "digit", "}"]:
        return int(tokens[at + 2].text), at + 4
    if kinds[:1] == ["superscript"] and tokens[at].text.isdigit():
        return min(int(tokens[at].text), _MOST_ORDER + 1), at + 1
    return 1, at


def _closing(tokens: list[Token], at: int) -> int | None:
    depth = 0
    for place in range(at, len(tokens)):
        if tokens[place].kind == "{":
            depth += 1
        elif tokens[place].kind == "}":
            depth -= 1
            if depth == 0:
                return place
    return None


# values between bounds


def between(parser: ExpressionParser, body: Node, span: Span) -> Node:
    """[F(x)]_a^b after the closing bracket: the value at b less the value at a."""
    cursor = parser.cursor
    low: Node | None = None
    high: Node | None = None
    named: Symbol | None = None
    for _ in range(2):
        if (cursor.token.kind == "_" and low is None) or (cursor.token.kind == "^" and high is None):
            is_low = cursor.advance().kind == "_"
            named = _bound_letter(parser) or named
            bound = parser.argument("a bound", signed=True)
            low, high = (bound, high) if is_low else (low, bound)
    if low is None or high is None:
        raise cursor.expected("both bounds after the square bracket")
    letter = named or Symbol(span, _running_letter(body))
    return Function((span[0], cursor.tokens[cursor.at - 1].end), "between", (body, letter, low, high))


def _bound_letter(parser: ExpressionParser) -> Symbol | None:
    """The letter of _{x=0}, which is passed over."""
    tokens, at = parser.cursor.tokens, parser.cursor.at
    if [one.kind for one in tokens[at:at + 3]] != ["{", "letter", "relation"] or tokens[at + 2].text != "=":
        return None
    letter = Symbol((tokens[at + 1].start, tokens[at + 1].end), tokens[at + 1].text)
    del tokens[at + 1:at + 3]
    return letter


def _running_letter(body: Node) -> str:
    """The letter that takes the bounds, where none is named: the only one, or the commonest for it."""
    found = letters(body) - {"e", "pi", "i", "c"}
    likely = [name for name in _RUNNING if name in found]
    return likely[0] if likely else min(found, default="x")
