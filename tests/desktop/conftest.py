"""Fixtures of the desk's tests: no display, a real reader, and no unannounced warning in the log."""

from __future__ import annotations

import logging
import os
from collections.abc import Iterator
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication
    from pytestqt.qtbot import QtBot

    from desktop.checker_process import CheckerProcess
    from desktop.window import Window

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


@pytest.fixture(autouse=True)
def no_unannounced_logs(request: pytest.FixtureRequest, caplog: pytest.LogCaptureFixture) -> Iterator[None]:
    """A record of WARNING or above fails the test, unless it is announced with the marker `logs`."""
    marker = request.node.get_closest_marker("logs")
    yield
    if marker is None:
        seen = [record for record in caplog.get_records("call") if record.levelno >= logging.WARNING]
        assert not seen, [record.getMessage() for record in seen]


@pytest.fixture
def german(qapp: QApplication) -> Iterator[None]:
    """The desk's language is German."""
    from PySide6.QtCore import QTranslator

    from desktop.translation import install

    before = set(qapp.findChildren(QTranslator))
    assert install(qapp, "de")
    yield
    for translator in set(qapp.findChildren(QTranslator)) - before:
        qapp.removeTranslator(translator)
        translator.deleteLater()


@pytest.fixture
def comma() -> Iterator[None]:
    """Numbers are written with a decimal comma."""
    from PySide6.QtCore import QLocale

    before = QLocale()
    QLocale.setDefault(QLocale(QLocale.Language.German))
    yield
    QLocale.setDefault(before)


@pytest.fixture(scope="module")
def checker() -> Iterator[CheckerProcess]:
    """The checker's process, one for all tests of a module."""
    from desktop.checker_process import CheckerProcess

    process = CheckerProcess()
    yield process
    process.close()


@pytest.fixture
def window(qtbot: QtBot, checker: CheckerProcess) -> Iterator[Window]:
    """The window with an empty desk; modules that read photos have one of their own."""
    from desktop.desk import Desk
    from desktop.window import Window

    window = Window(Desk(checker=checker))
    qtbot.addWidget(window)
    window.show()
    yield window
    window.close()
