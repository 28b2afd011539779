"""Rows of JSON workings to reports in the same order, in one process or in several."""

from __future__ import annotations

import json
import logging
from collections import deque
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from itertools import islice
from multiprocessing import get_context
from multiprocessing.pool import AsyncResult, Pool
from typing import Any

from checker.errors import InputError
from checker.marking.suggestion import suggested_marks
from checker.report import Working
from checker.working import judge

__all__ = ["processes", "reports"]

log = logging.getLogger(__name__)

_FAULT = "A fault in the program kept this working from being judged. Send it with the log to the makers."
CHUNK = 16  # workings handed to a process at once
AHEAD = 16  # chunks in hand


@contextmanager
def processes(jobs: int) -> Iterator[Pool | None]:
    """Worker processes, or None when one process is enough."""
    if jobs == 1:
        yield None
        return
    with get_context("spawn").Pool(jobs) as pool:
        yield pool


def reports(stream: Iterable[bytes], pool: Pool | None = None) -> Iterator[dict[str, Any]]:
    """One report a row that is not blank, in order; a row that is no working gives an object with an `error`."""
    rows = ((row, number) for number, row in enumerate(stream, start=1) if row.strip())
    return map(_report, rows) if pool is None else _in_order(pool, rows)


def _in_order(pool: Pool, rows: Iterator[tuple[bytes, int]]) -> Iterator[dict[str, Any]]:
    """The reports in the order of the rows, with never more than some hundred rows in hand."""
    waiting: deque[AsyncResult[list[dict[str, Any]]]] = deque()
    while chunk := list(islice(rows, CHUNK)):
        waiting.append(pool.apply_async(_reports, (chunk,)))
        if len(waiting) > AHEAD:
            yield from waiting.popleft().get()
    while waiting:
        yield from waiting.popleft().get()


def _reports(rows: list[tuple[bytes, int]]) -> list[dict[str, Any]]:
    return [_report(row) for row in rows]


def _report(numbered: tuple[bytes, int]) -> dict[str, Any]:
    row, number = numbered
    data: Any = None
    try:
        data = json.loads(row)
        working = Working.from_json(data)
        report = judge(working)
        marks = {"marks": suggested_marks(working, report).to_json()} if working.scheme else {}
        return report.to_json() | marks
    except (UnicodeDecodeError, json.JSONDecodeError, RecursionError):
        return {"id": "", "error": f"Line {number} of the input is not JSON. Give one working as a JSON object a line."}
    except InputError as error:
        name = data.get("id", "") if isinstance(data, dict) else ""
        return {"id": str(name), "error": str(error)}
    except Exception:  # a fault of ours must not take the other workings with it
        log.exception("the working on line %d of the input could not be judged", number)
        name = data.get("id", "") if isinstance(data, dict) else ""
        return {"id": str(name), "error": _FAULT}
