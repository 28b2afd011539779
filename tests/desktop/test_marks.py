"""Marks: told apart without colour, seen on any paper, drawn at the term."""

import itertools

import numpy as np
import pytest
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter

from checker.report import LineReport, Report, Slip
from desktop.desk_line import DeskLine, State
from desktop.document import Document, WorkingVerdict
from desktop.glyphs import paint_glyph
from desktop.marked_pdf import save_pdf
from desktop.marked_picture import marked_image, marked_page, save_png
from desktop.marks import place_marks
from desktop.places import token_spans
from desktop.verdict_style import CARRIED_ON, CHECK_READING, STYLES, contrast
from recognition.result import Box, Candidate, Token

PAPERS = ["#ffffff", "#f4ecd8", "#808080", "#202020", "#000000"]
ALL = [*STYLES.values(), CHECK_READING, CARRIED_ON]


def test_contrast_of_black_on_white_is_21():
    # WCAG 2.2: the ratio ranges from 1 to 21.
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#777777", "#ffffff") == pytest.approx(4.48, abs=0.005)  # from memory: the well-known near miss


@pytest.mark.parametrize("style", ALL, ids=lambda style: style.word)
def test_words_have_enough_contrast_in_both_schemes(style):
    # WCAG 2.2, 1.4.3: text 4.5 to 1. The dark ground is the darkest grey of common dark schemes and a lighter one.
    assert contrast(style.on_light, "#ffffff") >= 4.5
    for ground in ("#1d2023", "#2b2e33"):
        assert contrast(style.on_dark, ground) >= 4.5


def test_verdicts_differ_in_shape_word_and_colour():
    for one, other in itertools.combinations(ALL, 2):
        assert one.shape is not other.shape
        assert one.word != other.word
        assert one.on_light != other.on_light


@pytest.mark.parametrize("style", ALL, ids=lambda style: style.word)
@pytest.mark.parametrize("paper", PAPERS)
def test_mark_stands_out_from_any_paper(qapp, style, paper):
    """WCAG 2.2, 1.4.11: at least 3 to 1 between the mark or its halo and what lies next to it."""
    image = QImage(64, 64, QImage.Format.Format_RGB32)
    image.fill(QColor(paper))
    painter = QPainter(image)
    white = QColor("#ffffff")
    paint_glyph(painter, QRectF(12, 12, 40, 40), style.shape, QColor(style.on_light), ground=white, halo=True)
    painter.end()
    colours = {image.pixelColor(x, y).name() for x in range(64) for y in range(64)}
    assert style.on_light.lower() in colours
    assert contrast(style.on_light, "#ffffff") >= 3  # mark against its halo
    assert max(contrast(paper, style.on_light), contrast(paper, "#ffffff")) >= 3  # either against the paper
    assert "#ffffff" in colours


def test_shapes_look_different_without_colour(qapp):
    drawn = []
    for style in ALL:
        image = QImage(48, 48, QImage.Format.Format_RGB32)
        image.fill(QColor("#ffffff"))
        painter = QPainter(image)
        paint_glyph(painter, QRectF(4, 4, 40, 40), style.shape, QColor("#000000"), ground=QColor("#ffffff"))
        painter.end()
        drawn.append(np.frombuffer(image.constBits(), np.uint8).reshape(48, 48, 4)[:, :, 0] < 128)
    for one, other in itertools.combinations(drawn, 2):
        assert np.count_nonzero(one ^ other) > 30


def page_with_slip() -> Document:
    """Two written lines of 600 by 40 pixels; the slip is the term +8t at the right of the second."""
    lines = []
    for number, latex in enumerate(["( 5 - 2 t ) ( t + 4 )", "= 5 t + 2 0 - 2 t ^ { 2 } + 8 t"]):
        tokens, x, y = [], 100, 100 + 150 * number
        for text, _, _ in token_spans(latex):
            tokens.append(Token(text, 0.9, None if text in "{}^" else Box(x, y, 30, 40)))
            x += 0 if text in "{}^" else 40
        lines.append(DeskLine(Box(100, y, x - 100, 40), (Candidate(latex, 0.9, tuple(tokens)),), latex, State.READ))
    latex = lines[1].latex
    slip = Slip("sign-product", "+8t", (latex.index("+ 8"), len(latex)), "-8t", "-2t times +4 is -8t", "=5t+20-2t^2-8t")
    report = Report("", 1, (LineReport("start"), LineReport("slip", 0, "", None, slip)))
    picture = np.full((600, 1000, 3), 230, np.uint8)
    document = Document("candidate-7.jpg", 0, (1000, 600), picture, tuple(lines))
    document.show([WorkingVerdict((0, 1), report)], revision=0)
    return document


def test_slip_is_framed_at_its_term(qapp):
    document = page_with_slip()
    (mark,) = place_marks(document)
    # The second line's symbols are = 5 t + 2 0 - 2 t 2 + 8 t: the term's three are at 500, 540 and 580.
    term = QRectF(500, 250, 110, 40)
    assert mark.frame is not None
    assert mark.frame.contains(term)
    assert not mark.frame.contains(term.adjusted(-41, 0, 0, 0))
    assert not mark.label.intersects(QRectF(*document.lines[0].box))


def test_picture_changes_at_the_term_and_nowhere_left_of_it(qapp):
    image = marked_page(page_with_slip(), widest=1000)
    red = QColor(STYLES["slip"].on_light)
    reddish = [
        (x, y) for y in range(200, 340) for x in range(1000)
        if abs(image.pixelColor(x, y).red() - red.red()) + abs(image.pixelColor(x, y).green() - red.green()) < 40
    ]  # fmt: skip
    assert reddish
    assert min(x for x, _ in reddish) > 480


def test_label_stays_on_the_page_and_off_the_writing_when_a_line_fills_the_width(qapp):
    document = page_with_slip()
    wide = [DeskLine(Box(0, 100 + 150 * k, 1000, 40), line.candidates, line.latex, State.READ)
            for k, line in enumerate(document.lines)]  # fmt: skip
    document.lines = tuple(wide)
    (mark,) = place_marks(document)
    assert QRectF(0, 0, 1000, 600).contains(mark.label)
    assert not any(mark.label.intersects(QRectF(*line.box)) for line in document.lines)


def test_reason_is_written_under_the_picture(qapp):
    image = marked_image(page_with_slip())
    assert image.height() > 600 * image.width() / 1000 + 100


def test_marked_picture_is_saved_as_png_and_pdf(qapp, tmp_path):
    document = page_with_slip()
    save_png(document, tmp_path / "marked.png")
    save_pdf(document, tmp_path / "marked.pdf")
    assert QImage(str(tmp_path / "marked.png")).width() == 1000
    import pypdfium2

    with pypdfium2.PdfDocument(tmp_path / "marked.pdf") as pdf:
        assert len(pdf) == 1
        text = pdf[0].get_textpage().get_text_bounded()
    assert "First slip: line 2" in text  # the labels are annotations
    assert "teacher decides" in text


def test_picture_without_verdicts_says_so(qapp, tmp_path):
    document = page_with_slip()
    document.verdicts = ()
    assert place_marks(document) == ()
    assert marked_image(document).height() > 600
