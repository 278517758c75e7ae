"""What every reader promises: an answer with a sentence, and numbers that can be reckoned with."""

from __future__ import annotations

import json
import math
from collections.abc import Iterable
from typing import Any

from markbench.model import Finding, ReadingsTable


def sentence(text: str) -> None:
    """Something a person can be told: not empty, not a bare repr."""
    assert text.strip(), "nothing was said"
    assert len(text) > 8, text


def told(findings: Iterable[Finding]) -> None:
    for finding in findings:
        assert finding.check
        sentence(finding.message)


def sound(table: ReadingsTable) -> None:
    for reading in table.readings:
        assert math.isfinite(reading.length_m), reading
        assert reading.length_m > 0, reading
        assert reading.swings >= 1, reading
        for timing in reading.timings:
            assert math.isfinite(timing.time_s), timing
            assert timing.time_s > 0, timing


def plain_json(data: bytes) -> Any:
    """Plain JSON as a journal gives it back; what is none stands for itself as text."""
    try:
        value = json.loads(data)
        json.dumps(value, allow_nan=False)
    except (ValueError, RecursionError):
        return data.decode("latin-1")
    return value
