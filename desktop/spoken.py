"""The language of a run without a window: the texts of our translation, read without Qt."""

from __future__ import annotations

import os
import xml.etree.ElementTree as ET
from collections.abc import Mapping
from functools import cache
from pathlib import Path

__all__ = ["RUN_LANGUAGES", "has_comma", "language_of_environment", "texts_in"]

RUN_LANGUAGES = ("en", "de")
_FOLDER = Path(__file__).parent / "translations"
_COMMAS = frozenset({"de"})
"""Languages that write decimal numbers with a comma."""


def language_of_environment(environment: Mapping[str, str] = os.environ) -> str:
    """The language that the environment asks for, English where it is none of ours.

    Source: POSIX.1-2017, Base Definitions, 8.2: LC_ALL stands above LC_MESSAGES, that above LANG.
    """
    wanted = next((value for name in ("LC_ALL", "LC_MESSAGES", "LANG") if (value := environment.get(name))), "")
    language = wanted.partition(".")[0].partition("@")[0].partition("_")[0].lower()
    return language if language in RUN_LANGUAGES else "en"


@cache
def texts_in(language: str) -> Mapping[str, str]:
    """Our texts and what they are in a language; none for English."""
    path = _FOLDER / f"firstslip_{language}.ts"
    if not path.is_file():
        return {}
    messages = ET.parse(path).iter("message")
    return {message.findtext("source") or "": message.findtext("translation") or "" for message in messages}


def has_comma(language: str) -> bool:
    """Whether decimal numbers have a comma in a language."""
    return language in _COMMAS
