"""What the tests of second marking and moderation share: a marked class, hands, eyes."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QApplication, QFileDialog, QMessageBox, QWidget
from pytestqt.qtbot import QtBot

from markbench.model import Rubric
from markbench.session import Session
from markbench.session.pack_session import open_pack
from markbench.session.packing import Packed
from markbench.ui.moderation.pack_sheet import PackSheet
from markbench.ui.moderation.page import ModerationPage
from markbench.ui.moderation.second_card import SecondCard
from markbench.ui.window import Window

HER = "M. Moderator"
LEFT = Qt.MouseButton.LeftButton


def mark_class(folder: Path, *, reports: bool = False) -> None:
    """Everybody marked by the teacher with the second level, and three grades."""
    (folder / "brief.toml").write_text(
        'title = "Test class"\nrubric = "short"\ngrades = { A = 12, B = 8, C = 4 }\n'
        + ("reports_in_pack = true\n" if reports else ""),
        "utf-8",
    )
    if reports:
        (folder / "Aino Example" / "report.txt").write_text("Aino says: it swung.", "utf-8")
    session = Session.open(folder, "T. Teacher")
    for learner in session.learners:
        for criterion in session.rubric.criteria:
            session.set_level(learner.id, criterion.id, criterion.levels[1].name, "As I see it.")
            session.set_feedback(learner.id, criterion.id, "The first marker's text.")
    session.close()


def pack_opened(qtbot: QtBot, window: Window) -> PackSheet:
    qtbot.waitUntil(lambda: window.pack_door.sheet is not None, timeout=10_000)
    assert window.pack_door.sheet is not None
    return window.pack_door.sheet


def card(sheet: PackSheet, at: int) -> SecondCard:
    found = sheet.margin.cards[at]
    assert isinstance(found, SecondCard)
    return found


def give_level(qtbot: QtBot, sheet: PackSheet, at: int, number: int) -> None:
    control = list(card(sheet, at).levels.values())[number]
    qtbot.mouseClick(control, LEFT)
    sheet._desk.finish()
    qtbot.waitUntil(control.isChecked, timeout=5000)


def mark_blind(qtbot: QtBot, sheet: PackSheet, number: int = 0) -> None:
    for at in range(len(sheet.margin.cards)):
        give_level(qtbot, sheet, at, number)


def ask_to_look(qtbot: QtBot, sheet: PackSheet) -> QMessageBox:
    """Press "Show the first marks"; the question that comes first."""
    qtbot.waitUntil(sheet.margin.accept_all.isEnabled, timeout=5000)
    qtbot.mouseClick(sheet.margin.accept_all, LEFT)
    return sheet.findChild(QMessageBox)


def answer(qtbot: QtBot, box: QMessageBox, words: str) -> None:
    """Press the button of those words."""
    qtbot.mouseClick(next(one for one in box.buttons() if one.text() == words), LEFT)


def look(qtbot: QtBot, sheet: PackSheet) -> None:
    answer(qtbot, ask_to_look(qtbot, sheet), "Show them")
    qtbot.waitUntil(lambda: card(sheet, 0).answer.isVisible(), timeout=5000)


def words_in(page: QWidget) -> str:
    """Every word that can be read on a page."""
    texts = []
    for part in page.findChildren(QWidget):
        if part.isVisible():
            for name in ("text", "toPlainText"):
                said = getattr(part, name, None)
                texts.append(str(said()) if callable(said) else "")
            texts.append(part.toolTip())
    return "\n".join(texts)


def ask_file(monkeypatch: pytest.MonkeyPatch, path: Path) -> None:
    for name in ("getSaveFileName", "getOpenFileName"):
        monkeypatch.setattr(QFileDialog, name, lambda *_a, **_k: (str(path), ""))


def ids_of(sheet: PackSheet) -> list[str]:
    return [sheet.numbers.itemData(at) for at in range(sheet.numbers.count())]


def drop(window: Window, path: Path) -> bool:
    data = QMimeData()
    data.setUrls([QUrl.fromLocalFile(str(path))])
    at, keys = QPointF(200, 200), Qt.KeyboardModifier.NoModifier
    enter = QDragEnterEvent(at.toPoint(), Qt.DropAction.CopyAction, data, LEFT, keys)
    QApplication.sendEvent(window, enter)
    if enter.isAccepted():
        event = QDropEvent(at, Qt.DropAction.CopyAction, data, LEFT, keys)
        QApplication.sendEvent(window, event)
    return enter.isAccepted()


def moderation(qtbot: QtBot, window: Window) -> ModerationPage:
    window.show_place("moderation")
    page = window.further["moderation"]
    assert isinstance(page, ModerationPage)
    qtbot.waitUntil(lambda: page._now is not None and page._now.figures is not None, timeout=20_000)
    return page


def refreshed(qtbot: QtBot, page: ModerationPage, what: Callable[[], bool]) -> None:
    qtbot.waitUntil(what, timeout=10_000)
    qtbot.waitUntil(lambda: page._now.figures is not None, timeout=10_000)


def second_mark_all(packed: Packed, reply: Path, *, first: int = 0, rest: int = 0) -> Rubric:
    """Her reply on the whole pack: one level by number on the first criterion, one on the rest."""
    hers = open_pack(packed.path, HER)
    for learner in hers.learners:
        for at, criterion in enumerate(hers.rubric.criteria):
            level = criterion.levels[rest if at else first].name
            hers.second_mark(learner.id, criterion.id, level)
    hers.write_reply(reply)
    hers.close()
    return hers.rubric


def mark_apart(folder: Path, theirs: Path) -> str:
    """A colleague's copy of a class, in which one level is another; the criterion's id."""
    shutil.copytree(folder, theirs)
    for place, who in ((folder, "T. Teacher"), (theirs, "C. Colleague")):
        session = Session.open(place, who)
        row = session.rubric.criteria[0]
        session.set_level("s1", row.id, row.levels[who == "C. Colleague"].name)
        session.close()
    return row.id
