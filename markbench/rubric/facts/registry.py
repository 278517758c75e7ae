"""What a fact is, and the list of them all.

A fact is a named, typed value about one learner's work that a rubric may put conditions
on and a phrase may quote. Each is declared once, as a function whose name is the fact's
name and whose docstring is its description; ``rubrics/FACTS.md`` is written from these
declarations, so that the documentation cannot drift from the code.

A fact that is not known is ``None``. Conditions treat it as *unknown*: no comparison with
it holds, and a phrase that would quote it is not used.
"""

from __future__ import annotations

import datetime as dt
import zlib
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Literal

from markbench.checks.pieces import unopened
from markbench.checks.wording import cm
from markbench.model import (
    Analysis,
    Brief,
    Diagnosis,
    Explanation,
    Figures,
    Finding,
    PieceKind,
    Portfolio,
    Reading,
    Row,
    Source,
    say,
)

Value = float | str | bool | None
Kind = Literal["number", "text", "yes/no"]
Group = Literal["asked", "readings", "working", "results", "evidence", "explanations", "hand-in"]

GROUPS: dict[Group, str] = {
    "asked": "What the brief asked for",
    "readings": "The raw readings",
    "working": "The learner's own working",
    "results": "Results recomputed from the readings",
    "evidence": "Evidence",
    "explanations": "Explanations of the readings",
    "hand-in": "Hand-in and open questions",
}


class Work:
    """What the facts of one learner are worked out from."""

    def __init__(
        self,
        portfolio: Portfolio,
        analysis: Analysis | None,
        findings: tuple[Finding, ...],
        diagnosis: Diagnosis | None,
        brief: Brief,
        agreed_slip: str = "",
        extended_to: dt.date | None = None,
    ) -> None:
        self.portfolio = portfolio
        self.analysis = analysis
        self.findings = findings
        self.diagnosis = diagnosis
        self.brief = brief
        self.agreed_slip = agreed_slip
        self.extended_to = extended_to

    @cached_property
    def readings(self) -> tuple[Reading, ...]:
        """Readings with at least one timing."""
        table = self.portfolio.table
        return tuple(r for r in table.readings if r.timings) if table is not None else ()

    @cached_property
    def rows(self) -> tuple[Row, ...]:
        """Recomputed rows with at least one timing, shortest first."""
        if self.analysis is None:
            return ()
        return tuple(
            sorted((r for r in self.analysis.rows if r.timings_s), key=lambda r: r.length_m)
        )

    @cached_property
    def data_hash(self) -> int:
        """A number made from the learner's id and raw readings, the same on every machine."""
        raw = [(r.length_m, [t.time_s for t in r.timings]) for r in self.readings]
        return zlib.crc32(repr((self.portfolio.learner.id, raw)).encode())

    @cached_property
    def lengths(self) -> tuple[float, ...]:
        """The different lengths in m, shortest first: one where they agree to 0.1 mm."""
        return tuple(sorted({round(reading.length_m, 4) for reading in self.readings}))

    @cached_property
    def usable_kinds(self) -> frozenset[PieceKind]:
        """Kinds of which a piece is there that opens and is not empty."""
        useless = unopened(self.findings)
        return frozenset(
            piece.kind
            for piece in self.portfolio.pieces
            if piece.size_bytes > 0 and piece.file not in useless
        )

    @cached_property
    def example(self) -> Reading | None:
        """The reading that sentences take as their example, chosen by the data hash."""
        return self.readings[self.data_hash % len(self.readings)] if self.readings else None

    def swings_in(self, reading: Reading) -> int:
        """Complete swings in each timing of a reading, as the agreed explanation counts them."""
        agreed = self.agreed_slip.split("+")
        if "half_swings" in agreed:
            return reading.swings // 2
        return reading.swings - ("count_short" in agreed) + ("count_over" in agreed)

    @property
    def last_of_a_list(self) -> str:
        """How a list ends in the language in which the learner is spoken to."""
        end = ENDS_OF_LISTS.get(self.brief.feedback_language)
        return end or ENDS_OF_LISTS["en"]

    @cached_property
    def by_check(self) -> dict[str, list[Finding]]:
        """Findings by the check that raised them."""
        found: dict[str, list[Finding]] = {}
        for finding in self.findings:
            found.setdefault(finding.check, []).append(finding)
        return found

    @cached_property
    def explanation(self) -> Explanation | None:
        """The explanation of the agreed slip or, none being agreed, of the flagged one.

        Where the agreed slip is told only beside another, the likeliest such pair.
        """
        if self.diagnosis is None:
            return None
        wanted, found = self.agreed_slip, self.diagnosis.explanations
        if wanted:
            alone = (e for e in found if e.slip == wanted)
            beside = (e for e in found if wanted in e.parts_to_learner)
            return next(alone, None) or next(beside, None)
        slips = (e for e in found if e.slip != "honest")
        return next(slips, None) if self.diagnosis.flagged else None


Compute = Callable[[Work], Value]
# Without a Work, the value is a bare one (a threshold) with no uncertainty beside it.
Show = Callable[[Value, Work | None], str | None]
Cells = Callable[[Work], tuple[Source, ...]]


@dataclass(frozen=True, slots=True)
class Fact:
    """One named fact.

    ``label`` is a noun phrase for the teacher ("different lengths", "a set-up photo");
    ``counted`` says that the label names the things a whole number counts. ``show`` writes
    the value (a yes or no has none); ``quotable`` allows it in a sentence to the learner.
    ``checks`` names the checks whose findings bear on the fact; ``cells`` finds its places
    in the learner's files.
    """

    name: str
    kind: Kind
    unit: str
    group: Group
    label: str
    description: str
    compute: Compute
    show: Show | None
    counted: bool
    checks: tuple[str, ...]
    cells: Cells | None
    quotable: bool = True

    @property
    def placeholder(self) -> str:
        """The name that phrases quote it by: the fact's own, without the unit at its end."""
        for suffix in ("_m", "_s", "_deg"):
            if self.unit and self.name.endswith(suffix):
                return self.name.removesuffix(suffix)
        return self.name

    @property
    def rests_on_readings(self) -> bool:
        """Whether it cannot be judged while the table of readings is not understood."""
        return self.group in ("readings", "working", "results", "explanations")


ENDS_OF_LISTS = {"en": "{most} and {last}", "de": "{most} und {last}"}
DECIMAL_COMMA = frozenset({"de"})
"""Languages whose numbers are written with a comma."""

FACTS: dict[str, Fact] = {}
PLACEHOLDERS: dict[str, Fact] = {}


def _declare(fact: Fact) -> None:
    if fact.name in FACTS:
        raise ValueError(f"the fact {fact.name} is declared twice")
    FACTS[fact.name] = fact
    if fact.quotable and fact.show is not None:
        if fact.placeholder in PLACEHOLDERS:
            raise ValueError(f"the placeholder {fact.placeholder} is declared twice")
        PLACEHOLDERS[fact.placeholder] = fact


def _described(function: Compute) -> tuple[str, str]:
    name = getattr(function, "__name__", "")
    return name, " ".join((function.__doc__ or "").split())


def number(
    group: Group,
    label: str,
    show: Show,
    unit: str = "",
    checks: tuple[str, ...] = (),
    cells: Cells | None = None,
    quotable: bool = True,
) -> Callable[[Compute], Compute]:
    """Declare a measured or computed number."""

    def declare(function: Compute) -> Compute:
        name, text = _described(function)
        _declare(
            Fact(
                name,
                "number",
                unit,
                group,
                label,
                text,
                function,
                show,
                False,
                checks,
                cells,
                quotable,
            )
        )
        return function

    return declare


def count(
    group: Group,
    label: str,
    checks: tuple[str, ...] = (),
    cells: Cells | None = None,
) -> Callable[[Compute], Compute]:
    """Declare a whole number of things named by ``label``."""

    def declare(function: Compute) -> Compute:
        name, text = _described(function)
        show = whole
        _declare(Fact(name, "number", "", group, label, text, function, show, True, checks, cells))
        return function

    return declare


def yes_no(
    group: Group,
    label: str,
    checks: tuple[str, ...] = (),
    cells: Cells | None = None,
) -> Callable[[Compute], Compute]:
    """Declare a yes or no. It cannot be quoted, only asked for."""

    def declare(function: Compute) -> Compute:
        name, text = _described(function)
        _declare(Fact(name, "yes/no", "", group, label, text, function, None, False, checks, cells))
        return function

    return declare


def text(
    group: Group,
    label: str,
    checks: tuple[str, ...] = (),
    cells: Cells | None = None,
    quotable: bool = True,
) -> Callable[[Compute], Compute]:
    """Declare words; the empty text is never quoted."""

    def declare(function: Compute) -> Compute:
        name, words = _described(function)
        _declare(
            Fact(
                name,
                "text",
                "",
                group,
                label,
                words,
                function,
                as_it_is,
                False,
                checks,
                cells,
                quotable,
            )
        )
        return function

    return declare


def as_it_is(value: Value, work: Work | None) -> str | None:
    """Words as they stand; ``None`` for no words."""
    return str(value) or None


def whole(value: Value, work: Work | None) -> str:
    """A whole number."""
    return f"{value:.0f}"


def centimetres(value: Value, work: Work | None) -> str:
    """A length in metres, written in centimetres to the millimetre."""
    return cm(float(value or 0.0))


def seconds(value: Value, work: Work | None) -> str:
    """A time to the hundredth of a second."""
    return f"{value:.2f} s"


def milliseconds_wise(value: Value, work: Work | None) -> str:
    """A period to the thousandth of a second."""
    return f"{value:.3f} s"


def metres_per_second_squared(value: Value, work: Work | None) -> str:
    """An acceleration to the hundredth."""
    return f"{value:.2f} m/s²"


def of_two_ends(show: Show) -> Show:
    """As ``show``, but never quoted of a single length, whose ends are one and the same."""

    def shown(value: Value, work: Work | None) -> str | None:
        return show(value, work) if work is None or len(work.lengths) > 1 else None

    return shown


def seconds_apart(value: Value, work: Work | None) -> str | None:
    """A difference of times to the hundredth; none to quote where it shows none."""
    told = seconds(value, work)
    return told if work is None or float(value or 0.0) >= 0.005 else None


def one_decimal(value: Value, work: Work | None) -> str:
    """A plain number with one decimal."""
    return f"{value:.1f}"


def percent(value: Value, work: Work | None) -> str:
    """A fraction as a percentage with two figures; a bound where those would be noughts."""
    share = 100.0 * float(value or 0.0)
    if 0.0 < share < 0.05:
        if work is not None and work.brief.feedback_language == "de":
            return "weniger als 0.1 %"  # the comma comes with the sentence
        return say("less than {bound}", bound=Figures("0.1 %"))
    return f"{share:.0f} %" if share >= 10 else f"{share:.1f} %"
