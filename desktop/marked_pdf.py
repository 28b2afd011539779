"""A marked page as PDF: the photo with the strip of reasons as the page, each mark as annotations over it.

A frame is a Square, the line to a label an Ink, the label a FreeText, the tint of a wrong term a Highlight; each has
its own appearance, is printed, and says its reason, so that any reader shows, lists and prints them.

Source: ISO 32000-1:2008, 8.10 (form XObjects), 12.5.2 to 12.5.6 (annotations and their appearance streams).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QBuffer, QByteArray, QIODevice, QMarginsF, QPointF, QRectF, QSizeF
from PySide6.QtGui import QColor, QPageSize, QPainter, QPdfWriter

from desktop.document import Document
from desktop.language import tr
from desktop.marked_picture import paint_photo, whole_size
from desktop.marks import Mark, leader_points, paint_frame, paint_label, paint_leader, place_marks, text_size
from desktop.maths import plain
from desktop.pdf_objects import PdfObjects, number, text_string
from desktop.reason_strip import paint_strip
from desktop.reveal import EVERYTHING, Reveal, shown_reason
from desktop.whole_file import write_whole
from recognition.result import Tick, no_tick

__all__ = ["marked_pdf", "save_pdf"]

_WIDTH_PT = 595
"""Points of the page's width: that of A4."""
_RESOLUTION = 300
_PRINTED = 4
"""Annotation flag 3, Print."""
_TINT = 0.25
"""Share of the mark's colour in the tint over a wrong term."""


@dataclass(frozen=True, slots=True)
class _Piece:
    """One annotation before it is written: its kind, where it lies, what it says, and how it is drawn.

    keys: entries of its dictionary beyond those that all have. paint: None for a tint.
    """

    kind: str
    area: QRectF
    contents: str
    name: str
    colour: QColor
    keys: bytes = b""
    paint: Callable[[QPainter], None] | None = None


def save_pdf(
    document: Document, path: Path, *, reveal: Reveal = EVERYTHING, tick: Tick = no_tick
) -> None:
    """Write the marked page; in any thread.

    Args:
        document: the page; a snapshot where the user may go on meanwhile.
        path: the file.
        reveal: how much of slips is told.
        tick: told of (done, total) steps; raises to stop, and then no file is written.
    Raises:
        OSError: the file cannot be written.
    """
    title = tr("{name} marked", name=Path(document.file).stem)
    content = marked_pdf([document], title=title, reveal=reveal, tick=tick)
    tick(1, 1)
    write_whole(path, content)


def marked_pdf(
    documents: Iterable[Document], *, title: str = "", reveal: Reveal = EVERYTHING, tick: Tick = no_tick
) -> bytes:
    """Marked pages as one PDF file.

    Args:
        documents: at least one page, each with its picture; a page may be made when it is asked for.
        title: of the file.
        reveal, tick: as for `save_pdf`.
    """
    content = QByteArray()
    buffer = QBuffer(content)
    buffer.open(QIODevice.OpenModeFlag.WriteOnly)
    writer = QPdfWriter(buffer)
    writer.setCreator("Firstslip")
    writer.setTitle(title)
    writer.setPageMargins(QMarginsF(0, 0, 0, 0))
    writer.setResolution(_RESOLUTION)
    sheets: list[tuple[float, float, list[_Piece]]] = []
    painter = QPainter()
    try:
        for document in documents:
            sheets.append(_draw(writer, painter, document, reveal, tick))
    finally:
        if painter.isActive():
            painter.end()  # before the writer is let go, also when the user stops it
    buffer.close()
    return _annotated(PdfObjects(bytes(content.data())), sheets)


def _draw(
    writer: QPdfWriter, painter: QPainter, document: Document, reveal: Reveal, tick: Tick
) -> tuple[float, float, list[_Piece]]:
    """Draw a page, and each of its marks on a page of its own: points a pixel, height in points, the marks."""
    size = whole_size(document, reveal)
    scale = _WIDTH_PT / size.width()
    height = max(3, round(size.height() * scale))
    _turn_page(writer, painter, _WIDTH_PT, height)
    to_device = writer.width() / size.width()
    painter.scale(to_device, to_device)
    paint_photo(painter, document, tick)
    paint_strip(painter, document, reveal)
    pieces = _pieces(document, reveal, scale, height)
    for piece in pieces:
        if piece.paint is not None:
            width_pt, height_pt = _points(piece.area, scale)
            _turn_page(writer, painter, width_pt, height_pt)
            painter.scale(to_device, to_device)
            painter.translate(-piece.area.topLeft())
            piece.paint(painter)
    return scale, height, pieces


def _turn_page(writer: QPdfWriter, painter: QPainter, width: int, height: int) -> None:
    size = QPageSize(QSizeF(width, height), QPageSize.Unit.Point, "", QPageSize.SizeMatchPolicy.ExactMatch)
    writer.setPageSize(size)
    if painter.isActive():
        writer.newPage()
        painter.resetTransform()
    else:
        painter.begin(writer)


def _points(area: QRectF, scale: float) -> tuple[int, int]:
    return max(3, int(area.width() * scale) + 1), max(3, int(area.height() * scale) + 1)


def _pieces(document: Document, reveal: Reveal, scale: float, height: float) -> list[_Piece]:
    text = text_size(document)
    marks = place_marks(document, reveal=reveal)
    tints, lines, frames, labels = [], [], [], []
    for mark in marks:
        colour = QColor(mark.style.on_light)
        name = f"firstslip-{document.page + 1}-{mark.line + 1}"
        reason = _reason(document, mark, reveal)
        border = b"/BS << /W %s >>" % number(text * 0.14 * scale)
        if mark.frame is not None:
            area = mark.frame.adjusted(-text * 0.3, -text * 0.3, text * 0.3, text * 0.3)
            frames.append(_Piece("Square", area, reason, f"{name}-frame", colour, border,
                                 lambda painter, mark=mark: paint_frame(painter, mark, text=text)))  # type: ignore[misc]
            if mark.is_term:
                tints.append(_Piece("Highlight", mark.frame, reason, f"{name}-term", colour,
                                    b"/QuadPoints [%s]" % _quad(mark.frame, scale, height)))  # fmt: skip
        points = leader_points(mark, text=text)
        if points:
            area = _around(points).adjusted(-text * 0.3, -text * 0.3, text * 0.3, text * 0.3)
            path = b" ".join(_place(point, scale, height) for point in points)
            lines.append(_Piece("Ink", area, reason, f"{name}-line", colour, b"/InkList [[%s]] %s" % (path, border),
                                lambda painter, mark=mark: paint_leader(painter, mark, text=text)))  # type: ignore[misc]
        area = mark.label.adjusted(-text * 0.1, -text * 0.1, text * 0.1, text * 0.1)
        style = b"/DA (/Helv %s Tf %s rg) /Q 0 /BS << /W %s >>" % (
            number(text * scale), _rgb(colour), number(text * 0.07 * scale)
        )  # fmt: skip
        labels.append(_Piece("FreeText", area, " ".join((_word(mark), reason)), f"{name}-label", colour, style,
                             lambda painter, mark=mark: paint_label(painter, mark, text=text)))  # type: ignore[misc]
    return [*tints, *lines, *frames, *labels]


def _word(mark: Mark) -> str:
    """The label's words; where no more is said, its reason says the same again."""
    advice = f"; {mark.advice.strip()} {plain(mark.should_be)}" if mark.should_be else ""
    return f"{mark.style.short}{advice}."


def _reason(document: Document, mark: Mark, reveal: Reveal) -> str:
    """What the user reads of a mark; the line is counted from 1, as on the desk."""
    return tr(
        "Line {number}: {word}. {line_reason}",
        number=mark.line + 1,
        word=mark.style.word,
        line_reason=shown_reason(document, mark.line, reveal),
    ).strip()


# Writing ------------------------------------------------------------------------------------------------------------


def _annotated(pdf: PdfObjects, sheets: Sequence[tuple[float, float, list[_Piece]]]) -> bytes:
    """Turn the pages that hold marks into appearances of annotations on the page before them."""
    drawn = iter(pdf.pages())
    kept = []
    for scale, height, pieces in sheets:
        page = next(drawn)
        kept.append(page)
        annotations = []
        for piece in pieces:
            form = _tint_form(pdf, piece, scale) if piece.paint is None else _form(pdf, next(drawn))
            annotations.append(pdf.add(_annotation(piece, form, page, scale, height)))
        pdf[pdf.referred(page, b"Annots")] = b"[" + b" ".join(b"%d 0 R" % key for key in annotations) + b"]"
    pdf.keep_pages(kept)
    return pdf.to_bytes()


def _form(pdf: PdfObjects, page: int) -> int:
    """Make a form XObject of a page's content; the page itself is taken out. Gives the form's number."""
    content, resources = pdf.referred(page, b"Contents"), pdf.referred(page, b"Resources")
    box = re.search(rb"/MediaBox \[([^\]]*)\]", pdf[page])
    assert box is not None
    head = b"<<\n/Type /XObject /Subtype /Form /BBox [%s] /Resources %d 0 R" % (box[1], resources)
    pdf[content] = pdf[content].replace(b"<<", head, 1)
    pdf.remove([pdf.referred(page, b"Annots"), page])
    return content


def _tint_form(pdf: PdfObjects, piece: _Piece, scale: float) -> int:
    width, height = (number(side) for side in _points(piece.area, scale))
    parts = (piece.colour.redF(), piece.colour.greenF(), piece.colour.blueF())
    pale = b" ".join(number(1 - _TINT * (1 - part)) for part in parts)
    drawing = b"/Tint gs %s rg 0 0 %s %s re f" % (pale, width, height)
    resources = b"<< /ExtGState << /Tint << /Type /ExtGState /BM /Multiply >> >> >>"
    return pdf.add(
        b"<< /Type /XObject /Subtype /Form /BBox [0 0 %s %s] /Resources %s /Group << /S /Transparency >> "
        b"/Length %d >>\nstream\n%s\nendstream" % (width, height, resources, len(drawing), drawing)
    )


def _annotation(piece: _Piece, form: int, page: int, scale: float, height: float) -> bytes:
    width_pt, height_pt = _points(piece.area, scale)
    left, top = piece.area.left() * scale, height - piece.area.top() * scale
    rect = b" ".join(number(side) for side in (left, top - height_pt, left + width_pt, top))
    return (
        b"<< /Type /Annot /Subtype /%s /Rect [%s] /P %d 0 R /F %d /C [%s] /T %s /Subj %s /NM %s /Contents %s %s "
        b"/AP << /N %d 0 R >> >>"
    ) % (
        piece.kind.encode(), rect, page, _PRINTED, _rgb(piece.colour), text_string("Firstslip"),
        text_string(tr("Suggestion: the teacher decides")), text_string(piece.name), text_string(piece.contents),
        piece.keys, form,
    )  # fmt: skip


def _rgb(colour: QColor) -> bytes:
    return b" ".join(number(part) for part in (colour.redF(), colour.greenF(), colour.blueF()))


def _place(point: QPointF, scale: float, height: float) -> bytes:
    return b"%s %s" % (number(point.x() * scale), number(height - point.y() * scale))


def _quad(area: QRectF, scale: float, height: float) -> bytes:
    """Corners in the order that readers expect: upper left, upper right, lower left, lower right."""
    corners = (area.topLeft(), area.topRight(), area.bottomLeft(), area.bottomRight())
    return b" ".join(_place(corner, scale, height) for corner in corners)


def _around(points: Sequence[QPointF]) -> QRectF:
    left, top = min(p.x() for p in points), min(p.y() for p in points)
    return QRectF(left, top, max(p.x() for p in points) - left, max(p.y() for p in points) - top)
