"""Hypothesis strategies that breed hostile bytes from a reader's sound files."""

from __future__ import annotations

import json
from typing import Any

from hostile_readers import Reader
from hypothesis import strategies as st

_TOKENS = (b"\0", b"\xff", b"\n", b"\r\n", b'"', b"<", b">", b"&", b"1e999", b"-0", b"9" * 40,
           "\u202e".encode(), "\u0000\ufeff".encode(), b"\xed\xa0\x80", b"A" * 2000)  # fmt: skip


def inputs(reader: Reader) -> st.SearchStrategy[bytes]:
    """Damaged and spliced sound files mostly; texts of the reader's words; plain noise."""
    sound = st.sampled_from(reader.seeds())
    words = st.sampled_from((*reader.words, *_TOKENS))
    loose = st.lists(st.one_of(words, st.binary(max_size=12)), max_size=40).map(b"".join)
    ways = [_bred(sound, words), _bred(sound, words), loose, st.binary(max_size=400)]
    if any(_plain(data) is not None for data in reader.seeds()):
        ways = [*ways, _bred_json(sound), _bred_json(sound), _bred_json(sound)]
    return st.one_of(ways)


_VALUES = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**30), 10**30) | st.floats(allow_nan=False)
    | st.text(max_size=8) | st.sampled_from(("", "A1", "9.1", "2026-01-05", "nan", "readings")),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=4), inner),
    max_leaves=4,
)  # fmt: skip


def _plain(data: bytes) -> Any:
    """A seed as JSON, past the one byte that may name its part; ``None`` for other kinds."""
    for text in (data, data[1:]):
        try:
            return json.loads(text)
        except ValueError:
            continue
    return None


@st.composite
def _bred_json(draw: st.DrawFn, sound: st.SearchStrategy[bytes]) -> bytes:
    """Sound JSON with one to three of its values replaced, left out or moved."""
    data = draw(sound)
    value = [_plain(data)]
    for _ in range(draw(st.integers(1, 3))):
        where: Any = value
        key: Any = 0
        while isinstance(where[key], list | dict) and where[key] and draw(st.integers(0, 5)):
            where = where[key]
            key = draw(st.sampled_from(sorted(where) if isinstance(where, dict)
                                       else range(len(where))))  # fmt: skip
        change = draw(st.integers(0, 4))
        if change == 0 and where is not value:
            del where[key]
            if not where:
                break
        elif change == 1 and isinstance(where, dict):
            where[draw(st.sampled_from(sorted(where)))] = where[key]
        else:
            where[key] = draw(_VALUES)
    head = b"" if data[:1] in b"[{" else data[:1]
    return head + json.dumps(value[0]).encode()


@st.composite
def _bred(
    draw: st.DrawFn, sound: st.SearchStrategy[bytes], words: st.SearchStrategy[bytes]
) -> bytes:
    data = bytearray(draw(sound))
    for _ in range(draw(st.integers(1, 6))):
        at = int(draw(st.floats(0, 1)) * len(data))
        to = min(len(data), at + draw(st.sampled_from((0, 1, 2, 4, 16, 200))))
        change = draw(st.integers(0, 6))
        if change == 0:
            data[at:to] = draw(words)
        elif change == 1:
            data[at:to] = draw(st.binary(max_size=8))
        elif change == 2:
            data[at:to] = data[at:to] * draw(st.sampled_from((2, 3, 50)))
        elif change == 3:
            other = draw(sound)
            data[at:to] = other[int(draw(st.floats(0, 1)) * len(other)) :][:300]
        elif change == 4:
            del data[at:]
        elif at < len(data):
            data[at] = draw(st.integers(0, 255)) if change == 5 else data[at] ^ (1 << at % 8)
    return bytes(data)
