"""Powers, logarithms, squares and bars undone on one side: what stands on the other side then."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction as Rational
from math import isqrt

from checker.slips.leaves import Edit
from checker.slips.proposals import Proposal
from checker.slips.right_forms import over_one_bottom
from checker.slips.values import Value, as_constant, divide, power, subtract, value_of
from checker.slips.writing import Style, write_value
from checker.syntax.latex import tight
from checker.syntax.shapes import bare
from checker.syntax.tree import Absolute, Fraction, Function, Line, Node, Number, Power, Relation, Symbol, letters

__all__ = ["undone"]

MOST_POWER = 40
ROOTS = {Rational(2): "square", Rational(3): "cube"}
NAMES = {"ln": "e", "lg": "10", "log": "10"}


def undone(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """The other side written anew where a power, a logarithm, a square, bars or a reciprocal was undone."""
    old, new = before.statement, written.statement
    if not isinstance(old, Relation) or not isinstance(new, Relation):
        return
    left, right = bare(old.left), old.right
    if old.operator == "=" and new.operator == "=":
        for text, because, kind in (*_of_power(left, right, new.left, style), *_of_log(left, right, new.left, before)):
            yield Proposal(1.2, kind, new.right.span, text, because, (Edit(new.right.span, text),))
        yield from _of_reciprocal(left, right, new, style)
        yield from _of_bars(left, right, new, written)
        yield from _of_unrooted(old, new, style)
        yield from _of_negative_square(left, right, new, before)
    yield from _of_square(old, new, style)


def _of_power(left: Node, right: Node, new: Node, style: Style) -> Iterator[tuple[str, str, str]]:
    """2^x = 8 to x = 3, e^{2x} = 5 to 2x = ln 5."""
    if not isinstance(left, Power) or not letters(left.exponent) or value_of(left.exponent) != value_of(new):
        return
    base, whole = bare(left.base), as_constant(value_of(right))
    if whole is None or whole <= 0:
        return
    shown = write_value(value_of(right), style) or ""
    if isinstance(base, Symbol) and base.name == "e":
        yield f"\\ln {shown}", f"the logarithm undoes the power of e: the exponent is \\ln {shown}", "log-law"
    elif isinstance(base, Number) and base.value > 1:
        exponent = next((n for n in range(-MOST_POWER, MOST_POWER) if base.value ** n == whole), None)
        if exponent is not None:
            yield str(exponent), f"{base.text} to the power {exponent} is {shown}", "power-law"
        else:
            text = f"\\frac{{\\ln {shown}}}{{\\ln {base.text}}}"
            yield text, f"the logarithm undoes the power: the exponent is {text}", "log-law"


def _of_log(left: Node, right: Node, new: Node, before: Line) -> Iterator[tuple[str, str, str]]:
    """ln x = 3 to x = e^3."""
    if not isinstance(left, Function) or left.name not in NAMES or left.power is not None or len(left.arguments) != 1:
        return
    if value_of(left.arguments[0]) != value_of(new):
        return
    base = NAMES[left.name]
    if left.base is not None:
        base = tight(before.text[slice(*left.base.span)])
    exponent = tight(before.text[slice(*right.span)])
    text = f"{base}^{exponent if len(exponent) == 1 else '{' + exponent + '}'}"
    yield text, f"the power of {base} undoes the logarithm, so this is {text}", "log-law"


def _of_reciprocal(left: Node, right: Node, new: Relation, style: Style) -> Iterator[Proposal]:
    """1/f = 1/u + 1/v to f = uv/(u+v)."""
    if not isinstance(left, Fraction) or as_constant(value_of(left.numerator)) != 1:
        return
    if not isinstance(bare(left.denominator), Symbol) or value_of(left.denominator) != value_of(new.left):
        return
    text = over_one_bottom(Fraction(right.span, left.numerator, right), style)
    if text is not None:
        because = f"the fractions are added first and turned over as a whole, which gives {text}"
        yield Proposal(1.1, "fraction-sum", new.right.span, text, because, (Edit(new.right.span, text),))


def _of_bars(left: Node, right: Node, new: Relation, written: Line) -> Iterator[Proposal]:
    """|x-2| = 5 to x-2 = 5: the other sign is lost."""
    size = as_constant(value_of(right))
    if not isinstance(left, Absolute) or size is None or size <= 0 or value_of(left.body) != value_of(new.left):
        return
    if value_of(new.right) != value_of(right):
        return
    inside, end = tight(written.text[slice(*new.left.span)]), new.span[1]
    other = f"{inside}={write_value({(): -size})}"
    because = f"what stands between the bars can also be {write_value({(): -size})}"
    yield Proposal(1.1, "root-lost", (end, end), other, because, (Edit((end, end), f" \\text{{ or }} {other}"),))


def _of_unrooted(old: Relation, new: Relation, style: Style) -> Iterator[Proposal]:
    """A = pi r^2 to r = A/pi: what is written is the square."""
    name = bare(new.left)
    if not isinstance(name, Symbol) or name.name in letters(new.right):
        return
    whole = subtract(value_of(old.left), value_of(old.right))
    raised = [(key, dict(key)[name.name]) for key in whole if name.name in dict(key)]
    if len(raised) != 1 or raised[0][1] not in ROOTS:
        return
    key, degree = raised[0]
    before_it = {tuple(pair for pair in key if pair[0] != name.name): -whole[key]}
    square = divide({other: number for other, number in whole.items() if other != key}, before_it)
    if square != value_of(new.right) or as_constant(square) == 1:
        return
    inside, root = write_value(square, style), write_value(power(square, 1 / degree), style)
    if as_constant(square) is None and degree == 2:
        root = f"\\sqrt{{{inside}}}"
    sign = "\\pm " if degree == 2 else ""
    for text in dict.fromkeys((f"{sign}{root}", root)):
        if text is not None and root is not None:
            because = f"{inside} is {name.name}^{degree}, so {name.name} is its {ROOTS[degree]} root"
            yield Proposal(1.2, "power-law", new.right.span, text, because, (Edit(new.right.span, text),))
    text = f"{name.name}^{degree}" if len(name.name) == 1 else f"\\{name.name}^{degree}"
    because = f"this is {text}: the {ROOTS[degree]} root is still to be taken"
    yield Proposal(1.3, "power-law", new.left.span, text, because, (Edit(new.left.span, text),))


def _of_negative_square(left: Node, right: Node, new: Relation, before: Line) -> Iterator[Proposal]:
    """x^2 = -16 to x = -4."""
    size = as_constant(value_of(right))
    if not isinstance(left, Power) or value_of(left.exponent) != {(): Rational(2)} or size is None or size >= 0:
        return
    start, end = left.span[0], right.span[1]
    text = tight(before.text[start:end])
    because = f"a square is never negative, so no real number makes {text} true"
    yield Proposal(1.3, "power-law", new.span, text, because, (Edit(new.span, text),))


def _of_square(old: Relation, new: Relation, style: Style) -> Iterator[Proposal]:
    """x^2 < 9 to x < 3, x^2 > 9 to x > 3."""
    name, size = bare(new.left), as_constant(value_of(old.right))
    if not isinstance(name, Symbol) or size is None or size <= 0 or old.operator != new.operator:
        return
    square: Value = {((name.name, Rational(2)),): Rational(1)}
    if value_of(old.left) != square or as_constant(value_of(new.right)) != _root(size):
        return
    root, opposite, sign = write_value({(): _root(size)}, style), write_value({(): -_root(size)}, style), new.operator
    if sign in ("<", "\\le", "\\leq"):
        text = f"{opposite}{_spaced(sign)}{name.name}{_spaced(sign)}{root}"
        because = f"a square below a number lies between its two roots, {opposite} and {root}"
    elif sign in (">", "\\ge", "\\geq"):
        turned = {">": "<", "\\ge": "\\le", "\\geq": "\\leq"}[sign]
        text = f"{name.name}{_spaced(turned)}{opposite} \\text{{ or }} {name.name}{_spaced(sign)}{root}"
        because = f"a square above a number lies outside its two roots, {opposite} and {root}"
    else:
        return
    yield Proposal(1.0, "root-lost", new.span, text, because, (Edit(new.span, text),))


def _spaced(sign: str) -> str:
    return sign + " " if sign.startswith("\\") else sign


def _root(number: Rational) -> Rational:
    """The rational square root, or 0."""
    root = Rational(isqrt(number.numerator), isqrt(number.denominator))
    return root if root * root == number else Rational(0)
