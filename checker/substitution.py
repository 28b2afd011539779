"""Letters replaced by what they are known to be."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from checker.syntax import (
    Absolute,
    Alternatives,
    Bracket,
    Chain,
    Definition,
    Division,
    Expression,
    Fraction,
    Function,
    Negation,
    Node,
    Number,
    PlusMinus,
    Postfix,
    Power,
    Product,
    Relation,
    Root,
    Statement,
    Sum,
    Symbol,
    System,
    letters,
)

__all__ = ["known_values", "solved_for", "substituted", "substituted_in"]


def solved_for(statement: Statement) -> tuple[str, Node] | None:
    """The letter and its value, when the statement is "letter = something without that letter"."""
    match statement:
        case Definition(name=name, body=body):
            return name.name, body
        case Relation(left=Symbol(name=name), operator="=", right=right) if name not in letters(right):
            return name, right
        case Relation(left=left, operator="=", right=Symbol(name=name)) if name not in letters(left):
            return name, left
        case Chain(members=(Symbol(name=name), *_, last), operators=operators, continues=False) if (
            set(operators) == {"="} and name not in letters(last)
        ):
            return name, last
        case _:
            return None


def known_values(statements: Iterable[Statement]) -> dict[str, Node]:
    """What each letter is known to be; a later statement takes the place of an earlier one."""
    found: dict[str, Node] = {}
    for statement in statements:
        parts = statement.parts if isinstance(statement, System) else (statement,)
        for part in parts:
            solved = solved_for(part)
            if solved is not None:
                found[solved[0]] = solved[1]
    return found


def substituted(node: Node, values: Mapping[str, Node]) -> Node:
    """The node with each known letter replaced by its value in brackets."""
    if not values or not letters(node) & values.keys():
        return node
    match node:
        case Symbol(span=span, name=name):
            value = values[name]
            return value if isinstance(value, Symbol | Number) else Bracket(span, value, "(")
        case Sum(terms=terms):
            return replace(node, terms=tuple(replace(term, body=substituted(term.body, values)) for term in terms))
        case Product(factors=factors):
            return replace(node, factors=tuple(substituted(factor, values) for factor in factors))
        case Fraction(numerator=top, denominator=bottom):
            return replace(node, numerator=substituted(top, values), denominator=substituted(bottom, values))
        case Division(left=left, right=right):
            return replace(node, left=substituted(left, values), right=substituted(right, values))
        case Power(base=base, exponent=exponent):
            return replace(node, base=substituted(base, values), exponent=substituted(exponent, values))
        case Root(radicand=radicand):
            return replace(node, radicand=substituted(radicand, values))
        case Negation() | PlusMinus() | Absolute() | Bracket() | Postfix():
            return replace(node, body=substituted(node.body, values))
        case Function(arguments=arguments):
            return replace(node, arguments=tuple(substituted(argument, values) for argument in arguments))
        case _:
            return node


def substituted_in(statement: Statement, values: Mapping[str, Node]) -> Statement:
    """The statement with known letters replaced in every side."""
    match statement:
        case Relation(left=left, right=right):
            return replace(statement, left=substituted(left, values), right=substituted(right, values))
        case Chain(members=members):
            return replace(statement, members=tuple(substituted(member, values) for member in members))
        case Alternatives(branches=branches):
            return replace(statement, branches=tuple(substituted_in(branch, values) for branch in branches))
        case System(parts=parts):
            return replace(statement, parts=tuple(substituted_in(part, values) for part in parts))
        case Expression(body=body):
            return replace(statement, body=substituted(body, values))
        case _:
            return statement
