"""The teacher's own hand in the readings."""

from __future__ import annotations

from dataclasses import replace

import pytest

from markbench.intake.corrections import (
    TYPED,
    correct,
    correction_key,
    typed_rows,
    typed_table,
)
from markbench.model import Brief, OwnValue, Reading, ReadingsTable, Source, Timing


def cell(name: str, raw: str, sheet: str = "S") -> Source:
    return Source("a.xlsx", sheet, name, raw, "")


def table() -> ReadingsTable:
    rows = [
        Reading(
            length_m=length,
            swings=10,
            timings=(
                Timing(9.0, cell(f"B{row}", "9.0"), 1),
                Timing(9.1, cell(f"D{row}", "9.1"), 1),
            ),
            source=cell(f"A{row}", str(int(length * 100))),
            swings_source=cell("B1", "10"),
        )
        for row, length in ((2, 0.2), (3, 0.3))
    ]
    own = OwnValue("period_s", 0.9, cell("E2", "0.9"), 0)
    return ReadingsTable(tuple(rows), (own,), Source("a.xlsx", "S"))


def test_a_length_is_read_in_the_learner_s_unit() -> None:
    new = correct(table(), {"a.xlsx|S|A2": "25,5"}).readings[0]
    assert new.length_m == pytest.approx(0.255)
    assert new.length_raw_decimals == 1
    assert new.source.raw == "20"
    assert "teacher" in new.source.understood
    assert "25,5" in new.source.understood
    assert correct(table(), {"a.xlsx|S|A2": "0.3 m"}).readings[0].length_m == pytest.approx(0.3)


def test_timings_swings_and_own_values() -> None:
    new = correct(table(), {"a.xlsx|S|B2": "0:14.23", "a.xlsx|S|B1": "20", "a.xlsx|S|E2": "0.95"})
    assert new.readings[0].timings[0].time_s == pytest.approx(14.23)
    assert new.readings[0].timings[0].decimals == 2
    assert [reading.swings for reading in new.readings] == [20, 20]
    assert new.own_values[0].value == pytest.approx(0.95)
    assert new.readings[1].timings == table().readings[1].timings


def test_minutes_stay_minutes() -> None:
    old = table()
    timing = Timing(14.22, cell("B2", "0.237"), 3)
    old = replace(old, readings=(replace(old.readings[0], timings=(timing,)), old.readings[1]))
    new = correct(old, {"a.xlsx|S|B2": "0.240"})
    assert new.readings[0].timings[0].time_s == pytest.approx(14.4)


def test_a_cell_that_was_not_understood_becomes_a_timing_in_its_place() -> None:
    new = correct(table(), {"a.xlsx|S|C3": "9.05"}).readings[1]
    assert [timing.source.cell for timing in new.timings] == ["B3", "C3", "D3"]
    assert new.timings[1].time_s == pytest.approx(9.05)


def test_an_empty_text_takes_a_timing_out() -> None:
    assert len(correct(table(), {"a.xlsx|S|B2": ""}).readings[0].timings) == 1


def test_unreadable_texts_are_all_named() -> None:
    with pytest.raises(ValueError, match=r"A2.*B2.*D3.*Z99") as caught:
        correct(
            table(),
            {"a.xlsx|S|A2": "long", "a.xlsx|S|B2": "-3", "a.xlsx|S|D3": "14 cm",
             "a.xlsx|S|Z99": "4"},
        )  # fmt: skip
    assert "long" in str(caught.value)


def test_other_files_are_passed_over() -> None:
    assert correct(table(), {"b.xlsx|S|A2": "nonsense"}) == table()


def test_keys_keep_odd_names_apart() -> None:
    source = Source("a|b.xlsx", "She|et", "A1")
    assert correction_key(source) == "a|b.xlsx|She|et|A1"


def test_typed_rows_make_a_table() -> None:
    rows = typed_rows(
        [
            {"length_m": 0.2, "swings": 10, "timings_s": [9.05, 9]},
            {"length_m": 0.3, "timings_s": []},
        ]
    )
    made = typed_table(rows, Brief(swings_per_timing=20))
    assert made.source.file == TYPED
    assert [reading.swings for reading in made.readings] == [10, 20]
    assert made.readings[0].timings[0].decimals == 2
    assert made.readings[0].timings[1].source.cell == "D1"
    assert made.readings[1].swings_source is None
    assert typed_rows(None) == ()


@pytest.mark.parametrize(
    "value",
    [
        "text",
        [{"length_m": 0.2}],
        [{"length_m": "20 cm", "swings": 10, "timings_s": [9]}],
        [{"length_m": 0.2, "swings": 2.5, "timings_s": [9]}],
        [{"length_m": 0.2, "swings": 10, "timings_s": [-9]}],
        [{"length_m": True, "swings": 10, "timings_s": [9]}],
        [3],
    ],
)
def test_bad_rows_are_refused(value: object) -> None:
    with pytest.raises(ValueError, match=r"[Rr]ow"):
        typed_rows(value)
