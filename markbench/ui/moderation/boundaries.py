"""Grade boundaries: what moving one does is seen while it is moved."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QWidget

from markbench.moderation.grades import Boundaries, effect_of_moving, move
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.number_box import NumberBox
from markbench.ui.mishaps import plainly
from markbench.ui.moderation.paper import Paper, Roll
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import button, label


class BoundariesPaper(Paper):
    """``trouble`` says why the brief was not written."""

    trouble = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__(self.tr("Grade boundaries"))
        self._desk = desk
        self._totals: dict[str, float] = {}
        self._names: dict[str, str] = {}
        self.moved: Boundaries = desk.session.brief.grade_boundaries
        self.fields: dict[str, NumberBox] = {}
        row = QWidget()
        fields = FlowLayout(row, spacing=8)
        for grade, least in self.moved:
            fields.addWidget(label(self.tr("{g} from").format(g=grade)))
            fields.addWidget(self._field(grade, least))
        self.counts = label(wrap=True)
        self.said = label(kind="small", wrap=True)
        self.roll = Roll(
            (self.tr("Learner"), self.tr("Total"), self.tr("Grade"), self.tr("would be")),
            self.tr("Learners whose grade changes"), 8,
        )  # fmt: skip
        self.back = button(self.tr("Back to the brief's"), "", self.put_back)
        self.keep = button(self.tr("Keep in the brief"), "", self.keep_in_brief)
        deeds = FlowLayout(spacing=6)
        for control in (self.back, self.keep):
            deeds.addWidget(control)
        for part in (row, self.counts, self.said, self.roll):
            self.column.addWidget(part)
        self.column.addLayout(deeds)

    def _field(self, grade: str, least: float) -> NumberBox:
        made = NumberBox()
        made.setRange(0, max(self._desk.session.rubric.most, 1.0))
        made.setSingleStep(0.5)
        made.setDecimals(1)
        made.setAlignment(Qt.AlignmentFlag.AlignCenter)
        made.setButtonSymbols(NumberBox.ButtonSymbols.NoButtons)  # keys step it
        made.setValue(least)
        made.setAccessibleName(self.tr("Least marks for grade {g}").format(g=grade))
        made.valueChanged.connect(partial(self._move, grade))
        self.fields[grade] = made
        return made

    def show_standing(self, now: Standing) -> None:
        """The totals the boundaries cut."""
        self._totals, self._names = now.totals, dict(now.names)
        self._show()

    def _move(self, grade: str, least: float) -> None:
        try:
            self.moved = move(self.moved, grade, least)
        except ValueError as error:
            self._put(self.moved)
            self.said.setText(plainly(error))
            return
        self._show()

    def put_back(self) -> None:
        """As in the brief."""
        self.moved = self._desk.session.brief.grade_boundaries
        self._put(self.moved)
        self._show()

    def _put(self, boundaries: Boundaries) -> None:
        for grade, least in boundaries:
            field = self.fields[grade]
            field.blockSignals(True)
            field.setValue(least)
            field.blockSignals(False)

    def _show(self) -> None:
        brief = self._desk.session.brief.grade_boundaries
        effect = effect_of_moving(brief, self._totals, self.moved)
        below = self.tr("below")
        parts = [f"{grade or below}: {n}" for grade, n in effect.counts]
        counts = "  ·  ".join(parts) if brief else self.tr("The brief names no grades.")
        self.counts.setText(counts)
        is_moved = self.moved != brief
        words = self.tr("{n} learners would change grade; nothing is changed yet.")
        if len(effect.changes) == 1:
            words = self.tr("1 learner would change grade; nothing is changed yet.")
        self.said.setText(words.format(n=len(effect.changes)) if is_moved else "")
        self.said.setVisible(is_moved)
        self.roll.setVisible(bool(effect.changes))
        self.roll.fill(
            [
                (one.learner, (self._names.get(one.learner, one.learner),
                               f"{one.total_after:g}", one.before or "–", one.after or "–"))
                for one in effect.changes
            ]
        )  # fmt: skip
        self.back.setEnabled(is_moved)
        self.keep.setEnabled(is_moved)
        self.back.setVisible(bool(brief))
        self.keep.setVisible(bool(brief))

    def keep_in_brief(self) -> None:
        """Write the boundaries into the class's brief."""
        from markbench.intake.brief_file import BRIEF_NAME, read_brief

        held = self._desk.held
        # From the file, not the session: pairs named in the class list stay there.
        brief, _ = read_brief(held.folder / BRIEF_NAME)
        brief = replace(brief, grade_boundaries=self.moved)
        self._desk.do_long(
            self,
            lambda _progress, _stop: held.save_brief(brief),
            done=lambda _none: None,
            failed=lambda error: self.trouble.emit(plainly(error)),
        )
