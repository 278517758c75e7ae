"""The teacher's own phrases: kept in the journal, found again, filled with a learner's numbers.

A phrase remembers the findings of the learner it was written for and the criterion it was
written under, so that it comes to hand where the same thing happened again. Phrases are
decisions of the kind ``phrase``; keeping and forgetting one can be undone like any other. A
:class:`PhraseBook` carries them from class to class, where they can be forgotten, too.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Mapping
from dataclasses import asdict, dataclass
from typing import Any

from rapidfuzz import fuzz

from markbench.model import Decision, Finding, joined, say
from markbench.rubric import Facts
from markbench.rubric.facts import PLACEHOLDERS
from markbench.rubric.phrasing import Template, TemplateError, template
from markbench.rubric.pieces import still_open
from markbench.session.phrase_book import PhraseBook
from markbench.session.session import Change, Session

KIND = "phrase"
FORGOTTEN = "phrase_forgotten"
"""A phrase of the book alone, kept in another class, that was forgotten in this one."""
LONGEST = 600
"""Characters of a phrase at most: a phrase is a sentence or two (own choice)."""

_NEAR = 75.0  # of 100: a slip in a word or one word of five may differ (own choice)
_WORD = re.compile(r"\w+")


class PhraseError(ValueError):
    """A phrase that cannot be kept or said as it stands; the message says why."""


@dataclass(frozen=True, slots=True)
class OwnPhrase:
    """A phrase as kept: ``text`` with its places, and what it was written about."""

    key: str
    text: str
    criterion: str
    about: tuple[str, ...]
    language: str = ""


@dataclass(frozen=True, slots=True)
class Offer:
    """A phrase for one learner: ``words`` filled in, or ``trouble`` where it cannot be."""

    phrase: OwnPhrase
    words: str
    trouble: str
    shared: tuple[str, ...]


def keep_phrase(session: Session, learner: str, criterion: str, text: str) -> None:
    """Keep a phrase, with what was found at this learner's work.

    Raises :class:`PhraseError` for one that is empty, too long, or quotes what is no fact.
    """
    text = " ".join(text.split())
    if not text:
        raise PhraseError(say("There is nothing to keep yet."))
    if len(text) > LONGEST:
        raise PhraseError(
            say(
                "{n} characters are too many; {most} is the most.",
                n=len(text),
                most=LONGEST,
            )
        )
    _parse(text)
    named = _named_in(text, session)
    if named:
        raise PhraseError(
            say(
                "“{name}” is in the class list; a phrase goes from class to class, so "
                "leave it out.",
                name=named,
            )
        )
    about = sorted({mark_of(finding) for finding in session.findings(learner)})
    language = session.brief.feedback_language
    value = {"text": text, "criterion": criterion, "about": about, "language": language}
    session.decide(Decision(KIND, "", _key(text), value))


def forget_phrase(session: Session, phrase: OwnPhrase) -> None:
    """Forget a phrase, of this class or of the book; what was already said with it stays."""
    if session.value(KIND, "", phrase.key) is not None:
        session.decide(Decision(KIND, "", phrase.key, None))
        return
    # Each time has a decision of its own: it may be kept again from elsewhere.
    value = {**asdict(phrase), "about": list(phrase.about)}
    session.decide(Decision(FORGOTTEN, "", f"{len(session.history())}", value))


def phrases(session: Session, book: PhraseBook | None = None) -> tuple[OwnPhrase, ...]:
    """Every phrase kept in this class, the latest first; then those of the book."""
    kept = [d for (kind, _, _), d in session.state.items() if kind == KIND and d.value is not None]
    kept.sort(key=lambda d: -d.number)
    found = {d.subject: d.value for d in kept if isinstance(d.value, Mapping)}
    if book is not None:
        latest_first = list(book.phrases().items())[::-1]
        found.update((key, value) for key, value in latest_first if key not in found)
    return tuple(_read(key, value) for key, value in found.items())


def follow(session: Session, book: PhraseBook) -> Callable[[], None]:
    """Have the book follow what is kept and forgotten in this class, undoing included.

    What an earlier evening kept in this class's journal comes into the book at once. Returns
    a function that ends it.
    """
    for (kind, _, key), decision in session.state.items():
        if kind == KIND and key not in book.phrases() and isinstance(decision.value, Mapping):
            book.put(key, decision.value)

    done = len(session.history())

    def on_change(change: Change) -> None:
        nonlocal done
        if KIND not in change.kinds and FORGOTTEN not in change.kinds:
            return
        fresh = session.history()[done:]
        done += len(fresh)
        for d in fresh:
            if d.kind == KIND:
                _tell(book, d.subject, d.value)
            elif d.kind == FORGOTTEN and isinstance(told := d.value or d.before, Mapping):
                _tell(book, str(told["key"]), told if d.value is None else None)

    return session.listen(on_change)


def _tell(book: PhraseBook, key: str, value: Any) -> None:
    if isinstance(value, Mapping):
        book.put(key, value)
    else:
        book.drop(key)


def offers(
    session: Session,
    learner: str,
    criterion: str,
    typed: str = "",
    most: int = 8,
    book: PhraseBook | None = None,
) -> tuple[Offer, ...]:
    """Phrases that fit, best first.

    With nothing typed: those written about findings this learner has too, then those of the
    same criterion. With something typed: those whose words fit it.
    """
    here = {mark_of(finding) for finding in session.findings(learner)}
    facts = session.facts(learner)
    ranked = []
    language = session.brief.feedback_language
    for age, phrase in enumerate(phrases(session, book)):
        if phrase.language not in ("", language):
            continue
        shared = tuple(sorted(here.intersection(phrase.about)))
        fit = _fit(typed, phrase.text)
        if typed.strip() and fit < _NEAR:
            continue
        if not typed.strip() and not shared and phrase.criterion != criterion:
            continue
        same = phrase.criterion == criterion
        rank = (-round(fit / 10), not (shared and same), -len(shared), not same, age)
        ranked.append((rank, phrase, shared))
    ranked.sort(key=lambda one: one[0])
    return tuple(_offer(phrase, shared, facts) for _, phrase, shared in ranked[:most])


def fill(text: str, facts: Facts) -> str:
    """The phrase with this learner's numbers.

    Raises :class:`PhraseError` where a place names no fact or cannot be filled.
    """
    ready = _parse(text)
    words = ready.fill(facts)
    if words is None:
        open_ = [name for name in ready.names if facts.show(name) is None]
        shown = ", ".join(f"{{{_placeholder(name)}}}" for name in dict.fromkeys(open_))
        raise PhraseError(
            say("{shown} is not known for this learner, so this cannot be said here.", shown=shown)
        )
    return words


def left_open(text: str) -> str:
    """A sentence that names the places still open in a text to a learner; empty for none.

    What goes out is held to this: nothing is sent with a place unfilled.
    """
    words = still_open(text)
    return f"{words}; this is not sent as it stands." if words else ""


def mark_of(finding: Finding) -> str:
    """What a finding is about: the check, and which slip or piece where it says so."""
    detail = finding.numbers.get("slip") or finding.numbers.get("piece") or ""
    return f"{finding.check}:{detail}" if detail else finding.check


def _key(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()[:16]


def _read(key: str, value: Mapping[str, object]) -> OwnPhrase:
    about = value.get("about")
    return OwnPhrase(
        key,
        str(value.get("text", "")),
        str(value.get("criterion", "")),
        tuple(map(str, about)) if isinstance(about, list | tuple) else (),
        str(value.get("language", "")),
    )


def _named_in(text: str, session: Session) -> str:
    """A learner's name, or part of one, that stands in the text with a capital; else empty."""
    said = set(_WORD.findall(text))
    for learner in session.learners:
        for word in _WORD.findall(learner.name):
            if len(word) > 2 and word[:1].isupper() and word in said:
                return str(word)
    return ""


def _parse(text: str) -> Template:
    try:
        return template(text)
    except TemplateError as error:
        raise PhraseError(say("{wrong}.", wrong=joined(error.problems, "; "))) from None


def _placeholder(name: str) -> str:
    return next((shown for shown, fact in PLACEHOLDERS.items() if fact.name == name), name)


def _fit(typed: str, text: str) -> float:
    """How well each typed word, the last perhaps only begun, stands in the text: 0 to 100."""
    asked = _WORD.findall(typed.casefold())
    words = _WORD.findall(text.casefold())
    if not asked or not words:
        return 0.0
    return sum(
        100.0 if any(w.startswith(one) for w in words) else max(fuzz.ratio(one, w) for w in words)
        for one in asked
    ) / len(asked)


def _offer(phrase: OwnPhrase, shared: tuple[str, ...], facts: Facts) -> Offer:
    try:
        return Offer(phrase, fill(phrase.text, facts), "", shared)
    except PhraseError as error:
        return Offer(phrase, "", str(error), shared)
