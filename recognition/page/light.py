"""Even the light of a page, and tell ink from paper for line finding."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import cv2
import numpy as np
from numpy.typing import NDArray

__all__ = ["InkMask", "background", "evened", "ink_mask"]

_SMALL_SIDE = 360
"""Longer side in pixels of the picture on which the background is estimated."""

_TILE = 48
"""Pixels of a tile in which the paper's grain is measured."""
_NOISE = 4.5
"""Spreads of the paper's grain by which ink is darker than paper."""
_LEAST_CONTRAST = 22.0
"""Grey levels by which ink is darker than paper at least, however fine its grain."""
_CROWDED = 1.5
"""Times the usual spread of grain; beyond it a tile with printed lines may be crowded."""
_LEVEL_REACH = 30.0
"""Grey levels by which the evened paper may differ from place to place."""


@dataclass(frozen=True, slots=True)
class InkMask:
    """mask: 255 where ink is; depth and deepest: usual and greatest darkness of ink; paper_share: of plain paper."""

    mask: NDArray[np.uint8]
    depth: float
    deepest: float
    paper_share: float


def background(grey: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """Brightness of the bare paper, as a small picture that covers the same field.

    A closing removes writing and keeps the edges of shadows where they are; a median takes out what is left.
    """
    height, width = grey.shape
    scale = min(1.0, _SMALL_SIDE / max(height, width))
    small = cv2.resize(
        grey, (max(1, round(width * scale)), max(1, round(height * scale))), interpolation=cv2.INTER_AREA
    )
    reach = max(3, min(small.shape) // 24 | 1)
    kernel = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (reach * 2 + 1, reach * 2 + 1))
    closed = cv2.morphologyEx(small, cv2.MORPH_CLOSE, kernel, borderType=cv2.BORDER_REPLICATE)
    smoothed = cv2.medianBlur(closed, min(reach | 1, 15))
    return np.asarray(np.maximum(cv2.GaussianBlur(smoothed, (0, 0), reach / 4), 8), dtype=np.uint8)


def evened(grey: NDArray[np.uint8], paper: NDArray[np.uint8]) -> NDArray[np.uint8]:
    """Divide by the brightness of the paper, so that bare paper is 255 everywhere.

    Args:
        grey: shape (h, w).
        paper: from `background`, any size; it is stretched over grey.
    """
    stretched = cv2.resize(paper, (grey.shape[1], grey.shape[0]), interpolation=cv2.INTER_LINEAR)
    return np.asarray(cv2.divide(grey, stretched, scale=255), dtype=np.uint8)


def ink_mask(
    even: NDArray[np.uint8], inside: NDArray[np.uint8], *, grain: NDArray[np.uint8] | None = None,
    printed: NDArray[np.bool_] | None = None,
) -> InkMask:
    """Mark ink by two thresholds: a pixel fainter than ink counts when it touches one that is surely ink.

    Args:
        even: evened grey.
        inside: 255 where ink is looked for: on the sheet, off its printed lines.
        grain: the page that shows the grain of the paper, where `even` was wiped in parts.
        printed: where its printed lines are, which are no grain.
    """
    values: NDArray[Any] = even[inside > 0]
    if values.size < 64:
        return InkMask(np.zeros_like(even), 0.0, 0.0, 0.0)
    sample = values[:: max(1, values.size // 200_000)].astype(np.float32)
    paper = float(np.median(sample))
    paper_share = float(np.mean(sample > paper - 45))
    bare = inside if printed is None else np.where(printed, 0, inside)
    level, noise = _paper_around(even if grain is None else grain, inside, np.asarray(bare, np.uint8), paper)
    faint = cv2.subtract(level, cv2.max(noise * _NOISE, _LEAST_CONTRAST))
    dark = (even < faint) & (inside > 0)
    sample = even[dark].astype(np.float32)
    sample = sample[:: max(1, sample.size // 100_000)]
    if sample.size < 16:
        return InkMask(np.zeros_like(even), 0.0, 0.0, paper_share)
    depth = paper - float(np.percentile(sample, 30))
    deepest = paper - float(np.percentile(sample, 2))
    low = cv2.min(faint, level - 0.32 * depth)
    high = cv2.min(low, level - max(30.0, 0.45 * depth))
    weak = ((even < low) & (inside > 0)).astype(np.uint8)
    count, labels = cv2.connectedComponents(weak, connectivity=8, ltype=cv2.CV_32S)
    strong = np.zeros(count, bool)
    strong[labels[(even < high) & (weak > 0)]] = True
    strong[0] = False
    return InkMask(strong[labels].astype(np.uint8) * np.uint8(255), depth, deepest, paper_share)


def _paper_around(
    even: NDArray[np.uint8], inside: NDArray[np.uint8], bare: NDArray[np.uint8], paper: float
) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    """Level of the paper and its grain around each pixel: a shadow that is evened has coarser grain than the light.

    Args:
        bare: 255 where paper shows or is written on, and nothing is printed.
        paper: level of the paper of the whole page; no part of it is far from that.
    """
    height, width = even.shape
    rows, columns = max(1, height // _TILE), max(1, width // _TILE)
    tall, wide = height // rows, width // columns
    flat, kept = (
        each[: rows * tall, : columns * wide].reshape(rows, tall, columns, wide)[:, ::2, :, ::2]
        .transpose(0, 2, 1, 3).reshape(rows, columns, -1) for each in (even, bare)
    )
    level, noise = _level_and_grain(flat, paper)
    usual = _CROWDED * max(float(np.median(noise)), _LEAST_CONTRAST / _NOISE)
    crowded = (noise > usual) & (kept.min(axis=2) == 0) & (kept.max(axis=2) > 0)
    if crowded.any():
        # Writing and what is printed may fill half of a tile together: look between the printed lines alone.
        between = np.where(kept[crowded] > 0, flat[crowded].astype(np.float32), np.nan)[None]
        clear, grain = (each[0] for each in _level_and_grain(between, paper))
        # Where it is still uneven, a shadow or the edge of the sheet is there.
        plain = grain < usual
        level[crowded] = np.where(plain, clear, level[crowded])
        noise[crowded] = np.where(plain, usual, noise[crowded])
    within = inside[: rows * tall, : columns * wide].reshape(rows, tall, columns, wide)
    off = within[:, ::4, :, ::4].min(axis=(1, 3)) == 0
    level[off], noise[off] = paper, float(np.median(noise))
    size = (width, height)
    return (
        np.asarray(cv2.resize(_smooth(level), size, interpolation=cv2.INTER_LINEAR), np.float32),
        np.asarray(cv2.resize(_smooth(noise), size, interpolation=cv2.INTER_LINEAR), np.float32),
    )


def _level_and_grain(tiles: NDArray[Any], paper: float) -> tuple[NDArray[np.float32], NDArray[np.float32]]:
    level = np.clip(_medians(tiles), paper - _LEVEL_REACH, 255).astype(np.float32)
    # Ink is no grain: beyond forty levels the spread is not told by it.
    noise = 1.4826 * _medians(np.minimum(np.abs(tiles.astype(np.float32) - level[:, :, None]), 40))
    return level, noise.astype(np.float32)


def _medians(tiles: NDArray[Any]) -> NDArray[np.float64]:
    """Of each tile, shape (rows, columns, n), without what is not a number; every tile has some numbers."""
    ranked = np.sort(tiles, axis=2)
    count = tiles.shape[2] - np.isnan(tiles).sum(axis=2)
    low, high = (np.take_along_axis(ranked, at[:, :, None], axis=2)[:, :, 0] for at in ((count - 1) // 2, count // 2))
    return np.asarray((low.astype(np.float64) + high) / 2)


def _smooth(tiles: NDArray[np.float32]) -> NDArray[np.float32]:
    """A median over neighbouring tiles, so that one full of ink does not stand out."""
    return np.asarray(cv2.medianBlur(tiles, 3) if min(tiles.shape) > 2 else tiles, np.float32)
