"""The moderator's evening as hands do it: receive, mark blind, look, answer, send back, merge,
adjust, move a boundary, sign off, reopen, send out."""

from __future__ import annotations

from pathlib import Path

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QInputDialog,
    QPlainTextEdit,
    QWidget,
)
from pytestqt.qtbot import QtBot
from python_calamine import CalamineWorkbook
from second_marking import (
    LEFT,
    ask_file,
    card,
    drop,
    give_level,
    ids_of,
    look,
    mark_apart,
    mark_blind,
    mark_class,
    moderation,
    pack_opened,
    refreshed,
    second_mark_all,
    words_in,
)

from markbench.model import Criterion
from markbench.moderation.records import sign_off_of
from markbench.session import Session
from markbench.session.agreeing import agreement_of
from markbench.session.moderating import take_sample
from markbench.session.packing import Packed, write_pack
from markbench.session.results import results
from markbench.ui.moderation.pack_sheet import PackSheet
from markbench.ui.window import Window

# --- the pack is received -----------------------------------------------------------------


def test_a_pack_dropped_on_the_window_opens(
    qtbot: QtBot, her_window: Window, packed: Packed, tmp_path: Path
) -> None:
    (tmp_path / "letter.txt").write_text("Hello", "utf-8")
    assert not drop(her_window, tmp_path / "letter.txt")
    assert drop(her_window, packed.path)
    found = pack_opened(qtbot, her_window)
    assert packed.code in words_in(found)
    assert found.numbers.count() == 3


def test_a_tampered_pack_is_refused_with_the_reason(
    qtbot: QtBot, her_window: Window, packed: Packed
) -> None:
    data = bytearray(packed.path.read_bytes())
    data[len(data) // 2] ^= 0xFF
    packed.path.write_bytes(bytes(data))
    her_window.open_path(packed.path)
    qtbot.waitUntil(her_window.start._trouble.isVisible, timeout=10_000)
    assert "class.markbench-pack" in her_window.start._trouble.text()
    assert her_window.pack_door.sheet is None


# --- blind --------------------------------------------------------------------------------


def test_before_her_own_mark_she_sees_the_work_and_nothing_of_the_first_marker(
    qtbot: QtBot, sheet: PackSheet
) -> None:
    said = words_in(sheet)
    for hidden in ("T. Teacher", "As I see it.", "The first marker's text.", "Aino", "Bodil"):
        assert hidden not in said
    # The learner's numbers and evidence are there: five lengths, the graph, the pictures.
    assert sheet.readings.rowCount() == 5
    assert len(sheet.graph.curves.points[0]) == 5
    shown = [thumb for thumb in sheet.evidence.thumbs if thumb.piece is not None]
    assert {thumb.kind for thumb in shown if not thumb.isHidden()} == {"setup_photo", "swing_video"}
    # A selfie that stayed with the first marker is not called missing; one not handed in is.
    selfies = {}
    for number in ids_of(sheet):
        sheet.show_number(number)
        selfies[number] = next(t for t in sheet.evidence.thumbs if t.kind == "selfie")
        selfies[number] = selfies[number].accessibleName()
    sheet.show_number("01")
    told = [name.partition(": ")[2] for name in selfies.values()]
    assert sorted(told) == ["missing", "not in the pack", "not in the pack"]
    # Neither drafts nor explanations, which would lead her.
    assert sheet.explanations.explanations == ()
    assert "come with the first marks" in said
    assert not any(row.finding.check == "slip" for row in sheet.findings.rows if row.finding)
    assert not sheet.margin.accept_all.isEnabled()
    mark_blind(qtbot, sheet)
    assert "As I see it." not in words_in(sheet)
    look(qtbot, sheet)
    said = words_in(sheet)
    assert "First mark, T. Teacher" in said
    assert "As I see it." in said
    assert "The first marker's text." in said
    assert sheet.explanations.explanations
    # Her own levels stand, and pressing one says so.
    with qtbot.waitSignal(sheet._desk.trouble, timeout=5000) as told:
        qtbot.mouseClick(next(reversed(card(sheet, 0).levels.values())), LEFT)
    assert "the second mark stands" in told.args[0]
    assert next(iter(card(sheet, 0).levels.values())).isChecked()


def test_a_pack_offers_nothing_to_judge_or_tell(qtbot: QtBot, sheet: PackSheet) -> None:
    thumbs = [t for t in sheet.evidence.thumbs if not t.isHidden() and t.piece is not None]
    assert sheet.graph.plot.isVisible()
    assert not sheet.graph.save.isVisible()
    assert thumbs
    for thumb in thumbs:
        assert not thumb.more.isVisible()
        assert not any(choice.isVisible() for choice in thumb.kinds.values())
        thumb.setFocus()
        for key in (Qt.Key.Key_G, Qt.Key.Key_S):
            qtbot.keyClick(thumb, key)
    sheet.open_piece(thumbs[0].piece)
    viewer = sheet.layers.viewer
    assert viewer.isVisible()
    for control in (*viewer.kinds.values(), *viewer.judgements.values(), viewer.count):
        assert not control.isVisible()
    for key in (Qt.Key.Key_G, Qt.Key.Key_S):
        qtbot.keyClick(viewer, key)
    sheet._desk.finish()
    QApplication.processEvents()
    assert sheet._pack.history()[1:] == []  # the first entry says which pack it is
    assert not sheet.table.editTriggers()


def test_a_report_in_the_pack_is_read_without_names(
    qtbot: QtBot, her_window: Window, class_folder: Path, tmp_path: Path
) -> None:
    mark_class(class_folder, reports=True)
    session = Session.open(class_folder, "T. Teacher")
    take_sample(session, seed=4)
    made = write_pack(session, tmp_path / "r.markbench-pack")
    session.close()
    her_window.open_path(made.path)
    sheet = pack_opened(qtbot, her_window)
    for number in made.numbers.values():
        sheet.show_number(number)
        assert sheet.report.isVisible() == (number == made.numbers["s1"])
    sheet.show_number(made.numbers["s1"])
    qtbot.mouseClick(sheet.report, LEFT)
    page = sheet.findChild(QDialog)
    assert page.findChild(QPlainTextEdit).toPlainText().strip() == (
        f"learner {made.numbers['s1']} says: it swung."
    )
    page.close()


# --- the whole evening --------------------------------------------------------------------


def her_evening(qtbot: QtBot, sheet: PackSheet, packed: Packed) -> None:
    """One criterion higher than the first marker, the rest the same; an answer of every kind."""
    ids = {number: learner for learner, number in packed.numbers.items()}
    for number in sorted(ids):
        sheet.show_number(number)
        for at in range(len(sheet.margin.cards)):
            give_level(qtbot, sheet, at, 0 if at == 0 else 1)
        look(qtbot, sheet)
        first = card(sheet, 0)
        sheet.margin.open_card(first.criterion.id)
        if ids[number] == "s1":  # adjusted, with a reason
            assert not first.adjust.isEnabled()
            first.level.setCurrentIndex(1)
            assert not first.adjust.isEnabled()
            qtbot.keyClicks(first.words, "All five lengths are there.")
            qtbot.mouseClick(first.adjust, LEFT)
        elif ids[number] == "s2":  # asked
            qtbot.keyClicks(first.words, "Was a sheet lost?")
            qtbot.mouseClick(first.ask, LEFT)
        else:
            qtbot.mouseClick(first.agree, LEFT)
        qtbot.waitUntil(first._said.isVisible, timeout=5000)


def test_the_whole_evening(
    qtbot: QtBot,
    sheet: PackSheet,
    her_window: Window,
    packed: Packed,
    marked_folder: Path,
    empty_window: Window,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    her_evening(qtbot, sheet, packed)
    reply = tmp_path / "back.markbench-reply"
    ask_file(monkeypatch, reply)
    qtbot.mouseClick(sheet.send, LEFT)
    assert reply.is_file()
    her_window.close()

    # On the first marker's machine.
    empty_window.open_folder(marked_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    session = empty_window.desk.held
    page = moderation(qtbot, empty_window)
    assert page.sample.roll.rowCount() == 3
    assert "Nobody has a first and a second mark" in page.agreement.sentence.text()
    assert drop(empty_window, reply)
    refreshed(qtbot, page, lambda: bool(page.open.rows))
    history = len(session.history())
    merged = page.open._merge.text()
    assert "0 clashes" in merged
    qtbot.mouseClick(page.sample.merge, LEFT)  # the same reply again
    qtbot.waitUntil(lambda: page.open._merge.text() != merged, timeout=10_000)
    assert "Merged: 0 entries" in page.open._merge.text()
    assert len(session.history()) == history

    # Agreement, in the figures of the tested statistics, and no verdict.
    assert len(agreement_of(session).learners) == 3
    shares = [row[1].split("\n")[0] for row in page.agreement.roll.texts()]
    assert shares == ["0 of 3"] + ["3 of 3"] * (len(shares) - 1)
    assert "95 % interval" in page.agreement.total.text()
    assert "No adjustment is proposed" in page.adjustment.words.text()

    # One question is open, and the sign-off waits for it.
    assert list(page.open.rows) == [("s2", session.rubric.criteria[0].id)]
    assert not page.signing.sign.isEnabled()
    row = next(iter(page.open.rows.values()))
    assert "Was a sheet lost?" in row.words.text()
    qtbot.keyClicks(row.reason, "It was; found on Monday.")
    qtbot.mouseClick(row.settle, LEFT)
    refreshed(qtbot, page, lambda: not page.open.rows)

    # An adjustment is a decision; nothing moves before it.
    before = {x: one.total for x, one in results(session).items()}
    page.adjustment.shift.setValue(1)
    assert {x: one.total for x, one in results(session).items()} == before
    assert not page.adjustment.leave.isEnabled()
    qtbot.keyClicks(page.adjustment.reason, "Three are too few.")
    qtbot.mouseClick(page.adjustment.leave, LEFT)
    refreshed(qtbot, page, lambda: page.adjustment.held.isVisible())
    assert {x: one.total for x, one in results(session).items()} == before

    # A boundary is moved, and who changes grade is seen while it moves.
    total = before["s3"]
    grades = {x: one.grade for x, one in results(session).items()}
    page.boundaries.fields["A"].setValue(total + 0.5)
    told = {row[0] for row in page.boundaries.roll.texts()}
    names = {one.id: one.name for one in session.learners}
    assert told == {names[x] for x, t in before.items() if grades[x] == "A" and t < total + 0.5}
    assert told
    assert {x: one.grade for x, one in results(session).items()} == grades
    qtbot.mouseClick(page.boundaries.back, LEFT)

    # Signed: frozen on the page and on every learner's sheet.
    qtbot.waitUntil(page.signing.sign.isEnabled, timeout=5000)
    qtbot.mouseClick(page.signing.sign, LEFT)
    refreshed(qtbot, page, lambda: page.signing.reopen.isVisible())
    assert sign_off_of(session.state).by == "T. Teacher"
    empty_window.open_learner("s3")
    margin = empty_window.sheet.margin
    first_card = margin.cards[0]
    assert first_card.text.isReadOnly()
    assert not margin.accept_all.isEnabled()
    held = session.mark("s3", first_card.criterion.id)
    empty_window.activateWindow()
    qtbot.waitUntil(empty_window.isActiveWindow, timeout=5000)
    with qtbot.waitSignal(empty_window.desk.trouble, timeout=5000):
        qtbot.keyClick(empty_window, Qt.Key.Key_1, Qt.KeyboardModifier.ControlModifier)
    assert session.mark("s3", first_card.criterion.id) == held
    assert "Signed off" in empty_window.bar.trouble.text()
    assert first_card.levels[held.level].isChecked()  # what is shown is what holds

    # What goes out bears the marks that hold.
    page = moderation(qtbot, empty_window)
    page.out.record.setChecked(True)
    qtbot.mouseClick(page.out.write, LEFT)
    out = marked_folder / "markbench-out"
    qtbot.waitUntil(page.out.told.isVisible, timeout=30_000)
    assert "3 feedback sheets" in page.out.told.text()
    assert (out / "moderation-record.pdf").read_bytes().startswith(b"%PDF")
    head, *rows = CalamineWorkbook.from_path(out / "marks.xlsx").get_sheet_by_index(0).to_python()
    at = head.index(f"Total /{session.rubric.most:g}")
    assert {row[0]: row[at] for row in rows} == before

    # Reopening needs its reason, and is a decision.
    assert not page.signing.reopen.isEnabled()
    qtbot.keyClicks(page.signing.why, "A film came late.")
    qtbot.mouseClick(page.signing.reopen, LEFT)
    refreshed(qtbot, page, lambda: page.signing.sign.isVisible())
    assert session.history()[-2].kind == "reopen"
    assert sign_off_of(session.state) is None


def test_a_tampered_reply_is_refused_in_words(
    qtbot: QtBot, window: Window, class_folder: Path, tmp_path: Path
) -> None:
    bad = tmp_path / "bad.markbench-reply"
    bad.write_text("{}", "utf-8")
    page = moderation(qtbot, window)
    with qtbot.waitSignal(window.desk.trouble, timeout=5000):
        page.sample.merge_file(bad)
    assert "no moderator's reply" in window.bar.trouble.text()


def test_the_page_is_there_before_the_figures(
    qtbot: QtBot, window: Window, monkeypatch: pytest.MonkeyPatch
) -> None:
    window.show_place("moderation")
    page = window.further["moderation"]
    assert page.isVisible()
    assert page._now.figures is None
    assert "worked out" in page.agreement.sentence.text()
    qtbot.waitUntil(lambda: page._now.figures is not None, timeout=20_000)
    assert "worked out" not in words_in(page)
    # Nothing that bears on a result has changed: the figures are not worked out again.
    figures = page._now.figures
    window.desk.held.set_note("s1", "A word.")
    qtbot.waitUntil(
        lambda: not page._fresh._soon.isActive() and not page._fresh._stale, timeout=5000
    )
    assert page._now.figures is figures


def test_the_stations_lead_to_their_papers(qtbot: QtBot, window: Window) -> None:
    page = moderation(qtbot, window)
    for name, paper in (("signing", page.signing), ("out", page.out), ("sample", page.sample)):
        qtbot.mouseClick(page.steps.buttons[name], LEFT)
        QApplication.processEvents()
        top = paper.mapTo(page, paper.rect().topLeft()).y()
        assert page.steps.height() <= top + 20
        assert top < page.height() - 60
    assert "none yet" in page.steps.buttons["sample"].text()
    qtbot.mouseClick(page.sample.draw, LEFT)
    qtbot.waitUntil(lambda: "✓" in page.steps.buttons["sample"].text(), timeout=5000)


def test_agreement_fits_a_small_window(
    qtbot: QtBot, empty_window: Window, marked_folder: Path, packed: Packed, tmp_path: Path
) -> None:
    second_mark_all(packed, tmp_path / "r.markbench-reply")
    empty_window.open_folder(marked_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    page = moderation(qtbot, empty_window)
    page.sample.merge_file(tmp_path / "r.markbench-reply")
    refreshed(qtbot, page, lambda: bool(page.open.rows))
    QApplication.processEvents()
    roll = page.agreement.roll
    header = roll.horizontalHeader()
    assert header.length() <= roll.viewport().width()
    for column in range(1, 4):
        assert header.sectionSize(column) >= roll.sizeHintForColumn(column)
    assert page.area.widget().width() <= page.area.viewport().width()
    # Many open questions do not push the sign-off away: the first few, and a way to the rest.
    shown = [row for row in page.open.rows.values() if not row.isHidden()]
    assert len(page.open.rows) == 3 * len(session_criteria(empty_window))
    assert len(shown) < len(page.open.rows)
    qtbot.mouseClick(page.open.more, LEFT)
    assert not any(row.isHidden() for row in page.open.rows.values())


def session_criteria(window: Window) -> tuple[Criterion, ...]:
    return window.desk.held.rubric.criteria


def test_two_teachers_marks_are_turned_round_by_hand(
    qtbot: QtBot, empty_window: Window, class_folder: Path, tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:  # fmt: skip
    theirs = tmp_path / "their copy"
    criterion = mark_apart(class_folder, theirs)
    empty_window.open_folder(class_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    page = moderation(qtbot, empty_window)
    ask_file(monkeypatch, theirs / "class.markbench")
    qtbot.mouseClick(page.sample.merge_colleague, LEFT)
    refreshed(qtbot, page, lambda: bool(page.open.choices))
    held = empty_window.desk.held
    assert held.mark("s1", criterion).by == "T. Teacher"
    monkeypatch.setattr(QInputDialog, "getText", lambda *_a, **_k: ("She had the class.", True))
    turn = next(
        b for b in page.open.choices[0].findChildren(QWidget)
        if "first" in b.accessibleName().casefold()
    )  # fmt: skip
    qtbot.mouseClick(turn, LEFT)
    qtbot.waitUntil(lambda: held.mark("s1", criterion).by == "C. Colleague", timeout=5000)


def test_a_second_mark_is_taken_back_and_done_again_until_she_has_looked(
    qtbot: QtBot, her_window: Window, sheet: PackSheet
) -> None:
    pack, number = sheet._desk.pack, sheet.learner
    first = pack.rubric.criteria[0]

    def press(keys: Qt.KeyboardModifier) -> None:
        her_window.activateWindow()
        qtbot.waitUntil(her_window.isActiveWindow, timeout=5000)
        qtbot.keyClick(sheet, Qt.Key.Key_Z, keys)
        sheet._desk.finish()

    control, shift = Qt.KeyboardModifier.ControlModifier, Qt.KeyboardModifier.ShiftModifier
    give_level(qtbot, sheet, 0, 0)
    give_level(qtbot, sheet, 0, 1)
    press(control)
    qtbot.waitUntil(lambda: pack.second(number, first.id).level == first.levels[0].name)
    qtbot.waitUntil(next(iter(card(sheet, 0).levels.values())).isChecked, timeout=5000)
    press(control)
    qtbot.waitUntil(lambda: pack.second(number, first.id) is None)
    press(control | shift)
    qtbot.waitUntil(lambda: pack.second(number, first.id) is not None)
    mark_blind(qtbot, sheet)
    look(qtbot, sheet)
    qtbot.waitUntil(lambda: not her_window.undo_button.isEnabled(), timeout=5000)
    press(control)
    assert all(pack.second(number, row.id) is not None for row in pack.rubric.criteria)


def test_the_first_mark_is_set_as_text_with_a_line_for_each_fact(
    qtbot: QtBot, her_window: Window, sheet: PackSheet
) -> None:
    mark_blind(qtbot, sheet, number=0)  # another level than was drafted for some
    look(qtbot, sheet)
    first = card(sheet, 0)
    assert first._first.text().startswith("≠ First mark")
    assert first._told.text() == "To the learner: The first marker's text."
    assert first._told.property("kind") in (None, "")  # as large as any text
    lines = first._why.text().splitlines()
    assert lines[0] == "Reason: As I see it."
    at = lines.index("Drafted from:")
    assert len(lines) > at + 2
    assert all(line.startswith("–") for line in lines[at + 1 :])
    assert len(set(lines)) == len(lines)


def test_what_keeps_from_writing_is_said_beside_the_deed(qtbot: QtBot, window: Window) -> None:
    out = moderation(qtbot, window).out
    out.roster.setChecked(True)
    assert not out.write.isEnabled()
    assert "both ids" in out.why.text()
    assert not out.why.isHidden()
    for field in (out.school, out.term):
        assert field.width() > out.width() / 2
        field.setText("7")
    assert out.write.isEnabled()
    assert out.why.isHidden()
