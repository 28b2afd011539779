"""Completing the square: the number in the bracket, and the constant that makes up for its square."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction as Rational

from checker.slips.leaves import Edit
from checker.slips.links import links_of
from checker.slips.placing import placements
from checker.slips.proposals import Proposal
from checker.slips.values import Value, constant, multiply, power, subtract, term_value, value_of
from checker.slips.writing import Style, signed, write_value
from checker.syntax.latex import tight
from checker.syntax.shapes import bare
from checker.syntax.tree import Line, Node, Power, Product, Relation, Sum, Term, walk

__all__ = ["completed_squares"]


@dataclass(frozen=True, slots=True)
class _Square:
    """a(px+q)^2 in a sum, with the terms that stand beside it."""

    letter: str
    term: Term
    base: Sum
    outside: Rational
    p: Rational
    q: Rational
    beside: tuple[Term, ...]


def completed_squares(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """A quadratic as a square and a constant, one of the two wrong."""
    yield from _balanced(before, written, style)
    for link in links_of(before, written):
        for depth, place in enumerate(placements(link.old, link.new, link.text)):
            square = _square_in(link.new if depth else place.new)
            target = value_of(link.old if depth else place.old)
            if square is None:
                continue
            for proposal in _mended(square, target, written.text, style):
                yield Proposal(
                    proposal.cost, proposal.kind, proposal.span, proposal.should_be, proposal.because,
                    (*proposal.edits, *link.tail),
                )


def _balanced(before: Line, written: Line, style: Style) -> Iterator[Proposal]:
    """x^2+6x+5 = 0 to (x+3)^2 = -5+3: the right side."""
    old, new = before.statement, written.statement
    if not isinstance(old, Relation) or not isinstance(new, Relation) or old.operator != "=" or new.operator != "=":
        return
    if any(isinstance(node, Power) and isinstance(bare(node.base), Sum) for node in walk(old.left)):
        return
    alone = Sum(new.left.span, (Term(new.left.span, "+", new.left),))
    square, target = _square_in(alone), subtract(value_of(old.left), value_of(old.right))
    right = bare(new.right)
    terms = right.terms if isinstance(right, Sum) else (Term(right.span, "+", right),)
    if square is None or any(term_value(term).keys() - {()} for term in terms):
        return
    two, one = ((square.letter, Rational(2)),), ((square.letter, Rational(1)),)
    lead, middle, last = (target.get(key, Rational(0)) for key in (two, one, ()))
    k, p, q = square.outside, square.p, square.q
    if not target.keys() <= {two, one, ()} or k * p * p != lead or 2 * k * p * q != middle or not middle:
        return
    added, values = k * q * q, [term_value(term).get((), Rational(0)) for term in terms]
    needed = added - last
    gap = needed - sum(values, Rational(0))
    places = [place for place, value in enumerate(values) if value != -last] or [len(values) - 1]
    place = places[-1]
    bracket = tight(written.text[slice(*square.base.span)])
    because = f"({bracket})^2 ends in {_text(added, style)}, so {_text(added, style)} is added on the right as well"
    text = _text(values[place] + gap, style)
    if place or written.text[terms[place].span[0]] == "+":
        text = signed(text)
    kind = "one-side-only" if sum(values, Rational(0)) == -last else "arithmetic"
    if values[place] + gap == -values[place]:
        kind = "sign-product"
    span = terms[place].span
    if not values[place] + gap and len(terms) > 1:
        span, text = new.right.span, _text(needed, style)
    if gap:
        yield Proposal(1.15, kind, span, text, because, (Edit(span, text),))


def _square_in(node: Node) -> _Square | None:
    inner = bare(node)
    terms = inner.terms if isinstance(inner, Sum) else ()
    for term in terms:
        body = bare(term.body)
        factors = body.factors if isinstance(body, Product) else (body,)
        powers = [factor for factor in factors if isinstance(factor, Power)]
        raised = [factor for factor in powers if value_of(factor.exponent) == constant(2)]
        if len(raised) != 1:
            continue
        base = bare(raised[0].base)
        outside = constant(-1 if term.sign == "-" else 1)
        for factor in factors:
            if factor is not raised[0]:
                outside = multiply(outside, value_of(factor))
        beside = tuple(other for other in terms if other is not term)
        if not isinstance(base, Sum) or outside.keys() != {()} or any(term_value(t).keys() != {()} for t in beside):
            continue
        found = value_of(base)
        letters = {atom for key in found for atom, _ in key}
        if len(letters) != 1:
            continue
        letter, = letters
        one = ((letter, Rational(1)),)
        if found.keys() == {one, ()} and len(base.terms) == 2:
            return _Square(letter, term, base, outside[()], found[one], found[()], beside)
    return None


def _mended(square: _Square, target: Value, line: str, style: Style) -> Iterator[Proposal]:
    two, one = ((square.letter, Rational(2)),), ((square.letter, Rational(1)),)
    lead, middle, last = (target.get(key, Rational(0)) for key in (two, one, ()))
    if not lead or not middle or not target.keys() <= {two, one, ()}:
        return
    k, p, q = square.outside, square.p, square.q
    if k * p * p != lead:
        return
    right = middle / (2 * k * p)
    shift = last - k * right * right
    bracket = tight(line[slice(*square.base.span)])
    if right == q:
        yield from _constant(square, shift, last, bracket, line, style)
        return
    number = next((term for term in square.base.terms if term_value(term).keys() == {()}), None)
    if number is None or number is square.base.terms[0]:
        return
    text = signed(_text(right, style))
    half = write_value({one: middle / k / p}, style) or ""
    because = f"half of {half.removesuffix(square.letter) or half} goes into the bracket: {_text(right, style)}"
    if not half.removesuffix(square.letter).lstrip("-"):
        because = f"half of the number before {square.letter} goes into the bracket: {_text(right, style)}"
    edits = [Edit(number.span, text)]
    extra = _edit_constant(square, shift, style)
    if extra is None:
        return
    edits += extra
    yield Proposal(1.2, "arithmetic", number.span, text, because, tuple(edits))


def _edit_constant(square: _Square, shift: Rational, style: Style) -> list[Edit] | None:
    """Changes that make the constants beside the square add up to what they should."""
    whole = sum((term_value(term).get((), Rational(0)) for term in square.beside), Rational(0))
    if whole == shift:
        return []
    if len(square.beside) != 1:
        return None
    return [Edit(square.beside[0].span, signed(_text(shift, style)))]


def _constant(
    square: _Square, shift: Rational, last: Rational, bracket: str, line: str, style: Style,
) -> Iterator[Proposal]:
    """The square is right, the constant beside it is not."""
    values = [term_value(term).get((), Rational(0)) for term in square.beside]
    gap = shift - sum(values, Rational(0))
    if not gap or not values:
        return
    taken = square.outside * square.q * square.q
    opened = write_value(power(value_of(square.base), Rational(2)), style) or ""
    front = "" if square.outside == 1 else _text(square.outside, style)
    words = f"({bracket})^2 is {opened}, so {_text(taken, style)} must be taken away again"
    if front:
        words = f"{front}({bracket})^2 ends in {_text(taken, style)}, which must be taken away again"
    if len(values) == 1 and values[0] == -shift:
        kind, place = "sign-product", 0
    elif len(values) == 1:
        sign = "-" if taken > 0 else "+"
        words += f": {_text(last, style)} {sign} {_text(abs(taken), style)} is {_text(shift, style)}"
        kind = "dropped-term" if values[0] == last else "arithmetic"
        place = 0
    else:
        kind = "arithmetic"
        place = next((n for n in reversed(range(len(values))) if values[n] != last), len(values) - 1)
    term = square.beside[place]
    needed = values[place] + gap
    if not needed:
        return
    text = signed(_text(needed, style)) if line[term.span[0]] in "+-" else _text(needed, style)
    yield Proposal(1.1, kind, term.span, text, words, (Edit(term.span, text),))


def _text(number: Rational, style: Style) -> str:
    return write_value(constant(number), style) or "0"
