"""The lines of a document as rows of a list; holds no state of its own."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from statistics import median
from typing import Any

from PySide6.QtCore import QAbstractListModel, QModelIndex, QObject, QPersistentModelIndex, QPointF, QRectF, Qt
from PySide6.QtGui import QImage

from desktop.card import claim_style
from desktop.claims import Claim
from desktop.desk_line import STATE_WORDS, DeskLine
from desktop.document import Document
from desktop.doubts import doubts_of, marked_latex
from desktop.language import tr
from desktop.marked_picture import page_image
from desktop.maths import plain, tidy
from desktop.overruled import counted_style
from desktop.reveal import EVERYTHING, Reveal, shown_reason
from desktop.typed_page import is_typed
from desktop.verdict_style import VerdictStyle
from desktop.wording import heading

__all__ = ["LINE_ROLE", "ClaimOf", "LineRow", "LineRows", "by_hand_words"]

ClaimOf = Callable[[Document, int], Claim | None]
"""What is known of a line that is taken as a claim for all values; None for any other line."""

LINE_ROLE = int(Qt.ItemDataRole.UserRole) + 1
_CROP_PAD = 0.18
"""Share of a line's height that its crop shows around the box."""


@dataclass(frozen=True, slots=True)
class LineRow:
    """All that is shown of one line; the heading is empty but for the first line of a working.

    reason: why it has its verdict; is_slip: whether the card tells that, so that the row need not.

    usual_height: height of the page's usual line, in pixels of the picture, as a measure for all crops.
    crop_origin: top left corner of the crop on the page; ink_in_crop: the line's box in pixels of the crop.
    marked: the reading with its doubtful symbols underlined; doubt_boxes: their boxes in pixels of the crop.
    """

    number: int
    line: DeskLine
    crop: QImage | None
    usual_height: float
    style: VerdictStyle | None
    reason: str
    heading: str
    is_slip: bool
    marked: str
    crop_origin: QPointF
    ink_in_crop: QRectF
    doubt_boxes: tuple[QRectF, ...]


class LineRows(QAbstractListModel):
    """One row a line."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._document: Document | None = None
        self._rows: tuple[LineRow, ...] = ()
        self._crops: dict[tuple[int, int, int, int], QImage] = {}
        self._cut_from: object = None
        self._reveal = EVERYTHING
        self._claim_of: ClaimOf = _no_claim

    def set_claims(self, claim_of: ClaimOf) -> None:
        """Show claims for all values with the verdict on the claim, as their card does."""
        self._claim_of = claim_of

    def set_reveal(self, reveal: Reveal) -> None:
        """Tell so much of the slips and no more."""
        self._reveal = reveal
        self.refresh()

    def show_document(self, document: Document | None) -> None:
        """Show another document, or none."""
        self.beginResetModel()
        self._document = document
        self._crops = {}
        self._rows = self._built()
        self.endResetModel()

    def refresh(self) -> None:
        """Take in a change of the document."""
        rows = self._built()
        if len(rows) != len(self._rows):
            self.beginResetModel()
            self._rows = rows
            self.endResetModel()
        elif rows:
            self._rows = rows
            self.dataChanged.emit(self.index(0), self.index(len(rows) - 1))

    def row(self, index: int) -> LineRow:
        return self._rows[index]

    def rowCount(self, parent: QModelIndex | QPersistentModelIndex = QModelIndex()) -> int:  # noqa: B008
        return 0 if parent.isValid() else len(self._rows)

    def data(self, index: QModelIndex | QPersistentModelIndex, role: int = Qt.ItemDataRole.DisplayRole) -> Any:
        if not index.isValid() or index.row() >= len(self._rows):
            return None
        row = self._rows[index.row()]
        if role == LINE_ROLE:
            return row
        if role == Qt.ItemDataRole.DisplayRole:
            return tidy(row.line.latex)
        if role == Qt.ItemDataRole.AccessibleTextRole:
            return _spoken(row)
        return None

    def _built(self) -> tuple[LineRow, ...]:
        document = self._document
        if document is None:
            return ()
        usual = max(8.0, median([line.box.h for line in document.lines] or [8]))
        return tuple(self._row(document, index, line, usual) for index, line in enumerate(document.lines))

    def _row(self, document: Document, index: int, line: DeskLine, usual: float) -> LineRow:
        found = document.verdict_of(index)
        style, reason = counted_style(document, index), shown_reason(document, index, self._reveal)
        claim = None if style is None else self._claim_of(document, index)
        if claim is not None:
            style, reason = claim_style(claim), ""
        title = heading(document, found[0]) if found is not None and found[1] == 0 else ""
        if claim is not None and found is not None and len(found[0].lines) == 1:
            title = tr("One line, taken as a claim for all values.")
        pad = round(line.box.h * _CROP_PAD)
        corner = QPointF(max(0, line.box.x - pad), max(0, line.box.y - pad))
        return LineRow(
            number=index + 1, line=line, crop=self._crop(document, line), usual_height=usual,
            style=style, reason=reason, heading=title,
            is_slip=found is not None and found[0].report.lines[found[1]].slip is not None,
            marked=marked_latex(line), crop_origin=corner, ink_in_crop=QRectF(*line.box).translated(-corner),
            doubt_boxes=tuple(QRectF(*doubt.box).translated(-corner) for doubt in doubts_of(line)),
        )

    def _crop(self, document: Document, line: DeskLine) -> QImage | None:
        picture = document.picture
        if picture is None or is_typed(document) or line.box.w <= 1 or line.box.h <= 1:
            return None
        if picture is not self._cut_from:  # it was turned, or drawn anew
            self._crops, self._cut_from = {}, picture
        if line.box not in self._crops:
            x, y, w, h = line.box
            pad = round(h * _CROP_PAD)
            cut = picture[max(0, y - pad) : max(0, y + h + pad), max(0, x - pad) : max(0, x + w + pad)]
            if not cut.size:
                return None
            self._crops[line.box] = page_image(cut)
        return self._crops[line.box]


def by_hand_words(line: DeskLine) -> str:
    """What the confirmed lines of the same hand say against the reading; empty where they say nothing."""
    if not line.other_by_hand:
        return ""
    if line.latex == line.other_by_hand:
        return tr("reads otherwise by the hand of the confirmed lines")
    return tr("may read otherwise by the hand of the confirmed lines")


def _no_claim(document: Document, index: int) -> Claim | None:
    return None


def _spoken(row: LineRow) -> str:
    parts = [
        tr("Line {number}", number=row.number),
        plain(tidy(row.line.latex)) or tr("not read"),
        by_hand_words(row.line) or tr(STATE_WORDS[row.line.state]),
    ]
    if row.style is not None:
        parts.append(row.style.word)
    if row.reason:
        parts.append(row.reason)
    return ", ".join(parts)
