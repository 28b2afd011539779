"""How well does a reader read lines whose truth is known?"""

from __future__ import annotations

import json
import lzma
import time
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final, Literal

import numpy as np
from numpy.typing import NDArray

from recognition.captions import merged_spellings
from recognition.errors import InputError
from recognition.page import LineCrop, open_pages
from recognition.page_letters import with_page_letters
from recognition.read import Reader, line_from_picture, whole_line
from recognition.reader import LinePicture, LineStrokes
from recognition.reader.calibration import calibration_error, share_of_wrong_in_doubt
from recognition.reader.canonical import draw_strokes, typical_height
from recognition.reader.edits import edit_distance
from recognition.reader.tokens import NotCanonical, is_lower_school, is_school, normalise
from recognition.result import Box, Candidate, Tick, no_tick

__all__ = ["Route", "Sample", "edit_distance", "evaluate", "load_samples", "structure"]

Route = Literal["as given", "ink", "images"]
_LENGTHS: Final = (10, 20, 30, 40, 50)
_SYMBOL_RANGE: Final = (40.0, 110.0)  # px: heights of a typical stroke at which ink is drawn for the picture route
_WRITER_LINES: Final = 5
"""A writer with fewer lines says nothing about hands."""
_PENS: Final = (2, 3, 4)  # px, at a height of 40


@dataclass(frozen=True, slots=True)
class DrawnStrokes:
    """Strokes as the ink route reads them, in their own unit."""

    strokes: tuple[NDArray[np.float64], ...]
    to_original: NDArray[np.float64] = field(default_factory=lambda: np.eye(3))


@dataclass(frozen=True, slots=True)
class Sample:
    """One line with its truth; `truth` is None where the label has no canonical form (it then counts as wrong)."""

    identity: str
    truth: tuple[str, ...] | None
    crop: LinePicture | LineStrokes
    writer: str | None = None
    page: str | None = None
    """lines of one page weigh each other's letters (page_letters.py)"""
    merged: tuple[str, ...] = ()
    """commands of the label as annotated that our vocabulary merges (see captions.py)"""


@dataclass(frozen=True, slots=True)
class _Outcome:
    sample: Sample
    candidates: tuple[Candidate, ...]
    distance: int

    @property
    def is_right(self) -> bool:
        return self.sample.truth is not None and self.distance == 0

    @property
    def is_among_five(self) -> bool:
        truth = " ".join(self.sample.truth or ())
        return any(candidate.latex == truth for candidate in self.candidates[:5])


def load_samples(path: Path, *, route: Route = "as given", limit: int | None = None) -> Iterator[Sample]:
    """Read lines from JSON lines (plain or xz): objects with `latex` and `strokes` or `image`, a path beside the file.

    `page` names the page of a line, `writer` its writer; `evened` says that the image is a crop of the page stage.

    Args:
        route: "ink" takes strokes; "images" draws strokes at a random size and pen (seeded by the line's number) and
            takes pictures; "as given" takes what is there, strokes first.
        limit: take this many lines, evenly spread over the file.
    Raises:
        InputError: the file cannot be read, or a line of it is not such an object.
    """
    rows = _rows(path)
    if limit is not None and 0 < limit < len(rows):
        rows = [rows[number] for number in np.linspace(0, len(rows) - 1, limit).astype(int)]
    for number, row in rows:
        if not isinstance(row.get("latex"), str):
            continue  # nothing to compare with
        try:
            yield Sample(
                str(row.get("id", number)), _truth(row["latex"]), _crop(row, path, route, number),
                None if row.get("writer") is None else str(row["writer"]),
                None if row.get("page") is None else str(row["page"]),
                merged_spellings(str(row.get("latex_raw") or row["latex"])),
            )  # fmt: skip
        except (TypeError, ValueError, KeyError, IndexError) as exc:
            raise InputError(
                f"Line {number + 1} of {path.name} has neither good strokes nor an image for this route. Mend the line."
            ) from exc


def evaluate(
    samples: Sequence[Sample],
    reader: Reader,
    *,
    beam: int = 5,
    allowed: Collection[str] | None = None,
    tick: Tick = no_tick,
) -> tuple[dict[str, Any], list[tuple[Candidate, ...]]]:
    """Read the lines one at a time and count.

    Returns:
        The report (rates in percent; calibration_error as a fraction; times in ms a line) and the candidates.
    """
    alone: list[tuple[Candidate, ...]] = []
    times: list[float] = []
    for number, sample in enumerate(samples):
        tick(number, len(samples))
        start = time.perf_counter()
        alone += reader.read((sample.crop,), beam=beam, allowed=allowed)
        times.append((time.perf_counter() - start) * 1000)
    tick(len(samples), len(samples))
    together = _by_page(samples, alone)
    outcomes = [_outcome(sample, readings) for sample, readings in zip(samples, together, strict=True)]
    known = [one for one in outcomes if one.sample.truth is not None]

    report = _rates(outcomes)
    report["out_of_vocabulary"] = len(outcomes) - len(known)
    report["ms_per_line_p50"] = round(float(np.percentile(times or [0.0], 50)), 1)
    report["ms_per_line_p95"] = round(float(np.percentile(times or [0.0], 95)), 1)
    if any(sample.page is not None for sample in samples):
        report["without_page_letters"] = _rates(
            [_outcome(sample, readings) for sample, readings in zip(samples, alone, strict=True)]
        )
    report["structure"] = {
        kind: _rates([one for one in known if structure(one.sample.truth or ()) == kind])
        for kind in ("one row", "scripts", "fractions", "roots")
    }
    report["length"] = {
        name: _rates([one for one in known if low <= len(one.sample.truth or ()) < high])
        for name, low, high in _bands()
    }
    report["official_tokens"] = _in_official_tokens(outcomes)
    report["writers"] = _by_writer(outcomes)
    report["school"] = _rates([one for one in known if is_school(one.sample.truth or ())])
    report["lower_school"] = _rates([one for one in known if is_lower_school(one.sample.truth or ())])
    return report, [one.candidates for one in outcomes]


def _outcome(sample: Sample, candidates: tuple[Candidate, ...]) -> _Outcome:
    first = candidates[0].latex.split() if candidates else []
    return _Outcome(sample, candidates, edit_distance(first, sample.truth or ()))


def _by_page(samples: Sequence[Sample], alone: Sequence[tuple[Candidate, ...]]) -> list[tuple[Candidate, ...]]:
    """Readings of the lines, those of one page weighed together."""
    pages: dict[str, list[int]] = {}
    for number, sample in enumerate(samples):
        if sample.page is not None:
            pages.setdefault(sample.page, []).append(number)
    out = list(alone)
    for numbers in pages.values():
        for number, readings in zip(numbers, with_page_letters([alone[n] for n in numbers]), strict=True):
            out[number] = readings
    return out


def structure(tokens: Sequence[str]) -> str:
    """The hardest structure of a line: roots, else fractions, else scripts, else one row."""
    if r"\sqrt" in tokens:
        return "roots"
    if r"\frac" in tokens:
        return "fractions"
    return "scripts" if "^" in tokens or "_" in tokens else "one row"


def _rates(outcomes: Sequence[_Outcome]) -> dict[str, Any]:
    count = len(outcomes)
    if not count:
        return {"lines": 0}
    known = [one for one in outcomes if one.sample.truth is not None]
    sure = [one.candidates[0].probability if one.candidates else 0.0 for one in outcomes]
    right = [one.is_right for one in outcomes]
    tokens = sum(len(one.sample.truth or ()) for one in known)

    def percent(hits: int, of: int = count) -> float:
        return round(100 * hits / max(of, 1), 2)

    return {
        "lines": count,
        "ExpRate": percent(sum(right)),
        "within_1": percent(sum(one.distance <= 1 for one in known)),
        "within_2": percent(sum(one.distance <= 2 for one in known)),
        "top_5": percent(sum(one.sample.truth is not None and one.is_among_five for one in outcomes)),
        "cer": percent(sum(one.distance for one in known), tokens),
        "calibration_error": round(calibration_error(sure, right), 4),
        "wrong_among_15_percent_least_sure": percent(round(1000 * share_of_wrong_in_doubt(sure, right)), 1000),
    }


def _in_official_tokens(outcomes: Sequence[_Outcome]) -> dict[str, Any]:
    """As if our one spelling were compared with the captions as annotated: merged commands count as wrong."""
    touched = [one for one in outcomes if one.sample.merged]
    right = sum(one.is_right and not one.sample.merged for one in outcomes)
    return {
        "ExpRate": round(100 * right / max(len(outcomes), 1), 2),
        "labels_touched": len(touched),
        "of_them_right_when_merged": sum(one.is_right for one in touched),
    }


def _by_writer(outcomes: Sequence[_Outcome]) -> dict[str, Any]:
    """Over writers with several lines: how unevenly is it read?"""
    own: dict[str, list[_Outcome]] = {}
    for one in outcomes:
        if one.sample.writer is not None:
            own.setdefault(one.sample.writer, []).append(one)
    rates = sorted(
        (round(100 * sum(one.is_right for one in lines) / len(lines), 2), name, len(lines))
        for name, lines in own.items()
        if len(lines) >= _WRITER_LINES
    )
    if not rates:
        return {"writers": 0}
    worst = rates[: max(1, round(len(rates) / 10))]
    return {
        "writers": len(rates),
        "least_lines": _WRITER_LINES,
        "median_ExpRate": round(float(np.median([rate for rate, _, _ in rates])), 2),
        "worst_decile_ExpRate": round(sum(rate * count for rate, _, count in worst) / sum(n for _, _, n in worst), 2),
        "worst": [{"writer": name, "lines": count, "ExpRate": rate} for rate, name, count in worst],
    }


def _bands() -> Iterator[tuple[str, int, int]]:
    low = 1
    for high in _LENGTHS:
        yield f"{low}-{high - 1}", low, high
        low = high
    yield f"{low}+", low, 1 << 30


def _rows(path: Path) -> list[tuple[int, dict[str, Any]]]:
    rows: list[tuple[int, dict[str, Any]]] = []
    number = 0
    try:
        opener = lzma.open if path.suffix == ".xz" else open
        with opener(path, "rt", encoding="utf-8") as file:
            for number, line in enumerate(file):
                if line.strip():
                    row = json.loads(line)
                    if not isinstance(row, dict):
                        raise ValueError("not an object")
                    rows.append((number, row))
    except (OSError, EOFError, lzma.LZMAError) as exc:
        raise InputError(f"{path.name} cannot be read. Check the name and the folder, then try again.") from exc
    except ValueError as exc:
        raise InputError(f"Line {number + 1} of {path.name} is not a JSON object. Mend or remove that line.") from exc
    return rows


def _truth(latex: str) -> tuple[str, ...] | None:
    try:
        return tuple(normalise(latex)) or None
    except NotCanonical:
        return None


def _crop(row: dict[str, Any], path: Path, route: Route, number: int) -> LinePicture | LineStrokes:
    if row.get("strokes") and (route != "images" or not row.get("image")):
        strokes = tuple(np.array(stroke, np.float64)[:, :2] for stroke in row["strokes"] if len(stroke))
        if not strokes or not all(np.isfinite(stroke).all() for stroke in strokes):
            raise ValueError("no finite strokes")
        return _drawn(strokes, number) if route == "images" else DrawnStrokes(strokes)
    if route == "ink":
        raise ValueError("no strokes")
    picture = next(iter(open_pages(path.parent / str(row["image"])))).image
    return whole_line(picture) if row.get("evened") else line_from_picture(picture)


def _drawn(strokes: tuple[NDArray[np.float64], ...], seed: int) -> LineCrop:
    """The picture of strokes drawn at a random size with a random pen, dark on light."""
    rng = np.random.default_rng(seed)
    symbol = float(np.exp(rng.uniform(*np.log(_SYMBOL_RANGE))))
    pen = max(1, round(symbol / 40 * float(rng.choice(_PENS))))
    sides = np.array([np.ptp(stroke, axis=0) for stroke in strokes])
    scale = symbol / typical_height(sides[:, 1], sides[:, 0])
    low = np.min([stroke.min(axis=0) for stroke in strokes], axis=0)
    high = np.max([stroke.max(axis=0) for stroke in strokes], axis=0)
    scale = min(scale, 2000 / max(high[1] - low[1], 1e-3), 6000 / max(high[0] - low[0], 1e-3))
    margin = 2 * pen
    width, height = (int(np.ceil(side * scale)) + 2 * margin for side in high - low)
    ink = draw_strokes([(stroke - low) * scale + margin for stroke in strokes], (width, height), pen=pen)
    corners = ((0.0, 0.0), (float(width), 0.0), (float(width), float(height)), (0.0, float(height)))
    return LineCrop(255 - ink, Box(0, 0, width, height), corners, np.eye(3))
