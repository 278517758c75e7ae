"""What was decided holds after the class was closed and opened again; nothing is lost unsaid."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from markbench.model import Decision
from markbench.session import Session
from markbench.session.texts import Text

# Times are 2π√(L/9.81) for ten swings, rounded; an invented learner.
TABLE = "Length / cm,Time of 10 swings / s\n20,8.97\n30,10.99\n40,12.69\n50,14.18\n60,15.54\n"
LEARNER, FILE, OTHER = "aino", "Aino Example/readings.csv", "loose.csv"


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    (tmp_path / "class_list.csv").write_text(f"id,name\n{LEARNER},Aino Example\n")
    (tmp_path / "Aino Example").mkdir()
    (tmp_path / FILE).write_text(TABLE)
    (tmp_path / OTHER).write_text(TABLE.replace("15.54", "15.61"))
    opened = Session.open(tmp_path, "T. Teacher")
    yield opened
    opened.close()


def first(session: Session) -> str:
    return session.rubric.criteria[0].id


def wrote(session: Session) -> None:
    text = Text(("Your line is {g_fit} steep.", "My own words."), ("A sentence left out.",))
    session.set_text(LEARNER, first(session), text)


def wrote_then_accepted(session: Session) -> None:
    wrote(session)
    session.accept(LEARNER, first(session))


def corrected(session: Session) -> None:
    table = session.portfolio(LEARNER).table
    assert table is not None
    session.correct(LEARNER, table.readings[0].timings[0].source, "8.79")


COMMANDS: tuple[Callable[[Session], None], ...] = (
    wrote,
    wrote_then_accepted,
    corrected,
    lambda s: s.set_feedback(LEARNER, first(s), "Words typed at once."),
    lambda s: s.accept(LEARNER),
    lambda s: s.set_level(LEARNER, first(s), s.rubric.criteria[0].levels[0].name, "by eye"),
    lambda s: s.set_note(LEARNER, "Ask her about the thread."),
    lambda s: s.settle_owner(OTHER, LEARNER),
    lambda s: s.set_piece_kind(FILE, "readings"),
    lambda s: s.set_piece_status(LEARNER, FILE, "again"),
    lambda s: s.type_readings(LEARNER, [{"length_m": 0.2, "swings": 10, "timings_s": [8.9]}]),
    lambda s: s.point_at_columns(FILE, {"length": "A", "timings": ["B"]}),
    lambda s: s.agree(LEARNER, "half_swings"),
    lambda s: s.extend(LEARNER, dt.date(2026, 12, 4)),
)


@pytest.mark.parametrize("command", COMMANDS)
def test_what_was_decided_is_found_again(
    session: Session, tmp_path: Path, command: Callable[[Session], None]
) -> None:
    command(session)
    held = {key: one.value for key, one in session.state.items()}
    assert held
    session.close()
    again = Session.open(tmp_path, "T. Teacher")
    try:
        assert {key: one.value for key, one in again.state.items()} == held
        assert not [p for p in again.work.problems if "cannot use" in str(p.message)]
    finally:
        again.close()


def test_her_own_sentence_is_in_the_text_after_opening(session: Session, tmp_path: Path) -> None:
    wrote(session)
    session.close()
    again = Session.open(tmp_path, "T. Teacher")
    assert "My own words." in again.feedback(LEARNER, first(again))
    again.close()


def test_what_could_not_be_read_back_is_refused_at_once(session: Session) -> None:
    with pytest.raises(ValueError, match="kind note"):
        session.decide(Decision("note", LEARNER, "", {"not": "words"}))
    assert not session.history()


def test_an_odd_entry_is_told_without_what_it_says(session: Session, tmp_path: Path) -> None:
    private = Decision(
        "note", LEARNER, "", {"private": "words"}, who="X", at=dt.datetime.now(dt.UTC)
    )
    session._journal.append([private])
    session.close()
    again = Session.open(tmp_path, "T. Teacher")
    told = " ".join(str(problem.message) for problem in again.work.problems)
    again.close()
    assert "entry 1, note" in told
    assert "private" not in told
