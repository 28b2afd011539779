"""Partial products of the line before, matched one to one with the terms of the written line."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from itertools import product as pairs_of

from checker.slips.explanations import SIDES, explained, from_one
from checker.slips.leaves import Edit, Leaf, Place
from checker.slips.partials import Partial
from checker.slips.proposals import Proposal
from checker.slips.reading import Reading, flow_of
from checker.slips.sentences import made, shown
from checker.slips.values import Monomial, Value, add, divide, negate, subtract, total
from checker.slips.writing import signed, unsigned, write_value
from checker.syntax.latex import tight

__all__ = ["matching_proposals"]

MOST_SIGNS = 6
# a rule that, when it is not known, is broken at every place of a step
THROUGHOUT = frozenset({"sign-moved", "sign-product", "sign-bracket", "multiply-each-term", "divide-each-term"})


def matching_proposals(reading: Reading) -> Iterator[Proposal]:
    """Every change of one term, and where none is enough of two, that makes both lines agree."""
    gap = reading.gap()
    if not gap or len(gap) > 8:
        return
    yield from _signs(reading)
    yield from _signs_collected(reading, gap)
    yield from _one_term(reading, gap)
    yield from _missing(reading, gap)
    if reading.relation:
        yield from _one_side(reading, gap)
    if len(gap) == 1:
        yield from _two_alike(reading, next(iter(gap)))
    if len(gap) == 2:
        yield from _two_terms(reading, gap)


def _signs(reading: Reading) -> Iterator[Proposal]:
    """Two terms or more that are right but for their signs, as when only the first term of a bracket was turned."""
    rest, odd = reading.unmatched(None)
    if not 2 <= len(odd) <= MOST_SIGNS or len(rest) < len(odd):
        return
    found: list[Proposal] = []
    for leaf in odd:
        needed = negate(leaf.value)
        likes = [part for part in rest if part.side == leaf.side and part.key == leaf.key]
        exact = next(([part] for part in likes if part.value == needed), likes)
        if total(part.value for part in exact) != needed:
            return
        for part in exact:
            rest.remove(part)
        if len(exact) == 1:
            one = from_one(reading, leaf, needed, exact[0], 0.0)
        else:
            turned = f"the minus in front turns {shown(leaf.value, reading.style)} into {shown(needed, reading.style)}"
            one = reading.proposal(1.0, "sign-bracket", leaf, needed, turned)
        if one is None or one.kind not in ("sign-bracket", "sign-product"):
            return
        found.append(one)
    if rest:
        return
    yield _together(reading, found)


def _together(reading: Reading, found: list[Proposal]) -> Proposal:
    """Several signs as one proposal: where the terms stand side by side the place is all of them, else the first."""
    found.sort(key=lambda one: one.span)
    first = found[0]
    texts = [(reading.line[slice(*one.span)].strip(), one.should_be) for one in found]
    told = " and ".join(f"{tight(old)} should be {new}" for old, new in texts[1:])
    span, should_be = first.span, first.should_be
    if all(not reading.line[a.span[1]:b.span[0]].strip() for a, b in pairwise(found)):
        span, should_be = (first.span[0], found[-1].span[1]), "".join(new for _, new in texts)
    edits = tuple(edit for one in found for edit in one.edits)
    return Proposal(0.95 + 0.02 * len(found), first.kind, span, should_be, f"{first.because}; likewise {told}", edits)


def _signs_collected(reading: Reading, gap: Value) -> Iterator[Proposal]:
    """Two or more collected terms with the other sign, as when a product after a minus was collected first."""
    if reading.relation or not 2 <= len(gap) <= MOST_SIGNS:
        return
    found: list[Proposal] = []
    for key in gap:
        likes = [part for part in reading.parts if part.key == key]
        leaves = [leaf for leaf in reading.leaves if leaf.key == key]
        for part in [part for part in likes if part.origin == "carried"]:
            same = next((leaf for leaf in leaves if leaf.value == part.value), None)
            if same is not None:
                likes.remove(part)
                leaves.remove(same)
        needed = total(part.value for part in likes)
        if len(leaves) != 1 or needed != negate(leaves[0].value):
            return
        leaf = leaves[0]
        turned = f"the minus in front turns {shown(leaf.value, reading.style)} into {shown(needed, reading.style)}"
        one = reading.proposal(1.0, "sign-bracket", leaf, needed, turned)
        if one is None:
            return
        found.append(one)
    if len(found) != len(gap) or not any(part.factors[0].startswith("-") for part in reading.parts):
        return
    yield _together(reading, found)


def _one_term(reading: Reading, gap: Value) -> Iterator[Proposal]:
    for leaf in reading.leaves:
        if leaf.value and (leaf.key is None or (leaf.key not in gap and len(reading.leaves) > 1)):
            continue
        needed = add(leaf.value, flow_of(gap, leaf.side))
        if len(needed) > (1 if reading.relation and len(gap) > 1 else 4):
            continue
        rounded = _rounded_sign(reading, leaf, needed)
        if rounded is not None:
            yield rounded
        found = explained(reading, leaf, needed)
        if found is not None:
            yield found


def _rounded_sign(reading: Reading, leaf: Leaf, needed: Value) -> Proposal | None:
    """A rounded decimal whose digits are right and whose sign is not."""
    if "." not in leaf.text or len(needed) != 1 or leaf.key not in needed:
        return None
    right = next(iter(needed.values()))
    if abs(leaf.coefficient + right) > abs(right) / 50 or leaf.coefficient == -right:
        return None
    digits = leaf.text.lstrip("+-")
    text = signed(digits) if leaf.text.startswith("-") and not leaf.first else digits
    if not leaf.text.startswith("-"):
        text = "-" + digits
    exact = shown(divide(needed, leaf.multiplier), reading.style)
    because = f"{exact} is {'negative' if text.startswith('-') else 'positive'}"
    return Proposal(0.9, "sign-product", leaf.span, text, because, (Edit(leaf.span, text),))


def _missing(reading: Reading, gap: Value) -> Iterator[Proposal]:
    """Terms that were left out, put where their neighbours stand."""
    rest, odd = reading.unmatched(None)
    lost: list[Partial] = []
    for key, number in gap.items():
        likes = [part for part in rest if part.key == key]
        flow = total(flow_of(part.value, part.side) for part in likes)
        if any(leaf.key == key for leaf in odd) or flow != {key: number}:
            return
        lost += likes
    sides = {part.side for part in lost}
    if len(sides) != 1:
        return
    side, = sides
    place, at = _slot(reading, lost[0], side)
    own = divide(flow_of(gap, side), place.multiplier)
    text = write_value(own, reading.style)
    if text is None:
        return
    text = signed(text)
    reasons = "; ".join(made(part, reading.style) for part in lost[:4])
    origins = {part.origin for part in lost}
    if origins == {"power"} and len({part.factors for part in lost}) == 1:
        base, exponent = lost[0].factors
        opened = total(part.value for part in reading.parts if part.factors == lost[0].factors)
        reasons = f"multiplied out, {base}^{exponent} is {shown(opened, reading.style)}"
    if origins <= {"middle", "power"}:
        kind, cost, words = "square-of-sum", 1.0, "a power does not spread over a sum: "
    elif "carried" in origins:
        kind, cost, words = "dropped-term", 1.5, ""
    else:
        kind, cost, words = "dropped-term", 1.4, ""
    empty = reading.line[place.span[0]:place.span[1]].strip() == "0"
    if empty:
        yield Proposal(cost, kind, place.span, unsigned(text), words + reasons, (Edit(place.span, unsigned(text)),))
        return
    if reading.solving and any(leaf.side == side and reading.is_lone_letter(leaf) for leaf in reading.leaves):
        cost += 0.5
    yield Proposal(cost + 0.2 * (len(gap) - 1), kind, (at, at), text, words + reasons, (Edit((at, at), text),))


def _slot(reading: Reading, part: Partial, side: int) -> tuple[Place, int]:
    """The sum that lacks the term: where the partials next to it stand; else the whole side."""
    own = [place for place in reading.places if place.side == side]
    index = reading.parts.index(part)
    for step in (-1, 1, -2, 2):
        if 0 <= index + step < len(reading.parts):
            value = reading.parts[index + step].value
            for leaf in reading.leaves:
                if leaf.side == side and leaf.value == value:
                    return leaf.place, leaf.place.span[1]
    deepest = own[0]
    leaves = [leaf for leaf in reading.leaves if leaf.side == side]
    if leaves and all(leaf.place.span == leaves[0].place.span for leaf in leaves):
        deepest = leaves[0].place
    return deepest, deepest.span[1]


def _one_side(reading: Reading, gap: Value) -> Iterator[Proposal]:
    """Something was added, subtracted, multiplied or divided on one side only."""
    if len(gap) != 1:
        return
    rest, odd = reading.unmatched(None)
    key = next(iter(gap))
    lost = [part for part in rest if part.key == key and part.origin == "carried"]
    new = [leaf for leaf in odd if leaf.key == key]
    for side in (0, 1):
        other = 1 - side
        here_lost = [part for part in lost if part.side == side]
        here_new = [leaf for leaf in new if leaf.side == side]
        if len(lost) != len(here_lost) or len(new) != len(here_new) or not (lost or new):
            continue
        if len(here_lost) > 1:
            continue
        before = total(part.value for part in here_lost)
        after = total(leaf.value for leaf in here_new)
        change = subtract(after, before)
        if not change or flow_of(change, side) != negate(gap):
            continue
        if not any(part.side == side for part in reading.parts):
            continue
        if any(leaf.side == side and leaf.key == key and leaf not in here_new for leaf in reading.leaves):
            continue
        done = f"{'added' if next(iter(change.values())) > 0 else 'taken'}"
        amount = shown({key: abs(next(iter(change.values())))}, reading.style)
        words = f"{amount} was {done} on the {SIDES[side]} only; the {SIDES[other]} needs the same"
        targets = [leaf for leaf in reading.leaves if leaf.side == other and leaf.key == key]
        both = bool(here_lost and here_new)
        for leaf in targets:
            needed = add(leaf.value, change)
            cost = 1.15 if not both else 1.3 if not needed else 2.0
            found = reading.proposal(cost, "one-side-only", leaf, needed, words)
            if found is not None:
                yield found
        if not targets and not both:
            yield from _put(reading, other, change, words)


def _put(reading: Reading, side: int, change: Value, words: str) -> Iterator[Proposal]:
    place = next((place for place in reading.places if place.side == side), None)
    text = write_value(change, reading.style)
    if place is None or text is None:
        return
    if reading.line[place.span[0]:place.span[1]].strip() == "0":
        yield Proposal(1.2, "one-side-only", place.span, text, words, (Edit(place.span, text),))
        return
    at = place.span[1]
    yield Proposal(1.25, "one-side-only", (at, at), signed(text), words, (Edit((at, at), signed(text)),))


def _two_terms(reading: Reading, gap: Value) -> Iterator[Proposal]:
    """Two terms wrong in the same step; the first is the place, and the sentence tells both."""
    choices: list[list[Proposal]] = []
    for key, number in gap.items():
        mine = {key: number}
        found = list(_one_term(reading, mine)) + list(_missing(reading, mine))
        found = [proposal for proposal in found if proposal.cost < 2]
        choices.append(sorted(found, key=lambda proposal: proposal.cost)[:3])
    for first, second in pairs_of(*choices):
        if first.span != second.span:
            yield _both(reading, first, second, 0.9)


def _two_alike(reading: Reading, key: Monomial) -> Iterator[Proposal]:
    """Two like terms, neither collected, both wrong."""
    rest, odd = reading.unmatched(None)
    parts = [part for part in rest if part.key == key]
    leaves = [leaf for leaf in odd if leaf.key == key]
    if len(parts) != 2 or len(leaves) != 2:
        return
    for ordered in (parts, parts[::-1]):
        found = [
            from_one(reading, leaf, flow_of(flow_of(part.value, part.side), leaf.side), part, 0.0)
            for leaf, part in zip(leaves, ordered, strict=True)
        ]
        if found[0] is not None and found[1] is not None:
            yield _both(reading, found[0], found[1], 0.3 if ordered is parts else 0.4)


def _both(reading: Reading, first: Proposal, second: Proposal, extra: float) -> Proposal:
    """Two proposals at once, told at the place that comes first."""
    lead, other = sorted((first, second), key=lambda proposal: proposal.span)
    where = tight(reading.line[other.span[0]:other.span[1]]) or "a missing term"
    because = f"{lead.because}; also {where} should be {other.should_be}: {other.because}"
    cost = extra + first.cost + second.cost
    if first.kind == second.kind and first.kind in THROUGHOUT:
        cost = lead.cost + 0.8
    return Proposal(cost, lead.kind, lead.span, lead.should_be, because, (*lead.edits, *other.edits))
