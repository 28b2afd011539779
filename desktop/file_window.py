"""What the window does with files: opens, pastes, drops and saves them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import QMimeData, Signal, Slot
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QGuiApplication, QImage
from PySide6.QtWidgets import QFileDialog, QMainWindow

from desktop.desk import Desk
from desktop.dialogs import TypedWorkingBox
from desktop.document import Document
from desktop.language import tr, tr_later
from desktop.notice import Notice
from desktop.page_list import PageList, page_name
from desktop.reveal import EVERYTHING, Reveal
from desktop.store_file import is_set

__all__ = ["FileWindow"]

_OPENABLE = tr_later("Pages (*.jpg *.jpeg *.png *.tif *.tiff *.webp *.bmp *.pdf *.inkml *.firstslip);;All files (*)")


class FileWindow(QMainWindow):
    """The part of the window that takes files in and gives them out; what it shows is built on it."""

    set_asked = Signal(object)
    files_opened = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._document: Document | None = None
        self.may_close: Callable[[], bool] = lambda: True
        self.pages = PageList()
        self.notice = Notice()
        self.setAcceptDrops(True)

    @property
    def reveal(self) -> Reveal:
        """How much of slips is told, in the window and in what is saved of it."""
        return EVERYTHING

    def open_files(self, paths: Sequence[Path]) -> None:
        """Open files on the desk; a set takes the place of what lies there."""
        sets = [path for path in paths if is_set(path)]
        if not sets:
            self._desk.open(paths)
        elif len(paths) > 1:
            self.notice.say(tr("Open a set by itself, and then the pages that belong in it."))
            return
        for path in sets:
            self.set_asked.emit(path)
        self.files_opened.emit(list(paths))

    def ask_to_open(self) -> None:
        names, _ = QFileDialog.getOpenFileNames(self, tr("Open pages"), "", tr(_OPENABLE))
        self.open_files([Path(name) for name in names])

    def paste(self) -> None:
        """Open what lies on the clipboard: a picture, files, or lines of LaTeX."""
        data = QGuiApplication.clipboard().mimeData()
        if data is None or not self._take_in(data):
            self.notice.say(tr("There is no picture, file or text on the clipboard. Copy one first, then paste again."))

    def ask_for_working(self, text: str = "") -> None:
        box = TypedWorkingBox(self)
        box.set_text(text)
        if box.exec():
            self._desk.add_typed(box.lines)
            self.pages.setCurrentRow(len(self._desk.documents) - 1)

    def ask_to_save_png(self) -> None:
        self._ask_to_save("PNG", "png")

    def ask_to_save_pdf(self) -> None:
        self._ask_to_save("PDF", "pdf")

    def save_picture(self, path: Path) -> None:
        """Save the marked picture under a name that ends in .png or .pdf, while the window goes on."""
        if self._document is not None:
            self._desk.save(self._document, path, self.reveal)

    def copy_picture(self) -> None:
        if self._document is not None:
            self._desk.copy(self._document, self.reveal)

    @Slot(object)
    def _on_saved(self, name: str) -> None:
        self.statusBar().showMessage(tr("Saved {name}.", name=name), 6000)

    @Slot(object)
    def _on_copied(self, image: QImage) -> None:
        QGuiApplication.clipboard().setImage(image)
        self.statusBar().showMessage(tr("The marked picture is on the clipboard."), 6000)

    def close_page(self) -> None:
        """Take the page off the desk; its file is left alone."""
        if self._document is not None:
            self._desk.remove(self._document)

    def _ask_to_save(self, kind: str, ending: str) -> None:
        if self._document is None:
            return
        suggestion = tr("{name} marked", name=page_name(self._document)) + f".{ending}"
        title, wanted = tr("Save marked picture as {kind}", kind=kind), f"{kind} (*.{ending})"
        name, _ = QFileDialog.getSaveFileName(self, title, suggestion, wanted)
        if name:
            path = Path(name)
            self.save_picture(path if path.suffix.lower() == f".{ending}" else path.with_name(f"{path.name}.{ending}"))

    def _take_in(self, data: QMimeData) -> bool:
        files = [Path(url.toLocalFile()) for url in data.urls() if url.isLocalFile()]
        if files:
            self.open_files(files)
        elif data.hasImage():
            image = data.imageData()
            if isinstance(image, QImage) and not image.isNull():
                self._desk.open_picture(image)
        elif data.hasText() and data.text().strip():
            self.ask_for_working(data.text())
        else:
            return False
        return True

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if event.mimeData().hasUrls() or event.mimeData().hasImage():
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        if self._take_in(event.mimeData()):
            event.acceptProposedAction()

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self.may_close():
            event.ignore()
            return
        self._desk.close()
        super().closeEvent(event)
