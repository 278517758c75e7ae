"""In a German window no sentence of the core is left in English, on whatever page."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from string import Formatter

import pytest
from everywhere import each_page, go_to, settle_layout, words_in
from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot
from second_marking import ask_file, moderation, refreshed, second_mark_all

from markbench.session.packing import Packed
from markbench.ui import languages
from markbench.ui.languages.refresh import forms_of_sentences
from markbench.ui.look.said import CONTEXT
from markbench.ui.newclass.page import BRIEF
from markbench.ui.window import Window

# Invented learners whose tables raise many kinds of questions.
ODD_TABLES = {
    "Dora Swift": ("Length,t1,t2", "20,4.48,4.52", "30,5.49,5.51", "40,6.35,6.33", "50,7.09,7.11"),
    "Egil Short": ("Length (cm),Time of 5 swings (s),g", "40,6.33,9.9", "50,7.1,abc", "60,–,9.7"),
    "Frida Alike": ("cm,s,s", "20.0,8.95,9.01", "30.0,11.02,10.95", "40.0,12.72,12.66",
                    "50.0,14.21,14.15", "60.0,15.52,15.58"),
    "Gunn Silent": ("nothing of use",),
}  # fmt: skip


@pytest.fixture
def german(qapp: QApplication) -> Iterator[None]:
    installed = languages.install(qapp, "de")
    yield
    for translator in installed:
        qapp.removeTranslator(translator)


@pytest.fixture
def odd_class(class_folder: Path) -> Path:
    with (class_folder / "class_list.csv").open("a", encoding="utf-8") as roll:
        roll.writelines(f"s{number},{name}\n" for number, name in enumerate(ODD_TABLES, 4))
        roll.write("s8,Hild Broken\n")
    for name, lines in ODD_TABLES.items():
        (class_folder / name).mkdir()
        (class_folder / name / "readings.csv").write_text("\n".join(lines), encoding="utf-8")
    (class_folder / "Hild Broken").mkdir()
    (class_folder / "Hild Broken" / "readings.xlsx").write_bytes(b"PK\3\4 and no more")
    (class_folder / "brief.toml").write_text(
        'rubric = "short"\nfeedback_language = "de"\ncloses = 2026-03-01\n'
        'lenghts = 6\nlengths = 500\nopens = 2026-03-02\nevidence = ["selfi"]\n'
        "shortest_m = 0.9\nlongest_m = 0.5\nleast_ratio = 40\n"
    )
    return class_folder


def english_parts() -> dict[str, str]:
    """Parts of the core's forms long enough to be told from a name, each with its form."""
    found = {}
    for form in forms_of_sentences():
        german = QCoreApplication.translate(CONTEXT, form)
        for text, *_ in Formatter().parse(form):
            part = text.strip(" .,;:()")
            if len(part) > 16 and " " in part and part not in german:
                found[part] = form
    return found


@pytest.mark.usefixtures("german")
def test_no_sentence_of_the_core_is_english(
    qtbot: QtBot, empty_window: Window, odd_class: Path
) -> None:
    window, parts = empty_window, english_parts()
    assert len(parts) > 200
    left: dict[str, str] = {}
    odd_key = QCoreApplication.translate(CONTEXT, "Until then the default {value} is used.")
    odd_met: set[str] = set()

    def look(page: str) -> None:
        for place, words in words_in(window):
            if odd_key.partition("{")[0] in words:
                odd_met.add(page)
            if place.startswith("PhraseEdit"):
                continue  # a rubric's own text, in the language of its file
            for part, form in parts.items():
                if part in words:
                    left.setdefault(form, f"{page}, {place}: {words[:160]}")

    for page in each_page(qtbot, window, odd_class):
        look(page)
    assert window.bench is not None
    for row in window.bench.model.rows:
        go_to(window, "class")
        window.open_learner(row.id)
        settle_layout()
        look(f"sheet of {row.name}")
    assert not left, "\n".join(f"{form}\n    {where}" for form, where in left.items())
    assert odd_met >= {"what was found", "brief"}  # the odd brief was told of, in German


@pytest.mark.usefixtures("german")
def test_no_sentence_of_moderation_is_english(
    qtbot: QtBot,
    empty_window: Window,
    marked_folder: Path,
    packed: Packed,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    second_mark_all(packed, tmp_path / "r.markbench-reply", rest=1)
    empty_window.open_folder(marked_folder)
    qtbot.waitUntil(lambda: empty_window.sheet is not None, timeout=10_000)
    page = moderation(qtbot, empty_window)
    page.sample.merge_file(tmp_path / "r.markbench-reply")
    refreshed(qtbot, page, lambda: bool(page.open.rows))
    ask_file(monkeypatch, tmp_path / "again.markbench-pack")
    qtbot.mouseClick(page.sample.pack, Qt.MouseButton.LeftButton)
    qtbot.waitUntil(page.sample.each.isVisible, timeout=20_000)
    page.sample.each.click()
    page.agreement.roll.setCurrentCell(0, 0)
    settle_layout()
    told = "\n".join(words for _, words in words_in(page))
    # What is looked for is there: pieces left out, an open question, figures with their mark.
    assert "again.markbench-pack" in told
    assert "T. Teacher" in page.open.rows[next(iter(page.open.rows))].words.text()
    assert re.search(r"\d,\d\d", page.agreement.total.text())
    left = {form: part for part, form in english_parts().items() if part in told}
    assert not left, "\n".join(f"{form}\n    {part}" for form, part in left.items())
    for short in (" gave ", "left out", "setup photo", "mean difference", " of learner"):
        assert short not in told  # parts too short to be looked for by themselves


@pytest.mark.usefixtures("german")
def test_a_new_class_begins_in_the_windows_language(
    qtbot: QtBot, empty_window: Window, class_folder: Path
) -> None:
    (class_folder / "brief.toml").unlink()
    empty_window.doors.look_at(class_folder)
    page = empty_window.doors.page
    qtbot.waitUntil(lambda: page.new is not None, timeout=10_000)
    assert page.new.brief.feedback_language == "de"
    page.go(BRIEF)
    settle_layout()
    shortest = page.form.fields["shortest_m"]
    assert shortest.line is not None
    assert shortest.line.text() == "0,05"
    assert shortest.raw() == 0.05
