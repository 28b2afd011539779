"""A formula and the same formula with numbers in the place of letters: which numbers were put in?"""

from __future__ import annotations

from fractions import Fraction as Rational

from checker.equality import equal
from checker.outcome import Known, Outcome
from checker.syntax import (
    Absolute,
    Division,
    Fraction,
    Function,
    Negation,
    Node,
    Number,
    Postfix,
    Power,
    Product,
    Relation,
    Root,
    Statement,
    Sum,
    Symbol,
    letters,
    to_latex,
)
from checker.syntax.shapes import bare
from checker.verdict import Yes

__all__ = ["put_into_formula"]

_CONSTANTS = frozenset({"pi", "e", "i"})

Found = dict[str, Node]


def put_into_formula(before: Statement, after: Statement, known: Known) -> Outcome | None:
    """Is the line the formula before it with a number for each letter that is gone, the same wherever it stands?"""
    if not isinstance(before, Relation) or not isinstance(after, Relation) or before.operator != after.operator:
        return None
    if len(letters(before) - _CONSTANTS) < 2:
        return None
    found: Found = {}
    if not (_fits(before.left, after.left, found, known) and _fits(before.right, after.right, found, known)):
        return None
    if not found:
        return None
    told = " and ".join(f"{name} = {to_latex(bare(node))}" for name, node in sorted(found.items()))
    return Outcome("follows", f"With {told} put in.")


def _fits(old: Node, new: Node, found: Found, known: Known) -> bool:
    old, new = bare(old), bare(new)
    if isinstance(old, Symbol) and old.name not in _CONSTANTS:
        if isinstance(new, Symbol):
            return new.name == old.name and old.name not in found
        if letters(new) - _CONSTANTS:
            return False
        if old.name in found:
            return _same(found[old.name], new, known)
        found[old.name] = new
        return True
    if not letters(old) - _CONSTANTS:
        return not letters(new) - _CONSTANTS and _same(old, new, known)
    match old, new:
        case Sum(terms=first), Sum(terms=second):
            return len(first) == len(second) and all(
                a.sign == b.sign and _fits(a.body, b.body, found, known) for a, b in zip(first, second, strict=True)
            )
        case Product(), Product():
            one, other = _factors(old), _factors(new)
            return len(one) == len(other) and all(_fits(a, b, found, known) for a, b in zip(one, other, strict=True))
        case Fraction(), Fraction():
            return _fits(old.numerator, new.numerator, found, known) and _fits(
                old.denominator, new.denominator, found, known
            )
        case Division(), Division():
            return _fits(old.left, new.left, found, known) and _fits(old.right, new.right, found, known)
        case Power(), Power():
            return _fits(old.base, new.base, found, known) and _fits(old.exponent, new.exponent, found, known)
        case Root(), Root():
            return _fits(old.radicand, new.radicand, found, known)
        case (Negation() | Absolute()), (Negation() | Absolute()):
            return type(old) is type(new) and _fits(old.body, new.body, found, known)
        case Function(), Function():
            return old.name == new.name and old.power == new.power and len(old.arguments) == len(new.arguments) and all(
                _fits(a, b, found, known) for a, b in zip(old.arguments, new.arguments, strict=True)
            )
        case Postfix(), Postfix():
            return old.mark == new.mark and _fits(old.body, new.body, found, known)
        case _:
            return False


def _factors(node: Node) -> list[Node]:
    """The factors, those of a product in brackets too, numbers side by side left apart."""
    if not isinstance(node, Product):
        return [node]
    return [inner for factor in node.factors for inner in (
        _factors(factor) if isinstance(factor, Product) else [factor]
    )]


def _same(first: Node, second: Node, known: Known) -> bool:
    if isinstance(first, Number) and isinstance(second, Number):
        return Rational(first.value) == second.value
    return isinstance(equal(first, second, budget=known.budget, euler=known.euler), Yes)
