"""The file of a set, before anything is read from it: is it ours, is it sound, does nobody else hold it? No Qt."""

from __future__ import annotations

import sqlite3
from pathlib import Path

from desktop.language import tr
from desktop.store_faults import SetInUse, damaged, newer, told
from desktop.store_schema import APPLICATION_ID, VERSION, header_of
from recognition.errors import InputError

__all__ = ["ENDING", "PAGES", "connected", "is_set", "log_ahead", "look_at_header", "look_at_tables", "refuse_in_use"]

ENDING = ".firstslip"
"""Ending of a set's file."""

_WAIT_S = 0.5
"""How long another program may hold the file before it counts as in use."""

PAGES = (
    "SELECT id, place, file, page.page, width, height, candidate, page.turns, standing, verdicts, small, "
    "coalesce(picture.turns, page.turns) "
    "FROM page LEFT JOIN picture ON picture.page = page.id ORDER BY place, id"
)
"""Every page with its small picture and how that was turned when it was kept, in order."""


def is_set(path: Path) -> bool:
    """Whether a file's name says that it is a set."""
    return path.suffix.casefold() == ENDING


def look_at_header(path: Path) -> None:
    """Refuse what is no set of ours before SQLite touches it."""
    try:
        with open(path, "rb") as file:
            header = header_of(file.read(100))
    except FileNotFoundError as exc:
        raise InputError(
            tr("There is no file {name}. Check the name and the folder, then open it again.", name=path.name)
        ) from exc
    except IsADirectoryError as exc:
        raise InputError(
            tr("{name} is a folder. Choose a set ({ending}) inside it.", name=path.name, ending=ENDING)
        ) from exc
    except OSError as exc:
        raise InputError(
            tr("{name} may not be read. Ask for the right to read it, or choose another file.", name=path.name)
        ) from exc
    if header is None:
        raise damaged(path.name)
    application, version = header
    if application != APPLICATION_ID:
        raise InputError(
            tr("{name} is not a set of Firstslip. Choose a file that ends in {ending}.", name=path.name, ending=ENDING)
        )
    if version > VERSION:
        raise newer(path.name)


def look_at_tables(connection: sqlite3.Connection, name: str) -> None:
    """Refuse a file whose tables are not ours: its head was damaged, though each page of it is sound."""
    try:
        connection.execute(f"{PAGES} LIMIT 0").fetchall()
        connection.execute("SELECT name, value FROM info LIMIT 0").fetchall()
        for table in ("line", "stroke", "picture"):
            connection.execute(f"SELECT page, content, sum FROM {table} LIMIT 0").fetchall()
    except sqlite3.OperationalError as exc:
        if exc.sqlite_errorcode == sqlite3.SQLITE_ERROR:
            raise damaged(name) from exc
        raise


def refuse_in_use(path: Path) -> None:
    """Refuse a set that another window has open."""
    try:
        with told(path.name):
            connected(path).close()
    except SetInUse:
        raise
    except InputError:  # damaged or read-only: it is about to be replaced, as the user said
        pass


def log_ahead(connection: sqlite3.Connection) -> None:
    """From now on write to a log beside the file first, which is what lets it outlive a kill and stay quick."""
    connection.execute("PRAGMA journal_mode = WAL").fetchall()
    connection.execute("BEGIN IMMEDIATE")  # takes the file again: changing the way of writing lets it go
    connection.execute("COMMIT")


def connected(path: Path) -> sqlite3.Connection:
    """A connection that alone holds the file; nothing in the file is changed."""
    connection = sqlite3.connect(
        f"{path.absolute().as_uri()}?mode=rw", uri=True, isolation_level=None, timeout=_WAIT_S, check_same_thread=False
    )
    try:
        connection.execute("PRAGMA locking_mode = EXCLUSIVE").fetchall()
        connection.execute("PRAGMA synchronous = FULL")
        connection.execute("PRAGMA foreign_keys = ON")
        connection.execute("PRAGMA secure_delete = ON")
        connection.execute("BEGIN IMMEDIATE")  # takes the file now, and shows whether it may be written
        connection.execute("COMMIT")
    except BaseException:
        connection.close()
        raise
    return connection
