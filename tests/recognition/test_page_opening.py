"""Opening photos, scans and PDF files, and the sentence for each file that cannot be opened."""

from __future__ import annotations

import struct
import sys
import zlib
from pathlib import Path

import cv2
import numpy as np
import pypdfium2
import pytest
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.page import open_pages


def _only(path: Path) -> NDArray[np.uint8]:
    (sheet,) = open_pages(path)
    return sheet.image


def _encoded(ending: str, image: NDArray[np.generic], *options: int) -> bytes:
    good, data = cv2.imencode(ending, image, list(options))
    assert good
    return data.tobytes()


def _corner_page() -> NDArray[np.uint8]:
    """White, 60 wide and 40 high in BGR order, with the top left quarter red."""
    page = np.full((40, 60, 3), 255, np.uint8)
    page[:20, :30] = (0, 0, 255)
    return page


def _exif(orientation: int) -> bytes:
    # A TIFF block with one entry, tag 274 (EXIF 2.32, section 4.6.4).
    return b"MM\0*" + struct.pack(">IHHHIHHI", 8, 1, 274, 3, 1, orientation, 0, 0)


@pytest.mark.parametrize("ending", [".jpg", ".png", ".tiff", ".webp", ".bmp"])
def test_each_format_gives_rgb_of_the_right_size(tmp_path: Path, ending: str):
    path = tmp_path / f"page{ending}"
    path.write_bytes(_encoded(ending, _corner_page()))
    image = _only(path)
    assert image.shape == (40, 60, 3) and image.dtype == np.uint8
    assert image[8, 8].astype(int) == pytest.approx([255, 0, 0], abs=12)
    assert image[30, 50].astype(int) == pytest.approx([255, 255, 255], abs=12)


# Where the red quarter, stored at the top left, must appear (EXIF 2.32, tag 274): row and column of its middle.
_TURNS = {1: (10, 15), 2: (10, 45), 3: (30, 45), 4: (30, 15), 5: (15, 10), 6: (15, 30), 7: (45, 30), 8: (45, 10)}


@pytest.mark.parametrize("orientation", sorted(_TURNS))
@pytest.mark.parametrize("ending", [".jpg", ".png"])
def test_exif_orientation_is_obeyed(tmp_path: Path, ending: str, orientation: int):
    data = _encoded(ending, _corner_page())
    exif = _exif(orientation)
    if ending == ".jpg":
        segment = b"Exif\0\0" + exif
        data = data[:2] + b"\xff\xe1" + struct.pack(">H", len(segment) + 2) + segment + data[2:]
    else:
        chunk = struct.pack(">I", len(exif)) + b"eXIf" + exif + struct.pack(">I", zlib.crc32(b"eXIf" + exif))
        data = data[:33] + chunk + data[33:]
    path = tmp_path / f"turned{ending}"
    path.write_bytes(data)
    image = _only(path)
    assert image.shape[:2] == ((40, 60) if orientation < 5 else (60, 40))
    row, column = _TURNS[orientation]
    assert image[row, column].astype(int) == pytest.approx([255, 0, 0], abs=12)


def test_sixteen_bit_grey_becomes_eight_bit(tmp_path: Path):
    path = tmp_path / "deep.png"
    path.write_bytes(_encoded(".png", np.full((30, 30), 257 * 100, np.uint16)))
    assert (_only(path) == 100).all()


def test_transparent_paper_is_white(tmp_path: Path):
    page = np.zeros((30, 30, 4), np.uint8)
    page[:10] = (10, 20, 30, 255)
    path = tmp_path / "clear.png"
    path.write_bytes(_encoded(".png", page))
    image = _only(path)
    assert image[2, 2].tolist() == [30, 20, 10] and image[20, 20].tolist() == [255, 255, 255]


def test_cmyk_jpeg_is_read_in_its_true_colours(tmp_path: Path):
    # Adobe writes CMYK inverted: cyan 0 there is full cyan, which is red 0, green 255, blue 255.
    path = tmp_path / "print.jpg"
    path.write_bytes(_cmyk_jpeg(0, 255, 255, 255))
    assert _only(path)[5, 5].astype(int) == pytest.approx([0, 255, 255], abs=3)


def test_pages_of_a_tiff_come_one_by_one(tmp_path: Path):
    good, data = cv2.imencodemulti(".tiff", [np.full((40, 60), 50, np.uint8), np.full((50, 70), 90, np.uint8)])
    assert good
    path = tmp_path / "scan.tiff"
    path.write_bytes(data.tobytes())
    sheets = list(open_pages(path))
    assert [s.page for s in sheets] == [0, 1]
    assert [s.image.shape for s in sheets] == [(40, 60, 3), (50, 70, 3)]
    assert [int(s.image[0, 0, 0]) for s in sheets] == [50, 90]


def test_pages_of_a_pdf_come_one_by_one(tmp_path: Path):
    document = pypdfium2.PdfDocument.new()
    for width in (300, 400):
        document.new_page(width, 200)
    path = tmp_path / "scan.pdf"
    document.save(path)
    document.close()
    sheets = list(open_pages(path))
    assert [s.page for s in sheets] == [0, 1]
    # 300 points at 220 dots an inch are 917 pixels.
    assert sheets[0].image.shape[1] == pytest.approx(917, abs=1) and (sheets[0].image == 255).all()


def test_content_counts_not_the_ending(tmp_path: Path):
    path = tmp_path / "really-a-png.jpg"
    path.write_bytes(_encoded(".png", _corner_page()))
    assert _only(path).shape == (40, 60, 3)


def _refusal(path: Path) -> str:
    with pytest.raises(InputError) as caught:
        list(open_pages(path))
    sentence = str(caught.value)
    assert path.name in sentence and sentence.endswith(".")
    return sentence


def test_missing_file(tmp_path: Path):
    assert "There is no file nowhere.jpg. Check the name" in _refusal(tmp_path / "nowhere.jpg")


def test_folder(tmp_path: Path):
    folder = tmp_path / "homework"
    folder.mkdir()
    assert "is a folder. Choose" in _refusal(folder)


@pytest.mark.parametrize(
    ("name", "content", "sentence"),
    [
        ("empty.jpg", b"", "is an empty file. Copy it again"),
        ("notes.jpg", b"x^2 + 3x = 10\nso x = 2\n", "holds text, not a picture. Choose a JPEG"),
        ("noise.jpg", bytes(range(256)) * 8, "is not a picture that can be opened. Choose a JPEG"),
        ("phone.avif", b"\0\0\0\x18ftypmif1\0\0\0\0mif1avif", "is an AVIF photo, which is not supported. Export"),
        ("moving.gif", b"GIF89a\x10\0\x10\0\0\0\0;", "Export it as PNG or JPEG"),
        ("broken.pdf", b"%PDF-1.7\nnothing of use", "is a damaged PDF file. Copy it again"),
        ("broken.png", b"\x89PNG\r\n\x1a\nrubbish here and there", "is a damaged PNG file"),
        ("broken.tif", b"II*\0\xff\xff\xff\x7f", "is a damaged TIFF file"),
    ],
)
def test_what_is_no_picture_gets_a_sentence(tmp_path: Path, name: str, content: bytes, sentence: str):
    path = tmp_path / name
    path.write_bytes(content)
    assert sentence in _refusal(path)


def test_heic_without_its_package_says_what_to_do(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setitem(sys.modules, "pillow_heif", None)  # as on a machine without it
    path = tmp_path / "phone.heic"
    path.write_bytes(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic")
    assert "Install firstslip[heic], or export the photo as JPEG" in _refusal(path)


def test_heic_photo_is_opened_where_its_package_is(tmp_path: Path):
    pillow_heif = pytest.importorskip("pillow_heif")
    page = np.full((120, 160, 3), (200, 40, 60), np.uint8)
    path = tmp_path / "phone.heic"
    pillow_heif.from_bytes(mode="RGB", size=(160, 120), data=page.tobytes()).save(path, quality=95)
    image = _only(path)
    assert image.shape == (120, 160, 3)
    assert image[60, 80].astype(int) == pytest.approx([200, 40, 60], abs=6)
    path.write_bytes(path.read_bytes()[:-200])
    assert "is a damaged HEIC file. Copy it again" in _refusal(path)


@pytest.mark.parametrize("ending", [".jpg", ".png", ".webp", ".bmp"])
@pytest.mark.parametrize("share", [0.3, 0.6, 0.9])
def test_truncated_file(tmp_path: Path, ending: str, share: float):
    rng = np.random.default_rng(0)
    data = _encoded(ending, rng.integers(0, 255, (200, 300, 3), dtype=np.uint8))
    path = tmp_path / f"cut{ending}"
    path.write_bytes(data[: int(len(data) * share)])
    sentence = _refusal(path)
    assert "cut off" in sentence and "Copy it again" in sentence


def test_progressive_jpeg_is_opened_whole_and_refused_in_part(tmp_path: Path):
    rng = np.random.default_rng(0)
    options = (cv2.IMWRITE_JPEG_PROGRESSIVE, 1, cv2.IMWRITE_JPEG_RST_INTERVAL, 4)
    data = _encoded(".jpg", rng.integers(0, 255, (200, 300, 3), dtype=np.uint8), *options)
    path = tmp_path / "scans.jpg"
    path.write_bytes(data + b"what a camera may append")
    assert _only(path).shape == (200, 300, 3)
    path.write_bytes(data[: len(data) // 2])
    assert "cut off" in _refusal(path)


def test_truncated_tiff(tmp_path: Path):
    rng = np.random.default_rng(0)
    data = _encoded(".tiff", rng.integers(0, 255, (200, 300, 3), dtype=np.uint8))
    path = tmp_path / "cut.tiff"
    path.write_bytes(data[: len(data) // 2])
    assert "Copy it again" in _refusal(path)


def test_one_pixel_is_too_small(tmp_path: Path):
    path = tmp_path / "dot.png"
    path.write_bytes(_encoded(".png", np.zeros((1, 1, 3), np.uint8)))
    assert "is 1 x 1 pixels, too small to hold writing. Choose the full-size photo." in _refusal(path)


def test_two_hundred_megapixels_are_refused_from_the_header(tmp_path: Path):
    # Only the header is there, so a decoder could not even start: the limit is checked before.
    header = struct.pack(">II5B", 20_000, 10_000, 8, 2, 0, 0, 0)
    chunk = struct.pack(">I", 13) + b"IHDR" + header + struct.pack(">I", zlib.crc32(b"IHDR" + header))
    png = tmp_path / "huge.png"
    png.write_bytes(b"\x89PNG\r\n\x1a\n" + chunk)
    assert "has 200 megapixels; the limit is 100. Save it at a smaller size" in _refusal(png)
    frame = struct.pack(">BHHB", 8, 10_000, 20_000, 3) + bytes((1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0))
    jpeg = tmp_path / "huge.jpg"
    jpeg.write_bytes(b"\xff\xd8\xff\xc0" + struct.pack(">H", len(frame) + 2) + frame)
    assert "has 200 megapixels; the limit is 100" in _refusal(jpeg)


def test_pdf_with_a_password(tmp_path: Path):
    path = tmp_path / "locked.pdf"
    path.write_bytes(_locked_pdf())
    assert "is locked with a password. Save a copy without the password and open that." in _refusal(path)


def _locked_pdf() -> bytes:
    """A PDF with the standard security handler (ISO 32000-1, 7.6.3) whose keys fit no password."""
    objects = [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        b"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] >>",
        b"<< /Filter /Standard /V 1 /R 2 /P -4 /O <" + b"5a" * 32 + b"> /U <" + b"a5" * 32 + b"> >>",
    ]
    data = b"%PDF-1.4\n"
    places = []
    for number, content in enumerate(objects, 1):
        places.append(len(data))
        data += b"%d 0 obj\n%s\nendobj\n" % (number, content)
    start = len(data)
    data += b"xref\n0 5\n0000000000 65535 f \n" + b"".join(b"%010d 00000 n \n" % place for place in places)
    data += b"trailer\n<< /Size 5 /Root 1 0 R /Encrypt 4 0 R /ID [<00> <00>] >>\nstartxref\n%d\n%%%%EOF\n" % start
    return data


def _cmyk_jpeg(*levels: int) -> bytes:
    """A 32 x 32 baseline JPEG (ITU-T T.81) of one colour in four components, with Adobe's marker."""

    def segment(marker: int, content: bytes) -> bytes:
        return bytes((0xFF, marker)) + struct.pack(">H", len(content) + 2) + content

    bits, first = "", True
    for _block in range(16):
        for level in levels:
            step = level - 128 if first else 0  # with all quantisers 8, one step of DC is one grey level
            size = abs(step).bit_length()
            bits += f"{size:04b}"
            if size:
                bits += f"{step if step > 0 else step + (1 << size) - 1:0{size}b}"
            bits += "0"  # end of block
        first = False
    bits += "1" * (-len(bits) % 8)
    scan = bytes(int(bits[i : i + 8], 2) for i in range(0, len(bits), 8)).replace(b"\xff", b"\xff\0")
    ids = range(1, 5)
    return b"".join((
        b"\xff\xd8", segment(0xEE, b"Adobe" + struct.pack(">HHHB", 100, 0, 0, 0)),
        segment(0xDB, bytes((0, *(8,) * 64))),
        segment(0xC0, struct.pack(">BHHB", 8, 32, 32, 4) + b"".join(bytes((i, 0x11, 0)) for i in ids)),
        segment(0xC4, bytes((0x00, 0, 0, 0, 9, *(0,) * 12, *range(9)))),
        segment(0xC4, bytes((0x10, 1, *(0,) * 15, 0))),
        segment(0xDA, bytes((4, *(b for i in ids for b in (i, 0)), 0, 63, 0))), scan, b"\xff\xd9",
    ))  # fmt: skip
