"""The document's changes on Qt's undo stack."""

from __future__ import annotations

from PySide6.QtGui import QUndoCommand

from desktop.document import AnyChange, Document
from desktop.language import tr

__all__ = ["ChangeCommand"]


class ChangeCommand(QUndoCommand):
    """One change of a document; the stack does it when it is pushed."""

    def __init__(self, document: Document, change: AnyChange) -> None:
        super().__init__(tr(change.name))
        self._document = document
        self._change: AnyChange | None = change

    def redo(self) -> None:
        if self._change is not None:
            change, self._change = self._change, None
            self._document.do(change)
        else:
            self._document.redo()

    def undo(self) -> None:
        self._document.undo()
