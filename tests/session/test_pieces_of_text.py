"""The text to a learner as pieces: moved, left out, and with numbers that follow."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from markbench.model import Decision
from markbench.rubric.pieces import joined, open_places, pieces_of, runs
from markbench.session import Session
from markbench.session.report import class_report
from markbench.session.texts import Text, to_bring_back

HEAD = "Length / cm,Time of 10 swings / s\n"
# Times are 2π√(L/9.81) for ten swings, rounded; invented learners.
ROWS = "20,8.97\n30,10.99\n40,12.69\n50,14.18\n60,15.54\n"


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    for name, text in (("Aino Example", HEAD + ROWS), ("Bodil Sample", None)):
        (tmp_path / name).mkdir()
        if text is None:
            (tmp_path / name / "notes.txt").write_text("nothing yet")
        else:
            (tmp_path / name / "readings.csv").write_text(text)
    opened = Session.open(tmp_path, "T. Teacher")
    yield opened
    opened.close()


def aino(session: Session) -> str:
    return next(one.id for one in session.learners if "Aino" in one.name)


def longest(session: Session, learner: str, text: str | None) -> None:
    """Read another length in the last row."""
    table = session.portfolio(learner).table
    assert table is not None
    session.correct(learner, table.readings[-1].source, text)


def test_the_pieces_of_a_draft_read_as_its_sentences(session: Session) -> None:
    for learner in session.learners:
        for draft in session.drafts(learner.id):
            facts = session.facts(learner.id)
            told = tuple("".join(run.text for run in runs(one, facts)) for one in draft.pieces)
            assert told == draft.sentences
            assert session.text(learner.id, draft.criterion).pieces == draft.pieces


def test_moving_leaving_out_and_bringing_back_are_decisions(session: Session) -> None:
    learner = aino(session)
    was = session.text(learner, "readings")
    first, second = was.pieces[:2]
    session.set_text(learner, "readings", was.moved(0, 1))
    assert session.text(learner, "readings").pieces[:2] == (second, first)
    session.set_text(learner, "readings", session.text(learner, "readings").without(0))
    now = session.text(learner, "readings")
    assert second not in now.pieces
    assert second in to_bring_back(now, session.draft(learner, "readings"))
    session.set_text(learner, "readings", now.with_piece(second, 0))
    assert session.text(learner, "readings").pieces[:2] == (second, first)
    for _ in range(3):
        session.undo()
    assert session.text(learner, "readings") == was
    assert session.feedback(learner, "readings") == session.draft(learner, "readings").feedback


def test_numbers_follow_a_correction_also_once_it_is_marked(session: Session) -> None:
    learner = aino(session)
    session.set_text(learner, "readings", Text(("Your longest was {longest}.",)))
    assert session.feedback(learner, "readings") == "Your longest was 60.0 cm."
    session.accept(learner, "readings")
    longest(session, learner, "61")
    assert session.feedback(learner, "readings") == "Your longest was 61.0 cm."
    assert session.marks(learner)["readings"].feedback == "Your longest was 61.0 cm."
    longest(session, learner, None)
    assert session.feedback(learner, "readings") == "Your longest was 60.0 cm."


def test_an_accepted_draft_follows_too_and_stays_when_opened_again(
    session: Session, tmp_path: Path
) -> None:
    learner = aino(session)
    session.accept(learner, "processing")
    before = session.feedback(learner, "processing")
    longest(session, learner, "61")
    after = session.feedback(learner, "processing")
    assert "60.0" in before
    assert "61.0" in after
    facts, pieces = session.facts(learner), session.text(learner, "processing").pieces
    assert after == " ".join("".join(run.text for run in runs(one, facts)) for one in pieces)
    session.close()
    again = Session.open(tmp_path, "T. Teacher")
    assert again.feedback(learner, "processing") == after
    again.close()


def test_words_of_an_earlier_journal_read_as_they_stood(session: Session) -> None:
    learner = aino(session)
    mark = {"level": "Begun", "marks": 1, "feedback": "As marked."}
    session.decide(Decision("mark", learner, "result", mark))
    assert session.feedback(learner, "result") == "As marked."
    session.decide(Decision("feedback", learner, "result", "One.\n\nTwo, {slope"))
    assert session.feedback(learner, "result") == "One.\n\nTwo, {slope"
    assert session.text(learner, "result").pieces == ("One.", "", "", "Two, {slope")


def test_the_journal_keeps_the_words_of_that_time_beside_the_pieces(session: Session) -> None:
    learner = aino(session)
    session.set_text(learner, "readings", Text(("{lengths} lengths.",), ("Gone.",)))
    kept = session.value("feedback", learner, "readings")
    assert kept == {"text": "5 lengths.", "pieces": ["{lengths} lengths."], "out": ["Gone."]}


def test_what_is_not_known_stays_open_and_is_named(session: Session) -> None:
    learner = next(one.id for one in session.learners if "Bodil" in one.name)
    session.set_text(learner, "readings", Text(("At {shortest} and {nonsense}.",)))
    assert session.feedback(learner, "readings") == "At {shortest} and {nonsense}."
    # Nobody has read the notes: no level is drafted.
    session.set_level(learner, "readings", "Absent")
    told = class_report(session).not_sent()
    assert len(told) == 1
    assert "Bodil Sample, “Raw readings”: {shortest}, {nonsense} are still" in told[0]


@given(st.text(alphabet="ab \n{}", max_size=12))
def test_plain_text_becomes_pieces_and_back(text: str) -> None:
    assert joined(pieces_of(text)) == text


@given(st.integers(-2, 5), st.integers(-2, 5))
def test_moving_loses_nothing(at: int, to: int) -> None:
    text = Text(("a", "b", "c"))
    moved = text.moved(at, to)
    assert sorted(moved.pieces) == ["a", "b", "c"]
    if 0 <= at < 3 and 0 <= to < 3:
        assert moved.pieces[to] == text.pieces[at]


def test_open_places_are_each_named_once() -> None:
    assert open_places("{a} and {a}, {b_2}; {not one}") == ("{a}", "{b_2}")
