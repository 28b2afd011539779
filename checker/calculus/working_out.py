"""Derivatives, integrals, sums and limits in a tree, worked out from the inside to ordinary trees."""

from __future__ import annotations

from dataclasses import replace

from checker.budget import Budget
from checker.calculus.antiderivative import antiderivative
from checker.calculus.building import replaced, subtracted, symbol
from checker.calculus.derivative import DEPENDENT, order_of, repeatedly_differentiated
from checker.calculus.domains import is_continuous, is_continuous_beyond
from checker.calculus.limits import limit
from checker.calculus.series import added_up, multiplied_up
from checker.polynomial import TooLargeError
from checker.refusals import UnsupportedError
from checker.syntax import (
    Absolute,
    Bracket,
    Division,
    Fraction,
    Function,
    Negation,
    Node,
    PlusMinus,
    Postfix,
    Power,
    Product,
    Root,
    Sum,
    Symbol,
)
from checker.syntax.shapes import unsigned

__all__ = ["worked_out", "worked_out_in"]

_LISTS = frozenset({"binom", "max", "min", "gcd", "lcm"})
_SECONDS = 0.4  # for one tree
_CONSTANTS = frozenset({"i", "e"})  # not so where they run
_RUNNER = "\0run"


def worked_out(node: Function, dependent: frozenset[str] = DEPENDENT) -> Node:
    """One derivative, integral between bounds, sum or limit as an ordinary tree.

    Args:
        node: the function of at least two arguments that it is.
        dependent: letters that are functions of the one that is differentiated by.
    Raises:
        UnsupportedError: it cannot be worked out here, or has no value.
        TooLargeError: it would be too large.
    """
    body = worked_out_in(node.arguments[0])
    letter = node.arguments[1]
    bounds = node.arguments[2:]
    if not isinstance(letter, Symbol):
        raise UnsupportedError
    name = letter.name
    if name in _CONSTANTS and node.name != "deriv":
        body, name = replaced(body, name, symbol(_RUNNER)), _RUNNER
    match node.name, len(bounds):
        case "deriv", 1:
            if isinstance(body, Symbol) and body.name != name:
                raise UnsupportedError
            return repeatedly_differentiated(body, name, order_of(bounds[0]), dependent)
        case "between", 2:
            return _between(body, name, *bounds)
        case "int", 2:
            return _integral(body, name, *bounds)
        case "sum", 2:
            return added_up(body, name, *bounds)
        case "prod", 2:
            return multiplied_up(body, name, *bounds)
        case ("lim" | "limabove" | "limbelow"), 1:
            return limit(body, name, bounds[0])
        case _:
            raise UnsupportedError


def _between(body: Node, name: str, low: Node, high: Node) -> Node:
    if _is_endless(low):
        raise UnsupportedError
    above = limit(body, name, high) if _is_endless(high) else replaced(body, name, high)
    return subtracted(above, replaced(body, name, low))


def _integral(body: Node, name: str, low: Node, high: Node) -> Node:
    """F(b) - F(a) where F is continuous from a to b; F' is the body wherever F is smooth between."""
    whole = antiderivative(body, name)
    if _is_endless(low):
        raise UnsupportedError
    if _is_endless(high):
        if not is_continuous_beyond(whole, name, low):
            raise UnsupportedError
    elif not is_continuous(whole, name, low, high):
        raise UnsupportedError
    return _between(whole, name, low, high)


def _is_endless(node: Node) -> bool:
    node = unsigned(node)
    return isinstance(node, Symbol) and node.name == "infty"


def worked_out_in(node: Node) -> Node:
    """The tree with all that can be worked out, innermost first; the rest stays as written.

    Raises:
        TooLargeError: it takes too long.
    """
    return _in_tree(node, Budget(_SECONDS))


def _in_tree(node: Node, budget: Budget) -> Node:
    match node:
        case Sum(terms=terms):
            return replace(node, terms=tuple(replace(term, body=_in_tree(term.body, budget)) for term in terms))
        case Product(factors=factors):
            return replace(node, factors=tuple(_in_tree(factor, budget) for factor in factors))
        case Fraction(numerator=top, denominator=bottom):
            return Fraction(node.span, _in_tree(top, budget), _in_tree(bottom, budget))
        case Division(left=left, right=right):
            return replace(node, left=_in_tree(left, budget), right=_in_tree(right, budget))
        case Power(base=base, exponent=exponent):
            return Power(node.span, _in_tree(base, budget), _in_tree(exponent, budget))
        case Root(radicand=radicand):
            return replace(node, radicand=_in_tree(radicand, budget))
        case Negation() | PlusMinus() | Absolute() | Bracket() | Postfix():
            return replace(node, body=_in_tree(node.body, budget))
        case Function(name=name, arguments=arguments) if len(arguments) > 1 and name not in _LISTS:
            if budget.is_over():
                raise TooLargeError
            try:
                return Bracket(node.span, worked_out(node), "(")
            except UnsupportedError:
                return node
        case Function(arguments=arguments):
            return replace(node, arguments=tuple(_in_tree(argument, budget) for argument in arguments))
        case _:
            return node
