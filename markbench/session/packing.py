"""Making a moderation pack: one file with the sampled portfolios and no names.

What goes in: the readings as a recomputed table (never the learner's own file, in whose
cells, properties and name the learner may stand), the findings and first marks with names
taken out, photos and films without tags. What stays behind is listed in the pack itself.
"""

from __future__ import annotations

import datetime as dt
import os
import re
import zipfile
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from markbench.intake.folder import open_piece
from markbench.intake.tree import PieceError
from markbench.model import Brief, Decision, Learner, Piece, say
from markbench.moderation.pack import (
    LEFT_OUT,
    MANIFEST,
    SHIPPED,
    FirstMark,
    LeftOut,
    Manifest,
    canonical,
    check_code,
    digest_of,
    numbers_for,
    summed_up,
)
from markbench.moderation.plain import to_plain
from markbench.moderation.scrubbing import Scrubber
from markbench.session.errors import PackError
from markbench.session.moderating import sample_of
from markbench.session.pack_media import NotCleanError, clean_photo, clean_video
from markbench.session.pack_reports import words_of
from markbench.session.session import Session

_CLEAN: Mapping[str, tuple[Callable[[bytes], bytes], str]] = {
    "setup_photo": (clean_photo, "jpg"),
    "selfie": (clean_photo, "jpg"),
    "photo": (clean_photo, "jpg"),
    "swing_video": (clean_video, "mp4"),
}
_KINDS: Mapping[str, str] = {
    "setup_photo": say("setup photo"),
    "selfie": say("selfie"),
    "photo": say("photo"),
    "swing_video": say("swing video"),
    "report": say("report"),
    "unknown": say("unknown"),
}


@dataclass(frozen=True, slots=True)
class Packed:
    """A pack that was written. ``code`` is for comparing by telephone.

    ``doubtful`` quotes what was left standing though it may be a name: for a look before
    the pack goes.
    """

    path: Path
    digest: str
    numbers: Mapping[str, str]
    left_out: tuple[LeftOut, ...]
    doubtful: tuple[str, ...] = ()

    @property
    def code(self) -> str:
        """The first digits of the digest, in groups."""
        return check_code(self.digest)


def write_pack(
    session: Session, path: Path, *, progress: Callable[[int, int, str], None] | None = None
) -> Packed:
    """Write the pack of the sample in force and record it in the journal.

    Raises :class:`PackError` without a sample, for a learner of the sample who is not
    fully marked, or where the file cannot be written.
    """
    sample = sample_of(session)
    if sample is None:
        raise PackError(say("No sample was drawn yet; draw one first."))
    known = {learner.id: learner for learner in session.learners}
    chosen = [known[learner] for learner in sample.ids if learner in known]
    unmarked = [learner.name for learner in chosen if session.total(learner.id) is None]
    if unmarked:
        raise PackError(say("Not fully marked yet: {names}.", names=", ".join(unmarked)))
    if not chosen:
        raise PackError(say("Nobody is in the sample."))
    numbers = numbers_for((learner.id for learner in chosen), sample.seed)
    scrubber = Scrubber.of(session.learners, numbers, _spoken(session))
    packing = _Packing(session, scrubber)
    part = path.with_name(path.name + ".part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        with zipfile.ZipFile(part, "w", zipfile.ZIP_DEFLATED) as archive:
            packing.archive = archive
            packing.add("brief.json", canonical(packing.plain(_for_moderator(session.brief))))
            packing.add("rubric.json", canonical(to_plain(session.rubric)))
            in_order = sorted(chosen, key=lambda learner: numbers[learner.id])
            for done, learner in enumerate(in_order, 1):
                packing.learner(learner, numbers[learner.id])
                if progress is not None:
                    progress(done, len(chosen), f"Learner {numbers[learner.id]}")
            manifest = canonical(to_plain(packing.manifest(sorted(numbers.values()))))
            packing.write(MANIFEST, manifest)
        os.replace(part, path)
    except OSError as error:
        raise PackError(
            say("{file} could not be written: {why}.", file=path.name, why=error.strerror or error)
        ) from error
    finally:
        part.unlink(missing_ok=True)
    digest = digest_of(manifest)
    value = {
        "numbers": {number: learner for learner, number in numbers.items()},
        "seed": sample.seed,
    }
    session.decide(Decision("pack", "", digest, value))
    doubtful = tuple(dict.fromkeys(packing.doubtful))
    return Packed(path, digest, numbers, tuple(packing.left_out), doubtful)


def _spoken(session: Session) -> str:
    """The rubric's own words: a name among them is also a word."""
    return " ".join(
        text
        for criterion in session.rubric.criteria
        for text in (
            *(level.descriptor for level in criterion.levels),
            *(phrase.text for phrase in criterion.phrases),
        )
    )


def _for_moderator(brief: Brief) -> Brief:
    """The brief without its pairs of learners."""
    return replace(brief, partners=())


class _Packing:
    """One pack being written: its members and their digests, and what was left out."""

    def __init__(self, session: Session, scrubber: Scrubber) -> None:
        self.session = session
        self.scrubber = scrubber
        self.archive: zipfile.ZipFile
        self.members: dict[str, str] = {}
        self.left_out: list[LeftOut] = []
        self.doubtful: list[str] = []

    def plain(self, value: Any) -> Any:
        """A value as JSON, without names."""
        return self.scrubber.tree(to_plain(value))

    def add(self, name: str, data: bytes) -> None:
        self.members[name] = digest_of(data)
        self.write(name, data)

    def write(self, name: str, data: bytes) -> None:
        # A fixed date: the time of packing says nothing, and the same content is the same file.
        self.archive.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), data)

    def manifest(self, learners: list[str]) -> Manifest:
        return Manifest(
            self.scrubber.text(self.session.brief.title),
            dt.date.today().isoformat(),
            tuple(learners),
            self.members,
            SHIPPED,
            (*LEFT_OUT, *(self.scrubber.text(line) for line in summed_up(self.left_out))),
        )

    def learner(self, learner: Learner, number: str) -> None:
        portfolio = self.session.portfolio(learner.id)
        files: dict[str, str] = {}
        pieces = []
        for piece in portfolio.pieces:
            packed = self.piece(piece, number)
            if packed is not None:
                files[piece.file] = packed.file
                pieces.append(packed)
            else:  # told apart from what the moderator can open
                files[piece.file] = f"{number}/{piece.kind} (not in the pack)"
        for place, piece in enumerate(portfolio.earlier, 1):
            files[piece.file] = f"{number}/earlier_{piece.kind}_{place} (not in the pack)"
        if portfolio.table is not None:
            files[portfolio.table.source.file] = f"{number}/readings"
        body = {
            "table": None if portfolio.table is None else to_plain(portfolio.table),
            "findings": to_plain(self.session.findings(learner.id)),
        }
        body = self.scrubber.tree(_with_files(body, files, number))
        body["pieces"] = to_plain(pieces)
        packed_kinds = {piece.kind for piece in pieces}
        # So that the moderator takes for missing only what was not handed in.
        body["kept_back"] = sorted({one.kind for one in portfolio.pieces} - packed_kinds)
        for finding in body["findings"]:
            finding["learner"] = number
        self.add(f"{number}/portfolio.json", canonical(body))
        firsts = [
            self.first(learner.id, criterion.id) for criterion in self.session.rubric.criteria
        ]
        self.add(f"{number}/first.json", canonical(self.plain(firsts)))

    def first(self, learner: str, criterion: str) -> FirstMark:
        mark = self.session.mark(learner, criterion)
        assert mark is not None  # checked before packing
        draft = self.session.draft(learner, criterion)
        why = self.session.state["mark", learner, criterion].why
        for text in (mark.feedback, why):  # what a person wrote; the program names nobody so
            self.doubtful += self.scrubber.doubts(text)
        return FirstMark(
            criterion,
            mark.level,
            mark.marks,
            mark.feedback,
            mark.by,
            why,
            draft.level,
            tuple(reason.text for reason in draft.reasons),
        )

    def piece(self, piece: Piece, number: str) -> Piece | None:
        """A photo or film made fit to leave; ``None``, with the reason noted, if it cannot be."""
        if piece.kind == "readings":
            return None
        if piece.kind == "report":
            return self.report(piece, number)
        why = say("nobody has said what it is") if piece.kind == "unknown" else ""
        may_show_a_face = piece.kind in ("selfie", "photo")
        if may_show_a_face and not self.session.brief.selfies_in_pack:
            why = say("the brief does not allow photos of learners")
        if not why:
            clean, ending = _CLEAN[piece.kind]
            try:
                data = clean(open_piece(self.session.folder, piece.file))
            except (NotCleanError, PieceError) as error:
                why = str(error)
            else:
                same = sum(name.startswith(f"{number}/{piece.kind}") for name in self.members)
                name = f"{number}/{piece.kind}_{same + 1}.{ending}"
                self.add(name, data)
                return Piece(name, piece.kind, "teacher", len(data), digest=digest_of(data))
        self.leave_out(piece, number, why)
        return None

    def leave_out(self, piece: Piece, number: str, why: str) -> None:
        self.left_out.append(LeftOut(number, _KINDS[piece.kind], why))

    def report(self, piece: Piece, number: str) -> Piece | None:
        """A written report as its words alone, names taken out, where the brief allows it."""
        if not self.session.brief.reports_in_pack:
            self.leave_out(piece, number, say("the brief does not allow written reports"))
            return None
        try:
            words = words_of(piece.file, open_piece(self.session.folder, piece.file))
        except (NotCleanError, PieceError) as error:
            self.leave_out(piece, number, str(error))
            return None
        self.doubtful += self.scrubber.doubts(words)
        data = self.scrubber.text(words).encode()
        same = sum(name.startswith(f"{number}/report") for name in self.members)
        name = f"{number}/report_{same + 1}.txt"
        self.add(name, data)
        return Piece(name, "report", "teacher", len(data), digest=digest_of(data))


def _with_files(value: Any, files: Mapping[str, str], number: str) -> Any:
    """A tree of JSON in which no file of the learner's is named any more."""
    if isinstance(value, dict):
        return {
            key: files.get(inner, f"{number}/other")
            if key == "file" and isinstance(inner, str)
            else _with_files(inner, files, number)
            for key, inner in value.items()
        }
    if isinstance(value, list):
        return [_with_files(inner, files, number) for inner in value]
    if isinstance(value, str):
        return _renamed(value, files)
    return value


def _renamed(text: str, files: Mapping[str, str]) -> str:
    """A sentence in which files go by their names in the pack, all replaced in one go."""
    names = dict(files)
    for file, packed in files.items():
        names.setdefault(file.rpartition("/")[2], packed)
    known = sorted((name for name in names if len(name) > 3), key=len, reverse=True)
    if not any(name in text for name in known):
        return text
    return re.sub("|".join(map(re.escape, known)), lambda found: names[found[0]], text)
