"""Severity beyond chance: what an adjustment would do, and the decision about it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt

from markbench.checks.wording import true_minus
from markbench.moderation.grades import GradeChange, effect_of_shift
from markbench.session.moderating import decide_adjustment
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.number_box import NumberBox
from markbench.ui.look.said import figures, said
from markbench.ui.moderation.paper import Paper, Roll, line
from markbench.ui.moderation.standing import Standing
from markbench.ui.moderation.words import apart_words
from markbench.ui.parts import button, label
from markbench.ui.signed import allow

if TYPE_CHECKING:
    from markbench.moderation.severity import Proposal, Severity


class AdjustmentPaper(Paper):
    """Proposes and lists; only a person's decision, with a reason, moves a total."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(self.tr("Severity and adjustment"))
        self._desk = desk
        self._now: Standing | None = None
        self.words = label(wrap=True)
        self.figures = label(kind="small", wrap=True)
        self.held = label(kind="ink", wrap=True)
        self._changes = label(kind="small", wrap=True)
        self.roll = Roll(
            (self.tr("Learner"), self.tr("Total"), self.tr("would be"), self.tr("Grade"),
             self.tr("would be")),
            self.tr("Learners whose grade an adjustment changes"), 8,
        )  # fmt: skip
        self.shift = NumberBox()
        self.shift.setDecimals(1)
        self.shift.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.shift.setButtonSymbols(NumberBox.ButtonSymbols.NoButtons)  # keys step it
        self.shift.setRange(-99, 99)
        self.shift.setAccessibleName(self.tr("Marks to move the totals by"))
        self.reason = line(self.tr("Reason for the decision"))
        self.adjust = button(self.tr("Adjust by"), "", lambda: self._decide("adjust"))
        self.remark = button(self.tr("Mark the class again"), "", lambda: self._decide("remark"))
        self.leave = button(self.tr("Leave the marks"), "", lambda: self._decide("leave"))
        deeds = FlowLayout(spacing=6)
        for control in (self.adjust, self.shift, self.remark, self.leave):
            deeds.addWidget(control)
        for part in (self.words, self.figures, self.held, self._changes, self.roll, self.reason):
            self.column.addWidget(part)
        self.column.addLayout(deeds)
        self.reason.textChanged.connect(lambda _text: self._offer())
        self.shift.valueChanged.connect(lambda _value: self._offer())

    def show_standing(self, now: Standing) -> None:
        """The proposal, if there is one, and what was decided."""
        self._now = now
        proposal = None if now.figures is None else now.figures.proposal
        found = None if now.figures is None else now.figures.agreed.severity
        if found is None:
            words = self.tr("The figures are being worked out…")
        elif found.mean is None:
            words = self.tr("Nobody has two totals yet, so nothing can be said about severity.")
        else:
            words = f"{apart_words(found.mean)} {self._weighed(found, proposal)}"
        self.words.setText(figures(true_minus(words)))
        self.figures.setVisible(found is not None and found.mean is not None)
        self.figures.setText(true_minus(self.tr("In figures: {f}.").format(f=said(str(found)))))
        self.held.setVisible(now.adjusted is not None)
        if now.adjusted is not None:
            done = {
                "adjust": self.tr("✓ totals moved by {n:+g}").format(n=now.adjusted.shift),
                "remark": self.tr("✓ to be marked again"),
                "leave": self.tr("✓ marks left as they are"),
            }[now.adjusted.choice]
            self.held.setText(f"{figures(true_minus(done))}, {now.adjusted.by}: {now.adjusted.why}")
        if proposal is not None and self.shift.value() == 0 and not self.shift.hasFocus():
            self.shift.setValue(proposal.shift)
        self._offer()

    def _offer(self) -> None:
        now = self._now
        if now is None:
            return
        free = bool(self.reason.text().strip())
        allow(self._desk, free and self.shift.value() != 0, self.adjust)
        allow(self._desk, free, self.remark, self.leave)
        changes = self._effect(now)
        self._changes.setVisible(self.shift.value() != 0)
        self._changes.setText(figures(true_minus(self._effect_words(now, len(changes)))))
        self.roll.setVisible(bool(changes))
        self.roll.fill(
            [
                (one.learner, (now.names.get(one.learner, one.learner),
                               figures(f"{one.total_before:g}"), figures(f"{one.total_after:g}"),
                               one.before or "–", one.after or "–"))
                for one in changes
            ]
        )  # fmt: skip

    def _weighed(self, found: Severity, proposal: Proposal | None) -> str:
        """What chance has to do with it, and what may be thought about."""
        if proposal is not None:
            words = self.tr(
                "That is more than chance explains. Moving the first marker's totals by "
                "{shift:+g} may be thought about; nothing is applied by itself, and learners whose "
                "marks the moderator went through are left alone."
            )
            return words.format(shift=proposal.shift)
        if found.beyond_chance:
            return self.tr("No adjustment is proposed: it would round to no mark at all.")
        words = self.tr(
            "No adjustment is proposed: with {n} learners, chance alone often makes as much."
        )
        return words.format(n=len(found.differences))

    def _effect_words(self, now: Standing, changed: int) -> str:
        """How many grades the shift changes; where none, why."""
        shift = self.shift.value()
        if changed:
            words = self.tr("Moving by {shift:+g} changes {n} grades:")
            if changed == 1:
                words = self.tr("Moving by {shift:+g} changes 1 grade:")
            return words.format(shift=shift, n=changed)
        marked = [one for one in now.found.values() if one.moderated_total is not None]
        free = sum(not one.looked_at for one in marked)
        words = self.tr("Moving by {shift:+g} changes no grade: {why}.")
        if not self._desk.session.brief.grade_boundaries:
            why = self.tr("the brief names no grades")
        elif not marked:
            why = self.tr("nobody is fully marked")
        elif not free:
            why = self.tr(
                "all {of} learners were gone through one by one, and those are left alone"
            )
        elif free < len(marked):
            why = self.tr(
                "{left} of {of} learners were gone through one by one and are left alone; the "
                "totals of the other {free} stay within their grades"
            )
        else:
            why = self.tr("the totals of all {of} learners stay within their grades")
        told = why.format(of=len(marked), free=free, left=len(marked) - free)
        return words.format(shift=shift, why=told)

    def _effect(self, now: Standing) -> tuple[GradeChange, ...]:
        """Whose grade this shift changes, whatever was proposed."""
        session = self._desk.session
        free = {x: one for x, one in now.found.items() if not one.looked_at}
        held = now.adjusted.shift if now.adjusted is not None else 0.0
        return effect_of_shift(
            {x: m for x, one in free.items() if (m := one.moderated_total) is not None},
            self.shift.value(),
            session.rubric.most,
            session.brief.grade_boundaries,
            late={x: one.late.marks_off for x, one in free.items() if one.late is not None},
            now=held,
        )

    def _decide(self, choice: str) -> None:
        if self._desk.refuse_signed():
            return
        held, why, shift = self._desk.held, self.reason.text(), self.shift.value()
        self._desk.do(
            lambda _session: decide_adjustment(
                held, choice, why, shift if choice == "adjust" else 0.0
            )
        )
        self.reason.setText("")  # with nothing left for its own undo
