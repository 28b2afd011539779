"""`firstslip report` as a user runs it: a process without a display."""

import json
import os
import struct
import subprocess
import sys
import zlib
from html.parser import HTMLParser
from pathlib import Path

import numpy as np
import pytest

from tests.desktop.samples import ROOT, sample, truth

SLIP_PAGE = "candidate-4107.jpg"
INK_PAGE = "candidate-4160.inkml"


def run_report(*arguments: str | Path, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    environment = {name: value for name, value in os.environ.items()
                   if name not in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")}  # fmt: skip
    environment["PYTHONPATH"] = str(ROOT)
    command = [sys.executable, "-m", "desktop", "report", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, timeout=120, env=environment, cwd=cwd, check=False)


def png(width: int, height: int, grey: int = 240) -> bytes:
    """A plain 8-bit grey PNG, written by hand so that size costs nothing."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    packer = zlib.compressobj(1)
    row = bytes([0]) + bytes([grey]) * width
    rows = b"".join(packer.compress(row) for _ in range(height)) + packer.flush()
    header = struct.pack(">IIBBBBB", width, height, 8, 0, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


@pytest.fixture(scope="module")
def done(tmp_path_factory):
    """One run on a photo and a drawing, by the readings that the program makes itself."""
    out = tmp_path_factory.mktemp("report")
    result = run_report(sample(SLIP_PAGE), sample(INK_PAGE), "--out", out)
    return out, result


def test_report_is_json_beside_the_marked_picture_and_a_summary(done):
    out, result = done
    assert (result.returncode, result.stderr) == (0, "")
    assert sorted(os.listdir(out)) == [
        "candidate-4107.json", "candidate-4107.png", "candidate-4160.json", "candidate-4160.png", "index.html",
    ]  # fmt: skip


def test_report_with_pdf_brings_the_marks_as_annotations(tmp_path):
    import pypdfium2
    import pypdfium2.raw as pdfium

    result = run_report(sample(INK_PAGE), "--pdf", "--out", tmp_path / "out")
    assert (result.returncode, result.stderr) == (0, "")
    assert sorted(os.listdir(tmp_path / "out")) == [
        "candidate-4160.json", "candidate-4160.pdf", "candidate-4160.png", "index.html",
    ]  # fmt: skip
    with pypdfium2.PdfDocument(tmp_path / "out" / "candidate-4160.pdf") as pdf:
        sheet = pdf[0]
        assert pdfium.FPDFPage_GetAnnotCount(sheet.raw) >= 3
        sheet.close()
    written = tmp_path / "out" / "candidate-4160.pdf"
    before = written.read_bytes()
    again = run_report(written, "--pdf", "--out", tmp_path / "out")
    assert again.returncode == 2
    assert "candidate-4160.pdf would write over the picture itself" in again.stderr
    assert written.read_bytes() == before


def test_first_slip_is_the_planted_one_without_correction(done):
    out, _ = done
    for name in (SLIP_PAGE, INK_PAGE):
        planted = truth(name)["planted"]
        (working,) = json.loads((out / name).with_suffix(".json").read_text())["workings"]
        assert working["first_slip"] == planted["line"]
        assert working["slip"]["should_be"].replace(" ", "") == planted["should_be"]


def test_marked_picture_holds_the_original_and_the_reason_below(done):
    import cv2

    out, _ = done
    original, marked = cv2.imread(str(sample(SLIP_PAGE))), cv2.imread(str(out / "candidate-4107.png"))
    height, width = original.shape[:2]
    assert marked.shape[1] == width
    assert marked.shape[0] > height
    changed = np.abs(original.astype(int) - marked[:height].astype(int)).max(axis=2) > 60
    x, y, w, h = truth(SLIP_PAGE)["lines"][1]["box"]
    assert changed[y : y + h, x : x + w].any()
    assert changed.mean() < 0.05


def test_summary_needs_no_other_file_and_says_that_the_teacher_decides(done):
    out, _ = done
    text = (out / "index.html").read_text(encoding="utf-8")
    open_tags, links = [], []

    class Reader(HTMLParser):
        def handle_starttag(self, tag, attrs):
            links.extend(value for name, value in attrs if name in ("src", "href"))
            if tag not in ("meta", "img", "br"):
                open_tags.append(tag)

        def handle_endtag(self, tag):
            assert open_tags.pop() == tag

    Reader().feed(text)
    assert open_tags == []
    assert all(link.startswith(("data:", "#")) for link in links)
    assert "the teacher decides" in text
    assert text.count("data:image/jpeg") == 2
    assert "First slip: line 2." in text


def test_confirmed_lines_are_judged_as_the_user_wrote_them(tmp_path):
    lines = [{"latex": text, "box": line["box"]} for text, line in zip(
        ["(2x-3)(x-4)-x(x-5)", "=2x^2-8x-3x+12-x^2+5x", "=x^2-6x+12"], truth(SLIP_PAGE)["lines"], strict=False
    )]  # fmt: skip
    (tmp_path / "mine.json").write_text(json.dumps({"lines": lines}))
    result = run_report(sample(SLIP_PAGE), "--confirmed", tmp_path / "mine.json", "--out", tmp_path / "out")
    assert (result.returncode, result.stderr) == (0, "")
    (working,) = json.loads((tmp_path / "out" / "candidate-4107.json").read_text())["workings"]
    assert [line["verdict"] for line in working["lines"]] == ["start", "follows", "follows"]
    assert {line["state"] for line in working["lines"]} == {"confirmed"}
    assert working["first_slip"] is None


def test_corrected_report_is_taken_back_as_confirmed(done, tmp_path):
    out, _ = done
    page = json.loads((out / "candidate-4160.json").read_text())
    page["workings"][0]["lines"][1]["latex"] = "=7n+14-3n^2-6n"
    (tmp_path / "candidate-4160.json").write_text(json.dumps(page))
    result = run_report(sample(INK_PAGE), "--confirmed", tmp_path, "--out", tmp_path)
    assert (result.returncode, result.stderr) == (0, "")
    (working,) = json.loads((tmp_path / "candidate-4160.json").read_text())["workings"]
    assert [line["verdict"] for line in working["lines"]] == ["start", "follows", "slip"]


def test_bad_files_get_a_sentence_each_and_the_others_are_done(tmp_path):
    inputs = tmp_path / "in"
    inputs.mkdir()
    rng = np.random.default_rng(3)
    import cv2

    noise = cv2.GaussianBlur(rng.integers(0, 255, (800, 1000, 3)).astype(np.uint8), (0, 0), 12)
    noise = cv2.normalize(noise, None, 0, 255, cv2.NORM_MINMAX)
    contents = {
        "text.jpg": b"this is not a picture", "cut.jpg": sample(SLIP_PAGE).read_bytes()[:20_000], "empty.png": b"",
        "dot.png": png(1, 1), "huge.png": png(20_000, 10_000), "blank.png": png(900, 1200),
        "clouds.png": cv2.imencode(".png", noise)[1].tobytes(), "broken.inkml": b"<ink><trace>1 2, 3",
        "broken.pdf": b"%PDF-1.4 nothing follows",
    }  # fmt: skip
    for name, content in contents.items():
        (inputs / name).write_bytes(content)
    files = [inputs / "gone.jpg", *(inputs / name for name in contents), inputs, sample(INK_PAGE)]
    result = run_report(*files, "--out", tmp_path / "out")
    assert result.returncode == 2
    assert "Traceback" not in result.stderr
    sentences = result.stderr.strip().splitlines()
    for name in ("gone.jpg", *contents):
        (sentence,) = [line for line in sentences if name in line]
        assert sentence.endswith(".")
        assert len(sentence.split(". ")) >= 2 or "," in sentence  # what is wrong, and what to do next
    assert len(sentences) == len(files) - 1
    assert sorted(os.listdir(tmp_path / "out")) == ["candidate-4160.json", "candidate-4160.png", "index.html"]
    assert "gone.jpg" in (tmp_path / "out" / "index.html").read_text(encoding="utf-8")


def test_no_files_is_told_in_a_sentence(tmp_path):
    result = run_report("--out", tmp_path / "out")
    assert result.returncode == 2
    assert result.stderr == "No files were given. Name the photos, PDF or InkML files to mark.\n"


def test_folder_that_cannot_be_written_is_told_in_a_sentence(tmp_path):
    (tmp_path / "out").write_text("a file, not a folder")
    result = run_report(sample(INK_PAGE), "--out", tmp_path / "out")
    assert result.returncode == 2
    assert "cannot be written. Choose another folder with --out." in result.stderr
    assert "Traceback" not in result.stderr


def test_picture_given_is_never_written_over(tmp_path):
    (tmp_path / "page.png").write_bytes(png(900, 1200))
    result = run_report(tmp_path / "page.png", "--out", tmp_path)
    assert result.returncode == 2
    assert "would write over the picture itself" in result.stderr
    assert (tmp_path / "page.png").read_bytes() == png(900, 1200)


@pytest.mark.parametrize(
    ("lines", "verdict"),
    [(["k+1", r"=\frac{k+"], "unreadable"), ([r"\frac{k}{0}", "=k"], None)],
    ids=["LaTeX that does not parse", "division by zero"],
)
def test_odd_lines_confirmed_by_the_user_are_reported_and_not_a_crash(tmp_path, lines, verdict):
    (tmp_path / "page.png").write_bytes(png(900, 1200))
    (tmp_path / "page.json").write_text(json.dumps({"lines": [
        {"latex": latex, "box": [100, 100 + 80 * number, 300, 50]} for number, latex in enumerate(lines)
    ]}))  # fmt: skip
    result = run_report(tmp_path / "page.png", "--confirmed", tmp_path, "--out", tmp_path / "out")
    assert (result.returncode, result.stderr) == (0, "")
    (working,) = json.loads((tmp_path / "out" / "page.json").read_text())["workings"]
    assert len(working["lines"]) == 2
    if verdict:
        assert working["lines"][1]["verdict"] == verdict
        assert working["lines"][1]["reason"]


def test_bad_confirmed_file_is_told_in_a_sentence(tmp_path):
    (tmp_path / "bad.json").write_text("{")
    result = run_report(sample(INK_PAGE), "--confirmed", tmp_path / "bad.json", "--out", tmp_path / "out")
    assert result.returncode == 2
    assert "bad.json is not JSON" in result.stderr


def test_pages_of_a_pdf_and_files_of_one_name_get_reports_of_their_own(tmp_path):
    from PySide6.QtCore import QRectF
    from PySide6.QtGui import QGuiApplication, QImage, QPainter, QPdfWriter

    application = QGuiApplication.instance() or QGuiApplication([])
    writer = QPdfWriter(str(tmp_path / "set.pdf"))
    painter = QPainter(writer)
    for number in range(2):
        if number:
            writer.newPage()
        top = QImage(str(sample(SLIP_PAGE))).copy(0, 240, 1600, 260)  # the first two lines
        painter.drawImage(QRectF(0, 0, writer.width(), writer.width() * 260 / 1600), top)
    painter.end()
    del application
    other = tmp_path / "other"
    other.mkdir()
    (other / "set.inkml").write_bytes(sample(INK_PAGE).read_bytes())
    result = run_report(tmp_path / "set.pdf", other / "set.inkml", "--out", tmp_path / "out")
    assert (result.returncode, result.stderr) == (0, "")
    names = sorted(path.name for path in (tmp_path / "out").glob("*.json"))
    assert names == ["set-2.json", "set-b.json", "set.json"]
    first, second, third = (
        json.loads((tmp_path / "out" / f"{name}.json").read_text()) for name in ("set", "set-2", "set-b")
    )
    assert (first["page"], second["page"]) == (0, 1)
    assert third["file"].endswith("set.inkml")


def test_confirmed_lines_that_belong_to_no_page_are_told(tmp_path):
    (tmp_path / "elsewhere.json").write_text('{"lines": ["k"]}')
    (tmp_path / "page.png").write_bytes(png(900, 1200))
    result = run_report(tmp_path / "page.png", tmp_path / "page.png", "--confirmed", tmp_path / "elsewhere.json",
                        "--out", tmp_path / "out")  # fmt: skip
    assert result.returncode == 2
    assert "elsewhere.json fits none of the pages" in result.stderr
