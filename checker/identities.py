"""Is an equation true for all values? Both sides expanded, the terms that differ, a counterexample, a condition."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction as Rational

from checker.equality import equal, points_for
from checker.numeric import Evaluator, UnsureError, difference, is_near_zero
from checker.outcome import Known, point_text, witness_json
from checker.polynomial import Poly, TooLargeError, constant_value, is_constant, letters_in
from checker.ring import Ring, UndefinedError, UnsupportedError, in_ring
from checker.syntax import Division, Fraction, Function, Node, Root, letters, walk
from checker.verdict import No, Undecided, Yes
from checker.written import polynomial_latex

__all__ = ["Identity", "examined"]

_CONSTANTS = frozenset({"i", "pi"})
_MOST_TERMS = 8  # told of one side
_ENOUGH = 6  # points that agree


@dataclass(frozen=True, slots=True)
class Identity:
    """What is known of one equation as a claim for all values.

    Args:
        is_true: None when it is not decided.
        reason: the same in plain sentences.
        counterexample: small numbers at which the sides differ.
        left, right: the sides multiplied out and collected, as LaTeX; empty where they are no polynomials.
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


def examined(left: Node, right: Node, known: Known) -> Identity:
    """Judge the claim that two sides are equal for all values."""
    match equal(left, right, budget=known.budget, euler=known.euler):
        case Yes(conditions=conditions, proved=proved, method=method):
            told = "True for all values"
            if conditions:
                told += f" with {', '.join(conditions)}"
            elif _has_domain(left) or _has_domain(right):
                told += " at which both sides are defined"
            return Identity(True, told + "." + ("" if proved else f" Shown by {method}."))
        case No(counterexample=point, left=at_left, right=at_right):
            return _refuted(left, right, point, (at_left, at_right), known)
        case Undecided(why=why):
            return Identity(None, why)


def _refuted(
    left: Node, right: Node, point: Mapping[str, Rational], values: tuple[str, str], known: Known
) -> Identity:
    where = f"at {point_text(witness_json(point))} " if point else ""
    sides = f"{values[0]} and {values[1]}" if all(values) else "different"
    reason = f"Not true for all values: {where}the sides are {sides}."
    expanded = _expanded(left, right, known)
    if expanded is not None:
        first, second, only_left, only_right = expanded
        reason += f" Multiplied out, the left is {first} and the right is {second}."
        lacks = [f"the {side} has {text}" for side, text in (("left", only_left), ("right", only_right)) if text]
        reason += f" Only {' and only '.join(lacks)}."
        return Identity(False, reason, point, first, second, only_left, only_right)
    condition = _where_positive(left, right, point, known)
    return Identity(False, reason + (f" {condition}" if condition else ""), point, condition=condition)


def _expanded(left: Node, right: Node, known: Known) -> tuple[str, str, str, str] | None:
    def work(ring: Ring) -> tuple[str, str, str, str] | None:
        sides: list[dict[int, Rational]] = []
        for node in (left, right):
            top, bottom = ring.quotient(node)
            number = constant_value((bottom, {0: 1}))
            if number is None or any(ring.names[letter].startswith("\0") for letter in letters_in(top)):
                return None
            sides.append({key: Rational(value) / number for key, value in top.items()})
        if max(map(len, sides)) > _MOST_TERMS or not all(map(is_constant, ring.denominators)):
            return None
        first, second = sides
        only_left = {key: value for key, value in first.items() if second.get(key) != value}
        only_right = {key: value for key, value in second.items() if first.get(key) != value}
        return (
            _text(first, ring), _text(second, ring), _text(only_left, ring) if only_left else "",
            _text(only_right, ring) if only_right else "",
        )

    try:
        return in_ring(work, euler=known.euler)
    except (TooLargeError, UnsupportedError, UndefinedError):
        return None


def _text(side: Mapping[int, Rational], ring: Ring) -> str:
    bottom = 1
    for value in side.values():
        bottom *= value.denominator
    whole: Poly = {key: int(value * bottom) for key, value in side.items()}
    return polynomial_latex(whole, ring.names, bottom)


def _where_positive(left: Node, right: Node, point: Mapping[str, Rational], known: Known) -> str:
    """Does it hold, as far as sampled, when no letter is negative?"""
    if not any(value < 0 for value in point.values()):
        return ""
    names = sorted((letters(left) | letters(right)) - _CONSTANTS - ({"e"} if known.euler else set()))
    agreed = 0
    for place in points_for(left, right, names, known.budget.part(0.2), euler=known.euler):
        if any(value < 0 for value in place.values()):
            continue
        evaluator = Evaluator(place, euler=known.euler)
        try:
            if not is_near_zero(difference(evaluator.value(left), evaluator.value(right))):
                return ""
        except (UndefinedError, UnsureError, UnsupportedError, TooLargeError):
            continue
        agreed += 1
    if agreed < _ENOUGH:
        return ""
    signs = ", ".join(f"{name} \\ge 0" for name in names)
    return f"It holds for {signs}, as sampled at {agreed} points."


def _has_domain(top: Node) -> bool:
    for node in walk(top):
        if isinstance(node, Root) or (isinstance(node, Function) and node.name not in ("sin", "cos", "exp")):
            return True
        bottom = node.denominator if isinstance(node, Fraction) else node.right if isinstance(node, Division) else None
        if bottom is not None and letters(bottom):
            return True
    return False
