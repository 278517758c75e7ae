"""Facts of the learner's own working: what they worked out, and whether it is right."""

from __future__ import annotations

from collections.abc import Iterable

from markbench.checks.wording import cm
from markbench.model import OwnQuantity, OwnValue, Row, Source
from markbench.rubric.facts.registry import Value, Work, count, number, text, yes_no

_WRONG = ("own_arithmetic",)
_SYMBOLS: dict[OwnQuantity, str] = {
    "mean_time_s": "the mean time",
    "period_s": "T",
    "period_squared_s2": "T²",
    "g_m_s2": "g",
}


def _own(work: Work, quantity: OwnQuantity | None = None) -> tuple[OwnValue, ...]:
    table = work.portfolio.table
    if table is None:
        return ()
    return tuple(v for v in table.own_values if quantity is None or v.quantity == quantity)


def _given(work: Work, quantity: OwnQuantity) -> bool | None:
    if work.portfolio.table is None:
        return None
    return bool(_own(work, quantity))


def _wrong_cells(work: Work) -> tuple[Source, ...]:
    return _distinct(s for f in work.by_check.get("own_arithmetic", ()) for s in f.sources)


def _distinct(sources: Iterable[Source]) -> tuple[Source, ...]:
    return tuple(dict.fromkeys(sources))


@yes_no("working", "own mean times")
def own_mean_given(work: Work) -> bool | None:
    """Whether the learner worked out mean times."""
    return _given(work, "mean_time_s")


@yes_no("working", "own periods T")
def own_period_given(work: Work) -> bool | None:
    """Whether the learner worked out periods T."""
    return _given(work, "period_s")


@yes_no("working", "own T² values")
def own_period_squared_given(work: Work) -> bool | None:
    """Whether the learner worked out T²."""
    return _given(work, "period_squared_s2")


@yes_no("working", "an own value of g")
def own_g_given(work: Work) -> bool | None:
    """Whether the learner worked out g."""
    return _given(work, "g_m_s2")


@count("working", "of the columns mean, T, T² and g worked out")
def own_columns(work: Work) -> int:
    """How many of mean time, T, T² and g the learner worked out."""
    return len({value.quantity for value in _own(work)})


@count("working", "values worked out")
def own_values(work: Work) -> int:
    """How many values the learner worked out in all."""
    return len(_own(work))


@count("working", "worked-out values that differ from the readings", _WRONG, _wrong_cells)
def own_arithmetic_wrong_count(work: Work) -> int | None:
    """How many of the learner's worked-out cells differ from the recomputed ones."""
    if not _own(work):
        return None
    return max(len(_wrong_cells(work)), len(work.by_check.get("own_arithmetic", ())))


@yes_no("working", "arithmetic that follows from the readings", _WRONG, _wrong_cells)
def own_arithmetic_right(work: Work) -> bool | None:
    """Whether everything the learner worked out follows from the readings."""
    return "own_arithmetic" not in work.by_check if _own(work) else None


@text("working", "the first cell that differs", _WRONG, _wrong_cells)
def wrong_cell(work: Work) -> str | None:
    """The first worked-out cell that differs from the recomputed value."""
    return next((source.cell for source in _wrong_cells(work) if source.cell), None)


@text("working", "what the first differing cell says", _WRONG, _wrong_cells)
def wrong_value(work: Work) -> str | None:
    """What stands in the first worked-out cell that differs, as typed."""
    return next((source.raw for source in _wrong_cells(work) if source.raw), None)


def _first_wrong(work: Work) -> tuple[OwnValue, Row] | None:
    """The first differing value that belongs to one length, with the row recomputed."""
    wrong = set(_wrong_cells(work))
    for value in _own(work):
        if value.source in wrong and value.reading is not None and work.analysis is not None:
            return value, work.analysis.rows[value.reading]
    return None


@text("working", "what differs", _WRONG, _wrong_cells)
def wrong_quantity(work: Work) -> str | None:
    """Which value differs first, and at which length: “T² at 40.0 cm”."""
    first = _first_wrong(work)
    if first is None:
        return None
    if work.brief.feedback_language == "de":
        named = _SYMBOLS[first[0].quantity].replace("the mean time", "die mittlere Zeit")
        return f"{named} bei {cm(first[1].length_m)}"
    return f"{_SYMBOLS[first[0].quantity]} at {cm(first[1].length_m)}"


@text("working", "what the first differing value comes to", _WRONG, _wrong_cells)
def wrong_recomputed(work: Work) -> str | None:
    """What the first differing value comes to when worked out from the raw readings."""
    first = _first_wrong(work)
    if first is None:
        return None
    value, row = first
    recomputed = {
        "mean_time_s": f"{row.mean_time_s:.2f} s",
        "period_s": f"{row.period_s:.3f} s",
        "period_squared_s2": f"{row.period_squared_s2:.3f} s²",
        "g_m_s2": f"{row.g:.2f} m/s²",
    }
    return recomputed[value.quantity]


def _as_written(value: Value, work: Work | None) -> str | None:
    return f"{value:.4g} m/s²"


@number("working", "own value of g", _as_written, "m/s²")
def own_g(work: Work) -> float | None:
    """The learner's own final g; where one stands at each length, their mean."""
    values = _own(work, "g_m_s2")
    final = [v.value for v in values if v.reading is None]
    if final:
        return final[-1]
    return sum(v.value for v in values) / len(values) if values else None
