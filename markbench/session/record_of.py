"""What moderation leaves behind: the record to be signed."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Mapping

from markbench import __version__
from markbench.checks.wording import signed, true_minus
from markbench.export.record import (
    AgreementRow,
    ModerationRecord,
    RecordedDecision,
    SampledLearner,
    SignOff,
)
from markbench.model import Decision
from markbench.moderation.agreement import ClassAgreement
from markbench.moderation.outcome import Outcome
from markbench.moderation.records import sign_off_of
from markbench.moderation.sample import Sample
from markbench.session.agreeing import agreement_of, notes
from markbench.session.keeping import store_of
from markbench.session.moderating import sample_of
from markbench.session.results import results
from markbench.session.session import Session
from markbench.session.steps import standing
from markbench.store import Journal

_TOLD = ("sample", "pack", "moderated", "adjustment", "sign_off", "reopen")


def moderation_record(session: Session) -> ModerationRecord:
    """The record of a class's moderation as it stands.

    Names and dates are printed on the lines to sign where the journal has them; a line is
    signed by hand all the same. Raises ``StoreError`` where the journal cannot be read.
    """
    found = results(session)
    sample = sample_of(session)
    agreed = agreement_of(session)
    return ModerationRecord(
        title=session.brief.title,
        class_name=session.folder.name,
        rubric=session.rubric.title,
        date=dt.date.today(),
        sample_rule="" if sample is None else f"{sample.rule} Seed {sample.seed}.",
        sample=_sampled(session, sample, found),
        learners_in_class=len(found),
        agreement=agreement_rows(agreed),
        notes=notes(agreed),
        decisions=tuple(_decisions(session)),
        sign_offs=_sign_offs(session, found),
        journal_digest=_digest(session),
        program_version=__version__,
    )


def agreement_rows(agreed: ClassAgreement) -> tuple[AgreementRow, ...]:
    """Every statistic as it is read, with its 95 % interval."""
    rows = []
    for one in agreed.criteria:
        for what, share in (("same level", one.exact), ("within one level", one.within_one)):
            found = f"{share.count} of {share.of}" if share.of else "–"
            percent = _pair(share.low95, share.high95, 100)
            rows.append(AgreementRow(f"{one.title}: {what}", found, _span(percent, 0, " %")))
        kappa = one.kappa
        rows.append(
            AgreementRow(
                f"{one.title}: kappa, {kappa.weights} weights",
                _number(kappa.value, 2, kappa.undefined),
                _span(_pair(kappa.low95, kappa.high95), 2),
            )
        )
    icc, limits = agreed.intraclass["(2,1)"], agreed.totals
    rows += [
        AgreementRow(
            "Total: intraclass correlation (2,1)",
            _number(icc.value, 2, icc.undefined),
            _span(_pair(icc.low95, icc.high95), 2),
        ),
        AgreementRow(
            "Total: mean of second − first, marks",
            _number(limits.mean, 2, limits.undefined, sign=True),
            _span(limits.mean95, 2, sign=True),
        ),
    ]
    for name, value, span in (
        ("Total: lower limit of agreement, marks", limits.lower, limits.lower95),
        ("Total: upper limit of agreement, marks", limits.upper, limits.upper95),
    ):
        rows.append(AgreementRow(name, _number(value, 2, "", sign=True), _span(span, 2, sign=True)))
    return tuple(rows)


def told(decision: Decision, names: Mapping[str, str], titles: Mapping[str, str]) -> str:
    """What a decision of the moderation was, in words."""
    who = names.get(decision.learner, decision.learner)
    criterion = decision.subject.partition("|")[0]
    about = ", ".join(filter(None, (who, titles.get(criterion, criterion))))
    value = decision.value
    if decision.kind == "sample":
        return f"Sample drawn: {len(value['order'])} learners, seed {value['seed']}"
    if decision.kind == "pack":
        return f"Pack made for {len(value['numbers'])} learners"
    if decision.kind == "moderated":
        level = f" to {value['level']} ({value['marks']:g})" if value["level"] else ""
        return f"{about}: {_DONE[value['action']]}{level}"
    if decision.kind == "adjustment" and decision.learner:
        return f"{about}: settled at {value['level']} ({value['marks']:g})"
    if decision.kind == "adjustment":
        shift = f" by {signed(value['shift'], '+g')}" if value["choice"] == "adjust" else ""
        return f"{_CHOICES[value['choice']]}{shift}"
    if decision.kind == "sign_off":
        still = len(value.get("open", ()))
        return "Signed off" + (f", with {still} open" if still else "")
    return "Reopened"


_DONE = {"agree": "agreed", "adjust": "adjusted", "ask": "asked"}
_CHOICES = {
    "adjust": "Totals of the class moved",
    "remark": "The class is to be marked again",
    "leave": "Marks left as they are",
}


def _sampled(
    session: Session, sample: Sample | None, found: Mapping[str, Outcome]
) -> tuple[SampledLearner, ...]:
    names = {learner.id: learner.name for learner in session.learners}
    return tuple(
        SampledLearner(
            one.learner,
            names[one.learner],
            true_minus("; ".join(one.reasons)),  # a sample drawn earlier may bear hyphens
            _total(found[one.learner].first_total),
            _total(found[one.learner].second_total),
            _total(found[one.learner].total),
        )
        for one in (sample.learners if sample is not None else ())
        if one.learner in names
    )


def _decisions(session: Session) -> Iterable[RecordedDecision]:
    names = {learner.id: learner.name for learner in session.learners}
    titles = {criterion.id: criterion.title for criterion in session.rubric.criteria}
    for one in standing(session.history()):
        if one.kind not in _TOLD or one.at is None:
            continue
        if one.value is None:
            # Lifting a sign-off is told by the reopening beside it.
            if one.kind != "sign_off":
                what = f"Taken back: {one.kind.replace('_', ' ')}"
                about = names.get(one.learner, "")
                yield RecordedDecision(one.who, one.at, f"{what} {about}".strip(), one.why)
            continue
        yield RecordedDecision(one.who, one.at, told(one, names, titles), one.why)


def _sign_offs(session: Session, found: Mapping[str, Outcome]) -> tuple[SignOff, ...]:
    rows = [row for one in found.values() for row in one.criteria]
    firsts = dict.fromkeys(row.first.by for row in rows if row.first is not None)
    seconds = dict.fromkeys(mark.by for row in rows for mark in row.seconds)
    signed = sign_off_of(session.state)
    lines = [SignOff("First marker", name) for name in firsts or ("",)]
    lines += [SignOff("Moderator", name) for name in seconds or ("",)]
    if signed is None:
        return (*lines, SignOff("Signed off by"))
    return (*lines, SignOff("Signed off by", signed.by, signed.at))


def _digest(session: Session) -> str:
    with Journal.open(store_of(session.folder), read_only=True) as journal:
        return journal.last_digest


def _pair(low: float | None, high: float | None, times: float = 1.0) -> tuple[float, float] | None:
    return None if low is None or high is None else (times * low, times * high)


def _number(value: float | None, places: int, undefined: str, *, sign: bool = False) -> str:
    if value is None:
        return f"undefined: {undefined}" if undefined else "–"
    value = round(value, places) + 0.0  # never "-0.00"
    return f"{value:{'+' if sign else ''}.{places}f}".replace("-", "−")


def _span(
    pair: tuple[float, float] | None, places: int, unit: str = "", *, sign: bool = False
) -> str:
    if pair is None:
        return ""
    low, high = (_number(end, places, "", sign=sign) for end in pair)
    return f"{low} to {high}{unit}"


def _total(value: float | None) -> str:
    return "" if value is None else f"{value:g}"
