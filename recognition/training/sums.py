"""Writes SHA256SUMS beside the weights, in the form that `sha256sum -c` reads."""

from __future__ import annotations

import hashlib
from pathlib import Path

from recognition.reader.weights import MODEL_FILES

__all__ = ["write_sums"]


def write_sums(folder: Path) -> None:
    """The sums of both graphs, by name."""
    sums = [f"{hashlib.sha256((folder / name).read_bytes()).hexdigest()}  {name}" for name in sorted(MODEL_FILES)]
    (folder / "SHA256SUMS").write_text("\n".join(sums) + "\n")
