"""What a moderation pack holds, read with every byte checked against its manifest."""

from __future__ import annotations

import json
import zipfile
import zlib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from markbench.model import (
    Brief,
    Finding,
    Learner,
    Piece,
    Portfolio,
    ReadingsTable,
    Rubric,
    joined,
    say,
)
from markbench.moderation.pack import MANIFEST, PACK_FORMAT, VERSION, Manifest, digest_of
from markbench.moderation.plain import from_plain
from markbench.session.errors import PackError

_MOST_BYTES = 1_000_000_000


@dataclass(frozen=True, slots=True)
class Content:
    """A pack as read: every text in it has been checked against the manifest."""

    digest: str
    manifest: Manifest
    brief: Brief
    rubric: Rubric
    portfolios: dict[str, Portfolio]
    kept_back: dict[str, frozenset[str]]


def read_content(path: Path) -> Content:
    """Read a pack. Raises :class:`PackError` for one that is damaged, changed or none."""
    try:
        with zipfile.ZipFile(path) as archive:
            names = archive.namelist()
    except FileNotFoundError as error:
        raise PackError(say("There is no pack at {file}.", file=path)) from error
    except (OSError, zipfile.BadZipFile) as error:
        raise PackError(
            say("{file} is no moderation pack, or it is damaged.", file=path.name)
        ) from error
    if MANIFEST not in names:
        raise PackError(say("{file} is no moderation pack: it has no manifest.", file=path.name))
    raw = _bytes(path, MANIFEST)
    plain = _parsed(raw, MANIFEST)
    if not isinstance(plain, dict) or plain.get("format") != PACK_FORMAT:
        raise PackError(say("{file} is no moderation pack.", file=path.name))
    if plain.get("version") != VERSION:
        raise PackError(
            say(
                "{file} was made by another version of Markbench (pack version {version}; "
                "this one reads {own}).",
                file=path.name,
                version=plain.get("version"),
                own=VERSION,
            )
        )
    manifest: Manifest = typed(Manifest, plain, say("manifest"))
    _refuse_changed(path, names, manifest)
    portfolios = {number: _portfolio(path, number, manifest) for number in manifest.learners}
    return Content(
        digest_of(raw),
        manifest,
        typed(Brief, json_in(path, "brief.json", manifest), say("brief")),
        typed(Rubric, json_in(path, "rubric.json", manifest), say("rubric")),
        portfolios,
        {number: _kept_back(path, number, manifest) for number in manifest.learners},
    )


def _refuse_changed(path: Path, names: list[str], manifest: Manifest) -> None:
    """Every member is as the manifest says, none is missing, and none was slipped in."""
    known = (*manifest.members, MANIFEST)
    twice = [name for name in sorted(set(names)) if names.count(name) > 1]
    wrong = [say("{name} stands in it twice", name=name) for name in twice]
    wrong += [say("{name} was slipped in", name=name) for name in names if name not in known]
    wrong += [say("{name} is missing", name=name) for name in known if name not in names]
    if not wrong:
        for name, digest in manifest.members.items():
            if digest_of(_bytes(path, name)) != digest:
                wrong.append(say("{name} is not as it was packed", name=name))
    if wrong:
        raise PackError(
            say(
                "{file} was changed or damaged on its way: {wrong}.",
                file=path.name,
                wrong=joined(wrong, "; "),
            )
        )


def _portfolio(path: Path, number: str, manifest: Manifest) -> Portfolio:
    body = json_in(path, f"{number}/portfolio.json", manifest)
    if not isinstance(body, dict):
        raise PackError(say("The portfolio of learner {number} cannot be read.", number=number))
    return Portfolio(
        Learner(number, f"Learner {number}"),
        pieces=_pieces(body, number),
        table=typed(ReadingsTable | None, body.get("table"), say("table of learner {n}", n=number)),
        findings=typed(
            tuple[Finding, ...], body.get("findings"), say("findings of learner {n}", n=number)
        ),
    )


def _pieces(body: dict[str, Any], number: str) -> tuple[Piece, ...]:
    what = say("pieces of learner {n}", n=number)
    found: tuple[Piece, ...] = typed(tuple[Piece, ...], body.get("pieces"), what)
    return found


def _kept_back(path: Path, number: str, manifest: Manifest) -> frozenset[str]:
    body = json_in(path, f"{number}/portfolio.json", manifest)
    what = say("pieces of learner {n}", n=number)
    return frozenset(typed(tuple[str, ...], body.get("kept_back"), what))


def json_in(path: Path, name: str, manifest: Manifest) -> Any:
    """A member that is JSON, as plain data."""
    return _parsed(member(path, name, manifest), name)


def member(path: Path, name: str, manifest: Manifest) -> bytes:
    """A member, checked again at every reading: the file may change under an open window."""
    data = _bytes(path, name)
    if digest_of(data) != manifest.members.get(name):
        raise PackError(say("{file} in {pack} is not as it was packed.", file=name, pack=path.name))
    return data


def _bytes(path: Path, name: str) -> bytes:
    try:
        with zipfile.ZipFile(path) as archive, archive.open(name) as member:
            data = member.read(_MOST_BYTES + 1)
    except (KeyError, OSError, zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError,
            RuntimeError) as error:  # fmt: skip
        raise PackError(
            say("{file} in {pack} is missing or damaged.", file=name, pack=path.name)
        ) from error
    if len(data) > _MOST_BYTES:
        raise PackError(
            say("{file} in {pack} is larger than any piece may be.", file=name, pack=path.name)
        )
    return data


def _parsed(data: bytes, name: str) -> Any:
    try:
        return json.loads(data)
    except (ValueError, RecursionError) as error:
        raise PackError(say("{file} in the pack cannot be read.", file=name)) from error


def typed(kind: Any, plain: Any, what: str) -> Any:
    """Plain data as a value of ``kind``; :class:`PackError` names ``what`` does not fit."""
    try:
        return from_plain(kind, plain)
    except (ValueError, TypeError, AttributeError) as error:
        raise PackError(
            say("The {what} in the pack cannot be read: {why}.", what=what, why=str(error))
        ) from error
