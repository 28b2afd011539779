"""Tokens of a line parted at words, links and commas, and what the parts then say."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from checker.syntax.sets import is_set_sign
from checker.syntax.tokens import Token
from checker.syntax.tree import (
    Expression,
    Relation,
    Span,
    Statement,
    Symbol,
    letters,
)

__all__ = [
    "PLAIN",
    "all_equal", "gives_number", "is_number_for_letter", "is_solved", "joined_words", "left_text",
    "name_of", "relates", "says_whole", "side_of", "solved_letter", "span_of", "speaks_of_sets", "with_depth",
    "with_left",
]

PLAIN = frozenset({"pi", "n", "k", "m"})  # letters that a value in numbers may hold: any whole number
_OPENERS = frozenset({"open", "{"})
_CLOSERS = frozenset({"close", "}"})


def with_depth(tokens: Iterable[Token]) -> Iterable[tuple[Token, int]]:
    """Each token with the number of brackets it stands in."""
    depth = 0
    for token in tokens:
        if token.kind in _CLOSERS:
            depth = max(0, depth - 1)
        yield token, depth
        if token.kind in _OPENERS:
            depth += 1


def joined_words(tokens: Sequence[Token], word: str) -> list[Token]:
    """Letters that spell `or` or `and` between two relations joined to one word."""
    out: list[Token] = []
    at = 0
    listing = list(with_depth(tokens))
    size = len(word)
    while at < len(listing):
        token, depth = listing[at]
        part = tokens[at:at + size]
        if (
            depth == 0 and len(part) == size and all(one.kind == "letter" for one in part)
            and "".join(one.text for one in part) == word and relates(tokens[:at]) and at + size < len(tokens)
            and tokens[at - 1].kind not in ("sign", "relation", "^", "_")
            and tokens[at + size].kind in ("letter", "sign", "digit", "open", "bar", "command")
        ):
            out.append(Token("text", word, part[0].start, part[-1].end, part[0].blank))
            at += size
        else:
            out.append(token)
            at += 1
    return out


def relates(tokens: Iterable[Token]) -> bool:
    """Does a relation sign, or "is in", stand among the tokens?"""
    return any(token.kind == "relation" or is_set_sign(token) for token in tokens)


def span_of(parts: Sequence[Statement]) -> Span:
    """From the first statement to the last."""
    return parts[0].span[0], parts[-1].span[1]


def side_of(words: str) -> str:
    """Lhs or Rhs where the words end so."""
    ending = re.sub(r"[^A-Za-z]", "", words)[-3:].capitalize()
    return ending if ending in ("Lhs", "Rhs") else ""


def is_number_for_letter(statement: Statement) -> bool:
    """x = 3 and the like."""
    return (
        isinstance(statement, Relation) and statement.operator == "=" and isinstance(statement.left, Symbol)
        and not letters(statement.right) - {"e", "pi"}
    )


def name_of(words: str) -> str:
    """A name for the words on a side."""
    if side_of(words):
        return side_of(words)
    letters_only = re.sub(r"[^A-Za-z]", "", words)
    return letters_only if len(letters_only) == 1 else letters_only.capitalize() if letters_only else "Name"


def speaks_of_sets(tokens: Sequence[Token]) -> bool:
    """P(A \\cup B): a union inside the brackets of a name."""
    return any(
        depth > 0 and token.kind == "command" and token.text in ("cup", "cap")
        and not any(one.kind in ("separator", ":") for one in tokens)
        for token, depth in with_depth(tokens)
    )


def says_whole(part: Statement, parts: Sequence[Statement]) -> bool:
    """n in Z beside x = 30 + 360n: it says what n is and is no condition on x."""
    return (
        isinstance(part, Relation) and part.operator == "\\in" and isinstance(part.left, Symbol)
        and any(
            isinstance(other, Relation) and other.operator == "=" and part.left.name in letters(other.right)
            for other in parts
        )
    )


def gives_number(part: Statement) -> bool:
    """An equation with a number on the right."""
    return isinstance(part, Relation) and part.operator == "=" and not letters(part.right) - PLAIN


def left_text(part: Statement) -> str | None:
    """The left side of an equation with a number on the right, to tell like ones."""
    return str(part.left) if gives_number(part) and isinstance(part, Relation) else None


def is_solved(part: Statement) -> bool:
    """Does it give a letter a value?"""
    return solved_letter(part) is not None


def solved_letter(part: Statement) -> str | None:
    """The letter that it gives a value to."""
    if isinstance(part, Relation) and part.operator in ("=", "\\approx") and isinstance(part.left, Symbol):
        return part.left.name
    return None


def all_equal(parts: Sequence[Statement]) -> bool:
    """x=2 and x=-5 as pupils write it: two values of one letter, in numbers, are alternatives whatever the word."""
    return all(isinstance(part, Relation) and not letters(part.right) - {"i", "e", "pi"} for part in parts)


def with_left(part: Statement, lead: Statement | None) -> Statement:
    """x = 2, -5: the value alone takes the letter of the value before it."""
    if isinstance(part, Expression) and not part.continues and isinstance(lead, Relation):
        return Relation(part.span, lead.left, lead.operator, part.body, lead.operator_span)
    return part
