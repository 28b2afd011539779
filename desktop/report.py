"""The whole job without a window: for each page NAME.json, NAME.png and, if asked, NAME.pdf; index.html for all."""

from __future__ import annotations

import json
import logging
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from checker.errors import InputError as CheckerInputError
from desktop.confirmed import ConfirmedLine, confirmed_file, load_confirmed, merge_confirmed
from desktop.document import Document
from desktop.language import tr
from desktop.marked_pdf import save_pdf
from desktop.marked_picture import image_bytes, marked_page, save_png
from desktop.page_json import page_json
from desktop.page_names import PageNames
from desktop.pipeline import judge_lines
from desktop.reading import NO_WRITING, FoundDocument, PageReader
from desktop.sentences import in_language
from desktop.summary_page import page_section, summary_page
from desktop.upright import turned_box
from desktop.whole_file import write_whole
from recognition.errors import InputError as RecognitionInputError
from recognition.errors import ModelError

__all__ = ["report"]

log = logging.getLogger(__name__)

Say = Callable[[str], None]
BAD_INPUT = 2
_SUMMARY_WIDTH = 1100
"""Pixels; width of the pictures inside the summary."""


@dataclass(slots=True)
class _Run:
    """What a run has done so far."""

    out: Path
    files: Sequence[Path]
    confirmed: Sequence[Path]
    complain: Say
    names: PageNames
    wants_pdf: bool = False
    reader: PageReader = field(default_factory=PageReader)
    rows: list[tuple[str, Document]] = field(default_factory=list)
    sections: list[str] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)
    unused: set[Path] = field(default_factory=set)

    def problem(self, sentence: str) -> None:
        self.problems.append(sentence)
        self.complain(sentence)


def report(
    files: Sequence[Path], out: Path, *, confirmed: Sequence[Path] = (), wants_pdf: bool = False, complain: Say
) -> int:
    """Mark files into a folder; a QGuiApplication must exist.

    Args:
        files: photos, scans, PDF or InkML files.
        out: folder of the report, made when missing.
        confirmed: JSON files, or folders of them, with lines that a user has confirmed.
        wants_pdf: whether each page comes as NAME.pdf too, with its marks as annotations.
        complain: told one sentence for each thing that could not be done.
    Returns:
        0 when all was done, 2 when something was not; the rest is done all the same.
    """
    run = _Run(out, files, confirmed, complain, PageNames(files), wants_pdf)
    run.unused.update(path for path in confirmed if not path.is_dir())
    if not files:
        run.problem(tr("No files were given. Name the photos, PDF or InkML files to mark."))
        return BAD_INPUT
    for path in confirmed:
        if not path.exists():
            run.problem(tr("There is nothing at {path}. Check the name given to --confirmed.", path=path))
            return BAD_INPUT
    try:
        out.mkdir(parents=True, exist_ok=True)
        write_whole(out / ".firstslip", b"")
        (out / ".firstslip").unlink()
    except OSError:
        run.problem(tr("The folder {folder} cannot be written. Choose another folder with --out.", folder=out))
        return BAD_INPUT
    for number, path in enumerate(files):
        try:
            _do_file(run, number, path)
        except ModelError as exc:
            run.problem(in_language(str(exc)))
            break
        except (RecognitionInputError, CheckerInputError) as exc:
            run.problem(_naming(path, in_language(str(exc))))
        except OSError as exc:
            log.warning("writing failed: %s", exc.strerror)
            words = tr("{name}: its report could not be written. Make room in {folder}, or choose another folder.",
                       name=path.name, folder=out)  # fmt: skip
            run.problem(words)
        except Exception:
            log.exception("page failed")
            fault = tr("{name} could not be marked because of a fault in this program. Please report it.",
                       name=path.name)  # fmt: skip
            run.problem(fault)
    for path in sorted(run.unused):
        words = tr("{name} fits none of the pages. Name it after its page: NAME.json for NAME.jpg.", name=path.name)
        run.problem(words)
    if run.rows:
        try:
            write_whole(out / "index.html", summary_page(run.rows, run.sections, run.problems).encode())
        except OSError:
            words = tr("The summary could not be written. Make room in {folder}, or choose another folder.", folder=out)
            run.problem(words)
    return BAD_INPUT if run.problems else 0


def _do_file(run: _Run, number: int, path: Path) -> None:
    for found in _pages(run, path):
        name = run.names.of(number, found.document.page)
        source = confirmed_file(run.confirmed, name, only_one=len(run.files) == 1 and found.document.page == 0)
        if source is not None:
            run.unused.discard(source)
        _refuse_overwriting(run, name, source)
        confirmed = None if source is None else load_confirmed(source)
        document = found.document
        if document.lines:
            document.take_readings(run.reader.read(found))
        if confirmed is not None:
            document.lines = merge_confirmed([_upright(line, document) for line in confirmed], document.lines)
        if not any(not line.struck_out for line in document.lines):
            run.problem(tr(NO_WRITING, name=found.name))
            continue
        document.show(judge_lines(document.lines), revision=document.revision)
        _write(run, document, name)


def _upright(line: ConfirmedLine, document: Document) -> ConfirmedLine:
    """A confirmed line, which is told as on the picture that was opened, as on the page that stands upright."""
    if line.box is None or not document.turns:
        return line
    width, height = document.size if document.turns % 2 == 0 else document.size[::-1]
    return replace(line, box=turned_box(line.box, document.turns, (width, height)))


def _pages(run: _Run, path: Path) -> Iterator[FoundDocument]:
    yield from run.reader.find(path)


def _write(run: _Run, document: Document, name: str) -> None:
    save_png(document, run.out / f"{name}.png")
    if run.wants_pdf:
        save_pdf(document, run.out / f"{name}.pdf")
    text = json.dumps(page_json(document), ensure_ascii=False, indent=1)
    write_whole(run.out / f"{name}.json", text.encode() + b"\n")
    picture = image_bytes(marked_page(document, widest=_SUMMARY_WIDTH), "JPEG", quality=82)
    run.sections.append(page_section(document, name, picture))
    document.picture, document.halvings = None, ()  # the summary needs no pixels; a long run keeps to a flat memory
    run.rows.append((name, document))


def _refuse_overwriting(run: _Run, name: str, source: Path | None) -> None:
    """Never write over a picture that was given, nor over confirmed lines in a form that is not our report's."""
    text = (run.out / f"{name}.json").resolve()
    for picture in [run.out / f"{name}.png", *([run.out / f"{name}.pdf"] if run.wants_pdf else [])]:
        if any(path.resolve() == picture.resolve() for path in run.files):
            raise RecognitionInputError(tr(
                "{name} would write over the picture itself. Choose another folder with --out.", name=picture.name
            ))
    if source is not None and source.resolve() == text and b'"workings"' not in source.read_bytes():
        raise RecognitionInputError(tr(
            "{name} would write over the confirmed lines. Choose another folder with --out.", name=f"{name}.json"
        ))


def _naming(path: Path, sentence: str) -> str:
    """The sentence with the file's name in it, so that each stands alone in a list."""
    return sentence if path.name in sentence else f"{path.name}: {sentence}"
