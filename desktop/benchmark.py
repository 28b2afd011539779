"""How long is the window's event loop blocked while a page is read, checked, shown and saved?

`python -m desktop.benchmark PHOTO` opens the photo in a window that no one sees and prints one JSON object:
start-up, memory, and for each step the longest time between two turns of the event loop, in milliseconds; beside it
the same while nothing is done, which is what the machine itself costs.
"""

from __future__ import annotations

import json
import os
import sys
import tempfile
import time
from collections.abc import Callable, Sequence
from pathlib import Path

__all__ = ["main"]

_STEP_S = 120
_QUIET_S = 3.0
"""How long the loop is timed while nothing is done: what the machine itself holds it up."""


class _Turns:
    """Times the turns of the event loop with a timer that always waits."""

    def __init__(self) -> None:
        from PySide6.QtCore import QTimer

        self._last = time.perf_counter()
        self._longest = 0.0
        self._last_cpu = time.thread_time()
        self._longest_cpu = 0.0
        self._timer = QTimer()
        self._timer.timeout.connect(self._turn)
        self._timer.start(0)

    def _turn(self) -> None:
        now, cpu = time.perf_counter(), time.thread_time()
        self._longest = max(self._longest, now - self._last)
        self._longest_cpu = max(self._longest_cpu, cpu - self._last_cpu)
        self._last, self._last_cpu = now, cpu

    def during(self, step: Callable[[], object], ended: Callable[[], bool]) -> dict[str, float]:
        """Do a step and turn the event loop until it has ended.

        Returns:
            In ms: the longest block as the user feels it; the most that the window's own thread computed between two
            turns, which leaves out what it waited for the machine; and the whole time.
        """
        from PySide6.QtCore import QCoreApplication, QEventLoop

        QCoreApplication.processEvents()
        self._longest, self._last = 0.0, time.perf_counter()
        self._longest_cpu, self._last_cpu = 0.0, time.thread_time()
        start = self._last
        step()
        while True:
            QCoreApplication.processEvents(QEventLoop.ProcessEventsFlag.AllEvents)
            if ended():
                break
            if time.perf_counter() - start > _STEP_S:
                raise TimeoutError("a step did not end")
        self._turn()
        return {
            "longest_ms": round(self._longest * 1000, 1), "longest_computing_ms": round(self._longest_cpu * 1000, 1),
            "whole_ms": round((self._last - start) * 1000),
        }  # fmt: skip


def main(arguments: Sequence[str]) -> int:
    """Measure on one photo; returns the exit status."""
    if len(arguments) != 1:
        sys.stderr.write("Name one photo: python -m desktop.benchmark PHOTO\n")
        return 2
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    started = time.perf_counter()
    from desktop.application import make_application
    from desktop.desk import Desk
    from desktop.reader_process import ReaderProcess
    from desktop.window import Window

    application = make_application()
    reader = ReaderProcess()
    desk = Desk(reader=reader)
    window = Window(desk)
    window.show()
    application.processEvents()
    result: dict[str, object] = {"window_shown_ms": round((time.perf_counter() - started) * 1000)}
    turns = _Turns()
    quiet_until = time.perf_counter() + _QUIET_S
    result["nothing"] = turns.during(lambda: None, lambda: time.perf_counter() > quiet_until)
    checked: list[object] = []
    desk.document_checked.connect(checked.append)
    result["loading"] = turns.during(desk.warm_up, lambda: not desk.busy)
    result["reading"] = turns.during(lambda: window.open_files([Path(arguments[0])]), lambda: bool(checked))
    with tempfile.TemporaryDirectory() as folder:
        for ending in ("png", "pdf"):
            path = Path(folder) / f"marked.{ending}"
            result[f"saving_{ending}"] = turns.during(lambda path=path: window.save_picture(path), path.is_file)  # type: ignore[misc]
    for name, action in (("fit", window.page.fit), ("full_size", window.page.zoom_to_pixels),
                         ("slip", window.go_to_slip)):
        result[name] = turns.during(action, lambda: True)
    result["memory_mb"] = _peak_mb()
    result["memory_of_processes_mb"] = _children_mb()
    result["memory_held_mb"] = _held_mb()
    window.close()
    reader.close()
    sys.stdout.write(json.dumps(result, indent=1) + "\n")
    return 0


def _peak_mb() -> float | None:
    try:
        import resource
    except ImportError:  # not on Windows
        return None
    unit = 2**20 if sys.platform == "darwin" else 2**10
    return round(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / unit)


def _held_mb() -> dict[str, int] | None:
    """What each process holds now, with the page open, what several share counted in parts; where the system tells."""
    import multiprocessing

    processes = {"window": "self"} | {each.name: str(each.pid) for each in multiprocessing.active_children()}
    sizes = {}
    for name, process in processes.items():
        try:
            told = Path(f"/proc/{process}/smaps_rollup").read_text(encoding="ascii")
        except OSError:
            return None
        sizes[name] = round(int(told.partition("Pss:")[2].split()[0]) / 1024)
    return sizes | {"together": sum(sizes.values())}


def _children_mb() -> dict[str, int] | None:
    """Largest memory of the reader's and the checker's process, where the system tells."""
    import multiprocessing

    sizes = {}
    for process in multiprocessing.active_children():
        try:
            status = Path(f"/proc/{process.pid}/status").read_text(encoding="ascii")
        except OSError:
            return None
        sizes[process.name] = round(int(status.partition("VmHWM:")[2].split()[0]) / 1024)
    return sizes


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
