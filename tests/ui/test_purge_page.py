"""Removing photos and films in the window: shown first, asked for, and the sheet still opens."""

from markbench.session.moderating import sign_off
from markbench.ui.care.purge_page import PurgePage


def mark_all(session):
    for learner in session.learners:
        session.accept(learner.id)
        for criterion in session.rubric.criteria:
            if session.mark(learner.id, criterion.id) is None:
                session.set_level(learner.id, criterion.id, criterion.levels[0].name)


def open_page(window):
    window.deeds.find("remove photos and videos")[0].action.trigger()
    page = window.doors.page
    assert isinstance(page, PurgePage)
    return page


def media(folder):
    return [p for p in folder.rglob("*") if p.suffix in (".png", ".jpg", ".mp4")]


def test_before_sign_off_it_only_shows(window, class_folder):
    page = open_page(window)
    assert "not signed off" in page.why_not.text()
    assert not page.go.isEnabled()
    assert not page.sure.isVisible()
    counts = [row[2] for row in page.roll.texts() if row[0] == "goes"]
    assert sorted(counts) == ["1", "2", "3", "3"]
    page.go.click()
    page.remove()
    assert len(media(class_folder)) == 9


def test_shown_confirmed_removed(qtbot, window, session, class_folder, monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    mark_all(session)
    sign_off(session)
    totals = {learner.id: session.total(learner.id) for learner in session.learners}
    page = open_page(window)
    assert page.why_not.text() == ""
    assert not page.go.isEnabled()  # not without a word
    page.sure.setChecked(True)
    assert "9 files" in page.go.text()
    page.go.click()
    qtbot.waitUntil(lambda: "✓" in page.done.text(), timeout=60_000)
    assert media(class_folder) == []
    assert len(list(class_folder.rglob("readings.csv"))) == 3
    assert {learner.id: session.total(learner.id) for learner in session.learners} == totals
    assert not page.go.isEnabled()
    window.open_learner("s1")
    sheet = window.sheet
    assert sheet.learner == "s1"
    captions = [t.accessibleName() for t in sheet.evidence.thumbs if not t.isHidden()]
    assert captions == ["Set-up: removed", "Selfie: removed", "Video: removed"]
    assert sheet.evidence.openable("s1") == []
    sheet.open_evidence()  # nothing to open, and nothing fails


def test_reminded_in_the_bar_once_the_day_has_passed(qtbot, empty_window, class_folder):
    brief = class_folder / "brief.toml"
    brief.write_text(brief.read_text() + "keep_evidence_until = 2020-03-20\n")
    window = empty_window
    window.open_folder(class_folder)
    qtbot.waitUntil(lambda: window.bench is not None, timeout=10_000)
    assert window.care.overdue.isVisible()
    assert "20 Mar 2020" in window.care.overdue.toolTip()
    assert len(media(class_folder)) == 9
    window.care.overdue.click()
    assert isinstance(window.doors.page, PurgePage)
    window.close_class()
    assert not window.care.overdue.isVisible()


def test_no_day_no_reminder(window):
    assert not window.care.overdue.isVisible()
