"""Pen strokes: InkML in and out, lines from strokes, and the picture of a drawing."""

from recognition.ink.cutting import InkCutter
from recognition.ink.inkml import ink_from_inkml, inkml_from_ink, read_inkml, write_inkml
from recognition.ink.lines import InkLine, InkLines, strokes_to_lines
from recognition.ink.picture import InkPicture, render_page
from recognition.ink.strokes import Ink, Stroke, StrokeGroup

__all__ = [
    "Ink",
    "InkCutter",
    "InkLine",
    "InkLines",
    "InkPicture",
    "Stroke",
    "StrokeGroup",
    "ink_from_inkml",
    "inkml_from_ink",
    "read_inkml",
    "render_page",
    "strokes_to_lines",
    "write_inkml",
]
