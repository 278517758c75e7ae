"""The places of the window in its bar, and whether names are shown."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import TYPE_CHECKING, Protocol

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from markbench.model import Piece, Reason
from markbench.ui.actions import Deeds
from markbench.ui.bench.page import ClassPage
from markbench.ui.parts import button, press, restyle

if TYPE_CHECKING:
    from markbench.ui.window import Window

ACROSS, CONTACT, OVERVIEW = "across", "contact", "overview"
HAND_INS, MODERATION = "handins", "moderation"
FURTHER: tuple[str, ...] = (ACROSS, CONTACT, OVERVIEW, HAND_INS, MODERATION)


class Place(Protocol):
    """A page beside the class and the sheet."""

    def show_page(self) -> None:
        """Bring it up to date and give it the keyboard."""

    def settle(self) -> None:
        """Pass on whatever was typed."""


class PlaceBar(QWidget):
    """``wanted`` carries a place; ``blind_wanted`` whether names are to be hidden."""

    wanted = Signal(str)
    blind_wanted = Signal(bool)

    def __init__(self) -> None:
        super().__init__()
        self.buttons = {
            "class": self._place("class", self.tr("Class")),
            ACROSS: self._place(ACROSS, self.tr("Criterion")),
            CONTACT: self._place(CONTACT, self.tr("Pictures")),
            OVERVIEW: self._place(OVERVIEW, self.tr("Findings")),
            HAND_INS: self._place(HAND_INS, self.tr("Hand-ins")),
            MODERATION: self._place(MODERATION, self.tr("Moderation")),
        }
        self.blind = button(self.tr("Names shown"), "plain")
        self.blind.setCheckable(True)
        self.blind.setToolTip(
            self.tr(
                "Hide names, selfies and file names in the whole window. A set-up photo or a "
                "video may still show who it is. Settling whose files are whose waits until "
                "names are shown."
            )
        )
        self.blind.clicked.connect(self.blind_wanted)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(2)
        for one in self.buttons.values():
            row.addWidget(one)
        row.addSpacing(6)
        row.addWidget(self.blind)
        row.addStretch(0)  # in a line of their own they are no wider than they need

    def show_place(self, place: str) -> None:
        """Mark where one is; on a sheet one is nowhere of these."""
        for name, control in self.buttons.items():
            control.setChecked(name == place)

    def show_blind(self, blind: bool) -> None:
        """Say plainly whether names are shown."""
        self.blind.setChecked(blind)
        restyle(self.blind, "kind", "" if blind else "plain")
        self.blind.setText(self.tr("✓ Names hidden") if blind else self.tr("Names shown"))

    def _place(self, place: str, words: str) -> QPushButton:
        made = button(words, "place", partial(self._choose, place))
        made.setCheckable(True)
        return made

    def _choose(self, place: str) -> None:
        self.buttons[place].setChecked(True)  # a second click does not take it away
        self.wanted.emit(place)


def make_bench(window: Window) -> ClassPage:
    """The class page."""
    assert window.desk is not None
    bench = ClassPage(window.desk, window._theme)
    bench.opened.connect(window.open_learner)
    bench.folder_wanted.connect(window.choose_folder)
    bench.ask_wanted.connect(partial(ask_again, window))
    bench.brief_wanted.connect(window.doors.open_brief)
    bench.said.connect(window._say_notice)
    return bench


def ask_again(window: Window, learners: list[str]) -> None:
    """To the hand-ins: the same learners chosen, and a letter to each ready to copy."""
    from markbench.ui.handins.page import HandInsPage

    window.show_place(HAND_INS)
    page = window.further[HAND_INS]
    assert isinstance(page, HandInsPage)
    page.ask(set(learners))


def make_page(window: Window, place: str) -> QWidget:
    """The page of a place; made when first wanted, for what it brings along."""
    assert window.desk is not None
    assert window.bench is not None
    if place == CONTACT:
        from markbench.ui.contact.page import ContactPage

        contact = ContactPage(window.desk, window._theme, window.bench.order)
        contact.opened.connect(partial(window.open_from, place))
        contact.led.connect(partial(_lead, window, place))
        contact.unfiltered.connect(window.bench.show_everybody)
        return contact
    if place == OVERVIEW:
        from markbench.ui.overview.page import OverviewPage

        overview = OverviewPage(window.desk, window._theme)
        overview.opened.connect(partial(window.open_from, place))
        overview.said.connect(window._say_notice)
        overview.trouble.connect(window._say_trouble)
        return overview
    if place == HAND_INS:
        from markbench.ui.handins.page import HandInsPage

        hand_ins = HandInsPage(window.desk, window._theme)
        hand_ins.opened.connect(partial(window.open_from, place))
        hand_ins.said.connect(window._say_notice)
        return hand_ins
    if place == MODERATION:
        from markbench.ui.moderation.page import ModerationPage

        moderation = ModerationPage(window.desk, window._theme)
        moderation.opened.connect(partial(window.open_from, place))
        moderation.said.connect(window._say_notice)
        moderation.trouble.connect(window._say_trouble)
        return moderation
    from markbench.ui.across.page import AcrossPage

    page = AcrossPage(window.desk, window._theme, window.bench.model)
    page.opened.connect(partial(window.open_from, place))
    page.led.connect(partial(_lead, window, place))
    return page


def _lead(window: Window, place: str, learner: str, thing: Reason | Piece) -> None:
    """From a reason to the finding and the cell, or to a picture, on the learner's sheet."""
    window.open_from(place, learner)
    if window.sheet is None:
        return
    if isinstance(thing, Reason):
        window.sheet.way.to_reason(thing)
    else:
        window.sheet.open_piece(thing)


def name_places(window: Window, deeds: Deeds) -> None:
    """Name the actions of these pages."""
    anywhere = " ".join(("class", "sheet", *FURTHER))
    for words, keys, place in (
        (_tr("Go to the class"), "Ctrl+Alt+1", "class"),
        (_tr("One criterion across the class"), "Ctrl+Alt+2", ACROSS),
        (_tr("Contact sheet: everybody’s set-up photo and video"), "Ctrl+Alt+3", CONTACT),
        (_tr("Findings of the class"), "Ctrl+Alt+4", OVERVIEW),
        (_tr("Hand-ins: late, missing, extended"), "Ctrl+Alt+5", HAND_INS),
        (_tr("Moderation: sample, second marks, sign-off"), "Ctrl+Alt+6", MODERATION),
    ):
        deeds.add(words, (keys,), partial(window.show_place, place), anywhere)
    deeds.add(_tr("Back to the class"), ("Escape",), window.go_back, " ".join(FURTHER))
    _name_across(window, deeds)
    _name_contact(window, deeds)
    _name_overview(window, deeds)
    _name_hand_ins(window, deeds)
    _name_moderation(window, deeds)


def _name_across(window: Window, deeds: Deeds) -> None:
    def across(do: str, number: int = 0) -> None:
        from markbench.ui.across.page import AcrossPage

        page = window.further.get(ACROSS)
        if not isinstance(page, AcrossPage):
            return
        if do == "level":
            page.choose_level(number)
        elif do == "turn":
            page.turn(number)
        elif do == "order":
            page.orders.setFocus()
            page.orders.showPopup()
        else:
            {
                "accept": page.accept_and_go_on,
                "back": page.back_to_draft,
                "write": page.write,
                "shuffle": page.shuffle,
                "every": page.shuffle_every,
                "open": page.open_current,
            }[do]()

    for number in range(1, 10):
        words = _tr("Level {n} for this learner").format(n=number)
        deeds.add(words, (str(number), f"Ctrl+{number}"), partial(across, "level", number), ACROSS)
    for words, keys, do, number in (
        (_tr("Accept this draft and go on"), ("Ctrl+Return", "Ctrl+Enter"), "accept", 0),
        (_tr("Take this mark back to a draft"), ("Ctrl+Backspace",), "back", 0),
        (_tr("Write to this learner"), ("Alt+T",), "write", 0),
        (_tr("Next criterion for the class"), ("Ctrl+Right",), "turn", 1),
        (_tr("Criterion before for the class"), ("Ctrl+Left",), "turn", -1),
        (_tr("Choose the order of marking"), ("Alt+O",), "order", 0),
        (_tr("Shuffle the order of marking"), ("Alt+S",), "shuffle", 0),
        (_tr("Shuffle the order of every criterion"), ("Alt+Shift+S",), "every", 0),
        (_tr("Open this learner's whole sheet"), ("Alt+W",), "open", 0),
    ):
        deeds.add(words, keys, partial(across, do, number), ACROSS)


def _name_contact(window: Window, deeds: Deeds) -> None:
    def contact(do: str, what: str) -> None:
        from markbench.ui.contact.page import ContactPage

        page = window.further.get(CONTACT)
        if not isinstance(page, ContactPage):
            return
        if do == "judge":
            page.judge(what)
        elif do == "chip":
            page.chips[what].toggle()
        elif do == "open":
            page.open_current()
        else:
            page.show_side("film" if what == "film" else "photo")

    for words, keys, do, what in (
        (_tr("Accept the chosen pictures"), ("G",), "judge", "accepted"),
        (_tr("Call the chosen pictures unreadable"), ("U",), "judge", "unreadable"),
        (_tr("Ask for the chosen pictures again"), ("A",), "judge", "again"),
        (_tr("Open the chosen picture"), ("Alt+O",), "open", ""),
        (_tr("Go to the set-up photos"), ("Alt+P",), "side", "photo"),
        (_tr("Go to the videos"), ("Alt+F",), "side", "film"),
        (_tr("Only what is not yet judged"), ("Alt+1",), "chip", "unjudged"),
        (_tr("Only videos that were not measured"), ("Alt+2",), "chip", "unmeasured"),
        (_tr("Only where a photo or a video is missing"), ("Alt+3",), "chip", "missing"),
    ):
        deeds.add(words, keys, partial(contact, do, what), CONTACT)


def _name_overview(window: Window, deeds: Deeds) -> None:
    def go_behind() -> None:
        from markbench.ui.overview.page import OverviewPage

        page = window.further.get(OVERVIEW)
        if isinstance(page, OverviewPage):
            page.behind.setFocus()

    def turn_pace() -> None:
        from markbench.ui.overview.page import OverviewPage

        page = window.further.get(OVERVIEW)
        if isinstance(page, OverviewPage):
            page.pace.turn.toggle()

    deeds.add(_tr("Go to the learners behind it"), ("Alt+L",), go_behind, OVERVIEW)
    deeds.add(_tr("Time per portfolio: in order of marking or longest first"), ("Alt+O",),
              turn_pace, OVERVIEW)  # fmt: skip


def show_changes(window: Window, learner: str) -> None:
    """The hand-ins, at what one learner changed since it was marked."""
    from markbench.ui.handins.page import HandInsPage

    window.show_place(HAND_INS)
    page = window.further[HAND_INS]
    assert isinstance(page, HandInsPage)
    page.show_changes(learner)


def _name_hand_ins(window: Window, deeds: Deeds) -> None:
    def hand_ins(do: str) -> None:
        from markbench.ui.handins.page import HandInsPage

        page = window.further.get(HAND_INS)
        if not isinstance(page, HandInsPage):
            return
        if do in page.chips:
            page.chips[do].toggle()
        else:
            do_it: dict[str, Callable[[], object]] = {
                "copy": page.copy_letters,
                "all": page.choose_all,
                "extend": page.give_time,
                "take back": page.take_time_back,
                "day": page.until.setFocus,
                "about": page.about.setFocus,
                "mark again": partial(press, page.changes.strip.again),
                "leave": partial(press, page.changes.strip.leave),
            }
            do_it[do]()

    for words, keys, do in (
        (_tr("Only those late"), ("Alt+1",), "late"),
        (_tr("Only those with something missing"), ("Alt+2",), "missing"),
        (_tr("Only those with nothing yet"), ("Alt+3",), "nothing"),
        (_tr("Only those handed in again"), ("Alt+4",), "again"),
        (_tr("Only those with a piece wanted again"), ("Alt+5",), "wanted"),
        (_tr("Only those given more time"), ("Alt+6",), "extended"),
        (_tr("Only those changed since marked"), ("Alt+7",), "changed"),
        (_tr("Mark again what changed since it was marked"), ("Alt+M",), "mark again"),
        (_tr("Leave the mark as it is though the work changed"), ("Alt+L",), "leave"),
        (_tr("Choose all learners shown"), ("Alt+A",), "all"),
        (_tr("Choose what the reminder asks for"), ("Alt+R",), "about"),
        (_tr("Copy the reminder to the chosen learners"), ("Ctrl+Shift+C",), "copy"),
        (_tr("Choose a last day"), ("Alt+D",), "day"),
        (_tr("Give the chosen learners until that day"), ("Alt+G",), "extend"),
        (_tr("Take the extension of the chosen learners back"), (), "take back"),
    ):
        deeds.add(words, keys, partial(hand_ins, do), HAND_INS)


def _name_moderation(window: Window, deeds: Deeds) -> None:
    def moderation(do: str) -> None:
        from markbench.ui.moderation.page import ModerationPage

        page = window.further.get(MODERATION)
        if isinstance(page, ModerationPage):
            page.do(do)

    for words, keys, do in (
        (_tr("Draw the sample for the moderator"), ("Alt+S",), "draw"),
        (_tr("Make the moderation pack…"), ("Alt+P",), "pack"),
        (_tr("Merge a moderator's reply…"), ("Alt+M",), "merge"),
        (_tr("Go to what is open between the markers"), ("Alt+O",), "open"),
        (_tr("Go to the grade boundaries"), ("Alt+G",), "boundaries"),
        (_tr("Go to the adjustment"), ("Alt+A",), "adjustment"),
        (_tr("Go to the sign-off"), ("Alt+F",), "signing"),
        (_tr("Write the moderation record…"), ("Alt+W",), "record"),
        (_tr("Go to the agreement of the markers"), ("Alt+K",), "agreement"),
        (_tr("Write what goes out, feedback sheets and all"), ("Alt+X",), "out"),
    ):
        deeds.add(words, keys, partial(moderation, do), MODERATION)


def _tr(text: str) -> str:
    return QCoreApplication.translate("Deeds", text)
