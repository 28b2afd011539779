"""The value of a node as a sum of monomials over atoms: the form in which terms of two lines are matched.

Atoms are letters, primes under a root, and anything else taken whole (a root of a sum, a logarithm, a bracket in a
denominator). The form serves matching only; whether a line follows is decided elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction as Rational
from functools import lru_cache

from checker.syntax.tree import (
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
    "BLANK", "SIGN", "Monomial", "TooLarge", "Value", "add", "as_constant", "constant", "divide", "is_monomial",
    "multiply", "name_of", "negate", "power", "root", "scale", "single", "subtract", "symbol", "term_value",
    "total", "value_of",
]

Monomial = tuple[tuple[str, Rational], ...]
Value = Mapping[Monomial, Rational]

BLANK = "□"
SIGN = "±"
IMAGINARY = "i"
MOST_TERMS = 400
MOST_POWER = 12
MOST_DIGITS = 200


class TooLarge(ValueError):
    """The sum would have too many terms, or a number too many digits, to be of use in matching."""


def constant(number: int | Rational) -> Value:
    return {(): Rational(number)} if number else {}


def symbol(name: str, exponent: int | Rational = 1) -> Value:
    return {((name, Rational(exponent)),): Rational(1)}


def single(key: Monomial, coefficient: Rational) -> Value:
    return {key: coefficient} if coefficient else {}


def is_monomial(value: Value) -> bool:
    return len(value) == 1


def as_constant(value: Value) -> Rational | None:
    if not value:
        return Rational(0)
    return value[()] if len(value) == 1 and () in value else None


def add(left: Value, right: Value) -> Value:
    found = dict(left)
    for key, coefficient in right.items():
        new = found.get(key, Rational(0)) + coefficient
        if new:
            found[key] = new
        else:
            found.pop(key, None)
    if len(found) > MOST_TERMS:
        raise TooLarge
    return found


def total(values: Iterable[Value]) -> Value:
    found: Value = {}
    for value in values:
        found = add(found, value)
    return found


def scale(value: Value, by: Rational) -> Value:
    return {key: coefficient * by for key, coefficient in value.items()} if by else {}


def negate(value: Value) -> Value:
    return {key: -coefficient for key, coefficient in value.items()}


def subtract(left: Value, right: Value) -> Value:
    return add(left, negate(right))


def multiply(left: Value, right: Value) -> Value:
    if len(left) * len(right) > MOST_TERMS * 8:
        raise TooLarge
    found: dict[Monomial, Rational] = {}
    for first, a in left.items():
        for second, b in right.items():
            key, factor = _joined(first, second)
            new = found.get(key, Rational(0)) + a * b * factor
            if new:
                found[key] = new
            else:
                found.pop(key, None)
    if len(found) > MOST_TERMS:
        raise TooLarge
    return found


@lru_cache(maxsize=4096)
def _joined(first: Monomial, second: Monomial) -> tuple[Monomial, Rational]:
    powers = dict(first)
    for atom, exponent in second:
        powers[atom] = powers.get(atom, Rational(0)) + exponent
    factor = Rational(1)
    for atom, exponent in tuple(powers.items()):
        if atom == SIGN:
            powers[atom] = exponent % 2
        elif atom == IMAGINARY and exponent.denominator == 1:
            factor *= -1 if exponent % 4 > 1 else 1
            powers[atom] = exponent % 2
        elif atom.isdigit():
            whole = exponent.numerator // exponent.denominator
            factor *= Rational(int(atom)) ** whole
            powers[atom] = exponent - whole
    return tuple(sorted((atom, exponent) for atom, exponent in powers.items() if exponent)), factor


def power(base: Value, exponent: Rational) -> Value:
    if exponent.denominator == 1 and 0 <= exponent <= MOST_POWER:
        found = constant(1)
        for _ in range(int(exponent)):
            found = multiply(found, base)
            _check_digits(found)
        return found
    if is_monomial(base):
        (key, coefficient), = base.items()
        if abs(exponent) > 1000:
            raise TooLarge
        powers = tuple((atom, power * exponent) for atom, power in key)
        if any(atom == SIGN for atom, _ in key):
            return symbol(f"({name_of(base)})", exponent)
        found = multiply(_number_power(coefficient, exponent), {powers: Rational(1)})
        _check_digits(found)
        return found
    if not base:
        return {}
    if abs(exponent) > 1000:
        raise TooLarge
    lead = base[min(base)]
    if exponent.denominator == 1:
        monic = scale(base, 1 / lead)
        return scale(symbol(f"({name_of(monic)})", exponent), lead ** int(exponent))
    return symbol(f"({name_of(base)})", exponent)


def _check_digits(value: Value) -> None:
    for number in value.values():
        if number.numerator.bit_length() + number.denominator.bit_length() > 3 * MOST_DIGITS:
            raise TooLarge


def _number_power(number: Rational, exponent: Rational) -> Value:
    if exponent.denominator == 1:
        bits = number.numerator.bit_length() + number.denominator.bit_length()
        if bits * abs(exponent) > 3 * MOST_DIGITS:
            raise TooLarge
        return constant(number ** int(exponent))
    if number < 0:
        if exponent.denominator % 2 == 0:
            return symbol(f"({number})", exponent)
        return scale(_number_power(-number, exponent), Rational(-1) ** exponent.numerator)
    found = constant(1)
    for prime, times in (*_primes(number.numerator), *((p, -n) for p, n in _primes(number.denominator))):
        full = exponent * times
        whole = full.numerator // full.denominator
        found = scale(found, Rational(prime) ** whole)
        if full != whole:
            found = multiply(found, symbol(str(prime), full - whole))
    return found


def _primes(number: int) -> list[tuple[int, int]]:
    found: list[tuple[int, int]] = []
    divisor = 2
    while divisor * divisor <= number and divisor < 2000:
        times = 0
        while number % divisor == 0:
            number //= divisor
            times += 1
        if times:
            found.append((divisor, times))
        divisor += 1
    if number > 1:
        found.append((number, 1))
    return found


def root(value: Value, index: int = 2) -> Value:
    return power(value, Rational(1, index))


def divide(top: Value, bottom: Value) -> Value:
    if not bottom:
        return multiply(top, symbol("(0)", -1))
    if top == bottom:
        return constant(1)
    return multiply(top, power(bottom, Rational(-1)))


def name_of(value: Value) -> str:
    """A text that is the same for equal values."""
    return "+".join(
        f"{coefficient}*" + "*".join(f"{atom}^{exponent}" for atom, exponent in key)
        for key, coefficient in sorted(value.items())
    )


def value_of(node: Node, instead: Mapping[int, Value] | None = None) -> Value:
    """The value of a node.

    Args:
        node: any node.
        instead: values to take for some nodes, by `id(node)`.
    Raises:
        TooLarge: the sum has too many terms.
    """
    if instead is None:
        return _plain_value(node)
    if id(node) in instead:
        return instead[id(node)]
    return _computed(node, instead)


@lru_cache(maxsize=4096)
def _plain_value(node: Node) -> Value:
    return _computed(node, None)


def _computed(node: Node, instead: Mapping[int, Value] | None) -> Value:
    match node:
        case Number(value=number):
            return constant(number)
        case Symbol(name=name):
            return symbol(name)
        case Sum(terms=terms):
            return total(term_value(term, instead) for term in terms)
        case Product(factors=factors):
            found = constant(1)
            for factor in factors:
                found = multiply(found, value_of(factor, instead))
            return found
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            return divide(value_of(top, instead), value_of(bottom, instead))
        case Power(base=base, exponent=exponent):
            return _power_value(value_of(base, instead), value_of(exponent, instead))
        case Root(radicand=radicand, index=index):
            degree = Rational(2) if index is None else as_constant(value_of(index, instead))
            inside = value_of(radicand, instead)
            if not degree or degree.denominator != 1:
                return symbol(f"root({name_of(inside)})")
            return power(inside, 1 / degree)
        case Negation(body=body):
            return negate(value_of(body, instead))
        case PlusMinus(body=body, operator=operator):
            return multiply(symbol(SIGN) if operator == "±" else negate(symbol(SIGN)), value_of(body, instead))
        case Absolute(body=body):
            inside = value_of(body, instead)
            size = as_constant(inside)
            return constant(abs(size)) if size is not None else symbol(f"|{name_of(inside)}|")
        case MixedNumber(whole=whole, fraction=fraction):
            return add(value_of(whole, instead), value_of(fraction, instead))
        case Bracket(body=body):
            return value_of(body, instead)
        case Postfix(body=body, mark="%"):
            return scale(value_of(body, instead), Rational(1, 100))
        case Postfix(body=body, mark=mark):
            return symbol(f"({name_of(value_of(body, instead))}){mark}")
        case Function():
            return _function_value(node, instead)


def term_value(term: Term, instead: Mapping[int, Value] | None = None) -> Value:
    body = value_of(term.body, instead)
    match term.sign:
        case "+":
            return body
        case "-":
            return negate(body)
        case "±":
            return multiply(symbol(SIGN), body)
        case "∓":
            return multiply(negate(symbol(SIGN)), body)


def _power_value(base: Value, exponent: Value) -> Value:
    number = as_constant(exponent)
    if number is not None:
        return power(base, number)
    # a^{n+3}: one atom for a^n, times a^3
    extra = exponent.get((), Rational(0))
    letters = {key: coefficient for key, coefficient in exponent.items() if key}
    whole = power(base, extra) if extra else constant(1)
    for key, coefficient in sorted(letters.items()):
        raised = symbol(f"({name_of(base)})^{name_of({key: Rational(1)})}", coefficient)
        whole = multiply(whole, raised)
    return whole


def _function_value(node: Function, instead: Mapping[int, Value] | None) -> Value:
    inside = ",".join(name_of(value_of(argument, instead)) for argument in node.arguments)
    base = "" if node.base is None else name_of(value_of(node.base, instead))
    found = symbol(f"{node.name}[{base}]({inside})")
    if node.power is None:
        return found
    return _power_value(found, value_of(node.power, instead))
