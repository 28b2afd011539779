"""How long from an event of the pen to the painted pixel? `python -m desktop.measure_pen [DRAWING.inkml]`

Writes a drawing on the paper of the real window with synthesised tablet events at 120 points a second, ten pages of
writing already on it, while the desk reads and checks what is written at every rest. One JSON object is printed: the
time from each event to the end of the paint that shows it, by the clock and in processor time of the window's thread
(what other programs on the machine do not touch), in milliseconds, and how many events came late.
"""

from __future__ import annotations

import json
import os
import statistics
import sys
import time
from collections.abc import Sequence
from pathlib import Path

__all__ = ["main"]

_RATE = 120
_SECONDS = 30
_EARLIER = 300
"""Strokes that stand on the page before."""
_SAMPLE = Path(__file__).parents[1] / "sample_images" / "candidate-4160.inkml"


def main(arguments: Sequence[str]) -> int:
    """Measure; returns the exit status."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from PySide6.QtCore import QCoreApplication, QEvent, QEventLoop, QPointF, Qt
    from PySide6.QtGui import QInputDevice, QPointingDevice, QTabletEvent

    from desktop.application import make_application
    from desktop.desk import Desk
    from desktop.page_changes import SetStrokes
    from desktop.reader_process import ReaderProcess
    from desktop.window import Window
    from recognition.ink import Stroke, read_inkml, strokes_to_lines

    ink = read_inkml(Path(arguments[0]) if arguments else _SAMPLE)
    placed = [strokes_to_lines(ink).picture.placed(stroke) * 0.8 + 30 for stroke in ink.strokes]
    application = make_application()
    reader = ReaderProcess()
    desk = Desk(reader=reader)
    window = Window(desk)
    window.show()
    desk.warm_up()
    window.writing.new_page()
    canvas, document = window.pen.canvas, window.document
    assert document is not None
    earlier = [Stroke(placed[n % len(placed)] + (0, 600 + 12.0 * n)) for n in range(_EARLIER)]
    desk.do(document, SetStrokes(tuple(earlier), ()))
    while desk.busy:
        application.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 20)
    can = QInputDevice.Capability
    pen = QPointingDevice("a pen", 1, QInputDevice.DeviceType.Stylus, QPointingDevice.PointerType.Pen,
                          can.Position | can.Pressure, 1, 3)  # fmt: skip
    left, none = Qt.MouseButton.LeftButton, Qt.MouseButton.NoButton

    def send(kind: QEvent.Type, place: QPointF) -> None:
        button = none if kind is QEvent.Type.TabletMove else left
        held = none if kind is QEvent.Type.TabletRelease else left
        event = QTabletEvent(kind, pen, place, place, 0.5, 0, 0, 0, 0, 0, Qt.KeyboardModifier.NoModifier, button, held)
        QCoreApplication.sendEvent(canvas, event)

    canvas.latencies_ms.clear()
    points = late = 0
    due = time.perf_counter()
    end = due + _SECONDS
    while time.perf_counter() < end:
        for stroke in placed:
            places = [canvas.from_page(QPointF(x, y)) for x, y in stroke]
            kinds = [QEvent.Type.TabletPress, *[QEvent.Type.TabletMove] * (len(places) - 1)]
            for kind, place in zip(kinds, places, strict=True):
                due += 1 / _RATE
                while time.perf_counter() < due:
                    application.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 1)
                late += time.perf_counter() - due > 1 / _RATE
                send(kind, place)
                points += 1
                application.processEvents()
            send(QEvent.Type.TabletRelease, places[-1])
            due = max(due, time.perf_counter()) + 0.08  # the way to the next stroke
        rest = time.perf_counter() + 0.8
        while time.perf_counter() < rest:
            application.processEvents(QEventLoop.ProcessEventsFlag.AllEvents, 5)
        due = time.perf_counter()
        desk.do(document, SetStrokes(tuple(earlier), document.lines))
    times = sorted(clock for clock, _ in canvas.latencies_ms)
    own = sorted(cpu for _, cpu in canvas.latencies_ms)
    result = {
        "points": points, "events_timed": len(times), "by_the_clock": _spread(times), "processor_time": _spread(own),
        "within_20_ms": round(sum(t <= 20 for t in times) / len(times), 4), "late_by_a_point": int(late),
    }  # fmt: skip
    window.close()
    reader.close()
    sys.stdout.write(json.dumps(result, indent=1) + "\n")
    return 0


def _spread(times: list[float]) -> dict[str, float]:
    """Of sorted times."""
    return {
        "p50_ms": round(statistics.median(times), 2), "p95_ms": round(times[int(len(times) * 0.95)], 2),
        "p99_ms": round(times[int(len(times) * 0.99)], 2), "worst_ms": round(times[-1], 1),
    }  # fmt: skip


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
