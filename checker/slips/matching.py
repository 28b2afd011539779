"""Partial products of the line before, matched one to one with the terms of the written line."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction as Rational
from itertools import product as pairs_of

from checker.slips.leaves import Edit, Leaf, Place
from checker.slips.partials import Partial
from checker.slips.proposals import Proposal
from checker.slips.sentences import collected, made, shown, sign_reason
from checker.slips.values import Monomial, Value, add, divide, negate, scale, subtract, total
from checker.slips.writing import Style, signed, unsigned, write_value

__all__ = ["Matching"]

SIDES = ("left", "right")
ONES: tuple[Value, ...] = ({(): Rational(1)}, {(): Rational(-1)})
MULTIPLIED = ("product", "square", "middle", "scaled")


def _flow(value: Value, side: int) -> Value:
    """What a value on one side adds to left minus right."""
    return negate(value) if side else value


@dataclass(frozen=True, slots=True)
class Matching:
    """One reading of a step: these partials should have become these terms.

    Args:
        parts: the partials of the line before, scaled if the whole equation was.
        leaves: the terms of the written line.
        places: the sums that terms can be added to.
        line: the written line.
        style: how numbers are written.
        relation: whether there are two sides, between which terms can move.
        solving: whether the line is an equation, so that a lone letter is likely meant as it stands.
    """

    parts: tuple[Partial, ...]
    leaves: tuple[Leaf, ...]
    places: tuple[Place, ...]
    line: str
    style: Style
    relation: bool
    solving: bool = False

    def proposals(self) -> Iterator[Proposal]:
        """Every change of one term, and where none is enough of two, that makes both lines agree."""
        gap = self.gap()
        if not gap or len(gap) > 8:
            return
        yield from self._one_term(gap)
        yield from self._missing(gap)
        if self.relation:
            yield from self._one_side(gap)
        if len(gap) == 1:
            yield from self._two_alike(next(iter(gap)))
        if len(gap) == 2:
            yield from self._two_terms(gap)

    def gap(self) -> Value:
        """What the written line lacks: the partials less the terms written."""
        wanted = total(_flow(part.value, part.side) for part in self.parts)
        return subtract(wanted, total(_flow(leaf.value, leaf.side) for leaf in self.leaves))

    def matched(self) -> int:
        """How many terms stand as a partial gives them."""
        return len(self.leaves) - len(self._unmatched(None)[1])

    def _unmatched(self, blamed: Leaf | None) -> tuple[list[Partial], list[Leaf]]:
        """The partials and terms left when equal ones are paired, the blamed term kept out."""
        rest = list(self.parts)
        odd: list[Leaf] = []
        for leaf in self.leaves:
            if leaf is blamed:
                continue
            flow = _flow(leaf.value, leaf.side)
            equal = [part for part in rest if _flow(part.value, part.side) == flow]
            if equal:
                same_side = [part for part in equal if part.side == leaf.side]
                rest.remove((same_side or equal)[0])
            else:
                odd.append(leaf)
        return rest, odd

    def _one_term(self, gap: Value) -> Iterator[Proposal]:
        for leaf in self.leaves:
            if leaf.value and (leaf.key is None or (leaf.key not in gap and len(self.leaves) > 1)):
                continue
            needed = add(leaf.value, _flow(gap, leaf.side))
            if len(needed) > 4:
                continue
            rounded = self._rounded_sign(leaf, needed)
            if rounded is not None:
                yield rounded
            found = self._explained(leaf, needed)
            if found is not None:
                yield found

    def _rounded_sign(self, leaf: Leaf, needed: Value) -> Proposal | None:
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
        exact = shown(divide(needed, leaf.multiplier), self.style)
        because = f"{exact} is {'negative' if text.startswith('-') else 'positive'}"
        return Proposal(0.9, "sign-product", leaf.span, text, because, (Edit(leaf.span, text),))

    def _is_collected(self) -> bool:
        """Whether like terms are collected all over the written line."""
        keys = [leaf.key for leaf in self.leaves if leaf.key is not None]
        return self.relation or len(keys) == len(set(keys))

    def _edit(self, leaf: Leaf, needed: Value) -> tuple[Edit, str] | None:
        text = leaf.writing(needed, self.style)
        if text is None:
            return None
        if text:
            return Edit(leaf.span, text), text
        start, end = leaf.span
        if leaf.place.span == leaf.span or not any(
            other is not leaf and other.place.span == leaf.place.span for other in self.leaves
        ):
            return Edit(leaf.span, "0"), "0"
        if leaf.first and self.line[end:end + 1] == "+":
            end += 1
        return Edit((start, end), ""), "0"

    def _proposal(self, cost: float, kind: str, leaf: Leaf, needed: Value, because: str) -> Proposal | None:
        edit = self._edit(leaf, needed)
        if edit is None:
            return None
        if self.solving and self._is_lone_letter(leaf):
            cost += 0.5
        return Proposal(cost, kind, leaf.span, edit[1], because, (edit[0],))

    def _is_lone_letter(self, leaf: Leaf) -> bool:
        return leaf.key != () and abs(leaf.coefficient) == 1 and leaf.place.span == leaf.span

    def _explained(self, leaf: Leaf, needed: Value) -> Proposal | None:
        rest, odd = self._unmatched(leaf)
        stands = any(_flow(part.value, part.side) == _flow(leaf.value, leaf.side) for part in rest)
        doubt = 0.35 if stands else 0.0
        place = self.leaves.index(leaf)
        if len(self.parts) == len(self.leaves) and self.parts[place].value == leaf.value:
            doubt += 0.1
        if not needed:
            because = f"nothing in the line before gives {unsigned(leaf.text)}"
            return self._proposal(1.6 + doubt + len(odd), "extra-term", leaf, needed, because)
        if len(needed) > 1:
            return self._unlike(leaf, needed, odd)
        key = next(iter(needed))
        likes = [part for part in rest if part.key == key]
        flow = _flow(needed, leaf.side)
        chosen = [part for part in likes if _flow(part.value, part.side) == flow]
        if len(likes) > 1 and total(_flow(part.value, part.side) for part in likes) == flow:
            alone = sum(other.key == leaf.key for other in self.leaves) == 1 and self._is_collected()
            return self._collected(leaf, needed, likes, 0.0 if alone else doubt)
        if chosen:
            return self._single(leaf, needed, chosen[0], doubt + 0.3 * (len(likes) - 1))
        beside = [other for other in odd if other.key == key and other.side == leaf.side]
        if beside and len(likes) == 1:
            values = [*(other.value for other in beside), needed]
            because = f"together they make what the line before has: {collected(values, total(values), self.style)}"
            cost = 1.25 if leaf.value == negate(needed) else 1.5
            return self._proposal(cost + doubt, "arithmetic", leaf, needed, because)
        because = f"with the other terms as they stand, this is {self._own(leaf, needed)}"
        lost = sum(part.key == key for part in rest)
        cost = 2.8 if lost > 1 and any(other.key == key for other in odd) else 2.2
        return self._proposal(cost + doubt, "arithmetic", leaf, needed, because)

    def _own(self, leaf: Leaf, needed: Value) -> str:
        return shown(divide(needed, leaf.multiplier), self.style)

    def _unlike(self, leaf: Leaf, needed: Value, odd: Sequence[Leaf]) -> Proposal | None:
        mine = [part for part in self.parts if part.key in needed]
        if len(mine) < len(needed):
            return self._proposal(3.2, "other", leaf, needed, f"this is {self._own(leaf, needed)}")
        names = " and ".join(unsigned(shown(part.value, self.style)) for part in mine[:3])
        because = f"{names} are not like terms, so they stay apart"
        cost = (3.5 if self.relation else 1.7) + 0.4 * len(odd) + (0.0 if leaf.multiplier in ONES else 2.0)
        return self._proposal(cost, "unlike-terms", leaf, needed, because)

    def _single(self, leaf: Leaf, needed: Value, part: Partial, doubt: float) -> Proposal | None:
        """The term comes from one partial."""
        moved = self.relation and part.side != leaf.side
        right = self._own(leaf, needed)
        reason = made(part, self.style)
        if moved:
            reason = f"{self._before(part)} on the {SIDES[part.side]} becomes {right} on the {SIDES[leaf.side]}"
        same_key = leaf.key in needed
        as_factor = any(unsigned(leaf.text).strip() == unsigned(factor).strip() for factor in part.factors)
        if part.origin == "carried" and leaf.multiplier not in ONES and not moved:
            return self._factored_out(leaf, needed, part, doubt)
        if leaf.value == negate(needed):
            if moved:
                return self._proposal(1.0 + doubt, "sign-moved", leaf, needed, reason)
            if part.origin == "bracket":
                return self._proposal(1.0 + doubt, "sign-bracket", leaf, needed, reason)
            if part.origin in MULTIPLIED:
                reason += f": {self._sign_words(part)}"
                return self._proposal(1.0 + doubt, "sign-product", leaf, needed, reason)
            if part.origin in ("quotient", "power", "raised"):
                return self._proposal(1.0 + doubt, "sign-product", leaf, needed, reason)
            return self._proposal(1.5 + doubt, "copied", leaf, needed, f"the line before has {right}")
        if as_factor and part.origin == "scaled" and leaf.place.span != leaf.span and not moved:
            words = f"every term is multiplied: {reason}"
            return self._proposal(1.0 + doubt, "multiply-each-term", leaf, needed, words)
        if as_factor and part.origin == "scaled" and leaf.place.span == leaf.span and not moved:
            words = f"the {SIDES[leaf.side]} was not multiplied: {reason}"
            return self._proposal(1.0 + doubt, "one-side-only", leaf, needed, words)
        is_product = part.origin in ("product", "middle") and len(part.factors) == 2
        if is_product and as_factor and not self._same_letter(part):
            reason = f"each term in the bracket is multiplied: {reason}"
            return self._proposal(1.0 + doubt, "multiply-each-term", leaf, needed, reason)
        if part.origin == "quotient" and as_factor:
            reason = f"every term is divided: {reason}"
            return self._proposal(1.0 + doubt, "divide-each-term", leaf, needed, reason)
        if part.origin == "middle" and same_key and leaf.coefficient * 2 == next(iter(needed.values())):
            return self._proposal(1.0 + doubt, "square-of-sum", leaf, needed, f"the product comes twice: {reason}")
        if part.origin in ("raised", "power", "square"):
            return self._proposal(1.2 + doubt, "power-law", leaf, needed, reason)
        if part.origin in ("product", "middle", "scaled"):
            kind, cost = ("product", 1.3) if same_key else ("power-law", 1.2)
            return self._proposal(cost + doubt, kind, leaf, needed, reason)
        if part.origin == "quotient":
            kind = "arithmetic" if same_key else "power-law"
            return self._proposal(1.3 + doubt, kind, leaf, needed, reason)
        if not same_key and leaf.key == ():
            reason = f"the letter is missing: the line before has {right}"
            return self._proposal(1.4 + doubt, "letter-lost", leaf, needed, reason)
        if moved:
            return self._proposal(1.4 + doubt, "arithmetic", leaf, needed, reason)
        return self._proposal(1.5 + doubt, "copied", leaf, needed, f"the line before has {right}")

    def _factored_out(self, leaf: Leaf, needed: Value, part: Partial, doubt: float) -> Proposal | None:
        """The term stands in a bracket that a factor was taken out of."""
        outside = shown(leaf.multiplier, self.style)
        reason = f"{self._before(part)} divided by {outside} is {self._own(leaf, needed)}"
        own = divide(leaf.value, leaf.multiplier)
        if leaf.value == negate(needed):
            return self._proposal(1.0 + doubt, "sign-product", leaf, needed, reason)
        if list(own.values()) == [part.coefficient]:
            reason = f"every term is divided: {reason}"
            return self._proposal(1.0 + doubt, "divide-each-term", leaf, needed, reason)
        return self._proposal(1.4 + doubt, "arithmetic", leaf, needed, reason)

    def _same_letter(self, part: Partial) -> bool:
        """Whether a power above 1 comes from the same letter in both factors."""
        return any(exponent > 1 and all(atom in factor for factor in part.factors) for atom, exponent in part.key)

    def _before(self, part: Partial) -> str:
        return shown(part.value, self.style)

    def _sign_words(self, part: Partial) -> str:
        if part.origin == "square":
            return "a square is not negative" if part.coefficient > 0 else "the minus stands before the square"
        if part.factors[0] == "-":
            return "the minus before the bracket turns each sign"
        return sign_reason(part.factors)

    def _collected(self, leaf: Leaf, needed: Value, likes: Sequence[Partial], doubt: float) -> Proposal | None:
        """The term collects several partials."""
        turned = [_flow(part.value, (part.side + leaf.side) % 2) for part in likes]
        ordered = [value for part, value in zip(likes, turned, strict=True) if part.side == leaf.side]
        ordered += [value for part, value in zip(likes, turned, strict=True) if part.side != leaf.side]
        own = [divide(value, leaf.multiplier) for value in ordered]
        whole = collected(own, divide(needed, leaf.multiplier), self.style)
        products = [part for part in likes if part.origin != "carried"]
        if leaf.key not in needed:
            kind = "power-law" if products and leaf.key != () else "like-terms"
            words = "adding like terms keeps the letters and their powers: "
            return self._proposal(1.4 + doubt, kind, leaf, needed, words + whole)
        if leaf.value == negate(needed):
            return self._proposal(1.2 + doubt, "like-terms", leaf, needed, whole)
        for part, value in sorted(zip(likes, turned, strict=True), key=lambda pair: _flip_order(pair[0], leaf)):
            if leaf.value != subtract(needed, scale(value, Rational(2))):
                continue
            if self.relation and part.side != leaf.side:
                moved = signed(shown(value, self.style))
                words = f"{self._before(part)} on the {SIDES[part.side]} becomes {moved} on the {SIDES[leaf.side]}"
                return self._proposal(1.05 + doubt, "sign-moved", leaf, needed, f"{words}, and {whole}")
            if part.origin == "bracket":
                words = made(part, self.style)
                return self._proposal(1.1 + doubt, "sign-bracket", leaf, needed, f"{words}, so {whole}")
            if part.origin != "carried":
                words = f"{made(part, self.style)}, so {whole}"
                return self._proposal(1.1 + doubt, "sign-product", leaf, needed, words)
            return self._proposal(1.2 + doubt, "like-terms", leaf, needed, whole)
        for part, value in zip(likes, turned, strict=True):
            if leaf.value == subtract(needed, value):
                kind = "dropped-term" if part.origin in MULTIPLIED else "like-terms"
                words = f"{made(part, self.style)} and belongs in it: " if products else ""
                return self._proposal((1.45 if products else 1.35) + doubt, kind, leaf, needed, words + whole)
        return self._proposal(1.4 + doubt, "like-terms", leaf, needed, whole)

    def _missing(self, gap: Value) -> Iterator[Proposal]:
        """Terms that were left out, put where their neighbours stand."""
        rest, odd = self._unmatched(None)
        lost: list[Partial] = []
        for key, number in gap.items():
            likes = [part for part in rest if part.key == key]
            flow = total(_flow(part.value, part.side) for part in likes)
            if any(leaf.key == key for leaf in odd) or flow != {key: number}:
                return
            lost += likes
        sides = {part.side for part in lost}
        if len(sides) != 1:
            return
        side, = sides
        place, at = self._slot(lost[0], side)
        own = divide(_flow(gap, side), place.multiplier)
        text = write_value(own, self.style)
        if text is None:
            return
        text = signed(text)
        reasons = "; ".join(made(part, self.style) for part in lost[:4])
        origins = {part.origin for part in lost}
        if origins <= {"middle", "power"}:
            kind, cost, words = "square-of-sum", 1.0, "a power does not spread over a sum: "
        elif "carried" in origins:
            kind, cost, words = "dropped-term", 1.5, ""
        else:
            kind, cost, words = "dropped-term", 1.4, ""
        empty = self.line[place.span[0]:place.span[1]].strip() == "0"
        if empty:
            yield Proposal(cost, kind, place.span, unsigned(text), words + reasons, (Edit(place.span, unsigned(text)),))
            return
        yield Proposal(cost + 0.2 * (len(gap) - 1), kind, (at, at), text, words + reasons, (Edit((at, at), text),))

    def _slot(self, part: Partial, side: int) -> tuple[Place, int]:
        """The sum that lacks the term: where the partials next to it stand; else the whole side."""
        own = [place for place in self.places if place.side == side]
        index = self.parts.index(part)
        for step in (-1, 1, -2, 2):
            if 0 <= index + step < len(self.parts):
                value = self.parts[index + step].value
                for leaf in self.leaves:
                    if leaf.side == side and leaf.value == value:
                        return leaf.place, leaf.place.span[1]
        deepest = own[0]
        leaves = [leaf for leaf in self.leaves if leaf.side == side]
        if leaves and all(leaf.place.span == leaves[0].place.span for leaf in leaves):
            deepest = leaves[0].place
        return deepest, deepest.span[1]

    def _one_side(self, gap: Value) -> Iterator[Proposal]:
        """Something was added, subtracted, multiplied or divided on one side only."""
        if len(gap) != 1:
            return
        rest, odd = self._unmatched(None)
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
            if not change or _flow(change, side) != negate(gap):
                continue
            if any(leaf.side == side and leaf.key == key and leaf not in here_new for leaf in self.leaves):
                continue
            done = f"{'added' if next(iter(change.values())) > 0 else 'taken'}"
            amount = shown({key: abs(next(iter(change.values())))}, self.style)
            words = f"{amount} was {done} on the {SIDES[side]} only; the {SIDES[other]} needs the same"
            targets = [leaf for leaf in self.leaves if leaf.side == other and leaf.key == key]
            both = bool(here_lost and here_new)
            for leaf in targets:
                needed = add(leaf.value, change)
                cost = 1.15 if not both else 1.3 if not needed else 2.0
                found = self._proposal(cost, "one-side-only", leaf, needed, words)
                if found is not None:
                    yield found
            if not targets and not both:
                yield from self._put(other, change, words)

    def _put(self, side: int, change: Value, words: str) -> Iterator[Proposal]:
        place = next((place for place in self.places if place.side == side), None)
        text = write_value(change, self.style)
        if place is None or text is None:
            return
        if self.line[place.span[0]:place.span[1]].strip() == "0":
            yield Proposal(1.2, "one-side-only", place.span, text, words, (Edit(place.span, text),))
            return
        at = place.span[1]
        yield Proposal(1.25, "one-side-only", (at, at), signed(text), words, (Edit((at, at), signed(text)),))

    def _two_terms(self, gap: Value) -> Iterator[Proposal]:
        """Two terms wrong in the same step; the first is the place, and the sentence tells both."""
        choices: list[list[Proposal]] = []
        for key, number in gap.items():
            part = self
            mine = {key: number}
            found = list(part._one_term(mine)) + list(part._missing(mine))
            found = [proposal for proposal in found if proposal.cost < 2]
            choices.append(sorted(found, key=lambda proposal: proposal.cost)[:3])
        for first, second in pairs_of(*choices):
            if first.span != second.span:
                yield self._both(first, second, 1.2)

    def _two_alike(self, key: Monomial) -> Iterator[Proposal]:
        """Two like terms, neither collected, both wrong."""
        rest, odd = self._unmatched(None)
        parts = [part for part in rest if part.key == key]
        leaves = [leaf for leaf in odd if leaf.key == key]
        if len(parts) != 2 or len(leaves) != 2:
            return
        for ordered in (parts, parts[::-1]):
            found = [
                self._single(leaf, _flow(_flow(part.value, part.side), leaf.side), part, 0.0)
                for leaf, part in zip(leaves, ordered, strict=True)
            ]
            if found[0] is not None and found[1] is not None:
                yield self._both(found[0], found[1], 0.3 if ordered is parts else 0.4)

    def _both(self, first: Proposal, second: Proposal, extra: float) -> Proposal:
        """Two proposals at once, told at the place that comes first."""
        lead, other = sorted((first, second), key=lambda proposal: proposal.span)
        where = self.line[other.span[0]:other.span[1]] or "a missing term"
        because = f"{lead.because}; also {where} should be {other.should_be}: {other.because}"
        cost = extra + first.cost + second.cost
        return Proposal(cost, lead.kind, lead.span, lead.should_be, because, (*lead.edits, *other.edits))


def _flip_order(part: Partial, leaf: Leaf) -> tuple[bool, bool, bool]:
    """Which partial is the likelier to have its sign taken wrongly."""
    negative = any(factor.startswith("-") for factor in part.factors)
    return part.side == leaf.side, part.origin == "carried", not negative


