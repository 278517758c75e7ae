"""Looking at a class's photos and films: slow work, done apart from the session.

:func:`look` touches no session and may run on any thread; what it returns is handed to
``Session.see`` on the thread that gives the commands.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING

from markbench.intake.folder import open_piece
from markbench.model import Analysis, ClassWork, Finding, Piece, State

# Decoders and signal processing take longer to load than a class to read; they are loaded
# only when there is something to look at.
if TYPE_CHECKING:
    from markbench.evidence.photos import Alike, PhotoLook
    from markbench.evidence.video.judge import SwingMeasurement

Progress = Callable[[int, int, str], None]
Stop = Callable[[], bool]


@dataclass(frozen=True, slots=True)
class Seen:
    """What was seen so far, by file.

    ``alike``: pairs of photos that show the same picture. ``repeats``: by learner, the
    questions about repeated photos that are kept from photos which are gone.
    """

    photos: Mapping[str, PhotoLook] = field(default_factory=dict)
    films: Mapping[str, SwingMeasurement] = field(default_factory=dict)
    alike: tuple[Alike, ...] = ()
    repeats: Mapping[str, tuple[Finding, ...]] = field(default_factory=dict)


def is_media(piece: Piece) -> bool:
    """Whether a piece is a photo or a film."""
    return piece.kind in ("setup_photo", "selfie", "photo", "swing_video")


def look(
    work: ClassWork, folder: Path, progress: Progress | None = None, stop: Stop = lambda: False
) -> Seen:
    """Look at every photo and film of a class; each file is measured once and remembered."""
    from markbench.evidence.class_look import look_at_class
    from markbench.evidence.photos import alike_photos
    from markbench.evidence.video.judge import SwingMeasurement

    photos: dict[str, PhotoLook] = {}
    films: dict[str, SwingMeasurement] = {}
    alike: tuple[Alike, ...] | None = None
    pieces = [p for one in work.portfolios.values() for p in one.pieces if not p.gone]
    for piece, found in look_at_class(
        pieces, lambda piece: open_piece(folder, piece.file), progress=progress, stop=stop
    ):
        if isinstance(found, SwingMeasurement):
            # Photos came first; whoever stops among the films has them compared.
            alike = alike_photos(photos, stop) if alike is None else alike
            films[piece.file] = found
        else:
            photos[piece.file] = found
    return Seen(photos, films, alike_photos(photos, stop) if alike is None else alike)


def counted(seen: Seen, state: State) -> Seen:
    """The same with the teacher's own counts in place of the measured ones."""
    hers = {s: int(d.value) for (kind, _, s), d in state.items() if kind == "swing_count"}
    films = {
        file: replace(film, complete_swings=hers[file]) if file in hers else film
        for file, film in seen.films.items()
    }
    return replace(seen, films=films)


def repeats(work: ClassWork, seen: Seen) -> Mapping[str, tuple[Finding, ...]]:
    """Questions that need all photos of the class side by side."""
    if not seen.photos:
        return {}
    # Of photos that are gone no fingerprint is kept; their questions are.
    there = {file for file, look in seen.photos.items() if look.print is not None}
    alike = [pair for pair in seen.alike if there.issuperset(pair[:2])]

    from markbench.evidence.photos import repeated_photos

    owners = {piece.file: i for i, p in work.portfolios.items() for piece in p.pieces}
    fresh = repeated_photos(alike, owners)
    return {i: (*fresh.get(i, ()), *seen.repeats.get(i, ())) for i in {*fresh, *seen.repeats}}


def findings_of(
    work: ClassWork, analyses: Mapping[str, Analysis], seen: Seen
) -> dict[str, tuple[Finding, ...]]:
    """The questions that photos and films raise one by one, for the learners of ``analyses``."""
    if not (seen.photos or seen.films):
        return {}
    from markbench.evidence.photos import findings_of_photo
    from markbench.evidence.video.compare import findings_of_video

    found: dict[str, tuple[Finding, ...]] = {}
    for learner, analysis in analyses.items():
        mine: list[Finding] = []
        for piece in work.portfolios[learner].pieces:
            if photo := seen.photos.get(piece.file):
                mine += findings_of_photo(photo, piece.file, learner, work.brief)
            if film := seen.films.get(piece.file):
                mine += findings_of_video(film, piece.file, learner, work.brief, analysis.rows)
        found[learner] = tuple(mine)
    return found


def film_weights(
    work: ClassWork, analyses: Mapping[str, Analysis], seen: Seen
) -> dict[str, Mapping[str, float]]:
    """What each learner's film says of the ways the swings may have been counted."""
    if not seen.films:
        return {}
    from markbench.evidence.video.compare import video_evidence

    weights = {}
    for learner, analysis in analyses.items():
        pieces = work.portfolios[learner].pieces
        films = [seen.films[piece.file] for piece in pieces if piece.file in seen.films]
        measured = next((film for film in films if film.accepted), None)
        if measured is not None and analysis.rows:
            weights[learner] = video_evidence(measured, analysis.rows)
    return weights
