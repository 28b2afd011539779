"""Laws of school algebra as rewritings of random trees, and small changes that break what they touch.

Every law holds wherever both sides are defined over the reals (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction

from hypothesis import strategies as st

from tests.checker.random_algebra import LETTERS, Tree, number, places, replaced

_TWO = number(2)
_NAMES = ("ln", "sin", "cos", "tan", "bars")


def _sum(a: Tree, b: Tree) -> Tree:
    return ("+", a, b)


def _times(a: Tree, b: Tree) -> Tree:
    return ("*", a, b)


def _ring_laws(tree: Tree) -> Iterator[Tree]:
    """Order, brackets, squares, signs, common denominators."""
    match tree:
        case ("+", a, b):
            yield _sum(b, a)
            yield ("-", a, ("minus", b))
        case ("-", a, b):
            yield _sum(("minus", b), a)
            yield ("minus", ("-", b, a))
        case ("*", a, b):
            yield _times(b, a)
    match tree:
        case ("*", ("+" | "-" as sign, a, b), c):
            yield (sign, _times(a, c), _times(b, c))
        case ("*", c, ("+" | "-" as sign, a, b)):
            yield (sign, _times(c, a), _times(c, b))
        case ("^", ("+" | "-" as sign, a, b), 2):
            yield _sum((sign, ("^", a, 2), _times(_times(_TWO, a), b)), ("^", b, 2))
        case ("^", ("*", a, b), exponent):
            yield _times(("^", a, exponent), ("^", b, exponent))
        case ("minus", ("+", a, b)):
            yield ("-", ("minus", a), b)
        case ("minus", ("-", a, b)):
            yield ("-", b, a)
        case ("-", a, ("-", b, c)):
            yield _sum(("-", a, b), c)
        case ("-", a, ("+", b, c)):
            yield ("-", ("-", a, b), c)
        case ("-", ("^", a, 2), ("^", b, 2)):
            yield _times(("-", a, b), _sum(a, b))
        case ("+" | "-" as sign, ("/", a, b), ("/", c, d)):
            yield ("/", (sign, _times(a, d), _times(c, b)), _times(b, d))
        case ("+" | "-" as sign, a, ("/", b, c)):
            yield ("/", (sign, _times(a, c), b), c)
        case ("*", ("/", a, b), ("/", c, d)):
            yield ("/", _times(a, c), _times(b, d))
        case ("/", ("/", a, b), c):
            yield ("/", a, _times(b, c))
        case ("/", ("+" | "-" as sign, a, b), c):
            yield (sign, ("/", a, c), ("/", b, c))
        case ("/", a, b):
            yield ("/", _times(a, ("letter", "x")), _times(b, ("letter", "x")))
            yield ("/", ("minus", a), ("minus", b))
        case ("^", a, exponent) if exponent > 1:
            yield _times(a, ("^", a, exponent - 1))


def _laws_beyond(tree: Tree) -> Iterator[Tree]:
    """Roots, bars, logarithms, powers of e, angles."""
    match tree:
        case ("root", ("*", a, b), index):
            yield _times(("root", a, index), ("root", b, index))
        case ("root", ("^", a, 2), 2):
            yield ("bars", a)
        case ("*", ("root", a, index), ("root", b, other)) if index == other:
            yield ("root", _times(a, b), index)
        case ("bars", ("*", a, b)):
            yield _times(("bars", a), ("bars", b))
        case ("bars", ("-", a, b)):
            yield ("bars", ("-", b, a))
        case ("ln", ("*", a, b)):
            yield _sum(("ln", a), ("ln", b))
        case ("ln", ("/", a, b)):
            yield ("-", ("ln", a), ("ln", b))
        case ("ln", ("^", a, exponent)):
            yield _times(number(exponent), ("ln", a))
        case ("+", ("ln", a), ("ln", b)):
            yield ("ln", _times(a, b))
        case ("exp", ("+", a, b)):
            yield _times(("exp", a), ("exp", b))
        case ("exp", ("minus", a)):
            yield ("/", number(1), ("exp", a))
        case ("sin", ("+" | "-" as sign, a, b)):
            yield (sign, _times(("sin", a), ("cos", b)), _times(("cos", a), ("sin", b)))
        case ("cos", ("+" | "-" as sign, a, b)):
            other = "-" if sign == "+" else "+"
            yield (other, _times(("cos", a), ("cos", b)), _times(("sin", a), ("sin", b)))
        case ("tan", a):
            yield ("/", ("sin", a), ("cos", a))
        case ("^", ("sin", a), 2):
            yield ("-", number(1), ("^", ("cos", a), 2))
        case ("^", ("root", a, index), exponent) if index == exponent:
            yield a
    yield ("ln", ("exp", tree))
    if tree[0] not in ("number", "letter"):
        yield ("exp", ("ln", tree))
        yield ("^", ("root", tree, 2), 2)


def _neutral(tree: Tree) -> Iterator[Tree]:
    yield ("-", _sum(tree, number(3)), number(3))
    yield ("minus", ("minus", tree))
    if tree[0] == "number" and tree[1].denominator == 1:
        yield _sum(number(tree[1] - 2), _TWO)
        yield ("-", number(tree[1] + 5), number(5))


def exact_laws(tree: Tree) -> list[Tree]:
    return [*_ring_laws(tree), *_neutral(tree)]


def all_laws(tree: Tree) -> list[Tree]:
    return [*_ring_laws(tree), *_laws_beyond(tree), *_neutral(tree)]


def changes(tree: Tree) -> list[Tree]:
    """What a slip could make of the topmost part: it may still have the same value."""
    match tree:
        case ("number", value):
            return [number(value + 1), number(-value), number(value * 2)]
        case ("letter", name):
            return [("letter", other) for other in LETTERS if other != name]
        case ("+" | "-" as sign, a, b):
            return [("-" if sign == "+" else "+", a, b), ("*", a, b), a]
        case ("*", a, b):
            return [("+", a, b), ("/", a, b)]
        case ("/", a, b):
            return [("*", a, b), ("/", b, a)]
        case ("^", a, exponent):
            return [("*", number(exponent), a), ("^", a, exponent + 1)]
        case ("root", a, index):
            return [a, ("/", a, number(index)), ("root", a, 5 - index)]
        case ("exp" | "minus" as name, a):
            return [a, ("*", _TWO, (name, a))]
        case (name, a):
            return [a, (_NAMES[_NAMES.index(name) - 1], a), (name, ("*", _TWO, a))]
    raise AssertionError(tree)


@st.composite
def rewritten(draw: st.DrawFn, trees: st.SearchStrategy[Tree], laws: Callable[[Tree], list[Tree]]) -> tuple[Tree, Tree]:
    """A tree and what one to four laws, each somewhere in it, make of it."""
    first = tree = draw(trees)
    for _ in range(draw(st.integers(1, 4))):
        path, part = draw(st.sampled_from(list(places(tree))))
        tree = replaced(tree, path, draw(st.sampled_from(laws(part))))
    return first, tree


@st.composite
def changed(draw: st.DrawFn, pairs: st.SearchStrategy[tuple[Tree, Tree]]) -> tuple[Tree, Tree]:
    """A rewritten pair with one place of the second changed."""
    first, tree = draw(pairs)
    path, part = draw(st.sampled_from(list(places(tree))))
    return first, replaced(tree, path, draw(st.sampled_from(changes(part))))


def points() -> list[dict[str, Fraction]]:
    """Points of every sign pattern, near 0 and far from it."""
    sizes = ((Fraction(2), Fraction(3), Fraction(5)), (Fraction(1, 3), Fraction(7, 5), Fraction(1, 4)),
             (Fraction(11, 2), Fraction(1, 7), Fraction(9, 4)))
    return [
        dict(zip(LETTERS, (size * (-1 if bits >> at & 1 else 1) for at, size in enumerate(three)), strict=True))
        for three in sizes for bits in range(8)
    ]
