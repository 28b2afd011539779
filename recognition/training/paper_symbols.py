"""Single symbols cut from photographed paper, as outlines: hands and pens that no tablet shows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import Any, Final

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.reader.tokens import TOKEN_ID

__all__ = ["digit_pictures", "labelled_pictures", "outlines", "packed"]

_GROWN: Final = 6
_SMOOTH: Final = 2.2  # px of the grown picture
_FLATNESS: Final = 1.0  # px by which an outline may be simplified
_SMALLEST: Final = 60.0  # square px of the grown picture: less is grain
_MOST: Final = 4  # contours of one symbol
_NAMES: Final = {"dot": ".", "minus": "-", "plus": "+", "slash": "/"}


def outlines(image: NDArray[np.uint8]) -> list[NDArray[np.int16]]:
    """Closed contours of the ink, holes too.

    Args:
        image: uint8 (H, W), one symbol, ink 0 on 255.

    Returns:
        int16 (N, 2) each, in sixths of a pixel; none where there is no ink or too much of a tangle.
    """
    ink = cv2.copyMakeBorder(255 - image, 2, 2, 2, 2, cv2.BORDER_CONSTANT, value=(0,))
    grown = cv2.resize(ink, None, fx=_GROWN, fy=_GROWN, interpolation=cv2.INTER_CUBIC)
    grown = cv2.GaussianBlur(grown, (0, 0), _SMOOTH)
    found, _ = cv2.findContours((grown > 110).astype(np.uint8), cv2.RETR_CCOMP, cv2.CHAIN_APPROX_NONE)
    kept = [contour for contour in found if cv2.contourArea(contour) >= _SMALLEST]
    simple = [cv2.approxPolyDP(contour, _FLATNESS, True)[:, 0].astype(np.int16) for contour in kept]
    return simple if len(simple) <= _MOST else []


def packed(pictures: Iterable[tuple[str, NDArray[np.uint8]]]) -> dict[str, Any]:
    """Arrays `paper_points`, `paper_offsets`, `paper_groups`, `paper_tokens` of labelled pictures."""
    points: list[NDArray[np.int16]] = []
    offsets, groups, tokens = [0], [0], []
    for token, image in pictures:
        contours = outlines(image)
        if contours:
            points += contours
            offsets += np.cumsum([offsets[-1], *map(len, contours)])[1:].tolist()
            groups.append(len(offsets) - 1)
            tokens.append(TOKEN_ID[token])
    return {
        "paper_points": np.concatenate(points), "paper_offsets": np.array(offsets, np.int32),
        "paper_groups": np.array(groups, np.int32), "paper_tokens": np.array(tokens, np.uint8),
    }  # fmt: skip


def labelled_pictures(source: Path, *, each: int) -> Iterator[tuple[str, NDArray[np.uint8]]]:
    """`each` symbols of every label with their tokens, in order.

    Args:
        source: npz with `images` uint8 [N, 28, 28], ink 0 on 255, and `labels`.
    """
    with np.load(source) as arrays:
        images, labels = arrays["images"], arrays["labels"]
    for label in dict.fromkeys(labels.tolist()):
        token = _NAMES.get(label, label)
        if token in TOKEN_ID:
            places = np.flatnonzero(labels == label)
            for place in places[np.linspace(0, len(places) - 1, min(each, len(places))).astype(int)]:
                yield token, images[place]


def digit_pictures(source: Path) -> Iterator[tuple[str, NDArray[np.uint8]]]:
    """Digits with their tokens, those of one slant together, since one hand slants all its digits alike.

    Args:
        source: CSV, gzipped or not, in the order of MNIST: 28 * 28 grey values by rows, ink bright, then the digit.
    """
    rows = np.loadtxt(source, delimiter=",", dtype=np.uint8)
    images, labels = rows[:, :-1].reshape(-1, 28, 28), rows[:, -1]
    slants = np.array([_slant(image) for image in images])
    for digit in range(10):
        places = np.flatnonzero(labels == digit)
        for place in places[np.argsort(slants[places], kind="stable")]:
            yield str(digit), 255 - images[place]


def _slant(ink: NDArray[np.uint8]) -> float:
    """How far the ink moves to the left a row further down."""
    moments = cv2.moments(ink)
    return float(-moments["mu11"] / max(moments["mu02"], 1e-6))
