"""Write ``brief.toml``: as a first file with every key explained, or into the teacher's own.

tomlkit writes, because the teacher's comments must outlive a change made in the window.
"""

from __future__ import annotations

import os
import re
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from markbench.intake.brief_file import brief_keys, flat, parse_brief, value_of
from markbench.intake.brief_rules import ALLOWED
from markbench.model import Brief, say

_HEADER = re.compile(r"\s*\[\s*([A-Za-z0-9_-]+)\s*\]\s*(?:#.*)?$")
_EXAMPLES = {
    "opens": "2026-01-12",
    "closes": "2026-01-30",
    "keep_evidence_until": "2026-07-31",
    "support_height_m": "0.75",
    "late.most_days": "3",
    "place.latitude_deg": "3.1",
    "place.height_m": "60",
}


def default_brief_text() -> str:
    """A ``brief.toml`` with every key, its default and what it means."""
    lines = [
        "# What this class was asked to do. Every key may be left out; the value shown is",
        "# then used. A line that starts with # is not read.",
    ]
    table = ""
    brief = Brief()
    for key in brief_keys():
        head, _, leaf = key.rpartition(".")
        if head != table:
            table = head
            lines += ["", f"[{table}]"]
        rule = ALLOWED[key]
        value = value_of(brief, key)
        lines += ["", f"# {rule.about}", f"# Allowed: {rule.allowed}."]
        if value is None:
            lines.append(f"# {leaf} = {_EXAMPLES[key]}")
        else:
            lines.append(f"{leaf} = {_item(value).as_string()}")
    return "\n".join(lines) + "\n"


def _plain(value: Any) -> Any:
    return [_plain(item) for item in value] if isinstance(value, tuple) else value


def _item(value: Any) -> Any:
    """A value as tomlkit writes it, a mapping on one line."""
    import tomlkit

    if isinstance(value, Mapping):
        table = tomlkit.inline_table()
        table.update(value)
        return table
    return tomlkit.item(_plain(value))


def write_brief(path: Path, brief: Brief) -> None:
    """Write :func:`brief_text`, whole or not at all. Raises ``OSError`` when the disk refuses."""
    text = brief_text(path, brief)
    part = path.with_name(path.name + ".part")
    part.write_bytes(text.encode("utf-8"))
    os.replace(part, path)


def brief_text(path: Path, brief: Brief) -> str:
    """The brief as it would be written, with only the keys changed that differ.

    Comments and order are those of the file in place; without one, they are those of
    :func:`default_brief_text`. Raises ``ValueError`` when it cannot be parsed.
    """
    import tomlkit  # late: reading a class never needs it

    # Bytes, or the line ends of another system would not be kept.
    text = path.read_bytes().decode("utf-8-sig") if path.exists() else default_brief_text()
    try:
        document = tomlkit.parse(text)
    except tomlkit.exceptions.TOMLKitError as error:
        raise ValueError(
            say("{name} is not a readable brief: {error}", name=path.name, error=str(error))
        ) from error
    present = dict(flat(document.unwrap()))
    before, _ = parse_brief(text)
    changed = {}
    for key in brief_keys():
        value = value_of(brief, key)
        # A bad value in the file reads as the default, so it is put right here as well.
        kept = key in present and _reads_as(key, present[key], value)
        if not (kept or (key not in present and value_of(before, key) == value)):
            changed[key] = value
    for key, value in changed.items():
        if key not in present and value is not None:
            text = _beside_comment(text, key, value)
    document = tomlkit.parse(text)
    for key, value in changed.items():
        head, _, leaf = key.rpartition(".")
        if head and head not in document:
            document[head] = tomlkit.table()
        table: Any = document[head] if head else document
        if value is None:
            table.pop(leaf, None)
        elif leaf not in table or not _reads_as(key, table.unwrap()[leaf], value):
            table[leaf] = _item(value)
    return tomlkit.dumps(document)


def _beside_comment(text: str, key: str, value: Any) -> str:
    """The text with a key written below the line that has it as a comment; as it was where
    no line has.
    """
    head, _, leaf = key.rpartition(".")
    commented = re.compile(rf"#\s*{leaf}\s*=")
    lines, table = text.split("\n"), ""
    for at, line in enumerate(lines):
        opened = _HEADER.match(line)
        table = opened[1] if opened else table
        if table != head or not commented.match(line.lstrip()):
            continue
        end = "\r" if line.endswith("\r") else ""
        lines.insert(at + 1, f"{leaf} = {_item(value).as_string()}{end}")
        changed = "\n".join(lines)
        # A line within a text of several lines only looks like a comment.
        return changed if _reads_as(key, _parsed(changed).get(key), value) else text
    return text


def _parsed(text: str) -> dict[str, Any]:
    try:
        return dict(flat(tomllib.loads(text)))
    except (ValueError, RecursionError):
        return {}


def _reads_as(key: str, raw: Any, value: Any) -> bool:
    try:
        return bool(ALLOWED[key].read(raw) == value)
    except (ValueError, TypeError, OverflowError):
        return False
