"""A quadratic split into the wrong pair of brackets: which product or sum of products is wrong, and the right pair."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction as Rational

from checker.slips.factors import factored
from checker.slips.leaves import Edit
from checker.slips.links import links_of
from checker.slips.placing import placements
from checker.slips.proposals import Proposal
from checker.slips.values import Value, constant, is_monomial, multiply, value_of
from checker.slips.writing import Style, signed, write_value
from checker.syntax.latex import tight
from checker.syntax.shapes import bare
from checker.syntax.tree import Line, Node, Power, Product, Sum

__all__ = ["factor_pair_reason", "factor_pairs", "with_factor_reason"]

_BRACKET = re.compile(r"\([^()]*\)")
_DIGITS = re.compile(r"\d+")


def factor_pairs(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """Both brackets written anew where neither is a factor of the line before."""
    for link in links_of(before, written):
        for depth, place in enumerate(placements(link.old, link.new, link.text)):
            target, brackets = value_of(place.old), _brackets(place.new)
            right = factored(target)
            if right is None or () not in target or isinstance(bare(place.old), Product | Power):
                continue
            reason = factor_pair_reason(target, place.new, style)
            if reason is None:
                continue
            if not isinstance(bare(place.new), Power) and any(_fits(bracket, target) for bracket in brackets):
                continue
            is_square = isinstance(bare(place.new), Power)
            sizes = {abs(_numbers(bracket)[1]) for bracket in brackets}
            if not is_square and _is_difference_of_squares(target) and sizes != {_root(target)}:
                continue
            span, right = place.new.span, _in_order(right, written.text[slice(*place.new.span)])
            yield Proposal(1.3 + 0.1 * depth, "factor-pair", span, right, reason, (Edit(span, right), *link.tail))


def _in_order(right: str, written: str) -> str:
    """The right brackets in the order in which the written ones have their numbers."""
    pairs = [_BRACKET.findall(tight(text)) for text in (right, written)]
    if len(pairs[0]) != 2 or len(pairs[1]) != 2:
        return right
    (first, second), (other, _) = ([_DIGITS.findall(bracket) for bracket in pair] for pair in pairs)
    if first == other or second != other:
        return right
    return f"{right[:right.index('(')]}{pairs[0][1]}{pairs[0][0]}"


def factor_pair_reason(target: Value, written: Node, style: Style) -> str | None:
    """What the product of two brackets gives otherwise than the quadratic: "-3x + 4x is x, but the middle term is -x".

    Args:
        target: the quadratic that the brackets should multiply to.
        written: the product of brackets, or the square of one.
        style: how numbers are written.
    Returns:
        The sentence, or None where the two are not a quadratic in one letter and two linear brackets.
    """
    brackets = _brackets(written)
    letters = {atom for key in target for atom, _ in key}
    if len(brackets) != 2 or len(letters) != 1:
        return None
    letter, = letters
    square, one = ((letter, Rational(2)),), ((letter, Rational(1)),)
    if not target.keys() <= {square, one, ()} or any(not bracket.keys() <= {one, ()} for bracket in brackets):
        return None
    outside = _outside(written)
    (p, q), (r, s) = (_numbers(bracket) for bracket in brackets)
    if outside != 1:
        p, q = p * outside, q * outside
    told: list[str] = []
    lead, middle, last = (target.get(key, Rational(0)) for key in (square, one, ()))
    if p * r != lead:
        told.append(f"{_times({one: p}, {one: r}, style)}, but the first term is {_shown({square: lead}, style)}")
    if q * s != last:
        told.append(f"{_times({(): q}, {(): s}, style)}, but the last term is {_shown({(): last}, style)}")
    outer, inner = p * s, q * r
    if outer + inner != middle and not (told and not middle):
        whole = _shown({one: outer + inner}, style)
        sign = "-" if inner < 0 else "+"
        sums = f"{_shown({one: outer}, style)} {sign} {_shown({one: abs(inner)}, style)}"
        wanted = f"the middle term is {_shown({one: middle}, style)}" if middle else "there is no middle term"
        told.append(f"{sums} is {whole}, but {wanted}")
    return "; ".join(told) or None


def _times(first: Value, second: Value, style: Style) -> str:
    """"-5 times +2 is -10"."""
    other = _shown(second, style)
    return f"{_shown(first, style)} times {signed(other) if () in second else other} is " + _shown(
        multiply(first, second), style
    )


def _shown(value: Value, style: Style) -> str:
    return write_value({key: number for key, number in value.items() if number}, style) or ""


def _brackets(node: Node) -> Sequence[Value]:
    inner = bare(node)
    if isinstance(inner, Power) and value_of(inner.exponent) == constant(2) and isinstance(bare(inner.base), Sum):
        return [value_of(inner.base)] * 2
    if not isinstance(inner, Product):
        return []
    return [value_of(factor) for factor in inner.factors if isinstance(bare(factor), Sum)]


def _outside(node: Node) -> Rational:
    """The number before the brackets."""
    inner = bare(node)
    whole = constant(1)
    for factor in inner.factors if isinstance(inner, Product) else ():
        if not isinstance(bare(factor), Sum):
            whole = multiply(whole, value_of(factor))
    return whole.get((), Rational(1)) if is_monomial(whole) else Rational(1)


def _numbers(bracket: Value) -> tuple[Rational, Rational]:
    """p and q of px + q."""
    return next((number for key, number in bracket.items() if key), Rational(0)), bracket.get((), Rational(0))


def _fits(bracket: Value, target: Value) -> bool:
    """Whether the quadratic is zero where the bracket is."""
    p, q = _numbers(bracket)
    if not p:
        return False
    root = -q / p
    total = Rational(0)
    for key, number in target.items():
        total += number * root ** sum((exponent for _, exponent in key), Rational(0)).numerator
    return not total


def _is_difference_of_squares(target: Value) -> bool:
    return len(target) == 2 and () in target and target[()] < 0


def _root(target: Value) -> Rational:
    """The number whose square is taken away, or 0."""
    number = -target[()]
    whole = Rational(round(float(number) ** 0.5))
    return whole if whole * whole == number else Rational(0)


def with_factor_reason(proposal: Proposal, target: Value, written: Node, style: Style) -> Proposal:
    """A change inside two brackets, told by the product that comes out wrong."""
    reason = factor_pair_reason(target, written, style)
    return proposal if reason is None else replace(proposal, because=reason)
