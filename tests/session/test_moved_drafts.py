"""A mark whose draft has changed since it was given: told, taken or kept, and never silent."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from markbench.model import Decision
from markbench.session import STORE_NAME, Session
from markbench.session.going_out import write_out
from markbench.session.moderating import before_signing, sign_off
from markbench.session.results import results
from markbench.session.since_marked import let_stand

HEAD = "Length / cm,t1 / s for 10 swings,t2 / s\n"
# Times are 2π√(L/9.81) for ten swings, rounded; the last timing is typed wrongly.
ROWS = "20,8.97,8.95\n30,10.99,11.02\n40,12.69,12.66\n50,14.18,14.20\n60,15.54,25.56\n"


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    (tmp_path / "Aino Example").mkdir()
    (tmp_path / "Aino Example" / "readings.csv").write_text(HEAD + ROWS)
    (tmp_path / "brief.toml").write_text('rubric = "short"\nevidence = []\n')
    opened = Session.open(tmp_path, "T. Teacher")
    yield opened
    opened.close()


def aino(session: Session) -> str:
    return session.learners[0].id


def correct(session: Session, text: str | None = "15.56") -> None:
    table = session.portfolio(aino(session)).table
    assert table is not None
    session.correct(aino(session), table.readings[-1].timings[-1].source, text)


def test_a_mark_given_before_a_correction_waits_for_a_person(session: Session) -> None:
    learner = aino(session)
    session.accept(learner)
    was = session.mark(learner, "result")
    assert was is not None
    assert session.progress(learner) == (5, 5)
    correct(session)
    moved = session.moved_draft(learner, "result")
    assert moved is not None
    assert (moved.was, moved.why) == (was.level, "readings")
    assert moved.level == session.draft(learner, "result").level != was.level
    now = session.mark(learner, "result")
    assert now is not None
    assert (now.level, now.at) == (was.level, was.at)  # a mark is a person's
    assert session.progress(learner) == (4, 5)
    correct(session, None)
    assert session.progress(learner) == (5, 5)


def test_the_new_draft_is_taken_with_its_text_or_the_mark_is_kept(session: Session) -> None:
    learner = aino(session)
    session.accept(learner)
    was = session.mark(learner, "result")
    assert was is not None
    correct(session)
    session.keep_mark(learner, "result")
    kept = session.mark(learner, "result")
    assert kept is not None
    assert kept.level == was.level
    assert session.moved_draft(learner, "result") is None
    session.undo()
    assert session.moved_draft(learner, "result") is not None
    session.accept(learner, "result")
    taken, draft = session.mark(learner, "result"), session.draft(learner, "result")
    assert taken is not None
    assert (taken.level, taken.marks) == (draft.level, draft.marks)
    assert taken.feedback == draft.feedback
    assert session.progress(learner) == (5, 5)


def test_what_is_no_longer_true_is_struck_and_not_said(session: Session) -> None:
    learner = aino(session)
    session.accept(learner)
    before = session.text(learner, "result").pieces
    assert "{" not in session.feedback(learner, "result")
    correct(session)
    struck = session.struck(learner, "result")
    assert struck
    assert struck <= set(before)
    assert session.text(learner, "result").pieces == before  # to be seen, struck
    told = session.feedback(learner, "result")
    assert "{" not in told
    for piece in struck:
        assert piece.split("{")[0].strip() not in told
    own = ("Well done, Aino.", *before)
    session.set_text(learner, "result", session.text(learner, "result").with_piece(own[0], 0))
    session.accept(learner, "result")  # what she wrote stays hers
    assert session.text(learner, "result").pieces == tuple(x for x in own if x not in struck)


def test_a_draft_that_moves_to_the_mark_asks_for_nothing(session: Session) -> None:
    learner = aino(session)
    correct(session)
    right = session.draft(learner, "result").level
    assert right is not None
    correct(session, None)
    session.set_level(learner, "result", right)  # she saw it before it was corrected
    correct(session)
    assert session.moved_draft(learner, "result") is None


def test_the_same_is_known_at_the_next_opening_and_told_when_it_goes_out(
    session: Session, tmp_path: Path
) -> None:
    learner = aino(session)
    session.accept(learner)
    correct(session)
    went = write_out(session, tmp_path / "out")
    assert (went.unfinished, went.moved) == (1, 1)
    assert before_signing(session, results(session)).moved == (learner,)
    session.close()
    again = Session.open(tmp_path, "T. Teacher")
    assert again.moved_draft(learner, "result") is not None
    again.close()


def test_marks_of_an_earlier_version_stand(session: Session) -> None:
    learner = aino(session)
    session.accept(learner)
    held = dict(session.state["mark", learner, "result"].value)
    del held["drafted"]
    session.decide(Decision("mark", learner, "result", held))
    correct(session)
    assert session.moved_draft(learner, "result") is None
    assert (session.folder / STORE_NAME).exists()


def test_marks_that_were_let_stand_or_signed_ask_for_nothing(session: Session) -> None:
    learner = aino(session)
    session.accept(learner)
    correct(session)
    let_stand(session, learner)
    assert session.moved_draft(learner, "result") is None
    correct(session, None)
    correct(session)  # a later correction asks again
    assert session.moved_draft(learner, "result") is not None
    sign_off(session, despite_open=True)
    assert session.moved_draft(learner, "result") is None
