"""Why a draft is what it is, in plain words: from conditions and facts to reasons."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from markbench.model import Reason
from markbench.model.sentence import sentence_case
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
_NEEDS = {
    "<": "less than {}",
    "<=": "at most {}",
    ">": "more than {}",
    ">=": "at least {}",
    "==": "exactly {}",
    "!=": "other than {}",
}


@dataclass(frozen=True, slots=True)
class Told:
    """A condition's part in words, and the fact it turns on."""

    words: str
    fact: str


def lacking(condition: Condition, facts: Facts) -> tuple[Told, ...]:
    """What keeps the condition from holding: "needs at least 5 different lengths; 4 found"."""
    return tuple(_lacking(condition.root, facts))


def supporting(condition: Condition, facts: Facts) -> tuple[Told, ...]:
    """What makes the condition hold: "5 different lengths (at least 5 needed)"."""
    return tuple(_supporting(condition.root, facts))


def tell(told: Told, facts: Facts, reasons: dict[str, Reason], prefix: str = "") -> None:
    """Add the reason itself, then the findings that bear on its fact, with their cells.

    ``reasons`` are kept by their text, each told once: a finding may bear on several facts.
    """
    text = f"{sentence_case(prefix + told.words)}."
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
                words = ", or ".join(" and ".join(t.words for t in way) for way in ways)
                yield Told(words, ways[0][0].fact)
        case Not(Name(name)):
            found = "not known" if facts[name] is None else "it is there"
            yield Told(f"must be without {FACTS[name].label}; {found}", name)
        case Name(name):
            found = "not known" if facts[name] is None else "not found"
            yield Told(f"needs {FACTS[name].label}; {found}", name)
        case Known(name):
            yield Told(f"{FACTS[name].label} is not known", name)
        case _:
            yield from _roundabout(node, facts, "does not hold")


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
                first = list(_supporting(part, facts))
                if first:
                    yield from first
                    return
        case Not(Name(name)):
            yield Told(f"without {FACTS[name].label}", name)
        case Name(name):
            yield Told(f"{FACTS[name].label}: yes", name)
        case Known(name):
            yield Told(f"{FACTS[name].label}: known", name)
        case _:
            yield from _roundabout(node, facts, "holds")


def _compared(node: Comparison, facts: Facts, met: bool) -> Told:
    sign, left, right = node.sign, node.left, node.right
    if not isinstance(left, Name) and isinstance(right, Name):
        sign, left, right = _MIRROR[sign], right, left
    if not isinstance(left, Name):
        return next(_roundabout(node, facts, "holds" if met else "does not hold"))
    fact = FACTS[left.name]
    found = _written(left.name, facts[left.name])
    wanted = _NEEDS[sign].format(_written(left.name, right.value(facts.values_by_name)))
    if fact.counted:
        words = (
            f"{fact.label}: {found} ({wanted} needed)"
            if met
            else f"needs {wanted} {fact.label}; {found} found"
        )
    else:
        words = (
            f"{fact.label} is {found} ({wanted} needed)"
            if met
            else f"needs {fact.label} of {wanted}; it is {found}"
        )
    return Told(words, left.name)


@lru_cache(maxsize=4096, typed=True)
def _written(name: str, value: Value) -> str:
    """A value (or a threshold for it) as this fact is written; most recur through a class."""
    if value is None:
        return "not known"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return f"“{value}”" if value else "none"
    show = FACTS[name].show
    return (show(value, None) if show is not None else None) or f"{value:g}"


def _roundabout(node: Node, facts: Facts, verdict: str) -> Iterator[Told]:
    names = list(dict.fromkeys(_names(node)))
    if not names:
        return
    told = ", ".join(f"{FACTS[n].label}: {_written(n, facts[n])}" for n in names)
    yield Told(f"the condition {verdict} ({told})", names[0])


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
