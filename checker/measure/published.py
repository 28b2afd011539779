"""Verdicts over published chains, steps of pupils and identities."""

from __future__ import annotations

import json
import time
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any

from checker.practice import exercises
from checker.report import Report, Working
from checker.working import judge

__all__ = ["first_wrong_step", "measure_chains", "measure_conditional", "measure_identities", "rows", "spread"]

SHOWN = 25
ACCUSING = ("slip", "ft", "back")
UNJUDGED = ("undecided", "unreadable")


def rows(path: Path) -> Iterator[dict[str, Any]]:
    """The objects of a JSON-lines file."""
    with path.open(encoding="utf-8") as stream:
        for text in stream:
            yield json.loads(text)


def spread(seconds: Sequence[float], *, scale: float = 1e3) -> dict[str, float]:
    """p50, p95 and the longest; milliseconds unless another scale is given."""
    ordered = sorted(seconds)
    if not ordered:
        return {}
    places = {"p50": len(ordered) // 2, "p95": int(0.95 * (len(ordered) - 1)), "max": len(ordered) - 1}
    return {name: round(scale * ordered[place], 3) for name, place in places.items()}


def measure_chains(path: Path) -> dict[str, Any]:
    """Right workings: what is accused, undecided or unreadable, each listed, and the time of a working."""
    count: Counter[str] = Counter()
    told: dict[str, list[dict[str, Any]]] = {"accused": [], "undecided": [], "unreadable": [], "soft": []}
    wall, cpu = [], []
    for row in rows(path):
        lines = tuple(row["lines"])
        start = time.perf_counter(), time.process_time()
        report = judge(Working(lines))
        wall.append(time.perf_counter() - start[0])
        cpu.append(time.process_time() - start[1])
        count["workings"] += 1
        count["steps"] += len(lines) - 1
        for text, line in zip(lines, report.lines, strict=True):
            if line.verdict not in ("start", "follows", "note"):
                count[line.verdict] += 1
                name = "accused" if line.verdict in ACCUSING else (
                    line.verdict if line.verdict in UNJUDGED else "soft")
                told[name].append({"id": row.get("id", ""), "line": text, "reason": line.reason})
    rate = count["undecided"] / max(1, count["steps"])
    return {
        **count, "accused": len(told["accused"]), "undecided_rate": round(rate, 5),
        "listed": {name: found[:SHOWN] for name, found in told.items()},
        "wall_ms": spread(wall), "cpu_ms": spread(cpu),
    }


def measure_conditional(path: Path) -> dict[str, Any]:
    """Chains that hold only under a condition: without it slip or undecided."""
    found = [[line.verdict for line in judge(Working(tuple(row["lines"]))).lines] for row in rows(path)]
    held_back = sum(any(verdict in ("slip", "undecided") for verdict in verdicts) for verdicts in found)
    return {"workings": len(found), "slip_or_undecided": held_back, "verdicts": found}


def measure_identities(path: Path) -> dict[str, Any]:
    """Published identities with the task "identity": true, not decided, or wrongly called false."""
    count: Counter[str] = Counter()
    listed = []
    for row in rows(path):
        for line in row["lines"]:
            final = judge(Working((line,), task="identity")).final
            name = {True: "true", False: "false", None: "undecided"}[final.correct]
            count[name] += 1
            if name != "true":
                listed.append(line)
    return {**count, "listed": listed[:SHOWN]}


def first_wrong_step(data: Path, count: int, *, seed: int = 5) -> dict[str, Any]:
    """The first wrong step found, by the harmonic mean of the accuracy on wrong and on right workings.

    A right working counts when no line is accused and none is left undecided or unread; a wrong one when the first slip
    is on its line.
    """
    planted = list(exercises(count, seed=seed))
    sets: dict[str, tuple[Iterable[tuple[tuple[str, ...], int | None]], ...]] = {
        "pupils": (
            ((tuple(row["lines"]), 1) for row in rows(data / "pupil-slips.jsonl")),
            ((tuple(row["lines"]), None) for row in rows(data / "pupil-valid.jsonl")),
        ),
        "practice": (
            ((one.lines, one.slip_line) for one in planted),
            ((one.lines, None) for one in exercises(count, seed=seed + 1, slipped=False)),
        ),
        "published": (
            ((tuple(row["lines"]), 1) for row in rows(data / "pupil-slips.jsonl")),
            ((tuple(row["lines"]), None) for name in ("chains-math", "chains-openstax")
             for row in rows(data / f"{name}.jsonl")),
        ),
    }
    found = {}
    for name, (wrong, right) in sets.items():
        share = [_share(part) for part in (wrong, right)]
        found[name] = {
            "wrong": round(share[0], 5), "right": round(share[1], 5),
            "harmonic_mean": round(2 * share[0] * share[1] / max(1e-9, sum(share)), 5),
        }
    return found


def _share(workings: Iterable[tuple[tuple[str, ...], int | None]]) -> float:
    right = total = 0
    for lines, place in workings:
        total += 1
        right += _is_right(judge(Working(lines)), place)
    return right / max(1, total)


def _is_right(report: Report, place: int | None) -> bool:
    if place is not None:
        return report.first_slip == place
    verdicts = [line.verdict for line in report.lines]
    return report.first_slip is None and not any(verdict in UNJUDGED for verdict in verdicts)
