"""Values of one letter at which the truth of a statement can change."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from math import lcm

from checker.budget import Budget
from checker.numeric import (
    Evaluator,
    UnsureError,
    Value,
    approximate,
    as_interval,
    difference,
    is_near_zero,
    is_real,
    sign_of,
)
from checker.polynomial import (
    ONE,
    Poly,
    TooLargeError,
    add,
    coefficients_in,
    exponents,
    letters_in,
    multiply,
    subtract,
)
from checker.real_roots import RealNumber, rational_number, real_roots
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import (
    Absolute,
    Division,
    Function,
    Node,
    Number,
    Power,
    Root,
    Statement,
    Sum,
    Symbol,
    Term,
    letters,
    walk,
)
from checker.syntax import Fraction as Quotient
from checker.truth import links

__all__ = ["critical_values"]

_SCAN = sorted({
    Fraction(sign * top, bottom) for sign in (-1, 1) for bottom in (1, 2, 3, 7) for top in range(60)
} | {Fraction(sign * 3**n, 2) for sign in (-1, 1) for n in range(4, 9)})


def critical_values(
    statement: Statement, letter: str, others: Mapping[str, Fraction], budget: Budget, *, euler: bool = False,
    search: bool = True,
) -> tuple[list[RealNumber], bool]:
    """Values of the letter at which the statement's truth can change, and whether they are surely all.

    Args:
        statement, letter, others, budget, euler: as for `compare_sets`.
        search: look for changes of sign where algebra does not reach?
    Raises:
        UnsupportedError: algebra does not reach, and no search was asked for.
        OutOfTimeError: the budget is spent.
        TooLargeError: beyond what is tried.
    """
    found: list[RealNumber] = []
    proved = True
    for left, sign, right in links(statement):
        if sign == "\\in" or letter not in letters(left) | letters(right):
            continue
        whole = Sum((0, 0), (Term((0, 0), "+", left), Term((0, 0), "-", right)))
        for node in (whole, *_inner_places(left), *_inner_places(right)):
            budget.check()
            try:
                found += _zeros(node, letter, others, budget, euler=euler)
            except UndefinedError:
                continue  # it has no value anywhere
            except UnsupportedError:
                if not search:
                    raise
                proved = False
                found += _scanned(node, letter, others, budget, euler=euler)
    return found, proved


def _inner_places(top: Node) -> Iterable[Node]:
    """Denominators, what stands under roots, between bars and in logarithms: where a value begins to exist or turns."""
    for node in walk(top):
        match node:
            case Quotient(denominator=inner) | Division(right=inner) | Root(radicand=inner) | Absolute(body=inner):
                if letters(inner):
                    yield inner
            case Function(name="ln" | "log", arguments=(inner, *_)):
                if letters(inner):
                    yield inner
            case Function(name="tan" | "sec", arguments=arguments) if letters(node):
                yield Function(node.span, "cos", arguments)
            case Function(name="cot" | "csc", arguments=arguments) if letters(node):
                yield Function(node.span, "sin", arguments)
            case Power(base=base, exponent=exponent) if letters(base) and not _is_natural(exponent):
                yield base
            case _:
                continue


def _is_natural(node: Node) -> bool:
    value = getattr(node, "value", None)
    return isinstance(value, Fraction) and value.denominator == 1 and value > 0


def _zeros(
    node: Node, letter: str, others: Mapping[str, Fraction], budget: Budget, *, euler: bool
) -> list[RealNumber]:
    """All real zeros of the node, and perhaps some values that are none.

    Raises:
        UnsupportedError: it is no algebraic function of the letter.
        UndefinedError: it has no value anywhere.
    """

    def work(ring: Ring) -> list[RealNumber]:
        top, bottom = ring.quotient(node)
        found = _poly_zeros(ring, top, letter, others, budget)
        return found + (_poly_zeros(ring, bottom, letter, others, budget) if bottom is not ONE else [])

    return in_ring(work, euler=euler)


def _poly_zeros(
    ring: Ring, poly: Poly, letter: str, others: Mapping[str, Fraction], budget: Budget
) -> list[RealNumber]:
    if not poly or letter not in ring.index:
        return []
    exponential = _exponential_zeros(ring, poly, letter, others, budget)
    if exponential is not None:
        return exponential
    poly = _without_atoms(ring, poly)
    parts = [ring.value_at(part, dict(others)) for part in coefficients_in(poly, ring.index[letter])]
    if all(set(part) <= {0} for part in parts):
        plain = _whole([part.get(0, Fraction(0)) for part in parts])
        return real_roots(plain, budget) if any(plain) else []
    return _interval_zeros(ring, parts)


def _whole(values: Sequence[Fraction]) -> list[int]:
    scale = lcm(*(value.denominator for value in values))
    return [int(value * scale) for value in values]


def _without_atoms(ring: Ring, poly: Poly) -> Poly:
    """The product of all conjugates over each root and bar: a polynomial that is zero wherever this one is."""
    for atom in reversed(ring.relations):
        if ring.names[atom] == "i" or ring.constant_of(atom) is not None:
            continue
        index, value = ring.relations[atom]
        parts = coefficients_in(poly, atom)
        if len(parts) == 1:
            continue
        if index > 4:
            raise UnsupportedError
        parts += [{}] * (index - len(parts))
        # multiplication by the polynomial as a matrix on 1, v, v^2, ...: its determinant is the norm
        matrix = [
            [parts[row - column] if row >= column else multiply(value, parts[index + row - column])
             for column in range(index)]
            for row in range(index)
        ]
        poly = ring.reduce(_determinant(matrix))
        if not poly:
            raise UnsupportedError
    return poly


def _determinant(matrix: list[list[Poly]]) -> Poly:
    if len(matrix) == 1:
        return matrix[0][0]
    total: Poly = {}
    for column, entry in enumerate(matrix[0]):
        if entry:
            minor = [row[:column] + row[column + 1:] for row in matrix[1:]]
            part = multiply(entry, _determinant(minor))
            total = add(total, part) if column % 2 == 0 else subtract(total, part)
    return total


def _interval_zeros(ring: Ring, parts: list[dict[int, Fraction]]) -> list[RealNumber]:
    """Zeros of a polynomial whose coefficients hold pi or e, up to the second degree."""
    coefficients = [_constant_interval(ring, part) for part in parts]
    while coefficients and isinstance(coefficients[-1], Fraction) and coefficients[-1] == 0:
        coefficients.pop()
    if len(coefficients) <= 1:
        return []
    if len(coefficients) == 2:
        return [_number(-as_interval(coefficients[0]) / as_interval(coefficients[1]))]
    if len(coefficients) == 3:
        c, b, a = (as_interval(value) for value in coefficients)
        inside = b * b - 4 * a * c
        sign = sign_of(inside)
        if sign < 0:
            return []
        if sign == 0:
            return [_number(-b / (2 * a))]
        root = inside.ctx.sqrt(inside)
        return [_number((-b - root) / (2 * a)), _number((-b + root) / (2 * a))]
    raise UnsupportedError


def _number(value: Value) -> RealNumber:
    return RealNumber(value, approximate(value, 5))


def _constant_interval(ring: Ring, part: dict[int, Fraction]) -> Value:
    evaluator = Evaluator({}, euler=ring.euler)
    total: Value = Fraction(0)
    for key, value in part.items():
        term: Value = value
        for number, times in exponents(key):
            constant = evaluator.value(_constant_node(ring, number))
            for _ in range(times):
                term = as_interval(term) * constant
        total = total + term if isinstance(total, Fraction) and isinstance(term, Fraction) else (
            as_interval(total) + as_interval(term)
        )
    return total


def _constant_node(ring: Ring, number: int) -> Node:
    name = ring.names[number]
    if name in ("pi", "e"):
        return Symbol((0, 0), name)
    known = ring.constant_of(number)
    relation = ring.relations.get(number)
    if known is None and relation is not None and set(relation[1]) == {0} and relation[1][0] > 0:
        inside = Number((0, 0), Fraction(relation[1][0]), str(relation[1][0]))
        return Root((0, 0), inside, Number((0, 0), Fraction(relation[0]), str(relation[0])))
    if known is None:
        raise UnsupportedError
    kind, value = known
    top = Number((0, 0), Fraction(value.numerator), str(value.numerator))
    bottom = Number((0, 0), Fraction(value.denominator), str(value.denominator))
    return Function((0, 0), kind, (Quotient((0, 0), top, bottom),))


def _exponential_zeros(
    ring: Ring, poly: Poly, letter: str, others: Mapping[str, Fraction], budget: Budget
) -> list[RealNumber] | None:
    """Zeros of a polynomial in one power b^(x/n), x standing nowhere else; None when it is of another kind."""
    atoms = [number for number in letters_in(poly) if ring.names[number].startswith("\0exp")]
    if len(atoms) != 1 or ring.index[letter] in letters_in(poly):
        return None
    base = ring.exponential_base(atoms[0], letter)
    if base is None:
        return None
    number, index = base
    parts = [ring.value_at(part, dict(others)) for part in coefficients_in(poly, atoms[0])]
    if all(set(part) <= {0} for part in parts):
        plain = _whole([part.get(0, Fraction(0)) for part in parts])
        roots = real_roots(plain, budget) if any(plain) else []
    elif len(parts) == 2:
        roots = _interval_zeros(ring, parts)
    else:
        return None
    found = []
    for root in roots:
        if root.middle <= 0:
            continue
        value = as_interval(root.value)
        log = value.ctx.log(value) * index
        if number is not None:
            log = log / value.ctx.log(as_interval(number))
        nearest = Fraction(round(RealNumber(log, "").middle * 12), 12)
        if is_near_zero(difference(log, nearest)):
            found.append(rational_number(nearest))
        else:
            found.append(_number(log))
    return found


def _scanned(
    node: Node, letter: str, others: Mapping[str, Fraction], budget: Budget, *, euler: bool
) -> list[RealNumber]:
    """Zeros found by looking for changes of sign: a search, not a proof that there are no more."""
    found: list[RealNumber] = []
    last: tuple[Fraction, int] | None = None

    def sign_at(value: Fraction) -> int | None:
        evaluator = Evaluator({**others, letter: value}, euler=euler)
        try:
            result = evaluator.value(node)
            return sign_of(result) if is_real(result) else None
        except (UndefinedError, UnsureError, TooLargeError, UnsupportedError):
            return None

    for value in _SCAN:
        budget.check()
        sign = sign_at(value)
        if sign == 0:
            found.append(rational_number(value))
        elif sign is not None and last is not None and sign == -last[1]:
            low, high = last[0], value
            for _ in range(130):
                budget.check()
                middle = (low + high) / 2
                at_middle = sign_at(middle)
                if at_middle is None:
                    break
                if at_middle == 0:
                    low = high = middle
                    break
                low, high = (middle, high) if at_middle == last[1] else (low, middle)
            if high - low < Fraction(1, 10**36):
                if low == high:
                    found.append(rational_number(low))
                else:
                    first, end = as_interval(low), as_interval(high)
                    found.append(_number(first.ctx.mpf([first.a, end.b])))
        last = None if sign is None or sign == 0 else (value, sign)
    return found
