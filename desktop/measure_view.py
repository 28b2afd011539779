"""How long does one frame of the page view take? `python -m desktop.measure_view`

Pages of 12, 24 and 48 megapixels with twelve lines and their marks are zoomed, scrolled and fitted in a window that no
one sees, on a viewport of 1000 by 800 pixels; each frame is drawn at once and timed in processor time of all threads,
so that other programs on the machine do not count. One JSON object is printed, in milliseconds.
"""

from __future__ import annotations

import json
import os
import statistics
import sys
import time
from collections.abc import Callable

import numpy as np

__all__ = ["main"]

_SIZES = {"12 MP": (4000, 3000), "24 MP": (6000, 4000), "48 MP": (8000, 6000)}


def main() -> int:
    """Measure; returns the exit status."""
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    from desktop.application import make_application
    from desktop.document import Document
    from desktop.halvings import halved
    from desktop.page_view import PageView
    from desktop.pipeline import judge_lines
    from recognition.result import Box, Candidate, Line, Page

    make_application()
    result: dict[str, object] = {}
    for name, (width, height) in _SIZES.items():
        noise = np.random.default_rng(1).integers(200, 256, (height // 8, width // 8, 3), np.uint8)
        picture = np.ascontiguousarray(np.kron(noise, np.ones((8, 8, 1), np.uint8)))
        lines = tuple(
            Line(Box(width // 8, height // 16 * (n + 2), width // 2, height // 30), (Candidate(text, 0.9),))
            for n, text in enumerate(["2(k+1)", *["=2k+2", "=2k+3"] * 6][:12])
        )
        document = Document.of_page(Page("page.jpg", 0, (width, height), lines), picture)
        document.halvings = halved(picture)
        document.show(judge_lines(document.lines), revision=document.revision)
        view = PageView()
        view.resize(1000, 800)
        view.show()
        view.show_document(document)
        result[name] = {
            "fit": _frames(view, view.fit, 5),
            "zoom": _frames(view, lambda view=view: view.zoom(1.2), 14),  # type: ignore[misc]
            "scroll": _frames(view, lambda view=view: _scroll(view), 30),  # type: ignore[misc]
            "zoom out": _frames(view, lambda view=view: view.zoom(1 / 1.2), 14),  # type: ignore[misc]
        }
        view.close()
    sys.stdout.write(json.dumps(result, indent=1) + "\n")
    return 0


def _scroll(view: object) -> None:
    bar = view.verticalScrollBar()  # type: ignore[attr-defined]
    bar.setValue(bar.value() + 37)


def _frames(view: object, step: Callable[[], object], count: int) -> dict[str, float]:
    times = []
    for _ in range(count):
        start = time.process_time()
        step()
        view.viewport().grab()  # type: ignore[attr-defined]
        times.append((time.process_time() - start) * 1000)
    return {"median_ms": round(statistics.median(times), 1), "worst_ms": round(max(times), 1)}


if __name__ == "__main__":
    sys.exit(main())
