"""The user's language: `tr` gives a text in it, and decimal numbers get its comma.

In the window it is Qt's. Elsewhere texts and numbers stay as they are written, unless a language was chosen by
`spoken_in`, as `firstslip report` does; that needs no Qt.
"""

from __future__ import annotations

import contextlib
import re
import sys
from collections.abc import Iterator
from contextvars import ContextVar
from typing import Any

from desktop.spoken import has_comma, texts_in

__all__ = ["CONTEXT", "has_decimal_comma", "spoken_in", "tr", "tr_later", "with_comma", "with_points"]

CONTEXT = "desktop"
"""Name under which all our texts stand in the translation."""

_POINT = re.compile(r"(?<=\d)\.(?=\d)")
_COMMA = re.compile(r"(?<=\d)\s*(?:,|\{,\})\s*(?=\d)")


_chosen: ContextVar[str] = ContextVar("language", default="")


@contextlib.contextmanager
def spoken_in(language: str) -> Iterator[None]:
    """Speak a language in this thread until the end of the block: "en" or "de"."""
    before = _chosen.set(language)
    try:
        yield
    finally:
        _chosen.reset(before)


def tr(text: str, /, **values: object) -> str:
    """The text in the user's language, with the values of the names that stand in it in braces."""
    chosen = _chosen.get()
    application = None if chosen else _application()
    if chosen:
        text = texts_in(chosen).get(text) or text
    elif application is not None:
        text = str(application.translate(CONTEXT, text))
    return text.format(**values) if values else text


def tr_later(text: str) -> str:
    """Note that a text is translated where it is shown; it stays as it is."""
    return text


def has_decimal_comma() -> bool:
    """Whether decimal numbers are written with a comma: as the program's locale has it."""
    if chosen := _chosen.get():
        return has_comma(chosen)
    core = sys.modules.get("PySide6.QtCore")
    return core is not None and core.QLocale().decimalPoint() == ","


def with_comma(text: str, comma: str = ",") -> str:
    """The text with a comma in its decimal numbers where the user writes them so; `comma` may be LaTeX's {,}."""
    return _POINT.sub(comma, text) if has_decimal_comma() else text


def with_points(latex: str) -> str:
    """LaTeX as the checker takes it: a comma between digits is a decimal one where the user writes them so."""
    return _COMMA.sub(".", latex) if has_decimal_comma() else latex


def _application() -> Any:
    core = sys.modules.get("PySide6.QtCore")
    return None if core is None else core.QCoreApplication.instance()
