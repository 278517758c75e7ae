"""What a merge found decided twice: told in words, chosen by buttons that differ."""

from __future__ import annotations

import datetime as dt
import shutil
from pathlib import Path

import pytest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from second_marking import HER, LEFT, ask_file, moderation, refreshed

from markbench.session import Session
from markbench.session.moderating import settle_mark
from markbench.session.pack_session import open_pack
from markbench.session.packing import Packed
from markbench.ui.window import Window


def opened_class(qtbot: QtBot, window: Window, folder: Path) -> Session:
    window.open_folder(folder)
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=10_000)
    return window.desk.held


def marked_afresh(packed: Packed, to: Path, level: int) -> None:
    """She marks the pack with nothing of what she decided before beside it."""
    away = to.with_suffix(".markbench-pack")
    shutil.copy(packed.path, away)
    hers = open_pack(away, HER)
    for learner in hers.learners:
        for criterion in hers.rubric.criteria:
            hers.second_mark(learner.id, criterion.id, criterion.levels[level].name)
    hers.write_reply(to)
    hers.close()


def test_a_moderator_is_never_asked_which_of_her_own_marks_holds(
    qtbot: QtBot, empty_window: Window, marked_folder: Path, packed: Packed, tmp_path: Path
) -> None:
    first, again = (tmp_path / f"{name}.markbench-reply" for name in ("first", "again"))
    marked_afresh(packed, first, 0)
    marked_afresh(packed, again, 1)
    held = opened_class(qtbot, empty_window, marked_folder)
    page = moderation(qtbot, empty_window)
    for reply in (first, again):
        page.sample.merge_file(reply)
        qtbot.waitUntil(lambda: not empty_window.desk._pending, timeout=10_000)
        QApplication.processEvents()
    assert page.open.choices == []
    criteria = held.rubric.criteria
    assert f"{3 * len(criteria)} changed again by the same person" in page.open._merge.text()
    for criterion in criteria:
        value = held.value("second_mark", "s1", f"{criterion.id}|{HER}")
        assert value["level"] == criterion.levels[1].name


def test_two_peoples_final_words_are_told_and_chosen_between(
    qtbot: QtBot, empty_window: Window, marked_folder: Path, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    theirs = tmp_path / "their copy"
    shutil.copytree(marked_folder, theirs)
    for place, who, at in ((marked_folder, "T. Teacher", 0), (theirs, "C. Colleague", 2)):
        session = Session.open(place, who)
        row = session.rubric.criteria[0]
        settle_mark(session, "s1", row.id, row.levels[at].name, "Looked again.")
        session.close()
    held = opened_class(qtbot, empty_window, marked_folder)
    page = moderation(qtbot, empty_window)
    ask_file(monkeypatch, theirs / "class.markbench")
    qtbot.mouseClick(page.sample.merge_colleague, LEFT)
    refreshed(qtbot, page, lambda: bool(page.open.choices))
    (clash,) = page.open.choices
    assert clash.words.text() == (
        f"Aino Example, {row.title}: T. Teacher and C. Colleague differ; the later decision holds."
    )
    today = f"{dt.date.today().day} {dt.date.today():%b}"
    told = [control.text() for control, _ in clash.choices]
    for words, who, at in zip(told, ("T. Teacher", "C. Colleague"), (0, 2), strict=True):
        level = row.levels[at]
        assert f"{level.name} · {level.marks:g} ({who}, {today}" in words
    assert [words.startswith("✓") for words in told] == [False, True]  # the later holds
    mine, _ = clash.choices[0]
    qtbot.mouseClick(mine, LEFT)
    key = ("adjustment", "s1", row.id)
    qtbot.waitUntil(lambda: held.value(*key)["level"] == row.levels[0].name, timeout=5000)
    qtbot.waitUntil(lambda: mine.text().startswith("✓"), timeout=5000)
    assert not clash.choices[1][0].text().startswith("✓")


def test_double_marks_of_a_learner_are_one_row(
    qtbot: QtBot, empty_window: Window, class_folder: Path, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    theirs = tmp_path / "their copy"
    shutil.copytree(class_folder, theirs)
    for place, who, at in ((class_folder, "T. Teacher", 0), (theirs, "C. Colleague", 1)):
        session = Session.open(place, who)
        rows = session.rubric.criteria[:2]
        for row in rows:
            session.set_level("s1", row.id, row.levels[at].name)
        session.close()
    opened_class(qtbot, empty_window, class_folder)
    page = moderation(qtbot, empty_window)
    ask_file(monkeypatch, theirs / "class.markbench")
    qtbot.mouseClick(page.sample.merge_colleague, LEFT)
    refreshed(qtbot, page, lambda: bool(page.open.choices))
    (clash,) = page.open.choices
    for row in rows:
        best, next_best = row.levels[:2]
        assert (
            f"{row.title}: T. Teacher gave {best.name} · {best.marks:g}, C. Colleague gave "
            f"{next_best.name} · {next_best.marks:g}"
        ) in clash.words.text()
