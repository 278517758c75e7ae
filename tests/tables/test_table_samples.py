"""Every file in samples/ is read because it is there; the .toml beside it says what it holds.

Keys of an expectation: ``difficulty``; ``table = false`` where no table can be read; else
``lengths_m``, ``swings``, ``timings_s`` per reading, ``findings`` (the ids, in any order)
and ``[own]`` with the learner's values per reading (nan: none), ``period_s_each`` per
timing and ``final_g`` for the whole table. ``class = true``: ``[[rows]]`` of the same.
All were written by hand from what stands in the file.
"""

from __future__ import annotations

import math
import tomllib
from pathlib import Path
from typing import Any

import pytest

from markbench.intake.tables import read_class_sheet, read_readings
from markbench.model import Brief, Finding, ReadingsTable

SAMPLES = Path(__file__).parent / "samples"
FILES = sorted(path for path in SAMPLES.iterdir() if path.suffix != ".toml")


def _expected(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.with_name(path.name + ".toml").read_text(encoding="utf-8"))


def test_there_are_enough_samples_and_none_alike():
    difficulties = [_expected(path)["difficulty"] for path in FILES]
    assert len(FILES) >= 40
    assert len(set(difficulties)) == len(difficulties)


def _check(
    table: ReadingsTable | None, findings: tuple[Finding, ...], expected: dict[str, Any]
) -> None:
    messages = [f"{f.check}: {f.message}" for f in findings]
    assert sorted(f.check for f in findings) == sorted(expected["findings"]), messages
    if expected.get("table") is False:
        assert table is None
        return
    assert table is not None, messages
    assert [r.length_m for r in table.readings] == pytest.approx(expected["lengths_m"])
    assert [r.swings for r in table.readings] == expected["swings"]
    got = [[t.time_s for t in r.timings] for r in table.readings]
    assert [len(times) for times in got] == [len(times) for times in expected["timings_s"]]
    for times, wanted in zip(got, expected["timings_s"], strict=True):
        assert times == pytest.approx(wanted)
    _check_own(table, expected.get("own", {}))


def _check_own(table: ReadingsTable, expected: dict[str, Any]) -> None:
    got: dict[tuple[str, int | None, int | None], float] = {
        (own.quantity, own.reading, own.timing): own.value for own in table.own_values
    }
    assert len(got) == len(table.own_values)
    wanted: dict[tuple[str, int | None, int | None], float] = {}
    for name, values in expected.items():
        for i, value in enumerate(values):
            if name == "final_g":
                wanted["g_m_s2", None, None] = value
            elif name.endswith("_each"):
                for k, each in enumerate(value):
                    wanted[name.removesuffix("_each"), i, k] = each
            elif not math.isnan(value):
                wanted[name, i, None] = value
    assert got == pytest.approx(wanted)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_sample(path: Path):
    expected = _expected(path)
    data = path.read_bytes()
    rows = read_class_sheet(path.name, data, Brief())
    if expected.get("class"):
        assert rows is not None
        assert [(r.id_text, r.name_text) for r in rows] == [
            (e["id"], e["name"]) for e in expected["rows"]
        ]
        for row, wanted in zip(rows, expected["rows"], strict=True):
            own = {"final_g": wanted["own_final_g"]} if "own_final_g" in wanted else {}
            _check(row.table, row.findings, {**wanted, "own": own})
        return
    assert rows is None, "one learner's table was taken for a class sheet"
    outcome = read_readings(path.name, data, Brief(), "learner")
    _check(outcome.table, outcome.findings, expected)
    assert {f.learner for f in outcome.findings} <= {"learner"}
    if outcome.table is not None:
        assert outcome.grids
        for reading in outcome.table.readings:
            for source in (reading.source, *(t.source for t in reading.timings)):
                assert source.file == path.name
                assert source.cell
                assert source.raw.strip()
                assert source.understood
