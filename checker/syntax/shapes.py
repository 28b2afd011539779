"""The simple shapes of what is written: a node without its brackets or signs, its terms, a number in digits."""

from __future__ import annotations

from checker.syntax.tree import Bracket, Negation, Node, Number, Relation, Statement, Sum, Term

__all__ = ["bare", "is_equation", "is_literal", "terms_of", "unsigned"]


def bare(node: Node) -> Node:
    """The node without brackets around it."""
    while isinstance(node, Bracket):
        node = node.body
    return node


def unsigned(node: Node) -> Node:
    """The node without the brackets around it and the minus before it."""
    while isinstance(node, Bracket | Negation):
        node = node.body
    return node


def terms_of(node: Node) -> tuple[Term, ...]:
    """The terms of a sum, in brackets or not, or the node as the one term."""
    inner = bare(node)
    return inner.terms if isinstance(inner, Sum) else (Term(inner.span, "+", inner),)


def is_literal(node: Node) -> bool:
    """A number in digits, with or without a minus."""
    return isinstance(node.body if isinstance(node, Negation) else node, Number)


def is_equation(statement: Statement) -> bool:
    """One equation, no alternatives."""
    return isinstance(statement, Relation) and statement.operator == "="
