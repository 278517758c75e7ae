"""The evening by the command line, as somebody types it."""

import csv
import shutil

import pytest
from invented_class import IDS, mark_all

from markbench import cli
from markbench.session import Session
from markbench.session.results import results


def no_window(folder):
    raise AssertionError("no window was asked for")


@pytest.fixture
def run(capsys):
    def typed(*arguments, code=0):
        assert cli.main([str(one) for one in arguments], no_window) == code
        captured = capsys.readouterr()
        return captured.err if code else captured.out

    return typed


@pytest.fixture
def marked_folder(folder):
    session = Session.open(folder, "T. Teacher")
    mark_all(session)
    rubric = session.rubric
    session.close()
    return folder, rubric


def test_sample_pack_second_mark_merge_sign_journal(run, marked_folder, tmp_path):
    folder, rubric = marked_folder
    assert "seed 4" in run("sample", folder, "--seed", 4)
    packed = run("pack", folder)
    pack = folder / "markbench-out" / "moderation.markbench-pack"
    assert str(pack) in packed.replace("\n", "")
    code = packed.split("Check code: ")[1].strip()
    reply = tmp_path / "back.markbench-reply"
    give = []
    for criterion in rubric.criteria:
        give += ["--give", "01", criterion.id, criterion.levels[0].name]
    told = run("second-mark", pack, "--as", "M. Moderator", *give)
    assert code in told
    assert f"{len(rubric.criteria)} of {len(rubric.criteria)}" in told
    row = rubric.criteria[0]
    told = run(
        "second-mark", pack, "--as", "M. Moderator", "--first", "01",
        "--ask", "01", row.id, "Is there more?", "--reply", reply,
    )  # fmt: skip
    assert "T. Teacher" in told
    added = len(rubric.criteria) + 2
    assert f"{added} entries added, 0 known" in run("merge", folder, reply)
    assert f"0 entries added, {added} known" in run("merge", folder, reply)
    assert "on purpose" in run("agreement", folder).replace("\n", " ")
    assert "Is there more?" in run("sign-off", folder, code=1).replace("\n", " ")
    assert "4 learners" in run("sign-off", folder, "--despite-open", "--note", "Agreed.")
    assert "Reopened" in run("reopen", folder, "--why", "A sheet turned up.")
    listing = run("journal", folder)
    lines = [line for line in listing.splitlines() if line.strip()]
    assert "M. Moderator  moderated" in listing
    assert "because Is there more?" in listing
    assert "sign_off" in lines[-1]
    assert len(run("journal", folder, "--learner", IDS[0]).splitlines()) < len(lines)


def test_adjust_settle_freeze_and_export_by_command(run, marked_folder, tmp_path):
    folder, rubric = marked_folder
    row = rubric.criteria[0]
    run("sample", folder, "--seed", 4)
    run("pack", folder)
    pack, reply = (
        folder / "markbench-out" / "moderation.markbench-pack",
        tmp_path / "b.markbench-reply",
    )
    give = [word for c in rubric.criteria for word in ("--give", "01", c.id, c.levels[1].name)]
    run("second-mark", pack, "--as", "M. Moderator", *give)
    last = row.levels[-1].name
    run("second-mark", pack, "--as", "M. Moderator", "--first", "01",
        "--adjust", "01", row.id, last, "Nothing holds.", "--reply", reply)  # fmt: skip
    run("merge", folder, reply)
    session = Session.open(folder, "T. Teacher", read_only=True)
    learner = next(d.value["numbers"]["01"] for d in session.history() if d.kind == "pack")
    other = next(i for i in IDS if i != learner)
    before = {i: one.total for i, one in results(session).items()}
    session.close()

    assert "needs its reason" in run("adjustment", folder, "leave", "--why", " ", code=1)
    told = run("adjustment", folder, "adjust", "--by", "-1", "--why", "Too kind.")
    assert "3 totals moved" in told  # all but the one that the moderator went through
    run("settle", folder, other, row.id, last, "--why", "Looked again.")
    assert "not in the class list" in run(
        "settle", folder, "99", row.id, last, "--why", "x", code=1
    )
    for criterion in rubric.criteria[1:]:
        run("settle", folder, learner, criterion.id, criterion.levels[1].name, "--why", "As given.")
    run("sign-off", folder)
    for arguments in (
        ("settle", folder, other, row.id, row.levels[0].name, "--why", "No."),
        ("adjustment", folder, "leave", "--why", "No."),
        ("sample", folder),
        ("merge", folder, reply),
    ):
        refused = run(*arguments, code=0 if arguments[0] == "merge" else 1)
        told = "0 entries added" if arguments[0] == "merge" else "signed off by"
        assert told in refused.replace("\n", " ")
    run("export", folder, "--feedback", "--record")
    with (folder / "markbench-out" / "mark_sheet.csv").open(encoding="utf-8-sig") as file:
        rows = {line["Id"]: line for line in csv.DictReader(file)}
    total = next(heading for heading in rows[learner] if heading.startswith("Total"))
    assert float(rows[learner][total]) < before[learner] + 1
    third = next(i for i in IDS if i not in (learner, other))
    assert float(rows[third][total]) == before[third] - 1
    assert rows[third]["Adjustment"] == "-1"
    assert rows[third]["Grade"] in ("A", "B", "")
    assert (folder / "markbench-out" / "moderation-record.pdf").is_file()
    run("reopen", folder, "--why", "A film came late.")
    run("settle", folder, other, row.id, row.levels[0].name, "--why", "It shows all five.")
    assert "changes, listed in" in run("export", folder)


def test_what_cannot_be_done_says_why(run, folder, tmp_path):
    assert "draw one first" in run("pack", folder, code=1)
    assert "not fully marked" in run("sign-off", folder, code=1)
    assert "not in the class list" in run("journal", folder, "--learner", "99", code=1)
    assert "There is no" in run("merge", folder, tmp_path / "gone.markbench", code=1)
    pack = tmp_path / "gone.markbench-pack"
    assert "no pack" in run("second-mark", pack, "--as", "M.", code=1)
    assert "nothing to reopen" in run("reopen", folder, "--why", "Because.", code=1)


def test_two_teachers_each_with_half_a_class(run, folder, tmp_path):
    theirs = tmp_path / "their copy"
    shutil.copytree(folder, theirs)
    for place, who, learners in (
        (folder, "T. Teacher", IDS[:3]),
        (theirs, "C. Colleague", IDS[2:]),
    ):
        session = Session.open(place, who)
        mark_all(session, learners)
        session.close()
    told = run("merge", folder, theirs)
    session = Session.open(folder, "T. Teacher")
    assert all(session.total(learner) is not None for learner in IDS)
    assert session.mark(IDS[3], session.rubric.criteria[0].id).by == "C. Colleague"
    assert f"{len(session.rubric.criteria)} double marks" in told
    session.close()
    assert "0 entries added" in run("merge", folder, theirs)


def test_a_person_says_whose_mark_is_the_first(run, folder, tmp_path):
    """Both marked all of a learner, so the clocks decided; the staff room knows better."""
    theirs = tmp_path / "their copy"
    shutil.copytree(folder, theirs)
    for place, who, level in ((folder, "T. Teacher", 0), (theirs, "C. Colleague", 1)):
        session = Session.open(place, who)
        row = session.rubric.criteria[0]
        session.set_level(IDS[0], row.id, row.levels[level].name)
        session.set_feedback(IDS[0], row.id, f"From {who}.")
        session.close()
    assert "by the clocks" in run("merge", folder, theirs).replace("\n", " ")
    session = Session.open(folder, "T. Teacher", read_only=True)
    assert session.mark(IDS[0], row.id).by == "T. Teacher"
    session.close()
    refused = run("first-marker", folder, IDS[0], "N. Nobody", "--why", "So agreed.", code=1)
    assert "N. Nobody has no second mark" in refused
    told = run("first-marker", folder, IDS[0], "C. Colleague", "--why", "She had the class.")
    assert "C. Colleague" in told
    for place in (folder, theirs):
        if place is theirs:
            run("merge", theirs, folder)
        session = Session.open(place, "T. Teacher", read_only=True)
        first = session.mark(IDS[0], row.id)
        assert (first.by, first.level) == ("C. Colleague", row.levels[1].name)
        assert first.feedback == "From C. Colleague."
        second = session.value("second_mark", IDS[0], f"{row.id}|T. Teacher")
        assert (second["level"], second["feedback"]) == (row.levels[0].name, "From T. Teacher.")
        assert session.value("second_mark", IDS[0], f"{row.id}|C. Colleague") is None
        session.close()
    assert "She had the class." in run("journal", folder)
    assert "0 entries added" in run("merge", folder, theirs)


def test_another_class_is_refused(run, folder, tmp_path):
    other = tmp_path / "other"
    (other / "Eve Fictional").mkdir(parents=True)
    (other / "class_list.csv").write_text("id,name\nX9,Eve Fictional\n", "utf-8")
    (other / "Eve Fictional" / "readings.csv").write_bytes(
        next(folder.rglob("*readings.csv")).read_bytes()
    )
    session = Session.open(other, "T. Teacher")
    session.accept("X9")
    session.close()
    assert "X9 is not in this class list" in run("merge", folder, other, code=1).replace("\n", " ")
