"""Named facts about a learner's work: what a rubric may ask for and a phrase may quote."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator, Mapping

from markbench.model import Analysis, Brief, Diagnosis, Finding, Portfolio, Source

# Importing a module of facts declares them, in the order of the table.
from markbench.rubric.facts import asked, evidence, readings, results, standing, working  # noqa: F401
from markbench.rubric.facts.registry import (
    DECIMAL_COMMA,
    FACTS,
    GROUPS,
    PLACEHOLDERS,
    Fact,
    Value,
    Work,
)

__all__ = ["FACTS", "PLACEHOLDERS", "Fact", "Facts", "Value", "facts_of", "facts_table_markdown"]


_AS_TYPED = ("bare_heading", "wrong_cell", "wrong_value")  # quoted as the learner wrote them
_POINT = re.compile(r"(?<=\d)\.(?=\d)")


class _Lazy(dict[str, Value]):
    """Values worked out when first asked for: most rubrics use a third of the facts."""

    def __init__(self, work: Work) -> None:
        super().__init__()
        self._work = work

    def __missing__(self, name: str) -> Value:
        value = self[name] = FACTS[name].compute(self._work)
        return value


class _Shown(dict[str, str | None]):
    """Values as sentences quote them, likewise."""

    def __init__(self, work: Work, values: Mapping[str, Value]) -> None:
        super().__init__()
        self._work, self._values = work, values

    def __missing__(self, name: str) -> str | None:
        show, value = FACTS[name].show, self._values[name]
        shown = show(value, self._work) if show is not None and value is not None else None
        comma = self._work.brief.feedback_language in DECIMAL_COMMA
        if shown is not None and comma and name not in _AS_TYPED:
            shown = _POINT.sub(",", shown)
        self[name] = shown
        return shown


class Facts(Mapping[str, Value]):
    """Every fact of one learner, by name; ``None`` where not known."""

    def __init__(self, work: Work) -> None:
        self._work = work
        self.values_by_name: Mapping[str, Value] = _Lazy(work)
        self._shown = _Shown(work, self.values_by_name)
        self._sources: dict[str, tuple[Source, ...]] = {}

    def __getitem__(self, name: str) -> Value:
        return self.values_by_name[name]

    def __iter__(self) -> Iterator[str]:
        return iter(FACTS)

    def __len__(self) -> int:
        return len(FACTS)

    @property
    def learner(self) -> str:
        """Id of the learner."""
        return self._work.portfolio.learner.id

    @property
    def language(self) -> str:
        """Language in which the learner is spoken to."""
        return self._work.brief.feedback_language

    def show(self, name: str) -> str | None:
        """The fact as a sentence quotes it, with its unit; ``None`` where not known."""
        return self._shown[name]

    def sources(self, name: str) -> tuple[Source, ...]:
        """The places in the learner's files that the fact was read from."""
        if name not in self._sources:
            cells = FACTS[name].cells
            self._sources[name] = cells(self._work) if cells is not None else ()
        return self._sources[name]

    def findings(self, name: str) -> tuple[Finding, ...]:
        """The findings that bear on the fact."""
        by_check = self._work.by_check
        if not by_check:
            return ()
        return tuple(f for check in FACTS[name].checks for f in by_check.get(check, ()))

    @property
    def data_hash(self) -> int:
        """A number made from the learner's id and raw readings, the same on every machine."""
        return self._work.data_hash


def facts_of(
    portfolio: Portfolio,
    analysis: Analysis | None,
    findings: tuple[Finding, ...],
    diagnosis: Diagnosis | None,
    brief: Brief,
    *,
    agreed_slip: str | None = None,
    extended_to: dt.date | None = None,
) -> Facts:
    """The facts of one learner, worked out as they are asked for.

    ``findings`` are those of this learner from every origin; ``agreed_slip`` the slip that
    the teacher recorded as agreed; ``extended_to`` a later closing date for this learner.
    """
    work = Work(portfolio, analysis, findings, diagnosis, brief, agreed_slip or "", extended_to)
    return Facts(work)


def facts_table_markdown() -> str:
    """The text of ``rubrics/FACTS.md``, written from the declarations."""
    lines = [
        "# Facts a rubric may use",
        "",
        "Written from the code by `python -m markbench.rubric.facts_table`; do not edit.",
        "",
        "A condition (`when`) compares facts by name; a phrase quotes one in braces. A fact",
        "that is not known makes every comparison with it fail and every phrase that quotes it",
        "fall away. `known(name)` asks whether it is known.",
    ]
    for group, title in GROUPS.items():
        lines += [
            "",
            f"## {title}",
            "",
            "| fact | kind | unit | quoted as | what it says |",
            "|---|---|---|---|---|",
        ]
        for fact in FACTS.values():
            if fact.group == group:
                quoted = f"`{{{fact.placeholder}}}`" if fact.placeholder in PLACEHOLDERS else "–"
                unit = fact.unit or "–"
                says = fact.description.replace("|", "\\|")
                lines.append(f"| `{fact.name}` | {fact.kind} | {unit} | {quoted} | {says} |")
    return "\n".join(lines) + "\n"
