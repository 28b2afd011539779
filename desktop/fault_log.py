"""The log that the user can open when something went wrong, and whether the program ended badly last time."""

from __future__ import annotations

import contextlib
import faulthandler
import logging
import os
import sys
from logging.handlers import RotatingFileHandler
from pathlib import Path
from typing import TextIO

__all__ = ["FaultLog"]

_MOST_BYTES = 300_000
_FORMAT = "%(asctime)s %(levelname)s %(name)s: %(message)s"


class FaultLog:
    """A file for the log, and one beside it into which a crash writes where it happened.

    The second is there while the program runs and is taken away when it ends well, so that finding it tells of a crash.
    """

    def __init__(self, path: Path) -> None:
        self.path = path
        self._mark = path.with_name(f"{path.stem}-{os.getpid()}.running")
        self._crash: TextIO | None = None
        self._handler: logging.Handler | None = None

    def start(self) -> bool:
        """Write the log from now on; returns whether the last run ended badly. A folder out of reach is let be."""
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            ended_badly = self._take_over()
            self._handler = RotatingFileHandler(
                self.path, maxBytes=_MOST_BYTES, backupCount=1, encoding="utf-8", delay=True
            )
            self._crash = open(self._mark, "w", encoding="utf-8")  # noqa: SIM115  (held until the end)
        except OSError:
            return False
        self._handler.setFormatter(logging.Formatter(_FORMAT))
        self._handler.setLevel(logging.INFO)
        logging.getLogger().addHandler(self._handler)
        faulthandler.enable(self._crash)
        return ended_badly

    def stop(self) -> None:
        """The program ends well."""
        if self._crash is not None:
            faulthandler.disable()
            self._crash.close()
            self._crash = None
            with contextlib.suppress(OSError):
                self._mark.unlink()
        if self._handler is not None:
            logging.getLogger().removeHandler(self._handler)
            self._handler.close()
            self._handler = None

    def _take_over(self) -> bool:
        """Carry what crashes left behind into the log; gives whether there were any."""
        ended_badly = False
        for mark in self.path.parent.glob(f"{self.path.stem}-*.running"):
            if _is_running(mark):
                continue
            trace = mark.read_text(encoding="utf-8", errors="replace")
            with open(self.path, "a", encoding="utf-8") as log:
                log.write(f"The program ended badly.\n{trace}\n")
            mark.unlink()
            ended_badly = True
        return ended_badly


def _is_running(mark: Path) -> bool:
    """Whether the process that made a mark still runs; on Windows its open file cannot be renamed."""
    if sys.platform == "win32":
        try:
            mark.rename(mark)
        except OSError:
            return True
        return False
    try:
        os.kill(int(mark.stem.rpartition("-")[2]), 0)
    except PermissionError:
        return True
    except (OSError, ValueError):
        return False
    return True
