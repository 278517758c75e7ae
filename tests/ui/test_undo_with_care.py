"""Undo over what bears other hands or a signature, and over what is the teacher's own.

A merge, a copy gone back to, whose mark is the first, marks brought home: each goes and comes
back as a whole. A signature goes only where one says so. A word or a phrase of her own, kept
beyond the class, has its turn among all that she did.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent, QTextCursor
from PySide6.QtWidgets import QApplication, QInputDialog, QMessageBox
from pytestqt.qtbot import QtBot
from second_marking import (
    LEFT,
    answer,
    ask_file,
    mark_apart,
    moderation,
    refreshed,
    second_mark_all,
    words_in,
)
from shiboken6 import isValid

from markbench.moderation.records import second_marks, sign_off_of
from markbench.session import Session
from markbench.session.handed_in_work import WORK
from markbench.session.moderating import sign_off
from markbench.session.packing import Packed
from markbench.session.pseudonyms import make_copy
from markbench.session.spelling import OwnWords
from markbench.session.steps import CLOSES
from markbench.ui.care.pseudonym_page import PseudonymPage
from markbench.ui.care.purge_page import PurgePage
from markbench.ui.care.restore_page import RestorePage
from markbench.ui.feedback.at_hand import AtHand
from markbench.ui.phrases.box import PhraseBox
from markbench.ui.places import HAND_INS
from markbench.ui.window import Window

CONTROL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier


def opened(qtbot: QtBot, window: Window, folder: Path) -> Window:
    """The class, closed if it was open, and open from then on."""
    window.close_class()
    window.open_folder(folder)
    qtbot.waitUntil(lambda: window.sheet is not None, timeout=10_000)
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5000)
    return window


def press(window: Window, keys: Qt.KeyboardModifier, qtbot: QtBot) -> None:
    """The keys where the caret is, as a hand would."""
    at = QApplication.focusWidget() or window.pages.currentWidget()
    qtbot.keyClick(at, Qt.Key.Key_Z, keys)


def undo(qtbot: QtBot, window: Window, then: Callable[[], bool]) -> None:
    press(window, CONTROL, qtbot)
    qtbot.waitUntil(then, timeout=10_000)


def redo(qtbot: QtBot, window: Window, then: Callable[[], bool]) -> None:
    press(window, CONTROL | SHIFT, qtbot)
    qtbot.waitUntil(then, timeout=10_000)


def holds(window: Window) -> dict[Any, Any]:
    """All that is decided, with who signed it."""
    window.desk.finish()
    held = window.desk.held.state.items()
    out = (WORK, "reopen", *CLOSES)
    return {key: (d.value, d.who) for key, d in held if key[0] not in out}


def notice(qtbot: QtBot, window: Window, words: str) -> None:
    qtbot.waitUntil(lambda: window.bar.trouble.text() == words, timeout=5000)


def question(qtbot: QtBot, window: Window) -> QMessageBox:
    def asked() -> list[QMessageBox]:
        return [box for box in window.findChildren(QMessageBox) if box.isVisible()]

    qtbot.waitUntil(lambda: bool(asked()), timeout=5000)
    (box,) = asked()
    return box


# --- signatures ------------------------------------------------------------------------


def test_a_sign_off_is_taken_back_and_given_again_only_where_one_says_so(
    qtbot: QtBot, empty_window: Window, marked_folder: Path
) -> None:
    window = opened(qtbot, empty_window, marked_folder)
    page = moderation(qtbot, window)
    page.signing.note.setFocus()
    qtbot.keyClicks(page.signing.note, "Agreed.")
    qtbot.mouseClick(page.signing.sign, LEFT)
    qtbot.waitUntil(lambda: window.desk.signed is not None, timeout=5000)
    signed = window.desk.held.history()
    press(window, CONTROL, qtbot)
    answer(qtbot, question(qtbot, window), "Leave them signed off")
    window.desk.finish()
    assert window.desk.held.history() == signed
    qtbot.waitUntil(lambda: not window.findChildren(QMessageBox), timeout=5000)

    press(window, CONTROL, qtbot)
    box = question(qtbot, window)
    assert box.defaultButton().text() == "Leave them signed off"  # a key held down decides nothing
    answer(qtbot, box, "Reopen them")
    qtbot.waitUntil(lambda: window.desk.signed is None, timeout=5000)
    notice(qtbot, window, "Taken back: sign-off")
    assert [d.why for d in window.desk.held.history() if d.kind == "reopen"] == ["undone"]
    qtbot.waitUntil(page.signing.sign.isVisible, timeout=5000)

    opened(qtbot, window, marked_folder)
    press(window, CONTROL | SHIFT, qtbot)
    answer(qtbot, question(qtbot, window), "Sign them off")
    qtbot.waitUntil(lambda: window.desk.signed is not None, timeout=5000)
    notice(qtbot, window, "Done again: sign-off")
    assert window.desk.signed.note == "Agreed."


def test_a_reopening_is_taken_back_and_the_signature_is_the_one_that_was_given(
    qtbot: QtBot, empty_window: Window, marked_folder: Path
) -> None:
    other = Session.open(marked_folder, "C. Colleague")
    sign_off(other, "Agreed.")
    given = sign_off_of(other.state)
    other.close()
    window = opened(qtbot, empty_window, marked_folder)
    page = moderation(qtbot, window)
    page.signing.why.setFocus()
    qtbot.keyClicks(page.signing.why, "A sheet turned up.")
    qtbot.mouseClick(page.signing.reopen, LEFT)
    qtbot.waitUntil(lambda: window.desk.signed is None, timeout=5000)
    opened(qtbot, window, marked_folder)
    press(window, CONTROL, qtbot)
    answer(qtbot, question(qtbot, window), "Sign them off")
    qtbot.waitUntil(lambda: window.desk.signed is not None, timeout=5000)
    notice(qtbot, window, "Taken back: reopening of the marks")
    back = window.desk.signed
    assert (back.by, back.at, back.note) == (given.by, given.at, given.note)


# --- other hands -----------------------------------------------------------------------


def test_a_merged_reply_is_taken_back_done_again_and_merged_afresh(
    qtbot: QtBot, empty_window: Window, marked_folder: Path, packed: Packed, tmp_path: Path
) -> None:
    reply = tmp_path / "r.markbench-reply"
    second_mark_all(packed, reply)
    window = opened(qtbot, empty_window, marked_folder)
    page = moderation(qtbot, window)
    before = holds(window)
    page.sample.merge_file(reply)
    refreshed(qtbot, page, lambda: bool(page.open.rows))
    after = holds(window)
    assert "Merged: " in words_in(page)
    undo(qtbot, window, lambda: holds(window) == before)
    notice(qtbot, window, "Taken back: marks merged")
    refreshed(qtbot, page, lambda: not page.open.rows)
    assert "Merged: " not in words_in(page)
    opened(qtbot, window, marked_folder)
    redo(qtbot, window, lambda: holds(window) == after)
    notice(qtbot, window, "Done again: marks merged")
    undo(qtbot, window, lambda: holds(window) == before)
    page = moderation(qtbot, window)
    page.sample.merge_file(reply)
    refreshed(qtbot, page, lambda: bool(page.open.rows))
    assert holds(window) == after


def test_whose_mark_is_the_first_is_turned_back_with_the_signatures(
    qtbot: QtBot, empty_window: Window, class_folder: Path, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    theirs = tmp_path / "theirs"
    criterion = mark_apart(class_folder, theirs)
    window = opened(qtbot, empty_window, class_folder)
    page = moderation(qtbot, window)
    ask_file(monkeypatch, theirs / "class.markbench")
    qtbot.mouseClick(page.sample.merge_colleague, LEFT)
    refreshed(qtbot, page, lambda: bool(page.open.choices))
    merged, held = holds(window), window.desk.held
    monkeypatch.setattr(QInputDialog, "getText", lambda *_a, **_k: ("She had the class.", True))
    page.open.choices[0]._turn()
    qtbot.waitUntil(lambda: held.mark("s1", criterion).by == "C. Colleague", timeout=5000)
    turned = holds(window)
    undo(qtbot, window, lambda: holds(window) == merged)
    notice(qtbot, window, "Taken back: whose mark is the first, Aino Example")
    assert page.open.choices  # the merge itself stands
    redo(qtbot, window, lambda: holds(window) == turned)
    undo(qtbot, window, lambda: holds(window) == merged)
    undo(qtbot, window, lambda: not second_marks(held.state))
    undo(qtbot, window, lambda: not held.marks("s1"))  # and on to the mark given before


def test_going_back_to_a_copy_is_taken_back_where_one_did_it(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    held = window.desk.held
    held.accept("s1")
    held.keep_copy()
    held.accept("s2")
    before = holds(window)
    window.care.open_copies()
    page = window.doors.page
    assert isinstance(page, RestorePage)
    qtbot.waitUntil(page.go.isEnabled, timeout=30_000)
    qtbot.mouseClick(page.go, LEFT)
    qtbot.waitUntil(lambda: not held.marks("s2"), timeout=30_000)
    after = holds(window)
    undo(qtbot, window, lambda: holds(window) == before)
    notice(qtbot, window, "Taken back: going back to a copy")
    qtbot.waitUntil(lambda: not page.done.text(), timeout=5000)
    redo(qtbot, window, lambda: holds(window) == after)
    page.left.emit()
    qtbot.waitUntil(lambda: not isValid(page), timeout=5000)
    undo(qtbot, window, lambda: holds(window) == before)
    redo(qtbot, window, lambda: holds(window) == after)
    opened(qtbot, window, class_folder)
    undo(qtbot, window, lambda: holds(window) == before)


def test_marks_brought_home_are_taken_back_and_brought_home_again(
    qtbot: QtBot, window: Window, class_folder: Path, tmp_path: Path
) -> None:
    copy, key = tmp_path / "copy", tmp_path / "class.markbench-key"
    make_copy(window.desk.held, copy, key)
    numbered = Session.open(copy, "C. Colleague")
    for learner in numbered.learners:
        numbered.accept(learner.id)
    numbered.close()
    before = holds(window)
    window.care.open_pseudonyms()
    page = window.doors.page
    assert isinstance(page, PseudonymPage)
    page.bring(copy, key)
    qtbot.waitUntil(lambda: "brought home" in page.told.text(), timeout=10_000)
    after = holds(window)
    assert {who for _, who in after.values()} == {"C. Colleague"}
    undo(qtbot, window, lambda: holds(window) == before)
    notice(qtbot, window, "Taken back: marks brought home")
    page.left.emit()
    qtbot.waitUntil(lambda: not isValid(page), timeout=5000)
    redo(qtbot, window, lambda: holds(window) == after)
    undo(qtbot, window, lambda: holds(window) == before)
    opened(qtbot, window, class_folder)
    redo(qtbot, window, lambda: holds(window) == after)


def test_what_is_removed_for_good_says_so_before_and_ends_what_can_be_undone(
    qtbot: QtBot, empty_window: Window, marked_folder: Path
) -> None:
    session = Session.open(marked_folder, "T. Teacher")
    sign_off(session)
    session.close()
    window = opened(qtbot, empty_window, marked_folder)
    window.care.open_purge()
    page = window.doors.page
    assert isinstance(page, PurgePage)
    assert "This cannot be undone" in words_in(page)
    page.sure.setChecked(True)
    qtbot.mouseClick(page.go, LEFT)
    qtbot.waitUntil(lambda: "files removed" in page.done.text(), timeout=30_000)
    decided = window.desk.held.history()
    press(window, CONTROL, qtbot)
    window.desk.finish()
    assert window.desk.held.history() == decided
    assert not window.undo_button.isEnabled()


# --- the teacher's own -----------------------------------------------------------------


def test_a_word_a_phrase_and_a_mark_go_in_the_order_in_which_they_came(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    window.activateWindow()
    window.open_learner("s1")
    margin, held = window.sheet.margin, window.desk.held
    card = margin.current
    criterion, writing = card.criterion.id, card.writing
    at_hand = AtHand.of(window.desk)
    at_hand.load()
    qtbot.waitUntil(lambda: at_hand.spelling is not None, timeout=30_000)
    card.text.setFocus()
    card.text.setPlainText("Use the wobblescope again.")
    writing.settle()
    qtbot.waitUntil(lambda: "wobblescope" in writing.trouble.text(), timeout=5000)

    learn_by_menu(qtbot, window, 10)
    qtbot.waitUntil(lambda: "wobblescope" not in writing.trouble.text(), timeout=5000)
    qtbot.keyClick(card.text, Qt.Key.Key_K, Qt.KeyboardModifier.AltModifier)
    qtbot.waitUntil(lambda: bool(at_hand.book.phrases()), timeout=5000)
    qtbot.keyClick(card.text, Qt.Key.Key_2, CONTROL)
    qtbot.waitUntil(lambda: held.mark("s1", criterion) is not None, timeout=5000)
    card.text.setFocus()

    undo(qtbot, window, lambda: held.mark("s1", criterion) is None)
    assert at_hand.book.phrases()
    undo(qtbot, window, lambda: not at_hand.book.phrases())
    notice(qtbot, window, "Taken back: phrase")
    assert OwnWords("en").words == {"wobblescope"}
    undo(qtbot, window, lambda: not OwnWords("en").words)
    notice(qtbot, window, "Taken back: word remembered")
    qtbot.waitUntil(lambda: "wobblescope" in writing.trouble.text(), timeout=5000)

    opened(qtbot, window, class_folder)  # and over closing, with no text in sight
    redo(qtbot, window, lambda: OwnWords("en").words == {"wobblescope"})
    redo(qtbot, window, lambda: len(AtHand.of(window.desk).book.phrases()) == 1)
    undo(qtbot, window, lambda: not AtHand.of(window.desk).book.phrases())
    undo(qtbot, window, lambda: not OwnWords("en").words)


def learn_by_menu(qtbot: QtBot, window: Window, at: int) -> None:
    field = window.sheet.margin.current.text
    where = QTextCursor(field.document())
    where.setPosition(at)
    field.setTextCursor(where)
    point = QPoint(5, 5)
    QApplication.sendEvent(
        field, QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, point, point)
    )
    qtbot.waitUntil(lambda: QApplication.activePopupWidget() is not None, timeout=5000)
    menu = QApplication.activePopupWidget()
    next(one for one in menu.actions() if "remember" in one.text()).trigger()
    menu.close()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow, timeout=5000)
    field.setFocus()


def test_a_phrase_of_another_class_is_forgotten_brought_back_and_forgotten_again(
    qtbot: QtBot, window: Window, class_folder: Path, tmp_path: Path
) -> None:
    own = tmp_path / "own"
    own.mkdir()
    elsewhere = {"text": "Once more, please.", "criterion": "readings", "about": []}
    (own / "phrases.json").write_text(json.dumps({"k1": {**elsewhere, "language": "en"}}))
    opened(qtbot, window, class_folder)
    window.open_learner("s1")
    window.doors.open_phrases()
    box: PhraseBox = window.doors.drawer.box
    box.show_for("s1", "readings")
    assert box.list.count() == 1

    def kept() -> dict[str, Any]:
        return {key: value["text"] for key, value in json.loads(
            (own / "phrases.json").read_text("utf-8")).items()}  # fmt: skip

    for _ in range(2):
        box.list.setCurrentRow(0)
        box.forget.click()
        qtbot.waitUntil(lambda: kept() == {}, timeout=5000)
        qtbot.waitUntil(lambda: box.list.count() == 0, timeout=5000)
        undo(qtbot, window, lambda: kept() == {"k1": "Once more, please."})
        notice(qtbot, window, "Taken back: phrase")
        qtbot.waitUntil(lambda: box.list.count() == 1, timeout=5000)
    redo(qtbot, window, lambda: kept() == {})
    opened(qtbot, window, class_folder)
    undo(qtbot, window, lambda: kept() == {"k1": "Once more, please."})


# --- with the caret in a field -----------------------------------------------------------


def test_a_field_in_which_nothing_was_typed_lets_undo_through(qtbot: QtBot, window: Window) -> None:
    window.activateWindow()
    held = window.desk.held
    window.show_place(HAND_INS)
    page = window.further[HAND_INS]
    page.choose_all()
    page.until.setFocus()
    page.give_time()
    qtbot.waitUntil(lambda: held.value("extension", "s3") is not None, timeout=5000)
    assert QApplication.focusWidget() is page.until
    undo(qtbot, window, lambda: held.value("extension", "s3") is None)
    redo(qtbot, window, lambda: held.value("extension", "s3") is not None)
    window.show_class()
    window.bench.search.setFocus()
    qtbot.keyClicks(window.bench.search, "ai")
    press(window, CONTROL, qtbot)  # what was typed is taken back as anywhere
    assert window.bench.search.text() != "ai"
    assert held.value("extension", "s3") is not None
    while window.bench.search.isUndoAvailable():
        press(window, CONTROL, qtbot)
    undo(qtbot, window, lambda: held.value("extension", "s3") is None)
