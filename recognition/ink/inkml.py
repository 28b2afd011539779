"""W3C InkML in and out.

Source: Ink Markup Language (InkML), W3C Recommendation, 20 September 2011: traces and their encodings (3.2), trace
groups and views (3.3, 3.4), trace formats (3.1), contexts (4.2), annotations (6).
"""

from __future__ import annotations

import os
import re
import tempfile
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final
from xml.parsers import expat
from xml.sax.saxutils import escape, quoteattr

import numpy as np
from numpy.typing import NDArray

from recognition.errors import InputError
from recognition.ink.strokes import Ink, Stroke, StrokeGroup

__all__ = ["ink_from_inkml", "inkml_from_ink", "read_inkml", "write_inkml"]

NAMESPACE: Final = "http://www.w3.org/2003/InkML"
_XML_ID: Final = "{http://www.w3.org/XML/1998/namespace}id"
_MAX_BYTES: Final = 64 << 20
_MAX_POINTS: Final = 4_000_000
_MAX_DEPTH: Final = 64
_MAX_PLACE: Final = 1e9  # beyond this a coordinate is no place on paper
_VALUE: Final = re.compile(
    r"""\s*(?:(?P<order>[!'"])\s*)?(?:(?P<number>[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)"""
    r"""|\#(?P<hex>[0-9A-Fa-f]+)|(?P<word>[TF*?]))"""
)
_AGAIN: Final = "Save the drawing again as InkML and open the new file."
_CHANNELS: Final = ("X", "Y", "T", "F")


@dataclass(frozen=True, slots=True)
class _Format:
    """Channels of each point in order; the last ones may be left out of a point."""

    names: tuple[str, ...] = ("X", "Y")
    unit: str = "dev"
    declared: bool = False


@dataclass(slots=True)
class _Reading:
    """What is known so far while a document is walked through."""

    name: str
    formats: dict[str, _Format] = field(default_factory=dict)
    context: _Format = field(default_factory=_Format)
    unit: str | None = None
    strokes: list[Stroke] = field(default_factory=list)
    places: dict[str, int] = field(default_factory=dict)
    groups: list[StrokeGroup] = field(default_factory=list)
    points: int = 0


def read_inkml(path: Path) -> Ink:
    """Read a file of ink.

    Raises:
        InputError: there is no such file, or it is not InkML.
    """
    try:
        if path.stat().st_size > _MAX_BYTES:
            raise InputError(f"{path.name} is larger than {_MAX_BYTES >> 20} MB. Split the drawing into smaller ones.")
        content = path.read_bytes()
    except OSError as exc:
        raise InputError(f"{path.name} cannot be read. Check the name and the folder, then open it again.") from exc
    return ink_from_inkml(content, path.name)


def ink_from_inkml(content: bytes, name: str = "The drawing") -> Ink:
    """Read InkML from memory; `name` is used in error sentences.

    Raises:
        InputError: the content is not InkML, or has no traces.
    """
    root = _tree(content, name)
    if _local(root) != "ink":
        raise InputError(f"{name} is XML but not InkML. {_AGAIN}")
    reading = _Reading(name)
    for element in root.iter():
        _define(element, reading)
    for element in root:
        if _local(element) == "context":
            reading.context = _context_format(element, reading)
        elif _local(element) == "traceFormat":  # not in the Recommendation, but written by some tools
            reading.context = _format(element)
        else:
            _walk(element, reading, reading.context)
    if not reading.strokes:
        raise InputError(f"{name} holds no pen strokes. Draw the working first, then save it as InkML.")
    notes = tuple((e.get("type", ""), (e.text or "").strip()) for e in root if _local(e) == "annotation")
    return Ink(tuple(reading.strokes), reading.unit or "dev", tuple(reading.groups), notes)


def inkml_from_ink(ink: Ink) -> str:
    """InkML text of a drawing; reading it back gives the same numbers."""
    out = ['<?xml version="1.0" encoding="UTF-8"?>', f'<ink xmlns="{NAMESPACE}">']
    kinds = {(stroke.time is not None, stroke.pressure is not None) for stroke in ink.strokes}
    ids = {kind: f"format{number}" for number, kind in enumerate(sorted(kinds))}
    out.append("  <definitions>")
    for (timed, pressed), identity in ids.items():
        out.append(f'    <context xml:id="{identity}"><traceFormat>')
        for channel in _CHANNELS:
            if (channel == "T" and not timed) or (channel == "F" and not pressed):
                continue
            unit = {"T": "ms", "F": "dev"}.get(channel, ink.unit)
            out.append(f'      <channel name="{channel}" type="decimal" units={quoteattr(unit)}/>')
        out.append("    </traceFormat></context>")
    out.append("  </definitions>")
    out += [f"  <annotation type={quoteattr(kind)}>{escape(text)}</annotation>" for kind, text in ink.notes]
    for number, stroke in enumerate(ink.strokes):
        identity = ids[stroke.time is not None, stroke.pressure is not None]
        text = ", ".join(" ".join(_decimal(value) for value in point) for point in _table(stroke))
        out.append(f'  <trace xml:id="t{number}" contextRef="#{identity}">{text}</trace>')
    for group in ink.groups:
        out.append("  <traceGroup>")
        if group.note:
            out.append(f'    <annotation type="truth">{escape(group.note)}</annotation>')
        out += [f'    <traceView traceDataRef="#t{number}"/>' for number in group.strokes]
        out.append("  </traceGroup>")
    return "\n".join((*out, "</ink>", ""))


def write_inkml(ink: Ink, path: Path) -> None:
    """Save a drawing; the file is either the whole drawing or as it was before.

    Raises:
        InputError: the folder cannot be written.
    """
    try:
        handle, sibling = tempfile.mkstemp(dir=path.parent, prefix=path.name, suffix=".part")
        try:
            with os.fdopen(handle, "w", encoding="utf-8") as file:
                file.write(inkml_from_ink(ink))
                file.flush()
                os.fsync(file.fileno())
            os.replace(sibling, path)
        except BaseException:
            os.unlink(sibling)
            raise
    except OSError as exc:
        raise InputError(f"{path.name} cannot be saved there. Choose another folder or free some space.") from exc


def _tree(content: bytes, name: str) -> ElementTree.Element:
    """Parse XML; entities are refused, since a small file can grow without bound through them."""
    builder = ElementTree.TreeBuilder()
    parser = expat.ParserCreate(namespace_separator="}")
    parser.buffer_text = True
    depth = 0

    def start(tag: str, attributes: dict[str, str]) -> None:
        nonlocal depth
        depth += 1
        if depth > _MAX_DEPTH:
            raise InputError(f"{name} is nested too deep for InkML. {_AGAIN}")
        builder.start(_full(tag), {_full(key): value for key, value in attributes.items()})

    def end(tag: str) -> None:
        nonlocal depth
        depth -= 1
        builder.end(_full(tag))

    def entity(*_: object) -> None:
        raise InputError(f"{name} declares XML entities, which are not read for safety. {_AGAIN}")

    parser.StartElementHandler = start
    parser.EndElementHandler = end
    parser.CharacterDataHandler = builder.data
    parser.EntityDeclHandler = entity
    try:
        parser.Parse(content, True)
    except expat.ExpatError as exc:
        raise InputError(f"{name} is not well-formed XML (line {exc.lineno}). {_AGAIN}") from exc
    except (ValueError, LookupError) as exc:  # an encoding that Python does not know
        raise InputError(f"{name} is in a character encoding that cannot be read. {_AGAIN}") from exc
    return builder.close()


def _full(name: str) -> str:
    return "{" + name if "}" in name else name


def _local(element: ElementTree.Element) -> str:
    return element.tag.rpartition("}")[2]


def _identity(element: ElementTree.Element) -> str:
    return element.get(_XML_ID) or element.get("id") or ""


def _define(element: ElementTree.Element, reading: _Reading) -> None:
    """Note the trace formats of definitions, contexts and ink sources by their ids."""
    kind = _local(element)
    if kind == "traceFormat" and _identity(element):
        reading.formats[_identity(element)] = _format(element)
    elif kind in ("context", "inkSource") and _identity(element):
        reading.formats[_identity(element)] = _context_format(element, reading)


def _context_format(context: ElementTree.Element, reading: _Reading) -> _Format:
    for element in context.iter():
        if _local(element) == "traceFormat":
            return _format(element)
    for key in ("traceFormatRef", "inkSourceRef", "contextRef"):
        found = reading.formats.get(context.get(key, "").removeprefix("#"))
        if found is not None:
            return found
    return reading.context


def _format(element: ElementTree.Element) -> _Format:
    names: list[str] = []
    later: list[str] = []
    unit = "dev"

    def collect(parent: ElementTree.Element, into: list[str]) -> None:
        nonlocal unit
        for child in parent:
            if _local(child) == "intermittentChannels":
                collect(child, later)
            elif _local(child) == "channel":
                into.append(child.get("name", ""))
                if child.get("name") == "X" and child.get("units"):
                    unit = child.get("units", unit)

    collect(element, names)
    return _Format((*names, *later), unit, True) if names else _Format()


def _walk(element: ElementTree.Element, reading: _Reading, current: _Format) -> None:
    kind = _local(element)
    current = reading.formats.get(element.get("contextRef", "").removeprefix("#"), current)
    if kind == "trace":
        _trace(element, reading, current)
    elif kind == "traceGroup":
        first = len(reading.strokes)
        for child in element:
            _walk(child, reading, current)
        _group(element, reading, range(first, len(reading.strokes)))
    elif kind in ("definitions", "annotationXML"):
        for child in element:
            if kind == "definitions":
                _walk(child, reading, current)


def _group(element: ElementTree.Element, reading: _Reading, own: range) -> None:
    views = [child.get("traceDataRef", "").removeprefix("#") for child in element if _local(child) == "traceView"]
    strokes = (*own, *(reading.places[view] for view in views if view in reading.places))
    note = next(((child.text or "").strip() for child in element if _local(child) == "annotation"), "")
    if strokes:
        reading.groups.append(StrokeGroup(strokes, note))


def _trace(element: ElementTree.Element, reading: _Reading, layout: _Format) -> None:
    if element.get("type") == "penUp" or not (element.text or "").strip():
        return
    table = _values(element.text or "", layout, reading)
    columns = {name: table[:, number] for number, name in enumerate(layout.names)}
    if "X" not in columns or "Y" not in columns:
        raise InputError(f"The traces of {reading.name} have no X and Y. {_AGAIN}")
    points = np.column_stack([columns["X"], columns["Y"]])
    known = np.isfinite(points).all(axis=1)
    points, table = points[known], table[known]
    if not len(points):
        return
    if np.abs(points).max() > _MAX_PLACE:
        raise InputError(f"A trace of {reading.name} lies beyond any page. {_AGAIN}")
    time, pressure = (_channel(table, layout, name) for name in ("T", "F"))
    stroke = Stroke(points, time, pressure)
    prior = reading.places.get(element.get("priorRef", "").removeprefix("#"))
    if element.get("continuation") in ("middle", "end") and prior is not None:
        reading.strokes[prior] = _joined(reading.strokes[prior], stroke)
        place = prior
    else:
        place = len(reading.strokes)
        reading.strokes.append(stroke)
    if _identity(element):
        reading.places[_identity(element)] = place
    reading.unit = reading.unit or layout.unit


def _channel(table: NDArray[np.float64], layout: _Format, name: str) -> NDArray[np.float64] | None:
    if name not in layout.names:
        return None
    values = table[:, layout.names.index(name)]
    return values if np.isfinite(values).all() else None


def _joined(first: Stroke, second: Stroke) -> Stroke:
    def both(a: NDArray[np.float64] | None, b: NDArray[np.float64] | None) -> NDArray[np.float64] | None:
        return None if a is None or b is None else np.concatenate([a, b])

    points = np.concatenate([first.points, second.points])
    return Stroke(points, both(first.time, second.time), both(first.pressure, second.pressure))


def _values(text: str, layout: _Format, reading: _Reading) -> NDArray[np.float64]:
    """The points of a trace, shape (n, channels), differences summed up; NaN where a value is unknown."""
    rows: list[list[float]] = []
    count = len(layout.names)
    order = [0] * count  # of differences, remembered from point to point: 0 explicit, 1 first, 2 second
    velocity = [0.0] * count
    for point in text.split(","):
        if not point.strip():
            continue
        before = rows[-1] if rows else [0.0] * count
        row = [float("nan")] * count
        at = 0
        for channel in range(count):
            match = _VALUE.match(point, at)
            if match is None:
                if layout.names[channel] in ("X", "Y"):
                    raise _broken(reading)
                break  # some tools declare a channel that they never write
            at = match.end()
            if match["order"]:
                order[channel] = "!'\"".index(match["order"])
            row[channel], velocity[channel] = _value(match, order[channel], before[channel], velocity[channel])
        if point[at:].strip() and layout.declared:
            raise _broken(reading)
        rows.append(row)
        reading.points += 1
        if reading.points > _MAX_POINTS:
            raise InputError(f"{reading.name} has more than {_MAX_POINTS} points. Split the drawing into smaller ones.")
    return np.array(rows, np.float64).reshape(-1, count)


def _value(match: re.Match[str], order: int, before: float, velocity: float) -> tuple[float, float]:
    """The value of a channel and its change, after Section 3.2.1 of the Recommendation."""
    if match["word"]:
        if match["word"] == "*":  # as the point before, or going on as before
            return (before + velocity, velocity) if order else (before, 0.0)
        return {"T": 1.0, "F": 0.0, "?": float("nan")}[match["word"]], 0.0
    number = float(int(match["hex"], 16)) if match["hex"] else float(match["number"])
    if order == 0:
        return number, 0.0
    change = number if order == 1 else velocity + number
    return before + change, change


def _broken(reading: _Reading) -> InputError:
    return InputError(f"Trace {len(reading.strokes) + 1} of {reading.name} does not fit its trace format. {_AGAIN}")


def _table(stroke: Stroke) -> NDArray[np.float64]:
    columns = [stroke.points]
    columns += [values[:, None] for values in (stroke.time, stroke.pressure) if values is not None]
    return np.concatenate(columns, axis=1)


def _decimal(value: float) -> str:
    return np.format_float_positional(value, trim="-")
