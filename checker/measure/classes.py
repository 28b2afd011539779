"""`python -m checker.measure.classes`: random cases of laws, right and changed, beside sympy's values to 50 digits."""

from __future__ import annotations

import argparse
import json
import re
import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from random import Random
from typing import Any

import sympy

from checker.equality import equal, uses_euler
from checker.errors import ParseError
from checker.measure.algebra import UnlikeError, to_sympy
from checker.measure.laws import LAWS, filled
from checker.measure.published import spread
from checker.syntax import Function, Node, Number, Postfix, Power, Root, Symbol, letters, parse_expression, walk
from checker.verdict import No, Undecided, Yes

__all__ = ["main", "measure_class", "true_by_values"]

_DIGITS = 50
_SAME = sympy.Float(10) ** -30
_ENOUGH = 3  # points where both have a value, for calling them equal
_POINTS = 16
_SHOWN = 8


def measure_class(name: str, count: int, seed: int) -> dict[str, Any]:
    """Judge so many instances of the laws of one class, half of them with one number changed.

    Returns:
        Counts of right verdicts, false accusations, misses and undecided ones, with examples, and the time of one.
    """
    draws = Random(f"{name}{seed}")
    found: Counter[str] = Counter(right=0, accused=0, missed=0, undecided=0, unknown=0)
    listed: dict[str, list[str]] = {"accused": [], "missed": [], "undecided": []}
    times = []
    for left, right in _instances(name, count, draws):
        try:
            a, b = parse_expression(left), parse_expression(right)
        except ParseError:
            found["unread"] += 1
            continue
        truth = true_by_values(a, b, draws)
        start = time.process_time()
        verdict = equal(a, b)
        times.append(time.process_time() - start)
        if truth is None:
            found["unknown"] += 1
            continue
        kind = _kind(verdict, truth)
        found[kind] += 1
        if kind in listed:
            listed[kind].append(f"{left} = {right}")
    return {**found, "cpu_ms": spread(times), "listed": {kind: rows[:_SHOWN] for kind, rows in listed.items() if rows}}


def _kind(verdict: Yes | No | Undecided, truth: bool) -> str:
    match verdict:
        case Undecided():
            return "undecided"
        case Yes():
            return "right" if truth else "missed"
        case No():
            return "accused" if truth else "right"


def _instances(name: str, count: int, draws: Random) -> Iterator[tuple[str, str]]:
    for at in range(count):
        left, right = filled(draws.choice(LAWS[name]), draws)
        if at % 2:
            places = list(re.finditer(r"\d+", right))
            if places:
                place = draws.choice(places)
                right = right[:place.start()] + str(int(place.group()) + 1) + right[place.end():]
        yield left, right


def true_by_values(a: Node, b: Node, draws: Random) -> bool | None:
    """Do both have the same values at random points where every root and logarithm in them is real?

    Returns:
        None where sympy has no value at enough points.
    """
    try:
        copies = _without_constants(a, to_sympy(a)), _without_constants(b, to_sympy(b))
    except (UnlikeError, TypeError, ZeroDivisionError, ValueError):
        return None
    by = [letter for top in (a, b) for node in walk(top) if (letter := _integrated_by(node)) is not None]
    if by:
        letter = to_sympy(by[0])
        copies = copies[0].diff(letter), copies[1].diff(letter)
    if uses_euler(a, b):
        copies = copies[0].subs(sympy.Symbol("e", real=True), sympy.E), copies[1].subs(
            sympy.Symbol("e", real=True), sympy.E)
    names = sorted((letters(a) | letters(b)) - {"pi", "i", "e", "infty"})
    agreed = 0
    for _ in range(_POINTS if names else 1):
        point = _point(a, b, names, draws)
        if not _has_value(a, point) or not _has_value(b, point):
            continue
        values = [_value(copy, point) for copy in copies]
        if values[0] is None or values[1] is None:
            continue
        if abs(values[0] - values[1]) > _SAME * (1 + abs(values[0])):
            return False
        agreed += 1
    return True if agreed >= (_ENOUGH if names else 1) else None


def _integrated_by(node: Node) -> Node | None:
    """The letter of an integral without bounds."""
    match node:
        case Function(name="int", arguments=(_, letter)):
            return letter
        case _:
            return None


def _without_constants(node: Node, copy: Any) -> Any:
    return copy.doit() if any(isinstance(one, Function) and one.name in ("sum", "lim") for one in walk(node)) else copy


def _point(a: Node, b: Node, names: list[str], draws: Random) -> dict[str, Any]:
    if any(_counts(node) for top in (a, b) for node in walk(top)):
        values = sorted((draws.randint(1, 12) for _ in names), reverse=True)
        return dict(zip(names, map(sympy.Integer, values), strict=True))
    return {name: sympy.Rational(draws.randint(-40, 60), draws.choice((9, 11, 40))) for name in names}


def _counts(node: Node) -> bool:
    """Does it ask for whole numbers?"""
    return (isinstance(node, Postfix) and node.mark == "!") or (
        isinstance(node, Function) and node.name in ("binom", "sum"))


def _has_value(top: Node, point: dict[str, Any]) -> bool:
    """Is what stands under every even root, broken power and logarithm above zero at the point?"""
    for node in walk(top):
        match node:
            case Root(radicand=inner, index=None):
                pass
            case Root(radicand=inner, index=Number(value=index)) if index % 2 == 0:
                pass
            case Power(base=inner, exponent=exponent) if not _is_whole(exponent, inner):
                pass
            case Function(name="ln" | "log", arguments=(inner,)):
                pass
            case Function(name="binom", arguments=(above, below)):
                values = [_value(to_sympy(part), point) for part in (above, below)]
                if values[0] is None or values[1] is None or not 0 <= values[1] <= values[0]:
                    return False
                continue
            case Postfix(body=inner, mark="!"):
                value = _value(to_sympy(inner), point)
                if value is None or value < 0:
                    return False
                continue
            case _:
                continue
        if letters(inner) - point.keys() - {"pi"}:
            continue
        value = _value(to_sympy(inner), point)
        if value is None or (not value.is_real) or value < 0:
            return not letters(inner)
    return True


def _is_whole(exponent: Node, base: Node) -> bool:
    if isinstance(base, Symbol) and base.name == "e":
        return True
    if letters(exponent):
        return False
    return bool(to_sympy(exponent).is_integer)


def _value(copy: Any, point: dict[str, Any]) -> Any:
    put_in = {sympy.Symbol(name, real=True): value for name, value in point.items()}
    try:
        value = copy.subs(put_in).evalf(_DIGITS)
    except (ZeroDivisionError, ValueError, TypeError, OverflowError):
        return None
    return value if value.is_number and value.is_finite else None


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the measurement as one JSON object.

    Returns:
        0 when no verdict was false, else 1.
    """
    parser = argparse.ArgumentParser(prog="python -m checker.measure.classes", description=__doc__)
    parser.add_argument("--count", type=int, default=100, help="instances of each class (default 100)")
    parser.add_argument("--seed", type=int, default=1, help="of the chance (default 1)")
    parser.add_argument("--only", action="append", choices=sorted(LAWS), help="a class; may be repeated (default all)")
    options = parser.parse_args(arguments)
    found = {name: measure_class(name, options.count, options.seed) for name in options.only or LAWS}
    sys.stdout.write(json.dumps(found, ensure_ascii=False, indent=1) + "\n")
    return 1 if any(row["accused"] or row["missed"] for row in found.values()) else 0


if __name__ == "__main__":
    raise SystemExit(main())
