"""Documented slips with powers, roots, logarithms and functions: a node to the wrong values it is turned into."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction as Rational
from itertools import combinations

from checker.slips.catalogue.bracket_rules import outside_and_sums, sum_terms
from checker.slips.catalogue.fraction_rules import halves
from checker.slips.values import (
    Value,
    add,
    as_constant,
    constant,
    divide,
    is_monomial,
    multiply,
    name_of,
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
from checker.syntax.shapes import bare
from checker.syntax.tree import Absolute, Function, Negation, Node, Number, Power, Product, Root, Sum

LOGARITHMS = frozenset({"ln", "log", "lg"})


def _powers(node: Node) -> list[tuple[Value, Rational, Rational]]:
    """The factors of a product as base, exponent and number before them."""
    if not isinstance(node, Product):
        return []
    found = []
    for factor in node.factors:
        value = value_of(factor)
        if is_monomial(value):
            (key, number), = value.items()
            if len(key) == 1:
                found.append((symbol(key[0][0]), key[0][1], number))
            elif isinstance(factor, Power) and not key:
                base, exponent = as_constant(value_of(factor.base)), as_constant(value_of(factor.exponent))
                if base is not None and exponent is not None:
                    found.append((constant(base), exponent, Rational(1)))
    return found


def powers_multiplied(node: Node) -> Iterator[Value]:
    """a^3 a^4 to a^12."""
    for (x, m, a), (y, n, b) in combinations(_powers(node), 2):
        if x == y and is_monomial(x):
            whole = multiply(scale(power(x, m), a), scale(power(y, n), b))
            yield multiply(divide(value_of(node), whole), scale(power(x, m * n), a * b))


def raised_value(node: Node) -> tuple[Value, Rational] | None:
    if not isinstance(node, Power):
        return None
    exponent = as_constant(value_of(node.exponent))
    return None if exponent is None or abs(exponent) > 20 else (value_of(node.base), exponent)


def powers_added(node: Node) -> Iterator[Value]:
    """(b^3)^5 to b^8."""
    if (found := raised_value(node)) is not None and is_monomial(found[0]):
        (key, number), = found[0].items()
        if all(exponent == 1 for _, exponent in key):
            return
        keys = tuple((atom, exponent + found[1]) for atom, exponent in key)
        yield multiply(power(constant(number), found[1]), {keys: Rational(1)})
        yield {keys: number}


def coefficient_not_raised(node: Node) -> Iterator[Value]:
    if (found := raised_value(node)) is not None and is_monomial(found[0]):
        (key, number), = found[0].items()
        yield scale(power({key: Rational(1)}, found[1]), number)


def coefficient_times_power(node: Node) -> Iterator[Value]:
    if (found := raised_value(node)) is not None and is_monomial(found[0]):
        (key, number), = found[0].items()
        if abs(number) != 1 and found[1] >= 2:
            yield scale(power({key: Rational(1)}, found[1]), number * found[1])


def negative_power_as_negative(node: Node) -> Iterator[Value]:
    if (found := raised_value(node)) is not None and found[1] < 0:
        yield negate(power(found[0], -found[1]))


def negative_power_takes_number(node: Node) -> Iterator[Value]:
    if isinstance(node, Product):
        (key, number), = value_of(node).items() if is_monomial(value_of(node)) else (((), Rational(1)),)
        if any(exponent < 0 for _, exponent in key):
            yield {key: 1 / number}


def zero_power_as_zero(node: Node) -> Iterator[Value]:
    if (found := raised_value(node)) is not None and found[1] == 0:
        yield {}
        yield found[0]


def minus_squared(node: Node) -> Iterator[Value]:
    """-5^2 to 25."""
    if isinstance(node, Negation) and isinstance(node.body, Power) and isinstance(node.body.base, Number):
        yield value_of(node.body)
    if isinstance(node, Sum):
        for term in node.terms:
            if term.sign == "-" and isinstance(term.body, Power) and isinstance(term.body.base, Number):
                yield subtract(value_of(node), scale(term_value(term), Rational(2)))


def powers_divided(node: Node) -> Iterator[Value]:
    if (parts := halves(node)) is not None:
        top, bottom = value_of(parts[0]), value_of(parts[1])
        if is_monomial(top) and is_monomial(bottom):
            (key, a), = top.items()
            (other, b), = bottom.items()
            exponents = dict(other)
            keys = tuple((atom, exponent / exponents.get(atom, Rational(1))) for atom, exponent in key)
            yield {keys: a / b}


def bases_multiplied(node: Node) -> Iterator[Value]:
    """2^3 2^n to 4^{n+3}."""
    if not isinstance(node, Product):
        return
    raised = [factor for factor in node.factors if isinstance(factor, Power)]
    for first, second in combinations(raised, 2):
        base, other = value_of(first.base), value_of(second.base)
        if base == other and as_constant(base) is not None:
            exponent = add(value_of(first.exponent), value_of(second.exponent))
            yield raised_to(multiply(base, other), exponent)


def raised_to(base: Value, exponent: Value) -> Value:
    number = as_constant(exponent)
    if number is not None:
        return power(base, number)
    whole = power(base, exponent.get((), Rational(0)))
    for key, coefficient in sorted(exponent.items()):
        if key:
            whole = multiply(whole, symbol(f"({name_of(base)})^{name_of({key: Rational(1)})}", coefficient))
    return whole


def half_power_as_half(node: Node) -> Iterator[Value]:
    if (found := raised_value(node)) is not None and 0 < found[1] < 1:
        yield scale(found[0], found[1])


def sum_of_powers(node: Node) -> Iterator[Value]:
    """r^2+r^3 to r^5."""
    terms = sum_terms(node)
    for first, second in combinations([term for term in terms if is_monomial(term) and () not in term], 2):
        yield add(subtract(value_of(node), add(first, second)), multiply(first, second))


def _root(node: Node) -> tuple[Node, int] | None:
    if not isinstance(node, Root):
        return None
    degree = Rational(2) if node.index is None else as_constant(value_of(node.index))
    return None if degree is None or degree.denominator != 1 or degree < 2 else (node.radicand, int(degree))


def root_spread(node: Node) -> Iterator[Value]:
    if (found := _root(node)) is not None and (terms := sum_terms(found[0])):
        signs = [-1 if all(n < 0 for n in term.values()) else 1 for term in terms]
        yield total(
            scale(root(scale(term, Rational(sign)), found[1]), Rational(sign))
            for term, sign in zip(terms, signs, strict=True)
        )


def roots_joined(node: Node) -> Iterator[Value]:
    if isinstance(node, Sum):
        inside = [(term, found[0]) for term in node.terms if (found := _root(term.body)) is not None]
        for (first, a), (second, b) in combinations(inside, 2):
            rest = subtract(value_of(node), add(term_value(first), term_value(second)))
            joined = add(value_of(a), value_of(b) if second.sign == first.sign else negate(value_of(b)))
            yield add(rest, root(joined))


def factor_not_rooted(node: Node) -> Iterator[Value]:
    """sqrt(75) to 25 sqrt 3."""
    if (found := _root(node)) is not None:
        number = as_constant(value_of(found[0]))
        if number is not None and number.denominator == 1 and 0 < number < 10**6:
            for side in range(2, 100):
                if number % (side * side) == 0:
                    yield scale(root(constant(number / (side * side))), Rational(side * side))


def root_number_not_squared(node: Node) -> Iterator[Value]:
    """(3 sqrt 5)^2 to 15."""
    if (found := raised_value(node)) is not None and found[1] == 2 and is_monomial(found[0]):
        (key, number), = found[0].items()
        yield scale(power({key: Rational(1)}, Rational(2)), number)


def root_square_no_middle(node: Node) -> Iterator[Value]:
    found = raised_value(node)
    if found is not None and found[1] == 2 and isinstance(node, Power) and (terms := sum_terms(node.base)):
        yield total(multiply(term, term) for term in terms)


def conjugate_sign(node: Node) -> Iterator[Value]:
    outside, sums = outside_and_sums(node)
    if len(sums) == 2 and len(sums[0]) == len(sums[1]) == 2:
        last = multiply(outside, multiply(sums[0][1], sums[1][1]))
        yield subtract(value_of(node), scale(last, Rational(2)))


def root_of_square(node: Node) -> Iterator[Value]:
    """sqrt(X^2) to X, which is right only for X that is not negative."""
    if (found := _root(node)) is not None and found[1] % 2 == 0:
        yield root(value_of(found[0]), found[1])
        inner = bare(found[0])
        if isinstance(inner, Power):
            yield value_of(inner.base)


def _log(node: Node) -> tuple[Node, Function] | None:
    if not isinstance(node, Function) or node.name not in LOGARITHMS:
        return None
    return (node.arguments[0], node) if len(node.arguments) == 1 and node.power is None else None


def applied(function: Function, inside: Value) -> Value:
    """The value of a function at a value, named as in `value_of`."""
    base = "" if function.base is None else name_of(value_of(function.base))
    return symbol(f"{function.name}[{base}]({name_of(inside)})")


def log_spread(node: Node) -> Iterator[Value]:
    if (found := _log(node)) is not None and (terms := sum_terms(found[0])):
        yield total(
            negate(applied(found[1], negate(term))) if all(n < 0 for n in term.values()) else applied(found[1], term)
            for term in terms
        )


def _factors(node: Node) -> Sequence[Value]:
    inner = bare(node)
    return [value_of(factor) for factor in inner.factors] if isinstance(inner, Product) else []


def log_of_product_as_product(node: Node) -> Iterator[Value]:
    if (found := _log(node)) is not None and (factors := _factors(found[0])):
        whole = constant(1)
        for factor in factors:
            whole = multiply(whole, applied(found[1], factor))
        yield whole


def log_of_quotient_as_quotient(node: Node) -> Iterator[Value]:
    if (found := _log(node)) is not None and (parts := halves(found[0])) is not None:
        yield divide(applied(found[1], value_of(parts[0])), applied(found[1], value_of(parts[1])))


def power_of_log_taken_down(node: Node) -> Iterator[Value]:
    if isinstance(node, Power) and _log(bare(node.base)) is not None:
        yield multiply(value_of(node.exponent), value_of(node.base))
    if isinstance(node, Function) and node.power is not None and node.name in LOGARITHMS:
        plain = applied(node, value_of(node.arguments[0]))
        yield multiply(value_of(node.power), plain)


def log_name_cancelled(node: Node) -> Iterator[Value]:
    if (parts := halves(node)) is not None:
        top, bottom = _log(bare(parts[0])), _log(bare(parts[1]))
        if top is not None and bottom is not None:
            yield divide(value_of(top[0]), value_of(bottom[0]))


def constant_out_of_log(node: Node) -> Iterator[Value]:
    """ln(5n) to 5 ln n."""
    if _log(node) is not None:
        yield from _number_taken_out(node)


def constant_out_of_function(node: Node) -> Iterator[Value]:
    """sin(2t) to 2 sin t."""
    if _log(node) is None:
        yield from _number_taken_out(node)


def _number_taken_out(node: Node) -> Iterator[Value]:
    if isinstance(node, Function) and len(node.arguments) == 1 and node.power is None:
        inside = value_of(node.arguments[0])
        if is_monomial(inside):
            (key, number), = inside.items()
            yield scale(applied(node, {key: Rational(1)}), number)


def function_spread(node: Node) -> Iterator[Value]:
    """cos(u+v) to cos u + cos v."""
    if isinstance(node, Function) and len(node.arguments) == 1 and node.power is None:
        terms = sum_terms(node.arguments[0])
        if terms:
            yield total(
                negate(applied(node, negate(term))) if all(n < 0 for n in term.values()) else applied(node, term)
                for term in terms
            )


def bars_spread(node: Node) -> Iterator[Value]:
    if isinstance(node, Absolute) and (terms := sum_terms(node.body)):
        sizes = []
        for term in terms:
            number = as_constant(term)
            sizes.append(constant(abs(number)) if number is not None else symbol(f"|{name_of(term)}|"))
        outside = [_size(term) for term in terms]
        yield total(outside)
        yield subtract(outside[0], total(outside[1:]))
        yield total(sizes)
        yield subtract(sizes[0], total(sizes[1:]))


def _size(term: Value) -> Value:
    """|2x| with the number outside the bars: 2|x|."""
    if not is_monomial(term):
        return symbol(f"|{name_of(term)}|")
    (key, number), = term.items()
    return scale(symbol(f"|{name_of({key: Rational(1)})}|") if key else constant(1), abs(number))
