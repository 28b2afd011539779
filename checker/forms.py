"""Has a value the form that the task asks for: multiplied out and collected, fully factorised, or simplest form?

Everything here is common practice, no source: a factor of two brackets may stay as it is written twice, a fraction may
be a mixed number or a decimal that ends, and "simplify" takes both brackets multiplied out and full factors.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction as Rational
from math import gcd

from checker.factors import content_of, irreducible_factors
from checker.polynomial import Poly, exponents, is_constant, letters_in
from checker.report import Task
from checker.ring import Ring, in_ring
from checker.surds import simplest_surds
from checker.syntax import (
    Bracket,
    Division,
    Fraction,
    MixedNumber,
    Negation,
    Node,
    Number,
    Postfix,
    Power,
    Product,
    Root,
    Sum,
    Symbol,
    letters,
    walk,
)

__all__ = ["FormCheck", "checked_form", "is_final_number", "is_open_bracket"]

_CONSTANTS = frozenset({"pi", "i"})


@dataclass(frozen=True, slots=True)
class FormCheck:
    """Is the form there? None when that cannot be told; `lacks` says what is still to be done."""

    is_met: bool | None
    lacks: str = ""


_MET = FormCheck(True)
_UNKNOWN = FormCheck(None)


def checked_form(answer: Node, task: Task, *, euler: bool = False) -> FormCheck:
    """Look at a value by its task.

    Args:
        answer: the value as written.
        task: expand, factorise or simplify; for any other task nothing is asked.
        euler: is e the base of natural logarithms?
    Raises:
        UnsupportedError, UndefinedError, TooLargeError: it cannot be worked out.
    """
    node = _plain(answer)
    if task == "factorise":
        return _factorised(node, euler=euler)
    if task == "expand":
        return _collected(node, euler=euler)
    return _simplest(node, euler=euler) if task == "simplify" else _UNKNOWN


def _plain(node: Node) -> Node:
    return _plain(node.body) if isinstance(node, Bracket) else node


def _unsigned(node: Node) -> Node:
    node = _plain(node)
    return _plain(node.body) if isinstance(node, Negation) else node


# multiplied out and collected


def _collected(node: Node, *, euler: bool) -> FormCheck:
    if any(is_open_bracket(part) for part in walk(node)):
        return FormCheck(False, "A bracket is still to be multiplied out.")
    inner = _unsigned(node)
    if isinstance(inner, Fraction) and not letters(inner.denominator) and isinstance(_plain(inner.numerator), Sum):
        found = _collected(_plain(inner.numerator), euler=euler)
        return _UNKNOWN if found.is_met else found  # one half of a sum may count as a bracket still
    written = len(node.terms) if isinstance(node, Sum) else 1

    def work(ring: Ring) -> FormCheck:
        top, bottom = ring.quotient(node)
        if not is_constant(bottom):
            return _UNKNOWN
        bodies = [term.body for term in node.terms] if isinstance(node, Sum) else [node]
        if any(kind not in ("surd", "root") for kind, _, _ in ring.atoms):
            return _MET if written == len(top) and all(map(_is_monomial, bodies)) else _UNKNOWN
        if written > max(1, len(top)):
            return FormCheck(False, "Like terms are still to be collected.")
        if written < len(top) and not ring.opaque:
            return FormCheck(False, "It is not multiplied out.")
        if not all(_is_monomial(body) for body in bodies):
            return FormCheck(False, "A term is still to be worked out.")
        return _MET

    return in_ring(work, euler=euler)


def is_open_bracket(node: Node) -> bool:
    """A bracket around a sum, or a power or factor of one; not the argument of a function."""
    match node:
        case Product(factors=factors):
            return any(isinstance(_plain(factor), Sum) for factor in factors)
        case Power(base=base):
            return isinstance(_plain(base), Sum)
        case Sum(terms=terms):
            return any(isinstance(_plain(term.body), Sum) for term in terms)
        case Negation(body=body):
            return isinstance(_plain(body), Sum)
        case _:
            return False


def _is_monomial(node: Node) -> bool:
    """At most one number in front, one root of numbers, and each letter once."""
    seen: set[str] = set()
    numbers = roots = 0
    node = _unsigned(node)
    for factor in node.factors if isinstance(node, Product) else (node,):
        inner = _plain(factor)
        base = _plain(inner.base) if isinstance(inner, Power) else inner
        if isinstance(base, Power | Product) or (isinstance(inner, Power) and not _is_single(inner.exponent)):
            return False
        names = letters(base)
        if not names:
            roots += isinstance(base, Root)
            numbers += not isinstance(base, Root)
            if isinstance(inner, Power) and isinstance(base, Number) and isinstance(inner.exponent, Number):
                return False
        elif names & seen:
            return False
        seen |= names
    return numbers <= 1 and roots <= 1


def _is_single(exponent: Node) -> bool:
    """Is an exponent worked out, or has it letters?"""
    inner = _unsigned(exponent)
    return bool(letters(inner)) or isinstance(inner, Number | Fraction | Division)


# fully factorised


def _factorised(node: Node, *, euler: bool) -> FormCheck:
    """As many factors written as there are irreducible ones, each sum collected and without a common factor."""
    node = _unsigned(node)
    below = 1
    if isinstance(node, Fraction) and isinstance(_plain(node.denominator), Number):
        bottom_value = _plain(node.denominator)
        assert isinstance(bottom_value, Number)
        if bottom_value.value.denominator == 1:
            below, node = int(bottom_value.value), _unsigned(node.numerator)
    if not letters(node):
        return _prime_product(node) if below == 1 else _UNKNOWN
    written = list(_written_factors(node))

    def work(ring: Ring) -> FormCheck:
        top, bottom = ring.quotient(node)
        if not is_constant(bottom) or ring.relations or ring.opaque:
            return _UNKNOWN
        parts = irreducible_factors(top)
        if parts is None:
            return _UNKNOWN
        count = numbers = 0
        for inner, times in written:
            poly, under = ring.quotient(inner)
            if is_constant(poly):
                numbers += times
                continue
            if isinstance(inner, Sum) and not _collected(inner, euler=euler).is_met:
                return FormCheck(False, "A bracket is still to be collected.")
            count += times * _degree_or_one(poly)
            if len(poly) > 1:
                if content_of(poly) > 1:
                    return FormCheck(False, "A common factor is left in a bracket.")
                if under != {0: 1} and content_of(top) % bottom[0] == 0:
                    return FormCheck(False, "The factors are to be with whole numbers.")
        if count != sum(times * _degree_or_one(factor) for factor, times in parts[1]):
            return FormCheck(False, "It can be factorised further.")
        if numbers > 1 or gcd(content_of(top), below) > 1:
            return FormCheck(False, "The numbers in front are still to be worked out.")
        return _MET

    return in_ring(work, euler=euler)


def _degree_or_one(poly: Poly) -> int:
    """How many factors a polynomial counts for: x^3 for three, a sum for one."""
    return sum(times for _, times in exponents(next(iter(poly)))) if len(poly) == 1 else 1


def _written_factors(node: Node) -> Iterator[tuple[Node, int]]:
    node = _unsigned(node)
    if isinstance(node, Product):
        for factor in node.factors:
            yield from _written_factors(factor)
    elif isinstance(node, Power) and isinstance(node.exponent, Number) and node.exponent.value.denominator == 1:
        yield from ((inner, times * int(node.exponent.value)) for inner, times in _written_factors(node.base))
    else:
        yield node, 1


def _prime_product(node: Node) -> FormCheck:
    """A number as a product of primes."""
    numbers = [inner.value for inner, _ in _written_factors(node) if isinstance(inner, Number)]
    if len(numbers) < len(list(_written_factors(node))) or any(number.denominator != 1 for number in numbers):
        return _UNKNOWN
    for number in numbers:
        parts = irreducible_primes(int(number))
        if parts is None:
            return _UNKNOWN
        if parts > 1:
            return FormCheck(False, "It can be factorised further.")
    return _MET


def irreducible_primes(number: int) -> int | None:
    """How many primes a whole number is the product of; None when it is too large to try."""
    if not 0 < number < 10**8:
        return None
    count, prime = 0, 2
    while prime * prime <= number:
        while number % prime == 0:
            number, count = number // prime, count + 1
        prime += 1
    return count + (number > 1)


# simplest form


def _simplest(node: Node, *, euler: bool) -> FormCheck:
    if any(_is_unreduced(part) for part in walk(node)):
        return FormCheck(False, "A fraction is not in its lowest terms.")
    if not letters(node) - _CONSTANTS - ({"e"} if euler else set()):
        return _simplest_number(node)
    if _fractions_to_be_added(node):
        return FormCheck(False, "The fractions are to be put over one denominator.")
    inner = _unsigned(node)
    if isinstance(inner, Fraction | Division):
        top, bottom = (inner.numerator, inner.denominator) if isinstance(inner, Fraction) else (inner.left, inner.right)
        found = in_ring(lambda ring: _lowest(top, bottom, ring), euler=euler)
        if found.is_met is not True:
            return found
        return _worse(*(_tidy(part, euler=euler) for part in (top, bottom)))
    if any(isinstance(part, Fraction) and letters(part.denominator) for part in walk(node)):
        return _UNKNOWN
    return _tidy(node, euler=euler)


def _worse(first: FormCheck, second: FormCheck) -> FormCheck:
    return first if first.is_met is False or (first.is_met is None and second.is_met) else second


def _tidy(node: Node, *, euler: bool) -> FormCheck:
    """Collected, or in full factors."""
    collected = _collected(_plain(node), euler=euler)
    if collected.is_met is not False or not any(map(is_open_bracket, walk(node))):
        return collected
    return _MET if _factorised(_plain(node), euler=euler).is_met else collected


def _is_unreduced(node: Node) -> bool:
    """A fraction of two numbers that can be cancelled, or is a whole number."""
    if not isinstance(node, Fraction):
        return False
    top, bottom = _unsigned(node.numerator), _unsigned(node.denominator)
    if not isinstance(top, Number) or not isinstance(bottom, Number):
        return False
    if top.value.denominator != 1 or bottom.value.denominator != 1:
        return True
    return bottom.value == 1 or gcd(int(top.value), int(bottom.value)) != 1


def _fractions_to_be_added(node: Node) -> bool:
    if not isinstance(node, Sum):
        return False
    below = [
        inner for inner in (_unsigned(term.body) for term in node.terms)
        if isinstance(inner, Fraction) and letters(inner.denominator)
    ]
    return len(below) > 1


def _lowest(top: Node, bottom: Node, ring: Ring) -> FormCheck:
    (above, above_under), (below, below_under) = ring.quotient(top), ring.quotient(bottom)
    if ring.relations or ring.opaque:
        return _UNKNOWN
    if above_under != {0: 1} or below_under != {0: 1}:
        return FormCheck(False, "There is a fraction within the fraction.")
    if not above or gcd(content_of(above), content_of(below)) > 1:
        return FormCheck(False, "The fraction can be cancelled further.")
    parts = irreducible_factors(above), irreducible_factors(below)
    if parts[0] is None or parts[1] is None:
        return _UNKNOWN
    factors = [factor for factor, _ in parts[0][1]]
    opposite = [{key: -value for key, value in factor.items()} for factor in factors]
    if any(factor in factors or factor in opposite for factor, _ in parts[1][1]):
        return FormCheck(False, "The fraction can be cancelled further.")
    return _MET


def _simplest_number(node: Node) -> FormCheck:
    def is_rational(ring: Ring) -> bool:
        top, bottom = ring.quotient(node)
        return not letters_in(top) and not letters_in(bottom)

    if in_ring(is_rational):
        if _is_index_form(node):
            return _UNKNOWN
        return _MET if is_final_number(node) else FormCheck(False, "The number is still to be worked out.")
    found, lacks = simplest_surds(node)
    return FormCheck(found, lacks)


def _is_index_form(node: Node) -> bool:
    """3^6 may be meant to be left so."""
    node = _unsigned(node)
    return isinstance(node, Power) and isinstance(node.base, Number) and isinstance(node.exponent, Number)


def is_final_number(node: Node) -> bool:
    """Worked out: a number, a fraction in lowest terms, a mixed number, or what holds a root, pi or a letter."""
    node = _unsigned(node)
    if isinstance(node, Number | Symbol):
        return True
    if isinstance(node, MixedNumber):
        return not _is_unreduced(node.fraction) and _rational(node.fraction) < 1
    if isinstance(node, Postfix) and node.mark in "%°":
        return isinstance(_plain(node.body), Number)
    if isinstance(node, Fraction) and all(
        isinstance(_unsigned(part), Number) for part in (node.numerator, node.denominator)
    ):
        return not _is_unreduced(node)
    if letters(node) - {"pi", "e", "i"}:
        return True

    def work(ring: Ring) -> bool:
        value = ring.quotient(node)
        return not (is_constant(value[0]) and is_constant(value[1]))

    return in_ring(work)


def _rational(node: Fraction) -> Rational:
    top, bottom = _plain(node.numerator), _plain(node.denominator)
    if isinstance(top, Number) and isinstance(bottom, Number) and bottom.value:
        return top.value / bottom.value
    return Rational(0)
