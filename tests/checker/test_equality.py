"""Two expressions compared: hand-worked pairs, and sympy as an outside judge."""

from fractions import Fraction

import pytest
import sympy
from hypothesis import given, settings
from hypothesis import strategies as st

from checker.equality import equal
from checker.syntax import parse_expression
from checker.verdict import No, Undecided, Yes


def compare(a: str, b: str) -> Yes | No | Undecided:
    return equal(parse_expression(a), parse_expression(b))


def test_wrong_sign_is_refuted_by_small_number() -> None:
    # (5 - 2t)(t + 4) at t = 1 is 3 * 5 = 15; the written line gives 5 + 20 - 2 + 8 = 31.
    assert compare("(5-2t)(t+4)", "5t+20-2t^2+8t") == No({"t": Fraction(1)}, "15", "31")


def test_verdict_is_no_truth_value() -> None:
    with pytest.raises(TypeError, match="three values"):
        bool(compare("x", "x"))


def test_excluded_value_is_a_condition() -> None:
    # p^2 - 9 = (p - 3)(p + 3); the left has no value at p = 3.
    assert compare(r"\frac{p^2-9}{p-3}", "p+3") == Yes("exact algebra", (r"p \ne 3",))


def test_power_of_e_below_is_no_condition() -> None:
    # ln(e^-4) is -4; 1/e^4 always has a value.
    assert compare(r"\ln\left(e^{-4}\right)", "-4") == Yes("exact algebra")


# Hand-worked pairs; both sides are meant wherever both are defined over the reals (common practice, no source).
EQUAL = [
    ("(5-2t)(t+4)", "5t+20-2t^2-8t"), (r"\sqrt{50}", r"5\sqrt2"), (r"\frac{1}{\sqrt5-2}", r"\sqrt5+2"),
    (r"\sqrt{3+2\sqrt2}", r"1+\sqrt2"), (r"\sqrt[3]{2+\sqrt5}+\sqrt[3]{2-\sqrt5}", "1"),
    (r"\sqrt{a}\sqrt{b}", r"\sqrt{ab}"),
    (r"\ln(ab)", r"\ln a+\ln b"), (r"\ln(a^2)", r"2\ln a"), (r"\ln(a^2)", r"2\ln|a|"), (r"\sin^2x+\cos^2x", "1"),
    (r"\cos(2x)", r"1-2\sin^2x"), (r"\sin\frac{\pi}{6}", r"\frac12"), (r"2^x\cdot2^3", "2^{x+3}"), ("4^x", "(2^x)^2"),
    (r"\sqrt{12x^3}", r"2x\sqrt{3x}"), (r"\sqrt{x^4+2x^2+1}", "x^2+1"), (r"\log_28", "3"), (r"8^{\frac23}", "4"),
    ("(u+vi)^2", "u^2+2uvi-v^2"), (r"\sqrt{-4}", "2i"), (r"(10^{10}+1)^2-10^{20}", r"2\cdot10^{10}+1"),
    (r"\frac{\sin x}{1+\cos x}", r"\frac{1-\cos x}{\sin x}"), (r"e^{\ln x}", "x"), ("0.1+0.2", "0.3"),
    ("|x-6|", "|6-x|"), (r"25\%", r"\frac14"), ("5!", "120"), (r"\binom{5}{2}", "10"),
]
DIFFERENT = [
    (r"\sqrt{x^2}", "x"), (r"\sqrt{x^2+2x+1}", "x+1"), (r"\sqrt{18x^2}", r"3x\sqrt2"), ("|x+y|", "|x|+|y|"),
    (r"(x^6)^{\frac12}", "x^3"), (r"\sin2\theta", r"2\sin\theta"), (r"2^x\cdot2^3", "2^{3x}"), ("x+10^{-12}", "x"),
    (r"\frac{x}{10^{15}}", "0"), (r"\log(ab)", r"\log a\cdot\log b"), (r"\frac1a+\frac1b", r"\frac2{a+b}"),
    ("-3^2", "9"),
    (r"\sqrt{x^2-6x+9}", "x-3"), ("(a+b)^2", "a^2+b^2"), ("b^{-2}", "-b^2"), (r"\sqrt2+\sqrt8", r"\sqrt{10}"),
    ("((((x+1)^{99})^{99})^{99})^{99}", "1"),
]


@pytest.mark.parametrize(("a", "b"), EQUAL)
def test_equal_where_both_are_defined(a: str, b: str) -> None:
    assert isinstance(compare(a, b), Yes)


@pytest.mark.parametrize(("a", "b"), DIFFERENT)
def test_different_with_a_counterexample(a: str, b: str) -> None:
    assert isinstance(compare(a, b), No)


@pytest.mark.parametrize("a", ["9^{9^{9}}", "10^{10^{10}}", "(x+y)^{100000}", r"\frac10"])
def test_too_large_or_meaningless_is_undecided(a: str) -> None:
    assert isinstance(compare(a, "1"), Undecided)


def test_yes_by_sampling_says_so() -> None:
    verdict = compare(r"\sqrt{a}\sqrt{b}", r"\sqrt{ab}")
    assert isinstance(verdict, Yes)
    assert not verdict.proved
    assert "sampling" in verdict.method


numbers = st.integers(-9, 9).map(lambda n: str(n) if n >= 0 else f"({n})")
atoms = st.one_of(numbers, st.sampled_from(["x", "y", "t"]))
trees = st.recursive(
    atoms,
    lambda inner: st.one_of(
        st.tuples(inner, inner).map(lambda two: f"({two[0]}+{two[1]})"),
        st.tuples(inner, inner).map(lambda two: f"({two[0]}-{two[1]})"),
        st.tuples(inner, inner).map(lambda two: f"({two[0]})*({two[1]})"),
        st.tuples(inner, st.integers(0, 3)).map(lambda two: f"({two[0]})^{two[1]}"),
    ),
    max_leaves=8,
)


def _sympy(text: str) -> sympy.Expr:
    return sympy.sympify(text.replace("^", "**"))


@settings(max_examples=150, deadline=None)
@given(trees, trees)
def test_polynomials_agree_with_sympy(a: str, b: str) -> None:
    # Outside judge: sympy's expand is exact on polynomials over the integers.
    try:
        same = sympy.expand(_sympy(a) - _sympy(b)) == 0
        value = sympy.expand(_sympy(a))
    except (sympy.SympifyError, ZeroDivisionError):
        return
    verdict = compare(a, b)
    if isinstance(verdict, Undecided):
        assert value.has(sympy.nan, sympy.zoo) or "0)^0" in a + b or "no value" in verdict.why
    else:
        assert isinstance(verdict, Yes) == same


@settings(max_examples=100, deadline=None)
@given(trees)
def test_expanding_is_never_accused(a: str) -> None:
    try:
        expanded = sympy.latex(sympy.expand(_sympy(a)))
    except (sympy.SympifyError, ZeroDivisionError):
        return
    assert not isinstance(compare(a, expanded), No)
