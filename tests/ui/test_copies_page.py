"""The copies of a class in the window: listed, weighed, gone back to; a lost file rebuilt."""

from markbench.session import Session
from markbench.ui.care.restore_page import RestorePage


def open_page(qtbot, window):
    deed = next(d for d in window.deeds.find("copies of this class"))
    deed.action.trigger()
    page = window.doors.page
    assert isinstance(page, RestorePage)
    qtbot.waitUntil(lambda: page.told.text() != "", timeout=30_000)
    return page


def test_nothing_to_go_back_to(qtbot, window):
    page = open_page(qtbot, window)
    assert "no copy yet" in page.told.text()
    assert not page.go.isEnabled()
    page.left.emit()
    assert window.pages.currentWidget() is window.bench


def test_back_to_a_copy_by_hand(qtbot, window, session):
    session.accept("s1")
    kept = session.marks("s1")
    session.keep_copy()
    session.accept("s2")
    page = open_page(qtbot, window)
    qtbot.waitUntil(page.go.isEnabled, timeout=30_000)
    # One decision more than marks: the work that they rest on.
    assert page.roll.texts()[0][1:3] == [str(len(kept) + 1), str(len(kept))]
    assert f"{len(session.marks('s2'))} marks made since become drafts again" in page.told.text()
    page.go.click()
    qtbot.waitUntil(lambda: not session.marks("s2"), timeout=30_000)
    assert session.marks("s1") == kept
    # The present was copied first: it heads the list now, and there is something to go back to.
    qtbot.waitUntil(lambda: len(page.copies) == 2, timeout=30_000)
    assert page.copies[0].marks == 2 * len(kept)
    assert "stands as it did" in page.done.text()


def test_a_lost_file_is_rebuilt_from_the_start_page(qtbot, empty_window, class_folder):
    session = Session.open(class_folder, "T. Teacher")
    session.accept("s1")
    session.keep_copy()
    kept = session.marks("s1")
    session.close()
    (class_folder / "class.markbench").write_bytes(b"")
    empty_window.open_folder(class_folder)
    start = empty_window.start
    qtbot.waitUntil(lambda: start.rebuild.isVisible(), timeout=30_000)
    assert "of it is kept" in start._trouble.text()
    start.rebuild.click()
    qtbot.waitUntil(lambda: empty_window.bench is not None, timeout=10_000)
    assert empty_window.desk.session.marks("s1") == kept


def test_only_a_damaged_file_offers_to_be_rebuilt(qtbot, empty_window, tmp_path):
    empty_window.open_folder(tmp_path / "nowhere")
    qtbot.waitUntil(lambda: empty_window.start.again.isVisible(), timeout=30_000)
    assert not empty_window.start.rebuild.isVisible()
