"""The sample, the pack that goes out with it, and the replies that come back."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog

from markbench.session.merging import Merge
from markbench.session.moderating import take_sample
from markbench.session.pack_session import REPLY_ENDING
from markbench.session.packing import PACK_ENDING, Packed, write_pack
from markbench.session.replies import merge_reply
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.moderation.paper import Paper, Roll
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import button, label


class SamplePaper(Paper):
    """``opened`` carries a learner, ``said`` words for the bar, ``merged`` a merge."""

    opened = Signal(str)
    said = Signal(str)
    merged = Signal(object)
    _packed = Signal(object)

    def __init__(self, desk: Desk) -> None:
        super().__init__(self.tr("Sample and pack"))
        self._desk = desk
        self._about = label(wrap=True)
        self._rule = label(kind="small", wrap=True)
        self.roll = Roll(
            (self.tr("Learner"), self.tr("First"), self.tr("Second"), self.tr("Holds"),
             self.tr("Why in the sample")),
            self.tr("Learners of the sample; Enter opens"),
        )  # fmt: skip
        self.roll.cellActivated.connect(lambda row, _c: self.opened.emit(self.roll.learner(row)))
        self.draw = button("", "deed", self.draw_sample)
        self.pack = button(self.tr("Make the pack…"), "", self.ask_and_pack)
        self.merge = button(self.tr("Merge a reply…"), "", self.ask_and_merge)
        deeds = FlowLayout(spacing=6)
        for control in (self.draw, self.pack, self.merge):
            deeds.addWidget(control)
        for part in (self._about, self.roll, self._rule):
            self.column.addWidget(part)
        self.column.addLayout(deeds)
        self._packed.connect(self._say_packed)

    def show_standing(self, now: Standing) -> None:
        """Who is in the sample, and why."""
        sample = now.sample
        self.roll.setVisible(sample is not None)
        self._rule.setVisible(sample is not None)
        self.draw.setEnabled(now.signed is None)
        self.pack.setEnabled(sample is not None)
        self.draw.setText(self.tr("Draw the sample") if sample is None else self.tr("Draw again"))
        self.draw.setToolTip(self.tr("With a new seed; the drawing is kept in the journal"))
        if sample is None:
            self._about.setText(
                self.tr(
                    "No sample yet. It takes every learner whose work is out of the ordinary, "
                    "and an ordinary sample spread over the range of marks."
                )
            )
            return
        outliers = sum(one.outlier for one in sample.learners)
        self._about.setText(
            self.tr("{n} of {of} learners: {flagged} out of the ordinary, {rest} ordinary").format(
                n=len(sample.learners),
                of=sample.class_size,
                flagged=outliers,
                rest=len(sample.learners) - outliers,
            )
        )
        rule = [f"{sample.rule} {self.tr('Seed {n}.').format(n=sample.seed)}"]
        if sample.unmarked:
            names = ", ".join(now.names.get(one, one) for one in sample.unmarked)
            rule.append(self.tr("Not fully marked when it was drawn: {who}.").format(who=names))
        self._rule.setText("\n".join(rule))
        rows = []
        for one in sample.learners:
            result = now.found.get(one.learner)
            totals = (
                ("", "", "")
                if result is None
                else (result.first_total, result.second_total, result.total)
            )
            cells = [now.names.get(one.learner, one.learner)]
            cells += ["–" if total is None else f"{total:g}" for total in totals if total != ""]
            rows.append((one.learner, (*cells, "; ".join(one.reasons))))
        self.roll.fill(rows)

    def draw_sample(self) -> None:
        """Draw with a new seed; drawing again replaces the sample, by a decision."""
        held = self._desk.held

        def draw(_session: object) -> None:
            take_sample(held)

        self._desk.do(draw)

    def ask_and_pack(self) -> None:
        """Ask for a place and write the pack there."""
        folder = self._desk.held.folder
        out = folder / "markbench-out"
        start = (out if out.is_dir() else folder.parent) / f"{folder.name}{PACK_ENDING}"
        chosen, _ = QFileDialog.getSaveFileName(
            self, self.tr("Make the pack"), str(start), f"*{PACK_ENDING}"
        )
        if not chosen:
            return
        path = Path(chosen)
        if path.suffix != PACK_ENDING:
            path = path.with_name(path.name + PACK_ENDING)
        self.said.emit(self.tr("Making the pack…"))
        held = self._desk.held
        self._desk.do(lambda _session: self._packed.emit(write_pack(held, path)))

    def _say_packed(self, packed: Packed) -> None:
        words = self.tr("✓ {file} written, check code {code}; {n} pieces left out")
        self.said.emit(
            words.format(file=packed.path.name, code=packed.code, n=len(packed.left_out))
        )

    def ask_and_merge(self) -> None:
        """Ask for a reply and merge it."""
        chosen, _ = QFileDialog.getOpenFileName(
            self, self.tr("Merge a reply"), str(self._desk.held.folder.parent), f"*{REPLY_ENDING}"
        )
        if chosen:
            held = self._desk.held
            self._desk.do(lambda _session: self._tell(merge_reply(held, Path(chosen))))

    def _tell(self, merge: Merge) -> None:
        self.merged.emit(merge)  # from the desk's thread: queued to the page's
