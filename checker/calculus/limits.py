"""Limits: by putting the value in, by the lowest powers of a quotient, by differentiating above and below."""

from __future__ import annotations

from checker.calculus.building import ZERO, added, number, over, replaced, symbol, times
from checker.calculus.derivative import differentiated
from checker.calculus.domains import hazards
from checker.calculus.parts import CONSTANT, linear_slope, split
from checker.numeric import Evaluator, UnsureError, sign_of
from checker.polynomial import Poly, TooLargeError, coefficients_in, exponents, letters_in
from checker.refusals import UndefinedError, UnsupportedError
from checker.ring import Ring, in_ring
from checker.syntax import Division, Fraction, Negation, Node, Power, Symbol, letters
from checker.syntax.shapes import bare

__all__ = ["limit"]

_STEP = "\0t"
_MOST_TIMES = 5  # that above and below are differentiated


def limit(body: Node, name: str, place: Node) -> Node:
    """The limit as a tree without the running letter.

    Raises:
        UnsupportedError: it is not found here, or there is none.
    """
    if name not in letters(body):
        return body
    sign = _endless_sign(place)
    if sign:
        return _at_infinity(body, name, sign)
    if _is_harmless(body, name, place):
        return replaced(body, name, place)
    shifted = replaced(body, name, added(place, symbol(_STEP)))
    try:
        return _by_lowest_powers(shifted)
    except UnsupportedError:
        return _by_derivatives(body, name, place)


def _endless_sign(place: Node) -> int:
    match place:
        case Symbol(name="infty"):
            return 1
        case Negation(body=Symbol(name="infty")):
            return -1
        case _:
            return 0


def _is_harmless(body: Node, name: str, place: Node) -> bool:
    """Is the tree surely continuous at the place? What must not vanish there is looked at exactly."""
    for kind, node in hazards(body, name):
        at_place = replaced(node, name, place)
        if letters(at_place) - {"e", "pi"}:
            if not _is_nonzero(at_place):
                return False
            continue
        try:
            sign = sign_of(Evaluator({}, euler=True).value(at_place))
        except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
            return False
        if sign == 0 or (kind != "nonzero" and sign < 0):
            return False
    return True


def _is_nonzero(node: Node) -> bool:
    try:
        return in_ring(lambda ring: bool(ring.quotient(node)[0]), euler=True)
    except (TooLargeError, UndefinedError, UnsupportedError):
        return False


def _is_zero(node: Node) -> bool:
    try:
        return in_ring(lambda ring: not ring.quotient(node)[0], euler=True)
    except (TooLargeError, UndefinedError, UnsupportedError):
        return False


def _by_lowest_powers(shifted: Node) -> Node:
    """A quotient of polynomials in a step that goes to zero."""

    def work(ring: Ring) -> Node:
        ring.letter(_STEP)
        top, bottom = ring.quotient(shifted)
        letter = ring.index[_STEP]
        used = letters_in(top) | letters_in(bottom)
        if used & ring.opaque or used & ring.relations.keys():
            raise UnsupportedError
        above, below = coefficients_in(top, letter), coefficients_in(bottom, letter)
        low = next((at for at, part in enumerate(above) if part), None)
        under = next(at for at, part in enumerate(below) if part)
        if low is None or low > under:
            return ZERO
        if low < under:
            raise UnsupportedError
        return over(_tree(above[low], ring.names), _tree(below[under], ring.names))

    try:
        return in_ring(work)
    except (TooLargeError, UndefinedError) as exc:
        raise UnsupportedError from exc


def _tree(poly: Poly, names: list[str]) -> Node:
    return added(*(
        times(number(value), *(symbol(names[at]) for at, count in exponents(key) for _ in range(count)))
        for key, value in poly.items()
    ))


def _by_derivatives(body: Node, name: str, place: Node) -> Node:
    body = bare(body)
    if not isinstance(body, Fraction | Division):
        raise UnsupportedError
    top, bottom = (body.numerator, body.denominator) if isinstance(body, Fraction) else (body.left, body.right)
    for _ in range(_MOST_TIMES):
        if not (_is_harmless(top, name, place) and _is_harmless(bottom, name, place)):
            raise UnsupportedError
        above, below = replaced(top, name, place), replaced(bottom, name, place)
        if _is_nonzero(below):
            return over(above, below)
        if not _is_zero(above) or not _is_zero(below):
            raise UnsupportedError
        top, bottom = differentiated(top, name, CONSTANT), differentiated(bottom, name, CONSTANT)
    raise UnsupportedError


def _at_infinity(body: Node, name: str, sign: int) -> Node:
    factors = split(body, name)[1]
    falling = [one for one in factors if isinstance(one.base, Power) and letters(one.base.base) == {"e"}]
    if falling and all(_falls(one.base, name, sign) and one.power > 0 for one in falling):
        others = [one for one in factors if one not in falling]
        if all(linear_slope(one.base, name) is not None and one.power.denominator == 1 for one in others):
            return ZERO
    return _by_lowest_powers(replaced(body, name, over(number(sign), symbol(_STEP))))


def _falls(node: Node, name: str, sign: int) -> bool:
    if not isinstance(node, Power):
        return False
    slope = linear_slope(node.exponent, name)
    try:
        return slope is not None and sign_of(Evaluator({}, euler=True).value(slope)) == -sign
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
        return False
