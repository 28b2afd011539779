"""HEIC photos, as phones save them, where the optional package `pillow-heif` is installed."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from recognition.errors import InputError

__all__ = ["HeicPicture", "heic_pictures"]

_BROKEN = (ValueError, OSError, RuntimeError, EOFError, SyntaxError)
"""What the decoder raises for damaged content."""


@dataclass(frozen=True, slots=True)
class HeicPicture:
    """One picture of a file, not decoded yet; size is (width, height), turned upright as the file says."""

    name: str
    size: tuple[int, int]
    source: Any

    def pixels(self) -> NDArray[Any]:
        """RGB, or grey, or either with a last channel of opacity.

        Raises:
            InputError: the picture is damaged.
        """
        try:
            return np.array(self.source)
        except _BROKEN as exc:
            raise _damaged(self.name) from exc


def heic_pictures(name: str, data: bytes) -> list[HeicPicture]:
    """The pictures in a file.

    Args:
        name: of the file, for sentences.
        data: the whole file.
    Raises:
        InputError: the package is not installed, or the file is damaged.
    """
    try:
        import pillow_heif
    except ImportError as exc:
        raise InputError(
            f"{name} is a HEIC photo, which needs the package pillow-heif. Install firstslip[heic], "
            "or export the photo as JPEG and open that."
        ) from exc
    try:
        pictures = [*pillow_heif.open_heif(data)]
    except _BROKEN as exc:
        raise _damaged(name) from exc
    return [HeicPicture(name, (int(each.size[0]), int(each.size[1])), each) for each in pictures]


def _damaged(name: str) -> InputError:
    return InputError(f"{name} is a damaged HEIC file. Copy it again from the phone, or export it as JPEG.")
