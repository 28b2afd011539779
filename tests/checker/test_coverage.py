"""Constructs of school and A-level work: right and wrong equalities, worked by hand.

Source of every rule: common practice, no source; the values of integrals and sums are worked by hand in the comments.
"""

import pytest

from checker.calculus.antiderivative import antiderivative
from checker.calculus.derivative import differentiated
from checker.equality import equal
from checker.numeric import Evaluator, UnsureError
from checker.refusals import UndefinedError
from checker.syntax import parse_expression
from checker.verdict import No, Undecided, Verdict, Yes

RIGHT = [
    # derivatives
    (r"\frac{d}{dx}(x^2+3x)", "2x+3"), (r"\frac{d}{dx}(x\sin x)", r"\sin x+x\cos x"), (r"\frac{d^2}{dx^2}(x^3)", "6x"),
    (r"\frac{d}{dx}\ln(x^2+1)", r"\frac{2x}{x^2+1}"), (r"\frac{d}{dx}(e^{3x})", "3e^{3x}"),
    (r"\frac{d(x^2)}{dx}", "2x"), (r"\frac{\mathrm{d}}{\mathrm{d}t}(5t-4.9t^2)", "5-9.8t"),
    (r"\frac{d}{dx}(x^2y)", r"2xy+x^2\frac{dy}{dx}"), (r"\frac{d}{dx}\left(\frac{x}{x+1}\right)", r"\frac{1}{(x+1)^2}"),
    (r"\frac{d}{dt}(x^2+y^2)", r"2x\frac{dx}{dt}+2y\frac{dy}{dt}"), (r"\frac{d}{dt}(\pi r^2)", r"2\pi r\frac{dr}{dt}"),
    (r"\frac{d}{dx}(ax^2)", "2ax"), (r"\int(u+at)\,dt", r"ut+\frac12at^2+c"),
    # integrals without bounds: equal up to a constant, written or not
    (r"\int 2x\,dx", "x^2+c"), (r"\int 2x\,dx", "x^2"), (r"\int xe^x\,dx", r"xe^x-\int e^x\,dx"),
    (r"\int(ax+b)\,dx", r"\frac{ax^2}{2}+bx+c"), (r"\int\frac{dx}{x}", r"\ln|x|+k"),
    (r"\int\cos 2x\,dx", r"\frac12\sin 2x+c"),
    # by hand: 1/3; 1 - 0; pi/4; pi/2; 2 (2 sqrt x from 0 to 1); 1; 1; pi/4 (a quarter of the unit disc)
    (r"\int_0^1x^2\,dx", r"\left[\frac{x^3}{3}\right]_0^1"), (r"\left[\frac{x^3}{3}\right]_0^1", r"\frac13"),
    (r"\int_1^e\frac1x\,dx", "1"), (r"\int_0^1\frac{1}{1+x^2}\,dx", r"\frac{\pi}{4}"),
    (r"\int_0^a x\,dx", r"\frac{a^2}{2}"),
    (r"\int_0^{\pi}\sin^2x\,dx", r"\frac{\pi}{2}"), (r"\int_0^1\frac{1}{\sqrt{x}}\,dx", "2"),
    (r"\int_1^{\infty}\frac{1}{x^2}\,dx", "1"),
    (r"\int_0^{\infty}e^{-x}\,dx", "1"), (r"\int_0^1\sqrt{1-x^2}\,dx", r"\frac{\pi}{4}"),
    (r"\int_1^2 t\,dt", r"\int_1^2 x\,dx"),
    # sums: 55; 120 = 2 * 55 + 10; geometric
    (r"\sum_{r=1}^{n}r", r"\frac{n(n+1)}{2}"), (r"\sum_{r=1}^{10}(2r+1)", "120"),
    (r"\sum_{k=0}^{\infty}\frac{1}{2^k}", "2"),
    (r"\sum_{k=1}^{n}ar^{k-1}", r"\frac{a(1-r^n)}{1-r}"), (r"\prod_{k=1}^{5}k", "5!"),
    (r"\sum_{k=0}^{n}\binom{n}{k}", "2^n"), (r"\sum_{k=1}^{n}\frac{1}{k(k+1)}", r"\frac{n}{n+1}"),
    (r"\sum_{k=0}^{n}\binom{n}{k}x^k", "(1+x)^n"), (r"\sum_{i=1}^{3}i^2", "14"), (r"\prod_{k=1}^{n}k", "n!"),
    # limits
    (r"\lim_{h\to0}\frac{(x+h)^2-x^2}{h}", "2x"), (r"\lim_{x\to2}\frac{x^2-4}{x-2}", "4"),
    (r"\lim_{x\to\infty}\frac{3x+1}{x-2}", "3"),
    (r"\lim_{x\to0}\frac{\sin x}{x}", "1"), (r"\lim_{h\to0}2x+h", "2x"),
    # functions
    (r"\sin 75^{\circ}", r"\frac{\sqrt6+\sqrt2}{4}"), (r"\cosh^2x-\sinh^2x", "1"),
    (r"\operatorname{arsinh}x", r"\ln(x+\sqrt{x^2+1})"),
    (r"\sinh^{-1}2", r"\ln(2+\sqrt5)"), (r"\ln(x^2)", r"2\ln x"), (r"\log_a b", r"\frac{1}{\log_b a}"),
    (r"\log_4x", r"\frac12\log_2x"),
    (r"{}^5C_2", "10"), (r"\binom{n}{r}", r"\frac{n!}{r!(n-r)!}"), (r"^nC_2", r"\frac{n(n-1)}{2}"),
    (r"{}^nP_2", "n(n-1)"),
    (r"(\cos x+i\sin x)^3", r"\cos 3x+i\sin 3x"), (r"e^{i\pi}", "-1"), (r"0.1\dot6", r"\frac16"),
    (r"\cosec^2x", r"1+\cot^2x"),
    (r"\tan^{-1}1", r"\frac{\pi}{4}"), (r"\sqrt{x^2}", "|x|"),
]
WRONG = [
    (r"\frac{d}{dx}(ax^2)", "ax"), (r"\int(ax+b)\,dx", "ax^2+bx+c"),
    (r"\sum_{k=1}^{n}\frac{1}{k(k+1)}", r"1-\frac1n"), (r"\sum_{k=0}^{n}\binom{n}{k}", "2^{n-1}"),
    (r"\frac{d}{dx}(x^2+3x)", "2x"), (r"\frac{d}{dx}e^{3x}", "e^{3x}"), (r"\frac{d}{dx}(x\cos x)", r"\cos x+x\sin x"),
    (r"\int 2x\,dx", "x^2+3x"), (r"\int\cos 2x\,dx", r"2\sin 2x+c"), (r"\int_0^1x^2\,dx", r"\frac12"),
    (r"\int x^2\,dx", "2x+c"),
    (r"\sum_{r=1}^{n}r^2", r"\frac{n(n+1)(2n+1)}{3}"), (r"\lim_{x\to2}\frac{x^2-4}{x-2}", "2"),
    (r"\ln(x+y)", r"\ln x+\ln y"),
    (r"\sin 2x", r"2\sin x"), (r"\sin(x+y)", r"\sin x+\sin y"), (r"\binom{n}{r}", r"\frac{n!}{r!}"),
    (r"\sqrt{x^2}", "x"),
    (r"\cosh^2x+\sinh^2x", "1"), (r"(2n)!", "2n!"), (r"0.\dot3", "0.3"), (r"\left[x^2\right]_1^3", "10"),
]
UNDECIDED = [
    # y, x and the like may change with the other letter
    (r"\int_0^1y\,dx", r"\frac43"), (r"\frac{d}{dt}(x^2)", r"3x"), (r"\int_0^2 x\,dt", "3"),
    # the integrand has no value at 0 and the integral none at all; other letters; no rule for the integrand
    (r"\int_{-1}^1\frac{1}{x^2}\,dx", "-2"), (r"\int x\cos(x^2)\,dx", r"\int\frac12\cos u\,du"),
    (r"\frac{dy}{dx}", "2x"),
    (r"\lim_{x\to0}\frac1x", "0"), (r"\sum_{k=1}^{\infty}2^k", "-2"),
]


def compare(a: str, b: str) -> Verdict:
    return equal(parse_expression(a), parse_expression(b))


@pytest.mark.parametrize(("a", "b"), RIGHT)
def test_right(a: str, b: str) -> None:
    assert isinstance(compare(a, b), Yes)


@pytest.mark.parametrize(("a", "b"), WRONG)
def test_wrong_is_refuted(a: str, b: str) -> None:
    assert isinstance(compare(a, b), No)


@pytest.mark.parametrize(("a", "b"), UNDECIDED)
def test_undecided_rather_than_guessed(a: str, b: str) -> None:
    assert isinstance(compare(a, b), Undecided)


def test_a_sum_reaches_to_the_last_term_with_its_letter() -> None:
    # sum of r^2 + r for r = 1, 2 is (1 + 1) + (4 + 2) = 8; the 1 stands outside
    assert isinstance(compare(r"\sum_{r=1}^{2}r^2+r+1", "9"), Yes)


def test_integrals_that_were_found_are_differentiated_back() -> None:
    # Source: the product and chain rules; the derivative of each antiderivative is the integrand again.
    for text in (
        r"x^2e^{-x}", r"\sin^2x\cos^3x", r"\frac{5x+1}{(x-1)(x+2)}", r"\frac{1}{x(x+1)^2}", r"\frac{1}{x^2+2x+5}",
        r"x\sqrt{x+1}",
        r"e^{2x}\cos 3x", r"x\ln x", r"\frac{1}{\sqrt{4-x^2}}", r"\sec x\tan x", r"x\sec^2x", r"(e^x+e^{-x})^2",
        r"x^2\sqrt{x^3+1}",
        r"\frac{\ln x}{x^2}", r"\arctan x", r"\tan^2 x", r"x\cos^2x", r"\frac{x^3}{x+1}", r"\sqrt{9-x^2}",
        r"10^{3x}", r"\frac{1}{x\ln x}",
    ):
        node = parse_expression(text)
        back = differentiated(antiderivative(node, "x"), "x", frozenset())
        assert isinstance(equal(back, node, euler=True), Yes), text


def test_an_integral_without_antiderivative_is_enclosed() -> None:
    # Source: NIST DLMF 7.2.1, erf z = (2 / sqrt pi) times this integral from 0 to z; erf 1 = 0.8427007929, from memory;
    # so the integral is 0.7468241328.
    value = Evaluator({}, euler=True).value(parse_expression(r"\int_0^1e^{-x^2}\,dx"))
    assert value.a < 0.7468241328 < value.b
    assert value.b - value.a < 1e-5
    assert isinstance(compare(r"\int_0^1e^{-x^2}\,dx", r"\frac34"), No)


def test_no_integral_is_enclosed_where_the_integrand_breaks() -> None:
    with pytest.raises((UnsureError, UndefinedError)):
        Evaluator({}).value(parse_expression(r"\int_{-1}^1\frac1x\,dx"))
