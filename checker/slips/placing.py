"""Where a documented slip happened: the part of the line before and the part of the written line that it became."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from checker.slips.contexts import inner_pair
from checker.slips.values import TooLarge, term_value
from checker.syntax.latex import tight
from checker.syntax.shapes import bare, terms_of
from checker.syntax.tree import Division, Fraction, Node, Span, Sum, Term

__all__ = ["Placement", "narrowest", "placements"]

DEEPEST = 12


@dataclass(frozen=True, slots=True)
class Placement:
    """Two parts of which the second should equal the first, all around them being equal.

    Args:
        old: the part of the line before.
        source: its text.
        new: the part of the written line.
        span: its characters, with its sign where it is not the first term of its sum.
        is_signed: whether what is written there begins with a sign.
    """

    old: Node
    source: str
    new: Node
    span: Span
    is_signed: bool = False


def placements(old: Node, new: Node, before: str) -> list[Placement]:
    """The pairs of parts, the innermost first, the whole pair last.

    Args:
        old: the expression of the line before.
        new: the written expression.
        before: the line before.
    """
    found = [Placement(old, _source(old, before), new, new.span)]
    for _ in range(DEEPEST):
        try:
            inner = _struck(found[-1], before) or _within(found[-1], before)
        except TooLarge:
            break
        if inner is None:
            break
        found.append(inner)
    return found[::-1]


def narrowest(old: Node, new: Node, before: str) -> list[Placement]:
    """The innermost pair, outside which nothing is to blame; then the whole pair where one cannot be sure of that.

    That is where one fraction divides another, and where terms of a sum were struck out that are equal by chance.
    """
    found = placements(old, new, before)
    divided = isinstance(bare(old), Division) or any(
        isinstance(bare(half), Fraction | Division) for half in _halves(bare(old))
    )
    is_sum = isinstance(bare(old), Sum) and isinstance(bare(new), Sum)
    return [found[0], found[-1]] if (divided or is_sum) and len(found) > 1 else found[:1]


def _halves(node: Node) -> tuple[Node, ...]:
    return (node.numerator, node.denominator) if isinstance(node, Fraction) else ()


def _source(node: Node, text: str) -> str:
    return tight(text[slice(*node.span)])


def _struck(place: Placement, before: str) -> Placement | None:
    """The terms left when equal ones are struck out, if those written stand side by side."""
    old, new = list(terms_of(place.old)), list(terms_of(place.new))
    if len(old) == len(new) == 1:
        return _alone(place, old[0], new[0], before)
    kept = list(new)
    for term in tuple(old):
        value = term_value(term)
        equal = next((twin for twin in kept if term_value(twin) == value), None)
        if equal is not None:
            old = [other for other in old if other is not term]
            kept = [other for other in kept if other is not equal]
    if len(kept) == len(new) or not kept or not old:
        return None
    at = next(index for index, term in enumerate(new) if term is kept[0])
    if any(one is not other for one, other in zip(new[at:], kept, strict=False)):
        return None
    span = (kept[0].span[0], kept[-1].span[1])
    text = "".join(_signed(term, before) for term in old).removeprefix("+")
    return Placement(_sum(old), text, _sum(kept), span, is_signed=at > 0)


def _signed(term: Term, text: str) -> str:
    shown = _source(term.body, text)
    return {"+": "+", "-": "-", "±": "\\pm ", "∓": "\\mp "}[term.sign] + shown


def _sum(terms: Sequence[Term]) -> Node:
    if len(terms) == 1 and terms[0].sign == "+":
        return terms[0].body
    return Sum((terms[0].span[0], terms[-1].span[1]), tuple(terms))


def _alone(place: Placement, old: Term, new: Term, before: str) -> Placement | None:
    """Two lone terms with the same sign: what stands behind the sign."""
    if not isinstance(bare(place.old), Sum) or not isinstance(bare(place.new), Sum) or old.sign != new.sign:
        return None
    return Placement(old.body, _source(old.body, before), new.body, new.body.span)


def _within(place: Placement, before: str) -> Placement | None:
    inner = inner_pair(place.old, place.new)
    if inner is None:
        return None
    old, new = inner
    # a part of the line before that is put together from several has no text of its own
    return Placement(old, _source(old, before), new, bare(new).span)
