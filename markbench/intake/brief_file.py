"""Read ``brief.toml``: what the class was asked to do, in the teacher's own file.

The keys are taken from the dataclasses of :mod:`markbench.model.brief`, so the file cannot
drift from the program; what a value may be stands in :mod:`.brief_rules`. Reading collects
every problem and goes on with the defaults for the bad keys: one mistyped key must not stop
thirty learners from being read.

The standard library reads (it is strict and fast); :mod:`.brief_writing` writes.
"""

from __future__ import annotations

import dataclasses
import itertools
import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from rapidfuzz import fuzz, process

from markbench.checks.wording import listed
from markbench.intake.brief_rules import ALLOWED, EVIDENCE, Rule
from markbench.model import (
    Brief,
    Concern,
    Finding,
    Late,
    Place,
    Source,
    Tolerances,
    Words,
    joined,
    say,
)

BRIEF_NAME = "brief.toml"
_ASIDE = "brief (unreadable"
_MOST_BYTES = 500_000  # the whole default brief has some ten thousand


@dataclass(frozen=True, slots=True)
class BriefProblem:
    """One thing wrong in the brief: the key, what stood there, what may stand there.

    ``sentence`` speaks of the file and of what is used meanwhile. ``typed``: key → what a form
    says at that setting; empty where the value can be used as it stands.
    """

    key: str
    value: str
    allowed: str
    sentence: str
    typed: Mapping[str, str] = field(default_factory=dict)

    def as_finding(self, file: str = BRIEF_NAME) -> Finding:
        """The problem as a finding on the class folder."""
        source = Source(file=file, raw=f"{self.key} = {self.value}" if self.key else self.value)
        return Finding("folder_problem", "", self.sentence, Concern.LOOK, sources=(source,))


_TABLES: Mapping[str, type] = {
    "place": Place,
    "words": Words,
    "tolerances": Tolerances,
    "late": Late,
}
_GRADES = "grades"  # the one key whose value is a table of the teacher's own names
_FIELDS = {_GRADES: "grade_boundaries"}
_NAMES = {field: key for key, field in _FIELDS.items()}


def brief_keys() -> tuple[str, ...]:
    """Every key of the brief as the file writes it, ``table.key`` for the nested ones."""
    names = [field.name for field in dataclasses.fields(Brief) if field.name not in _TABLES]
    keys = [_NAMES.get(name, name) for name in names]
    for table, kind in _TABLES.items():
        keys += [f"{table}.{field.name}" for field in dataclasses.fields(kind)]
    return tuple(keys)


def value_of(brief: Brief, key: str) -> Any:
    """The brief's value under a key as the file writes it; grades as a mapping."""
    if key == _GRADES:
        return dict(brief.grade_boundaries)
    target: Any = brief
    for part in key.split("."):
        target = getattr(target, part)
    return target


def read_brief(path: Path) -> tuple[Brief, tuple[BriefProblem, ...]]:
    """Read a brief; a missing file is the default brief, without a problem."""
    try:
        # Neither a device nor a pipe, which might never end.
        if path.exists() and not path.is_file():
            raise OSError(say("it is no file of its own"))
        if path.stat().st_size > _MOST_BYTES:
            raise OSError(say("it is larger than {n} kB", n=_MOST_BYTES // 1000))
        data = path.read_bytes()
    except FileNotFoundError:
        return Brief(), ()
    except OSError as error:
        reason = error.strerror or str(error)
        sentence = say("{name} could not be opened ({reason}).", name=path.name, reason=reason)
        return Brief(), (BriefProblem("", path.name, "", sentence),)
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        text = data.decode("cp1252", errors="replace")  # an editor that saves "ANSI"
    return parse_brief(text, path.name)


def is_unreadable(problems: Sequence[BriefProblem]) -> bool:
    """Whether the whole file could not be read, rather than some of its keys."""
    return any(not problem.key for problem in problems)


def name_aside(folder: Path) -> str:
    """A name, not yet taken, under which an unreadable brief is kept."""
    names = itertools.chain(
        [f"{_ASIDE}).toml"], (f"{_ASIDE} {n}).toml" for n in itertools.count(2))
    )
    return next(name for name in names if not (folder / name).exists())


def is_brief(name: str) -> bool:
    """Whether a file of the class folder is its brief, or one that was put aside."""
    return name.casefold() == BRIEF_NAME or name.casefold().startswith(_ASIDE)


def put_aside(folder: Path) -> str:
    """Give a brief that cannot be read another name; returns it. Raises ``OSError``."""
    name = name_aside(folder)
    (folder / BRIEF_NAME).rename(folder / name)
    return name


def parse_brief(text: str, name: str = BRIEF_NAME) -> tuple[Brief, tuple[BriefProblem, ...]]:
    """Read the text of a brief; bad keys keep their defaults, and every one is reported."""
    try:
        found = tomllib.loads(text)
    except (ValueError, RecursionError) as error:  # numbers of endless digits, endless nesting
        sentence = say(
            "{name} is not a readable brief: {error}. The defaults are used for every key; "
            "texts need quotation marks and decimals a point.",
            name=name,
            error=str(error),
        )
        return Brief(), (BriefProblem("", "", "", sentence),)
    problems: list[BriefProblem] = []
    values: dict[str, Any] = {}
    for key, value in flat(found):
        rule = ALLOWED.get(key)
        if rule is None:
            problems.append(_unknown_key(name, key, value))
            continue
        try:
            values[key] = rule.read(value)
        except (ValueError, TypeError, OverflowError):
            problems.append(_bad_value(name, key, value, rule))
    _hold_together(name, values, problems)
    return _build(values), tuple(problems)


def flat(found: Mapping[str, Any]) -> list[tuple[str, Any]]:
    """What a file of TOML holds, by the keys of :func:`brief_keys`."""
    pairs: list[tuple[str, Any]] = []
    for key, value in found.items():
        if isinstance(value, Mapping) and key != _GRADES:
            pairs += [(f"{key}.{inner}", item) for inner, item in value.items()]
        else:
            pairs.append((key, value))
    return pairs


def _build(values: Mapping[str, Any]) -> Brief:
    top = {_FIELDS.get(key, key): value for key, value in values.items() if "." not in key}
    if _GRADES in values:
        top[_FIELDS[_GRADES]] = tuple(values[_GRADES].items())
    for table, kind in _TABLES.items():
        start = f"{table}."
        top[table] = kind(
            **{key[len(start) :]: value for key, value in values.items() if key.startswith(start)}
        )
    return Brief(**top)


def _shown(value: Any, deep: int = 3) -> str:
    if not deep:
        return "..."
    if isinstance(value, str):
        text = f'"{value}"'
    elif isinstance(value, bool):
        text = str(value).lower()
    elif isinstance(value, list | tuple):
        text = "[" + ", ".join(_shown(item, deep - 1) for item in value) + "]"
    elif isinstance(value, Mapping):
        text = (
            "{"
            + ", ".join(f"{key} = {_shown(item, deep - 1)}" for key, item in value.items())
            + "}"
        )
    elif isinstance(value, int) and value.bit_length() > 200:
        return say("a number of very many digits")
    else:
        text = str(value)
    return text if len(text) <= 60 else text[:57] + "..."


def _unknown_key(name: str, key: str, value: Any) -> BriefProblem:
    near = process.extractOne(key.lower(), list(ALLOWED), scorer=fuzz.WRatio, score_cutoff=70)
    leaves = {full.rpartition(".")[2]: full for full in ALLOWED}
    leaf = process.extractOne(
        key.lower().rpartition(".")[2], leaves.keys(), scorer=fuzz.ratio, score_cutoff=70
    )
    guess = leaves[leaf[0]] if leaf else (near[0] if near else "")
    table, _, inner = guess.rpartition(".")
    if table:
        hint = say(
            "did you mean {guess} ({inner} under [{table}])?", guess=guess, inner=inner, table=table
        )
    elif guess:
        hint = say("did you mean {guess}?", guess=guess)
    else:
        hint = say("known keys: {keys}.", keys=", ".join(ALLOWED))
    sentence = say(
        "{name}: {key} = {value} names no key that a brief has; {hint}",
        name=name,
        key=key,
        value=_shown(value),
        hint=hint,
    )
    return BriefProblem(key, _shown(value), guess, sentence)


def _bad_value(name: str, key: str, value: Any, rule: Rule) -> BriefProblem:
    parts: list[str] = [
        say(
            "{name}: {key} = {value} is not allowed; it must be {allowed}.",
            name=name,
            key=key,
            value=_shown(value),
            allowed=rule.allowed,
        )
    ]
    if key == "evidence" and isinstance(value, list):
        for item in value:
            guess = process.extractOne(str(item), EVIDENCE, score_cutoff=60)
            if item not in EVIDENCE and guess:
                near = _shown(guess[0])
                parts.append(say("For {item}, did you mean {near}?", item=_shown(item), near=near))
    default = value_of(Brief(), key)
    if default is None:
        parts.append(say("Until then no value is used."))
    else:
        parts.append(say("Until then the default {value} is used.", value=_shown(default)))
    return BriefProblem(key, _shown(value), rule.allowed, joined(parts), {key: rule.typed})


def _hold_together(name: str, values: dict[str, Any], problems: list[BriefProblem]) -> None:
    """Keys that contradict each other: all named, all back to their defaults."""

    def drop(allowed: str, typed: Mapping[str, str], *keys: str) -> None:
        given = [key for key in (keys or typed) if key in values]
        shown = listed([f"{key} = {_shown(values[key])}" for key in given])
        for key in given:
            del values[key]
        sentence = say(
            "{name}: {given} does not fit; {allowed}. Until then the defaults are used."
            if len(given) == 1
            else "{name}: {given} do not fit; {allowed}. Until then the defaults are used.",
            name=name,
            given=shown,
            allowed=allowed,
        )
        problems.append(BriefProblem(given[0], shown, allowed, sentence, typed))

    def value(key: str) -> Any:
        return values.get(key, value_of(Brief(), key))

    if value("opens") and value("closes") and value("opens") > value("closes"):
        drop(
            say("opens must not be later than closes"),
            {"opens": say("Not after the last day."), "closes": say("Not before the first day.")},
        )
    until, closes = value("keep_evidence_until"), value("closes")
    if until and closes and until < closes:
        drop(
            say("keep_evidence_until must not be earlier than closes"),
            {
                "keep_evidence_until": say("Not before the last day for handing in."),
                "closes": say("Not after the day until which photos and videos are kept."),
            },
            "keep_evidence_until",
        )
    shortest, longest = value("shortest_m"), value("longest_m")
    if shortest >= longest:
        drop(
            say("shortest_m must be less than longest_m"),
            {
                "shortest_m": say("Less than the longest length."),
                "longest_m": say("More than the shortest length."),
            },
        )
    elif value("least_ratio") > longest / shortest:
        apart = say(
            "The longest length is to reach {ratio:g} times the shortest.",
            ratio=value("least_ratio"),
        )
        drop(
            say("least_ratio must not exceed longest_m / shortest_m"),
            {
                "least_ratio": say(
                    "At most {ratio:.3g}, with these lengths.", ratio=longest / shortest
                ),
                "shortest_m": apart,
                "longest_m": apart,
            },
        )
    asked = value("swings_per_timing")
    if asked not in value("swings_allowed"):
        if "swings_allowed" in values:
            allowed = say(
                "swings_allowed must contain swings_per_timing, which is {asked}", asked=asked
            )
            shown = _shown(values["swings_allowed"])
            sentence = say(
                "{name}: swings_allowed = {value} does not fit; {allowed}. It is added.",
                name=name,
                value=shown,
                allowed=allowed,
            )
            problems.append(BriefProblem("swings_allowed", shown, allowed, sentence))
        values["swings_allowed"] = (asked, *value("swings_allowed"))
