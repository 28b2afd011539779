"""What kind of file is it, how large is its picture, is it whole? Told from the bytes, before decoding."""

from __future__ import annotations

import re
import struct
from dataclasses import dataclass
from enum import Enum

__all__ = ["Header", "Kind", "read_header", "sniff"]


class Kind(Enum):
    """File formats told apart by their first bytes, whatever the name says."""

    JPEG = "JPEG"
    PNG = "PNG"
    TIFF = "TIFF"
    WEBP = "WebP"
    BMP = "BMP"
    PDF = "PDF"
    HEIC = "HEIC"
    AVIF = "AVIF"
    GIF = "GIF"
    TEXT = "text"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Header:
    """Sizes of the pictures in a file as (width, height), EXIF orientation of each (1 to 8), and is it whole?"""

    sizes: tuple[tuple[int, int], ...]
    orientations: tuple[int, ...]
    whole: bool


_MAGIC = (
    (b"\xff\xd8\xff", Kind.JPEG), (b"\x89PNG\r\n\x1a\n", Kind.PNG), (b"II*\0", Kind.TIFF), (b"MM\0*", Kind.TIFF),
    (b"II+\0", Kind.TIFF), (b"MM\0+", Kind.TIFF), (b"BM", Kind.BMP), (b"GIF8", Kind.GIF),
)
_HEIC_BRANDS = (b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1")
_AVIF_BRANDS = (b"avif", b"avis")
# A marker inside JPEG scan data: 0xFF followed by neither a stuffed zero, a restart marker nor a fill byte.
_SCAN_MARKER = re.compile(rb"\xff[^\x00\xd0-\xd7\xff]")
_MOST_DIRECTORIES = 10_000


def sniff(data: bytes) -> Kind:
    """Tell the format from the first bytes."""
    for magic, kind in _MAGIC:
        if data.startswith(magic):
            return kind
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return Kind.WEBP
    if b"%PDF-" in data[:1024]:
        return Kind.PDF
    if data[4:8] == b"ftyp" and data[8:12] in _HEIC_BRANDS + _AVIF_BRANDS:
        # A general brand first, such as mif1, leaves the coding to the compatible brands after it.
        length = min(int.from_bytes(data[:4], "big"), 256)
        brands = {data[at : at + 4] for at in (8, *range(16, length, 4))}
        return Kind.AVIF if brands & set(_AVIF_BRANDS) and data[8:12] != b"heic" else Kind.HEIC
    start = data[:4096]
    if start.startswith((b"\xff\xfe", b"\xfe\xff", b"\xef\xbb\xbf")):
        return Kind.TEXT
    if start and not any(byte < 9 or 13 < byte < 27 for byte in start):
        return Kind.TEXT
    return Kind.UNKNOWN


def read_header(data: bytes, kind: Kind) -> Header | None:
    """Sizes and orientations from the header alone.

    Args:
        data: the whole file.
        kind: what `sniff` said; one of the picture formats.
    Returns:
        The header, or None where it is damaged beyond telling a size.
    """
    readers = {Kind.JPEG: _jpeg, Kind.PNG: _png, Kind.TIFF: _tiff, Kind.WEBP: _webp, Kind.BMP: _bmp}
    try:
        return readers[kind](data)
    except (struct.error, IndexError, KeyError):
        return None


def _jpeg(data: bytes) -> Header | None:
    """Walk the segments of a JPEG file (ITU-T T.81, annex B) up to its end marker."""
    position, size, orientation = 2, None, 1
    while position + 4 <= len(data):
        if data[position] != 0xFF:
            break
        marker = data[position + 1]
        if marker == 0xFF:
            position += 1
            continue
        if marker == 0xD9:
            return Header((size,), (orientation,), True) if size else None
        if marker == 0x01 or 0xD0 <= marker <= 0xD8:
            position += 2
            continue
        (length,) = struct.unpack_from(">H", data, position + 2)
        body = data[position + 4: position + 2 + length]
        if 0xC0 <= marker <= 0xCF and marker not in (0xC4, 0xC8, 0xCC):
            height, width = struct.unpack_from(">HH", body, 1)
            size = (width, height)
        elif marker == 0xE1 and body.startswith(b"Exif\0\0"):
            orientation = _exif_orientation(body[6:])
        position += 2 + length
        if marker == 0xDA:
            found = _SCAN_MARKER.search(data, position)
            if found is None:
                break
            position = found.start()
    if size and data[position: position + 2] == b"\xff\xd9":
        return Header((size,), (orientation,), True)
    return Header((size,), (orientation,), False) if size else None


def _png(data: bytes) -> Header | None:
    """Walk the chunks of a PNG file (W3C PNG specification, section 5)."""
    if data[12:16] != b"IHDR":
        return None
    width, height = struct.unpack_from(">II", data, 16)
    position, orientation = 8, 1
    while position + 12 <= len(data):
        length, name = struct.unpack_from(">I4s", data, position)
        if name == b"IEND":
            return Header(((width, height),), (orientation,), True)
        if name == b"eXIf":
            orientation = _exif_orientation(data[position + 8: position + 8 + length])
        position += 12 + length
    return Header(((width, height),), (orientation,), False)


def _webp(data: bytes) -> Header | None:
    """Size from a WebP container (RFC 9649)."""
    (riff,) = struct.unpack_from("<I", data, 4)
    whole = len(data) >= 8 + riff
    name = data[12:16]
    orientation = 1
    if name == b"VP8X":
        width = 1 + int.from_bytes(data[24:27], "little")
        height = 1 + int.from_bytes(data[27:30], "little")
        at = data.find(b"EXIF", 30)
        if at >= 0:
            block = data[at + 8:]
            orientation = _exif_orientation(block[6:] if block.startswith(b"Exif\0\0") else block)
    elif name == b"VP8L":
        (bits,) = struct.unpack_from("<I", data, 21)
        width, height = 1 + (bits & 0x3FFF), 1 + (bits >> 14 & 0x3FFF)
    elif name == b"VP8 ":
        width, height = (value & 0x3FFF for value in struct.unpack_from("<HH", data, 26))
    else:
        return None
    return Header(((width, height),), (orientation,), whole)


def _bmp(data: bytes) -> Header | None:
    """Size from a Windows bitmap; a negative height means that rows run from the top."""
    (info,) = struct.unpack_from("<I", data, 14)
    if info == 12:
        width, height = struct.unpack_from("<HH", data, 18)
        bits = struct.unpack_from("<H", data, 24)[0]
        compression = 0
    else:
        width, height = struct.unpack_from("<ii", data, 18)
        bits = struct.unpack_from("<H", data, 28)[0]
        (compression,) = struct.unpack_from("<I", data, 30)
    (start,) = struct.unpack_from("<I", data, 10)
    height = abs(height)
    needed = start + (width * bits + 31) // 32 * 4 * height if compression in (0, 3, 6) else 0
    return Header(((width, height),), (1,), len(data) >= needed)


def _tiff(data: bytes) -> Header | None:
    """Sizes of all pages of a TIFF or BigTIFF file (TIFF 6.0, section 2)."""
    order = "<" if data[:2] == b"II" else ">"
    big = data[2:4] in (b"+\0", b"\0+")
    (position,) = struct.unpack_from(order + ("Q" if big else "I"), data, 8 if big else 4)
    sizes: list[tuple[int, int]] = []
    orientations: list[int] = []
    seen: set[int] = set()
    whole = True
    while position and position not in seen and len(seen) < _MOST_DIRECTORIES:
        seen.add(position)
        try:
            tags, position = _directory(data, order, position, big)
        except struct.error:
            whole = False
            break
        if 256 in tags and 257 in tags:
            sizes.append((tags[256], tags[257]))
            orientations.append(tags.get(274, 1))
    return Header(tuple(sizes), tuple(orientations), whole) if sizes else None


def _directory(data: bytes, order: str, position: int, big: bool) -> tuple[dict[int, int], int]:
    """First value of every integer tag of one directory, and where the next directory starts."""
    tags: dict[int, int] = {}
    entry, head, offset = (20, 8, "Q") if big else (12, 2, "I")
    (count,) = struct.unpack_from(order + ("Q" if big else "H"), data, position)
    position += head
    for at in range(position, position + entry * min(count, 4096), entry):
        tag, kind = struct.unpack_from(order + "HH", data, at)
        value_at = at + (12 if big else 8)
        form = {1: "B", 3: "H", 4: "I", 16: "Q"}.get(kind)
        if form:
            tags[tag] = struct.unpack_from(order + form, data, value_at)[0]
    (following,) = struct.unpack_from(order + offset, data, position + entry * count)
    return tags, following


def _exif_orientation(block: bytes) -> int:
    """Orientation from an EXIF block, which is a small TIFF file; 1 (upright) when it cannot be told."""
    if block[:2] not in (b"II", b"MM"):
        return 1
    order = "<" if block[:2] == b"II" else ">"
    try:
        (position,) = struct.unpack_from(order + "I", block, 4)
        (count,) = struct.unpack_from(order + "H", block, position)
        for at in range(position + 2, position + 2 + 12 * count, 12):
            tag, kind = struct.unpack_from(order + "HH", block, at)
            if tag == 274 and kind == 3:
                value = int(struct.unpack_from(order + "H", block, at + 8)[0])
                return value if 1 <= value <= 8 else 1
    except struct.error:
        pass
    return 1
