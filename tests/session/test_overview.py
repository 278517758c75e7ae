"""Findings of the class against counts made by hand on a small invented class."""

import datetime as dt
import math

import pytest

from markbench.model import Decision
from markbench.session import Session
from markbench.session.overview import (
    BREAK,
    drift,
    marks_by_criterion,
    pace_of,
    running_mean,
    spread_of_g,
    teach_again,
    time_per_portfolio,
)

SCATTER_S = ((0.06, -0.08), (-0.11, 0.05), (0.02, 0.09), (0.07, -0.04), (-0.06, 0.03))


def table(times=lambda t: t, lengths=(20, 30, 40, 50, 60)):
    """A csv with T = 2π√(L/g), g = 9.81, and scatter written down by hand."""
    lines = ["Length L / cm,t1 / s for 10 swings,t2 / s"]
    for cm, scatter in zip(lengths, SCATTER_S, strict=False):
        law = 20 * math.pi * math.sqrt(cm / 981)
        lines.append(f"{cm}," + ",".join(f"{times(law + e):.2f}" for e in scatter))
    return "\n".join(lines) + "\n"


@pytest.fixture
def session(tmp_path):
    root = tmp_path / "Class 9Z"
    # Ben and Cleo counted half swings on purpose; Dora has three lengths; Eli nothing.
    tables = {
        "Ada Invented": table(),
        "Ben Made-Up": table(lambda t: t / 2),
        "Cleo Fabricated": table(lambda t: t / 2 + 0.02),
        "Dora Contrived": table(lengths=(20, 40, 60)),
    }
    for name, text in tables.items():
        (root / name).mkdir(parents=True)
        (root / name / "readings.csv").write_text(text, "utf-8")
    names = [*tables, "Eli Imagined"]
    rows = "".join(f"{i},{name}\n" for i, name in enumerate(names, 1))
    (root / "class_list.csv").write_text("id,name\n" + rows, "utf-8")
    (root / "brief.toml").write_text("evidence = []\n[place]\nlatitude_deg = 50.0\n", "utf-8")
    opened = Session.open(root, "T. Teacher")
    yield opened
    opened.close()


def test_what_to_teach_again_names_the_learners_behind_it(session):
    topics = {topic.id: topic for topic in teach_again(session)}
    half = topics["slip:half_swings"]
    assert half.learners == ("2", "3")
    assert half.is_slip
    assert half.agreed == ()
    assert "4" in topics["too_few_lengths"].learners
    counts = [len(topic.learners) for topic in teach_again(session)]
    assert counts == sorted(counts, reverse=True)


def test_working_that_most_did_not_do_is_taught_where_the_rubric_asks_for_it(session):
    """Nobody's table has a column of T²; Eli handed in nothing, Dora a report beside it."""
    (session.folder / "Dora Contrived" / "report.txt").write_text("T² against L.", "utf-8")
    session.close()
    opened = Session.open(session.folder, "T. Teacher")
    first = teach_again(opened)[0]
    opened.close()
    assert (first.title, first.learners) == ("T² not worked out", ("1", "2", "3"))
    brief = session.folder / "brief.toml"
    brief.write_text('rubric = "own.toml"\n' + brief.read_text("utf-8"), "utf-8")
    (session.folder / "own.toml").write_text(
        'title = "Own"\n[[criterion]]\nid = "readings"\ntitle = "Readings"\n'
        '[[criterion.level]]\nname = "Some"\nmarks = 1\ndescriptor = "Some."\n'
        'when = "readings_given"\n'
        '[[criterion.level]]\nname = "None"\nmarks = 0\ndescriptor = "None."\n',
        "utf-8",
    )
    opened = Session.open(session.folder, "T. Teacher")
    ids = {topic.id for topic in teach_again(opened)}
    opened.close()
    assert "no_working" not in ids


def test_an_agreed_slip_counts_even_where_another_was_guessed(session):
    session.agree("2", "count_over")
    topics = {topic.id: topic for topic in teach_again(session)}
    assert topics["slip:half_swings"].learners == ("3",)
    assert topics["slip:count_over"].agreed == ("2",)


def test_what_concerns_one_learner_alone_is_not_taught(session):
    session.agree("1", "made_by_hand")
    ids = {topic.id for topic in teach_again(session)}
    assert not ids & {"slip:made_by_hand", "copied", "missing_piece", "outside_window"}


def test_spread_of_g_holds_everyone_once(session):
    spread = spread_of_g(session)
    assert spread.without == ("5",)
    assert {one.learner for one in spread.estimates} == {"1", "2", "3", "4"}
    gs = [one.g for one in spread.estimates]
    assert gs == sorted(gs)
    # Half the time at the same length: four times the g (T² ∝ 1/g), within the scatter.
    by = {one.learner: one.g for one in spread.estimates}
    assert by["2"] / by["1"] == pytest.approx(4, rel=0.1)
    assert spread.holding == sum(o.low95 <= spread.local.g <= o.high95 for o in spread.estimates)
    assert spread.holding >= 2


def test_every_learner_stands_at_one_level_of_each_criterion(session):
    session.accept("1", session.rubric.criteria[0].id)
    for row in marks_by_criterion(session):
        everybody = [*row.neither]
        for level in row.levels:
            everybody += [*level.marked, *level.drafted]
        assert sorted(everybody) == ["1", "2", "3", "4", "5"]
    first = marks_by_criterion(session)[0]
    assert [level.marked for level in first.levels if level.marked] == [("1",)]


def test_drift_tells_marks_from_drafts_in_the_order_of_marking(session):
    criterion = session.rubric.criteria[0]
    best, worst = criterion.levels[0], criterion.levels[-1]
    session.accept("2", criterion.id)
    session.set_level("1", criterion.id, worst.name)
    session.set_level("3", criterion.id, worst.name)
    session.set_level("3", criterion.id, best.name)  # changed her mind: the last one counts
    marks = drift(session)
    assert [one.learner for one in marks] == ["2", "1", "3"]
    assert marks[0].difference == 0
    assert marks[1].difference == worst.marks - session.draft("1", criterion.id).marks
    assert marks[2].difference == best.marks - session.draft("3", criterion.id).marks
    session.clear_mark("1", criterion.id)
    assert [one.learner for one in drift(session)] == ["2", "3"]


def test_running_mean_by_hand():
    assert running_mean([1, 2, 3], run=5) == []
    assert running_mean([0, 3, 3, 0], run=2) == [(1.5, 1.5), (2.5, 3.0), (3.5, 1.5)]


def at(minutes):
    return dt.datetime(2026, 3, 1, 20, tzinfo=dt.UTC) + dt.timedelta(minutes=minutes)


def decided(learner, minutes, who="T"):
    return Decision("mark", learner, "c", {}, who=who, at=at(minutes))


def test_time_between_decisions_counts_for_the_later_one_and_breaks_for_nobody():
    least = BREAK.total_seconds() / 60
    decisions = [
        decided("a", 0),  # the first takes no time
        decided("a", 2),
        decided("b", 5),
        decided("b", 5 + least + 1),  # after a break
        decided("a", 5 + least + 2),
        decided("a", 5 + least + 2.5, who="U"),  # somebody else beside her
        decided("gone", 5 + least + 3),
    ]
    paces = {one.learner: one for one in pace_of(decisions, {"a", "b"})}
    assert paces["a"].seconds == 60 * (2 + 1)
    assert paces["b"].seconds == 60 * 3
    assert paces["a"].decisions == 4
    assert set(paces) == {"a", "b"}


def test_nothing_decided_takes_no_time(session):
    assert time_per_portfolio(session) == ()
    assert drift(session) == ()
