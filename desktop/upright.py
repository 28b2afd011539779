"""A page whose writing lies on its side or head, turned upright for the desk, and its places told as opened. No Qt."""

from __future__ import annotations

from dataclasses import replace

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.page import LineCrop
from recognition.page.found import map_points
from recognition.result import Box

__all__ = ["as_opened", "turned_box", "turned_crop", "turned_picture"]


def turned_picture(picture: NDArray[np.uint8], turns: int) -> NDArray[np.uint8]:
    """The picture turned clockwise by so many quarter turns; other threads go on meanwhile."""
    ways = (cv2.ROTATE_90_CLOCKWISE, cv2.ROTATE_180, cv2.ROTATE_90_COUNTERCLOCKWISE)
    return picture if turns % 4 == 0 else np.asarray(cv2.rotate(picture, ways[turns % 4 - 1]), np.uint8)


def turned_crop(crop: LineCrop, turns: int, size: tuple[int, int]) -> LineCrop:
    """A line of a picture of that size, with its places on the picture turned clockwise."""
    if turns % 4 == 0:
        return crop
    turn = _turn(turns, size)
    corners = map_points(np.asarray(crop.polygon, np.float64).reshape(-1, 2), turn) if crop.polygon else ()
    return replace(
        crop, box=turned_box(crop.box, turns, size), polygon=tuple((float(x), float(y)) for x, y in corners),
        to_original=turn @ crop.to_original,
    )  # fmt: skip


def turned_box(box: Box, turns: int, size: tuple[int, int]) -> Box:
    """A box on a picture of that size (width, height), where it is when the picture is turned clockwise."""
    width, height = size
    for _ in range(turns % 4):
        box = Box(height - box.y - box.h, box.x, box.h, box.w)
        width, height = height, width
    return box


def as_opened(box: Box, turns: int, size: tuple[int, int]) -> Box:
    """A box on the upright page of that size, in pixels of the picture as it was opened."""
    return turned_box(box, -turns, size)


def _turn(turns: int, size: tuple[int, int]) -> NDArray[np.float64]:
    """Homography from the pixels of a picture to those of the picture turned clockwise, shape (3, 3)."""
    width, height = size
    turn = np.eye(3)
    for _ in range(turns % 4):
        turn = np.array([[0.0, -1.0, height - 1.0], [1.0, 0.0, 0.0], [0.0, 0.0, 1.0]]) @ turn
        width, height = height, width
    return turn
