"""How the right result of a law is written: fractions over one bottom, logarithms taken apart, sums of angles."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction as Rational
from math import lcm

from checker.slips.catalogue.entries import ExpressionSlip
from checker.slips.factors import factored
from checker.slips.leaves import Edit
from checker.slips.placing import Placement
from checker.slips.values import (
    Monomial,
    Value,
    add,
    as_constant,
    constant,
    divide,
    is_monomial,
    multiply,
    negate,
    total,
    value_of,
)
from checker.slips.writing import Style, signed, write_value
from checker.syntax.shapes import bare
from checker.syntax.tree import Fraction, Function, Node, Number, Power, Product, Root, Sum

__all__ = ["right_edits"]

LOGARITHMS = frozenset({"ln", "log", "lg"})
LONGEST = 60
MOST_DEGREE = 8


def right_edits(rule: ExpressionSlip, place: Placement, style: Style) -> Iterator[Edit]:
    """What to write at the place of a documented slip, the best wording first; not all of them need fit."""
    yield from _inside_fraction(rule, place, style)
    for text in dict.fromkeys(_texts(rule, place, style)):
        if not text or len(text) > LONGEST:
            continue
        if place.is_signed:
            yield Edit(place.span, signed(text))
            yield Edit(place.span, f"+({text})")
        else:
            yield Edit(place.span, text)
            yield Edit(place.span, f"({text})")


def _texts(rule: ExpressionSlip, place: Placement, style: Style) -> Iterator[str]:
    node, source = bare(place.old), place.source
    written = write_value(value_of(place.old), style) or ""
    match rule.kind:
        case "factor-pair":
            yield factored(value_of(place.old)) or source
        case "fraction-sum":
            yield over_one_bottom(node, style) or source
        case "root-of-sum" if isinstance(node, Root):
            yield source
        case "root-of-square":
            yield f"\\lvert {write_value(value_of(place.new), style)} \\rvert"
        case "log-law" if isinstance(node, Function):
            yield log_taken_apart(node, source) or source
        case "function-of-product" | "function-of-sum" if isinstance(node, Function):
            yield angle_taken_apart(node) or source
        case "cancelled-term" | "sign-product" if isinstance(node, Fraction):
            yield divided_out(node, style) or source
        case "operation-order" | "unlike-terms":
            yield source
        case "power-law" if rule.id == "pythagoras-not-squared":
            cosine = write_value(multiply(value_of(place.new), value_of(place.new)), style)
            yield cosine or source
        case "power-law":
            yield same_base(node, style) or written
        case _:
            pass
    yield written
    yield source


def _inside_fraction(rule: ExpressionSlip, place: Placement, style: Style) -> Iterator[Edit]:
    """A fraction whose bottom stands, or whose top: only the other half is changed."""
    new = bare(place.new)
    if not isinstance(new, Fraction) or rule.id not in ("fraction-top-not-scaled", "fraction-multiply-both"):
        return
    whole, top, bottom = value_of(place.old), value_of(new.numerator), value_of(new.denominator)
    if rule.id == "fraction-top-not-scaled":
        text = write_value(multiply(whole, bottom), style)
        if text is not None and "frac" not in text:
            yield Edit(new.numerator.span, text)
        return
    if is_monomial(top) and is_monomial(whole):
        text = write_value(divide(top, whole), style)
        if text is not None and "frac" not in text and text != "1":
            yield Edit(new.denominator.span, text)


def over_one_bottom(node: Node, style: Style) -> str | None:
    """A sum of fractions, or one over such a sum, as a single fraction."""
    if isinstance(node, Fraction) and isinstance(bare(node.denominator), Sum):
        below = _joined(bare(node.denominator))
        if below is None or as_constant(below[1]) == 1:
            return None
        top = multiply(value_of(node.numerator), below[1])
        return _fraction(top, below[0], style)
    joined = _joined(node)
    return None if joined is None else _fraction(*joined, style)


def _joined(node: Node) -> tuple[Value, Value] | None:
    """Top and bottom of a sum over the least bottom of numbers times the different letters."""
    if not isinstance(node, Sum) or len(node.terms) > 4:
        return None
    parts: list[tuple[Value, Value]] = []
    for term in node.terms:
        body = bare(term.body)
        top, bottom = (
            (value_of(body.numerator), value_of(body.denominator)) if isinstance(body, Fraction)
            else (value_of(body), constant(1))
        )
        if term.sign not in "+-":
            return None
        parts.append((negate(top) if term.sign == "-" else top, bottom))
    numbers = [as_constant(bottom) for _, bottom in parts]
    if all(is_monomial(bottom) for _, bottom in parts):
        common = _least([bottom for _, bottom in parts])
        if common is not None:
            return total(multiply(top, divide(common, bottom)) for top, bottom in parts), common
    common = constant(lcm(*(int(number) for number in numbers if number and number.denominator == 1)))
    others: list[Value] = []
    for _, bottom in parts:
        if as_constant(bottom) is None and bottom not in others:
            others.append(bottom)
    for bottom in others:
        common = multiply(common, bottom)
    whole: Value = {}
    for (top, bottom), number in zip(parts, numbers, strict=True):
        share = divide(common, constant(number)) if number else _without(common, bottom, others)
        whole = add(whole, multiply(top, share))
    return whole, common


def _least(bottoms: Sequence[Value]) -> Value | None:
    """The least common multiple of monomials with whole numbers."""
    powers: dict[str, Rational] = {}
    sizes: list[int] = []
    for bottom in bottoms:
        (key, number), = bottom.items()
        if number.denominator != 1 or number < 0:
            return None
        sizes.append(int(number))
        for atom, exponent in key:
            powers[atom] = max(powers.get(atom, Rational(0)), exponent)
    return {tuple(sorted(powers.items())): Rational(lcm(*sizes))}


def _without(common: Value, bottom: Value, others: Sequence[Value]) -> Value:
    """The common bottom less one of its factors."""
    if is_monomial(bottom):
        return divide(common, bottom)
    rest = constant(1)
    for other in others:
        if other != bottom:
            rest = multiply(rest, other)
    return rest


def _fraction(top: Value, bottom: Value, style: Style) -> str | None:
    above, below = write_value(top, style), write_value(bottom, style)
    if above is None or below is None or below == "1":
        return above
    return f"\\frac{{{above}}}{{{below}}}"


def divided_out(node: Fraction, style: Style) -> str | None:
    """A fraction in one letter as quotient and remainder: y-3, 1+6/x."""
    top, bottom = value_of(node.numerator), value_of(node.denominator)
    names = {atom for key in (*top, *bottom) for atom, _ in key}
    if len(names) != 1 or not bottom:
        return None
    name, = names
    rows = [{_degree(key): number for key, number in value.items()} for value in (top, bottom)]
    if any(degree is None or degree > MOST_DEGREE for row in rows for degree in row):
        return None
    quotient, rest = _long_division(*rows)
    if not quotient:
        return None
    text = write_value(_in_letter(quotient, name), style)
    if text is None or not rest:
        return text
    left = _in_letter(rest, name)
    tail = write_value(divide(left, bottom), style) if is_monomial(bottom) else _fraction(left, bottom, style)
    return None if tail is None or tail.startswith("-") else f"{text}+{tail}"


def _degree(key: Monomial) -> int | None:
    if not key:
        return 0
    exponent = key[0][1]
    return int(exponent) if len(key) == 1 and exponent.denominator == 1 and exponent > 0 else None


def _in_letter(row: dict[int | None, Rational], name: str) -> Value:
    return {((name, Rational(degree)),) if degree else (): number for degree, number in row.items()}


def _long_division(
    top: dict[int | None, Rational], bottom: dict[int | None, Rational],
) -> tuple[dict[int | None, Rational], dict[int | None, Rational]]:
    """Quotient and remainder, by degree."""
    lead = max(degree or 0 for degree in bottom)
    quotient: dict[int | None, Rational] = {}
    rest = dict(top)
    while rest and (degree := max(d or 0 for d in rest)) >= lead:
        number = rest[degree] / bottom[lead]
        quotient[degree - lead] = number
        for other, value in bottom.items():
            place = (other or 0) + degree - lead
            rest[place] = rest.get(place, Rational(0)) - number * value
        rest = {place: value for place, value in rest.items() if value}
    return quotient, rest


def log_taken_apart(node: Function, source: str) -> str | None:
    """ln(3y) as ln 3 + ln y, ln(z/4) as ln z - ln 4, ln(x^2) as 2 ln x."""
    if node.name not in LOGARITHMS or node.base is not None or len(node.arguments) != 1 or node.power is not None:
        return None
    inside = bare(node.arguments[0])
    match inside:
        case Product(factors=factors) if len(factors) == 2 and all(_is_simple(factor) for factor in factors):
            return "+".join(_applied(node.name, factor) for factor in factors)
        case Fraction(numerator=top, denominator=bottom) if _is_simple(top) and _is_simple(bottom):
            return f"{_applied(node.name, top)}-{_applied(node.name, bottom)}"
        case _:
            return None


def _is_simple(node: Node) -> bool:
    return write_value(value_of(node)) is not None and is_monomial(value_of(node))


def _applied(name: str, node: Node) -> str:
    inside = write_value(value_of(node)) or ""
    return f"\\{name} {inside}" if len(inside) == 1 or inside.isdigit() else f"\\{name}({inside})"


def angle_taken_apart(node: Function) -> str | None:
    """sin(2t) and the sine and cosine of a sum or difference of two letters."""
    if node.name not in ("sin", "cos") or len(node.arguments) != 1 or node.power is not None:
        return None
    inside = bare(node.arguments[0])
    value = value_of(inside)
    if is_monomial(value) and node.name == "sin":
        (key, number), = value.items()
        if number == 2 and key:
            letter = write_value({key: number / 2}) or ""
            return f"2\\sin {letter}\\cos {letter}"
    if not isinstance(inside, Sum) or len(inside.terms) != 2 or inside.terms[0].sign != "+":
        return None
    first, second = (write_value(value_of(term.body)) or "" for term in inside.terms)
    if not (first.isalpha() and second.isalpha()):
        return None
    plus = inside.terms[1].sign
    if node.name == "sin":
        return f"\\sin {first}\\cos {second}{plus}\\cos {first}\\sin {second}"
    return f"\\cos {first}\\cos {second}{'-' if plus == '+' else '+'}\\sin {first}\\sin {second}"


def same_base(node: Node, style: Style) -> str | None:
    """2^3 times 2^n as 2^{n+3}."""
    if not isinstance(node, Product) or len(node.factors) != 2:
        return None
    first, second = (bare(factor) for factor in node.factors)
    if not isinstance(first, Power) or not isinstance(second, Power) or value_of(first.base) != value_of(second.base):
        return None
    base, exponent = first.base, write_value(add(value_of(first.exponent), value_of(second.exponent)), style)
    return f"{base.text}^{{{exponent}}}" if isinstance(base, Number) and exponent is not None else None
