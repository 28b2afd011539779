"""Documented slips with fractions, powers, roots, logarithms and functions: a node to its wrong values."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction as Rational
from itertools import combinations
from math import lcm

from checker.slips.catalogue.bracket_rules import sum_terms
from checker.slips.values import (
    Value,
    add,
    as_constant,
    constant,
    divide,
    multiply,
    negate,
    scale,
    subtract,
    term_value,
    total,
    value_of,
)
from checker.syntax.shapes import bare
from checker.syntax.tree import Division, Fraction, Node, Product, Sum

MOST_BOTTOMS = 12  # common denominators tried


def halves(node: Node) -> tuple[Node, Node] | None:
    inner = bare(node)
    if isinstance(inner, Fraction):
        return inner.numerator, inner.denominator
    return (inner.left, inner.right) if isinstance(inner, Division) else None


def _fractions(node: Node) -> Iterator[tuple[Value, Value, Value, Value, Value]]:
    """Two terms of a sum as signed tops and bottoms, and the rest of the sum."""
    if not isinstance(node, Sum):
        return
    found: list[tuple[Value, Value, Value]] = []
    for term in node.terms:
        parts = halves(term.body)
        top, bottom = (value_of(parts[0]), value_of(parts[1])) if parts else (value_of(term.body), constant(1))
        found.append((negate(top) if term.sign == "-" else top, bottom, term_value(term)))
    for (a, b, first), (c, d, second) in combinations(found, 2):
        if b != constant(1) or d != constant(1):
            yield a, b, c, d, subtract(value_of(node), add(first, second))


def term_cancelled(node: Node) -> Iterator[Value]:
    """(x+6)/x to 6, and to 1+6 or x+1: a term struck out against the bottom."""
    if (parts := halves(node)) is None:
        return
    bottom = value_of(parts[1])
    for term in sum_terms(parts[0]):
        if term == bottom:
            rest = subtract(value_of(parts[0]), term)
            yield rest
            yield add(rest, constant(1))
        ratio = divide(term, bottom)
        yield add(subtract(value_of(parts[0]), term), ratio)


def terms_cancelled(node: Node) -> Iterator[Value]:
    """(x+3)/(x+7) to 3/7."""
    if (parts := halves(node)) is None:
        return
    for term in sum_terms(parts[0]):
        if term in sum_terms(parts[1]):
            yield divide(subtract(value_of(parts[0]), term), subtract(value_of(parts[1]), term))


def one_term_divided(node: Node) -> Iterator[Value]:
    if (parts := halves(node)) is None:
        return
    terms, bottom = sum_terms(parts[0]), value_of(parts[1])
    for size in range(1, len(terms)):
        for chosen in combinations(range(len(terms)), size):
            yield total(divide(term, bottom) if n in chosen else term for n, term in enumerate(terms))


def tops_and_bottoms_added(node: Node) -> Iterator[Value]:
    for a, b, c, d, rest in _fractions(node):
        yield add(rest, divide(add(a, c), add(b, d)))


def tops_not_scaled(node: Node) -> Iterator[Value]:
    for a, b, c, d, rest in _fractions(node):
        first, second = as_constant(b), as_constant(d)
        bottoms = [multiply(b, d)]
        if first and second and first.denominator == second.denominator == 1:
            shared, whole = lcm(first.numerator, second.numerator), abs(first * second)
            bottoms = [constant(shared * times) for times in range(1, MOST_BOTTOMS + 1) if shared * times <= whole]
        for bottom in bottoms:
            yield add(rest, divide(add(a, c), bottom))


def bottom_split(node: Node) -> Iterator[Value]:
    if (parts := halves(node)) is not None and (terms := sum_terms(parts[1])):
        top = value_of(parts[0])
        yield total(divide(top, term) for term in terms)
        if top == constant(1):
            yield total(_unnested(term) for term in terms)


def _unnested(term: Value) -> Value:
    return divide(constant(1), term)


def minus_at_bar(node: Node) -> Iterator[Value]:
    if not isinstance(node, Sum):
        return
    for term in node.terms:
        if term.sign == "-" and (parts := halves(term.body)) is not None:
            for part in sum_terms(parts[0])[1:]:
                yield add(value_of(node), scale(divide(part, value_of(parts[1])), Rational(2)))


def _nested(node: Node) -> tuple[Value, Value, Value, Value] | None:
    if (parts := halves(node)) is None:
        return None
    top, bottom = halves(parts[0]), halves(parts[1])
    if top is None and bottom is None:
        return None
    a, b = (value_of(top[0]), value_of(top[1])) if top else (value_of(parts[0]), constant(1))
    c, d = (value_of(bottom[0]), value_of(bottom[1])) if bottom else (value_of(parts[1]), constant(1))
    return a, b, c, d


def not_turned_over(node: Node) -> Iterator[Value]:
    if (found := _nested(node)) is not None:
        a, b, c, d = found
        yield divide(multiply(a, c), multiply(b, d))


def first_turned_over(node: Node) -> Iterator[Value]:
    if (found := _nested(node)) is not None:
        a, b, c, d = found
        yield divide(multiply(b, c), multiply(a, d))


def both_multiplied(node: Node) -> Iterator[Value]:
    if isinstance(node, Product):
        for factor in node.factors:
            if isinstance(bare(factor), Fraction):
                yield value_of(factor)
        outside = [value_of(factor) for factor in node.factors if not isinstance(bare(factor), Fraction)]
        if outside and len(outside) < len(node.factors):
            whole = constant(1)
            for value in outside:
                whole = multiply(whole, value)
            yield divide(value_of(node), whole)
            yield divide(value_of(node), multiply(whole, whole))


def reciprocal_spread(node: Node) -> Iterator[Value]:
    if (parts := halves(node)) is not None and (terms := sum_terms(parts[1])):
        yield total(divide(value_of(parts[0]), term) for term in terms)


def opposites_cancelled(node: Node) -> Iterator[Value]:
    if (parts := halves(node)) is not None and value_of(parts[0]) == negate(value_of(parts[1])):
        yield constant(1)
        yield {}


