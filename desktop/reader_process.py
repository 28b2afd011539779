"""The reader in a process of its own: pictures are decoded, cut and read there, and readings typeset.

In a thread, the Python of all that would hold up the window's thread, which waits its turn at every call of Qt.
The process stays alive and keeps the weights. Large arrays come over the pipe in pieces, so that no piece blocks.
"""

from __future__ import annotations

import logging
import multiprocessing
import os
import pickle
import threading
import time
from collections.abc import Iterator, Sequence
from itertools import count
from multiprocessing.connection import Connection
from typing import Any

import numpy as np
from numpy.typing import NDArray

from desktop.hand_pages import HandPage, Weighed
from desktop.language import tr
from desktop.maths import laid_out_of, take_laid_out
from desktop.memory import give_back_memory, keep_large_blocks_apart
from desktop.reading import FoundDocument, PageReader
from desktop.upright import turned_picture
from recognition.errors import Cancelled, InputError
from recognition.result import Candidate, Tick, no_tick

__all__ = ["ReaderProcess"]

log = logging.getLogger(__name__)

_PIECE = 1 << 19
"""Bytes of an array that go over the pipe in one go."""
_STOP = b"stop"
_LEAVES_MUCH = frozenset({"load", "next", "forget", "find_in_picture", "read"})
"""Work after which much memory is free."""
_POLL_S = 0.03
_PATIENCE_S = 3.0
"""How long the process may go on after it was asked to stop; then it is ended."""


class ReaderProcess(PageReader):
    """A PageReader whose work is done in a process; safe to call from several threads, which wait for each other."""

    def __init__(self, *, threads: int = 2) -> None:
        super().__init__(threads=threads)
        self._turn = threading.Lock()
        self._tickets = count()
        self._process: multiprocessing.process.BaseProcess | None = None
        self._pipe: Connection | None = None

    def find(self, path: str | os.PathLike[str], *, tick: Tick = no_tick) -> Iterator[FoundDocument]:
        ticket = next(self._tickets)
        try:
            while parts := self._ask("next", (ticket, os.fspath(path)), tick):
                yield from parts
        finally:
            if self._process is not None:
                self._ask("forget", (ticket,), no_tick)

    def find_in_picture(
        self, picture: NDArray[np.uint8], name: str, *, page: int = 0, turns: int | None = None, tick: Tick = no_tick
    ) -> FoundDocument:
        (found,) = self._ask("find_in_picture", (picture, name, page, turns), tick)
        assert isinstance(found, FoundDocument)
        found.document.picture = turned_picture(picture, found.document.turns)  # not sent back
        return found

    def load(self) -> Any:
        """What reads lines, as the reader itself does; the process is started and the weights are loaded."""
        self._ask("load", (), no_tick)
        return _Lines(self)

    def read_lines(self, crops: Sequence[Any], tick: Tick) -> list[tuple[Candidate, ...]]:
        """Read lines in the process; their readings are typeset when this returns."""
        (answer,) = self._ask("read", (list(crops),), tick)
        candidates, laid_out = answer
        take_laid_out(laid_out)
        return list(candidates)

    def weigh(self, pages: Sequence[HandPage], *, tick: Tick = no_tick) -> list[Weighed]:
        (answer,) = self._ask("weigh", (tuple(pages),), tick)
        weighed, laid_out = answer
        take_laid_out(laid_out)
        return list(weighed)

    def close(self) -> None:
        """End the process."""
        with self._turn:
            self._end()

    def _ask(self, what: str, arguments: tuple[object, ...], tick: Tick) -> list[Any]:
        """Let the process do something; gives the parts of the answer."""
        with self._turn:
            try:
                pipe = self._ready()
                _send(pipe, (what, arguments))
                return self._answer(pipe, tick)
            except Cancelled:
                self._stop()
                raise
            except (EOFError, OSError) as exc:
                self._end()
                words = tr("Reading broke off. Open the page again, or press F5 where its lines are shown.")
                raise InputError(words) from exc

    def _answer(self, pipe: Connection, tick: Tick) -> list[Any]:
        parts: list[Any] = []
        done, total = 0, 0
        while True:
            while not pipe.poll(_POLL_S):
                tick(done, total)
            kind, value = _receive(pipe)
            if kind == "tick":
                done, total = value
                tick(done, total)
            elif kind == "part":
                parts.append(value)
            elif kind == "end":
                return parts
            elif kind == "told":
                raise value
            else:
                log.error("the reader failed: %s", value)
                raise RuntimeError("the reader failed in its process")

    def _stop(self) -> None:
        """Ask the process to give the work up; one that does not is ended."""
        if self._pipe is None:
            return
        try:
            self._pipe.send_bytes(_STOP)
            end = time.monotonic() + _PATIENCE_S
            while time.monotonic() < end:
                if self._pipe.poll(_POLL_S) and _receive(self._pipe)[0] in ("end", "told", "failed"):
                    return
        except (EOFError, OSError):
            log.info("the reader's process is gone")
        self._end()

    def _ready(self) -> Connection:
        if self._process is None or not self._process.is_alive() or self._pipe is None:
            context = multiprocessing.get_context("spawn")
            pipe, theirs = context.Pipe()
            process = context.Process(target=_serve, args=(theirs, self._threads), name="reader", daemon=True)
            process.start()
            theirs.close()
            self._pipe, self._process = pipe, process
        return self._pipe

    def _end(self) -> None:
        if self._process is not None:
            self._process.terminate()
            self._process.join(2)
        if self._pipe is not None:
            self._pipe.close()
        self._process = self._pipe = None


class _Lines:
    """Reads lines in the process, called as the reader is called."""

    def __init__(self, process: ReaderProcess) -> None:
        self._process = process

    def read(self, crops: Sequence[Any], *, beam: int = 5, tick: Tick = no_tick) -> list[tuple[Candidate, ...]]:
        return self._process.read_lines(crops, tick)


def _send(pipe: Connection, value: object) -> None:
    """Send a value; its arrays follow in pieces."""
    buffers: list[pickle.PickleBuffer] = []
    content = pickle.dumps(value, protocol=5, buffer_callback=buffers.append)
    views = [buffer.raw() for buffer in buffers]
    pipe.send((content, [view.nbytes for view in views]))
    for view in views:
        for start in range(0, view.nbytes, _PIECE):
            pipe.send_bytes(view[start : start + _PIECE])


def _receive(pipe: Connection) -> Any:
    """The next value; a "stop" that came after the work had ended is passed over."""
    while (first := pipe.recv_bytes()) == _STOP:
        pass
    content, sizes = pickle.loads(first)
    buffers = []
    for size in sizes:
        array = np.empty(size, np.uint8)
        for start in range(0, size, _PIECE):
            array[start : start + _PIECE] = np.frombuffer(pipe.recv_bytes(), np.uint8)
        buffers.append(array)
    return pickle.loads(content, buffers=buffers)


def _serve(pipe: Connection, threads: int) -> None:
    """Do what is asked until the other end closes; called in the process."""
    import signal
    import traceback

    signal.signal(signal.SIGINT, signal.SIG_IGN)
    keep_large_blocks_apart()
    served = _Served(PageReader(threads=threads))

    def tick(done: int, total: int) -> None:
        if pipe.poll():
            pipe.recv_bytes()  # a "stop": nothing else is sent before the answer has ended
            raise Cancelled
        _send(pipe, ("tick", (done, total)))

    while True:
        try:
            what, arguments = _receive(pipe)
            try:
                for part in served.work(what, arguments, tick):
                    _send(pipe, ("part", part))
            except Cancelled:
                _send(pipe, ("end", None))
            except InputError as exc:
                _send(pipe, ("told", exc))
            except Exception:
                _send(pipe, ("failed", traceback.format_exc()))
            else:
                _send(pipe, ("end", None))
            if what in _LEAVES_MUCH and not pipe.poll():  # nobody waits
                give_back_memory()
        except (EOFError, OSError):
            return


class _Served:
    """The reader in the process, with the files that are being gone through page by page."""

    def __init__(self, reader: PageReader) -> None:
        self._reader = reader
        self._files: dict[int, Iterator[FoundDocument]] = {}
        self._tick: Tick = no_tick

    def work(self, what: str, arguments: tuple[Any, ...], tick: Tick) -> Iterator[Any]:
        """Do one piece of work; gives the parts of the answer."""
        self._tick = tick
        if what == "next":
            ticket, path = arguments
            if ticket not in self._files:
                self._files[ticket] = self._reader.find(path, tick=lambda done, total: self._tick(done, total))
            found = next(self._files[ticket], None)
            if found is not None:
                yield found
        elif what == "forget":
            self._files.pop(arguments[0], None)
        elif what == "find_in_picture":
            picture, name, page, turns = arguments
            found = self._reader.find_in_picture(picture, name, page=page, turns=turns, tick=tick)
            found.document.picture = None
            yield found
        elif what == "load":
            self._reader.load()
        elif what == "weigh":
            weighed = self._reader.weigh(arguments[0], tick=tick)
            yield weighed, laid_out_of([c.latex for page in weighed for line in page.candidates for c in line])
        else:
            candidates = self._reader.load().read(arguments[0], tick=tick)
            yield candidates, laid_out_of([c.latex for of_line in candidates for c in of_line])
