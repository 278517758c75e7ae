"""Two journals put together: nothing lost, nothing twice, the same marks on both machines."""

import datetime as dt
from collections import Counter

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from markbench.model import Decision
from markbench.session.merging import identity, merge_journals
from markbench.store import fold

START = dt.datetime(2026, 3, 20, 17, tzinfo=dt.UTC)
CRITERIA = ("raw_data", "graph")
LEARNERS = ("01", "02")


def numbered(decisions, after=0):
    return [
        Decision(*d.key, d.value, d.before, d.who, d.at, d.why, d.undoes, n)
        for n, d in enumerate(decisions, after + 1)
    ]


def merged(mine, theirs):
    """My journal with theirs merged in, as the store would number it."""
    return [*mine, *numbered(merge_journals(mine, theirs).decisions, len(mine))]


def in_force(journal):
    return {key: (d.value, d.who, d.at) for key, d in fold(journal).items()}


def mark(learner, marks, who, minute, criterion="raw_data"):
    value = {"level": f"L{marks}", "marks": marks, "feedback": f"Text of {who}."}
    at = START + dt.timedelta(minutes=minute)
    return Decision("mark", learner, criterion, value, who=who, at=at)


def said(kind, learner, subject, value, who, minute):
    at = START + dt.timedelta(minutes=minute)
    return Decision(kind, learner, subject, value, who=who, at=at)


@st.composite
def entries(draw, who, minutes):
    """What one teacher decided on her own machine, at increasing times."""
    found = []
    for minute in draw(st.lists(st.sampled_from(minutes), unique=True, max_size=7).map(sorted)):
        learner, criterion = draw(st.sampled_from(LEARNERS)), draw(st.sampled_from(CRITERIA))
        kind = draw(st.sampled_from(["mark", "mark", "feedback", "note", "extension", "unmark"]))
        if kind == "mark":
            found.append(mark(learner, draw(st.integers(0, 3)), who, minute, criterion))
        elif kind == "unmark":
            found.append(said("mark", learner, criterion, None, who, minute))
        elif kind == "extension":
            day = draw(st.sampled_from(["2026-03-18", "2026-03-21", None]))
            found.append(said("extension", learner, "", day, who, minute))
        else:
            text = draw(st.sampled_from(["one", "two", "three"]))
            found.append(said(kind, learner, criterion, text, who, minute))
    return found


# Times never coincide between the two, but otherwise interleave in any way.
BASE = entries("A", range(0, 20))
OURS, THEIRS = entries("A", range(20, 60, 2)), entries("B", range(21, 61, 2))
LATER_OURS, LATER_THEIRS = entries("A", range(60, 80, 2)), entries("B", range(61, 81, 2))


@settings(max_examples=100, deadline=None, derandomize=True)
@given(BASE, OURS, THEIRS, LATER_OURS, LATER_THEIRS)
def test_any_two_journals(base, ours, theirs, later_ours, later_theirs):
    a, b = numbered([*base, *ours]), numbered([*base, *theirs])
    for more_a, more_b in (([], []), (later_ours, later_theirs)):
        a, b = [*a, *numbered(more_a, len(a))], [*b, *numbered(more_b, len(b))]
        ab, ba = merged(a, b), merged(b, a)
        assert in_force(ab) == in_force(ba)  # it does not matter who merges
        assert merge_journals(ab, b).decisions == ()  # twice is once
        assert merge_journals(ab, ba).decisions == ()
        ids = Counter(identity(d) for d in ab if d.undoes is None)
        assert max(ids.values(), default=0) <= 1  # no double entry
        assert {identity(d) for d in (*a, *b)} <= {identity(d) for d in ab}  # nothing lost
        assert ab[: len(a)] == a  # what was written stays as it was
        a, b = ab, ba


@settings(max_examples=60, deadline=None, derandomize=True)
@given(BASE, OURS, THEIRS)
def test_no_mark_of_either_hand_is_silently_overwritten(base, ours, theirs):
    a, b = numbered([*base, *ours]), numbered([*base, *theirs])
    after = fold(merged(a, b))
    for learner in LEARNERS:
        for criterion in CRITERIA:
            key = ("mark", learner, criterion)
            mine, other = fold(a).get(key), fold(b).get(key)
            if mine is None or other is None or mine.who == other.who:
                continue
            if not ({d.key for d in ours} & {key} and {d.key for d in theirs} & {key}):
                continue
            given = {mine.who: mine, other.who: other}
            first = after[key]
            second_marker = next(who for who in given if who != first.who)
            second = after[("second_mark", learner, f"{criterion}|{second_marker}")]
            assert second.who == second_marker
            for one in (first, second):
                assert one.value["marks"] == given[one.who].value["marks"]
                assert one.at == given[one.who].at


def test_two_halves_of_a_class_simply_add_up():
    mine, theirs = numbered([mark("01", 3, "A", 1)]), numbered([mark("02", 2, "B", 2)])
    merge = merge_journals(mine, theirs)
    assert [d.learner for d in merge.decisions] == ["02"]
    assert merge.decisions[0].who == "B"
    assert (merge.doubles, merge.clashes, merge.known) == ((), (), 0)


def test_the_same_learner_marked_twice_is_a_double_mark_on_either_machine():
    mine, theirs = numbered([mark("01", 3, "A", 5)]), numbered([mark("01", 1, "B", 2)])
    for one, other in ((mine, theirs), (theirs, mine)):
        merge = merge_journals(one, other)
        state = fold(merged(one, other))
        assert state["mark", "01", "raw_data"].value["marks"] == 1  # B was earlier
        assert state["second_mark", "01", "raw_data|A"].value == {
            "level": "L3", "marks": 3, "feedback": "Text of A.",
        }  # fmt: skip
        assert len(merge.doubles) == 1
        assert "A (3)" in merge.doubles[0].sentence
        assert "B (1)" in merge.doubles[0].sentence


@pytest.mark.parametrize("hours_wrong", [-5, 0, 5])
def test_a_wrong_clock_does_not_make_whoever_marked_less_the_first(hours_wrong):
    mine = numbered([mark("01", 3, "A", 5), mark("01", 2, "A", 6, "graph")])
    theirs = numbered([mark("01", 1, "B", 7 + 60 * hours_wrong)])
    for one, other in ((mine, theirs), (theirs, mine)):
        merge = merge_journals(one, other)
        state = fold(merged(one, other))
        assert state["mark", "01", "raw_data"].who == "A"
        assert state["second_mark", "01", "raw_data|B"].value["marks"] == 1
        assert "A marked more of this learner" in merge.doubles[0].sentence


def test_one_learner_has_one_first_marker_whatever_the_order_of_criteria():
    """A marked the graph last and B the table last: by the clock alone each would be first once."""
    mine = numbered([mark("01", 3, "A", 1), mark("01", 3, "A", 9, "graph")])
    theirs = numbered([mark("01", 1, "B", 4, "graph"), mark("01", 1, "B", 8)])
    merge = merge_journals(mine, theirs)
    state = fold(merged(mine, theirs))
    assert {state["mark", "01", criterion].who for criterion in CRITERIA} == {"A"}
    assert all("by the clocks" in one.sentence for one in merge.doubles)


def test_equal_marks_of_two_people_are_two_marks_and_no_clash():
    merge = merge_journals(numbered([mark("01", 3, "A", 5)]), numbered([mark("01", 3, "B", 2)]))
    assert any(d.kind == "second_mark" for d in merge.decisions)
    assert merge.clashes == ()


def test_the_text_goes_with_the_mark_it_was_written_for():
    mine = numbered([mark("01", 3, "A", 5), said("feedback", "01", "raw_data", "Mine.", "A", 9)])
    theirs = numbered([mark("01", 1, "B", 2)])
    state = fold(merged(mine, theirs))
    assert ("feedback", "01", "raw_data") not in state
    assert state["mark", "01", "raw_data"].value["feedback"] == "Text of B."
    assert state["second_mark", "01", "raw_data|A"].value["feedback"] == "Mine."


def test_an_entry_said_again_says_what_it_takes_back():
    """Both go on marking after a merge; the text of the first mark has to come back."""
    base = [mark("01", 2, "B", 1), said("feedback", "01", "raw_data", "one", "B", 2)]
    mine = [*base, mark("01", 3, "A", 9), said("feedback", "01", "raw_data", "one", "A", 10)]
    merge = merge_journals(numbered(mine), numbered([*base, mark("01", 1, "B", 5)]))
    again = [d for d in merge.decisions if identity(d) == identity(base[1])]
    assert [d.undoes for d in again] == [4]


def test_a_colleague_who_saw_the_mark_and_changed_it_has_changed_it():
    base = [mark("01", 3, "A", 1)]
    mine, theirs = numbered(base), numbered([*base, mark("01", 2, "B", 8)])
    merge = merge_journals(mine, theirs)
    assert merge.doubles == ()
    assert in_force(merged(mine, theirs)) == in_force(theirs)


def test_other_clashes_are_shown_and_the_later_holds():
    mine = numbered([said("extension", "01", "", "2026-03-18", "A", 9)])
    theirs = numbered([said("extension", "01", "", "2026-03-25", "B", 2)])
    merge = merge_journals(mine, theirs)
    assert "A and B decided differently" in merge.clashes[0].sentence
    assert fold(merged(mine, theirs))["extension", "01", ""].value == "2026-03-18"


def test_what_one_person_decided_twice_is_counted_and_is_no_clash():
    """A moderator who lost the file beside her pack marks it afresh."""

    def second(level, at):
        value = {"level": f"L{level}", "marks": float(level), "feedback": ""}
        return said("second_mark", "01", "raw_data|M", value, "M", at)

    mine, theirs = numbered([second(3, 2)]), numbered([second(1, 9)])
    for one, other in ((mine, theirs), (theirs, mine)):
        merge = merge_journals(one, other)
        assert (merge.clashes, merge.revised) == ((), 1)
        assert fold(merged(one, other))["second_mark", "01", "raw_data|M"].value["marks"] == 1.0
    assert "1 changed by the same person" in str(merge)


def test_a_text_one_person_wrote_twice_is_still_shown():
    mine = numbered([said("feedback", "01", "raw_data", "At school.", "A", 9)])
    theirs = numbered([said("feedback", "01", "raw_data", "At home.", "A", 2)])
    merge = merge_journals(mine, theirs)
    assert (len(merge.clashes), merge.revised) == (1, 0)


def test_notes_are_joined():
    mine = numbered([said("note", "01", "", "rope frayed", "A", 9)])
    theirs = numbered([said("note", "01", "", "asked on Monday", "B", 2)])
    assert fold(merged(mine, theirs))["note", "01", ""].value == "asked on Monday\nrope frayed"


def test_an_undoing_entry_points_at_the_undone_one_in_my_numbering():
    wrong = mark("02", 1, "B", 1)
    back = said("mark", "02", "raw_data", None, "B", 2)
    theirs = numbered([wrong, back])
    theirs[1] = Decision(*back.key, None, who="B", at=back.at, undoes=1, number=2)
    mine = numbered([mark("01", 3, "A", 5), mark("01", 2, "A", 6)])
    assert [d.undoes for d in merged(mine, theirs)] == [None, None, None, 3]


@pytest.mark.parametrize("theirs", [[], [mark("01", 3, "A", 5)]])
def test_nothing_new_is_nothing_to_do(theirs):
    mine = numbered([mark("01", 3, "A", 5)])
    assert merge_journals(mine, numbered(theirs)).decisions == ()
