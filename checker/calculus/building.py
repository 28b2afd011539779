"""Small trees made by the program, with no place in any line; sums and products drop what says nothing."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction as Rational
from typing import Literal

from checker.polynomial import TooLargeError
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
    PlusMinus,
    Postfix,
    Power,
    Product,
    Root,
    Sum,
    Symbol,
    Term,
)

__all__ = [
    "ONE", "TWO", "ZERO", "added", "applied", "is_number", "number", "over", "placeless", "raised", "replaced",
    "subtracted", "symbol", "times",
]

_NOWHERE = (0, 0)
_MOST_BITS = 12_000  # of a number that is written out
_PLAIN_DIGITS = 50  # up to which like numbers written in different ways are made alike


def number(value: Rational | int) -> Node:
    """A number as a node, over a bar where it is no whole number.

    Raises:
        TooLargeError: it has thousands of digits.
    """
    value = Rational(value)
    if max(value.numerator.bit_length(), value.denominator.bit_length()) > _MOST_BITS:
        raise TooLargeError
    if value < 0:
        return Negation(_NOWHERE, number(-value))
    if value.denominator == 1:
        return Number(_NOWHERE, value, str(value.numerator))
    return Fraction(_NOWHERE, number(value.numerator), number(value.denominator))


ZERO, ONE, TWO = number(0), number(1), number(2)


def symbol(name: str) -> Node:
    return Symbol(_NOWHERE, name)


def is_number(node: Node, value: int) -> bool:
    return isinstance(node, Number) and node.value == value


def _joined(sign: Literal["+", "-"], left: Node, right: Node) -> Node:
    return Sum(_NOWHERE, (Term(_NOWHERE, "+", left), Term(_NOWHERE, sign, right)))


def added(*parts: Node) -> Node:
    """The sum of the parts."""
    kept = [part for part in parts if not is_number(part, 0)]
    if len(kept) < 2:
        return kept[0] if kept else ZERO
    return Sum(_NOWHERE, tuple(Term(_NOWHERE, "+", part) for part in kept))


def subtracted(left: Node, right: Node) -> Node:
    return left if is_number(right, 0) else _joined("-", left, right)


def times(*parts: Node) -> Node:
    """The product of the parts."""
    if any(is_number(part, 0) for part in parts):
        return ZERO
    kept = [part for part in parts if not is_number(part, 1)]
    if len(kept) < 2:
        return kept[0] if kept else ONE
    return Product(_NOWHERE, tuple(kept), ("\\times",) * (len(kept) - 1))


def over(top: Node, bottom: Node) -> Node:
    return top if is_number(bottom, 1) else Fraction(_NOWHERE, top, bottom)


def raised(base: Node, exponent: Node) -> Node:
    if is_number(exponent, 1):
        return base
    return ONE if is_number(exponent, 0) else Power(_NOWHERE, base, exponent)


def applied(name: str, argument: Node) -> Node:
    """A named function of one argument; "sqrt" and "abs" too."""
    match name:
        case "sqrt":
            return Root(_NOWHERE, argument, None)
        case "abs":
            return Absolute(_NOWHERE, argument)
        case _:
            return Function(_NOWHERE, name, (argument,))


def replaced(node: Node, name: str, value: Node) -> Node:
    """The node with a value in the place of a letter; letters bound by a sum or integral stay."""
    match node:
        case Symbol():
            return value if node.name == name else node
        case Sum(terms=terms):
            return replace(node, terms=tuple(replace(term, body=replaced(term.body, name, value)) for term in terms))
        case Product(factors=factors):
            return replace(node, factors=tuple(replaced(factor, name, value) for factor in factors))
        case Fraction(numerator=top, denominator=bottom):
            return Fraction(node.span, replaced(top, name, value), replaced(bottom, name, value))
        case Division(left=left, right=right):
            return replace(node, left=replaced(left, name, value), right=replaced(right, name, value))
        case Power(base=base, exponent=exponent):
            return Power(node.span, replaced(base, name, value), replaced(exponent, name, value))
        case Root(radicand=radicand, index=index):
            return Root(node.span, replaced(radicand, name, value), index and replaced(index, name, value))
        case Negation() | PlusMinus() | Absolute() | Bracket() | Postfix():
            return replace(node, body=replaced(node.body, name, value))
        case Function(arguments=arguments, power=power, base=base):
            bound = arguments[1] if len(arguments) > 2 and isinstance(arguments[1], Symbol) else None
            inside = tuple(
                one if bound is not None and at < 2 and bound.name == name else replaced(one, name, value)
                for at, one in enumerate(arguments)
            )
            return Function(
                node.span, node.name, inside, power and replaced(power, name, value),
                base and replaced(base, name, value),
            )
        case _:
            return node


def placeless(node: Node) -> Node:
    """The node without places and brackets, so that like nodes are equal."""
    match node:
        case Bracket(body=body):
            return placeless(body)
        case Number(value=value, text=text):
            return Number(_NOWHERE, value, str(value) if len(text) < _PLAIN_DIGITS else text)
        case Symbol(name=name):
            return Symbol(_NOWHERE, name)
        case Sum(terms=terms):
            return Sum(_NOWHERE, tuple(Term(_NOWHERE, term.sign, placeless(term.body)) for term in terms))
        case Product(factors=factors, joins=joins):
            return Product(_NOWHERE, tuple(placeless(factor) for factor in factors), ("\\times",) * len(joins))
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            return Fraction(_NOWHERE, placeless(top), placeless(bottom))
        case Power(base=base, exponent=exponent):
            return Power(_NOWHERE, placeless(base), placeless(exponent))
        case Root(radicand=radicand, index=index):
            return Root(_NOWHERE, placeless(radicand), index and placeless(index))
        case MixedNumber(whole=whole, fraction=fraction):
            return added(placeless(whole), placeless(fraction))
        case Negation() | PlusMinus() | Absolute() | Postfix():
            return replace(node, span=_NOWHERE, body=placeless(node.body))
        case Function(name=name, arguments=arguments, power=power, base=base):
            inside = tuple(placeless(one) for one in arguments)
            return Function(_NOWHERE, name, inside, power and placeless(power), base and placeless(base))
