"""Documented slips in arithmetic and in putting values in: a node to the wrong values it is turned into."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction as Rational

from checker.slips.catalogue.fraction_rules import halves
from checker.slips.catalogue.power_rules import raised_value
from checker.slips.values import Value, add, as_constant, is_monomial, negate, scale, subtract, term_value, value_of
from checker.syntax.tree import Node, Number, Power, Product, Sum, Term


def substituted_without_bracket(node: Node) -> Iterator[Value]:
    """3(-2)^2 to -12."""
    for term in (node, *(term.body for term in getattr(node, "terms", ()) if isinstance(term, Term))):
        if isinstance(term, Product | Power):
            for factor in term.factors if isinstance(term, Product) else (term,):
                found = raised_value(factor)
                if found is not None and as_constant(found[0]) is not None and found[1] % 2 == 0:
                    yield subtract(value_of(node), scale(value_of(term), Rational(2)))


def digits_side_by_side(node: Node) -> Iterator[Value]:
    """5 times 3 to 53."""
    if isinstance(node, Product):
        numbers = [factor for factor in node.factors if isinstance(factor, Number)]
        if len(numbers) > 1 and all(number.text.isdigit() for number in numbers[:6]):
            joined = int("".join(number.text for number in numbers[:6]))
            whole = Rational(1)
            for number in numbers[:6]:
                whole *= number.value
            if whole:
                yield scale(value_of(node), joined / whole)


def added_first(node: Node) -> Iterator[Value]:
    """4+6x to 10x."""
    if isinstance(node, Sum):
        for first, second in zip(node.terms, node.terms[1:], strict=False):
            value, number = term_value(second), as_constant(term_value(first))
            if number is not None and is_monomial(value):
                (key, coefficient), = value.items()
                rest = subtract(value_of(node), add(term_value(first), value))
                yield add(rest, {key: number + coefficient} if number + coefficient else {})


def subtracted_backwards(node: Node) -> Iterator[Value]:
    """5-12 to 7."""
    if isinstance(node, Sum):
        for first, second in zip(node.terms, node.terms[1:], strict=False):
            if second.sign == "-":
                difference = add(term_value(first), term_value(second))
                yield subtract(value_of(node), scale(difference, Rational(2)))


def quotient_sign(node: Node) -> Iterator[Value]:
    if halves(node) is not None:
        yield negate(value_of(node))
