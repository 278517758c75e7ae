"""The six intraclass correlations of Shrout and Fleiss, with their 95 % intervals.

For marks the one to read is ICC(2,1): absolute agreement of single markers, who stand for
any markers. Shown beside ICC(3,1) it tells "ranks agree, levels do not".

References: Shrout & Fleiss (1979) Psychological Bulletin 86, 420; McGraw & Wong (1996)
Psychological Methods 1, 30 (the interval of ICC(2,k)).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from scipy.stats import f as f_distribution

from markbench.model import say


@dataclass(frozen=True, slots=True)
class Intraclass:
    """One form: ``form`` as ``(2,1)``; ``value`` is ``None`` where it is undefined."""

    form: str
    meaning: str
    value: float | None
    low95: float | None
    high95: float | None
    undefined: str = ""

    def __str__(self) -> str:
        if self.value is None or self.low95 is None or self.high95 is None:
            return say("ICC{form}: undefined, {why}", form=self.form, why=self.undefined)
        return say(
            "ICC{form} {value:.2f} (95 % interval {low:.2f} to {high:.2f})",
            form=self.form,
            value=self.value,
            low=self.low95,
            high=self.high95,
        )


@dataclass(frozen=True, slots=True)
class Intraclasses:
    """All six forms from ``marks`` (learners × markers), and the mean squares under them."""

    forms: tuple[Intraclass, ...]
    marks: tuple[tuple[float, ...], ...]
    between_learners: float
    within_learners: float
    between_markers: float
    residual: float

    def __getitem__(self, form: str) -> Intraclass:
        return next(one for one in self.forms if one.form == form)


_MEANINGS = {
    "(1,1)": "one marker, each learner by other markers",
    "(2,1)": "one marker, absolute agreement",
    "(3,1)": "one marker, agreement of ranks and distances",
    "(1,k)": "mean of the markers, each learner by other markers",
    "(2,k)": "mean of the markers, absolute agreement",
    "(3,k)": "mean of the markers, agreement of ranks and distances",
}


def intraclass(marks: Sequence[Sequence[float]]) -> Intraclasses:
    """The six forms for complete marks, one row per learner, one column per marker."""
    table = np.asarray(marks, dtype=float)
    if table.ndim != 2 and table.size:
        raise ValueError("marks must be a table of learners by markers")
    rows = tuple(tuple(float(mark) for mark in row) for row in table)
    if table.ndim != 2 or table.shape[0] < 2 or table.shape[1] < 2:
        nan = float("nan")
        return Intraclasses(_all_undefined(say("fewer than two learners or markers")),
                            rows, nan, nan, nan, nan)  # fmt: skip
    n, k = table.shape
    mean = table.mean()
    learners, markers = table.mean(axis=1), table.mean(axis=0)
    bms = k * float(((learners - mean) ** 2).sum()) / (n - 1)
    wms = float(((table - learners[:, None]) ** 2).sum()) / (n * (k - 1))
    jms = n * float(((markers - mean) ** 2).sum()) / (k - 1)
    left = table - learners[:, None] - markers[None, :] + mean
    ems = _clean(float((left**2).sum()) / ((n - 1) * (k - 1)), table)
    bms, wms, jms = (_clean(square, table) for square in (bms, wms, jms))
    if bms == 0:
        forms = _all_undefined(say("every learner has the same mean mark"))
    else:
        forms = _forms(bms, wms, jms, ems, n, k)
    return Intraclasses(forms, rows, bms, wms, jms, ems)


def _clean(square: float, table: npt.NDArray[np.float64]) -> float:
    """Nought where only the rounding of sums is left."""
    return 0.0 if square < 1e-24 * max(float((table**2).max()), 1.0) else square


def _all_undefined(why: str) -> tuple[Intraclass, ...]:
    return tuple(Intraclass(f, meaning, None, None, None, why) for f, meaning in _MEANINGS.items())


def _forms(
    bms: float, wms: float, jms: float, ems: float, n: int, k: int
) -> tuple[Intraclass, ...]:
    mixed = bms + (k - 1) * ems + k * (jms - ems) / n
    averaged = bms + (jms - ems) / n
    values = {
        "(1,1)": (bms - wms) / (bms + (k - 1) * wms),
        "(2,1)": (bms - ems) / mixed if mixed > 0 else float("nan"),
        "(3,1)": (bms - ems) / (bms + (k - 1) * ems),
        "(1,k)": (bms - wms) / bms,
        "(2,k)": (bms - ems) / averaged if averaged > 0 else float("nan"),
        "(3,k)": (bms - ems) / bms,
    }
    one = _from_f(bms, wms, n - 1, n * (k - 1))
    three = _from_f(bms, ems, n - 1, (n - 1) * (k - 1))
    two = _absolute(bms, jms, ems, n, k, values["(2,1)"])
    bounds = {
        "(1,1)": _single(one, k), "(2,1)": two, "(3,1)": _single(three, k),
        "(1,k)": _mean(one), "(2,k)": _stepped_up(two, k), "(3,k)": _mean(three),
    }  # fmt: skip
    return tuple(
        Intraclass(form, _MEANINGS[form], value, *bounds[form])
        if np.isfinite(value)
        else Intraclass(
            form, _MEANINGS[form], None, None, None, say("the markers' spread drowns it")
        )
        for form, value in values.items()
    )


def _from_f(between: float, error: float, df1: int, df2: int) -> tuple[float, float]:
    """F over, and times, its 97.5 % points; infinite where there is no error at all."""
    if error == 0:
        return float("inf"), float("inf")
    ratio = between / error
    low = ratio / float(f_distribution.ppf(0.975, df1, df2))
    return low, ratio * float(f_distribution.ppf(0.975, df2, df1))


def _single(bounds: tuple[float, float], k: int) -> tuple[float, float]:
    low, high = (1.0 if np.isinf(f) else (f - 1) / (f + k - 1) for f in bounds)
    return low, high


def _mean(bounds: tuple[float, float]) -> tuple[float, float]:
    low, high = (1 - 1 / f for f in bounds)
    return low, high


def _absolute(
    bms: float, jms: float, ems: float, n: int, k: int, icc: float
) -> tuple[float, float]:
    """Interval of ICC(2,1) by Satterthwaite's degrees of freedom (Shrout & Fleiss, p. 424)."""
    if ems == 0 and jms == 0:
        return 1.0, 1.0
    spread = k * icc * jms
    rest = n * (1 + (k - 1) * icc) * ems - k * icc * ems
    below = spread**2 / (k - 1) + rest**2 / ((n - 1) * (k - 1))
    if below <= 0 or not np.isfinite(below):
        return -1.0, 1.0
    df = (spread + rest) ** 2 / below
    df = max(df, 1e-3)
    f_low = float(f_distribution.ppf(0.975, n - 1, df))
    f_high = float(f_distribution.ppf(0.975, df, n - 1))
    common = k * jms + (k * n - k - n) * ems
    low = n * (bms - f_low * ems) / (f_low * common + n * bms) if np.isfinite(f_low) else -1.0
    high = n * (f_high * bms - ems) / (common + n * f_high * bms) if np.isfinite(f_high) else 1.0
    return low, high


def _stepped_up(bounds: tuple[float, float], k: int) -> tuple[float, float]:
    """Spearman and Brown's step from one marker to the mean of k."""
    low, high = (k * b / (1 + (k - 1) * b) if 1 + (k - 1) * b > 0 else -1.0 for b in bounds)
    return low, high
