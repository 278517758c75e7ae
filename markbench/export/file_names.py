"""File names that every common system takes, and that cannot clash on any of them.

The rules are Microsoft's "Naming Files, Paths, and Namespaces" (reserved signs and device
names, no dot or space at the end, no difference between cases), to which are added the
limits of other systems: no control or direction-changing signs, no leading dot or hyphen,
and names that differ only in the Unicode form of a letter count as the same.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence

# Systems allow 255 bytes or 255 units; this leaves room for an extension, for a folder in
# front where whole paths are limited to 260, and for letters that come apart into three.
MOST_BYTES = 80

_RESERVED_SIGNS = frozenset('<>:"/\\|?*')
_DEVICES = frozenset(
    ["CON", "PRN", "AUX", "NUL", "CONIN$", "CONOUT$"]
    + [f"{port}{digit}" for port in ("COM", "LPT") for digit in "0123456789¹²³"]
)


def safe_names(wanted: Sequence[str], most_bytes: int = MOST_BYTES) -> list[str]:
    """A safe name, without extension, for each of ``wanted``, in their order, none twice.

    ``most_bytes`` is the length allowed in UTF-8, without the extension. Every script
    keeps its letters.
    """
    taken: set[str] = set()
    names = []
    for text in wanted:
        name = _first_free(_safe(text), taken, most_bytes)
        taken.add(clash_key(name))
        names.append(name)
    return names


def clash_key(name: str) -> str:
    """Equal for two names that some system would take for the same file."""
    return unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", name).upper().casefold())


def _safe(text: str) -> str:
    text = unicodedata.normalize("NFC", text)
    text = " ".join("".join(_kept(sign) for sign in text).split())
    return text.strip(" .").lstrip("-. ") or "unnamed"


def _kept(sign: str) -> str:
    category = unicodedata.category(sign)
    if category.startswith("Z") or sign in "\t\n\r\v\f":
        return " "
    if sign in _RESERVED_SIGNS:
        return "-"
    # C: controls, direction marks, halves of pairs, private and unassigned code points.
    return "" if category.startswith("C") else sign


def _first_free(name: str, taken: set[str], most_bytes: int) -> str:
    if name.split(".")[0].rstrip().upper() in _DEVICES:
        name = f"_{name}"
    candidate = _cut(name, most_bytes)
    count = 1
    while clash_key(candidate) in taken:
        count += 1
        ending = f" ({count})"
        candidate = _cut(name, most_bytes - len(ending)) + ending
    return candidate


def _cut(name: str, most_bytes: int) -> str:
    kept = name.encode()[:most_bytes].decode(errors="ignore")
    if len(kept) < len(name):
        # Not between a letter and the marks on it.
        while kept and unicodedata.combining(name[len(kept)]):
            kept = kept[:-1]
    return kept.rstrip(" .") or "unnamed"
