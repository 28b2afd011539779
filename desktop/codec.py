"""Frozen dataclasses to JSON's plain values and back, by their types; fields at their default are left out. No Qt.

What was written before a field existed reads with the field's default; a field that is gone is passed over.
"""

from __future__ import annotations

import types
from collections.abc import Callable, Mapping
from dataclasses import MISSING, fields, is_dataclass
from enum import Enum
from functools import cache
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

__all__ = ["NotThatKind", "pack", "unpack"]


class NotThatKind(ValueError):
    """The plain values do not make up the type that was asked for."""


def pack(value: Any) -> Any:
    """The value as JSON's plain values: dataclasses as objects, tuples as lists."""
    if value is None or isinstance(value, bool | int | float):
        return value
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, str):
        return str(value)
    if isinstance(value, tuple | list):
        return [pack(item) for item in value]
    if isinstance(value, Mapping):
        return {str(key): pack(item) for key, item in value.items()}
    if is_dataclass(value):
        return {
            name: pack(item)
            for name, default in _defaults(value.__class__)
            if (item := getattr(value, name)) is not default and item != default
        }
    raise TypeError(f"{type(value).__name__} has no plain form")


def unpack(kind: Any, data: Any) -> Any:
    """A value of that type, made of JSON's plain values.

    Raises:
        NotThatKind: the data do not fit the type, or the type refuses the values.
    """
    try:
        return _reader(kind)(data)
    except NotThatKind:
        raise
    except (TypeError, ValueError, KeyError, AttributeError) as exc:
        raise NotThatKind(f"{kind}: {exc}") from exc


@cache
def _defaults(kind: type) -> tuple[tuple[str, Any], ...]:
    return tuple((field.name, field.default) for field in fields(kind) if field.init)


@cache
def _reader(kind: Any) -> Callable[[Any], Any]:
    origin, arguments = get_origin(kind), get_args(kind)
    if kind is Any:
        return lambda data: data
    if origin is Literal:
        return _one_of(arguments)
    if origin in (Union, types.UnionType):
        return _optional(arguments)
    if origin is tuple:
        return _tuple(arguments)
    if isinstance(origin, type) and issubclass(origin, Mapping):
        value = _reader(arguments[1])
        return lambda data: {str(key): value(item) for key, item in data.items()}
    if is_dataclass(kind):
        return _record(kind)
    if isinstance(kind, type) and issubclass(kind, tuple):  # a NamedTuple
        parts = [_reader(hint) for hint in get_type_hints(kind).values()]
        return lambda data: kind(*(part(item) for part, item in zip(parts, data, strict=True)))
    if isinstance(kind, type) and issubclass(kind, Enum):
        return kind
    if kind in (str, int, float, bool):
        return _scalar(kind)
    raise TypeError(f"no reader for {kind}")


def _one_of(allowed: tuple[Any, ...]) -> Callable[[Any], Any]:
    def read(data: Any) -> Any:
        if data not in allowed:
            raise NotThatKind(f"{data!r} is none of {allowed}")
        return data

    return read


def _optional(arguments: tuple[Any, ...]) -> Callable[[Any], Any]:
    (inner,) = [argument for argument in arguments if argument is not type(None)]
    read = _reader(inner)
    return lambda data: None if data is None else read(data)


def _tuple(arguments: tuple[Any, ...]) -> Callable[[Any], Any]:
    if len(arguments) == 2 and arguments[1] is Ellipsis:
        item = _reader(arguments[0])
        return lambda data: tuple(item(part) for part in _list(data))
    parts = [_reader(argument) for argument in arguments]
    return lambda data: tuple(part(item) for part, item in zip(parts, _list(data), strict=True))


def _record(kind: Any) -> Callable[[Any], Any]:
    hints = get_type_hints(kind)
    names = {field.name for field in fields(kind) if field.init}
    needed = {
        field.name for field in fields(kind)
        if field.init and field.default is MISSING and field.default_factory is MISSING
    }  # fmt: skip
    readers: dict[str, Callable[[Any], Any]] = {}  # filled when first met, so that a type may hold itself

    def read(data: Any) -> Any:
        if not isinstance(data, dict) or not needed <= data.keys():
            raise NotThatKind(f"no {kind.__name__}: {str(data)[:60]}")
        values = {}
        for name, value in data.items():
            if name in names:
                if name not in readers:
                    readers[name] = _reader(hints[name])
                values[name] = readers[name](value)
        return kind(**values)

    return read


def _scalar(kind: type) -> Callable[[Any], Any]:
    def read(data: Any) -> Any:
        if kind is float and type(data) is int:
            return float(data)
        if type(data) is not kind:
            raise NotThatKind(f"{data!r} is no {kind.__name__}")
        return data

    return read


def _list(data: Any) -> list[Any]:
    if not isinstance(data, list):
        raise NotThatKind(f"{data!r} is no list")
    return data
