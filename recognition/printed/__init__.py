"""A second engine for printed lines: the package pix2tex, in an environment of its own, spoken to in JSON."""

from recognition.printed.reader import PrintedReader
from recognition.printed.settings import PrintedSettings

__all__ = ["PrintedReader", "PrintedSettings"]
