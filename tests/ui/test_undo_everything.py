"""Whatever is decided in the window is taken back by Ctrl+Z and done again by Ctrl+Shift+Z.

The commands are those that the pages give; each page's own test holds it to giving them. What
bears other hands or a signature is in ``test_undo_with_care.py``, files in
``test_undo_of_files.py``.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from pytestqt.qtbot import QtBot

from markbench.intake.tables import ColumnHints
from markbench.model import Decision
from markbench.session import Session
from markbench.session.handed_in_work import WORK
from markbench.session.moderating import decide_adjustment, settle_mark, take_sample
from markbench.session.order import choose_order, shuffle_every
from markbench.session.own_words import learn
from markbench.session.phrases import forget_phrase, keep_phrase, phrases
from markbench.session.since_marked import let_stand
from markbench.session.spelling import OwnWords
from markbench.session.texts import Text
from markbench.ui.feedback.at_hand import AtHand
from markbench.ui.window import Window

CONTROL = Qt.KeyboardModifier.ControlModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
PHOTO = "Aino Example/setup.png"
TABLE = "Aino Example/readings.csv"
COLUMNS = ColumnHints(length="A", timings=("C", "B"), swings=10).to_json()


def first(session: Session) -> str:
    return session.rubric.criteria[0].id


def level(session: Session, at: int) -> str:
    return session.rubric.criteria[0].levels[at].name


def correct(session: Session) -> None:
    table = session.portfolio("s1").table
    assert table is not None
    session.correct("s1", table.readings[0].timings[0].source, "9.40")


def put_a_sentence_down(session: Session) -> None:
    pieces = session.text("s1", first(session)).pieces
    session.set_text("s1", first(session), Text(("Measure once more.", *pieces)))


def forget(session: Session) -> None:
    forget_phrase(session, phrases(session)[0])


COMMANDS: dict[str, Callable[[Session], None]] = {
    "settle whose a file is": lambda s: s.settle_owner("IMG_0001.jpg", "s3"),
    "say what a picture shows": lambda s: s.set_piece_kind(PHOTO, "photo"),
    "judge a piece of evidence": lambda s: s.set_piece_status("s1", PHOTO, "again"),
    "judge many pieces": lambda s: s.decide(
        *(Decision("piece_status", i, f"{n}/setup.png", "accepted")
          for i, n in (("s1", "Aino Example"), ("s2", "Bodil Sample")))
    ),
    "count a film's swings": lambda s: s.decide(
        Decision("swing_count", "s1", "Aino Example/swing video.mp4", 10)
    ),
    "correct a reading": correct,
    "type readings": lambda s: s.type_readings(
        "s3", [{"length_m": 0.5, "swings": 10, "timings_s": [14.2, 14.3]}]
    ),
    "point at columns": lambda s: s.point_at_columns(TABLE, COLUMNS),
    "agree with an explanation": lambda s: s.agree("s2", "extra_swing"),
    "give more time": lambda s: s.extend("s3", dt.date(2030, 1, 31)),
    "accept a draft": lambda s: s.accept("s1", first(s)),
    "choose a level": lambda s: s.set_level("s1", first(s), level(s, 1)),
    "accept all drafts": lambda s: s.accept("s2"),
    "take a mark back to a draft": lambda s: s.clear_mark("s1", first(s)),
    "move the text's sentences": put_a_sentence_down,
    "write a note on a learner": lambda s: s.set_note("s1", "was ill"),
    "write a note on a criterion": lambda s: s.set_note("s1", "seen in class", first(s)),
    "keep a phrase": lambda s: keep_phrase(s, "s1", first(s), "Time ten swings each time."),
    "forget a phrase": forget,
    "remember a word": lambda s: learn(s, "en", "wobblescope"),
    "leave a mark as it is": lambda s: let_stand(s, "s1"),
    "choose an order": lambda s: choose_order(s, first(s), "concern"),
    "shuffle an order": lambda s: choose_order(s, first(s), "shuffled", 7),
    "shuffle every order": lambda s: shuffle_every(s, {c.id: 8 for c in s.rubric.criteria}),
    "draw the sample": lambda s: take_sample(s, seed=3) and None,
    "adjust the class": lambda s: decide_adjustment(s, "adjust", "severe", 1.0),
    "settle a mark": lambda s: settle_mark(s, "s1", first(s), level(s, 0), "both agreed"),
}  # fmt: skip


def test_every_decision_is_taken_back_and_done_again_by_keys(
    qtbot: QtBot, window: Window, class_folder: Path
) -> None:
    desk = window.desk
    assert desk is not None
    session, book = desk.held, AtHand.of(desk).book

    def stand() -> Any:
        """What holds, in the journal and beyond it."""
        # The work that a mark rested on is remembered, whatever becomes of the mark.
        held = session.state.items()
        decided = {key: decision.value for key, decision in held if key[0] != WORK}
        drafts = {one.id: session.drafts(one.id) for one in session.learners}
        brief = (class_folder / "brief.toml").read_bytes()
        return decided, drafts, set(book.phrases()), OwnWords("en").words, brief

    def press(*keys: Qt.KeyboardModifier) -> None:
        decided = len(session.history())
        qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_Z, keys[-1])
        qtbot.waitUntil(lambda: len(session.history()) > decided, timeout=10_000)
        desk.finish()

    past = []
    for name, command in COMMANDS.items():
        before, decided = stand(), len(session.history())
        desk.do(command)
        qtbot.waitUntil(lambda n=decided: len(session.history()) > n, timeout=10_000)
        desk.finish()
        after = stand()
        assert after != before, name
        press(CONTROL)
        assert stand() == before, name
        press(CONTROL | SHIFT)
        assert stand() == after, name
        past.append((name, before))
    qtbot.waitUntil(lambda: window.undo_button.isEnabled(), timeout=5000)
    for name, before in reversed(past):
        press(CONTROL)
        assert stand() == before, name
    qtbot.waitUntil(lambda: not window.undo_button.isEnabled(), timeout=5000)


def test_hiding_names_is_taken_back_and_done_again(qtbot: QtBot, window: Window) -> None:
    window.turn_blind()
    qtbot.waitUntil(lambda: window.desk.blind, timeout=5000)
    qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_Z, CONTROL)
    qtbot.waitUntil(lambda: not window.desk.blind, timeout=5000)
    qtbot.keyClick(window.pages.currentWidget(), Qt.Key.Key_Z, CONTROL | SHIFT)
    qtbot.waitUntil(lambda: window.desk.blind, timeout=5000)
