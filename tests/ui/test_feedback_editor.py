"""The text to a learner by hand: pieces moved, numbers live, phrases found, words checked."""

from __future__ import annotations

import pytest
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QContextMenuEvent, QMouseEvent, QTextCursor, QTextFormat
from PySide6.QtWidgets import QApplication, QMenu
from pytestqt.qtbot import QtBot

from markbench.session.phrase_book import PhraseBook
from markbench.session.phrases import keep_phrase
from markbench.ui.feedback.editor import FeedbackEditor
from markbench.ui.feedback.field import PieceField, live_runs
from markbench.ui.window import Window

ALT, CONTROL = Qt.KeyboardModifier.AltModifier, Qt.KeyboardModifier.ControlModifier
READINGS = "readings"


@pytest.fixture
def editor(qtbot: QtBot, window: Window) -> FeedbackEditor:
    """The text on raw readings of the first learner, with the keyboard in it."""
    window.open_learner("s1")
    qtbot.waitExposed(window)
    window.activateWindow()
    made = window.sheet.margin.current.writing
    made.field.setFocus()
    made.field.moveCursor(QTextCursor.MoveOperation.Start)
    QApplication.processEvents()
    return made


def pieces(window: Window) -> tuple[str, ...]:
    return window.desk.session.text("s1", READINGS).pieces


def become(qtbot: QtBot, window: Window, wanted: tuple[str, ...]) -> None:
    qtbot.waitUntil(lambda: pieces(window) == wanted, timeout=5000)


def write(qtbot: QtBot, window: Window, text: str) -> PieceField:
    """Have the text be these words only."""
    field = window.sheet.margin.current.writing.field
    field.selectAll()
    qtbot.keyClicks(field, text)
    return field


def shown_now(qtbot: QtBot) -> QMenu:
    qtbot.waitUntil(lambda: isinstance(QApplication.activePopupWidget(), QMenu), timeout=5000)
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    return menu


# --- pieces --------------------------------------------------------------------------


def test_every_sentence_of_the_draft_stands_on_a_line_of_its_own(
    window: Window, editor: FeedbackEditor
) -> None:
    draft = window.desk.session.draft("s1", READINGS)
    assert editor.field.toPlainText().split("\n") == list(draft.sentences)
    assert editor.field.pieces() == draft.pieces


def test_a_key_moves_a_sentence_and_undo_moves_it_back(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    first, second, *rest = was = pieces(window)
    qtbot.keyClick(editor.field, Qt.Key.Key_Down, ALT)
    become(qtbot, window, (second, first, *rest))
    assert editor.field.current() == 1  # it stays in hand
    qtbot.keyClick(editor.field, Qt.Key.Key_Up, ALT)
    become(qtbot, window, was)
    qtbot.keyClick(editor.field, Qt.Key.Key_Z, CONTROL)  # with the keyboard in the text
    become(qtbot, window, (second, first, *rest))
    qtbot.waitUntil(lambda: editor.field.pieces() == (second, first, *rest), timeout=5000)


def test_a_hand_drags_a_sentence_by_its_bar(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    first, second, *rest = pieces(window)
    gutter = editor.field.gutter
    start = QPoint(gutter.width() // 2, round(sum(gutter.span(0)) / 2))
    goal = QPoint(gutter.width() // 2, round(sum(gutter.span(1)) / 2))
    qtbot.mousePress(gutter, Qt.MouseButton.LeftButton, pos=start)
    move = QMouseEvent(
        QEvent.Type.MouseMove, QPointF(goal), gutter.mapToGlobal(QPointF(goal)),
        Qt.MouseButton.NoButton, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier,
    )  # fmt: skip
    QApplication.sendEvent(gutter, move)
    qtbot.mouseRelease(gutter, Qt.MouseButton.LeftButton, pos=goal)
    become(qtbot, window, (second, first, *rest))


def test_a_sentence_left_out_is_brought_back(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    first, *rest = pieces(window)
    qtbot.keyClick(editor.field, Qt.Key.Key_X, ALT)
    become(qtbot, window, tuple(rest))
    qtbot.waitUntil(editor.back.isEnabled, timeout=5000)
    qtbot.keyClick(editor.field, Qt.Key.Key_Z, ALT)  # one only: it comes at once
    qtbot.waitUntil(lambda: first in pieces(window), timeout=5000)
    assert sorted(pieces(window)) == sorted((first, *rest))


def test_of_several_left_out_one_is_chosen(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    was = pieces(window)
    for left in range(len(was) - 1, 0, -1):
        qtbot.keyClick(editor.field, Qt.Key.Key_X, ALT)
        qtbot.waitUntil(lambda left=left: len(pieces(window)) == left, timeout=5000)
    assert len(was) > 2
    qtbot.waitUntil(editor.back.isEnabled, timeout=5000)
    window.desk.finish()  # the news of the last one left out would shut the list again
    QApplication.processEvents()
    editor.back.click()
    menu = shown_now(qtbot)
    assert len(menu.actions()) == len(was) - 1
    qtbot.keyClick(menu, Qt.Key.Key_Down)
    qtbot.keyClick(menu, Qt.Key.Key_Return)
    qtbot.waitUntil(lambda: len(pieces(window)) == 2, timeout=5000)
    assert pieces(window)[1] in was


def test_typing_is_just_typing(qtbot: QtBot, window: Window, editor: FeedbackEditor) -> None:
    field = write(qtbot, window, "Well done. Now try two metres.")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    qtbot.keyClicks(field, "And write it down.")
    become(qtbot, window, ("Well done. Now try two metres.", "And write it down."))
    said = "Well done. Now try two metres. And write it down."
    assert window.desk.session.feedback("s1", READINGS) == said
    qtbot.keyClick(field, Qt.Key.Key_Z, CONTROL)  # what was typed is undone as anywhere
    assert "write it down" not in field.toPlainText()


# --- live numbers --------------------------------------------------------------------


def correct_longest(window: Window, text: str) -> None:
    table = window.desk.session.portfolio("s1").table
    source = table.readings[-1].source
    window.desk.do(lambda session: session.correct("s1", source, text))


def test_a_number_quoted_follows_a_correction(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    field = write(qtbot, window, "Your longest was {longest}, I see.")
    assert field.toPlainText() == "Your longest was 60.0 cm, I see."
    become(qtbot, window, ("Your longest was {longest}, I see.",))
    correct_longest(window, "61.5")
    now = "Your longest was 61.5 cm, I see."
    qtbot.waitUntil(lambda: field.toPlainText() == now, timeout=5000)
    assert window.desk.session.feedback("s1", READINGS) == now


def test_a_place_is_found_in_the_list_by_typing(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    field = write(qtbot, window, "It was {shortest_ti")
    popup = field.places.completer.popup()
    qtbot.waitUntil(popup.isVisible, timeout=5000)
    qtbot.keyClick(popup, Qt.Key.Key_Down)
    qtbot.keyClick(popup, Qt.Key.Key_Return)
    qtbot.keyClicks(field, " in all.")
    become(qtbot, window, ("It was {shortest_time} in all.",))
    assert "{" not in field.toPlainText()


def test_a_number_typed_into_is_mere_words(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    field = write(qtbot, window, "At {longest} or so")
    cursor = field.textCursor()
    cursor.setPosition(4)  # within “60.0 cm”
    field.setTextCursor(cursor)
    qtbot.keyClick(field, Qt.Key.Key_Delete)
    become(qtbot, window, ("At 6.0 cm or so",))


def test_a_number_stays_on_one_line_with_its_unit(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    field = editor.field
    field.setMinimumWidth(0)
    parted = []
    for width in range(160, 420, 7):
        field.resize(width, 900)
        QApplication.processEvents()
        block = field.document().begin()
        while block.isValid():
            lines = block.layout()
            for start, shown, _ in live_runs(block):
                ends = {lines.lineForTextPosition(start).lineNumber(),
                        lines.lineForTextPosition(start + len(shown) - 1).lineNumber()}  # fmt: skip
                if len(ends) > 1 and " and " not in shown:
                    parted.append((width, shown))
            block = block.next()
    assert parted == []
    assert any("\u00a0" in shown for _, shown, _ in live_runs(field.document().begin()))
    assert "\u00a0" not in "".join(field.pieces())


def test_a_place_that_names_nothing_is_told_and_nothing_goes_out(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    write(qtbot, window, "Add {some_number} here.")
    become(qtbot, window, ("Add {some_number} here.",))
    qtbot.waitUntil(lambda: "{some_number} is still" in editor.trouble.text(), timeout=5000)
    window.desk.do(lambda session: session.accept("s1"))
    qtbot.keyClick(window, Qt.Key.Key_E, CONTROL)
    told = window.bar.trouble
    qtbot.waitUntil(lambda: "texts not sent" in told.text(), timeout=20_000)
    assert "Aino Example, “Raw readings”: {some_number} is still" in told.text()


# --- phrases -------------------------------------------------------------------------


def test_a_phrase_is_found_as_it_is_typed_and_completes_it(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    phrase = "Hang the thread from something firm, and start from {shortest} again."
    keep_phrase(window.desk.session, "s2", "result", phrase)
    field = write(qtbot, window, "Well done.")
    qtbot.keyClick(field, Qt.Key.Key_Return)
    qtbot.keyClicks(field, "Hang the thr")
    qtbot.waitUntil(lambda: editor.links[0].isVisible(), timeout=5000)
    assert "start from 20.0 cm again" in editor.links[0].text()
    qtbot.keyClick(field, Qt.Key.Key_Return, ALT)
    become(qtbot, window, ("Well done.", phrase))


def test_a_phrase_is_offered_where_the_same_was_found_in_another_class(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    session = window.desk.session
    finding = next(f for f in session.findings("s2") if f.check == "slip")
    about = [f"slip:{finding.numbers['slip']}"]
    book = editor._at_hand.book
    text = "Count aloud, and stop on the same side you began."
    book.put("k1", {"text": text, "criterion": READINGS, "about": about, "language": "en"})
    editor.look()
    assert not editor.links[0].isVisible()  # nothing of the kind was found here
    window.open_learner("s2")
    qtbot.waitUntil(lambda: editor.links[0].isVisible(), timeout=5000)
    qtbot.mouseClick(editor.links[0], Qt.MouseButton.LeftButton)
    held = window.desk.session
    qtbot.waitUntil(lambda: text in held.text("s2", READINGS).pieces, timeout=5000)


def test_a_sentence_kept_is_in_the_book_and_forgetting_is_undone(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    field = write(qtbot, window, "Take {lengths} more.")
    qtbot.keyClick(field, Qt.Key.Key_K, ALT)
    kept = lambda: [one["text"] for one in PhraseBook().phrases().values()]  # noqa: E731
    qtbot.waitUntil(lambda: kept() == ["Take {lengths} more."], timeout=5000)
    window.desk.undo()
    qtbot.waitUntil(lambda: kept() == [], timeout=5000)
    window.desk.redo()
    qtbot.waitUntil(lambda: kept() == ["Take {lengths} more."], timeout=5000)


def test_a_phrase_that_names_a_learner_is_not_kept(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    field = write(qtbot, window, "Well done, Aino, go on.")
    qtbot.keyClick(field, Qt.Key.Key_K, ALT)
    qtbot.waitUntil(lambda: "in the class list" in window.bar.trouble.text(), timeout=5000)
    assert PhraseBook().phrases() == {}


# --- length, spelling ----------------------------------------------------------------


def test_length_and_reading_age_follow_the_typing(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    write(qtbot, window, "You took great care with each of your lengths and it shows in the line.")
    qtbot.waitUntil(lambda: "Words: 15" in editor.told.text(), timeout=5000)
    assert "years" in editor.told.text()
    assert "1967" in editor.told.toolTip()


def waves(field: PieceField) -> list[str]:
    """What is underlined with a wave, as painted."""
    found, block = [], field.document().begin()
    wave = QTextFormat.Property.TextUnderlineStyle
    while block.isValid():
        for one in block.layout().formats():
            if one.format.property(wave) and one.format.underlineColor().isValid():
                style = one.format.underlineStyle()
                if style == one.format.UnderlineStyle.WaveUnderline:
                    found.append(block.text()[one.start : one.start + one.length])
        block = block.next()
    return found


def loaded(qtbot: QtBot, editor: FeedbackEditor) -> None:
    qtbot.waitUntil(lambda: editor._at_hand.spelling is not None, timeout=30_000)


def test_a_word_to_check_is_waved_named_and_mended_by_key(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    loaded(qtbot, editor)
    field = write(qtbot, window, "Aino, the lenght of {longest} is of good colour.")
    qtbot.waitUntil(lambda: waves(field) == ["lenght"], timeout=5000)
    assert "lenght" in editor.trouble.text()  # in words too, for eyes that miss the wave
    qtbot.keyClick(field, Qt.Key.Key_C, ALT)
    menu = shown_now(qtbot)
    assert menu.actions()[0].text() == "length"
    qtbot.keyClick(menu, Qt.Key.Key_Return)
    become(qtbot, window, ("Aino, the length of {longest} is of good colour.",))
    qtbot.waitUntil(lambda: waves(field) == [], timeout=5000)


def test_a_word_learnt_is_known_from_then_on(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    loaded(qtbot, editor)
    field = write(qtbot, window, "Use the wobblescope again.")
    qtbot.waitUntil(lambda: waves(field) == ["wobblescope"], timeout=5000)
    where = QTextCursor(field.document())
    where.setPosition(10)
    field.setTextCursor(where)
    event = QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(5, 5), QPoint(5, 5))
    QApplication.sendEvent(field, event)
    menu = shown_now(qtbot)
    learn = next(one for one in menu.actions() if "remember" in one.text())
    learn.trigger()
    menu.close()
    qtbot.waitUntil(lambda: waves(field) == [], timeout=5000)


def test_the_word_at_the_caret_is_not_questioned_while_it_is_typed(
    qtbot: QtBot, window: Window, editor: FeedbackEditor
) -> None:
    loaded(qtbot, editor)
    field = write(qtbot, window, "So the lengh")
    editor.look()
    assert waves(field) == []
    qtbot.keyClicks(field, " of it")
    editor.look()
    assert waves(field) == ["lengh"]


def test_across_the_class_the_same_keys_work(qtbot: QtBot, window: Window) -> None:
    window.show_place("across")
    page = window.further["across"]
    learner = page.learner
    was = window.desk.session.text(learner, page.criterion.id).pieces
    page.write()
    page.card.text.moveCursor(QTextCursor.MoveOperation.Start)
    qtbot.keyClick(page.card.text, Qt.Key.Key_Down, ALT)
    now = (was[1], was[0], *was[2:])
    session, criterion = window.desk.session, page.criterion.id
    qtbot.waitUntil(lambda: session.text(learner, criterion).pieces == now, timeout=5000)
