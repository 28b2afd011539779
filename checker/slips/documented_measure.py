"""The documented slips planted in fresh workings, measured entry by entry."""

from __future__ import annotations

import re
import time
from collections import Counter
from collections.abc import Iterable, Sequence
from typing import Any

from checker.practice.book import MISSING
from checker.practice.documented import DocumentedExercise
from checker.report import Report, Slip, Working
from checker.working import judge

__all__ = ["measure_documented"]

SHOWN = 3  # misses kept for each entry
_TOP_SIGN = re.compile(r"(?<=[\w)}\]])\s*[+-]")


def measure_documented(workings: Iterable[DocumentedExercise]) -> dict[str, Any]:
    """First slip line, kind, term, and whether "should be" mends the step; the right workings must pass.

    `term` is the planted term to the character, its sign in front aside; `term_or_holds_it` also takes the one whole
    term of a sum in which the planted number, power or factor stands.
    """
    entries: dict[str, Counter[str]] = {}
    missed: dict[str, list[dict[str, Any]]] = {}
    times: list[float] = []
    for working in workings:
        counts = entries.setdefault(working.name, Counter())
        counts["workings"] += 1
        start = time.perf_counter()
        report = judge(Working(working.lines))
        times.append(time.perf_counter() - start)
        found = report.lines[working.slip_line].slip if _line_right(working, report) else None
        counts["line"] += _line_right(working, report)
        counts["carried"] += _line_right(working, report) and _carried(working, report)
        counts["accused"] += _accused(working)
        exact = holds = kind = mended = False
        if found is not None:
            kind = found.kind in working.kinds
            exact = _bounds(working.lines[working.slip_line], found.span) == _bounds(
                working.lines[working.slip_line], working.slip.span
            )
            holds = exact or _holds(working, found)
            mended = _mended(working, found)
        counts["kind"] += kind
        counts["term"] += exact
        counts["term_or_holds_it"] += holds
        counts["mended"] += mended
        shown = missed.setdefault(working.name, [])
        if not (kind and holds and mended) and len(shown) < SHOWN:
            shown.append(_told(working, report, found))
    total: Counter[str] = Counter()
    for counts in entries.values():
        total.update(counts)
    table = {name: " ".join(f"{key} {counts[key]}" for key in COLUMNS) for name, counts in entries.items()}
    ordered = sorted(times)
    return {
        "total": dict(total),
        "ms_per_working": {
            "p50": round(1000 * ordered[len(ordered) // 2], 2),
            "p95": round(1000 * ordered[int(0.95 * (len(ordered) - 1))], 2),
        },
        "entries": table,
        "missed": {name: shown for name, shown in missed.items() if shown},
    }


COLUMNS = ("workings", "line", "kind", "term", "term_or_holds_it", "mended", "carried", "accused")


def _line_right(working: DocumentedExercise, report: Report) -> bool:
    verdicts = [line.verdict for line in report.lines]
    if any(verdict not in ("start", "follows") for verdict in verdicts[: working.slip_line]):
        return False
    if verdicts[working.slip_line] != working.verdict:
        return False
    return report.first_slip == working.slip_line if working.verdict == "slip" else True


def _carried(working: DocumentedExercise, report: Report) -> bool:
    return all(line.verdict in ("ft", "back", "follows") for line in report.lines[working.slip_line + 1 :])


def _accused(working: DocumentedExercise) -> bool:
    return any(line.verdict in ("slip", "loses", "adds") for line in judge(Working(working.right)).lines)


def _bounds(line: str, span: Sequence[int]) -> tuple[int, int]:
    """The span without blanks at its ends and without a sign in front."""
    start, end = span
    while start < end and line[start] in "+- ":
        start += 1
    while end > start and line[end - 1] == " ":
        end -= 1
    return start, end


def _holds(working: DocumentedExercise, found: Slip) -> bool:
    """Whether the term found is one whole term in which the planted place stands."""
    if working.slip.term == MISSING or found.term == MISSING:
        return found.term == working.slip.term
    start, end = found.span
    inside = start <= working.slip.span[0] and working.slip.span[1] <= end
    text = working.lines[working.slip_line][start:end].lstrip("+- ")
    flat = re.sub(r"\{[^{}]*\}|\([^()]*\)", "", re.sub(r"\{[^{}]*\}|\([^()]*\)", "", text))
    return inside and "=" not in text and not _TOP_SIGN.search(flat)


def _mended(working: DocumentedExercise, found: Slip) -> bool:
    judged = judge(Working((*working.lines[: working.slip_line], found.repaired)))
    return judged.lines[-1].verdict in ("follows", "back") and judged.first_slip is None


def _told(working: DocumentedExercise, report: Report, found: Slip | None) -> dict[str, Any]:
    line = report.lines[working.slip_line]
    return {
        "lines": working.lines,
        "planted": [working.slip_line, working.kinds[0], working.slip.term, working.slip.should_be],
        "verdicts": [line.verdict for line in report.lines],
        "found": None if found is None else found.to_json(),
        "reason": line.reason,
    }
