"""Going back to a copy throws nothing away, says first what it would do, and can be undone."""

import pytest
from care_class import IDS, mark_all

from markbench import cli
from markbench.model import Decision
from markbench.session import Session
from markbench.session.errors import RefusedError, SignedOffError
from markbench.session.moderating import sign_off
from markbench.session.restoring import copies_of, rebuild, restore, way_back
from markbench.store import StoreDamagedError, backups_of


def marks(session):
    return {learner: dict(session.marks(learner)) for learner in IDS}


def criterion(session, number=0):
    return session.rubric.criteria[number]


def test_back_to_a_copy_and_forth_again(session):
    mark_all(session)
    first = criterion(session)
    session.set_note(IDS[2], "look again")
    session.set_level(IDS[0], first.id, first.levels[0].name)
    before = marks(session)
    session.keep_copy()

    other = next(one.name for one in first.levels if one.name != first.levels[0].name)
    session.set_level(IDS[0], first.id, other)
    session.clear_mark(IDS[1], first.id)
    session.set_note(IDS[2], "looked")
    after, said = marks(session), len(session.history())

    (copy,) = copies_of(session.folder)
    assert copy.marks == 3 * len(session.rubric.criteria)
    way = way_back(session, copy)
    assert (way.later, way.change, way.come_back, way.undone, way.texts) == (3, 1, 1, 0, 1)

    restore(session, copy)
    assert marks(session) == before
    assert session.value("note", IDS[2]) == "look again"
    # Nothing of the time between is thrown away, and who marked then stands under it still.
    assert [d.value for d in session.history()[:said]][-1] == "looked"
    assert len(session.history()) == said + 4
    newest = copies_of(session.folder)[0]
    assert newest.decisions == said
    restore(session, newest)
    assert marks(session) == after
    assert session._journal.verify() is None


def test_a_copy_of_an_empty_class_makes_drafts_of_all(session):
    session.set_note(IDS[0], "begun")
    session.keep_copy()
    mark_all(session)
    (copy,) = copies_of(session.folder)
    way = restore(session, copy)
    assert way.undone == 3 * len(session.rubric.criteria)
    assert all(session.total(learner) is None for learner in IDS)
    assert session.value("note", IDS[0]) == "begun"


def test_whose_a_file_is_goes_back_too(session):
    session.set_note(IDS[0], "begun")
    session.keep_copy()
    session.settle_owner("IMG_0001.jpg", IDS[0])
    files = [piece.file for piece in session.portfolio(IDS[0]).pieces]
    assert "IMG_0001.jpg" in files
    restore(session, copies_of(session.folder)[0])
    assert "IMG_0001.jpg" not in [piece.file for piece in session.portfolio(IDS[0]).pieces]


def test_signed_marks_stay_and_a_like_copy_is_refused(session):
    session.set_note(IDS[0], "begun")
    session.keep_copy()
    with pytest.raises(RefusedError, match="nothing was changed"):
        restore(session, copies_of(session.folder)[0])
    mark_all(session)
    sign_off(session)
    signed = marks(session)
    with pytest.raises(SignedOffError):
        restore(session, copies_of(session.folder)[-1])
    assert marks(session) == signed


def test_a_meddled_copy_is_listed_and_refused(session):
    session.set_note(IDS[0], "begun")
    session.keep_copy()
    (path,) = backups_of(session.folder / "class.markbench")
    path.write_bytes(path.read_bytes().replace(b"begun", b"bogus"))
    (copy,) = copies_of(session.folder)
    assert copy.problem
    assert copy.decisions == 0
    with pytest.raises(RefusedError, match=r"cannot be used|not as it was written"):
        way_back(session, copy)


def test_a_vanished_file_is_rebuilt(folder):
    with_marks = Session.open(folder, "T. Teacher")
    mark_all(with_marks)
    with_marks.keep_copy()
    kept = marks(with_marks)
    with_marks.close()
    (folder / "class.markbench").unlink()
    with pytest.raises(StoreDamagedError):
        Session.open(folder)
    rebuild(folder, "T. Teacher")
    again = Session.open(folder)
    assert marks(again) == kept
    again.close()


def test_on_the_command_line(folder, session, capsys, monkeypatch):
    session.set_note(IDS[0], "begun")
    session.keep_copy()
    mark_all(session)
    session.close()

    def run(*arguments):
        code = cli.main(["restore", str(folder), *arguments], lambda _folder: 1)
        told = capsys.readouterr()
        return code, told.out + told.err

    code, told = run()
    assert code == 0
    assert "1 decisions, 0 marks" in told
    assert f"{3 * len(session.rubric.criteria)} marks become drafts again" in told
    code, told = run("--to", "1")  # nobody at the keyboard
    assert code == 1
    assert "--yes" in told
    assert run("--to", "7", "--yes")[0] == 1
    code, told = run("--to", "1", "--yes")
    assert (code, "Restored" in told) == (0, True)
    again = Session.open(folder)
    assert all(again.total(learner) is None for learner in IDS)
    assert isinstance(again.history()[-1], Decision)
    assert again.history()[-1].kind == "restored"
    again.close()
