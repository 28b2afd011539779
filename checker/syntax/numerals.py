"""Numbers written in digits: whole, decimal, recurring."""

from __future__ import annotations

from fractions import Fraction as Rational

from checker.errors import ParseError
from checker.syntax.cursor import Cursor
from checker.syntax.tree import Node, Number

__all__ = ["MAX_DIGITS", "numeral"]

MAX_DIGITS = 1_000  # of one number


def numeral(cursor: Cursor) -> Node:
    """The number that starts here.

    Raises:
        ParseError: it is too long, or no digits recur under the dots.
    """
    start = cursor.token.start
    digits: list[str] = []
    end = start
    while True:
        token = cursor.token
        following = cursor.tokens[min(cursor.at + 1, len(cursor.tokens) - 1)]
        if token.kind == "digit":
            digits.append(token.text)
        elif token.kind == "." and "." not in digits and following.kind == "digit":
            digits.append(".")
        elif token.kind != "thousands" or not digits:
            break
        end = token.end
        cursor.advance()
    if cursor.token.kind == "." and "." not in digits and cursor.tokens[cursor.at + 1].text in ("dot", "overline"):
        digits.append(".")
        end = cursor.advance().end
    text = "".join(digits)
    if len(text) > MAX_DIGITS:
        raise ParseError(cursor.text, start, f"a number of at most {MAX_DIGITS} digits")
    if cursor.token.kind == "command" and cursor.token.text in ("dot", "overline") and "." in text:
        return _recurring(cursor, start, text)
    value = Rational(text) if text[-1] != "." else Rational(text[:-1])
    return Number((start, end), value, text)


def _recurring(cursor: Cursor, start: int, text: str) -> Node:
    """0.1\\dot{6}, 0.\\dot{1}2\\dot{3}, 0.\\overline{12}: digits that repeat for ever."""
    plain = text.split(".")[1]
    repeated = ""
    end = start
    dots = 0
    while cursor.token.kind in ("command", "digit") and dots < 2:
        token = cursor.token
        if token.kind == "digit":
            if not dots:
                break
            repeated += cursor.advance().text
            end = token.end
            continue
        if token.text not in ("dot", "overline"):
            break
        cursor.advance()
        opening = cursor.token
        if opening.kind == "{":
            cursor.advance()
        while cursor.token.kind == "digit":
            repeated += cursor.advance().text
            if opening.kind != "{":
                break
        end = cursor.tokens[cursor.at - 1].end
        if opening.kind == "{":
            end = cursor.take("}", "}", "a closing brace }").end
        dots += 2 if token.text == "overline" or not _second_dot(cursor) else 1
    if not repeated:
        raise cursor.expected("the digits that recur")
    scale = 10 ** len(plain)
    value = Rational(text.rstrip(".")) + Rational(int(repeated), (10 ** len(repeated) - 1) * scale)
    return Number((start, end), value, f"{text}({repeated})")


def _second_dot(cursor: Cursor) -> bool:
    at = cursor.at
    while cursor.tokens[at].kind == "digit":
        at += 1
    return cursor.tokens[at].kind == "command" and cursor.tokens[at].text == "dot"
