"""The derivative of a tree, rule by rule."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as Rational

from checker.calculus.building import (
    ONE,
    TWO,
    ZERO,
    added,
    applied,
    number,
    over,
    raised,
    replaced,
    subtracted,
    symbol,
    times,
)
from checker.polynomial import TooLargeError
from checker.refusals import UnsupportedError
from checker.syntax import (
    Absolute,
    Bracket,
    Division,
    Fraction,
    Function,
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

__all__ = ["DEPENDENT", "differentiated", "order_of", "repeatedly_differentiated"]

DEPENDENT = frozenset({"y", "u", "v", "w"})  # read as functions of the letter differentiated by, unless they are it
_LARGEST = 3_000  # nodes


@dataclass(frozen=True, slots=True)
class _By:
    name: str
    dependent: frozenset[str]


def repeatedly_differentiated(
    node: Node, name: str, order: int, dependent: frozenset[str] = DEPENDENT
) -> Node:
    """The derivative of an order.

    Args:
        node: what is differentiated.
        name: the letter.
        order: how often.
        dependent: letters that are functions of it.
    Raises:
        UnsupportedError: a construct with no rule.
        TooLargeError: it grows too large.
    """
    for _ in range(order):
        if sum(1 for _ in walk(node)) > _LARGEST:
            raise TooLargeError
        node = differentiated(node, name, dependent)
    return node


def differentiated(node: Node, name: str, dependent: frozenset[str] = DEPENDENT) -> Node:
    """The derivative by a letter.

    Args:
        node: what is differentiated.
        name: the letter.
        dependent: letters that are functions of it; all others are constants.
    Raises:
        UnsupportedError: a construct with no rule.
    """
    return _derivative(node, _By(name, dependent - {name}))


def _derivative(node: Node, by: _By) -> Node:
    if not _changes(node, by):
        return ZERO
    match node:
        case Symbol():
            return ONE if node.name == by.name else _of_dependent(node, by, 1)
        case Sum(terms=terms):
            total: Node = ZERO
            for term in terms:
                part = _derivative(term.body, by)
                if term.sign not in ("+", "-"):
                    raise UnsupportedError
                total = added(total, part) if term.sign == "+" else subtracted(total, part)
            return total
        case Product(factors=factors):
            return added(*(
                times(*factors[:at], _derivative(factor, by), *factors[at + 1:])
                for at, factor in enumerate(factors)
            ))
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            if not _changes(bottom, by):
                return over(_derivative(top, by), bottom)
            above = subtracted(
                times(_derivative(top, by), bottom), times(top, _derivative(bottom, by))
            )
            return over(above, raised(bottom, TWO))
        case Power(base=base, exponent=exponent):
            return _of_power(base, exponent, by)
        case Root(radicand=radicand, index=index):
            count = TWO if index is None else index
            if _changes(count, by):
                raise UnsupportedError
            inner = _derivative(radicand, by)
            return over(times(node, inner), times(count, radicand))
        case Negation(body=body):
            return times(number(-1), _derivative(body, by))
        case Bracket(body=body):
            return _derivative(body, by)
        case Absolute(body=body):
            return over(times(body, _derivative(body, by)), node)
        case Function():
            return _of_function(node, by)
        case Postfix(body=body, mark="%" | "°" as mark):
            return over(times(_derivative(body, by), ONE if mark == "%" else symbol("pi")),
                        number(100 if mark == "%" else 180))
        case _:
            raise UnsupportedError


def _changes(node: Node, by: _By) -> bool:
    if isinstance(node, Number | MixedNumber):
        return False
    found = letters(node)
    return by.name in found or bool(found & by.dependent)


def _of_dependent(node: Symbol, by: _By, order: int) -> Node:
    return Function(node.span, "deriv", (node, symbol(by.name), number(order)))


def _of_power(base: Node, exponent: Node, by: _By) -> Node:
    if not _changes(exponent, by):
        lower = subtracted(exponent, ONE)
        if isinstance(exponent, Number):
            lower = number(exponent.value - 1)
        return times(exponent, raised(base, lower), _derivative(base, by))
    growth = _derivative(exponent, by)
    whole = Power((0, 0), base, exponent)
    if isinstance(base, Symbol) and base.name == "e" and by.name != "e":
        return times(whole, growth)
    if _changes(base, by):
        inner = over(times(exponent, _derivative(base, by)), base)
        return times(whole, added(times(growth, applied("ln", base)), inner))
    return times(whole, growth, applied("ln", base))


def _of_function(node: Function, by: _By) -> Node:
    if node.power is not None:
        bare = Function(node.span, node.name, node.arguments, None, node.base)
        if node.name.rstrip("'") in ("f", "g", "h") or _changes(node.power, by):
            raise UnsupportedError
        return _of_power(bare, node.power, by)
    match node:
        case Function(name="deriv", arguments=(body, Symbol(name=letter), Number(value=order))) if letter == by.name:
            if isinstance(body, Symbol) and body.name != by.name:
                return _of_dependent(body, by, int(order) + 1)
            return _derivative(repeatedly_differentiated(body, letter, int(order), by.dependent), by)
        case Function(name="int", arguments=(body, Symbol(name=letter))):
            if letter != by.name:
                raise UnsupportedError
            return body
        case Function(name="int", arguments=(body, Symbol(name=letter), low, high)):
            inside = letters(body) - {letter}
            if inside & by.dependent or by.name in inside:
                raise UnsupportedError
            return subtracted(
                times(replaced(body, letter, high), _derivative(high, by)),
                times(replaced(body, letter, low), _derivative(low, by)),
            )
        case Function(arguments=(argument,)):
            return times(_outer(node, argument, by), _derivative(argument, by))
        case _:
            raise UnsupportedError


def _outer(node: Function, u: Node, by: _By) -> Node:
    """The derivative of the function by its argument."""
    square = raised(u, TWO)

    def of(called: str) -> Node:
        return applied(called, u)

    match node.name:
        case "sin":
            return of("cos")
        case "cos":
            return times(number(-1), of("sin"))
        case "tan":
            return raised(of("sec"), TWO)
        case "sec":
            return times(of("sec"), of("tan"))
        case "csc":
            return times(number(-1), of("csc"), of("cot"))
        case "cot":
            return times(number(-1), raised(of("csc"), TWO))
        case "sinh":
            return of("cosh")
        case "cosh":
            return of("sinh")
        case "tanh":
            return over(ONE, raised(of("cosh"), TWO))
        case "coth":
            return over(number(-1), raised(of("sinh"), TWO))
        case "sech":
            return over(times(number(-1), of("sinh")), raised(of("cosh"), TWO))
        case "csch":
            return over(times(number(-1), of("cosh")), raised(of("sinh"), TWO))
        case "exp":
            return node
        case "ln":
            return over(ONE, u)
        case "log":
            # a bare log beside derivatives may be a natural one
            if node.base is None or _changes(node.base, by):
                raise UnsupportedError
            return over(ONE, times(u, applied("ln", node.base)))
        case "arcsin":
            return over(ONE, applied("sqrt", subtracted(ONE, square)))
        case "arccos":
            return over(number(-1), applied("sqrt", subtracted(ONE, square)))
        case "arctan":
            return over(ONE, added(ONE, square))
        case "arcsinh":
            return over(ONE, applied("sqrt", added(square, ONE)))
        case "arccosh":
            return over(ONE, times(applied("sqrt", subtracted(u, ONE)), applied("sqrt", added(u, ONE))))
        case "arctanh":
            return over(ONE, subtracted(ONE, square))
        case _:
            raise UnsupportedError


def order_of(node: Node) -> int:
    """The whole number that an order is.

    Raises:
        UnsupportedError: it is none.
    """
    if isinstance(node, Number) and node.value.denominator == 1 and Rational(1) <= node.value <= 9:
        return int(node.value)
    raise UnsupportedError
