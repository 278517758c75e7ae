"""In which order one criterion is marked across the class.

A shuffled order spreads the drift of a long evening over the class, and differs from
criterion to criterion so that nobody is always first. It must come out the same tomorrow and
on another machine, and a learner who joins later must not move the others; so learners are
sorted by a fingerprint of (seed, criterion, id). Rejected: a shuffle by a random generator,
whose result hangs on the number of learners and on the library's version.
"""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Mapping
from typing import Literal

from markbench.model import Concern, Decision, Learner
from markbench.session.session import Session

OrderBy = Literal["name", "concern", "shuffled"]
KIND = "order"
_NUMBER = re.compile(r"([0-9]+)")


def order_by(session: Session, criterion: str) -> OrderBy:
    """The order last chosen for a criterion; by name where none was."""
    held = session.value(KIND, "", criterion)
    by = held.get("by") if isinstance(held, dict) else None
    return by if by in ("concern", "shuffled") else "name"


def seed_of(session: Session, criterion: str) -> int | None:
    """The seed of a shuffled order, as recorded."""
    held = session.value(KIND, "", criterion)
    return held.get("seed") if isinstance(held, dict) else None


def choose_order(session: Session, criterion: str, by: OrderBy, seed: int | None = None) -> None:
    """Record an order for a criterion; ``seed`` is wanted where ``by`` is ``shuffled``."""
    if by == "shuffled" and seed is None:
        raise ValueError("A shuffled order needs its seed.")
    value = {"by": by} if by != "shuffled" else {"by": by, "seed": seed}
    session.decide(Decision(KIND, "", criterion, value))


def shuffle_every(session: Session, seeds: Mapping[str, int]) -> None:
    """Record a shuffled order for each criterion in ``seeds``, with its own seed, as one step."""
    session.decide(
        *(Decision(KIND, "", one, {"by": "shuffled", "seed": seed}) for one, seed in seeds.items())
    )


def in_order(session: Session, criterion: str) -> tuple[str, ...]:
    """Every learner's id in the order chosen for ``criterion``."""
    by, seed = order_by(session, criterion), seed_of(session, criterion)
    if by == "shuffled":
        return shuffled([one.id for one in session.learners], seed or 0, criterion)
    by_name = sorted(session.learners, key=lambda one: (by_surname(one), one.id))
    if by == "concern":
        by_name.sort(key=lambda one: _concern(session, one.id), reverse=True)
    return tuple(one.id for one in by_name)


def shuffled(learners: list[str], seed: int, salt: str) -> tuple[str, ...]:
    """``learners`` in an order that hangs on ``seed`` and ``salt`` alone."""

    def place(learner: str) -> bytes:
        return hashlib.sha256(f"{seed}\n{salt}\n{learner}".encode()).digest()

    return tuple(sorted(learners, key=place))


def _concern(session: Session, learner: str) -> tuple[int, int]:
    concerns = [finding.concern for finding in session.findings(learner)]
    return concerns.count(Concern.LOOK), concerns.count(Concern.ASK)


def by_surname(learner: Learner) -> tuple[str | int, ...]:
    """Sorts by surname where the class list tells it, else by the name as it stands."""
    return natural(f"{learner.surname} {learner.name}".strip())


def natural(name: str) -> tuple[str | int, ...]:
    """Sorts without accents or case, and 2 before 10."""
    apart = unicodedata.normalize("NFKD", name.casefold())
    plain = "".join(c for c in apart if not unicodedata.combining(c))
    # Words and numbers take turns, so that like is compared with like.
    return tuple(int(part) if i % 2 else part for i, part in enumerate(_NUMBER.split(plain)))
