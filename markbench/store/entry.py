"""A decision as one line of canonical JSON, and the digest that chains it to the last.

The line is what is stored and what is digested, so that verifying never depends on
writing the same JSON again in the same way. It is plain ASCII: NUL, unpaired surrogates
(from oddly encoded file names) and every other character travel as escapes, which any
database keeps unchanged.
"""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from dataclasses import fields
from typing import Any

from markbench.model import Decision
from markbench.store.errors import StoreError

_FIELDS = tuple(field.name for field in fields(Decision))


def encode(decision: Decision) -> str:
    """The canonical JSON of a numbered and dated decision.

    A time without zone is taken as this computer's; all are kept as UTC. Raises
    :class:`StoreError` when a value has no JSON form (nan, an object, a key that is no
    text).
    """
    content: dict[str, Any] = {name: getattr(decision, name) for name in _FIELDS}
    at = decision.at or dt.datetime.now(dt.UTC)
    content["at"] = at.astimezone(dt.UTC).isoformat()
    try:
        _refuse_odd_keys(decision.value)
        _refuse_odd_keys(decision.before)
        return json.dumps(content, sort_keys=True, separators=(",", ":"), allow_nan=False)
    except (TypeError, ValueError, RecursionError) as error:
        raise StoreError(
            f"The decision {decision.kind!r} holds something that cannot be saved: {error}."
        ) from error


def decode(line: str) -> Decision:
    """The decision in a line written by :func:`encode`; ``ValueError`` for any other line."""
    try:
        content = json.loads(line)
        content["at"] = dt.datetime.fromisoformat(content["at"])
        decision = Decision(**content)
        texts = (*decision.key, decision.who, decision.why)
        if not all(isinstance(text, str) for text in texts) or content["at"].tzinfo is None:
            raise ValueError("a text or a time is missing")
        if type(decision.number) is not int or type(decision.undoes) not in (int, type(None)):
            raise ValueError("its number is none")
    except (ValueError, KeyError, TypeError, AttributeError, RecursionError) as error:
        raise ValueError(f"it is no entry of a journal: {error}") from error
    return decision


def digest_of(previous: str, line: str) -> str:
    """SHA-256 (hexadecimal) of the previous entry's digest followed by the line."""
    return hashlib.sha256((previous + line).encode("ascii", "replace")).hexdigest()


def _refuse_odd_keys(value: Any) -> None:
    """JSON would quietly turn the key 1 into "1", and two keys could fall together."""
    if isinstance(value, dict):
        for key, inner in value.items():
            if not isinstance(key, str):
                raise TypeError(f"the key {key!r} is not text")
            _refuse_odd_keys(inner)
    elif isinstance(value, list | tuple):
        for inner in value:
            _refuse_odd_keys(inner)
