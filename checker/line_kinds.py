"""What kind of line a statement is: a value, a bound, a boundary, the same with letters exchanged."""

from __future__ import annotations

from dataclasses import replace

from checker.bounds import is_limit
from checker.knowledge import solved_by_number
from checker.outcome import Known
from checker.relations import compare_relations, solved_letter, unfolded_branches
from checker.rounding import decimal_places
from checker.solutions import links
from checker.substitution import solved_for, substituted_in
from checker.syntax import (
    Relation,
    Statement,
    Steps,
    Symbol,
    System,
    letters,
    to_latex,
)

__all__ = [
    "CONSTANTS", "are_values", "bounds_values", "is_bound", "is_boundary", "is_domain", "is_exchanged",
    "is_value", "is_value_given", "parts_of_line", "valued_letter",
]

CONSTANTS = frozenset({"pi", "i"})


def parts_of_line(statement: Statement) -> tuple[Statement, ...]:
    """The statements of a line that stand one after another."""
    if isinstance(statement, Steps):
        return tuple(part for whole in statement.parts for part in parts_of_line(whole))
    return (statement,)


def is_boundary(first: Statement, second: Statement, known: Known) -> bool:
    """(x-5)(x+3) = 0 or x = 5, -3 after (x-5)(x+3) > 0."""
    if not isinstance(first, Relation) or first.operator not in ("<", ">", "\\le", "\\ge"):
        return False
    if not links(second) or any(sign != "=" for _, sign, _ in links(second)):
        return False
    equation = replace(first, operator="=")
    return letters(first) == letters(second) and compare_relations(equation, second, known).kind == "follows"


def is_bound(statement: Statement) -> bool:
    """x < 3 or x >= -1: a letter and a number."""
    return (
        isinstance(statement, Relation) and statement.operator in ("<", ">", "\\le", "\\ge")
        and isinstance(statement.left, Symbol) and not letters(statement.right)
    )


def bounds_values(first: Statement, second: Statement) -> bool:
    """x > 0 after x = -12 or x = 7: a condition by which one is left out."""
    return (
        isinstance(second, Relation) and is_limit(second) and second.operator != "\\ne"
        and len(unfolded_branches(first)) > 1 and solved_letter(first) is not None
        and letters(second) == {solved_letter(first)}
        and isinstance(second.left, Symbol) != isinstance(second.right, Symbol)
    )


def valued_letter(statement: Statement) -> str | None:
    """The letter that a line such as x = 5 gives a number to."""
    solved = solved_for(statement)
    return solved[0] if solved is not None and solved_by_number(statement) else None


def are_values(first: Statement, second: Statement) -> bool:
    """Do both give a number in digits to the same letter?"""
    one, other = solved_for(first), solved_for(second)
    if one is None or other is None or one[0] != other[0]:
        return False
    numbers = decimal_places(one[1]), decimal_places(other[1])
    return numbers[0] is not None and numbers[1] is not None and numbers[0][1] <= numbers[1][1]


def is_exchanged(first: Statement, second: Statement) -> bool:
    """Is the second the first with its two letters exchanged?"""
    names = sorted(letters(first) - CONSTANTS)
    if len(names) != 2 or not isinstance(first, Relation) or not isinstance(second, Relation):
        return False
    one, other = names
    swapped = substituted_in(first, {one: Symbol(first.span, other), other: Symbol(first.span, one)})
    return to_latex(swapped) == to_latex(second)


def is_domain(statement: Statement) -> bool:
    """x is a whole number."""
    return isinstance(statement, Relation) and statement.operator == "\\in"


def is_value(statement: Statement) -> bool:
    """x = 3 or y = 2x + 1: something that can be put in later."""
    if isinstance(statement, System):
        return all(solved_for(part) is not None for part in statement.parts)
    return solved_for(statement) is not None


def is_value_given(statement: Statement) -> bool:
    """u = 3, a = 2, s = 4: numbers for letters."""
    parts = statement.parts if isinstance(statement, System) else (statement,)
    return bool(parts) and all(solved_by_number(part) for part in parts)
