"""Fixtures of the desk's tests: no display, a real reader, and no unannounced warning in the log."""

from __future__ import annotations

import logging
import os
from collections.abc import Iterator

import pytest

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture(autouse=True)
def no_unannounced_logs(request: pytest.FixtureRequest, caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """A record of WARNING or above fails the test, unless it is announced with the marker `logs`."""
    marker = request.node.get_closest_marker("logs")
    yield
    if marker is None:
        seen = [record for record in caplog.get_records("call") if record.levelno >= logging.WARNING]
        assert not seen, [record.getMessage() for record in seen]
