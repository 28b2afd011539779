"""Is a letter before a bracket a function's name or a factor? The lines of a working decide it together."""

from __future__ import annotations

from collections.abc import Iterable

from checker.syntax.applications import USER_FUNCTIONS
from checker.syntax.tree import (
    Bracket,
    Function,
    Node,
    Number,
    Product,
    Relation,
    Statement,
    Symbol,
    System,
    nodes_of,
    walk,
)

__all__ = ["function_readings"]

_MORE_FUNCTIONS = frozenset({"h", "p", "q", "r", "s", "u", "v", "w", "y"} | set("ABCDFGHKLMNPQRSTUVW"))


def function_readings(statements: Iterable[Statement]) -> frozenset[str]:
    """How letters before brackets are read in a working, as readings for `parse_line`.

    A letter is a function where a line says so, as f(x) = x^2 does. Else it is a factor when it also stands alone,
    when the bracket holds the letter itself, or when the bracket never holds a lone letter or number.

    Args:
        statements: all lines of the working, f and g before a bracket read as functions.
    Returns:
        "factor g" for each of f and g that is a factor, "function h" for each further letter that is a function.
    """
    whole = tuple(statements)
    nodes = [node for statement in whole for top in nodes_of(statement) for node in walk(top)]
    applied = [node for node in nodes if isinstance(node, Function) and node.name in USER_FUNCTIONS]
    alone = {node.name for node in nodes if isinstance(node, Symbol)}
    defined = {name for statement in whole for name in _defined(statement)}
    found = set()
    for name in {node.name for node in applied} - defined:
        arguments = [node.arguments[0] for node in applied if node.name == name]
        if name in alone or not any(isinstance(one, Symbol | Number | Function) for one in arguments):
            found.add(f"factor {name}")
    return frozenset(found | {f"function {name}" for name in defined - USER_FUNCTIONS if _only_applied(name, nodes)})


def _defined(statement: Statement) -> Iterable[str]:
    """The letters that the statement gives the values of, as in f(x) = x^2 or y = f(x)."""
    if isinstance(statement, System):
        for part in statement.parts:
            yield from _defined(part)
        return
    if not isinstance(statement, Relation) or statement.operator not in ("=", "\\equiv"):
        return
    for one, other in ((statement.left, statement.right), (statement.right, statement.left)):
        match one:
            case Function(name=name, arguments=(Symbol(),)) if name in USER_FUNCTIONS:
                if not any(isinstance(node, Symbol) and node.name == name for node in walk(other)):
                    yield name
            case Product(factors=(Symbol(name=name), Bracket(body=Symbol(name=inner))), joins=("",)):
                names = {node.name for node in walk(other) if isinstance(node, Symbol)}
                if name in _MORE_FUNCTIONS and inner in names and name not in names:
                    yield name
            case _:
                continue


def _only_applied(name: str, nodes: Iterable[Node]) -> bool:
    """Does the letter never stand but before a bracket?"""
    alone = before = 0
    for node in nodes:
        if isinstance(node, Symbol):
            alone += node.name == name
        elif isinstance(node, Product):
            before += sum(
                isinstance(one, Symbol) and one.name == name and isinstance(two, Bracket) and join == ""
                for one, two, join in zip(node.factors, node.factors[1:], node.joins, strict=False)
            )
    return alone == before
