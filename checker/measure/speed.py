"""The time of a comparison, a step and a diagnosis, beside sympy in the same run."""

from __future__ import annotations

import random
import re
import signal
import time
from collections import Counter
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path
from types import FrameType
from typing import Any

import sympy

from checker.budget import Budget
from checker.equality import equal
from checker.errors import ParseError
from checker.measure.algebra import UnlikeError, to_sympy
from checker.measure.published import rows, spread
from checker.outcome import Known
from checker.slips.diagnosis import diagnose
from checker.steps import judge_step
from checker.syntax import (
    Absolute,
    Expression,
    Function,
    Node,
    Power,
    Root,
    letters,
    nodes_of,
    parse_expression,
    parse_line,
    to_latex,
    walk,
)
from checker.verdict import Undecided, Yes

__all__ = ["MICROSECONDS", "Judge", "judges", "measure_comparisons", "measure_diagnoses", "measure_steps"]

Judge = Callable[[Node, Node, Any, Any], bool | None]  # two trees and their copies in sympy
MICROSECONDS = 1e6
MOST_SECONDS = 3  # for one call of sympy
_POINTS = (sympy.Rational(7, 3), sympy.Rational(11, 5), sympy.Rational(13, 7), sympy.Rational(17, 6))


class _TooSlowError(Exception):
    """The call took longer than allowed."""


def judges() -> dict[str, Judge]:
    """Our own comparison and two of sympy's: equal, not equal, or None."""
    return {"own": _own, "sympy simplify(a-b)==0": _simplify, "sympy a.equals(b)": _equals}


def measure_comparisons(data: Path, count: int) -> dict[str, Any]:
    """Neighbours of published chains, equal, and with one number changed: own verdicts and times and sympy's."""
    found = {}
    for name, is_wanted in (("polynomial or rational", _is_rational), ("roots, bars, logs, sines", _is_beyond)):
        pairs = list(_pairs(data, count, is_wanted))
        table: dict[str, Any] = {"pairs": len(pairs), "unequal": sum(not truth for *_, truth in pairs)}
        for judge_name, judge in judges().items():
            table[judge_name] = _timed(judge, pairs)
        own, theirs = (table[one]["cpu_us"]["p50"] for one in ("own", "sympy simplify(a-b)==0"))
        table["times faster than simplify at p50"] = round(theirs / max(own, 1e-3), 1)
        found[name] = table
    return found


def _timed(judge: Judge, pairs: list[Any]) -> dict[str, Any]:
    count: Counter[str] = Counter(wrongly_accused=0, missed=0, undecided=0)
    wall, cpu = [], []
    for a, b, copy_a, copy_b, truth in pairs:
        if judge is not _own:
            sympy.core.cache.clear_cache()
        start = time.perf_counter(), time.process_time()
        found = judge(a, b, copy_a, copy_b)
        wall.append(time.perf_counter() - start[0])
        cpu.append(time.process_time() - start[1])
        if found is None:
            count["undecided"] += 1
        elif found != truth:
            count["wrongly_accused" if truth else "missed"] += 1
    return {**count, "wall_us": spread(wall, scale=MICROSECONDS), "cpu_us": spread(cpu, scale=MICROSECONDS)}


def _own(a: Node, b: Node, copy_a: Any, copy_b: Any) -> bool | None:
    verdict = equal(a, b)
    return None if isinstance(verdict, Undecided) else isinstance(verdict, Yes)


def _simplify(a: Node, b: Node, copy_a: Any, copy_b: Any) -> bool | None:
    return _within(lambda: bool(sympy.simplify(copy_a - copy_b) == 0))


def _equals(a: Node, b: Node, copy_a: Any, copy_b: Any) -> bool | None:
    return _within(lambda: copy_a.equals(copy_b))


def _within(work: Callable[[], bool | None]) -> bool | None:
    """The answer, or None when it takes too long or fails."""
    def ring(number: int, frame: FrameType | None) -> None:
        raise _TooSlowError

    before = signal.signal(signal.SIGALRM, ring)
    signal.alarm(MOST_SECONDS)
    try:
        return work()
    except (_TooSlowError, TypeError, ValueError, RecursionError, AttributeError, NotImplementedError):
        return None
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)


def _is_rational(a: Node, b: Node) -> bool:
    return bool(letters(a) | letters(b)) and not _is_beyond(a, b)


def _is_beyond(a: Node, b: Node) -> bool:
    return bool(letters(a) | letters(b)) and any(
        isinstance(node, Root | Absolute | Function) or (isinstance(node, Power) and bool(letters(node.exponent)))
        for top in (a, b) for node in walk(top)
    )


def _pairs(data: Path, count: int, is_wanted: Callable[[Node, Node], bool]) -> Iterator[Any]:
    draws = random.Random(3)
    done = 0
    for name in ("chains-openstax", "chains-math"):
        for row in rows(data / f"{name}.jsonl"):
            if row["relation"] != "expression":
                continue
            try:
                nodes = [node for line in row["lines"] for node in nodes_of(parse_line(line).statement)]
            except ParseError:
                continue
            for a, b in pairwise(nodes):
                if "i" in letters(a) | letters(b) or not is_wanted(a, b):
                    continue
                for other, truth in ((b, True), (_changed(b, draws), None)):
                    pair = None if other is None else _copied(a, other, truth)
                    if pair is not None:
                        yield pair
                        done += 1
                if done >= 2 * count:
                    return


def _changed(node: Node, draws: random.Random) -> Node | None:
    """The node with one of its numbers changed."""
    text = to_latex(node)
    places = list(re.finditer(r"\d+", text))
    if not places:
        return None
    place = draws.choice(places)
    try:
        return parse_expression(text[:place.start()] + str(int(place.group()) + 1) + text[place.end():])
    except ParseError:
        return None


def _copied(a: Node, b: Node, truth: bool | None) -> Any:
    try:
        copy_a, copy_b = to_sympy(a), to_sympy(b)
    except (UnlikeError, TypeError, ZeroDivisionError):
        return None
    if truth is None:
        truth = _same_at_points(copy_a, copy_b)
    return None if truth is None else (a, b, copy_a, copy_b, truth)


def _same_at_points(a: Any, b: Any) -> bool | None:
    """Whether two expressions have the same value at two positive points; None when they have none there."""
    names = sorted(a.free_symbols | b.free_symbols, key=str)
    gaps = []
    for shift in range(2):
        point = {name: _POINTS[(at + shift) % len(_POINTS)] for at, name in enumerate(names)}
        gap = complex((a - b).subs(point).evalf(30))
        if gap != gap:
            return None
        gaps.append(abs(gap))
    return max(gaps) < 1e-15


def measure_steps(data: Path) -> dict[str, Any]:
    """One line judged from the one before, over published steps."""
    found = {}
    for name in ("chains-math", "chains-openstax", "pupil-valid"):
        wall, cpu = [], []
        for row in rows(data / f"{name}.jsonl"):
            try:
                statements = [parse_line(line).statement for line in row["lines"]]
            except ParseError:
                continue
            for before, after in pairwise(statements):
                if isinstance(after, Expression) != isinstance(before, Expression):
                    continue
                known = Known(budget=Budget(2.0))
                start = time.perf_counter(), time.process_time()
                judge_step(before, after, known)
                wall.append(time.perf_counter() - start[0])
                cpu.append(time.process_time() - start[1])
        found[name] = {"steps": len(wall), "wall_ms": spread(wall), "cpu_ms": spread(cpu)}
    return found


def measure_diagnoses(data: Path) -> dict[str, Any]:
    """One slip explained, over the wrong steps of pupils."""
    wall, cpu = [], []
    for row in rows(data / "pupil-slips.jsonl"):
        before, written = (parse_line(line) for line in row["lines"])
        start = time.perf_counter(), time.process_time()
        diagnose([before], written)
        wall.append(time.perf_counter() - start[0])
        cpu.append(time.process_time() - start[1])
    return {"diagnoses": len(wall), "wall_ms": spread(wall), "cpu_ms": spread(cpu)}
