"""`python -m checker.measure.throughput --workings 10000 --jobs 2`: the command fed with workings, as one JSON object.

The workings are generated, half of them with a slip. They go through `python -m checker --jobs N` in a process of its
own, as a user's would, on standard input.
"""

from __future__ import annotations

import argparse
import json
import subprocess
import sys
import tempfile
import threading
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from checker.practice import exercises

__all__ = ["main", "measure_throughput"]

_LOOK_SECONDS = 0.2  # between two looks at the memory
_PROCESSES = Path("/proc")


def measure_throughput(count: int, jobs: int, *, seed: int = 1) -> dict[str, Any]:
    """Judge generated workings with the command.

    Args:
        count: how many workings.
        jobs: processes that judge at once.
        seed: of the chance.
    Returns:
        Workings and lines a second, verdicts, and the peak memory of all processes together (null where the system does
        not tell it).
    """
    rows = list(_rows(count, seed))
    lines = sum(len(row["lines"]) for row in rows)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "workings.jsonl")
        path.write_text("".join(json.dumps(row) + "\n" for row in rows), encoding="utf-8")
        command = [sys.executable, "-m", "checker", "--jobs", str(jobs), str(path)]
        start = time.perf_counter()
        with subprocess.Popen(command, stdout=subprocess.PIPE) as process:
            peak = _Peak(process.pid)
            assert process.stdout is not None
            reports = [json.loads(text) for text in process.stdout]
            status = process.wait()
            peak.stop()
        seconds = time.perf_counter() - start
    verdicts = Counter(line["verdict"] for report in reports for line in report.get("lines", ()))
    return {
        "workings": len(reports), "lines": lines, "jobs": jobs, "exit_status": status, "seconds": round(seconds, 1),
        "workings_a_second": round(len(reports) / seconds, 1), "lines_a_second": round(lines / seconds, 1),
        "in_order": [report["id"] for report in reports] == [row["id"] for row in rows],
        "errors": sum("error" in report for report in reports), "verdicts": dict(verdicts),
        "peak_memory_mb": peak.megabytes,
    }


def _rows(count: int, seed: int) -> Iterator[dict[str, Any]]:
    slipped = (count + 1) // 2
    whole = [*exercises(slipped, seed=seed), *exercises(count - slipped, seed=seed + 1, slipped=False)]
    for at, one in enumerate(whole):
        yield {"id": str(at), "lines": list(one.lines)}


class _Peak:
    """Looks at the memory of a process and its children until it is stopped."""

    def __init__(self, pid: int) -> None:
        self.pid = pid
        self.megabytes: int | None = None
        self._stop = threading.Event()
        self._thread = threading.Thread(target=self._look, daemon=True)
        self._thread.start()

    def stop(self) -> None:
        self._stop.set()
        self._thread.join()

    def _look(self) -> None:
        while not self._stop.wait(_LOOK_SECONDS):
            found = sum(_resident_kb(pid) for pid in (self.pid, *_children(self.pid)))
            if found:
                self.megabytes = max(self.megabytes or 0, found // 1024)


def _children(pid: int) -> list[int]:
    found: list[int] = []
    for path in _PROCESSES.glob(f"{pid}/task/*/children"):
        try:
            for child in map(int, path.read_text(encoding="ascii").split()):
                found += [child, *_children(child)]
        except OSError:
            continue
    return found


def _resident_kb(pid: int) -> int:
    try:
        status = (_PROCESSES / str(pid) / "status").read_text(encoding="ascii")
    except OSError:
        return 0
    return next((int(row.split()[1]) for row in status.splitlines() if row.startswith("VmRSS")), 0)


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the measurement as one JSON object."""
    parser = argparse.ArgumentParser(prog="python -m checker.measure.throughput", description=__doc__)
    parser.add_argument("--workings", type=int, default=10_000, help="how many (default 10000)")
    parser.add_argument("--jobs", type=int, default=2, help="processes that judge at once (default 2)")
    options = parser.parse_args(arguments)
    found = measure_throughput(options.workings, options.jobs)
    sys.stdout.write(json.dumps(found, ensure_ascii=False, indent=1) + "\n")
    return 0 if found["exit_status"] == 0 and found["in_order"] else 1


if __name__ == "__main__":
    raise SystemExit(main())
