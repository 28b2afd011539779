"""Angles in degrees: with the sign, without it where the bounds or numbers say so."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction as Rational

from checker.calculus.building import number, over, symbol, times
from checker.solutions import links
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
    System,
    letters,
    nodes_of,
    walk,
)

__all__ = ["WAVES", "has_angle", "in_degrees", "with_degrees"]

WAVES = frozenset({"sin", "cos", "tan", "sec", "csc", "cot"})
_INVERSES = frozenset({"arcsin", "arccos", "arctan"})
_LARGE = 45  # a bound or an angle from here on is no number of radians


def has_angle(statement: Statement) -> bool:
    """Does a sine or the like, its inverse or a degree sign stand in it?"""
    return any(
        (isinstance(node, Function) and node.name in WAVES | _INVERSES)
        or (isinstance(node, Postfix) and node.mark == "°")
        for top in nodes_of(statement) for node in walk(top)
    )


def in_degrees(statements: Iterable[Statement]) -> bool | None:
    """Are the angles of a working in degrees? None when nothing tells."""
    whole = tuple(statements)
    if not any(has_angle(statement) for statement in whole):
        return None
    nodes = [node for statement in whole for top in nodes_of(statement) for node in walk(top)]
    if any("pi" in letters(top) for statement in whole for top in nodes_of(statement)):
        return False
    if any(isinstance(node, Postfix) and node.mark == "°" for node in nodes):
        return True
    if any(_is_large(end) for statement in whole for left, sign, right in links(statement)
           if sign in ("<", ">", "\\le", "\\ge") for end in (left, right)):
        return True
    return None


def _is_large(node: Node) -> bool:
    node = node.body if isinstance(node, Negation) else node
    return isinstance(node, Number) and node.value >= _LARGE


def with_degrees(statement: Statement) -> Statement:
    """The statement with every angle as a number of degrees: signs left out, and put where a sine is taken."""
    match statement:
        case Relation(left=left, right=right):
            return replace(statement, left=_node(left), right=_node(right))
        case Chain(members=members):
            return replace(statement, members=tuple(_node(member) for member in members))
        case Alternatives(branches=branches):
            return replace(statement, branches=tuple(with_degrees(branch) for branch in branches))
        case System(parts=parts):
            return replace(statement, parts=tuple(with_degrees(part) for part in parts))
        case Expression(body=body):
            return replace(statement, body=_node(body))
        case Definition(body=body):
            return replace(statement, body=_node(body))
        case _:
            return statement


def _node(node: Node) -> Node:
    match node:
        case Postfix(body=body, mark="°"):
            return _node(body)
        case Function(name=name, arguments=(argument,)) if name in WAVES:
            angle = Postfix(argument.span, Bracket(argument.span, _node(argument), "("), "°")
            return replace(node, arguments=(angle,))
        case Function(name=name, arguments=(argument,)) if name in _INVERSES:
            return over(times(number(Rational(180)), replace(node, arguments=(_node(argument),))), symbol("pi"))
        case Function(arguments=arguments):
            return replace(node, arguments=tuple(_node(one) for one in arguments))
        case Sum(terms=terms):
            return replace(node, terms=tuple(replace(term, body=_node(term.body)) for term in terms))
        case Product(factors=factors):
            return replace(node, factors=tuple(_node(factor) for factor in factors))
        case Fraction(numerator=top, denominator=bottom):
            return replace(node, numerator=_node(top), denominator=_node(bottom))
        case Division(left=left, right=right):
            return replace(node, left=_node(left), right=_node(right))
        case Power(base=base, exponent=exponent):
            return replace(node, base=_node(base), exponent=_node(exponent))
        case Root(radicand=radicand):
            return replace(node, radicand=_node(radicand))
        case Negation() | PlusMinus() | Absolute() | Bracket() | Postfix():
            return replace(node, body=_node(node.body))
        case _:
            return node
