"""What sample, agreement and adjustment come to is told in words before any figure."""

from __future__ import annotations

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot
from second_marking import moderation, refreshed, second_mark_all

from markbench.model import Decision
from markbench.session import Session
from markbench.session.moderating import sample_of, settle_mark, take_sample
from markbench.session.packing import Packed
from markbench.session.record_of import moderation_record
from markbench.ui.moderation.page import ModerationPage
from markbench.ui.moderation.words import apart_words
from markbench.ui.window import Window


@pytest.fixture
def page(qtbot: QtBot, empty_window: Window, marked_folder: Path) -> ModerationPage:
    session = Session.open(marked_folder, "T. Teacher")
    if sample_of(session) is None:
        take_sample(session, seed=4)
    session.close()
    empty_window.open_folder(marked_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    return moderation(qtbot, empty_window)


def told_sample(page: ModerationPage, learners: int, flagged: int, of: int) -> str:
    """What the page says of a sample of so many."""
    held = page._desk.held
    value = held.value("sample")
    one = {"reasons": ["marked -3 of 12 against the drafts"], "outlier": True}
    names = [f"x{n}" for n in range(learners)]
    value = {
        **value,
        "learners": {x: {**one, "outlier": n < flagged} for n, x in enumerate(names)},
        "order": names,
        "class_size": of,
    }
    held.decide(Decision("sample", "", "", value))
    page._fresh.make()
    return page.sample._about.text()


def test_a_sample_that_is_the_whole_class_says_so_and_why(page: ModerationPage) -> None:
    said = told_sample(page, 30, 21, 30)
    assert said.startswith("The sample is the whole class of 30: 21 are out of the ordinary")
    assert "at least 10" in said
    assert "all 9" in said
    assert "need not finish" in said
    assert "everybody is out of the ordinary" in told_sample(page, 12, 12, 12)
    assert told_sample(page, 8, 0, 8).endswith("it is never of fewer than 10.")
    assert told_sample(page, 14, 4, 30) == "14 of 30 learners: 4 out of the ordinary, 10 ordinary"


def test_a_sample_drawn_earlier_shows_a_true_minus_on_the_page_and_in_the_record(
    page: ModerationPage,
) -> None:
    held = page._desk.held
    value = held.value("sample")
    for one in value["learners"].values():
        one["reasons"] = ["marked -3 of 12 against the drafts"]
    held.decide(Decision("sample", "", "", {**value, "seed": 5}))
    page._fresh.make()
    assert {row[-1] for row in page.sample.roll.texts()} == {"marked −3 of 12 against the drafts"}
    record = moderation_record(held)
    assert {one.why for one in record.sample} == {"marked −3 of 12 against the drafts"}


def test_agreement_is_a_sentence_before_it_is_a_kappa(
    qtbot: QtBot, empty_window: Window, marked_folder: Path, packed: Packed, tmp_path: Path
) -> None:
    """``packed`` has drawn the sample; she gives one level more on one criterion throughout."""
    rubric = second_mark_all(packed, tmp_path / "r.markbench-reply", rest=1)
    more = rubric.criteria[0].levels[0].marks - rubric.criteria[0].levels[1].marks
    empty_window.open_folder(marked_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    page = moderation(qtbot, empty_window)
    page.sample.merge_file(tmp_path / "r.markbench-reply")
    refreshed(qtbot, page, lambda: bool(page.open.rows))
    count = len(empty_window.desk.held.rubric.criteria)
    assert page.agreement.summary.text() == (
        f"First and second marker gave the same level {3 * (count - 1)} times of {3 * count}, and "
        "were never more than one level apart. On the total, the second marker gave "
        f"{more:.1f} marks more on average."
    )
    assert page.agreement.summary.y() < page.agreement.roll.y() < page.agreement.total.y()
    said = page.adjustment.words.text()
    assert said.startswith(f"On the total, the second marker gave {more:.1f} marks more")
    assert "with 3 learners, chance alone often makes as much" in said
    for figure in ("p =", "95 %", "ICC", "appa"):
        assert figure not in said
        assert figure not in page.agreement.summary.text()
    assert "exact p\u00a0=\u00a00.25" in page.adjustment.figures.text()  # 2 of 2³ patterns of signs


def test_severity_in_words_says_which_way() -> None:
    assert "1.3 marks less" in apart_words(-1.25 - 0.01)
    assert "0.4 marks more" in apart_words(0.4)
    assert "the same on average" in apart_words(-0.04)


def test_a_shift_that_changes_no_grade_says_why(page: ModerationPage) -> None:
    held, paper = page._desk.held, page.adjustment
    paper.shift.setValue(-0.1)
    told = paper._changes.text()
    assert told == (
        "Moving by −0.1 changes no grade: the totals of all 3 learners stay within their grades."
    )
    row = held.rubric.criteria[0]
    for number, learner in enumerate(held.learners, 1):
        settle_mark(held, learner.id, row.id, row.levels[1].name, "Looked again.")
        page._fresh.make()
        paper.shift.setValue(0.1)
        told = paper._changes.text()
        if number < 3:
            assert f"{number} of 3 learners were gone through one by one" in told
        else:
            assert told.endswith("all 3 learners were gone through one by one, and those are left "
                                 "alone.")  # fmt: skip
