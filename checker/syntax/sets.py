"""Intervals, lists in braces and sets by a condition, read as conditions on a letter."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction

from checker.errors import ParseError
from checker.syntax.tokens import Token, ends_of
from checker.syntax.tree import (
    Alternatives,
    Chain,
    Function,
    Node,
    Number,
    Relation,
    Span,
    Statement,
    Symbol,
    System,
    letters,
)

__all__ = ["INTEGERS", "UNNAMED", "SetReader", "in_integers", "is_set", "is_set_sign", "told_by_words"]

UNNAMED = "?"  # the letter of a set that stands alone; the lines before it say which is meant
INTEGERS = "integers"
_NOTHING = re.compile(
    r"\s*(?:there (?:is|are) |has |it has |we have )?no (?:real )?"
    r"(?:solutions?|roots?|answers?|values?(?: of [a-z])?)\W*"
)
_EVERYTHING = re.compile(
    r"\s*(?:true for )?(?:all|every|any) (?:real )?(?:(?:values?|numbers?)(?: of)? ?)?[a-z]?\W*"
    r"(?:is a solution|are solutions)?\W*"
)
_JOINS = ("cup", "cap", "setminus", "backslash")
_EMPTY = frozenset({"emptyset", "varnothing"})
_OPENERS = frozenset({"open", "{"})
_CLOSERS = frozenset({"close", "}"})


def told_by_words(words: str, span: Span) -> Statement | None:
    """"No real solutions", "all real values of x": a condition that never or always holds; None for other words."""
    if _NOTHING.fullmatch(words.lower()):
        return Alternatives(span, ())
    if len(words.split()) > 1 and _EVERYTHING.fullmatch(words.lower()):
        return System(span, ())
    return None


def is_set_sign(token: Token) -> bool:
    """Is it "is in" or "is not in"?"""
    return token.kind == "command" and token.text in ("in", "notin")


def is_set(tokens: Sequence[Token]) -> bool:
    """Do the tokens look like a set and not like a value: an interval, a list in braces, a union, the empty set?"""
    tokens = [token for token in tokens if token.kind != "gap"]
    if not tokens:
        return False
    if any(token.kind == "command" and token.text in (*_JOINS, *_EMPTY, "mathbb") for token in _outer(tokens, 0)):
        return True
    if tokens[0].kind != "open" or not _closes_at_end(tokens):
        return False
    if tokens[0].text == "\\{" and not any(token.kind == "letter" for token in tokens):
        return True
    inside = list(_outer(tokens, 1))
    return any(token.kind == "separator" for token in inside) or (
        tokens[0].text == "\\{" and any(token.kind in (":", "bar") or token.text == "colon" for token in inside)
    )


def _outer(tokens: Sequence[Token], level: int) -> Iterator[Token]:
    """The tokens inside so many brackets and no more."""
    depth = 0
    for token in tokens:
        depth -= token.kind in _CLOSERS
        if depth == level:
            yield token
        depth += token.kind in _OPENERS


def _closes_at_end(tokens: Sequence[Token]) -> bool:
    depth = 0
    for at, token in enumerate(tokens):
        depth += (token.kind in _OPENERS) - (token.kind in _CLOSERS)
        if depth == 0:
            return at == len(tokens) - 1
    return False


def _in_integers(span: Span, letter: Node) -> Relation:
    return Relation(span, letter, "\\in", Function(span, INTEGERS, (Number(span, Fraction(0), "0"),)), span)


def in_integers(letter: Token, end: int) -> Relation:
    """x is an integer, in words."""
    return _in_integers((letter.start, end), Symbol((letter.start, letter.end), letter.text))


class SetReader:
    """Reads the tokens of a set.

    Args:
        text: the line as given, for errors.
        expression: reads tokens as one expression that ends at the position given.
        condition: reads tokens as a condition.
    """

    def __init__(
        self, text: str, expression: Callable[[list[Token], int], Node],
        condition: Callable[[list[Token]], Statement],
    ) -> None:
        self.text = text
        self.expression = expression
        self.condition = condition

    def statement(self, tokens: Sequence[Token], letter: Node) -> Statement:
        """That the letter is in the set.

        Raises:
            ParseError: with the place and what was expected there.
        """
        tokens = [token for token in tokens if token.kind != "gap"]
        if not tokens:
            raise ParseError(self.text, len(self.text), "a set")
        for join, whole in (("cup", Alternatives), ("cap", System)):
            groups = _split(tokens, join)
            if len(groups) > 1:
                return whole(ends_of(tokens), tuple(self.statement(group, letter) for group in groups))
        for join in ("setminus", "backslash"):
            first, *others = _split(tokens, join)
            if others:
                left_out = [one for other in others for one in self._listed(other, letter, "\\ne")]
                return System(ends_of(tokens), (self.statement(first, letter), *left_out))
        return self._single(tokens, letter)

    def _single(self, tokens: list[Token], letter: Node) -> Statement:
        first = tokens[0]
        span = ends_of(tokens)
        if first.kind == "command" and first.text in _EMPTY and len(tokens) == 1:
            return Alternatives(span, ())
        if first.kind == "command" and first.text == "mathbb":
            return self._numbers(tokens, letter)
        if first.kind == "open" and _closes_at_end(tokens):
            inside = tokens[1:-1]
            if first.text == "\\{":
                condition = self._by_condition(inside)
                return condition or Alternatives(span, tuple(self._listed(tokens, letter, "=")))
            ends = _split_at_separator(inside)
            if len(ends) == 2 and all(ends):
                return self._interval(tokens, ends, letter)
            if len(ends) == 1 and first.text == "(" and inside:
                return self.statement(inside, letter)
        raise ParseError(self.text, first.start, "an interval, a list in braces or another set")

    def _numbers(self, tokens: list[Token], letter: Node) -> Statement:
        name = next((token.text for token in tokens[1:] if token.kind == "letter"), "")
        span = ends_of(tokens)
        rest = [token.text for token in tokens if token.kind not in ("{", "}", "letter", "command")]
        if name == "R" and not rest:
            return System(span, ())
        if name == "Z" and not rest:
            return _in_integers(span, letter)
        raise ParseError(self.text, tokens[0].start, "the real numbers or the integers")

    def _by_condition(self, inside: list[Token]) -> Statement | None:
        """{x : x > 2}, {x in R | -1 < x < 3}: the condition after the colon or bar."""
        depth = 0
        for at, token in enumerate(inside):
            depth -= token.kind in _CLOSERS
            if depth == 0 and at and (token.kind in (":", "bar") or token.text in ("colon", "mid")):
                conditions = [self.condition(inside[at + 1:])]
                if any(is_set_sign(one) for one in inside[:at]):
                    conditions.insert(0, self.condition(inside[:at]))
                if len(conditions) == 1:
                    return conditions[0]
                return System(ends_of(inside), tuple(conditions))
            depth += token.kind in _OPENERS
        return None

    def _listed(self, tokens: list[Token], letter: Node, sign: str) -> list[Statement]:
        if tokens[0].text != "\\{" or not _closes_at_end(tokens):
            raise ParseError(self.text, tokens[0].start, "a list in braces")
        found: list[Statement] = []
        for group in _split_at_separator(tokens[1:-1]):
            if group:
                node = self.expression(group, group[-1].end)
                found.append(Relation(ends_of(group), letter, sign, node, ends_of(group)))
        return found

    def _interval(self, tokens: list[Token], ends: list[list[Token]], letter: Node) -> Statement:
        low, high = (self.expression(end, end[-1].end) for end in ends)
        span = ends_of(tokens)
        signs = ("\\le" if tokens[0].text == "[" else "<", "\\le" if tokens[-1].text == "]" else "<")
        bounded = ("infty" not in letters(low), "infty" not in letters(high))
        spans = (ends_of(tokens[:1]), ends_of(tokens[-1:]))
        match bounded:
            case (True, True):
                return Chain(span, (low, letter, high), signs, spans)
            case (True, False):
                turned = {"<": ">", "\\le": "\\ge"}[signs[0]]
                return Relation(span, letter, turned, low, spans[0])
            case (False, True):
                return Relation(span, letter, signs[1], high, spans[1])
            case _:
                return System(span, ())


def _split(tokens: Sequence[Token], join: str) -> list[list[Token]]:
    groups: list[list[Token]] = [[]]
    depth = 0
    for token in tokens:
        depth -= token.kind in _CLOSERS
        if depth == 0 and token.kind == "command" and token.text == join:
            groups.append([])
        else:
            groups[-1].append(token)
        depth += token.kind in _OPENERS
    return groups


def _split_at_separator(tokens: Sequence[Token]) -> list[list[Token]]:
    groups: list[list[Token]] = [[]]
    depth = 0
    for token in tokens:
        depth -= token.kind in _CLOSERS
        if depth == 0 and token.kind == "separator":
            groups.append([])
        else:
            groups[-1].append(token)
        depth += token.kind in _OPENERS
    return groups
