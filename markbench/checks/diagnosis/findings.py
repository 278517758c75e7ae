"""The diagnosis as a finding: a question with its numbers, never a verdict."""

from __future__ import annotations

from collections.abc import Mapping

from markbench.checks.diagnosis.flagging import honest_rate
from markbench.model import Concern, Diagnosis, Finding, joined

# Below this a second explanation is not worth a teacher's breath.
_ALSO = 0.05


def slip_finding(
    diagnosis: Diagnosis, learner: str, rates: Mapping[str, float] | None = None
) -> Finding | None:
    """The question a flagged diagnosis puts, or ``None`` where honest work leads.

    ``rates`` gives the measured share of honest learners asked about each slip; without it
    the calibration's own table is quoted.
    """
    if not diagnosis.flagged or not diagnosis.explanations:
        return None
    first = diagnosis.explanations[0]
    numbers: dict[str, float | str] = {"slip": first.slip, "probability": first.probability}
    if first.g_if_mended is not None and first.u_g_if_mended is not None:
        numbers["g_if_mended_m_s2"] = first.g_if_mended
        numbers["u_g_if_mended_m_s2"] = first.u_g_if_mended
    if diagnosis.best is not None:
        numbers["g_before_m_s2"] = diagnosis.best.g
    for name, estimate in first.parameters.items():
        numbers[name] = estimate.value
        if estimate.u > 0:
            numbers[f"u_{name}"] = estimate.u
    others = [e for e in diagnosis.explanations[1:] if e.probability >= _ALSO]
    message = joined((first.sentence, *(also.sentence for also in diagnosis.indistinct[:1])))
    if others:
        numbers["second"] = others[0].slip
        numbers["probability_of_second"] = others[0].probability
    if rates is None:
        rate = honest_rate(first.slip)
    else:
        known = [rates[name] for name in first.slip.split("+") if name in rates]
        rate = min(known) if known else None
    return Finding(
        check="slip",
        learner=learner,
        message=message,
        concern=Concern.LOOK,
        numbers=numbers,
        ask=first.ask,
        honest_rate=rate,
        cells=first.cells,
    )
