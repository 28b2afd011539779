"""Slips that teachers meet every day and that no work of the catalogue lists: a node to its wrong values."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations, pairwise
from math import isqrt

from checker.slips.catalogue.bracket_rules import sum_terms
from checker.slips.catalogue.fraction_rules import halves
from checker.slips.catalogue.power_rules import LOGARITHMS, applied, raised_to
from checker.slips.values import (
    Value,
    add,
    as_constant,
    constant,
    divide,
    is_monomial,
    multiply,
    negate,
    power,
    subtract,
    term_value,
    value_of,
)
from checker.syntax.shapes import bare
from checker.syntax.tree import Function, Node, Power, Product, Sum, Term

OTHER = {"sin": "cos", "cos": "sin"}


def _logarithm(term: Term) -> tuple[Function, Value, Value] | None:
    """The logarithm in a term, its argument, and the signed number before it."""
    body = bare(term.body)
    factors = body.factors if isinstance(body, Product) else (body,)
    logs = [factor for factor in factors if isinstance(factor, Function) and factor.name in LOGARITHMS]
    if len(logs) != 1 or logs[0].power is not None or len(logs[0].arguments) != 1:
        return None
    before = constant(-1 if term.sign == "-" else 1)
    for factor in factors:
        if factor is not logs[0]:
            before = multiply(before, value_of(factor))
    return logs[0], value_of(logs[0].arguments[0]), before


def _two_logarithms(node: Node) -> Iterator[tuple[Function, Value, Value, Value, Value, Value]]:
    """Two logarithms of a sum: function, arguments, numbers before them, and the rest of the sum."""
    if not isinstance(node, Sum):
        return
    found = [(term, log) for term in node.terms if (log := _logarithm(term)) is not None]
    for (first, one), (second, two) in combinations(found, 2):
        rest = subtract(value_of(node), add(term_value(first), term_value(second)))
        yield one[0], one[1], two[1], one[2], two[2], rest


def logs_joined(node: Node) -> Iterator[Value]:
    """ln a + ln b to ln(a+b), ln a - ln b to ln(a-b)."""
    for log, a, b, m, n, rest in _two_logarithms(node):
        if m == constant(1) and as_constant(n) in (1, -1):
            yield add(rest, applied(log, add(a, multiply(n, b))))


def logs_multiplied(node: Node) -> Iterator[Value]:
    """ln a + ln b to ln a ln b, ln a - ln b to ln a over ln b."""
    for log, a, b, m, n, rest in _two_logarithms(node):
        if m == constant(1) and n == constant(1):
            yield add(rest, multiply(applied(log, a), applied(log, b)))
        if m == constant(1) and n == constant(-1):
            yield add(rest, divide(applied(log, a), applied(log, b)))


def number_over_both_logs(node: Node) -> Iterator[Value]:
    """2 ln x + ln y to 2 ln(xy)."""
    for log, a, b, m, n, rest in _two_logarithms(node):
        if as_constant(n) in (1, -1) and m != constant(1):
            inside = multiply(a, b) if n == constant(1) else divide(a, b)
            yield add(rest, multiply(m, applied(log, inside)))


def number_taken_into_power(node: Node) -> Iterator[Value]:
    """2(x+1)^2 to (2x+2)^2."""
    if not isinstance(node, Product):
        return
    raised = [factor for factor in node.factors if isinstance(factor, Power)]
    if len(raised) != 1:
        return
    exponent = as_constant(value_of(raised[0].exponent))
    if exponent is None or exponent.denominator != 1 or not 2 <= exponent <= 6:
        return
    whole = value_of(raised[0].base)
    for factor in node.factors:
        if factor is not raised[0]:
            whole = multiply(whole, value_of(factor))
    yield power(whole, exponent)


def powers_of_numbers_added(node: Node) -> Iterator[Value]:
    """2^a + 2^a to 4^a, 2^a + 3^a to 5^a."""
    if not isinstance(node, Sum):
        return
    raised = [term for term in node.terms if isinstance(bare(term.body), Power) and term.sign == "+"]
    for first, second in combinations(raised, 2):
        one, two = bare(first.body), bare(second.body)
        assert isinstance(one, Power) and isinstance(two, Power)
        a, b = as_constant(value_of(one.base)), as_constant(value_of(two.base))
        exponent = value_of(one.exponent)
        if a is None or b is None or exponent != value_of(two.exponent) or as_constant(exponent) is not None:
            continue
        rest = subtract(value_of(node), add(term_value(first), term_value(second)))
        yield add(rest, raised_to(constant(a + b), exponent))
        yield add(rest, raised_to(constant(a * b), exponent))
        yield add(rest, raised_to(constant(a), add(exponent, exponent)))


def cancelled_in_one_term(node: Node) -> Iterator[Value]:
    """(x(x-1)+5)/(x-1) to x+5."""
    parts = halves(node)
    top = bare(parts[0]) if parts is not None else None
    if parts is None or not isinstance(top, Sum):
        return
    bottom = value_of(parts[1])
    for term in top.terms:
        body = bare(term.body)
        if not isinstance(body, Product):
            continue
        kept = [factor for factor in body.factors if value_of(factor) != bottom]
        if len(kept) != len(body.factors) - 1:
            continue
        left = constant(-1 if term.sign == "-" else 1)
        for factor in kept:
            left = multiply(left, value_of(factor))
        yield add(subtract(value_of(top), term_value(term)), left)


def wrong_factor_left(node: Node) -> Iterator[Value]:
    """(y^2-9)/(y+3) to y+3: the factor that cancels is kept."""
    parts = halves(node)
    if parts is None:
        return
    terms, bottom = sum_terms(parts[0]), sum_terms(parts[1])
    if len(terms) == len(bottom) == 2:
        top = value_of(parts[0])
        a, b = bottom
        if top == subtract(multiply(a, a), multiply(b, b)):
            yield add(a, b)
            yield negate(subtract(a, b))


def root_of_power(node: Node) -> Iterator[Value]:
    """16^{1/2} to 8, 27^{2/3} to 18: the number times the power."""
    if isinstance(node, Power):
        base, exponent = as_constant(value_of(node.base)), as_constant(value_of(node.exponent))
        if base is not None and exponent is not None and exponent.denominator > 1:
            yield constant(base * exponent)


def negative_fraction_power(node: Node) -> Iterator[Value]:
    """8^{-1/3} to -2."""
    if isinstance(node, Power):
        base, exponent = as_constant(value_of(node.base)), as_constant(value_of(node.exponent))
        if base is not None and base > 0 and exponent is not None and exponent < 0:
            yield negate(power(constant(base), -exponent))


def square_of_root_squared(node: Node) -> Iterator[Value]:
    """sqrt(3) times sqrt(3) to 9."""
    if isinstance(node, Product):
        for first, second in combinations(node.factors, 2):
            a, b = value_of(first), value_of(second)
            if a == b and is_monomial(a):
                number = as_constant(multiply(a, b))
                if number is not None and number > 0 and isqrt(int(number)) ** 2 != number:
                    yield multiply(divide(value_of(node), constant(number)), constant(number * number))


def pythagoras_not_squared(node: Node) -> Iterator[Value]:
    """1 - sin^2 t to cos t."""
    terms = sum_terms(node)
    if len(terms) != 2 or constant(1) not in terms or not isinstance(node, Sum):
        return
    for term in node.terms:
        body = bare(term.body)
        if isinstance(body, Function) and body.name in OTHER and body.power is not None and term.sign == "-":
            inside = value_of(body.arguments[0])
            yield applied(replace(body, name=OTHER[body.name]), inside)


def subtracted_before_multiplied(node: Node) -> Iterator[Value]:
    """12 - 3 times 2k to 9 times 2k."""
    if not isinstance(node, Sum):
        return
    for first, second in pairwise(node.terms):
        body = bare(second.body)
        if not isinstance(body, Product) or not any(body.joins):
            continue
        front = value_of(body.factors[0])
        rest = constant(1)
        for factor in body.factors[1:]:
            rest = multiply(rest, value_of(factor))
        front = add(term_value(first), negate(front) if second.sign == "-" else front)
        others = subtract(value_of(node), add(term_value(first), term_value(second)))
        yield add(others, multiply(front, rest))
