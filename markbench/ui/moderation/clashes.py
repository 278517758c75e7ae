"""What two people decided differently, as a merge found it: what, by whom, when, and a choice."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping, Sequence
from functools import partial
from typing import Any

from PySide6.QtCore import QCoreApplication, Signal
from PySide6.QtWidgets import QInputDialog, QPushButton, QVBoxLayout, QWidget

from markbench.checks.wording import true_minus
from markbench.model import Decision
from markbench.session.first_marker import make_first
from markbench.session.merging import Clash
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.dates import day, short_day_and_time
from markbench.ui.look.decisions import decision_words
from markbench.ui.look.said import said
from markbench.ui.parts import button, label

_LETTERS = 40  # of a text, on a button


class ClashRow(QWidget):
    """One thing decided twice; ``opened`` carries its learner.

    Several double marks of one learner are one row: who is the first marker is said of a
    learner, not of a criterion.
    """

    opened = Signal(str)

    def __init__(
        self,
        desk: Desk,
        clashes: Sequence[Clash],
        names: Mapping[str, str],
        titles: Mapping[str, str],
    ) -> None:
        super().__init__()
        self._desk, self.clashes = desk, clashes
        self._learner = clashes[0].learner
        self._name = names.get(self._learner, self._learner)
        self.words = label(true_minus(self._told(titles)), "look", wrap=True)
        self.choices: list[tuple[QPushButton, Decision]] = []
        self._deeds = FlowLayout(spacing=6)
        self._offer()
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 2, 0, 4)
        column.setSpacing(2)
        column.addWidget(self.words)
        column.addLayout(self._deeds)
        self.show_held()

    def _told(self, titles: Mapping[str, str]) -> str:
        first = self.clashes[0]
        if first.basis:
            marks = [
                self.tr("{criterion}: {one} gave {a}, {other} gave {b}").format(
                    criterion=titles.get(c.subject, c.subject),
                    one=c.mine.who,
                    a=value_words(c.mine),
                    other=c.theirs.who,
                    b=value_words(c.theirs),
                )
                for c in self.clashes
            ]
            kept = self.tr("Kept as first and second mark, {basis}.").format(
                basis=said(first.basis)
            )
            return f"{self._name}. {'; '.join(marks)}. {kept}"
        about = ", ".join(filter(None, (self._name, subject_words(first, titles))))
        if first.mine.key != first.theirs.key or first.mine is first.theirs:
            was, mark = first.theirs.value["first_seen"], first.mine
            now = f"{mark.value['marks']:g}" if mark.kind == "mark" else self.tr("gone")
            words = self.tr("{about}: {who} decided on a first mark of {was:g}, now {now}.")
            return words.format(about=about, who=first.theirs.who, was=was, now=now)
        if first.mine.who == first.theirs.who:
            words = self.tr("{about}: decided twice by {one}; the later decision holds.")
        else:
            words = self.tr("{about}: {one} and {other} differ; the later decision holds.")
        return words.format(about=about, one=first.mine.who, other=first.theirs.who)

    def _offer(self) -> None:
        first = self.clashes[0]
        if first.basis:
            turn = button(self.tr("Whose mark is the first…"), "", self._turn)
            turn.setAccessibleName(self.tr("Whose mark is the first: {c}").format(c=self._name))
            self._deeds.addWidget(turn)
        elif first.mine.key == first.theirs.key:
            for one in (first.mine, first.theirs):
                made = button("", "", partial(self._take, one))
                self.choices.append((made, one))
                self._deeds.addWidget(made)
        if self._learner:
            look = button(self.tr("Look"), "quiet", lambda: self.opened.emit(self._learner))
            look.setAccessibleName(self.tr("Look at the work: {c}").format(c=self._name))
            self._deeds.addWidget(look)

    def show_held(self) -> None:
        """Tick the decision that holds now."""
        for control, one in self.choices:
            held = self._desk.held.state.get(one.key)
            holds = one.value == (None if held is None else held.value)
            when = short_day_and_time(one.at.astimezone()) if one.at is not None else ""
            words = self.tr("{what} ({who}, {when})").format(
                what=value_words(one), who=one.who, when=when
            )
            control.setText(true_minus(("✓ " if holds else "") + words).replace("&", "&&"))

    def _take(self, one: Decision) -> None:
        if not self._desk.refuse_signed():
            held, again = self._desk.held, Decision(*one.key, one.value, why=one.why)
            self._desk.do(lambda _session: held.decide(again))

    def _turn(self) -> None:
        """Let the one who stands second be the first, with a reason."""
        if self._desk.refuse_signed():
            return
        held, clash = self._desk.held, self.clashes[0]
        first = held.mark(clash.learner, clash.subject)
        other = next((d.who for d in (clash.mine, clash.theirs) if first and d.who != first.by), "")
        words = self.tr("{who} shall be the first marker of {learner}, because:")
        about = words.format(who=other, learner=self._name)
        why, sure = QInputDialog.getText(self, self.tr("Whose mark is the first"), about)
        if sure:
            self._desk.do(lambda _session: make_first(held, clash.learner, other, why))


def subject_words(clash: Clash, titles: Mapping[str, str]) -> str:
    """What was decided about: a criterion by its title, and what of it."""
    subject = clash.subject.partition("|")[0]
    # A mark, or the adjustment of one, is named by its criterion and its learner.
    named = clash.kind in ("mark", "second_mark", "moderated") or (
        clash.kind == "adjustment" and clash.learner
    )
    what = "" if named else decision_words(clash.kind, clash.kind.replace("_", " "))
    return ", ".join(filter(None, (titles.get(subject, subject), what)))


def value_words(decision: Decision) -> str:
    """What was decided, short enough for a button: a level with its marks, a day, a beginning."""
    value: Any = decision.value
    if value is None:
        return _tr("taken back")
    if isinstance(value, dict) and value.get("level") is not None:
        return _tr("{level} · {marks:g}").format(level=value["level"], marks=value["marks"])
    if decision.kind == "extension":
        return _tr("until {day}").format(day=day(dt.date.fromisoformat(value)))
    if decision.kind == "moderated":
        return _tr("agrees") if value["action"] == "agree" else _tr("asks")
    if decision.kind == "adjustment":
        moved = _tr("totals moved by {n:+g}").format(n=value["shift"])
        done = {"adjust": moved, "remark": _tr("mark again"), "leave": _tr("leave the marks")}
        return done[value["choice"]]
    text = value.get("text", "") if isinstance(value, dict) else value
    if isinstance(text, str) and text:
        words = " ".join(text.split())
        return f"“{words if len(words) <= _LETTERS else words[:_LETTERS].rstrip() + '…'}”"
    return _tr("as decided then")


def _tr(text: str) -> str:
    return QCoreApplication.translate("Clashes", text)
