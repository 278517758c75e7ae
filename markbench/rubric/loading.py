"""Read a rubric from its TOML file and check all of it before anything is drafted.

The file as a whole::

    title = "…"

    [[criterion]]
    id = "raw_data"
    title = "Raw data"
    by_eye = false                      # true: for the teacher's eye, nothing is drafted

    [[criterion.level]]                 # highest first; the last has no `when`
    name = "Full"
    marks = 4
    descriptor = "…"
    when = "lengths >= asked_lengths"

    [[criterion.phrase]]
    role = "praise"                     # praise, problem, next; look (by_eye only)
    when = "lengths >= asked_lengths"
    text = "…{lengths}…"                # or a list of alternates

``title``, ``name``, ``descriptor`` and ``text`` may stand in a second language beside the
first, as ``text_ms``; the language is chosen when the rubric is read, and what has no
translation stays in the first. A level keeps its first name in the journal and the window;
the other is what the learner reads.
"""

from __future__ import annotations

import math
import re
import reprlib
import tomllib
from collections.abc import Mapping
from itertools import pairwise
from pathlib import Path
from typing import Any

from markbench.model import Criterion, Level, Phrase, Rubric, say
from markbench.rubric.condition import Condition, ConditionError, condition, nearest
from markbench.rubric.facts import FACTS
from markbench.rubric.phrasing import TemplateError, template
from markbench.rubric.problems import Problem, RubricError

SHIPPED = Path(__file__).resolve().parents[2] / "rubrics"
"""Where the rubrics that come with Markbench lie."""

_MOST_BYTES = 2_000_000  # the longest rubric shipped has some twenty thousand
ROLES = ("praise", "problem", "next")
_TOP = {"title": str, "about": str, "criterion": list}
_CRITERION = {"id": str, "title": str, "by_eye": bool, "level": list, "phrase": list}
_LEVEL = {"name": str, "marks": float, "descriptor": str, "when": str}
_PHRASE = {"role": str, "when": str, "text": (str, list)}
_TRANSLATED = ("title", "descriptor", "text")
_IN_TWO_LANGUAGES = (*_TRANSLATED, "name")
_LANGUAGE = re.compile(r"[a-z]{2,3}")
_ID = re.compile(r"[a-z][a-z0-9_]*")
_TYPES = {
    str: say("a text"),
    list: say("a list"),
    bool: say("true or false"),
    float: say("a number"),
}

Table = Mapping[str, Any]
_BRIEF = "brief.toml"  # it names the rubric, so it is at fault where there is none of that name


def find_rubric(name: str, folder: Path | None = None, language: str = "en") -> Rubric:
    """The rubric that a brief names: from the class folder if it lies there, else a shipped one.

    ``name`` is the file's name with or without ``.toml``. Raises :class:`RubricError`.
    """
    stem = name.removesuffix(".toml")
    if Path(stem).name != stem:
        told = say("“{name}” must be the name of a rubric, not a path", name=name)
        raise RubricError([Problem(_BRIEF, "", "rubric", told)])
    own = [folder / f"{stem}.toml"] if folder is not None else []
    if folder is not None and own[0].resolve().parent != folder.resolve():
        told = say("is a link that leads outside the class folder")
        raise RubricError([Problem(own[0].name, "", "", told)])
    places = [*own, SHIPPED / f"{stem}.toml"]
    for place in places:
        if place.is_file():
            return load_rubric(place, language)
    known = sorted({path.stem for place in places for path in place.parent.glob("*.toml")})
    message = nearest(say("there is no rubric “{name}”", name=stem), stem, known)
    raise RubricError([Problem(_BRIEF, "", "rubric", message)])


def load_rubric(path: Path, language: str = "en") -> Rubric:
    """Read and check one rubric file, its phrases in ``language`` where they have it.

    Raises :class:`RubricError` with every problem of the file, each with its place.
    """
    try:
        if path.stat().st_size > _MOST_BYTES:
            raise OSError(0, say("it is larger than {n} kB", n=_MOST_BYTES // 1000))
        content = tomllib.loads(path.read_bytes().decode("utf-8"))
    except OSError as error:
        told: str = say("cannot be opened: {why}", why=error.strerror)
    except UnicodeDecodeError:
        told = say("is not UTF-8 text")
    except (ValueError, RecursionError) as error:  # numbers of endless digits, endless nesting
        told = say("is not valid TOML: {why}", why=f"{error}")
    else:
        reader = _Reader(path.name, language)
        rubric = reader.rubric(path.stem, content)
        if reader.problems:
            raise RubricError(reader.problems)
        return rubric
    raise RubricError([Problem(path.name, "", "", told)])


class _Reader:
    """Reads one file's content, noting every problem and going on with a stand-in."""

    def __init__(self, file: str, language: str) -> None:
        self.file = file
        self.language = language
        self.criterion = ""
        self.problems: list[Problem] = []

    def note(self, key: str, message: str) -> None:
        self.problems.append(Problem(self.file, self.criterion, key, message))

    def rubric(self, stem: str, content: Table) -> Rubric:
        self.keys(content, _TOP, "")
        title = self.get(content, _TOP, "title", "")
        rows = self.get(content, _TOP, "criterion", "")
        if rows == []:
            self.note("criterion", say("there is no criterion"))
        criteria = [
            self.row(row, number) for number, row in enumerate(self.tables(rows, "criterion"), 1)
        ]
        self.criterion = ""
        for twice in _repeated([row.id for row in criteria if row.id]):
            self.criterion = twice
            self.note("id", say("“{id}” is used by two criteria", id=twice))
        self.criterion = ""
        return Rubric(id=stem, title=title or stem, criteria=tuple(criteria))

    def row(self, table: Table, number: int) -> Criterion:
        named = table.get("id")
        self.criterion = named if isinstance(named, str) and named else f"number {number}"
        self.keys(table, _CRITERION, "")
        row_id = self.get(table, _CRITERION, "id", "")
        if row_id and not _ID.fullmatch(row_id):
            self.note(
                "id", say("“{id}” must be small letters, digits and _, a letter first", id=row_id)
            )
        by_eye = bool(self.get(table, _CRITERION, "by_eye", "", default=False))
        given = self.get(table, _CRITERION, "level", "")
        levels = [
            self.level(level, f"level {i}")
            for i, level in enumerate(self.tables(given, "level"), 1)
        ]
        if given is not None:
            self.ladder(levels, by_eye)
        phrases: list[Phrase] = []
        offered = self.get(table, _CRITERION, "phrase", "", default=[])
        for i, phrase in enumerate(self.tables(offered, "phrase"), 1):
            phrases += self.phrase(phrase, f"phrase {i}", by_eye)
        return Criterion(
            id=row_id or "",
            title=self.get(table, _CRITERION, "title", "") or "",
            levels=tuple(levels),
            phrases=tuple(phrases),
            by_eye=by_eye,
        )

    def level(self, table: Table, place: str) -> Level:
        self.keys(table, _LEVEL, place)
        marks = self.get(table, _LEVEL, "marks", place)
        if marks is not None and not (math.isfinite(marks) and marks >= 0):
            self.note(f"{place}.marks", say("must be 0 or more, not {marks}", marks=marks))
            marks = None
        when = self.get(table, _LEVEL, "when", place, default="")
        self.when(when, place)
        return Level(
            name=self.get(table, _LEVEL, "name", place) or "",
            marks=math.nan if marks is None else float(marks),
            descriptor=self.get(table, _LEVEL, "descriptor", place) or "",
            when=when or "",
            to_learner=str(table.get(f"name_{self.language}", "")),
        )

    def ladder(self, levels: list[Level], by_eye: bool) -> None:
        """Levels must come highest first, and the last must always be reachable."""
        if len(levels) < 2:
            self.note("level", say("needs at least two levels"))
            return
        for twice in _repeated([level.name for level in levels if level.name]):
            self.note("level", say("two levels are called “{name}”", name=twice))
        for i, (above, below) in enumerate(pairwise(levels), 2):
            if below.marks >= above.marks:
                self.note(
                    f"level {i}.marks",
                    say(
                        "{below:g} is not below the {above:g} of the level before it: levels "
                        "stand highest first",
                        below=below.marks,
                        above=above.marks,
                    ),
                )
        for i, level in enumerate(levels, 1):
            if by_eye and level.when:
                self.note(f"level {i}.when", say("is never used: the criterion is by_eye"))
            elif not by_eye and i == len(levels) and level.when:
                self.note(f"level {i}.when", say("the last level must have no condition"))
            elif not by_eye and i < len(levels) and not level.when.strip():
                self.note(
                    f"level {i}.when", say("is missing: only the last level has no condition")
                )

    def phrase(self, table: Table, place: str, by_eye: bool) -> list[Phrase]:
        self.keys(table, _PHRASE, place)
        role = self.get(table, _PHRASE, "role", place)
        allowed = ("look",) if by_eye else ROLES
        if role is not None and role not in allowed:
            told = say(
                "“{role}” is not a role of a by_eye criterion ({allowed})"
                if by_eye
                else "“{role}” is not a role of a drafted criterion ({allowed})",
                role=role,
                allowed=", ".join(allowed),
            )
            self.note(f"{place}.role", nearest(told, role, list(allowed)))
        when = self.get(table, _PHRASE, "when", place, default="") or ""
        ready = self.when(when, place)
        texts: dict[str, list[str]] = {}
        for key in table:
            if key == "text" or key.startswith("text_"):
                texts[key] = self.texts(table[key], f"{place}.{key}")
        if "text" not in texts:
            self.note(f"{place}.text", say("is missing"))
        if role == "praise":
            self.earned(ready, texts, place)
        chosen = texts.get(f"text_{self.language}") or texts.get("text", [])
        return [Phrase(text=words, when=when, role=role or "") for words in chosen]

    def texts(self, given: object, key: str) -> list[str]:
        """One text or a list of alternates, each with placeholders that exist."""
        alternates = [given] if isinstance(given, str) else given
        if not isinstance(alternates, list) or not alternates:
            self.note(key, say("must be a text or a list of texts"))
            return []
        good = []
        for words in alternates:
            if not isinstance(words, str) or not words.strip():
                self.note(key, say("holds something that is not a text, or an empty one"))
                continue
            try:
                template(words)
            except TemplateError as error:
                for problem in error.problems:
                    self.note(key, problem)
            good.append(words)
        return good

    def earned(self, ready: Condition | None, texts: Mapping[str, list[str]], place: str) -> None:
        """Praise must rest on a fact of the learner's work, and name one."""
        if ready is not None and not any(_of_the_learner(name) for name in ready.names):
            self.note(f"{place}.when", say("praise must rest on a fact of the learner's own work"))
        for key, alternates in texts.items():
            for words in alternates:
                try:
                    named = template(words).names
                except TemplateError:
                    continue
                if not any(_of_the_learner(name) for name in named):
                    self.note(
                        f"{place}.{key}",
                        say(
                            "praise must quote a fact of the learner's own work: “{words}”",
                            words=words,
                        ),
                    )

    def when(self, text: str | None, place: str) -> Condition | None:
        try:
            return condition(text or "")
        except ConditionError as error:
            for problem in error.problems:
                self.note(f"{place}.when", problem)
        return None

    def keys(self, table: Table, known: Mapping[str, Any], place: str) -> None:
        """Note keys that do not belong, with a near match."""
        for key in table:
            base, _, language = key.rpartition("_")
            if key in known or (
                base in known and base in _IN_TWO_LANGUAGES and _LANGUAGE.fullmatch(language)
            ):
                continue
            at = f"{place}.{key}" if place else key
            self.note(at, nearest(say("there is no key “{key}” here", key=key), key, known))
        for key in ("title", "descriptor", "name"):
            for translated in table:
                if translated.startswith(f"{key}_") and not isinstance(table[translated], str):
                    self.note(f"{place}.{translated}".lstrip("."), say("must be a text"))

    def get(
        self, table: Table, known: Mapping[str, Any], key: str, place: str, **default: Any
    ) -> Any:
        """The value of a key in the wanted language; ``None`` where missing or of a wrong type."""
        at = f"{place}.{key}" if place else key
        if key not in table:
            if "default" in default:
                return default["default"]
            self.note(at, say("is missing"))
            return None
        value, wanted = table[key], known[key]
        number = isinstance(value, int | float) and not isinstance(value, bool)
        if not (number if wanted is float else isinstance(value, wanted)):
            if wanted in _TYPES:
                self.note(
                    at,
                    say("must be {wanted}, not {value}", wanted=_TYPES[wanted], value=_told(value)),
                )
            return None
        if wanted is str and key != "when" and not value.strip():
            self.note(at, say("is empty"))
        if key in _TRANSLATED:
            return table.get(f"{key}_{self.language}", value)
        return value

    def tables(self, given: object, key: str) -> list[Table]:
        if given is None:
            return []
        assert isinstance(given, list)
        good: list[Table] = [item for item in given if isinstance(item, dict)]
        if len(good) < len(given):
            self.note(key, say("must be written as [[…{key}]] tables", key=key))
        return good


def _told(value: object) -> str:
    """A value as it stands in the file, shortened; endless ones as well."""
    try:
        return reprlib.repr(value)
    except ValueError:
        return say("a number of very many digits")


def _of_the_learner(name: str) -> bool:
    return FACTS[name].group != "asked"


def _repeated(names: list[str]) -> list[str]:
    return sorted({name for name in names if names.count(name) > 1})
