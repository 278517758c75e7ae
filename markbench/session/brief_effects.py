"""What a setting of the brief means for the class at hand, in one sentence with numbers.

A tolerance is an abstract thing until one reads "3 of 28 tables fall short of this". What may
stand in a brief and yet is likely a slip (a pair that is not in the class list, a grade that
nobody can reach) is told as a doubt, which holds nothing up.
"""

from __future__ import annotations

import datetime as dt
from collections import Counter
from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass

from markbench.checks.wording import listed
from markbench.export.task_words import LANGUAGES
from markbench.model import Brief, ClassWork, Place, Portfolio, ReadingsTable, say
from markbench.physics.gravity import local_gravity
from markbench.physics.reporting import with_uncertainty

_KINDS = {
    "setup_photo": say("the set-up photo"),
    "selfie": say("the photo of themselves"),
    "photo": say("the photo"),
    "swing_video": say("the swing video"),
    "report": say("the report"),
}
Say = Callable[[Brief, ClassWork], str]


@dataclass(frozen=True, slots=True)
class Effect:
    """What is said of a setting, and the settings it is worked out from beside its own."""

    say: Say
    rests_on: tuple[str, ...] = ()


def effects(brief: Brief, work: ClassWork, wrong: Collection[str] = ()) -> Mapping[str, str]:
    """A sentence for each key; none that would rest on a value that is ``wrong``."""
    told = {
        key: effect.say(brief, work)
        for key, effect in EFFECTS.items()
        if not any(one in wrong for one in (key, *effect.rests_on))
    }
    return {key: sentence for key, sentence in told.items() if sentence}


def doubts(brief: Brief, work: ClassWork, most: float | None = None) -> Mapping[str, str]:
    """What is likely a slip. ``most``: the marks of the rubric, where it is known."""
    told: dict[str, str] = {}
    known = {learner.id for learner in work.learners}
    strange = sorted({one for pair in brief.partners for one in pair} - known)
    if strange and known:
        told["partners"] = say(
            "Not among the ids of the class list (such as {id}): {strange}.",
            id=work.learners[0].id,
            strange=", ".join(strange),
        )
    beyond = [grade for grade, least in brief.grade_boundaries if most and least > most]
    if beyond:
        told["grades"] = say(
            "Above the {most:g} marks of the rubric: {grades}.", most=most, grades=", ".join(beyond)
        )
    if brief.feedback_language.split("-")[0].lower() not in LANGUAGES:
        told["feedback_language"] = say(
            "There are no sentences in this language: English goes out."
        )
    return told


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
    counts = sorted({*brief.swings_allowed, brief.swings_per_timing})
    return _share(
        _tables(work),
        lambda table: all(row.swings in counts for row in table.readings),
        say("keep to {counts}", counts=listed([str(count) for count in counts])),
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


def _title(_brief: Brief, work: ClassWork) -> str:
    return say(
        "Stands over the task sheet, the mark sheet and every feedback sheet ({n}).",
        n=len(work.learners),
    )


def _support(brief: Brief, work: ClassWork) -> str:
    height = brief.support_height_m
    if height is None:
        return say("Not given: no length is too long for the support.")
    lengths = [row.length_m for table in _tables(work) for row in table.readings]
    above = sum(length > height for length in lengths)
    if not lengths:
        return ""
    return say("{n} of the {of} lengths are longer than that.", n=above, of=len(lengths))


def _pairs(brief: Brief, _work: ClassWork) -> str:
    if not brief.partners:
        return say("No pairs: any two tables that are alike are asked about.")
    return say("Pairs that may have the same readings: {n}.", n=len(brief.partners))


def _days(work: ClassWork) -> list[dt.date]:
    return [one.handed_in.date() for one in work.portfolios.values() if one.handed_in]


def _early(brief: Brief, work: ClassWork) -> str:
    if brief.opens is None:
        return say("Without a first day nothing is too early.")
    early = sum(day < brief.opens for day in _days(work))
    return say(
        "{n} learner handed in before this day."
        if early == 1
        else "{n} learners handed in before this day.",
        n=early,
    )


def _days_late(brief: Brief, work: ClassWork) -> list[int]:
    """Days late, of those who are."""
    closes = brief.closes
    return [(day - closes).days for day in _days(work) if closes is not None and day > closes]


def _late(brief: Brief, work: ClassWork) -> str:
    if brief.closes is None:
        return say("Without a last day nothing is late.")
    late = len(_days_late(brief, work))
    return say(
        "{n} learner has a piece that is dated later."
        if late == 1
        else "{n} learners have a piece that is dated later.",
        n=late,
    )


def _cost(brief: Brief, work: ClassWork) -> str:
    if brief.late.marks_per_day == 0:
        return say("Lateness costs nothing.")
    late = len(_days_late(brief, work))
    return say(
        "This bears on {n} learner so far." if late == 1 else "This bears on {n} learners so far.",
        n=late,
    )


def _most_days(brief: Brief, work: ClassWork) -> str:
    per_day, most = brief.late.marks_per_day, brief.late.most_days
    if per_day == 0:
        return say("Lateness costs nothing.")
    if most is not None:
        return say("Nobody loses more than {marks}.", marks=_marks(per_day * most))
    longest = max(_days_late(brief, work), default=0)
    if not longest:
        return say("Every day late counts.")
    return say(
        "Every day late counts; the latest so far loses {marks}.", marks=_marks(per_day * longest)
    )


def _marks(marks: float) -> str:
    return say("{n:g} mark" if marks == 1 else "{n:g} marks", n=marks)


def _grades(brief: Brief, _work: ClassWork) -> str:
    if not brief.grade_boundaries:
        return say("Marks alone: no grades go out.")
    parts = [say("{grade} from {n:g}", grade=g, n=least) for g, least in brief.grade_boundaries]
    return say("{parts}; no grade below.", parts=listed(parts))


def _language(_brief: Brief, _work: ClassWork) -> str:
    return say("Feedback, reminders, task sheet and table of readings are written in it.")


def _independent(brief: Brief, _work: ClassWork) -> str:
    return say("Feedback and task sheet call the length: {word}.", word=brief.words.independent)


def _dependent(brief: Brief, _work: ClassWork) -> str:
    return say("Feedback and task sheet call the time: {word}.", word=brief.words.dependent)


def _controlled(brief: Brief, _work: ClassWork) -> str:
    return say(
        "Feedback and task sheet call what stays the same, as the bob: {word}.",
        word=brief.words.controlled,
    )


def _counted(work: ClassWork, *kinds: str) -> int:
    return sum(piece.kind in kinds for one in work.portfolios.values() for piece in one.pieces)


def _selfies(brief: Brief, work: ClassWork) -> str:
    return say(
        "Photos of learners that a pack of the whole class would hold: {n}."
        if brief.selfies_in_pack
        else "Photos of learners that stay here: {n}.",
        n=_counted(work, "selfie"),
    )


def _reports(brief: Brief, work: ClassWork) -> str:
    return say(
        "Reports that a pack of the whole class would hold, as words: {n}."
        if brief.reports_in_pack
        else "Reports that stay here: {n}.",
        n=_counted(work, "report"),
    )


def _kept(brief: Brief, work: ClassWork) -> str:
    return say(
        "Without a day you are not reminded to remove them. Photos and videos here: {n}."
        if brief.keep_evidence_until is None
        else "From the day after, you are reminded to remove them. Photos and videos here: {n}.",
        n=_counted(work, "setup_photo", "selfie", "photo", "swing_video"),
    )


def _gravity(brief: Brief, _work: ClassWork) -> str:
    local = local_gravity(brief.place)
    return say(
        "Local g: {g} ({basis}).", g=with_uncertainty(local.g, local.u_g, "m/s²"), basis=local.basis
    )


def _sea(brief: Brief, _work: ClassWork) -> str:
    place = brief.place
    if place.latitude_deg is None:
        return say("Counts once the latitude is given.")
    if place.height_m is None:
        return say("Not given: g is taken for 0 to 500 m.")
    less = local_gravity(Place(place.latitude_deg, 0.0)).g - local_gravity(place).g
    return say(
        "g is {less:.4f} m/s² less here than at the sea."
        if less >= 0
        else "g is {less:.4f} m/s² more here than at the sea.",
        less=abs(less),
    )


def _close(brief: Brief, _work: ClassWork) -> str:
    g, share = local_gravity(brief.place).g, brief.tolerances.g_fraction
    return say(
        "Close means {low:.2f} to {high:.2f} m/s² here.", low=g * (1 - share), high=g * (1 + share)
    )


def _arithmetic(brief: Brief, _work: ClassWork) -> str:
    g, share = local_gravity(brief.place).g, brief.tolerances.own_arithmetic_fraction
    return say(
        "Where a learner's readings give {g:.2f} m/s², {low:.2f} to {high:.2f} m/s² pass as "
        "worked out right.",
        g=g,
        low=g * (1 - share),
        high=g * (1 + share),
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


_PLACE = ("place.latitude_deg", "place.height_m")
EFFECTS: Mapping[str, Effect] = {
    "title": Effect(_title),
    "opens": Effect(_early),
    "closes": Effect(_late),
    "lengths": Effect(_lengths),
    "timings_per_length": Effect(_timings),
    "swings_per_timing": Effect(_swings),
    "swings_allowed": Effect(_allowed, ("swings_per_timing",)),
    "shortest_m": Effect(_too_short),
    "longest_m": Effect(_too_long),
    "least_ratio": Effect(_ratio),
    "support_height_m": Effect(_support),
    "evidence": Effect(_evidence),
    "partners": Effect(_pairs),
    "place.latitude_deg": Effect(_gravity, _PLACE),
    "place.height_m": Effect(_sea, _PLACE),
    "late.marks_per_day": Effect(_cost, ("closes",)),
    "late.most_days": Effect(_most_days, ("closes", "late.marks_per_day")),
    "grades": Effect(_grades),
    "feedback_language": Effect(_language),
    "words.independent": Effect(_independent),
    "words.dependent": Effect(_dependent),
    "words.controlled": Effect(_controlled),
    "selfies_in_pack": Effect(_selfies),
    "reports_in_pack": Effect(_reports),
    "keep_evidence_until": Effect(_kept),
    "tolerances.timing_scatter_s": Effect(_scatter, ("swings_per_timing",)),
    "tolerances.g_fraction": Effect(_close, _PLACE),
    "tolerances.own_arithmetic_fraction": Effect(_arithmetic, _PLACE),
    "tolerances.false_alarm": Effect(_alarm),
}
