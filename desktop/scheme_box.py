"""The window in which a teacher writes the mark scheme."""

from __future__ import annotations

from PySide6.QtGui import QFontDatabase, QKeySequence
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QLabel, QPlainTextEdit, QVBoxLayout, QWidget

from checker.errors import InputError
from desktop.language import tr, tr_later
from desktop.scheme_text import Scheme, read_scheme_text
from desktop.sentences import in_language
from desktop.theme import enlarge_targets
from desktop.wording import TEACHER_DECIDES

__all__ = ["SchemeBox"]

_HOW = tr_later(
    "One mark to a line: the mark, then the line that earns it, then words or ft, cao, exact, expanded, factorised "
    "after a semicolon. An empty line begins the scheme of the next working on the page; a single scheme serves all."
)
_EXAMPLE = "M1 2x=10 ; one term on each side\nA1 final x=5 ; ft\n\nM1 x(x+4) or x^2+4x\nA1 final x^2+4x ; cao"


class SchemeBox(QDialog):
    """Asks for a scheme; an empty one suggests no marks."""

    def __init__(self, text: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Mark scheme"))
        self.resize(620, 420)
        self.schemes: tuple[Scheme, ...] = ()
        how = QLabel(f"{tr(_HOW)} {tr(TEACHER_DECIDES)}")
        how.setWordWrap(True)
        self._text = QPlainTextEdit(text)
        self._text.setAccessibleName(tr("Mark scheme"))
        self._text.setTabChangesFocus(True)
        self._text.setFont(QFontDatabase.systemFont(QFontDatabase.SystemFont.FixedFont))
        self._text.setPlaceholderText(_EXAMPLE)
        self._problem = QLabel()
        self._problem.setWordWrap(True)
        self._problem.hide()
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        take = buttons.button(QDialogButtonBox.StandardButton.Ok)
        take.setText(tr("Suggest marks (Ctrl+Enter)"))
        take.setShortcut(QKeySequence("Ctrl+Return"))
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        for part in (how, self._text, self._problem, buttons):
            layout.addWidget(part)
        enlarge_targets(self)

    @property
    def text(self) -> str:
        return self._text.toPlainText()

    @property
    def problem(self) -> str:
        """Why the scheme was not taken; empty when it was."""
        return self._problem.text()

    def accept(self) -> None:
        try:
            self.schemes = read_scheme_text(self.text)
        except InputError as exc:
            self._problem.setText(in_language(str(exc)))
            self._problem.show()
            return
        super().accept()
