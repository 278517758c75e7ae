"""The film's clock against the learner's thumb.

The film shows one of the lengths and does not say which. Each explanation says how the
learner's period at a length relates to the true one: T_true = T_written · N / (swings that
truly went by). The film's period is weighed against every row under each explanation, with
a floor for a film of some other pendulum, so that it can persuade but never decide alone.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from markbench.evidence.video.judge import SwingMeasurement, why_not
from markbench.model import Brief, Concern, Finding, Row, Source, say

# Faux & Godolphin, Am. J. Phys. 87 (2019) 110: about 0.10 s for one interval timed by hand.
_HAND_S = 0.10
# The film is another swing than the timed ones: its amplitude (up to 20° adds 0.8 %), and
# the string, tied anew by some millimetres. Common sense, no source.
_OTHER_SWING = 0.007
# One film in twenty shows another pendulum than the table's; its period anywhere between
# 0.4 and 3.2 s, evenly on a logarithmic scale.
_OTHER_FILM = 0.05
_LOG_RANGE = float(np.log(3.2 / 0.4))
EXPLANATIONS = ("honest", "half_swings", "count_short", "count_over")
# Two-sided 3.3 standard deviations: one honest learner in a thousand.
_FAR = 3.3
HONEST_RATE = 0.001


@dataclass(frozen=True, slots=True)
class Comparison:
    """``row`` is the index of the row that fits best under ``explanation``, else ``None``.

    ``ratio`` ± ``u_ratio``: the film's period over the learner's at that row. ``verdict``
    compares with the learner's periods as written.
    """

    verdict: Literal["confirms", "contradicts", "cannot tell"]
    explanation: str
    row: int | None
    ratio: float
    u_ratio: float
    deviations: float


def _truths(rows: Sequence[Row], explanation: str) -> NDArray[np.float64]:
    """True period over written period at each row under ``explanation``; nan if senseless."""
    swings = np.array([row.swings for row in rows], dtype=float)
    went_by = {
        "honest": swings,
        "half_swings": swings / 2,
        "count_short": swings - 1,
        "count_over": swings + 1,
    }[explanation]
    return np.asarray(np.where(went_by > 0, swings / np.where(went_by > 0, went_by, 1), np.nan))


def _deviations(
    found: SwingMeasurement, rows: Sequence[Row], explanation: str
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Film over expected period less one, and its standard uncertainty, at each row."""
    written = np.array([row.period_s for row in rows], dtype=float)
    swings = np.array([row.swings for row in rows], dtype=float)
    timings = np.array([max(len(row.timings_s), 1) for row in rows], dtype=float)
    # Half of a hand's error is its owner's habit and does not shrink with repeats.
    hand = _HAND_S * np.sqrt(0.5 + 0.5 / timings) / np.maximum(swings, 1)
    expected = written * _truths(rows, explanation)
    with np.errstate(divide="ignore", invalid="ignore"):
        u = np.sqrt((hand / written) ** 2 + (found.u_period_s / expected) ** 2 + _OTHER_SWING**2)
        return found.period_s / expected - 1, u


def video_evidence(found: SwingMeasurement, rows: Sequence[Row]) -> Mapping[str, float]:
    """Natural logarithm of the likelihood of the film's period under each explanation.

    Keys as EXPLANATIONS; only differences mean anything. All zero where nothing was
    measured or there are no rows.
    """
    if not found.accepted or not rows:
        return dict.fromkeys(EXPLANATIONS, 0.0)
    result = {}
    for explanation in EXPLANATIONS:
        off, u = _deviations(found, rows, explanation)
        density = np.exp(-0.5 * (off / u) ** 2) / (u * np.sqrt(2 * np.pi))
        mixed = float(np.nanmean(density)) if np.isfinite(density).any() else 0.0
        result[explanation] = float(np.log((1 - _OTHER_FILM) * mixed + _OTHER_FILM / _LOG_RANGE))
    return result


def compare(found: SwingMeasurement, rows: Sequence[Row]) -> Comparison:
    """Which length the film fits, and what it says of the periods as written."""
    if not found.accepted or not rows:
        return Comparison("cannot tell", "", None, float("nan"), float("nan"), float("nan"))
    written_fit: Comparison | None = None
    best: Comparison | None = None
    for explanation in EXPLANATIONS:
        off, u = _deviations(found, rows, explanation)
        far = np.abs(off / u)
        if not np.isfinite(far).any():
            continue
        k = int(np.nanargmin(far))
        ratio = float(found.period_s / rows[k].period_s)
        fit = Comparison("contradicts", explanation, k, ratio, ratio * float(u[k]), float(far[k]))
        if explanation == "honest":
            written_fit = fit
        if best is None or fit.deviations < best.deviations:
            best = fit
    if written_fit is None or best is None:
        return Comparison("cannot tell", "", None, float("nan"), float("nan"), float("nan"))
    if written_fit.deviations <= _FAR:
        # With many lengths a slip may happen to hit another row: then it is no proof.
        return Comparison(
            "confirms",
            "honest",
            written_fit.row,
            written_fit.ratio,
            written_fit.u_ratio,
            written_fit.deviations,
        )
    if best.deviations <= _FAR:
        return best
    return Comparison(
        "contradicts",
        "",
        written_fit.row,
        written_fit.ratio,
        written_fit.u_ratio,
        written_fit.deviations,
    )


_SLIP_WORDS = {
    "half_swings": say("as when each passage, there or back, was counted as a swing"),
    "count_short": say("as when one swing fewer went by than was written"),
    "count_over": say("as when one swing more went by than was written"),
    "": say("and no half swing or miscount by one would bring them together"),
}


def findings_of_video(
    found: SwingMeasurement, file: str, learner: str, brief: Brief, rows: Sequence[Row] = ()
) -> list[Finding]:
    """The questions a swing video raises, by itself and against the learner's table."""
    source = (Source(file),)
    if found.reason == "unreadable":
        return [
            Finding(
                "video_unreadable",
                learner,
                say("The video could not be opened: {why}.", why=why_not(found)),
                Concern.LOOK,
                sources=source,
                ask=say("Could you hand in this video again?"),
            )
        ]
    if not found.accepted:
        return [
            Finding(
                "video_not_measured",
                learner,
                say("The swing could not be measured from the video: {why}.", why=why_not(found)),
                Concern.ASK,
                numbers={"reason": found.reason},
                sources=source,
            )
        ]
    findings = []
    if found.complete_swings < brief.swings_per_timing:
        findings.append(
            Finding(
                "video_few_swings",
                learner,
                say(
                    "The video shows {n} complete swings; the brief asks for {wanted}.",
                    n=found.complete_swings,
                    wanted=brief.swings_per_timing,
                ),
                Concern.ASK,
                numbers={
                    "swings": float(found.complete_swings),
                    "asked": float(brief.swings_per_timing),
                },
                sources=source,
                ask=say("Could you film {n} complete swings?", n=brief.swings_per_timing),
            )
        )
    against = compare(found, rows)
    if against.verdict == "contradicts" and against.row is not None:
        row = rows[against.row]
        findings.append(
            Finding(
                "video_period",
                learner,
                say(
                    "In the video one swing takes {filmed:.3f} s. No period in the table agrees; "
                    "at {length:.3g} cm it is {period:.3f} s, and the video's is {ratio:.3f} ± "
                    "{u_ratio:.3f} of it, {slip}.",
                    filmed=found.period_s,
                    length=row.length_m * 100,
                    period=row.period_s,
                    ratio=against.ratio,
                    u_ratio=against.u_ratio,
                    slip=_SLIP_WORDS[against.explanation],
                ),
                Concern.LOOK,
                numbers={
                    "period_s": found.period_s,
                    "u_period_s": found.u_period_s,
                    "ratio": against.ratio,
                    "explanation": against.explanation,
                },
                sources=source,
                ask=say("How did you count the swings, and which length does the video show?"),
                honest_rate=HONEST_RATE,
                cells=((against.row, None),),
            )
        )
    return findings
