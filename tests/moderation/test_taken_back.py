"""Merges and signatures taken back and done again: nothing lost, and no signature exchanged."""

import shutil

import pytest
from invented_class import IDS

from markbench.moderation.records import second_marks, sign_off_of
from markbench.session import Session
from markbench.session.errors import SignatureError
from markbench.session.first_marker import make_first
from markbench.session.moderating import merge_journal, reopen, sign_off, take_sample
from markbench.session.pack_session import open_pack
from markbench.session.packing import write_pack
from markbench.session.record_of import moderation_record
from markbench.session.replies import merge_reply
from markbench.store import Journal

HER, COLLEAGUE = "M. Moderator", "C. Colleague"


@pytest.fixture
def reply(marked, tmp_path):
    """A moderator's reply to a pack of the class: everything second-marked, one mark adjusted."""
    take_sample(marked, seed=4)
    pack = write_pack(marked, tmp_path / "sent" / "class.markbench-pack")
    hers = open_pack(pack.path, HER)
    for learner in hers.learners:
        for criterion in hers.rubric.criteria:
            hers.second_mark(learner.id, criterion.id, criterion.levels[0].name)
    number = hers.learners[0].id
    criterion = hers.rubric.criteria[0]
    hers.first(number)
    hers.moderate(number, criterion.id, "ask", "Was a sheet lost?")
    hers.write_reply(tmp_path / "back.markbench-reply")
    hers.close()
    return tmp_path / "back.markbench-reply"


@pytest.fixture
def double(marked, tmp_path):
    """The folder of a colleague who marked one criterion of the first learner otherwise."""
    theirs = tmp_path / "theirs"
    marked.close()
    shutil.copytree(marked.folder, theirs)
    with Journal.open(theirs / "class.markbench", who=COLLEAGUE):
        pass
    colleague = Session.open(theirs, COLLEAGUE)
    mark_anew(colleague, 0)
    colleague.set_note(IDS[2], "The colleague's note.")
    colleague.close()
    return theirs


@pytest.fixture
def mine(marked, double):
    """The class at home, after both parted: the same criterion was marked anew here, too."""
    opened = Session.open(marked.folder, "T. Teacher")
    mark_anew(opened, -1)
    yield opened
    opened.close()


def mark_anew(session, which):
    """Another level than the one that stands, for the criterion that two people mark."""
    criterion = session.rubric.criteria[1]
    held = session.mark(IDS[0], criterion.id).level
    others = [one.name for one in criterion.levels if one.name != held]
    session.set_level(IDS[0], criterion.id, others[which])


def holds(session):
    """All that is decided, with who signed it."""
    state = session.state.items()
    return {
        key: (d.value, d.who) for key, d in state
        if key[0] not in ("work", "merged", "taken_back", "first_marker", "reopen")
    }  # fmt: skip


def signatures(session):
    return {key: d.at for key, d in session.state.items() if d.who != session.who}


def anew(session):
    session.close()
    return Session.open(session.folder, session.who)


def test_a_reply_is_taken_back_and_done_again_over_closing_and_merged_afresh(marked, reply):
    before = holds(marked)
    merge_reply(marked, reply)
    after, signed = holds(marked), signatures(marked)
    assert second_marks(marked.state)
    marked = anew(marked)
    marked.undo()
    assert holds(marked) == before
    marked = anew(marked)
    marked.redo()
    assert (holds(marked), signatures(marked)) == (after, signed)
    assert merge_reply(marked, reply).decisions == ()  # it is in, as ever
    marked.undo()
    assert holds(marked) == before
    marked.undo()  # what was decided before the merge is within reach again
    assert marked.value("sample") is None
    marked.set_note(IDS[0], "something else")  # no way to do it again any more
    marked = anew(marked)
    assert len(merge_reply(marked, reply).decisions) > 0
    assert second_marks(marked.state)
    assert signatures(marked) == signed
    assert marked._journal.verify() is None
    marked.close()


def test_a_merge_taken_back_is_not_in_the_record(marked, reply):
    merge_reply(marked, reply)
    assert any("Was a sheet lost?" in one.why for one in moderation_record(marked).decisions)
    told = len(moderation_record(marked).decisions)
    marked.undo()
    assert not any("Was a sheet lost?" in one.why for one in moderation_record(marked).decisions)
    marked.redo()
    assert len(moderation_record(marked).decisions) == told


def test_a_colleagues_marks_taken_back_come_to_no_harm_with_the_colleague(mine, double):
    before = holds(mine)
    merge_journal(mine, double)
    after = holds(mine)
    assert after != before
    mine.undo()
    assert holds(mine) == before
    colleague = Session.open(double, COLLEAGUE)
    merge_journal(colleague, mine.folder)
    # That the merge was taken back here says nothing against what was decided there.
    assert colleague.value("note", IDS[2]) == "The colleague's note."
    criterion = colleague.rubric.criteria[1].id
    both = {
        colleague.mark(IDS[0], criterion).by,
        second_marks(colleague.state)[IDS[0]][criterion][0].by,
    }
    assert both == {"T. Teacher", COLLEAGUE}
    colleague.close()
    mine.redo()
    assert holds(mine) == after


def test_first_and_second_mark_turned_round_and_back_keep_their_signatures(mine, double):
    merge_journal(mine, double)
    criterion = mine.rubric.criteria[1].id
    first, (second,) = mine.mark(IDS[0], criterion), second_marks(mine.state)[IDS[0]][criterion]
    make_first(mine, IDS[0], second.by, "agreed in the staff room")
    turned = mine.mark(IDS[0], criterion)
    assert (turned.by, turned.at) == (second.by, second.at)
    mine.undo()
    back = mine.mark(IDS[0], criterion)
    assert (back.by, back.at, back.level) == (first.by, first.at, first.level)
    assert [(m.by, m.at) for m in second_marks(mine.state)[IDS[0]][criterion]] == [
        (second.by, second.at)
    ]
    mine.redo()
    again = mine.mark(IDS[0], criterion)
    assert (again.by, again.at) == (second.by, second.at)


def test_what_somebody_else_had_marked_comes_back_with_that_signature(marked):
    first = marked.mark(IDS[0], marked.rubric.criteria[0].id)
    marked.close()
    other = Session.open(marked.folder, COLLEAGUE)
    level = other.rubric.criteria[0].levels[0].name
    other.set_level(IDS[0], first.criterion, level)
    other.set_note(IDS[0], "and a note")
    other.undo()
    other = anew(other)
    other.undo()
    back = other.mark(IDS[0], first.criterion)
    assert (back.by, back.at, back.level) == ("T. Teacher", first.at, first.level)
    other.redo()
    assert other.mark(IDS[0], first.criterion).by == COLLEAGUE
    assert other.mark(IDS[0], first.criterion).level == level
    assert other._journal.verify() is None
    other.close()


def test_a_signature_is_lifted_and_given_again_by_undo_where_one_is_sure(marked):
    sign_off(marked, "Agreed.")
    marked = anew(marked)
    with pytest.raises(SignatureError):
        marked.undo()
    marked.undo(sure=True)
    assert sign_off_of(marked.state) is None
    lifted = [d for d in marked.history() if d.kind == "reopen"]
    assert [(d.who, d.why) for d in lifted] == [("T. Teacher", "undone")]
    assert any(one.what == "Reopened" for one in moderation_record(marked).decisions)
    marked = anew(marked)
    with pytest.raises(SignatureError):
        marked.redo()
    marked.redo(sure=True)
    signed = sign_off_of(marked.state)
    assert (signed.by, signed.note) == ("T. Teacher", "Agreed.")
    marked.undo(sure=True)
    (latest,) = [d for d in marked.history() if d.kind == "reopen" and d.value is not None][-1:]
    assert (latest.why, latest.value) == ("undone", {"sign_off": signed.number})
    marked.undo()  # and on to what was decided before
    assert marked.value("note", IDS[1]) is None
    marked.close()


def test_a_reopening_taken_back_brings_the_signature_back_as_it_was_given(marked):
    sign_off(marked, "Agreed.")
    signed = sign_off_of(marked.state)
    marked.close()
    other = Session.open(marked.folder, COLLEAGUE)
    reopen(other, "a sheet turned up")
    with pytest.raises(SignatureError):
        other.undo()
    other = anew(other)
    other.undo(sure=True)
    back = sign_off_of(other.state)
    assert (back.by, back.at, back.note) == (signed.by, signed.at, signed.note)
    with pytest.raises(SignatureError):
        other.redo()
    other.redo(sure=True)
    assert sign_off_of(other.state) is None
    other.close()
