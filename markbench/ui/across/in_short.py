"""What one criterion rests on, as short values: what differs from learner to learner."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QCoreApplication

from markbench.model import Analysis, Criterion, PieceKind, piece_states, say
from markbench.physics.reporting import with_uncertainty
from markbench.rubric.condition import condition
from markbench.rubric.facts import FACTS, Facts
from markbench.rubric.reasons import lacking
from markbench.ui.look.said import figures, said

if TYPE_CHECKING:
    from markbench.session import Session


@dataclass(frozen=True, slots=True)
class Short:
    """A value in a few words; ``lacks``: it keeps the learner from the highest level."""

    words: str
    lacks: bool


def in_short(session: Session, learner: str, criterion: Criterion) -> tuple[Short, ...]:
    """The facts that the highest level of ``criterion`` turns on, what falls short first.

    Empty where it turns on none, as for a criterion of the teacher's eye.
    """
    highest = condition(criterion.levels[0].when if criterion.levels else "")
    names, facts = highest.names, session.facts(learner)
    if facts["readings_given"] is False and any(FACTS[one].rests_on_readings for one in names):
        return (Short(_tr("no readings"), True),)
    short_of = {told.fact for told in lacking(highest, facts)}
    untold = _untold(session, learner) if "pieces_present" in names else 0
    if untold:  # none of them is missing for certain
        short_of.discard("pieces_present")
    found = {
        words: Short(words, name in short_of)
        for name in FACTS
        if name in names and not (untold and name == "pieces_present" and not facts[name])
        for words in _words(name, facts, session.analysis(learner))
    }
    if untold:
        words = _tr("1 photo to be told apart") if untold == 1 else _tr(
            "{n} photos to be told apart")  # fmt: skip
        told = words.format(n=untold)
        found[told] = Short(told, True)
    return tuple(sorted(found.values(), key=lambda one: not one.lacks))


def _untold(session: Session, learner: str) -> int:
    """How many pieces may be among the photos that nobody has told apart yet."""
    evidence = cast(tuple[PieceKind, ...], session.brief.evidence)
    states = piece_states(session.portfolio(learner), evidence)
    return sum(state == "untold" for state in states.values())


def _words(name: str, facts: Facts, analysis: Analysis) -> Iterator[str]:
    """A fact in a few words; none where there is nothing to say."""
    fact, value = FACTS[name], facts[name]
    if fact.group == "asked" or fact.kind == "text":  # the same for all; a text may hold a name
        return
    if value is None:
        return
    if name in ("g", "g_within_tolerance") and analysis.line is not None:
        g = with_uncertainty(analysis.line.g, analysis.line.u_g)
        yield _tr("g {value} m/s²").format(value=figures(g))
    elif isinstance(value, bool):
        yes, no = _yes_no().get(name, (_label(name), f"{_label(name)}: –"))
        if words := yes if value else no:
            yield words
    else:
        shown = figures(fact.show(value, None) or "") if fact.show is not None else f"{value:g}"
        form = _numbers().get(name)
        yield form.format(value=shown) if form else f"{_label(name)} {shown}"


def _label(name: str) -> str:
    return said(say(FACTS[name].label))


def _numbers() -> dict[str, str]:
    return {
        "lengths": _tr("lengths {value}"),
        "timings_fewest": _tr("timings each {value}"),
        "timings_total": _tr("timings {value}"),
        "swings_fewest": _tr("swings {value}"),
        "range_ratio": _tr("ratio {value}"),
        "repeat_scatter_s": _tr("scatter {value}"),
        "timings_departing": _tr("departing {value}"),
        "own_columns": _tr("worked out {value} of 4"),
        "own_arithmetic_wrong_count": _tr("wrong {value}"),
        "points": _tr("points {value}"),
        "outliers": _tr("far off {value}"),
        "g_difference_fraction": _tr("off local g {value}"),
        "pieces_present": _tr("pieces {value}"),
    }


def _yes_no() -> dict[str, tuple[str, str]]:
    """Words for yes and for no; empty where that goes without saying."""
    return {
        "readings_given": ("", _tr("no readings")),
        "decimals_even": (_tr("even decimals"), _tr("uneven decimals")),
        "headings_have_units": (_tr("units in headings"), _tr("a unit missing")),
        "own_mean_given": (_tr("mean"), _tr("no mean")),
        "own_period_given": (_tr("T"), _tr("no T")),
        "own_period_squared_given": (_tr("T²"), _tr("no T²")),
        "own_g_given": (_tr("own g"), _tr("no own g")),
        "own_arithmetic_right": (_tr("worked out right"), _tr("not worked out right")),
        "video_short": (_tr("short video"), ""),
    }


def _tr(text: str) -> str:
    return QCoreApplication.translate("Strips", text)
