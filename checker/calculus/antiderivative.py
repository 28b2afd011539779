"""An antiderivative of a tree: term by term, by the table, by parts, by partial fractions, by substitution."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as Rational

from checker.budget import Budget
from checker.calculus.building import (
    ONE,
    ZERO,
    added,
    applied,
    number,
    over,
    placeless,
    raised,
    replaced,
    subtracted,
    symbol,
    times,
)
from checker.calculus.derivative import differentiated
from checker.calculus.parts import (
    CONSTANT,
    Factor,
    coefficients,
    joined,
    linear_slope,
    rational_coefficients,
    split,
)
from checker.calculus.rational import integrated_polynomial, integrated_quotient
from checker.calculus.table import by_parts_after, integrated_power, integrated_root
from checker.calculus.waves import integrated_waves
from checker.polynomial import TooLargeError, constant_value
from checker.refusals import UndefinedError, UnsupportedError
from checker.ring import Ring, in_ring
from checker.syntax import Bracket, Function, Negation, Node, Power, Sum, letters, walk

__all__ = ["antiderivative"]

_LARGEST = 300  # nodes
_SECONDS = 0.25  # for one search
_DEEPEST = 4  # substitutions inside one another
_INNER = "\0u"
_LAST = frozenset({"ln", "log", "arctan", "arcsin"})  # differentiated, not integrated, by parts


def antiderivative(node: Node, name: str) -> Node:
    """A function whose derivative is the node.

    Args:
        node: what is integrated.
        name: the letter it is integrated by; all others are constants.
    Raises:
        UnsupportedError: none was found.
        TooLargeError: the search takes too long.
    """
    if sum(1 for _ in walk(node)) > _LARGEST:
        raise UnsupportedError
    return _integrated(placeless(node), name, _Depth(0, Budget(_SECONDS)))


@dataclass(frozen=True, slots=True)
class _Depth:
    """How many substitutions and parts deep the search is, and the time left for all of it."""

    count: int
    budget: Budget

    def deeper(self) -> _Depth:
        return _Depth(self.count + 1, self.budget)

    def check(self) -> None:
        if self.budget.is_over():
            raise TooLargeError


def _integrated(node: Node, name: str, depth: _Depth) -> Node:
    if name not in letters(node):
        return times(node, symbol(name))
    match node:
        case Bracket(body=body):
            return _integrated(body, name, depth)
        case Negation(body=body):
            return times(number(-1), _integrated(body, name, depth))
        case Sum(terms=terms):
            total: Node = ZERO
            for term in terms:
                part = _integrated(term.body, name, depth)
                if term.sign not in ("+", "-"):
                    raise UnsupportedError
                total = added(total, part) if term.sign == "+" else subtracted(total, part)
            return total
        case _:
            return _integrated_term(node, name, depth)


def _integrated_term(node: Node, name: str, depth: _Depth) -> Node:
    depth.check()
    constant, factors = split(node, name)
    if not factors:
        return times(constant, symbol(name))
    for way in (_as_power, _as_polynomial, _as_quotient, integrated_waves, _of_growing_wave):
        try:
            return times(constant, way(factors, name))
        except UnsupportedError:
            continue
    if depth.count >= _DEEPEST:
        raise UnsupportedError
    for deeper in (_by_parts, _by_substitution, _by_linear_substitution, _in_sines, _spread):
        try:
            return times(constant, deeper(factors, name, depth.deeper()))
        except UnsupportedError:
            continue
    raise UnsupportedError


def _as_power(factors: tuple[Factor, ...], name: str) -> Node:
    if len(factors) > 1:
        raise UnsupportedError
    factor = factors[0]
    try:
        return integrated_power(factor, name)
    except UnsupportedError:
        return integrated_root(factor, name)


def _as_polynomial(factors: tuple[Factor, ...], name: str) -> Node:
    found = coefficients(joined(factors), name)
    if found is None:
        raise UnsupportedError
    return integrated_polynomial(found, name)


def _as_quotient(factors: tuple[Factor, ...], name: str) -> Node:
    if any(factor.power.denominator > 1 for factor in factors):
        raise UnsupportedError
    above = joined(tuple(factor for factor in factors if factor.power > 0))
    below = joined(tuple(Factor(factor.base, -factor.power) for factor in factors if factor.power < 0))
    top, bottom = rational_coefficients(above, name), rational_coefficients(below, name)
    if top is None or bottom is None:
        raise UnsupportedError
    return integrated_quotient(top, bottom, name)


def _by_parts(factors: tuple[Factor, ...], name: str, depth: _Depth) -> Node:
    """A logarithm or an inverse function times what can be integrated; or a polynomial times one other factor."""
    for at, factor in enumerate(factors):
        if factor.power == 1 and isinstance(factor.base, Function) and factor.base.name in _LAST:
            grown = _integrated(joined(factors[:at] + factors[at + 1:]), name, depth)
            rest = times(grown, differentiated(factor.base, name, CONSTANT))
            return subtracted(times(grown, factor.base), _integrated(rest, name, depth))
    others = [factor for factor in factors if not _is_plain(factor, name)]
    if not 1 <= len(others) < len(factors):
        raise UnsupportedError
    plain = joined(tuple(factor for factor in factors if _is_plain(factor, name)))
    try:
        return by_parts_after(plain, others[0], name) if len(others) == 1 else _parts(plain, others, name, depth)
    except UnsupportedError:
        return _parts(plain, others, name, depth)


def _parts(plain: Node, others: list[Factor], name: str, depth: _Depth) -> Node:
    slope = differentiated(plain, name, CONSTANT)
    grown = _integrated(joined(tuple(others)), name, depth.deeper())
    return subtracted(times(plain, grown), _integrated(times(slope, grown), name, depth.deeper()))


def _is_plain(factor: Factor, name: str) -> bool:
    return factor.power > 0 and factor.power.denominator == 1 and coefficients(factor.base, name) is not None


def _of_growing_wave(factors: tuple[Factor, ...], name: str) -> Node:
    """e^{ax} times the sine or cosine of bx."""
    if len(factors) != 2 or any(factor.power != 1 for factor in factors):
        raise UnsupportedError
    powers = [factor.base for factor in factors if isinstance(factor.base, Power)]
    waves = [factor.base for factor in factors if isinstance(factor.base, Function)]
    if len(powers) != 1 or len(waves) != 1 or waves[0].name not in ("sin", "cos") or letters(powers[0].base) != {"e"}:
        raise UnsupportedError
    a, b = linear_slope(powers[0].exponent, name), linear_slope(waves[0].arguments[0], name)
    if a is None or b is None:
        raise UnsupportedError
    sine, cosine = (applied(kind, waves[0].arguments[0]) for kind in ("sin", "cos"))
    inner = subtracted(times(a, sine), times(b, cosine)) if waves[0].name == "sin" else added(
        times(a, cosine), times(b, sine))
    return over(times(powers[0], inner), added(raised(a, number(2)), raised(b, number(2))))


def _by_substitution(factors: tuple[Factor, ...], name: str, depth: _Depth) -> Node:
    """g(u) u' for an inner function u."""
    for at, factor in enumerate(factors):
        rest = joined(factors[:at] + factors[at + 1:])
        for inner, outer in _inner_functions(factor):
            try:
                slope = differentiated(inner, name, CONSTANT)
            except UnsupportedError:
                continue
            share = _constant_share(rest, slope)
            if share is not None:
                whole = _integrated(outer, _INNER, depth)
                return times(number(share), replaced(whole, _INNER, inner))
    raise UnsupportedError


def _inner_functions(factor: Factor) -> list[tuple[Node, Node]]:
    """Each inner function u of a factor with what the factor is of it."""
    u = symbol(_INNER)
    found: list[tuple[Node, Node]] = [(factor.base, Factor(u, factor.power).node)]
    match factor.base:
        case Function(name=called, arguments=(argument,), power=None, base=base):
            found.append((argument, Factor(Function((0, 0), called, (u,), None, base), factor.power).node))
        case Power(base=base, exponent=exponent):
            found.append((exponent, Factor(raised(base, u), factor.power).node))
        case _:
            pass
    return found


def _constant_share(node: Node, slope: Node) -> Rational | None:
    """How many times the slope the node is, where that is a number."""

    def work(ring: Ring) -> Rational | None:
        a, b = ring.quotient(node), ring.quotient(slope)
        return constant_value(ring.divide(a, b))

    try:
        return in_ring(work, euler=True)
    except (TooLargeError, UndefinedError, UnsupportedError):
        return None


def _by_linear_substitution(factors: tuple[Factor, ...], name: str, depth: _Depth) -> Node:
    """A broken or high power of a linear function times a polynomial: u for the linear function."""
    for factor in factors:
        parts = coefficients(factor.base, name)
        if parts is None or len(parts) != 2 or factor.base == symbol(name):
            continue
        x = over(subtracted(symbol(_INNER), parts[0]), parts[1])
        rest = joined(tuple(one for one in factors if one is not factor))
        if any(isinstance(node, Function) for node in walk(rest)):
            continue
        outer = times(replaced(rest, name, x), Factor(symbol(_INNER), factor.power).node)
        return over(replaced(_integrated(outer, _INNER, depth), _INNER, factor.base), parts[1])
    raise UnsupportedError


def _in_sines(factors: tuple[Factor, ...], name: str, depth: _Depth) -> Node:
    """Tangents, secants and their like by sines and cosines."""
    out: list[Node] = []
    for factor in factors:
        match factor.base:
            case Function(name="tan" | "cot" | "sec" | "csc" as called, arguments=(angle,)):
                sine, cosine = applied("sin", angle), applied("cos", angle)
                top, bottom = {"tan": (sine, cosine), "cot": (cosine, sine), "sec": (ONE, cosine)}.get(
                    called, (ONE, sine))
                out.append(raised(over(top, bottom), number(factor.power)))
            case _:
                out.append(factor.node)
    whole = times(*out)
    if all(one == factor.node for one, factor in zip(out, factors, strict=True)):
        raise UnsupportedError
    return _integrated(whole, name, depth)


def _spread(factors: tuple[Factor, ...], name: str, depth: _Depth) -> Node:
    """A sum among the factors multiplied out: each of its terms with the others."""
    for at, factor in enumerate(factors):
        if isinstance(factor.base, Sum) and factor.power in (1, 2):
            rest = factors[:at] + factors[at + 1:]
            again = (Factor(factor.base, Rational(1)),) if factor.power == 2 else ()
            total: Node = ZERO
            for term in factor.base.terms:
                part = _integrated(times(term.body, joined(rest + again)), name, depth)
                total = added(total, part) if term.sign == "+" else subtracted(total, part)
            return total
    raise UnsupportedError


