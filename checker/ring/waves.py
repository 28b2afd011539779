"""Sines and cosines: known values, and multiples and sums of angles by those of the single angles."""

from __future__ import annotations

from fractions import Fraction as Rational
from typing import TYPE_CHECKING

from checker.polynomial import (
    BITS,
    ONE,
    Quotient,
    is_constant,
    multiply,
    q_add,
    q_multiply,
    q_negated,
    q_number,
    subtract,
)
from checker.ring.powers import root_of_number

if TYPE_CHECKING:
    from checker.ring.algebra import Ring

__all__ = ["trigonometric"]

_HALF = Rational(1, 2)
_SURDS = {
    Rational(0): (0, 1), Rational(1, 6): (1, 1), Rational(1, 4): (1, 2), Rational(1, 3): (1, 3), _HALF: (2, 1),
}
_MOST_PARTS = 4  # of an angle that is taken apart
_MOST_TIMES = 24  # of one part


def trigonometric(ring: Ring, name: str, angle: Quotient) -> Quotient:
    """One of the six functions of an angle.

    Raises:
        UndefinedError: it has no value anywhere, such as the tangent of a right angle.
    """
    match name:
        case "sin" | "cos":
            return _wave(ring, name, angle)
        case "tan":
            return ring.divide(_wave(ring, "sin", angle), _wave(ring, "cos", angle))
        case "cot":
            return ring.divide(_wave(ring, "cos", angle), _wave(ring, "sin", angle))
        case "sec":
            return ring.divide((ONE, ONE), _wave(ring, "cos", angle))
        case _:
            return ring.divide((ONE, ONE), _wave(ring, "sin", angle))


def _wave(ring: Ring, name: str, angle: Quotient) -> Quotient:
    parts = _parts(angle)
    if parts is None:
        return _single(ring, angle)[name == "sin"]
    cosine: Quotient = (ONE, ONE)
    sine: Quotient = ({}, ONE)
    for key, share in parts:
        c, s = _of_part(ring, key, share)
        cosine, sine = (
            q_add(q_multiply(cosine, c), q_negated(q_multiply(sine, s))),
            q_add(q_multiply(sine, c), q_multiply(cosine, s)),
        )
        cosine, sine = ring.reduced(cosine), ring.reduced(sine)
    return sine if name == "sin" else cosine


def _parts(angle: Quotient) -> list[tuple[int, Rational]] | None:
    """The angle's terms, each a packed monomial with its share; None where it is better left whole."""
    top, bottom = angle
    if not is_constant(bottom) or len(top) > _MOST_PARTS:
        return None
    parts = [(key, Rational(value, bottom[0])) for key, value in top.items()]
    if any(abs(share.numerator) > _MOST_TIMES or share.denominator > _MOST_TIMES for _, share in parts):
        return None
    return parts


def _of_part(ring: Ring, key: int, share: Rational) -> tuple[Quotient, Quotient]:
    """Cosine and sine of a multiple of one monomial."""
    if "pi" in ring.index and key == 1 << (ring.index["pi"] * BITS):
        known = _known_wave(ring, share + _HALF), _known_wave(ring, share)
        if known[0] is not None and known[1] is not None:
            return known[0], known[1]
    finest = ring.needed(("wave", key), share.denominator)
    cosine, sine = _single(ring, ({key: 1}, ONE if finest == 1 else {0: finest}))
    times = int(share * finest)
    c, s = _multiple(ring, cosine, sine, abs(times))
    return c, s if times > 0 else q_negated(s)


def _multiple(ring: Ring, cosine: Quotient, sine: Quotient, times: int) -> tuple[Quotient, Quotient]:
    """Cosine and sine of a multiple of an angle, by doubling."""
    c: Quotient = (ONE, ONE)
    s: Quotient = ({}, ONE)
    for bit in bin(times)[2:]:
        c, s = (
            q_add(q_multiply(c, c), q_negated(q_multiply(s, s))), q_multiply(({0: 2}, ONE), q_multiply(s, c))
        )
        if bit == "1":
            c, s = (
                q_add(q_multiply(c, cosine), q_negated(q_multiply(s, sine))),
                q_add(q_multiply(s, cosine), q_multiply(c, sine)),
            )
        c, s = ring.reduced(c), ring.reduced(s)
    return c, s


def _single(ring: Ring, angle: Quotient) -> tuple[Quotient, Quotient]:
    """Cosine and sine of an angle as atoms; the sine's square is 1 less the cosine's."""
    negative = angle[0] and angle[0][max(angle[0])] * angle[1][max(angle[1])] < 0
    if negative:
        angle = q_negated(angle)
    cosine = ring.atom("cos", (angle,))
    square = subtract(ONE, multiply(cosine[0], cosine[0]))
    sine = ring.atom("sin", (angle,), (2, square))
    return cosine, q_negated(sine) if negative else sine


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
