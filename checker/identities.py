"""Is an equation true for all values? Both sides expanded, the terms that differ, a counterexample, a condition."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from fractions import Fraction as Rational

from checker.budget import OutOfTimeError
from checker.equality import equal, points_for
from checker.forms import is_open_bracket
from checker.numeric import Evaluator, UnsureError, difference, is_near_zero
from checker.outcome import Known, point_text, unknowns_of, witness_json
from checker.polynomial import ONE, Poly, TooLargeError, is_constant, letters_in, multiply, power
from checker.regions import needed_for, where_equal
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.solutions import links
from checker.surd_text import surd_latex
from checker.syntax import Bracket, Division, Fraction, Function, Node, Root, Statement, Sum, letters, walk
from checker.verdict import No, Undecided, Yes
from checker.written import polynomial_latex

__all__ = ["Identity", "claimed", "examined"]

_MOST_TERMS = 8  # told of one side
_MOST_CONDITIONS = 5
_ENOUGH = 6  # points that agree
_STUCK = (UndefinedError, UnsureError, UnsupportedError, TooLargeError, OutOfTimeError)


@dataclass(frozen=True, slots=True)
class Identity:
    """What is known of one equation as a claim for all values.

    Args:
        is_true: None when it is not decided.
        reason: the same in plain sentences.
        counterexample: small numbers at which the sides differ.
        left, right: the sides multiplied out and collected, as LaTeX; both numerators over one denominator where the
            sides are quotients; empty where they cannot be written plainly.
        only_left, only_right: what each side has and the other has not, as LaTeX.
        condition: where it is true although not everywhere.
    """

    is_true: bool | None
    reason: str
    counterexample: Mapping[str, Rational] | None = None
    left: str = ""
    right: str = ""
    only_left: str = ""
    only_right: str = ""
    condition: str = ""


def claimed(statement: Statement, known: Known) -> Identity | None:
    """Judge an equation, or a chain of them, as a claim for all values; None when it claims no such thing.

    The first link that is false decides; else one that is not decided; else the claim is true under the conditions of
    all links.
    """
    found: list[Identity] = []
    for left, sign, right in links(statement):
        if sign not in ("=", "\\equiv"):
            return None
        found.append(examined(left, right, known))
        if found[-1].is_true is False:
            return found[-1]
    undecided = next((one for one in found if one.is_true is None), None)
    if undecided is not None or not found:
        return undecided
    conditions = dict.fromkeys(one.condition for one in found if one.condition)
    told = next((one for one in found if one.condition), found[0])
    if len(conditions) > 1:
        whole = ", ".join(dict.fromkeys(part for one in conditions for part in one.split(", ")))
        return replace(told, reason=f"True for all values with {whole}.", condition=whole)
    return told


def examined(left: Node, right: Node, known: Known) -> Identity:
    """Judge the claim that two sides are equal for all values."""
    match equal(left, right, budget=known.budget, euler=known.euler):
        case Yes(conditions=conditions, proved=proved, method=method):
            if not _unknowns(left, right, known):
                return Identity(True, "True: both sides have the same value.")
            where = _domain(left, right, known) or ("" if _has_functions(left, right) else ", ".join(conditions))
            told = "True for all values"
            if where:
                told += f" with {where}"
            elif _has_domain(left) or _has_domain(right):
                told += " at which both sides are defined"
            shown = "" if proved else f" Shown by {method}."
            return Identity(True, told + "." + shown, condition=where)
        case No(counterexample=point, left=at_left, right=at_right):
            return _refuted(left, right, point, (at_left, at_right), known)
        case Undecided(why=why):
            return Identity(None, why)


def _unknowns(left: Node, right: Node, known: Known) -> frozenset[str]:
    return unknowns_of(left, known) | unknowns_of(right, known)


# where it is true


def _has_functions(*sides: Node) -> bool:
    return any(isinstance(node, Root | Function) for side in sides for node in walk(side))


def _domain(left: Node, right: Node, known: Known) -> str:
    """Where both sides have a value, for a claim that is true there; empty when that is everywhere or not known."""
    names = _unknowns(left, right, known)
    if not (_has_domain(left) or _has_domain(right)):
        return ""
    if len(names) == 1:
        where = where_equal(left, right, next(iter(names)), replace(known, budget=known.budget.part(0.3)))
        if where is not None:
            return where
    found = list(dict.fromkeys(text for side in (left, right) for text in needed_for(side, names)))
    return ", ".join(found) if "" not in found and len(found) <= _MOST_CONDITIONS else ""


def _refuted(
    left: Node, right: Node, point: Mapping[str, Rational], values: tuple[str, str], known: Known
) -> Identity:
    sides = f"{values[0]} and {values[1]}" if all(values) else "different"
    if not _unknowns(left, right, known):
        return Identity(False, f"Not true: the sides are {sides}.", point)
    reason = f"Not true for all values: at {point_text(witness_json(point))} the sides are {sides}."
    expanded = _expanded(left, right, known)
    if expanded is not None:
        how, first, second, only_left, only_right = expanded
        lacks = [f"the {side} has {text}" for side, text in (("left", only_left), ("right", only_right)) if text]
        reason += f" {how} the left is {first} and the right is {second}. Only {' and only '.join(lacks)}."
        found = Identity(False, reason, point, first, second, only_left, only_right)
    else:
        found = Identity(False, reason, point)
    condition, told = _condition(left, right, point, known)
    return replace(found, reason=f"{reason} {told}", condition=condition) if condition else found


def _condition(left: Node, right: Node, point: Mapping[str, Rational], known: Known) -> tuple[str, str]:
    """Where a false claim does hold: whole stretches of one letter, or all values that are not negative."""
    names = _unknowns(left, right, known)
    if len(names) == 1:
        within = replace(known, budget=known.budget.part(0.3))
        where = where_equal(left, right, next(iter(names)), within)
        return (where, f"It holds for {where}, as sampled.") if where else ("", "")
    told = _where_positive(left, right, point, known)
    return told, told


def _where_positive(left: Node, right: Node, point: Mapping[str, Rational], known: Known) -> str:
    """Does it hold, as far as sampled, when no letter is negative?"""
    if not any(value < 0 for value in point.values()):
        return ""
    names = sorted(_unknowns(left, right, known))
    agreed = 0
    for place in points_for(left, right, names, known.budget.part(0.2), euler=known.euler):
        if any(value < 0 for value in place.values()):
            continue
        evaluator = Evaluator(place, euler=known.euler)
        try:
            if not is_near_zero(difference(evaluator.value(left), evaluator.value(right))):
                return ""
        except _STUCK:
            continue
        agreed += 1
    if agreed < _ENOUGH:
        return ""
    signs = ", ".join(f"{name} \\ge 0" for name in names)
    return f"It holds for {signs}, as sampled at {agreed} points."


# both sides expanded


def _expanded(left: Node, right: Node, known: Known) -> tuple[str, str, str, str, str] | None:
    """How they are compared, both sides, and what each has alone."""

    def work(ring: Ring) -> tuple[str, str, str, str, str] | None:
        (top, bottom), (other, below) = ring.quotient(left), ring.quotient(right)
        how = "Multiplied out,"
        if any(ring.names[letter].startswith("\0") for letter in letters_in(bottom) | letters_in(below)):
            return None
        if not (is_constant(bottom) and is_constant(below)):
            common = _common(bottom, below)
            top, other = ring.reduce(multiply(top, common[0])), ring.reduce(multiply(other, common[1]))
            under = surd_latex(ring, ring.reduce(multiply(bottom, common[0])))
            how = f"Over the denominator {under}, the numerator of"
            if under is None:
                return None
            bottom = below = ONE
        if max(len(top), len(other)) > _MOST_TERMS:
            return None
        first, second = _shares(top, bottom), _shares(other, below)
        only = [
            {key: value for key, value in one.items() if two.get(key) != value}
            for one, two in ((first, second), (second, first))
        ]
        if not first.keys() & second.keys() and _stays(left, first, ring) and _stays(right, second, ring):
            return None  # nothing to be seen that is not written already
        texts = [_text(part, ring) for part in (first, second)]
        alone = [_text(part, ring) if part else "" for part in only]
        if any(text is None for text in (*texts, *alone)):
            return None
        told = [text or "" for text in (*texts, *alone)]
        return how, told[0], told[1], told[2], told[3]

    try:
        return in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None


def _stays(node: Node, terms: Mapping[int, Rational], ring: Ring) -> bool:
    """Has a side with roots, functions or powers as many terms as are written?"""
    written = len(node.terms) if isinstance(node, Sum) else 1
    return bool(ring.atoms) and len(terms) == written and not any(is_open_bracket(part) for part in walk(node)) and all(
        not isinstance(argument, Sum)
        for part in walk(node) if isinstance(part, Function) for argument in map(_inside, part.arguments)
    )


def _inside(node: Node) -> Node:
    return _inside(node.body) if isinstance(node, Bracket) else node


def _common(bottom: Poly, below: Poly) -> tuple[Poly, Poly]:
    """What each denominator is to be multiplied with so that both are the same."""
    if bottom == below:
        return ONE, ONE
    if is_constant(bottom) and bottom == ONE:
        return below, ONE
    if is_constant(below) and below == ONE:
        return ONE, bottom
    if bottom == power(below, 2):
        return ONE, below
    return (bottom, ONE) if below == power(bottom, 2) else (below, bottom)


def _shares(poly: Poly, bottom: Poly) -> dict[int, Rational]:
    return {key: Rational(value, bottom[0]) for key, value in poly.items()}


def _text(side: Mapping[int, Rational], ring: Ring) -> str | None:
    bottom = 1
    for value in side.values():
        bottom *= value.denominator
    whole: Poly = {key: int(value * bottom) for key, value in side.items()}
    if any(ring.names[letter].startswith("\0") for letter in letters_in(whole)):
        return surd_latex(ring, whole, {0: bottom})
    return polynomial_latex(whole, ring.names, bottom)


def _has_domain(top: Node) -> bool:
    for node in walk(top):
        if isinstance(node, Root) or (isinstance(node, Function) and node.name not in ("sin", "cos", "exp")):
            return True
        bottom = node.denominator if isinstance(node, Fraction) else node.right if isinstance(node, Division) else None
        if bottom is not None and letters(bottom):
            return True
    return False
