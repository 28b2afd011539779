"""Names of the report's files: NAME for a file's first page, NAME-2 for its second, never the same name twice."""

from __future__ import annotations

import string
from collections.abc import Sequence
from pathlib import Path

__all__ = ["PageNames"]


class PageNames:
    """Gives every page of a run a name of its own; names that differ only in case count as the same.

    Two files of the same name get NAME and NAME-b; a name that a file of the run bears itself is kept for it.
    """

    def __init__(self, files: Sequence[Path]) -> None:
        self._used: set[str] = set()
        self._reserved = {path.stem.casefold() for path in files}
        self._of_file: list[str] = [self._take(path.stem or "page", own=True) for path in files]

    def of(self, file_number: int, page: int) -> str:
        """The name of a page (from 0) of a file (by its place in the run); ask once for each page."""
        name = self._of_file[file_number]
        return name if page == 0 else self._take(f"{name}-{page + 1}", own=False)

    def _take(self, wanted: str, *, own: bool) -> str:
        name = wanted
        tries = (f"{wanted}-{a}{b}" for a in ("", *string.ascii_lowercase) for b in string.ascii_lowercase[1:])
        while name.casefold() in self._used or (not own and name.casefold() in self._reserved):
            name = next(tries)
        self._used.add(name.casefold())
        return name
