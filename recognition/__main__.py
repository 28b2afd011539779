"""`python -m recognition`: read files, or measure a reader on lines whose truth is known."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from recognition.errors import InputError
from recognition.evaluate import Route, evaluate, load_samples
from recognition.printed import PrintedReader, PrintedSettings
from recognition.read import Reader, nothing_found, read_file, read_line_file
from recognition.reader import NeuralReader
from recognition.reader.tokens import LOWER_SCHOOL, is_lower_school

BAD_INPUT = 2


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command line; 0 when all went well, 2 when a file could not be read."""
    options = _parser().parse_args(arguments)
    run = _read if options.command == "read" else _evaluate
    try:
        if options.printed is None:
            return run(options, NeuralReader.load(threads=options.threads))
        with PrintedReader(PrintedSettings.from_file(options.printed)) as engine:
            return run(options, engine)
    except InputError as exc:
        print(exc, file=sys.stderr)
        return BAD_INPUT


def _read(options: argparse.Namespace, reader: Reader) -> int:
    status = 0
    take = read_line_file if options.line else read_file
    for file in options.files:
        try:
            for page in take(file, reader=reader):
                print(json.dumps(page.to_json(), ensure_ascii=False), flush=True)
                if not page.lines:
                    raise nothing_found(page)
        except InputError as exc:
            print(exc, file=sys.stderr, flush=True)
            status = BAD_INPUT
    return status


def _evaluate(options: argparse.Namespace, reader: Reader) -> int:
    route: Route = "images" if options.images else "ink" if options.ink else "as given"
    samples = list(load_samples(options.data, route=route, limit=options.limit))
    if options.lower_school:
        samples = [sample for sample in samples if sample.truth is not None and is_lower_school(sample.truth)]
    if not samples:
        raise InputError(f"{options.data.name} has no line to read. Give lines with `latex` and `strokes` or `image`.")
    report, candidates = evaluate(
        samples,
        reader,
        beam=1 if options.greedy else 5,
        allowed=LOWER_SCHOOL if options.lower_school else None,
    )
    head: dict[str, Any] = {"data": options.data.name, "route": route, "threads": options.threads}
    print(json.dumps({**head, **report}, ensure_ascii=False))
    if options.details is not None:
        rows = [
            {
                "id": sample.identity,
                "truth": None if sample.truth is None else " ".join(sample.truth),
                "candidates": [[one.latex, round(one.probability, 4)] for one in found],
            }
            for sample, found in zip(samples, candidates, strict=True)
        ]
        options.details.write_text("".join(json.dumps(row, ensure_ascii=False) + "\n" for row in rows), "utf-8")
    return 0


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="python -m recognition", description="Handwritten algebra lines to LaTeX.")
    commands = parser.add_subparsers(dest="command", required=True)
    threads = argparse.ArgumentParser(add_help=False)
    threads.add_argument("--threads", type=_positive, default=2, help="processor threads of the reader (default 2)")
    threads.add_argument(
        "--printed",
        type=Path,
        metavar="SETTINGS.json",
        help="read printed lines with pix2tex, which these settings find",
    )
    read = commands.add_parser("read", parents=[threads], help="print one JSON object a page")
    read.add_argument("files", nargs="+", metavar="FILE", help="photo, scan, PDF or InkML")
    read.add_argument("--line", action="store_true", help="each picture is one written line")
    measure = commands.add_parser(
        "evaluate",
        parents=[threads],
        help="print one JSON object of rates: percent, but calibration_error is a fraction; times in ms",
    )
    measure.add_argument("data", type=Path, metavar="DATA.jsonl[.xz]", help="objects with latex and strokes or image")
    measure.add_argument("--limit", type=_positive, help="this many lines, evenly spread over the file")
    route = measure.add_mutually_exclusive_group()
    route.add_argument("--images", action="store_true", help="draw strokes at random sizes and pens, read the pictures")
    route.add_argument("--ink", action="store_true", help="read the strokes")
    measure.add_argument("--greedy", action="store_true", help="one reading from left to right, no beam")
    measure.add_argument(
        "--lower-school", action="store_true", help="only lines of lower-case school algebra, and say so to the reader"
    )
    measure.add_argument("--details", type=Path, metavar="FILE", help="write each line's truth and candidates there")
    return parser


def _positive(text: str) -> int:
    number = int(text)
    if number < 1:
        raise argparse.ArgumentTypeError("a number of at least 1 is needed")
    return number


if __name__ == "__main__":
    sys.exit(main())
