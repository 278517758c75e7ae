"""What stayed out of a pack, what is open and the figures can be said in another language."""

from __future__ import annotations

import zipfile

import numpy as np
import pytest
from invented_class import IDS
from test_outcome import moderated, result, second

from any_language import left_in_english
from markbench.export.changes import RECORD_NAME, changes_since, note_changes
from markbench.model import Decision
from markbench.moderation.differences import limits_of_agreement
from markbench.moderation.intraclass import intraclass
from markbench.moderation.pack import LEFT_OUT, SHIPPED, LeftOut, summed_up
from markbench.moderation.severity import severity
from markbench.session.errors import MergeError, PackError, RefusedError
from markbench.session.forms import with_odd
from markbench.session.moderating import sign_off, take_in, take_sample
from markbench.session.pack_content import read_content
from markbench.session.pack_media import NotCleanError, clean_photo, clean_video
from markbench.session.pack_reports import words_of
from markbench.session.packing import write_pack
from markbench.session.report import class_report


def assert_whole(text: str, *, kept: str = "") -> None:
    assert text
    assert left_in_english(text, kept=kept) == []


def test_what_stayed_out_of_a_pack(marked, tmp_path):
    take_sample(marked, seed=4)
    packed = write_pack(marked, tmp_path / "a.markbench-pack")
    assert packed.left_out
    for one in packed.left_out:
        assert_whole(str(one))
    for line in (*summed_up(packed.left_out), *SHIPPED, *LEFT_OUT):
        assert_whole(line)


@pytest.mark.parametrize(
    "make",
    [
        lambda: clean_photo(b"no photo"),
        lambda: clean_video(b"no video"),
        lambda: words_of("a.rtf", b"{}"),
        lambda: words_of("a.txt", b" "),
        lambda: words_of("a.docx", b"PK"),
    ],
)
def test_why_a_piece_cannot_leave(make):
    with pytest.raises(NotCleanError) as told:
        make()
    assert_whole(str(told.value))
    assert_whole(str(LeftOut("03", "", str(told.value))))


def test_a_sentence_with_its_own_full_stop_gets_no_second_one():
    one = LeftOut("03", "selfie", "It is not there any more.")
    assert str(one) == "Learner 03: selfie left out: It is not there any more."
    assert summed_up([one]) == ("selfie of learner 03: It is not there any more.",)


def test_how_a_pack_was_changed(marked, tmp_path):
    take_sample(marked, seed=4)
    path = write_pack(marked, tmp_path / "a.markbench-pack").path
    with zipfile.ZipFile(path, "a") as archive:
        archive.writestr("more.txt", "more")
    with pytest.raises(PackError, match=r"more.txt was slipped in") as told:
        read_content(path)
    assert_whole(str(told.value))


@pytest.mark.parametrize(
    "decisions",
    [
        (second(4),),
        (moderated("ask", why="Whole?"), moderated("ask", why="Why?", who="C. Colleague")),
        (moderated("adjust", 4), moderated("adjust", 3, who="C. Colleague")),
    ],
)
def test_what_is_open_between_markers(decisions):
    (words,) = result(*decisions).open
    assert_whole(words)


def test_signing_refused_for_what_is_open(marked):
    criterion = marked.rubric.criteria[0]
    level = criterion.levels[0]
    value = {"level": level.name, "marks": level.marks, "feedback": ""}
    key = f"{criterion.id}|M. Moderator"
    marked.decide(Decision("second_mark", IDS[0], key, value, who="M. Moderator"))
    with pytest.raises(RefusedError, match="Still open between markers: ") as told:
        sign_off(marked)
    assert_whole(str(told.value))


def test_what_cannot_be_merged(marked):
    best = {"level": "Good", "marks": 1.0, "feedback": ""}
    foreign = [
        Decision("note", "nobody", "", "A word.", who="C. Colleague"),
        Decision("mark", IDS[0], "beauty", best, who="C. Colleague"),
    ]
    for decision in foreign:
        with pytest.raises(MergeError) as told:
            take_in(marked, [decision])
        assert_whole(str(told.value))


@pytest.mark.parametrize("pairs", [(), ((8, 9),), ((8, 8), (8, 8)), ((8, 9), (12, 15), (10, 10))])
def test_figures_of_two_markers(pairs):
    first, second = [one for one, _ in pairs], [other for _, other in pairs]
    assert_whole(str(limits_of_agreement(first, second)))
    assert_whole(str(severity(first, second)))
    for form in intraclass(np.asarray(pairs, float).reshape(-1, 2)).forms:
        assert_whole(str(form))


def test_what_changed_since_the_last_export(marked, tmp_path):
    assert note_changes(tmp_path, class_report(marked)).found == ()
    criterion = marked.rubric.criteria[0]
    held = marked.mark(IDS[0], criterion.id)
    other = next(level for level in criterion.levels if level.name != held.level)
    marked.set_level(IDS[0], criterion.id, other.name, why="Seen again.")
    marked.set_feedback(IDS[0], criterion.id, "Another text.")
    found = changes_since(tmp_path, class_report(marked)).found
    assert {str(one.what) for one in found} >= {"level", "marks", "feedback", "total"}
    for one in found:
        assert_whole(str(one), kept=criterion.title)
    for record in ('{"format": 0}', '{"format": 1, "learners": []}'):
        (tmp_path / RECORD_NAME).write_text(record)
        assert_whole(changes_since(tmp_path, class_report(marked)).unreadable)


def test_entries_that_cannot_be_used(session):
    odd = [Decision("note", IDS[0], "", 7, number=number) for number in range(1, 9)]
    (*_, finding) = with_odd(session.work, "class.markbench", odd).problems
    assert finding.message == (
        "class.markbench holds what this Markbench cannot use; it is kept, not used (entry 1, "
        "note; entry 2, note; entry 3, note; entry 4, note; entry 5, note and 3 more)."
    )
    assert_whole(finding.message)
