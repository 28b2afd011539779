"""How many keys are pressed until a page is confirmed?

`python -m desktop.measure_keys ../shared/data/crohme/test2014.jsonl.xz`

Simulated photos of twelve lines of school working, each page in the hand of one writer whom the reader was not taught,
are found, read and shown in the real window. A user who knows what is written presses the keys of the real window until
every line stands as written and is confirmed, taking at each line the shortest way that the window offers. Beside it:
the keys of typing the same lines. Each key of a chord counts, a character that is typed counts once.

With `--readings FILE` the readings are kept in that file, or taken from it when it is there, so that only the keys are
counted anew.

Lines that line finding missed are typed into a line of their own, lines found where none is are left out; both count.
Writers of CROHME 2013 serve tuning, those of 2014 the figure. One JSON object is printed.
"""

from __future__ import annotations

import argparse
import json
import lzma
import os
import pickle
import random
import statistics
import sys
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from desktop.desk_line import DeskLine, Lines
from desktop.document import Document
from desktop.key_user import KeyUser
from desktop.maths import tidy
from desktop.reading import PageReader

if TYPE_CHECKING:
    from desktop.window import Window
    from recognition.training.working_lines import PageOfWorking, WrittenLine

__all__ = ["main"]

LINES = 12
_LEAST_OVERLAP = 0.5
"""Intersection over union of upright boxes under which a found line is not that written line."""


@dataclass(slots=True)
class _Read:
    """A page: its lines as they were found and read, its size, and what is written on it."""

    lines: Lines
    size: tuple[int, int]
    written: tuple[WrittenLine, ...]


@dataclass(slots=True)
class _Count:
    """Keys of one page, and how its lines were dealt with."""

    keys: int
    typed: int
    ways: Counter[str]


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object; returns the exit status."""
    parser = argparse.ArgumentParser(prog="python -m desktop.measure_keys", description=__doc__,
                                     formatter_class=argparse.RawDescriptionHelpFormatter)  # fmt: skip
    parser.add_argument("ink", type=Path, help="JSON lines (xz) of writers that the reader was not taught")
    parser.add_argument("--pages", type=int, default=30)
    parser.add_argument("--seed", type=int, default=100_000)
    parser.add_argument("--readings", type=Path, help="keep the readings in this file, or take them from it")
    options = parser.parse_args(arguments)
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from desktop.application import make_application
    from desktop.desk import Desk
    from desktop.window import Window

    make_application()
    desk = Desk()
    window = Window(desk)
    window.show()
    counts = []
    for number, page in enumerate(_readings(options), start=1):
        counts.append(_page_count(window, page))
        sys.stderr.write(f"page {number}: {counts[-1].keys} keys, typed {counts[-1].typed}\n")
    window.close()
    sys.stdout.write(json.dumps({"ink": options.ink.name, "seed": options.seed, **_summary(counts)}, indent=1) + "\n")
    return 0


def _readings(options: argparse.Namespace) -> Iterator[_Read]:
    """The pages as they were found and read; from the file where they are kept."""
    kept: list[_Read] = []
    if options.readings is not None and options.readings.is_file():
        kept = pickle.loads(options.readings.read_bytes())[: options.pages]  # our own file, written below
        yield from kept
    if len(kept) == options.pages:
        return
    reader = PageReader()
    for number, page in enumerate(_pages(options.ink, options.pages, options.seed)):
        if number < len(kept):
            continue
        found = reader.find_in_picture(page.image, "page.png")
        found.document.take_readings(reader.read(found))
        kept.append(_Read(found.document.lines, found.document.size, page.lines))
        if options.readings is not None:
            options.readings.write_bytes(pickle.dumps(kept))
        yield kept[-1]


def _pages(ink: Path, count: int, seed: int) -> Iterator[PageOfWorking]:
    """Pages with all twelve lines on them."""
    from recognition.training.hands import one_hand, writer_hands
    from recognition.training.working_lines import page_of_working, school_lines

    with lzma.open(ink, "rt", encoding="utf-8") as rows:
        hands = writer_hands(map(json.loads, rows))
    rng = random.Random(seed)
    source = school_lines(rng, ())
    writers = [hand for hand in hands if hand.symbols >= 150]
    made = number = 0
    while made < count:
        writer = writers[number % len(writers)]
        number += 1
        bank = one_hand(writer, hands, rng)
        page = page_of_working(writer, bank, _settable(source, bank), rng)
        if len(page.lines) == LINES:
            made += 1
            yield page


def _settable(source: Iterator[tuple[tuple[str, ...], str]], bank: Any) -> list[tuple[tuple[str, ...], str]]:
    from recognition.reader.tokens import NotCanonical, parse
    from recognition.training.layout import draw_line
    from recognition.training.style import Style

    lines: list[tuple[tuple[str, ...], str]] = []
    while len(lines) < LINES:
        line = next(source)
        try:
            draw_line(parse(" ".join(line[0])), bank, Style(), random.Random(0))
        except NotCanonical:
            continue
        lines.append(line)
    return lines


def _page_count(window: Window, page: _Read) -> _Count:
    from PySide6.QtTest import QTest

    desk = window._desk
    document = Document("page.png", size=page.size, lines=page.lines)
    desk.add(document)
    while desk.busy:
        QTest.qWait(5)
    window.pages.setCurrentRow(len(desk.documents) - 1)
    window.list.choose(document.next_doubtful(-1) or 0)
    goal, missed = _goal(document, page)
    ways: Counter[str] = Counter()
    user = KeyUser(window, document, goal, ways)
    user.confirm_page()
    truths = [tidy(" ".join(line.tokens)) for line in page.written]
    for latex in missed:
        user.keys += len(latex) + 3  # the keys of adding a line, then what it says and Enter
        ways["missed"] += 1
    for index, wanted in goal.items():
        line = document.lines[index]
        assert line.struck_out if wanted is None else tidy(line.latex) == wanted, (line.latex, wanted)
    desk.remove(document)
    return _Count(user.keys, sum(len(latex) + 1 for latex in truths), ways)


def _goal(document: Document, page: _Read) -> tuple[dict[int, str | None], list[str]]:
    """What each found line should say (None for no line at all), and what the lines say that were not found."""

    pairs = sorted(
        (
            (_overlap(line, true.box), i, j)
            for i, line in enumerate(document.lines) for j, true in enumerate(page.written)
        ),
        reverse=True,
    )
    goal: dict[int, str | None] = dict.fromkeys(range(len(document.lines)))
    used: set[int] = set()
    for overlap, i, j in pairs:
        if overlap >= _LEAST_OVERLAP and goal[i] is None and j not in used:
            used.add(j)
            goal[i] = tidy(" ".join(page.written[j].tokens))
    missed = [tidy(" ".join(line.tokens)) for j, line in enumerate(page.written) if j not in used]
    return goal, missed


def _overlap(line: DeskLine, true: tuple[float, float, float, float]) -> float:
    x, y, w, h = line.box
    width = min(x + w, true[2]) - max(x, true[0])
    height = min(y + h, true[3]) - max(y, true[1])
    both = max(0.0, width) * max(0.0, height)
    return both / (w * h + (true[2] - true[0]) * (true[3] - true[1]) - both)


def _summary(counts: Sequence[_Count]) -> dict[str, object]:
    keys, typed = [count.keys for count in counts], [count.typed for count in counts]
    ways: Counter[str] = Counter()
    for count in counts:
        ways.update(count.ways)
    return {
        "pages": len(counts), "lines_a_page": LINES,
        "keys_mean": round(statistics.mean(keys), 1), "keys_median": statistics.median(keys), "keys_most": max(keys),
        "pages_within_30": sum(number <= 30 for number in keys),
        "typing_all_mean": round(statistics.mean(typed), 1), "ways": dict(ways.most_common()),
    }  # fmt: skip


if __name__ == "__main__":
    sys.exit(main())
