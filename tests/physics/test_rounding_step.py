"""The step to which times were rounded is read from the times, whatever a column's format."""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest

from markbench.checks.copies import find_alike
from markbench.model import Reading
from markbench.physics.stack import stack_readings
from simulation.readings import simulate


def written(readings: list[Reading], step_s: float, decimals: int) -> list[Reading]:
    """The same readings rounded to a step and written with so many decimals."""
    return [
        dataclasses.replace(
            reading,
            timings=tuple(
                dataclasses.replace(
                    timing, time_s=round(timing.time_s / step_s) * step_s, decimals=decimals
                )
                for timing in reading.timings
            ),
        )
        for reading in readings
    ]


@pytest.mark.parametrize(("step_s", "decimals"), [(1.0, 0), (1.0, 2), (0.1, 1), (0.1, 2)])
def test_a_column_set_to_two_decimals_makes_no_finer_watch(step_s: float, decimals: int) -> None:
    readings = written(simulate(1, seed=2, decimals=2).readings()[0], step_s, decimals)
    assert stack_readings([readings]).time_step_s == pytest.approx([step_s])


def test_hundredths_stay_hundredths() -> None:
    stack = stack_readings(simulate(400, seed=5, decimals=2).readings())
    assert set(stack.time_step_s) == {0.01}


def test_few_timings_show_no_step() -> None:
    readings = written(simulate(1, seed=2, decimals=2).readings()[0][:2], 1.0, 2)
    assert stack_readings([readings]).time_step_s == pytest.approx([0.01])


@pytest.mark.parametrize("decimals", [0, 2])
def test_honest_whole_seconds_are_no_copies_however_they_are_written(decimals: int) -> None:
    class_ = [written(one, 1.0, decimals) for one in simulate(30, seed=11, decimals=2).readings()]
    stack = stack_readings(class_)
    assert np.all(stack.time_step_s == 1.0)
    assert find_alike(stack) == []
