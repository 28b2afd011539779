"""A mark scheme as a teacher types it, for one working or for several on a page. No Qt.

    M1 2x=10 ; one term on each side
    A1 final x=5 ; ft

The words are those of `checker.marking.text`. An empty line, or a line such as "Question 2", begins the scheme of the
page's next working.
"""

from __future__ import annotations

import json
import re

from checker.errors import InputError
from checker.marking.scheme import Mark, read_scheme
from desktop.language import tr

__all__ = ["Scheme", "read_scheme_text"]

Scheme = tuple[Mark, ...]

_TITLE = re.compile(r"\s*(?:question|working|part|q)?\s*\(?\w{1,3}\)?[.):]?\s*", re.IGNORECASE)
_MARK = re.compile(r"\s*(?:SC\b|d{0,2}[MABN][1-9])")
_LINE = re.compile(r"Line (\d+) of the scheme")


def read_scheme_text(text: str) -> tuple[Scheme, ...]:
    """The schemes in a text, one for each working of a page; JSON as the checker takes it will do as well.

    Raises:
        InputError: a line is not understood; the sentence names it and says what to write.
    """
    if text.lstrip().startswith("["):
        return _from_json(text)
    return tuple(_read(first, part) for first, part in _parts(text))


def _parts(text: str) -> list[tuple[int, str]]:
    """The scheme of each working, with the number of its first line."""
    parts: list[tuple[int, list[str]]] = []
    is_open = False
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip() or (_TITLE.fullmatch(line) and not _MARK.match(line)):
            is_open = False
        elif is_open:
            parts[-1][1].append(line)
        else:
            parts.append((number, [line]))
            is_open = True
    return [(first, "\n".join(lines)) for first, lines in parts]


def _read(first: int, part: str) -> Scheme:
    try:
        return read_scheme(part)
    except InputError as exc:
        told = _LINE.sub(lambda found: tr("Line {number} of the scheme", number=int(found[1]) + first - 1), str(exc))
        raise InputError(told) from exc


def _from_json(text: str) -> tuple[Scheme, ...]:
    try:
        data = json.loads(text)
    except ValueError as exc:
        raise InputError(tr("The scheme is no JSON. Write one mark to a line instead, like M1 2x=10.")) from exc
    if data and all(isinstance(part, list) for part in data):
        return tuple(read_scheme(part) for part in data)
    return (read_scheme(data),)
