"""The table: integrals of single functions of a linear argument, and of a polynomial times one of them."""

from __future__ import annotations

from fractions import Fraction as Rational

from checker.calculus.building import ONE, ZERO, added, applied, is_number, number, over, raised, subtracted, times
from checker.calculus.derivative import differentiated
from checker.calculus.parts import CONSTANT, Factor, linear_slope, rational_coefficients, split
from checker.refusals import UnsupportedError
from checker.syntax import Absolute, Function, Node, Power, Symbol, letters

__all__ = ["by_parts_after", "integrated_power", "integrated_root"]

_MOST_PARTS = 12
_HALF = Rational(1, 2)


def integrated_power(factor: Factor, name: str) -> Node:
    """The integral of one power of a linear function, an exponential or a function of a linear argument.

    Raises:
        UnsupportedError: the table does not have it.
    """
    base, power = factor.base, factor.power
    match base:
        case Power(base=root, exponent=exponent) if name not in letters(root):
            slope = linear_slope(exponent, name)
            if slope is None:
                raise UnsupportedError
            whole = raised(root, times(number(power), exponent))
            rate = times(number(power), slope)
            if isinstance(root, Symbol) and root.name == "e":
                return over(whole, rate)
            return over(whole, times(rate, applied("ln", root)))
        case Absolute(body=inside) if power == 1 and (slope := linear_slope(inside, name)) is not None:
            return over(times(inside, base), times(number(2), slope))
        case Function(arguments=(argument,)):
            slope = linear_slope(argument, name)
            if slope is None:
                raise UnsupportedError
            return over(_of_function(base, argument, power), slope)
        case _:
            slope = linear_slope(base, name)
            if slope is None:
                raise UnsupportedError
            if power == -1:
                return over(applied("ln", applied("abs", base)), slope)
            return over(raised(base, number(power + 1)), times(number(power + 1), slope))


def _of_function(node: Function, u: Node, power: Rational) -> Node:
    """The integral by its argument."""
    def of(called: str) -> Node:
        return applied(called, u)

    def log(inner: Node) -> Node:
        return applied("ln", applied("abs", inner))

    minus = number(-1)
    square = raised(u, number(2))
    match node.name, power:
        case "sin", 1:
            return times(minus, of("cos"))
        case "cos", 1:
            return of("sin")
        case "tan", 1:
            return times(minus, log(of("cos")))
        case "cot", 1:
            return log(of("sin"))
        case ("sec", 1) | ("cos", -1):
            return log(added(of("sec"), of("tan")))
        case ("csc", 1) | ("sin", -1):
            return times(minus, log(added(of("csc"), of("cot"))))
        case ("sec", 2) | ("cos", -2):
            return of("tan")
        case ("csc", 2) | ("sin", -2):
            return times(minus, of("cot"))
        case "tan", 2:
            return subtracted(of("tan"), u)
        case "cot", 2:
            return times(minus, added(of("cot"), u))
        case "sinh", 1:
            return of("cosh")
        case "cosh", 1:
            return of("sinh")
        case "tanh", 1:
            return applied("ln", of("cosh"))
        case ("sech", 2) | ("cosh", -2):
            return of("tanh")
        case "sinh", 2:
            return subtracted(over(applied("sinh", times(number(2), u)), number(4)), over(u, number(2)))
        case "cosh", 2:
            return added(over(applied("sinh", times(number(2), u)), number(4)), over(u, number(2)))
        case "ln", 1:
            return subtracted(times(u, of("ln")), u)
        case "ln", 2:
            inner = added(subtracted(raised(of("ln"), number(2)), times(number(2), of("ln"))), number(2))
            return times(u, inner)
        case "log", 1 if node.base is not None:
            return over(subtracted(times(u, of("ln")), u), applied("ln", node.base))
        case "arcsin", 1:
            return added(times(u, of("arcsin")), applied("sqrt", subtracted(ONE, square)))
        case "arccos", 1:
            return subtracted(times(u, of("arccos")), applied("sqrt", subtracted(ONE, square)))
        case "arctan", 1:
            return subtracted(times(u, of("arctan")), over(applied("ln", added(ONE, square)), number(2)))
        case _:
            raise UnsupportedError


def integrated_root(factor: Factor, name: str) -> Node:
    """The integral of a square root of a - bx^2, a + bx^2 or bx^2 - a, or of one over it.

    Raises:
        UnsupportedError: it is none of these.
    """
    parts = rational_coefficients(factor.base, name)
    if parts is None or len(parts) != 3 or parts[1] or not parts[0] or abs(factor.power) != _HALF:
        raise UnsupportedError
    constant, _, square = parts
    x = Symbol((0, 0), name)
    root = applied("sqrt", factor.base)
    scale = applied("sqrt", number(abs(square)))
    ratio = over(times(scale, x), applied("sqrt", number(abs(constant))))
    if square < 0 and constant > 0:
        inverse = applied("arcsin", ratio)
    elif square > 0:
        inverse = applied("ln", applied("abs", added(times(scale, x), root)))
    else:
        raise UnsupportedError
    if factor.power < 0:
        return over(inverse, scale)
    return added(over(times(x, root), number(2)), over(times(number(constant / 2), inverse), scale))


def by_parts_after(plain: Node, other: Factor, name: str) -> Node:
    """A polynomial times an exponential, sine or cosine of a linear argument, by parts until nothing is left.

    Raises:
        UnsupportedError: the other factor is none of these.
    """
    if not isinstance(other.base, Power | Function) or other.power != 1:
        raise UnsupportedError
    if isinstance(other.base, Function) and other.base.name not in ("sin", "cos", "sinh", "cosh"):
        raise UnsupportedError
    total: Node = ZERO
    current, piece = other.node, plain
    for at in range(_MOST_PARTS):
        current = _once(current, name)
        part = times(piece, current)
        total = added(total, part) if at % 2 == 0 else subtracted(total, part)
        piece = differentiated(piece, name, CONSTANT)
        if is_number(piece, 0) or (name not in letters(piece) and _vanishes(piece)):
            return total
    raise UnsupportedError


def _vanishes(piece: Node) -> bool:
    return rational_coefficients(piece, "\0none") == []


def _once(node: Node, name: str) -> Node:
    """The integral of a multiple of an exponential, sine or cosine."""
    constant, factors = split(node, name)
    if len(factors) != 1:
        raise UnsupportedError
    return times(constant, integrated_power(factors[0], name))
