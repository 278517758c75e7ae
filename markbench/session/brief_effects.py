"""What a setting of the brief means for the class at hand, in one sentence with numbers.

A tolerance is an abstract thing until one reads "3 of 28 tables fall short of this".
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping

from markbench.checks.wording import listed
from markbench.model import Brief, ClassWork, Portfolio, ReadingsTable, say
from markbench.physics.gravity import local_gravity
from markbench.physics.reporting import with_uncertainty

_KINDS = {
    "setup_photo": say("the set-up photo"),
    "selfie": say("the photo of themselves"),
    "photo": say("the photo"),
    "swing_video": say("the swing video"),
    "report": say("the report"),
}
Effect = Callable[[Brief, ClassWork], str]


def effects(brief: Brief, work: ClassWork) -> Mapping[str, str]:
    """A sentence for each key that has something to show here."""
    told = {key: effect(brief, work) for key, effect in _EFFECTS.items()}
    return {key: sentence for key, sentence in told.items() if sentence}


def _tables(work: ClassWork) -> list[ReadingsTable]:
    return [one.table for one in work.portfolios.values() if one.table and one.table.readings]


def _share(tables: list[ReadingsTable], holds: Callable[[ReadingsTable], bool], what: str) -> str:
    if not tables:
        return ""
    return say(
        "{n} of the {of} tables {what}.", n=sum(map(holds, tables)), of=len(tables), what=what
    )


def _lengths(brief: Brief, work: ClassWork) -> str:
    return _share(
        _tables(work),
        lambda table: len({row.length_m for row in table.readings}) >= brief.lengths,
        say("have {n} lengths or more", n=brief.lengths),
    )


def _timings(brief: Brief, work: ClassWork) -> str:
    return _share(
        _tables(work),
        lambda t: min(len(row.timings) for row in t.readings) >= brief.timings_per_length,
        say("have {n} or more timings at every length", n=brief.timings_per_length),
    )


def _swings(brief: Brief, work: ClassWork) -> str:
    said: Counter[int] = Counter()
    silent = 0
    for table in _tables(work):
        counts = [row.swings for row in table.readings if row.swings_source is not None]
        if counts:
            said[Counter(counts).most_common(1)[0][0]] += 1
        else:
            silent += 1
    parts = [
        say(
            "{n} says {swings} swings" if count == 1 else "{n} say {swings} swings",
            n=count,
            swings=swings,
        )
        for swings, count in said.most_common(3)
    ]
    if silent:
        parts.append(
            say(
                "{n} does not say and takes this count"
                if silent == 1
                else "{n} do not say and take this count",
                n=silent,
            )
        )
    return say("Of the tables, {parts}.", parts=listed(parts)) if parts else ""


def _allowed(brief: Brief, work: ClassWork) -> str:
    return _share(
        _tables(work),
        lambda table: all(row.swings in brief.swings_allowed for row in table.readings),
        say("keep to these counts"),
    )


def _too_short(brief: Brief, work: ClassWork) -> str:
    lengths = [row.length_m for table in _tables(work) for row in table.readings]
    below = sum(length < brief.shortest_m for length in lengths)
    return say("{n} of the {of} lengths are shorter.", n=below, of=len(lengths)) if lengths else ""


def _too_long(brief: Brief, work: ClassWork) -> str:
    lengths = [row.length_m for table in _tables(work) for row in table.readings]
    above = sum(length > brief.longest_m for length in lengths)
    return say("{n} of the {of} lengths are longer.", n=above, of=len(lengths)) if lengths else ""


def _ratio(brief: Brief, work: ClassWork) -> str:
    def wide(table: ReadingsTable) -> bool:
        lengths = [row.length_m for row in table.readings]
        return max(lengths) >= brief.least_ratio * min(lengths)

    return _share(_tables(work), wide, say("reach it"))


def _lacks(portfolio: Portfolio, kind: str) -> bool:
    # A picture not yet told apart may be either photo.
    pictures = ("setup_photo", "selfie")
    kinds = {piece.kind for piece in portfolio.pieces}
    return kind not in kinds and not (kind in pictures and "photo" in kinds)


def _evidence(brief: Brief, work: ClassWork) -> str:
    lacking = [
        say(
            "{n} lacks {piece}" if count == 1 else "{n} lack {piece}",
            n=count,
            piece=_KINDS.get(kind, kind),
        )
        for kind in brief.evidence
        if (count := sum(_lacks(one, kind) for one in work.portfolios.values()))
    ]
    if not brief.evidence or not work.portfolios:
        return ""
    if not lacking:
        return say("Everybody has handed in all of these.")
    return say("Of the {n} learners, {parts}.", n=len(work.portfolios), parts=listed(lacking))


def _early(brief: Brief, work: ClassWork) -> str:
    if brief.opens is None:
        return ""
    dates = [one.handed_in.date() for one in work.portfolios.values() if one.handed_in]
    early = sum(day < brief.opens for day in dates)
    return say(
        "{n} learner handed in before this day."
        if early == 1
        else "{n} learners handed in before this day.",
        n=early,
    )


def _late_count(brief: Brief, work: ClassWork) -> int:
    dates = [one.handed_in.date() for one in work.portfolios.values() if one.handed_in]
    return sum(brief.closes is not None and day > brief.closes for day in dates)


def _late(brief: Brief, work: ClassWork) -> str:
    if brief.closes is None:
        return say("Without a last day nothing is late.")
    late = _late_count(brief, work)
    return say(
        "{n} learner has a piece that is dated later."
        if late == 1
        else "{n} learners have a piece that is dated later.",
        n=late,
    )


def _cost(brief: Brief, work: ClassWork) -> str:
    if brief.late.marks_per_day == 0:
        return say("Lateness costs nothing.")
    return _bearing(_late_count(brief, work))


def _bearing(late: int) -> str:
    return say(
        "This bears on {n} learner so far." if late == 1 else "This bears on {n} learners so far.",
        n=late,
    )


def _gravity(brief: Brief, _work: ClassWork) -> str:
    local = local_gravity(brief.place)
    return say(
        "Local g: {g} ({basis}).", g=with_uncertainty(local.g, local.u_g, "m/s²"), basis=local.basis
    )


def _close(brief: Brief, _work: ClassWork) -> str:
    g, share = local_gravity(brief.place).g, brief.tolerances.g_fraction
    return say(
        "Close means {low:.2f} to {high:.2f} m/s² here.", low=g * (1 - share), high=g * (1 + share)
    )


def _alarm(brief: Brief, _work: ClassWork) -> str:
    often = round(1 / brief.tolerances.false_alarm)
    return say(
        "About 1 honest learner in {n} is asked a needless question by such a check.", n=often
    )


def _scatter(brief: Brief, _work: ClassWork) -> str:
    scatter = brief.tolerances.timing_scatter_s / brief.swings_per_timing
    return say(
        "At {n} swings that is {scatter:.2g} s on one swing.",
        n=brief.swings_per_timing,
        scatter=scatter,
    )


_EFFECTS: Mapping[str, Effect] = {
    "lengths": _lengths,
    "timings_per_length": _timings,
    "swings_per_timing": _swings,
    "swings_allowed": _allowed,
    "shortest_m": _too_short,
    "longest_m": _too_long,
    "least_ratio": _ratio,
    "evidence": _evidence,
    "opens": _early,
    "closes": _late,
    "late.marks_per_day": _cost,
    "place.latitude_deg": _gravity,
    "tolerances.g_fraction": _close,
    "tolerances.false_alarm": _alarm,
    "tolerances.timing_scatter_s": _scatter,
}
