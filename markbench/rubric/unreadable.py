"""Why a condition or a sentence cannot be read, in words for who types it.

Python's parser says it in its own terms, which differ from one version to the next; so what
is commonly mistyped is looked for here, and the parser only tells that something is wrong.
"""

from __future__ import annotations

import re

from markbench.model import say

_QUOTED = re.compile(r"'[^']*'|\"[^\"]*\"")
_PAIRS = {")": "(", "]": "[", "}": "{"}
_BESIDE = re.compile(r"(?!(?:and|or|not|in)\b)\b\w+\s+(?!(?:and|or|not|in)\b)\w+")
_OPEN_END = re.compile(r"(?:\b(?:and|or|not|in)|[-+*/<>=,(])\s*$")
TOO_DEEP = say("this condition cannot be read: there are too many brackets in brackets")


def why_condition(text: str) -> str:
    """What is wrong with a condition that the parser refuses."""
    return say("this condition cannot be read: {why}", why=_why(_QUOTED.sub("0", text.strip())))


def why_sentence(text: str) -> str:
    """What is wrong with the braces of a sentence."""
    plain = text.replace("{{", "").replace("}}", "")
    opened = plain.count("{") > plain.count("}") or plain.rfind("{") > plain.rfind("}")
    if opened:
        return say("this sentence cannot be read: a curly bracket is not closed")
    return say("this sentence cannot be read: a curly bracket closes nothing")


def _why(bare: str) -> str:
    """``bare``: the condition with a figure for each quoted text."""
    if re.search(r"[\"']", bare):
        return say("a quotation mark is not closed")
    opened: list[str] = []
    for letter in bare:
        if letter in _PAIRS.values():
            opened.append(letter)
        elif letter in _PAIRS and (not opened or opened.pop() != _PAIRS[letter]):
            return say("a bracket closes nothing")
    if opened:
        return say("a bracket is not closed")
    if re.search(r"(?<![=<>!])=(?![=<>])", bare):
        return say("to compare, write == instead of =")
    if re.search(r"&|\||!(?!=)", bare):
        return say("write and, or, not instead of signs")
    if re.search(r"=<|=>", bare):
        return say("write <= or >=, the sign = last")
    if _OPEN_END.search(bare):
        return say("something is missing at the end")
    beside = _BESIDE.search(bare)
    if beside is not None:
        return say("something is missing in “{words}”", words=beside[0])
    return say("something is missing or too much")
