"""Columns whose headings leave open what they hold, told apart by their numbers.

Three questions: a column without a usable heading; a column headed as a time that holds the
mean of the others; a table with no raw times, only T (or only means).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

from markbench.checks.wording import listed
from markbench.intake.tables import law
from markbench.intake.tables.headings import Heading
from markbench.intake.tables.lines import Found, Line, Ref, places_of, table_place
from markbench.intake.tables.units import dimension, size
from markbench.model import Brief, Concern, Finding, say

# A mean column repeats the mean of its row to rounding: within half a unit of the second
# decimal, or of the mean's own last figure where that is coarser (0.05 covers one decimal).
_SAME_MEAN_S = 0.051
# T as worked out from a timing or from the mean of its repeats.
_SAME_PERIOD = 0.05
# Half swings counted for whole ones still give times, though half as long.
_HALF_SWINGS = 0.4
# Repeats of one timing agree far better than this; other columns rarely come so near.
_LIKE_TIMINGS = 0.15


def assign_columns(
    found: Found, brief: Brief, learner: str, noted_swings: int | None, findings: list[Finding]
) -> None:
    """Give every open column of ``found`` its part; each guess is added to ``findings``."""
    if any(line.unclaimed for line in found.lines):
        _unclaimed(found, brief, learner, noted_swings, findings)
    _means_among_timings(found, learner, findings)
    _periods_among_timings(found, brief, learner, noted_swings, findings)
    if not found.raw:
        _without_raw_times(found, brief, learner, noted_swings, findings)


def _by_column(
    found: Found, part: Literal["unclaimed", "timings", "own"]
) -> dict[int, list[tuple[Line, Ref]]]:
    columns: dict[int, list[tuple[Line, Ref]]] = {}
    for line in found.lines:
        refs: list[Ref] = getattr(line, part)
        for ref in refs:
            columns.setdefault(found.key_of(ref), []).append((line, ref))
    return columns


def _number(ref: Ref) -> float:
    return ref.value.number or 0.0


def _time_size(ref: Ref) -> float:
    unit = ref.value.unit or ref.heading.unit
    return size(unit) if unit and dimension(unit) == "time" else 1.0


def _is_mean(found: Found, cells: Sequence[tuple[Line, Ref]]) -> bool:
    """Whether a column holds, row by row, the mean of the other timings.

    To one unit of the column's last figure, as cut or rounded; or less closely, where the
    timings differ by enough to tell their mean from one more of them.
    """
    judged = []
    for line, ref in cells:
        others = [_number(other) for other in line.timings if other is not ref]
        if len(others) >= 2:
            mean = sum(others) / len(others)
            judged.append((abs(mean - _number(ref)), mean, max(others) - min(others)))
    if len(judged) < 3:
        return False
    places = max(places_of(found.grid, ref) for _, ref in cells)
    return any(
        sum(gap <= max(near, 0.0005 * mean * (near == _SAME_MEAN_S)) for gap, mean, _ in judged)
        >= 0.9 * len(judged)
        and any(spread > 3 * near for _, _, spread in judged)
        for near in (min(_SAME_MEAN_S, 1.01 * 10.0**-places), _SAME_MEAN_S)
    )


def _like_timings(cells: Sequence[tuple[Line, Ref]]) -> bool:
    judged = hits = 0
    if len({_number(ref) for _, ref in cells}) == 1 < len({_number(ln.length) for ln, _ in cells}):
        return False  # the same at every length: an angle, a mass, a count
    for line, ref in cells:
        others = [_number(other) for other in line.timings]
        if others:
            judged += 1
            mean = sum(others) / len(others)
            hits += abs(mean - _number(ref)) <= _LIKE_TIMINGS * mean
    return judged > 0 and hits >= 0.8 * judged


def _say(
    found: Found,
    refs: Ref | list[Ref],
    what: str,
    learner: str,
    concern: Concern,
    ask: str = "",
) -> Finding:
    """How one or more columns were taken, each shown by one of its cells."""
    headed, bare, places = [], [], []
    for ref in refs if isinstance(refs, list) else [refs]:
        head = found.head_of(ref)
        at = (head[0], head[1]) if head else (ref.row, ref.column)
        name = found.grid.cell_name(*at)
        if head:
            headed.append(say("“{text}” ({cell})", text=head[2], cell=name))
        else:
            bare.append(name)
        places.append(at)
    titles = []
    if headed:
        titles.append(say("headed {titles}", titles=listed(headed)))
    if bare:
        titles.append(say("from {cells} (no heading)", cells=listed(bare)))
    return Finding(
        "column_guessed",
        learner,
        say(
            (
                "{table}: the row {titles} was taken as {what}."
                if len(places) == 1
                else "{table}: the rows {titles} were taken as {what}."
            )
            if found.turned
            else (
                "{table}: the column {titles} was taken as {what}."
                if len(places) == 1
                else "{table}: the columns {titles} were taken as {what}."
            ),
            table=table_place(found.grid),
            titles=listed(titles),
            what=what,
        ),
        concern,
        {"cell": found.grid.cell_name(*places[0]), "taken_as": what},
        tuple(found.grid.source(*at, say("taken as {what}", what=what)) for at in places),
        ask,
    )


def _move(ref: Ref, source: list[Ref], target: list[Ref], heading: Heading) -> None:
    source.remove(ref)
    ref.heading = heading
    target.append(ref)


def _unclaimed(
    found: Found, brief: Brief, learner: str, noted_swings: int | None, findings: list[Finding]
) -> None:
    columns = _by_column(found, "unclaimed")
    raw = found.raw
    told: dict[str, list[Ref]] = {}
    unused: list[Ref] = []
    what: str
    for column, cells in columns.items():
        first = cells[0][1]
        heading = first.heading
        if raw:
            if _is_mean(found, cells):
                new, target, what = (
                    replace(heading, quantity="time", mean=True),
                    "own",
                    say("own means"),
                )
            elif _like_timings(cells):
                like = cells[0][0].timings[0].heading if cells[0][0].timings else heading
                new = Heading("time", like.unit, like.swings)
                target, what = "timings", say("further timings")
            else:
                unused.append(first)
                continue
        else:
            guess = _by_law(cells, brief, noted_swings)
            if guess is None:
                unused.append(first)
                continue
            new, target, what = guess
            new = replace(new, swings=heading.swings, unit=heading.unit)
        for line, ref in cells:
            _move(ref, line.unclaimed, line.timings if target == "timings" else line.own, new)
        findings += found.unread.get(column, ())
        told.setdefault(what, []).append(first)
    if not raw:
        _means_among_guessed(found, told)
        found.long = found.long or len(_by_column(found, "timings")) == 1
    if unused and found.raw:
        told[say("something else than readings, and not used")] = unused
    for what, firsts in told.items():
        ask = say("What does this column hold?") if what.endswith("timings") else ""
        findings.append(
            _say(found, firsts, what, learner, Concern.ASK if ask else Concern.NOTE, ask)
        )


def _means_among_guessed(found: Found, told: dict[str, list[Ref]]) -> None:
    """A column taken for timings by the law that holds the means of the others."""
    columns = _by_column(found, "timings")
    for cells in columns.values() if len(columns) > 2 else ():
        if _is_mean(found, cells):
            first = cells[0][1]
            for line, ref in cells:
                _move(ref, line.timings, line.own, replace(ref.heading, mean=True))
            for firsts in told.values():
                firsts[:] = [ref for ref in firsts if ref is not first]
            told[say("own means")] = [first]
            return


def _lengths_m(cells: Sequence[tuple[Line, Ref]], brief: Brief) -> list[float] | None:
    """Lengths beside the cells in metres, by stated units only."""
    lengths = []
    for line, _ in cells:
        unit = line.length.value.unit or line.length.heading.unit
        if unit is None or dimension(unit) != "length":
            return None
        lengths.append(_number(line.length) * size(unit))
    return lengths


def _by_law(
    cells: Sequence[tuple[Line, Ref]], brief: Brief, noted_swings: int | None
) -> tuple[Heading, str, str] | None:
    """What a column of numbers beside lengths must be, if the pendulum's law can tell."""
    candidates = [_lengths_m(cells, brief)]
    if candidates[0] is None:
        candidates = [
            [_number(line.length) * size(unit) for line, _ in cells] for unit in ("cm", "m", "mm")
        ]
    counts = {brief.swings_per_timing, *brief.swings_allowed}
    if noted_swings:
        counts = {noted_swings}
    for lengths in candidates:
        if lengths is None or not all(
            brief.shortest_m / 3 <= n <= 3 * brief.longest_m for n in lengths
        ):
            continue
        values = [_number(ref) for _, ref in cells]
        pairs = list(zip(lengths, values, strict=True))
        if not law.rises_as_root(pairs):
            return None
        apparent = law.apparent_swings(pairs)
        if not math.isfinite(apparent):
            continue
        if any(_HALF_SWINGS < apparent / n < 1.6 for n in counts):
            return Heading("time"), "timings", say("timings")
        if 0.75 < apparent < 1.35:
            return Heading("period"), "own", say("periods T")
    return None


def _means_among_timings(found: Found, learner: str, findings: list[Finding]) -> None:
    """A column headed only ``t`` after ``t1``, ``t2``: the mean, if its numbers say so."""
    columns = _by_column(found, "timings")
    if len(columns) < 3:
        return
    headings = [cells[0][1].heading for cells in columns.values()]
    numbered = sum(h.repeat is not None for h in headings)
    if numbered == len(headings) or numbered < 2:
        return
    for cells in columns.values():
        first = cells[0][1]
        if first.heading.repeat is None and _is_mean(found, cells):
            heading = replace(first.heading, mean=True)
            for line, ref in cells:
                _move(ref, line.timings, line.own, heading)
            findings.append(
                _say(found, first, say("the learner's own means"), learner, Concern.NOTE)
            )


def _periods_among_timings(
    found: Found, brief: Brief, learner: str, noted_swings: int | None, findings: list[Finding]
) -> None:
    """A column headed ``t`` beside the times that holds them divided by the swings: T."""
    columns = _by_column(found, "timings")
    if len(columns) < 2:
        return
    for cells in columns.values():
        first = cells[0][1]
        if first.heading.swings is not None:
            continue
        ratios = [
            _number(other) / _number(ref) / (other.heading.swings or noted_swings or fallback)
            for fallback in (brief.swings_per_timing,)
            for line, ref in cells
            for other in line.timings[:1]
            if other is not ref
        ]
        near = sum(abs(ratio - 1) < _SAME_PERIOD for ratio in ratios)
        if len(ratios) >= 2 and near >= 0.9 * len(ratios):
            heading = replace(first.heading, quantity="period", repeat=None)
            for line, ref in cells:
                _move(ref, line.timings, line.own, heading)
            findings.append(_say(found, first, say("the learner's own T"), learner, Concern.NOTE))


def _without_raw_times(
    found: Found, brief: Brief, learner: str, noted_swings: int | None, findings: list[Finding]
) -> None:
    """No column of times: T columns that hold total times, T alone, or means alone.

    A teacher who is handed only T (or means) still wants the graph and g; so T stands in as
    a timing of one swing, with a finding that says the raw times are missing.
    """
    periods: list[tuple[Line, Ref]] = []
    means: list[tuple[Line, Ref]] = []
    for line in found.lines:
        for ref in line.own:
            if ref.heading.quantity == "period":
                periods.append((line, ref))
            elif ref.heading.quantity == "time" and ref.heading.mean:
                means.append((line, ref))
    plain = [(line, ref) for line, ref in periods if not ref.heading.mean]
    chosen = plain or means or periods
    if not chosen:
        return
    first = chosen[0][1]
    lengths = _lengths_m(chosen, brief)
    if chosen is not means and lengths is None:
        guess = _by_law(chosen, brief, noted_swings)
        total = guess is not None and guess[1] == "timings"
    else:
        seconds = [_number(ref) * _time_size(ref) for _, ref in chosen]
        apparent = law.apparent_swings(zip(lengths or [], seconds, strict=False))
        total = apparent > 3.5  # nearer to five swings than to one or a double swing
    if chosen is means:
        findings.append(
            _say(
                found,
                first,
                say("timings, because only means are given and no single times"),
                learner,
                Concern.LOOK,
                say("What were the single times on the stopwatch?"),
            )
        )
        for line, ref in means:
            _move(ref, line.own, line.timings, replace(ref.heading, mean=False))
        return
    if total:
        firsts = [cells[0][1] for cells in _by_column(found, "own").values()]
        firsts = [ref for ref in firsts if any(ref is other for _, other in chosen)]
        for line, ref in chosen:
            _move(ref, line.own, line.timings, replace(ref.heading, quantity="time"))
        findings.append(
            _say(
                found,
                firsts,
                say("times of several swings, though headed T"),
                learner,
                Concern.ASK,
                say("Is this the time of one swing, or of all swings timed?"),
            )
        )
        found.long = found.long or len(_by_column(found, "timings")) == 1
        return
    for line, ref in chosen:
        _move(ref, line.own, line.timings, replace(ref.heading, quantity="time", swings=1))
    head = found.head_of(first)
    at = (head[0], head[1]) if head else (first.row, first.column)
    findings.append(
        Finding(
            "swings_guessed",
            learner,
            say(
                "{table}: the table gives only the period T and no times from the stopwatch; each "
                "T was taken as a timing of one swing.",
                table=table_place(found.grid),
            ),
            Concern.LOOK,
            {"swings": 1},
            (found.grid.source(*at, say("taken as the time of one swing")),),
            say("What were the times on the stopwatch, and for how many swings?"),
        )
    )
