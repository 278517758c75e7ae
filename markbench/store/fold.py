"""The present as a fold over the journal."""

from __future__ import annotations

from collections.abc import Iterable

from markbench.model import Decision, State


def fold(decisions: Iterable[Decision], start: State | None = None) -> State:
    """The last decision for each key, in the order given; a value of ``None`` clears it.

    ``start`` is an earlier state to go on from, so that a new decision costs nothing.
    """
    state = dict(start or {})
    for decision in decisions:
        if decision.value is None:
            state.pop(decision.key, None)
        else:
            state[decision.key] = decision
    return state
