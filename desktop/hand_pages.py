"""Pages of one hand: what their confirmed lines tell of the others. No Qt: it runs in the reader's process."""

from __future__ import annotations

import hashlib
from collections import OrderedDict
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from recognition.outline import Outline
from recognition.result import Candidate, Tick, no_tick

if TYPE_CHECKING:
    from recognition.reader import LineStudy, NeuralReader

__all__ = ["HandLine", "HandPage", "HandStudies", "Weighed"]

_MOST_STUDIES = 600


@dataclass(frozen=True, slots=True)
class HandLine:
    """A line whose reading is confirmed, or whose readings are to be weighed.

    outline: where it is on the page; crop: what the reader reads of it, None to cut it out of the page.
    confirmed: what the user says that it says; None for a line with `candidates`, as they were read.
    """

    outline: Outline
    crop: Any = None
    confirmed: str | None = None
    candidates: tuple[Candidate, ...] = ()


@dataclass(frozen=True, slots=True)
class HandPage:
    """Lines of one page, and the page itself for those without a crop: a picture, or the strokes on it."""

    lines: tuple[HandLine, ...]
    picture: NDArray[np.uint8] | None = None
    strokes: tuple[NDArray[np.float64], ...] = ()


@dataclass(frozen=True, slots=True)
class Weighed:
    """One page's lines: their readings, as given where nothing is known, and the crops that were cut out anew."""

    candidates: tuple[tuple[Candidate, ...], ...]
    cut: dict[int, Any]


class HandStudies:
    """Weighs the lines of pages; what was seen of a line is kept for the next time."""

    def __init__(self) -> None:
        self._known: OrderedDict[tuple[bytes, str], LineStudy | None] = OrderedDict()

    def weigh(self, pages: Sequence[HandPage], reader: NeuralReader, *, tick: Tick = no_tick) -> list[Weighed]:
        """Weigh the lines that are not confirmed by those that are; confirmed lines and lost ones stay as given."""
        from recognition.reader import Hand, reweighed

        cut = [_missing_crops(page) for page in pages]
        lines = [
            [(line, line.crop if line.crop is not None else found.get(number))
             for number, line in enumerate(page.lines)]
            for page, found in zip(pages, cut, strict=True)
        ]  # fmt: skip
        done, every = 0, sum(map(len, lines))

        def studied(crop: Any, latex: str) -> LineStudy | None:
            nonlocal done
            tick(done, every)
            done += 1
            return None if crop is None else self._study(reader, crop, latex)

        told = [
            [study for line, crop in page if line.confirmed is not None
             if (study := studied(crop, line.confirmed)) is not None]
            for page in lines
        ]  # fmt: skip
        hand = Hand.of([study for of_page in told for study in of_page])
        out = []
        for page, of_page, found in zip(lines, told, cut, strict=True):
            here = None if hand is None else hand.for_page(of_page)
            weighed: list[tuple[Candidate, ...]] = []
            for line, crop in page:
                study = studied(crop, line.candidates[0].latex) if here is not None and line.candidates else None
                weighed.append(line.candidates if study is None else reweighed(line.candidates, study, here))
            out.append(Weighed(tuple(weighed), found))
        return out

    def _study(self, reader: NeuralReader, crop: Any, latex: str) -> LineStudy | None:
        key = (_print_of(crop), latex)
        if key in self._known:
            self._known.move_to_end(key)
        else:
            self._known[key] = reader.study(crop, latex)
            if len(self._known) > _MOST_STUDIES:
                self._known.popitem(last=False)
        return self._known[key]


def _missing_crops(page: HandPage) -> dict[int, Any]:
    wanted = [number for number, line in enumerate(page.lines) if line.crop is None]
    if not wanted or page.picture is None:
        return {}
    cutter = _cutter(page.picture, page.strokes)
    return {number: cutter.within(page.lines[number].outline) for number in wanted}


def _cutter(picture: NDArray[np.uint8], strokes: tuple[NDArray[np.float64], ...]) -> Any:
    if strokes:
        from recognition.ink import InkCutter, InkPicture

        return InkCutter(InkPicture(picture, np.eye(3)), strokes)
    from recognition.page import LineCutter

    return LineCutter.of(picture, turns=0)  # it stands upright on the desk


def _print_of(crop: Any) -> bytes:
    """Tells crops apart by their ink."""
    found = hashlib.blake2b(digest_size=16)
    for part in getattr(crop, "strokes", None) or (crop.image,):
        found.update(str(part.shape).encode())
        found.update(np.ascontiguousarray(part).tobytes())
    return found.digest()
