"""How many of the checker's sentences does a German desk show in German, and what does translating one cost?

`python -m desktop.measure_sentences ../shared/data/checker --count 2000 --seed 7`

Fresh workings with planted slips of every documented kind, whole practice workings, and, where a folder with published
and pupils' workings is given, a share of those, each as it is and once more with one sign, digit or letter changed.
Every sentence of their reports, every hint and every sentence on them as claims for all values is translated. One JSON
object is printed: how many different sentences there were, how many stayed English with some of them, and the
processor's time for one translation, nothing remembered, in microseconds.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import statistics
import sys
import time
from collections.abc import Iterator, Sequence
from pathlib import Path

from PySide6.QtCore import QCoreApplication

from checker.practice import exercises
from checker.practice.documented import PLANTINGS, documented_exercise
from checker.report import Working
from checker.slips.hints import hint
from checker.working import judge
from desktop.claims import claim_of
from desktop.sentences import in_language
from desktop.translation import install

__all__ = ["changed", "main", "planted", "sentences_of", "written"]

_BUDGET_S = 0.6
_FILES = ("pupil-slips", "pupil-valid", "chains-openstax", "chains-math", "chains-conditional")
_CLAIMS = ("identities-dlmf", "identities-math", "identities-openstax")

Lines = tuple[str, ...]


def planted(count: int, seed: int) -> Iterator[Lines]:
    """Workings with a planted slip: one of each documented kind in turn, then practice workings."""
    names = list(PLANTINGS)
    for number in range(count // 2):
        yield documented_exercise(names[number % len(names)], seed * 1_000_003 + number).lines
    for one in exercises(count - count // 2, seed=seed):
        yield one.lines


def written(folder: Path, count: int, seed: int) -> Iterator[Lines]:
    """Published and pupils' workings, each once more with one character changed."""
    rows = [row for name in _FILES for row in (folder / f"{name}.jsonl").read_text(encoding="utf-8").splitlines()]
    draws = random.Random(seed)
    for row in draws.sample(rows, min(count, len(rows))):
        lines = tuple(json.loads(row)["lines"])
        yield lines
        at = draws.randrange(len(lines))
        yield (*lines[:at], changed(lines[at], draws), *lines[at + 1 :])


def changed(line: str, draws: random.Random) -> str:
    """The line with one sign, digit or lone letter changed."""
    places = [at for at, sign in enumerate(line) if sign in "+-<>0123456789" or _is_lone_letter(line, at)]
    if not places:
        return line
    at = draws.choice(places)
    instead = {"+": "-", "-": "+", "<": ">", ">": "<"}.get(line[at])
    if instead is None and line[at].isdigit():
        instead = str((int(line[at]) + draws.randint(1, 4)) % 10)
    return line[:at] + (instead or draws.choice((f"{line[at]}^2", f"2{line[at]}", ""))) + line[at + 1 :]


def _is_lone_letter(line: str, at: int) -> bool:
    return line[at].isalpha() and not _is_letter(line, at - 1) and not _is_letter(line, at + 1)


def _is_letter(line: str, at: int) -> bool:
    return 0 <= at < len(line) and (line[at].isalpha() or line[at] == "\\")


def sentences_of(working: Working) -> Iterator[str]:
    """Every sentence that the desk may show of a working."""
    report = judge(working, budget_s=_BUDGET_S)
    yield from (report.answer, report.final.reason)
    for row in report.lines:
        yield row.reason
        if row.slip is not None:
            yield row.slip.because
            yield from (hint(row.slip, grade) for grade in (1, 2, 3))


def main(arguments: Sequence[str] | None = None) -> int:
    parser = argparse.ArgumentParser(prog="python -m desktop.measure_sentences", description=__doc__)
    parser.add_argument("data", nargs="?", type=Path, help="folder with published and pupils' workings")
    parser.add_argument("--count", type=int, default=1000, help="workings of each kind (default 1000)")
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args(arguments)
    application = _speak_german()  # translates as long as it is held
    found: dict[str, None] = {}
    workings = list(planted(options.count, options.seed))
    claims: list[str] = []
    if options.data is not None:
        workings += written(options.data, options.count, options.seed)
        claims = list(_claims(options.data, options.seed))
    for lines in workings:
        found.update(dict.fromkeys(sentences_of(Working(lines=lines))))
    for line in claims:
        found[claim_of(line).reason] = None
    found.pop("", None)
    in_language("The line before has ab. It is 3.")  # the forms are taken apart once
    told = _measured(list(found), len(workings), len(claims))
    sys.stdout.write(json.dumps(told, ensure_ascii=False) + "\n")
    del application
    return 0


def _claims(folder: Path, seed: int) -> Iterator[str]:
    draws = random.Random(seed)
    for name in _CLAIMS:
        for row in (folder / f"{name}.jsonl").read_text(encoding="utf-8").splitlines():
            for line in json.loads(row)["lines"]:
                yield line
                yield changed(line, draws)


def _measured(sentences: Sequence[str], workings: int, claims: int) -> dict[str, object]:
    times: list[float] = []
    english: list[str] = []
    for sentence in sentences:
        begun = time.thread_time()
        told = in_language(sentence)
        times.append((time.thread_time() - begun) * 1e6)
        if told == sentence:
            english.append(sentence)
    share = len(english) / max(1, len(sentences))
    cuts = statistics.quantiles(times, n=100) if len(times) > 1 else [0.0] * 99
    return {
        "workings": workings, "claims": claims, "sentences": len(sentences), "english": len(english),
        "english_percent": round(100 * share, 3), "examples": english[:10], "us_p50": round(cuts[49], 1),
        "us_p95": round(cuts[94], 1), "us_p99": round(cuts[98], 1), "us_most": round(max(times, default=0.0), 1),
    }  # fmt: skip


def _speak_german() -> QCoreApplication:
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    application = QCoreApplication.instance() or QCoreApplication(sys.argv[:1])
    if not install(application, "de"):
        raise SystemExit("The German words are missing. Run python -m desktop.translations first.")
    return application


if __name__ == "__main__":
    raise SystemExit(main())
