"""The tables of a set's file, version by version, and how an older file is brought up to date. No Qt."""

from __future__ import annotations

import sqlite3
from collections.abc import Sequence

__all__ = ["APPLICATION_ID", "MIGRATIONS", "VERSION", "header_of", "migrate"]

APPLICATION_ID = 0x46535431
"""Marks an SQLite file as a set of ours ("FST1")."""

_MAGIC = b"SQLite format 3\0"

MIGRATIONS: tuple[tuple[str, ...], ...] = (
    (
        """CREATE TABLE page (
            id INTEGER PRIMARY KEY, place INTEGER NOT NULL, file TEXT NOT NULL, page INTEGER NOT NULL,
            width INTEGER NOT NULL, height INTEGER NOT NULL, verdicts TEXT NOT NULL DEFAULT '[]')""",
        """CREATE TABLE picture (
            page INTEGER PRIMARY KEY REFERENCES page ON DELETE CASCADE,
            content BLOB NOT NULL, small BLOB NOT NULL, sum INTEGER NOT NULL)""",
        """CREATE TABLE line (
            page INTEGER NOT NULL REFERENCES page ON DELETE CASCADE, place INTEGER NOT NULL,
            content BLOB NOT NULL, sum INTEGER NOT NULL)""",
        "CREATE INDEX line_place ON line (page, place)",
        """CREATE TABLE stroke (
            page INTEGER NOT NULL REFERENCES page ON DELETE CASCADE, place INTEGER NOT NULL,
            content BLOB NOT NULL, sum INTEGER NOT NULL)""",
        "CREATE INDEX stroke_place ON stroke (page, place)",
    ),
    ("ALTER TABLE page ADD COLUMN candidate TEXT NOT NULL DEFAULT ''",),
    ("CREATE TABLE info (name TEXT PRIMARY KEY, value TEXT NOT NULL)",),
    ("ALTER TABLE page ADD COLUMN turns INTEGER NOT NULL DEFAULT 0",),
    (
        "ALTER TABLE page ADD COLUMN standing TEXT NOT NULL DEFAULT ''",
        "ALTER TABLE picture ADD COLUMN turns INTEGER NOT NULL DEFAULT 0",
        "UPDATE picture SET turns = coalesce((SELECT page.turns FROM page WHERE page.id = picture.page), 0)",
    ),
)
"""Statements that lead from each version to the next; a new file runs through all of them."""

VERSION = len(MIGRATIONS)


def header_of(content: bytes) -> tuple[int, int] | None:
    """Application and version of an SQLite file, from its first 100 bytes; None when it is no SQLite file.

    Source: SQLite, "Database File Format", 1.3: user version at byte 60, application at byte 68, big-endian.
    """
    if len(content) < 100 or not content.startswith(_MAGIC):
        return None
    return int.from_bytes(content[68:72], "big"), int.from_bytes(content[60:64], "big")


def migrate(connection: sqlite3.Connection, migrations: Sequence[Sequence[str]] = MIGRATIONS) -> None:
    """Bring the file up to the last version in one transaction; all of it happens or nothing."""
    (version,) = connection.execute("PRAGMA user_version").fetchone()
    if version >= len(migrations):
        return
    connection.execute("BEGIN IMMEDIATE")
    try:
        for statements in migrations[version:]:
            for statement in statements:
                connection.execute(statement)
        connection.execute(f"PRAGMA user_version = {len(migrations)}")
        connection.execute(f"PRAGMA application_id = {APPLICATION_ID}")
        connection.execute("COMMIT")
    except BaseException:
        connection.execute("ROLLBACK")
        raise
