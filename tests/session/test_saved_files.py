"""Brief and rubric saved from the window: a decision like any other, which can be taken back."""

import csv
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from markbench.export import write_audit
from markbench.intake.brief_file import read_brief
from markbench.rubric import RubricError
from markbench.rubric.loading import SHIPPED
from markbench.session import Change, Session
from markbench.session.errors import GoneByError, RefusedError, SignatureError
from markbench.session.merging import merge_journals
from markbench.session.moderating import sign_off
from markbench.session.restoring import copies_of, way_back
from markbench.store import StoreError

ROWS = "Length / cm,Time of 10 swings / s\n20,8.97\n30,10.99\n40,12.69\n50,14.18\n60,15.54\n"
# As an editor of another system may leave it: a mark at its start, line ends of two characters,
# and a letter of another encoding in a comment.
BRIEF = b"\xef\xbb\xbf# agreed in the staff room\r\nlengths = 5\r\nevidence = []\r\n"
OLD_LETTERS = b"# Pr\xe9parer\nlengths = 5\nevidence = []\n"
OURS = (SHIPPED / "short.toml").read_text("utf-8").replace('title = "', 'title = "Ours: ', 1)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "10A"
    for name in ("Aino Example", "Bodil Sample"):
        (made / name).mkdir(parents=True)
        (made / name / "readings.csv").write_text(ROWS)
    (made / "class_list.csv").write_text("id,name\ns1,Aino Example\ns2,Bodil Sample\n")
    (made / "brief.toml").write_bytes(BRIEF)
    return made


@pytest.fixture
def session(folder: Path) -> Iterator[Session]:
    opened = Session.open(folder, "T. Teacher")
    yield opened
    opened.close()


def opened_anew(session: Session) -> Session:
    session.close()
    return Session.open(session.folder, "T. Teacher")


def test_a_saved_brief_is_drafted_by_at_once_and_taken_back_to_the_letter(
    session: Session, folder: Path
) -> None:
    heard: list[Change] = []
    session.listen(heard.append)
    before = session.draft("s1", session.rubric.criteria[0].id)
    session.save_brief(replace(session.brief, lengths=9))
    after = (folder / "brief.toml").read_bytes()
    assert b"# agreed in the staff room" in after
    assert session.brief.lengths == 9
    assert session.draft("s1", session.rubric.criteria[0].id) != before
    session.undo()
    assert (folder / "brief.toml").read_bytes() == BRIEF
    assert session.brief.lengths == 5
    assert session.draft("s1", session.rubric.criteria[0].id) == before
    session.redo()
    assert (folder / "brief.toml").read_bytes() == after
    assert session.brief.lengths == 9
    assert [(change.learner, change.kinds) for change in heard] == [("", ("file",))] * 3


def test_undo_and_redo_reach_over_closing_the_class(session: Session, folder: Path) -> None:
    session.set_note("s1", "before")
    session.save_brief(replace(session.brief, lengths=9))
    session.accept("s1")  # many decisions, one step
    again = opened_anew(session)
    again.undo()
    assert again.marks("s1") == {}
    again.undo()
    assert (again.brief.lengths, read_brief(folder / "brief.toml")[0].lengths) == (5, 5)
    third = opened_anew(again)
    third.undo()
    assert third.value("note", "s1") is None
    assert not third.can_undo
    for _ in range(3):
        third.redo()
    assert third.value("note", "s1") == "before"
    assert third.brief.lengths == 9
    assert third.total("s1") is not None
    assert not third.can_redo
    third.close()


def test_what_another_hand_wrote_since_is_left_alone_and_the_step_beyond_can_go(
    session: Session, folder: Path
) -> None:
    session.set_note("s1", "before")
    session.save_brief(replace(session.brief, lengths=9))
    brief = folder / "brief.toml"
    brief.write_text("lengths = 7  # by hand\n")
    decided = len(session.history())
    with pytest.raises(GoneByError, match=r"brief\.toml changed outside Markbench"):
        session.undo()
    assert brief.read_text() == "lengths = 7  # by hand\n"
    assert len(session.history()) == decided
    session.undo()
    assert session.value("note", "s1") is None
    again = opened_anew(session)
    again.redo()
    assert again.value("note", "s1") == "before"
    again.close()


def test_saving_over_what_another_hand_wrote_can_be_taken_back_too(
    session: Session, folder: Path
) -> None:
    session.save_brief(replace(session.brief, lengths=9))
    (folder / "brief.toml").write_bytes(b"lengths = 7  # by hand\n")
    session.save_brief(replace(session.brief, lengths=8))
    session.undo()
    assert (folder / "brief.toml").read_bytes() == b"lengths = 7  # by hand\n"
    assert session.brief.lengths == 7


def test_a_rubric_and_its_use_are_one_step(session: Session, folder: Path) -> None:
    was = session.rubric
    session.save_rubric("ours", OURS)
    assert session.rubric.title.startswith("Ours: ")
    assert (folder / "ours.toml").read_text("utf-8") == OURS
    session.undo()
    assert session.rubric == was
    assert not (folder / "ours.toml").exists()
    assert (folder / "brief.toml").read_bytes() == BRIEF
    session.redo()
    assert session.rubric.title.startswith("Ours: ")
    again = opened_anew(session)
    assert again.rubric.title.startswith("Ours: ")
    again.undo()
    assert again.rubric == was
    again.close()


def test_another_rubric_and_back_keeps_every_mark(session: Session) -> None:
    session.accept("s1")
    marks = session.marks("s1")
    session.save_brief(replace(session.brief, rubric="full_report"))
    assert session.rubric.id == "full_report"
    session.undo()
    assert session.marks("s1") == marks


def test_a_rubric_that_is_not_right_or_not_there_is_not_saved(
    session: Session, folder: Path
) -> None:
    with pytest.raises(ValueError, match="not right yet"):
        session.save_rubric("ours", OURS.replace("when = ", "when = 3 #", 1), use=False)
    with pytest.raises(ValueError, match="letters, digits"):
        session.save_rubric("../ours", OURS)
    with pytest.raises(RubricError, match="no rubric"):
        session.save_brief(replace(session.brief, rubric="nowhere"))
    assert (folder / "brief.toml").read_bytes() == BRIEF
    assert sorted(p.name for p in folder.glob("*.toml*")) == ["brief.toml"]
    assert session.history() == []
    assert not session.can_undo


def test_a_file_is_put_back_where_the_journal_cannot_be_written(
    session: Session, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_decisions: object) -> None:
        raise StoreError("no room on the disk")

    with monkeypatch.context() as broken:
        broken.setattr(session._journal, "append", full)
        with pytest.raises(StoreError, match="no room"):
            session.save_rubric("ours", OURS)
    assert (folder / "brief.toml").read_bytes() == BRIEF
    assert not (folder / "ours.toml").exists()
    session.save_brief(replace(session.brief, lengths=9))
    with monkeypatch.context() as broken:
        broken.setattr(session._journal, "append", full)
        with pytest.raises(StoreError, match="no room"):
            session.undo()
    assert read_brief(folder / "brief.toml")[0].lengths == 9
    session.undo()
    assert (folder / "brief.toml").read_bytes() == BRIEF


def test_a_file_of_another_encoding_comes_back_as_it_was(session: Session, folder: Path) -> None:
    ours = folder / "ours.toml"
    ours.write_bytes(OLD_LETTERS)
    session.save_rubric("ours", OURS, use=False)
    again = opened_anew(session)
    again.undo()
    assert ours.read_bytes() == OLD_LETTERS
    again.close()


def test_a_disk_that_refuses_is_told_and_the_step_stays(
    session: Session, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    session.save_brief(replace(session.brief, lengths=9))

    def refuse(_from: object, _to: object) -> None:
        raise OSError(13, "Permission denied")

    with monkeypatch.context() as broken:
        broken.setattr("markbench.session.class_files.os.replace", refuse)
        with pytest.raises(RefusedError, match=r"brief\.toml could not be written"):
            session.undo()
    assert sorted(p.name for p in folder.glob("*.toml*")) == ["brief.toml"]
    session.undo()
    assert session.brief.lengths == 5


def test_a_colleague_cannot_take_back_what_is_not_hers(session: Session) -> None:
    session.save_brief(replace(session.brief, lengths=9))
    session.close()
    colleague = Session.open(session.folder, "C. Colleague")
    assert not colleague.can_undo
    colleague.set_note("s1", "hers")
    assert colleague.can_undo
    colleague.close()
    again = Session.open(session.folder, "T. Teacher")
    assert not again.can_undo  # his step is not the last word any more
    again.close()


def test_looking_on_takes_nothing_back(session: Session) -> None:
    session.set_note("s1", "a")
    looking = Session.open(session.folder, "T. Teacher", read_only=True)
    assert not looking.can_undo
    with pytest.raises(StoreError, match="reading only"):
        looking.save_brief(replace(session.brief, lengths=9))
    assert (session.folder / "brief.toml").read_bytes() == BRIEF
    looking.close()


def test_after_sign_off_earlier_steps_stay_and_the_brief_can_still_be_put_back(
    session: Session, folder: Path
) -> None:
    for learner in ("s1", "s2"):
        session.accept(learner)
        for criterion in session.rubric.criteria:
            if session.mark(learner, criterion.id) is None:
                session.set_level(learner, criterion.id, criterion.levels[0].name)
    sign_off(session)
    again = opened_anew(session)
    decided = again.history()
    with pytest.raises(SignatureError):
        again.undo()
    assert again.history() == decided
    again.save_brief(replace(again.brief, lengths=9))
    again.undo()
    assert (folder / "brief.toml").read_bytes() == BRIEF
    decided = again.history()
    with pytest.raises(SignatureError):
        again.undo()
    assert again.history() == decided
    again.close()


def test_a_merge_and_a_copy_of_the_class_leave_the_files_alone(session: Session) -> None:
    session.set_note("s1", "a")
    session.keep_copy()
    session.save_brief(replace(session.brief, lengths=9))
    assert [d.kind for d in merge_journals([], session.history()).decisions] == ["note"]
    assert way_back(session, copies_of(session.folder)[0]).decisions == ()


def test_the_listing_tells_that_a_file_was_saved_and_none_of_its_text(
    session: Session, tmp_path: Path
) -> None:
    pair = (("Aino Example", "Bodil Sample"),)
    session.save_brief(replace(session.brief, lengths=9, partners=pair))
    session.undo()
    for ending in (".csv", ".txt"):
        write_audit(tmp_path / f"audit{ending}", session.history())
        assert "Aino" not in (tmp_path / f"audit{ending}").read_text("utf-8-sig")
    with (tmp_path / "audit.csv").open(encoding="utf-8-sig", newline="") as file:
        rows = list(csv.DictReader(file))
    assert [(row["Decision"], row["About"], row["Takes back"]) for row in rows] == [
        ("file", "brief.toml", ""),
        ("file", "brief.toml", "1"),
    ]
    assert rows[0]["Was"] == rows[1]["Became"]
    assert rows[0]["Was"].startswith("3 lines, ")
