"""From a photo, scan or PDF to one cleaned picture for each written line, with where it was on the original."""

from recognition.page.cutting import LineCutter
from recognition.page.finding import find_lines
from recognition.page.found import FoundPage, LineCrop
from recognition.page.opening import Sheet, open_pages

__all__ = ["NOTHING_FOUND", "FoundPage", "LineCrop", "LineCutter", "Sheet", "find_lines", "open_pages"]

NOTHING_FOUND = (
    "No writing was found on this page. Check that the photo shows the written side, sharp and near enough to read, "
    "and take it again."
)
