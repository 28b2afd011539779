"""Claims for all values: expanded sides, terms that differ, counterexamples, conditions; published ones mutated."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

import pytest
import sympy

from checker.errors import ParseError
from checker.measure.algebra import UnlikeError, to_sympy
from checker.report import LineReport, Report, Working
from checker.solutions import links
from checker.syntax import Node, parse
from checker.working import judge
from tests.checker.published import rows


def claim(line: str) -> tuple[Report, LineReport]:
    told = judge(Working((line,), task="identity"))
    return told, told.lines[0]


def test_false_identity_is_multiplied_out_and_refuted() -> None:
    # (x+1)^2 is x^2 + 2x + 1; at x = 1 that is 4, and x^2 + 1 is 2.
    told, line = claim("(x+1)^2=x^2+1")
    assert told.final.correct is False
    assert line.witness == {"x": "1"}
    assert line.reason == (
        "Not true for all values: at x = 1 the sides are 4 and 2. "
        "Multiplied out, the left is x^2+2x+1 and the right is x^2+1. Only the left has 2x."
    )


def test_terms_that_differ_are_told_of_both_sides_with_capital_letters_kept() -> None:
    # (A-2)^2 is A^2 - 4A + 4.
    _, line = claim("(A-2)^2=A^2-2A+4")
    assert line.reason.endswith("Only the left has -4A and only the right has -2A.")


def test_condition_of_a_true_identity() -> None:
    assert claim(r"\frac{x^2-1}{x-1}=x+1")[1].reason == r"True for all values with x \ne 1."
    assert claim("2(x+1)=2x+2")[1].reason == "True for all values."


@pytest.mark.parametrize(
    ("line", "where"),
    [
        # A root is never negative: the square of x - 1 has the root |x - 1|.
        (r"\sqrt{(x-1)^2}=x-1", r"x \ge 1"), (r"\sqrt{x^2}=x", r"x \ge 0"), ("|x|=-x", r"x \le 0"),
        (r"\sqrt{9-6x+x^2}=3-x", r"x \le 3"), (r"\frac{|x|}{x}=1", "x>0"),
        # |x - 1| + |x + 1| is 2 between -1 and 1 only.
        ("|x-1|+|x+1|=2", r"-1 \le x \le 1"),
    ],
)
def test_false_claim_says_on_which_stretch_it_holds(line: str, where: str) -> None:
    told, report = claim(line)
    assert told.final.correct is False
    assert report.reason.endswith(f"It holds for {where}, as sampled.")
    assert report.witness


@pytest.mark.parametrize(
    ("line", "where"),
    [
        (r"\ln(x^2)=2\ln x", "x>0"), (r"\sqrt{x}\sqrt{x}=x", r"x \ge 0"), (r"\frac{x^2-9}{x-3}=x+3", r"x \ne 3"),
        (r"\frac{1}{x}+\frac{1}{x+1}=\frac{2x+1}{x(x+1)}", r"x \ne -1, x \ne 0"),
        (r"\ln\frac1z=-\ln z", "z>0"), (r"\ln(ab)=\ln a+\ln b", "ab>0, a>0, b>0"),
        (r"\frac{a+b}{ab}=\frac1a+\frac1b", r"a \ne 0, b \ne 0"), (r"\tan x=\frac{\sin x}{\cos x}", r"\cos(x) \ne 0"),
        (r"\cot x=\frac{\cos x}{\sin x}=\frac{1}{\tan x}", r"\sin(x) \ne 0, \tan(x) \ne 0, \cos(x) \ne 0"),
    ],
)
def test_true_claim_says_for_which_values(line: str, where: str) -> None:
    told, report = claim(line)
    assert told.final.correct is True
    assert report.reason.startswith(f"True for all values with {where}.")


def test_claim_in_two_letters_that_holds_for_values_not_negative() -> None:
    # |x + y| is |x| + |y| only when the signs agree: at x = 1, y = -2 it is 1, not 3.
    told, line = claim("|x+y|=|x|+|y|")
    assert told.final.correct is False
    assert r"It holds for x \ge 0, y \ge 0, as sampled" in line.reason


@pytest.mark.parametrize(
    ("line", "sides"),
    [
        # b + a over ab against 2 over a + b: (a + b)^2 against 2ab.
        (r"\frac1a+\frac1b=\frac{2}{a+b}",
         r"the numerator of the left is a^2+2ab+b^2 and the right is 2ab. Only the left has a^2+b^2."),
        # (root a + root b)^2 = a + 2 root a root b + b
        (r"(\sqrt a+\sqrt b)^2=a+b",
         r"the left is a+b+2\sqrt{a}\sqrt{b} and the right is a+b. Only the left has 2\sqrt{a}\sqrt{b}."),
        # sin^2 + 2 sin cos + cos^2 = 1 + 2 sin cos
        (r"(\sin x+\cos x)^2=1", r"the left is 2\sin x\cos x+1 and the right is 1. Only the left has 2\sin x\cos x."),
        # sin(x + y) = sin x cos y + cos x sin y
        (r"\sin(x+y)=\sin x+\sin y", r"the left is \sin x\cos y+\sin y\cos x and the right is \sin x+\sin y."),
        # 2^(x+1) = 2 times 2^x
        ("2^{x+1}=2^x+2", r"the left is 2 \times 2^{x} and the right is 2^{x}+2."),
    ],
)
def test_sides_with_fractions_roots_and_angles_are_expanded(line: str, sides: str) -> None:
    assert sides in claim(line)[1].reason


def test_chain_of_claims_is_judged_link_by_link() -> None:
    # (x+1)^2 = x^2 + 2x + 1 is true; x^2 + 2x + 1 = x^2 + 1 is not.
    assert claim("(x+1)^2=x^2+2x+1=x^2+1")[0].final.correct is False
    told, line = claim(r"\frac{x^2-x}{x}=x-1=\frac{x^2-2x+1}{x-1}")
    assert told.final.correct is True
    assert line.reason == r"True for all values with x \ne 0, x \ne 1."


def test_claim_of_numbers() -> None:
    assert claim("3+4=7")[1].reason == "True: both sides have the same value."
    assert claim("3+4=8")[1].reason == "Not true: the sides are 7 and 8."
    assert claim("3+4=8")[0].final.correct is False


# published identities, and what a changed sign or number makes of them

FILES = ("identities-dlmf.jsonl", "identities-openstax.jsonl", "identities-math.jsonl")


def _mutations(line: str) -> Iterator[str]:
    """The line with one sign between terms turned, or one number made larger by 1."""
    for found in re.finditer(r"(?<=[\w})\]])\s*([+-])", line):
        at = found.start(1)
        yield line[:at] + ("-" if line[at] == "+" else "+") + line[at + 1 :]
    for found in re.finditer(r"\d+(?![\d,])", line):
        if line[max(0, found.start() - 1)] not in "_,":
            yield line[: found.start()] + str(int(found.group()) + 1) + line[found.end() :]


def _apart(line: str) -> bool | None:
    """Does sympy find, to fifteen digits, that a link's sides differ at some point? None when it cannot read them."""
    try:
        sides = [(to_sympy(left), to_sympy(right)) for left, _, right in links(parse(line))]
    except (UnlikeError, ParseError):
        return None
    for values in ((0.7, 0.4, 1.3), (1.9, 0.6, 2.3), (2.6, 1.1, 0.3)):
        for left, right in sides:
            names = sorted((left - right).free_symbols, key=str)
            gap = (left - right).subs(dict(zip(names, values, strict=False))).evalf()
            if gap.is_number and gap.is_finite and abs(gap) > 1e-9:
                return True
    return False


@pytest.mark.slow
@pytest.mark.parametrize(("name", "every"), [(FILES[0], 1), (FILES[1], 2), (FILES[2], 1)])
def test_mutated_identities_are_never_called_true(name: str, every: int) -> None:
    # Sources: NIST DLMF 4.8, 4.14, 4.21; OpenStax; MATH. Outside judge of a mutation: sympy's values.
    count: Counter[object] = Counter()
    lines = [line for row in rows(name) for line in row["lines"]]
    for mutated in [mutation for line in lines for mutation in _mutations(line)][::every]:
        apart = _apart(mutated)
        if apart is None:
            continue
        told = judge(Working((mutated,), task="identity"))
        count[told.final.correct, apart] += 1
        assert not (told.final.correct is True and apart), mutated
        assert not (told.final.correct is False and not apart), mutated
        witness = told.lines[0].witness
        if told.final.correct is False and witness:
            assert _differs_at(mutated, {letter: Fraction(value) for letter, value in witness.items()}), mutated
    assert count[False, True] >= 20
    assert count[None, True] <= 0.02 * count.total()


def _differs_at(line: str, point: dict[str, Fraction]) -> bool:
    for left, _, right in links(parse(line)):
        one, other = (_at(node, point) for node in (left, right))
        if abs(one - other) > 1e-12:
            return True
    return False


def _at(node: Node, point: dict[str, Fraction]) -> complex:
    values = {sympy.Symbol(name, real=True): sympy.Rational(value.numerator, value.denominator)
              for name, value in point.items()}
    return complex(to_sympy(node).subs(values).evalf(30))


def test_conditions_of_the_handbook_are_not_contradicted() -> None:
    # DLMF gives conditions on the phase of complex numbers; for real letters they come to "where both are defined".
    for row in rows(FILES[0]):
        for line in row["lines"]:
            told = judge(Working((line,), task="identity"))
            assert told.final.correct is True, line
            if row["conditions"]:
                assert "with" in told.lines[0].reason or "both sides are defined" in told.lines[0].reason, line
