"""What was recomputed from the raw readings: plain results that carry their inputs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class LocalGravity:
    """Gravity at the brief's place: ``g`` ± ``u_g`` (standard uncertainty) in m/s²."""

    g: float
    u_g: float
    basis: str


@dataclass(frozen=True, slots=True)
class Row:
    """One length recomputed: mean time, T = t/N, T², and g from this length alone.

    ``spread_s`` is the sample standard deviation of the timings (``nan`` for one timing).
    """

    length_m: float
    swings: int
    timings_s: tuple[float, ...]
    mean_time_s: float
    spread_s: float
    period_s: float
    period_squared_s2: float
    g: float


@dataclass(frozen=True, slots=True)
class StraightLine:
    """Least-squares line T² = intercept + slope·L through the rows, intercept free.

    Standard uncertainties ``u_*`` from the residuals on n − 2 degrees of freedom; ``nan``
    for two points. ``g`` = 4π²/slope. ``studentised`` are externally studentised
    residuals (``nan`` where undefined).
    """

    slope_s2_per_m: float
    u_slope: float
    intercept_s2: float
    u_intercept: float
    covariance: float
    residual_sd_s2: float
    residuals_s2: tuple[float, ...]
    studentised: tuple[float, ...]
    g: float
    u_g: float
    points: int
    method: str = "least squares of T² on L, free intercept"


@dataclass(frozen=True, slots=True)
class Gravity:
    """An estimate of g with its standard uncertainty and 95 % interval, in m/s²."""

    g: float
    u_g: float
    low95: float
    high95: float
    method: str


@dataclass(frozen=True, slots=True)
class Analysis:
    """A learner's readings recomputed. ``line`` needs two different lengths."""

    rows: tuple[Row, ...]
    line: StraightLine | None
    local: LocalGravity


@dataclass(frozen=True, slots=True)
class Estimate:
    """A parameter of an explanation: value and standard uncertainty in ``unit``."""

    value: float
    u: float
    unit: str = ""


@dataclass(frozen=True, slots=True)
class Explanation:
    """One way the numbers could have come about.

    ``slip`` is ``honest`` or the name of a slip (two at once: joined by ``+``).
    ``cells`` as in :class:`Finding`: the readings that speak for it. ``mended`` holds the
    readings as they would be without the slip, (length_m, period_s) per row, for the
    ghost in the graph. ``to_learner`` explains it to the learner in their own numbers, for
    the feedback once the teacher has agreed it; empty where there are no words for it. Of two
    slips at once ``parts_to_learner`` explains each alone, should she agree to one of them.
    ``ask`` is the question to put to the learner. ``places`` holds, for each slip in it, what
    the braces stand for, so that both can be said in another language.
    """

    slip: str
    probability: float
    sentence: str
    parameters: Mapping[str, Estimate]
    g_if_mended: float | None = None
    u_g_if_mended: float | None = None
    cells: tuple[tuple[int, int | None], ...] = ()
    mended: tuple[tuple[float, float], ...] = ()
    to_learner: str = ""
    ask: str = ""
    parts_to_learner: Mapping[str, str] = field(default_factory=dict)
    places: Mapping[str, Mapping[str, str]] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Indistinct:
    """Two explanations these readings cannot tell apart, and what would settle it."""

    slips: tuple[str, str]
    sentence: str
    settle: str


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """Explanations ranked by probability; ``flagged`` if one beats honest work.

    ``best`` is the best estimate of g from the whole model of honest work. ``limits``
    says in a sentence what these readings cannot show.
    """

    explanations: tuple[Explanation, ...]
    best: Gravity | None
    flagged: bool = False
    indistinct: tuple[Indistinct, ...] = ()
    limits: str = ""
