"""An explanation that is agreed with answers the questions it explains, and no others."""

import math
from collections.abc import Iterator
from pathlib import Path

import pytest

from markbench.checks import Case
from markbench.checks.diagnosis.answers import answered
from markbench.model import Concern, Finding
from markbench.session import Session
from markbench.session.overview import teach_again

# 2π√(L/9.81) for ten swings with scatter written down by hand.
LAW = {cm: 20 * math.pi * math.sqrt(cm / 981) for cm in (20, 30, 40, 50, 60)}
SCATTER_S = {
    "Ada": ((0.06, -0.08), (-0.11, 0.05), (0.02, 0.09), (0.07, -0.04), (-0.06, 0.03)),
    "Ben": ((-0.03, 0.12), (0.09, -0.01), (-0.08, 0.04), (0.01, -0.13), (0.05, 0.1)),
    "Cleo": ((0.11, 0.02), (-0.05, -0.09), (0.07, -0.06), (-0.1, 0.08), (0.0, -0.03)),
}
HEAD = "Length L / cm,t1 / s for 10 swings,t2 / s\n"


def table(name, times) -> str:
    lines = []
    for (cm, law), scatter in zip(LAW.items(), SCATTER_S[name], strict=True):
        written = (f"{time:.2f}" for time in times(cm, [law + e for e in scatter]))
        lines.append(f"{cm}.0," + ",".join(written))
    return HEAD + "\n".join(lines) + "\n"


def half(_cm, times):
    return [t / 2 for t in times]


def half_and_odd(cm, times):
    """Half swings counted; besides, one timing at 40 cm stopped late."""
    first, second = half(cm, times)
    return [first, second + (0.7 if cm == 40 else 0.0)]


def typed(cm, times):
    return [times[0], times[1] + (9.0 if cm == 40 else 0.0)]


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    for name, times in (("Ada", half), ("Ben", half_and_odd), ("Cleo", typed)):
        (tmp_path / name).mkdir()
        (tmp_path / name / "readings.csv").write_text(table(name, times))
    (tmp_path / "class_list.csv").write_text("id,name\n1,Ada\n2,Ben\n3,Cleo\n")
    (tmp_path / "brief.toml").write_text('rubric = "short"\n[place]\nlatitude_deg = 50.0\n')
    opened = Session.open(tmp_path, "T. Teacher")
    yield opened
    opened.close()


def asked(session: Session, learner: str) -> set[str]:
    return {f.check for f in session.findings(learner) if not f.explained_by}


def test_agreeing_answers_the_questions_that_the_slip_raises(session: Session) -> None:
    slip = session.diagnosis("1").explanations[0].slip
    assert slip == "half_swings"
    assert {"slip", "period_off_law", "g_implausible", "missing_piece"} <= asked(session, "1")
    session.agree("1", slip)
    assert asked(session, "1") == {"missing_piece"}
    explained = [f for f in session.findings("1") if f.explained_by]
    assert {f.explained_by for f in explained} == {"half_swings"}
    assert all(f.concern == Concern.NOTE for f in explained)
    topics = {topic.id for topic in teach_again(session)}
    assert "slip:half_swings" in topics
    session.agree("1", None)
    assert "g_implausible" in asked(session, "1")


def test_a_question_of_its_own_stays_open(session: Session) -> None:
    assert "timing_departs" in asked(session, "2")
    session.agree("2", "half_swings")
    left = asked(session, "2")
    assert "timing_departs" in left
    assert "slip" not in left


def test_one_cell_put_right_answers_what_that_cell_raised(session: Session) -> None:
    slip = session.diagnosis("3").explanations[0].slip
    assert {"timing_departs", "off_the_line"} <= asked(session, "3")
    session.agree("3", slip)
    assert asked(session, "3") == {"missing_piece"}


def test_praise_that_a_slip_contradicts_is_held_back_while_it_is_open_or_agreed(
    session: Session,
) -> None:
    def praised() -> bool:
        told = session.draft("1", "readings").feedback
        return "Counting 10" in told or "timing 10 swings" in told

    assert not praised()
    session.agree("1", "honest")
    assert praised()
    session.agree("1", "half_swings")
    assert not praised()
    assert "there and back" in session.feedback("1", "result")


@pytest.mark.parametrize(
    "filmed_s, is_answered",
    # At 40 cm a swing takes 2π√(0.4/9.81) = 1.269 s, and half as long as it was counted; no
    # length of the table swings in 1.02 s, with half swings or without.
    [(1.269, True), (1.02, False)],
)
def test_a_film_that_the_slip_brings_together_with_the_table_is_no_question_any_more(
    session: Session, filmed_s: float, is_answered: bool
) -> None:
    case = Case(session.portfolio("1"), session.analysis("1"), session.brief)
    film = Finding(
        "video_period", "1", "The film takes longer.", Concern.LOOK,
        {"period_s": filmed_s, "u_period_s": 0.004},
    )  # fmt: skip
    explanations = {e.slip: e for e in session.diagnosis("1").explanations}
    (found,) = answered(case, [film], explanations["half_swings"])
    assert bool(found.explained_by) is is_answered


def test_what_would_settle_it_is_told_in_whole_sentences(tmp_path: Path) -> None:
    (tmp_path / "Dora").mkdir()  # times on a line of their own: nobody can say by which slip
    rows = "20.0,9,9\n30.0,11,11\n40.0,13,13\n50.0,15,15\n60.0,17,17\n"
    (tmp_path / "Dora" / "readings.csv").write_text(HEAD + rows)
    session = Session.open(tmp_path, "T. Teacher")
    pairs = session.diagnosis(session.learners[0].id).indistinct
    session.close()
    assert any(pair.settle for pair in pairs)
    for words in (told for pair in pairs for told in (pair.sentence, pair.settle) if told):
        assert words[0].isupper()
        assert words.endswith(".")
