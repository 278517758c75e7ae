"""Which questions an explanation answers, once the teacher has agreed with it.

A question is answered if it does not come up again when the readings are put right as the
explanation says. Rejected: a list of questions for each slip; a wide swing may explain a g that
is too small, and leaves a lonely timing as odd as it was.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace

from markbench.checks import numbers
from markbench.checks.question import Case
from markbench.model import Concern, Explanation, Finding, Reading, Row
from markbench.physics.analyse import analyse
from markbench.physics.stack import stack_readings

_NUMBERS = {
    "period_off_law": numbers.period_off_law,
    "g_implausible": numbers.g_implausible,
    "timing_departs": numbers.timing_departs,
    "off_the_line": numbers.off_the_line,
    "intercept": numbers.intercept,
}
_FILMED = ("period_s", "u_period_s")
_FAR = 3.0  # spreads between a film's period and a table's that are no accident
_OTHER_SWING = 0.007  # the film is another swing than those timed, as in evidence/video
_WHOLE = 0.02  # how near a count of swings must be to a whole number to be one


def answered(
    case: Case, findings: Iterable[Finding], explanation: Explanation
) -> tuple[Finding, ...]:
    """``findings`` with those that ``explanation`` answers marked as explained by it."""
    mended = _mended(case, explanation)
    again = {
        (finding.check, _rows(finding))
        for ask in _NUMBERS.values()
        for finding in (ask(mended) if mended is not None else ())
    }

    def is_answered(finding: Finding) -> bool:
        if finding.check == "slip":
            return True
        if finding.check == "video_period" and mended is not None:
            return _film_fits(finding, mended) and not _film_fits(finding, case)
        asked = finding.check in _NUMBERS and mended is not None
        return asked and (finding.check, _rows(finding)) not in again

    return tuple(
        replace(finding, concern=Concern.NOTE, explained_by=explanation.slip)
        if is_answered(finding)
        else finding
        for finding in findings
    )


def _film_fits(finding: Finding, case: Case) -> bool:
    """Whether the film's period is that of some length in the table."""
    filmed_s, u_s = (float(finding.numbers.get(name, math.nan)) for name in _FILMED)
    hand_s = case.brief.tolerances.timing_scatter_s
    return any(
        abs(row.period_s - filmed_s)
        <= _FAR * math.hypot(u_s, hand_s / row.swings, _OTHER_SWING * filmed_s)
        for row in case.analysis.rows
    )


def _rows(finding: Finding) -> frozenset[int]:
    """The rows of a question that each row may raise; any for those asked of the whole table."""
    one_row = finding.check in ("timing_departs", "off_the_line")
    return frozenset(row for row, _ in finding.cells) if one_row else frozenset()


def _mended(case: Case, explanation: Explanation) -> Case | None:
    """The case as it would be without the slip; ``None`` where nobody can say."""
    table, timed = case.portfolio.table, case.timed
    if table is None or not timed or len(explanation.mended) != len(timed):
        return None
    readings = list(table.readings)
    for (i, reading, row), (length_m, period_s) in zip(timed, explanation.mended, strict=True):
        cells = [k for j, k in explanation.cells if j == i and k is not None]
        readings[i] = _put_right(reading, row, length_m, period_s, cells)
    portfolio = replace(case.portfolio, table=replace(table, readings=tuple(readings)))
    (analysis,) = analyse(stack_readings([tuple(readings)]), case.analysis.local)
    return replace(case, portfolio=portfolio, analysis=analysis)


def _put_right(
    reading: Reading, row: Row, length_m: float, period_s: float, cells: list[int]
) -> Reading:
    """A reading of that length and period: by its count of swings, its odd timing, or all."""
    reading = replace(reading, length_m=length_m)
    swings = row.mean_time_s / period_s
    if abs(swings - round(swings)) < _WHOLE and round(swings) > 0:
        return replace(reading, swings=round(swings))
    times = [timing.time_s for timing in reading.timings]
    wanted = len(times) * period_s * row.swings
    if len(cells) == 1 < len(times):
        times[cells[0]] += wanted - sum(times)
    else:
        times = [time * wanted / sum(times) for time in times]
    timings = zip(reading.timings, times, strict=True)
    return replace(reading, timings=tuple(replace(one, time_s=t) for one, t in timings))
