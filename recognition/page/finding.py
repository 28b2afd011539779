"""Find the written lines of a page: flatten, even, take out rulings, group ink, cut crops."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from recognition.page.colours import marks_on
from recognition.page.crops import cut_line
from recognition.page.found import FoundPage, LineCrop
from recognition.page.grouping import group_lines
from recognition.page.order import reading_order
from recognition.page.pieces import Pieces
from recognition.page.prepared import STAGES, Clock, prepare
from recognition.page.workings import places_in_workings
from recognition.result import Tick, no_tick

__all__ = ["find_lines", "may_be_writing"]

_LEAST_LETTER = 10.0
"""Working pixels; what is smaller is grain of the picture, or writing too small to read."""
_LARGE_LETTER, _LARGEST_LETTER = 0.045, 0.35
"""Height of letters as a share of the picture's longer side: large, and beyond belief."""
_LEAST_FLANKS = 0.21
"""Share of its darkness that a pen stroke gains within a pixel; shapes in a scene are softer."""
_MOST_LINES = 200


def find_lines(image: NDArray[Any], *, turns: int | None = None, tick: Tick = no_tick) -> FoundPage:
    """Find the written lines of a photo or scan.

    Args:
        image: RGB uint8, shape (h, w, 3); other arrays are brought to that form.
        turns: by how many quarter turns anticlockwise the writing is turned, 0 to 3; None to tell it from the writing.
        tick: told about progress; may raise Cancelled.
    Returns:
        The lines in reading order, none where nothing is written.
    """
    clock = Clock()
    page = prepare(image, clock, turns=turns, tick=tick)
    if page is None:
        height, width = np.shape(image)[:2] if np.ndim(image) > 1 else (1, 1)
        return FoundPage((), (width, height))
    corners = None if page.corners is None else tuple((float(x), float(y)) for x, y in page.corners)
    if not page.is_page:
        return FoundPage((), page.size, corners, clock.stages())
    tick(4, STAGES)
    pieces = page.pieces
    groups = group_lines(pieces)[:_MOST_LINES] if may_be_writing(pieces, page.cleaned.even) else []
    clock.note("lines")
    tick(5, STAGES)
    cut: list[tuple[list[int], LineCrop]] = []
    for group in reading_order(pieces.boxes, groups, pieces.letter):
        crop = cut_line(page.grey, page.flat, pieces, group, page.cleaned)
        if crop is not None:
            cut.append((group, crop))
    places = places_in_workings(
        [pieces.boxes[group] for group, _ in cut], pieces.letter, [crop.struck_out for _, crop in cut]
    )
    lines = [
        replace(crop, working=place.working, goes_on=place.goes_on)
        for (_, crop), place in zip(cut, places, strict=True)
    ]
    clock.note("crops")
    tick(STAGES, STAGES)
    back = np.asarray(np.linalg.inv(page.flat.to_flat), np.float64)
    return FoundPage(tuple(lines), page.size, corners, clock.stages(), marks_on(page.marking, back), page.turns)


def may_be_writing(pieces: Pieces, even: NDArray[np.uint8]) -> bool:
    """Letters are neither grain nor as large as the picture, and large ones have sharp rims."""
    to_side = pieces.letter / max(even.shape)
    if pieces.letter < _LEAST_LETTER or to_side > _LARGEST_LETTER:
        return False
    return to_side < _LARGE_LETTER or pieces.flanks(even) >= _LEAST_FLANKS
