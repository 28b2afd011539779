"""A page as JSON: the stable contract of `firstslip report`. No Qt."""

from __future__ import annotations

from typing import Any

from desktop.document import Document, WorkingVerdict
from desktop.upright import as_opened

__all__ = ["page_json"]


def page_json(document: Document) -> dict[str, Any]:
    """The page with its workings; line indices count within a working, from 0."""
    return {
        "file": document.file,
        "page": document.page,
        "workings": [_working(document, verdict) for verdict in document.verdicts],
    }


def _working(document: Document, verdict: WorkingVerdict) -> dict[str, Any]:
    slip = verdict.slip
    return {
        "lines": [_line(document, verdict, place) for place in range(len(verdict.lines))],
        "first_slip": verdict.report.first_slip,
        "check_reading_first": verdict.check_reading_first,
        "slip": None if slip is None else slip.to_json(),
        "final": verdict.report.final.to_json(),
    }


def _line(document: Document, verdict: WorkingVerdict, place: int) -> dict[str, Any]:
    line = document.lines[verdict.lines[place]]
    row = verdict.report.lines[place]
    reason = row.reason or (row.slip.because if row.slip is not None else "")
    if place == verdict.report.first_slip and verdict.check_reading_first:
        reason = f"{verdict.reading_hint} {reason}".strip()
    return {
        "box": list(as_opened(line.box, document.turns, document.size)),
        "latex": line.latex,
        "probability": round(line.probability, 4),
        "state": line.state.value,
        "verdict": row.verdict,
        "reason": reason,
    }
