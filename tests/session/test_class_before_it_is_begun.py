"""Looking at a folder writes nothing; beginning writes the brief and what was settled."""

import datetime as dt
from dataclasses import replace
from pathlib import Path

import pytest

from markbench.intake.brief_file import brief_keys, parse_brief, read_brief, value_of
from markbench.intake.brief_rules import ALLOWED
from markbench.model import Brief, Late, Place
from markbench.session import STORE_NAME, Session
from markbench.session.brief_effects import doubts, effects
from markbench.session.brief_form import as_raw, as_text, check, way_of
from markbench.session.newclass import NewClass, rubrics_for

NAMES = {"s1": "Aino Example", "s2": "Bodil Sample", "s3": "Cato Instance"}
ROWS = "Length / cm,Time of 10 swings / s\n20,8.97\n30,10.99\n40,12.69\n50,14.18\n60,15.54\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "10A"
    made.mkdir()
    lines = [f"{i},{name}" for i, name in NAMES.items()]
    (made / "class_list.csv").write_text("\n".join(["id,name", *lines]) + "\n")
    for name in list(NAMES.values())[:2]:
        (made / name).mkdir()
        (made / name / "readings.csv").write_text(ROWS)
    (made / "table.csv").write_text(ROWS)
    return made


def everything(folder: Path) -> dict[str, bytes]:
    return {str(p.relative_to(folder)): p.read_bytes() for p in folder.rglob("*") if p.is_file()}


@pytest.fixture
def looked(folder: Path) -> NewClass:
    return NewClass.look(folder)


def test_looking_writes_nothing_and_counts_what_is_there(folder: Path) -> None:
    before = everything(folder)
    new = NewClass.look(folder)
    new.settle_owner("table.csv", "s3")
    assert everything(folder) == before
    new = NewClass.look(folder)
    counts = new.counts()
    assert (counts.learners, counts.with_work, counts.tables_understood) == (3, 2, 2)
    assert counts.pieces["readings"] == 2
    assert (counts.doubts, counts.unowned) == (0, 1)
    assert not new.begun


def test_a_new_class_speaks_the_language_it_is_begun_in(folder: Path) -> None:
    new = NewClass.look(folder, language="de")
    new.begin("T. Teacher")
    brief = Session.open(folder, "T. Teacher").brief
    assert brief.feedback_language == "de"
    assert "Pendel" in brief.title
    # A brief that is there already says so itself.
    assert NewClass.look(folder, language="en").brief.feedback_language == "de"


def test_a_language_without_words_for_learners_leaves_english(folder: Path) -> None:
    assert NewClass.look(folder, language="is").brief.feedback_language == "en"


def test_what_is_settled_reaches_the_learner_and_the_journal(looked: NewClass) -> None:
    looked.settle_owner("table.csv", "s3")
    assert looked.counts().unowned == 0
    assert looked.work.portfolios["s3"].table is not None
    looked.begin("T. Teacher")
    assert looked.begun
    session = Session.open(looked.folder, "T. Teacher")
    try:
        assert session.value("owner", "", "table.csv") == "s3"
        assert session.portfolio("s3").table is not None
        assert session.history()[0].who == "T. Teacher"
    finally:
        session.close()


def test_a_file_of_nobody_is_no_question_any_more(looked: NewClass) -> None:
    looked.settle_owner("table.csv", "")
    assert looked.work.unowned == ()
    assert looked.counts().set_aside == 1
    looked.begin("T. Teacher")
    session = Session.open(looked.folder, "T. Teacher")
    try:
        assert session.work.unowned == session.work.doubts == ()
        assert [piece.file for piece in session.work.set_aside] == ["table.csv"]
        session.settle_owner("table.csv", None)  # brought back, and that undone
        assert [piece.file for piece in session.work.unowned] == ["table.csv"]
        session.undo()
        assert session.work.unowned == ()
    finally:
        session.close()


def test_what_was_settled_is_undone_and_done_again(looked: NewClass) -> None:
    assert not looked.can_undo
    assert not looked.changed
    looked.settle_owner("table.csv", "s3")
    looked.refuse_owner("table.csv", "s3")
    looked.settle_owner("table.csv", "")
    assert looked.changed
    looked.undo()
    assert looked.work.set_aside == ()
    assert looked.counts().unowned == 1
    looked.undo()
    assert looked.work.portfolios["s3"].table is not None
    looked.undo()
    assert not looked.can_undo
    assert not looked.changed
    for _ in range(3):
        looked.redo()
    assert not looked.can_redo
    assert len(looked.work.set_aside) == 1
    looked.undo()
    looked.settle_owner("table.csv", "s1")
    assert not looked.can_redo  # something else was done


def test_a_step_that_cannot_be_read_is_not_settled(
    looked: NewClass, monkeypatch: pytest.MonkeyPatch
) -> None:
    looked.settle_owner("table.csv", "s3")

    def gone(*_: object) -> None:
        raise OSError("the folder is gone")

    monkeypatch.setattr("markbench.session.newclass.read_class", gone)
    for step in (looked.undo, lambda: looked.settle_owner("table.csv", "")):
        with pytest.raises(OSError, match="gone"):
            step()
        assert looked.settled.owners == {"table.csv": "s3"}
        assert looked.can_undo
        assert not looked.can_redo


def test_what_is_not_hers_is_a_question_here_and_in_the_open_class(looked: NewClass) -> None:
    (file,) = (piece.file for piece in looked.work.portfolios["s1"].pieces)
    looked.refuse_owner(file, "s1")
    assert looked.work.portfolios["s1"].pieces == ()
    assert [doubt.piece.file for doubt in looked.work.doubts] == [file]
    looked.begin("T. Teacher")
    session = Session.open(looked.folder, "T. Teacher")
    try:
        assert session.portfolio("s1").pieces == ()
        assert "not from Aino Example" in session.work.doubts[0].why
        session.settle_owner(file, "s2")
        assert session.work.doubts == ()
    finally:
        session.close()


def test_what_does_not_open_is_listed_with_its_owner(folder: Path) -> None:
    (folder / "Aino Example" / "readings.csv").unlink()
    (folder / "Aino Example" / "readings.xlsx").write_bytes(b"PK\3\4 and no more")
    (folder / "stray.zip").write_bytes(b"no zip file")
    (folder / "Cato Instance selfie.jpg").write_bytes(b"")
    found = {one.file: one for one in NewClass.look(folder).damaged()}
    assert {file: one.learner for file, one in found.items()} == {
        "Aino Example/readings.xlsx": "s1", "stray.zip": "", "Cato Instance selfie.jpg": "s3",
    }  # fmt: skip
    assert "could not be opened" in found["Aino Example/readings.xlsx"].why
    assert "empty" in found["Cato Instance selfie.jpg"].why


def test_a_brief_that_cannot_be_read_is_put_aside_and_the_defaults_go_on(folder: Path) -> None:
    (folder / "brief.toml").write_text("lengths = = 3\n")
    (folder / "brief (unreadable).toml").write_text("an earlier one\n")
    before = everything(folder)
    new = NewClass.look(folder)
    assert "not a readable brief" in new.brief_trouble
    assert new.work.unowned[0].file == "table.csv"  # neither brief is anybody's work
    with pytest.raises(ValueError, match="not a readable brief"):
        new.begin("T. Teacher")
    assert everything(folder) == before
    assert new.aside == "brief (unreadable 2).toml"
    new.puts_aside = True
    assert new.changed
    assert everything(folder) == before
    new.begin("T. Teacher")
    assert (folder / "brief (unreadable 2).toml").read_text() == "lengths = = 3\n"
    assert read_brief(folder / "brief.toml") == (Brief(), ())
    assert "brief (unreadable)" not in {choice.name for choice in rubrics_for(folder)}
    assert NewClass.look(folder).brief_trouble == ""


def test_a_wrong_key_is_no_unreadable_brief(folder: Path) -> None:
    (folder / "brief.toml").write_text("lengths = 1\n")
    assert NewClass.look(folder).brief_trouble == ""


def test_beginning_touches_no_learners_file_and_keeps_the_teachers_comments(folder: Path) -> None:
    brief = folder / "brief.toml"
    brief.write_text('# agreed in the staff room\ntitle = "Ours"  # for now\n')
    before = everything(folder)
    new = NewClass.look(folder)
    assert new.brief.title == "Ours"
    new.brief = replace(new.brief, lengths=7, place=Place(3.1, 60.0))
    new.begin("T. Teacher")
    after = everything(folder)
    changed = {name for name in after if after[name] != before.get(name)}
    assert {name for name in changed if not name.startswith(STORE_NAME)} == {"brief.toml"}
    text = brief.read_text()
    assert "# agreed in the staff room" in text
    assert "# for now" in text
    assert read_brief(brief)[0] == new.brief


def test_beginning_is_a_step_that_can_be_taken_back_in_the_class(looked: NewClass) -> None:
    looked.settle_owner("table.csv", "s3")
    looked.brief = replace(looked.brief, rubric="full_report")
    looked.begin("T. Teacher")
    session = Session.open(looked.folder, "T. Teacher")
    try:
        assert session.rubric.id == "full_report"
        assert session.portfolio("s3").table is not None
        session.undo()
        assert not (looked.folder / "brief.toml").exists()
        assert session.rubric.id != "full_report"
        assert session.portfolio("s3").table is None
        assert not session.can_undo
        session.redo()
        assert session.rubric.id == "full_report"
        assert session.portfolio("s3").table is not None
    finally:
        session.close()


def test_no_folder_is_told(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError, match="no folder"):
        NewClass.look(tmp_path / "nowhere")


def test_rubrics_on_offer_own_ones_first_and_a_bad_one_with_its_reason(folder: Path) -> None:
    (folder / "ours.toml").write_text('title = "Ours"\n')
    (folder / "brief.toml").write_text('title = "A brief is no rubric"\n')
    choices = {choice.name: choice for choice in rubrics_for(folder)}
    assert next(iter(choices)) == "ours"
    assert choices["ours"].rubric is None
    assert "criterion" in choices["ours"].trouble
    assert choices["short"].rubric is not None
    assert not choices["short"].own
    assert "brief" not in choices


# -- the form ----------------------------------------------------------------------------

FULL = Brief(
    title="A title, with commas & more",
    opens=dt.date(2026, 3, 2),
    closes=dt.date(2026, 3, 16),
    lengths=6,
    swings_allowed=(10, 15, 20),
    shortest_m=0.12,
    support_height_m=0.75,
    evidence=("selfie",),
    place=Place(-33.9, 12.5),
    partners=(("07", "12"), ("08", "09")),
    late=Late(0.5, 3),
    grade_boundaries=(("A", 16.0), ("B", 12.5)),
    selfies_in_pack=True,
)


@pytest.mark.parametrize("brief", [Brief(), FULL], ids=["defaults", "full"])
def test_every_key_goes_into_the_form_and_comes_back(brief: Brief) -> None:
    raws = {}
    for key in brief_keys():
        value = value_of(brief, key)
        if way_of(key) in ("choices", "yes_no"):
            raws[key] = list(value) if isinstance(value, tuple) else value
        else:
            raws[key] = as_raw(key, as_text(key, value))
    assert check(raws) == (brief, {})


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("lengths", "many"),
        ("lengths", "1"),
        ("closes", "16/3/2026"),
        ("swings_allowed", "10, lots"),
        ("partners", "07"),
        ("grades", "A = 16, A = 15"),
        ("place.latitude_deg", "91"),
        ("feedback_language", "english please"),
    ],
)
def test_a_slip_is_told_at_its_key_and_says_nothing_of_the_file(key: str, typed: str) -> None:
    raw = as_raw(key, typed)
    brief, told = check({key: raw, "title": "Kept"})
    assert told == {key: ALLOWED[key].typed}
    assert "brief.toml" not in told[key]
    assert brief.title == "Kept"
    assert value_of(brief, key) == value_of(Brief(), key)


@pytest.mark.parametrize(
    ("raws", "keys"),
    [
        ({"opens": "2026-03-16", "closes": "2026-03-02"}, {"opens", "closes"}),
        ({"closes": "2026-03-16", "keep_evidence_until": "2026-03-02"},
         {"closes", "keep_evidence_until"}),
        ({"shortest_m": 0.9, "longest_m": 0.5}, {"shortest_m", "longest_m"}),
        ({"longest_m": 0.01}, {"shortest_m", "longest_m"}),  # the other as it usually is
        ({"least_ratio": 15, "longest_m": 0.6}, {"least_ratio", "shortest_m", "longest_m"}),
    ],
)  # fmt: skip
def test_settings_that_contradict_each_other_are_told_at_each(
    raws: dict[str, object], keys: set[str]
) -> None:
    _, told = check(raws)
    assert set(told) == keys


def test_what_a_wrong_setting_contradicts_is_not_known() -> None:
    # Read as left out, the shortest would be 5 cm, and more than the longest.
    _, told = check({"shortest_m": "little", "longest_m": 0.02})
    assert set(told) == {"shortest_m"}


def test_the_count_of_swings_asked_for_always_does() -> None:
    brief, told = check({"swings_per_timing": 15, "swings_allowed": [10, 20]})
    assert told == {}
    assert 15 in brief.swings_allowed


@pytest.mark.parametrize(
    ("key", "typed", "value"),
    [
        ("tolerances.g_fraction", "7 %", 0.07),
        ("tolerances.g_fraction", "7", 0.07),
        ("tolerances.own_arithmetic_fraction", "0,5%", 0.005),
        ("tolerances.false_alarm", "1 in 100", 0.01),
        ("tolerances.false_alarm", "1 von 400", 0.0025),
        ("tolerances.false_alarm", "1/50", 0.02),
        ("tolerances.false_alarm", "0.5 %", 0.005),
    ],
)
def test_shares_are_typed_as_they_are_shown(key: str, typed: str, value: float) -> None:
    brief, told = check({key: as_raw(key, typed)})
    assert told == {}
    assert value_of(brief, key) == value
    assert as_raw(key, as_text(key, value)) == value


@pytest.mark.parametrize("typed", ["often", "200", "1 in many", "1 in 0", "1 in 3"])
def test_a_needless_question_is_one_in_so_many(typed: str) -> None:
    key = "tolerances.false_alarm"
    assert list(check({key: as_raw(key, typed)})[1]) == [key]


def test_a_task_without_a_title_is_told() -> None:
    assert list(check({"title": as_raw("title", "  ")})[1]) == ["title"]


def test_a_decimal_comma_is_a_decimal_point() -> None:
    assert check({"shortest_m": as_raw("shortest_m", "0,15")})[0].shortest_m == 0.15


def test_the_file_still_names_itself_and_what_is_used() -> None:
    sentence = parse_brief("lengths = 1")[1][0].sentence
    assert "brief.toml: lengths = 1" in sentence
    assert "the default 5 is used" in sentence


# -- what a setting means here -------------------------------------------------------------


def test_effects_follow_the_brief_and_the_class(looked: NewClass) -> None:
    five = effects(replace(looked.brief, lengths=5), looked.work)
    six = effects(replace(looked.brief, lengths=6), looked.work)
    assert five["lengths"].startswith("2 of the 2 tables")
    assert six["lengths"].startswith("0 of the 2 tables")
    assert "2 say 10 swings" in five["swings_per_timing"]
    assert "3 lack the swing video" in five["evidence"]
    wide = effects(replace(looked.brief, least_ratio=3.5), looked.work)
    assert wide["least_ratio"].startswith("0 of the 2")


def test_local_g_is_shown_from_latitude_and_height(looked: NewClass) -> None:
    # Normal gravity at 45° and sea level is 9.80620 m/s² (WGS 84, NIMA TR8350.2).
    told = effects(replace(looked.brief, place=Place(45.0, 0.0)), looked.work)
    assert "9.806" in told["place.latitude_deg"]
    # 5 % either side of 9.806.
    assert told["tolerances.g_fraction"] == "Close means 9.32 to 10.30 m/s² here."


def test_every_setting_says_what_it_means_here(looked: NewClass) -> None:
    told = effects(looked.brief, looked.work)
    assert set(told) == set(brief_keys()) - {"rubric"}


def test_nothing_is_worked_out_from_a_value_that_is_wrong(looked: NewClass) -> None:
    told = effects(looked.brief, looked.work, ("closes", "place.latitude_deg"))
    silent = {
        "closes", "late.marks_per_day", "late.most_days", "place.latitude_deg", "place.height_m",
        "tolerances.g_fraction", "tolerances.own_arithmetic_fraction",
    }  # fmt: skip
    assert set(told) == set(brief_keys()) - {"rubric"} - silent


def test_what_is_likely_a_slip_is_doubted(looked: NewClass) -> None:
    assert doubts(looked.brief, looked.work, 18) == {}
    odd = replace(
        looked.brief,
        partners=((looked.learners[0].id, "99"),),
        grade_boundaries=(("A", 160.0), ("B", 12.0)),
        feedback_language="fr",
    )
    told = doubts(odd, looked.work, 18)
    assert told["partners"].endswith(": 99.")
    assert told["grades"] == "Above the 18 marks of the rubric: A."
    assert "English" in told["feedback_language"]
