"""Readings that a user has confirmed, from a JSON file: our own report, or a list of lines with boxes."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import dataclass, replace
from difflib import SequenceMatcher
from pathlib import Path
from typing import Any

from desktop.desk_line import DeskLine, Lines, State
from desktop.places import token_spans
from recognition.errors import InputError
from recognition.result import Box

__all__ = ["ConfirmedLine", "confirmed_file", "load_confirmed", "merge_confirmed"]

_LEAST_OVERLAP = 0.2
"""Share of two boxes' union that they must have in common to be the same line."""


@dataclass(frozen=True, slots=True)
class ConfirmedLine:
    """One line as the user confirmed it; starts_working is None where the file does not say."""

    latex: str
    box: Box | None = None
    starts_working: bool | None = None


def confirmed_file(given: Sequence[Path], name: str, *, only_one: bool) -> Path | None:
    """The file of confirmed lines for a page.

    Args:
        given: files and folders as the user named them.
        name: the page's name in the report, such as "page" or "page-2".
        only_one: whether there is just one page to do, which then takes a single file whatever its name.
    """
    for path in given:
        if path.is_dir():
            if (path / f"{name}.json").is_file():
                return path / f"{name}.json"
        elif path.stem == name or (only_one and len(given) == 1):
            return path
    return None


def load_confirmed(path: Path) -> tuple[ConfirmedLine, ...]:
    """Read confirmed lines: {"workings": [{"lines": [...]}]} as in our report, or {"lines": [...]}.

    Each line is {"latex": "...", "box": [x, y, w, h]}; the box may be left out, and so may the object round a bare
    string. Lines with "struck_out": true are passed over.

    Raises:
        InputError: the file cannot be read or does not hold lines; the sentence names what is wrong.
    """
    try:
        data = json.loads(path.read_text(encoding="utf-8"))
    except OSError as exc:
        raise InputError(f"{path.name} could not be read. Check the name given to --confirmed.") from exc
    except (UnicodeDecodeError, json.JSONDecodeError) as exc:
        raise InputError(f"{path.name} is not JSON. Give a report of ours, or lines with latex and box.") from exc
    except RecursionError as exc:
        raise InputError(f"{path.name} is nested too deeply to be a list of lines.") from exc
    if not isinstance(data, dict) or not ("workings" in data or "lines" in data):
        raise InputError(f'{path.name} has neither "workings" nor "lines". Give a report of ours, or lines with latex.')
    lines: list[ConfirmedLine] = []
    if "workings" in data:
        for working in _list(data["workings"], path, "workings"):
            if not isinstance(working, dict):
                raise InputError(f'{path.name}: each of "workings" is an object with "lines".')
            first = len(lines)
            lines.extend(_lines(working.get("lines"), path))
            lines[first:] = [replace(ln, starts_working=k == 0) for k, ln in enumerate(lines[first:])]
    else:
        lines.extend(_lines(data["lines"], path))
    if not lines:
        raise InputError(f"{path.name} holds no lines. Write at least one line into it, or leave --confirmed out.")
    return tuple(lines)


def _lines(data: Any, path: Path) -> list[ConfirmedLine]:
    out = []
    for number, item in enumerate(_list(data, path, "lines"), start=1):
        if isinstance(item, str):
            out.append(ConfirmedLine(item))
            continue
        latex = item.get("latex") if isinstance(item, dict) else None
        if not isinstance(latex, str):
            raise InputError(f'{path.name}: line {number} has no "latex". Write what the line says as LaTeX.')
        if item.get("struck_out"):
            continue
        out.append(ConfirmedLine(latex, _box(item.get("box"), path, number)))
    return out


def _box(data: Any, path: Path, number: int) -> Box | None:
    if data is None:
        return None
    good = isinstance(data, list) and len(data) == 4 and all(
        isinstance(v, int | float) and not isinstance(v, bool) and abs(v) < 1e6 for v in data
    )
    if not good:
        raise InputError(f"{path.name}: the box of line {number} is not [x, y, width, height] in pixels.")
    return Box(*(round(v) for v in data))


def _list(data: Any, path: Path, what: str) -> list[Any]:
    if not isinstance(data, list):
        raise InputError(f'{path.name}: "{what}" is not a list.')
    return data


def merge_confirmed(confirmed: Sequence[ConfirmedLine], found: Sequence[DeskLine]) -> Lines:
    """Lines as confirmed, each with the candidates of the line found at its place, so that terms can be located.

    A confirmed line without a box takes that of the found line that reads most like it, in order.
    """
    partner = _by_box(confirmed, found) if all(c.box is not None for c in confirmed) else _by_likeness(confirmed, found)
    lines: list[DeskLine] = []
    for index, line in enumerate(confirmed):
        other = None if partner[index] is None else found[partner[index] or 0]
        box = line.box or (other.box if other is not None else _place_between(index, partner, found))
        lines.append(
            DeskLine(
                box=box, candidates=other.candidates if other is not None else (), latex=line.latex,
                state=State.CONFIRMED, polygon=other.polygon if other is not None and line.box is None else (),
                starts_working=line.starts_working,
            )
        )
    return tuple(lines)


def _by_box(confirmed: Sequence[ConfirmedLine], found: Sequence[DeskLine]) -> list[int | None]:
    partner: list[int | None] = []
    for line in confirmed:
        assert line.box is not None
        shares = [_overlap(line.box, other.box) for other in found]
        best = max(range(len(found)), key=shares.__getitem__, default=None)
        partner.append(best if best is not None and shares[best] >= _LEAST_OVERLAP else None)
    return partner


def _by_likeness(confirmed: Sequence[ConfirmedLine], found: Sequence[DeskLine]) -> list[int | None]:
    """Pair lines in order so that the sum of likenesses is largest (dynamic programme)."""
    rows, columns = len(confirmed), len(found)
    likeness = [[_likeness(c.latex, f) for f in found] for c in confirmed]
    best = [[0.0] * (columns + 1) for _ in range(rows + 1)]
    for i in range(rows - 1, -1, -1):
        for j in range(columns - 1, -1, -1):
            best[i][j] = max(best[i + 1][j], best[i][j + 1], best[i + 1][j + 1] + likeness[i][j])
    partner: list[int | None] = [None] * rows
    i = j = 0
    while i < rows and j < columns:
        if best[i][j] == best[i + 1][j + 1] + likeness[i][j] and likeness[i][j] > 0:
            partner[i] = j
            i, j = i + 1, j + 1
        elif best[i][j] == best[i + 1][j]:
            i += 1
        else:
            j += 1
    return partner


def _likeness(latex: str, line: DeskLine) -> float:
    wanted = [text for text, _, _ in token_spans(latex)]
    readings = [c.latex for c in line.candidates] or [line.latex]
    ratios = (
        SequenceMatcher(None, wanted, [t for t, _, _ in token_spans(r)], autojunk=False).ratio() for r in readings
    )
    return 0.05 + max(ratios) if not line.struck_out else 0.0


def _place_between(index: int, partner: Sequence[int | None], found: Sequence[DeskLine]) -> Box:
    """An empty place for a line whose writing was not found: under the paired line before it."""
    for before in range(index - 1, -1, -1):
        other = partner[before]
        if other is not None:
            box = found[other].box
            return Box(box.x, box.y + box.h, box.w, 1)
    return Box(0, 0, 1, 1)


def _overlap(one: Box, other: Box) -> float:
    width = min(one.x + one.w, other.x + other.w) - max(one.x, other.x)
    height = min(one.y + one.h, other.y + other.h) - max(one.y, other.y)
    if width <= 0 or height <= 0:
        return 0.0
    both = width * height
    return both / (one.w * one.h + other.w * other.h - both)
