"""Places where sines and the like change sign, by the tangent of half the angle."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction as Rational
from math import ceil, floor, gcd, lcm

from checker.angles import WAVES
from checker.calculus.building import added, number, over, subtracted, symbol, times
from checker.numeric import Evaluator, Value, as_interval, difference, is_near_zero
from checker.outcome import Known
from checker.real_roots import RealNumber, rational_number
from checker.ring import UnsupportedError
from checker.solutions import critical_values
from checker.syntax import (
    Absolute,
    Bracket,
    Division,
    Fraction,
    Function,
    Negation,
    Node,
    Postfix,
    Power,
    Product,
    Relation,
    Root,
    Sum,
    Symbol,
    letters,
    walk,
)

__all__ = ["DENOMINATOR", "MOST_TURNS", "angle_places", "angles_of", "middle_of", "pi_value"]

_U = "\0u"  # the tangent of half the angle
_MOST_TIMES = 6  # the angle taken many times
MOST_TURNS = 40
DENOMINATOR = 24


@dataclass(frozen=True, slots=True)
class _Angle:
    """times (rate x + shift), in the unit in which a turn is `turn`."""

    rate: Rational
    shift: Value
    turn: Value


def pi_value() -> Value:
    """Pi as an interval."""
    return Evaluator({}).value(Symbol((0, 0), "pi"))


def middle_of(value: Value) -> Rational:
    """A fraction within the value."""
    return value if isinstance(value, Rational) else RealNumber(value, "").middle


def angles_of(sides: Sequence[Node], name: str, turn: Value, known: Known) -> Iterator[_Angle]:
    """The angles of the letter that sines and the like are taken of."""
    for side in sides:
        for node in walk(side):
            if isinstance(node, Function) and node.name in WAVES and name in letters(node):
                if len(node.arguments) != 1:
                    raise UnsupportedError
                yield _angle_of(node.arguments[0], name, turn, known)


def _angle_of(argument: Node, name: str, turn: Value, known: Known) -> _Angle:
    body = argument.body if known.degrees and isinstance(argument, Postfix) and argument.mark == "°" else argument
    if letters(body) - {name, "pi", "e"}:
        raise UnsupportedError
    values = [Evaluator({name: Rational(at)}, euler=known.euler).value(body) for at in (0, 1, 2, 5)]
    rate = difference(values[1], values[0])
    if not is_near_zero(difference(difference(values[2], values[1]), rate)):
        raise UnsupportedError
    if not is_near_zero(difference(difference(values[3], values[0]), rate * 5)):
        raise UnsupportedError
    exact = rate if isinstance(rate, Rational) else middle_of(rate).limit_denominator(DENOMINATOR)
    if not exact or not is_near_zero(difference(rate, exact)):
        raise UnsupportedError
    return _Angle(exact, values[0], turn)


def angle_places(
    left: Node, right: Node, angles: Sequence[_Angle], name: str, window: tuple[Value, Value], turn: Value, known: Known
) -> list[RealNumber]:
    """Zeros by the tangent of half the angle that all are multiples of."""
    rate = Rational(gcd(*(one.rate.numerator for one in angles)), lcm(*(one.rate.denominator for one in angles)))
    shift = None
    for one in angles:
        times_it = one.rate / rate
        own = one.shift / times_it.numerator
        if abs(times_it) > _MOST_TIMES:
            raise UnsupportedError
        if shift is None:
            shift = own
        elif not is_near_zero(difference(shift, own)):
            raise UnsupportedError
    base = _Angle(rate, shift if shift is not None else Rational(0), turn)
    whole = subtracted(_halved(left, name, base, known), _halved(right, name, base, known))
    if name in letters(whole):
        raise UnsupportedError
    halves: list[RealNumber] = []
    if _U in letters(whole):
        zero = Relation((0, 0), whole, "=", number(0), (0, 0))
        halves, _ = critical_values(zero, _U, {}, known.budget, euler=known.euler, search=False)
    quarter = turn / 4
    most = max(abs(one.rate / rate) for one in angles)
    thetas = [_theta(half, turn, known) for half in halves]
    for step in range(4 * int(most)):
        thetas.append(quarter * step / int(most))
    found = []
    for theta in thetas:
        found += _turned(theta, base, window)
    return found


def _theta(half: RealNumber, turn: Value, known: Known) -> Value:
    """Twice the arc whose tangent is given, exact in degrees where it is a simple number of them."""
    node = Function((0, 0), "arctan", (Symbol((0, 0), "t"),))
    radians = Evaluator({"t": half.value}).value(node) * 2
    value = as_interval(radians) * 180 / pi_value() if known.degrees else radians
    if known.degrees:
        near = middle_of(value).limit_denominator(DENOMINATOR)
        if is_near_zero(difference(value, near)):
            return near
    return value


def _turned(theta: Value, base: _Angle, window: tuple[Value, Value]) -> list[RealNumber]:
    """(theta + n turns - shift) / rate for every n that falls into the window."""
    low, high = middle_of(window[0]), middle_of(window[1])
    ends = sorted(((low * base.rate), (high * base.rate)))
    start = middle_of(difference(theta, base.shift))
    turn = middle_of(base.turn)
    found = []
    first, last = ceil((ends[0] - start) / turn) - 1, floor((ends[1] - start) / turn) + 1
    if last - first > 4 * MOST_TURNS:
        raise UnsupportedError
    for number_of in range(first, last + 1):
        value = difference(theta, base.shift)
        moved = base.turn * number_of
        total = value + moved if isinstance(value, Rational) and isinstance(moved, Rational) else (
            as_interval(value) + as_interval(moved)
        )
        place = total / base.rate if isinstance(total, Rational) else (
            total * base.rate.denominator / base.rate.numerator
        )
        found.append(rational_number(place) if isinstance(place, Rational) else RealNumber(place, ""))
    return found


def _halved(node: Node, name: str, base: _Angle, known: Known) -> Node:
    """The node with each sine, cosine and the like by the tangent of half the base angle."""

    def deeper(one: Node) -> Node:
        return _halved(one, name, base, known)

    if name not in letters(node):
        return node
    match node:
        case Function(name=called, arguments=(argument,), power=power) if called in WAVES:
            angle = _angle_of(argument, name, base.turn, known)
            times_it = angle.rate / base.rate
            wave = _wave(called, int(times_it))
            return wave if power is None else Power(node.span, Bracket(node.span, wave, "("), power)
        case Bracket(body=body):
            return Bracket(node.span, deeper(body), "(")
        case Sum(terms=terms):
            total: Node = number(0)
            for term in terms:
                if term.sign not in ("+", "-"):
                    raise UnsupportedError
                part = Bracket(node.span, deeper(term.body), "(")
                total = added(total, part) if term.sign == "+" else subtracted(total, part)
            return total
        case Product(factors=factors):
            return times(*(Bracket(node.span, deeper(factor), "(") for factor in factors))
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            return over(deeper(top), deeper(bottom))
        case Power(base=inner, exponent=exponent) if not letters(exponent):
            return Power(node.span, Bracket(node.span, deeper(inner), "("), exponent)
        case Negation(body=body):
            return times(number(-1), Bracket(node.span, deeper(body), "("))
        case Root(radicand=radicand, index=index):
            return Root(node.span, deeper(radicand), index)
        case Absolute(body=body):
            return Absolute(node.span, deeper(body))
        case _:
            raise UnsupportedError


def _wave(called: str, count: int) -> Node:
    sine, cosine = _multiple(abs(count))
    if count < 0:
        sine = times(number(-1), sine)
    match called:
        case "sin":
            return sine
        case "cos":
            return cosine
        case "tan":
            return over(sine, cosine)
        case "cot":
            return over(cosine, sine)
        case "sec":
            return over(number(1), cosine)
        case _:
            return over(number(1), sine)


def _multiple(count: int) -> tuple[Node, Node]:
    """Sine and cosine of the angle taken so many times."""
    u = symbol(_U)
    below = Bracket((0, 0), added(number(1), Power((0, 0), u, number(2))), "(")
    sine = over(times(number(2), u), below)
    cosine = over(Bracket((0, 0), subtracted(number(1), Power((0, 0), u, number(2))), "("), below)
    s, c = sine, cosine
    for _ in range(count - 1):
        s, c = (
            Bracket((0, 0), added(times(s, cosine), times(c, sine)), "("),
            Bracket((0, 0), subtracted(times(c, cosine), times(s, sine)), "("),
        )
    return s, c
