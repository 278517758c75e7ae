"""Removing a class's photos and films after sign-off, with marks, readings and results kept.

The only writing to what the learners handed in (intake/removal.py), and only so: the marks
are signed off, a person has seen what goes and what stays, and said yes. First the journal
keeps what was known of each piece; then the files go; then a decision of kind ``purge`` says
what went, each file with its size and SHA-256. A crash in between leaves files that are still
there and can be removed again, never marks without their grounds.

What is removed is unlinked, not shredded, and copies elsewhere (a share, a phone, a mailbox,
the school's backups) are out of reach; the page and the README say so.
"""

from __future__ import annotations

import hashlib
from collections import Counter
from collections.abc import Iterable, Set
from dataclasses import dataclass, replace
from pathlib import Path

from markbench.intake.class_list import CLASS_LIST_ENDINGS
from markbench.intake.removal import remove
from markbench.intake.tree import PieceError, Shelf
from markbench.model import Decision, Piece, Portfolio, say
from markbench.moderation.records import sign_off_of
from markbench.session.endings import PACK_ENDING
from markbench.session.errors import RefusedError
from markbench.session.evidence import is_media, look
from markbench.session.kept import KEPT, keep
from markbench.session.session import Progress, Session

KIND = "purge"
Digests = dict[str, tuple[str, int]]


@dataclass(frozen=True, slots=True)
class Heap:
    """Files of one kind: how many, and their bytes."""

    kind: str
    count: int
    size_bytes: int


@dataclass(frozen=True, slots=True)
class Plan:
    """What would go and what would stay; ``why_not`` is empty where it may be done.

    ``goes`` and ``stays`` are sorted by kind; ``packs`` are moderation packs in the class
    folder, which hold copies of photos and go as well.
    """

    files: tuple[str, ...]
    packs: tuple[str, ...]
    goes: tuple[Heap, ...]
    stays: tuple[Heap, ...]
    everything: bool
    why_not: str

    @property
    def count(self) -> int:
        """How many files would go."""
        return len(self.files) + len(self.packs)

    @property
    def size_bytes(self) -> int:
        """Their bytes."""
        return sum(heap.size_bytes for heap in self.goes)


@dataclass(frozen=True, slots=True)
class Purged:
    """What went: files with their digests, and ``left``: those that could not be removed."""

    count: int
    size_bytes: int
    left: dict[str, str]


def plan(session: Session, *, everything: bool = False) -> Plan:
    """What :func:`purge` would do. ``everything``: tables, reports and all else as well."""
    there: dict[str, Piece] = {}
    for piece in _pieces(session):
        file = _file_of(piece)
        if not piece.gone and file not in there:
            there[file] = piece
    goes = {f: p for f, p in there.items() if everything or is_media(p)}
    stays = {f: p for f, p in there.items() if f not in goes}
    packs = {
        path.relative_to(session.folder).as_posix(): ("pack", path.stat().st_size)
        for path in sorted(session.folder.rglob(f"*{PACK_ENDING}"))
        if path.is_file()
    }
    why_not = ""
    if session.read_only:
        why_not = "The class is open for reading only."
    elif sign_off_of(session.state) is None:
        why_not = "The marks are not signed off yet; until then the evidence may be needed."
    elif not goes and not packs:
        why_not = "Nothing of this kind is in the class folder."
    return Plan(
        files=tuple(goes),
        packs=tuple(packs),
        goes=_heaps([*((p.kind, p.size_bytes) for p in goes.values()), *packs.values()]),
        stays=_heaps((p.kind, p.size_bytes) for p in stays.values()),
        everything=everything,
        why_not=why_not,
    )


def purge(session: Session, agreed: Plan, *, progress: Progress | None = None) -> Purged:
    """Remove what was shown in ``agreed``, for good.

    Raises :class:`RefusedError` before sign-off, and where the folder no longer holds just
    what was shown: then the person is to look again.
    """
    now = plan(session, everything=agreed.everything)
    if now.why_not:
        raise RefusedError(now.why_not)
    if (set(now.files), set(now.packs)) != (set(agreed.files), set(agreed.packs)):
        raise RefusedError(say("The class folder has changed since this was shown; look again."))
    _look_first(session, progress)
    digests = _digests(session.folder, (*now.files, *now.packs), progress)
    _keep_what_is_known(session, now, digests)
    troubles = remove(session.folder, (*now.files, *now.packs))
    _forget_small_pictures(digests)
    went = [file for file in (*now.files, *now.packs) if file not in troubles]
    value = {
        "everything": now.everything,
        "went": [{"file": f, "bytes": digests[f][1], "sha256": digests[f][0]} for f in went],
        "left": troubles,
    }
    # Purging again adds to what went: each has a decision of its own.
    session.decide(Decision(KIND, "", f"{len(session.history())}", value))
    return Purged(len(went), sum(digests[file][1] for file in went), troubles)


def purged_files(session: Session) -> int:
    """How many files were removed so far."""
    return sum(len(d.value["went"]) for (kind, _, _), d in session.state.items() if kind == KIND)


def _pieces(session: Session) -> Iterable[Piece]:
    work = session.work
    for portfolio in work.portfolios.values():
        yield from portfolio.pieces
        yield from portfolio.earlier
    yield from (*work.unowned, *work.set_aside)
    yield from (doubt.piece for doubt in work.doubts)


def _file_of(piece: Piece) -> str:
    """The file behind a piece, which may be one row of a class sheet (``a.xlsx#Sheet!A4``)."""
    sheet, _, row = piece.file.rpartition("#")
    return sheet if "!" in row and sheet.casefold().endswith(CLASS_LIST_ENDINGS) else piece.file


def _heaps(found: Iterable[tuple[str, int]]) -> tuple[Heap, ...]:
    counts: Counter[str] = Counter()
    sizes: Counter[str] = Counter()
    for kind, size in found:
        counts[kind] += 1
        sizes[kind] += size
    return tuple(Heap(kind, counts[kind], sizes[kind]) for kind in sorted(counts))


def _look_first(session: Session, progress: Progress | None) -> None:
    """Measure what was not looked at yet: afterwards it is too late."""
    seen = {*session.seen.photos, *session.seen.films}
    pieces = (p for one in session.work.portfolios.values() for p in one.pieces)
    if any(is_media(p) and not p.gone and p.file not in seen for p in pieces):
        session.see(look(session.work, session.folder, progress))


def _digests(folder: Path, files: Iterable[str], progress: Progress | None) -> Digests:
    """File → (SHA-256, bytes); an unreadable file has an empty digest."""
    files = list(files)
    found: Digests = {}
    with Shelf(folder) as shelf:
        for done, file in enumerate(files):
            digest, size = hashlib.sha256(), 0
            try:
                for chunk in shelf.chunks(file):
                    digest.update(chunk)
                    size += len(chunk)
                found[file] = (digest.hexdigest(), size)
            except PieceError:
                found[file] = ("", size)
            if progress is not None:
                progress(done, len(files), file)
    return found


def _keep_what_is_known(session: Session, now: Plan, digests: Digests) -> None:
    going = set(now.files)
    decisions: list[Decision] = []
    for learner in session.learners:
        portfolio = _known(session.portfolio(learner.id), going, digests)
        value = keep(portfolio, session.seen, session.repeats_of(learner.id))
        if value is not None:
            decisions.append(Decision(KEPT, learner.id, "", value))
    session.decide(*decisions)


def _known(held: Portfolio, going: Set[str], digests: Digests) -> Portfolio:
    """What is to be kept of one portfolio, and is kept already."""

    def kept(pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
        return tuple(
            replace(one, gone=True, digest=one.digest or digests.get(one.file, ("", 0))[0])
            for one in pieces
            if one.gone or _file_of(one) in going
        )

    pieces, earlier = kept(held.pieces), kept(held.earlier)
    files = {_file_of(piece) for piece in (*pieces, *earlier)}
    table = held.table if held.table is not None and held.table.source.file in files else None
    findings = tuple(
        one
        for one in held.findings
        if table is not None or any(source.file in files for source in one.sources)
    )
    written = None if table is None else held.written
    return Portfolio(held.learner, pieces, earlier, table, findings, written)


def _forget_small_pictures(digests: Digests) -> None:
    """What the cache holds of these files, and every small picture (made again when seen)."""
    from markbench.evidence.cache import Cache

    Cache().forget({digest for digest, _ in digests.values() if digest})
