"""Which slip explains a line that does not follow: proposals from all sources, the likeliest verified first."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace

from checker.errors import ParseError
from checker.report import Slip
from checker.slips.alternatives import alternative_proposals
from checker.slips.catalogue import catalogue_proposals
from checker.slips.contexts import narrowed
from checker.slips.leaves import apply_edits, leaves_of
from checker.slips.matching import Matching
from checker.slips.partials import partials_of
from checker.slips.proposals import MISSING, Proposal
from checker.slips.relations import relation_proposals
from checker.slips.repair import Frame, repairs, whole_side
from checker.slips.values import TooLarge, subtract, value_of
from checker.slips.writing import Style, style_of
from checker.syntax import parse_line
from checker.syntax.tree import Alternatives, Chain, Expression, Line, Node, Relation, Statement

__all__ = ["Follows", "diagnose"]

Follows = Callable[[Line], bool]
_Source = Callable[[Line, Line, Style], Iterator[Proposal]]

MOST_CHECKS = 60
LIKELY = 1.42


def diagnose(
    before: Sequence[Line], written: Line, *, follows: Follows, budget_s: float = 0.5,
) -> Slip | None:
    """The slip that explains a line which does not follow.

    Args:
        before: the lines that it may have been made from, the nearest last.
        written: the line that does not follow.
        follows: judges a repaired line in place of the written one; every slip returned has passed it.
        budget_s: time after which the best explanation so far is taken, in seconds.
    Returns:
        The explanation that changes least, or None when there is none.
    """
    search = _Search(written, follows, time.monotonic() + budget_s)
    for line in reversed(before):
        likely = search.first(_gathered((_matched, _branches), line, written), LIKELY)
        if likely is not None:
            return likely
        rule = next(iter(_gathered((_ruled,), line, written)), None)
        found = search.first(_gathered((_matched, _branches, _repaired), line, written), None)
        if found is not None:
            return found if rule is None else replace(found, kind=rule.kind, because=rule.because)
    return None


@dataclass(slots=True)
class _Search:
    """Verifies proposals one by one, each repaired line once, within the budget."""

    written: Line
    follows: Follows
    deadline: float
    tried: set[str] = field(default_factory=set)

    def first(self, proposals: Sequence[Proposal], limit: float | None) -> Slip | None:
        for proposal in proposals:
            if limit is not None and proposal.cost > limit:
                return None
            repaired = apply_edits(self.written.text, proposal.edits)
            if repaired in self.tried or repaired == self.written.text:
                continue
            if len(self.tried) >= MOST_CHECKS or time.monotonic() > self.deadline:
                return None
            self.tried.add(repaired)
            try:
                candidate = parse_line(repaired)
            except ParseError:
                continue
            if self.follows(candidate):
                return _slip(proposal, self.written.text, repaired)
        return None


def _slip(proposal: Proposal, line: str, repaired: str) -> Slip:
    start, end = proposal.span
    text = line[start:end]
    return Slip(
        kind=proposal.kind, term=text if text.strip() else MISSING, span=(start, end),
        should_be=proposal.should_be, because=proposal.because, repaired=repaired,
    )


def _gathered(sources: Sequence[_Source], before: Line, written: Line) -> list[Proposal]:
    """The proposals of several sources, the likeliest first."""
    style = style_of(before.text, written.text)
    found: list[Proposal] = []
    for source in sources:
        try:
            found.extend(source(before, written, style))
        except (TooLarge, RecursionError, ZeroDivisionError, OverflowError):
            continue
    return sorted(found, key=lambda proposal: proposal.cost)


def _expression(statement: Statement) -> Node | None:
    """The value that a line stands at: an expression, the end of a chain, the right side of an equation."""
    match statement:
        case Expression(body=body):
            return body
        case Chain(members=members):
            return members[-1]
        case Relation(right=right):
            return right
        case _:
            return None


def _links(before: Line, written: Line) -> Iterator[tuple[Node, str, Node]]:
    """Pairs of expressions of which the second should equal the first, with the text of the first."""
    match before.statement, written.statement:
        case (old, Expression(body=body)):
            source = _expression(old)
            if source is not None:
                yield source, before.text, body
        case (old, Chain(members=members) as chain):
            source = _expression(old)
            if source is not None and (chain.continues or isinstance(old, Expression)):
                yield source, before.text, members[0]
            for first, second in zip(members, members[1:], strict=False):
                yield first, written.text, second
        case (Expression(body=source), Relation(left=left, right=right, operator="=")):
            yield source, before.text, right
            yield left, written.text, right
        case (Relation(left=left, right=right), Relation(left=new_left, right=new_right)):
            if value_of(left) == value_of(new_left):
                yield right, before.text, new_right
            if value_of(right) == value_of(new_right):
                yield left, before.text, new_left
        case (Chain(members=old_members), Relation(right=right)):
            yield old_members[-1], before.text, right
        case _:
            return


def _matched(before: Line, written: Line, style: Style) -> Iterator[Proposal]:
    solving = isinstance(written.statement, Relation)
    for old, text, new in _links(before, written):
        pairs = narrowed(old, new)
        for depth, (first, second) in enumerate(pairs):
            parts = partials_of(first, text)
            leaves, places = leaves_of(second, written.text)
            matching = Matching(tuple(parts), tuple(leaves), tuple(places), written.text, style, False, solving)
            for proposal in matching.proposals():
                yield replace(proposal, cost=proposal.cost + 0.8 * depth)
    match before.statement, written.statement:
        case (Relation() as first, Relation() as second):
            yield from relation_proposals(first, before.text, second, written, style)
        case _:
            return


def _frames(before: Line, written: Line, style: Style) -> Iterator[tuple[Frame, str]]:
    match before.statement, written.statement:
        case (Relation() as first, Relation() as second):
            target = subtract(value_of(first.left), value_of(first.right))
            yield Frame(written.text, (second.left, second.right), target, style), before.text
        case _:
            pass
    for old, text, new in _links(before, written):
        source = text[old.span[0]:old.span[1]]
        yield Frame(written.text, (new,), value_of(old), style), source


def _repaired(before: Line, written: Line, style: Style) -> Iterator[Proposal]:
    for frame, source in _frames(before, written, style):
        yield from _careful(repairs(frame))
        yield from whole_side(frame, source)


def _careful(proposals: Iterable[Proposal]) -> Iterator[Proposal]:
    try:
        yield from proposals
    except (TooLarge, ZeroDivisionError):
        return


def _ruled(before: Line, written: Line, style: Style) -> Iterator[Proposal]:
    for old, text, new in _links(before, written):
        yield from catalogue_proposals(old, text, new, written.text, style)


def _branches(before: Line, written: Line, style: Style) -> Iterator[Proposal]:
    match before.statement, written.statement:
        case (Relation() | Alternatives(), Relation() | Alternatives()):
            yield from alternative_proposals(before, written, style)
        case _:
            return
