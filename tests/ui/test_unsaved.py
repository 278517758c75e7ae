"""A class folder that goes away under the window: nothing said is lost."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from PySide6.QtWidgets import QMessageBox
from pytestqt.qtbot import QtBot

from markbench.session import Session
from markbench.session.moderating import merge_journal
from markbench.store import Journal
from markbench.ui import desk as desk_module
from markbench.ui import unsaved
from markbench.ui.window import Window

pytestmark = pytest.mark.skipif(os.name == "nt", reason="Windows forbids moving an open folder")


@pytest.fixture
def away(window: Window, class_folder: Path, qtbot: QtBot, monkeypatch) -> Path:
    """The class folder, renamed under the open window, with two things said since."""
    monkeypatch.setattr(desk_module, "AGAIN_MS", 50)
    elsewhere = class_folder.with_name("the share is gone")
    class_folder.rename(elsewhere)
    assert window.desk is not None
    with qtbot.waitSignal(window.desk.trouble) as told:
        window.desk.do(lambda session: session.set_note("s1", "Ask about the third row."))
    assert "kept here until they can be saved: 1" in told.args[0]
    with qtbot.waitSignal(window.desk.trouble) as told:
        window.desk.do(lambda session: session.set_note("s1", "Asked."))
    assert "kept here until they can be saved: 2" in told.args[0]
    assert window.desk.unsaved == 2
    return elsewhere


def notes(path: Path) -> list[object]:
    with Journal.open(path, read_only=True) as journal:
        assert journal.verify() is None
        return [one.value for one in journal.all() if one.kind == "note"]


def test_what_was_said_is_saved_in_order_once_the_folder_is_back(
    window: Window, away: Path, class_folder: Path, qtbot: QtBot
) -> None:
    assert window.desk is not None
    away.rename(class_folder)
    qtbot.waitUntil(lambda: window.desk is not None and not window.desk.unsaved, timeout=10_000)
    qtbot.waitUntil(lambda: window.bar.trouble.text() == "")
    assert window.desk.session.value("note", "s1") == "Asked."
    assert notes(class_folder / "class.markbench") == ["Ask about the third row.", "Asked."]


def test_what_is_refused_for_good_does_not_hold_up_the_rest(
    window: Window, away: Path, class_folder: Path, qtbot: QtBot
) -> None:
    assert window.desk is not None
    window.desk.do(lambda session: session.set_level("s1", "no such criterion", "None"))
    window.desk.do(lambda session: session.set_note("s2", "Fine."))
    window.desk.finish()
    away.rename(class_folder)
    qtbot.waitUntil(lambda: window.desk is not None and not window.desk.unsaved, timeout=10_000)
    assert notes(class_folder / "class.markbench")[-1] == "Fine."


def test_closing_offers_to_save_elsewhere_and_that_can_be_merged_later(
    window: Window, away: Path, class_folder: Path, tmp_path: Path, monkeypatch
) -> None:
    kept = tmp_path / "kept.markbench"
    monkeypatch.setattr(unsaved, "_ask", lambda owner, desk: QMessageBox.StandardButton.Save)
    monkeypatch.setattr(unsaved, "_elsewhere", lambda owner, desk: kept)
    assert window.close()
    assert notes(kept) == ["Ask about the third row.", "Asked."]
    away.rename(class_folder)
    session = Session.open(class_folder, "T. Teacher")
    try:
        assert session.value("note", "s1") is None
        merge_journal(session, kept)
        assert session.value("note", "s1") == "Asked."
    finally:
        session.close()


def test_the_window_stays_open_where_the_person_says_so(
    window: Window, away: Path, class_folder: Path, monkeypatch
) -> None:
    monkeypatch.setattr(unsaved, "_ask", lambda owner, desk: QMessageBox.StandardButton.Cancel)
    assert not window.close()
    assert window.desk is not None
    assert window.desk.unsaved == 2
    away.rename(class_folder)
    assert window.close()
    assert notes(class_folder / "class.markbench") == ["Ask about the third row.", "Asked."]


@pytest.mark.parametrize("way", ["close the class", "a new class", "a pack", "another class"])
def test_no_door_out_of_the_class_lets_go_unasked(
    window: Window, away: Path, tmp_path: Path, monkeypatch, way: str
) -> None:
    asked: list[int] = []

    def keep_open(_owner: object, desk: desk_module.Desk) -> QMessageBox.StandardButton:
        asked.append(desk.unsaved)
        return QMessageBox.StandardButton.Cancel

    monkeypatch.setattr(unsaved, "_ask", keep_open)
    {
        "close the class": window.let_go,
        "a new class": lambda: window.doors.look_at(tmp_path),
        "a pack": lambda: window.pack_door.open(tmp_path / "a.markbench-pack"),
        "another class": lambda: window.open_folder(tmp_path),
    }[way]()
    assert asked == [2]
    assert window.desk is not None
    assert window.desk.unsaved == 2
    monkeypatch.setattr(unsaved, "_ask", lambda *_: QMessageBox.StandardButton.Discard)


def test_what_waits_is_shown_as_said_and_not_saved(
    window: Window, away: Path, class_folder: Path, qtbot: QtBot
) -> None:
    window.open_learner("s1")
    margin = window.sheet.margin
    assert margin.note.toPlainText() == "Asked."
    card = margin.current
    name = list(card.levels)[1]
    card.choose_level(name)
    qtbot.waitUntil(lambda: "not saved yet" in card._state.text(), timeout=10_000)
    assert [level for level, one in card.levels.items() if one.isChecked()] == [name]
    assert "1 not saved yet" in margin._state.text()
    window.step(1)
    window.open_learner("s1")
    assert card.levels[name].isChecked()
    assert window.desk.session.mark("s1", card.criterion.id) is None
    away.rename(class_folder)
    qtbot.waitUntil(lambda: window.desk is not None and not window.desk.unsaved, timeout=10_000)
    qtbot.waitUntil(lambda: "marked by" in card._state.text(), timeout=10_000)
    assert "not saved" not in margin._state.text()
    assert window.desk.session.mark("s1", card.criterion.id).level == name
