"""A ± written out: one statement for the upper signs and one for the lower."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from checker.syntax.tree import (
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
    PlusMinus,
    Postfix,
    Power,
    Product,
    Relation,
    Root,
    Statement,
    Steps,
    Sum,
    System,
    Term,
    nodes_of,
    walk,
)

__all__ = ["has_plus_minus", "resolved", "unfolded"]

Choice = Literal["upper", "lower"]


def has_plus_minus(part: Node | Statement) -> bool:
    """Does a ± or ∓ stand anywhere in it?"""
    match part:
        case Expression() | Relation() | Chain() | Alternatives() | System() | Steps() | Definition():
            return any(has_plus_minus(node) for node in nodes_of(part))
        case _:
            for node in walk(part):  # type: ignore[arg-type]
                if isinstance(node, PlusMinus):
                    return True
                if isinstance(node, Sum) and any(term.sign in ("±", "∓") for term in node.terms):
                    return True
            return False


def unfolded(statement: Statement) -> Statement:
    """The statement with each ± written out as alternatives: like signs together, ∓ against them."""
    match statement:
        case Alternatives(branches=branches):
            flat: list[Statement] = []
            for branch in branches:
                one = unfolded(branch)
                flat.extend(one.branches if isinstance(one, Alternatives) else (one,))
            return replace(statement, branches=tuple(flat))
        case System(parts=parts):
            return replace(statement, parts=tuple(unfolded(part) for part in parts))
        case Steps(parts=parts):
            return replace(statement, parts=tuple(unfolded(part) for part in parts))
        case Relation() | Chain() if has_plus_minus(statement):
            return Alternatives(statement.span, (_chosen(statement, "upper"), _chosen(statement, "lower")))
        case _:
            return statement


def _chosen(statement: Relation | Chain, choice: Choice) -> Statement:
    if isinstance(statement, Relation):
        return replace(statement, left=resolved(statement.left, choice), right=resolved(statement.right, choice))
    return replace(statement, members=tuple(resolved(member, choice) for member in statement.members))


def resolved(node: Node, choice: Choice) -> Node:
    """The node with each ± read as its upper or its lower sign."""
    match node:
        case Sum(terms=terms):
            return replace(node, terms=tuple(_term(term, choice) for term in terms))
        case Product(factors=factors):
            return replace(node, factors=tuple(resolved(factor, choice) for factor in factors))
        case Fraction(numerator=top, denominator=bottom):
            return replace(node, numerator=resolved(top, choice), denominator=resolved(bottom, choice))
        case Division(left=left, right=right):
            return replace(node, left=resolved(left, choice), right=resolved(right, choice))
        case Power(base=base, exponent=exponent):
            return replace(node, base=resolved(base, choice), exponent=resolved(exponent, choice))
        case Root(radicand=radicand):
            return replace(node, radicand=resolved(radicand, choice))
        case PlusMinus(span=span, body=body, operator=operator):
            inner = resolved(body, choice)
            return inner if (operator == "±") == (choice == "upper") else Negation(span, inner)
        case Negation() | Absolute() | Bracket() | Postfix():
            return replace(node, body=resolved(node.body, choice))
        case Function(arguments=arguments):
            return replace(node, arguments=tuple(resolved(argument, choice) for argument in arguments))
        case _:
            return node


def _term(term: Term, choice: Choice) -> Term:
    sign = term.sign
    if sign in ("±", "∓"):
        sign = "+" if (sign == "±") == (choice == "upper") else "-"
    return replace(term, sign=sign, body=resolved(term.body, choice))
