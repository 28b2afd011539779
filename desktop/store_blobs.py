"""Pictures and pen strokes as the bytes that a set's file holds. No Qt."""

from __future__ import annotations

import os

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.ink import Stroke

os.environ.pop("QT_QPA_PLATFORM_PLUGIN_PATH", None)  # OpenCV points Qt at its own plugins on import
os.environ.pop("QT_QPA_FONTDIR", None)

__all__ = ["picture_blob", "picture_of", "small_blob", "stroke_blob", "stroke_of"]

_JPEG_QUALITY = 95
_SMALL_SIDE = 208
"""Pixels of the longer side of the small picture."""
_DRAWN_SHARE = 0.5
"""A picture with at least this share of pure white was drawn by a program, and is kept without loss."""
_TIME, _PRESSURE = 1, 2


def picture_blob(picture: NDArray[np.uint8]) -> bytes:
    """An RGB picture, shape (h, w, 3), as JPEG, without the camera's notes on place; one that was drawn, as PNG."""
    sample = picture[::8, ::8]
    drawn = float((sample == 255).all(axis=2).mean()) >= _DRAWN_SHARE
    return _encoded(picture, ".png" if drawn else ".jpg")


def small_blob(picture: NDArray[np.uint8]) -> bytes:
    """A small copy of an RGB picture, as JPEG."""
    height, width = picture.shape[:2]
    scale = min(1.0, _SMALL_SIDE / max(height, width))
    size = (max(1, round(width * scale)), max(1, round(height * scale)))
    return _encoded(np.asarray(cv2.resize(picture, size, interpolation=cv2.INTER_AREA), np.uint8), ".jpg")


def picture_of(blob: bytes) -> NDArray[np.uint8] | None:
    """The RGB picture of such bytes; None when they are no picture."""
    decoded = cv2.imdecode(np.frombuffer(blob, np.uint8), cv2.IMREAD_COLOR | cv2.IMREAD_IGNORE_ORIENTATION)
    if decoded is None:
        return None
    return np.ascontiguousarray(cv2.cvtColor(decoded, cv2.COLOR_BGR2RGB), np.uint8)


def stroke_blob(stroke: Stroke) -> bytes:
    """Count of points and which channels there are, then the points, times and pressures (doubles, low byte first)."""
    channels = (_TIME if stroke.time is not None else 0) | (_PRESSURE if stroke.pressure is not None else 0)
    head = np.array([len(stroke.points), channels], "<u4").tobytes()
    parts = [stroke.points, *(values for values in (stroke.time, stroke.pressure) if values is not None)]
    return head + b"".join(np.ascontiguousarray(part, "<f8").tobytes() for part in parts)


def stroke_of(blob: bytes) -> Stroke:
    """The stroke of such bytes.

    Raises:
        ValueError: they hold no stroke.
    """
    count, channels = (int(number) for number in np.frombuffer(blob[:8], "<u4"))
    values = np.frombuffer(blob[8:], "<f8").astype(np.float64)
    rows = 2 + bool(channels & _TIME) + bool(channels & _PRESSURE)
    if len(values) != count * rows:
        raise ValueError("a stroke is cut off")
    points, rest = values[: 2 * count].reshape(count, 2), values[2 * count :]
    time = rest[:count] if channels & _TIME else None
    return Stroke(points, time, rest[-count:] if channels & _PRESSURE else None)


def _encoded(picture: NDArray[np.uint8], ending: str) -> bytes:
    options = [cv2.IMWRITE_JPEG_QUALITY, _JPEG_QUALITY] if ending == ".jpg" else [cv2.IMWRITE_PNG_COMPRESSION, 3]
    good, content = cv2.imencode(ending, cv2.cvtColor(picture, cv2.COLOR_RGB2BGR), options)
    if not good:
        raise ValueError("the picture could not be packed")
    return content.tobytes()
