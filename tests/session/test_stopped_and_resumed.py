"""Reading a class can be stopped anywhere; begun again, it ends where it would have ended."""

from __future__ import annotations

import random
from pathlib import Path

import pytest

from markbench.evidence import class_look
from markbench.evidence.cache import Cache
from markbench.evidence.photos import PhotoLook
from markbench.evidence.video.judge import SwingMeasurement
from markbench.session import Session
from markbench.session.evidence import look
from markbench.session.report import class_report

READINGS = "Length / cm,10T / s,10T / s\n" + "".join(
    # T = 2π√(L/g) at g = 9.81 m/s², rounded as a stopwatch shows it.
    f"{length_cm},{time_s},{time_s + 0.07:.2f}\n"
    for length_cm, time_s in ((20, 8.97), (30, 10.99), (40, 12.69), (50, 14.18), (60, 15.54))
)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    root = tmp_path / "class"
    root.mkdir()
    rows = ["id,name"]
    for number in range(12):
        rows.append(f"L{number:02d},Learner{number} Invented")
        own = root / f"Learner{number} Invented"
        own.mkdir()
        (own / "readings.csv").write_text(READINGS.replace("9.04", f"9.{number:02d}"))
        (own / "setup.jpg").write_bytes(b"photo %d" % number)
        (own / "swing video.mp4").write_bytes(b"film %d" % number)
    (root / "class_list.csv").write_text("\n".join(rows))
    return root


class StopAt:
    """Says stop at the nth time of asking, and from then on."""

    def __init__(self, number: int) -> None:
        self.left = number

    def __call__(self) -> bool:
        self.left -= 1
        return self.left < 0


def opened(folder: Path, stop: StopAt | None = None) -> Session:
    return Session.open(folder, "T. Teacher", stop=stop)


def result(session: Session) -> object:
    report = class_report(session)
    return [(one, session.drafts(one.portfolio.learner.id)) for one in report.learners]


def test_a_stopped_reading_says_so_and_the_next_one_ends_as_if_never_stopped(folder: Path):
    session = opened(folder)
    try:
        whole = result(session)
    finally:
        session.close()
    rng = random.Random(6)
    told = 0
    for _ in range(6):
        stopped = opened(folder, StopAt(rng.randrange(0, 16)))
        try:
            text = " ".join(problem.message for problem in stopped.work.problems)
            told += "Reading was stopped" in text
            assert len(stopped.learners) in (0, 12)
            if stopped.learners:
                stopped.set_note(stopped.learners[0].id, "said while the rest was unread")
        finally:
            stopped.close()
    assert told >= 3
    session = opened(folder)
    try:
        if session.learners:
            session.set_note(session.learners[0].id, "")
        assert result(session) == whole
    finally:
        session.close()


class CountingWorker:
    """Stands for the process that looks; remembers what it was shown."""

    shown: list[bytes]

    def __enter__(self) -> CountingWorker:
        return self

    def __exit__(self, *_: object) -> None:
        pass

    def photo(self, data: bytes) -> PhotoLook:
        self.shown.append(data)
        return PhotoLook(None, 0.0, 0.0, None, "not looked at in this test")

    def swing(self, data: bytes) -> SwingMeasurement:
        self.shown.append(data)
        return SwingMeasurement(accepted=False, reason="unreadable", message="nor this")


def test_looking_goes_on_where_it_was_stopped(folder: Path, tmp_path: Path, monkeypatch):
    CountingWorker.shown = []
    monkeypatch.setattr(class_look, "Worker", CountingWorker)
    monkeypatch.setattr(class_look, "Cache", lambda: Cache(tmp_path / "whole"))
    session = opened(folder)
    try:
        everything = look(session.work, folder)
        assert len(CountingWorker.shown) == 24
        CountingWorker.shown.clear()
        monkeypatch.setattr(class_look, "Cache", lambda: Cache(tmp_path / "in parts"))
        rng = random.Random(7)
        for _ in range(5):
            look(session.work, folder, stop=StopAt(rng.randrange(1, 20)))
        assert len(CountingWorker.shown) < 24
        seen = look(session.work, folder)
    finally:
        session.close()
    assert len(CountingWorker.shown) == 24  # nothing was looked at twice
    assert repr(seen) == repr(everything)  # nan is not equal to itself, but reads the same
