"""Memory that is not needed any more goes back to the system, where the C library would keep it. No Qt.

The GNU C library keeps what was freed for later use: after the weights are loaded, and after a photo was gone through,
that is as much as the photo or the weights themselves. Elsewhere nothing is done.
"""

from __future__ import annotations

import ctypes
import platform

__all__ = ["give_back_memory", "keep_large_blocks_apart"]

_MMAP_THRESHOLD, _TRIM_THRESHOLD = -3, -1  # numbers of mallopt's parameters in malloc.h
_LARGE = 1 << 20
"""Bytes from which a block is asked of the system by itself, and given back when it is freed."""


def keep_large_blocks_apart() -> None:
    """From now on, give large blocks back as soon as they are freed; called before they are asked for."""
    library = _library()
    if library is not None:
        library.mallopt(_MMAP_THRESHOLD, _LARGE)
        library.mallopt(_TRIM_THRESHOLD, _LARGE)


def give_back_memory() -> None:
    """Give back what is free now; it takes some milliseconds."""
    library = _library()
    if library is not None:
        library.malloc_trim(0)


def _library() -> ctypes.CDLL | None:
    return ctypes.CDLL(None) if platform.libc_ver()[0] == "glibc" else None
