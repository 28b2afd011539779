"""What do confirmed lines of the same hand gain? `python -m recognition.training.hand_gain DATA.jsonl --confirmed 5`.

DATA holds lines with `writer` and strokes or images: the public ink, or what `working_lines --out` wrote. Of a writer
with enough lines some are confirmed, drawn by lot, and the others are read before and after. Tuned on CROHME 2013;
2014 is for the figure. With `--by page` the lines confirmed are the first of a page and the others stand below
them, as at the desk, the letters of the page weighed before.
"""

from __future__ import annotations

import argparse
import json
import random
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from recognition.evaluate import Route, Sample, load_samples
from recognition.page_letters import with_page_letters
from recognition.reader import Hand, LineStudy, NeuralReader, reweighed
from recognition.reader.weights import MODEL_FOLDER
from recognition.result import Candidate

__all__ = ["StudiedLine", "gain", "main", "studied"]


@dataclass(frozen=True, slots=True)
class StudiedLine:
    """A line with its candidates, and the studies of its first candidate and of its true reading, where there are."""

    writer: str
    truth: str
    candidates: tuple[Candidate, ...]
    as_read: LineStudy | None
    as_written: LineStudy | None
    page: str | None = None


def studied(samples: Sequence[Sample], reader: NeuralReader) -> Iterator[StudiedLine]:
    """Read and study lines with a writer and a truth, one at a time; lines of one page weigh each other's letters."""
    known = [sample for sample in samples if sample.writer is not None and sample.truth is not None]
    read = [reader.read((sample.crop,))[0] for sample in known]
    for page in {sample.page for sample in known} - {None}:
        numbers = [number for number, sample in enumerate(known) if sample.page == page]
        for number, weighed in zip(numbers, with_page_letters([read[n] for n in numbers]), strict=True):
            read[number] = weighed
    for sample, candidates in zip(known, read, strict=True):
        assert sample.writer is not None and sample.truth is not None
        truth = " ".join(sample.truth)
        first = candidates[0].latex if candidates else ""
        as_written = reader.study(sample.crop, truth)
        as_read = as_written if first == truth else reader.study(sample.crop, first) if first else None
        yield StudiedLine(sample.writer, truth, candidates, as_read, as_written, sample.page)


def gain(
    lines: Sequence[StudiedLine], *, confirmed: int, draws: int, seed: int = 0, by_page: bool = False
) -> dict[str, Any]:
    """Rates before and after, over all lines that were not confirmed in each draw.

    Args:
        by_page: each page by itself, its first lines confirmed, once; else each writer's, drawn by lot.
    """
    own: dict[str, list[StudiedLine]] = {}
    for line in lines:
        own.setdefault((line.page or "") if by_page else line.writer, []).append(line)
    least = confirmed + 1 if by_page else 2 * confirmed
    writers = {name: found for name, found in own.items() if name and len(found) >= least}
    rng = random.Random(seed)
    count = before = after = five_before = five_after = mended = spoilt = 0
    for name in sorted(writers):
        for _ in range(1 if by_page else draws):
            order = writers[name] if by_page else rng.sample(writers[name], len(writers[name]))
            known = [line for line in order if line.as_written is not None][:confirmed]
            hand = Hand.of([line.as_written for line in known if line.as_written is not None])

            def here(line: StudiedLine, known: list[StudiedLine] = known, hand: Hand | None = hand) -> Hand | None:
                if hand is None or line.page is None:
                    return hand
                return hand.for_page([k.as_written for k in known if k.page == line.page and k.as_written is not None])

            for line in order:
                if any(line is one for one in known):
                    continue
                new = line.candidates if line.as_read is None else reweighed(line.candidates, line.as_read, here(line))
                was, is_now = (bool(c) and c[0].latex == line.truth for c in (line.candidates, new))
                count, before, after = count + 1, before + was, after + is_now
                five_before += any(c.latex == line.truth for c in line.candidates)
                five_after += any(c.latex == line.truth for c in new)
                mended, spoilt = mended + (is_now and not was), spoilt + (was and not is_now)

    def percent(hits: int) -> float:
        return round(100 * hits / max(count, 1), 2)

    return {
        "pages" if by_page else "writers": len(writers), "confirmed": confirmed, "draws": draws, "lines": count,
        "ExpRate_before": percent(before), "ExpRate_after": percent(after), "top_5_before": percent(five_before),
        "top_5_after": percent(five_after), "mended": mended, "spoilt": spoilt,
    }  # fmt: skip


def main(arguments: Sequence[str] | None = None) -> int:
    """Print one JSON object for each number of confirmed lines."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("data", type=Path)
    parser.add_argument("--route", choices=("as given", "ink", "images"), default="as given")
    parser.add_argument("--confirmed", type=int, nargs="+", default=[5])
    parser.add_argument("--by", choices=("writer", "page"), default="writer", help="whose lines tell of each other")
    parser.add_argument("--draws", type=int, default=3)
    parser.add_argument("--writers", type=int, help="only so many writers, those with the most lines")
    parser.add_argument("--models", type=Path, default=MODEL_FOLDER)
    given = parser.parse_args(arguments)
    route: Route = given.route
    samples = list(load_samples(given.data, route=route))
    if given.writers is not None:
        counts: dict[str, int] = {}
        for sample in samples:
            counts[sample.writer or ""] = counts.get(sample.writer or "", 0) + 1
        kept = set(sorted((name for name in counts if name), key=lambda name: -counts[name])[: given.writers])
        samples = [sample for sample in samples if sample.writer in kept]
    lines = list(studied(samples, NeuralReader.load(given.models)))
    for confirmed in given.confirmed:
        found = gain(lines, confirmed=confirmed, draws=given.draws, by_page=given.by == "page")
        print(json.dumps({"data": given.data.name, **found}), flush=True)
    return 0


if __name__ == "__main__":
    raise SystemExit(main())
