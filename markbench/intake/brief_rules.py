"""What each key of ``brief.toml`` may hold, and the words that explain it to a teacher.

The keys themselves come from the dataclasses of :mod:`markbench.model.brief`; a test holds
this table to them.
"""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, get_args

from markbench.model import PieceKind, joined, say


@dataclass(frozen=True, slots=True)
class Rule:
    """What one key may hold: ``read`` returns the value or raises ``ValueError``.

    ``allowed`` tells it to who edits the file, ``typed`` to who fills in a form.
    """

    read: Callable[[Any], Any]
    allowed: str
    about: str
    typed: str


def _text(value: Any) -> str:
    if not isinstance(value, str) or not value.strip() or len(value) > 200:
        raise ValueError
    return value.strip()


def _text_rule(about: str, allowed: str = "") -> Rule:
    allowed = allowed or say("a text of 1 to 200 characters")
    return Rule(_text, allowed, about, say("Some words are needed, 200 letters at most."))


def _whole(low: int, high: int) -> Callable[[Any], int]:
    def read(value: Any) -> int:
        if isinstance(value, bool) or not isinstance(value, int | float) or value != int(value):
            raise ValueError
        if not low <= value <= high:
            raise ValueError
        return int(value)

    return read


def _whole_rule(low: int, high: int, about: str) -> Rule:
    return Rule(
        _whole(low, high),
        say("a whole number from {low} to {high}", low=low, high=high),
        about,
        say("A whole number from {low} to {high}.", low=low, high=high),
    )


def _number_rule(low: float, high: float, about: str, unit: str = "", typed: str = "") -> Rule:
    def read(value: Any) -> float:
        if isinstance(value, bool) or not isinstance(value, int | float):
            raise ValueError
        if not low <= value <= high:  # also refuses nan
            raise ValueError
        return float(value)

    typed = typed or say("A number from {low:g} to {high:g}.", low=low, high=high)
    # As text: the file has its point in any language.
    allowed = say("a number from {low} to {high}", low=f"{low:g}", high=f"{high:g}")
    return Rule(read, joined((allowed, unit)), about, typed)


def _date(value: Any) -> dt.date:
    if isinstance(value, dt.datetime):
        return value.date()
    if isinstance(value, dt.date):
        return value
    if isinstance(value, str):
        return dt.date.fromisoformat(value.strip())
    raise ValueError


def _date_rule(about: str) -> Rule:
    return Rule(
        _date,
        say("a date written year-month-day, as 2026-03-20"),
        about,
        say("A date, as 2026-03-31."),
    )


def _list(value: Any) -> list[Any]:
    if not isinstance(value, list):
        raise ValueError
    return value


def _counts(value: Any) -> tuple[int, ...]:
    counts = tuple(_whole(1, 200)(item) for item in _list(value))
    if not counts:
        raise ValueError
    return tuple(dict.fromkeys(counts))


EVIDENCE = tuple(kind for kind in get_args(PieceKind) if kind not in ("readings", "unknown"))


def _evidence(value: Any) -> tuple[str, ...]:
    kinds = tuple(dict.fromkeys(_list(value)))
    if any(kind not in EVIDENCE for kind in kinds):
        raise ValueError
    return kinds


def _pairs(value: Any) -> tuple[tuple[str, str], ...]:
    pairs = []
    for pair in _list(value):
        first, second = (_text(str(item)) for item in _list(pair))  # another length: ValueError
        if first == second:
            raise ValueError
        pairs.append((first, second))
    return tuple(pairs)


def _boundaries(value: Any) -> dict[str, float]:
    """Grades with their least marks, highest first; no two at the same marks."""
    if not isinstance(value, Mapping):
        raise ValueError
    marks = _number_rule(0, 1000, "").read
    pairs = {_text(grade): marks(least) for grade, least in value.items()}
    if len(set(pairs.values())) < len(value):
        raise ValueError
    return dict(sorted(pairs.items(), key=lambda pair: -pair[1]))


def _yes_no(value: Any) -> bool:
    if not isinstance(value, bool):
        raise ValueError
    return value


def _language(value: Any) -> str:
    if not isinstance(value, str) or not re.fullmatch(r"[A-Za-z]{2,3}([-_][A-Za-z]{2,4})?", value):
        raise ValueError
    return value


# The ranges are generous on purpose: they catch a slip of the pen (metres for centimetres),
# not an unusual practical. Common practice, no source.
ALLOWED: Mapping[str, Rule] = {
    "title": _text_rule("What the practical is called on every sheet."),
    "opens": _date_rule("First day on which work could be handed in."),
    "closes": _date_rule("Last day for handing in; later work is marked as late."),
    "lengths": _whole_rule(2, 50, "How many different lengths were asked for."),
    "timings_per_length": _whole_rule(1, 20, "How many times each length was to be timed."),
    "swings_per_timing": _whole_rule(
        1, 200, "Complete swings in one timing, taken where a table does not say."
    ),
    "swings_allowed": Rule(
        _counts,
        say("a list of whole numbers from 1 to 200, as [10, 20]"),
        "Counts of swings that are as good as the one asked for.",
        say("Whole numbers from 1 to 200, as 10, 20."),
    ),
    "shortest_m": _number_rule(0.005, 10, "Shortest sensible length, in metres.", say("(metres)")),
    "longest_m": _number_rule(0.01, 20, "Longest sensible length, in metres.", say("(metres)")),
    "least_ratio": _number_rule(1, 20, "Longest length over shortest should reach this."),
    "support_height_m": _number_rule(
        0.02, 20, "Height of the support above the floor, in metres.", say("(metres)")
    ),
    "evidence": Rule(
        _evidence,
        say("a list of any of {kinds}", kinds=", ".join(f'"{kind}"' for kind in EVIDENCE)),
        "Pieces each learner was asked for beside the readings.",
        say("Any of these."),
    ),
    "rubric": _text_rule(
        "Name of the rubric, or of a rubric file in this folder.",
        say('the name of a rubric, as "short", or of a .toml file in the class folder'),
    ),
    "feedback_language": Rule(
        _language,
        say('a language code, as "en" or "fr"'),
        "Language of the sentences to the learner.",
        say("A language."),
    ),
    "partners": Rule(
        _pairs,
        say('a list of pairs of learner ids, as [["07", "12"]]'),
        "Learners who worked as a pair: the same readings are then no question.",
        say("Two ids with & between them, as 07 & 12; a comma before the next pair."),
    ),
    "selfies_in_pack": Rule(
        _yes_no,
        say("true or false"),
        "Whether photos of learners go to the moderator.",
        say("Yes or no."),
    ),
    "reports_in_pack": Rule(
        _yes_no,
        say("true or false"),
        "Whether written reports go to the moderator, as words with names taken out.",
        say("Yes or no."),
    ),
    "keep_evidence_until": _date_rule(
        "Last day on which photos and videos are kept; then you are reminded to remove them."
    ),
    "grades": Rule(
        _boundaries,
        say("grades with their least marks, no two the same, as {{ A = 16, B = 13 }}"),
        "Least marks for each grade; none where the class is not graded.",
        say("Grades with their least marks, as A = 16, B = 13; no two with the same."),
    ),
    "late.marks_per_day": _number_rule(
        0, 100, "Marks taken off the total for each day handed in late."
    ),
    "late.most_days": _whole_rule(1, 365, "Days late that are counted at most."),
    "place.latitude_deg": _number_rule(
        -90, 90, "Latitude where the class measured, in degrees, south negative.", say("(degrees)")
    ),
    "place.height_m": _number_rule(-500, 9000, "Height above the sea, in metres.", say("(metres)")),
    "words.independent": _text_rule("The syllabus's word for the variable that is chosen."),
    "words.dependent": _text_rule("The syllabus's word for the variable that is measured."),
    "words.controlled": _text_rule("The syllabus's word for what is kept the same."),
    "tolerances.timing_scatter_s": _number_rule(
        0.005, 2, "Usual scatter of one hand timing, in seconds.", say("(seconds)")
    ),
    "tolerances.g_fraction": _number_rule(
        0.001,
        0.5,
        "How far from the local g still counts as close.",
        say("(0.05 is 5 %)"),
        typed=say("A share from 0.1 % to 50 %."),
    ),
    "tolerances.own_arithmetic_fraction": _number_rule(
        0.0001,
        0.5,
        "How far the learner's own value may differ from ours beyond rounding.",
        say("(0.01 is 1 %)"),
        typed=say("A share from 0.01 % to 50 %."),
    ),
    "tolerances.false_alarm": _number_rule(
        0.0001,
        0.1,
        "Share of honest learners that one statistical check may trip.",
        say("(0.005 is 1 in 200)"),
        typed=say("One in so many, from 1 in 10 to 1 in 10000."),
    ),
}
