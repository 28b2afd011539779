"""Documented slips with brackets, squares, factors and like terms: a node to the wrong values it is turned into."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction as Rational
from itertools import combinations
from math import gcd, isqrt

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
    term_value,
    total,
    value_of,
)
from checker.syntax.shapes import bare
from checker.syntax.tree import Node, Power, Product, Sum, Term

Terms = list[Value]


def sum_terms(node: Node) -> Terms:
    """The signed terms of a sum, brackets looked through; empty for anything else."""
    inner = bare(node)
    return [term_value(term) for term in inner.terms] if isinstance(inner, Sum) else []


def outside_and_sums(node: Node) -> tuple[Value, list[Terms]]:
    """A product as what stands before its brackets, and the terms of each bracket."""
    if not isinstance(node, Product):
        return {}, []
    outside = constant(1)
    sums: list[Terms] = []
    for factor in node.factors:
        terms = sum_terms(factor)
        if terms:
            sums.append(terms)
        else:
            outside = multiply(outside, value_of(factor))
    return outside, sums


def outside_not_spread(node: Node) -> Iterator[Value]:
    """A(B+C) to AB+C, B+AC, and with more terms to each choice of terms multiplied."""
    outside, sums = outside_and_sums(node)
    if len(sums) != 1 or len(sums[0]) > 4:
        return
    for size in range(1, len(sums[0])):
        for chosen in combinations(range(len(sums[0])), size):
            yield total(multiply(outside, term) if n in chosen else term for n, term in enumerate(sums[0]))


def minus_not_spread(node: Node) -> Iterator[Value]:
    """D-(B-C) and D-A(B+C) with the sign of a later product left as it would be after a plus."""
    if not isinstance(node, Sum):
        return
    whole = value_of(node)
    for term in node.terms:
        if term.sign != "-":
            continue
        for part in _spread(term.body)[1:]:
            yield add(whole, scale(part, Rational(2)))


def _spread(node: Node) -> Terms:
    terms = sum_terms(node)
    if terms:
        return terms
    outside, sums = outside_and_sums(node)
    return [multiply(outside, term) for term in sums[0]] if len(sums) == 1 else []


def product_sign(node: Node) -> Iterator[Value]:
    """One partial product with the other sign."""
    whole = value_of(node)
    for part in _partial_products(node):
        yield subtract(whole, scale(part, Rational(2)))


def _partial_products(node: Node) -> Terms:
    outside, sums = outside_and_sums(node)
    if not sums or len(sums) > 2:
        return []
    parts = [multiply(outside, term) for term in sums[0]]
    return [multiply(part, term) for part in parts for term in sums[1]] if len(sums) == 2 else parts


def left_to_right(node: Node) -> Iterator[Value]:
    """D-A(B+C) to (D-A)(B+C)."""
    if not isinstance(node, Sum):
        return
    for first, second in zip(node.terms, node.terms[1:], strict=False):
        outside, sums = outside_and_sums(second.body)
        if len(sums) != 1:
            continue
        signed = negate(outside) if second.sign == "-" else outside
        wrong = multiply(add(term_value(first), signed), total(sums[0]))
        yield add(subtract(value_of(node), add(term_value(first), term_value(second))), wrong)


def _two(node: Node, exponent: int = 2) -> tuple[Value, Value] | None:
    if not isinstance(node, Power) or as_constant(value_of(node.exponent)) != exponent:
        return None
    terms = sum_terms(node.base)
    return (terms[0], terms[1]) if len(terms) == 2 else None


def _square(value: Value) -> Value:
    return multiply(value, value)


def no_middle(node: Node) -> Iterator[Value]:
    if (pair := _two(node)) is not None:
        yield add(_square(pair[0]), _square(pair[1]))


def as_two_squares(node: Node) -> Iterator[Value]:
    if (pair := _two(node)) is not None:
        yield subtract(_square(pair[0]), _square(pair[1]))


def last_sign(node: Node) -> Iterator[Value]:
    if (pair := _two(node)) is not None:
        yield subtract(value_of(node), scale(_square(pair[1]), Rational(2)))


def middle_once(node: Node) -> Iterator[Value]:
    if (pair := _two(node)) is not None:
        yield subtract(value_of(node), multiply(*pair))


def coefficient_not_squared(node: Node) -> Iterator[Value]:
    if (pair := _two(node)) is None:
        return
    for term in pair:
        if is_monomial(term) and next(iter(term)):
            number = next(iter(term.values()))
            wrong = scale(_square(term), 1 / number)
            yield add(subtract(value_of(node), _square(term)), wrong)


def power_spread(node: Node) -> Iterator[Value]:
    for exponent in (3, 4):
        if (pair := _two(node, exponent)) is not None:
            yield add(power(pair[0], Rational(exponent)), power(pair[1], Rational(exponent)))


def ends_only(node: Node) -> Iterator[Value]:
    outside, sums = outside_and_sums(node)
    if len(sums) == 2:
        first, second = sums
        ends = add(multiply(first[0], second[0]), multiply(first[-1], second[-1]))
        yield multiply(outside, ends)


def middle_sum_sign(node: Node) -> Iterator[Value]:
    outside, sums = outside_and_sums(node)
    if len(sums) == 2 and len(sums[0]) == len(sums[1]) == 2:
        (a, b), (c, d) = sums
        middle = multiply(outside, add(multiply(a, d), multiply(b, c)))
        yield subtract(value_of(node), scale(middle, Rational(2)))


def power_dropped(node: Node) -> Iterator[Value]:
    """x times x to x."""
    whole = value_of(node)
    for part in _partial_products(node):
        if not is_monomial(part):
            continue
        (key, number), = part.items()
        for atom, exponent in key:
            if exponent > 1:
                rest = tuple((a, e - 1 if a == atom else e) for a, e in key)
                yield add(subtract(whole, part), {rest: number})


def _quadratic(node: Node) -> tuple[str, int, int] | None:
    """x^2+bx+c with whole numbers, as its letter, b and c."""
    whole = value_of(node)
    atoms = {atom for key in whole for atom, _ in key}
    if len(atoms) != 1 or not isinstance(bare(node), Sum):
        return None
    letter, = atoms
    square, one = ((letter, Rational(2)),), ((letter, Rational(1)),)
    if not whole.keys() <= {square, one, ()} or whole.get(square) != 1:
        return None
    b, c = whole.get(one, Rational(0)), whole.get((), Rational(0))
    return (letter, int(b), int(c)) if b.denominator == c.denominator == 1 else None


def _factored(letter: str, p: int, q: int) -> Value:
    x: Value = {((letter, Rational(1)),): Rational(1)}
    return multiply(add(x, constant(p)), add(x, constant(q)))


def pair_sign(node: Node) -> Iterator[Value]:
    if (found := _quadratic(node)) is not None:
        letter, b, c = found
        inside = b * b - 4 * c
        if inside >= 0 and isqrt(inside) ** 2 == inside and (b + isqrt(inside)) % 2 == 0:
            p, q = (b + isqrt(inside)) // 2, (b - isqrt(inside)) // 2
            for signs in ((-p, q), (p, -q), (-p, -q)):
                yield _factored(letter, *signs)


def pair_adds_only(node: Node) -> Iterator[Value]:
    if (found := _quadratic(node)) is not None:
        letter, b, c = found
        for p in range(-20, 21) if c else ():
            if p * (b - p) != c:
                yield _factored(letter, p, b - p)


def pair_multiplies_only(node: Node) -> Iterator[Value]:
    if (found := _quadratic(node)) is not None and found[2]:
        letter, b, c = found
        for p in range(-abs(c), abs(c) + 1) if abs(c) <= 200 else ():
            if p and c % p == 0 and p + c // p != b:
                yield _factored(letter, p, c // p)


def common_left_out(node: Node) -> Iterator[Value]:
    """5v^2+5v to 5v(v): the term that leaves 1 is lost."""
    terms = sum_terms(node)
    for term in terms:
        rest = subtract(value_of(node), term)
        if is_monomial(term) and all(
            exponent > 0 for key in divide(rest, term) for _, exponent in key
        ):
            yield rest


def common_from_one(node: Node) -> Iterator[Value]:
    """AB+AC to A(B+AC)."""
    terms = sum_terms(node)
    numbers = [number for term in terms for number in term.values() if number.denominator == 1]
    if len(terms) < 2 or len(numbers) != len(terms):
        return
    common = gcd(*(int(number) for number in numbers))
    for factor in range(2, common + 1):
        if common % factor == 0:
            for term in terms:
                yield add(subtract(value_of(node), term), scale(term, Rational(factor)))


def negative_taken_out(node: Node) -> Iterator[Value]:
    for term in sum_terms(node):
        yield subtract(value_of(node), scale(term, Rational(2)))


def sum_of_squares(node: Node) -> Iterator[Value]:
    terms = sum_terms(node)
    if len(terms) == 2 and all(is_monomial(term) for term in terms):
        if any(number < 0 for term in terms for number in term.values()):
            return
        first, second = root(terms[0]), root(terms[1])
        if any(exponent.denominator > 1 for key in (*first, *second) for _, exponent in key):
            return
        yield _square(add(first, second))
        yield _square(subtract(first, second))
        yield multiply(add(first, second), subtract(first, second))


def squares_without_root(node: Node) -> Iterator[Value]:
    terms = sum_terms(node)
    if len(terms) == 2:
        yield subtract(terms[0], _square(terms[1]))
        yield add(_square(terms[0]), terms[1])


def coefficient_without_root(node: Node) -> Iterator[Value]:
    terms = sum_terms(node)
    if len(terms) == 2 and is_monomial(terms[0]):
        number = next(iter(terms[0].values()))
        yield add(scale(terms[0], number), terms[1])


def _pairs(node: Node) -> Iterator[tuple[Value, Value, Value]]:
    """Two terms that are one monomial each, and the rest of their sum."""
    terms = sum_terms(node)
    if len(terms) > 8:
        return
    for first, second in combinations([term for term in terms if is_monomial(term)], 2):
        yield first, second, subtract(value_of(node), add(first, second))


def _parts(value: Value) -> tuple[Value, Rational]:
    (key, number), = value.items()
    return {key: Rational(1)}, number


def unlike_collected(node: Node) -> Iterator[Value]:
    """3n+5 to 8n."""
    for first, second, rest in _pairs(node):
        (x, a), (y, b) = _parts(first), _parts(second)
        if x != y:
            yield add(rest, scale(x, a + b))
            yield add(rest, scale(y, a + b))


def letters_joined(node: Node) -> Iterator[Value]:
    """2a+7b to 9ab."""
    for first, second, rest in _pairs(node):
        (x, a), (y, b) = _parts(first), _parts(second)
        if x != y and () not in x and () not in y:
            yield add(rest, scale(multiply(x, y), a + b))


def powers_joined(node: Node) -> Iterator[Value]:
    """2x^2+3x to 5x^3, and 4y^2+5y^2 to 9y^4."""
    for first, second, rest in _pairs(node):
        (x, a), (y, b) = _parts(first), _parts(second)
        if () not in x and () not in y:
            yield add(rest, scale(multiply(x, y), a + b))


def letter_taken_away(node: Node) -> Iterator[Value]:
    """6d-d to 6."""
    for first, second, rest in _pairs(node):
        (x, a), (y, b) = _parts(first), _parts(second)
        if x == y:
            yield add(rest, constant(a))
            yield add(rest, constant(a + b))


def one_ignored(node: Node) -> Iterator[Value]:
    """w+3w to 3w."""
    for first, second, rest in _pairs(node):
        if _parts(first)[0] == _parts(second)[0]:
            yield add(rest, first)
            yield add(rest, second)


def sign_of_neighbour(node: Node) -> Iterator[Value]:
    """8h-5+2h to 6h-5: a term taken with the sign of the one before or after it."""
    whole = value_of(node)
    for term in sum_terms(node):
        yield subtract(whole, scale(term, Rational(2)))


def negatives_subtracted(node: Node) -> Iterator[Value]:
    """-3c-5c to -2c, or 2c."""
    for first, second, rest in _pairs(node):
        (x, a), (y, b) = _parts(first), _parts(second)
        if x == y:
            yield add(rest, scale(x, a - b))
            yield add(rest, scale(x, b - a))


def minus_detached(node: Node) -> Iterator[Value]:
    """20-7e+4e to 20-11e."""
    inner = bare(node)
    if not isinstance(inner, Sum):
        return
    terms: Sequence[Term] = inner.terms
    for place, term in enumerate(terms):
        if term.sign == "-":
            for last in range(place + 1, len(terms)):
                turned = total(term_value(other) for other in terms[place + 1:last + 1])
                yield subtract(value_of(node), scale(turned, Rational(2)))


def negatives_make_plus(node: Node) -> Iterator[Value]:
    """-6-8 to +14."""
    for first, second, rest in _pairs(node):
        yield subtract(rest, add(first, second))
