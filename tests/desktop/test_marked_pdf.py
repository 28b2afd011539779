"""The marked page as PDF: annotations as ISO 32000 has them, shown by three engines."""

import ctypes
import re
import shutil
import subprocess

import numpy as np
import pypdfium2
import pypdfium2.raw as pdfium
import pytest
from PySide6.QtGui import QImage
from PySide6.QtPrintSupport import QPrinter

from checker.report import LineReport, Report, Slip
from desktop.desk import Desk
from desktop.desk_line import DeskLine, State
from desktop.document import Document, WorkingVerdict
from desktop.marked_pdf import marked_pdf
from desktop.pdf_objects import PdfObjects, number, text_string
from desktop.printing import print_pages
from desktop.reason_strip import strip_items
from desktop.reveal import GRADES, Reveal
from desktop.verdict_style import STYLES
from desktop.window import Window
from recognition.result import Box, Candidate, Token

SLIP = Slip("sign-product", "+ 8 t", (5, 10), "-8t", "-2t times +4 is -8t", "= 5t-8t")
RED = np.array([int(STYLES["slip"].on_light[i : i + 2], 16) for i in (1, 3, 5)])


def page(number=0):
    """Two lines on grey paper; the second has a slip in its last term, at x 400 to 500."""
    tokens = tuple(
        Token(text, 0.9, Box(x, 200, 90, 60)) for text, x in (("=", 100), ("5", 200), ("t", 300), ("+", 400))
    )
    tokens = (*tokens, Token("8", 0.9, Box(430, 200, 40, 60)), Token("t", 0.9, Box(470, 200, 30, 60)))
    lines = (
        DeskLine(Box(100, 80, 300, 60), (), "5 t - 8 t", State.CONFIRMED),
        DeskLine(Box(100, 200, 400, 60), (Candidate("= 5 t + 8 t", 0.9, tokens),), "= 5 t + 8 t", State.CONFIRMED),
    )
    report = Report("", 1, (LineReport("start"), LineReport("slip", 0, "", {"t": "1"}, SLIP)))
    verdict = WorkingVerdict((0, 1), report)
    picture = np.full((600, 1000, 3), 200, np.uint8)
    return Document("page.jpg", number, (1000, 600), picture, lines, (verdict,))


@pytest.fixture
def content(qapp):
    return marked_pdf([page()])


def annotations(content, index=0):
    """Kind, flags, rectangle, contents, name and appearance of each annotation, as pdfium reads them."""
    with pypdfium2.PdfDocument(content) as pdf:
        sheet, found = pdf[index], []
        raw = sheet.raw
        for at in range(pdfium.FPDFPage_GetAnnotCount(raw)):
            annotation = pdfium.FPDFPage_GetAnnot(raw, at)
            rect = pdfium.FS_RECTF()
            pdfium.FPDFAnnot_GetRect(annotation, rect)
            found.append({
                "kind": pdfium.FPDFAnnot_GetSubtype(annotation), "flags": pdfium.FPDFAnnot_GetFlags(annotation),
                "rect": (rect.left, rect.bottom, rect.right, rect.top),
                "contents": string(annotation, b"Contents"), "name": string(annotation, b"NM"),
                "form": pdfium.FPDFAnnot_GetAP(annotation, pdfium.FPDF_ANNOT_APPEARANCEMODE_NORMAL, None, 0) > 2,
            })  # fmt: skip
            pdfium.FPDFPage_CloseAnnot(annotation)
        sheet.close()
        return found


def string(annotation, key):
    size = pdfium.FPDFAnnot_GetStringValue(annotation, key, None, 0)
    buffer = ctypes.create_string_buffer(size)
    pdfium.FPDFAnnot_GetStringValue(
        annotation, key, ctypes.cast(buffer, ctypes.POINTER(pdfium.FPDF_WCHAR)), size
    )
    return buffer.raw.decode("utf-16-le").rstrip("\0")


def test_marks_are_highlight_ink_square_and_free_text_with_appearance_print_flag_and_reason(content):
    found = annotations(content)
    kinds = [one["kind"] for one in found]
    assert sorted(kinds) == sorted(
        [pdfium.FPDF_ANNOT_HIGHLIGHT, pdfium.FPDF_ANNOT_SQUARE, pdfium.FPDF_ANNOT_FREETEXT]
    ) or sorted(kinds) == sorted(
        [pdfium.FPDF_ANNOT_HIGHLIGHT, pdfium.FPDF_ANNOT_INK, pdfium.FPDF_ANNOT_SQUARE, pdfium.FPDF_ANNOT_FREETEXT]
    )
    for one in found:
        assert one["flags"] == 4  # Print, and neither Invisible, Hidden nor NoView
        assert one["form"]
        assert "−2t times +4 is −8t" in one["contents"]
    label = next(one for one in found if one["kind"] == pdfium.FPDF_ANNOT_FREETEXT)
    assert label["contents"].startswith("does not follow; should be −8t.")


def test_names_are_unique_over_all_pages(qapp):
    content = marked_pdf([page(0), page(1), page(2)])
    names = [one["name"] for index in range(3) for one in annotations(content, index)]
    assert len(names) == len(set(names)) >= 9


def test_frame_lies_round_the_term(content):
    """The term is at 400 to 500 of 1000 pixels across 595 points, and at 200 to 260 pixels down from the top."""
    square = next(one for one in annotations(content) if one["kind"] == pdfium.FPDF_ANNOT_SQUARE)
    with pypdfium2.PdfDocument(content) as pdf:
        height = pdf[0].get_height()
    left, bottom, right, top = square["rect"]
    assert left == pytest.approx(400 * 0.595, abs=8)
    assert right == pytest.approx(500 * 0.595, abs=8)
    assert height - top == pytest.approx(200 * 0.595, abs=10)
    assert height - bottom == pytest.approx(260 * 0.595, abs=10)


def by_pdfium(path):
    with pypdfium2.PdfDocument(path) as pdf:
        return pdf[0].render(scale=2, rev_byteorder=True).to_numpy()[:, :, :3]


def by_poppler(path):
    if shutil.which("pdftoppm") is None:
        pytest.skip("poppler is not on this machine")
    run = subprocess.run(["pdftoppm", "-r", "144", str(path)], capture_output=True, check=True)
    assert run.stderr == b""
    return ppm(run.stdout)


def by_mupdf(path):
    if shutil.which("mutool") is not None:
        out = path.with_suffix(".ppm")
        subprocess.run(["mutool", "draw", "-r", "144", "-o", str(out), str(path)], capture_output=True, check=True)
        return ppm(out.read_bytes())
    mupdf = pytest.importorskip("pymupdf", reason="mupdf is not on this machine")
    with mupdf.open(path) as pdf:
        assert not pdf.is_repaired
        pixels = pdf[0].get_pixmap(dpi=144)
        return np.frombuffer(pixels.samples, np.uint8).reshape(pixels.height, pixels.width, 3)


def ppm(content):
    head = re.match(rb"P6\s+(\d+)\s+(\d+)\s+255\s", content)
    width, height = int(head[1]), int(head[2])
    return np.frombuffer(content[head.end() :], np.uint8)[: width * height * 3].reshape(height, width, 3)


@pytest.mark.parametrize("engine", [by_pdfium, by_poppler, by_mupdf], ids=["pdfium", "poppler", "mupdf"])
def test_engine_shows_frame_tint_and_label(content, tmp_path, engine):
    path = tmp_path / "page.pdf"
    path.write_bytes(content)
    shown = engine(path).astype(int)
    scale = 2 * 0.595
    middle = shown[round(230 * scale), round(450 * scale)]
    paper = shown[round(300 * scale), round(200 * scale)]
    assert abs(paper - 200).max() <= 6
    assert middle[0] - middle[1] > 20  # the tint is red over the grey paper, which still shows
    red = np.abs(shown - RED).max(axis=2) < 40
    frame = red[round(190 * scale) : round(270 * scale), round(395 * scale) : round(505 * scale)]
    assert frame.any(axis=0).mean() > 0.8 and frame.any(axis=1).mean() > 0.6
    assert red[:, round(520 * scale) :].any()  # the label


def test_poppler_finds_the_words_of_page_and_labels(content, tmp_path):
    if shutil.which("pdftotext") is None:
        pytest.skip("poppler is not on this machine")
    (tmp_path / "page.pdf").write_bytes(content)
    run = subprocess.run(["pdftotext", str(tmp_path / "page.pdf"), "-"], capture_output=True, text=True, check=True)
    assert run.stderr == ""
    for words in ("does not follow", "First slip: line 2", "the teacher decides"):
        assert words in run.stdout


def test_every_object_that_is_referred_to_is_there(content):
    objects = PdfObjects(content)
    numbers = set(objects._objects)
    for body in objects._objects.values():
        text = re.sub(rb"stream\r?\n.*?endstream", b"", body, flags=re.DOTALL)
        assert {int(found) for found in re.findall(rb"(\d+) 0 R", text)} <= numbers
    assert len(objects.pages()) == 1


def test_file_that_qt_did_not_write_is_refused():
    for junk in (b"", b"%PDF-1.7\nnothing", b"xref\n0 1\nstartxref\n0\n%%EOF"):
        with pytest.raises(ValueError):
            PdfObjects(junk)


def test_numbers_and_text_strings_as_the_standard_writes_them():
    # ISO 32000-1, 7.3.3: no powers of ten. 7.9.2.2: UTF-16 begins with FE FF.
    assert [number(value) for value in (0.00001, 12.0, -3.14159, 1e7)] == [b"0", b"12", b"-3.142", b"10000000"]
    assert text_string("−8") == b"<FEFF22120038>"


def test_page_is_printed_whole_on_a_sheet(qapp, tmp_path):
    printer = QPrinter()
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(tmp_path / "print.pdf"))
    print_pages([page(), page(1)], printer)
    with pypdfium2.PdfDocument(tmp_path / "print.pdf") as pdf:
        assert len(pdf) == 2
        assert "does not follow" in pdf[1].get_textpage().get_text_bounded()
        assert "teacher decides" in pdf[1].get_textpage().get_text_bounded()


SECRETS = ("−8t", "times", "-8t")


@pytest.mark.parametrize("grade", [0, 1, 2, 3])
def test_saved_picture_tells_no_more_than_the_hints_that_were_asked_for(qapp, grade):
    document = page()
    reveal = Reveal(is_student=True, grades={SLIP: grade})
    told = " ".join(f"{item.label} {item.text} {item.latex}" for item in strip_items(document, reveal))
    annotated = annotations(marked_pdf([document], reveal=reveal))
    words = " ".join(one["contents"] for one in annotated)
    assert ("Should be" in told) is (grade == GRADES)
    assert ("should be" in words) is (grade == GRADES)
    assert f"Hint {grade}" in told if 0 < grade < GRADES else "Hint" not in told
    if grade < 2:
        assert not any(secret in told + words for secret in SECRETS)
    frames = [one["rect"] for one in annotated if one["kind"] == pdfium.FPDF_ANNOT_SQUARE]
    widths = [(right - left) * 1000 / 595 for left, _, right, _ in frames]
    assert (widths[0] < 200) is (grade > 0)  # the term of 110 pixels is framed from the first hint on, before that
    assert "does not follow" in words  # the whole line of 400


def test_window_saves_what_it_shows_in_hints_only_mode(qtbot, tmp_path):
    desk = Desk()
    window = Window(desk)
    qtbot.addWidget(window)
    document = page()
    desk.lay(document)
    sizes = {}
    for name in ("teacher", "student"):
        window.menus.actions["student"].setChecked(name == "student")
        with qtbot.waitSignal(desk.saved, timeout=30_000):
            window.save_picture(tmp_path / f"{name}.png")
        sizes[name] = QImage(str(tmp_path / f"{name}.png")).height()
    assert sizes["student"] < sizes["teacher"]  # the strip is shorter by what is kept back
    window.close()
