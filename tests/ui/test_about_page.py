"""About: what leaves the machine, and every part with its licence, with or without a class."""

from markbench import __version__
from markbench.session.components import components
from markbench.ui.care.about_page import AboutPage


def open_page(qtbot, window):
    window.deeds.find("about markbench")[0].action.trigger()
    page = window.doors.page
    assert isinstance(page, AboutPage)
    qtbot.waitUntil(lambda: page.roll.rowCount() > 0, timeout=30_000)
    return page


def test_without_a_class(qtbot, empty_window):
    page = open_page(qtbot, empty_window)
    assert "nothing" in page.leaves.text()
    names = [row[0] for row in page.roll.texts()]
    assert names[0] == "markbench"
    assert {"PySide6_Essentials", "numpy", "fpdf2", "Pygments", "DejaVu Sans Condensed"} <= {*names}
    assert page.roll.texts()[0][1] == __version__
    page.roll.setCurrentCell(names.index("numpy"), 0)
    assert "NumPy Developers" in page.text.toPlainText()
    page.left.emit()
    assert empty_window.pages.currentWidget() is empty_window.start


def test_back_to_the_class(qtbot, window):
    open_page(qtbot, window).left.emit()
    assert window.pages.currentWidget() is window.bench


def test_every_part_names_its_licence():
    parts = components()
    assert len({part.name for part in parts}) == len(parts)
    unknown = [part.name for part in parts if part.licence.startswith("see its")]
    assert unknown == []
    # The packages' own words (their PyPI pages), not ours.
    licences = {part.name: part.licence for part in parts}
    assert licences["numpy"].startswith("BSD-3-Clause")
    assert licences["fpdf2"] == "LGPL-3.0-only"
    assert licences["scipy"] == "BSD License"
