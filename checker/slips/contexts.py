"""Where in two lines the difference lies: pairs of parts that should be equal while all around them is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from checker.slips.values import TooLarge, term_value, value_of
from checker.syntax.shapes import bare
from checker.syntax.tree import Bracket, Division, Fraction, Function, Negation, Node, Power, Product, Root, Sum, Term

__all__ = ["Pair", "inner_pair", "narrowed", "same_value"]

Pair = tuple[Node, Node]


def narrowed(before: Node, written: Node) -> list[Pair]:
    """The pairs from the innermost outwards, the whole pair last."""
    found: list[Pair] = [(before, written)]
    for _ in range(12):
        try:
            inner = next(_inside(*found[-1]), None)
        except TooLarge:
            break
        if inner is None:
            break
        found.append(inner)
    return found[::-1]


def inner_pair(before: Node, written: Node) -> Pair | None:
    """The one pair of parts in which two expressions other than sums differ."""
    if isinstance(bare(before), Sum) and isinstance(bare(written), Sum):
        return None
    return next(_inside(before, written), None)


def same_value(first: Node, second: Node) -> bool:
    """Are the two equal as sums of monomials?"""
    return value_of(first) == value_of(second)


def _inside(before: Node, written: Node) -> Iterator[Pair]:
    match bare(before), bare(written):
        case (Negation(body=first), Negation(body=second)):
            if len(value_of(second)) > 1:
                yield first, second
        case (Fraction() | Division() as first, Fraction() | Division() as second):
            (top, bottom), (other_top, other_bottom) = _halves(first), _halves(second)
            if same_value(bottom, other_bottom):
                yield top, other_top
            elif same_value(top, other_top):
                yield bottom, other_bottom
        case (Power(base=base, exponent=first), Power(base=other, exponent=second)):
            if same_value(first, second):
                yield base, other
        case (Root(radicand=first, index=one), Root(radicand=second, index=two)):
            if (one is None and two is None) or (one is not None and two is not None and same_value(one, two)):
                yield first, second
        case (Function(name=one, arguments=(first,)), Function(name=two, arguments=(second,))) if one == two:
            yield first, second
        case (Product() as first, Product() as second):
            yield from _factors(first, second)
        case (Sum() as first, Sum() as second):
            yield from _terms(first, second)
        case _:
            return


def _halves(node: Fraction | Division) -> Pair:
    return (node.numerator, node.denominator) if isinstance(node, Fraction) else (node.left, node.right)


def _factors(before: Product, written: Product) -> Iterator[Pair]:
    first, second = _chunks(before), _chunks(written)
    if len(first) == len(second):
        odd = [place for place, pair in enumerate(zip(first, second, strict=True)) if not same_value(*pair)]
        if len(odd) == 1 and len(first) > 1:
            yield first[odd[0]], second[odd[0]]
            return
    rest, other = list(first), list(second)
    for factor in first:
        equal = next((twin for twin in other if same_value(factor, twin)), None)
        if equal is not None:
            rest = [kept for kept in rest if kept is not factor]
            other = [kept for kept in other if kept is not equal]
    if len(other) == 1 and rest and len(rest) < len(first):
        yield _product_of(rest), other[0]


def _chunks(node: Product) -> list[Node]:
    """The factors as the writer sets them apart: by signs of multiplication, else by brackets."""
    found: list[list[Node]] = [[node.factors[0]]]
    explicit = any(node.joins)
    for join, factor in zip(node.joins, node.factors[1:], strict=True):
        if join or (not explicit and (isinstance(factor, Bracket) or isinstance(found[-1][-1], Bracket))):
            found.append([factor])
        else:
            found[-1].append(factor)
    return [_product_of(chunk) for chunk in found]


def _product_of(factors: Sequence[Node]) -> Node:
    if len(factors) == 1:
        return factors[0]
    span = (factors[0].span[0], factors[-1].span[1])
    return Product(span, tuple(factors), ("",) * (len(factors) - 1))


def _terms(before: Sum, written: Sum) -> Iterator[Pair]:
    """Equal terms that are more than one monomial are struck out; the rest is compared."""
    rest, other = list(before.terms), list(written.terms)
    for term in before.terms:
        value = term_value(term)
        equal = next((twin for twin in other if term_value(twin) == value), None)
        if equal is not None and (len(value) > 1 or isinstance(bare(term.body), Product | Power | Fraction)):
            if len(value) == 1 and not _alone(value, before, written):
                continue
            rest = [kept for kept in rest if kept is not term]
            other = [kept for kept in other if kept is not equal]
    lone, twin = _without_equal(rest, other)
    if len(lone) == len(twin) == 1 and lone[0].sign == twin[0].sign and len(term_value(twin[0])) > 1:
        yield lone[0].body, twin[0].body
        return
    if len(rest) == len(before.terms) or not rest or not other:
        return
    if len(other) > 1 or len(rest) > 1:
        yield _sum_of(rest), _sum_of(other)


def _without_equal(first: Sequence[Term], second: Sequence[Term]) -> tuple[list[Term], list[Term]]:
    rest, other = list(first), list(second)
    for term in first:
        equal = next((twin for twin in other if term_value(twin) == term_value(term)), None)
        if equal is not None:
            rest = [kept for kept in rest if kept is not term]
            other = [kept for kept in other if kept is not equal]
    return rest, other


def _alone(value: object, before: Sum, written: Sum) -> bool:
    """Whether no other term of either sum is like this monomial, so that striking it out hides nothing."""
    if not isinstance(value, dict):
        return False
    key = next(iter(value))
    return all(sum(key in term_value(term) for term in whole.terms) == 1 for whole in (before, written))


def _sum_of(terms: Sequence[Term]) -> Node:
    span = (terms[0].span[0], terms[-1].span[1])
    return Sum(span, tuple(terms))
