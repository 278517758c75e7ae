"""What a learner changed after marking: seen by content, shown, and settled by the teacher."""

import datetime as dt
import json
import os
import shutil
from collections import Counter
from zipfile import ZipFile

import pytest

from markbench.model import Decision, Source
from markbench.moderation.plain import to_plain
from markbench.session import Session
from markbench.session.blind import Veiled, set_blind
from markbench.session.hand_ins import hand_in
from markbench.session.handed_in_work import WORK, Content, Work, changes
from markbench.session.keeping import store_of
from markbench.session.merging import merge_journals
from markbench.session.moderating import sign_off
from markbench.session.overview import time_per_portfolio
from markbench.session.since_marked import STANDS, let_stand, mark_again, since_marked
from markbench.store import Journal, fold

HEAD = "Length / cm,t1 / s for 10 swings,t2 / s\n"
FIRST = HEAD + "20,8.95,9.01\n30,11.02,10.95\n40,12.72,12.66\n"
LATER = HEAD + "20,8.95,9.01\n30,11.02,11.15\n40,12.72,12.66\n50,14.21,14.15\n"
OLD = dt.datetime(2026, 3, 10, 18)
ADA = "Ada Invented/readings.csv"


def put(path, data, when=OLD):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(data if isinstance(data, bytes) else data.encode())
    os.utime(path, (when.timestamp(), when.timestamp()))


@pytest.fixture
def folder(tmp_path):
    root = tmp_path / "Class 9Z"
    for name in ("Ada Invented", "Ben Made-Up"):
        put(root / name / "readings.csv", FIRST)
        put(root / name / "swing video.mp4", name.encode() * 100)
    (root / "class_list.csv").write_text("id,name\n1,Ada Invented\n2,Ben Made-Up\n", "utf-8")
    (root / "brief.toml").write_text('rubric = "short"\nevidence = ["swing_video"]\n', "utf-8")
    return root


@pytest.fixture
def opened(folder):
    """Opens the class anew, as it lies there now."""
    held = []

    def again():
        for one in held:
            one.close()
        held[:] = [Session.open(folder, "T. Teacher")]
        return held[0]

    yield again
    for one in held:
        one.close()


@pytest.fixture
def marked(opened):
    session = opened()
    for learner in "12":
        mark_everything(session, learner)
    return session


def mark_everything(session, learner):
    for criterion in session.rubric.criteria:
        session.set_level(learner, criterion.id, criterion.levels[0].name)


def test_an_overwritten_table_is_seen_by_its_content_and_shown_beside_what_was_marked(
    marked, folder, opened
):
    assert since_marked(marked, "1") is None
    put(folder / ADA, LATER)  # with its old date: only the content tells
    session = opened()
    changed = since_marked(session, "1")
    assert changed.criteria == tuple(one.id for one in session.rubric.criteria)
    assert [(one.kind, one.what) for one in changed.pieces] == [("readings", "replaced")]
    assert [row.changed for row in changed.rows] == [False, True, False, True]
    assert changed.differing == 2
    assert [t.time_s for t in changed.rows[1].earlier.timings] == [11.02, 10.95]
    assert [t.time_s for t in changed.rows[1].now.timings] == [11.02, 11.15]
    assert changed.rows[3].earlier is None
    assert hand_in(session, "1").since_marked == "changed"
    assert since_marked(session, "2") is None


def test_a_file_only_touched_renamed_or_packed_is_the_same(marked, folder, opened):
    own = folder / "Ada Invented"
    (own / "swing video.mp4").rename(own / "my film.mp4")
    with ZipFile(own / "work.zip", "w") as archive:
        archive.writestr("table.csv", FIRST)
    (own / "readings.csv").unlink()
    put(folder / "Ben Made-Up" / "readings.csv", FIRST, dt.datetime.now() + dt.timedelta(days=1))
    session = opened()
    assert session.portfolio("1").table is not None
    assert since_marked(session, "1") is None
    assert since_marked(session, "2") is None


def test_the_same_numbers_in_another_file_are_told_as_such(marked, folder, opened):
    put(folder / ADA, FIRST + "\nA sentence more\n")
    changed = since_marked(opened(), "1")
    assert [one.what for one in changed.pieces] == ["replaced"]
    assert changed.rows
    assert changed.differing == 0


def test_films_replaced_added_and_removed(marked, folder, opened):
    put(folder / "Ada Invented" / "swing video.mp4", b"another film")
    put(folder / "Ada Invented" / "selfie.jpg", b"a picture")
    (folder / "Ben Made-Up" / "swing video.mp4").unlink()
    session = opened()
    ada, ben = since_marked(session, "1"), since_marked(session, "2")
    what = {one.kind: one.what for one in ada.pieces}
    assert what == {"swing_video": "replaced", "selfie": "added"}
    assert ada.rows == ()
    assert [(one.kind, one.what, one.now) for one in ben.pieces] == [
        ("swing_video", "removed", None)
    ]


def test_films_of_one_size_are_told_apart_by_their_digests():
    then = Work(pieces=(Content("swing_video", 9, "aa"),))
    assert changes(then, Work(pieces=(Content("swing_video", 9, "bb"),)))
    assert not changes(then, Work(pieces=(Content("swing_video", 9),)))
    assert not changes(then, Work(pieces=(Content("unknown", 9, "aa"),)))  # its kind was settled


def test_an_earlier_piece_that_counts_again_is_no_new_one():
    first, second = Content("readings", 9, "aa"), Content("readings", 9, "bb")
    then = Work(pieces=(second,), earlier=(first,))
    assert not changes(then, Work(pieces=(first,), earlier=(second,)))
    assert [one.what for one in changes(then, Work(pieces=(first,)))] == ["removed"]


def test_the_teachers_own_hand_is_no_new_hand_in(marked, folder, opened):
    table = marked.portfolio("1").table
    marked.correct("1", table.readings[0].timings[0].source, "9.95")
    marked.type_readings("2", [{"length_m": 0.5, "swings": 10, "timings_s": [14.2]}])
    marked.set_piece_kind("Ben Made-Up/swing video.mp4", "unknown")
    assert since_marked(marked, "1") is None
    assert since_marked(marked, "2") is None
    # Nor does it stand in the comparison: both sides are as the learner wrote them.
    put(folder / ADA, LATER)
    session = opened()
    assert session.portfolio("1").table.readings[0].timings[0].time_s == 9.95
    changed = since_marked(session, "1")
    assert [row.changed for row in changed.rows] == [False, True, False, True]
    assert changed.rows[0].now.timings[0].time_s == 8.95


def test_a_later_file_beside_the_earlier_one_is_compared_with_what_was_marked(
    marked, folder, opened
):
    put(folder / "Ada Invented" / "readings v2.csv", LATER)
    changed = since_marked(opened(), "1")
    assert [(one.kind, one.what) for one in changed.pieces] == [("readings", "replaced")]
    assert changed.differing == 2


def test_leaving_the_mark_settles_it_until_the_work_changes_again(marked, folder, opened):
    put(folder / ADA, LATER)
    session = opened()
    marks = session.marks("1")
    let_stand(session, "1")
    assert since_marked(session, "1") is None
    assert session.marks("1") == marks
    session.undo()
    assert since_marked(session, "1") is not None
    session.redo()
    assert since_marked(session, "1") is None
    put(folder / ADA, FIRST)  # back to what was marked: nothing to ask
    assert since_marked(opened(), "1") is None
    put(folder / ADA, LATER + "60,15.5,15.6\n")
    changed = since_marked(opened(), "1")
    assert changed.differing == 1  # beside what was left to stand, not beside the first


def test_marking_again_settles_each_mark_by_itself(marked, folder, opened):
    put(folder / ADA, LATER)
    session = opened()
    first, *others = session.rubric.criteria
    session.set_level("1", first.id, session.mark("1", first.id).level)  # the same level
    assert since_marked(session, "1").criteria == tuple(one.id for one in others)
    mark_again(session, "1")
    assert session.progress("1") == (1, len(session.rubric.criteria))
    assert since_marked(session, "1") is None
    session.undo()
    assert since_marked(session, "1").criteria == tuple(one.id for one in others)
    mark_everything(session, "1")
    assert since_marked(session, "1") is None


def test_the_work_is_kept_once_and_small_and_without_names_of_files(marked):
    kept = [d for d in marked.history() if d.kind == WORK]
    assert Counter(d.learner for d in kept) == {"1": 1, "2": 1}
    text = json.dumps([to_plain(d.value) for d in kept])
    assert len(text) < 2_000
    for word in ("csv", "mp4", "Ada", "Invented", "readings.", "swing video"):
        assert word not in text
    marks = marked.marks("1")
    while marked.can_undo:
        marked.undo()
    assert marked.marks("1") == {}
    assert len([d for d in marked.state.values() if d.kind == WORK]) == 2
    while marked.can_redo:
        marked.redo()
    assert marked.marks("1").keys() == marks.keys()
    assert since_marked(marked, "1") is None
    # An entry of the program's is not one of the teacher's decisions.
    decided = {one.learner: one.decisions for one in time_per_portfolio(marked)}
    assert decided["1"] == 3 * len(marked.rubric.criteria)


def test_of_an_older_journal_it_is_said_that_what_was_marked_is_not_known(folder, opened):
    session = opened()
    criterion = session.rubric.criteria[0]
    value = {"level": criterion.levels[0].name, "marks": criterion.levels[0].marks, "feedback": ""}
    session.decide(Decision("mark", "1", criterion.id, value), Decision("mark", "2", criterion.id,
                                                                        value))  # fmt: skip
    assert since_marked(session, "1") is None
    put(folder / ADA, LATER, dt.datetime.now() + dt.timedelta(hours=1))
    put(folder / "Ben Made-Up" / "readings.csv", LATER)  # old date: nothing can be known
    session = opened()
    perhaps = since_marked(session, "1")
    assert perhaps.by_date
    assert perhaps.criteria == (criterion.id,)
    assert perhaps.rows == ()
    assert hand_in(session, "1").since_marked == "perhaps"
    assert since_marked(session, "2") is None
    let_stand(session, "1")
    assert since_marked(session, "1") is None
    put(folder / ADA, FIRST)
    assert not since_marked(opened(), "1").by_date  # known from now on


def test_a_class_sheet_concerns_only_whose_row_changed(folder, opened):
    for name in ("Ada Invented", "Ben Made-Up"):
        (folder / name / "readings.csv").unlink()
    head = "Name,Length / cm,t1 / s for 10 swings,t2 / s,Length / cm,t1 / s for 10 swings,t2 / s\n"
    rows = ["Ada Invented,20,8.95,9.01,30,11.02,10.95", "Ben Made-Up,20,8.97,9.05,30,11.0,10.9"]
    put(folder / "all.csv", head + "\n".join(rows) + "\n")
    session = opened()
    if session.portfolio("1").table is None:
        pytest.fail("the sheet of the class is not read: this test says nothing")
    mark_everything(session, "1")
    mark_everything(session, "2")
    rows[1] = rows[1].replace("11.0,10.9", "11.3,10.9")
    put(folder / "all.csv", head + "\n".join(rows) + "\n\n")
    session = opened()
    assert since_marked(session, "1") is None
    assert since_marked(session, "2").differing == 1


def test_without_names_nothing_names_a_file(marked, folder, opened):
    set_blind(marked, True, 1)
    put(folder / ADA, LATER)
    session = opened()
    session.correct("1", Source(ADA, "", "B2"), "9.95")
    veiled = Veiled(session, "Portfolio {}".format)
    assert "Ada" not in repr(veiled.portfolio("1"))
    changed = since_marked(veiled, "1")
    assert changed.differing == 2
    assert "Ada" not in repr(changed)
    let_stand(veiled, "1")
    assert since_marked(veiled, "1") is None


def test_after_sign_off_the_mark_stays_and_may_be_left_to_stand(marked, folder, opened):
    sign_off(marked, despite_open=True)
    put(folder / ADA, LATER)
    session = opened()
    assert since_marked(session, "1") is not None
    with pytest.raises(Exception, match="signed off"):
        mark_again(session, "1")
    let_stand(session, "1")
    assert session.value(STANDS, "1")
    assert since_marked(session, "1") is None


def test_an_entry_that_is_no_work_is_not_used(marked, folder, opened):
    key = next(d.subject for d in marked.history("1") if d.kind == WORK)
    marked.close()
    with Journal.open(store_of(folder)) as journal:
        journal.append([Decision(WORK, "1", key, {"rows": "none"})])
    session = opened()
    assert since_marked(session, "1") is None
    assert any("cannot use" in problem.message for problem in session.work.problems)


def test_the_same_work_marked_on_two_machines_is_no_clash(marked, folder, tmp_path):
    here = marked.history()
    marked.close()
    shutil.copytree(folder, tmp_path / "there" / folder.name)
    store_of(tmp_path / "there" / folder.name).unlink()
    other = Session.open(tmp_path / "there" / folder.name, "M. Marker")
    mark_everything(other, "1")
    merged = merge_journals(here, other.history())
    other.close()
    assert merged.clashes == ()
    assert {double.kind for double in merged.doubles} == {"mark"}
    works = [key for key in fold([*here, *merged.decisions]) if key[0] == WORK]
    assert len(works) == 2
