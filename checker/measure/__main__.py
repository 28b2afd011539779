"""`python -m checker.measure DATA`: verdicts, slips and times over published data, as one JSON object."""

from __future__ import annotations

import argparse
import json
import resource
import sys
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Any

from checker.measure.growth import measure_growth
from checker.measure.published import (
    first_wrong_step,
    measure_chains,
    measure_conditional,
    measure_identities,
)
from checker.measure.speed import measure_comparisons, measure_diagnoses, measure_steps
from checker.practice import exercises
from checker.slips.measure import measure_catalogue, measure_planted, measure_pupils, measure_right

__all__ = ["main"]


def main(arguments: Sequence[str] | None = None) -> int:
    """Print the measurements asked for as one JSON object."""
    parser = argparse.ArgumentParser(prog="python -m checker.measure", description=__doc__)
    parser.add_argument("data", type=Path, help="folder with the published chains, steps, identities and slips.json")
    parser.add_argument("--count", type=int, default=500, help="planted and right workings each (default 500)")
    parser.add_argument("--pairs", type=int, default=150, help="pairs of each kind compared beside sympy (default 150)")
    parser.add_argument("--only", action="append", help="a part to measure; may be given again (default all)")
    options = parser.parse_args(arguments)
    data: Path = options.data
    parts: dict[str, Callable[[], Any]] = {
        "chains": lambda: {name: measure_chains(data / f"{name}.jsonl")
                           for name in ("chains-math", "chains-openstax", "pupil-valid")},
        "conditional": lambda: measure_conditional(data / "chains-conditional.jsonl"),
        "identities": lambda: {name: measure_identities(data / f"identities-{name}.jsonl")
                               for name in ("dlmf", "openstax", "math")},
        "pupil-slips": lambda: measure_pupils(data / "pupil-slips.jsonl"),
        "catalogue": lambda: measure_catalogue(data / "slips.json"),
        "planted": lambda: measure_planted(exercises(options.count, seed=1)),
        "right": lambda: measure_right(exercises(options.count, seed=2, slipped=False)),
        "first-wrong-step": lambda: first_wrong_step(data, options.count),
        "comparisons": lambda: measure_comparisons(data, options.pairs),
        "steps": lambda: measure_steps(data),
        "diagnoses": lambda: measure_diagnoses(data),
        "growth": measure_growth,
    }
    unknown = set(options.only or ()) - parts.keys()
    if unknown:
        parser.error(f"there is no part {', '.join(sorted(unknown))}; the parts are {', '.join(parts)}")
    if not data.is_dir():
        parser.error(f"{data} is no folder. Name the folder with the published data.")
    found = {name: work() for name, work in parts.items() if not options.only or name in options.only}
    found["peak_memory_mb"] = round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024)
    sys.stdout.write(json.dumps(found, ensure_ascii=False, indent=1) + "\n")
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
