"""Terms differentiated or integrated, each matched with the term that was written for it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from checker.calculus.antiderivative import antiderivative
from checker.calculus.derivative import repeatedly_differentiated
from checker.errors import ParseError
from checker.polynomial import TooLargeError
from checker.refusals import UnsupportedError
from checker.slips.leaves import Edit, leaves_of
from checker.slips.links import links_of
from checker.slips.matching import matching_proposals
from checker.slips.partials import Partial
from checker.slips.proposals import Proposal
from checker.slips.reading import Reading
from checker.slips.values import Value, constant, is_monomial, multiply, negate, value_of
from checker.slips.writing import Style, write_value
from checker.syntax import parse_line, tight, to_latex
from checker.syntax.shapes import bare, terms_of
from checker.syntax.tree import Function, Line, Node, Power, Product, Relation, Sum, Symbol, Term, letters

__all__ = ["calculus_steps", "derived_line"]

CONSTANTS = frozenset("cCkKA")


@dataclass(frozen=True, slots=True)
class _Step:
    """What is differentiated or integrated, by which letter, and what was written for it."""

    old: Node
    text: str
    letter: str
    new: Node
    origin: Literal["derived", "integrated"]


def calculus_steps(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """Changes of the terms of a derivative or an integral."""
    for step in _steps(before, written):
        kind = "differentiation" if step.origin == "derived" else "integration"
        try:
            parts = [part for term in terms_of(step.old) for part in _made(term, step)]
        except (UnsupportedError, TooLargeError):
            continue
        leaves, places = leaves_of(step.new, written.text)
        if step.origin == "integrated":
            known = letters(step.old) | {step.letter}
            free = CONSTANTS - known
            leaves = [leaf for leaf in leaves if leaf.text.lstrip("+") not in free]
        reading = Reading(tuple(parts), tuple(leaves), tuple(places), written.text, style, False)
        for proposal in matching_proposals(reading):
            because = proposal.because
            if proposal.kind == "extra-term" and step.origin == "derived":
                because = "a number by itself does not change, so its derivative is 0"
            if "like terms" in because or because.startswith("the line before gives"):
                continue
            yield replace(proposal, cost=min(proposal.cost, 1.05 + proposal.cost / 10), kind=kind, because=because)
        yield from _one_for_one(step, kind, style)


def _one_for_one(step: _Step, kind: str, style: Style) -> Iterator[Proposal]:
    """As many terms written as there were, one of them wrong, though it gives more than one monomial."""
    old, new = terms_of(step.old), [term for term in terms_of(step.new) if not _is_constant(term, step)]
    if len(old) != len(new):
        return
    try:
        pairs = [(_result(one, step), one, two) for one, two in zip(old, new, strict=True)]
        odd = [(right, one, two) for right, one, two in pairs if value_of(right) != value_of(two.body)
               or one.sign != two.sign]
    except (UnsupportedError, TooLargeError):
        return
    if len(odd) != 1 or odd[0][1].sign != odd[0][2].sign:
        return
    right, one, two = odd[0]
    value = value_of(right)
    if not value:
        return
    text = write_value(value, style)
    if len(value) > 1 and isinstance(right, Product | Power):
        text = _product_text(right, style)
    if text is None:
        return
    name = "derivative" if step.origin == "derived" else "integral"
    because = f"the {name} of {tight(step.text[slice(*one.body.span)])} is {text}"
    edit = Edit(two.body.span, f"({text})" if one.sign == "-" and len(value) > 1 else text)
    yield Proposal(1.15, kind, edit.span, edit.text, because, (edit,))


def _product_text(node: Node, style: Style) -> str | None:
    """The monomials of a product as one, then its brackets: 8x(x^2+1)^3."""
    plain, rest = constant(1), ""
    stack = [node]
    while stack:
        factor = bare(stack.pop())
        if isinstance(factor, Product):
            stack += reversed(factor.factors)
        elif is_monomial(value_of(factor)):
            plain = multiply(plain, value_of(factor))
        else:
            rest += f"({to_latex(factor)})" if isinstance(factor, Sum) else to_latex(factor)
    front = write_value(plain, style)
    if front is None or not rest:
        return None
    return rest if front == "1" else "-" + rest if front == "-1" else front + rest


def _is_constant(term: Term, step: _Step) -> bool:
    """A constant of integration."""
    body = bare(term.body)
    return step.origin == "integrated" and isinstance(body, Symbol) and body.name in CONSTANTS - letters(step.old)


def _result(term: Term, step: _Step) -> Node:
    if step.origin == "derived":
        return repeatedly_differentiated(term.body, step.letter, 1)
    return antiderivative(term.body, step.letter)


def derived_line(before: Line, written: Line) -> Line | None:
    """The line that a derivative is judged from: after y = f, where dy/dx is written, dy/dx = the derivative of f."""
    old, new = before.statement, written.statement
    if not isinstance(old, Relation) or not isinstance(new, Relation) or old.operator != "=" or new.operator != "=":
        return None
    letter = _derived_by(old.left, new.left)
    if letter is None:
        return None
    left, body = tight(written.text[slice(*new.left.span)]), tight(before.text[slice(*old.right.span)])
    try:
        return parse_line(f"{left}=\\frac{{d}}{{d{letter}}}({body})")
    except ParseError:
        return None


def _made(term: Term, step: _Step) -> Iterator[Partial]:
    """What a term gives, with its text."""
    value: Value = value_of(_result(term, step))
    text = tight(step.text[slice(*term.body.span)])
    for key, number in (negate(value) if term.sign == "-" else value).items():
        yield Partial(key, number, step.origin, ("-" + text if term.sign == "-" else text,))


def _steps(before: Line, written: Line) -> Iterator[_Step]:
    for link in links_of(before, written):
        match bare(link.old), bare(link.new):
            case (Function(name="deriv", arguments=(body, Symbol(name=letter), order)), _):
                if tight(link.text[slice(*order.span)]) in ("1", letter) and not isinstance(bare(body), Symbol):
                    yield _Step(body, link.text, letter, link.new, "derived")
            case (Function(name="int", arguments=(body, Symbol(name=letter))), _):
                yield _Step(body, link.text, letter, link.new, "integrated")
            case (
                Function(name="int", arguments=(body, Symbol(name=letter), *bounds)),
                Function(name="between", arguments=(right, Symbol(), *others)),
            ) if list(map(value_of, bounds)) == list(map(value_of, others)):
                yield _Step(body, link.text, letter, right, "integrated")
            case _:
                continue


def _derived_by(old: Node, new: Node) -> str | None:
    """The letter by which the left side of the line before was differentiated once to give that of the written one."""
    match old, new:
        case (Symbol(name=name), Function(name="deriv", arguments=(Symbol(name=same), Symbol(name=letter), order))):
            return letter if name == same and value_of(order) == constant(1) else None
        case (
            Function(name="deriv", arguments=(Symbol(name=name), Symbol(name=letter), first)),
            Function(name="deriv", arguments=(Symbol(name=same), Symbol(name=other), second)),
        ):
            higher = value_of(second).get((), 0) - value_of(first).get((), 0)
            return letter if name == same and letter == other and higher == 1 else None
        case (
            Function(name=name, arguments=(Symbol(name=letter),)),
            Function(name=primed, arguments=(Symbol(name=same),)),
        ):
            return letter if primed == name + "'" and letter == same else None
        case _:
            return None
