"""A place in the tokens of one line, and what is said there when they cannot be read on."""

from __future__ import annotations

from collections.abc import Sequence

from checker.errors import ParseError
from checker.syntax.tokens import Token
from checker.syntax.tree import Span

__all__ = ["MAX_DEPTH", "Cursor"]

MAX_DEPTH = 40  # brackets, fractions, roots, powers inside one another


class Cursor:
    """Where the reading of one expression has come to.

    Args:
        text: the line as given, for errors.
        tokens: tokens, the last of kind "end".
        readings: names of doubts to be read the other way: "mixed", "slash", "function"; and "factor f" or "function h"
            where it is known what a letter before a bracket is.
    """

    __slots__ = ("at", "depth", "doubts", "readings", "text", "tokens")

    def __init__(self, text: str, tokens: Sequence[Token], readings: frozenset[str]) -> None:
        self.text = text
        self.tokens = [token for token in tokens if token.kind != "gap"]
        self.at = 0
        self.depth = 0
        self.readings = readings
        self.doubts: set[str] = set()

    @property
    def token(self) -> Token:
        return self.tokens[self.at]

    def advance(self) -> Token:
        token = self.tokens[self.at]
        if token.kind != "end":
            self.at += 1
        return token

    def take(self, kind: str, text: str, what: str) -> Token:
        """The token that must stand here.

        Raises:
            ParseError: another one does.
        """
        if self.token.kind != kind or self.token.text != text:
            raise self.expected(what)
        return self.advance()

    def expected(self, what: str) -> ParseError:
        return ParseError(self.text, self.token.start, what)

    def deeper(self) -> None:
        """Raises:
        ParseError: too many things inside one another.
        """
        self.depth += 1
        if self.depth > MAX_DEPTH:
            raise self.expected(f"no more than {MAX_DEPTH} brackets, fractions and powers inside one another")

    def since(self, token: Token) -> Span:
        """From the start of a token to the end of the last one read."""
        return token.start, self.tokens[self.at - 1].end
