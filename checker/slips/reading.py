"""One reading of a step: partials that should have become the terms written, and what differs."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction as Rational

from checker.slips.leaves import Edit, Leaf, Place
from checker.slips.partials import Partial
from checker.slips.proposals import Proposal
from checker.slips.sentences import shown
from checker.slips.values import Value, divide, negate, subtract, total
from checker.slips.writing import Style

__all__ = ["ONES", "Reading", "flow_of"]


ONES: tuple[Value, ...] = ({(): Rational(1)}, {(): Rational(-1)})


def flow_of(value: Value, side: int) -> Value:
    """What a value on one side adds to left minus right."""
    return negate(value) if side else value


@dataclass(frozen=True, slots=True)
class Reading:
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

    def gap(self) -> Value:
        """What the written line lacks: the partials less the terms written."""
        wanted = total(flow_of(part.value, part.side) for part in self.parts)
        return subtract(wanted, total(flow_of(leaf.value, leaf.side) for leaf in self.leaves))

    def unmatched(self, blamed: Leaf | None) -> tuple[list[Partial], list[Leaf]]:
        """The partials and terms left when equal ones are paired, the blamed term kept out."""
        rest = list(enumerate(self.parts))
        odd: list[Leaf] = []
        for place, leaf in enumerate(self.leaves):
            if leaf is blamed:
                continue
            flow = flow_of(leaf.value, leaf.side)
            equal = [(at, part) for at, part in rest if flow_of(part.value, part.side) == flow]
            if equal:
                same_side = [(at, part) for at, part in equal if part.side == leaf.side]
                # of equal partials the one that stands where the term stands
                taken, _ = min(same_side or equal, key=lambda one: abs(one[0] - place))
                rest = [(at, part) for at, part in rest if at != taken]
            else:
                odd.append(leaf)
        return [part for _, part in rest], odd

    def in_order(self) -> bool:
        """Whether the terms are some of the partials, in the order in which these come."""
        rest = iter([flow_of(part.value, part.side) for part in self.parts])
        return all(any(value == flow_of(leaf.value, leaf.side) for value in rest) for leaf in self.leaves)

    def is_collected(self) -> bool:
        """Whether like terms are collected all over the written line."""
        keys = [leaf.key for leaf in self.leaves if leaf.key is not None]
        return self.relation or len(keys) == len(set(keys))

    def edit_of(self, leaf: Leaf, needed: Value) -> tuple[Edit, str] | None:
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

    def proposal(self, cost: float, kind: str, leaf: Leaf, needed: Value, because: str) -> Proposal | None:
        edit = self.edit_of(leaf, needed)
        if edit is None:
            return None
        own = divide(needed, leaf.multiplier)
        if leaf.multiplier not in ONES and any(number.denominator != 1 for number in own.values()):
            cost += 1.5
        if self.solving and self.is_lone_letter(leaf):
            cost += 0.5 if leaf.key in needed else 2.5
        return Proposal(cost, kind, leaf.span, edit[1], because, (edit[0],))

    def is_lone_letter(self, leaf: Leaf) -> bool:
        if leaf.key == () or abs(leaf.coefficient) != 1 or leaf.place.span != leaf.span:
            return False
        return all(other.key == () for other in self.leaves if other.side != leaf.side)

    def own_text(self, leaf: Leaf, needed: Value) -> str:
        return shown(divide(needed, leaf.multiplier), self.style)

    def before_text(self, part: Partial) -> str:
        return shown(part.value, self.style)
