"""Copied tables, each disguised in one of the ways that copies are."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from simulation.readings import Simulated, to_places

COPIES = ("identical", "altered", "shifted", "reordered", "lengths_changed")


def copies(
    original: Simulated,
    how: str,
    *,
    seed: int,
    share: float = 0.5,
    by_s: tuple[float, float] = (0.01, 0.05),
) -> Simulated:
    """A copy of each learner's table, disguised in one of the ways of ``COPIES``.

    ``altered``: about ``share`` of the timings moved by ``by_s`` (at least one step of the
    learner's own places); ``shifted``: every timing by one constant; ``reordered``: rows in
    another order; ``lengths_changed``: every length by 1 to 3 cm, times kept.
    """
    rng = np.random.default_rng(seed)
    length = original.length_m.copy()
    swings = original.swings.copy()
    times = original.times_s.copy()
    n = len(original)
    step = 10.0 ** -original.time_decimals.astype(float)
    if how == "altered":
        present = ~np.isnan(times)
        rank = np.where(present, rng.random(times.shape), np.inf).reshape(n, -1).argsort(axis=1)
        order = rank.argsort(axis=1).reshape(times.shape)
        count = np.round(share * present.sum(axis=(1, 2)))[:, None, None]
        move = rng.uniform(*by_s, times.shape) * rng.choice([-1.0, 1.0], times.shape)
        move = np.sign(move) * np.maximum(np.abs(move), step[:, None, None])
        times = np.where(order < count, times + move, times)
    elif how == "shifted":
        times += (np.maximum(rng.uniform(0.05, 0.4, n), step))[:, None, None]
    elif how == "reordered":
        keys = np.where(np.isnan(length), np.inf, rng.random(length.shape))
        order = keys.argsort(axis=1)
        length = np.take_along_axis(length, order, 1)
        swings = np.take_along_axis(swings, order, 1)
        times = np.take_along_axis(times, order[:, :, None], 1)
    elif how == "lengths_changed":
        length += (rng.integers(1, 4, n) * rng.choice([-0.01, 0.01], n))[:, None]
    elif how != "identical":
        raise ValueError(f"no such way to copy: {how}; one of {', '.join(COPIES)}")
    return replace(
        original,
        length_m=length,
        swings=swings,
        times_s=to_places(times, original.time_decimals),
        slip=np.full(n, "copied", dtype="U64"),
        variant=np.full(n, how, dtype="U16"),
    )
