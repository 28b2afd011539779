"""What is lost when the program is killed while the user works?

`python -m desktop.measure_kill --kills 200` lets a process edit a set of pages at random, kills it (SIGKILL) at a
random moment, opens the set and compares it with every state it went through; it prints one JSON object. A second of
work is the most that may be missing, and the set must open each time.
"""

from __future__ import annotations

import argparse
import json
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from desktop.desk_line import DeskLine, LineMark, Override, State
from desktop.document import AnyChange, Content, Document
from desktop.line_changes import InsertLine, MarkStart, RemoveLine, SetReading, StrikeOut
from desktop.page_changes import AwardMarks, Overrule, SetCandidate, SetStrokes
from desktop.store import SetFile
from desktop.store_blobs import stroke_blob
from recognition.errors import InputError
from recognition.ink import Stroke
from recognition.result import Box, Candidate, Token

__all__ = ["Loss", "kill_once", "main"]

_PAGES = 4
_LINES = 12
_LONGEST_S = 2.5
"""The kill comes at a random moment up to so long after the first edit."""
_EDIT_MS = (1, 40)
"""Least and most wait between two edits: far quicker than a hand."""


@dataclass(frozen=True, slots=True)
class Loss:
    """What one kill cost; opened is the sentence when the set did not open, else empty.

    lost_ms: age of the oldest edit that is missing, at the moment of the kill; 0 when none is.
    """

    edits: int
    missing: int
    lost_ms: float
    opened: str = ""


def kill_once(path: Path, seed: int, *, after_s: float) -> Loss:
    """Let a process edit the set at `path` and kill it; then see what the file holds."""
    command = [sys.executable, "-m", "desktop.measure_kill", "--edit", str(path), "--seed", str(seed)]
    with subprocess.Popen(command, stdout=subprocess.PIPE) as process:
        assert process.stdout is not None
        head = process.stdout.readline()
        if not head:
            raise RuntimeError("the editing process did not start")
        time.sleep(after_s)
        os.kill(process.pid, signal.SIGKILL)
        killed = time.monotonic()
        log = head + process.stdout.read()
    times = [float(line.split()[1]) for line in log.decode().splitlines() if line.endswith(".")]
    try:
        store = SetFile.open(path)
        try:
            held = [page.document.content for page in store.pages()]
            for page in store.pages():
                if page.document.size[0] and store.picture(page.key) is None:
                    return Loss(len(times), 0, 0.0, "a picture is missing")
        finally:
            store.close()
    except InputError as exc:
        return Loss(len(times), len(times), 0.0, str(exc))
    match = _last_match(held, seed, len(times))
    if match is None:
        return Loss(len(times), len(times), 0.0, "the set holds a state that never was")
    missing = len(times) - match
    return Loss(len(times), missing, max(0.0, (killed - times[match]) * 1000) if missing else 0.0)


def _last_match(held: Sequence[Content], seed: int, count: int) -> int | None:
    """After how many edits the pages were as the file holds them; a log line may be cut, so one more may be there."""
    pages, chance = _fresh_pages(), random.Random(seed)
    wanted = [_key(content) for content in held]
    keys = [_key(page.content) for page in pages]
    last = 0 if wanted in ([], keys) else None
    for number in range(1, count + 2):
        changed = _edit(pages, chance, number)
        keys[changed] = _key(pages[changed].content)
        if keys == wanted:
            last = number
    return None if last is None else min(last, count)


def _key(content: Content) -> tuple[object, ...]:
    return content.lines, tuple(stroke_blob(stroke) for stroke in content.strokes), content.candidate


def _fresh_pages() -> list[Document]:
    chance = random.Random(1)
    pages = []
    for page in range(_PAGES):
        lines = tuple(_line(chance, number) for number in range(_LINES))
        pages.append(Document(file=f"page-{page}.jpg", page=page, size=(1240, 1754), lines=lines))
    return pages


def _line(chance: random.Random, number: int) -> DeskLine:
    box = Box(100, 100 + 120 * number, 700, 80)
    candidates = tuple(
        Candidate(latex := f"= {a} k + {number}", 0.9 - a / 10, tuple(Token(t, 0.9, box) for t in latex.split()))
        for a in range(2, 7)
    )
    state = chance.choice((State.READ, State.DOUBTFUL))
    return DeskLine(box, candidates, candidates[0].latex, state, polygon=((0.5, 1.0), (2.0, 3.0), (4.0, 5.25)))


def _edit(pages: list[Document], chance: random.Random, number: int) -> int:
    """Make the next random edit; gives the number of the page that it changed."""
    which = chance.randrange(len(pages))
    page = pages[which]
    if chance.random() < 0.1:
        page.undo()
    else:
        page.do(_change(page, chance, number))
    return which


def _change(page: Document, chance: random.Random, number: int) -> AnyChange:
    index = chance.randrange(len(page.lines)) if page.lines else 0
    points = np.array([[chance.random(), chance.random()] for _ in range(chance.randint(1, 60))])
    choices: list[AnyChange] = [
        InsertLine(index, _line(chance, number)),
        SetCandidate(str(4000 + number)),
        SetStrokes((*page.strokes, Stroke(points, np.arange(len(points), dtype=np.float64))), page.lines),
        SetStrokes(page.strokes[1:], page.lines, "Rub out"),
    ]
    if page.lines:
        choices += [SetReading(index, f"= k + {number}")] * 6
        choices += [
            StrikeOut(index, not page.lines[index].struck_out), MarkStart(index, True), RemoveLine(index),
            Overrule(index, Override(number % 2 == 0, f"note {number}")), AwardMarks(index, (LineMark("M"),)),
        ]  # fmt: skip
    return chance.choice(choices)


def _edit_for_ever(path: Path, seed: int) -> int:
    from PySide6.QtCore import QCoreApplication, QTimer

    from desktop.autosave import Autosave

    application = QCoreApplication(["measure_kill"])
    autosave = Autosave(SetFile.create(path))
    pages, chance, pause = _fresh_pages(), random.Random(seed), random.Random(seed + 1)
    noise = np.random.default_rng(seed)
    for page in pages:
        page.picture = noise.integers(0, 255, (page.size[1], page.size[0], 3), np.uint8)
        autosave.watch(page)
    autosave.finish()
    number = 0

    def edit() -> None:
        nonlocal number
        number += 1
        _edit(pages, chance, number)
        os.write(1, f"{number} {time.monotonic():.6f} .\n".encode())
        QTimer.singleShot(pause.randint(*_EDIT_MS), edit)

    edit()
    return application.exec()


def main(argv: Sequence[str] | None = None) -> int:
    """Run the measurement; returns the exit status."""
    parser = argparse.ArgumentParser(prog="python -m desktop.measure_kill", description=__doc__)
    parser.add_argument("--kills", type=int, default=200, help="how often to kill (200)")
    parser.add_argument("--seed", type=int, default=1, help="where chance begins (1)")
    parser.add_argument("--edit", type=Path, help=argparse.SUPPRESS)
    options = parser.parse_args(argv)
    if options.edit is not None:
        return _edit_for_ever(options.edit, options.seed)
    chance = random.Random(options.seed)
    losses = []
    with tempfile.TemporaryDirectory() as folder:
        for number in range(options.kills):
            path = Path(folder) / f"{number}.firstslip"
            losses.append(kill_once(path, options.seed * 1000 + number, after_s=chance.uniform(0, _LONGEST_S)))
            path.unlink(missing_ok=True)
    ages = sorted(loss.lost_ms for loss in losses)
    result = {
        "kills": len(losses),
        "edits": sum(loss.edits for loss in losses),
        "not_opened": sum(bool(loss.opened) for loss in losses),
        "lost_ms_median": round(ages[len(ages) // 2]),
        "lost_ms_p95": round(ages[int(0.95 * (len(ages) - 1))]),
        "lost_ms_most": round(ages[-1]),
        "over_a_second": sum(age > 1000 for age in ages),
    }
    sys.stdout.write(json.dumps(result, indent=1) + "\n")
    for loss in losses:
        if loss.opened:
            sys.stdout.write(loss.opened + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())
