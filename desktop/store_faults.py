"""What SQLite says went wrong, as a sentence for the user; a wrong statement stays our bug. No Qt."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager

from desktop.language import tr
from recognition.errors import InputError

__all__ = ["DamagedSet", "FullDisk", "SetInUse", "damaged", "newer", "told"]


class DamagedSet(InputError):
    """The file is not, or no longer, a set."""


class FullDisk(InputError):
    """There is no room left."""


def damaged(name: str) -> DamagedSet:
    """The sentence for a file whose content is not what we wrote."""
    return DamagedSet(
        tr(
            "{name} is damaged and cannot be opened. It was left as it is; open a copy of it from before, "
            "or its pages.",
            name=name,
        )
    )


def newer(name: str) -> InputError:
    """The sentence for a file of a later version of this program."""
    return InputError(
        tr(
            "{name} was made by a newer Firstslip. It was left as it is; install the newer version to open it.",
            name=name,
        )
    )


class SetInUse(InputError):
    """Another window holds the file."""


@contextmanager
def told(name: str) -> Iterator[None]:
    """Turn the user's faults with a set's file into an InputError; let the others pass.

    Raises:
        InputError: the file is in use, read-only, damaged, out of reach, or the disk is full.
    """
    try:
        yield
    except sqlite3.Error as exc:
        fault = _sentence(name, (getattr(exc, "sqlite_errorcode", None) or 0) & 0xFF)
        if fault is None:
            raise
        raise fault from exc


def _sentence(name: str, code: int) -> InputError | None:
    match code:
        case sqlite3.SQLITE_BUSY | sqlite3.SQLITE_LOCKED:
            return SetInUse(tr("{name} is open in another window. Close it there, or open a copy.", name=name))
        case sqlite3.SQLITE_READONLY | sqlite3.SQLITE_PERM:
            return InputError(
                tr(
                    "{name} may not be changed, so nothing would be kept. Copy it to a folder of yours "
                    "and open the copy.",
                    name=name,
                )
            )
        case sqlite3.SQLITE_FULL:
            return FullDisk(
                tr("{name} could not be saved: the disk is full. Make room; it is then saved by itself.", name=name)
            )
        case sqlite3.SQLITE_CANTOPEN:
            return InputError(tr("{name} cannot be opened or made there. Choose another folder.", name=name))
        case sqlite3.SQLITE_IOERR:
            return InputError(
                tr("{name} could not be reached. Check the disk or the connection; then try again.", name=name)
            )
        case sqlite3.SQLITE_CORRUPT | sqlite3.SQLITE_NOTADB:
            return damaged(name)
    return None
