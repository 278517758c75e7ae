"""Marking without knowing whose work it is.

The window looks at the class through a :class:`Veiled` session: names are numbers, files
have neutral names, pictures that may show a face are closed. One place hides, so no page can
forget to. What is decided goes through the same view, which puts the true file names back
before anything is journalled. Rejected: asking every page to hide what it shows.

Names inside a learner's own cells or pictures of the set-up are beyond it; the window says so.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Any, NamedTuple

from markbench.model import (
    ClassWork,
    Decision,
    Diagnosis,
    Draft,
    Finding,
    Learner,
    Piece,
    Portfolio,
    ReadingsTable,
    Source,
    reworded,
)
from markbench.session.order import shuffled
from markbench.session.session import Session

KIND = "blind"
HIDDEN_KINDS = ("selfie", "photo")  # a photo not yet told apart may be the selfie
_SHORTEST_ID = 5  # shorter ids may be numbers of a message
_WORD = re.compile(r"\w+")


def is_blind(session: Session) -> bool:
    """Whether names are hidden, as last decided."""
    held = session.value(KIND)
    return bool(isinstance(held, dict) and held.get("on"))


def set_blind(session: Session, on: bool, seed: int) -> None:
    """Hide or show names; ``seed`` deals the numbers, once: a later one is not used."""
    held = session.value(KIND)
    kept = held.get("seed", seed) if isinstance(held, dict) else seed
    session.decide(Decision(KIND, "", "", {"on": on, "seed": kept}))


def numbers(session: Session) -> dict[str, int]:
    """Learner id → number from 1, in an order that tells nothing about the name."""
    held = session.value(KIND)
    seed = held.get("seed", 0) if isinstance(held, dict) else 0
    ids = shuffled([one.id for one in session.learners], seed, KIND)
    return {learner: number for number, learner in enumerate(ids, 1)}


class _Phrase(NamedTuple):
    """Words to be replaced; the longest wins."""

    length: int
    true: str
    shown: str


def _stands(text: str, start: int, phrase: str) -> bool:
    """Whether ``phrase`` stands in ``text`` at ``start`` and ends there as a word."""
    if not text.startswith(phrase, start) or (start and text[start - 1] == "."):
        return False
    after = text[start + len(phrase) : start + len(phrase) + 1]
    return not (after.isalnum() or after == "_")


class Veiled:
    """A session seen without names. Whatever is not listed here is passed on as it is.

    ``name_of`` makes the stand-in of a number, as “Portfolio 17”.
    """

    def __init__(self, session: Session, name_of: Callable[[int], str]) -> None:
        self._session = session
        self._numbers = numbers(session)
        self._names = {learner: name_of(n) for learner, n in self._numbers.items()}
        # What was hidden once, beside the true thing it was made of.
        self._portfolios: dict[str, tuple[Portfolio, Portfolio]] = {}
        self._findings: dict[str, tuple[tuple[Finding, ...], tuple[Finding, ...]]] = {}
        self._drafts: dict[str, tuple[tuple[Draft, ...], tuple[Draft, ...]]] = {}
        self._sources: dict[Source, Source] = {}
        self._aliases: dict[str, str] = {}
        self._files: dict[str, str] = {}
        self._sheets: dict[str, str] = {}
        self._closed: set[str] = set()
        self._phrases: dict[str, list[_Phrase]] = {}
        self._own_files: dict[str, dict[str, list[_Phrase]]] = {}
        for one in session.learners:
            self._know(self._phrases, one.name, self._names[one.id])
            if len(one.id) >= _SHORTEST_ID:
                self._know(self._phrases, one.id, self._names[one.id])
            self._name_files(session.portfolio(one.id))

    def __getattr__(self, name: str) -> Any:
        return getattr(self._session, name)

    # --- what is known, without names ------------------------------------------------

    @property
    def learners(self) -> tuple[Learner, ...]:
        """Learners by their numbers."""
        held = sorted(self._session.learners, key=lambda one: self._numbers[one.id])
        return tuple(self._learner(one) for one in held)

    @property
    def work(self) -> ClassWork:
        """The class as read; whose files are whose waits until names are shown."""
        learners = self.learners
        return replace(
            self._session.work,
            learners=learners,
            portfolios={one.id: self.portfolio(one.id) for one in learners},
            doubts=(),
            unowned=(),
            set_aside=(),
            problems=(),
        )

    def portfolio(self, learner: str) -> Portfolio:
        """One portfolio with a number for a name and neutral file names."""
        true = self._session.portfolio(learner)
        held = self._portfolios.get(learner)
        if held is not None and held[0] is true:
            return held[1]
        self._name_files(true)
        veiled = self._portfolio(true)
        self._portfolios[learner] = (true, veiled)
        return veiled

    def findings(self, learner: str) -> tuple[Finding, ...]:
        """Findings without names or file names."""
        true = self._session.findings(learner)
        held = self._findings.get(learner)
        if held is None or held[0] is not true:
            self.portfolio(learner)
            held = (true, tuple(self._finding(one) for one in true))
            self._findings[learner] = held
        return held[1]

    def drafts(self, learner: str) -> tuple[Draft, ...]:
        """Drafts whose reasons name no file."""
        true = self._session.drafts(learner)
        held = self._drafts.get(learner)
        if held is None or held[0] is not true:
            self.portfolio(learner)
            held = (true, tuple(self._draft(learner, one) for one in true))
            self._drafts[learner] = held
        return held[1]

    def draft(self, learner: str, criterion: str) -> Draft:
        """The draft for one criterion."""
        return next(one for one in self.drafts(learner) if one.criterion == criterion)

    def diagnosis(self, learner: str) -> Diagnosis | None:
        """Explanations as they are: they speak of numbers."""
        return self._session.diagnosis(learner)

    def value(self, kind: str, learner: str = "", subject: str = "") -> Any:
        """The decision in force for a key; a file may be meant by its neutral name."""
        return self._session.value(kind, learner, self._true_subject(subject))

    # --- commands: true file names again -----------------------------------------------

    def set_piece_kind(self, file: str, kind: str) -> None:
        """As :meth:`Session.set_piece_kind`."""
        self._session.set_piece_kind(self.true_file(file), kind)

    def set_piece_status(self, learner: str, file: str, status: str | None) -> None:
        """As :meth:`Session.set_piece_status`."""
        self._session.set_piece_status(learner, self.true_file(file), status)

    def point_at_columns(self, file: str, hints: Mapping[str, Any] | None) -> None:
        """As :meth:`Session.point_at_columns`."""
        self._session.point_at_columns(self.true_file(file), hints)

    def correct(self, learner: str, source: Source, text: str | None) -> None:
        """As :meth:`Session.correct`."""
        sheet = self._sheets.get(source.sheet, source.sheet)
        true = replace(source, file=self.true_file(source.file), sheet=sheet)
        self._session.correct(learner, true, text)

    def decide(self, *decisions: Decision) -> None:
        """As :meth:`Session.decide`."""
        true = [replace(d, subject=self._true_subject(d.subject)) for d in decisions]
        self._session.decide(*true)

    def true_file(self, file: str) -> str:
        """The file behind a neutral name; any other name as it is."""
        return self._files.get(file, file)

    def may_open(self, file: str) -> bool:
        """Whether a piece may be looked at while names are hidden."""
        return self.true_file(file) not in self._closed

    # --- hiding --------------------------------------------------------------------

    def hide(self, text: str, learner: str = "") -> str:
        """A text with learners' names and file names replaced.

        The bare name of a file is known by ``learner`` only: many files are ``readings.csv``.
        """
        shown: list[str] = []
        done = 0
        own = self._own_files.get(learner, {})
        for word in _WORD.finditer(text):
            start = word.start()
            if start < done:
                continue
            known = (*own.get(word[0], ()), *self._phrases.get(word[0], ()))
            found = max((one for one in known if _stands(text, start, one.true)), default=None)
            if found is not None:
                shown += (text[done:start], found.shown)
                done = start + len(found.true)
        return "".join((*shown, text[done:]))

    def _hide_in(self, sentence: str, learner: str) -> str:
        """A sentence with the names among its values hidden, still to be said in any language."""
        return reworded(sentence, lambda text: self.hide(text, learner))

    def _know(self, phrases: dict[str, list[_Phrase]], true: str, shown: str) -> None:
        word = _WORD.search(true)
        if word is not None and word.start() == 0:
            phrases.setdefault(word[0], []).append(_Phrase(len(true), true, shown))

    def _learner(self, learner: Learner) -> Learner:
        return replace(learner, name=self._names[learner.id], partner="", surname="")

    def _name_files(self, true: Portfolio) -> None:
        for number, piece in enumerate((*true.pieces, *true.earlier), 1):
            if piece.file not in self._aliases:
                self._name_file(true.learner.id, number, piece)
            # Looked at afresh each time: the teacher may have said what a picture shows.
            (self._closed.add if piece.kind in HIDDEN_KINDS else self._closed.discard)(piece.file)

    def _name_file(self, learner: str, number: int, piece: Piece) -> None:
        last = piece.file.replace("!/", "/").rpartition("/")[2]
        ending = f".{last.rpartition('.')[2]}" if "." in last else ""
        kind = piece.kind.replace("_", " ")
        alias = f"{self._names[learner]}/{number} {kind}{ending}"
        self._files[alias] = piece.file
        self._aliases[piece.file] = alias
        self._know(self._phrases, piece.file, alias)
        self._know(self._own_files.setdefault(learner, {}), last, alias)

    def _true_subject(self, subject: str) -> str:
        parts = subject.split("|")
        if len(parts) == 3:  # file|sheet|cell
            parts[1] = self._sheets.get(parts[1], parts[1])
        return "|".join((self.true_file(parts[0]), *parts[1:]))

    def _portfolio(self, true: Portfolio) -> Portfolio:
        return replace(
            true,
            learner=self._learner(true.learner),
            pieces=self._pieces(true.pieces),
            earlier=self._pieces(true.earlier),
            table=None if true.table is None else self._table(true.table),
            written=None if true.written is None else self._table(true.written),
            findings=tuple(self._finding(one) for one in true.findings),
        )

    def _pieces(self, pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
        return tuple(replace(one, file=self._aliases[one.file], match=None) for one in pieces)

    def _table(self, table: ReadingsTable) -> ReadingsTable:
        readings = tuple(
            replace(
                one,
                source=self._source(one.source),
                swings_source=None
                if one.swings_source is None
                else self._source(one.swings_source),
                timings=tuple(replace(t, source=self._source(t.source)) for t in one.timings),
            )
            for one in table.readings
        )
        return replace(
            table,
            readings=readings,
            own_values=tuple(replace(v, source=self._source(v.source)) for v in table.own_values),
            source=self._source(table.source),
            headings=tuple(self._source(one) for one in table.headings),
        )

    def _finding(self, finding: Finding) -> Finding:
        return replace(
            finding,
            message=self._hide_in(finding.message, finding.learner),
            ask=self._hide_in(finding.ask, finding.learner),
            sources=tuple(self._source(one) for one in finding.sources),
            numbers={
                key: self.hide(one, finding.learner) if isinstance(one, str) else one
                for key, one in finding.numbers.items()
            },
        )

    def _draft(self, learner: str, draft: Draft) -> Draft:
        reasons = tuple(
            replace(
                one,
                text=self._hide_in(one.text, learner),
                sources=tuple(self._source(source) for source in one.sources),
            )
            for one in draft.reasons
        )
        return replace(draft, reasons=reasons)

    def _source(self, source: Source) -> Source:
        if source not in self._sources:
            self._sources[source] = self._hidden_source(source)
        return self._sources[source]

    def _hidden_source(self, source: Source) -> Source:
        sheet = self.hide(source.sheet)
        if sheet != source.sheet:
            self._sheets[sheet] = source.sheet
        alias = self._aliases.get(source.file)
        return replace(source, file=alias or self.hide(source.file), sheet=sheet)
