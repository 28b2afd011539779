"""Sines, cosines, logarithms and functions of whole numbers: exact values where known, else atoms."""

from __future__ import annotations

from fractions import Fraction as Rational
from math import comb, gcd, lcm
from typing import TYPE_CHECKING

from checker.polynomial import (
    BITS,
    MASK,
    ONE,
    Quotient,
    TooLargeError,
    constant_value,
    is_constant,
    letters_in,
    multiply,
    q_add,
    q_multiply,
    q_negated,
    q_number,
    subtract,
)
from checker.refusals import UndefinedError, UnsupportedError
from checker.ring.powers import raised_to, root_of_number
from checker.ring.primes import prime_powers
from checker.syntax import Function, Symbol

if TYPE_CHECKING:
    from checker.ring.algebra import Ring

__all__ = ["function"]

_HALF = Rational(1, 2)
_MOST_CHOSEN_FROM = 2_000
_RUNNING = frozenset({"deriv", "int", "sum", "prod", "lim", "limabove", "limbelow", "between"})
_RUNNER = "\0run"  # the running letter of what has bounds
_SURDS = {
    Rational(0): (0, 1), Rational(1, 6): (1, 1), Rational(1, 4): (1, 2), Rational(1, 3): (1, 3), _HALF: (2, 1),
}


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
        case "sin" | "cos":
            return _wave(ring, name, first)
        case "tan":
            return ring.divide(_wave(ring, "sin", first), _wave(ring, "cos", first))
        case "cot":
            return ring.divide(_wave(ring, "cos", first), _wave(ring, "sin", first))
        case "sec":
            return ring.divide((ONE, ONE), _wave(ring, "cos", first))
        case "csc":
            return ring.divide((ONE, ONE), _wave(ring, "sin", first))
        case "exp":
            ring.euler = True
            return raised_to(ring, ({1 << (ring.letter("e") * BITS): 1}, ONE), first)
        case "ln":
            return _logarithm(ring, first)
        case "log":
            base = ({0: 10}, ONE) if node.base is None else ring.quotient(node.base)
            return ring.divide(_logarithm(ring, first), _logarithm(ring, base))
        case "binom" | "max" | "min" | "gcd" | "lcm":
            return _of_numbers(ring, name, arguments)
        case _:
            return ring.atom(name, arguments)


def _running(ring: Ring, node: Function) -> Quotient:
    """A derivative, integral, sum or limit: worked out, or an atom."""
    from checker.calculus.building import replaced, symbol  # these rooms need rings themselves
    from checker.calculus.working_out import worked_out

    try:
        return ring.quotient(worked_out(node))
    except UnsupportedError:
        pass
    body, letter, *bounds = node.arguments
    if not isinstance(letter, Symbol):
        raise UnsupportedError
    if node.name == "deriv":
        if not isinstance(body, Symbol):
            raise UnsupportedError
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


def _wave(ring: Ring, name: str, angle: Quotient) -> Quotient:
    turns = _turns(ring, angle)
    if turns is not None:
        known = _known_wave(ring, turns if name == "sin" else turns + _HALF)
        if known is not None:
            return known
    sign = 1
    if angle[0] and angle[0][max(angle[0])] * angle[1][max(angle[1])] < 0:
        angle = q_negated(angle)
        sign = 1 if name == "cos" else -1
    cosine = ring.atom("cos", (angle,))
    if name == "cos":
        return cosine
    square = subtract(ONE, multiply(cosine[0], cosine[0]))
    sine = ring.atom("sin", (angle,), (2, square))
    return sine if sign > 0 else q_negated(sine)


def _turns(ring: Ring, angle: Quotient) -> Rational | None:
    """The angle over pi when that is a rational number."""
    if not angle[0]:
        return Rational(0)
    if "pi" not in ring.index or len(angle[0]) > 1 or not is_constant(angle[1]):
        return None
    key = 1 << (ring.index["pi"] * BITS)
    return Rational(angle[0][key], angle[1][0]) if key in angle[0] else None


def _known_wave(ring: Ring, turns: Rational) -> Quotient | None:
    """sin(turns * pi) for multiples of pi/4 and pi/6."""
    turns %= 2
    sign = 1
    if turns > 1:
        turns, sign = turns - 1, -1
    if turns > _HALF:
        turns = 1 - turns
    if turns not in _SURDS:
        return None
    factor, inside = _SURDS[turns]
    if factor == 0:
        return {}, ONE
    root = root_of_number(ring, Rational(inside), 2)
    return q_multiply(root, q_number(Rational(sign * factor, 2)))


def _logarithm(ring: Ring, value: Quotient) -> Quotient:
    number = constant_value(value)
    if number is not None:
        if number <= 0:
            raise UndefinedError
        total: Quotient = ({}, ONE)
        for prime, count in prime_powers(number):
            total = q_add(total, q_multiply(ring.atom("ln", (({0: prime}, ONE),)), q_number(Rational(count))))
        return total
    natural = _exponent_of_e(ring, value)
    if natural is not None:
        return natural
    content = 0
    for coefficient in value[0].values():
        content = gcd(content, coefficient)
    if content > 1 and is_constant(value[1]):
        rest = ({key: coefficient // content for key, coefficient in value[0].items()}, ONE)
        return q_add(_logarithm(ring, q_number(Rational(content, value[1][0]))), _logarithm(ring, rest))
    return ring.atom("ln", (value,))


def _exponent_of_e(ring: Ring, value: Quotient) -> Quotient | None:
    """k where the value is e^k."""
    if not ring.euler or "e" not in ring.index or len(value[0]) > 1 or len(value[1]) > 1:
        return None
    total: Quotient = ({}, ONE)
    for poly, sign in ((value[0], 1), (value[1], -1)):
        ((key, coefficient),) = poly.items()
        if coefficient != 1:
            return None
        for letter in letters_in({key: 1}):
            times = (key >> (letter * BITS)) & MASK
            if letter == ring.index["e"]:
                total = q_add(total, q_number(Rational(sign * times)))
                continue
            atom = next((one for one in ring.atoms if one[2] == letter and one[0] == "exp"), None)
            e_alone = ({1 << (ring.index["e"] * BITS): 1}, ONE)
            if atom is None or not ring.equal(atom[1][0], e_alone):
                return None
            name = str(sorted(e_alone[0].items())) + str(sorted(e_alone[1].items()))
            ((inner, _),) = atom[1][1][0].items()
            index = ring.fine.get(("exp", name, inner), 1)
            total = q_add(total, ({inner: sign * times}, {0: index}))
    return total
