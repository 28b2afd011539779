"""Our trees as sympy's expressions, for measuring beside it."""

from __future__ import annotations

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
    Power,
    Product,
    Root,
    Sum,
    Symbol,
)

__all__ = ["UnlikeError", "to_sympy"]

_FUNCTIONS = {
    "sin": sympy.sin, "cos": sympy.cos, "tan": sympy.tan, "cot": sympy.cot, "sec": sympy.sec, "csc": sympy.csc,
    "ln": sympy.log, "exp": sympy.exp,
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
        case _:
            raise UnlikeError
