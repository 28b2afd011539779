"""A set of pages in one SQLite file, pictures inside: what is kept is there after a kill at any moment. No Qt.

The file is held for this program alone while it is open (WAL, exclusive). Pictures may be fetched in any thread; all
else here runs in one thread at a time.
"""

from __future__ import annotations

import contextlib
import json
import os
import sqlite3
import threading
import zlib
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Any
from weakref import ReferenceType, ref

import numpy as np
from numpy.typing import NDArray

from desktop.codec import NotThatKind, pack, unpack
from desktop.desk_line import DeskLine, Lines
from desktop.document import Document, Strokes, WorkingVerdict
from desktop.language import tr
from desktop.standing import standing_of
from desktop.store_blobs import picture_blob, picture_of, small_blob, stroke_blob, stroke_of
from desktop.store_faults import damaged, told
from desktop.store_file import (
    PAGES,
    connected,
    is_set,
    log_ahead,
    look_at_header,
    look_at_tables,
    refuse_in_use,
)
from desktop.store_schema import migrate
from desktop.upright import turned_picture
from recognition.errors import InputError

__all__ = ["KeptPage", "SetFile"]

_PICTURE = (
    "SELECT content, sum, picture.turns, page.turns "
    "FROM picture JOIN page ON page.id = picture.page WHERE picture.page = ?"
)
NOTHING: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class KeptPage:
    """One page in the set: its key in the file, its place among the pages, and the page as it stands."""

    key: int
    place: int
    document: Document


@dataclass(slots=True)
class _Saved:
    """What the file holds of a page, to write only what differs."""

    head: tuple[object, ...] = ()
    lines: Lines = ()
    strokes: Strokes = ()
    verdicts: tuple[WorkingVerdict, ...] = ()
    picture: ReferenceType[NDArray[np.uint8]] | None = None


class SetFile:
    """An open set. Make one with `create` or `open`."""

    def __init__(self, path: Path, connection: sqlite3.Connection) -> None:
        self.path = path
        self._connection = connection
        self._turn = threading.Lock()
        self._saved: dict[int, _Saved] = {}
        (last,) = connection.execute("SELECT coalesce(max(id), 0) FROM page").fetchone()
        self._last_key = int(last)
        self._opened: list[KeptPage] = []
        self.info: dict[str, str] = dict(connection.execute("SELECT name, value FROM info").fetchall())

    @classmethod
    def create(cls, path: Path) -> SetFile:
        """Make an empty set; a file of that name is replaced, unless another window has it open.

        Raises:
            InputError: the file cannot be made there.
        """
        if path.exists() and path.stat().st_size and is_set(path):
            refuse_in_use(path)
        part = path.with_name(f".{path.name[:80]}.{os.getpid()}.part")
        try:
            with told(path.name):
                connection = sqlite3.connect(part, isolation_level=None)
                try:
                    connection.execute("PRAGMA auto_vacuum = INCREMENTAL")
                    migrate(connection)
                finally:
                    connection.close()
            os.replace(part, path)
        except OSError as exc:
            raise InputError(tr("{name} cannot be made there. Choose another folder.", name=path.name)) from exc
        finally:
            with contextlib.suppress(OSError):
                part.unlink()
        for rest in ("-wal", "-shm"):
            with contextlib.suppress(OSError):
                path.with_name(path.name + rest).unlink()
        return cls.open(path)

    @classmethod
    def open(cls, path: Path) -> SetFile:
        """Open a set that is there; an older one is brought up to date.

        Raises:
            InputError: it is missing, damaged, of a newer version, in use or read-only; it is left as it was.
        """
        look_at_header(path)
        with told(path.name):
            connection = connected(path)
            try:
                if connection.execute("PRAGMA quick_check(1)").fetchone() != ("ok",):
                    raise damaged(path.name)
                migrate(connection)
                look_at_tables(connection, path.name)
                store = cls(path, connection)
                store._opened = store._read_pages()
                log_ahead(connection)
                return store
            except BaseException:
                connection.close()
                raise

    def close(self) -> None:
        """Fold everything into the one file and let it go."""
        with contextlib.suppress(sqlite3.Error):
            self._connection.execute("PRAGMA incremental_vacuum").fetchall()
            self._connection.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchall()
        with contextlib.suppress(sqlite3.Error):
            self._connection.execute("PRAGMA journal_mode = DELETE").fetchall()
        self._connection.close()

    def new_key(self) -> int:
        """A key for a page that is to be kept; may be called in any thread that alone does so."""
        self._last_key += 1
        return self._last_key

    def pages(self) -> list[KeptPage]:
        """All pages in their order as they were when the set was opened, with small pictures only."""
        return list(self._opened)

    def picture(self, key: int, *, as_turned: int | None = None) -> NDArray[np.uint8] | None:
        """The picture of a page; None when it has none.

        Args:
            as_turned: by how many quarter turns in all the page is turned; as it was kept when left out.
        Raises:
            InputError: the file is damaged or out of reach.
        """
        with self._turn, told(self.path.name):
            row = self._connection.execute(_PICTURE, (key,)).fetchone()
        if row is None:
            return None
        content, checksum, kept_turns, turns = row
        picture = picture_of(content) if zlib.crc32(content) == checksum else None
        if picture is None:
            raise damaged(self.path.name)
        picture = turned_picture(picture, (turns if as_turned is None else as_turned) - kept_turns)
        self._saved.setdefault(key, _Saved()).picture = ref(picture)
        return picture

    def keep(
        self, pages: Sequence[KeptPage], gone: Sequence[int] = (), info: Mapping[str, str] = NOTHING
    ) -> None:
        """Write what differs from what the file holds, and take pages out, in one transaction.

        Args:
            pages: as they stand now.
            gone: keys of pages that are taken out.
            info: what belongs to the whole set, such as its mark scheme, by name.
        Raises:
            InputError: the disk is full, or the file is out of reach; the file then holds what it held before.
        """
        blobs = {p.key: self._picture_blobs(p) for p in pages}
        with self._turn, told(self.path.name):
            self._connection.execute("BEGIN IMMEDIATE")
            try:
                for key in gone:
                    self._connection.execute("DELETE FROM page WHERE id = ?", (key,))
                for page in pages:
                    self._write(page, blobs[page.key])
                for name, value in info.items():
                    self._connection.execute("INSERT OR REPLACE INTO info (name, value) VALUES (?, ?)", (name, value))
                self._connection.execute("COMMIT")
            except BaseException:
                if self._connection.in_transaction:
                    self._connection.execute("ROLLBACK")
                raise
        self.info.update(info)
        for key in gone:
            self._saved.pop(key, None)
        for page in pages:
            self._saved[page.key] = _now(page, self._saved.get(page.key))

    def copy_to(self, path: Path) -> None:
        """Write the whole set to another file, there whole or not at all.

        Raises:
            InputError: it cannot be written there, or that file is open in another window.
        """
        SetFile.create(path).close()
        part = path.with_name(f".{path.name[:80]}.{os.getpid()}.copy")
        try:
            with told(path.name):
                self._connection.execute("VACUUM INTO ?", (str(part),))
            os.replace(part, path)
        except OSError as exc:
            raise InputError(tr("{name} cannot be made there. Choose another folder.", name=path.name)) from exc
        finally:
            with contextlib.suppress(OSError):
                part.unlink()

    # Reading -----------------------------------------------------------------------------------------------------

    def _read_pages(self) -> list[KeptPage]:
        return [self._page(*row) for row in self._connection.execute(PAGES).fetchall()]

    def _page(
        self, key: int, place: int, file: str, page: int, width: int, height: int, candidate: str, turns: int,
        standing: str, verdicts: str, small: bytes | None, kept_turns: int,
    ) -> KeptPage:  # fmt: skip
        lines: Lines = self._parts("line", key, lambda blob: unpack(DeskLine, json.loads(blob)))
        strokes: Strokes = self._parts("stroke", key, stroke_of)
        try:
            judged = unpack(tuple[WorkingVerdict, ...], json.loads(verdicts))
        except ValueError:  # of another version of the checker: it judges again
            judged = ()
        thumbnail = None if small is None else picture_of(small)
        document = Document(
            file=file, page=page, size=(width, height), lines=lines, verdicts=judged, strokes=strokes,
            candidate=candidate, turns=turns, standing=standing_of(standing),
            thumbnail=None if thumbnail is None else turned_picture(thumbnail, turns - kept_turns),
        )  # fmt: skip
        kept = KeptPage(key, place, document)
        self._saved[key] = _now(kept, None)
        return kept

    def _parts(self, table: str, key: int, read: Callable[[bytes], Any]) -> tuple[Any, ...]:
        rows = self._connection.execute(f"SELECT content, sum FROM {table} WHERE page = ? ORDER BY place", (key,))
        parts = []
        for content, checksum in rows:
            if zlib.crc32(content) != checksum:
                raise damaged(self.path.name)
            try:
                parts.append(read(content))
            except (NotThatKind, ValueError) as exc:
                raise damaged(self.path.name) from exc
        return tuple(parts)

    # Writing -----------------------------------------------------------------------------------------------------

    def _picture_blobs(self, page: KeptPage) -> tuple[bytes, bytes] | None:
        picture = page.document.picture
        saved = self._saved.get(page.key)
        if picture is None or (saved is not None and saved.picture is page.document.picture_as_taken):
            return None
        return picture_blob(picture), small_blob(picture)

    def _write(self, page: KeptPage, blobs: tuple[bytes, bytes] | None) -> None:
        saved, document = self._saved.get(page.key) or _Saved(), page.document
        if saved.head != _head(page):
            self._connection.execute(
                "INSERT INTO page (id, place, file, page, width, height, candidate, turns, standing) "
                "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?) "
                "ON CONFLICT (id) DO UPDATE SET place = excluded.place, file = excluded.file, page = excluded.page, "
                "width = excluded.width, height = excluded.height, candidate = excluded.candidate, "
                "turns = excluded.turns, standing = excluded.standing",
                (page.key, *_head(page)),
            )
        if saved.verdicts is not document.verdicts:
            text = json.dumps(pack(document.verdicts), ensure_ascii=False, separators=(",", ":"))
            self._connection.execute("UPDATE page SET verdicts = ? WHERE id = ?", (text, page.key))
        self._splice("line", page.key, saved.lines, document.lines, _line_blob)
        self._splice("stroke", page.key, saved.strokes, document.strokes, stroke_blob)
        if blobs is not None:
            self._connection.execute(
                "INSERT OR REPLACE INTO picture (page, content, small, sum, turns) VALUES (?, ?, ?, ?, ?)",
                (page.key, *blobs, zlib.crc32(blobs[0]), document.turns),
            )

    def _splice(
        self, table: str, key: int, old: Sequence[Any], new: Sequence[Any], blob_of: Callable[[Any], bytes]
    ) -> None:
        """Make the rows of a page those of `new`, writing only between the parts that both have in common."""
        if old is new:
            return
        start = 0
        while start < min(len(old), len(new)) and old[start] is new[start]:
            start += 1
        end = 0
        while end < min(len(old), len(new)) - start and old[-1 - end] is new[-1 - end]:
            end += 1
        run = self._connection.execute
        last = len(old) - end
        run(f"DELETE FROM {table} WHERE page = ? AND place >= ? AND place < ?", (key, start, last))
        if len(new) != len(old) and end:
            run(f"UPDATE {table} SET place = place + ? WHERE page = ? AND place >= ?", (len(new) - len(old), key, last))
        for place in range(start, len(new) - end):
            blob = blob_of(new[place])
            run(f"INSERT INTO {table} (page, place, content, sum) VALUES (?, ?, ?, ?)",
                (key, place, blob, zlib.crc32(blob)))  # fmt: skip


def _head(page: KeptPage) -> tuple[object, ...]:
    document = page.document
    return (
        page.place, document.file, document.page, *document.size, document.candidate, document.turns,
        document.standing.value,
    )  # fmt: skip


def _now(page: KeptPage, before: _Saved | None) -> _Saved:
    document = page.document
    picture = None if before is None else before.picture  # stays in the file when it is let go here
    if document.picture is not None:
        picture = document.picture_as_taken
    return _Saved(_head(page), document.lines, document.strokes, document.verdicts, picture)


def _line_blob(line: DeskLine) -> bytes:
    return json.dumps(pack(line), ensure_ascii=False, separators=(",", ":")).encode()
