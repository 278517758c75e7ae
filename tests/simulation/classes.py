"""Many classes at once, some learners with slips and some with copied tables."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from markbench.model import Place
from simulation.copied import copies
from simulation.readings import SLIPS, Simulated, join, simulate


@dataclass(frozen=True, slots=True, eq=False)
class Classes:
    """``learners`` of all classes in order, and the true ``pairs`` (m, 2): copy, original.

    Class c holds the learners from c·size to (c + 1)·size.
    """

    learners: Simulated
    size: int
    pairs: NDArray[np.int64]

    def one(self, number: int) -> Simulated:
        """The learners of one class."""
        return self.learners.take(slice(number * self.size, (number + 1) * self.size))


def classes(
    count: int,
    size: int = 30,
    *,
    seed: int,
    design: str = "standard",
    slipped: float = 0.0,
    copied: int = 0,
    how: str = "altered",
    share: float = 0.5,
    place: Place | None = None,
    **options: Any,
) -> Classes:
    """``count`` classes of ``size`` at one place.

    ``slipped``: the share of learners with a slip, each slip as likely as any other;
    ``copied``: pairs to a class, disguised as ``how`` with ``share`` of readings altered.
    Originals may carry slips of their own. ``options`` go to ``simulate``.
    """
    rng = np.random.default_rng([seed, 7])
    where = place or Place(round(float(rng.uniform(-50, 65)), 1), 100.0)
    total = count * size
    which = np.where(rng.random(total) < slipped, rng.integers(len(SLIPS), size=total), -1)
    parts, order = [], []
    for k in range(-1, len(SLIPS)):
        at = np.flatnonzero(which == k)
        if at.size:
            slip = SLIPS[k] if k >= 0 else None
            own = int(rng.integers(2**31))
            parts.append(simulate(at.size, design, slip, seed=own, place=where, **options))
            order.append(at)
    position = np.empty(total, dtype=int)
    position[np.concatenate(order)] = np.arange(total)
    learners = join(*parts).take(position)
    if not copied:
        return Classes(learners, size, np.empty((0, 2), dtype=np.int64))
    seats = np.array([rng.permutation(size)[: 2 * copied] for _ in range(count)])
    seats = (seats + size * np.arange(count)[:, None]).reshape(-1, 2)
    made = copies(learners.take(seats[:, 1]), how, seed=int(rng.integers(2**31)), share=share)
    index = np.arange(total)
    index[seats[:, 0]] = total + np.arange(len(seats))
    return Classes(join(learners, made).take(index), size, seats)
