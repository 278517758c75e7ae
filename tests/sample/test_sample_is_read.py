"""Intake reads the sample class as the learners typed it, against the recorded truth."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest

from markbench.intake.folder import read_class
from markbench.model import ClassWork
from simulation.sample_learners import PUPILS

FOLDER = Path(__file__).parents[2] / "sample_class"
TRUTH = tomllib.loads(Path(__file__).with_name("truth.toml").read_text(encoding="utf-8"))
DOUBTFUL = "24129"  # her table lies under half a name, which fits two


@pytest.fixture(scope="module")
def work() -> ClassWork:
    return read_class(FOLDER)


def readable() -> list[str]:
    """Ids of learners whose table can be read and is theirs beyond doubt."""
    return [id_ for id_, facts in TRUTH.items() if facts["readable"] and id_ != DOUBTFUL]


@pytest.mark.parametrize("id_", readable())
def test_readings_are_those_typed(work, id_):
    facts, table = TRUTH[id_], work.portfolios[id_].table
    assert table is not None
    # Lengths pass through metres: half the last digit typed is tolerance enough.
    got = [reading.length_m * 100 for reading in table.readings]
    assert got == pytest.approx(facts["lengths_cm"], abs=0.005)
    times = [[timing.time_s for timing in reading.timings] for reading in table.readings]
    assert len(times) == len(facts["times_s"])
    for mine, theirs in zip(times, facts["times_s"], strict=True):
        assert mine == pytest.approx(theirs, abs=5e-4)
    assert {reading.swings for reading in table.readings} == {facts["swings"]}


@pytest.mark.parametrize("id_", TRUTH)
def test_evidence_is_found_or_missed(work, id_):
    here = {piece.kind for piece in work.portfolios[id_].pieces}
    wanted = {"readings", "setup_photo", "selfie", "swing_video"} - set(TRUTH[id_]["missing"])
    if id_ == DOUBTFUL:
        wanted.discard("readings")
    assert here - {"report"} == wanted


def test_every_learner_is_in_the_class(work):
    assert [(learner.id, learner.name) for learner in work.learners] == [
        (pupil.id, pupil.name) for pupil in PUPILS
    ]


def test_half_a_name_is_left_to_the_teacher(work):
    (doubt,) = work.doubts
    assert doubt.piece.file.endswith("S Lindqval readings.csv")
    assert {match.learner for match in doubt.candidates} == {"24128", "24129"}


def test_what_nobody_owns_is_listed(work):
    unowned = {piece.file for piece in work.unowned}
    assert {"10B.zip!/untitled results.csv", "not claimed/IMG_20260311_174512.jpg"} <= unowned
    assert unowned - {"ABOUT.txt"} == {
        "10B.zip!/untitled results.csv",
        "not claimed/IMG_20260311_174512.jpg",
    }


def test_a_second_hand_in_keeps_the_first(work):
    earlier = {id_: p.earlier for id_, p in work.portfolios.items() if p.earlier}
    assert list(earlier) == ["24116"]
    assert "draft" in earlier["24116"][0].file


def test_only_the_late_one_is_late(work):
    closes = work.brief.closes
    late = [
        id_
        for id_, portfolio in work.portfolios.items()
        if portfolio.handed_in is not None and portfolio.handed_in.date() > closes
    ]
    assert late == ["24112"]
