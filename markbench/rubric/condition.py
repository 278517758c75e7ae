"""Conditions: a small, safe language over named facts.

``lengths >= asked_lengths and (range_ratio >= 2 or longest_m > 0.6) and not report``

Numbers, texts in quotes, ``True``/``False``, ``+ - * /``, comparisons (chained too),
``in`` a bracketed list, ``and or not``, and ``known(fact)``. A condition is read by
Python's own parser, then each node of the tree is checked against this list and turned
into one of the small classes below; nothing of it is ever executed as Python, and what is
not on the list is a problem to report.

Unknown facts (``None``): arithmetic with one is unknown, and no comparison with one holds,
nor does its ``not``. A condition that turns on something unknown does not hold, whichever
way round it is written; so nobody is praised or blamed for what we could not see.
"""

from __future__ import annotations

import ast
import operator
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import Protocol

from rapidfuzz import fuzz, process

from markbench.model import joined, say
from markbench.rubric.facts import FACTS, Value
from markbench.rubric.facts.registry import Kind
from markbench.rubric.unreadable import TOO_DEEP, why_condition

_LONGEST = 600


class ConditionError(ValueError):
    """A condition that cannot be used; ``problems`` holds a sentence for each reason."""

    def __init__(self, problems: list[str]) -> None:
        super().__init__("; ".join(problems))
        self.problems = tuple(problems)


class Node(Protocol):
    """A piece of a condition: gives its value from facts by name."""

    def value(self, facts: Mapping[str, Value]) -> Value:
        """The value, ``None`` where it turns on something unknown."""


@dataclass(frozen=True, slots=True)
class Constant:
    """A number, a text or a truth value as written."""

    content: Value

    def value(self, facts: Mapping[str, Value]) -> Value:
        """What was written."""
        return self.content


@dataclass(frozen=True, slots=True)
class Name:
    """A fact."""

    name: str

    def value(self, facts: Mapping[str, Value]) -> Value:
        """The fact's value."""
        return facts[self.name]


@dataclass(frozen=True, slots=True)
class Known:
    """Whether a fact is known."""

    name: str

    def value(self, facts: Mapping[str, Value]) -> Value:
        """True or false, never unknown."""
        return facts[self.name] is not None


@dataclass(frozen=True, slots=True)
class Arithmetic:
    """Two numbers joined by + − × ÷."""

    apply: Callable[[float, float], float]
    left: Node
    right: Node

    def value(self, facts: Mapping[str, Value]) -> Value:
        """The result; unknown where a part is, and where it has no value (division by zero)."""
        left, right = self.left.value(facts), self.right.value(facts)
        if left is None or right is None:
            return None
        try:
            return self.apply(left, right)  # type: ignore[arg-type]
        except (ZeroDivisionError, OverflowError):
            return None


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two values compared; ``sign`` as written."""

    sign: str
    apply: Callable[[Value, Value], bool]
    left: Node
    right: Node

    def value(self, facts: Mapping[str, Value]) -> Value:
        """True or false; unknown where either side is."""
        left, right = self.left.value(facts), self.right.value(facts)
        return None if left is None or right is None else self.apply(left, right)


@dataclass(frozen=True, slots=True)
class Not:
    """The opposite."""

    part: Node

    def value(self, facts: Mapping[str, Value]) -> Value:
        """True for false, false for true; the unknown stays unknown."""
        value = self.part.value(facts)
        return None if value is None else not value


@dataclass(frozen=True, slots=True)
class All:
    """Every part holds."""

    parts: tuple[Node, ...]

    def value(self, facts: Mapping[str, Value]) -> Value:
        """False as soon as a part is; else unknown if a part is."""
        result: bool | None = True
        for part in self.parts:
            value = part.value(facts)
            if value is None:
                result = None
            elif not value:
                return False
        return result


@dataclass(frozen=True, slots=True)
class Any:
    """At least one part holds."""

    parts: tuple[Node, ...]

    def value(self, facts: Mapping[str, Value]) -> Value:
        """True as soon as a part is; else unknown if a part is."""
        result: bool | None = False
        for part in self.parts:
            value = part.value(facts)
            if value is None:
                result = None
            elif value:
                return True
        return result


@dataclass(frozen=True, slots=True)
class Condition:
    """A condition ready for use. The empty text always holds."""

    text: str
    root: Node
    names: frozenset[str]

    def holds(self, facts: Mapping[str, Value]) -> bool:
        """Whether it certainly holds for these facts."""
        return self.root.value(facts) is True


_COMPARE: dict[type[ast.cmpop], tuple[str, Callable[..., bool]]] = {
    ast.Eq: ("==", operator.eq),
    ast.NotEq: ("!=", operator.ne),
    ast.Lt: ("<", operator.lt),
    ast.LtE: ("<=", operator.le),
    ast.Gt: (">", operator.gt),
    ast.GtE: (">=", operator.ge),
}
_ARITHMETIC: dict[type[ast.operator], Callable[..., float]] = {
    ast.Add: operator.add,
    ast.Sub: operator.sub,
    ast.Mult: operator.mul,
    ast.Div: operator.truediv,
}
_KINDS: dict[Kind, str] = {
    "number": say("a number"),
    "text": say("a text"),
    "yes/no": say("a yes or no"),
}
_ALLOWED = say(
    "only numbers, quoted texts, facts, + - * /, comparisons, in (…), and, or, not and "
    "known(fact) may stand in a condition"
)


def parse(text: str, kinds: Mapping[str, Kind]) -> Condition:
    """Read a condition over facts of the given kinds.

    Raises :class:`ConditionError` with everything that is wrong with it.
    """
    if not text.strip():
        return Condition(text, Constant(True), frozenset())
    if len(text) > _LONGEST:
        raise ConditionError([say("is longer than {n} characters", n=_LONGEST)])
    try:
        tree = ast.parse(text.strip(), mode="eval")
    except (SyntaxError, ValueError, RecursionError, MemoryError) as error:
        deep = not isinstance(error, SyntaxError | ValueError)
        raise ConditionError([TOO_DEEP if deep else why_condition(text)]) from None
    reader = _Reader(kinds)
    root = reader.truth(tree.body)
    if reader.problems:
        raise ConditionError(list(dict.fromkeys(reader.problems)))
    return Condition(text, root, frozenset(reader.names))


@lru_cache(maxsize=4096)
def condition(text: str) -> Condition:
    """Read a condition over the declared facts, once for each text."""
    return parse(text, {name: fact.kind for name, fact in FACTS.items()})


def nearest(told: str, word: str, known: Mapping[str, object] | list[str]) -> str:
    """What is wrong with ``word``, and ``; did you mean “…”?`` for a near match in ``known``."""
    match = process.extractOne(word, list(known), scorer=fuzz.ratio, score_cutoff=60)
    return joined((told, say("did you mean “{word}”?", word=match[0])), "; ") if match else told


class _Reader:
    """Turns a parsed tree into nodes, collecting all that is not allowed."""

    def __init__(self, kinds: Mapping[str, Kind]) -> None:
        self.kinds = kinds
        self.names: set[str] = set()
        self.problems: list[str] = []

    def truth(self, tree: ast.expr) -> Node:
        """A node that is true or false."""
        node, kind = self.read(tree)
        self.expect("yes/no", kind, tree)
        return node

    def expect(self, wanted: Kind, kind: Kind | None, tree: ast.expr) -> None:
        if kind is not None and kind != wanted:
            self.problems.append(
                say(
                    "“{part}” is {kind} where {wanted} is needed",
                    part=ast.unparse(tree),
                    kind=_KINDS[kind],
                    wanted=_KINDS[wanted],
                )
            )

    def refuse(self, tree: ast.expr) -> tuple[Node, None]:
        self.problems.append(
            say("“{part}” is not allowed: {allowed}", part=ast.unparse(tree), allowed=_ALLOWED)
        )
        return Constant(None), None

    def read(self, tree: ast.expr) -> tuple[Node, Kind | None]:
        """The node and its kind (``None`` after a problem, so that it is told only once)."""
        match tree:
            case ast.Constant(value=bool() as content):
                return Constant(content), "yes/no"
            case ast.Constant(value=int() | float() as content):
                return Constant(content), "number"
            case ast.Constant(value=str() as content):
                return Constant(content), "text"
            case ast.Name(id=name):
                return Name(name), self.fact(name)
            case ast.Call(func=ast.Name(id="known"), args=[ast.Name(id=name)], keywords=[]):
                return Known(name), "yes/no" if self.fact(name) else None
            case ast.UnaryOp(op=ast.Not(), operand=operand):
                return Not(self.truth(operand)), "yes/no"
            case ast.UnaryOp(op=ast.USub(), operand=operand):
                node = self.number(operand)
                return Arithmetic(operator.sub, Constant(0), node), "number"
            case ast.BoolOp(op=op, values=values):
                parts = tuple(self.truth(value) for value in values)
                return (All(parts) if isinstance(op, ast.And) else Any(parts)), "yes/no"
            case ast.BinOp(op=op, left=left, right=right) if type(op) in _ARITHMETIC:
                apply = _ARITHMETIC[type(op)]
                return Arithmetic(apply, self.number(left), self.number(right)), "number"
            case ast.Compare(left=left, ops=ops, comparators=comparators):
                sides = [left, *comparators]
                parts = tuple(
                    self.compare(op, a, b)
                    for op, a, b in zip(ops, sides, comparators, strict=False)
                )
                return (parts[0] if len(parts) == 1 else All(parts)), "yes/no"
        return self.refuse(tree)

    def fact(self, name: str) -> Kind | None:
        if name not in self.kinds:
            self.problems.append(
                nearest(say("there is no fact “{name}”", name=name), name, self.kinds)
            )
            return None
        self.names.add(name)
        return self.kinds[name]

    def number(self, tree: ast.expr) -> Node:
        node, kind = self.read(tree)
        self.expect("number", kind, tree)
        return node

    def compare(self, op: ast.cmpop, a: ast.expr, b: ast.expr) -> Node:
        if isinstance(op, ast.In | ast.NotIn):
            if not isinstance(b, ast.Tuple | ast.List):
                self.problems.append(
                    say("after “in” stands a list in brackets, not “{part}”", part=ast.unparse(b))
                )
                return Constant(None)
            equal = tuple(self.compare(ast.Eq(), a, item) for item in b.elts)
            return Any(equal) if isinstance(op, ast.In) else Not(Any(equal))
        if type(op) not in _COMPARE:
            self.problems.append(
                say(
                    "“{one} … {other}”: {allowed}",
                    one=ast.unparse(a),
                    other=ast.unparse(b),
                    allowed=_ALLOWED,
                )
            )
            return Constant(None)
        sign, apply = _COMPARE[type(op)]
        (left, left_kind), (right, right_kind) = self.read(a), self.read(b)
        if left_kind and right_kind and left_kind != right_kind:
            self.problems.append(
                say(
                    "“{one}” ({kind}) cannot be compared with “{other}” ({other_kind})",
                    one=ast.unparse(a),
                    kind=_KINDS[left_kind],
                    other=ast.unparse(b),
                    other_kind=_KINDS[right_kind],
                )
            )
        elif sign not in ("==", "!=") and left_kind in ("text", "yes/no"):
            self.problems.append(
                say(
                    "“{one}” ({kind}) has no order: only == and != may compare it",
                    one=ast.unparse(a),
                    kind=_KINDS[left_kind],
                )
            )
        return Comparison(sign, apply, left, right)
