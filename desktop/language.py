"""The user's language: `tr` gives a text in it. No Qt until Qt is there: without it, texts stay as they are written."""

from __future__ import annotations

import sys

__all__ = ["CONTEXT", "tr"]

CONTEXT = "desktop"
"""Name under which all our texts stand in the translation."""


def tr(text: str) -> str:
    """The text in the user's language; names in braces are filled in by the caller, with `format`."""
    core = sys.modules.get("PySide6.QtCore")
    if core is None or core.QCoreApplication.instance() is None:
        return text
    return str(core.QCoreApplication.translate(CONTEXT, text))
