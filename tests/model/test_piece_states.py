"""What is missing and what is only to be told apart: one rule."""

from __future__ import annotations

import pytest

from markbench.model import Learner, Piece, Portfolio, piece_states

KINDS = ("readings", "setup_photo", "selfie", "swing_video")


def pieces(*kinds: str) -> Portfolio:
    held = tuple(Piece(f"{n}.jpg", kind, size_bytes=9) for n, kind in enumerate(kinds))
    return Portfolio(Learner("s1", "Aino Example"), held)


@pytest.mark.parametrize(
    ("held", "states"),
    [
        ((), ("missing", "missing", "missing", "missing")),
        (("photo",), ("missing", "untold", "missing", "missing")),
        (("photo", "photo"), ("missing", "untold", "untold", "missing")),
        (("setup_photo", "photo"), ("missing", "there", "untold", "missing")),
        (("setup_photo", "selfie", "photo"), ("missing", "there", "there", "missing")),
        (("readings", "swing_video"), ("missing", "missing", "missing", "there")),
    ],
)
def test_a_photo_not_told_apart_may_be_the_one_that_is_wanted(held, states) -> None:
    assert piece_states(pieces(*held), KINDS) == dict(zip(KINDS, states, strict=True))


def test_what_cannot_be_used_is_as_good_as_not_there() -> None:
    there = pieces("photo", "swing_video")
    assert piece_states(there, ("selfie",), {"0.jpg"}) == {"selfie": "missing"}
    assert piece_states(there, ("swing_video",), {"1.jpg"}) == {"swing_video": "missing"}
    empty = Portfolio(there.learner, (Piece("a.jpg", "selfie", size_bytes=0),))
    assert piece_states(empty, ("selfie",)) == {"selfie": "missing"}
