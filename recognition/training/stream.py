"""Endless batches of training lines, and finite ones of test lines, in a few fixed image sizes."""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Final, NamedTuple

import numpy as np
import torch
from numpy.typing import NDArray
from torch import Tensor
from torch.utils.data import IterableDataset, get_worker_info

from recognition.reader.canonical import CanonicalFrame
from recognition.reader.tokens import TOKEN_ID, VOCABULARY, NotCanonical
from recognition.training.augment import pen_line, photographed_line
from recognition.training.fonts import load_fonts
from recognition.training.samples import InkPack, Mixture, draw_sample

__all__ = ["Batch", "TrainingLines", "load_images", "save_images"]

_HEIGHTS: Final = (80, 112, 160, 240)
_WIDTHS: Final = (192, 320, 448, 640, 896, 1200, 1664)
"""Few fixed sizes: each new one costs the convolution library a second of planning."""
_TOKENS_MOST: Final = 110


class Batch(NamedTuple):
    """image uint8 [B,3,H,W], ink bright on 0 and the two planes of motion; size int64 [B,2], width and height;
    tokens int64 [B,T], -1 behind the end; boxes float32 [B,T,4], x0 y0 x1 y1 in pixels, NaN where unknown."""

    image: Tensor
    size: Tensor
    tokens: Tensor
    boxes: Tensor


_Line = tuple[NDArray[np.uint8], Sequence[int], NDArray[np.float32]]
"""planes uint8 [1 or 3,H,W], tokens, boxes"""


class TrainingLines(IterableDataset):
    """Batches of about `pixels` pixels; each worker draws its own lines from seed and worker number."""

    def __init__(
        self, pack: Path, *, seed: int, pixels: int, mixture: Mixture, photo_share: float, frame: CanonicalFrame
    ) -> None:
        self._pack, self._seed, self._pixels = pack, seed, pixels
        self._mixture, self._photo_share, self._frame = mixture, photo_share, frame

    def __iter__(self) -> Iterator[Batch]:
        worker = get_worker_info()
        lot = self._seed * 1000 + (worker.id if worker else 0)
        rng, numbers = random.Random(lot), np.random.default_rng(lot)
        pack = InkPack(self._pack, load_fonts())
        waiting: dict[tuple[int, int], list[_Line]] = {}
        while True:
            try:
                sample = draw_sample(pack, self._mixture, rng)
            except NotCanonical:
                continue
            if len(sample.tokens) > _TOKENS_MOST:
                continue
            picture = photographed_line if rng.random() < self._photo_share else pen_line
            line = picture(sample.drawing, len(sample.tokens), self._frame, numbers)
            key = _bucket(*line.pixels.shape)
            if key is None:
                continue
            lines = waiting.setdefault(key, [])
            planes = line.pixels[None] if line.motion is None else np.concatenate([line.pixels[None], line.motion])
            lines.append((planes, [TOKEN_ID[token] for token in sample.tokens], line.boxes))
            if len(lines) >= max(8, min(448, self._pixels // (key[0] * key[1]) // 8 * 8)):
                yield _collated(lines, key)
                waiting[key] = []


def _bucket(height: int, width: int) -> tuple[int, int] | None:
    tall = next((size for size in _HEIGHTS if height <= size), None)
    wide = next((size for size in _WIDTHS if width <= size), None)
    return None if tall is None or wide is None else (tall, wide)


def _collated(lines: Sequence[_Line], key: tuple[int, int]) -> Batch:
    longest = -(-max(len(tokens) for _, tokens, _ in lines) // 8) * 8
    image = np.zeros((len(lines), 3, *key), np.uint8)
    size = np.zeros((len(lines), 2), np.int64)
    tokens = np.full((len(lines), longest), -1, np.int64)
    boxes = np.full((len(lines), longest, 4), np.nan, np.float32)
    for number, (planes, line_tokens, line_boxes) in enumerate(lines):
        height, width = planes.shape[1:]
        image[number, : len(planes), :height, :width] = planes
        size[number] = width, height
        tokens[number, : len(line_tokens)] = line_tokens
        boxes[number, : len(line_tokens)] = line_boxes
    return Batch(*map(torch.from_numpy, (image, size, tokens, boxes)))


def save_images(path: Path, lines: Sequence[tuple[NDArray[np.uint8], Sequence[str]]]) -> None:
    """Keep test lines in the canonical frame: pixels (H, W), or planes (3, H, W) with their motion, and tokens."""
    np.savez_compressed(
        path,
        pixels=np.concatenate([pixels.ravel() for pixels, _ in lines]),
        shapes=np.array([pixels.shape for pixels, _ in lines]),
        counts=np.array([len(tokens) for _, tokens in lines]),
        tokens=np.array([TOKEN_ID[token] for _, tokens in lines for token in tokens], np.uint8),
        vocabulary=np.array(VOCABULARY),
    )


def load_images(path: Path, *, pixels: int) -> list[Batch]:
    """Test lines of save_images, batched by size."""
    with np.load(path) as arrays:
        shapes, counts = arrays["shapes"], arrays["counts"]
        flat, tokens = arrays["pixels"], arrays["tokens"]
    places, ends = np.cumsum([0, *shapes.prod(1)]), np.cumsum([0, *counts])
    buckets: dict[tuple[int, int], list[_Line]] = {}
    for number, shape in enumerate(shapes):
        image = flat[places[number] : places[number + 1]].reshape((-1, *shape[-2:]))
        line = tokens[ends[number] : ends[number + 1]].astype(int).tolist()
        key = _bucket(*shape[-2:])
        if key is not None:
            buckets.setdefault(key, []).append((image, line, np.full((len(line), 4), np.nan, np.float32)))
    out = []
    for key, lines in sorted(buckets.items()):
        count = max(8, min(128, pixels // (key[0] * key[1])))
        out += [_collated(lines[begin : begin + count], key) for begin in range(0, len(lines), count)]
    return out
