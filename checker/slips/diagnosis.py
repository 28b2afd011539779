"""Which slip explains a line that does not follow: proposals from all sources, the likeliest verified first."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise

from checker.budget import Budget
from checker.errors import ParseError
from checker.outcome import Known
from checker.report import Slip
from checker.slips.alternatives import alternative_proposals, roots_of
from checker.slips.catalogue import ExpressionSlip, RelationSlip, expression_slips, relation_slips
from checker.slips.contexts import narrowed
from checker.slips.frames import Frame
from checker.slips.leaves import Edit, apply_edits, leaves_of
from checker.slips.matching import matching_proposals
from checker.slips.partials import bare, partials_of
from checker.slips.proposals import MISSING, Proposal
from checker.slips.reading import Reading
from checker.slips.relations import relation_proposals
from checker.slips.repair import repairs, whole_side
from checker.slips.trials import trials
from checker.slips.values import TooLarge, subtract, value_of
from checker.slips.writing import Style, style_of, write_value
from checker.steps import judge_step
from checker.syntax import parse_line, tight
from checker.syntax.tree import (
    Absolute,
    Alternatives,
    Chain,
    Division,
    Expression,
    Fraction,
    Function,
    Line,
    Node,
    Power,
    Product,
    Relation,
    Root,
    Statement,
    Symbol,
    nodes_of,
    walk,
)

__all__ = ["Follows", "diagnose"]

Follows = Callable[[Line], bool]
_Source = Callable[[Line, Line, Style, float], Iterator[Proposal]]

MOST_CHECKS = 90
CLEAR = 1.1
LIKELY = 1.42
ODD = 1.9
STEP_SECONDS = 0.3
MUCH_LONGER = 3  # digits of a number beyond those of the numbers in both lines
SIMPLE = frozenset({
    "arithmetic", "product", "copied", "like-terms", "power-law", "dropped-term", "one-side-only", "sign-product",
})
_DIGITS = re.compile(r"[\d.]+")
_LETTER_BELOW = re.compile(r"\\frac\{[^{}]*\}\{[^{}]*[a-z]")
PLAIN = frozenset({"arithmetic", "product", "copied", "unlike-terms", "like-terms", "other", "power-law"})


def diagnose(
    before: Sequence[Line], written: Line, *, follows: Follows | None = None, budget_s: float = 0.5,
) -> Slip | None:
    """The slip that explains a line which does not follow.

    Args:
        before: the lines that it may have been made from, the nearest last.
        written: the line that does not follow.
        follows: judges a repaired line in place of the written one; every slip returned has passed it. Without it,
            the repaired line must follow from the nearest line before.
        budget_s: time after which the best explanation so far is taken, in seconds.
    Returns:
        The explanation that changes least, or None when there is none.
    """
    if follows is None:
        follows = _judged_from(before)
    texts = " ; ".join(line.text for line in before)
    search = _Search(written, follows, time.monotonic() + budget_s, texts)
    for line in reversed(before or [written]):
        proposal = search.first(_gathered((_linked,), line, written, search.deadline), CLEAR)
        if proposal is None:
            likely = _gathered((_linked, _related, _branches), line, written, search.deadline)
            proposal = search.first(likely, LIKELY)
        if proposal is not None and proposal.kind not in PLAIN:
            return search.slip(proposal)
        if proposal is not None and not _has_structure(line):
            return search.slip(proposal)
        rule = _documented(line, written, deadline=search.deadline, telling=proposal is not None)
        if proposal is not None and rule is None:
            return search.slip(proposal)
        if rule is not None and isinstance(rule, RelationSlip) and rule.whole:
            proposal = search.first(_gathered((_anew,), line, written, search.deadline), None) or proposal
        if proposal is None:
            everything = (_linked, _related, _branches, _repaired, _anew)
            proposal = search.first(_gathered(everything, line, written, search.deadline), None)
        if proposal is not None:
            if rule is not None and (rule.telling or proposal.cost >= ODD):
                because = f"{rule.because}: {proposal.because}" if proposal.cost <= LIKELY else rule.because
                proposal = replace(proposal, kind=rule.kind, because=because)
            return search.slip(proposal)
    return None


def _judged_from(before: Sequence[Line]) -> Follows:
    """A judge of repaired lines: each must follow from the nearest line before."""
    def follows(line: Line) -> bool:
        known = Known(budget=Budget(STEP_SECONDS))
        return judge_step(before[-1].statement, line.statement, known).kind == "follows"

    return follows


@dataclass(slots=True)
class _Search:
    """Verifies proposals one by one, each repaired line once, within the budget."""

    written: Line
    follows: Follows
    deadline: float
    before: str = ""
    tried: set[str] = field(default_factory=set)

    def slip(self, proposal: Proposal) -> Slip:
        line = self.written.text
        return _slip(proposal, line, apply_edits(line, proposal.edits))

    def first(self, proposals: Sequence[Proposal], limit: float | None) -> Proposal | None:
        """The likeliest proposal below a cost that makes the line follow."""
        for proposal in proposals:
            if limit is not None and proposal.cost > limit:
                return None
            repaired = apply_edits(self.written.text, proposal.edits)
            if repaired in self.tried or repaired == self.written.text:
                continue
            if len(self.tried) >= MOST_CHECKS or time.monotonic() > self.deadline:
                return None
            self.tried.add(repaired)
            if proposal.kind in SIMPLE and self._is_far_fetched(proposal):
                continue
            try:
                candidate = parse_line(repaired, self.written.readings)
            except ParseError:
                continue
            if self.follows(candidate):
                return proposal
        return None

    def _is_far_fetched(self, proposal: Proposal) -> bool:
        """Numbers far longer than those of both lines, or a letter in a denominator from nowhere: a line misread."""
        line, should_be = self.written.text, proposal.should_be
        longest = max((len(digits) for digits in _DIGITS.findall(tight(f"{self.before} ; {line}"))), default=0)
        if any(len(digits) >= longest + MUCH_LONGER for digits in _DIGITS.findall(should_be)):
            return True
        if _LETTER_BELOW.search(should_be) is None or should_be.lstrip("+-") in tight(self.before):
            return False
        term = line[slice(*proposal.span)]
        return "\\frac" not in term and "^{-" not in term


def _slip(proposal: Proposal, line: str, repaired: str) -> Slip:
    start, end = proposal.span
    text = line[start:end]
    return Slip(
        kind=proposal.kind, term=tight(text) if text.strip() else MISSING, span=(start, end),
        should_be=tight(proposal.should_be), because=proposal.because, repaired=repaired,
    )


def _gathered(sources: Sequence[_Source], before: Line, written: Line, deadline: float) -> list[Proposal]:
    """The proposals of several sources, the likeliest first."""
    style = style_of(before.text, written.text)
    found: list[Proposal] = []
    for source in sources:
        try:
            found.extend(source(before, written, style, deadline))
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


@dataclass(frozen=True, slots=True)
class _Link:
    """Two expressions of which the second should equal the first; `tail` mends what is carried on in the same line."""

    old: Node
    text: str
    new: Node
    tail: tuple[Edit, ...] = ()


def _links(before: Line, written: Line) -> Iterator[_Link]:
    """The pairs of expressions that a step compares."""
    match before.statement, written.statement:
        case (old, Expression(body=body)):
            source = _expression(old)
            if source is not None:
                yield _Link(source, before.text, body)
        case (old, Chain(members=members) as chain):
            source = _expression(old)
            if source is not None and (chain.continues or isinstance(old, Expression)):
                yield _Link(source, before.text, members[0], _tail(source, members[1:]))
            for place, (first, second) in enumerate(pairwise(members), 2):
                yield _Link(first, written.text, second, _tail(first, members[place:]))
        case (Expression(body=source), Relation(left=left, right=right, operator="=")):
            yield _Link(source, before.text, right)
            yield _Link(left, written.text, right)
        case (Relation(left=left, right=right), Relation(left=new_left, right=new_right)):
            if value_of(left) == value_of(new_left):
                yield _Link(right, before.text, new_right)
            if value_of(right) == value_of(new_right):
                yield _Link(left, before.text, new_left)
        case (Chain(members=old_members), Relation(right=right)):
            yield _Link(old_members[-1], before.text, right)
        case _:
            return


def _tail(source: Node, members: Sequence[Node]) -> tuple[Edit, ...]:
    """The later members of a chain that have another value, written anew."""
    value = value_of(source)
    text = write_value(value)
    if text is None:
        return ()
    return tuple(Edit(member.span, text) for member in members if value_of(member) != value)


def _linked(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    solving = isinstance(written.statement, Relation)
    for link in _links(before, written):
        pairs = narrowed(link.old, link.new)
        for depth, (first, second) in enumerate(pairs):
            parts = partials_of(first, link.text)
            leaves, places = leaves_of(second, written.text)
            reading = Reading(tuple(parts), tuple(leaves), tuple(places), written.text, style, False, solving)
            for proposal in matching_proposals(reading):
                yield replace(proposal, cost=proposal.cost + 0.8 * depth, edits=(*proposal.edits, *link.tail))


def _related(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    match before.statement, written.statement:
        case (Relation() as old_relation, Relation() as new_relation):
            yield from relation_proposals(old_relation, before.text, new_relation, written, style)
        case _:
            return


def _frames(
    before: Line, written: Line, style: Style, deadline: float,
) -> Iterator[tuple[Frame, str, tuple[Edit, ...]]]:
    match before.statement, written.statement:
        case (Relation() as first, Relation() as second):
            target = subtract(value_of(first.left), value_of(first.right))
            yield Frame(written.text, (second.left, second.right), target, style, None, deadline), before.text, ()
        case _:
            pass
    for link in _links(before, written):
        source = tight(link.text[link.old.span[0]:link.old.span[1]])
        yield Frame(written.text, (link.new,), value_of(link.old), style, None, deadline), source, link.tail


def _absolute(before: Line, written: Line) -> Iterator[Proposal]:
    """Lines that differ in sign only where a root of a square was taken without bars."""
    for link in _links(before, written):
        if any(isinstance(node, Root) for node in walk(link.old)) and value_of(link.old) == value_of(link.new):
            span = link.new.span
            text = f"\\lvert {written.text[slice(*span)].strip()} \\rvert"
            because = "the root of a square is never negative, so it is the absolute value"
            yield Proposal(1.5, "root-of-square", span, text, because, (Edit(span, text), *link.tail))


def _repaired(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    for frame, source, tail in _frames(before, written, style, deadline):
        for found in (_careful(repairs(frame)), trials(frame, source), whole_side(frame, source)):
            for proposal in found:
                yield replace(proposal, edits=(*proposal.edits, *tail))
    yield from _root_repairs(before, written, style, deadline)
    yield from _absolute(before, written)


def _root_repairs(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """Changes inside roots that are written as expressions, such as the quadratic formula with its numbers."""
    old = before.statement
    branches = written.statement.branches if isinstance(written.statement, Alternatives) else (written.statement,)
    if not isinstance(old, Relation) or old.operator != "=" or len(branches) > 4:
        return
    target = subtract(value_of(old.left), value_of(old.right))
    found: list[list[Proposal]] = []
    for branch in branches:
        if not isinstance(branch, Relation) or not isinstance(branch.left, Symbol):
            return
        frame = Frame(written.text, (branch.right,), target, style, branch.left.name, deadline)
        if not frame.agrees(frame.value()):
            found.append(list(_careful(repairs(frame))))
    if not found:
        return
    for lead in found[0]:
        same = [
            next((p for p in other if written.text[slice(*p.span)] == written.text[slice(*lead.span)]
                  and p.should_be == lead.should_be), None)
            for other in found[1:]
        ]
        kept = [proposal for proposal in same if proposal is not None]
        if len(kept) == len(same):
            edits = tuple(edit for proposal in (lead, *kept) for edit in proposal.edits)
            yield replace(lead, edits=edits)


def _careful(proposals: Iterable[Proposal]) -> Iterator[Proposal]:
    try:
        yield from proposals
    except (TooLarge, ZeroDivisionError):
        return


def _has_structure(line: Line) -> bool:
    """Whether the line holds more than sums and products, so that a law may have been misused."""
    found = (Fraction, Division, Power, Root, Function, Absolute)
    return isinstance(line.statement, Relation) or any(
        isinstance(node, found) for top in nodes_of(line.statement) for node in walk(top)
    )


def _documented(before: Line, written: Line, *, telling: bool, deadline: float) -> ExpressionSlip | RelationSlip | None:
    """The first slip of the catalogue that turns the line before into the written one."""
    try:
        for slip in relation_slips(before.statement, written.statement):
            if slip.telling or not telling:
                return slip
        for link in _links(before, written):
            for found in expression_slips(link.old, value_of(link.new), telling=telling, deadline=deadline):
                if found.kind == "factor-pair" and not isinstance(bare(link.new), Product | Power):
                    continue
                return found
    except (TooLarge, RecursionError):
        return None
    return None


def _anew(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """The whole statement written anew: as its roots, or as the line before has it."""
    if not isinstance(written.statement, Relation | Alternatives):
        return
    span = written.statement.span
    known = roots_of(before.statement)
    texts = [write_value(root, style) for root in known[1]] if known is not None else []
    if known is not None and texts and all(texts):
        text = " \\text{ or } ".join(f"{known[0]}={text}" for text in texts)
        yield Proposal(5.0, "other", span, text, f"the line before gives {text}", (Edit(span, text),))
    start, end = before.statement.span
    text = tight(before.text[start:end]).lstrip("= ")
    yield Proposal(6.0, "other", span, text, f"the line before is {text}", (Edit(span, text),))


def _branches(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    match before.statement, written.statement:
        case (Relation() | Alternatives(), Relation() | Alternatives()):
            yield from alternative_proposals(before, written, style)
        case _:
            return
