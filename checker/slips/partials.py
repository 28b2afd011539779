"""The partial products and carried terms of a line, each with the factors that made it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction as Rational
from typing import Literal

from checker.slips.values import (
    Monomial,
    TooLarge,
    Value,
    as_constant,
    constant,
    divide,
    is_monomial,
    multiply,
    power,
    term_value,
    value_of,
)
from checker.syntax.latex import tight
from checker.syntax.shapes import bare
from checker.syntax.tree import Bracket, Division, Fraction, Negation, Node, Number, Power, Product, Sum, Term

__all__ = ["Origin", "Partial", "partials_of", "scaled"]

Origin = Literal[
    "carried", "product", "bracket", "square", "middle", "power", "quotient", "raised", "scaled", "bar",
    "derived", "integrated",
]


@dataclass(frozen=True, slots=True)
class Partial:
    """One monomial that the line before gives when it is multiplied out.

    Args:
        key: its letters and their powers.
        coefficient: its number.
        origin: how it comes about: carried as it stands, a product of two factors, a term whose sign a minus before
            a bracket turns, the square of a term, twice a product, a part of a higher power, a quotient, a raised term,
            a term of an equation that was multiplied through, a term of the top of a fraction after a minus.
        factors: the texts of what was multiplied, divided or raised, with their signs.
        side: 0, or 1 on the right of an equation.
    """

    key: Monomial
    coefficient: Rational
    origin: Origin
    factors: tuple[str, ...]
    side: int = 0

    @property
    def value(self) -> Value:
        return {self.key: self.coefficient}


def scaled(partial: Partial, by: Rational, divisor: str) -> Partial:
    """The partial after every term of an equation was multiplied by a number or divided by one."""
    if by == 1:
        return partial
    if by == -1 and partial.origin == "carried":
        return replace(partial, coefficient=-partial.coefficient, origin="quotient", factors=(partial.factors[0], "-1"))
    if by == -1:
        return replace(partial, coefficient=-partial.coefficient)
    if partial.origin == "quotient" and len(partial.factors) == 2 and partial.factors[1].isdigit():
        times = by / int(partial.factors[1])
        if times.denominator == 1 and abs(by) > 1:
            factors: tuple[str, ...] = (partial.factors[0], *([] if times == 1 else [str(times)]))
            origin: Origin = "carried" if times == 1 else "scaled"
            return replace(partial, coefficient=partial.coefficient * by, origin=origin, factors=factors)
    text = partial.factors[0] if partial.origin == "carried" else ""
    factors = (text, divisor) if text else (*partial.factors, divisor)
    origin = "quotient" if text and abs(by) < 1 else "scaled" if text else partial.origin
    return replace(partial, coefficient=partial.coefficient * by, origin=origin, factors=factors)


def partials_of(node: Node, text: str, *, side: int = 0) -> list[Partial]:
    """The partials of an expression, in the order in which they come.

    Args:
        node: the expression.
        text: the line it stands in, to which its spans refer.
        side: set in each partial.
    Raises:
        TooLarge: there are too many.
    """
    return [replace(partial, side=side) for partial in _parts(node, text)]


def _source(node: Node | Term, text: str) -> str:
    return tight(text[node.span[0]:node.span[1]])


def _leaf(node: Node, text: str, origin: Origin = "carried", factors: tuple[str, ...] = ()) -> list[Partial]:
    value = value_of(node)
    shown = factors or (_source(node, text),)
    return [Partial(key, coefficient, origin, shown) for key, coefficient in value.items()]


def _parts(node: Node, text: str) -> list[Partial]:
    match node:
        case Sum(terms=terms):
            found: list[Partial] = []
            for place, term in enumerate(terms):
                new = _parts(term.body, text)
                if term.sign == "-":
                    new = [_turned(partial, term.body) for partial in new]
                elif term.sign != "+":
                    new = _plus_minus(term, text)
                elif place:
                    new = [_with_plus(partial, term.body) for partial in new]
                found += new
            return found
        case Negation(body=body):
            return [_turned(partial, body) for partial in _parts(body, text)]
        case Bracket(body=body):
            return _parts(body, text)
        case Product(factors=factors, joins=joins):
            return _product(node, factors, joins, text)
        case Power(base=base, exponent=exponent):
            return _raised(node, base, exponent, text)
        case Fraction(numerator=top, denominator=bottom) | Division(left=top, right=bottom):
            return _quotient(node, top, bottom, text)
        case _:
            return _leaf(node, text)


def _plus_minus(term: Term, text: str) -> list[Partial]:
    return [Partial(key, number, "carried", (_source(term, text),)) for key, number in term_value(term).items()]


def _is_sum(node: Node) -> bool:
    inner = bare(node)
    return isinstance(inner, Sum) or (isinstance(inner, Negation) and _is_sum(inner.body))


def _turned(partial: Partial, body: Node) -> Partial:
    """The partial after a minus in front of the term that it belongs to."""
    turned = replace(partial, coefficient=-partial.coefficient)
    if partial.origin == "carried":
        if _is_sum(body) or (isinstance(body, Bracket) and isinstance(bare(body), Negation)):
            return replace(turned, origin="bracket", factors=("-", partial.factors[0]))
        return replace(turned, factors=(_minus(partial.factors[0]),))
    if partial.origin == "bracket":
        return replace(turned, origin="carried", factors=(partial.factors[1],))
    if _is_sum(body):
        return replace(turned, factors=(*partial.factors[:-1], _minus(partial.factors[-1])))
    top = bare(body)
    if partial.origin == "quotient" and isinstance(top, Fraction) and _is_sum(top.numerator):
        return replace(turned, origin="bar")
    if partial.origin in ("product", "quotient"):
        return replace(turned, factors=(_minus(partial.factors[0]), *partial.factors[1:]))
    return replace(turned, factors=("-", *partial.factors))


def _with_plus(partial: Partial, body: Node) -> Partial:
    if partial.origin == "carried" and not _is_sum(body) and not partial.factors[0].startswith(("-", "+")):
        return replace(partial, factors=("+" + partial.factors[0],))
    return partial


def _minus(text: str) -> str:
    if text.startswith("-"):
        return "+" + text[1:]
    return "-" + text.removeprefix("+")


def _product(node: Node, factors: Sequence[Node], joins: Sequence[str], text: str) -> list[Partial]:
    plain = [factor for factor in factors if is_monomial(value_of(factor)) and not _is_sum(factor)]
    sums = [factor for factor in factors if not any(factor is other for other in plain)]
    if not sums:
        value = value_of(node)
        heavy = [factor for factor in factors if not isinstance(factor, Number)]
        written = [_source(factor, text) for factor in factors]
        repeated = len({atom for factor in heavy for key in value_of(factor) for atom, _ in key}) < len(heavy)
        numbers = sum(isinstance(bare(factor), Number | Negation | Fraction) for factor in factors)
        if repeated or numbers > 1:
            merged = tuple(_merged(factors, written, joins))
            return [Partial(key, number, "product", merged) for key, number in value.items()]
        return _leaf(node, text)
    current: list[Partial] | None = None
    if plain:
        outside = constant(1)
        for factor in plain:
            outside = multiply(outside, value_of(factor))
        shown = "".join(_source(factor, text) for factor in plain)
        current = [Partial(key, number, "carried", (shown,)) for key, number in outside.items()]
    for factor in sums:
        new = _parts(factor, text)
        current = new if current is None else [_times(first, second) for first in current for second in new]
        if len(current) > 150:
            raise TooLarge
    return current or []


def _merged(factors: Sequence[Node], written: Sequence[str], joins: Sequence[str]) -> list[str]:
    """3x \\cdot 4x as its two factors 3x and 4x, not four."""
    found: list[str] = []
    last_number = False
    for factor, text, join in zip(factors, written, ("", *joins), strict=True):
        is_number = isinstance(factor, Number | Negation)
        if found and last_number and not is_number and not join and not isinstance(factor, Bracket):
            found[-1] += text
        else:
            found.append(text)
        last_number = is_number
    return found


def _times(first: Partial, second: Partial) -> Partial:
    value = multiply(first.value, second.value)
    (key, number), = value.items() if value else (((), Rational(0)),)
    return Partial(key, number, "product", (*_texts(first), *_texts(second)))


def _texts(partial: Partial) -> tuple[str, ...]:
    if partial.origin == "bracket":
        return (_minus(partial.factors[1]),)
    return partial.factors


def _raised(node: Node, base: Node, exponent: Node, text: str) -> list[Partial]:
    number = as_constant(value_of(exponent))
    inner = bare(base)
    if number is not None and number.denominator == 1 and 2 <= number <= 8 and _is_sum(base):
        terms = _parts(inner, text)
        if number == 2 and len(terms) <= 6:
            found: list[Partial] = []
            for place, first in enumerate(terms):
                for other, second in enumerate(terms[place:], place):
                    product = _times(first, second)
                    if other == place:
                        found.append(replace(product, origin="square", factors=_texts(first)))
                    else:
                        twice = product.coefficient * 2
                        found.append(replace(product, coefficient=twice, origin="middle"))
            return found
        value = power(value_of(inner), number)
        shown = (_source(base, text), str(number))
        return [Partial(key, coefficient, "power", shown) for key, coefficient in value.items()]
    value = value_of(node)
    letters_only = not isinstance(inner, Number) and isinstance(base, Bracket)
    if len(value) == 1 and (letters_only or isinstance(inner, Number)):
        return _leaf(node, text, "raised", (_source(base, text), _source(exponent, text)))
    return _leaf(node, text)


def _quotient(node: Node, top: Node, bottom: Node, text: str) -> list[Partial]:
    below = value_of(bottom)
    if isinstance(bare(top), Number) and isinstance(bare(bottom), Number):
        return _leaf(node, text)
    shown = _source(bottom, text)
    found: list[Partial] = []
    for partial in _parts(top, text):
        for key, number in divide(partial.value, below).items():
            texts = _texts(partial)
            product = " \\times ".join(texts) if len(texts) > 1 else texts[0]
            found.append(Partial(key, number, "quotient", (product, shown)))
    return found
