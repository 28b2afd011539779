"""`python -m checker [FILES]`: JSON workings in, one a line; JSON reports out, one a line, in the same order."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import Any

from checker.errors import InputError
from checker.marking.suggestion import suggested_marks
from checker.report import Working
from checker.working import judge

__all__ = ["main"]


def main(arguments: Sequence[str] | None = None) -> int:
    """Judge every working of the files named, or of standard input.

    Returns:
        0 when all were judged, 1 when a working or file could not be.
    """
    names = sys.argv[1:] if arguments is None else list(arguments)
    if any(name in ("-h", "--help") for name in names):
        print("usage: python -m checker [FILE...]\n\nEach line of the files, or of standard input, is one working as "
              'JSON, such as {"id": "1", "lines": ["2(x+1)", "=2x+2"], "task": "expand"}.\n'
              "One report is printed a line.")
        return 0
    failed = False
    for name in names or ["-"]:
        try:
            with sys.stdin.buffer if name == "-" else Path(name).open("rb") as stream:
                failed = _judged_all(stream) or failed
        except OSError as error:
            print(f"{name} cannot be read: {error.strerror}. Check the name of the file.", file=sys.stderr)
            failed = True
    return 1 if failed else 0


def _judged_all(stream: Iterable[bytes]) -> bool:
    failed = False
    for number, row in enumerate(stream, start=1):
        if not row.strip():
            continue
        report = _report(row, number)
        failed = failed or "error" in report
        sys.stdout.write(json.dumps(report, ensure_ascii=False) + "\n")
        sys.stdout.flush()
    return failed


def _report(row: bytes, number: int) -> dict[str, Any]:
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


if __name__ == "__main__":
    sys.exit(main())
