"""The objects of a PDF file that Qt wrote: taken apart, changed, and put together again. No Qt.

Only what Qt writes is understood: one classic cross-reference table and no encryption.

Source: ISO 32000-1:2008, 7.3 (objects), 7.5 (file structure), 7.9.2.2 (text strings).
"""

from __future__ import annotations

import re
from collections.abc import Iterable

__all__ = ["PdfObjects", "number", "text_string"]

_REFERENCE = re.compile(rb"(\d+) 0 R")


class PdfObjects:
    """Objects by number, each as its bytes between `obj` and `endobj`."""

    def __init__(self, content: bytes) -> None:
        """Take a file apart.

        Raises:
            ValueError: it is not built as Qt builds a file.
        """
        start = re.search(rb"startxref\s+(\d+)\s+%%EOF\s*$", content)
        if start is None:
            raise ValueError("no startxref at the end")
        table = content[int(start[1]) :]
        head = re.match(rb"xref\s+0 (\d+)\s+", table)
        trailer = re.search(rb"trailer\s*<<(.*?)>>\s*startxref", table, re.DOTALL)
        if head is None or trailer is None:
            raise ValueError("no cross-reference table")
        entries = re.findall(rb"(\d{10}) (\d{5}) ([nf])", table[head.end() : trailer.start()])
        offsets = {key: int(entry[0]) for key, entry in enumerate(entries) if entry[2] == b"n"}
        ends = [*sorted(offsets.values()), int(start[1])]
        self._objects = {key: _body(content[at : ends[ends.index(at) + 1]], key) for key, at in offsets.items()}
        self._trailer = re.sub(rb"/Size \d+", b"", trailer[1]).strip()

    def __getitem__(self, key: int) -> bytes:
        return self._objects[key]

    def __setitem__(self, key: int, body: bytes) -> None:
        self._objects[key] = body

    def add(self, body: bytes) -> int:
        """Add an object; gives its number."""
        key = max(self._objects) + 1
        self._objects[key] = body
        return key

    def remove(self, keys: Iterable[int]) -> None:
        """Take objects out; nothing may refer to them any more."""
        for key in keys:
            del self._objects[key]

    def pages(self) -> list[int]:
        """Numbers of the pages, in order."""
        return [int(key) for key in _REFERENCE.findall(_entry(self._objects[self._page_tree()], b"Kids"))]

    def keep_pages(self, keys: Iterable[int]) -> None:
        """Make these the only pages; the others stay as objects."""
        kids = [b"%d 0 R" % key for key in keys]
        tree = self._page_tree()
        body = re.sub(rb"/Kids\s*\[.*?\]", b"/Kids [" + b" ".join(kids) + b"]", self._objects[tree], flags=re.DOTALL)
        self._objects[tree] = re.sub(rb"/Count \d+", b"/Count %d" % len(kids), body)

    def referred(self, key: int, name: bytes) -> int:
        """The number of the object that an entry of a dictionary refers to.

        Raises:
            ValueError: there is no such entry.
        """
        found = re.search(rb"/" + name + rb"\s+(\d+) 0 R", self._objects[key])
        if found is None:
            raise ValueError(f"no /{name.decode()} in object {key}")
        return int(found[1])

    def to_bytes(self) -> bytes:
        """The whole file."""
        content = bytearray(b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n")
        size = max(self._objects) + 1
        offsets: dict[int, int] = {}
        for key in sorted(self._objects):
            offsets[key] = len(content)
            content += b"%d 0 obj\n%s\nendobj\n" % (key, self._objects[key])
        start = len(content)
        free = [key for key in range(size) if key not in offsets]
        following = dict(zip(free, [*free[1:], 0], strict=True))
        content += b"xref\n0 %d\n" % size
        for key in range(size):
            if key in offsets:
                content += b"%010d 00000 n \n" % offsets[key]
            else:
                content += b"%010d %05d f \n" % (following[key], 65535 if key == 0 else 1)
        content += b"trailer\n<<\n/Size %d\n%s\n>>\nstartxref\n%d\n%%%%EOF\n" % (size, self._trailer, start)
        return bytes(content)

    def _page_tree(self) -> int:
        root = re.search(rb"/Root (\d+) 0 R", self._trailer)
        if root is None:
            raise ValueError("no root")
        return self.referred(int(root[1]), b"Pages")


def text_string(text: str) -> bytes:
    """A text string in UTF-16, written in hexadecimal."""
    return b"<FEFF" + text.encode("utf-16-be", "replace").hex().upper().encode() + b">"


def number(value: float) -> bytes:
    """A number of at most three decimals, never in powers of ten."""
    return f"{value:.3f}".rstrip("0").rstrip(".").encode() if abs(value) >= 0.0005 else b"0"


def _body(content: bytes, key: int) -> bytes:
    match = re.match(rb"%d 0 obj\s+(.*?)\s*endobj\s*$" % key, content, re.DOTALL)
    if match is None:
        raise ValueError(f"object {key} is not where the table says")
    return match[1]


def _entry(body: bytes, name: bytes) -> bytes:
    found = re.search(rb"/" + name + rb"\s*\[(.*?)\]", body, re.DOTALL)
    if found is None:
        raise ValueError(f"no /{name.decode()}")
    return found[1]
