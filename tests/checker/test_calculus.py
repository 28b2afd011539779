"""Derivatives and integrals of random expressions beside sympy's, and what a working with them is told."""

from fractions import Fraction
from random import Random

import pytest
import sympy

from checker.calculus.antiderivative import antiderivative
from checker.calculus.derivative import differentiated
from checker.calculus.working_out import worked_out_in
from checker.equality import equal
from checker.measure.algebra import to_sympy
from checker.numeric import Evaluator, UnsureError
from checker.polynomial import TooLargeError
from checker.refusals import UndefinedError, UnsupportedError
from checker.syntax import Node, parse_expression
from checker.values import approximate, is_real
from checker.verdict import No, Yes

_OUTER = (
    "\\sin(<u>)", "\\cos(<u>)", "e^{<u>}", "\\ln(<u>)", "\\sqrt{<u>}", "(<u>)^3", "\\frac{1}{<u>}", "\\tan(<u>)",
    "(<u>)(<v>)", "<u>+<v>", "\\frac{<u>}{<v>}", "\\arctan(<u>)", "2^{<u>}", "\\sinh(<u>)", "\\sec(<u>)", "3(<u>)",
)
_LEAVES = ("x", "2x+1", "x^2", "x^2+3", "\\frac{x}{2}", "5", "3-x")


def random_text(draws: Random, depth: int) -> str:
    if depth == 0:
        return draws.choice(_LEAVES)
    text = draws.choice(_OUTER)
    return text.replace("<u>", random_text(draws, depth - 1)).replace("<v>", random_text(draws, depth - 1))


def value_at(node: Node, place: Fraction) -> object:
    try:
        value = Evaluator({"x": place}, euler=True).value(node)
    except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
        return None
    return sympy.Rational(approximate(value, 40)) if is_real(value) else None


def test_derivatives_are_those_of_sympy() -> None:
    # Source: sympy 1.14, diff, at three points to 30 digits.
    draws = Random(8)
    compared = 0
    e, x = sympy.Symbol("e", real=True), sympy.Symbol("x", real=True)
    for _ in range(150):
        text = random_text(draws, draws.randint(1, 2))
        node = parse_expression(text)
        theirs = sympy.diff(to_sympy(node).subs(e, sympy.E), x)
        ours = differentiated(node, "x")
        for place in (Fraction(7, 5), Fraction(3, 10), Fraction(12, 5)):
            mine = value_at(ours, place)
            if mine is None or value_at(node, place) is None:
                continue
            other = theirs.subs(x, sympy.Rational(place.numerator, place.denominator)).evalf(30)
            assert abs(other - mine) < sympy.Float("1e-20") * (1 + abs(other)), text
            compared += 1
    assert compared > 250


def test_what_is_integrated_differentiates_back() -> None:
    # Source: the fundamental theorem; equality is judged by the checker, whose judges stand in other tests.
    draws = Random(9)
    found = 0
    for _ in range(120):
        text = random_text(draws, 1)
        node = parse_expression(text)
        try:
            whole = antiderivative(node, "x")
        except UnsupportedError:
            continue
        assert isinstance(equal(differentiated(whole, "x", frozenset()), node, euler=True), Yes), text
        found += 1
    assert found > 70


@pytest.mark.parametrize(
    ("text", "value"),
    [
        # by hand: [x^4/4 + x] = 6 - 0; 2/3 * (27 - 8); ln 3 - ln 1; e^2 - 1 over 2; [-cos] = 2
        ("\\int_0^2(x^3+1)dx", "6"), ("\\int_4^9\\sqrt{x}dx", "\\frac{38}{3}"), ("\\int_1^3\\frac{1}{x}dx", "\\ln 3"),
        ("\\int_0^1e^{2x}dx", "\\frac{e^2-1}{2}"), ("\\int_0^{\\pi}\\sin t\\,dt", "2"), ("\\int_2^0 x\\,dx", "-2"),
        # by hand: 3 * 4 + 6 = 18; 1 + 1/2 + 1/4 + ... = 2; (n + 1)^2 - 1; 5 * 4 * 3
        ("\\sum_{r=1}^{3}(2r+2)", "18"), ("\\sum_{r=0}^{\\infty}(\\frac12)^r", "2"),
        ("\\sum_{r=1}^{n}(2r+1)", "n^2+2n"),
        ("\\prod_{k=3}^{5}k", "60"), ("\\lim_{x\\to 3}\\frac{x^2-9}{x-3}", "6"), ("\\frac{d^3}{dx^3}x^4", "24x"),
    ],
)
def test_worked_out_by_hand(text: str, value: str) -> None:
    assert isinstance(equal(worked_out_in(parse_expression(text)), parse_expression(value), euler=True), Yes)
    assert isinstance(equal(parse_expression(text), parse_expression(f"{value}+1"), euler=True), No)


@pytest.mark.parametrize("text", [
    "\\int_{-1}^{1}\\frac{1}{x}dx", "\\int_0^{\\pi}\\tan x\\,dx", "\\int_0^2\\frac{1}{(x-1)^2}dx",
    "\\int_{-1}^1\\ln x\\,dx",
    "\\int_{-1}^{1}\\frac{1}{x^3}dx", "\\int_0^3\\frac{x}{x^2-4}dx", "\\int_0^{\\pi}\\sec^2x\\,dx",
])
def test_no_value_is_given_across_a_break(text: str) -> None:
    # by hand: the integrand is without bound between the bounds, so F(b) - F(a) is no integral
    assert worked_out_in(parse_expression(text)) == parse_expression(text)
