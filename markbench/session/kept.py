"""What the journal keeps of photos, films and tables that were removed after sign-off.

One decision of kind ``kept`` for each learner: the pieces as they were known, the readings
where the table went too, and what had been measured in photos and films, without pictures of
any kind: no fingerprint (a small picture in itself) and no trace of the swing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from markbench.model import Finding, Portfolio, State
from markbench.moderation.plain import from_plain, to_plain
from markbench.session.evidence import Seen

KEPT = "kept"


def keep(
    portfolio: Portfolio, seen: Seen, repeats: tuple[Finding, ...]
) -> Mapping[str, Any] | None:
    """The value of a ``kept`` decision for the pieces of ``portfolio``; ``None`` for none."""
    files = {piece.file for piece in (*portfolio.pieces, *portfolio.earlier)}
    if not files:
        return None
    return {
        "portfolio": to_plain(portfolio),
        "photos": {
            file: to_plain(replace(look, print=None))
            for file, look in seen.photos.items()
            if file in files
        },
        "films": {
            file: to_plain(replace(film, times_s=(), displacement_px=(), swing_marks_s=()))
            for file, film in seen.films.items()
            if file in files
        },
        "repeats": to_plain(repeats),
    }


def kept_portfolios(state: State) -> dict[str, Portfolio]:
    """Learner id → what is kept of removed files."""
    return {
        learner: from_plain(Portfolio, d.value["portfolio"])
        for (kind, learner, _), d in state.items()
        if kind == KEPT
    }


def with_kept(seen: Seen, state: State) -> Seen:
    """What was seen, with what is kept of the pieces that are gone."""
    values = {learner: d.value for (kind, learner, _), d in state.items() if kind == KEPT}
    if not values:
        return seen
    # Decoders are loaded for such classes only.
    from markbench.evidence.photos import PhotoLook
    from markbench.evidence.video.judge import SwingMeasurement

    photos, films = dict(seen.photos), dict(seen.films)
    repeats: dict[str, tuple[Finding, ...]] = {}
    for learner, value in values.items():
        for file, plain in value["photos"].items():
            photos[file] = from_plain(PhotoLook, plain)
        for file, plain in value["films"].items():
            films[file] = from_plain(SwingMeasurement, plain)
        repeats[learner] = from_plain(tuple[Finding, ...], value["repeats"])
    return Seen(photos, films, seen.alike, repeats)
