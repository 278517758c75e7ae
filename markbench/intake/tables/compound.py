"""Whether the chains of sectors in an older spreadsheet file (xls) come to an end.

Such a file is a small file system: tables give for each sector the next one. Where a chain
runs in a circle, calamine follows it until the memory of the machine is used up; a file of
six kilobytes is enough. So the tables are walked here first.

References: [MS-CFB] Compound File Binary File Format, 2.2 (header), 2.3 (FAT), 2.4 (mini
FAT), 2.5 (DIFAT).
"""

from __future__ import annotations

import struct
from collections.abc import Sequence

_LAST = 0xFFFFFFFA  # MAXREGSECT: larger numbers are marks, not sectors
_HEADER_BYTES = 512


def chains_end(data: bytes) -> bool:
    """Whether every chain of sectors of an OLE file ends within the file."""
    if len(data) < _HEADER_BYTES:
        return False
    (shift,) = struct.unpack_from("<H", data, 30)
    if shift not in (9, 12):  # sectors have 512 or 4096 bytes
        return False
    size = 1 << shift

    def numbers(sector: int) -> tuple[int, ...]:
        piece = data[(sector + 1) * size : (sector + 2) * size]
        return struct.unpack(f"<{len(piece) // 4}I", piece[: len(piece) // 4 * 4])

    # Where the sectors of the table lie: 109 places in the header, more in a chain.
    at, places = struct.unpack_from("<I", data, 68)[0], list(struct.unpack_from("<109I", data, 76))
    most = len(data) // size
    while at < _LAST:
        *more, at = numbers(at) or (_LAST,)
        places += more
        if len(places) > 2 * most + 256:
            return False
    table = [number for place in places if place < _LAST for number in numbers(place)]
    if _has_circle(table):
        return False
    mini: list[int] = []
    (at,) = struct.unpack_from("<I", data, 60)
    while at < len(table):
        mini += numbers(at)
        at = table[at]
    return not _has_circle(mini)


def _has_circle(after: Sequence[int]) -> bool:
    """Whether going from each place to the one it names comes back to itself."""
    state = bytearray(len(after))  # 0 not yet met, 1 on this walk, 2 known to end
    for start in range(len(after)):
        walk, at = [], start
        while at < len(after) and not state[at]:
            state[at] = 1
            walk.append(at)
            at = after[at]
        if at < len(after) and state[at] == 1:
            return True
        for met in walk:
            state[met] = 2
    return False
