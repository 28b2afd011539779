"""Where proposals come from: terms matched, relations scaled, roots compared, documented slips, small repairs."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace

from checker.slips.alternatives import alternative_proposals, roots_of
from checker.slips.catalogue import expression_slips
from checker.slips.contexts import narrowed
from checker.slips.explanations import SIDES
from checker.slips.factor_pairs import with_factor_reason
from checker.slips.frames import Frame
from checker.slips.leaves import Edit, leaves_of
from checker.slips.links import links_of
from checker.slips.matching import matching_proposals
from checker.slips.partials import partials_of
from checker.slips.placing import narrowest, placements
from checker.slips.proposals import Proposal
from checker.slips.reading import Reading
from checker.slips.relations import relation_proposals
from checker.slips.repair import repairs, whole_side
from checker.slips.right_forms import right_edits
from checker.slips.trials import trials
from checker.slips.values import TooLarge, Value, as_constant, subtract, symbol, term_value, value_of
from checker.slips.writing import Style, style_of, write_value
from checker.syntax import tight
from checker.syntax.shapes import bare
from checker.syntax.tree import Alternatives, Line, Node, Power, Product, Relation, Root, Sum, Symbol, walk

__all__ = [
    "Proposer", "anew", "bars", "branches", "documented_in_place", "gathered", "linked", "related", "small_repairs",
]

SHORT = 40  # characters of a part of a line that is named in a sentence
Proposer = Callable[[Line, Line, Style, float], Iterator[Proposal]]


def gathered(sources: Sequence[Proposer], before: Line, written: Line, deadline: float) -> list[Proposal]:
    """The proposals of several sources, the likeliest first."""
    style = style_of(before.text, written.text)
    found: list[Proposal] = []
    for source in sources:
        try:
            found.extend(source(before, written, style, deadline))
        except (TooLarge, RecursionError, ZeroDivisionError, OverflowError):
            continue
    return sorted(found, key=lambda proposal: proposal.cost)


def documented_in_place(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """Documented slips that rewrite a whole part of the line before, with the part of the written line it became."""
    for link in links_of(before, written):
        for depth, place in enumerate(narrowest(link.old, link.new, link.text)):
            rule = next((
                rule for rule in expression_slips(place.old, value_of(place.new), telling=True, deadline=deadline)
                if rule.kind != "factor-pair" or isinstance(bare(place.new), Product | Power)
            ), None)
            if rule is None:
                continue
            if rule.whole:
                for rank, edit in enumerate(right_edits(rule, place, style)):
                    cost = 1.0 + 0.2 * depth + 0.01 * rank
                    right = edit.text.strip("+")
                    is_whole = edit.span == place.span and right != place.source and len(place.source) <= SHORT
                    because = f"{rule.because}: {place.source} is {right}" if is_whole else rule.because
                    yield Proposal(cost, rule.kind, edit.span, edit.text, because, (edit, *link.tail))
            break


def linked(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    solving = isinstance(written.statement, Relation)
    for link in links_of(before, written):
        pairs = narrowed(link.old, link.new)
        for depth, (first, second) in enumerate(pairs):
            parts = partials_of(first, link.text)
            leaves, places = leaves_of(second, written.text)
            reading = Reading(tuple(parts), tuple(leaves), tuple(places), written.text, style, False, solving)
            for proposal in matching_proposals(reading):
                yield replace(proposal, cost=proposal.cost + 0.8 * depth, edits=(*proposal.edits, *link.tail))


def related(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
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
    for link in links_of(before, written):
        found = placements(link.old, link.new, link.text)
        for place in found if len(found) == 1 else (found[0], found[-1]):
            frame = Frame(written.text, (place.new,), value_of(place.old), style, None, deadline)
            yield frame, place.source, link.tail


def bars(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """Lines that differ in sign only where a root of a square was taken without bars."""
    because = "the root of a square is never negative, so it is the absolute value"
    for link in links_of(before, written):
        if value_of(link.old) != value_of(link.new):
            continue
        roots = [value_of(node) for node in walk(link.old) if isinstance(node, Root)]
        roots = [value for value in roots if as_constant(value) is None]
        for node in walk(link.new):
            if value_of(node) in roots:
                text = f"\\lvert {written.text[slice(*node.span)].strip()} \\rvert"
                yield Proposal(0.9, "root-of-square", node.span, text, because, (Edit(node.span, text), *link.tail))


def small_repairs(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    for frame, source, tail in _frames(before, written, style, deadline):
        for found in (_careful(repairs(frame)), trials(frame, source), whole_side(frame, source)):
            for proposal in found:
                told = proposal
                if proposal.because.startswith("with ") and frame.is_relation:
                    told = _with_both_sides(proposal, before, frame, style)
                if told.because.startswith("with ") and (not frame.is_relation or not value_of(frame.sides[1])):
                    told = with_factor_reason(told, frame.target, frame.sides[0], style)
                yield replace(told, edits=(*proposal.edits, *tail))
    yield from _root_repairs(before, written, style, deadline)


def _with_both_sides(proposal: Proposal, before: Line, frame: Frame, style: Style) -> Proposal:
    """A change on one side told by what was added on the other."""
    old = before.statement
    if not isinstance(old, Relation):
        return proposal
    for side, other in ((0, 1), (1, 0)):
        added = subtract(value_of(frame.sides[side]), value_of((old.left, old.right)[side]))
        start, end = frame.sides[other].span
        text = write_value(added, style)
        if len(added) == 1 and start <= proposal.span[0] and proposal.span[1] <= end and text is not None:
            done = f"{text.removeprefix('-')} was {'taken away' if text.startswith('-') else 'added'}"
            because = f"{done} on the {SIDES[side]}, so the same is done on the {SIDES[other]}"
            return replace(proposal, because=because)
    return proposal


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
        lead = _moved(_with_bottom(lead, target, written.text), old, written.text)
        if len(kept) == len(same):
            edits = tuple(edit for proposal in (lead, *kept) for edit in proposal.edits)
            yield replace(lead, edits=edits)


def _moved(proposal: Proposal, old: Relation, line: str) -> Proposal:
    """A term that kept its sign on its way to the other side, in a formula solved for one letter."""
    term = tight(line[slice(*proposal.span)]).lstrip("+-")
    parts = (value for side in (old.left, old.right) for value in side_values(side))
    known = {write_value({key: abs(number) for key, number in value.items()}) for value in parts if len(value) == 1}
    if proposal.kind != "sign-product" or term not in known or not term or not proposal.because.startswith("with this"):
        return proposal
    because = f"{term} changes sides, so its sign changes too"
    return replace(proposal, kind="sign-moved", because=because)


def side_values(side: Node) -> list[Value]:
    """The signed terms of a side."""
    inner = bare(side)
    return [term_value(term) for term in inner.terms] if isinstance(inner, Sum) else [value_of(inner)]


def _with_bottom(proposal: Proposal, target: Value, line: str) -> Proposal:
    """The bottom of the quadratic formula told as 2a."""
    twice = next((2 * n for key, n in target.items() if sum(e for _, e in key) == 2), None)
    edit = proposal.edits[0]
    before = line[:edit.span[0]].rstrip("{ ")
    if twice is None or edit.text != str(twice) or not before.endswith("}"):
        return proposal
    return replace(proposal, because=f"the bottom of the formula is 2a, and a is {twice / 2}, so it is {twice}")


def _careful(proposals: Iterable[Proposal]) -> Iterator[Proposal]:
    try:
        yield from proposals
    except (TooLarge, ZeroDivisionError):
        return


def anew(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    """The whole statement written anew: as its roots, or as the line before has it."""
    if not isinstance(written.statement, Relation | Alternatives):
        return
    span = written.statement.span
    known = roots_of(before.statement)
    texts = [write_value(root, style) for root in known[1]] if known is not None else []
    if known is not None and texts and all(texts):
        statement = written.statement
        if len(texts) == 1 and isinstance(statement, Relation) and value_of(statement.left) == symbol(known[0]):
            side, needed = statement.right.span, texts[0] or ""
            yield Proposal(4.5, "other", side, needed, f"the line before gives {needed}", (Edit(side, needed),))
        text = " \\text{ or } ".join(f"{known[0]}={text}" for text in texts)
        yield Proposal(5.0, "other", span, text, f"the line before gives {text}", (Edit(span, text),))
    start, end = before.statement.span
    text = tight(before.text[start:end]).lstrip("= ")
    yield Proposal(6.0, "other", span, text, f"the line before is {text}", (Edit(span, text),))


def branches(before: Line, written: Line, style: Style, deadline: float) -> Iterator[Proposal]:
    match before.statement, written.statement:
        case (Relation() | Alternatives(), Relation() | Alternatives()):
            yield from alternative_proposals(before, written, style)
        case _:
            return
