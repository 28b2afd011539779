"""From a file (photo, scan, PDF, InkML) to what its lines say."""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator, Sequence
from pathlib import Path
from typing import Final, Protocol

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.ink import read_inkml, strokes_to_lines
from recognition.page import NOTHING_FOUND, LineCrop, find_lines, open_pages
from recognition.page.light import background, evened
from recognition.page_letters import with_page_letters
from recognition.reader import LinePicture, LineStrokes
from recognition.result import Box, Candidate, Line, Page, Tick, no_tick

__all__ = ["Reader", "is_ink", "line_from_picture", "nothing_found", "read_file", "read_line_file", "whole_line"]

os.environ.pop("QT_QPA_PLATFORM_PLUGIN_PATH", None)  # OpenCV sets these to its own Qt, which breaks the desktop's
os.environ.pop("QT_QPA_FONTDIR", None)

_HEAD: Final = 4096  # bytes in which an InkML file names itself
_CLEAN: Final = 0.9  # share of pixels that are plain paper or plain ink in a picture that needs no evening


class Reader(Protocol):
    """What reads the lines; `NeuralReader` is one."""

    def read(
        self,
        crops: Sequence[LinePicture | LineStrokes],
        *,
        beam: int = 5,
        allowed: Collection[str] | None = None,
        tick: Tick = no_tick,
    ) -> list[tuple[Candidate, ...]]: ...


def read_file(
    path: str | os.PathLike[str],
    *,
    reader: Reader,
    beam: int = 5,
    allowed: Collection[str] | None = None,
    tick: Tick = no_tick,
) -> Iterator[Page]:
    """Read all pages of a file, one after the other.

    Args:
        path: photo, scan, PDF or InkML; the content counts, not the ending.
        allowed: tokens that occur on these pages, as the user says; None for all.
        tick: called with (lines read, lines) of the page at hand.
    Returns:
        Pages with their lines in reading order. Of a drawing, size and boxes are in pixels of `render_page`. A page
        on which no writing was found has no lines.
    Raises:
        InputError: the file cannot be read, or is none of these.
    """
    file = Path(path)
    if is_ink(file):
        found = strokes_to_lines(read_inkml(file))
        read = with_page_letters(reader.read(found.lines, beam=beam, allowed=allowed, tick=tick))
        lines = tuple(
            Line(line.box, candidates, line.struck_out, line.polygon)
            for line, candidates in zip(found.lines, read, strict=True)
        )
        yield Page(str(path), 0, found.picture.size, lines)
        return
    for sheet in open_pages(file):
        page = find_lines(sheet.image)
        read = with_page_letters(reader.read(page.lines, beam=beam, allowed=allowed, tick=tick))
        yield Page(str(path), sheet.page, page.size, _lines(page.lines, read))


def read_line_file(path: str | os.PathLike[str], *, reader: Reader, beam: int = 5) -> Iterator[Page]:
    """Read a file whose every page is the picture of one line; otherwise as `read_file`."""
    for sheet in open_pages(path):
        crop = line_from_picture(sheet.image)
        size = (sheet.image.shape[1], sheet.image.shape[0])
        yield Page(str(path), sheet.page, size, _lines((crop,), reader.read((crop,), beam=beam)))


def is_ink(path: Path) -> bool:
    """The file says of itself that it is ink."""
    if path.suffix.lower() == ".inkml":
        return True
    try:
        with path.open("rb") as file:
            head = file.read(_HEAD).lstrip(b"\xef\xbb\xbf \t\r\n")
    except OSError:
        return False  # opening it as a picture says what is wrong
    return head.startswith(b"<") and (b"<ink" in head or b"/InkML" in head)


def line_from_picture(image: NDArray[np.uint8]) -> LineCrop:
    """Take a whole picture as one line: evened, and turned to dark on light where it was light on dark.

    Args:
        image: RGB, shape (h, w, 3), or grey, shape (h, w).
    """
    grey = np.asarray(cv2.cvtColor(image, cv2.COLOR_RGB2GRAY) if image.ndim == 3 else image, np.uint8)
    border = np.concatenate([grey[0], grey[-1], grey[:, 0], grey[:, -1]])
    if np.median(border) < 128:
        grey = 255 - grey
    if np.mean((grey < 40) | (grey > 215)) < _CLEAN:
        grey = evened(grey, background(grey))
    return whole_line(grey)


def whole_line(image: NDArray[np.uint8]) -> LineCrop:
    """Take a picture that is evened already, dark on light, as one line: RGB (h, w, 3) or grey (h, w)."""
    grey = np.asarray(cv2.cvtColor(image, cv2.COLOR_RGB2GRAY) if image.ndim == 3 else image, np.uint8)
    height, width = grey.shape
    corners = ((0.0, 0.0), (float(width), 0.0), (float(width), float(height)), (0.0, float(height)))
    return LineCrop(grey, Box(0, 0, width, height), corners, np.eye(3))


def _lines(crops: Sequence[LineCrop], read: Sequence[tuple[Candidate, ...]]) -> tuple[Line, ...]:
    return tuple(
        Line(crop.box, candidates, crop.struck_out, crop.polygon) for crop, candidates in zip(crops, read, strict=True)
    )


def nothing_found(page: Page) -> InputError:
    """The sentence for a page without lines."""
    return InputError(f"{Path(page.file).name}: {NOTHING_FOUND}")
