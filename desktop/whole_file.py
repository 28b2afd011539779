"""Files that are there whole or not at all."""

from __future__ import annotations

import contextlib
import os
from pathlib import Path

__all__ = ["write_whole"]


def write_whole(path: Path, content: bytes) -> None:
    """Write a file so that a crash or a full disk leaves the old one, or none, and never half of the new one.

    Raises:
        OSError: the folder cannot be written, or the disk is full.
    """
    part = path.with_name(f".{path.name[:80]}.{os.getpid()}.part")
    try:
        with open(part, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.replace(part, path)
    except BaseException:
        with contextlib.suppress(OSError):
            part.unlink()
        raise
