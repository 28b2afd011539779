"""What the user does on a page for the pen: new page, write or look, save as InkML."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Slot
from PySide6.QtWidgets import QFileDialog

from desktop.language import tr
from desktop.page_changes import SetStrokes
from desktop.page_list import page_name
from desktop.pen_input import PenTool
from desktop.pen_page import PEN_PAGE, is_pen_page
from recognition.errors import InputError
from recognition.ink import Ink, Stroke, write_inkml

if TYPE_CHECKING:
    from desktop.window import Window

__all__ = ["PenCommands"]

_NO_STROKES = "There is nothing written with the pen on this page. Take a page for the pen (Ctrl+Shift+N) first."


class PenCommands(QObject):
    """Joins the pen view, the document and its undo stack."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        window.pen.strokes_changed.connect(self._take_strokes)
        window.pen.pen_down.connect(window._desk.pen.pen_down)
        window.pen.pen_up.connect(window._desk.pen.pen_up)

    def new_page(self) -> None:
        """Take an empty page to write on."""
        self._window._desk.add_pen_page()
        self._window.pages.setCurrentRow(len(self._window._desk.documents) - 1)
        self.write()

    def toggle(self) -> None:
        """Write on a drawing, or look at it as a page."""
        document = self._window.document
        if document is None or not is_pen_page(document):
            self._window.notice.say(_NO_STROKES)
        elif self._window.is_writing:
            self._window.show_middle(document)
        else:
            self.write()

    def write(self) -> None:
        """Bring the paper to the front."""
        document = self._window.document
        if document is not None and is_pen_page(document):
            self._window.show_middle(document, writes=True)
            self._window.pen.canvas.setFocus()

    def take_tool(self, tool: PenTool) -> None:
        if self._window.is_writing:
            self._window.pen.take_tool(tool)

    def step_selection(self, by: int) -> None:
        """Select the next (1) or the previous (-1) stroke."""
        if self._window.is_writing:
            self._window.pen.canvas.setFocus()
            self._window.pen.canvas.step_selection(by)

    def extend_selection(self, by: int) -> None:
        """Take one stroke more into the selection (1), or one less (-1)."""
        if self._window.is_writing:
            self._window.pen.canvas.setFocus()
            self._window.pen.canvas.extend_selection(by)

    def ask_to_save(self) -> None:
        """Save the strokes as InkML."""
        document = self._window.document
        if document is None or not document.strokes:
            self._window.notice.say(_NO_STROKES)
            return
        suggestion = f"{page_name(document)}.inkml"
        name, _ = QFileDialog.getSaveFileName(self._window, tr("Save drawing as InkML"), suggestion, "InkML (*.inkml)")
        if name:
            path = Path(name)
            self.save(path if path.suffix.lower() == ".inkml" else path.with_name(f"{path.name}.inkml"))

    def save(self, path: Path) -> None:
        """Save the strokes of the page as InkML."""
        document = self._window.document
        if document is None or not document.strokes:
            return
        try:
            write_inkml(Ink(document.strokes, unit="dev"), path)
        except InputError as exc:
            self._window.notice.say(str(exc))
            return
        self._window.statusBar().showMessage(tr("Saved {name}.", name=path.name), 6000)

    def starts_writing(self) -> bool:
        """Whether the page that is shown is one to write on at once."""
        document = self._window.document
        return document is not None and document.file.startswith(PEN_PAGE)

    @Slot(object, str)
    def _take_strokes(self, strokes: tuple[Stroke, ...], name: str) -> None:
        document = self._window.document
        if document is not None and strokes is not document.strokes:
            self._window._desk.do(document, SetStrokes(strokes, document.lines, name))
