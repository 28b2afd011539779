"""Random valid workings: an expression or a condition, and what rules of school algebra make of it line by line."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from hypothesis import strategies as st

from tests.checker.random_algebra import (
    LETTERS,
    Tree,
    expanded,
    latex,
    number,
    places,
    polynomials,
    replaced,
)
from tests.checker.rewritings import all_laws, exact_laws

_TURNED = {"=": "=", "<": ">", ">": "<", "\\le": "\\ge", "\\ge": "\\le"}


@dataclass(frozen=True, slots=True)
class Condition:
    left: Tree
    sign: str
    right: Tree

    @property
    def latex(self) -> str:
        return f"{latex(self.left)}{self.sign}{latex(self.right)}".replace("\\le", "\\le ").replace("\\ge", "\\ge ")


def collected(poly: Any, draw: st.DrawFn | None = None) -> Tree:
    """FLINT's polynomial as a sum of terms, in some order."""
    terms = [(powers, Fraction(int(value.p), int(value.q))) for powers, value in poly.to_dict().items()]
    if not terms:
        return number(0)
    if draw is not None:
        terms = draw(st.permutations(terms))
    tree: Tree | None = None
    for powers, value in terms:
        body = monomial(powers, abs(value) if tree is not None else value)
        tree = body if tree is None else ("-" if value < 0 else "+", tree, body)
    assert tree is not None
    return tree


def monomial(powers: tuple[int, ...], value: Fraction) -> Tree:
    factors: list[Tree] = [
        ("letter", name) if power == 1 else ("^", ("letter", name), power)
        for name, power in zip(LETTERS, powers, strict=True) if power
    ]
    tree: Tree | None = None
    for factor in factors:
        tree = factor if tree is None else ("*", tree, factor)
    if tree is None:
        return number(value)
    if value == 1:
        return tree
    return ("minus", tree) if value == -1 else _in_front(value, tree)


def _in_front(value: Fraction, tree: Tree) -> Tree:
    """The number as the first of all factors."""
    return ("*", _in_front(value, tree[1]), tree[2]) if tree[0] == "*" else ("*", number(value), tree)


def factorised(poly: Any) -> Tree:
    """FLINT's factors over the rationals."""
    content, factors = poly.factor()
    tree: Tree | None = None
    for factor, times in factors:
        body = collected(factor)
        body = body if times == 1 else ("^", body, int(times))
        tree = body if tree is None else ("*", tree, body)
    share = Fraction(int(content.p), int(content.q))
    if tree is None:
        return number(share)
    return tree if share == 1 else ("minus", tree) if share == -1 else ("*", number(share), tree)


def _one_law(draw: st.DrawFn, tree: Tree, *, exact: bool) -> Tree:
    laws = exact_laws if exact else all_laws
    path, part = draw(st.sampled_from(list(places(tree))))
    return replaced(tree, path, draw(st.sampled_from(laws(part))))


@st.composite
def expressions(draw: st.DrawFn) -> list[Tree]:
    """A polynomial, some laws, multiplied out, factorised or with its terms in another order."""
    tree = draw(polynomials)
    lines = [tree]
    for _ in range(draw(st.integers(1, 3))):
        tree = _one_law(draw, tree, exact=True)
        lines.append(tree)
    whole = expanded(tree)
    for form in draw(st.lists(st.sampled_from(("collected", "factorised", "collected")), min_size=1, max_size=2)):
        lines.append(collected(whole, draw) if form == "collected" or whole == 0 else factorised(whole))
    return lines


@st.composite
def chains_beyond(draw: st.DrawFn, trees: st.SearchStrategy[Tree]) -> list[Tree]:
    """A tree with roots, logarithms or angles, a law or two from line to line."""
    tree = draw(trees)
    lines = [tree]
    for _ in range(draw(st.integers(1, 3))):
        tree = _one_law(draw, tree, exact=False)
        lines.append(tree)
    return lines


@st.composite
def conditions(draw: st.DrawFn) -> list[Condition]:
    """An equation or inequality, and steps that keep its solutions."""
    one = Condition(draw(polynomials), draw(st.sampled_from(("=", "=", "<", ">", "\\le", "\\ge"))), draw(polynomials))
    lines = [one]
    for _ in range(draw(st.integers(1, 4))):
        lines.append(_step(draw, lines[-1]))
    return lines


def _step(draw: st.DrawFn, one: Condition) -> Condition:
    left, sign, right = one.left, one.sign, one.right
    kind = draw(st.sampled_from(("law", "swap", "add", "times", "move", "collect", "divide", "gather")))
    factor = draw(st.sampled_from([number(value) for value in (-4, -3, -2, -1, 2, 3, 5, Fraction(1, 2))]))
    turned = _TURNED[sign] if factor[1] < 0 else sign
    if kind == "law":
        return Condition(_one_law(draw, left, exact=True), sign, right)
    if kind == "swap":
        return Condition(right, _TURNED[sign], left)
    if kind == "add":
        more = draw(polynomials)
        return Condition(("+", left, more), sign, ("+", right, more))
    if kind == "times":
        return Condition(("*", factor, left), turned, ("*", factor, right))
    if kind == "divide":
        return Condition(("/", left, factor), turned, ("/", right, factor))
    if kind == "move" and left[0] in ("+", "-"):
        return Condition(left[1], sign, ("-" if left[0] == "+" else "+", right, left[2]))
    if kind == "gather":
        return Condition(collected(expanded(("-", left, right))), sign, number(0))
    return Condition(collected(expanded(left), draw), sign, collected(expanded(right), draw))


def square_completed(half: int, root: Fraction, name: str = "x") -> list[str]:
    """A quadratic with the roots half + root and half - root, its square completed, and its two solutions."""
    letter: Tree = ("letter", name)
    whole = ("+", ("-", ("^", letter, 2), ("*", number(2 * half), letter)), number(half * half - root * root))
    shifted = ("-", letter, number(half)) if half >= 0 else ("+", letter, number(-half))
    high, low = (latex(number(value)) for value in (half + root, half - root))
    return [
        f"{latex(whole)}=0", f"{latex(('-', ('^', shifted, 2), number(root * root)))}=0",
        f"{latex(('^', shifted, 2))}={latex(number(root * root))}", f"{latex(shifted)}=\\pm {latex(number(root))}",
        f"{name}={high} \\text{{ or }} {name}={low}",
    ]


def elimination(rows: tuple[tuple[int, int], tuple[int, int]], x: int, y: int) -> list[str]:
    """Two equations in x and y, y eliminated, both values found."""
    (a, b), (c, d) = rows
    first, second = a * x + b * y, c * x + d * y
    return [
        f"{_linear(a, b)}={first}", f"{_linear(c, d)}={second}", f"{_linear(a * d, b * d)}={first * d}",
        f"{_linear(c * b, d * b)}={second * b}", f"{_linear(a * d - c * b, 0)}={first * d - second * b}", f"x={x}",
        f"{b}y={first}-({a * x})", f"y={y}",
    ]


def _linear(a: int, b: int) -> str:
    x, y = latex(monomial((1, 0, 0), Fraction(a))), latex(monomial((0, 1, 0), Fraction(b)))
    return x if b == 0 else y if a == 0 else x + ("" if y.startswith("-") else "+") + y


@dataclass(frozen=True, slots=True)
class Planted:
    """Lines of which the last has one wrong term, in characters from `start`, which should be another."""

    lines: tuple[str, ...]
    term: str
    should_be: str
    start: int


def _terms(draw: st.DrawFn, poly: Any) -> list[tuple[tuple[int, ...], Fraction]]:
    found = [(powers, Fraction(int(value.p), int(value.q))) for powers, value in poly.to_dict().items()]
    return draw(st.permutations(found))


def _pieces(terms: list[tuple[tuple[int, ...], Fraction]]) -> list[str]:
    out: list[str] = []
    for powers, value in terms:
        text = latex(monomial(powers, value))
        out.append(text if text.startswith("-") or not out else f"+{text}")
    return out


@st.composite
def planted_in_expressions(draw: st.DrawFn) -> Planted:
    """A valid chain, and its value collected with one coefficient or sign changed."""
    lines = draw(expressions().filter(lambda lines: expanded(lines[-1]) != 0))
    terms = _terms(draw, expanded(lines[-1]))
    at = draw(st.integers(0, len(terms) - 1))
    powers, value = terms[at]
    new = draw(st.sampled_from([one for one in (-value, value + 1, value - 1, 2 * value) if one]))
    right, wrong = _pieces(terms), _pieces([*terms[:at], (powers, new), *terms[at + 1 :]])
    kept = draw(st.integers(1, len(lines) - 1))
    head = (latex(lines[0]), *("=" + latex(tree) for tree in lines[1:kept]))
    return Planted((*head, "=" + "".join(wrong)), wrong[at], right[at], 1 + len("".join(wrong[:at])))


@st.composite
def planted_in_equations(draw: st.DrawFn) -> Planted:
    """a(x + b) + c = dx + e, and the bracket multiplied out with one coefficient or sign changed; other solutions."""
    whole = st.integers(-9, 9).filter(bool)
    a, b, c, e = (draw(whole) for _ in range(4))
    d = draw(whole.filter(lambda d: d != a))
    left = [((1, 0, 0), Fraction(a)), ((0, 0, 0), Fraction(a * b)), ((0, 0, 0), Fraction(c))]
    right = [((1, 0, 0), Fraction(d)), ((0, 0, 0), Fraction(e))]
    at = draw(st.integers(0, 2))
    powers, value = left[at]
    new = draw(st.sampled_from([one for one in (-value, value + 1, value - 1, 2 * value) if one]))
    wrong = [*left[:at], (powers, new), *left[at + 1 :]]
    if Fraction(e - a * b - c, a - d) == _solution(wrong, right):
        return draw(planted_in_equations())
    second = ("+" if b > 0 else "-", ("letter", "x"), number(abs(b)))
    first = ("+" if c > 0 else "-", ("*", number(a), second), number(abs(c)))
    end, was, now = "".join(_pieces(right)), _pieces(left), _pieces(wrong)
    return Planted((f"{latex(first)}={end}", f"{''.join(now)}={end}"), now[at], was[at], len("".join(now[:at])))


def _solution(left: list[tuple[tuple[int, ...], Fraction]], right: list[tuple[tuple[int, ...], Fraction]]) -> object:
    slope = sum(value for (power, *_), value in left if power) - sum(value for (power, *_), value in right if power)
    rest = sum(value for (power, *_), value in right if not power) - sum(
        value for (power, *_), value in left if not power
    )
    return rest / slope if slope else "none"
