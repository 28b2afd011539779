"""The menus and the row of tools: every action of the window with its words and keys."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QMenu, QToolBar

from desktop.actions import Entry, make_action
from desktop.desk import Desk
from desktop.desk_line import DeskLine, State
from desktop.dialogs import AboutBox
from desktop.document import Document
from desktop.language import tr, tr_later
from desktop.overruled import counted_slip
from desktop.page_caption import TURN_LEFT, TURN_RIGHT
from desktop.pen_input import PenTool
from desktop.pen_page import is_pen_page
from desktop.turning import may_be_turned

if TYPE_CHECKING:
    from desktop.window import Window

__all__ = ["Menus"]

Entries = tuple[tuple[str, Entry] | None, ...]
_SHORT_WORDS = {
    "open": tr_later("Open pages"),
    "pen": tr_later("New pen page"),
    "type": tr_later("Type a working"),
    "png": tr_later("Save PNG"),
    "pdf": tr_later("Save PDF"),
    "student": tr_later("Hints only"),
}
_TITLES = (
    tr_later("&File"),
    tr_later("&Line"),
    tr_later("&Pen"),
    tr_later("&Check"),
    tr_later("&View"),
    tr_later("&Help"),
)
_TOOLS = ("open", "pen", "type", None, "sure", "next", None, "slip", "check", "student", None, "png", "pdf")


class Menus(QObject):
    """Makes the actions and keeps them in step with what can be done."""

    def __init__(self, window: Window, desk: Desk) -> None:
        super().__init__(window)
        self._window = window
        self._desk = desk
        self.actions: dict[str, QAction] = {}
        self.menus: list[QMenu] = []
        for title, entries in zip(_TITLES, _entries(window, desk), strict=True):
            menu = window.menuBar().addMenu(tr(title))
            self.menus.append(menu)
            for entry in entries:
                if entry is None:
                    menu.addSeparator()
                else:
                    self.actions[entry[0]] = make_action(entry[1], window)
                    menu.addAction(self.actions[entry[0]])
            if title == "&File":
                self._add_edit_menu()
            if title == "&Line":
                for view in (window.list, window.page):
                    view.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
                    view.customContextMenuRequested.connect(lambda at, v=view, m=menu: m.popup(v.mapToGlobal(at)))
        self._add_tools()

    def _add_edit_menu(self) -> None:
        menu = self._window.menuBar().addMenu(tr("&Edit"))
        self.menus.append(menu)
        undo = self._desk.undo_group.createUndoAction(self._window, tr("&Undo"))
        undo.setShortcuts([QKeySequence("Ctrl+Z")])
        redo = self._desk.undo_group.createRedoAction(self._window, tr("&Redo"))
        redo.setShortcuts([QKeySequence("Ctrl+Shift+Z"), QKeySequence("Ctrl+Y")])
        menu.addActions([undo, redo])

    def _add_tools(self) -> None:
        tools = QToolBar(tr("Tools"))
        tools.setMovable(False)
        tools.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextOnly)
        tools.setContextMenuPolicy(Qt.ContextMenuPolicy.PreventContextMenu)
        for name in _TOOLS:
            if name is None:
                tools.addSeparator()
            else:
                tools.addAction(self.actions[name])
        for name, words in _SHORT_WORDS.items():
            self.actions[name].setIconText(tr(words))
        self._window.addToolBar(tools)

    def refresh(self, document: Document | None, line: DeskLine | None) -> None:
        """Enable what can be done now, with the counts in the tools' words."""
        ready = document is not None and not self._desk.is_being_read(document)
        sure = len(document.sure_lines()) if document is not None else 0
        lines = document.lines if document is not None else ()
        doubtful = sum(ln.state in (State.DOUBTFUL, State.UNREAD) and not ln.struck_out for ln in lines)
        slips = [] if document is None else [v for v in document.verdicts if counted_slip(document, v) is not None]
        for name in ("png", "pdf", "copy", "close", "writing", "fit", "width", "pixels", "in", "out"):
            self.actions[name].setEnabled(document is not None)
        self.actions["add"].setEnabled(ready)
        for name in ("turn", "turn back"):
            self.actions[name].setEnabled(document is not None and may_be_turned(document))
        for name in ("write", "pen tool", "rubber tool", "select tool", "stroke+", "stroke-", "more strokes",
                     "fewer strokes", "inkml"):
            self.actions[name].setEnabled(document is not None and is_pen_page(document))
        for name in ("confirm", "edit", "symbol", "leave", "start", "carry", "up", "down", "split", "join", "redraw",
                     "remove", "move up", "move down"):
            self.actions[name].setEnabled(ready and line is not None)
        for number in range(1, 6):
            offered = number <= self._window.editor.offered
            self.actions[f"take{number}"].setEnabled(ready and line is not None and offered)
        self.actions["sure"].setEnabled(ready and sure > 0)
        self.actions["sure"].setIconText(tr("Confirm all that are sure ({count})", count=sure))
        self.actions["next"].setEnabled(ready and doubtful > 0)
        self.actions["next"].setIconText(tr("Next doubtful line ({count})", count=doubtful))
        self.actions["check"].setEnabled(ready and bool(lines))
        self.actions["slip"].setEnabled(bool(slips))
        for name in ("page+", "page-"):
            self.actions[name].setEnabled(self._window.pages.count() > 1)


def _taker(window: Window, number: int) -> Callable[[], None]:
    return lambda: window.editor.choose_candidate(number)


def _entries(window: Window, desk: Desk) -> tuple[Entries, ...]:
    return (
        (
            ("open", Entry("&Open pages…", ["Ctrl+O"], window.ask_to_open)),
            ("paste", Entry("&Paste picture or lines", ["Ctrl+V"], window.paste)),
            ("pen", Entry("New page for the &pen", ["Ctrl+Shift+N"], window.writing.new_page)),
            ("type", Entry("&Type a working…", ["Ctrl+T"], window.ask_for_working)),
            None,
            ("png", Entry("Save marked picture as P&NG…", ["Ctrl+S"], window.ask_to_save_png)),
            ("pdf", Entry("Save marked picture as P&DF…", ["Ctrl+Shift+S"], window.ask_to_save_pdf)),
            ("copy", Entry("&Copy marked picture", ["Ctrl+Shift+C"], window.copy_picture)),
            None,
            ("close", Entry("Take page &off the desk", ["Ctrl+W"], window.close_page)),
            ("quit", Entry("&Quit", ["Ctrl+Q"], window.close)),
        ),
        (
            ("confirm", Entry("&Confirm and go on", ["Return", "Enter"], window.confirm,
                              "Confirm the reading that is shown and go to the next doubtful line")),
            *((f"take{n}", Entry(tr("Take reading &{number} and go on", number=n), [f"{n}", f"Alt+{n}"],
                                 _taker(window, n - 1))) for n in range(1, 6)),
            ("edit", Entry("&Edit reading", ["F2"], window.editor.edit,
                           "Type the reading; the first doubtful symbol is selected")),
            ("symbol", Entry("&What else may the doubtful symbol be?", ["S", "Alt+S"], window.ask_about_symbol)),
            ("keypad", Entry("&Keypad, or hide it", ["Ctrl+K"], window.editor.toggle_keypad)),
            None,
            ("sure", Entry("Confirm &all that are sure", ["Ctrl+Return", "Ctrl+Enter"], window.confirm_sure)),
            ("next", Entry("Next &doubtful line", ["F3", "Ctrl+D"], window.next_doubtful)),
            ("down", Entry("Line &below", ["Alt+Down"], lambda: window.step_line(1))),
            ("up", Entry("Line a&bove", ["Alt+Up"], lambda: window.step_line(-1))),
            None,
            ("leave", Entry("&Leave line out, or take it in", ["Ctrl+L"], window.strike_out)),
            None,
            ("split", Entry("Split line (draw the cut)", ["Ctrl+B"], window.lines.split)),
            ("join", Entry("Join with the line below", ["Ctrl+J"], window.lines.join_below,
                           "Or click another line on the page with Shift")),
            ("add", Entry("Add a line (draw a box)", ["Ins", "Ctrl+I"], window.lines.add)),
            ("redraw", Entry("Redraw the line's box", ["Ctrl+Shift+B"], window.lines.redraw)),
            ("remove", Entry("Remove line", ["Del"], window.lines.remove)),
            ("move up", Entry("Move line up in the order", ["Ctrl+Shift+Up"], lambda: window.lines.move(-1))),
            ("move down", Entry("Move line down in the order", ["Ctrl+Shift+Down"], lambda: window.lines.move(1))),
            None,
            ("start", Entry("A &new working starts here, or not", ["Ctrl+N"], window.toggle_start)),
            ("carry", Entry("This line carries &on the one above, or not", ["Ctrl+Shift+J"], window.lines.carry_on,
                            "The two are then judged as one long line")),
        ),
        (
            ("write", Entry("&Write on the drawing, or look at it", ["F8"], window.writing.toggle)),
            ("pen tool", Entry("&Pen", ["Ctrl+Alt+P"], lambda: window.writing.take_tool(PenTool.WRITE))),
            ("rubber tool", Entry("&Rubber", ["Ctrl+Alt+R"], lambda: window.writing.take_tool(PenTool.ERASE))),
            ("select tool", Entry("&Select", ["Ctrl+Alt+S"], lambda: window.writing.take_tool(PenTool.SELECT))),
            None,
            ("stroke+", Entry("Select the &next stroke", ["Alt+Right"], lambda: window.writing.step_selection(1),
                              "Arrows move what is selected, Shift with arrows moves it further, Del rubs it out")),
            ("stroke-", Entry("Select the pre&vious stroke", ["Alt+Left"],
                              lambda: window.writing.step_selection(-1))),
            ("more strokes", Entry("&Take one stroke more", ["Alt+Shift+Right"],
                                   lambda: window.writing.extend_selection(1))),
            ("fewer strokes", Entry("Take one stroke &less", ["Alt+Shift+Left"],
                                    lambda: window.writing.extend_selection(-1))),
            None,
            ("inkml", Entry("Save drawing as &InkML…", ["Ctrl+Alt+I"], window.writing.ask_to_save)),
        ),
        (
            ("check", Entry("Check &now", ["F5"], window.check)),
            ("slip", Entry("Go to first &slip", ["F4", "Ctrl+G"], window.go_to_slip)),
            None,
            ("student", Entry("&Hints one at a time (student)", ["Ctrl+Shift+H"], window.verdicts.set_student,
                              checks=True)),
            ("hint", Entry("Next h&int", ["Ctrl+H"], window.verdicts.ask_for_hint)),
            ("claim", Entry("&True for all values?", ["Ctrl+Shift+E"], window.verdicts.toggle_claim,
                            "Takes the line as a claimed identity")),
            ("example", Entry("Co&unterexample, or hide it", ["Ctrl+E"], window.card.toggle_example)),
            None,
            ("right", Entry("Declare line &right", ["Ctrl+R"], lambda: window.card.declare(True))),
            ("wrong", Entry("Declare line &wrong", ["Ctrl+Shift+R"], lambda: window.card.declare(False))),
            ("unsaid", Entry("Take &my word back", ["Ctrl+U"], lambda: window.card.declare(None))),
            None,
            ("scheme", Entry("Mark &scheme…", ["Ctrl+M"], window.verdicts.ask_for_scheme)),
            ("award", Entry("&Award the suggested marks", ["Ctrl+Shift+M"], window.verdicts.award_suggested)),
            None,
            ("stop", Entry("S&top", ["Ctrl+."], desk.stop)),
        ),
        (
            ("writing", Entry("The &writing", ["Ctrl+3"], window.page.fit_writing)),
            ("fit", Entry("Whole &page", ["Ctrl+0"], window.page.fit)),
            ("width", Entry("Page &width", ["Ctrl+1"], window.page.fit_width)),
            ("pixels", Entry("&Full size", ["Ctrl+2"], window.page.zoom_to_pixels)),
            ("in", Entry("Zoom &in", ["Ctrl++", "Ctrl+="], window.page.zoom_in)),
            ("out", Entry("Zoom &out", ["Ctrl+-"], window.page.zoom_out)),
            None,
            ("turn", Entry("&Turn page a quarter right", [TURN_RIGHT], window.turning.right,
                           "Its lines are found and read again then; Undo takes it back")),
            ("turn back", Entry("Turn page a &quarter left", [TURN_LEFT], window.turning.left,
                                "Its lines are found and read again then; Undo takes it back")),
            None,
            ("page+", Entry("&Next page", ["Ctrl+PgDown"], lambda: window.step_page(1))),
            ("page-", Entry("P&revious page", ["Ctrl+PgUp"], lambda: window.step_page(-1))),
        ),
        (
            ("keys", Entry("&Keys", ["F1"], window.show_keys)),
            ("about", Entry("&About Firstslip", [], lambda: AboutBox(window).exec())),
        ),
    )  # fmt: skip
