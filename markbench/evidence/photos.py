"""Questions put to a learner's photos, and to a class's photos side by side."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy import ndimage

from markbench.evidence.fingerprint import Fingerprint, fingerprint, repeated_pairs
from markbench.evidence.picture import Header, PictureError, open_upright, read_header
from markbench.evidence.troubles import TROUBLES
from markbench.model import Brief, Concern, Finding, Source, say
from markbench.model.sentence import known_again

# Two files and how far their pictures agree.
Alike = tuple[str, str, float]

# The eye judges sharpness on a screen, so every photo is judged at one size.
_JUDGED_EDGE = 512
# Below this a face or a scale can hardly be made out (common practice, no source).
SMALL_PIXELS = 320 * 240
# Grey levels: spread of a picture that shows nothing.
BLANK_SPREAD = 6.0
# Sharpness below which a photo is questioned: drawn photos blurred by σ = 4 pixels in 960,
# 0.4 % of the picture (DECISION-photos.md). Not set against real photos.
BLURRED = 0.04


@dataclass(frozen=True, slots=True, eq=False)
class PhotoLook:
    """What was found in one photo: ``spread`` of its grey levels; ``sharpness`` as
    :func:`sharpness_of`; ``problem`` says in words why it could not be opened."""

    header: Header | None
    spread: float
    sharpness: float
    print: Fingerprint | None
    problem: str = ""


def look_at_photo(data: bytes) -> PhotoLook:
    """Open and measure one photo; a broken one is a result, not an error."""
    try:
        header = read_header(data)
        image = open_upright(data, most_edge=_JUDGED_EDGE)
    except PictureError as error:
        return PhotoLook(None, 0.0, 0.0, None, str(error))
    grey = np.asarray(image.convert("L"), dtype=float)
    spread = float(np.percentile(grey, 98) - np.percentile(grey, 2))
    return PhotoLook(header, spread, sharpness_of(image), fingerprint(image))


def sharpness_of(image: Image.Image) -> float:
    """How quickly the picture's clearest edges change, 0 to about 1; blur lowers it.

    At a long edge of 512 pixels: the 99.5th percentile of the absolute Laplacian of the
    lightly smoothed grey picture (σ = 1, so that grain does not count as sharpness), over
    the range of grey levels. The variance of the Laplacian is the usual measure; it falls
    with every bare wall, this one does not.
    """
    if max(image.size) != _JUDGED_EDGE:
        scale = _JUDGED_EDGE / max(image.size)
        size = (max(1, round(image.width * scale)), max(1, round(image.height * scale)))
        image = image.resize(size, Image.Resampling.BILINEAR)
    grey = np.asarray(image.convert("L"), dtype=float)
    edges: NDArray[np.float64] = np.abs(ndimage.gaussian_laplace(grey, 1.0))
    span = float(np.percentile(grey, 99.5) - np.percentile(grey, 0.5))
    return float(np.percentile(edges, 99.5)) / span if span > 0 else 0.0


def findings_of_photo(look: PhotoLook, file: str, learner: str, brief: Brief) -> list[Finding]:
    """The questions one photo raises by itself."""
    source = (Source(file),)
    if look.header is None:
        return [
            Finding(
                "photo_unreadable",
                learner,
                say(
                    "The photo could not be opened: {why}.", why=known_again(look.problem, TROUBLES)
                ),
                Concern.LOOK,
                sources=source,
                ask=say("Could you hand in this photo again?"),
            )
        ]
    found = []
    width, height = look.header.width, look.header.height
    if width * height < SMALL_PIXELS:
        found.append(
            Finding(
                "photo_small",
                learner,
                say(
                    "The photo has only {width} × {height} pixels; details cannot be made out.",
                    width=width,
                    height=height,
                ),
                numbers={"width_px": width, "height_px": height},
                sources=source,
                ask=say("Could you hand in the photo in its full size?"),
            )
        )
    if look.spread < BLANK_SPREAD:
        found.append(
            Finding(
                "photo_blank",
                learner,
                say("The photo shows an even surface: one shade of grey all over.")
                if round(look.spread) == 0
                else say(
                    "The photo shows an even surface: all of it lies within {spread:.0f} of 255 "
                    "grey levels.",
                    spread=look.spread,
                ),
                Concern.LOOK,
                numbers={"spread_grey_levels": look.spread},
                sources=source,
                ask=say("Could you look whether this is the photo you meant?"),
            )
        )
    elif look.sharpness < BLURRED:
        found.append(
            Finding(
                "photo_blurred",
                learner,
                say(
                    "The photo looks blurred: its clearest edges measure {sharpness:.3f} where "
                    "{asked:.3f} is asked for.",
                    sharpness=look.sharpness,
                    asked=BLURRED,
                ),
                numbers={"sharpness": look.sharpness},
                sources=source,
                ask=say("Could you take this photo again with the camera held still?"),
            )
        )
    return found + _date_findings(look, source, learner, brief)


def _date_findings(
    look: PhotoLook, source: tuple[Source, ...], learner: str, brief: Brief
) -> list[Finding]:
    taken = look.header.taken if look.header else None
    if taken is None:
        return []
    early = brief.opens is not None and taken.date() < brief.opens
    late = brief.closes is not None and taken.date() > brief.closes
    if not early and not late:
        return []
    edge = brief.opens if early else brief.closes
    days = abs((taken.date() - edge).days) if edge else 0
    return [
        Finding(
            "photo_date",
            learner,
            say(
                "By the phone's clock the photo was taken on {day:%d %B %Y}, {days} before the "
                "days of the brief. Phone clocks are often wrong."
                if early
                else "By the phone's clock the photo was taken on {day:%d %B %Y}, {days} after the "
                "days of the brief. Phone clocks are often wrong.",
                day=taken.date(),
                days=say("{n} day", n=days) if days == 1 else say("{n} days", n=days),
            ),
            Concern.ASK,
            numbers={"taken": taken.isoformat(), "days": float(days)},
            sources=source,
            ask=say("When did you take this photo?"),
        )
    ]


def alike_photos(
    looks: Mapping[str, PhotoLook], stop: Callable[[], bool] = lambda: False
) -> tuple[Alike, ...]:
    """Pairs of files that show the same picture, with how far they agree.

    Slow for a thousand photos (DECISION-photos.md): not for the thread of the window.
    """
    files = [file for file, look in looks.items() if look.print is not None and _tells(look)]
    pairs = repeated_pairs([look.print for f in files if (look := looks[f]).print], stop)
    return tuple((files[i], files[j], near) for i, j, near in pairs)


def repeated_photos(alike: Iterable[Alike], owners: Mapping[str, str]) -> dict[str, list[Finding]]:
    """By learner, the photos that show the same picture as another piece.

    ``alike`` as :func:`alike_photos`; ``owners`` learner id by file.
    """
    found: dict[str, list[Finding]] = {}
    for one, another, near in alike:
        for mine, other in ((one, another), (another, one)):
            learner, theirs = owners.get(mine, ""), owners.get(other, "")
            same = learner == theirs
            if same and mine == another:
                continue
            whose = say(
                "another piece of the same learner" if same else "a piece of {learner}",
                learner=theirs,
            )
            found.setdefault(learner, []).append(
                Finding(
                    "photo_repeated",
                    learner,
                    say(
                        "The photo shows the same picture as {whose} ({file}).",
                        whose=whose,
                        file=other,
                    ),
                    Concern.ASK,
                    numbers={"agreement": near, "other": theirs, "other_file": other},
                    sources=(Source(mine), Source(other)),
                    ask=say("Could you say how this photo was taken, and by whom?"),
                    honest_rate=REPEATED_RATE,
                )
            )
    return found


# 4 of 57 570 pairs of different drawn photos were taken for the same, and a learner of thirty
# with two photos each is in 117 pairs: DECISION-photos.md.
REPEATED_RATE = 0.01


def _tells(look: PhotoLook) -> bool:
    """A blank picture is like any other blank picture."""
    return look.spread >= 2 * BLANK_SPREAD
