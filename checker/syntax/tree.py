"""The tree of one written line: structure and order as written, each node with its span in the line as given."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction as Rational
from typing import Any, Literal

__all__ = [
    "Absolute", "Alternatives", "Bracket", "Chain", "Definition", "Division", "Expression", "Fraction", "Function",
    "Line", "MixedNumber", "Negation", "Node", "Note", "Number", "PlusMinus", "Postfix", "Power", "Product",
    "Relation", "Root", "Sign", "Span", "Statement", "Steps", "Sum", "Symbol", "System", "Term", "children",
    "letters", "nodes_of", "product_of", "walk",
]

Span = tuple[int, int]
Sign = Literal["+", "-", "±", "∓"]


@dataclass(frozen=True, slots=True)
class Number:
    """A number written in digits; `text` is what was written, without blanks and commas."""

    span: Span
    value: Rational
    text: str


@dataclass(frozen=True, slots=True)
class Symbol:
    """A letter, Greek letter or name; a subscript belongs to the name, as in `x_1`."""

    span: Span
    name: str


@dataclass(frozen=True, slots=True)
class Term:
    """One signed term of a sum; the span takes in the written sign, `body` never does."""

    span: Span
    sign: Sign
    body: Node


@dataclass(frozen=True, slots=True)
class Sum:
    """Two or more signed terms in the order written."""

    span: Span
    terms: tuple[Term, ...]


@dataclass(frozen=True, slots=True)
class Product:
    """Two or more factors; `joins[i]` stands between factors i and i+1: "" (side by side), `\\times` or `\\cdot`."""

    span: Span
    factors: tuple[Node, ...]
    joins: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Fraction:
    """A fraction with a bar."""

    span: Span
    numerator: Node
    denominator: Node


@dataclass(frozen=True, slots=True)
class Division:
    """A division on one line; the operator is `/` or `\\div`."""

    span: Span
    left: Node
    right: Node
    operator: str


@dataclass(frozen=True, slots=True)
class Power:
    """A base with an exponent."""

    span: Span
    base: Node
    exponent: Node


@dataclass(frozen=True, slots=True)
class Root:
    """A root; `index` is None for a square root."""

    span: Span
    radicand: Node
    index: Node | None


@dataclass(frozen=True, slots=True)
class Negation:
    """A minus before a term that is no part of a longer sum."""

    span: Span
    body: Node


@dataclass(frozen=True, slots=True)
class PlusMinus:
    """A ± or ∓ before a term that is no part of a longer sum."""

    span: Span
    body: Node
    operator: Literal["±", "∓"]


@dataclass(frozen=True, slots=True)
class Absolute:
    """An absolute value between bars."""

    span: Span
    body: Node


@dataclass(frozen=True, slots=True)
class Function:
    """A function applied: `\\sin^{power} argument`, `\\log_{base} argument`, or a user's `f(x)`."""

    span: Span
    name: str
    arguments: tuple[Node, ...]
    power: Node | None = None
    base: Node | None = None


@dataclass(frozen=True, slots=True)
class MixedNumber:
    """A whole number and a fraction side by side that mean their sum."""

    span: Span
    whole: Number
    fraction: Fraction


@dataclass(frozen=True, slots=True)
class Bracket:
    """A bracket as written; `style` is "(", "[", "{" (braces shown) or "" (a LaTeX group around a sum)."""

    span: Span
    body: Node
    style: str


@dataclass(frozen=True, slots=True)
class Postfix:
    """A factorial "!", a percent sign "%" or a degree sign "°" after a value."""

    span: Span
    body: Node
    mark: Literal["!", "%", "°"]


Node = (
    Number | Symbol | Sum | Product | Fraction | Division | Power | Root | Negation | PlusMinus | Absolute | Function
    | MixedNumber | Bracket | Postfix
)


@dataclass(frozen=True, slots=True)
class Expression:
    """A value; `continues` when the line starts with the relation sign `operator` and carries on the line before."""

    span: Span
    body: Node
    continues: bool = False
    operator: str = "="


@dataclass(frozen=True, slots=True)
class Relation:
    """Two sides and one sign: = < > \\le \\ge \\ne \\approx \\equiv."""

    span: Span
    left: Node
    operator: str
    right: Node
    operator_span: Span


@dataclass(frozen=True, slots=True)
class Chain:
    """Three or more members (two when `continues`) with a sign between neighbours.

    When `continues`, the line starts with a relation sign: `operators[0]` stands before `members[0]`, so that there
    are as many operators as members; else one fewer.
    """

    span: Span
    members: tuple[Node, ...]
    operators: tuple[str, ...]
    operator_spans: tuple[Span, ...]
    continues: bool = False


@dataclass(frozen=True, slots=True)
class Alternatives:
    """Conditions joined by "or"."""

    span: Span
    branches: tuple[Statement, ...]


@dataclass(frozen=True, slots=True)
class System:
    """Conditions that hold at once."""

    span: Span
    parts: tuple[Statement, ...]


@dataclass(frozen=True, slots=True)
class Definition:
    """A new name: "let u = x^2"."""

    span: Span
    name: Symbol
    body: Node


@dataclass(frozen=True, slots=True)
class Steps:
    """Several statements on one line, each said to follow from the one before."""

    span: Span
    parts: tuple[Statement, ...]


@dataclass(frozen=True, slots=True)
class Note:
    """Words; nothing to judge."""

    span: Span
    words: str


Statement = Expression | Relation | Chain | Alternatives | System | Definition | Steps | Note


@dataclass(frozen=True, slots=True)
class Line:
    """One written line: its statement and what stands around it.

    Args:
        text: the line as given; every span counts in it.
        statement: what it says.
        label: its number, such as "3" or "a", when it bears one.
        link: the word or sign it starts with, such as "\\Rightarrow".
        conditions: relations after "for", "when" or "where".
        notes: words passed over.
        accuracy: ("dp", 2) or ("sf", 3) when the line states one.
        doubts: places that a fair reader may read in another way: "mixed", "slash", "function", "unit", "label".
        readings: the doubts that were read the other way, and what is known of letters before brackets.
    """

    text: str
    statement: Statement
    label: str | None = None
    link: str | None = None
    conditions: tuple[Statement, ...] = ()
    notes: tuple[str, ...] = ()
    accuracy: tuple[str, int] | None = None
    doubts: frozenset[str] = frozenset()
    readings: frozenset[str] = frozenset()


_CHILDREN: dict[type[Any], Callable[[Any], tuple[Node, ...]]] = {
    Number: lambda node: (),
    Symbol: lambda node: (),
    Sum: lambda node: tuple(term.body for term in node.terms),
    Product: lambda node: node.factors,
    Fraction: lambda node: (node.numerator, node.denominator),
    Division: lambda node: (node.left, node.right),
    Power: lambda node: (node.base, node.exponent),
    Root: lambda node: (node.radicand,) if node.index is None else (node.index, node.radicand),
    Function: lambda node: tuple(part for part in (node.base, node.power, *node.arguments) if part is not None),
    MixedNumber: lambda node: (node.whole, node.fraction),
    Term: lambda node: (node.body,),
    Negation: lambda node: (node.body,),
    PlusMinus: lambda node: (node.body,),
    Absolute: lambda node: (node.body,),
    Bracket: lambda node: (node.body,),
    Postfix: lambda node: (node.body,),
}


def children(node: Node | Term) -> tuple[Node, ...]:
    """The nodes directly below, in the order written (terms of a sum give their bodies)."""
    return _CHILDREN[type(node)](node)


def walk(node: Node) -> Iterator[Node]:
    """The node and everything below it, in the order written."""
    waiting = [node]
    while waiting:
        one = waiting.pop()
        yield one
        waiting.extend(reversed(_CHILDREN[type(one)](one)))


def nodes_of(statement: Statement) -> Iterator[Node]:
    """The topmost expression nodes of a statement, left to right."""
    match statement:
        case Expression(body=body):
            yield body
        case Relation(left=left, right=right):
            yield left
            yield right
        case Chain(members=members):
            yield from members
        case Alternatives(branches=parts) | System(parts=parts) | Steps(parts=parts):
            for part in parts:
                yield from nodes_of(part)
        case Definition(name=name, body=body):
            yield name
            yield body
        case Note():
            return


def letters(part: Node | Statement) -> frozenset[str]:
    """The names of all letters in a node or statement, `i`, `e` and `pi` among them when written.

    Letters that only run inside a sum, a limit or an integral between bounds are not among them.
    """
    match part:
        case Expression() | Relation() | Chain() | Alternatives() | System() | Definition() | Steps() | Note():
            return frozenset().union(*(letters(node) for node in nodes_of(part)))
        case _:
            return frozenset(_letters_in(part))


_BINDING = frozenset({"int", "sum", "prod", "lim", "limabove", "limbelow", "between"})


def _letters_in(top: Node) -> set[str]:
    found: set[str] = set()
    waiting: list[Node] = [top]
    while waiting:
        node = waiting.pop()
        kind = type(node)
        if kind is Symbol:
            found.add(node.name)  # type: ignore[union-attr]
        elif kind is Function and len(node.arguments) > 2 and node.name in _BINDING:  # type: ignore[union-attr]
            body, letter, *bounds = node.arguments  # type: ignore[union-attr]
            inside = _letters_in(body)
            found |= inside - {letter.name} if isinstance(letter, Symbol) else inside
            waiting.extend(bounds)
        else:
            waiting.extend(_CHILDREN[kind](node))
    return found


def product_of(factors: Sequence[Node], joins: Sequence[str]) -> Node:
    """The factors as a product, or the one factor alone."""
    if len(factors) == 1:
        return factors[0]
    return Product((factors[0].span[0], factors[-1].span[1]), tuple(factors), tuple(joins))
