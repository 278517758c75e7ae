"""The moderator's whole evening without a window: receive, second-mark, send back, merge, sign."""

import dataclasses
import json
import zipfile

import pytest
from invented_class import IDS

from markbench.intake.brief_writing import write_brief
from markbench.moderation.pack import MANIFEST, canonical, digest_of
from markbench.moderation.records import sign_off_of
from markbench.session import Session
from markbench.session.agreeing import agreement_of, proposal_of
from markbench.session.errors import (
    BlindError,
    MergeError,
    PackError,
    RefusedError,
    SignatureError,
    SignedOffError,
)
from markbench.session.moderating import (
    decide_adjustment,
    reopen,
    sample_of,
    settle_mark,
    sign_off,
    take_sample,
)
from markbench.session.pack_session import open_pack
from markbench.session.packing import write_pack
from markbench.session.replies import merge_reply
from markbench.session.results import changed_since_sign_off, results

HER = "M. Moderator"


@pytest.fixture
def pack(marked, tmp_path):
    take_sample(marked, seed=4)
    return write_pack(marked, tmp_path / "sent" / "class.markbench-pack")


@pytest.fixture
def hers(pack):
    opened = open_pack(pack.path, HER)
    yield opened
    opened.close()


def second_mark_all(hers, level=0):
    for learner in hers.learners:
        for criterion in hers.rubric.criteria:
            hers.second_mark(learner.id, criterion.id, criterion.levels[level].name)


def reply_of(hers, folder, name="back.markbench-reply"):
    hers.write_reply(folder / name)
    return folder / name


def test_the_whole_evening(marked, pack, hers, tmp_path):
    assert hers.code == pack.code
    assert {learner.name for learner in hers.learners} == {f"Learner 0{n}" for n in range(1, 5)}
    ada, ben = pack.numbers[IDS[0]], pack.numbers[IDS[1]]
    # The same numbers as on the first marker's desk.
    assert hers.analysis(ada) == marked.analysis(IDS[0])
    assert len(hers.findings(ada)) == len(marked.findings(IDS[0]))
    piece = hers.portfolio(ada).of_kind("setup_photo")[0]
    assert hers.data(piece)[:2] == b"\xff\xd8"

    second_mark_all(hers)
    criterion, other = (c.id for c in hers.rubric.criteria[:2])
    first = hers.first(ada)[criterion]
    best, worst = hers.rubric.criteria[0].levels[0], hers.rubric.criteria[0].levels[-1]
    assert (first.level, first.why) == (worst.name, f"learner {ada} left two out.")
    hers.moderate(ada, criterion, "adjust", "All five lengths are there.", best.name)
    hers.first(ben)
    hers.moderate(ben, criterion, "agree")
    hers.moderate(ben, other, "ask", "Was the second sheet lost?")

    before = results(marked)[IDS[0]]
    merge = merge_reply(marked, reply_of(hers, tmp_path))
    assert merge.clashes == ()
    after = results(marked)
    row = after[IDS[0]].of(criterion)
    assert (row.marks, row.why) == (best.marks, f"adjusted by {HER}: All five lengths are there.")
    assert after[IDS[0]].total == before.total + best.marks - worst.marks
    assert row.first.by == "T. Teacher"
    assert (row.seconds[0].by, row.seconds[0].level) == (HER, best.name)
    asked = f"{other}: {HER} asks: Was the second sheet lost?"
    assert asked in after[IDS[1]].open
    found = agreement_of(marked)
    assert len(found.learners) == 4
    assert found.criteria[0].exact.count < 4

    decide_adjustment(marked, "leave", "Four learners are too few to move a class.")
    with pytest.raises(RefusedError, match="second sheet lost"):
        sign_off(marked)
    for learner, one in results(marked).items():
        for open_row in [row for row in one.criteria if row.open]:
            settle_mark(marked, learner, open_row.criterion, open_row.level, "Looked again.")
    sign_off(marked, "Agreed on the telephone.")
    signed = sign_off_of(marked.state)
    assert (signed.by, signed.note) == ("T. Teacher", "Agreed on the telephone.")
    assert signed.results[IDS[0]][0] == after[IDS[0]].total
    with pytest.raises(SignedOffError, match=r"signed off by T\. Teacher"):
        marked.set_level(IDS[2], criterion, worst.name)


# --- blind first --------------------------------------------------------------------------


def test_first_marks_are_hidden_until_every_criterion_is_second_marked(hers):
    number = hers.learners[0].id
    rows = hers.rubric.criteria
    for criterion in rows[:-1]:
        hers.second_mark(number, criterion.id, criterion.levels[0].name)
    with pytest.raises(BlindError, match="second-marked"):
        hers.first(number)
    with pytest.raises(BlindError, match="first"):
        hers.moderate(number, rows[0].id, "agree")
    hers.second_mark(number, rows[-1].id, rows[-1].levels[0].name)
    hers.second_mark(number, rows[0].id, rows[0].levels[1].name)  # still free to think again
    assert len(hers.first(number)) == len(rows)
    with pytest.raises(BlindError, match="stands"):
        hers.second_mark(number, rows[0].id, rows[0].levels[0].name)
    assert not hers.has_looked(hers.learners[1].id)


def test_she_may_stop_and_go_on(pack):
    hers = open_pack(pack.path, HER)
    row = hers.rubric.criteria[0]
    hers.second_mark("01", row.id, row.levels[0].name)
    hers.close()
    again = open_pack(pack.path, HER)
    assert again.second("01", row.id).level == row.levels[0].name
    assert again.progress("01") == (1, len(again.rubric.criteria))
    again.close()


def test_words_are_needed_where_they_matter(hers):
    second_mark_all(hers)
    number, row = hers.learners[0].id, hers.rubric.criteria[0]
    hers.first(number)
    for action, why, level in (
        ("adjust", "", row.levels[0].name),
        ("ask", " ", None),
        ("adjust", "Reason.", None),
        ("agree", "", row.levels[0].name),
        ("applaud", "", None),
        ("adjust", "Reason.", "No such level"),
    ):
        with pytest.raises(RefusedError):
            hers.moderate(number, row.id, action, why, level)
    with pytest.raises(RefusedError):
        hers.second_mark("99", row.id, row.levels[0].name)
    assert hers.moderated(number, row.id) is None


# --- merging replies ----------------------------------------------------------------------


def test_merging_twice_changes_nothing(marked, hers, tmp_path):
    second_mark_all(hers)
    path = reply_of(hers, tmp_path)
    assert merge_reply(marked, path).decisions
    length, state = len(marked.history()), dict(marked.state)
    again = merge_reply(marked, path)
    assert again.decisions == ()
    assert (len(marked.history()), dict(marked.state)) == (length, state)


def test_an_older_reply_after_a_newer_one_takes_nothing_back(marked, hers, tmp_path):
    second_mark_all(hers)
    number, row = hers.learners[0].id, hers.rubric.criteria[0]
    hers.first(number)
    hers.moderate(number, row.id, "ask", "Is there more?")
    early = reply_of(hers, tmp_path, "early.markbench-reply")
    hers.moderate(number, row.id, "agree")
    late = reply_of(hers, tmp_path, "late.markbench-reply")
    merge_reply(marked, late)
    merge_reply(marked, early)
    learner = next(x for x in IDS if results(marked)[x].of(row.id).moderated)
    assert results(marked)[learner].of(row.id).moderated[0].action == "agree"


def test_two_moderators_in_either_order(marked, pack, folder, tmp_path):
    replies = []
    for who, level in ((HER, 0), ("O. Other", -1)):
        hers = open_pack(pack.path, who)
        second_mark_all(hers, level)
        for learner in hers.learners:
            hers.first(learner.id)
            row = hers.rubric.criteria[0]
            hers.moderate(learner.id, row.id, "adjust", "So I see it.", row.levels[level].name)
        replies.append(reply_of(hers, tmp_path, f"{level}.markbench-reply"))
        hers.close()
    for path in replies:
        merge_reply(marked, path)
    one = results(marked)[IDS[0]].of(marked.rubric.criteria[0].id)
    assert {mark.by for mark in one.seconds} == {HER, "O. Other"}
    assert "different marks" in one.open
    assert one.marks == one.first.marks


def test_a_first_mark_changed_meanwhile_is_shown_as_a_clash(marked, pack, hers, tmp_path):
    second_mark_all(hers)
    number, row = pack.numbers[IDS[2]], hers.rubric.criteria[0]
    hers.first(number)
    hers.moderate(number, row.id, "agree")
    marked.set_level(IDS[2], row.id, row.levels[-1].name, why="Recounted.")
    merge = merge_reply(marked, reply_of(hers, tmp_path))
    assert len(merge.clashes) == 1
    assert "which is now 0" in merge.clashes[0].sentence


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda b: b["decisions"][0].update(learner="99"), "digest"),
        (lambda b: b.update(who="Somebody Else"), "digest"),
        (lambda b: b.update(format="other"), "no moderator's reply"),
        (lambda b: b.update(version=99), "another version"),
    ],
)
def test_a_tampered_reply_is_refused_with_the_reason(marked, hers, tmp_path, change, says):
    second_mark_all(hers)
    path = reply_of(hers, tmp_path)
    body = json.loads(path.read_text("utf-8"))
    change(body)
    path.write_text(json.dumps(body), "utf-8")
    before = marked.history()
    with pytest.raises(MergeError, match=says):
        merge_reply(marked, path)
    assert marked.history() == before


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda d: d.update(learner="99"), "was not in the pack"),
        (lambda d: d.update(kind="mark"), "holds no 'mark'"),
        (lambda d: d.update(subject="raw|Somebody Else"), "somebody else"),
        (lambda d: d["value"].update(marks=99.0), "no such level"),
        (lambda d: d.update(at="yesterday"), "entry 1"),
        (lambda d: d.pop("why"), "entry 1"),
    ],
)
def test_a_reply_forged_with_its_digest_is_still_read_with_care(
    marked, hers, tmp_path, change, says
):
    second_mark_all(hers)
    path = reply_of(hers, tmp_path)
    body = json.loads(path.read_text("utf-8"))
    del body["digest"]
    change(body["decisions"][0])
    path.write_text(json.dumps({**body, "digest": digest_of(canonical(body))}), "utf-8")
    with pytest.raises(MergeError, match=says):
        merge_reply(marked, path)


@pytest.mark.parametrize("data", [b"", b"[]", b"\xff\xfe", b"{}", b"null", b"[" * 100_000])
def test_what_is_no_reply(marked, tmp_path, data):
    path = tmp_path / "x.markbench-reply"
    path.write_bytes(data)
    with pytest.raises(MergeError):
        merge_reply(marked, path)


# --- packs that are not to be trusted -----------------------------------------------------


def rewritten(path, change):
    with zipfile.ZipFile(path) as archive:
        members = {name: archive.read(name) for name in archive.namelist()}
    change(members)
    with zipfile.ZipFile(path, "w") as archive:
        for name, data in members.items():
            archive.writestr(name, data)
    return path


def other_version(manifest):
    return canonical({**json.loads(manifest), "version": 7})


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda m: m.update({"01/first.json": b"[]"}), "01/first.json is not as it was packed"),
        (lambda m: m.update({"03/extra.jpg": b"x"}), "slipped in"),
        (lambda m: m.pop("02/portfolio.json"), "02/portfolio.json is missing"),
        (lambda m: m.pop(MANIFEST), "no manifest"),
        (lambda m: m.update({MANIFEST: b"{}"}), "no moderation pack"),
        (lambda m: m.update({MANIFEST: other_version(m[MANIFEST])}), "another version"),
    ],
)
def test_a_tampered_pack_does_not_open(pack, change, says):
    with pytest.raises(PackError, match=says):
        open_pack(rewritten(pack.path, change), HER)


def test_a_pack_rewritten_with_all_its_digests_brings_no_marks_back(marked, pack, tmp_path):
    def change(members):
        members["01/first.json"] = members["01/first.json"].replace(b"T. Teacher", b"X. Teacher")
        manifest = json.loads(members[MANIFEST])
        manifest["members"]["01/first.json"] = digest_of(members["01/first.json"])
        members[MANIFEST] = canonical(manifest)

    hers = open_pack(rewritten(pack.path, change), HER)
    assert hers.code != pack.code
    second_mark_all(hers)
    path = reply_of(hers, tmp_path)
    hers.close()
    with pytest.raises(MergeError, match="did not send out"):
        merge_reply(marked, path)


def test_a_damaged_file_and_no_file(pack, tmp_path):
    data = pack.path.read_bytes()
    (tmp_path / "half.markbench-pack").write_bytes(data[: len(data) // 2])
    (tmp_path / "text.markbench-pack").write_bytes(b"hello")
    for name in ("half", "text", "gone"):
        with pytest.raises(PackError):
            open_pack(tmp_path / f"{name}.markbench-pack", HER)
    with pytest.raises(PackError, match="name"):
        open_pack(pack.path, "  ")


# --- adjustment, sign-off, reopening ------------------------------------------------------


def test_adjustment_is_proposed_and_only_a_person_applies_it(marked, hers, tmp_path):
    second_mark_all(hers, -1)
    merge_reply(marked, reply_of(hers, tmp_path))
    before = {x: one.total for x, one in results(marked).items()}
    # Four learners: the exact test cannot go below 2/16, so nothing may be proposed.
    assert proposal_of(marked) is None
    with pytest.raises(RefusedError, match="reason"):
        decide_adjustment(marked, "adjust", "", -1)
    with pytest.raises(RefusedError, match="leave"):
        decide_adjustment(marked, "adjust", "Too kind.", 0)
    with pytest.raises(RefusedError):
        decide_adjustment(marked, "guess", "Too kind.")
    assert {x: one.total for x, one in results(marked).items()} == before
    decide_adjustment(marked, "adjust", "Too kind.", -1)
    after = {x: one.total for x, one in results(marked).items()}
    assert after == {x: max(total - 1, 0) for x, total in before.items()}


def test_sign_off_needs_everyone_marked(session):
    session.accept(IDS[0])
    with pytest.raises(RefusedError, match="Ben Made-Up"):
        sign_off(session)


def test_undo_cannot_reach_behind_the_signature_and_reopening_is_a_decision(marked):
    row = marked.rubric.criteria[0]
    sign_off(marked)
    with pytest.raises(SignatureError):
        marked.undo()
    assert sign_off_of(marked.state) is not None
    with pytest.raises(RefusedError, match="already"):
        sign_off(marked)
    with pytest.raises(SignedOffError):
        marked.set_feedback(IDS[0], row.id, "Changed.")
    with pytest.raises(SignedOffError):
        decide_adjustment(marked, "leave", "Why not.")
    marked.set_note(IDS[0], "A note may still be written.")
    with pytest.raises(RefusedError, match="reason"):
        reopen(marked, " ")
    reopen(marked, "A sheet turned up.")
    marked.set_level(IDS[0], row.id, row.levels[0].name)
    kinds = [d.kind for d in marked.history()]
    assert kinds.count("reopen") == 1
    sign_off(marked)
    reopen(marked, "A sheet turned up.")  # the same reason twice is two decisions
    assert [d.kind for d in marked.history()].count("reopen") == 2


def test_a_reply_after_sign_off_waits_for_reopening(marked, hers, tmp_path):
    second_mark_all(hers)
    sign_off(marked)
    path = reply_of(hers, tmp_path)
    with pytest.raises(SignedOffError):
        merge_reply(marked, path)
    reopen(marked, "The reply came late.")
    assert merge_reply(marked, path).decisions


def test_a_boundary_moved_after_signing_is_noticed(marked, folder):
    sign_off(marked)
    assert changed_since_sign_off(marked) == {}
    brief = dataclasses.replace(marked.brief, grade_boundaries=(("A", 0.5),))
    marked.close()
    write_brief(folder / "brief.toml", brief)
    again = Session.open(folder, "T. Teacher")
    changed = changed_since_sign_off(again)
    assert changed
    assert all(now[1] == "A" != was[1] for was, now in changed.values())
    again.close()


def test_the_sample_is_recorded_with_its_seed(marked):
    drawn = take_sample(marked, seed=11)
    assert sample_of(marked) == drawn
    assert marked.history()[-1].kind == "sample"
    assert marked.history()[-1].value["seed"] == 11
    take_sample(marked)
    assert sample_of(marked).seed != 11
