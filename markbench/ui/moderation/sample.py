"""The sample, the pack that goes out with it, and the replies that come back."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog

from markbench.checks.wording import true_minus
from markbench.moderation.sample import AT_LEAST, Sample
from markbench.session.endings import PACK_ENDING, REPLY_ENDING
from markbench.session.merging import Merge
from markbench.session.moderating import merge_journal, take_sample
from markbench.ui.desk import Desk
from markbench.ui.flow import FlowLayout
from markbench.ui.look.said import figures, said
from markbench.ui.moderation.paper import Paper, Roll
from markbench.ui.moderation.standing import Standing
from markbench.ui.parts import button, label, restyle
from markbench.ui.signed import SignedLine, allow

if TYPE_CHECKING:
    from markbench.session.packing import Packed


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
            self.tr("Learners of the sample; Enter opens"), 8,
        )  # fmt: skip
        self.roll.cellActivated.connect(lambda row, _c: self.opened.emit(self.roll.learner(row)))
        self.draw = button("", "deed", self.draw_sample)
        self.draw.setToolTip(self.tr("With a new seed; the drawing is kept in the journal"))
        self.pack = button(self.tr("Make the pack…"), "", self.ask_and_pack)
        self.merge = button(self.tr("Merge a reply…"), "", self.ask_and_merge)
        self.merge_colleague = button(self.tr("Merge a colleague's marks…"), "", self.ask_colleague)
        deeds = FlowLayout(spacing=6)
        for control in (self.draw, self.pack, self.merge, self.merge_colleague):
            deeds.addWidget(control)
        self.pack_said = label(kind="small", wrap=True)
        self.pack_said.hide()
        self.each = button(self.tr("Every piece that stayed behind"), "quiet", self._show_each)
        self.each.setCheckable(True)
        self.each.hide()
        self._pieces = label(kind="small", wrap=True)
        self._pieces.hide()
        for part in (self._about, self.roll, self._rule, SignedLine(desk)):
            self.column.addWidget(part)
        self.column.addLayout(deeds)
        more = FlowLayout(spacing=6)
        more.addWidget(self.each)
        self.column.addWidget(self.pack_said)
        self.column.addLayout(more)
        self.column.addWidget(self._pieces)
        self._packed.connect(self._say_packed)

    def show_standing(self, now: Standing) -> None:
        """Who is in the sample, and why."""
        sample = now.sample
        self.roll.setVisible(sample is not None)
        self._rule.setVisible(sample is not None)
        self.pack.setEnabled(sample is not None)
        restyle(self.draw, "kind", "deed" if sample is None else "")
        allow(self._desk, True, self.draw, self.merge, self.merge_colleague)
        self.draw.setText(self.tr("Draw the sample") if sample is None else self.tr("Draw again"))
        if sample is None:
            self._about.setText(
                self.tr(
                    "No sample yet. It takes every learner whose work is out of the ordinary, "
                    "and an ordinary sample spread over the range of marks."
                )
            )
            return
        self._about.setText(self._who(sample))
        seed = self.tr("Seed {n}.").format(n=sample.seed)
        rule = [f"{said(sample.rule)} {seed}"]
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
            cells += [
                "–" if total is None else figures(f"{total:g}") for total in totals if total != ""
            ]
            why = true_minus("; ".join(said(one) for one in one.reasons))
            rows.append((one.learner, (*cells, why)))
        self.roll.fill(rows)

    def _who(self, sample: Sample) -> str:
        """How many, and, where nobody is left out, why."""
        outliers = sum(one.outlier for one in sample.learners)
        rest, of = len(sample.learners) - outliers, sample.class_size
        if rest + outliers < of:
            words = self.tr("{n} of {of} learners: {flagged} out of the ordinary, {rest} ordinary")
            return words.format(n=rest + outliers, of=of, flagged=outliers, rest=rest)
        if not outliers:
            words = self.tr(
                "The sample is the whole class of {of}: it is never of fewer than {least}."
            )
            return words.format(of=of, least=AT_LEAST)
        if not rest:
            words = self.tr(
                "The sample is the whole class of {of}: everybody is out of the ordinary, and "
                "whoever is, is always looked at."
            )
        else:
            words = self.tr(
                "The sample is the whole class of {of}: {flagged} are out of the ordinary and "
                "always looked at, and of the others at least {least} are taken, here all {rest}."
            )
        much = self.tr(
            "The moderator need not finish: a reply holds what was second-marked by then."
        )
        return f"{words.format(of=of, flagged=outliers, rest=rest, least=AT_LEAST)} {much}"

    def draw_sample(self) -> None:
        """Draw with a new seed; drawing again replaces the sample, by a decision."""
        if self._desk.refuse_signed():
            return
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

        def make(_session: object) -> None:
            # Imported here: the library that cleans films loads slowly.
            from markbench.session.packing import write_pack

            self._packed.emit(write_pack(held, path))

        self._desk.do(make)

    def _say_packed(self, packed: Packed) -> None:
        from markbench.moderation.pack import summed_up

        words = self.tr("✓ {file} written, check code {code}")
        self.said.emit(words.format(file=packed.path.name, code=packed.code))
        told = [said(line) for line in summed_up(packed.left_out)]
        head = self.tr("{file}: check code {code}, to compare by telephone.")
        told.insert(0, head.format(file=packed.path.name, code=packed.code))
        if packed.left_out:
            stayed = self.tr("Stayed behind: {n} of the learners' pieces.")
            told[0] += " " + stayed.format(n=len(packed.left_out))
        if packed.doubtful:
            quoted = "; ".join(f"“{one}”" for one in packed.doubtful)
            doubt = self.tr("Left standing, in case it is a name: {quoted}. Look before you send.")
            told.insert(0, doubt.format(quoted=quoted))
        self.pack_said.setText("\n".join(told))
        self.pack_said.show()
        self._pieces.setText("\n".join(said(str(one)) for one in packed.left_out))
        self.each.setChecked(False)
        self.each.setVisible(bool(packed.left_out))
        self._show_each()

    def _show_each(self) -> None:
        self._pieces.setVisible(self.each.isChecked() and not self.each.isHidden())

    def ask_and_merge(self) -> None:
        """Ask for a reply and merge it."""
        chosen, _ = QFileDialog.getOpenFileName(
            self, self.tr("Merge a reply"), str(self._desk.held.folder.parent), f"*{REPLY_ENDING}"
        )
        if chosen:
            self.merge_file(Path(chosen))

    def ask_colleague(self) -> None:
        """Ask for the journal of a colleague who marked on another machine, and merge it."""
        chosen, _ = QFileDialog.getOpenFileName(
            self, self.tr("Merge a colleague's marks"), str(self._desk.held.folder.parent),
            "*.markbench",
        )  # fmt: skip
        if chosen:
            held = self._desk.held
            self._desk.do(lambda _session: self._tell(merge_journal(held, Path(chosen))))

    def merge_file(self, path: Path) -> None:
        """Merge a reply, or say why it is refused."""
        held = self._desk.held

        def merge(_session: object) -> None:
            from markbench.session.replies import merge_reply

            self._tell(merge_reply(held, path))

        self._desk.do(merge)

    def _tell(self, merge: Merge) -> None:
        self.merged.emit(merge)  # from the desk's thread: queued to the page's
