"""Documented slips in solving: a relation to the wrong relations, or roots, that it is turned into.

A result is a list of branches, each with the values of its left and right side; alternatives have several.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction as Rational
from itertools import combinations

from checker.slips.alternatives import roots_of
from checker.slips.catalogue.bracket_rules import outside_and_sums
from checker.slips.catalogue.fraction_rules import halves
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
    root,
    scale,
    subtract,
    symbol,
    term_value,
    total,
    value_of,
)
from checker.slips.writing import signed, write_value
from checker.syntax.shapes import bare
from checker.syntax.tree import Node, Product, Relation, Sum, Symbol, walk

Branches = list[tuple[Value, Value]]


def side_terms(node: Node) -> list[Value]:
    inner = bare(node)
    return [term_value(term) for term in inner.terms] if isinstance(inner, Sum) else [value_of(inner)]


def _both(relation: Relation) -> tuple[Value, Value]:
    return value_of(relation.left), value_of(relation.right)


def _monomial(value: Value) -> tuple[Value, Rational] | None:
    if not is_monomial(value):
        return None
    (key, number), = value.items()
    return ({key: Rational(1)}, number) if key else None


def moved_unchanged(relation: Relation) -> Iterator[Branches]:
    """A term goes to the other side and keeps its sign."""
    left, right = _both(relation)
    for term in side_terms(relation.left):
        yield [(subtract(left, term), add(right, term))]
    for term in side_terms(relation.right):
        yield [(add(left, term), subtract(right, term))]


def divided_by_subtracting(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    if (found := _monomial(left)) is not None:
        yield [(found[0], subtract(right, constant(found[1])))]
        yield [(found[0], add(right, constant(found[1])))]


def divided_upside_down(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    if (found := _monomial(left)) is not None and right:
        yield [(found[0], divide(constant(found[1]), right))]


def sign_lost_in_dividing(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    if (found := _monomial(left)) is not None:
        yield [(found[0], scale(right, -1 / found[1]))]


def minus_letter(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    yield [(negate(left), right)]


def _numbers(relation: Relation) -> list[Rational]:
    found: list[Rational] = []
    for side in (relation.left, relation.right):
        for term in side_terms(side):
            for number in term.values():
                for size in (abs(number), Rational(number.denominator)):
                    if size > 1 and size not in found:
                        found.append(size)
    return found[:6]


def _some_scaled(relation: Relation, by: Rational) -> Iterator[Branches]:
    """Every term scaled but one or more, which stand as they were."""
    sides = side_terms(relation.left), side_terms(relation.right)
    count = len(sides[0]) + len(sides[1])
    if count > 6:
        return
    for size in range(1, count):
        for kept in combinations(range(count), size):
            values = [
                term if place in kept else scale(term, by) for place, term in enumerate([*sides[0], *sides[1]])
            ]
            yield [(total(values[:len(sides[0])]), total(values[len(sides[0]):]))]


def one_term_divided(relation: Relation) -> Iterator[Branches]:
    for number in _numbers(relation):
        for sign in (1, -1):
            yield from _some_scaled(relation, sign / number)


def one_term_multiplied(relation: Relation) -> Iterator[Branches]:
    for number in _numbers(relation):
        yield from _some_scaled(relation, number)


def divided_for_multiplied(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    if (found := _monomial(left)) is not None:
        yield [(found[0], scale(right, found[1]))]


def letter_dropped(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    yield [(constant(sum(left.values(), Rational(0))), right)]
    for key, number in left.items():
        if key:
            yield [(add(subtract(left, {key: number}), constant(number)), right)]
    for key, number in right.items():
        if key:
            yield [(left, add(subtract(right, {key: number}), constant(number)))]


def one_side_only(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    for term in (*side_terms(relation.left), *side_terms(relation.right)):
        for change in (term, negate(term)):
            yield [(add(left, change), right)]
            yield [(left, add(right, change))]


def coefficient_subtracted(relation: Relation) -> Iterator[Branches]:
    """2x+5=13 to x=13-2-5."""
    left, right = _both(relation)
    letters = [key for key in left if key]
    if len(letters) == 1:
        key, = letters
        number = left[key]
        if number == 1:
            return
        rest = subtract(right, subtract(left, {key: number}))
        yield [({key: Rational(1)}, subtract(rest, constant(number)))]
        yield [({key: Rational(1)}, subtract(rest, constant(number - 1)))]


def bracket_divided_by_subtracting(relation: Relation) -> Iterator[Branches]:
    right = value_of(relation.right)
    outside, sums = outside_and_sums(bare(relation.left))
    if len(sums) == 1:
        yield [(total(sums[0]), subtract(right, outside))]


def _square_and_rest(relation: Relation) -> tuple[Value, Value] | None:
    """X^2 = a with X one letter."""
    left, right = _both(relation)
    if (found := _monomial(left)) is not None and found[1] == 1:
        (key, _), = left.items()
        if len(key) == 1 and key[0][1] == 2:
            return symbol(key[0][0]), right
    return None


def positive_root_only(relation: Relation) -> Iterator[Branches]:
    if relation.operator == "=" and (found := _square_and_rest(relation)) is not None:
        yield [(found[0], root(found[1]))]


def divided_by_letter(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    for name in sorted({node.name for node in walk(relation.left) if isinstance(node, Symbol)}):
        letter = symbol(name)
        yield [(divide(left, letter), divide(right, letter))]


def root_signs(relation: Relation) -> Iterator[Branches]:
    is_product = isinstance(bare(relation.left), Product) and not value_of(relation.right)
    if is_product and (found := roots_of(relation)) is not None and len(found[1]) > 1:
        letter, roots = found
        yield [(symbol(letter), negate(value)) for value in roots]
        for place in range(len(roots)):
            yield [(symbol(letter), negate(v) if n == place else v) for n, v in enumerate(roots)]


def product_not_zero(relation: Relation) -> Iterator[Branches]:
    inner, right = bare(relation.left), value_of(relation.right)
    if isinstance(inner, Product) and right:
        factors = [value_of(factor) for factor in inner.factors if as_constant(value_of(factor)) is None]
        if len(factors) > 1:
            yield [(factor, right) for factor in factors]


def half_for_root(relation: Relation) -> Iterator[Branches]:
    if (found := _square_and_rest(relation)) is not None:
        half = scale(found[1], Rational(1, 2))
        yield [(found[0], half)]
        yield [(found[0], half), (found[0], negate(half))]


def _formula(relation: Relation) -> tuple[Value, Value, Value, Value] | None:
    """The letter and the coefficients of ax^2+bx+c=0."""
    whole = subtract(*_both(relation))
    letters = {atom for key in whole for atom, _ in key}
    if len(letters) != 1:
        return None
    name, = letters
    found = [whole.get(key, Rational(0)) for key in (((name, Rational(2)),), ((name, Rational(1)),), ())]
    if not found[0] or len(whole) != sum(bool(number) for number in found):
        return None
    a, b, c = (constant(number) for number in found)
    return symbol(name), a, b, c


def _with_formula(letter: Value, first: Value, inside: Value, bottom: Value) -> Branches:
    square_root = root(inside)
    return [(letter, divide(add(first, half), bottom)) for half in (square_root, negate(square_root))]


def formula_sign_of_b(relation: Relation) -> Iterator[Branches]:
    if (found := _formula(relation)) is not None:
        letter, a, b, c = found
        inside = subtract(multiply(b, b), scale(multiply(a, c), Rational(4)))
        yield _with_formula(letter, b, inside, scale(a, Rational(2)))


def formula_sign_under_root(relation: Relation) -> Iterator[Branches]:
    if (found := _formula(relation)) is not None:
        letter, a, b, c = found
        for square in (multiply(b, b), negate(multiply(b, b))):
            for sign in (4, -4):
                inside = add(square, scale(multiply(a, c), Rational(sign)))
                yield _with_formula(letter, negate(b), inside, scale(a, Rational(2)))


def formula_part_divided(relation: Relation) -> Iterator[Branches]:
    if (found := _formula(relation)) is not None:
        letter, a, b, c = found
        half = divide(root(subtract(multiply(b, b), scale(multiply(a, c), Rational(4)))), scale(a, Rational(2)))
        yield [(letter, add(negate(b), half)), (letter, subtract(negate(b), half))]


def square_not_balanced(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    degrees = {sum(exponent for _, exponent in key): number for key, number in left.items()}
    if degrees.get(Rational(2)) == 1 and (number := degrees.get(Rational(1))):
        yield [(add(left, constant(number * number / 4)), right)]


def squared_term_by_term(relation: Relation) -> Iterator[Branches]:
    left, right = side_terms(relation.left), side_terms(relation.right)
    yield [(total(multiply(t, t) for t in left), total(multiply(t, t) for t in right))]


def reciprocal_term_by_term(relation: Relation) -> Iterator[Branches]:
    left, right = side_terms(relation.left), side_terms(relation.right)
    if all(left) and all(right):
        yield [(
            total(power(t, Rational(-1)) for t in left), total(power(t, Rational(-1)) for t in right),
        )]


def multiplied_by_letter(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    for side in (relation.left, relation.right):
        for node in walk(side):
            if (parts := halves(node)) is not None:
                bottom = value_of(parts[1])
                if as_constant(bottom) is None:
                    yield [(multiply(left, bottom), multiply(right, bottom))]


def turned_or_not(relation: Relation) -> Iterator[Branches]:
    """The same relation solved: the direction is judged apart."""
    left, right = _both(relation)
    whole = subtract(left, right)
    letters = [key for key in whole if key]
    if len(letters) == 1:
        key, = letters
        yield [({key: Rational(1)}, scale(subtract({key: whole[key]}, whole), 1 / whole[key]))]


def root_of_both(relation: Relation) -> Iterator[Branches]:
    """X^2 < a^2 to X < a."""
    if relation.operator != "=" and (found := _square_and_rest(relation)) is not None:
        yield [(found[0], root(found[1]))]


def one_case(relation: Relation) -> Iterator[Branches]:
    """|x| = a to x = a."""
    if (found := roots_of(relation)) is not None:
        for value in found[1]:
            yield [(symbol(found[0]), value)]


def number_copied_wrong(relation: Relation) -> Iterator[Branches]:
    """One number off by a little while a term moves or stays."""
    left, right = _both(relation)
    for key, number in (*left.items(), *right.items()):
        for change in range(-9, 10):
            if change and key == ():
                yield [(subtract(left, {key: number}), subtract(right, constant(number + change)))]
                yield [(add(subtract(left, {key: number}), constant(number + change)), right)]


def sign_copied_wrong(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    for key, number in left.items():
        yield [(subtract(left, {key: 2 * number}), right)]
    for key, number in right.items():
        yield [(left, subtract(right, {key: 2 * number}))]


def power_copied_wrong(relation: Relation) -> Iterator[Branches]:
    left, right = _both(relation)
    for side, other, is_left in ((left, right, True), (right, left, False)):
        for key, number in side.items():
            for atom, _ in key:
                for change in (-1, 1):
                    rest = tuple((a, e + change if a == atom else e) for a, e in key)
                    rest = tuple(pair for pair in rest if pair[1])
                    new = add(subtract(side, {key: number}), {rest: number})
                    yield [(new, other) if is_left else (other, new)]


def _shown(number: Rational) -> str:
    return write_value(constant(number)) or ""


def detail_of_b(relation: Relation) -> str:
    """"b is -6, so minus b is 6"."""
    if (found := _formula(relation)) is None:
        return ""
    b = as_constant(found[2]) or Rational(0)
    return f"b is {_shown(b)}, so minus b is {_shown(-b)}"


def detail_under_root(relation: Relation) -> str:
    """"-4 times 2 times -1 is +8"."""
    if (found := _formula(relation)) is None:
        return ""
    a, c = (as_constant(found[place]) or Rational(0) for place in (1, 3))
    return f"-4 times {_shown(a)} times {_shown(c)} is {signed(_shown(-4 * a * c))}"


def detail_of_bottom(relation: Relation) -> str:
    """"minus b is -4, and over 2a it is -2"."""
    if (found := _formula(relation)) is None:
        return ""
    a, b = (as_constant(found[place]) or Rational(0) for place in (1, 2))
    return f"minus b is {_shown(-b)}, and divided by {_shown(2 * a)} that is {_shown(-b / (2 * a))}"
