"""Published data for the checker's tests, found beside the checkout; never part of it."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

FOLDER = Path(__file__).resolve().parents[3] / "shared" / "data" / "checker"


def rows(name: str) -> list[dict[str, Any]]:
    """The rows of a JSON-lines file, or the test is skipped with the reason."""
    path = FOLDER / name
    if not path.is_file():
        pytest.skip(f"{name} is not beside this checkout; see DEVELOPERS.md for where the data come from")
    with path.open(encoding="utf-8") as stream:
        return [json.loads(row) for row in stream]
