"""Facts of the evidence: which pieces are there, and whether they can be opened."""

from __future__ import annotations

from typing import get_args

from markbench.checks.wording import listed
from markbench.model import PieceKind, Source
from markbench.rubric.facts.registry import Work, count, text, yes_no

_KINDS = frozenset(get_args(PieceKind))
_MISSING = ("missing_piece", "empty_piece")
_PHOTO = ("photo_unreadable", "photo_small", "photo_blank", "photo_blurred", "photo_repeated")
_VIDEO = ("video_unreadable", "video_not_measured", "video_few_swings", "video_period")

PIECE_NAMES = {
    "en": {
        "readings": "the table of readings",
        "setup_photo": "the photo of the set-up",
        "selfie": "the photo of you with the set-up",
        "photo": "the photo",
        "swing_video": "the video",
        "report": "the report",
    },
    "de": {
        "readings": "die Tabelle mit den Messwerten",
        "setup_photo": "das Foto vom Aufbau",
        "selfie": "das Foto von dir mit dem Aufbau",
        "photo": "das Foto",
        "swing_video": "das Video",
        "report": "den Bericht",
    },
}
"""What each kind of piece is called when speaking to the learner, by language."""


def _there(work: Work, kind: PieceKind) -> bool | None:
    """Whether a usable piece is there; unknown while a photo is not told apart or will not open."""
    if kind in work.usable_kinds:
        return True
    if _unopened(work, kind):
        return None
    untold = kind in ("setup_photo", "selfie") and work.portfolio.of_kind("photo")
    return None if untold else False


def _unopened(work: Work, kind: PieceKind) -> bool:
    """Whether a kind was handed in, but not so that it can be opened; an empty file is nothing."""
    pieces = work.portfolio.of_kind(kind)
    return kind not in work.usable_kinds and any(piece.size_bytes > 0 for piece in pieces)


def _asked(work: Work) -> list[PieceKind]:
    return [kind for kind in work.brief.evidence if kind in _KINDS]  # type: ignore[misc]


def _named(kinds: list[PieceKind], work: Work) -> str | None:
    names = PIECE_NAMES.get(work.brief.feedback_language, PIECE_NAMES["en"])
    return listed([names[kind] for kind in kinds if kind in names], work.last_of_a_list) or None


def _files(work: Work) -> tuple[Source, ...]:
    return tuple(Source(piece.file) for piece in work.portfolio.pieces)


@yes_no("evidence", "a photo of the set-up", (*_MISSING, *_PHOTO), _files)
def setup_photo(work: Work) -> bool | None:
    """Whether a photo of the set-up is there and opens."""
    return _there(work, "setup_photo")


@yes_no("evidence", "a photo of the learner with the set-up", (*_MISSING, *_PHOTO), _files)
def selfie(work: Work) -> bool | None:
    """Whether a photo of the learner with the set-up is there and opens."""
    return _there(work, "selfie")


@yes_no("evidence", "a swing video", (*_MISSING, *_VIDEO), _files)
def swing_video(work: Work) -> bool | None:
    """Whether a swing video is there and opens."""
    return _there(work, "swing_video")


@yes_no("evidence", "a written report", _MISSING, _files)
def report(work: Work) -> bool | None:
    """Whether a written report is there and is not empty."""
    return _there(work, "report")


@count("evidence", "asked-for pieces of evidence", _MISSING, _files)
def pieces_present(work: Work) -> int:
    """How many of the pieces of evidence that the brief asks for are there."""
    return sum(_there(work, kind) is True for kind in _asked(work))


@count("evidence", "missing pieces of evidence", _MISSING)
def pieces_missing(work: Work) -> int:
    """How many of the pieces of evidence that the brief asks for are certainly not there."""
    return sum(_there(work, kind) is False for kind in _asked(work))


@count("evidence", "pieces that nobody has told apart yet", _MISSING)
def pieces_untold(work: Work) -> int:
    """How many asked pieces wait for somebody to say which photo is which."""
    return sum(_there(work, kind) is None and not _unopened(work, kind) for kind in _asked(work))


@count("evidence", "pieces that will not open", ("unreadable_file", *_PHOTO[:1], *_VIDEO[:1]))
def pieces_unopened(work: Work) -> int:
    """How many asked pieces were handed in as files that cannot be opened."""
    return sum(_unopened(work, kind) for kind in _asked(work))


@text("evidence", "the missing pieces", _MISSING)
def missing_pieces(work: Work) -> str | None:
    """The pieces of evidence that are certainly not there, named in a row."""
    return _named([kind for kind in _asked(work) if _there(work, kind) is False], work)


@text("evidence", "the pieces that are there", _MISSING)
def present_pieces(work: Work) -> str | None:
    """The pieces of evidence that are there, named in a row."""
    return _named([kind for kind in _asked(work) if _there(work, kind)], work)


@count("evidence", "questions about the photos", _PHOTO)
def photo_questions(work: Work) -> int:
    """How many findings concern the photos."""
    return sum(len(work.by_check.get(check, ())) for check in _PHOTO)


@count("evidence", "questions about the video", _VIDEO)
def video_questions(work: Work) -> int:
    """How many findings concern the video."""
    return sum(len(work.by_check.get(check, ())) for check in _VIDEO)


@yes_no("evidence", "a video that shows fewer swings than asked", ("video_few_swings",))
def video_short(work: Work) -> bool | None:
    """Whether the video shows fewer complete swings than asked (a finding says so)."""
    return "video_few_swings" in work.by_check if swing_video(work) else None


@yes_no("evidence", "a video whose period differs from the table", ("video_period",))
def video_differs(work: Work) -> bool | None:
    """Whether the swing measured in the video differs from the table (a finding says so)."""
    return "video_period" in work.by_check if swing_video(work) else None
