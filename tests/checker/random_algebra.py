"""Random school algebra as small trees of our own: written as LaTeX, and worked out by FLINT as an outside judge.

A tree is a tuple: ("number", Fraction), ("letter", "x"), ("+", a, b), ("-", a, b), ("*", a, b), ("/", a, b),
("^", a, n), ("root", a, index), or (name, a) for the bars, a minus, ln, exp, sin, cos and tan.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import cache
from typing import Any

from hypothesis import strategies as st

Tree = tuple[Any, ...]
LETTERS = ("x", "y", "t")
_FUNCTIONS = {"ln": "\\ln", "sin": "\\sin", "cos": "\\cos", "tan": "\\tan"}


def number(value: int | Fraction) -> Tree:
    return ("number", Fraction(value))


# as it is written


def latex(tree: Tree) -> str:
    """The tree as a pupil would write it, no bracket left out that is needed."""
    match tree:
        case ("number", value):
            top, bottom = abs(value.numerator), value.denominator
            return ("" if value >= 0 else "-") + (str(top) if bottom == 1 else f"\\frac{{{top}}}{{{bottom}}}")
        case ("letter", name):
            return str(name)
        case ("+", a, b):
            return f"{latex(a)}+{_within(b, 1)}"
        case ("-", a, b):
            return f"{latex(a)}-{_within(b, 2)}"
        case ("*", a, b):
            left, right = latex(a) if a[0] == "number" else _within(a, 3), _within(b, 4)
            return left + ("\\times " if right.startswith((*"0123456789", "\\frac")) else "") + right
        case ("/", a, b):
            return f"\\frac{{{latex(a)}}}{{{latex(b)}}}"
        case ("^", a, exponent):
            return f"{_within(a, 5)}^{{{exponent}}}"
        case ("root", a, 2):
            return f"\\sqrt{{{latex(a)}}}"
        case ("root", a, index):
            return f"\\sqrt[{index}]{{{latex(a)}}}"
        case ("minus", a):
            return f"-{_within(a, 2)}"
        case ("bars", a):
            return f"\\left|{latex(a)}\\right|"
        case ("exp", a):
            return f"e^{{{latex(a)}}}"
        case (name, a):
            return f"{_FUNCTIONS[name]}\\left({latex(a)}\\right)"
        case _:
            raise AssertionError(tree)


def _level(tree: Tree) -> int:
    """1 a sum, 2 a function, 3 a product, 4 a power or fraction, 5 an atom; 0 when it starts with a minus."""
    match tree:
        case ("number", value):
            return 0 if value < 0 else 5 if value.denominator == 1 else 4
        case ("letter" | "bars", _):
            return 5
        case ("minus", _):
            return 0
        case ("+" | "-" | "*" as sign, a, _):
            starts = a[0] in ("number", "+", "-", "*", "minus") and _level(a) == 0
            return 0 if starts else 3 if sign == "*" else 1
        case ("ln" | "sin" | "cos" | "tan", _):
            return 2
        case _:
            return 4


def _within(tree: Tree, lowest: int) -> str:
    return latex(tree) if _level(tree) >= lowest else f"({latex(tree)})"


def letters(tree: Tree) -> frozenset[str]:
    if tree[0] == "letter":
        return frozenset({tree[1]})
    return frozenset().union(*(letters(part) for part in tree[1:] if isinstance(part, tuple)))


def replaced(tree: Tree, path: Sequence[int], new: Tree) -> Tree:
    """The tree with another part in the place that a path of child numbers leads to."""
    if not path:
        return new
    at = path[0]
    return (*tree[:at], replaced(tree[at], path[1:], new), *tree[at + 1 :])


def places(tree: Tree, path: tuple[int, ...] = ()) -> Iterator[tuple[tuple[int, ...], Tree]]:
    """Every part with the path that leads to it."""
    yield path, tree
    for at, part in enumerate(tree):
        if at and isinstance(part, tuple):
            yield from places(part, (*path, at))


# as FLINT works it out


class UndefinedHereError(Exception):
    """A zero below, or the root or logarithm of what is negative."""


@cache
def _ring() -> Any:
    import flint

    return flint.fmpq_mpoly_ctx.get(LETTERS, "lex")


def quotient(tree: Tree) -> tuple[Any, Any]:
    """Two polynomials over the rationals, the second not zero.

    Raises:
        UndefinedHereError: something is divided by what is zero everywhere.
    """
    import flint

    ring = _ring()
    one = ring.constant(1)
    match tree:
        case ("number", value):
            return ring.constant(flint.fmpq(value.numerator, value.denominator)), one
        case ("letter", name):
            return ring.gen(LETTERS.index(name)), one
        case ("+" | "-" as sign, a, b):
            (p, q), (r, s) = quotient(a), quotient(b)
            return (p * s + r * q if sign == "+" else p * s - r * q), q * s
        case ("*", a, b):
            (p, q), (r, s) = quotient(a), quotient(b)
            return p * r, q * s
        case ("/", a, b):
            (p, q), (r, s) = quotient(a), quotient(b)
            if r == 0:
                raise UndefinedHereError
            return p * s, q * r
        case ("^", a, exponent):
            p, q = quotient(a)
            if exponent >= 0:
                return p**exponent, q**exponent
            if p == 0:
                raise UndefinedHereError
            return q**-exponent, p**-exponent
        case ("minus", a):
            p, q = quotient(a)
            return -p, q
        case _:
            raise AssertionError(tree)


def same_quotient(a: Tree, b: Tree) -> bool:
    """Are they equal wherever both are defined, by FLINT's exact arithmetic?"""
    (p, q), (r, s) = quotient(a), quotient(b)
    return bool(p * s == r * q)


def expanded(tree: Tree) -> Any:
    """A polynomial multiplied out and collected by FLINT."""
    top, bottom = quotient(tree)
    assert bottom.is_constant()
    return top / bottom.leading_coefficient()


def ball(tree: Tree, point: Mapping[str, Fraction]) -> Any:
    """The value at a point as a ball of FLINT's that surely holds it (about 90 digits).

    Raises:
        UndefinedHereError: the value is not real, or that cannot be told at this precision.
    """
    import flint

    flint.ctx.prec = 300
    value = _worked_out(tree, point, flint.arb)
    if not value.is_finite():
        raise UndefinedHereError
    return value


def complex_ball(tree: Tree, point: Mapping[str, Fraction]) -> Any:
    """The same over the complex numbers, principal values; the odd root of what is negative is negative.

    Raises:
        UndefinedHereError: it has no value, or that cannot be told at this precision.
    """
    import flint

    flint.ctx.prec = 300
    value = _worked_out(tree, point, flint.acb)
    if not value.is_finite():
        raise UndefinedHereError
    return value


def _worked_out(tree: Tree, point: Mapping[str, Fraction], kind: Any) -> Any:
    import flint

    is_real = kind is flint.arb
    match tree:
        case ("number", value):
            return kind(flint.fmpq(value.numerator, value.denominator))
        case ("letter", name):
            return kind(flint.fmpq(point[name].numerator, point[name].denominator))
    inner = [_worked_out(part, point, kind) for part in tree[1:] if isinstance(part, tuple)]
    match tree[0], *inner:
        case "+", a, b:
            return a + b
        case "-", a, b:
            return a - b
        case "*", a, b:
            return a * b
        case "/", a, b:
            return a / _not_zero(b)
        case "^", a:
            return (a if tree[2] > 0 else _not_zero(a)) ** tree[2]
        case "root", a:
            return _root(a, tree[2], is_real=is_real)
        case "minus", a:
            return -a
        case "bars", a:
            return abs(a)
        case "ln", a if is_real and not a > 0:
            raise UndefinedHereError
        case "ln", a:
            return _not_zero(a).log()
        case "tan", a:
            return a.sin() / _not_zero(a.cos())
        case name, a:
            return getattr(a, name)()
    raise AssertionError(tree)


def _not_zero(value: Any) -> Any:
    if value.contains(0):
        raise UndefinedHereError
    return value


def _root(value: Any, index: int, *, is_real: bool) -> Any:
    import flint

    if value == 0:
        return value
    if is_real and index % 2 and value.contains(0):
        return flint.arb(0, value.abs_upper().root(index))
    _not_zero(value)
    negative = value < 0 if is_real else value.imag == 0 and value.real < 0
    if negative and index % 2:
        return -((-value).root(index))
    if negative and is_real:
        raise UndefinedHereError
    return value.root(index)


# as chance makes them

small = st.integers(-9, 9).filter(bool)
numbers = st.one_of(
    small.map(number), small.map(number), st.tuples(small, st.integers(2, 7)).map(lambda two: number(Fraction(*two)))
)
atoms = st.one_of(numbers, st.sampled_from(LETTERS).map(lambda name: ("letter", name)))


def _grown(inner: st.SearchStrategy[Tree], *more: st.SearchStrategy[Tree]) -> st.SearchStrategy[Tree]:
    return st.one_of(
        st.tuples(st.sampled_from("+-*"), inner, inner), st.tuples(st.sampled_from("+-*"), inner, inner),
        st.tuples(st.just("^"), inner, st.integers(1, 3)), st.tuples(st.just("minus"), inner), *more,
    )


polynomials = st.recursive(atoms, _grown, max_leaves=9)
rationals = st.recursive(
    atoms,
    lambda inner: _grown(
        inner, st.tuples(st.just("/"), inner, inner), st.tuples(st.just("^"), inner, st.sampled_from((-1, -2)))
    ),
    max_leaves=8,
)
beyond = st.recursive(
    atoms,
    lambda inner: _grown(
        inner, st.tuples(st.just("/"), inner, inner), st.tuples(st.just("root"), inner, st.sampled_from((2, 2, 3))),
        st.tuples(st.sampled_from(("ln", "exp", "sin", "cos", "tan", "bars")), inner),
    ),
    max_leaves=6,
)
