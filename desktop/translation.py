"""Loads the translation of the user's language: our own texts and those of Qt's dialogs."""

from __future__ import annotations

import logging
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QLibraryInfo, QLocale, QTranslator

__all__ = ["FOLDER", "choose_locale", "install"]

log = logging.getLogger(__name__)

FOLDER = Path(__file__).parent / "translations"


def choose_locale(language: str, *, decimal_comma: bool) -> QLocale:
    """The program's locale: its language, and numbers with a comma or a point.

    Args:
        language: "en", "de", or "" for the system's.
    """
    locale = QLocale(language) if language else QLocale.system()
    if (locale.decimalPoint() == ",") != decimal_comma:
        locale = QLocale(QLocale.Language.German if decimal_comma else QLocale.Language.English)
    return locale


def install(application: QCoreApplication, language: str) -> bool:
    """Show texts in a language from now on; windows that are there already keep theirs.

    Args:
        language: "en", "de", or "" for the system's; one without a translation leaves English.
    Returns:
        Whether our own translation is in use.
    """
    wanted = QLocale(language) if language else QLocale.system()
    if wanted.language() == QLocale.Language.English:
        return False
    of_qt = QTranslator(application)
    if of_qt.load(wanted, "qtbase", "_", QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)):
        application.installTranslator(of_qt)
    ours = QTranslator(application)
    if not ours.load(wanted, "firstslip", "_", str(FOLDER)):
        log.info("no translation for %s", wanted.name())
        return False
    return application.installTranslator(ours)
