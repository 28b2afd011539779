"""Sines, cosines, logarithms and functions of whole numbers: exact values where known, else atoms."""

from __future__ import annotations

from math import comb, gcd, lcm
from typing import TYPE_CHECKING

from checker.polynomial import (
    BITS,
    ONE,
    Quotient,
    TooLargeError,
    constant_value,
    q_add,
    q_multiply,
    q_negated,
    q_number,
)
from checker.refusals import UndefinedError, UnsupportedError
from checker.ring.logarithms import logarithm
from checker.ring.powers import raised_to, root_of
from checker.ring.waves import trigonometric
from checker.syntax import Function, Symbol

if TYPE_CHECKING:
    from checker.ring.algebra import Ring

__all__ = ["function"]

_MOST_CHOSEN_FROM = 2_000
_RUNNING = frozenset({"deriv", "int", "sum", "prod", "lim", "limabove", "limbelow", "between"})
_RUNNER = "\0run"  # the running letter of what has bounds


def function(ring: Ring, node: Function) -> Quotient:
    """A named function of its arguments, raised to the power written after its name."""
    if len(node.arguments) > 1 and node.name in _RUNNING:
        return _running(ring, node)
    arguments = tuple(ring.quotient(argument) for argument in node.arguments)
    value = _value_of(ring, node, arguments)
    if node.power is None:
        return value
    return raised_to(ring, value, ring.quotient(node.power))


def _value_of(ring: Ring, node: Function, arguments: tuple[Quotient, ...]) -> Quotient:
    name = node.name
    first = arguments[0]
    match name:
        case "sin" | "cos" | "tan" | "cot" | "sec" | "csc":
            return trigonometric(ring, name, first)
        case "sinh" | "cosh" | "tanh" | "coth" | "sech" | "csch":
            return _hyperbolic(ring, name, first)
        case "arcsinh" | "arccosh" | "arctanh":
            return _inverse_hyperbolic(ring, name, first)
        case "exp":
            return _exponential(ring, first)
        case "ln":
            return logarithm(ring, first)
        case "log":
            base = ({0: 10}, ONE) if node.base is None else ring.quotient(node.base)
            return ring.divide(logarithm(ring, first), logarithm(ring, base))
        case "binom" | "max" | "min" | "gcd" | "lcm":
            return _of_numbers(ring, name, arguments)
        case _:
            return ring.atom(name, arguments)


def _exponential(ring: Ring, exponent: Quotient) -> Quotient:
    ring.euler = True
    return raised_to(ring, ({1 << (ring.letter("e") * BITS): 1}, ONE), exponent)


def _hyperbolic(ring: Ring, name: str, argument: Quotient) -> Quotient:
    """By e^u and e^{-u}."""
    up, down = _exponential(ring, argument), _exponential(ring, q_negated(argument))
    double_sine, double_cosine = q_add(up, q_negated(down)), q_add(up, down)
    two: Quotient = ({0: 2}, ONE)
    match name:
        case "sinh":
            return ring.divide(double_sine, two)
        case "cosh":
            return ring.divide(double_cosine, two)
        case "tanh":
            return ring.divide(double_sine, double_cosine)
        case "coth":
            return ring.divide(double_cosine, double_sine)
        case "sech":
            return ring.divide(two, double_cosine)
        case _:
            return ring.divide(two, double_sine)


def _inverse_hyperbolic(ring: Ring, name: str, u: Quotient) -> Quotient:
    """By logarithms."""
    one: Quotient = (ONE, ONE)
    if name == "arctanh":
        inside = ring.divide(q_add(one, u), q_add(one, q_negated(u)))
        return ring.divide(logarithm(ring, inside), ({0: 2}, ONE))
    root = root_of(ring, q_add(q_multiply(u, u), one if name == "arcsinh" else q_negated(one)), 2)
    return logarithm(ring, ring.reduced(q_add(u, root)))


def _running(ring: Ring, node: Function) -> Quotient:
    """A derivative, integral, sum or limit: worked out, or an atom."""
    from checker.calculus.building import replaced, symbol  # these rooms need rings themselves
    from checker.calculus.working_out import worked_out

    ring.check_time()
    ring.runs = True
    try:
        return ring.quotient(worked_out(node, ring.dependent()))
    except UnsupportedError:
        pass
    body, letter, *bounds = node.arguments
    if not isinstance(letter, Symbol):
        raise UnsupportedError
    if node.name == "deriv":
        if not isinstance(body, Symbol):
            raise UnsupportedError
        ring.depends(body.name)
        return ring.atom("deriv", (body.name, letter.name, *(ring.quotient(bound) for bound in bounds)))
    known = len(ring.denominators)
    if bounds:
        body = replaced(body, letter.name, symbol(_RUNNER))
        inside = ring.quotient(body)
    else:
        inside = ring.quotient(body)
        ring.indefinite.append(letter.name)
    del ring.denominators[known:]
    name = _RUNNER if bounds else letter.name
    return ring.atom(node.name, (name, inside, *(ring.quotient(bound) for bound in bounds)))


def _of_numbers(ring: Ring, name: str, arguments: tuple[Quotient, ...]) -> Quotient:
    numbers = [constant_value(argument) for argument in arguments]
    found = [number for number in numbers if number is not None]
    if len(found) < len(numbers):
        return ring.atom(name, arguments)
    if name in ("max", "min"):
        return q_number(max(found) if name == "max" else min(found))
    if any(number.denominator != 1 for number in found):
        raise UndefinedError
    whole = [int(number) for number in found]
    if name == "binom":
        if not 0 <= whole[1] <= whole[0]:
            return {}, ONE
        if whole[0] > _MOST_CHOSEN_FROM:
            raise TooLargeError
        return {0: comb(whole[0], whole[1])}, ONE
    return {0: gcd(*whole) if name == "gcd" else lcm(*whole)}, ONE
