"""Severity beyond chance: what an adjustment would do, and the decision about it."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDoubleSpinBox

from markbench.moderation.grades import GradeChange, effect_of_shift
from markbench.session.moderating import decide_adjustment
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.moderation.paper import Paper, Roll, line, with_minus
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import button, label


class AdjustmentPaper(Paper):
    """Proposes and lists; only a person's decision, with a reason, moves a total."""

    def __init__(self, desk: Desk) -> None:
        super().__init__(self.tr("Severity and adjustment"))
        self._desk = desk
        self._now: Standing | None = None
        self.words = label(wrap=True)
        self.held = label(kind="ink", wrap=True)
        self._changes = label(kind="small", wrap=True)
        self.roll = Roll(
            (self.tr("Learner"), self.tr("Total"), self.tr("would be"), self.tr("Grade"),
             self.tr("would be")),
            self.tr("Learners whose grade an adjustment changes"), 8,
        )  # fmt: skip
        self.shift = QDoubleSpinBox()
        self.shift.setDecimals(1)
        self.shift.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.shift.setButtonSymbols(QDoubleSpinBox.ButtonSymbols.NoButtons)  # keys step it
        self.shift.setRange(-99, 99)
        self.shift.setAccessibleName(self.tr("Marks to move the totals by"))
        self.reason = line(self.tr("Reason for the decision"))
        self.adjust = button(self.tr("Adjust by"), "", lambda: self._decide("adjust"))
        self.remark = button(self.tr("Mark the class again"), "", lambda: self._decide("remark"))
        self.leave = button(self.tr("Leave the marks"), "", lambda: self._decide("leave"))
        deeds = FlowLayout(spacing=6)
        for control in (self.adjust, self.shift, self.remark, self.leave):
            deeds.addWidget(control)
        for part in (self.words, self.held, self._changes, self.roll, self.reason):
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
        elif proposal is None:
            words = self.tr("{figures}. No adjustment is proposed: the difference is within "
                            "chance, or rounds to nought.").format(figures=found)  # fmt: skip
        else:
            words = self.tr(
                "{figures}. An adjustment of {shift:+g} marks to the first marker's totals may be "
                "thought about. Nothing is applied by itself; learners whose marks the "
                "moderator went through are left alone."
            ).format(figures=found, shift=proposal.shift)
        self.words.setText(with_minus(words))
        self.held.setVisible(now.adjusted is not None)
        if now.adjusted is not None:
            done = {
                "adjust": self.tr("✓ totals moved by {n:+g}").format(n=now.adjusted.shift),
                "remark": self.tr("✓ to be marked again"),
                "leave": self.tr("✓ marks left as they are"),
            }[now.adjusted.choice]
            self.held.setText(f"{done}, {now.adjusted.by}: {now.adjusted.why}")
        if proposal is not None and self.shift.value() == 0 and not self.shift.hasFocus():
            self.shift.setValue(proposal.shift)
        self._offer()

    def _offer(self) -> None:
        now = self._now
        if now is None:
            return
        free = bool(self.reason.text().strip())
        self.adjust.setEnabled(free and self.shift.value() != 0)
        self.remark.setEnabled(free)
        self.leave.setEnabled(free)
        changes = self._effect(now)
        self._changes.setVisible(self.shift.value() != 0)
        words = self.tr("Moving by {shift:+g} changes {n} grades:") if changes else self.tr(
            "Moving by {shift:+g} changes no grade.")  # fmt: skip
        self._changes.setText(words.format(shift=self.shift.value(), n=len(changes)))
        self.roll.setVisible(bool(changes))
        self.roll.fill(
            [
                (one.learner, (now.names.get(one.learner, one.learner), f"{one.total_before:g}",
                               f"{one.total_after:g}", one.before or "–", one.after or "–"))
                for one in changes
            ]
        )  # fmt: skip

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
        self.reason.clear()
