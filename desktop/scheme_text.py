"""A mark scheme as a teacher types it, one mark to a line. No Qt.

    M1: 2x=10 ; one term on each side
    A1: final x=5 ; ft

After the mark stands the line that earns it, with "or" between lines that will do as well, and with "final" before a
final answer; after each semicolon one of ft, cao, cso, oe, exact, expanded, factorised, simplest, implied, or words
that say what the mark is for. An empty line, or a line such as "Question 2", begins the scheme of the next working.
"""

from __future__ import annotations

import json
import re
from typing import Any

from checker.errors import InputError
from checker.marking.scheme import FORMS, Mark, read_scheme

__all__ = ["Scheme", "read_scheme_text"]

Scheme = tuple[Mark, ...]

_CODE = re.compile(r"\s*([MABmab][1-9])\s*:?\s*(.*)")
_TITLE = re.compile(r"\s*(?:question|working|part|q)?\s*\(?\w{1,3}\)?[.):]?\s*", re.IGNORECASE)
_FLAGS = ("ft", "cao", "cso", "implied")


def read_scheme_text(text: str) -> tuple[Scheme, ...]:
    """The schemes in a text, one for each working of a page; JSON as the checker takes it will do as well.

    Raises:
        InputError: a line is not understood; the sentence names it and says what to write.
    """
    if text.lstrip().startswith("["):
        return _from_json(text)
    parts: list[list[dict[str, Any]]] = [[]]
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip():
            if parts[-1]:
                parts.append([])
            continue
        found = _CODE.fullmatch(line)
        if found is not None:
            parts[-1].append(_entry(found[1].upper(), found[2]))
        elif _TITLE.fullmatch(line):
            if parts[-1]:
                parts.append([])
        else:
            raise InputError(
                f"Line {number} of the scheme starts with no mark. Write it like M1: 2x=10 or A1: final x=5."
            )
    return tuple(read_scheme(part) for part in parts if part)


def _entry(code: str, rest: str) -> dict[str, Any]:
    target, *options = (part.strip() for part in rest.split(";"))
    entry: dict[str, Any] = {"mark": code}
    words: list[str] = []
    for option in options:
        if option.lower() in _FLAGS:
            entry[option.lower()] = True
        elif option.lower() in FORMS:
            entry["form"] = option.lower()
        elif option:
            words.append(option)
    is_final = re.match(r"final\b[:\s]*", target, re.IGNORECASE)
    if is_final:
        target = target[is_final.end() :]
    targets = [part.strip() for part in re.split(r"\s+or\s+", target) if part.strip()]
    if targets:
        entry["final" if is_final else "line"] = targets
    if words:
        entry["for"] = "; ".join(words)
    return entry


def _from_json(text: str) -> tuple[Scheme, ...]:
    try:
        data = json.loads(text)
    except ValueError as exc:
        raise InputError("The scheme is no JSON. Write one mark to a line instead, like M1: 2x=10.") from exc
    if data and all(isinstance(part, list) for part in data):
        return tuple(read_scheme(part) for part in data)
    return (read_scheme(data),)
