"""`python -m desktop.translations` brings the .ts files in step with the code and makes the .qm files from them.

New texts come in unfinished and without words; texts that are gone are taken out. Qt's lrelease, which PySide6 brings,
makes the .qm files; the program needs only these.
"""

from __future__ import annotations

import os
import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import PySide6

from desktop.language import CONTEXT
from desktop.translations.catalogue import texts_of_desktop

_FOLDER = Path(__file__).parent
_HEAD = '<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n'


def update(path: Path) -> list[str]:
    """Bring one .ts file in step; gives the texts without a translation."""
    known = {}
    if path.exists():
        for message in ET.parse(path).iter("message"):
            known[message.findtext("source") or ""] = message.findtext("translation") or ""
    root = ET.Element("TS", version="2.1", language=path.stem.rpartition("_")[2], sourcelanguage="en")
    context = ET.SubElement(root, "context")
    ET.SubElement(context, "name").text = CONTEXT
    missing = []
    for text in texts_of_desktop():
        message = ET.SubElement(context, "message")
        ET.SubElement(message, "source").text = text
        translation = ET.SubElement(message, "translation")
        if known.get(text):
            translation.text = known[text]
        else:
            translation.set("type", "unfinished")
            missing.append(text)
    ET.indent(root, "")
    path.write_text(_HEAD + ET.tostring(root, encoding="unicode") + "\n", encoding="utf-8")
    return missing


def release(path: Path) -> None:
    """Make the .qm file of a .ts file; a program that is running keeps the old one, which it has mapped."""
    tool = Path(PySide6.__file__).parent / ("lrelease.exe" if sys.platform == "win32" else "lrelease")
    new = path.with_suffix(".qm.new")
    subprocess.run([tool, "-silent", path, "-qm", new], check=True)
    os.replace(new, path.with_suffix(".qm"))


if __name__ == "__main__":
    for file in sorted(_FOLDER.glob("*.ts")):
        for text in update(file):
            print(f"{file.name}: no translation yet: {text}")
        release(file)
