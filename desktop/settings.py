"""What the program remembers from one day to the next, where the platform keeps such things."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import QByteArray, QLocale, QSettings, QStandardPaths

__all__ = ["LANGUAGES", "Settings", "log_file", "sets_folder"]

_MOST_RECENT = 10
LANGUAGES = ("", "en", "de")
"""Languages to choose from; the empty one is that of the system."""


class Settings:
    """The settings, read and written at once; a value of another kind than expected counts as not set."""

    def __init__(self, store: QSettings | None = None) -> None:
        self._store = store or QSettings(
            QSettings.Format.IniFormat, QSettings.Scope.UserScope, "Firstslip", "Firstslip"
        )

    @property
    def recent(self) -> tuple[Path, ...]:
        """Files and sets opened last, newest first."""
        names = self._store.value("recent", [])
        if isinstance(names, str):  # Qt gives a list of one back as the one
            names = [names]
        return tuple(Path(name) for name in names if isinstance(name, str) and name) if isinstance(names, list) else ()

    def remember(self, paths: Sequence[Path]) -> None:
        """Put files at the head of the recent ones."""
        new = [path.absolute() for path in paths]
        merged = [*dict.fromkeys([*reversed(new), *self.recent])][:_MOST_RECENT]
        self._store.setValue("recent", [str(path) for path in merged])

    def forget_recent(self) -> None:
        """Empty the list of recent files."""
        self._store.remove("recent")

    @property
    def last_set(self) -> Path | None:
        """The set that lay on the desk last."""
        name = self._text("last_set")
        return Path(name) if name else None

    @last_set.setter
    def last_set(self, path: Path | None) -> None:
        self._store.setValue("last_set", "" if path is None else str(path.absolute()))

    @property
    def language(self) -> str:
        """One of LANGUAGES."""
        language = self._text("language")
        return language if language in LANGUAGES else ""

    @language.setter
    def language(self, language: str) -> None:
        self._store.setValue("language", language)

    @property
    def decimal_comma(self) -> bool:
        """Whether decimal numbers are shown with a comma; the system's way until it is chosen."""
        chosen = self._text("decimal_mark")
        return chosen == "," if chosen in (",", ".") else QLocale.system().decimalPoint() == ","

    @decimal_comma.setter
    def decimal_comma(self, wanted: bool) -> None:
        self._store.setValue("decimal_mark", "," if wanted else ".")

    @property
    def geometry(self) -> QByteArray:
        """Place and size of the window as Qt saves them; empty at first."""
        value = self._store.value("geometry")
        return value if isinstance(value, QByteArray) else QByteArray()

    @geometry.setter
    def geometry(self, geometry: QByteArray) -> None:
        self._store.setValue("geometry", geometry)

    def save(self) -> None:
        """Write now what is not written yet."""
        self._store.sync()

    def _text(self, name: str) -> str:
        value = self._store.value(name, "")
        return value if isinstance(value, str) else ""


def sets_folder() -> Path:
    """Where sets lie that the user has not named: in a folder of ours among the user's documents."""
    place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation)
    return Path(place or Path.home()) / "Firstslip"


def log_file() -> Path:
    """The file that tells what went wrong, in the place of the platform for such things."""
    place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.GenericDataLocation)
    return Path(place or Path.home()) / "firstslip" / "firstslip.log"
