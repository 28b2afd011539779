"""Which slip explains a line that does not follow: proposals from all sources, the likeliest verified first."""

from __future__ import annotations

import re
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field, replace

from checker.budget import Budget
from checker.errors import ParseError
from checker.outcome import Known
from checker.report import Slip
from checker.slips.calculus import calculus_steps, derived_line
from checker.slips.catalogue import ExpressionSlip, RelationSlip, expression_slips, relation_slips
from checker.slips.combined import combined_lines
from checker.slips.completed_square import completed_squares
from checker.slips.factor_pairs import factor_pairs
from checker.slips.leaves import apply_edits
from checker.slips.links import links_of
from checker.slips.placing import narrowest
from checker.slips.proposals import MISSING, Proposal
from checker.slips.proposers import (
    SHORT,
    anew,
    bars,
    branches,
    documented_in_place,
    gathered,
    linked,
    related,
    small_repairs,
)
from checker.slips.undone import undone
from checker.slips.values import TooLarge, value_of
from checker.slips.writing import style_of, write_value
from checker.steps import judge_step
from checker.syntax import parse_line, tight
from checker.syntax.shapes import bare
from checker.syntax.tree import (
    Absolute,
    Division,
    Fraction,
    Function,
    Line,
    Power,
    Product,
    Relation,
    Root,
    nodes_of,
    walk,
)

__all__ = ["Follows", "diagnose"]

Follows = Callable[[Line], bool]

IN_PLACE = (bars, completed_squares, factor_pairs, documented_in_place)
MOST_CHECKS = 90
CLEAR = 1.1
LIKELY = 1.42
ODD = 1.9
TOGETHER = 1.7
STEP_SECONDS = 0.3
LONGEST_REASON = 200  # characters
MUCH_LONGER = 3  # digits of a number beyond those of the numbers in both lines
SIMPLE = frozenset({
    "arithmetic", "product", "copied", "like-terms", "power-law", "dropped-term", "one-side-only", "sign-product",
})
_DIGITS = re.compile(r"[\d.]+")
_LETTER_BELOW = re.compile(r"\\frac\{.*\}\{[^}]*[a-z]")
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
    together = _from_two(before, written, search.deadline)
    if together is not None:
        return search.slip(together)
    differentiated = _differentiated(before, written, search)
    if differentiated is not None:
        return search.slip(differentiated)
    for line in reversed(before or [written]):
        freed = search.first(gathered((undone,), line, written, search.deadline), None)
        if freed is not None:
            return search.slip(freed)
        proposal = search.first(gathered((linked,), line, written, search.deadline), CLEAR)
        if proposal is None:
            likely = gathered((linked, related, branches), line, written, search.deadline)
            proposal = search.first(likely, LIKELY)
        if proposal is not None and proposal.kind not in PLAIN:
            return search.slip(proposal)
        if proposal is not None and not _has_structure(line):
            return search.slip(proposal)
        placed = search.first(gathered(IN_PLACE, line, written, search.deadline), None)
        if placed is not None:
            return search.slip(placed)
        rule = _documented(line, written, deadline=search.deadline, telling=proposal is not None)
        if proposal is not None and rule is None:
            return search.slip(proposal)
        if rule is not None and isinstance(rule, RelationSlip) and rule.whole:
            proposal = search.first(gathered((anew,), line, written, search.deadline), None) or proposal
        if proposal is None:
            everything = (linked, related, branches, small_repairs, anew)
            proposal = search.first(gathered(everything, line, written, search.deadline), None)
        if proposal is not None:
            if rule is not None and (rule.telling or proposal.cost >= ODD):
                general = rule.because.partition(": ")[0]
                because = f"{general}: {proposal.because}" if proposal.cost <= LIKELY else rule.because
                detail = _detail(rule, line)
                if detail:
                    because = f"{general}: {detail}"
                proposal = replace(proposal, kind=rule.kind, because=because)
            return search.slip(proposal)
    return None


def _differentiated(before: Sequence[Line], written: Line, search: _Search) -> Proposal | None:
    """The change of one term of a derivative or an integral."""
    if not before:
        return None
    line = derived_line(before[-1], written)
    if line is not None:
        search = _Search(written, _judged_from([line]), search.deadline, line.text)
    return search.first(gathered((calculus_steps,), line or before[-1], written, search.deadline), TOGETHER)


def _from_two(before: Sequence[Line], written: Line, deadline: float) -> Proposal | None:
    """The likeliest change of a line that two earlier equations were made into."""
    found: list[Proposal] = []
    for made in combined_lines(before, written):
        search = _Search(written, _judged_from([made.line]), deadline, made.line.text)
        proposal = search.first(gathered((linked, related), made.line, written, deadline), TOGETHER)
        if proposal is not None:
            found.append(made.told(proposal))
    return min(found, key=lambda proposal: proposal.cost, default=None)


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
    tried: dict[str, bool] = field(default_factory=dict)

    def slip(self, proposal: Proposal) -> Slip:
        line = self.written.text
        return _slip(proposal, line, apply_edits(line, proposal.edits))

    def first(self, proposals: Sequence[Proposal], limit: float | None) -> Proposal | None:
        """The likeliest proposal below a cost that makes the line follow."""
        for proposal in proposals:
            if limit is not None and proposal.cost > limit:
                return None
            repaired = apply_edits(self.written.text, proposal.edits)
            if repaired == self.written.text or self.tried.get(repaired) is False:
                continue
            if self.tried.get(repaired):
                return proposal
            if len(self.tried) >= MOST_CHECKS or time.monotonic() > self.deadline:
                return None
            self.tried[repaired] = False
            if proposal.kind in SIMPLE and self._is_far_fetched(proposal):
                continue
            try:
                candidate = parse_line(repaired, self.written.readings)
            except ParseError:
                continue
            if self.follows(candidate):
                self.tried[repaired] = True
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
        should_be=tight(proposal.should_be), because=_short(proposal.because), repaired=tight(repaired),
    )


def _short(because: str) -> str:
    """The reasons that come first, as many as a reader takes in at a glance."""
    kept, *others = because.split("; ")
    for other in others:
        if len(kept) + len(other) > LONGEST_REASON:
            break
        kept += "; " + other
    return kept


def _has_structure(line: Line) -> bool:
    """Whether the line holds more than sums and products, so that a law may have been misused."""
    found = (Fraction, Division, Power, Root, Function, Absolute)
    return isinstance(line.statement, Relation) or any(
        isinstance(node, found) for top in nodes_of(line.statement) for node in walk(top)
    )


def _documented(
    before: Line, written: Line, *, telling: bool, deadline: float,
) -> ExpressionSlip | RelationSlip | None:
    """The first slip of the catalogue that turns the line before into the written one, those that say most first."""
    try:
        plain: RelationSlip | None = None
        for slip in relation_slips(before.statement, written.statement):
            if slip.telling:
                return slip
            plain = plain or slip
        found = _in_expression(before, written, telling=True, deadline=deadline)
        if found is not None or telling:
            return found
        return plain or _in_expression(before, written, telling=False, deadline=deadline)
    except (TooLarge, RecursionError):
        return None


def _detail(rule: ExpressionSlip | RelationSlip, line: Line) -> str:
    statement = line.statement
    return rule.detail(statement) if isinstance(rule, RelationSlip) and isinstance(statement, Relation) else ""


def _in_expression(before: Line, written: Line, *, telling: bool, deadline: float) -> ExpressionSlip | None:
    style = style_of(before.text, written.text)
    for link in links_of(before, written):
        for place in narrowest(link.old, link.new, link.text):
            for found in expression_slips(place.old, value_of(place.new), telling=telling, deadline=deadline):
                if found.kind != "factor-pair" or isinstance(bare(place.new), Product | Power):
                    right = write_value(value_of(place.old), style)
                    if right is None or right == place.source or max(len(right), len(place.source)) > SHORT:
                        return found
                    return replace(found, because=f"{found.because}: {place.source} is {right}")
    return None
