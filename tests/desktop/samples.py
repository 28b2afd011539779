"""The sample pages and their truth files."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "sample_images"


def sample(name: str) -> Path:
    """A sample page by its name; skipped where the samples are not made yet."""
    path = SAMPLES / name
    if not path.is_file():
        pytest.skip(f"sample_images/{name} is not there")
    return path


def truth(name: str) -> dict[str, Any]:
    """The truth file of a sample page."""
    return json.loads(sample(name).with_suffix(".json").read_text(encoding="utf-8"))


def pages_with_slip() -> list[Path]:
    """Sample photos whose truth file names a planted slip."""
    return [path for path in sorted(SAMPLES.glob("*.jpg")) if truth(path.name).get("planted")]
