"""`python -m checker.measure.fuzz --lines 100000 --seed 1 [--data DATA]`: disordered lines judged, as one JSON object.

Each line is judged after one that is real or disordered, by the same way as the command's: bytes of JSON in, a report
that can be written as JSON out. A crash is any exception, one that was caught and logged as well; a hang is more than
two seconds for one working.
"""

from __future__ import annotations

import argparse
import faulthandler
import json
import logging
import resource
import sys
import time
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from random import Random
from typing import Any

from checker.batch import reports
from checker.measure.disorder import disordered_lines
from checker.measure.published import rows, spread

__all__ = ["main", "measure_disorder"]

MOST_SECONDS = 2.0  # for one working
_STUCK_SECONDS = 120  # after which the traceback is printed and the run ends
_SHOWN = 10
_TASKS = (None, None, "expand", "factorise", "simplify", "solve", "identity")
_BEFORE = ("x^2+3x", "2x+1=7", "\\frac{x}{x-1}", "y=3x-2", "(x+1)(x-2)=0", "3", "\\sqrt{x}", "x<4", "e^{x}")


class _Caught(logging.Handler):
    """Errors of ours that the checker caught and logged: crashes as well."""

    def __init__(self) -> None:
        super().__init__(logging.ERROR)
        self.told: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        error = record.exc_info[1] if record.exc_info else None
        self.told.append(f"{record.getMessage()}: {type(error).__name__}: {error}"[:300])

    def emptied(self) -> list[str]:
        told, self.told = self.told, []
        return told


def measure_disorder(count: int, seed: int, real: Sequence[str] = ()) -> dict[str, Any]:
    """Judge so many disordered lines.

    Args:
        count: how many lines.
        seed: of the chance.
        real: lines of real workings that are mutated and stand before disordered ones.
    Returns:
        The crashes and the workings over two seconds, each listed; the time of a working; verdicts; peak memory.
    """
    draws = Random(seed)
    verdicts: Counter[str] = Counter()
    crashes: list[dict[str, str]] = []
    slow: list[dict[str, Any]] = []
    wall, cpu = [], []
    caught = _Caught()
    logging.getLogger("checker").addHandler(caught)
    began = time.perf_counter()
    for line in disordered_lines(count, draws, real):
        before = draws.choice((line, draws.choice(real or _BEFORE), draws.choice(_BEFORE)))
        row = json.dumps({"id": "1", "lines": [before, line], "task": draws.choice(_TASKS)}).encode()
        faulthandler.dump_traceback_later(_STUCK_SECONDS, exit=True)
        start = time.perf_counter(), time.process_time()
        try:
            for report in reports([row]):
                json.dumps(report)
                verdicts.update([one["verdict"] for one in report["lines"]][1:] if "lines" in report else ["error"])
        except Exception as error:  # a crash is what is measured here
            crashes.append({"row": row.decode(), "error": f"{type(error).__name__}: {error}"[:300]})
        crashes += [{"row": row.decode(), "error": told} for told in caught.emptied()]
        took = time.perf_counter() - start[0], time.process_time() - start[1]
        faulthandler.cancel_dump_traceback_later()
        wall.append(took[0])
        cpu.append(took[1])
        if took[1] > MOST_SECONDS:
            slow.append({"row": row.decode()[:2_000], "cpu_s": round(took[1], 2), "wall_s": round(took[0], 2)})
    logging.getLogger("checker").removeHandler(caught)
    return {
        "lines": count, "seed": seed, "crashes": len(crashes), "over_2s_cpu": len(slow),
        "over_2s_wall": sum(one > MOST_SECONDS for one in wall), "cpu_ms": spread(cpu), "wall_ms": spread(wall),
        "verdicts": dict(verdicts), "seconds": round(time.perf_counter() - began, 1),
        "peak_memory_mb": round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024),
        "crashed": crashes[:_SHOWN], "slow": sorted(slow, key=lambda one: -float(one["cpu_s"]))[:_SHOWN],
    }


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the measurement as one JSON object.

    Returns:
        0 when nothing crashed and nothing took longer than two seconds of the processor, else 1.
    """
    parser = argparse.ArgumentParser(prog="python -m checker.measure.fuzz", description=__doc__)
    parser.add_argument("--lines", type=int, default=2_000, help="how many lines (default 2000)")
    parser.add_argument("--seed", type=int, default=1, help="of the chance (default 1)")
    parser.add_argument("--data", type=Path, help="folder with published chains, whose lines are mutated")
    options = parser.parse_args(arguments)
    real: list[str] = []
    if options.data is not None:
        for path in sorted(options.data.glob("chains-*.jsonl")):
            real += [line for row in rows(path) for line in row["lines"]]
    found = measure_disorder(options.lines, options.seed, real)
    sys.stdout.write(json.dumps(found, ensure_ascii=True, indent=1) + "\n")
    return 1 if found["crashes"] or found["over_2s_cpu"] else 0


if __name__ == "__main__":
    raise SystemExit(main())
