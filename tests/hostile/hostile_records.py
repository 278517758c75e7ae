"""Readers of journals, packs and replies, held to what they promise.

What a file is wrapped in (a chain of digests, a manifest, a reply's own digest) is made sound
again, so that not every input dies at the door.
"""

from __future__ import annotations

import functools
import json
from pathlib import Path
from typing import Any

import hostile_seeds as seeds
from hostile_promises import plain_json, sentence

from markbench.intake.tables import ColumnHints, read_readings
from markbench.model import Brief, Decision
from markbench.moderation.pack import canonical, digest_of
from markbench.moderation.plain import to_plain
from markbench.rubric import find_rubric
from markbench.session import Session
from markbench.session.errors import MergeError, PackError
from markbench.session.pack_session import open_pack
from markbench.session.phrases import offers, phrases
from markbench.session.replies import read_reply
from markbench.store import Journal, StoreDamagedError, StoreError, salvage

# -- the journal, packs and replies ------------------------------------------------------


@functools.cache
def sound_journal() -> bytes:
    place = seeds.Path(seeds.__file__).parent / "corpus" / "sound.journal"
    return place.read_bytes()


def read_journal(data: bytes, folder: Path) -> None:
    path = folder / "class.markbench"
    path.write_bytes(data)
    try:
        with Journal.open(path, read_only=True) as journal:
            journal.all()
            journal.verify()
        with Journal.open(path) as journal:
            kept = journal.append([Decision("note", "A1", "", "one more")])
            assert journal.all()[-1] == kept[0]
    except StoreDamagedError as error:
        sentence(str(error))
        try:
            sentence(str(salvage(path)))
        except StoreError as error:
            sentence(str(error))
    except StoreError as error:
        sentence(str(error))


def read_entry(data: bytes, folder: Path) -> None:
    """A journal whose chain is sound and whose entries say what ``data`` says."""
    import sqlite3
    from contextlib import closing

    path = folder / "class.markbench"
    Journal.open(path).close()
    line = data.decode("latin-1")
    with closing(sqlite3.connect(path)) as connection:
        digest = digest_of(line.encode("ascii", "replace"))
        connection.execute("INSERT INTO journal VALUES (1, ?, ?)", (line, digest))
        connection.commit()
    try:
        with Journal.open(path) as journal:
            journal.all()
    except StoreError as error:
        sentence(str(error))
        try:
            salvage(path)
        except StoreError as error:
            sentence(str(error))


def open_over_decisions(data: bytes, folder: Path) -> None:
    """A class opened over decisions whose values are of no kind the program writes."""
    value = plain_json(data)
    entries = value if isinstance(value, list) else [value]
    (folder / "A1 Ada readings.csv").write_bytes(seeds.READINGS)
    (folder / "class_list.csv").write_bytes(seeds.CLASS_LIST)
    decisions = [
        Decision(str(e.get("kind")), str(e.get("learner")), str(e.get("subject")), e.get("value"),
                 who="x")
        for e in entries[:20]
        if isinstance(e, dict)
    ]  # fmt: skip
    try:
        with Journal.open(folder / "class.markbench") as journal:
            journal.append(decisions)
        session = Session.open(folder, "T. Teacher")
    except StoreError as error:
        sentence(str(error))
        return
    try:
        phrases(session)
        offers(session, "A1", session.rubric.criteria[0].id, "l")
        for learner in session.learners:
            session.total(learner.id)
    finally:
        session.close()


@functools.cache
def pack_members() -> dict[str, Any]:
    table = read_readings("t.csv", seeds.READINGS, Brief(), "01")
    first = [
        {"criterion": c.id, "level": c.levels[0].name, "marks": c.levels[0].marks,
         "feedback": "Well timed.", "by": "T. Teacher"}
        for c in find_rubric("short").criteria
    ]  # fmt: skip
    return {
        "brief.json": to_plain(Brief()),
        "rubric.json": to_plain(find_rubric("short")),
        "01/portfolio.json": {
            "pieces": [], "table": to_plain(table.table), "findings": to_plain(table.findings),
        },
        "01/first.json": first,
    }  # fmt: skip


def _packed(members: dict[str, bytes], more: dict[str, Any] | None = None) -> bytes:
    manifest = {
        "title": "x", "made": "2026-01-05", "learners": ["01"],
        "members": {name: digest_of(data) for name, data in members.items()},
        "shipped": [], "left_out": [], "format": "markbench-pack", "version": 1, **(more or {}),
    }  # fmt: skip
    return seeds.zipped({**members, "manifest.json": canonical(manifest)})


def sound_pack() -> bytes:
    return _packed({name: canonical(value) for name, value in pack_members().items()})


def read_pack(data: bytes, folder: Path) -> None:
    path = folder / "class.markbench-pack"
    path.write_bytes(data)
    try:
        session = open_pack(path, "M. Moderator")
    except (PackError, StoreError) as error:
        sentence(str(error))
        return
    try:
        for learner in session.learners:
            session.findings(learner.id)
            for criterion in session.rubric.criteria:
                session.second_mark(learner.id, criterion.id, criterion.levels[0].name)
            session.first(learner.id)
    except PackError as error:
        sentence(str(error))
    finally:
        session.close()


def read_pack_part(data: bytes, folder: Path) -> None:
    """One part of a pack says anything; its digest is right."""
    parts = list(pack_members())
    members = {name: canonical(value) for name, value in pack_members().items()}
    members[parts[data[0] % len(parts)] if data else parts[0]] = data[1:]
    read_pack(_packed(members), folder)


class _NoSession:
    """As much of a session as reading a reply asks for."""

    rubric = find_rubric("short")

    def value(self, kind: str, learner: str = "", subject: str = "") -> Any:
        return {"numbers": {"01": "A1"}} if subject == "d" else None


def sound_reply() -> bytes:
    criterion = _NoSession.rubric.criteria[0]
    mark = {"level": criterion.levels[0].name, "marks": criterion.levels[0].marks, "feedback": ""}
    at = "2026-01-05T10:00:00+00:00"
    moderated = {"action": "agree", "level": None, "marks": None, "first_seen": 1.0}
    subject = f"{criterion.id}|M"
    entries = [
        {"kind": "second_mark", "learner": "01", "subject": subject, "value": mark},
        {"kind": "first_seen", "learner": "01", "subject": "M", "value": True},
        {"kind": "moderated", "learner": "01", "subject": subject, "value": moderated},
    ]
    body = {"format": "markbench-reply", "version": 1, "pack": "d", "who": "M",
            "decisions": [{**entry, "at": at, "why": ""} for entry in entries]}  # fmt: skip
    return json.dumps(body).encode()


def read_a_reply(data: bytes, folder: Path) -> None:
    try:
        body = json.loads(data)
        if isinstance(body, dict):
            data = json.dumps(seeds.sealed(body)).encode()
    except (ValueError, RecursionError):
        pass
    path = folder / "m.markbench-reply"
    path.write_bytes(data)
    try:
        read_reply(_NoSession(), path)  # type: ignore[arg-type]
    except MergeError as error:
        sentence(str(error))


def sound_decisions() -> list[bytes]:
    values: dict[str, Any] = {
        "mark": {"level": "Complete", "marks": 1, "feedback": "x"},
        "hints": ColumnHints("A", ("B", "C")).to_json(),
        "typed": [{"length_m": 0.2, "swings": 10, "timings_s": [9.0, 8.9]}],
        "phrase": {"text": "Well timed, {g}.", "criterion": "raw", "about": ["slip:half"]},
        "owner": "A1", "piece_kind": "readings", "correction": "9.1", "agreed_slip": None,
        "extension": "2026-01-09", "swing_count": 10, "sign_off": {"results": {}},
        "feedback": "x", "note": "y", "second_mark": {"level": "Complete", "marks": 1},
        "moderated": {"action": "agree"}, "adjustment": {"choice": "leave", "shift": 0.0},
        "piece_status": "accepted", "blind": {"seed": 1}, "sample": {"ids": ["A1"], "seed": 1},
    }  # fmt: skip
    subject = {"correction": "A1 Ada readings.csv||B2", "typed": "", "agreed_slip": ""}
    return [
        json.dumps(
            [{"kind": kind, "learner": "A1", "subject": subject.get(kind, "raw"), "value": value}]
        ).encode()
        for kind, value in values.items()
    ]


def sound_entry() -> bytes:
    from markbench.store.entry import encode

    return encode(Decision("note", "A1", "", "said", number=1, who="T")).encode()


def sound_parts() -> list[bytes]:
    return [bytes([at]) + canonical(value) for at, value in enumerate(pack_members().values())]
