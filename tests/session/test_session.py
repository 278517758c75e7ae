"""A class at work: commands, undo, and what a second opening finds."""

import datetime as dt
import math

import pytest

from markbench.model import Decision
from markbench.moderation.records import class_adjustment
from markbench.session import STORE_NAME, Change, Session
from markbench.session.moderating import decide_adjustment

LENGTHS_CM = (20, 30, 40, 50, 60)
SCATTER_S = ((0.06, -0.08), (-0.11, 0.05), (0.02, 0.09), (0.07, -0.04), (-0.06, 0.03))


def table(times=lambda t: t):
    """A learner's csv with T = 2π√(L/g) at g = 9.81 and scatter written down by hand."""
    lines = ["Length L / cm,t1 / s for 10 swings,t2 / s"]
    for cm, scatter in zip(LENGTHS_CM, SCATTER_S, strict=True):
        law = 20 * math.pi * math.sqrt(cm / 981)
        lines.append(f"{cm}," + ",".join(f"{times(law + e):.2f}" for e in scatter))
    return "\n".join(lines) + "\n"


@pytest.fixture
def folder(tmp_path):
    root = tmp_path / "Class 9Z"
    for name, text in (
        ("Ada Invented", table()),
        ("Ben Made-Up", table(lambda t: t / 2 + 0.03)),
    ):
        (root / name).mkdir(parents=True)
        (root / name / "readings.csv").write_text(text, "utf-8")
    (root / "stray table.csv").write_text(table(lambda t: t + 0.2), "utf-8")
    (root / "class_list.csv").write_text(
        "id,name\n1,Ada Invented\n2,Ben Made-Up\n3,Cleo Fabricated\n", "utf-8"
    )
    (root / "brief.toml").write_text("evidence = []\n[place]\nlatitude_deg = 50.0\n", "utf-8")
    return root


@pytest.fixture
def session(folder):
    opened = Session.open(folder, "T. Teacher")
    yield opened
    opened.close()


def reopened(folder):
    return Session.open(folder, "T. Teacher")


def test_everyone_of_the_class_list_is_there(session):
    assert [learner.name for learner in session.learners] == [
        "Ada Invented",
        "Ben Made-Up",
        "Cleo Fabricated",
    ]
    assert len(session.analysis("1").rows) == 5
    assert session.portfolio("3").table is None


def test_a_draft_is_no_mark_until_accepted(session):
    criterion = session.rubric.criteria[0].id
    assert session.draft("1", criterion).marks is not None
    assert session.mark("1", criterion) is None
    assert session.total("1") is None
    session.accept("1", criterion)
    mark = session.mark("1", criterion)
    assert mark is not None
    assert (mark.by, mark.level) == ("T. Teacher", session.draft("1", criterion).level)
    assert mark.at.tzinfo is not None
    session.accept("1")
    assert session.total("1") == sum(d.marks or 0 for d in session.drafts("1"))


def test_marks_and_texts_survive_reopening(session, folder):
    criterion = session.rubric.criteria[0]
    lowest = min(criterion.levels, key=lambda level: level.marks)
    session.set_feedback("1", criterion.id, "Measure the second length again.")
    session.set_level("1", criterion.id, lowest.name, why="seen in class")
    session.set_note("1", "was ill")
    session.close()
    again = reopened(folder)
    mark = again.mark("1", criterion.id)
    assert mark is not None
    assert (mark.level, mark.feedback) == (lowest.name, "Measure the second length again.")
    assert again.value("note", "1") == "was ill"
    assert [d.why for d in again.history("1") if d.kind == "mark"] == ["seen in class"]
    again.close()


def test_an_unknown_level_is_refused_with_its_names(session):
    criterion = session.rubric.criteria[0]
    with pytest.raises(ValueError, match=criterion.levels[0].name):
        session.set_level("1", criterion.id, "Splendid")


def test_undo_and_redo_over_everything(session):
    criteria = [c.id for c in session.rubric.criteria]
    session.accept("1")
    session.set_feedback("1", criteria[0], "First text.")
    session.set_feedback("1", criteria[0], "Second text.")
    session.set_note("1", "private")
    session.undo()
    assert session.value("note", "1") is None
    session.undo()
    assert session.feedback("1", criteria[0]) == "First text."
    session.undo()
    session.undo()
    assert session.marks("1") == {}
    assert not session.can_undo
    for _ in range(4):
        session.redo()
    assert session.feedback("1", criteria[0]) == "Second text."
    assert session.value("note", "1") == "private"
    assert session.total("1") is not None
    assert not session.can_redo


def test_a_new_step_ends_redoing(session):
    session.set_note("1", "a")
    session.undo()
    session.set_note("1", "b")
    assert not session.can_redo


def test_taking_back_is_a_decision_of_its_own(session):
    session.set_note("1", "a")
    session.undo()
    kept = session.history("1")
    assert [(d.value, d.before, d.undoes) for d in kept] == [("a", None, None), (None, "a", 1)]


def test_what_comes_back_has_the_reason_that_it_had(session):
    decide_adjustment(session, "adjust", "severe", 1.0)
    decide_adjustment(session, "adjust", "not that severe", 0.5)
    session.undo()
    assert class_adjustment(session.state).why == "severe"
    session.redo()
    assert class_adjustment(session.state).why == "not that severe"


def test_saying_the_same_twice_decides_once(session):
    session.set_note("1", "a")
    session.set_note("1", "a")
    assert len(session.history("1")) == 1


def test_a_corrected_reading_recomputes_and_keeps_the_original(session, folder):
    before = session.analysis("1").line
    timing = session.portfolio("1").table.readings[4].timings[0]
    session.correct("1", timing.source, "17.00")
    table_now = session.portfolio("1").table
    corrected = table_now.readings[4].timings[0]
    assert corrected.time_s == 17.0
    assert corrected.source.raw == timing.source.raw
    assert session.analysis("1").line.g < before.g
    session.undo()
    assert session.analysis("1").line.g == before.g
    original = (folder / "Ada Invented" / "readings.csv").read_text("utf-8")
    assert original == table()


def test_a_stray_table_can_be_given_an_owner_and_taken_back(session):
    (stray,) = [p.file for p in session.work.unowned if p.kind == "readings"]
    session.settle_owner(stray, "3")
    assert len(session.analysis("3").rows) == 5
    assert session.portfolio("3").pieces[0].match.by == "teacher"
    session.undo()
    assert session.portfolio("3").table is None


def test_typed_readings_stand_in_for_a_table(session, folder):
    rows = [
        {"length_m": cm / 100, "swings": 10, "timings_s": [20 * math.pi * math.sqrt(cm / 981)]}
        for cm in LENGTHS_CM
    ]
    session.type_readings("3", rows)
    assert session.analysis("3").line.g == pytest.approx(9.81)
    session.close()
    again = reopened(folder)
    assert again.analysis("3").line.g == pytest.approx(9.81)
    again.close()


def test_half_swings_are_named_and_agreeing_is_heard_in_the_feedback(session):
    diagnosis = session.diagnosis("2")
    assert diagnosis.explanations[0].slip == "half_swings"
    before = [d.feedback for d in session.drafts("2")]
    session.agree("2", "half_swings")
    assert session.facts("2")["agreed_slip"] == "half_swings"
    assert [d.feedback for d in session.drafts("2")] != before


def test_an_untimed_row_does_not_shift_the_questioned_cells(session):
    rows = [{"length_m": 0.1, "swings": 10, "timings_s": []}] + [
        {"length_m": cm / 100, "swings": 10, "timings_s": [t, t + 0.1]}
        for cm in LENGTHS_CM
        for t in [20 * math.pi * math.sqrt(cm / 981)]
    ]
    # One timing of the fourth row (40 cm, after the untimed one) runs a swing short.
    rows[3]["timings_s"][1] *= 0.9
    session.type_readings("3", rows)
    leader = session.diagnosis("3").explanations[0]
    assert leader.slip == "one_timing_miscounted"
    assert leader.cells == ((3, 1),)


def test_listeners_hear_what_changed(session):
    heard: list[Change] = []
    stop = session.listen(heard.append)
    session.set_note("2", "x")
    session.decide(Decision("owner", "", "stray table.csv", "3"))
    stop()
    session.set_note("2", "y")
    assert heard == [Change("2", ("note",)), Change("", ("owner",))]


def test_an_extension_takes_the_question_away(folder):
    brief = folder / "brief.toml"
    brief.write_text("closes = 2020-01-10\n" + brief.read_text("utf-8"), "utf-8")
    session = reopened(folder)
    assert any(f.check == "outside_window" for f in session.findings("1"))
    session.extend("1", dt.date(2999, 1, 1))
    assert not any(f.check == "outside_window" for f in session.findings("1"))
    session.close()


def test_a_second_opening_looks_on(session, folder):
    second = Session.open(folder, "Somebody Else")
    assert second.read_only
    assert "T. Teacher" in second.notice
    with pytest.raises(Exception, match=r"."):
        second.set_note("1", "no")
    assert second.value("note", "1") is None
    second.close()


def test_looking_writes_nothing(folder):
    Session.open(folder, read_only=True).close()
    assert not (folder / STORE_NAME).exists()


def test_no_folder_is_said_plainly(tmp_path):
    with pytest.raises(FileNotFoundError, match="no class folder"):
        Session.open(tmp_path / "nowhere")


def test_a_correction_reads_one_learner_again_and_tells_of_that_one(session, folder, monkeypatch):
    def refuse(*_args, **_kwargs):
        raise AssertionError("the whole class was read again")

    monkeypatch.setattr("markbench.session.session.read_class", refuse)
    heard: list[Change] = []
    session.listen(heard.append)
    others = session.portfolio("2")
    timing = session.portfolio("1").table.readings[4].timings[0]
    session.correct("1", timing.source, "17.00")
    session.type_readings("2", [{"length_m": 0.2, "swings": 10, "timings_s": [9.0, 9.1]}])
    session.type_readings("2", None)
    assert session.portfolio("2") == others
    assert heard == [
        Change("1", ("correction",)),
        Change("2", ("typed",)),
        Change("2", ("typed",)),
    ]
    now = {i: (session.portfolio(i), session.findings(i), session.drafts(i)) for i in "123"}
    session.close()
    monkeypatch.undo()
    again = reopened(folder)
    assert {i: (again.portfolio(i), again.findings(i), again.drafts(i)) for i in "123"} == now
    again.close()


def test_a_table_typed_like_another_s_is_asked_about_on_both_sides(session):
    rows = [
        {
            "length_m": reading.length_m,
            "swings": reading.swings,
            "timings_s": [timing.time_s for timing in reading.timings],
        }
        for reading in session.portfolio("1").table.readings
    ]
    alike = {i: [f for f in session.findings(i) if f.check == "copied"] for i in "12"}
    assert alike == {"1": [], "2": []}
    heard: list[Change] = []
    session.listen(heard.append)
    session.type_readings("2", rows)  # two tables before and after: only the pair is new
    assert {change.learner for change in heard} == {"1", "2"}
    for mine, theirs in (("1", "2"), ("2", "1")):
        (found,) = [f for f in session.findings(mine) if f.check == "copied"]
        assert found.numbers["with"] == theirs
    session.undo()
    assert not any(f.check == "copied" for i in "12" for f in session.findings(i))


def test_listeners_find_the_step_that_can_be_undone(session):
    could: list[tuple[bool, bool]] = []
    session.listen(lambda _change: could.append((session.can_undo, session.can_redo)))
    session.set_note("1", "a")
    session.undo()
    session.redo()
    assert could == [(True, False), (False, True), (True, False)]


def test_a_step_that_could_not_be_written_can_still_be_taken_back(session, monkeypatch):
    session.set_note("1", "a")

    def full(_decisions):
        raise OSError("no room on the disk")

    with monkeypatch.context() as broken:
        broken.setattr(session._journal, "append", full)
        with pytest.raises(OSError, match="no room"):
            session.undo()
    assert session.can_undo
    session.undo()
    assert session.value("note", "1") is None
