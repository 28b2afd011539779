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
from difflib import SequenceMatcher
from pathlib import Path
from typing import TYPE_CHECKING, Any

from desktop.document import DeskLine, Document, Lines, State
from desktop.maths import tidy
from desktop.reading import PageReader

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

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
    from recognition.training.layout import Style, draw_line

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
    user = _User(window, document, goal, ways)
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


class _User:
    """Presses keys in the window, and counts them."""

    def __init__(self, window: Window, document: Document, goal: dict[int, str | None], ways: Counter[str]) -> None:
        self.window = window
        self.document = document
        self.goal = goal
        self.ways = ways
        self.keys = 0

    def confirm_page(self) -> None:
        """Deal with the doubtful lines in the order in which they come, then with sure ones that are wrong."""
        from PySide6.QtCore import Qt

        window, document = self.window, self.document
        for _ in range(4 * len(document.lines)):
            window.list.setFocus()
            if (chosen := window.list.chosen) in self._open() and self._needs_user(chosen):
                self._settle(chosen)
            elif (wrong := self._wrong()) is not None:
                self._walk_to(wrong)
                self._settle(wrong)
            elif (doubtful := document.next_doubtful(chosen)) is not None:
                self._press(Qt.Key.Key_F3)
                assert window.list.chosen == doubtful
            elif document.sure_lines():
                self._press(Qt.Key.Key_Return, Qt.KeyboardModifier.ControlModifier)
                self.ways["all sure at once"] += 1
            else:
                return
        raise AssertionError("the page was not confirmed")

    def _open(self) -> list[int]:
        lines = enumerate(self.document.lines)
        return [i for i, line in lines if line.state is not State.CONFIRMED and not line.struck_out]

    def _needs_user(self, index: int) -> bool:
        return self.document.lines[index].state is not State.READ or self._is_wrong(index)

    def _is_wrong(self, index: int) -> bool:

        return tidy(self.document.lines[index].latex) != self.goal[index]

    def _wrong(self) -> int | None:
        """The nearest line that was read with certainty and wrongly."""
        wrong = [i for i in self._open() if self.document.lines[i].state is State.READ and self._is_wrong(i)]
        return min(wrong, key=lambda i: abs(i - self.window.list.chosen)) if wrong else None

    def _walk_to(self, index: int) -> None:
        from PySide6.QtCore import Qt

        while (chosen := self.window.list.chosen) != index:
            self._press(Qt.Key.Key_Down if index > chosen else Qt.Key.Key_Up, widget=self.window.list)
            assert self.window.list.chosen != chosen

    def _settle(self, index: int) -> None:
        """Take the shortest way to what is written."""
        from PySide6.QtCore import Qt

        wanted = self.goal[index]
        if wanted is None:
            self.ways["left out"] += 1
            self._press(Qt.Key.Key_L, Qt.KeyboardModifier.ControlModifier)
            return
        line = self.document.lines[index]
        offered = [tidy(latex) for latex in self.window.editor._offered()]
        if tidy(line.latex) == wanted:
            self.ways["as read"] += 1
            self._press(Qt.Key.Key_Return)
        elif wanted in offered:
            self.ways["other reading"] += 1
            self._press([Qt.Key.Key_1, Qt.Key.Key_2, Qt.Key.Key_3, Qt.Key.Key_4, Qt.Key.Key_5][offered.index(wanted)])
        else:
            self._type(line, wanted)
            if self._is_wrong(index):  # what does not parse is asked about once
                self._press(Qt.Key.Key_Return)

    def _type(self, line: DeskLine, wanted: str) -> None:
        from PySide6.QtCore import Qt

        from desktop.doubts import doubts_of, others_of, with_other

        doubts = doubts_of(line)
        if doubts:
            least = min(doubts, key=lambda doubt: doubt.probability)
            others = [with_other(line, least.place, text) for text, _ in others_of(line, least.place)]
            if wanted in others:
                self.ways["other symbol"] += 1
                self._press(Qt.Key.Key_S)
                self._choose(others.index(wanted))
                self._press(Qt.Key.Key_Return)
                return
        self.ways["typed"] += 1
        self._press(Qt.Key.Key_F2)
        offered = [tidy(latex) for latex in self.window.editor._offered()]
        now = offered.index(tidy(line.latex)) if tidy(line.latex) in offered else 0
        costs = [abs(n - now) + _cost(text, wanted) for n, text in enumerate(offered)]
        if costs and min(costs) < _cost(tidy(line.latex), wanted):
            nearest = costs.index(min(costs))
            self._press(Qt.Key.Key_Down if nearest > now else Qt.Key.Key_Up, times=abs(nearest - now))
        self._edit(wanted)
        self._press(Qt.Key.Key_Return)

    def _choose(self, number: int) -> None:
        from PySide6.QtCore import Qt
        from PySide6.QtWidgets import QApplication

        from desktop.symbol_menu import SymbolMenu

        (menu,) = [w for w in QApplication.topLevelWidgets() if isinstance(w, SymbolMenu) and w.isVisible()]
        self._press(Qt.Key(Qt.Key.Key_1.value + number), widget=menu)

    def _edit(self, wanted: str) -> None:
        """Change what stands in the field to what is wanted, piece by piece or as a whole, with the fewest keys."""
        from PySide6.QtCore import Qt

        field = self.window.editor._field
        pieces = _pieces(field.text(), wanted)
        cursor = field.textCursor()
        has_all = cursor.selectionEnd() - cursor.selectionStart() == len(field.text())
        by_pieces = _cost(field.text(), wanted) + 4
        if len(wanted) + (0 if has_all else 2) < by_pieces:
            if not has_all:
                self._press(Qt.Key.Key_A, Qt.KeyboardModifier.ControlModifier)
            self._write(wanted)
            return
        grown = 0
        for start, end, new in pieces:
            start, end = start + grown, end + grown
            self._go_to(start, end)
            cursor = field.textCursor()
            if (cursor.selectionStart(), cursor.selectionEnd()) == (start, end) and cursor.hasSelection():
                if not new:
                    self._press(Qt.Key.Key_Delete)
            else:
                assert cursor.position() in (start, end), (cursor.position(), start, end)
                key = Qt.Key.Key_Delete if cursor.position() == start else Qt.Key.Key_Backspace
                self._press(key, times=end - start)
            self._write(new)
            grown += len(new) - (end - start)

    def _go_to(self, start: int, end: int) -> None:
        """Bring the cursor to a piece: it is selected already, Tab selects it, or Home, End and the arrows."""
        from PySide6.QtCore import Qt

        field = self.window.editor._field
        cursor = field.textCursor()
        if (cursor.selectionStart(), cursor.selectionEnd()) == (start, end):
            return
        later = [(c.selectionStart(), c.selectionEnd()) for c in field._places
                 if c.hasSelection() and c.selectionStart() >= cursor.selectionEnd()]  # fmt: skip
        length = len(field.text())
        here = cursor.selectionStart() if cursor.hasSelection() else cursor.position()
        there = cursor.selectionEnd() if cursor.hasSelection() else cursor.position()
        extra = int(cursor.hasSelection())  # the first arrow only takes the selection off
        ways: list[tuple[int, str, int]] = [(1 + start, "home", start), (1 + length - end, "end", end)]
        ways += [(extra + here - goal, "left", goal) for goal in (start, end) if goal <= here]
        ways += [(extra + goal - there, "right", goal) for goal in (start, end) if goal >= there]
        if (start, end) in later and "{}" not in field.text()[cursor.position():]:
            ways.append((later.index((start, end)) + 1, "tab", start))
        keys, way, _ = min(ways)
        if way == "tab":
            self._press(Qt.Key.Key_Tab, times=keys)
        elif way in ("home", "end"):
            self._press(Qt.Key.Key_Home if way == "home" else Qt.Key.Key_End)
            self._press(Qt.Key.Key_Right if way == "home" else Qt.Key.Key_Left, times=keys - 1)
        else:
            self._press(Qt.Key.Key_Left if way == "left" else Qt.Key.Key_Right, times=keys)

    def _write(self, text: str) -> None:
        from PySide6.QtTest import QTest

        self.keys += len(text)
        field = self.window.editor._field
        for sign in text:
            QTest.keyClicks(field, sign)
            field._popup.hide()

    def _press(self, key: Any, modifier: Any = None, *, times: int = 1, widget: QWidget | None = None) -> None:
        from PySide6.QtCore import Qt
        from PySide6.QtTest import QTest

        none = Qt.KeyboardModifier.NoModifier
        for _ in range(times):
            self.keys += 1 if modifier in (None, none) else 2
            QTest.keyClick(widget or self.window.focusWidget() or self.window, key, modifier or none)


def _pieces(text: str, wanted: str) -> list[tuple[int, int, str]]:
    """What to replace in a text, from left to right: a half-open range of characters, and what comes there."""
    codes = SequenceMatcher(None, text, wanted, autojunk=False).get_opcodes()
    return [(a, b, wanted[c:d]) for kind, a, b, c, d in codes if kind != "equal"]


def _cost(text: str, wanted: str) -> int:
    """About how many keys it takes to make one text of another."""
    return sum(len(new) + end - start + 2 for start, end, new in _pieces(text, wanted))


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
