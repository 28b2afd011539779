"""Fixtures of the desk's tests: no display, a real reader, and no unannounced warning in the log."""

from __future__ import annotations

import json
import logging
import os
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

ROOT = Path(__file__).parents[2]
SAMPLES = ROOT / "sample_images"


@pytest.fixture(autouse=True)
def no_unannounced_logs(request: pytest.FixtureRequest, caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """A record of WARNING or above fails the test, unless it is announced with the marker `logs`."""
    marker = request.node.get_closest_marker("logs")
    yield
    if marker is None:
        seen = [record for record in caplog.get_records("call") if record.levelno >= logging.WARNING]
        assert not seen, [record.getMessage() for record in seen]


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
