"""The fit against bounds and cases worked out elsewhere."""

import numpy as np
import pytest

from markbench.evidence.video.oscillation import best_period, fit_swing


def test_reaches_the_cramer_rao_bound():
    """var(ω) ≥ 24σ²/[A²n(n²−1)], Rife & Boorstyn, IEEE Trans. IT 20 (1974) 591.

    30 a second for 20 s, T = 1.5 s, A = 100, σ = 1: u(T) = 3.58e-5 s.
    """
    rng = np.random.default_rng(11)
    times = np.arange(600) / 30
    rate = 2 * np.pi / 1.5
    per_sample = np.sqrt(24 / (100**2 * 600 * (600**2 - 1)))
    bound = 1.5**2 / (2 * np.pi) * per_sample * 30
    assert bound == pytest.approx(3.58e-5, rel=0.01)
    errors, claimed = [], []
    for _ in range(60):
        x = 100 * np.cos(rate * times + rng.uniform(0, 6)) + rng.normal(0, 1, 600)
        swing = fit_swing(times, x, 1.49)
        errors.append(swing.period_s - 1.5)
        claimed.append(swing.u_period_s)
    # Sixty runs know a standard deviation to 9 %.
    assert np.std(errors) < 1.25 * bound
    assert abs(np.mean(errors)) < 3.5 * bound / 60**0.5
    assert np.median(claimed) == pytest.approx(bound, rel=0.15)


def test_uneven_times_and_damping():
    rng = np.random.default_rng(12)
    times = np.sort(rng.uniform(0, 15, 400))
    x = 30 * np.exp(-0.02 * times) * np.cos(2 * np.pi * times / 1.234) + rng.normal(0, 0.3, 400)
    swing = fit_swing(times, x, 1.25)
    assert swing.period_s == pytest.approx(1.234, abs=5 * swing.u_period_s)
    assert swing.u_period_s < 0.001
    # exp(−0.02·1.234) a swing.
    assert swing.decrement == pytest.approx(0.02 * 1.234, rel=0.05)
    assert swing.in_step > 0.95


def test_noise_is_not_in_step():
    rng = np.random.default_rng(13)
    times = np.arange(300) / 30
    x = rng.normal(0, 1, 300)
    period, share = best_period(times, x, 0.4, 3.0)
    assert share < 0.15
    swing = fit_swing(times, x, period)
    assert swing is None or swing.in_step < 0.6


def test_twice_the_frequency_in_the_signal_does_not_halve_the_period():
    times = np.arange(450) / 30
    turn = 2 * np.pi * times / 1.8
    period, _ = best_period(times, np.cos(turn) + 0.6 * np.cos(2 * turn), 0.4, 3.0)
    assert period == pytest.approx(1.8, rel=0.01)
