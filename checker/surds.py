"""Are surds in simplest form: roots of numbers without power factors, like ones collected, fractions cancelled?"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction as Rational
from math import gcd

from checker.syntax import Fraction, Node, Number, Product, Root, Sum, Symbol, walk
from checker.syntax.shapes import unsigned

__all__ = ["simplest_surds"]

_LARGEST = 10**7
Found = tuple[bool | None, str]
_UNKNOWN: Found = (None, "")


def simplest_surds(node: Node) -> Found:
    """Look at a number with roots.

    Returns:
        True, or False with what is still to be done, or None when its form is not known here.
    """
    node = unsigned(node)
    if any(isinstance(part, Root) and _has_power(part) for part in walk(node)):
        return False, "A root still holds a square or higher power."
    below = 1
    if isinstance(node, Fraction):
        if any(isinstance(part, Root) for part in walk(node.denominator)):
            return None, "The denominator holds a root."
        bottom = unsigned(node.denominator)
        if not isinstance(bottom, Number) or bottom.value.denominator != 1:
            return _UNKNOWN
        below, node = int(bottom.value), unsigned(node.numerator)
    bodies: Sequence[Node] = [term.body for term in node.terms] if isinstance(node, Sum) else [node]
    numbers: list[Rational] = []
    kinds: list[tuple[str, ...]] = []
    for body in bodies:
        term = _term(unsigned(body))
        if isinstance(term, str):
            return (False, term) if term else _UNKNOWN
        numbers.append(term[0])
        kinds.append(term[1])
    if len(set(kinds)) < len(kinds):
        return False, "Like terms are still to be collected."
    if below > 1 and gcd(below, *(number.numerator for number in numbers if number.denominator == 1)) > 1:
        return False, "The fraction can be cancelled further."
    return True, ""


def _has_power(root: Root) -> bool:
    radicand = unsigned(root.radicand)
    if not isinstance(radicand, Number):
        return False
    index = unsigned(root.index) if root.index is not None else None
    order = 2 if index is None else int(index.value) if isinstance(index, Number) else 0
    if radicand.value.denominator != 1:
        return True
    whole, base = abs(int(radicand.value)), 2
    if order < 2 or whole > _LARGEST:
        return False
    while base**order <= whole:
        if whole % base**order == 0:
            return True
        base += 1
    return whole <= 1


def _term(node: Node) -> tuple[Rational, tuple[str, ...]] | str:
    """The number in front and the kind of surd; else what is still to be done, or nothing when it is not known."""
    number: Rational | None = None
    kind: list[str] = []
    for factor in node.factors if isinstance(node, Product) else (node,):
        inner = unsigned(factor)
        match inner:
            case Number(value=value) if number is None:
                number = value
            case Number():
                return "The numbers in front are still to be multiplied."
            case Root(radicand=radicand, index=index):
                name = "" if index is None else repr(_key(index))
                if any(other.startswith(f"root {name} ") for other in kind):
                    return "Two roots are still to be multiplied."
                if not isinstance(unsigned(radicand), Number):
                    return ""
                kind.append(f"root {name} {_key(radicand)}")
            case Symbol(name=letter):
                kind.append(letter)
            case Fraction(numerator=top, denominator=bottom) if number is None:
                above, below = unsigned(top), unsigned(bottom)
                if isinstance(above, Number) and isinstance(below, Number) and below.value:
                    number = above.value / below.value
                    continue
                found = _term(above)
                if isinstance(found, str) or not isinstance(below, Number):
                    return found if isinstance(found, str) else ""
                if found[0].denominator == 1 and gcd(found[0].numerator, int(below.value)) > 1:
                    return "The fraction can be cancelled further."
                number = found[0] / below.value
                kind += found[1]
            case _:
                return ""
    return (Rational(1) if number is None else number), tuple(sorted(kind))


def _key(node: Node) -> str:
    inner = unsigned(node)
    return str(inner.value) if isinstance(inner, Number) else repr(type(inner).__name__)
