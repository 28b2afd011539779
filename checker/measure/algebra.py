"""Our trees as sympy's expressions, for measuring beside it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import sympy

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
)

__all__ = ["UnlikeError", "to_sympy"]

_FUNCTIONS = {
    "sin": sympy.sin, "cos": sympy.cos, "tan": sympy.tan, "cot": sympy.cot, "sec": sympy.sec, "csc": sympy.csc,
    "ln": sympy.log, "exp": sympy.exp, "sinh": sympy.sinh, "cosh": sympy.cosh, "tanh": sympy.tanh, "coth": sympy.coth,
    "sech": sympy.sech, "csch": sympy.csch, "arcsin": sympy.asin, "arccos": sympy.acos, "arctan": sympy.atan,
    "arcsinh": sympy.asinh, "arccosh": sympy.acosh, "arctanh": sympy.atanh,
}


class UnlikeError(Exception):
    """Sympy has no like expression."""


def to_sympy(node: Node) -> Any:
    """The node as a sympy expression in real letters, built as sympy likes to.

    Raises:
        UnlikeError: there is none.
    """
    match node:
        case Number(value=value):
            return sympy.Rational(value.numerator, value.denominator)
        case Symbol(name="i"):
            return sympy.I
        case Symbol(name="pi"):
            return sympy.pi
        case Symbol(name="infty"):
            return sympy.oo
        case Symbol(name=name):
            return sympy.Symbol(name, real=True)
        case Sum(terms=terms):
            if any(term.sign not in ("+", "-") for term in terms):
                raise UnlikeError
            return sympy.Add(*((1 if term.sign == "+" else -1) * to_sympy(term.body) for term in terms))
        case Product(factors=factors):
            return sympy.Mul(*map(to_sympy, factors))
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            return to_sympy(top) / to_sympy(bottom)
        case Power(base=base, exponent=exponent):
            return to_sympy(base) ** to_sympy(exponent)
        case Root(radicand=radicand, index=None):
            return sympy.sqrt(to_sympy(radicand))
        case Negation(body=body):
            return -to_sympy(body)
        case Absolute(body=body):
            return sympy.Abs(to_sympy(body))
        case Bracket(body=body):
            return to_sympy(body)
        case MixedNumber(whole=whole, fraction=fraction):
            return to_sympy(whole) + to_sympy(fraction)
        case Function(name=name, arguments=(argument,), base=None, power=power) if name in _FUNCTIONS:
            value = _FUNCTIONS[name](to_sympy(argument))
            return value if power is None else value ** to_sympy(power)
        case Root(radicand=radicand, index=Number(value=index)):
            return sympy.real_root(to_sympy(radicand), int(index))
        case Postfix(body=body, mark=mark):
            return _MARKS[mark](to_sympy(body))
        case Function(name="log", arguments=(argument,), base=base, power=None):
            return sympy.log(to_sympy(argument)) / sympy.log(10 if base is None else to_sympy(base))
        case Function(name="binom", arguments=(above, below)):
            return sympy.binomial(to_sympy(above), to_sympy(below))
        case Function(name=name, arguments=(body, Symbol() as letter, *bounds), power=None) if name in _RUNNING:
            return _RUNNING[name](to_sympy(body), to_sympy(letter), *map(to_sympy, bounds))
        case _:
            raise UnlikeError


def _between(body: Any, letter: Any, low: Any, high: Any) -> Any:
    return body.subs(letter, high) - body.subs(letter, low)


_MARKS: dict[str, Callable[[Any], Any]] = {
    "!": sympy.factorial, "%": lambda value: value / 100, "°": lambda value: value * sympy.pi / 180,
}
_RUNNING: dict[str, Callable[..., Any]] = {
    "deriv": lambda body, letter, order: sympy.diff(body, letter, order),
    "int": lambda body, letter, *bounds: sympy.Integral(body, (letter, *bounds)),
    "sum": lambda body, letter, low, high: sympy.Sum(body, (letter, low, high)),
    "lim": lambda body, letter, place: sympy.Limit(body, letter, place),
    "between": _between,
}
