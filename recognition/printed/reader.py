"""Reads printed lines with pix2tex, which runs as a process of its own in an environment of its own."""

from __future__ import annotations

import base64
import json
import logging
import os
import queue
import subprocess
import threading
from collections.abc import Collection, Sequence
from pathlib import Path
from types import TracebackType
from typing import Any, Final

import cv2
import numpy as np
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.printed.settings import INSTALL, PrintedSettings
from recognition.reader import LinePicture, LineStrokes
from recognition.reader.canonical import CanonicalFrame, from_strokes
from recognition.reader.tokens import NotCanonical, normalise
from recognition.result import Candidate, Tick, no_tick

__all__ = ["PrintedReader"]

log = logging.getLogger(__name__)

_WORKER: Final = Path(__file__).with_name("worker.py")
_ENDED: Final = object()
_FAINTEST: Final = 200
"""Grey of 255 above which all is paper; the package fails on a picture without ink."""


class PrintedReader:
    """Speaks to the second engine; the process starts with the first line and ends with `close`.

    Gives one candidate a line, without boxes for its tokens: the package tells neither. Its probability is the product
    of the tokens' own and was never fitted to how often it is right. Deterministic: the likeliest token each time.
    """

    def __init__(self, settings: PrintedSettings) -> None:
        """
        Raises:
            InputError: a file that the settings name is not there.
        """
        settings.check()
        self._settings: Final = settings
        self._process: subprocess.Popen[str] | None = None
        self._heard: queue.Queue[Any] = queue.Queue()
        self._asked = 0
        self.engine = ""
        """Name and version, once it runs."""

    def __enter__(self) -> PrintedReader:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def read(
        self,
        crops: Sequence[LinePicture | LineStrokes],
        *,
        beam: int = 5,
        allowed: Collection[str] | None = None,
        tick: Tick = no_tick,
    ) -> list[tuple[Candidate, ...]]:
        """Read lines; the same protocol as NeuralReader. `beam` and `allowed` mean nothing to this engine.

        Returns:
            For each line one candidate, or none where nothing was read. LaTeX is canonical where our vocabulary has
            its tokens, else as the engine gave it.
        Raises:
            InputError: the package or its weights are missing, or the engine gave no answer.
        """
        out: list[tuple[Candidate, ...]] = []
        for number, crop in enumerate(crops):
            tick(number, len(crops))
            out.append(self._read_line(crop))
        tick(len(crops), len(crops))
        return out

    def close(self) -> None:
        """End the process; a later `read` starts it anew."""
        process, self._process = self._process, None
        if process is None:
            return
        process.kill()
        process.wait()
        for pipe in (process.stdin, process.stdout):
            if pipe is not None:
                pipe.close()

    def _read_line(self, crop: LinePicture | LineStrokes) -> tuple[Candidate, ...]:
        picture = _picture(crop)
        if picture.min() > _FAINTEST:
            return ()
        self._start()
        self._asked += 1
        good, png = cv2.imencode(".png", picture)
        assert good
        self._send({"id": self._asked, "png": base64.b64encode(png.tobytes()).decode("ascii")})
        answer = self._next(self._settings.line_s)
        if answer.get("id") != self._asked or "error" in answer:
            log.debug("the second engine said %s", answer)
            raise InputError("The second engine could not read a line. Read it with the first engine.")
        return _candidates(answer)

    def _start(self) -> None:
        if self._process is not None and self._process.poll() is None:
            return
        self.close()
        settings = self._settings
        self._heard = queue.Queue()
        try:
            self._process = subprocess.Popen(
                [str(settings.python), "-I", str(_WORKER)], stdin=subprocess.PIPE, stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL, encoding="utf-8", env=_environment(settings),
            )  # fmt: skip
        except OSError as exc:
            raise InputError(f"The second engine's Python {settings.python} cannot be started. {INSTALL}") from exc
        threading.Thread(target=_listen, args=(self._process, self._heard), daemon=True).start()
        files = {"checkpoint": settings.checkpoint, "config": settings.config, "tokenizer": settings.tokenizer}
        self._send({name: None if file is None else str(file.absolute()) for name, file in files.items()}
                   | {"threads": settings.threads})  # fmt: skip
        answer = self._next(settings.start_s)
        if answer.get("ready") is not True:
            self.close()
            log.debug("the second engine did not start: %s", answer)
            if answer.get("missing"):
                raise InputError(
                    f"The second engine needs the package pix2tex, which is not installed there. {INSTALL}"
                )
            raise InputError(
                "The second engine cannot load its weights. See that checkpoint, config and tokenizer belong together."
            )
        self.engine = str(answer.get("engine", ""))

    def _send(self, message: dict[str, Any]) -> None:
        assert self._process is not None and self._process.stdin is not None
        try:
            self._process.stdin.write(json.dumps(message) + "\n")
            self._process.stdin.flush()
        except OSError as exc:
            raise self._lost() from exc

    def _next(self, seconds: float) -> dict[str, Any]:
        try:
            heard = self._heard.get(timeout=seconds)
        except queue.Empty as exc:
            self.close()
            raise InputError(
                f"The second engine gave no answer in {seconds:g} seconds and was stopped. Try again or give it longer."
            ) from exc
        if heard is _ENDED:
            raise self._lost()
        try:
            answer = json.loads(heard)
            if isinstance(answer, dict):
                return answer
        except ValueError:
            pass
        self.close()
        raise InputError(f"The second engine does not speak as pix2tex does. {INSTALL}")

    def _lost(self) -> InputError:
        self.close()
        return InputError("The second engine ended by itself. Try again, or read with the first engine.")


def _listen(process: subprocess.Popen[str], heard: queue.Queue[Any]) -> None:
    """Pass on what the process says, line by line, and that it ended."""
    assert process.stdout is not None
    try:
        for line in process.stdout:
            heard.put(line)
    except (OSError, ValueError):
        pass  # closed while it was listened to
    heard.put(_ENDED)


def _environment(settings: PrintedSettings) -> dict[str, str]:
    """Ours, without what would draw our packages in; offline unless the user wants the package's download."""
    kept = {name: value for name, value in os.environ.items() if not name.startswith(("PYTHON", "QT_"))}
    kept |= {"OMP_NUM_THREADS": str(settings.threads), "CUDA_VISIBLE_DEVICES": "", "NO_ALBUMENTATIONS_UPDATE": "1"}
    if not settings.download:
        kept |= {"HF_HUB_OFFLINE": "1", "TRANSFORMERS_OFFLINE": "1"}
    return kept


def _picture(crop: LinePicture | LineStrokes) -> NDArray[np.uint8]:
    """Dark ink on white paper."""
    if isinstance(crop, LineStrokes):
        return np.asarray(255 - from_strokes(crop.strokes, CanonicalFrame()).pixels, np.uint8)
    return crop.image


def _candidates(answer: dict[str, Any]) -> tuple[Candidate, ...]:
    latex, probability = answer.get("latex"), answer.get("probability")
    if not isinstance(latex, str) or not isinstance(probability, int | float) or isinstance(probability, bool):
        raise InputError(f"The second engine does not speak as pix2tex does. {INSTALL}")
    sure = min(max(float(probability), 0.0), 1.0) if np.isfinite(probability) else 0.0
    try:
        text = " ".join(normalise(latex))
    except NotCanonical:
        text = " ".join(latex.split())
    return (Candidate(text, sure),) if text else ()
