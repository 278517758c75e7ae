"""The members of a workbook, unpacked.

A workbook has ten small members or more, and a class a thousand workbooks: opening each
member as a stream cost more than all else that is done to a workbook before its cells are
read. Members packed in the ordinary way are therefore unpacked here in one go, from the
bytes at hand; whatever is not ordinary in any respect is left to the standard library, with
its checks and its errors.
"""

from __future__ import annotations

import struct
import zipfile
import zlib

_HEAD = struct.Struct("<4s5H3I2H")  # the local header (APPNOTE.TXT of the zip format, 4.3.7)
_UTF8 = 0x800


def unpacked(archive: zipfile.ZipFile, info: zipfile.ZipInfo, data: bytes) -> bytes:
    """The bytes of one member of ``archive``, which was opened on ``data``.

    Raises what :meth:`zipfile.ZipFile.read` raises.
    """
    text = _ordinary(info, data)
    return archive.read(info) if text is None else text


def _ordinary(info: zipfile.ZipInfo, data: bytes) -> bytes | None:
    """The member's bytes, whole and with the right checksum; ``None`` where anything is odd."""
    start = info.header_offset
    if not 0 <= start <= len(data) - _HEAD.size:
        return None
    mark, _, flags, how, _, _, _, _, _, long_name, long_extra = _HEAD.unpack_from(data, start)
    name_at = start + _HEAD.size
    name = data[name_at : name_at + long_name]
    expected = info.orig_filename.encode("utf-8" if flags & _UTF8 else "cp437", "replace")
    plain = not (flags | info.flag_bits) & ~(_UTF8 | 0xE)  # not locked, nor packed as patches
    if mark != b"PK\x03\x04" or not plain or name != expected:
        return None
    at = name_at + long_name + long_extra
    packed = data[at : at + info.compress_size]
    if how != info.compress_type or len(packed) != info.compress_size:
        return None
    if how == zipfile.ZIP_STORED:
        text = packed
    elif how == zipfile.ZIP_DEFLATED:
        unpack = zlib.decompressobj(-zlib.MAX_WBITS)
        try:
            text = unpack.decompress(packed, info.file_size + 1)
        except zlib.error:
            return None
        if not unpack.eof:
            return None
    else:
        return None
    whole = len(text) == info.file_size and zlib.crc32(text) == info.CRC
    return text if whole else None
