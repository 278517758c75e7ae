"""Model objects as plain JSON and back, by the types of their fields.

A pack carries a brief, a rubric, tables and findings. Writing each out by hand would be a
second definition of the model that could drift from the first.
"""

from __future__ import annotations

import dataclasses
import datetime as dt
import math
import types
from collections.abc import Mapping
from enum import Enum
from functools import cache
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

T = TypeVar("T")


def to_plain(value: Any) -> Any:
    """Dataclasses as dictionaries, tuples as lists, dates as ISO text, nan as text."""
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {f.name: to_plain(getattr(value, f.name)) for f in dataclasses.fields(value)}
    if isinstance(value, Mapping):
        return {str(key): to_plain(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [to_plain(inner) for inner in value]
    if isinstance(value, Enum):
        return value.value
    if isinstance(value, dt.date):  # also a datetime
        return value.isoformat()
    if isinstance(value, float) and not math.isfinite(value):
        return str(value)
    return value


def from_plain(kind: type[T], plain: Any) -> T:
    """A ``kind`` from what :func:`to_plain` gave. ``ValueError`` where it does not fit."""
    made: T = _read(kind, plain)
    return made


def _read(kind: Any, plain: Any) -> Any:
    origin, inner = get_origin(kind), get_args(kind)
    if kind is Any or kind is object:
        return plain
    if origin in (Union, types.UnionType):
        return _read_union(inner, plain)
    if origin is Literal:
        return _fits(plain in inner, plain, plain)
    if origin is tuple:
        items = _fits(isinstance(plain, list), plain, plain)
        if len(inner) == 2 and inner[1] is Ellipsis:
            return tuple(_read(inner[0], item) for item in items)
        _fits(len(items) == len(inner), plain, None)
        return tuple(_read(one, item) for one, item in zip(inner, items, strict=True))
    if isinstance(origin, type) and issubclass(origin, Mapping):
        pairs = _fits(isinstance(plain, dict), plain, plain)
        return {key: _read(inner[1], item) for key, item in pairs.items()}
    if dataclasses.is_dataclass(kind):
        return _read_dataclass(kind, plain)
    if issubclass(kind, Enum):
        return kind(plain)
    if issubclass(kind, dt.date):
        return kind.fromisoformat(_fits(isinstance(plain, str), plain, plain))
    if kind is float:
        if isinstance(plain, str):
            return _fits(plain in ("nan", "inf", "-inf"), plain, float(plain))
        return _fits(_is_number(plain), plain, plain)
    if kind is int:
        return _fits(isinstance(plain, int) and not isinstance(plain, bool), plain, plain)
    return _fits(isinstance(plain, kind), plain, plain)


def _read_union(kinds: tuple[Any, ...], plain: Any) -> Any:
    if plain is None and type(None) in kinds:
        return None
    for kind in kinds:
        if kind is not type(None):
            try:
                return _read(kind, plain)
            except ValueError:
                continue
    raise ValueError(f"{plain!r} fits none of its types")


def _read_dataclass(kind: Any, plain: Any) -> Any:
    given = _fits(isinstance(plain, dict), plain, plain)
    hints = _hints(kind)
    # A field this version does not know comes from a newer one, and is passed over.
    values = {name: _read(hints[name], item) for name, item in given.items() if name in hints}
    try:
        return kind(**values)
    except TypeError as error:
        raise ValueError(f"{kind.__name__} is incomplete: {error}") from error


@cache
def _hints(kind: Any) -> dict[str, Any]:
    return get_type_hints(kind)


def _is_number(plain: Any) -> bool:
    return isinstance(plain, int | float) and not isinstance(plain, bool)


def _fits(holds: bool, plain: Any, value: Any) -> Any:
    if not holds:
        raise ValueError(f"{plain!r} does not fit")
    return value
