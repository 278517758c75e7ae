"""Late, missing, handed in again, given more time."""

import datetime as dt
import os

import pytest

from markbench.model import Finding, Reading, Source, Timing
from markbench.session import Session
from markbench.session.hand_ins import (
    day_to_offer,
    earlier_table,
    hand_in,
    hand_ins,
    replaced_pieces,
)
from markbench.session.since_marked import row_changes

HEAD = "Length / cm,t1 / s for 10 swings,t2 / s\n"
FIRST = HEAD + "20,8.95,9.01\n30,11.02,10.95\n40,12.72,12.66\n"
LATER = HEAD + "20,8.95,9.01\n30,11.02,11.15\n40,12.72,12.66\n50,14.21,14.15\n"


def put(path, text, when):
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
    stamp = when.timestamp()
    os.utime(path, (stamp, stamp))


@pytest.fixture
def folder(tmp_path):
    root = tmp_path / "Class 9Z"
    put(root / "Ada Invented" / "readings.csv", FIRST, dt.datetime(2026, 3, 10, 18))
    put(root / "Ben Made-Up" / "readings.csv", FIRST, dt.datetime(2026, 3, 19, 18))
    put(root / "Cleo Fabricated" / "readings.csv", FIRST, dt.datetime(2026, 3, 10, 18))
    put(root / "Cleo Fabricated" / "readings v2.csv", LATER, dt.datetime(2026, 3, 12, 18))
    rows = "1,Ada Invented\n2,Ben Made-Up\n3,Cleo Fabricated\n4,Dora Contrived\n"
    (root / "class_list.csv").write_text("id,name\n" + rows, "utf-8")
    (root / "brief.toml").write_text(
        'opens = 2026-03-02\ncloses = 2026-03-16\nevidence = ["swing_video"]\n', "utf-8"
    )
    return root


@pytest.fixture
def session(folder):
    opened = Session.open(folder, "T. Teacher")
    yield opened
    opened.close()


def test_late_missing_and_nothing(session):
    by = {one.learner: one for one in hand_ins(session)}
    assert by["1"].days_late == 0
    assert by["2"].days_late == 3
    assert by["1"].missing == ("swing_video",)
    assert by["4"].nothing
    assert by["4"].missing == ("readings", "swing_video")
    assert not by["1"].nothing


def test_an_extension_moves_the_day_and_can_be_undone(session):
    session.extend("2", dt.date(2026, 3, 20))
    assert hand_in(session, "2").days_late == 0
    assert hand_in(session, "2").due == dt.date(2026, 3, 20)
    assert "outside_window" not in {f.check for f in session.findings("2")}
    session.undo()
    assert hand_in(session, "2").days_late == 3
    assert hand_in(session, "2").extended_to is None


def test_wanted_again(session):
    session.set_piece_status("1", "Ada Invented/readings.csv", "again")
    assert hand_in(session, "1").again == ("readings",)


def test_what_does_not_open_was_handed_in_and_is_wanted_again(session, folder):
    session.close()
    put(
        folder / "Dora Contrived" / "readings.xlsx",
        "PK\3\4 and no more",
        dt.datetime(2026, 3, 10, 18),
    )
    put(folder / "Ben Made-Up" / "readings.csv", "Dear diary,\n", dt.datetime(2026, 3, 10, 18))
    put(folder / "Ada Invented" / "broken.zip", "no zip file", dt.datetime(2026, 3, 10, 18))
    opened = Session.open(folder, "T. Teacher")
    by = {one.learner: one for one in hand_ins(opened)}
    assert by["4"].missing == ("swing_video",)
    assert by["4"].again == ("readings",)
    assert by["4"].unopened == (("readings", "readings.xlsx"),)
    assert not by["4"].nothing
    # It opens, but there is no table in it; and a zip file may hold anything.
    assert (by["2"].again, by["2"].unopened) == (("readings",), ())
    assert by["1"].unopened == (("unknown", "broken.zip"),)
    assert by["1"].missing == ("swing_video",)
    # What the teacher can use after all is not asked for.
    opened.set_piece_status("4", "Dora Contrived/readings.xlsx", "accepted")
    assert hand_in(opened, "4").unopened == ()
    opened.close()


@pytest.mark.parametrize(
    ("check", "kind"), [("video_unreadable", "swing_video"), ("photo_unreadable", "selfie")]
)
def test_a_photo_or_film_that_was_seen_not_to_open_is_wanted_again(folder, check, kind):
    (folder / "brief.toml").write_text(f'evidence = ["{kind}"]\n', "utf-8")
    name = "film.mp4" if kind == "swing_video" else "selfie.jpg"
    put(folder / "Ada Invented" / name, "no picture", dt.datetime(2026, 3, 10, 18))
    opened = Session.open(folder, "T. Teacher")
    file = f"Ada Invented/{name}"
    assert hand_in(opened, "1").again == ()  # not looked at yet
    seen = Finding(check, "1", "It does not open.", sources=(Source(file),))
    before = opened.findings
    opened.findings = lambda learner: (*before(learner), *((seen,) if learner == "1" else ()))
    assert hand_in(opened, "1").again == (kind,)
    assert hand_in(opened, "1").unopened == ((kind, name),)
    assert hand_in(opened, "1").missing == ()
    opened.close()


def test_what_changed_stands_side_by_side(session):
    assert hand_in(session, "3").replaced == 1
    (one,) = replaced_pieces(session.portfolio("3"))
    assert one.earlier.file.endswith("readings.csv")
    assert one.now is not None
    assert one.now.file.endswith("readings v2.csv")
    now = session.portfolio("3").table
    rows = row_changes(earlier_table(session, "3").readings, now.readings)
    assert [row.changed for row in rows] == [False, True, False, True]
    assert [t.time_s for t in rows[1].earlier.timings] == [11.02, 10.95]
    assert [t.time_s for t in rows[1].now.timings] == [11.02, 11.15]
    assert rows[3].earlier is None
    assert rows[3].now.length_m == pytest.approx(0.5)


def reading(length_cm: float, time_s: float = 9.0) -> Reading:
    nowhere = Source("")
    return Reading(length_cm / 100, 10, (Timing(time_s, nowhere),), nowhere)


def test_lengths_written_anew_stand_beside_those_they_replace():
    was = [reading(cm) for cm in (20, 30, 40, 50, 60)]
    for now in (
        [reading(cm) for cm in (21, 31, 41, 51, 61)],
        [reading(cm / 100) for cm in (20, 30, 40, 50, 60)],  # metres, read as centimetres
    ):
        rows = row_changes(was, now)
        assert [(row.earlier, row.now) for row in rows] == list(zip(was, now, strict=True))
        assert all(row.changed for row in rows)
    rows = row_changes(was, [reading(cm) for cm in (20, 30, 45, 60)])
    assert [row.changed for row in rows] == [False, False, True, True, False]
    assert rows[3].now is None


def test_without_an_earlier_table_there_is_none(session, folder):
    assert earlier_table(session, "1") is None
    (folder / "Cleo Fabricated" / "readings.csv").unlink()
    assert earlier_table(session, "3") is None  # gone from the disk since it was read


@pytest.mark.parametrize("data", [b"no workbook at all", b"PK\x03\x04 broken"])
def test_a_table_that_will_not_open_is_asked_for_once(tmp_path, data):
    (tmp_path / "Ada Invented").mkdir()
    (tmp_path / "Ada Invented" / "readings.xlsx").write_bytes(data)
    (tmp_path / "brief.toml").write_text("evidence = []\n")
    session = Session.open(tmp_path, "T. Teacher")
    learner = session.learners[0].id
    (question,) = (f for f in session.findings(learner) if f.concern)
    assert question.check != "missing_piece"
    assert "readings.xlsx" in question.message
    one = hand_in(session, learner)
    assert "readings" in (*one.missing, *one.again)  # and it is on the list to ask for
    session.close()


def test_a_week_more_is_offered_and_never_a_day_that_has_passed():
    closes = dt.date(2026, 3, 16)
    assert day_to_offer(closes, dt.date(2026, 3, 10)) == dt.date(2026, 3, 23)
    assert day_to_offer(closes, dt.date(2026, 3, 20)) == dt.date(2026, 3, 27)
    assert day_to_offer(None, dt.date(2026, 3, 20)) == dt.date(2026, 3, 27)
