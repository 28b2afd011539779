"""What the user does to the lines of the page that is shown: draw, split, join, remove, move."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QRectF, Slot

from desktop.desk_line import DeskLine
from desktop.document import Document
from desktop.language import tr, tr_later
from desktop.line_changes import CarryOn, InsertLine
from desktop.page_tool import PageTool, ToolKind
from desktop.typed_page import is_typed
from desktop.workings import carries_on, group_lines
from recognition.result import Box

if TYPE_CHECKING:
    from desktop.window import Window

__all__ = ["LineCommands"]

_TYPED = tr_later("This line was typed; change its text instead (F2).")


class LineCommands(QObject):
    """Turns keys and drawings into corrections."""

    def __init__(self, window: Window) -> None:
        super().__init__(window)
        self._window = window
        window.page.tool_finished.connect(self._take_tool)
        window.page.merge_wanted.connect(self.join_with)
        window.list.line_moved.connect(self.move_to)

    def add(self) -> None:
        """Draw a box round a line that was not found; in a typed working, type a line below the chosen one."""
        shown = self._window.document
        if shown is not None and is_typed(shown):
            self._add_typed(shown)
            return
        document = self._page()
        if document is None:
            return
        chosen = self._window.list.chosen
        if 0 <= chosen < len(document.lines):
            box = _free_box(document, chosen)
        else:
            width, height = document.size
            box = QRectF(width * 0.1, height * 0.1, width * 0.6, height * 0.05)
        self._start(ToolKind.ADD, box)

    def _add_typed(self, document: Document) -> None:
        at = self._window.list.chosen + 1
        self._window._desk.do(document, InsertLine(at, DeskLine(Box(0, 0, 1, 1), starts_working=False)))
        self._window.list.choose(at)
        self._window.editor.edit()

    def redraw(self) -> None:
        """Draw another box round the chosen line."""
        self._start_at_line(ToolKind.REDRAW)

    def split(self) -> None:
        """Draw a cut through the chosen line."""
        self._start_at_line(ToolKind.SPLIT)

    def join_below(self) -> None:
        """Make one line of the chosen one and the one below it."""
        self.join_with(self._window.list.chosen + 1)

    @Slot(int)
    def join_with(self, other: int) -> None:
        """Make one line of the chosen one and another."""
        document, chosen = self._page(), self._window.list.chosen
        if document is not None and chosen != other and all(0 <= n < len(document.lines) for n in (chosen, other)):
            self._window._desk.corrections.merge(document, (chosen, other))

    def remove(self) -> None:
        """Take the chosen line off the page."""
        document, chosen = self._window.document, self._window.list.chosen
        if document is not None and 0 <= chosen < len(document.lines):
            self._window._desk.corrections.drop(document, chosen)

    def move(self, step: int) -> None:
        """Move the chosen line up (-1) or down (1) in the order of reading."""
        chosen = self._window.list.chosen
        self.move_to(chosen, chosen + step)

    @Slot(int, int)
    def move_to(self, index: int, place: int) -> None:
        """Put a line at another place in the order of reading."""
        document = self._window.document
        if document is not None and 0 <= index < len(document.lines) and not self._window._desk.is_being_read(document):
            self._window._desk.corrections.move(document, index, place)

    def carry_on(self) -> None:
        """Say that the chosen line carries on the one above, with which it says one thing, or that it does not."""
        document, chosen = self._window.document, self._window.list.chosen
        if document is None or not 0 < chosen < len(document.lines):
            return
        lines = document.lines
        kept = [index for index in range(chosen) if not lines[index].struck_out]
        if not kept or lines[chosen].struck_out:
            return
        is_start = any(group[0] == chosen for group in group_lines(lines))
        joins = is_start or not carries_on(lines[kept[-1]], lines[chosen])
        starts = False if joins and is_start else lines[chosen].starts_working
        self._window._desk.do(document, CarryOn(chosen, joins, starts))

    def _start_at_line(self, kind: ToolKind) -> None:
        document, chosen = self._page(), self._window.list.chosen
        if document is not None and 0 <= chosen < len(document.lines):
            self._start(kind, QRectF(*document.lines[chosen].box))

    def _start(self, kind: ToolKind, box: QRectF) -> None:
        self._window.page.start_tool(kind, box)

    def _page(self) -> Document | None:
        """The page that is shown, where lines can be cut out of it."""
        document = self._window.document
        if document is None or self._window._desk.is_being_read(document):
            return None
        if is_typed(document) or (document.picture is None and not document.strokes):
            self._window.notice.say(tr(_TYPED))
            return None
        return document

    @Slot(object)
    def _take_tool(self, tool: PageTool | None) -> None:
        self._window.list.setFocus()
        document, chosen = self._page() if tool is not None else None, self._window.list.chosen
        if tool is None or document is None:
            return
        corrections = self._window._desk.corrections
        if tool.kind is ToolKind.ADD:
            corrections.add(document, tool.box)
        elif tool.kind is ToolKind.REDRAW:
            corrections.redraw(document, chosen, tool.box)
        else:
            corrections.split(document, chosen, tool.cut)


def _free_box(document: Document, chosen: int) -> QRectF:
    """A box under the chosen line where no other line stands, else under the lowest line, within the page."""
    x, y, w, h = document.lines[chosen].box
    others = [QRectF(*line.box) for n, line in enumerate(document.lines) if n != chosen]
    box = QRectF(x, y + 1.3 * h, w, h)
    if any(other.intersects(box) for other in others):
        box.moveTop(max(other.bottom() for other in [*others, QRectF(x, y, w, h)]) + 0.3 * h)
    box.moveTop(max(0.0, min(box.top(), document.size[1] - h)))
    return box
