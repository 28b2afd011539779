"""The checker in a process of its own, so that long arithmetic never holds up the window and can be stopped."""

from __future__ import annotations

import logging
import multiprocessing
import threading
from collections.abc import Callable, Sequence
from dataclasses import replace
from multiprocessing.connection import Connection
from typing import TypeVar

from desktop.desk_line import DeskLine
from desktop.document import WorkingVerdict
from desktop.language import tr
from desktop.pipeline import judge_lines
from recognition.errors import Cancelled, InputError
from recognition.result import Candidate, Tick, no_tick

__all__ = ["CheckerProcess"]

log = logging.getLogger(__name__)

T = TypeVar("T")

SECONDS_A_LINE = 10.0
"""Longest wait for a page, for each of its lines; the checker's own budget is far below it."""
_POLL_S = 0.03


class CheckerProcess:
    """Judges pages in one process that stays alive; safe to call from any one thread at a time."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._process: multiprocessing.process.BaseProcess | None = None
        self._pipe: Connection | None = None

    def judge(self, lines: Sequence[DeskLine], *, tick: Tick = no_tick) -> tuple[WorkingVerdict, ...]:
        """Judge each working of a page.

        Raises:
            Cancelled: tick stopped it; the process is ended with the work that it did.
            InputError: the process died or took too long.
        """
        light = tuple(_light(line) for line in lines)
        return tuple(self.call(judge_lines, light, longest_s=SECONDS_A_LINE * (len(lines) + 2), tick=tick))

    def call(self, work: Callable[..., T], *arguments: object, longest_s: float, tick: Tick = no_tick) -> T:
        """Do any work that can be sent to a process: a function of a module, with plain arguments.

        Args:
            longest_s: longest wait, in seconds.
        Raises:
            Cancelled: tick stopped it; the process is ended with the work that it did.
            InputError: the process died or took too long.
        """
        with self._lock:
            try:
                return self._ask(work, arguments, longest_s, tick)
            except Cancelled:
                self._end()
                raise
            except (EOFError, OSError) as exc:
                self._end()
                raise InputError(tr("The check broke off. Change or confirm a line to check again.")) from exc

    def start(self) -> None:
        """Start the process now, so that the first check need not wait for it."""
        with self._lock:
            self._ready()

    def close(self) -> None:
        """End the process."""
        with self._lock:
            self._end()

    def _ask(self, work: Callable[..., T], arguments: tuple[object, ...], longest: float, tick: Tick) -> T:
        pipe = self._ready()
        pipe.send((work, arguments))
        waited = 0.0
        while not pipe.poll(_POLL_S):
            waited += _POLL_S
            tick(0, 1)
            if waited > longest:
                self._end()
                raise InputError(tr("The check took too long and was stopped. Shorten the longest line and try again."))
        fault, answer = pipe.recv()
        if fault:
            log.error("the checker failed: %s", fault)
            raise InputError(tr("The check failed; nothing is lost. Change a line to check again, or see the log."))
        result: T = answer
        return result

    def _ready(self) -> Connection:
        if self._process is None or not self._process.is_alive() or self._pipe is None:
            context = multiprocessing.get_context("spawn")
            self._pipe, theirs = context.Pipe()
            process = context.Process(target=_serve, args=(theirs,), name="checker", daemon=True)
            process.start()
            self._process = process
            theirs.close()
        return self._pipe

    def _end(self) -> None:
        if self._process is not None:
            self._process.terminate()
            self._process.join(2)
        if self._pipe is not None:
            self._pipe.close()
        self._process = self._pipe = None


def _light(line: DeskLine) -> DeskLine:
    """The line without the boxes of its tokens, which the checker does not need."""
    return replace(line, candidates=tuple(Candidate(c.latex, c.probability) for c in line.candidates), polygon=())


def _serve(pipe: Connection) -> None:
    """Do what is sent until the other end closes; called in the process."""
    import signal
    import traceback

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    while True:
        try:
            work, arguments = pipe.recv()
        except (EOFError, OSError):
            return
        try:
            answer = ("", work(*arguments))
        except Exception:
            answer = (traceback.format_exc(), None)
        pipe.send(answer)
