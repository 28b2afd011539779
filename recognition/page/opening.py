"""Open photos, scans and PDF files as RGB pictures, one page at a time."""

from __future__ import annotations

import logging
import math
import os
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import cv2
import numpy as np
import pypdfium2
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.page.headers import Header, Kind, read_header, sniff
from recognition.page.heic import heic_pictures

__all__ = ["LEAST_SIDE", "MOST_MEGAPIXELS", "MOST_PAGES", "Sheet", "open_pages"]

os.environ.pop("QT_QPA_PLATFORM_PLUGIN_PATH", None)  # OpenCV points Qt at its own plugins on import
os.environ.pop("QT_QPA_FONTDIR", None)

log = logging.getLogger(__name__)

MOST_MEGAPIXELS = 100
MOST_PAGES = 500
MOST_BYTES = 1 << 30
LEAST_SIDE = 16
"""Pixels; a picture with a shorter side holds no line of writing."""
PDF_DPI = 220
PDF_MEGAPIXELS = 16

_FORMATS = "JPEG, PNG, TIFF, WebP, BMP, HEIC or PDF"
_PDF_LOCK = threading.Lock()  # PDFium is not safe to call from two threads


@dataclass(frozen=True, slots=True)
class Sheet:
    """One page: image is RGB, shape (height, width, 3), turned upright; page counts from 0."""

    file: str
    page: int
    image: NDArray[np.uint8]


def open_pages(path: str | os.PathLike[str]) -> Iterator[Sheet]:
    """Open a file and give its pages one after the other; only one page is in memory at a time.

    Args:
        path: a photo, a scan (TIFF may hold several pages) or a PDF file. The content counts, not the ending.
    Returns:
        An iterator of at least one page.
    Raises:
        InputError: there is no such file, it is no picture, damaged, locked, too small or too large. Raised when the
            first page is asked for, or at the page that is damaged.
    """
    file = Path(path)
    name = file.name or str(path)
    data = _read(file, name)
    kind = sniff(data)
    if kind is Kind.PDF:
        yield from _pdf_pages(str(path), name, data)
        return
    if kind is Kind.HEIC:
        yield from _heic_pages(str(path), name, data)
        return
    _refuse_other_kinds(name, kind)
    header = read_header(data, kind)
    if header is None:
        raise _damaged(name, kind)
    _check_sizes(name, header)
    if not header.whole:
        raise InputError(
            f"{name} is cut off: the end of the {kind.value} file is missing. Copy it again from the camera or phone."
        )
    for page in range(len(header.sizes)):
        yield Sheet(str(path), page, _decode(name, kind, data, header, page))


def _read(file: Path, name: str) -> bytes:
    try:
        if file.is_dir():
            raise InputError(f"{name} is a folder. Choose one or more {_FORMATS} files inside it.")
        size = file.stat().st_size
        if size == 0:
            raise InputError(f"{name} is an empty file. Copy it again from the camera or phone.")
        if size > MOST_BYTES:
            raise InputError(
                f"{name} is {size / 2**30:.1f} GiB large; the limit is {MOST_BYTES / 2**30:.0f} GiB. "
                "Split it into smaller files and open those."
            )
        return file.read_bytes()
    except (FileNotFoundError, NotADirectoryError) as exc:
        raise InputError(f"There is no file {name}. Check the name and the folder, then open it again.") from exc
    except PermissionError as exc:
        raise InputError(f"{name} may not be read. Ask for the right to read it, or choose another file.") from exc
    except (OSError, ValueError) as exc:
        raise InputError(f"{name} could not be read from the disk. Copy it again and open the copy.") from exc


def _refuse_other_kinds(name: str, kind: Kind) -> None:
    if kind is Kind.AVIF:
        raise InputError(f"{name} is an AVIF photo, which is not supported. Export it as JPEG and open that.")
    if kind is Kind.GIF:
        raise InputError(f"{name} is a GIF, which is not supported. Export it as PNG or JPEG and open that.")
    if kind is Kind.TEXT:
        raise InputError(f"{name} holds text, not a picture. Choose a {_FORMATS} file.")
    if kind is Kind.UNKNOWN:
        raise InputError(f"{name} is not a picture that can be opened. Choose a {_FORMATS} file.")


def _check_sizes(name: str, header: Header) -> None:
    if len(header.sizes) > MOST_PAGES:
        raise InputError(
            f"{name} has {len(header.sizes)} pages; the limit is {MOST_PAGES}. Split it and open the parts."
        )
    for width, height in header.sizes:
        if min(width, height) < LEAST_SIDE:
            raise InputError(
                f"{name} is {width} x {height} pixels, too small to hold writing. Choose the full-size photo."
            )
        if width * height > MOST_MEGAPIXELS * 1_000_000:
            raise InputError(
                f"{name} has {width * height / 1e6:.0f} megapixels; the limit is {MOST_MEGAPIXELS}. "
                "Save it at a smaller size and open that."
            )


def _damaged(name: str, kind: Kind) -> InputError:
    return InputError(
        f"{name} is a damaged {kind.value} file. Copy it again from the camera or scanner, or save it anew as JPEG."
    )


def _decode(name: str, kind: Kind, data: bytes, header: Header, page: int) -> NDArray[np.uint8]:
    """Decode one picture to upright RGB."""
    buffer = np.frombuffer(data, np.uint8)
    try:
        if kind is Kind.TIFF:
            good, images = cv2.imdecodemulti(buffer, cv2.IMREAD_UNCHANGED, range=(page, page + 1))
            decoded = images[0] if good and images else None
        elif kind is Kind.JPEG:
            decoded = cv2.imdecode(buffer, cv2.IMREAD_COLOR | cv2.IMREAD_IGNORE_ORIENTATION)
        else:
            decoded = cv2.imdecode(buffer, cv2.IMREAD_UNCHANGED)
    except cv2.error as exc:
        raise _damaged(name, kind) from exc
    if decoded is None or decoded.size == 0:
        raise _damaged(name, kind)
    # OpenCV's TIFF decoder obeys the orientation tag by itself.
    return _turned(_to_rgb(decoded), 1 if kind is Kind.TIFF else header.orientations[page])


def _to_rgb(decoded: NDArray[Any]) -> NDArray[np.uint8]:
    """Any depth and channel count of OpenCV (BGR order) to 8-bit RGB; what is transparent becomes white paper."""
    image: NDArray[Any] = decoded
    if image.dtype == np.uint16:
        image = cv2.convertScaleAbs(image, alpha=1 / 257)
    elif image.dtype != np.uint8:
        values = np.nan_to_num(image.astype(np.float32), nan=0.0, posinf=0.0, neginf=0.0)
        top = float(values.max()) if values.size else 1.0
        image = np.clip(values * (255.0 / (1.0 if top <= 1.0 else top)), 0, 255).astype(np.uint8)
    if image.ndim == 2:
        return np.ascontiguousarray(cv2.cvtColor(image, cv2.COLOR_GRAY2RGB), dtype=np.uint8)
    channels = image.shape[2]
    if channels == 1:
        return np.ascontiguousarray(cv2.cvtColor(image, cv2.COLOR_GRAY2RGB), dtype=np.uint8)
    if channels in (2, 4):
        alpha = image[:, :, -1:].astype(np.uint16)
        colour = image[:, :, :1].repeat(3, axis=2) if channels == 2 else image[:, :, :3]
        if alpha.min() < 255:
            colour = ((colour * alpha + 255 * (255 - alpha) + 127) // 255).astype(np.uint8)
        return np.ascontiguousarray(cv2.cvtColor(np.ascontiguousarray(colour), cv2.COLOR_BGR2RGB), dtype=np.uint8)
    return np.ascontiguousarray(cv2.cvtColor(image, cv2.COLOR_BGR2RGB), dtype=np.uint8)


def _turned(image: NDArray[np.uint8], orientation: int) -> NDArray[np.uint8]:
    """Undo an EXIF orientation (EXIF 2.32, tag 274)."""
    if orientation in (5, 6, 7, 8):
        image = image.transpose(1, 0, 2)
    if orientation in (2, 3, 6, 7):
        image = image[:, ::-1]
    if orientation in (3, 4, 7, 8):
        image = image[::-1]
    return np.ascontiguousarray(image)


def _heic_pages(path: str, name: str, data: bytes) -> Iterator[Sheet]:
    pictures = heic_pictures(name, data)
    _check_sizes(name, Header(tuple(picture.size for picture in pictures), (1,) * len(pictures), True))
    for number, picture in enumerate(pictures):
        pixels = picture.pixels()
        if pixels.ndim == 3 and pixels.shape[2] in (3, 4):
            pixels = pixels[:, :, [2, 1, 0, 3][: pixels.shape[2]]]  # in OpenCV's order of channels
        yield Sheet(path, number, _to_rgb(pixels))


def _pdf_pages(path: str, name: str, data: bytes) -> Iterator[Sheet]:
    with _PDF_LOCK:
        try:
            document = pypdfium2.PdfDocument(data)
            count = len(document)
        except pypdfium2.PdfiumError as exc:
            if "password" in str(exc).lower():
                raise InputError(
                    f"{name} is locked with a password. Save a copy without the password and open that."
                ) from exc
            raise _damaged(name, Kind.PDF) from exc
    try:
        if count == 0:
            raise InputError(f"{name} has no pages. Export it again and open the new file.")
        if count > MOST_PAGES:
            raise InputError(f"{name} has {count} pages; the limit is {MOST_PAGES}. Split it and open the parts.")
        for number in range(count):
            yield Sheet(path, number, _pdf_page(name, document, number))
    finally:
        with _PDF_LOCK:
            document.close()


def _pdf_page(name: str, document: Any, number: int) -> NDArray[np.uint8]:
    with _PDF_LOCK:
        try:
            page = document[number]
            width, height = page.get_size()  # points of 1/72 inch
            scale = PDF_DPI / 72
            if width * height * scale**2 > PDF_MEGAPIXELS * 1e6:
                scale = math.sqrt(PDF_MEGAPIXELS * 1e6 / (width * height))
            bitmap = page.render(scale=scale, fill_color=(255, 255, 255, 255))
            image = np.array(bitmap.to_numpy())
            bitmap.close()
            page.close()
        except (pypdfium2.PdfiumError, ZeroDivisionError, ValueError) as exc:
            raise InputError(
                f"Page {number + 1} of {name} is damaged. Export the PDF again, or open the page as a picture."
            ) from exc
    return _to_rgb(image)
