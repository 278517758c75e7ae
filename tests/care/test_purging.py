"""Photos and films go after sign-off only, at a person's word; marks and results stay."""

import hashlib
from pathlib import Path

import pytest
from care_class import IDS, NAMES, mark_all

import markbench
from markbench import cli
from markbench.evidence.cache import Cache
from markbench.intake.tree import walk
from markbench.session import Session
from markbench.session.errors import RefusedError
from markbench.session.evidence import look
from markbench.session.moderating import sign_off
from markbench.session.purging import plan, purge, purged_files
from markbench.session.restoring import copies_of, restore
from markbench.session.results import changed_since_sign_off, results
from markbench.session.since_marked import since_marked

MEDIA = (".jpg", ".mp4")


@pytest.fixture
def signed(session):
    session.see(look(session.work, session.folder))
    mark_all(session)
    session.set_feedback(IDS[0], session.rubric.criteria[0].id, "Well timed.")
    sign_off(session)
    return session


def media(folder):
    return sorted(one.file for one in walk(folder).found if one.file.endswith(MEDIA))


def standing(session):
    """All that must be the same afterwards."""
    return {
        learner: (
            session.marks(learner),
            session.drafts(learner),
            session.analysis(learner).line,
            session.portfolio(learner).table,
            session.portfolio(learner).handed_in,
            sorted((f.check, f.message, f.concern) for f in session.findings(learner)),
            [session.feedback(learner, c.id) for c in session.rubric.criteria],
        )
        for learner in IDS
    }


def again(session):
    folder = session.folder
    session.close()
    return Session.open(folder, "T. Teacher")


def test_before_sign_off_nothing_goes(session):
    mark_all(session)
    shown = plan(session)
    assert "not signed off" in shown.why_not
    before = media(session.folder)
    with pytest.raises(RefusedError, match="signed off"):
        purge(session, shown)
    assert media(session.folder) == before


def test_photos_and_films_go_and_all_else_stands(signed):
    before, files = standing(signed), media(signed.folder)
    tables = {p: p.read_bytes() for p in signed.folder.rglob("*.csv")}
    assert any(f.check == "photo_repeated" for f in signed.findings(IDS[0]))
    shown = plan(signed)
    assert sorted(shown.files) == files
    assert {heap.kind: heap.count for heap in shown.goes} == {
        "photo": 1, "selfie": 3, "setup_photo": 3, "swing_video": 1,
    }  # fmt: skip
    assert {heap.kind: heap.count for heap in shown.stays} == {"readings": 3, "report": 1}

    done = purge(signed, shown)
    assert (done.count, done.left) == (8, {})
    assert media(signed.folder) == []
    assert {p: p.read_bytes() for p in signed.folder.rglob("*.csv")} == tables
    assert standing(signed) == before

    opened = again(signed)
    assert standing(opened) == before
    assert changed_since_sign_off(opened) == {}
    assert all(one.total is not None for one in results(opened).values())
    pieces = opened.portfolio(IDS[0]).pieces
    assert [p.gone for p in pieces if p.file.endswith(MEDIA)] == [True] * 3
    # Looking again does not take the pieces that are gone for unreadable ones.
    opened.see(look(opened.work, opened.folder))
    assert standing(opened) == before
    opened.close()


def test_what_went_is_recorded_with_its_digest(signed):
    digest = hashlib.sha256((signed.folder / "IMG_0001.jpg").read_bytes()).hexdigest()
    size = (signed.folder / "IMG_0001.jpg").stat().st_size
    purge(signed, plan(signed))
    (decision,) = [d for d in signed.history() if d.kind == "purge"]
    assert {"file": "IMG_0001.jpg", "bytes": size, "sha256": digest} in decision.value["went"]
    assert decision.who == "T. Teacher"
    assert purged_files(signed) == 8
    assert not signed.can_undo
    assert signed._journal.verify() is None


def test_no_small_picture_and_no_trace_is_kept(signed):
    cache = Cache()
    cache.put("0123-small220.jpg", b"a small picture")
    cache.put("4567-swing-2.json", b"another class's film")
    purge(signed, plan(signed))
    assert [path.name for path in cache.folder.iterdir()] == ["4567-swing-2.json"]
    kept = [d.value for d in signed.history() if d.kind == "kept"]
    assert all(photo["print"] is None for one in kept for photo in one["photos"].values())
    assert all(film["times_s"] == [] for one in kept for film in one["films"].values())
    assert sum(len(one["photos"]) for one in kept) == 6
    assert sum(len(one["films"]) for one in kept) == 1


def test_everything_with_tables(signed):
    before = standing(signed)
    shown = plan(signed, everything=True)
    assert shown.stays == ()
    purge(signed, shown)
    left = {one.file for one in walk(signed.folder).found}
    assert left == {"brief.toml", "class_list.csv"}
    opened = again(signed)
    assert standing(opened) == before
    opened.close()


def test_pictures_first_and_the_rest_later(signed):
    before = standing(signed)
    purge(signed, plan(signed))
    opened = again(signed)
    purge(opened, plan(opened, everything=True))
    assert purged_files(opened) == 8 + 4
    assert plan(opened, everything=True).why_not
    last = again(opened)
    assert standing(last) == before
    last.close()


def test_without_a_class_list_nobody_vanishes(folder, tmp_path):
    (folder / "class_list.csv").unlink()
    only_photos = folder / "Dov Imaginary"
    only_photos.mkdir()
    (only_photos / "setup.jpg").write_bytes((folder / "IMG_0001.jpg").read_bytes())
    session = Session.open(folder, "T. Teacher")
    names = sorted(learner.name for learner in session.learners)
    for learner in session.learners:
        session.accept(learner.id)
        for criterion in session.rubric.criteria:
            if session.mark(learner.id, criterion.id) is None:
                session.set_level(learner.id, criterion.id, criterion.levels[0].name)
    totals = {learner.name: session.total(learner.id) for learner in session.learners}
    sign_off(session)
    purge(session, plan(session, everything=True))
    opened = again(session)
    assert sorted(learner.name for learner in opened.learners) == names
    assert {x.name: opened.total(x.id) for x in opened.learners} == totals
    opened.close()


def test_a_pack_in_the_folder_holds_photos_and_goes_too(signed):
    out = signed.folder / "markbench-out"
    out.mkdir()
    (out / "sample.markbench-pack").write_bytes(b"photos of learners")
    shown = plan(signed)
    assert shown.packs == ("markbench-out/sample.markbench-pack",)
    purge(signed, shown)
    assert not (out / "sample.markbench-pack").exists()


def test_a_folder_that_changed_since_is_shown_again(signed):
    shown = plan(signed)
    signed.settle_owner("IMG_0001.jpg", IDS[2])
    (signed.folder / NAMES[0] / "setup2.jpg").write_bytes(b"came in since")
    opened = again(signed)
    with pytest.raises(RefusedError, match="look again"):
        purge(opened, shown)
    assert len(media(opened.folder)) == 9
    opened.close()


def test_one_that_cannot_be_removed_is_named_and_can_go_later(signed, monkeypatch):
    from markbench.session import purging

    real = purging.remove
    stuck = f"{NAMES[0]}/setup.jpg"
    monkeypatch.setattr(
        purging,
        "remove",
        lambda folder, files: {**real(folder, [f for f in files if f != stuck]), stuck: "locked"},
    )
    before = standing(signed)
    done = purge(signed, plan(signed))
    assert done.left == {stuck: "locked"}
    assert standing(signed) == before
    monkeypatch.undo()
    left = plan(signed)
    assert left.files == (stuck,)
    purge(signed, left)
    assert media(signed.folder) == []


def test_going_back_to_a_copy_leaves_what_is_gone_gone(signed):
    signed.set_note(IDS[0], "before")
    signed.keep_copy()
    purge(signed, plan(signed))
    signed.set_note(IDS[0], "after")
    before = standing(signed)
    restore(signed, copies_of(signed.folder)[-1])
    assert signed.value("note", IDS[0]) == "before"
    assert standing(signed) == before
    assert purged_files(signed) == 8


def test_export_still_works(signed, tmp_path):
    purge(signed, plan(signed))
    folder = signed.folder
    signed.close()
    out = tmp_path / "out"
    arguments = ["export", str(folder), "--to", str(out), "--feedback", "--audit"]
    assert cli.main(arguments, lambda _folder: 1) == 0
    assert (out / "marks.xlsx").stat().st_size > 5000
    assert len(list((out / "feedback").glob("*.pdf"))) == 3
    assert "files that were then removed" in (out / "audit.txt").read_text("utf-8")


def test_only_one_place_writes_to_what_came_in():
    callers = [
        path.relative_to(Path(markbench.__file__).parent).as_posix()
        for path in Path(markbench.__file__).parent.rglob("*.py")
        if "intake.removal" in path.read_text("utf-8")
    ]
    assert callers == ["session/purging.py"]


def test_on_the_command_line(signed, capsys):
    folder = signed.folder
    signed.close()

    def run(*arguments):
        code = cli.main(["purge", str(folder), *arguments], lambda _folder: 1)
        told = capsys.readouterr()
        return code, told.out + told.err

    code, told = run()
    assert code == 1
    assert "8 files" in told
    assert "--yes" in told
    assert len(media(folder)) == 8
    code, told = run("--yes")
    assert (code, "Removed: 8 files" in told) == (0, True)
    assert media(folder) == []
    assert run("--yes")[0] == 1  # nothing left


def test_what_nobody_looked_at_is_measured_before_it_goes(session):
    mark_all(session)
    sign_off(session)
    film = f"{NAMES[0]}/swing video.mp4"
    assert session.film(film) is None
    purge(session, plan(session))
    opened = again(session)
    assert opened.film(film) is not None
    assert opened.photo(f"{NAMES[0]}/setup.jpg").header.width == 400
    opened.close()


def test_what_was_removed_is_no_change_of_the_learners(signed):
    signed.correct(IDS[1], signed.portfolio(IDS[1]).table.readings[0].timings[0].source, "9.99")
    purge(signed, plan(signed))
    assert not [i for i in IDS if since_marked(signed, i)]
    anew = again(signed)
    assert not [i for i in IDS if since_marked(anew, i)]
    anew.close()
