"""The swing film as a second clock: what it adds to the weighing of explanations."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import replace

from markbench.model import Diagnosis, joined, say

# A film that favours one explanation this much (natural logarithm) is worth a sentence:
# twenty to one.
_TELLING = math.log(20.0)


def with_film(diagnosis: Diagnosis, log_weights: Mapping[str, float]) -> Diagnosis:
    """The diagnosis with a film's log likelihoods, by explanation, taken into account.

    The film tells ways of *counting* apart; an explanation it does not know counts as
    honest counting. It never raises a question by itself: only explanations that the
    readings already allow are weighed again.
    """
    if not diagnosis.explanations or "honest" not in log_weights:
        return diagnosis
    logs = [
        math.log(max(e.probability, 1e-300)) + _weight(e.slip, log_weights)
        for e in diagnosis.explanations
    ]
    top = max(logs)
    known = sum(e.probability for e in diagnosis.explanations)
    total = sum(math.exp(value - top) for value in logs)
    weighed = [
        replace(e, probability=known * math.exp(value - top) / total)
        for e, value in zip(diagnosis.explanations, logs, strict=True)
    ]
    weighed.sort(key=lambda e: -e.probability)
    leader = weighed[0]
    if leader.slip != "honest":
        gain = _weight(leader.slip, log_weights) - log_weights["honest"]
        if gain > _TELLING:
            told = say("The swings in the video speak for it.")
            weighed[0] = replace(leader, sentence=joined((leader.sentence, told)))
    return replace(
        diagnosis,
        explanations=tuple(weighed),
        flagged=diagnosis.flagged and leader.slip != "honest",
    )


def _weight(slip: str, log_weights: Mapping[str, float]) -> float:
    parts = [part for part in slip.split("+") if part in log_weights]
    return log_weights[parts[0]] if parts else log_weights["honest"]
