"""Names every action of the window once, with its keys and where it is offered."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QMessageBox

from markbench.ui import languages
from markbench.ui.actions import Deeds
from markbench.ui.look.theme import Theme
from markbench.ui.parts import press
from markbench.ui.places import ACROSS, FURTHER, name_places
from markbench.ui.rereading import read_again

if TYPE_CHECKING:
    from markbench.ui.feedback.editor import FeedbackEditor
    from markbench.ui.window import Window

_STEP = 0.1
_BOTH = " ".join(("class", "sheet", *FURTHER))
_UNDONE = f"{_BOTH} pack new care"


def name_deeds(window: Window, deeds: Deeds, theme: Theme) -> None:
    """Fill ``deeds``; the keys are the same on every page where an action is offered."""
    _everywhere(window, deeds, theme)
    _in_the_class(window, deeds)
    _on_the_sheet(window, deeds)
    _in_the_text(window, deeds)
    name_places(window, deeds)


def _everywhere(window: Window, deeds: Deeds, theme: Theme) -> None:
    keys = QKeySequence.StandardKey
    size, theme_words = _tr("zoom font"), _tr("theme colours night")
    deeds.add(_tr("Find an action"), ("F1", "Ctrl+Space"), window.deed_list.open_list,
              also=_tr("help keys commands"))  # fmt: skip
    deeds.add(_tr("Open a class folder…"), keys.Open, window.choose_folder)
    deeds.add(_tr("Undo"), keys.Undo, window._undo, _UNDONE)
    deeds.add(_tr("Redo"), ("Ctrl+Shift+Z", "Ctrl+Y"), window._redo, _UNDONE)
    deeds.add(_tr("Larger text"), ("Ctrl++", "Ctrl+="),
              lambda: theme.set_scale(theme.scale + _STEP), also=size)  # fmt: skip
    deeds.add(_tr("Smaller text"), ("Ctrl+-",),
              lambda: theme.set_scale(theme.scale - _STEP), also=size)  # fmt: skip
    deeds.add(_tr("Text at its usual size"), ("Ctrl+0",), lambda: theme.set_scale(1.0), also=size)
    deeds.add(_tr("Text at twice its size"), "", lambda: theme.set_scale(2.0), also=size)
    deeds.add(_tr("Light"), "", lambda: theme.choose(False), also=theme_words)
    deeds.add(_tr("Dark"), "", lambda: theme.choose(True), also=theme_words)
    deeds.add(_tr("Light or dark as the system"), "", lambda: theme.choose(None), also=theme_words)
    for language, name in languages.NAMES.items():
        words = _tr("Interface language: {name}").format(name=name)
        deeds.add(words, "", partial(_speak, window, language), also=_tr("settings translation"))
    deeds.add(_tr("Write the workbook and the mark sheet"), ("Ctrl+E",), window.write_out, _BOTH,
              _tr("export print Excel csv"))  # fmt: skip
    deeds.add(_tr("Blind marking: hide who is who, or show it"), ("Ctrl+B",),
              window.turn_blind, _BOTH)  # fmt: skip
    deeds.add(_tr("Read the folder again"), ("F5",), partial(read_again, window), _BOTH,
              _tr("refresh reload new files"))  # fmt: skip
    deeds.add(_tr("Close the class"), ("Ctrl+W", "Ctrl+F4"), window.let_go, _BOTH)
    deeds.add(_tr("Leave Markbench"), ("Ctrl+Q",), window.close, also=_tr("quit exit end"))


def _in_the_class(window: Window, deeds: Deeds) -> None:
    def page(do: str) -> None:
        bench = window.bench
        if bench is None:
            return
        if do == "find":
            bench.search.setFocus()
            bench.search.selectAll()
        elif do == "settle":
            bench.settle_button.toggle()
        elif do == "open" and bench.grid.currentIndex().isValid():
            window.open_learner(bench.grid.current())
        elif do in bench.chips:
            bench.chips[do].toggle()
        else:
            {
                "ask": bench.ask_again,
                "copy": bench.copy_list,
                "none": bench.choose_none,
                "everybody": bench.show_everybody,
                "sort": bench.sort_again,
                "back": bench.step_back,
            }[do]()

    def may_settle() -> bool:
        return window.bench is not None and window.bench.may_settle()

    def sort(by: str) -> None:
        if window.bench is not None:
            box = window.bench.sorts
            box.setCurrentIndex(box.findData(by))

    for words, keys, do in (
        (_tr("Find a learner"), ("Ctrl+F",), "find"),
        (_tr("Open the chosen learner"), (), "open"),
        (_tr("Only those not yet marked"), ("Alt+1",), "unmarked"),
        (_tr("Only those to look at"), ("Alt+2",), "questioned"),
        (_tr("Only those with something missing"), ("Alt+3",), "missing"),
        (_tr("Only those outside the dates"), ("Alt+4",), "late"),
        (_tr("Only those changed since marked"), ("Alt+5",), "changed"),
        (_tr("Show everybody"), ("Alt+0",), "everybody"),
        (_tr("Sort again"), ("Alt+S",), "sort"),
        (_tr("Ask again for pieces of the chosen learners"), ("Ctrl+Shift+A",), "ask"),
        (_tr("Copy the list of what is missing from the chosen learners"),
         ("Ctrl+Shift+C",), "copy"),
        (_tr("None chosen any more"), (), "none"),
        (_tr("A step back: clear the search, close what is to settle"), ("Escape",), "back"),
    ):  # fmt: skip
        deeds.add(words, keys, partial(page, do), "class")
    deeds.add(_tr("Settle whose files are whose"), ("Ctrl+T",), partial(page, "settle"),
              "class", able=may_settle)  # fmt: skip
    for words, by in (
        (_tr("Order: most questions first"), "concern"),
        (_tr("Order: by name"), "name"),
        (_tr("Order: highest mark first"), "mark"),
        (_tr("Order: least marked first"), "progress"),
        (_tr("Order: by time of hand-in"), "handed_in"),
        (_tr("Order: as in the class list"), "class_list"),
    ):
        deeds.add(words, "", partial(sort, by), "class")


def _on_the_sheet(window: Window, deeds: Deeds) -> None:
    def sheet(do: str) -> None:
        page = window.sheet
        if page is None:
            return
        margin = page.margin
        if do == "text" and margin.current is not None:
            margin.current.text.setFocus()
        elif do == "note" and margin.current is not None:
            margin.current.note.setFocus()
        elif do == "learner note":
            margin.note.setFocus()
        elif do == "readings":
            page.table.setFocus()
        elif do == "questions" and page.findings.rows:
            page.findings.rows[0].setFocus()
        elif do == "table":
            page.open_table()
        elif do == "evidence":
            page.open_evidence()
        elif do == "ghost":
            page.show_ghost()
        elif do == "agree":
            page.agree()
        elif do == "save graph":
            page.save_graph()
        elif do == "leave out":
            page.leave_out_timing()
        elif do == "accept":
            margin.accept_current()
        elif do == "keep":
            margin.keep_current()
        elif do == "back" and margin.current is not None:
            margin.back_to_draft()
        elif do in ("see", "again", "leave"):
            press(getattr(page.changed, do))
        elif do == "accept all":
            margin.accept_drafts()
        elif do == "criterion on":
            margin.step(1)
        elif do == "criterion back":
            margin.step(-1)

    deeds.add(_tr("Back to the class"), ("Escape",), window.go_back, "sheet")
    deeds.add(_tr("Next learner"), ("Ctrl+PgDown",), partial(window.step, 1), "sheet")
    deeds.add(_tr("Learner before"), ("Ctrl+PgUp",), partial(window.step, -1), "sheet")
    for words, keys, do in (
        (_tr("Accept this draft"), ("Ctrl+Return", "Ctrl+Enter"), "accept"),
        (_tr("Accept all drafts"), ("Ctrl+Shift+Return",), "accept all"),
        (_tr("Keep this mark although its draft has changed"), ("Ctrl+K",), "keep"),
        (_tr("Take this mark back to a draft"), ("Ctrl+Backspace",), "back"),
        (_tr("See what changed since it was marked"), ("Alt+D",), "see"),
        (_tr("Mark again what changed since it was marked"), ("Alt+M",), "again"),
        (_tr("Leave the mark as it is though the work changed"), ("Alt+L",), "leave"),
        (_tr("Next criterion"), ("Ctrl+Down",), "criterion on"),
        (_tr("Criterion before"), ("Ctrl+Up",), "criterion back"),
        (_tr("Write to the learner"), ("Alt+T",), "text"),
        (_tr("Private note on this criterion"), ("Alt+N",), "note"),
        (_tr("Private note on this learner"), ("Alt+Shift+N",), "learner note"),
        (_tr("Go to the readings"), ("Alt+R",), "readings"),
        (_tr("Go to the questions"), ("Alt+Q",), "questions"),
        (_tr("Open the evidence"), ("Alt+E",), "evidence"),
        (_tr("The learner's own table: point at columns, type readings"), ("Alt+W",), "table"),
        (_tr("Show the likeliest explanation in the graph"), ("Alt+G",), "ghost"),
        (_tr("Agree with the likeliest explanation"), ("Alt+A",), "agree"),
        (_tr("Leave out the current timing"), ("Alt+Delete",), "leave out"),
        (_tr("Save the graph as a picture…"), ("Ctrl+Shift+S",), "save graph"),
    ):
        deeds.add(words, keys, partial(sheet, do), "sheet", listed=partial(_possible, window, do))
    for number in range(1, 10):
        words = _tr("Level {n} of this criterion").format(n=number)
        deeds.add(words, (f"Ctrl+{number}",), partial(_level, window, number), "sheet",
                  listed=partial(_has_level, window, number))  # fmt: skip


def _in_the_text(window: Window, deeds: Deeds) -> None:
    """On the sheet and across the class: the text to the learner of the open criterion."""

    def text(do: str) -> None:
        writing = _writing(window)
        if writing is not None:
            {
                "up": lambda: writing.field.step(-1),
                "down": lambda: writing.field.step(1),
                "out": writing.field.leave_out,
                "back": writing.choose_back,
                "phrase": writing.take,
                "keep": writing.keep_piece,
                "check": writing.next_wrong,
            }[do]()

    for words, keys, do in (
        (_tr("Move this sentence up"), ("Alt+Up",), "up"),
        (_tr("Move this sentence down"), ("Alt+Down",), "down"),
        (_tr("Leave this sentence out"), ("Alt+X",), "out"),
        (_tr("Bring a sentence back"), ("Alt+Z",), "back"),
        (_tr("Put in the phrase on offer"), ("Alt+Return", "Alt+Enter"), "phrase"),
        (_tr("Keep this sentence as a phrase"), ("Alt+K",), "keep"),
        (_tr("Check the spelling: next word"), ("Alt+C",), "check"),
    ):
        deeds.add(words, keys, partial(text, do), f"sheet {ACROSS}")


def _writing(window: Window) -> FeedbackEditor | None:
    page = window.pages.currentWidget()
    if page is window.sheet and window.sheet is not None:
        card = window.sheet.margin.current
        return card.writing if card is not None else None
    from markbench.ui.across.page import AcrossPage

    return page.card.writing if isinstance(page, AcrossPage) and page.learner else None


def _speak(window: Window, language: str) -> None:
    """Keep the choice. The pages are made of words: they are made anew at the next start."""
    languages.remember(window._settings, language)
    said = QMessageBox(window)
    said.setWindowTitle(_tr("Interface language"))
    name = languages.NAMES[language]
    said.setText(_tr("From its next start, Markbench will speak this language: {name}.").format(
        name=name))  # fmt: skip
    said.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
    said.open()


def _possible(window: Window, do: str) -> bool:
    """Whether there is something for a deed of the sheet to do, as things stand."""
    page = window.sheet
    if page is None:
        return False
    card = page.margin.current
    on_card = {"keep": ("keep",), "accept": ("accept", "take"), "back": ("clear",)}
    if do in on_card:
        return card is not None and any(getattr(card, one).isEnabled() for one in on_card[do])
    if do in ("see", "again", "leave"):
        return not page.changed.isHidden() and not getattr(page.changed, do).isHidden()
    if do == "accept all":
        return page.margin.accept_all.isEnabled()
    if do == "questions":
        return any(not row.isHidden() for row in page.findings.rows)
    return True


def _has_level(window: Window, number: int) -> bool:
    card = window.sheet.margin.current if window.sheet is not None else None
    return card is not None and number <= len(card.levels)


def _level(window: Window, number: int) -> None:
    if window.sheet is not None:
        window.sheet.choose_level(number)


def _tr(text: str) -> str:
    return QCoreApplication.translate("Deeds", text)
