"""`python -m checker [FILES]`: JSON workings in, one a line; JSON reports out, one a line, in the same order."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterable, Sequence
from multiprocessing.pool import Pool
from pathlib import Path

from checker.batch import processes, reports

__all__ = ["main"]

MOST_JOBS = 64
_ABOUT = (
    'Each line of the files, or of standard input, is one working as JSON, such as {"id": "1", "lines": ["2(x+1)", '
    '"=2x+2"], "task": "expand"}. One report is printed a line.'
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Judge every working of the files named, or of standard input.

    Returns:
        0 when all were judged, 1 when a working or file could not be.
    """
    parser = argparse.ArgumentParser(prog="python -m checker", description=_ABOUT)
    parser.add_argument("files", nargs="*", metavar="FILE", help="JSON workings, one a line (default: standard input)")
    parser.add_argument("--jobs", type=_count, default=1, help="processes that judge at once (default 1)")
    options = parser.parse_args(arguments)
    failed = False
    with processes(options.jobs) as pool:
        for name in options.files or ["-"]:
            try:
                with sys.stdin.buffer if name == "-" else Path(name).open("rb") as stream:
                    failed = _judged_all(stream, pool) or failed
            except OSError as error:
                print(f"{name} cannot be read: {error.strerror}. Check the name of the file.", file=sys.stderr)
                failed = True
    return 1 if failed else 0


def _count(text: str) -> int:
    if not text.isdigit() or not 1 <= int(text) <= MOST_JOBS:
        raise argparse.ArgumentTypeError(f"give a number of processes from 1 to {MOST_JOBS}")
    return int(text)


def _judged_all(stream: Iterable[bytes], pool: Pool | None) -> bool:
    failed = False
    for report in reports(stream, pool):
        failed = failed or "error" in report
        sys.stdout.write(json.dumps(report, ensure_ascii=False) + "\n")
        sys.stdout.flush()
    return failed


if __name__ == "__main__":
    sys.exit(main())
