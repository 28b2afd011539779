"""The user's language: `tr` gives a text in it, and decimal numbers get its comma.

No Qt until Qt is there: without it, as in `firstslip report`, texts and numbers stay as they are written.
"""

from __future__ import annotations

import re
import sys
from typing import Any

__all__ = ["CONTEXT", "has_decimal_comma", "tr", "tr_later", "with_comma", "with_points"]

CONTEXT = "desktop"
"""Name under which all our texts stand in the translation."""

_POINT = re.compile(r"(?<=\d)\.(?=\d)")
_COMMA = re.compile(r"(?<=\d)\s*(?:,|\{,\})\s*(?=\d)")


def tr(text: str, /, **values: object) -> str:
    """The text in the user's language, with the values of the names that stand in it in braces."""
    application = _application()
    if application is not None:
        text = str(application.translate(CONTEXT, text))
    return text.format(**values) if values else text


def tr_later(text: str) -> str:
    """Note that a text is translated where it is shown; it stays as it is."""
    return text


def has_decimal_comma() -> bool:
    """Whether decimal numbers are written with a comma: as the program's locale has it."""
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
