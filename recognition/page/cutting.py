"""Cut lines out of a page by outlines that a user draws: the same crops as line finding gives."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.outline import Cut, Outline, corners, side_of_cut, sorted_cut
from recognition.page.crops import cut_line
from recognition.page.found import LineCrop, map_points
from recognition.page.order import reading_order
from recognition.page.pieces import Pieces, all_pieces
from recognition.page.prepared import Clock, PreparedPage, prepare

__all__ = ["LineCutter"]

_LARGE = 2.5
"""Letter heights; a larger piece may be letters of two lines that touch, so it is parted at the outline."""
_SHIFT = 4
"""Fractional bits of OpenCV's drawing coordinates."""
_KEPT_SHARE = 0.5
"""Share of the ink within an outline that line finding took for writing; with less, all ink in it is taken."""


@dataclass(frozen=True, slots=True)
class LineCutter:
    """One page, ready to be cut. Making it takes as long as finding lines; a cut takes milliseconds.

    writing: what line finding takes for writing; every: all ink.
    """

    page: PreparedPage
    writing: Pieces
    every: Pieces

    @classmethod
    def of(cls, image: NDArray[Any], *, turns: int | None = None) -> LineCutter:
        """Prepare a page.

        Args:
            image: RGB uint8, shape (h, w, 3).
            turns: as for `find_lines`.
        Raises:
            InputError: the picture is a few pixels small.
        """
        page = prepare(image, Clock(), turns=turns)
        if page is None:
            raise InputError("This picture is too small to hold a line. Choose the full-size photo.")
        return cls(page, page.pieces, all_pieces(page.ink.mask, page.cleaned.even, page.pieces))

    def within(self, outline: Outline) -> LineCrop:
        """The line within an outline; where no ink is seen, the picture within it as it is.

        Args:
            outline: box or polygon in pixels of the original. A letter counts when half of it is inside.
        Raises:
            InputError: the outline has no area, or lies beside the picture.
        """
        mask = self._mask(outline)
        return self._crop(mask) or self._bare(mask)

    def together(self, outlines: Sequence[Outline], others: Sequence[Outline] = ()) -> LineCrop:
        """One line of all that is within several outlines.

        Args:
            outlines: of the parts, in pixels of the original.
            others: outlines of the other lines; ink that lies deeper in one of them is left to it.
        """
        mask = self._mask(outlines[0])
        for outline in outlines[1:]:
            mask |= self._mask(outline)
        return self._crop(mask, others) or self._bare(mask)

    def apart(self, outline: Outline, cut: Cut, others: Sequence[Outline] = ()) -> tuple[LineCrop, LineCrop]:
        """The two parts of a line on both sides of a straight cut, the upper or left one first.

        Raises:
            InputError: one side has no ink.
        """
        ends = sorted_cut(map_points(np.asarray(cut, np.float64), self.page.flat.to_flat))
        mask = self._mask(outline)
        ys, xs = np.nonzero(mask)
        first = side_of_cut(ends, np.column_stack([xs, ys]).astype(np.float64))
        parts = []
        for chosen in (first, ~first):
            part = np.zeros_like(mask)
            part[ys[chosen], xs[chosen]] = 255
            crop = self._crop(part, others)
            if crop is None:
                raise InputError("This cut leaves one side without writing. Draw it between the two parts.")
            parts.append(crop)
        return parts[0], parts[1]

    def place(self, outline: Outline, others: Sequence[Outline]) -> int:
        """Where a new line comes among the others as a page is read."""
        flat = [map_points(corners(each), self.page.flat.to_flat) for each in (*others, outline)]
        boxes = np.array([[*points.min(axis=0), *points.max(axis=0)] for points in flat])
        order = [group[0] for group in reading_order(boxes, [[i] for i in range(len(flat))], self.writing.letter)]
        at = order.index(len(others))
        return 0 if at == 0 else order[at - 1] + 1

    def _mask(self, outline: Outline) -> NDArray[np.uint8]:
        """The outline filled, at working size."""
        mask = np.zeros(self.page.flat.even.shape, np.uint8)
        points = map_points(corners(outline), self.page.flat.to_flat)
        if not np.isfinite(points).all() or np.abs(points).max() > 1e5:
            raise InputError("This outline lies beside the page. Draw it around writing on the page.")
        cv2.fillPoly(mask, [np.rint(points * (1 << _SHIFT)).astype(np.int32)], 255, cv2.LINE_8, _SHIFT)
        if not mask.any():
            raise InputError("This outline lies beside the page. Draw it around writing on the page.")
        return mask

    def _crop(self, mask: NDArray[np.uint8], others: Sequence[Outline] = ()) -> LineCrop | None:
        inside = mask > 0
        all_ink = int(np.count_nonzero(self.every.labels[inside]))
        written = int(np.count_nonzero(self.writing.labels[inside]))
        pieces = self.writing if written >= _KEPT_SHARE * all_ink else self.every
        pieces, group = _taken(pieces, inside, [self._mask(other) for other in others])
        return cut_line(self.page.grey, self.page.flat, pieces, group, self.page.cleaned) if group else None

    def _bare(self, mask: NDArray[np.uint8]) -> LineCrop:
        """The picture within a mask: the whole of it stands for one piece of ink."""
        x, y, w, h = cv2.boundingRect(mask)
        box = np.array([[x, y, x + w, y + h]], np.float64)
        one = np.ones(1)
        whole = replace(
            self.every, labels=(mask > 0).astype(np.int32), boxes=box, area=one * w * h, darkness=one, thickness=one
        )
        crop = cut_line(self.page.grey, self.page.flat, whole, [0], self.page.cleaned)
        if crop is None:
            raise InputError("This outline lies beside the page. Draw it around writing on the page.")
        return replace(crop, struck_out=False)


def _taken(
    pieces: Pieces, inside: NDArray[np.bool_], others: Sequence[NDArray[np.uint8]]
) -> tuple[Pieces, list[int]]:
    """Which pieces lie inside; a large one that lies across the rim is parted there."""
    count = len(pieces.boxes)
    within = np.bincount(pieces.labels[inside], minlength=count + 1)[1:]
    total = np.maximum(np.bincount(pieces.labels.ravel(), minlength=count + 1)[1:], 1)
    share = within / total
    size = (pieces.boxes[:, 2:] - pieces.boxes[:, :2]).max(axis=1) if count else np.zeros(0)
    large = size > _LARGE * pieces.letter
    chosen = np.where(large, share > 0.9, share > 0.5) & ~_deeper_elsewhere(pieces, inside, others)
    group = [int(i) for i in np.flatnonzero(chosen)]
    parted = np.flatnonzero(large & ~chosen & (share > 0.05) & (share <= 0.9))
    for i in parted:
        part = (pieces.labels == i + 1) & inside
        label = len(pieces.boxes) + 1
        ys, xs = np.nonzero(part)
        box = np.array([[xs.min(), ys.min(), xs.max() + 1, ys.max() + 1]], np.float64)
        pieces = replace(
            pieces, labels=np.where(part, np.int32(label), pieces.labels), boxes=np.concatenate([pieces.boxes, box]),
            area=np.append(pieces.area, len(xs)), darkness=np.append(pieces.darkness, pieces.darkness[i]),
            thickness=np.append(pieces.thickness, pieces.thickness[i]),
        )
        group.append(label - 1)
    return pieces, group


def _deeper_elsewhere(
    pieces: Pieces, inside: NDArray[np.bool_], others: Sequence[NDArray[np.uint8]]
) -> NDArray[np.bool_]:
    """Pieces that lie deeper within the outline of another line than within this one."""
    count = len(pieces.boxes)
    elsewhere = np.zeros(count, bool)
    touching = [other for other in others if (inside & (other > 0)).any()]
    if not touching:
        return elsewhere
    own = _depth(pieces, inside.astype(np.uint8))
    for other in touching:
        elsewhere |= _depth(pieces, other) > own
    return elsewhere


def _depth(pieces: Pieces, mask: NDArray[np.uint8]) -> NDArray[np.float64]:
    """Mean distance of each piece's pixels to the rim of a mask; pixels outside count nothing."""
    distance = cv2.distanceTransform(mask, cv2.DIST_L2, 3)
    total = np.bincount(pieces.labels.ravel(), distance.ravel(), minlength=len(pieces.boxes) + 1)[1:]
    return np.asarray(total / np.maximum(pieces.area, 1), np.float64)
