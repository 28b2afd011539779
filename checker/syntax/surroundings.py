"""What stands around a statement and is passed over: question numbers, row operations, braces, a stated accuracy."""

from __future__ import annotations

import re
from dataclasses import dataclass

__all__ = ["Surroundings", "surroundings_of"]

_ACCURACY = re.compile(
    r"\(?\s*(?:\\text\s*\{\s*)?\(?\s*(?:correct\s+)?(?:to\s+)?(\d+)\s*"
    r"(?:\\(?:text|mathrm|textrm)\s*\{\s*|\\[ ,;]\s*|~\s*)*"
    r"(?:(d\.?\s?p\.?|decimal places?)|(s\.?\s?f\.?|sig\.?\s?figs?\.?|significant figures?))"
    r"\s*\)?(?:\s*\})?\s*\)?\s*\.?\s*$"
)
_NEAREST = re.compile(
    r"\(?\s*(?:\\text\s*\{\s*)?\(?\s*(?:correct\s+|rounded\s+)?(?:to\s+)?(?:the\s+)?nearest\s+"
    r"[a-z]+(?:\s+[a-z]+)?\s*\)?(?:\s*\})?\s*\)?\s*\.?\s*$"
)
_LONGEST_PREFIX = 80  # characters before a colon that may be words
_ACCURACY_TAIL = 60  # characters at the end in which a stated accuracy is looked for
_PREFIX = re.compile(r"\s*[A-Za-z]{3,}[A-Za-z0-9 ,'-]*:")
_QUESTION = re.compile(r"\s*Q\s?(?:\d\s?){1,3}[a-z]?\s?(?:[).:]|(?=\s))(?=.*\S)")
_MARK = r"(?:\(\s*\d\s*\)|\\textcircled\s*\{\s*\d\s*\}|[\u2460-\u2473])"
_ROWS = re.compile(
    rf"\s*(?:(?:\d|\\times|\\cdot|\\div|[-+*/\u00d7\u2212])\s*)*{_MARK}"
    rf"(?:\s*(?:\d+|\\times|\\cdot|\\div|[-+*/\u00d7\u2212]|{_MARK}))*"
    r"\s*(?::|\\Rightarrow|\\implies|\\rightarrow|\\to|\u21d2|\u2192|\\qquad|\\quad)(?=[^=]*=)"
)
_OPENING = re.compile(
    r"\s*(?:\\left\s*\\\{\s*)?\\begin\s*\{(?:cases|aligned|align\*?|array|gathered)\}(?:\s*\{[lcr|]*\})?"
)
_LABEL_AFTER = re.compile(r"(?<=[^\s(=+*/^-])\s+\((\d)\)\s*$")
_OPERATION = r"(?:[-+\u2212/*\u00d7\u00f7]|\\times|\\div|\\cdot)\s*(?:\d+[a-z]?|[a-z])(?:\.\d+)?"
_BESIDE = re.compile(
    rf"(?:\\q?quad|\\hfill|\s{{3,}})\s*(?:\(\s*{_OPERATION}\s*\)|{_OPERATION})\s*$"
)  # what is done to both sides, noted beside an equation
_BELOW = re.compile(rf"\s*{_OPERATION}\s*(?:\\q?quad|\s{{2,}})\s*{_OPERATION}\s*$")
_POINT = re.compile(r"\s*\([^()=]*,[^()=]*\)\s*:(?=[^=]*=)")
_LIST = re.compile(r"(?<![\d.,])[1-9]\d{0,2}(?:,\d{3})+(?![\d,])")  # 20,100,140 may be one number or three
_CLOSING = re.compile(r"\\end\s*\{(?:cases|aligned|align\*?|array|gathered)\}(?:\s*\\right\s*\.)?")


@dataclass(frozen=True, slots=True)
class Surroundings:
    """The text with what stands around blanked out, so that every place stays as it was.

    Args:
        text: as long as the line as given.
        notes: the words that were blanked.
        accuracy: ("dp", 2) or ("sf", 3) when one is stated.
    """

    text: str
    notes: tuple[str, ...]
    accuracy: tuple[str, int] | None
    label: str | None = None
    has_list: bool = False


def surroundings_of(text: str, readings: frozenset[str] = frozenset()) -> Surroundings:
    """Blank out what stands before and after the statement of a line.

    Args:
        text: the line.
        readings: with "label" among them, a number in brackets at the end is a factor; with "list", commas between
            groups of three digits part numbers.
    """
    notes: list[str] = []
    stated = None
    accuracy = _ACCURACY.search(text, max(0, len(text) - _ACCURACY_TAIL))
    if accuracy is not None and accuracy.start() > 0:
        stated = ("dp" if accuracy.group(2) else "sf", min(int(accuracy.group(1)), 100))
        text = _blanked(text, accuracy.start(), _end_of(text, accuracy))
    nearest = _NEAREST.search(text, max(0, len(text) - _ACCURACY_TAIL))
    if nearest is not None and nearest.start() > 0:
        stated = stated or ("dp", 0)
        text = _blanked(text, nearest.start(), _end_of(text, nearest))
    if _BELOW.match(text):
        return Surroundings(" " * len(text), (text.strip(),), stated)
    beside = _BESIDE.search(text, max(0, len(text) - _ACCURACY_TAIL))
    if beside is not None and re.search(r"[=<>]|\\[lg]eq?\b", text[:beside.start()]):
        notes.append(beside.group().strip())
        text = _blanked(text, *beside.span())
    for pattern in (_PREFIX, _QUESTION, _POINT, _ROWS):
        found = pattern.match(text, 0, _LONGEST_PREFIX if pattern is _PREFIX else len(text))
        if found is not None and (pattern is not _ROWS or _is_row_operation(found.group())):
            notes.append(found.group().strip())
            text = _blanked(text, *found.span())
    opening = _OPENING.match(text)
    if opening is not None:
        text = _blanked(text, *opening.span())
        closing = _CLOSING.search(text)
        if closing is not None:
            text = _blanked(text, *closing.span())
    label = None
    number = _LABEL_AFTER.search(text, max(0, len(text) - _ACCURACY_TAIL))
    after_command = number is not None and re.search(r"\\[A-Za-z]+$", text[:number.start()])
    if number is not None and not after_command and "label" not in readings:
        label = number.group(1)
        text = _blanked(text, *number.span())
    has_list = _LIST.search(text) is not None
    if has_list and "list" in readings:
        text = text.replace(",", ";")
    return Surroundings(text, tuple(notes), stated, label, has_list)


def _is_row_operation(words: str) -> bool:
    """(1) + (2) or 2 x (1), and no label alone."""
    return len(re.findall(_MARK, words)) > 1 or bool(re.search(r"\\times|\\cdot|\\div|[-+*/\u00d7\u2212]", words))


def _end_of(text: str, found: re.Match[str]) -> int:
    """The end of the line, but for a brace that closes a group of words opened before."""
    before = text[:found.start()]
    if before.count("{") <= before.count("}"):
        return len(text)
    return text.rindex("}") if "}" in text[found.start():] else len(text)


def _blanked(text: str, start: int, end: int) -> str:
    return text[:start] + " " * (end - start) + text[end:]
