"""A damped swing fitted to positions at uneven times; its period with its uncertainty.

The model is x = c₀ + c₁τ + A·exp(−δτ/T)·cos(φ₀ + 2πτ/T + κτ²), τ from the middle of the
stretch; κ lets the period follow the dying amplitude (T/T₀ ≈ 1 + θ²/16). The period quoted
is that of the middle slope, which is the mean period over the stretch: what a faultless
stopwatch would give.

Its uncertainty is the Cramér–Rao bound of the fit (for a pure sinusoid
24σ²/[A²n(n²−1)], Rife & Boorstyn 1974), with σ from the residuals, widened for residuals
that hang together in time.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares

Floats = NDArray[np.float64]


@dataclass(frozen=True, slots=True, eq=False)
class Swing:
    """A fitted swing over ``start_s``–``end_s``; ``middle_s`` is where τ = 0.

    ``decrement``: logarithmic decrement for one swing. ``explained``: share of the
    variance of the positions that the swing explains (0–1), after its slow drift;
    ``in_step``: share of the positions within a quarter of the amplitude of it.
    """

    period_s: float
    u_period_s: float
    amplitude: float
    phase: float
    decrement: float
    bend: float
    centre: float
    drift: float
    middle_s: float
    start_s: float
    end_s: float
    scatter: float
    explained: float
    in_step: float

    def phase_at(self, times_s: Floats) -> Floats:
        """Phase in radians; 0 at one end of the arc, growing by 2π a swing."""
        tau = np.asarray(times_s, dtype=float) - self.middle_s
        return np.asarray(self.phase + 2 * np.pi * tau / self.period_s + self.bend * tau**2)

    def envelope_at(self, times_s: Floats) -> Floats:
        """Amplitude at ``times_s``, held to the fitted stretch's reach."""
        tau = np.asarray(times_s, dtype=float) - self.middle_s
        reach = (self.end_s - self.start_s) / 2 + 2 * self.period_s
        tau = np.clip(tau, -reach, reach)
        return np.asarray(self.amplitude * np.exp(-self.decrement * tau / self.period_s))

    def position_at(self, times_s: Floats) -> Floats:
        """Displacement along the arc, drift included."""
        tau = np.asarray(times_s, dtype=float) - self.middle_s
        return np.asarray(
            self.centre
            + self.drift * tau
            + self.envelope_at(times_s) * np.cos(self.phase_at(times_s))
        )


def best_period(times_s: Floats, x: Floats, low_s: float, high_s: float) -> tuple[float, float]:
    """The period between ``low_s`` and ``high_s`` that explains most of ``x``, and the share.

    Least squares with a slow trend (a periodogram for uneven times: Lomb 1976).
    """
    span = float(times_s[-1] - times_s[0])
    trend = _trend(times_s, 2)
    rest = x - trend @ (trend.T @ x)
    power = float(rest @ rest)
    frequencies = np.arange(1 / high_s, 1 / low_s, 0.1 / span)
    if power <= 0 or frequencies.size == 0:
        return (high_s, 0.0)
    shares = np.array([_share(times_s, rest, trend, f) / power for f in frequencies])
    best = int(np.argmax(shares))
    frequency = frequencies[best]
    if 0 < best < shares.size - 1:
        before, top, after = shares[best - 1 : best + 2]
        if before - 2 * top + after < 0:
            shift = 0.5 * (before - after) / (before - 2 * top + after)
            frequency += shift * (frequencies[1] - frequencies[0])
    return float(1 / frequency), float(shares[best])


def local_agreement(
    times_s: Floats, x: Floats, weights: Floats, period_s: float
) -> tuple[Floats, Floats, Floats]:
    """Share explained, amplitude and phase (at ``times_s[0]``'s clock) in a sliding swing.

    At each time the nearest 1.2 swings are fitted with a sinusoid of ``period_s``.
    """
    n = times_s.size
    share, amplitude, phase = np.zeros(n), np.zeros(n), np.zeros(n)
    half = 0.6 * period_s
    angle = 2 * np.pi * (times_s - times_s[0]) / period_s
    design = np.stack([np.ones(n), np.cos(angle), np.sin(angle)], axis=1)
    low = np.searchsorted(times_s, times_s - half)
    high = np.searchsorted(times_s, times_s + half)
    # A twelfth of a swing apart is close enough; what lies between takes the nearest.
    points = np.unique(np.searchsorted(times_s, np.arange(times_s[0], times_s[-1], period_s / 12)))
    for i in points:
        part = slice(low[i], high[i])
        w = weights[part]
        if w.sum() < 5 or w.mean() < 0.3:
            continue
        root = np.sqrt(w)[:, None]
        solution = np.linalg.lstsq(design[part] * root, x[part] * root[:, 0], rcond=None)[0]
        model = design[part] @ solution
        spread = float(np.sum(w * (x[part] - np.average(x[part], weights=w)) ** 2))
        left = float(np.sum(w * (x[part] - model) ** 2))
        share[i] = 1 - left / spread if spread > 0 else 0.0
        amplitude[i] = float(np.hypot(solution[1], solution[2]))
        phase[i] = float(np.arctan2(-solution[2], solution[1]))
    nearest = points[np.abs(np.arange(n)[:, None] - points[None, :]).argmin(axis=1)]
    return share[nearest], amplitude[nearest], phase[nearest]


def fit_swing(times_s: Floats, x: Floats, period_s: float) -> Swing | None:
    """Fit the damped swing; ``None`` when there are too few points or it does not settle."""
    good = np.isfinite(x)
    t, y = times_s[good], x[good]
    if t.size < 12:
        return None
    middle = float(t[0] + t[-1]) / 2
    tau = t - middle
    span = float(t[-1] - t[0])
    angle = 2 * np.pi * tau / period_s
    design = np.stack([np.ones_like(tau), tau, np.cos(angle), np.sin(angle)], axis=1)
    start = np.linalg.lstsq(design, y, rcond=None)[0]
    size = max(float(np.hypot(start[2], start[3])), 1e-6)

    def model(p: Floats) -> Floats:
        envelope = p[2] * np.exp(-np.clip(p[4] * tau / span, -6, 6))
        phase = p[3] + 2 * np.pi * p[5] * tau + p[6] * (tau / span) ** 2
        return np.asarray(p[0] + p[1] * tau / span + envelope * np.cos(phase))

    # From 25° to rest the period of a pendulum changes by 1.2 % (T/T₀ = 1 + θ²/16): the
    # phase may bend by so much and no more, or a cut would pass for a slow change.
    most_bend = 0.006 * 2 * np.pi * span / period_s

    guess = np.array(
        [start[0], start[1] * span, size, np.arctan2(-start[3], start[2]), 0.1, 1 / period_s, 0.0]
    )
    most = np.array([np.inf] * 6 + [most_bend])
    result = least_squares(
        lambda p: (model(p) - y) / size,
        guess,
        bounds=(-most, most),
        loss="soft_l1",
        f_scale=0.15,
        max_nfev=60,
    )
    p = result.x
    if p[2] < 0:
        p[2], p[3] = -p[2], p[3] + np.pi
    residual = y - model(p)
    scatter = float(1.4826 * np.median(np.abs(residual)))
    inside = np.abs(residual) < 5 * max(scatter, 1e-9)
    if p[5] <= 0 or inside.sum() < 12:
        return None
    scatter = max(float(np.std(residual[inside])), 1e-9)
    slow = p[0] + p[1] * tau / span
    spread = float(np.sum((y - slow) ** 2))
    # Two-parameter bound for the middle slope, on the frames that count.
    step = np.zeros(7)
    jacobian = np.empty((t.size, 7))
    for k in range(7):
        step[:] = 0
        step[k] = 1e-5 * max(abs(p[k]), 1.0)
        jacobian[:, k] = (model(p + step) - model(p - step)) / (2 * step[k])
    information = jacobian[inside].T @ jacobian[inside] / scatter**2
    information[6, 6] += 3 / most_bend**2  # evenly likely within its bounds
    try:
        u_frequency = float(np.sqrt(np.linalg.inv(information)[5, 5]))
    except np.linalg.LinAlgError:
        return None
    period = float(1 / p[5])
    return Swing(
        period_s=period,
        u_period_s=period**2 * u_frequency * _hanging_together(residual[inside]),
        amplitude=float(p[2]),
        phase=float(p[3]),
        decrement=float(p[4] * period / span),
        bend=float(p[6] / span**2),
        centre=float(p[0]),
        drift=float(p[1] / span),
        middle_s=middle,
        start_s=float(t[0]),
        end_s=float(t[-1]),
        scatter=scatter,
        explained=1 - float(np.sum(residual**2)) / spread if spread > 0 else 0.0,
        in_step=float(np.mean(np.abs(residual) < 0.25 * p[2])),
    )


def _hanging_together(residual: Floats) -> float:
    """Factor on the uncertainty for residuals correlated in time (first zero of their r)."""
    centred = residual - residual.mean()
    power = float(centred @ centred)
    if power <= 0:
        return 1.0
    total = 1.0
    for lag in range(1, min(40, residual.size // 4)):
        r = float(centred[:-lag] @ centred[lag:]) / power
        if r <= 0.05:
            break
        total += 2 * r
    return float(total**0.5)


def _trend(times_s: Floats, degree: int) -> Floats:
    clock = (times_s - times_s.mean()) / max(float(np.ptp(times_s)), 1e-9)
    return np.asarray(np.linalg.qr(np.stack([clock**k for k in range(degree + 1)], axis=1))[0])


def _share(times_s: Floats, rest: Floats, trend: Floats, frequency: float) -> float:
    angle = 2 * np.pi * frequency * times_s
    basis = np.stack([np.cos(angle), np.sin(angle)], axis=1)
    basis -= trend @ (trend.T @ basis)
    return float(np.sum((np.linalg.qr(basis)[0].T @ rest) ** 2))
