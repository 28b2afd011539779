"""A mark scheme as a teacher writes it: what earns each mark, checked when it is read."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, Literal, NoReturn

from checker.errors import InputError, ParseError
from checker.syntax import Note, Statement, parse

__all__ = ["FORMS", "Form", "Mark", "MarkKind", "read_scheme"]

MarkKind = Literal["M", "A", "B"]
Form = Literal["oe", "exact", "expanded", "factorised", "simplest"]

FORMS: tuple[str, ...] = ("oe", "exact", "expanded", "factorised", "simplest")
_FIELDS = frozenset({"mark", "for", "line", "final", "form", "ft", "cao", "cso", "depends_on", "isw", "implied"})
_MOST_ENTRIES = 60
_MOST_LINES = 12  # that may earn one mark
_CODE = re.compile(r"([MAB])([1-9])")


@dataclass(frozen=True, slots=True)
class Mark:
    """One entry of a scheme.

    Args:
        code: as written, such as "A1".
        kind, worth: its letter and its number.
        purpose: the teacher's words for it.
        targets: statements of which any one earns it; none when only words say what it is for.
        form: how the line is to be written.
        is_final: is it for the final answer?
        ft, cao, cso: follow-through allowed; correct answer only; correct solution only.
        needs: numbers, from 0, of the entries that it depends on.
        isw: is what follows a right final answer ignored?
        implied: may a later right line stand for it; None leaves it to the rules and the teacher.
    """

    code: str
    kind: MarkKind
    worth: int
    purpose: str = ""
    targets: tuple[Statement, ...] = ()
    form: Form = "oe"
    is_final: bool = False
    ft: bool = False
    cao: bool = False
    cso: bool = False
    needs: tuple[int, ...] = ()
    isw: bool = True
    implied: bool | None = None


def read_scheme(data: object) -> tuple[Mark, ...]:
    """Read the field "scheme" of a working.

    Returns:
        The marks in order; empty when the field is absent or null.
    Raises:
        InputError: an entry is not understood; the sentence names it, counted from 1, and says what to write.
    """
    if data is None:
        return ()
    if not isinstance(data, list) or not 0 < len(data) <= _MOST_ENTRIES:
        raise InputError(
            f'"scheme" is not a list of 1 to {_MOST_ENTRIES} marks. Write it like [{{"mark": "M1", "line": "2x=10"}}, '
            '{"mark": "A1", "final": "x=5"}].'
        )
    marks: list[Mark] = []
    for number, entry in enumerate(data, start=1):
        marks.append(_mark(number, entry, marks))
    return tuple(marks)


def _refuse(number: int, sentence: str) -> NoReturn:
    raise InputError(f"Entry {number} of the scheme: {sentence}")


def _mark(number: int, entry: object, earlier: list[Mark]) -> Mark:
    if not isinstance(entry, dict):
        _refuse(number, 'it is not an object. Write it like {"mark": "M1", "line": "2x=10"}.')
    unknown = sorted(str(name) for name in entry.keys() - _FIELDS)
    if unknown:
        _refuse(number, f'"{unknown[0][:40]}" is not known here. Use only: {", ".join(sorted(_FIELDS))}.')
    code = entry.get("mark")
    found = _CODE.fullmatch(code) if isinstance(code, str) else None
    if found is None:
        _refuse(number, '"mark" is missing or wrong. Write M, A or B and how many marks, such as "M1" or "A2".')
    kind: MarkKind = "M" if found[1] == "M" else "A" if found[1] == "A" else "B"
    form = entry.get("form", "oe")
    if form not in FORMS:
        _refuse(number, f'"form" is not known. Use one of: {", ".join(FORMS)}.')
    purpose = entry.get("for", "")
    if not isinstance(purpose, str):
        _refuse(number, '"for" is not a string. Say in words what the mark is for, or leave it out.')
    flags = {name: _flag(number, entry, name, default=name == "isw") for name in ("ft", "cao", "cso", "isw")}
    if flags["ft"] and (flags["cao"] or flags["cso"]):
        _refuse(number, '"ft" and "cao" or "cso" exclude each other. Keep one of them.')
    implied = entry.get("implied")
    if implied is not None and not isinstance(implied, bool):
        _refuse(number, '"implied" is not true, false or null. Choose one, or leave it out.')
    return Mark(
        code=found[0], kind=kind, worth=int(found[2]), purpose=purpose, targets=_targets(number, entry), form=form,
        is_final="final" in entry, needs=_needs(number, entry, kind, earlier), implied=implied, **flags,
    )


def _flag(number: int, entry: dict[str, Any], name: str, *, default: bool) -> bool:
    value = entry.get(name, default)
    if not isinstance(value, bool):
        _refuse(number, f'"{name}" is not true or false. Choose one, or leave it out.')
    return value


def _targets(number: int, entry: dict[str, Any]) -> tuple[Statement, ...]:
    if "line" in entry and "final" in entry:
        _refuse(number, 'it has both "line" and "final". Keep "final" for the final answer, "line" for any other line.')
    if "line" not in entry and "final" not in entry:
        if not entry.get("for"):
            _refuse(number, 'nothing says what earns it. Give "line", "final", or words in "for".')
        if entry.get("form", "oe") != "oe":
            _refuse(number, '"form" needs a "line" or a "final" beside it. Add one, or leave "form" out.')
        return ()
    name = "line" if "line" in entry else "final"
    given = entry[name]
    texts = given if isinstance(given, list) else [given]
    if not texts or len(texts) > _MOST_LINES or not all(isinstance(text, str) and text.strip() for text in texts):
        _refuse(number, f'"{name}" is not LaTeX. Give one line as a string, or a list of lines that will do.')
    return tuple(_statement(number, name, text) for text in texts)


def _statement(number: int, name: str, text: str) -> Statement:
    try:
        statement = parse(text)
    except ParseError as error:
        raise InputError(f'Entry {number} of the scheme: "{name}" cannot be read. {error}') from error
    except RecursionError as error:
        raise InputError(f'Entry {number} of the scheme: "{name}" is nested too deeply. Shorten it.') from error
    if isinstance(statement, Note):
        _refuse(number, f'"{name}" holds only words. Give mathematics as LaTeX, and words in "for".')
    return statement


def _needs(number: int, entry: dict[str, Any], kind: MarkKind, earlier: list[Mark]) -> tuple[int, ...]:
    """The entries named; an A without any needs the nearest M before it."""
    if "depends_on" not in entry:
        methods = [at for at, mark in enumerate(earlier) if mark.kind == "M"]
        return (methods[-1],) if methods and kind == "A" else ()
    given = entry["depends_on"]
    found: set[int] = set()
    for one in [] if given is None else given if isinstance(given, list) else [given]:
        if isinstance(one, int) and not isinstance(one, bool) and 0 <= one < len(earlier):
            found.add(one)
            continue
        named = [at for at, mark in enumerate(earlier) if mark.code == one]
        if not named:
            _refuse(
                number, '"depends_on" names no entry before it. Give the mark, such as "M1" for the nearest M1 before, '
                "or its place in the list counted from 0, or null for none.",
            )
        found.add(named[-1])
    return tuple(sorted(found))
