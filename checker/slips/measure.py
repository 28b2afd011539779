"""How often the first slip, its kind and its term are found: `python -m checker.slips.measure`, one JSON object."""

from __future__ import annotations

import argparse
import json
import sys
import time
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from checker.practice import MISSING, Exercise, exercises
from checker.practice.documented import documented_exercises
from checker.report import Report, Slip, Working
from checker.slips.diagnosis import diagnose
from checker.slips.documented_measure import measure_documented
from checker.syntax import parse_line
from checker.working import judge

__all__ = ["main", "measure_catalogue", "measure_planted", "measure_pupils", "measure_right"]

SHOWN = 12


def _milliseconds(times: Sequence[float]) -> dict[str, float]:
    ordered = sorted(times)
    if not ordered:
        return {}
    return {
        "p50": round(1000 * ordered[len(ordered) // 2], 2),
        "p95": round(1000 * ordered[int(0.95 * (len(ordered) - 1))], 2),
        "max": round(1000 * ordered[-1], 2),
    }


def _first_slip(report: Report) -> Slip | None:
    return None if report.first_slip is None else report.lines[report.first_slip].slip


def _repair_follows(lines: Sequence[str], report: Report, slip: Slip) -> bool:
    """Is the working up to the slip right when the slipped line is replaced by its repair?"""
    assert report.first_slip is not None
    mended = (*lines[:report.first_slip], slip.repaired)
    judged = judge(Working(mended))
    return judged.first_slip is None and judged.lines[-1].verdict in ("start", "follows", "back", "note")


def _same_term(found: Slip, term: str, span: tuple[int, int]) -> bool:
    if term == MISSING:
        return found.term == MISSING
    return found.term == term and found.span == span


def measure_planted(workings: Iterable[Exercise]) -> dict[str, Any]:
    """Planted slips: line, kind, term, what it should be, and whether the repair works."""
    counts: Counter[str] = Counter()
    confused: Counter[str] = Counter()
    missed: list[dict[str, Any]] = []
    times: list[float] = []
    explaining: list[float] = []
    for working in workings:
        assert working.slip is not None and working.slip_line is not None
        counts["workings"] += 1
        start = time.perf_counter()
        report = judge(Working(working.lines))
        times.append(time.perf_counter() - start)
        before, written = (parse_line(line) for line in working.lines[working.slip_line - 1:working.slip_line + 1])
        start = time.perf_counter()
        diagnose([before], written)
        explaining.append(time.perf_counter() - start)
        line_right = report.first_slip == working.slip_line
        found = _first_slip(report) if line_right else None
        term_right = found is not None and _same_term(found, working.slip.term, working.slip.span)
        counts["line"] += line_right
        counts["explained"] += found is not None and found.kind != "other"
        if found is not None:
            counts["kind"] += found.kind == working.slip.kind
            counts["term"] += term_right
            counts["should_be"] += found.should_be == working.slip.should_be
            counts["repair_follows"] += _repair_follows(working.lines, report, found)
            if found.kind != working.slip.kind:
                confused[f"{working.slip.kind} told as {found.kind}"] += 1
        after = report.lines[working.slip_line + 1:]
        counts["carried_right"] += line_right and all(line.verdict in ("ft", "back") for line in after)
        if not term_right and len(missed) < SHOWN:
            missed.append({**working.to_json(), "found": None if found is None else found.to_json()})
    told = dict(confused.most_common())
    return {
        **counts, "confused": told, "ms_per_working": _milliseconds(times),
        "ms_per_diagnosis": _milliseconds(explaining), "missed": missed,
    }


def measure_right(workings: Iterable[Exercise]) -> dict[str, Any]:
    """Right workings: how many are accused, and how many lines stay undecided."""
    counts: Counter[str] = Counter()
    accused: list[dict[str, Any]] = []
    for working in workings:
        counts["workings"] += 1
        report = judge(Working(working.lines))
        counts["undecided_lines"] += sum(line.verdict == "undecided" for line in report.lines)
        if report.first_slip is not None:
            counts["accused"] += 1
            accused.append(working.to_json())
    return {"accused": 0, **counts, "examples": accused[:SHOWN]}


def measure_catalogue(path: Path) -> dict[str, Any]:
    """The documented slips: caught, and the term as the catalogue names it (or the term that holds it)."""
    counts: Counter[str] = Counter()
    kinds: dict[str, str] = {}
    times: list[float] = []
    for entry in json.loads(path.read_text(encoding="utf-8")):
        counts["entries"] += 1
        wrong = entry["wrong"] if entry["kind_of_line"] != "expression" else "=" + entry["wrong"]
        start = time.perf_counter()
        report = judge(Working((entry["line"], wrong)))
        times.append(time.perf_counter() - start)
        verdict = report.lines[1].verdict
        counts["caught"] += verdict == entry.get("verdict", "slip")
        found = report.lines[1].slip
        if found is None:
            kinds[entry["id"]] = f"({verdict})"
            continue
        counts["explained"] += found.kind != "other"
        named = entry["wrong_term"].lstrip("+").strip()
        mine = found.term.lstrip("+").strip()
        counts["term"] += mine == named
        counts["term_or_holds_it"] += mine == named or (named in mine and mine != wrong.lstrip("="))
        kinds[entry["id"]] = f"{found.kind}: {found.term} -> {found.should_be}"
    return {**counts, "ms": _milliseconds(times), "found": kinds}


def measure_pupils(path: Path, step: int = 1) -> dict[str, Any]:
    """Wrong steps that pupils wrote: caught, and explained with a term."""
    counts: Counter[str] = Counter()
    kinds: Counter[str] = Counter()
    missed: list[Any] = []
    times: list[float] = []
    for number, text in enumerate(path.read_text(encoding="utf-8").splitlines()):
        if number % step:
            continue
        entry = json.loads(text)
        counts["steps"] += 1
        start = time.perf_counter()
        report = judge(Working(tuple(entry["lines"])))
        times.append(time.perf_counter() - start)
        line = report.lines[1]
        counts["caught"] += line.verdict in ("slip", "loses", "adds")
        if line.verdict not in ("slip", "loses", "adds"):
            missed.append({"lines": entry["lines"], "verdict": line.verdict, "reason": line.reason})
        if line.slip is not None:
            counts["explained"] += line.slip.kind != "other"
            counts["repair_follows"] += judge(Working((entry["lines"][0], line.slip.repaired))).first_slip is None
            kinds[line.slip.kind] += 1
    return {**counts, "kinds": dict(kinds.most_common()), "ms": _milliseconds(times), "missed": missed[:SHOWN]}


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the measurements as one JSON object."""
    parser = argparse.ArgumentParser(prog="python -m checker.slips.measure", description=__doc__)
    parser.add_argument("--count", type=int, default=200, help="planted and right workings each (default 200)")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--data", type=Path, help="folder with slips.json and pupil-slips.jsonl")
    parser.add_argument("--every", type=int, default=1, help="take every n-th step of the pupils (default all)")
    parser.add_argument("--catalogue", action="store_true", help="plant the documented slips, and report by entry")
    options = parser.parse_args(arguments)
    if options.catalogue:
        told = measure_documented(documented_exercises(options.count, seed=options.seed))
        sys.stdout.write(json.dumps(told, ensure_ascii=False, indent=1) + "\n")
        return 0
    found: dict[str, Any] = {
        "planted": measure_planted(exercises(options.count, seed=options.seed)),
        "right": measure_right(exercises(options.count, seed=options.seed + 1, slipped=False)),
    }
    if options.data is not None:
        found["catalogue"] = measure_catalogue(options.data / "slips.json")
        found["pupils"] = measure_pupils(options.data / "pupil-slips.jsonl", options.every)
    sys.stdout.write(json.dumps(found, ensure_ascii=False, indent=1) + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
