"""A moderate number of inputs bred from sound files, for every reader; the long run is
``tests/benchmarks/fuzz_readers.py``."""

from __future__ import annotations

import shutil

import pytest
from hostile_readers import READERS
from hostile_strategies import inputs
from hypothesis import HealthCheck, Phase, given, settings
from watching import temporary_place, watched


def test_the_watch_sees_what_is_touched(tmp_path):
    inside, outside = tmp_path / "inside", tmp_path / "outside"
    inside.mkdir()
    outside.mkdir()
    with watched(inside) as touched:
        (inside / "a").write_text("x")
        assert touched == []
        (outside / "b").write_text("x")
        (outside / "b").unlink()
    assert [what.split()[0] for what in touched] == ["written", "os.remove"]


@pytest.mark.parametrize("name", READERS)
def test_bred_inputs_are_answered(name: str):
    reader = READERS[name]
    place = temporary_place()

    @settings(
        max_examples=max(6, 40 // reader.cost),
        deadline=None,
        derandomize=True,
        database=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(inputs(reader))
    def throw(data: bytes) -> None:
        folder = place / "class"
        folder.mkdir()
        try:
            with watched(folder) as touched:
                reader.read(data, folder)
            assert touched == []
        finally:
            shutil.rmtree(folder)

    try:
        throw()
    finally:
        shutil.rmtree(place)
