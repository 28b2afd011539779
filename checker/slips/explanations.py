"""Why one written term should be another: the kind of slip, its cost, and the sentence."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction as Rational
from math import prod

from checker.slips.leaves import Leaf
from checker.slips.partials import Partial
from checker.slips.proposals import Proposal
from checker.slips.reading import ONES, Reading, flow_of
from checker.slips.sentences import collected, made, quotient_reason, shown, sign_reason
from checker.slips.values import Value, divide, negate, scale, subtract, total
from checker.slips.writing import signed, unsigned

__all__ = ["SIDES", "explained", "from_one"]

SIDES = ("left", "right")
MULTIPLIED = ("product", "square", "middle", "scaled")


def explained(reading: Reading, leaf: Leaf, needed: Value) -> Proposal | None:
    rest, odd = reading.unmatched(leaf)
    stands = any(flow_of(part.value, part.side) == flow_of(leaf.value, leaf.side) for part in rest)
    doubt = 0.35 if stands else 0.0
    place = reading.leaves.index(leaf)
    if len(reading.parts) == len(reading.leaves) and reading.parts[place].value == leaf.value:
        doubt += 0.1
    if any(later.value == leaf.value and later.side == leaf.side for later in reading.leaves[place + 1:]):
        doubt += 0.05
    if not needed:
        gone = [part for part in rest if part.key == leaf.key and part.side == leaf.side]
        if len(gone) > 1 and not total(part.value for part in gone):
            return _collected(reading, leaf, {}, gone, doubt)
        if not rest and not odd and not reading.relation:
            because = f"nothing is left in the line before that gives {unsigned(leaf.text)}"
            return reading.proposal(1.3 + doubt, "extra-term", leaf, needed, because)
        because = f"nothing in the line before gives {unsigned(leaf.text)}"
        cost = (1.6 if reading.relation else 1.9) + doubt + len(odd)
        return reading.proposal(cost, "extra-term", leaf, needed, because)
    if len(needed) > 1:
        return _unlike(reading, leaf, needed, odd)
    key = next(iter(needed))
    likes = [part for part in rest if part.key == key]
    flow = flow_of(needed, leaf.side)
    chosen = [part for part in likes if flow_of(part.value, part.side) == flow]
    if len(likes) > 1 and total(flow_of(part.value, part.side) for part in likes) == flow:
        alone = sum(other.key == leaf.key for other in reading.leaves) == 1 and reading.is_collected()
        multiplied = any(part.origin in MULTIPLIED for part in likes)
        left_out = stands and multiplied and reading.in_order()
        return _collected(reading, leaf, needed, likes, 0.0 if alone and not left_out else doubt)
    if chosen:
        return from_one(reading, leaf, needed, chosen[0], doubt + 0.3 * (len(likes) - 1))
    beside = [other for other in odd if other.key == key and other.side == leaf.side]
    if beside and len(likes) == 1:
        values = [*(other.value for other in beside), needed]
        because = f"together they make what the line before has: {collected(values, total(values), reading.style)}"
        cost = 1.25 if leaf.value == negate(needed) else 1.5
        return reading.proposal(cost + doubt, "arithmetic", leaf, needed, because)
    because = f"with the other terms as they stand, this is {reading.own_text(leaf, needed)}"
    lost = sum(part.key == key for part in rest)
    cost = 2.8 if lost > 1 and any(other.key == key for other in odd) else 2.2
    return reading.proposal(cost + doubt, "arithmetic", leaf, needed, because)


def _unlike(reading: Reading, leaf: Leaf, needed: Value, odd: Sequence[Leaf]) -> Proposal | None:
    mine = [part for part in reading.parts if part.key in needed]
    if len(mine) < len(needed):
        return reading.proposal(3.2, "other", leaf, needed, f"this is {reading.own_text(leaf, needed)}")
    if not _conflates(leaf, needed):
        return reading.proposal(3.2, "other", leaf, needed, f"the line before gives {reading.own_text(leaf, needed)}")
    names = " and ".join(shown({key: number}, reading.style) for key, number in needed.items())
    because = f"{names} are not like terms, so they stay apart"
    rest, _ = reading.unmatched(leaf)
    exact = total(flow_of(part.value, part.side) for part in rest) == flow_of(needed, leaf.side)
    cost = 3.5 if reading.relation else 1.7 if exact else 3.3
    cost += 0.4 * len(odd) + (0.0 if leaf.multiplier in ONES else 2.0)
    return reading.proposal(cost, "unlike-terms", leaf, needed, because)


def _conflates(leaf: Leaf, needed: Value) -> bool:
    """Is the term's number what comes of adding or multiplying the numbers of the terms it should be?"""
    numbers = list(needed.values())
    return leaf.coefficient in (sum(numbers), prod(numbers), -prod(numbers))


def from_one(reading: Reading, leaf: Leaf, needed: Value, part: Partial, doubt: float) -> Proposal | None:
    """The term comes from one partial."""
    moved = reading.relation and part.side != leaf.side
    right = reading.own_text(leaf, needed)
    reason = made(part, reading.style)
    if moved:
        reason = f"{reading.before_text(part)} on the {SIDES[part.side]} becomes {right} on the {SIDES[leaf.side]}"
    if part.origin in ("derived", "integrated"):
        kind = "differentiation" if part.origin == "derived" else "integration"
        return reading.proposal(1.0 + doubt, kind, leaf, needed, reason)
    same_key = leaf.key in needed
    as_factor = any(unsigned(leaf.text).strip() == unsigned(factor).strip() for factor in part.factors)
    if part.origin == "carried" and leaf.multiplier not in ONES and not moved:
        return _factored_out(reading, leaf, needed, part, doubt)
    if leaf.value == negate(needed):
        if moved:
            return reading.proposal(1.0 + doubt, "sign-moved", leaf, needed, reason)
        if part.origin == "raised" and part.factors[0] == "-" and len(part.factors) == 3:
            base, exponent = part.factors[1:]
            words = f"the power comes before the minus: {base}^{exponent} is {shown(negate(part.value), reading.style)}"
            return reading.proposal(1.0 + doubt, "power-law", leaf, needed, f"{words}, so this is {right}")
        if part.origin in ("bracket", "bar") or part.factors[0] == "-":
            return reading.proposal(1.0 + doubt, "sign-bracket", leaf, needed, reason)
        if part.origin in MULTIPLIED:
            words = _sign_words(reading, part)
            reason += f": {words}" if words else ""
            return reading.proposal(1.0 + doubt, "sign-product", leaf, needed, reason)
        if part.origin in ("quotient", "power", "raised"):
            words = quotient_reason(part.factors, part.value) if part.origin == "quotient" else ""
            is_power = part.origin == "raised" and len(part.factors) == 2 and part.factors[1].isdigit()
            if is_power and part.factors[0].lstrip("(").startswith("-"):
                sign = "positive" if int(part.factors[1]) % 2 == 0 else "negative"
                words = f"{part.factors[1]} negative factors make a {sign} product"
            reason += f": {words}" if words else ""
            return reading.proposal(1.0 + doubt, "sign-product", leaf, needed, reason)
        return reading.proposal(1.5 + doubt, "copied", leaf, needed, _stands(reading, leaf, part, right))
    if as_factor and part.origin == "scaled" and leaf.place.span != leaf.span and not moved:
        words = f"every term is multiplied: {reason}"
        return reading.proposal(1.0 + doubt, "multiply-each-term", leaf, needed, words)
    if as_factor and part.origin == "scaled" and leaf.place.span == leaf.span and not moved:
        words = f"the {SIDES[leaf.side]} was not multiplied: {reason}"
        return reading.proposal(1.0 + doubt, "one-side-only", leaf, needed, words)
    is_product = part.origin in ("product", "middle") and len(part.factors) == 2
    if is_product and as_factor and not _same_letter(reading, part):
        reason = f"each term in the bracket is multiplied: {reason}"
        return reading.proposal(1.0 + doubt, "multiply-each-term", leaf, needed, reason)
    several = len(reading.parts) > 1
    if part.origin == "quotient" and several and unsigned(leaf.text).strip() == unsigned(part.factors[0]).strip():
        here = "" if leaf.multiplier in ONES else f", which is {right} here"
        reason = f"every term is divided: {reason}{here}"
        return reading.proposal(1.0 + doubt, "divide-each-term", leaf, needed, reason)
    if part.origin == "middle" and same_key and leaf.coefficient * 2 == next(iter(needed.values())):
        return reading.proposal(1.0 + doubt, "square-of-sum", leaf, needed, f"the product comes twice: {reason}")
    if part.origin in ("raised", "power", "square"):
        return reading.proposal(1.2 + doubt, "power-law", leaf, needed, reason)
    if part.origin in ("product", "middle", "scaled"):
        kind, cost = ("product", 1.3) if same_key else ("power-law", 1.2)
        return reading.proposal(cost + doubt, kind, leaf, needed, reason)
    if part.origin in ("quotient", "bar"):
        if part.origin == "quotient" and leaf.multiplier not in ONES and same_key:
            reason += f", which is {right} here"
        if any(not atom.isalnum() for key in needed for atom, _ in key):
            return reading.proposal(2.5 + doubt, "other", leaf, needed, reason)
        kind = "arithmetic" if same_key else "letter-lost" if leaf.key == () else "power-law"
        return reading.proposal(1.3 + doubt, kind, leaf, needed, reason)
    if not moved and (division := _DIVISION.fullmatch(part.factors[0])) is not None and not _shares(leaf, division):
        reason = f"{division[1].lstrip('+')}{division[2]} divided by {division[3]} is {right}"
        return reading.proposal(1.4 + doubt, "arithmetic", leaf, needed, reason)
    if not same_key and leaf.key == ():
        reason = f"the letter is missing: the line before has {right}"
        return reading.proposal(1.4 + doubt, "letter-lost", leaf, needed, reason)
    if moved:
        shared = sum(other.side == leaf.side and other.key == leaf.key for other in reading.leaves) > 1
        return reading.proposal(1.4 + doubt, "copied" if shared else "arithmetic", leaf, needed, reason)
    return reading.proposal(1.5 + doubt, "copied", leaf, needed, _stands(reading, leaf, part, right))


def _stands(reading: Reading, leaf: Leaf, part: Partial, right: str) -> str:
    """What the line before has, as it stands there where it stands alone."""
    alone = part.origin == "carried" and leaf.multiplier in ONES and len(part.factors) == 1
    text = part.factors[0].removeprefix("+") if alone and len(part.factors[0]) <= 30 else right
    return f"the line before has {text}"


_DIVISION = re.compile(r"([+-]?)(?:\\frac)?\{?(-?[\d.]+)\}?[{/]\{?(-?[\d.]+)\}?")


def _shares(leaf: Leaf, division: re.Match[str]) -> bool:
    """Whether the written number is a fraction too with one of the two numbers, so that it looks copied."""
    other = _DIVISION.fullmatch(leaf.text)
    return other is not None and (other[2] == division[2] or other[3] == division[3])


def _factored_out(reading: Reading, leaf: Leaf, needed: Value, part: Partial, doubt: float) -> Proposal | None:
    """The term stands in a bracket that a factor was taken out of."""
    below = divide({(): Rational(1)}, leaf.multiplier)
    is_fraction = "frac" in reading.line or "/" in reading.line
    if is_fraction and "frac" not in shown(below, reading.style) and below not in ONES:
        words = f"over the bottom {shown(below, reading.style)}, {reading.before_text(part)} has the top "
        words += reading.own_text(leaf, needed)
        cost = 1.0 if divide(leaf.value, leaf.multiplier) == part.value else 1.3
        return reading.proposal(cost + doubt, "fraction-sum", leaf, needed, words)
    outside = shown(leaf.multiplier, reading.style)
    reason = f"{reading.before_text(part)} divided by {outside} is {reading.own_text(leaf, needed)}"
    own = divide(leaf.value, leaf.multiplier)
    if leaf.value == negate(needed):
        return reading.proposal(1.0 + doubt, "sign-product", leaf, needed, reason)
    if list(own.values()) == [part.coefficient]:
        reason = f"every term is divided: {reason}"
        return reading.proposal(1.0 + doubt, "divide-each-term", leaf, needed, reason)
    return reading.proposal(1.4 + doubt, "arithmetic", leaf, needed, reason)


def _same_letter(reading: Reading, part: Partial) -> bool:
    """Whether a power above 1 comes from the same letter in both factors."""
    return any(exponent > 1 and all(atom in factor for factor in part.factors) for atom, exponent in part.key)


def _sign_words(reading: Reading, part: Partial) -> str:
    if part.origin == "square":
        return "a square is not negative" if part.coefficient > 0 else "the minus stands before the square"
    if part.factors[0] == "-":
        return "the minus before the bracket turns each sign"
    return sign_reason(part.factors, part.value)


def _collected(reading: Reading, leaf: Leaf, needed: Value, likes: Sequence[Partial], doubt: float) -> Proposal | None:
    """The term collects several partials."""
    turned = [flow_of(part.value, (part.side + leaf.side) % 2) for part in likes]
    ordered = [value for part, value in zip(likes, turned, strict=True) if part.side == leaf.side]
    ordered += [value for part, value in zip(likes, turned, strict=True) if part.side != leaf.side]
    own = [divide(value, leaf.multiplier) for value in ordered]
    whole = collected(own, divide(needed, leaf.multiplier), reading.style)
    products = [part for part in likes if part.origin != "carried"]
    if not needed:
        return reading.proposal(1.35 + doubt, "like-terms", leaf, needed, whole)
    if leaf.key not in needed:
        kind = "power-law" if products and leaf.key != () else "like-terms"
        words = "adding like terms keeps the letters and their powers: "
        return reading.proposal(1.4 + doubt, kind, leaf, needed, words + whole)
    if leaf.value == negate(needed):
        return reading.proposal(1.2 + doubt, "like-terms", leaf, needed, whole)
    for part, value in sorted(zip(likes, turned, strict=True), key=lambda pair: _flip_order(pair[0], leaf)):
        if leaf.value != subtract(needed, scale(value, Rational(2))):
            continue
        if reading.relation and part.side != leaf.side:
            moved = signed(shown(value, reading.style))
            words = f"{reading.before_text(part)} on the {SIDES[part.side]} becomes {moved} on the {SIDES[leaf.side]}"
            return reading.proposal(1.05 + doubt, "sign-moved", leaf, needed, f"{words}, and {whole}")
        if part.origin in ("bracket", "bar") or part.factors[0] == "-":
            words = made(part, reading.style)
            return reading.proposal(1.1 + doubt, "sign-bracket", leaf, needed, f"{words}, so {whole}")
        if part.origin != "carried":
            words = f"{made(part, reading.style)}, so {whole}"
            return reading.proposal(1.1 + doubt, "sign-product", leaf, needed, words)
        return reading.proposal(1.2 + doubt, "like-terms", leaf, needed, whole)
    for part, value in zip(likes, turned, strict=True):
        if leaf.value == subtract(needed, value):
            kind = "dropped-term" if part.origin in MULTIPLIED else "like-terms"
            words = f"{made(part, reading.style)} and belongs in it: " if products else ""
            return reading.proposal((1.45 if products else 1.35) + doubt, kind, leaf, needed, words + whole)
    return reading.proposal(1.4 + doubt, "like-terms", leaf, needed, whole)


def _flip_order(part: Partial, leaf: Leaf) -> tuple[bool, bool, bool]:
    """Which partial is the likelier to have its sign taken wrongly."""
    negative = any(factor.startswith("-") for factor in part.factors)
    return part.side == leaf.side, part.origin == "carried", not negative


