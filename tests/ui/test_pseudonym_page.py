"""Marking under numbers from the window: copy and key are made, and the marks come home."""

from markbench.session import Session
from markbench.ui.care.pseudonym_page import PseudonymPage


def open_page(window):
    window.deeds.find("mark under numbers")[0].action.trigger()
    page = window.doors.page
    assert isinstance(page, PseudonymPage)
    return page


def test_there_and_home_again(qtbot, window, session, tmp_path):
    page = open_page(window)
    copy, key = tmp_path / "copy", tmp_path / "my.markbench-key"
    page.make(copy, key)
    qtbot.waitUntil(lambda: "✓" in page.told.text(), timeout=60_000)
    assert "3 learners" in page.told.text()
    assert "nobody owns" in page.told.text()
    assert not any("Aino" in path.name for path in copy.rglob("*"))
    away = Session.open(copy, "M. Marker")
    for learner in away.learners:
        away.accept(learner.id)
    away.close()
    page.bring(copy, key)
    qtbot.waitUntil(lambda: "brought home" in page.told.text(), timeout=60_000)
    assert all(session.marks(learner.id) for learner in session.learners)
    assert {m.by for m in session.marks("s1").values()} == {"M. Marker"}


def test_what_is_in_the_way_is_said(qtbot, window, tmp_path):
    page = open_page(window)
    page.make(tmp_path / "copy", tmp_path / "copy" / "key")
    qtbot.waitUntil(lambda: "must not lie in the copy" in page.told.text(), timeout=30_000)
    assert page.copy.isEnabled()
    assert not (tmp_path / "copy").exists()
