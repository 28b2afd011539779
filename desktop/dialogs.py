"""The small windows: a typed working, the keys, and about."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QFontDatabase, QGuiApplication, QKeySequence
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QLabel,
    QMenu,
    QPlainTextEdit,
    QPushButton,
    QTextBrowser,
    QVBoxLayout,
    QWidget,
)

from desktop.language import tr, tr_later, with_points
from desktop.theme import enlarge_targets
from desktop.wording import TEACHER_DECIDES

__all__ = ["AboutBox", "KeysBox", "TypedWorkingBox"]


_ABOUT = tr_later(
    "Reads worked algebra from a photo, a PDF or a pen drawing, finds the first line that does not follow, says which "
    "term is wrong and what it should be, and follows the carried error through the later lines."
)
_LICENCE = tr_later("MIT licence. The reader's weights carry a licence of their own, named in their model card.")


class TypedWorkingBox(QDialog):
    """Asks for lines of LaTeX, one a line."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Type a working"))
        self.resize(560, 380)
        words = QLabel(tr("One written line to a line, as LaTeX. An empty line starts a new working."))
        words.setWordWrap(True)
        self._text = QPlainTextEdit()
        self._text.setAccessibleName(tr("Lines of the working"))
        self._text.setTabChangesFocus(True)
        self._text.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont))
        self._text.setPlaceholderText("(3k+2)(k-5)\n=3k^2-15k+2k-10\n=3k^2-13k-10")
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        self._check = buttons.button(QDialogButtonBox.StandardButton.Ok)
        self._check.setText(tr("Check (Ctrl+Enter)"))
        self._check.setShortcut(QKeySequence("Ctrl+Return"))
        self._check.setEnabled(False)
        self._text.textChanged.connect(self._look)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.addWidget(words)
        layout.addWidget(self._text, 1)
        layout.addWidget(buttons)
        enlarge_targets(self)

    @property
    def lines(self) -> list[str]:
        """The lines; dollar signs and display brackets around a line are taken off, empty lines stay in between."""
        bare = (line.strip().removesuffix(r"\\").strip("$ ") for line in self._text.toPlainText().splitlines())
        inner = (line.removeprefix(r"\[").removesuffix(r"\]").replace("&", "").strip() for line in bare)
        lines = [line for line in inner if not line.startswith((r"\begin", r"\end"))]
        return [with_points(line) for line in lines] if any(lines) else []

    def set_text(self, text: str) -> None:
        self._text.setPlainText(text)

    def _look(self) -> None:
        self._check.setEnabled(bool(self.lines))


class KeysBox(QDialog):
    """All actions with their keys, made from the menus."""

    def __init__(self, menus: Sequence[QMenu], parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Keys"))
        metrics, room = self.fontMetrics(), self.screen().availableSize()
        keys = max((metrics.horizontalAdvance(_keys(a)) for menu in menus for a in menu.actions()), default=0) + 12
        self.resize(min(keys + metrics.averageCharWidth() * 58, room.width()), min(600, room.height()))
        view = QTextBrowser()
        view.setHtml("".join(_table(menu, keys) for menu in menus))
        close = QPushButton(tr("Close"))
        close.clicked.connect(self.accept)
        layout = QVBoxLayout(self)
        layout.addWidget(view, 1)
        layout.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
        enlarge_targets(self)


class AboutBox(QDialog):
    """What this program is, and who decides."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("About Firstslip"))
        version = QGuiApplication.applicationVersion() or tr("development copy")
        text = QLabel(
            f"<h3>Firstslip {escape(version)}</h3>"
            f"<p>{escape(tr(_ABOUT))}</p>"
            f"<p><b>{escape(tr(TEACHER_DECIDES))}</b></p>"
            f"<p>{escape(tr('It works offline: no page leaves this computer.'))}</p>"
            f"<p>{escape(tr(_LICENCE))}</p>"
        )
        text.setWordWrap(True)
        text.setMinimumWidth(440)
        close = QPushButton(tr("Close"))
        close.clicked.connect(self.accept)
        layout = QVBoxLayout(self)
        layout.addWidget(text)
        layout.addWidget(close, 0, Qt.AlignmentFlag.AlignRight)
        enlarge_targets(self)


def _table(menu: QMenu, keys: int) -> str:
    """The actions of a menu; the keys take so many pixels."""
    rows = "".join(_row(action, keys) for action in menu.actions() if action.text() and not action.isSeparator())
    return f"<h3>{escape(menu.title().replace('&', ''))}</h3><table cellpadding='3'>{rows}</table>"


def _keys(action: QAction) -> str:
    native = QKeySequence.SequenceFormat.NativeText
    return tr(" or ").join(key.toString(native) for key in action.shortcuts())


def _row(action: QAction, keys: int) -> str:
    return f"<tr><td width='{keys}'>{escape(_keys(action))}</td><td>{escape(action.text().replace('&', ''))}</td></tr>"
