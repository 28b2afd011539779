"""A mark scheme as a teacher writes it: what earns each mark, checked when it is read."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any, Literal, NoReturn

from checker.errors import InputError, ParseError
from checker.marking.text import entries_of
from checker.syntax import Note, Statement, parse

__all__ = ["FORMS", "Form", "Mark", "MarkKind", "Part", "read_scheme"]

MarkKind = Literal["M", "A", "B", "N"]
Part = Literal["main", "special case", "no working"]
Form = Literal["oe", "exact", "expanded", "factorised", "simplest", "awrt"]

FORMS: tuple[str, ...] = ("oe", "exact", "expanded", "factorised", "simplest", "awrt")
_FIELDS = frozenset({"mark", "for", "line", "final", "form", "ft", "cao", "cso", "depends_on", "isw", "implied", "sc"})
_MOST_ENTRIES = 60
_MOST_LINES = 12  # that may earn one mark
_CODE = re.compile(r"(?:(SC)\s*)?(d{0,2})([MABN])([1-9])((?:\s*(?:dep|ft|cao|cso|\*))*)|SC\s*([1-9])")
_FLAGS = {"ft": "ft", "cao": "cao", "cso": "cso", "*": "cso"}


@dataclass(frozen=True, slots=True)
class Mark:
    """One entry of a scheme.

    Args:
        code: as written, such as "A1", "dM1" or "SC B1".
        kind, worth: its letter and its number.
        part: of the scheme itself, of a special case, or for an answer without working (N).
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
    part: Part = "main"


def read_scheme(data: object) -> tuple[Mark, ...]:
    """Read the field "scheme" of a working: a list of entries, or the same as text, one mark to a line.

    Returns:
        The marks in order; empty when the field is absent or null.
    Raises:
        InputError: an entry is not understood; the sentence names it, counted from 1, and says what to write.
    """
    if data is None:
        return ()
    if isinstance(data, str) or (isinstance(data, list) and data and all(isinstance(one, str) for one in data)):
        data = entries_of("\n".join(data) if isinstance(data, list) else data)
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
    found = _CODE.fullmatch(code.strip()) if isinstance(code, str) else None
    if found is None:
        _refuse(
            number, '"mark" is missing or wrong. Write M, A or B and how many marks, such as "M1" or "A2"; dM1 for one '
            "that depends on the M before, N1 for an answer without working, SC B1 for a special case.",
        )
    special, depends, letter, worth, after, alone = found.groups()
    kind: MarkKind = "B" if alone or letter == "B" else "M" if letter == "M" else "A" if letter == "A" else "N"
    entry = {**entry, **{_FLAGS[word]: True for word in re.findall(r"ft|cao|cso|\*", after or "")}}
    is_special = _flag(number, entry, "sc", default=bool(special or alone))
    part: Part = "special case" if is_special else "no working" if kind == "N" else "main"
    if kind == "N" and is_special:
        _refuse(number, "N is for an answer without working and is no special case. Write N1 or SC B1.")
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
    needs = _needs(number, entry, kind, earlier, len(depends or "") or ("dep" in (after or "")))
    return Mark(
        code=_shown(found[0], special or is_special), kind=kind, worth=int(worth or alone), part=part, purpose=purpose,
        targets=_targets(number, entry), form=form, is_final="final" in entry or kind == "N", needs=needs,
        implied=implied, **flags,
    )


def _shown(code: str, is_special: object) -> str:
    code = re.sub(r"\s+", "", code)
    return f"SC {code.removeprefix('SC')}" if is_special else code


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


def _needs(
    number: int, entry: dict[str, Any], kind: MarkKind, earlier: list[Mark], methods_needed: int
) -> tuple[int, ...]:
    """The entries named; a dM1 needs the M before it, a ddM1 the two before it, an A the nearest M."""
    if "depends_on" not in entry:
        methods = [at for at, mark in enumerate(earlier) if mark.kind == "M" and mark.part == "main"]
        if methods_needed and len(methods) < methods_needed:
            _refuse(number, "it depends on a method mark, but there is none before it. Write M1 for the first one.")
        return tuple(methods[-methods_needed:]) if methods_needed else (methods[-1],) if methods and kind == "A" else ()
    given = entry["depends_on"]
    found: set[int] = set()
    for one in [] if given is None else given if isinstance(given, list) else [given]:
        if isinstance(one, int) and not isinstance(one, bool) and 0 <= one < len(earlier):
            found.add(one)
            continue
        named = [at for at, mark in enumerate(earlier) if one in (mark.code, f"{mark.kind}{mark.worth}")]
        if not named:
            _refuse(
                number, '"depends_on" names no entry before it. Give the mark, such as "M1" for the nearest M1 before, '
                "or its place in the list counted from 0, or null for none.",
            )
        found.add(named[-1])
    return tuple(sorted(found))
