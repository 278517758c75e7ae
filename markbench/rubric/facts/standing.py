"""Facts of explanations, of the hand-in, and of the questions still open."""

from __future__ import annotations

import math

from markbench.checks.diagnosis.sentences import in_language
from markbench.model import Concern
from markbench.physics.reporting import with_uncertainty
from markbench.rubric.facts.registry import (
    Value,
    Work,
    count,
    number,
    percent,
    text,
    whole,
    yes_no,
)

_SLIP = ("slip",)
_COUNTS = ("half_swings", "count_short", "count_over")
_MISREAD = ("length_unit", "period_as_total", "clock_misread")
_BY_NO_HAND = ("made_from_formula", "made_by_hand")


@text("explanations", "the explanation that the readings suggest", _SLIP, quotable=False)
def slip(work: Work) -> str:
    """Name of the slip that explains the readings better than honest work; empty for none."""
    diagnosis = work.diagnosis
    if diagnosis is None or not diagnosis.flagged:
        return ""
    return next((e.slip for e in diagnosis.explanations if e.slip != "honest"), "")


@number("explanations", "probability of that explanation", percent, "", _SLIP, quotable=False)
def slip_probability(work: Work) -> float | None:
    """Probability of that slip; unknown where there is none."""
    name = slip(work)
    if work.diagnosis is None or not name:
        return None
    return next(e.probability for e in work.diagnosis.explanations if e.slip == name)


@text("explanations", "the explanation that the teacher agreed on", _SLIP, quotable=False)
def agreed_slip(work: Work) -> str:
    """Name of the slip that the teacher has recorded as agreed; empty for none."""
    return work.agreed_slip


def _agreed(work: Work, *slips: str) -> bool:
    return not set(slips).isdisjoint(work.agreed_slip.split("+"))


def _in_doubt(work: Work) -> frozenset[str]:
    """The slips behind the explanation that is agreed or, none being agreed, suggested."""
    return frozenset((work.agreed_slip or str(slip(work))).split("+")) - {"", "honest"}


@yes_no("explanations", "readings that a slip may explain", _SLIP)
def numbers_in_doubt(work: Work) -> bool:
    """Whether a slip is agreed or, none being agreed, suggested as the explanation."""
    return bool(_in_doubt(work))


@yes_no("explanations", "a count of swings in doubt", _SLIP)
def swings_in_doubt(work: Work) -> bool:
    """Whether that slip is another number of swings than stated, in one timing or in all."""
    return not _in_doubt(work).isdisjoint((*_COUNTS, "one_timing_miscounted", "period_as_total"))


@yes_no("explanations", "a unit or a display in doubt", _SLIP)
def units_in_doubt(work: Work) -> bool:
    """Whether that slip is another unit, periods for times, or a misread display."""
    return not _in_doubt(work).isdisjoint(_MISREAD)


@yes_no("explanations", "times in doubt of being closer than a hand can time", _SLIP)
def times_in_doubt(work: Work) -> bool:
    """Whether that slip is times closer to a formula, or to each other, than by hand."""
    return not _in_doubt(work).isdisjoint(_BY_NO_HAND)


@yes_no("explanations", "a count of swings agreed to be another", _SLIP)
def swings_miscounted(work: Work) -> bool:
    """Whether the agreed explanation is that every timing holds another number of swings."""
    return _agreed(work, *_COUNTS)


@yes_no("explanations", "a unit or a display agreed to be misread", _SLIP)
def units_mistaken(work: Work) -> bool:
    """Whether the agreed explanation is another unit, periods for times, or a misread display."""
    return _agreed(work, *_MISREAD)


@yes_no("explanations", "times agreed to be closer than a hand can time", _SLIP)
def times_doubted(work: Work) -> bool:
    """Whether the agreed explanation is times closer to a formula, or each other, than by hand."""
    return _agreed(work, *_BY_NO_HAND)


@text("explanations", "the agreed explanation, in the learner's numbers", _SLIP)
def slip_explained(work: Work) -> str | None:
    """The agreed slip explained to the learner in their own numbers; unknown for none."""
    if not work.agreed_slip or work.explanation is None:
        return None
    language = work.brief.feedback_language
    told, agreed = work.explanation, work.agreed_slip
    if language != "en":
        return in_language(language, told, agreed)[1] or None
    return (told.to_learner if told.slip == agreed else told.parts_to_learner[agreed]) or None


@text("explanations", "the question that would settle it", _SLIP)
def slip_question(work: Work) -> str | None:
    """What to ask the learner about the suggested explanation; unknown for none."""
    if work.brief.feedback_language == "en":
        return next((f.ask for f in work.by_check.get("slip", ()) if f.ask), None)
    if "slip" not in work.by_check or work.explanation is None:
        return None
    told = work.explanation
    return in_language(work.brief.feedback_language, told, told.slip)[0] or None


def _mended(value: Value, work: Work | None) -> str:
    explanation = work.explanation if work is not None else None
    u = explanation.u_g_if_mended if explanation is not None else None
    return with_uncertainty(float(value or 0.0), u or math.nan, "m/s²")


@number("explanations", "g once mended", _mended, "m/s²", _SLIP)
def g_if_mended(work: Work) -> float | None:
    """The best g once the agreed (or else suggested) slip is mended; unknown for half a pair."""
    explanation = work.explanation
    if explanation is None or work.agreed_slip not in ("", explanation.slip):
        return None
    return explanation.g_if_mended


@number("hand-in", "days late", whole, "d", ("outside_window",))
def late_days(work: Work) -> float | None:
    """Whole days after the closing date, extension allowed for; 0 in time, unknown undated."""
    closes, when = work.extended_to or work.brief.closes, work.portfolio.handed_in
    if closes is None or when is None:
        return None
    return max((when.date() - closes).days, 0)


@yes_no("hand-in", "work handed in", ("missing_piece",))
def handed_in(work: Work) -> bool:
    """Whether anything at all was handed in."""
    return bool(work.portfolio.pieces)


@count("hand-in", "findings to look at before marking")
def findings_look(work: Work) -> int:
    """How many findings the marks could turn on."""
    return sum(finding.concern is Concern.LOOK for finding in work.findings)


@count("hand-in", "questions to put to the learner")
def findings_ask(work: Work) -> int:
    """How many findings hold a question for the learner."""
    return sum(finding.concern is Concern.ASK for finding in work.findings)


@yes_no("hand-in", "a table of readings that could not be understood", ("table_not_understood",))
def readings_unread(work: Work) -> bool:
    """Whether a table of readings was handed in that could not be understood."""
    return not work.readings and bool(work.portfolio.of_kind("readings"))
