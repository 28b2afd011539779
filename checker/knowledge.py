"""What the lines so far say of functions, sequences and letters, put into later lines."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from checker.calculus.building import ONE, replaced
from checker.coefficients import NAMES, quadratic_of
from checker.syntax import (
    Bracket,
    Chain,
    Definition,
    Function,
    Node,
    Relation,
    Statement,
    Sum,
    Symbol,
    System,
    Term,
    letters,
    walk,
)

__all__ = ["NOTHING", "Knowledge", "Rule", "learned", "names_function", "solved_by_number"]

_BUILT_IN = frozenset({"deriv", "int", "sum", "prod", "lim", "limabove", "limbelow", "between", "integers"})


@dataclass(frozen=True, slots=True)
class Rule:
    """f(x) = body, from the line with that number."""

    letter: str
    body: Node
    index: int


@dataclass(frozen=True, slots=True)
class Knowledge:
    """Rules by the name of the function; letters that are given by others; sequences by their stem.

    Args:
        functions: f, f', h with their rules.
        letters: y with what it is by other letters, as rules whose letter is not said.
        terms: u with its rule in n.
        next_terms: u with the rule that gives a term by the one before: the letter n, and u_n inside.
        values: letters with a subscript that have a number for a value.
        sides: "Lhs" and "Rhs" with the two sides of the first equation.
        quadratic, quadratic_line: a, b and c of the last quadratic, and the line where it stands.
    """

    functions: Mapping[str, Rule] = field(default_factory=dict)
    letters: Mapping[str, Rule] = field(default_factory=dict)
    terms: Mapping[str, Rule] = field(default_factory=dict)
    next_terms: Mapping[str, Rule] = field(default_factory=dict)
    values: frozenset[str] = frozenset()
    sides: Mapping[str, Node] = field(default_factory=dict)
    quadratic: Mapping[str, Node] = field(default_factory=dict)
    quadratic_line: int = -1


NOTHING = Knowledge()


def names_function(node: Node) -> bool:
    """Is it a letter's function such as f(x), and no sine, integral or binomial?"""
    return isinstance(node, Function) and node.name not in _BUILT_IN and len(node.name.rstrip("'")) == 1


def learned(statements: Iterable[tuple[int, Statement]]) -> Knowledge:
    """Read off the definitions, a later one in the place of an earlier one."""
    functions: dict[str, Rule] = {}
    by_letter: dict[str, Rule] = {}
    terms: dict[str, Rule] = {}
    next_terms: dict[str, Rule] = {}
    values: set[str] = set()
    sides: dict[str, Node] = {}
    quadratic: Mapping[str, Node] = {}
    line = -1
    used: set[str] = set()
    for index, statement in statements:
        if not sides and isinstance(statement, Relation) and statement.operator in ("=", "\\equiv") and not (
            {"Lhs", "Rhs"} & letters(statement)
        ):
            sides = {"Lhs": statement.left, "Rhs": statement.right}
        if not quadratic and not used & set(NAMES):
            quadratic, line = quadratic_of(statement) or {}, index
        if not all(solved_by_number(part) for part in _parts(statement)):
            used |= letters(statement)
        for left, right in _equations(statement):
            match left:
                case Function(name=name, arguments=(Symbol(name=letter),), power=None) if names_function(left):
                    if letter in letters(right) and not any(
                        isinstance(node, Function) and node.name == name for node in walk(right)
                    ):
                        functions[name] = Rule(letter, right, index)
                case Symbol(name=name) if "_" in name:
                    if not letters(right):
                        values.add(name)
                    stem, _, place = name.partition("_")
                    last = f"{stem}_{place}-1"
                    if len(place) == 1 and place.isalpha() and last in letters(right):
                        ahead = Sum((0, 0), (Term((0, 0), "+", Symbol((0, 0), place)), Term((0, 0), "+", ONE)))
                        body = replaced(right, place, Bracket((0, 0), ahead, "("))
                        body = replaced(body, last, Symbol((0, 0), f"{stem}_{place}"))
                        next_terms[stem] = Rule(place, body, index)
                    elif len(place) == 1 and place.isalpha() and place in letters(right):
                        terms[stem] = Rule(place, right, index)
                    elif place.endswith("+1") and len(place) == 3 and f"{stem}_{place[0]}" in letters(right):
                        next_terms[stem] = Rule(place[0], right, index)
                case Symbol(name=name) if name not in letters(right) and letters(right):
                    by_letter[name] = Rule("", right, index)
                case _:
                    continue
    return Knowledge(functions, by_letter, terms, next_terms, frozenset(values), sides, quadratic, line)


def _parts(statement: Statement) -> tuple[Statement, ...]:
    return statement.parts if isinstance(statement, System) else (statement,)


def solved_by_number(statement: Statement) -> bool:
    """Is it a letter and its number, a = 1?"""
    return isinstance(statement, Relation) and isinstance(statement.left, Symbol) and not letters(statement.right)


def _equations(statement: Statement) -> Iterable[tuple[Node, Node]]:
    match statement:
        case System(parts=parts):
            for part in parts:
                yield from _equations(part)
        case Relation(left=left, operator="=" | "\\equiv", right=right):
            yield left, right
        case Chain(members=(left, *others), operators=operators, continues=False) if set(operators) <= {"="}:
            yield left, next((one for one in others if letters(one)), others[-1])
        case Definition(name=name, body=body):
            yield name, body
        case _:
            return


