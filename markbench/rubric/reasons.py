"""Why a draft is what it is, in plain words: from conditions and facts to reasons."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache, reduce

from markbench.model import Figures, Reason, Sentence, joined, opening, say
from markbench.rubric.condition import (
    All,
    Any,
    Comparison,
    Condition,
    Constant,
    Known,
    Name,
    Node,
    Not,
)
from markbench.rubric.facts import FACTS, Facts, Value

_MIRROR = {"<": ">", "<=": ">=", ">": "<", ">=": "<=", "==": "==", "!=": "!="}


def _needed(sign: str, value: str) -> str:
    match sign:
        case "<":
            return say("less than {value}", value=value)
        case "<=":
            return say("at most {value}", value=value)
        case ">":
            return say("more than {value}", value=value)
        case ">=":
            return say("at least {value}", value=value)
        case "==":
            return say("exactly {value}", value=value)
    return say("other than {value}", value=value)


@dataclass(frozen=True, slots=True)
class Told:
    """A condition's part in words, and the fact it turns on.

    ``most`` and ``least`` are the bounds that a comparison sets the fact, where they are numbers.
    """

    words: str
    fact: str
    least: float | None = None
    most: float | None = None


def lacking(condition: Condition, facts: Facts) -> tuple[Told, ...]:
    """What keeps the condition from holding: "needs at least 5 different lengths; 4 found"."""
    return _strictest(_lacking(condition.root, facts))


def supporting(condition: Condition, facts: Facts) -> tuple[Told, ...]:
    """What makes the condition hold: "5 different lengths (at least 5 needed)"."""
    return _strictest(_supporting(condition.root, facts))


def _strictest(told: Iterator[Told]) -> tuple[Told, ...]:
    """One of several bounds on the same side of a fact, the strictest, says it all."""
    kept: dict[tuple[str, str], Told] = {}
    for one in told:
        if one.least is not None:
            key = (one.fact, "least")
        elif one.most is not None:
            key = (one.fact, "most")
        else:
            key = (one.fact, one.words)
        before = kept.get(key)
        if before is None or _above(one.least, before.least) or _above(before.most, one.most):
            kept[key] = one
    return tuple(kept.values())


def _above(one: float | None, other: float | None) -> bool:
    return one is not None and other is not None and one > other


def tell(told: Told, facts: Facts, reasons: dict[str, Reason], level: str = "") -> None:
    """Add the reason itself, then the findings that bear on its fact, with their cells.

    ``level``: what it is the reason for not to have reached. ``reasons`` are kept by their
    text, each told once: a finding may bear on several facts.
    """
    text: str
    if level:
        text = say("For “{level}”: {told}.", level=level, told=told.words)
    else:
        text = opening(say("{told}.", told=told.words))
    if text not in reasons:
        reasons[text] = Reason(text, told.fact, sources=facts.sources(told.fact))
    for finding in facts.findings(told.fact):
        if finding.message not in reasons:
            reasons[finding.message] = Reason(
                finding.message, told.fact, finding.check, finding.sources
            )


def _lacking(node: Node, facts: Facts) -> Iterator[Told]:
    if node.value(facts.values_by_name) is True:
        return
    match node:
        case Comparison():
            yield _compared(node, facts, met=False)
        case All(parts):
            for part in parts:
                yield from _lacking(part, facts)
        case Any(parts):
            # "or it is not known" is a courtesy to the learner, not something to strive for.
            ways = [
                list(_lacking(part, facts))
                for part in parts
                if not (isinstance(part, Not) and isinstance(part.part, Known))
            ]
            if all(ways):
                told = [reduce(_and, (part.words for part in way)) for way in ways]
                yield Told(reduce(_or, told), ways[0][0].fact)
        case Not(Name(name)):
            found = say("not known") if facts[name] is None else say("it is there")
            words = say("must be without {fact}; {found}", fact=_label(name), found=found)
            yield Told(words, name)
        case Name(name):
            found = say("not known") if facts[name] is None else say("not found")
            yield Told(say("needs {fact}; {found}", fact=_label(name), found=found), name)
        case Known(name):
            yield Told(say("{fact} is not known", fact=_label(name)), name)
        case _:
            yield from _roundabout(node, facts, holds=False)


def _supporting(node: Node, facts: Facts) -> Iterator[Told]:
    if node.value(facts.values_by_name) is not True:
        return
    match node:
        case Comparison():
            yield _compared(node, facts, met=True)
        case All(parts):
            for part in parts:
                yield from _supporting(part, facts)
        case Any(parts):
            for part in parts:
                match part:
                    case Not(Known(name)) if facts[name] is None:
                        yield _forgiven(name)
                        return
                first = list(_supporting(part, facts))
                if first:
                    yield from first
                    return
        case Not(Known(name)):
            yield Told(say("{fact}: not known", fact=_label(name)), name)
        case Not(Name(name)):
            yield Told(say("without {fact}", fact=_label(name)), name)
        case Name(name):
            yield Told(say("{fact}: yes", fact=_label(name)), name)
        case Known(name):
            yield Told(say("{fact}: known", fact=_label(name)), name)
        case _:
            yield from _roundabout(node, facts, holds=True)


def _forgiven(name: str) -> Told:
    """The level was reached although a fact is not known: nothing that goes without saying."""
    words = say("{fact}: not known, and not held against the learner", fact=_label(name))
    return Told(words, name)


def _compared(node: Comparison, facts: Facts, met: bool) -> Told:
    sign, left, right = node.sign, node.left, node.right
    if not isinstance(left, Name) and isinstance(right, Name):
        sign, left, right = _MIRROR[sign], right, left
    if not isinstance(left, Name):
        return next(_roundabout(node, facts, holds=met))
    bound = right.value(facts.values_by_name)
    wanted = _needed(sign, _written(left.name, bound))
    if FACTS[left.name].counted:
        words = say(
            "{fact}: {found} ({wanted} needed)" if met else "needs {wanted} {fact}; {found} found",
            fact=_label(left.name),
            found=_written(left.name, facts[left.name]),
            wanted=wanted,
        )
    else:
        words = say(
            "{fact} is {found} ({wanted} needed)"
            if met
            else "needs {fact} of {wanted}; it is {found}",
            fact=_label(left.name),
            found=_written(left.name, facts[left.name]),
            wanted=wanted,
        )
    limit = bound if isinstance(bound, int | float) and not isinstance(bound, bool) else None
    return Told(
        words,
        left.name,
        least=limit if sign in (">", ">=") else None,
        most=limit if sign in ("<", "<=") else None,
    )


@lru_cache(maxsize=256)
def _label(name: str) -> str:
    return say(FACTS[name].label)


def _and(one: str, other: str) -> str:
    return say("{one} and {other}", one=one, other=other)


def _or(one: str, other: str) -> str:
    return say("{one}, or {other}", one=one, other=other)


@lru_cache(maxsize=4096, typed=True)
def _written(name: str, value: Value) -> str:
    """A value (or a threshold for it) as this fact is written; most recur through a class."""
    if value is None:
        return say("not known")
    if isinstance(value, bool):
        return say("yes") if value else say("no")
    if isinstance(value, str):
        return say("“{text}”", text=value) if value else say("none")
    show = FACTS[name].show
    shown = (show(value, None) if show is not None else None) or f"{value:g}"
    return shown if isinstance(shown, Sentence) else Figures(shown)


def _roundabout(node: Node, facts: Facts, *, holds: bool) -> Iterator[Told]:
    names = list(dict.fromkeys(_names(node)))
    if not names:
        return
    told = joined(
        (say("{fact}: {found}", fact=_label(n), found=_written(n, facts[n])) for n in names), ", "
    )
    words = say(
        "the condition holds ({told})" if holds else "the condition does not hold ({told})",
        told=told,
    )
    yield Told(words, names[0])


def _names(node: Node) -> Iterator[str]:
    match node:
        case Name(name) | Known(name):
            yield name
        case Constant():
            return
        case Not(part):
            yield from _names(part)
        case All(parts) | Any(parts):
            for part in parts:
                yield from _names(part)
        case _:
            yield from _names(node.left)  # type: ignore[attr-defined]
            yield from _names(node.right)  # type: ignore[attr-defined]
