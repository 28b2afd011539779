"""a, b and c of a quadratic in its formula and its discriminant."""

from __future__ import annotations

from collections.abc import Mapping

from checker.errors import ParseError
from checker.polynomial import TooLargeError, coefficients_in, letters_in
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import Expression, Node, Relation, Statement, letters, parse_expression
from checker.written import polynomial_latex

__all__ = ["NAMES", "discriminant_of", "quadratic_of"]

NAMES = ("a", "b", "c")
_CONSTANTS = frozenset({"pi", "i"})


def quadratic_of(statement: Statement) -> Mapping[str, Node] | None:
    """a, b and c of a quadratic equation or expression in x or in its only letter; None when it is none.

    Letters besides x are taken for constants.
    """
    right: Node | None = None
    match statement:
        case Relation(left=left, operator="=" | "<" | ">" | "\\le" | "\\ge", right=right):
            pass
        case Expression(body=left, continues=False):
            pass
        case _:
            return None
    names = letters(statement) - _CONSTANTS
    if names & set(NAMES):
        return None
    letter = "x" if "x" in names else min(names) if len(names) == 1 else None
    if letter is None:
        return None

    def work(ring: Ring) -> list[str] | None:
        top, bottom = ring.quotient(left)
        rest = top if right is None else ring.difference((top, bottom), ring.quotient(right))
        if ring.denominators or letter not in ring.index:
            return None
        if any(ring.names[one].startswith("\0") for one in letters_in(rest)):
            return None
        parts = coefficients_in(rest, ring.index[letter])
        return [polynomial_latex(part, ring.names) for part in reversed(parts)] if len(parts) == 3 else None

    try:
        texts = in_ring(work)
        return None if texts is None else {
            name: parse_expression(text) for name, text in zip(NAMES, texts, strict=True)
        }
    except (TooLargeError, UnsupportedError, UndefinedError, ParseError):
        return None


def discriminant_of() -> Node:
    """b^2 - 4ac."""
    return parse_expression("b^2-4ac")
