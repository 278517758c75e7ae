"""The same figures as ``measure_clips.py``, on films of the second renderer.

    python tests/benchmarks/measure_other_clips.py FIRST_SEED FILMS

Drawn by ``tests/simulation/film.py``, which shares nothing with the renderer used in building:
colour, a room with furniture, a shaded ball and its shadow, the angle from the equation of
motion. Its period is held to the law with the first term of the series for the amplitude
(Abramowitz & Stegun, ch. 17) at the mean square of the amplitude over the swings shown.
"""

from __future__ import annotations

import sys
from fractions import Fraction
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parents[1]))
from markbench.evidence.video.judge import measure_swing
from simulation.film import Film, angles, frame_times, record

_SUPPORTS = ("door", "table", "shelf")
_RATES = (Fraction(24), Fraction(25), Fraction(30000, 1001), Fraction(30), Fraction(60))


def drawn(seed: int) -> Film:
    rng = np.random.default_rng([seed, 23])
    upright = bool(rng.random() < 0.4)
    return Film(
        length_m=float(rng.uniform(0.15, 0.7)),
        amplitude_deg=float(rng.uniform(5, 16)),
        swings=float(rng.uniform(10.05, 12.95) if rng.random() < 0.8 else rng.uniform(3.3, 9.9)),
        held_s=float(rng.uniform(0.3, 3.0)),
        decay_s=float(rng.uniform(40, 200)),
        size=(360, 480) if upright else (480, 360),
        frame_rate=_RATES[int(rng.integers(len(_RATES)))],
        uneven=bool(rng.random() < 0.4),
        rotated=bool(rng.random() < 0.3),
        shake_px=float(rng.choice([0.0, rng.uniform(0.5, 3.0)])),
        support=_SUPPORTS[int(rng.integers(3))],
        room=int(rng.integers(8)),
        bob=tuple(int(level) for level in rng.integers(40, 220, 3)),
        seed=seed,
    )


def truth(film: Film) -> tuple[float, float]:
    """Mean period over the swings shown, and their number, from the angle that was drawn.

    Both from the moments at which the drawn angle turns, which a fine clock finds.
    """
    last = float(frame_times(film)[-1]) - film.held_s
    clock = np.arange(0.0, last, 1e-3)
    angle = angles(film, clock)
    turns = clock[1:-1][(np.diff(angle)[:-1] > 0) != (np.diff(angle)[1:] > 0)]
    halves = np.concatenate([[0.0], turns])
    period = 2 * (halves[-1] - halves[0]) / (halves.size - 1)
    return float(period), float((halves.size - 1) / 2 + (last - halves[-1]) / period)


def main(first: int, films: int) -> None:
    errors, ratios, leans, counts, accepted = [], [], [], 0, 0
    for seed in range(first, first + films):
        film = drawn(seed)
        period, swings = truth(film)
        found = measure_swing(record(film))
        line = f"{seed} T {period:.3f} s, {swings:5.2f} swings"
        if not found.accepted:
            print(line, "REFUSED", found.reason, flush=True)
            continue
        accepted += 1
        errors.append(found.period_s / period - 1)
        ratios.append((found.period_s - period) / found.u_period_s)
        right = found.complete_swings in {int(np.floor(swings + slack)) for slack in (-0.02, 0.02)}
        counts += right
        line += f" period {errors[-1]:+.3%} counted {found.swings_shown:5.2f}"
        line += "" if right else " COUNT"
        if found.amplitude_deg is not None:
            leans.append(found.amplitude_deg - film.amplitude_deg)
            line += f" angle {film.amplitude_deg:.1f}° {leans[-1]:+.2f}°"
        print(line, flush=True)
    size = np.abs(errors)
    print(f"accepted {accepted}/{films}")
    if accepted:
        print(f"period within 0.5 %: {np.mean(size < 0.005):.1%}; median {np.median(size):.3%}")
        print(f"largest {size.max():.2%}; |error| < 2u: {np.mean(np.abs(ratios) < 2):.0%}")
        print(f"count exact: {counts / accepted:.1%}")
    if leans:
        size = np.abs(leans)
        print(
            f"angle given in {len(leans)}: error median {np.median(size):.2f}°, "
            f"95 % {np.percentile(size, 95):.2f}°"
        )


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
