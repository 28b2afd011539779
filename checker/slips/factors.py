"""Slips in factorising: signs and numbers of the brackets, a bracket that lacks a term."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction as Rational
from itertools import combinations
from math import gcd

from checker.slips.frames import Frame, at_span, enclosing, fitting, flip, rational_roots
from checker.slips.leaves import Edit
from checker.slips.proposals import Proposal
from checker.slips.values import (
    BLANK,
    Value,
    add,
    divide,
    multiply,
    subtract,
    symbol,
    term_value,
    value_of,
)
from checker.slips.writing import write_value
from checker.syntax.shapes import bare
from checker.syntax.tree import (
    Bracket,
    Number,
    Power,
    Product,
    Sum,
    walk,
)

__all__ = ["factor_repairs", "factored"]


def factor_repairs(frame: Frame) -> Iterator[Proposal]:
    """Changes inside a product of brackets that make it multiply out to the line before."""
    yield from _two_signs(frame)
    yield from _equal_numbers(frame)
    yield from _factor_pairs(frame)
    yield from _factor_left(frame)


def _two_signs(frame: Frame) -> Iterator[Proposal]:
    """Two signs in one product of brackets, such as (x+5)(x-3) for (x-5)(x+3)."""
    for side in frame.sides:
        for node in walk(side):
            if not isinstance(node, Product):
                continue
            sums = [inner for factor in node.factors if isinstance(inner := bare(factor), Sum)]
            if not 2 <= len(sums) <= 3 or sum(len(inner.terms) for inner in sums) > 7:
                continue
            choices = [
                (inner, number, term) for inner in sums for number, term in enumerate(inner.terms) if number
            ]
            for first, second in combinations(choices, 2):
                if first[0] is second[0]:
                    continue
                instead = {
                    id(inner): subtract(subtract(value_of(inner), term_value(term)), term_value(term))
                    for inner, _, term in (first, second)
                }
                edits = [flip(frame, term, number == 0) for _, number, term in (first, second)]
                if None not in edits and frame.agrees(frame.value(instead)):
                    because = "both signs are the other way round: multiplied out, this gives the line before"
                    kept = [edit for edit in edits if edit is not None]
                    yield at_span(frame, 1.9, "factor-pair", node.span, kept, because)


def _equal_numbers(frame: Frame) -> Iterator[Proposal]:
    """The same number in two brackets, such as (t-49)(t+49) for (t-7)(t+7)."""
    if frame.unknown is not None:
        return
    blank = symbol(BLANK)
    for side in frame.sides:
        for node in walk(side):
            if not isinstance(node, Product) or len(node.factors) > 4:
                continue
            numbers = [below for below in walk(node) if isinstance(below, Number)]
            for value in {number.value for number in numbers}:
                same = [number for number in numbers if number.value == value]
                if len(same) != 2:
                    continue
                for fit in fitting(frame, frame.value({id(number): blank for number in same})):
                    text = write_value({(): fit}, frame.style)
                    if text is None or fit <= 0 or fit == value:
                        continue
                    because = f"with {text} in place of {same[0].text} the line agrees with the line before"
                    edits = [Edit(number.span, text) for number in same]
                    start, end = enclosing(frame, same[0].span)
                    if frame.line[start] in "+-":
                        start += 1
                    shown = (frame.line[start:same[0].span[0]] + text + frame.line[same[0].span[1]:end]).strip()
                    yield Proposal(1.9, "factor-pair", (start, end), shown, because, tuple(edits))


def _factor_pairs(frame: Frame) -> Iterator[Proposal]:
    """A product of brackets that are not the factors, written anew with the right ones."""
    if frame.is_relation and value_of(frame.sides[1]):
        return
    side = frame.sides[0]
    several = isinstance(side, Product) and sum(isinstance(bare(factor), Sum) for factor in side.factors) > 1
    if not several and not (isinstance(side, Power) and isinstance(bare(side.base), Sum)):
        return
    text = factored(frame.target)
    if text is not None:
        because = f"multiplied out, {text} gives the line before"
        yield Proposal(3.0, "factor-pair", side.span, text, because, (Edit(side.span, text),))


def factored(value: Value) -> str | None:
    """A quadratic in one letter with whole coefficients as a product of brackets, if it has rational roots."""
    letters = {atom for key in value for atom, _ in key}
    if len(letters) != 1:
        return None
    letter, = letters
    keys = (((letter, Rational(2)),), ((letter, Rational(1)),), ())
    a, b, c = (value.get(key, Rational(0)) for key in keys)
    if not a or not value.keys() <= set(keys) or any(number.denominator != 1 for number in (a, b, c)):
        return None
    common = Rational(gcd(int(a), int(b), int(c)))
    a, b, c = a / common, b / common, c / common
    found = rational_roots({2: a, 1: b, 0: c})
    if not found or a < 0:
        return None
    brackets: list[str] = []
    for number in sorted(found, key=lambda root: (root.denominator, root)):
        bracket: Value = {keys[1]: Rational(number.denominator), (): Rational(-number.numerator)}
        bracket = {key: n for key, n in bracket.items() if n}
        text = write_value(bracket)
        brackets.append(f"({text})" if len(bracket) > 1 else f"{text}")
    if len(found) == 1 or brackets[0] == brackets[-1]:
        brackets = [f"{brackets[0]}^2"]
    return (str(common) if common != 1 else "") + "".join(brackets)


def _factor_left(frame: Frame) -> Iterator[Proposal]:
    """A bracket that lacks a term, such as 5v(v) for 5v(v+1)."""
    if frame.is_relation or frame.unknown is not None:
        return
    gap = subtract(frame.target, frame.value())
    side = frame.sides[0]
    if not isinstance(side, Product) or len(gap) != 1:
        return
    for factor in side.factors:
        if not isinstance(factor, Bracket):
            continue
        others = [value_of(other) for other in side.factors if other is not factor]
        outside: Value = {(): Rational(1)}
        for other in others:
            outside = multiply(outside, other)
        if len(outside) != 1:
            continue
        lost = divide(gap, outside)
        (key, number), = lost.items()
        if number.denominator != 1 or any(exponent < 0 for _, exponent in key):
            continue
        text = write_value(add(value_of(factor.body), lost), frame.style)
        if text is not None:
            because = "every term leaves something when the factor is taken out; a term divided by itself leaves 1"
            yield Proposal(1.4, "dropped-term", factor.body.span, text, because, (Edit(factor.body.span, text),))
