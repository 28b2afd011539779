"""A mark scheme as text, one mark to a line, in the words of printed schemes; the table is in SCHEMES.md here."""

from __future__ import annotations

import re
from typing import Any

from checker.errors import InputError

__all__ = ["entries_of"]

_MARK = r"(?:(?:SC\s*)?d{0,2}[MABN][1-9](?:\s?(?:dep|ft|cao|cso|\*)(?![a-zA-Z]))*|SC\s*[1-9])"
_CODES = re.compile(rf"\s*({_MARK}(?:\s*,?\s*{_MARK})*)\s*[:.]?(?=\s|$|[\\\"“(=+-])\s*(.*)")
_TOTAL = re.compile(
    r"\s*(?:total\s*:?\s*(\d{1,3})|[\[(]\s*(\d{1,3})\s*(?:marks?)?\s*[\])])\s*(?:marks?)?\s*", re.IGNORECASE
)
_WORDS = re.compile(r'"([^"]*)"|“([^”]*)”')
_FORMS = ("exact", "expanded", "factorised", "simplest", "awrt", "oe")
_FLAGS = ("ft", "cao", "cso", "isw")
_TAIL = re.compile(r"(?:^|(?<=[\s,]))(ft|cao|cso|isw|oe)\s*,?\s*$")
_HEAD = re.compile(r"(final(?:\s+answer)?|awrt|oe|exact|expanded|factorised|simplest)\b[\s:]*")
_VALUE = re.compile(r"\s*(\\?[A-Za-z](?:[a-z]+)?(?:_\w+)?)\s*(?:=|<|>|\\[lg]eq?\b)(?!.*[=<>]).+")
_NEEDS = re.compile(r"(?:needs|dep(?:ends)?(?:\s+on)?)\s+(.+)")


def entries_of(text: str) -> list[dict[str, Any]]:
    """The lines of a scheme as entries of the field "scheme".

    Args:
        text: one mark to a line, or several for the same line (M1A1); blank lines are passed over, and a last line such
            as "Total 4" is compared with the sum.
    Raises:
        InputError: a line begins with no mark, or the total is another; the sentence says what to write.
    """
    entries: list[dict[str, Any]] = []
    for number, line in enumerate(text.splitlines(), start=1):
        if not line.strip():
            continue
        total = _TOTAL.fullmatch(line)
        if total is not None:
            _compare_total(int(total[1] or total[2]), entries, number)
            continue
        found = _CODES.fullmatch(line)
        if found is None:
            raise InputError(
                f"Line {number} of the scheme begins with no mark. Write it like M1 2x=10 or A1 final x=5; "
                "a mark is M, A, B or N and a number, with d before it or SC."
            )
        told = _told(found[2], number)
        entries += [{"mark": code.strip(), **told} for code in re.findall(_MARK, found[1])]
    return entries


def _compare_total(total: int, entries: list[dict[str, Any]], number: int) -> None:
    codes = [str(entry["mark"]) for entry in entries]
    given = sum(int("".join(filter(str.isdigit, code))) for code in codes if not code.startswith(("SC", "N")))
    if given != total:
        raise InputError(
            f"Line {number} of the scheme says {total} marks, but those above add up to {given}. Correct one of them."
        )


def _told(rest: str, number: int) -> dict[str, Any]:
    """What a line says after its mark."""
    words = [one or other for one, other in _WORDS.findall(rest)]
    target, *options = (part.strip() for part in _WORDS.sub(" ", rest).split(";"))
    target, _, purpose = (f" {target} ").partition(" for ")
    words += [purpose.strip()] if purpose.strip() else []
    told: dict[str, Any] = {}
    target = target.strip()
    while (tail := _TAIL.search(target)) is not None:
        _take(tail[1], told, words, number)
        target = target[: tail.start()].rstrip(" ,")
    is_final = False
    while (head := _HEAD.match(target)) is not None:
        is_final = is_final or head[1].startswith("final")
        if not head[1].startswith("final"):
            _take(head[1], told, words, number)
        target = target[head.end() :]
    for option in options:
        _take(option, told, words, number)
    lines = _alternatives(target)
    if lines:
        told["final" if is_final else "line"] = lines
    if words:
        told["for"] = "; ".join(words)
    return told


def _take(option: str, told: dict[str, Any], words: list[str], number: int) -> None:
    """One word or remark after the line that earns the mark."""
    plain = option.strip().lower()
    needs = _NEEDS.fullmatch(option.strip())
    if plain in _FLAGS:
        told[plain] = True
    elif plain in _FORMS:
        told["form"] = plain
    elif plain in ("no isw", "last line counts"):
        told["isw"] = False
    elif plain in ("implied", "may be implied"):
        told["implied"] = True
    elif plain in ("not implied", "working needed", "must be seen"):
        told["implied"] = False
    elif needs is not None:
        named = re.findall(r"d{0,2}[MABN][1-9]", needs[1])
        if not named and needs[1].strip() not in ("none", "nothing"):
            raise InputError(
                f"Line {number} of the scheme: {option.strip()[:40]!r} names no mark. Write needs M1, or needs nothing."
            )
        told["depends_on"] = named or None
    elif plain:
        words.append(re.sub(r"^for\s+", "", option.strip()))


def _alternatives(target: str) -> list[str]:
    """Lines that will do as well, parted by "or"; values of one letter, x=2 or x=3, are one line."""
    parts = [part.strip() for part in re.split(r"\s+or\s+", target) if part.strip()]
    values = [_VALUE.fullmatch(part) for part in parts]
    if len(parts) > 1 and all(values) and len({value[1] for value in values if value}) == 1:
        return [" \\text{ or } ".join(parts)]
    return parts
