"""Writing with a pen: the tools, and the paper under them."""

from __future__ import annotations

from PySide6.QtCore import Signal, Slot
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QLabel, QToolButton, QVBoxLayout, QWidget

from desktop.document import Document
from desktop.language import tr, tr_later
from desktop.marks import place_marks, text_size
from desktop.pen_canvas import PenCanvas
from desktop.pen_drawing import Background
from desktop.pen_input import PenTool
from desktop.reveal import EVERYTHING, Reveal

__all__ = ["PenView"]

_LEAST_TARGET = 30
_TOOLS = (
    (PenTool.WRITE, tr_later("Pen"), tr_later("Write; scribbling over writing scratches it out")),
    (PenTool.ERASE, tr_later("Rubber"), tr_later("Rub out whole strokes, as the pen's eraser end does")),
    (PenTool.SELECT, tr_later("Select"), tr_later("Draw round strokes, then drag them or press Delete")),
)
_PAPERS = (
    (Background.SQUARED, tr_later("Squared")),
    (Background.RULED, tr_later("Ruled")),
    (Background.PLAIN, tr_later("Plain")),
)


class PenView(QWidget):
    """Shows one document to write on; strokes are told and kept by the document."""

    strokes_changed = Signal(object, str)
    pen_down = Signal()
    pen_up = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._document: Document | None = None
        self._reveal = EVERYTHING
        self._shown: tuple[object, object, object] = (None, None, None)
        self.canvas = PenCanvas()
        self.canvas.strokes_changed.connect(self.strokes_changed)
        self.canvas.pen_down.connect(self.pen_down)
        self.canvas.pen_up.connect(self.pen_up)
        self.tools: dict[PenTool, QToolButton] = {}
        self._bar = QHBoxLayout()
        self._bar.setContentsMargins(6, 4, 6, 4)
        for tool, words, tip in _TOOLS:
            button = QToolButton()
            button.setText(tr(words))
            button.setToolTip(tr(tip))
            button.setCheckable(True)
            button.setAutoExclusive(True)
            button.setMinimumHeight(_LEAST_TARGET)
            button.clicked.connect(lambda checked=False, tool=tool: self.take_tool(tool))
            self.tools[tool] = button
            self._bar.addWidget(button)
        self.tools[PenTool.WRITE].setChecked(True)
        self._bar.addStretch(1)
        paper = QLabel(tr("Paper"))
        self.paper = QComboBox()
        self.paper.setMinimumHeight(_LEAST_TARGET)
        for background, words in _PAPERS:
            self.paper.addItem(tr(words), background.value)
        self.paper.currentIndexChanged.connect(self._take_paper)
        paper.setBuddy(self.paper)
        self._bar.addWidget(paper)
        self._bar.addSpacing(4)
        self._bar.addWidget(self.paper)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(self._bar)
        layout.addWidget(self.canvas, 1)

    def show_document(self, document: Document | None) -> None:
        """Show another page."""
        self._document = document
        self._shown = (None, None, None)
        self.refresh()
        self.canvas.fit_width()

    def refresh(self) -> None:
        """Take in a change of the page."""
        document = self._document
        if document is None:
            return
        self.canvas.show_strokes(document.strokes, document.size)
        shown = (document.lines, document.verdicts, self._reveal)
        if all(a is b for a, b in zip(shown, self._shown, strict=True)):
            return
        self._shown = shown
        self.canvas.show_marks(place_marks(document, reveal=self._reveal), text_size(document))

    def set_reveal(self, reveal: Reveal) -> None:
        """Tell so much of the slips and no more."""
        self._reveal = reveal
        self.refresh()

    def take_tool(self, tool: PenTool) -> None:
        """Write, rub out or select from now on."""
        self.tools[tool].setChecked(True)
        self.canvas.input.tool = tool
        self.canvas.setFocus()

    @Slot(int)
    def _take_paper(self, index: int) -> None:
        self.canvas.set_background(_PAPERS[index][0])
