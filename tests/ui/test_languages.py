"""The window in a second language: complete, with every placeholder, on the real widgets."""

from __future__ import annotations

import ast
import datetime as dt
import re
import string
import xml.etree.ElementTree as ET
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QSettings, QTranslator
from PySide6.QtWidgets import QApplication, QMessageBox, QPushButton
from pytestqt.qtbot import QtBot

from markbench.model import Figures, Sentence, joined, opening, say
from markbench.ui import languages
from markbench.ui.languages.refresh import forms_of_sentences, kept_in_tables
from markbench.ui.look import Theme
from markbench.ui.look.said import CONTEXT, said
from markbench.ui.window import Window

SECOND = [code for code in languages.NAMES if code != "en"]


def messages(language: str) -> Iterator[ET.Element]:
    yield from ET.parse(languages.FOLDER / f"markbench_{language}.ts").iter("message")


def placeholders(text: str) -> list[tuple[str, str]]:
    """Names with their formats; a lone brace is a brace (one hint speaks of typing one)."""
    try:
        parts = list(string.Formatter().parse(text))
    except ValueError:
        return [("{", "")] * text.count("{")
    return sorted((name, form or "") for _, name, form, _ in parts if name is not None)


@pytest.fixture
def german(qapp: QApplication) -> Iterator[tuple[QTranslator, ...]]:
    installed = languages.install(qapp, "de")
    yield installed
    for translator in installed:
        qapp.removeTranslator(translator)


@pytest.mark.parametrize("language", SECOND)
def test_every_string_is_translated(language: str) -> None:
    assert sum(1 for _ in messages(language)) > 500
    for message in messages(language):
        done = message.find("translation")
        assert done is not None
        assert done.get("type") is None, message.findtext("source")
        assert (done.text or "").strip(), message.findtext("source")


@pytest.mark.parametrize("language", SECOND)
def test_every_placeholder_stays(language: str) -> None:
    for message in messages(language):
        source, own = message.findtext("source") or "", message.findtext("translation") or ""
        assert placeholders(own) == placeholders(source), source
        # A sentence is often put together: spaces and ellipsis at its ends belong to it.
        assert re.match(r"\s*", own).group() == re.match(r"\s*", source).group(), source  # type: ignore[union-attr]
        assert source.endswith("…") == own.endswith("…"), source


@pytest.mark.parametrize("language", SECOND)
def test_the_compiled_file_holds_what_the_editable_one_says(
    qapp: QApplication, german: tuple[QTranslator, ...], language: str
) -> None:
    own = languages.Words()
    assert own.load(str(languages.FOLDER / f"markbench_{language}.qm"))
    for context in ET.parse(languages.FOLDER / f"markbench_{language}.ts").iter("context"):
        for message in context.iter("message"):
            said = own.translate(context.findtext("name") or "", message.findtext("source") or "")
            assert said == message.findtext("translation")


def test_strings_kept_in_tables_are_translated_too(german: tuple[QTranslator, ...]) -> None:
    known = {message.findtext("source") for message in messages("de")}
    assert {words for _, words in kept_in_tables()} <= known
    assert QCoreApplication.translate("BriefForm", "Latitude in degrees") != "Latitude in degrees"


@pytest.mark.parametrize("language", SECOND)
def test_every_sentence_of_the_core_is_collected(language: str) -> None:
    contexts = ET.parse(languages.FOLDER / f"markbench_{language}.ts").iter("context")
    (own,) = (context for context in contexts if context.findtext("name") == CONTEXT)
    known = {message.findtext("source") for message in own.iter("message")}
    assert set(forms_of_sentences()) <= known
    assert "The {name} is missing." in known
    assert "{length} ({n})" not in known


def test_every_string_is_asked_for_where_qts_tool_files_it() -> None:
    """lupdate takes the word before ``.tr`` for the context; only ``self`` is the class's own."""
    ui, elsewhere = Path(languages.__file__).parents[1], re.compile(r"\b(?!self\b)\w+\.tr\(")
    found = [
        f"{file.relative_to(ui)}: {line.strip()}"
        for file in ui.rglob("*.py")
        for line in file.read_text("utf-8").splitlines()
        if elsewhere.search(line)
    ]
    assert found == []


def test_no_string_hides_from_qts_tool_in_an_f_string() -> None:
    """lupdate reads no calls within them: such a string would never be translated."""
    hidden = [
        f"{file.name}: {ast.unparse(call)}"
        for file in Path(languages.__file__).parents[1].rglob("*.py")
        for text in ast.walk(ast.parse(file.read_text("utf-8")))
        if isinstance(text, ast.JoinedStr)
        for call in ast.walk(text)
        if isinstance(call, ast.Call)
        and getattr(call.func, "attr", getattr(call.func, "id", "")) in ("tr", "_tr")
    ]
    assert hidden == []


def test_the_swing_video_goes_by_one_name() -> None:
    """Learners are asked for a video: nowhere is it a film to those who read of it."""
    ui = Path(languages.__file__).parents[1]
    shown = {words for _, words in kept_in_tables()} | set(forms_of_sentences())
    for file in ui.rglob("*.py"):
        for call in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(call, ast.Call):
                asked = getattr(call.func, "attr", getattr(call.func, "id", ""))
                literal = call.args[0] if asked in ("tr", "_tr") and call.args else None
                if isinstance(literal, ast.Constant):
                    shown.add(literal.value)
    searched = "delete purge films privacy"  # words by which an action is found
    verb = "Could you film {n} complete swings?"
    assert {words for words in shown if re.search(r"\bfilms?\b", words, re.I)} == {searched, verb}
    assert "Go to the videos" in shown


def test_a_sentence_is_said_with_all_its_parts(german: tuple[QTranslator, ...]) -> None:
    late = say("{n} days", n=3)
    at = say("{word} at {length}", word=say("mean time"), length=Figures("20.5 cm"))
    assert said(joined((at, late), ", ")) == "die mittlere Zeit bei 20,5 cm, 3 Tage"
    assert said(opening(at)) == "Die mittlere Zeit bei 20,5 cm"
    assert said(say("{n} of {of} timings are that far off.", n=2, of=10)).endswith(
        "2 von 10 Zeiten."
    )
    closes = dt.date(2026, 3, 10)
    told = say(
        "Handed in on {day:%d %B %Y}, {late} after the last day, {closes:%d %B %Y} (latest: "
        "{sources}).",
        day=closes, late=late, closes=closes, sources="v1.5.csv",
    )  # fmt: skip
    assert "10. März 2026, 3 Tage nach" in said(told)
    assert said(told).endswith("v1.5.csv).")
    rate = say("Independent hands agree as closely in at most 1 pair of {n:,}.", n=20000)
    assert "20.000" in said(rate)


def test_without_a_second_language_all_is_as_it_was(qapp: QApplication) -> None:
    share = say("The gap from {low} to {high} takes {share:.0%} of the whole range of lengths.",
                low=Figures("1.5 cm"), high=Figures("2.5 cm"), share=0.55)  # fmt: skip
    assert said(share) == share
    assert said("1.5 as it stands") == "1.5 as it stands"
    assert isinstance(share, Sentence)


def test_actions_have_german_names_of_their_own(
    german: tuple[QTranslator, ...], qtbot: QtBot, theme: Theme, settings: QSettings
) -> None:
    window = Window(theme, settings, who="T. Teacher")
    qtbot.addWidget(window)
    names = [deed.action.text() for deed in window.deeds.all]
    for name in ("Klassenordner öffnen…", "Alle Entwürfe übernehmen", "Nächste Person",
                 "Rückgängig", "Sprache der Oberfläche: English"):  # fmt: skip
        assert name in names
    for where in {deed.where for deed in window.deeds.all}:
        here = [deed.action.text() for deed in window.deeds.all if deed.where == where]
        assert len(here) == len(set(here))
    shown = [one.text() for one in window.start.findChildren(QPushButton)]
    assert "Neue Klasse anlegen…" in shown
    assert "Begin a new class…" not in shown
    window.close()


def test_the_class_and_the_sheet_are_german(
    german: tuple[QTranslator, ...], window: Window
) -> None:
    assert window.bench is not None
    assert window.sheet is not None
    assert window.bench.search.placeholderText() == "Name suchen"
    window.open_learner("s1")
    assert window.sheet.margin.accept_all.text().endswith("Entwürfe übernehmen")


def test_the_choice_is_remembered_and_said(empty_window: Window, settings: QSettings) -> None:
    (deed,) = (d for d in empty_window.deeds.all if d.action.text().endswith(": Deutsch"))
    deed.action.trigger()
    (box,) = empty_window.findChildren(QMessageBox)
    assert "next start" in box.text()
    box.close()
    assert languages.chosen(settings, ["fr-FR"]) == "de"


@pytest.mark.parametrize(
    ("wished", "language"),
    [
        (["de-AT"], "de"),
        (["de_DE"], "de"),
        (["fr-FR", "de-CH", "en-GB"], "de"),
        (["is-IS"], "en"),
        (["C"], "en"),
        ([], "en"),
    ],
)
def test_an_unknown_language_of_the_system_is_english(
    tmp_path: Path, wished: list[str], language: str
) -> None:
    settings = QSettings(str(tmp_path / "s.ini"), QSettings.Format.IniFormat)
    assert languages.chosen(settings, wished) == language
    settings.setValue(languages.KEY, "xx")  # a language that is no longer there
    assert languages.chosen(settings, wished) == language


def test_english_needs_nothing_installed(qapp: QApplication) -> None:
    assert languages.install(qapp, "en") == ()
    assert QCoreApplication.translate("Window", "Undo") == "Undo"
