"""FLINT (python-flint) beside sympy as an outside judge of equality, on random expressions and what laws make of them.

FLINT decides polynomials and rational functions exactly; for roots, bars, logarithms, powers of e and angles its balls
surely hold the value, so that two that lie apart prove a difference. Random expressions are made from fixed seeds.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction
from itertools import pairwise
from typing import Any

import pytest
import sympy
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from checker.equality import equal
from checker.measure.algebra import to_sympy
from checker.numeric import Evaluator
from checker.real_roots import RealNumber
from checker.relations import unfolded_branches
from checker.report import Working
from checker.solutions import is_true
from checker.syntax import Relation, Statement, parse, parse_expression
from checker.verdict import No, Undecided, Verdict, Yes
from checker.working import judge
from tests.checker.random_algebra import (
    LETTERS,
    Tree,
    UndefinedHereError,
    ball,
    beyond,
    complex_ball,
    latex,
    polynomials,
    quotient,
    rationals,
    same_quotient,
)
from tests.checker.rewritings import all_laws, changed, exact_laws, points, rewritten

flint = pytest.importorskip("flint", reason="python-flint is not installed; it comes with the extra test")

POINTS = points()
_TOO_MUCH = ("too large", "ran out")  # what may stay undecided although FLINT sees a difference


def fixed(count: int) -> settings:
    return settings(max_examples=count, deadline=None, derandomize=True, database=None,
                    suppress_health_check=list(HealthCheck))


def compare(a: Tree, b: Tree) -> Verdict:
    return equal(parse_expression(latex(a)), parse_expression(latex(b)))


def agrees_exactly(a: Tree, b: Tree) -> None:
    verdict = compare(a, b)
    try:
        same = same_quotient(a, b)
    except UndefinedHereError:
        assert isinstance(verdict, Undecided), "divided by what is zero everywhere: there is nothing to compare"
        return
    assert isinstance(verdict, Yes if same else No)
    if isinstance(verdict, No):
        place = [_rational(verdict.counterexample.get(name, Fraction(1))) for name in LETTERS]
        (p, q), (r, s) = ([poly(*place) for poly in quotient(tree)] for tree in (a, b))
        assert q != 0 and s != 0 and p * s != r * q, verdict


def _rational(value: Fraction) -> Any:
    return flint.fmpq(value.numerator, value.denominator)


@fixed(150)
@given(st.one_of(st.tuples(polynomials, polynomials), rewritten(polynomials, exact_laws)))
def test_polynomials(pair: tuple[Tree, Tree]) -> None:
    agrees_exactly(*pair)


@fixed(200)
@given(changed(rewritten(polynomials, exact_laws)))
def test_polynomials_with_one_place_changed(pair: tuple[Tree, Tree]) -> None:
    agrees_exactly(*pair)


@fixed(200)
@given(rewritten(rationals, exact_laws))
def test_rational_functions(pair: tuple[Tree, Tree]) -> None:
    agrees_exactly(*pair)


@fixed(200)
@given(changed(rewritten(rationals, exact_laws)))
def test_rational_functions_with_one_place_changed(pair: tuple[Tree, Tree]) -> None:
    agrees_exactly(*pair)


@fixed(60)
@given(st.one_of(rewritten(rationals, exact_laws), changed(rewritten(rationals, exact_laws))))
def test_both_judges_and_ours_are_of_one_mind(pair: tuple[Tree, Tree]) -> None:
    # Sympy's cancel is exact on rational functions.
    a, b = (to_sympy(parse_expression(latex(tree))) for tree in pair)
    if a.has(sympy.nan, sympy.zoo) or b.has(sympy.nan, sympy.zoo):
        return
    try:
        same = same_quotient(*pair)
    except UndefinedHereError:
        return
    difference = sympy.cancel(sympy.together(a - b))
    assert (difference == 0) == same == isinstance(compare(*pair), Yes)


def verdict_beside_balls(a: Tree, b: Tree) -> str:
    """The verdict, and what FLINT's balls say: apart, agree, or nowhere (no point where both are real)."""
    verdict = compare(a, b)
    if isinstance(verdict, No):
        place = {name: Fraction(1) for name in LETTERS} | dict(verdict.counterexample)
        try:
            one, other = ball(a, place), ball(b, place)
        except UndefinedHereError:
            try:
                one, other = complex_ball(a, place), complex_ball(b, place)
            except UndefinedHereError:
                return "accused, not told"  # a root or quotient of what is 0, as ln(e) - 1 is, but not exactly so here
        return "accused, apart" if not one.overlaps(other) else "accused, but alike"
    seen = "nowhere"
    for point in POINTS:
        try:
            seen = "agree" if seen != "apart" and ball(a, point).overlaps(ball(b, point)) else "apart"
        except UndefinedHereError:
            continue
    if isinstance(verdict, Undecided) and seen == "apart" and any(word in verdict.why for word in _TOO_MUCH):
        return "too large"
    return f"{'equal' if isinstance(verdict, Yes) else 'undecided'}, {seen}"


@fixed(200)
@given(rewritten(beyond, all_laws))
def test_roots_logarithms_and_angles(pair: tuple[Tree, Tree]) -> None:
    # By the laws used the two are equal wherever both are defined, so that none may be accused.
    assert verdict_beside_balls(*pair) in ("equal, agree", "equal, nowhere", "undecided, nowhere")


def test_roots_logarithms_and_angles_with_one_place_changed() -> None:
    count: Counter[str] = Counter()

    @fixed(250)
    @given(changed(rewritten(beyond, all_laws)))
    def judged(pair: tuple[Tree, Tree]) -> None:
        told = verdict_beside_balls(*pair)
        count[told] += 1
        assert told not in ("accused, but alike", "equal, apart", "undecided, apart", "undecided, agree"), pair

    judged()
    assert count["accused, apart"] > 0.5 * count.total()
    assert count["too large"] <= 0.01 * count.total()
    assert count["accused, not told"] <= 0.02 * count.total()


@pytest.mark.parametrize(
    ("a", "b", "ours", "why"),
    [
        # FLINT's root of -8 is the principal one, 1 + i root 3; at school (-2)^3 = -8, so that it is -2.
        ("\\sqrt[3]{-8}", "-2", Yes, "principal root"),
        # Sympy keeps the difference for real letters, since both might be negative; there the right has no value.
        ("\\ln(ab)", "\\ln a+\\ln b", Yes, "common domain"),
        ("\\sqrt{a}\\sqrt{b}", "\\sqrt{ab}", Yes, "common domain"),
        # With letters taken as positive sympy says x; at x = -1 the root of 1 is 1, not -1.
        ("\\sqrt{x^2}", "x", No, "negative letters"),
        # FLINT and sympy take 0^0 as 1; at school it has no value.
        ("0^0", "1", Undecided, "no value at school"),
    ],
)
def test_cases_where_a_reference_library_differs_from_school(a: str, b: str, ours: type[Any], why: str) -> None:
    assert isinstance(equal(parse_expression(a), parse_expression(b)), ours), why


def test_the_libraries_do_differ_there() -> None:
    assert not flint.acb(-8).root(3).overlaps(flint.acb(-2))
    a, b = sympy.symbols("a b", real=True)
    assert sympy.simplify(sympy.log(a * b) - sympy.log(a) - sympy.log(b)) != 0
    x = sympy.Symbol("x", positive=True)
    assert sympy.sqrt(x**2) == x
    assert flint.fmpz(0) ** 0 == 1


def _real_roots(coefficients: list[int]) -> list[Any]:
    """FLINT's real roots of a polynomial, by rising powers; it proves which roots are real."""
    return sorted(
        (root.real for root, _ in flint.fmpz_poly(coefficients).complex_roots() if root.imag == 0),
        key=lambda value: float(value.mid()),
    )


@fixed(80)
@given(st.lists(st.integers(-9, 9), min_size=3, max_size=5).filter(lambda parts: parts[-1] != 0 and any(parts[:-1])))
def test_solutions_of_equations_are_all_real_roots(parts: list[int]) -> None:
    left = "+".join(f"({part})x^{power}" for power, part in enumerate(parts) if part).replace("x^0", "")
    expected = judge(Working((f"{left}=0",), task="solve")).final.expected
    roots = _real_roots(parts)
    if not roots:
        assert expected == "\\text{no solution}"
        return
    values = sorted(float(_middle(branch)) for branch in unfolded_branches(parse(expected)))
    assert len(values) == len(roots)
    for value, root in zip(values, roots, strict=True):
        # what is no root of a quadratic is given in five figures
        assert abs(value - float(root.mid())) <= 5e-5 * max(1, abs(value))


def _middle(branch: Statement) -> Fraction:
    assert isinstance(branch, Relation)
    return RealNumber(Evaluator({}).value(branch.right), "").middle


@fixed(80)
@given(st.lists(st.integers(-9, 9), min_size=3, max_size=4).filter(lambda parts: parts[-1] != 0))
def test_solutions_of_inequalities_end_at_real_roots(parts: list[int]) -> None:
    left = "+".join(f"({part})x^{power}" for power, part in enumerate(parts) if part).replace("x^0", "")
    told = judge(Working((f"{left}<0",), task="solve")).final.expected
    roots = _real_roots(parts)
    statement = parse(told)
    cuts = [float(root.mid()) for root in roots]
    places = [cuts[0] - 1, *((a + b) / 2 for a, b in pairwise(cuts)), cuts[-1] + 1] if cuts else [0.0]
    for place in places:
        value = Fraction(place).limit_denominator(10**6)
        inside = sum(part * value**power for power, part in enumerate(parts)) < 0
        assert is_true(statement, Evaluator({"x": value})) == inside, told
