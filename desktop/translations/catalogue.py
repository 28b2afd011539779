"""All texts of the desk that are translated, gathered from the code. No Qt.

A text is the first argument of `tr` or `tr_later`, the words or tip of an `Entry`, or a word of a `VerdictStyle`, and
must be written out there.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

__all__ = ["texts_of", "texts_of_desktop"]

_CALLS = {"tr": (0,), "tr_later": (0,), "Entry": (0, 3), "VerdictStyle": (0, 1)}


def texts_of_desktop() -> tuple[str, ...]:
    """Every text once, in the order of files and lines."""
    folder = Path(__file__).parents[1]
    modules = (*sorted(folder.glob("*.py")), *sorted((folder / "forms").glob("*.py")))
    found = (text for path in modules for text in texts_of(path.read_text(encoding="utf-8")))
    return tuple(dict.fromkeys(found))


def texts_of(code: str) -> Iterator[str]:
    """The texts of one module."""
    calls = [node for node in ast.walk(ast.parse(code)) if isinstance(node, ast.Call)]
    for call in sorted(calls, key=lambda node: (node.lineno, node.col_offset)):
        name = call.func.id if isinstance(call.func, ast.Name) else getattr(call.func, "attr", "")
        for place in _CALLS.get(name, ()):
            if place < len(call.args):
                yield from _written_out(call.args[place])


def _written_out(node: ast.expr) -> Iterator[str]:
    if isinstance(node, ast.Constant) and isinstance(node.value, str) and node.value:
        yield node.value
    elif isinstance(node, ast.IfExp):
        yield from _written_out(node.body)
        yield from _written_out(node.orelse)
