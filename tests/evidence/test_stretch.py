"""The stretch in which a bob swings ends where it is held, whatever a shaken room looks like."""

import numpy as np
import pytest

from markbench.evidence.video.follow import Arc, Track
from markbench.evidence.video.oscillation import fit_swing
from markbench.evidence.video.stretch import trim

PERIOD_S, REACH, RELEASED_S = 1.2, 25.0, 3.0
TIMES_S = np.arange(0, 12, 1 / 30)
SWING = REACH * np.cos(2 * np.pi * (TIMES_S - RELEASED_S) / PERIOD_S)
HELD = np.where(TIMES_S < RELEASED_S, REACH, SWING)


def track(along: np.ndarray) -> Track:
    arc = Arc(80.0, 60.0, REACH, 0.0, 5.0, 0.0, -100.0, 1.0)
    box = (slice(30, 80), slice(40, 120))
    return Track(TIMES_S, along, np.zeros_like(along), arc, PERIOD_S, np.zeros((50, 80)), box, 1.0)


@pytest.fixture
def swing():
    inside = TIMES_S >= RELEASED_S + 0.5
    return fit_swing(TIMES_S[inside], HELD[inside], PERIOD_S)


def test_what_is_found_only_where_it_is_expected_does_not_lengthen_the_swing(swing):
    """Near the place where the swing would have it, a shaken room always leaves something."""
    start_s = trim(track(SWING), swing, track(HELD)).start_s
    # A bob at the end of its arc stays within a fifth of the reach of it for a tenth of a swing.
    assert start_s == pytest.approx(RELEASED_S, abs=0.2 * PERIOD_S)


def test_a_swing_hidden_for_a_while_goes_on_behind(swing):
    """Somebody walks past for half a swing, before the stretch that was fitted."""
    walked = (TIMES_S > 2.6) & (TIMES_S < 3.2)
    seen = np.where(walked, np.nan, SWING)
    assert trim(track(seen), swing, track(seen)).start_s == pytest.approx(0.0, abs=0.05)
