"""A term taken apart: what does not change with the letter, and factors with their powers."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as Rational

from checker.calculus.building import ONE, added, applied, number, over, raised, symbol, times
from checker.calculus.derivative import differentiated
from checker.polynomial import TooLargeError, coefficients_in, exponents, is_constant
from checker.refusals import UndefinedError, UnsupportedError
from checker.ring import Ring, in_ring
from checker.syntax import (
    Bracket,
    Division,
    Fraction,
    Function,
    Negation,
    Node,
    Number,
    Power,
    Product,
    Root,
    letters,
)

__all__ = ["CONSTANT", "Factor", "coefficients", "joined", "linear_slope", "rational_coefficients", "rebuilt", "split"]

CONSTANT: frozenset[str] = frozenset()  # no letter depends on the one that is integrated by
_MOST_DEGREE = 40
_RECIPROCAL = {"cos": "sec", "sin": "csc", "sec": "cos", "csc": "sin", "tan": "cot", "cot": "tan"}


@dataclass(frozen=True, slots=True)
class Factor:
    """A base that changes with the letter, and its power."""

    base: Node
    power: Rational

    @property
    def node(self) -> Node:
        return rebuilt(self.base, self.power)


def rebuilt(base: Node, power: Rational) -> Node:
    """The power of a base; reciprocals of sines and cosines by their names."""
    if power == -1 and isinstance(base, Function) and base.name in _RECIPROCAL:
        return Function(base.span, _RECIPROCAL[base.name], base.arguments)
    if power < 0:
        return over(ONE, rebuilt(base, -power))
    return applied("sqrt", base) if power == Rational(1, 2) else raised(base, number(power))


def joined(factors: tuple[Factor, ...]) -> Node:
    """The product of the factors."""
    return times(*(factor.node for factor in factors))


def split(node: Node, name: str) -> tuple[Node, tuple[Factor, ...]]:
    """The constant part of a term without places, and its other factors, like bases joined."""
    constants: list[Node] = []
    found: list[Factor] = []
    _collect(node, Rational(1), name, constants, found)
    merged: dict[Node, Rational] = {}
    growing: dict[Node, list[Node]] = {}
    for factor in found:
        base = factor.base
        if isinstance(base, Power) and name not in letters(base.base):
            growing.setdefault(base.base, []).append(times(number(factor.power), base.exponent))
        else:
            merged[base] = merged.get(base, Rational(0)) + factor.power
    out = [Factor(base, power) for base, power in merged.items() if power]
    for root, powers in growing.items():
        exponent = _collected(added(*powers), name)
        if name in letters(exponent):
            out.append(Factor(raised(root, exponent), Rational(1)))
        else:
            constants.append(raised(root, exponent))
    return times(*constants), tuple(out)


def _collected(exponent: Node, name: str) -> Node:
    """The exponent with like terms collected where it is a polynomial."""
    found = coefficients(exponent, name)
    if found is None:
        return exponent
    return added(*(times(part, raised(symbol(name), number(at))) for at, part in enumerate(found)))


def _collect(node: Node, power: Rational, name: str, constants: list[Node], found: list[Factor]) -> None:
    if name not in letters(node):
        constants.append(rebuilt(node, power))
        return
    match node:
        case Bracket(body=body):
            _collect(body, power, name, constants, found)
        case Negation(body=body) if power.denominator == 1:
            if power % 2:
                constants.append(number(-1))
            _collect(body, power, name, constants, found)
        case Product(factors=factors) if power.denominator == 1:
            for factor in factors:
                _collect(factor, power, name, constants, found)
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom) if power.denominator == 1:
            _collect(top, power, name, constants, found)
            _collect(bottom, -power, name, constants, found)
        case Power(base=base, exponent=exponent) if name not in letters(exponent):
            value = _rational(exponent)
            if value is None or (value.denominator > 1 and power.denominator > 1):
                found.append(Factor(node, power))
            else:
                _collect(base, power * value, name, constants, found)
        case Root(radicand=radicand, index=index) if power.denominator == 1:
            count: Rational | None = Rational(2) if index is None else _rational(index)
            if count:
                _collect(radicand, power / count, name, constants, found)
            else:
                found.append(Factor(node, power))
        case Function(power=Number(value=raised_to)) if raised_to.denominator == 1:
            bare = Function(node.span, node.name, node.arguments, None, node.base)
            _collect(bare, power * raised_to, name, constants, found)
        case Function(name="tan" | "cot" | "sec" | "csc" as called, arguments=(argument,)) if power < 0:
            found.append(Factor(Function((0, 0), _RECIPROCAL[called], (argument,)), -power))
        case Function(name="exp", arguments=(argument,)):
            found.append(Factor(raised(symbol("e"), argument), power))
        case _:
            found.append(Factor(node, power))


def _rational(node: Node) -> Rational | None:
    match node:
        case Number(value=value):
            return value
        case Negation(body=body):
            inner = _rational(body)
            return None if inner is None else -inner
        case Bracket(body=body):
            return _rational(body)
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            above, below = _rational(top), _rational(bottom)
            return above / below if above is not None and below else None
        case _:
            return None


def linear_slope(node: Node, name: str) -> Node | None:
    """The slope of what grows evenly with the letter; None for all else."""
    if name not in letters(node):
        return None
    try:
        slope = differentiated(node, name, CONSTANT)
    except UnsupportedError:
        return None
    return None if name in letters(slope) else slope


def coefficients(node: Node, name: str) -> list[Node] | None:
    """By rising powers of the letter, where the node is a polynomial in it; None where it is none."""

    def work(ring: Ring) -> list[Node] | None:
        top, bottom = ring.quotient(node)
        if ring.relations or ring.opaque or not is_constant(bottom):
            return None
        letter = ring.letter(name)
        parts = coefficients_in(top, letter)
        if len(parts) > _MOST_DEGREE:
            return None
        return [
            added(*(
                times(number(Rational(value, bottom[0])), *(
                    raised(symbol(ring.names[at]), number(times_)) for at, times_ in exponents(key)
                )) for key, value in part.items()
            )) for part in parts
        ]

    try:
        return in_ring(work)
    except (TooLargeError, UndefinedError, UnsupportedError):
        return None


def rational_coefficients(node: Node, name: str) -> list[Rational] | None:
    """By rising powers of the letter, where all are rational numbers."""
    found = coefficients(node, name)
    if found is None:
        return None
    values = [_rational(part) for part in found]
    known = [value for value in values if value is not None]
    return known if len(known) == len(values) else None
