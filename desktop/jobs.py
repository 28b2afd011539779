"""Long work off the window's thread, with progress and a way to stop; the one place that owns threads."""

from __future__ import annotations

import logging
import threading
from collections.abc import Callable

from PySide6.QtCore import QCoreApplication, QEvent, QObject, QRunnable, QThreadPool, Signal, Slot

from checker.errors import InputError as CheckerInputError
from desktop.language import tr
from recognition.errors import Cancelled
from recognition.errors import InputError as RecognitionInputError
from recognition.result import Tick

__all__ = ["Give", "Job", "Jobs", "Work"]

log = logging.getLogger(__name__)

Give = Callable[[object], None]
Work = Callable[[Tick, Give], object]
"""Takes tick(done, total), which raises Cancelled to stop, and give(part), which hands on a part of the result."""

_USER_ERRORS = (CheckerInputError, RecognitionInputError)


class Job(QObject):
    """One piece of long work. Exactly one of succeeded, failed, cancelled comes, once, in the window's thread."""

    progressed = Signal(int, int)
    gave = Signal(object)
    succeeded = Signal(object)
    failed = Signal(str)
    cancelled = Signal()
    ended = Signal(object)
    _from_worker = Signal(str, object)

    def __init__(self, name: str, work: Work, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.name = name
        self._work = work
        self._stop = threading.Event()
        self._from_worker.connect(self._deliver)

    def cancel(self) -> None:
        """Ask the work to stop at its next tick."""
        self._stop.set()

    def run(self) -> None:
        """Do the work; called in the worker."""
        try:
            result = self._work(self._tick, self._give)
        except Cancelled:
            self._from_worker.emit("cancelled", None)
        except _USER_ERRORS as exc:
            self._from_worker.emit("failed", str(exc))
        except BaseException:
            log.exception("%s failed", self.name)
            self._from_worker.emit(
                "failed", tr("{name} failed; nothing is lost. Try again, or see the log.", name=self.name)
            )
        else:
            self._from_worker.emit("succeeded", result)

    def _tick(self, done: int, total: int) -> None:
        if self._stop.is_set():
            raise Cancelled
        self._from_worker.emit("progressed", (done, total))

    def _give(self, part: object) -> None:
        if self._stop.is_set():
            raise Cancelled
        self._from_worker.emit("gave", part)

    @Slot(str, object)
    def _deliver(self, what: str, value: object) -> None:
        if what == "progressed":
            assert isinstance(value, tuple)
            self.progressed.emit(*value)
        elif what == "gave":
            self.gave.emit(value)
        else:
            if what == "succeeded":
                self.succeeded.emit(value)
            elif what == "failed":
                self.failed.emit(str(value))
            else:
                self.cancelled.emit()
            self.ended.emit(self)


class _Runner(QRunnable):
    def __init__(self, job: Job) -> None:
        super().__init__()
        self._job = job

    def run(self) -> None:
        self._job.run()


class Jobs(QObject):
    """Starts jobs one after another and holds each until it has ended."""

    busy_changed = Signal(bool)

    def __init__(self, parent: QObject | None = None, *, threads: int = 1) -> None:
        super().__init__(parent)
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(threads)
        self._running: list[Job] = []

    @property
    def busy(self) -> bool:
        return bool(self._running)

    def start(self, job: Job) -> None:
        """Run a job as soon as a thread is free; connect its signals first."""
        job.ended.connect(self._let_go)
        self._running.append(job)
        self._pool.start(_Runner(job))
        self.busy_changed.emit(True)

    def cancel_all(self) -> None:
        """Ask every job to stop."""
        for job in self._running:
            job.cancel()

    def finish(self, *, timeout_ms: int = 30_000) -> bool:
        """Let everything that was started come to its end, and deliver the last news.

        Returns:
            Whether all threads came to rest in time.
        """
        rested = self._pool.waitForDone(timeout_ms)
        self._deliver_news()
        return rested

    def close(self, *, timeout_ms: int = 5000) -> bool:
        """Stop everything and deliver the last news.

        Returns:
            Whether all threads came to rest in time.
        """
        self.cancel_all()
        return self.finish(timeout_ms=timeout_ms)

    def _deliver_news(self) -> None:
        for job in tuple(self._running):
            QCoreApplication.sendPostedEvents(job, QEvent.Type.MetaCall.value)

    @Slot(object)
    def _let_go(self, job: Job) -> None:
        if job in self._running:
            self._running.remove(job)
            job.deleteLater()
        self.busy_changed.emit(self.busy)
