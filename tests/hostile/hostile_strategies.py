"""Hypothesis strategies that breed hostile bytes from a reader's sound files."""

from __future__ import annotations

from hostile_readers import Reader
from hypothesis import strategies as st

_TOKENS = (b"\0", b"\xff", b"\n", b"\r\n", b'"', b"<", b">", b"&", b"1e999", b"-0", b"9" * 40,
           "\u202e".encode(), "\u0000\ufeff".encode(), b"\xed\xa0\x80", b"A" * 2000)  # fmt: skip


def inputs(reader: Reader) -> st.SearchStrategy[bytes]:
    """Damaged and spliced sound files mostly; texts of the reader's words; plain noise."""
    sound = st.sampled_from(reader.seeds())
    words = st.sampled_from((*reader.words, *_TOKENS))
    loose = st.lists(st.one_of(words, st.binary(max_size=12)), max_size=40).map(b"".join)
    return st.one_of(_bred(sound, words), _bred(sound, words), loose, st.binary(max_size=400))


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
